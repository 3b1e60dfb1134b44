// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// after opens a demo job and does entries.
func after(t testing.TB, name string, entries ...Entry) Answer {
	t.Helper()
	job := demos(t)[name]
	a := theBench.turn(Request{Open: &job})
	return theBench.turn(Request{Job: a.Job, Entries: entries})
}

func (a Answer) htmlOf() string {
	var b strings.Builder
	for _, p := range a.Form {
		b.WriteString(p.HTML)
	}
	return b.String()
}

// TestEmptyPage: a new job begins with what is needed, not with faults.
func TestEmptyPage(t *testing.T) {
	a := theBench.turn(Request{})
	if strings.Contains(a.Head+a.htmlOf(), "fault") || a.Sheet != "" || !strings.Contains(a.Head, text(wordStart)) {
		t.Errorf("begins with faults: %s", a.Head)
	}
	if n := strings.Count(a.Head, "<a href="); n < 5 {
		t.Errorf("leads to %d boxes", n)
	}
	if !a.Form[0].Open || a.Form[1].Open {
		t.Error("begins elsewhere than with the engine")
	}
	for _, link := range regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(a.Head, -1) {
		if !strings.Contains(a.htmlOf(), `id="`+link[1]+`"`) && !strings.HasPrefix(link[1], "cylinders") {
			t.Errorf("%s leads nowhere", link[1])
		}
	}
}

// TestNothingToFollow: with a fault there is no sheet, and no verdict in the head.
func TestNothingToFollow(t *testing.T) {
	a := after(t, "pump", Entry{"set", "engine.limits.service", []string{"78.01", " mm"}})
	if a.Sheet != "" || strings.Contains(a.Head, text(wordNext)) || !strings.Contains(a.Head, `href="#engine-limits-service"`) {
		t.Errorf("%q %s", a.Sheet, a.Head)
	}
	if !strings.Contains(a.htmlOf(), `id="engine-limits-service-fault"`) || !strings.Contains(a.htmlOf(), `aria-describedby="engine-limits-service-fault"`) {
		t.Error("the fault does not stand at its box")
	}
	if strings.Count(a.htmlOf(), `class="fault"`) != 1 {
		t.Error("it stands elsewhere too")
	}
}

// TestPlacesSurvive: places that are proposed and not read yet survive saving, are no fault, and do not move the faults of
// those that are.
func TestPlacesSurvive(t *testing.T) {
	a := after(t, "unread", Entry{"propose", "cylinders[0].readings", []string{"3"}})
	plain := after(t, "unread")
	n := strings.Count(a.Job, `"depth"`)
	if n < 9 || a.Sheet != plain.Sheet {
		t.Fatalf("%d places; or another sheet than without them", n)
	}
	saved := theBench.turn(Request{Open: &a.Job})
	if saved.Job != a.Job || saved.Sheet != plain.Sheet {
		t.Error("lost in the file")
	}
	if twice := theBench.turn(Request{Job: a.Job, Entries: []Entry{{"propose", "cylinders[0].readings", []string{"3"}}}}); twice.Job != a.Job {
		t.Error("proposed twice over")
	}
	typed := theBench.turn(Request{Job: a.Job, Entries: []Entry{
		{"set", "cylinders[0].readings[4].diameter", []string{"67.05", " mm"}},
		{"set", "cylinders[0].readings[7].diameter", []string{"2.63", " mm"}},
	}})
	if got := strings.Count(typed.htmlOf(), `class="fault"`); got != 1 || !strings.Contains(typed.htmlOf(), `id="cylinders-0-readings-7-diameter-fault"`) {
		t.Errorf("%d faults, and not at the reading that has it: %s", got, typed.Head)
	}
}

// TestNotDone: what cannot be done says why and changes nothing, and no number is taken for another.
func TestNotDone(t *testing.T) {
	before := after(t, "unread")
	full := strings.Replace(before.Job, "{", `{"confirmed": [`+strings.Repeat("{}, ", mostItems-1)+"{}],", 1)
	for _, c := range []struct {
		job, says string
		e         Entry
	}{
		{before.Job, "want a number of axes", Entry{"propose", "cylinders[0].readings", []string{"three"}}},
		{before.Job, "want 1 to", Entry{"propose", "cylinders[0].readings", []string{"0"}}},
		{before.Job, "no path", Entry{"set", "cylinders[0,x].over", []string{"1", " mm"}}},
		{before.Job, "no item 7", Entry{"set", "cylinders[7,9].over", []string{"1", " mm"}}},
		{before.Job, "no such deed", Entry{"mend", "cylinders", nil}},
		{full, fmt.Sprint("confirmed: at most ", mostItems), Entry{"add", "confirmed", nil}},
	} {
		same := theBench.turn(Request{Job: c.job})
		if a := theBench.turn(Request{Job: c.job, Entries: []Entry{c.e}}); !strings.Contains(a.Head, c.says) || a.Job != same.Job {
			t.Errorf("%v does not say %q, or changes the job: %.300s", c.e, c.says, a.Head)
		}
	}
	if a := theBench.turn(Request{Job: "{"}); !strings.Contains(a.Head, text(wordNotRead)) {
		t.Errorf("a draft that is lost: %s", a.Head)
	}
	at := "cylinders[0].readings"
	a := after(t, "unread", Entry{"propose", at, []string{"3"}}, Entry{"drop", at + "[1,0,1]", nil})
	if b := after(t, "unread", Entry{"propose", at, []string{"3"}}); strings.Count(b.Job, `"axis"`)-strings.Count(a.Job, `"axis"`) != 2 {
		t.Error("a place named twice is taken out twice")
	}
}

// TestConfirmedMoves: a field that is confirmed is that field for the library too, where places before it are still to be
// read; and a path goes through pruning and back.
func TestConfirmedMoves(t *testing.T) {
	job, err := parse(`{"cylinders": [{"readings": [{"depth": "1 mm"}, {"diameter": "2 mm"}, {}, {"diameter": "3 mm"}]}],
		"confirmed": [{"field": "cylinders[0].readings[3].diameter", "value": "3 mm"}]}`)
	if err != nil {
		t.Fatal(err)
	}
	filled, moved := prune(job)
	if got := filled.textAt("confirmed[0].field"); got != "cylinders[0].readings[1].diameter" || filled.textAt(got) != "3 mm" {
		t.Errorf("%s", got)
	}
	if got := moved.back("cylinders[0].readings[1].diameter"); got != "cylinders[0].readings[3].diameter" {
		t.Errorf("%s", got)
	}
	if len(job.at("cylinders[0].readings").items) != 4 || job.textAt("confirmed[0].field") != "cylinders[0].readings[3].diameter" {
		t.Error("the job of the page was changed")
	}
}

// TestNeverBolder: what is taken out again leaves no answer behind. An empty list of sizes says that there is none.
func TestNeverBolder(t *testing.T) {
	before := after(t, "unread")
	a := after(t, "unread", Entry{Do: "add", At: "engine.oversizes"}, Entry{"set", "engine.oversizes[0].over", []string{"0.5", " mm"}})
	if a.Job == before.Job {
		t.Fatal("nothing was added")
	}
	for _, e := range []Entry{{Do: "drop", At: "engine.oversizes[0]"}, {"set", "engine.oversizes[0].over", []string{"", " mm"}}} {
		back := theBench.turn(Request{Job: a.Job, Entries: []Entry{e}})
		if strings.Contains(back.Job, `"oversizes": []`) || back.Sheet != before.Sheet {
			t.Errorf("%+v leaves something behind", e)
		}
	}
	none := after(t, "unread", Entry{"none", "engine.oversizes", []string{"on"}})
	if !strings.Contains(none.Job, `"oversizes": []`) {
		t.Error("that there is none cannot be said")
	}
	if again := theBench.turn(Request{Job: none.Job, Entries: []Entry{{"none", "engine.oversizes", []string{""}}}}); again.Job != before.Job {
		t.Error("nor taken back")
	}
}

// TestBadFile: a file that is no job is named, and the work stands; one that is a job with faults is opened.
func TestBadFile(t *testing.T) {
	work := after(t, "pump")
	for _, bad := range []string{"", "no", "[]", `{"title": "x"} x`, "{\"title\": \"\xff\"}", strings.Repeat(`{"engine":`, 40) + "1" + strings.Repeat("}", 40), `{"a":"` + strings.Repeat("x", 1<<20) + `"}`} {
		a := theBench.turn(Request{Job: work.Job, Open: &bad})
		if a.Job != work.Job || a.Sheet != work.Sheet || !strings.Contains(a.Head, text(wordNotOpened)) {
			t.Errorf("%.40q: %.200s", bad, a.Head)
		}
	}
	strange := "\ufeff" + `{"engine": {"bore": "67 mm", "colour": "red", "bore": "68 mm"}, "gauge": null, "tools": []}`
	a := theBench.turn(Request{Job: work.Job, Open: &strange})
	for _, kept := range []string{`"colour": "red"`, `"bore": "68 mm"`, "null", "[]"} {
		if !strings.Contains(a.Job, kept) {
			t.Errorf("%s is lost", kept)
		}
	}
	if !strings.Contains(a.Head, "engine.colour") || !strings.Contains(a.Head, `data-do="drop" data-at="engine.colour"`) {
		t.Errorf("what belongs to no box cannot be taken out: %s", a.Head)
	}
	mended := theBench.turn(Request{Job: a.Job, Entries: []Entry{{Do: "drop", At: "engine.colour"}, {"set", "engine.bore", []string{"69", " mm"}}}})
	if strings.Contains(mended.Job, "colour") || strings.Contains(mended.Job, "68 mm") {
		t.Errorf("%s", mended.Job)
	}
}

// TestCaptions: drawings of the form hold a few letters of figures and names; their captions are text of the page.
func TestCaptions(t *testing.T) {
	a := after(t, "pump")
	drawings := regexp.MustCompile(`(?s)<svg.*?</svg>`).FindAllString(a.htmlOf(), -1)
	if len(drawings) < 2 || strings.Count(a.htmlOf(), "<figcaption") != len(drawings) {
		t.Fatalf("%d drawings", len(drawings))
	}
	for _, d := range drawings {
		for _, m := range regexp.MustCompile(`<text[^>]*>([^<]*)`).FindAllStringSubmatch(d, -1) {
			if len(m[1]) > 14 {
				t.Errorf("a caption in a drawing: %q", m[1])
			}
		}
		if n := strings.Count(d, "data-row"); n != 3 {
			t.Errorf("%d depths are drawn", n)
		}
	}
}

// TestFaultsLand: a value that cannot be is shown at its own box, whichever field it stands in.
func TestFaultsLand(t *testing.T) {
	tried := map[string]bool{}
	for name, job := range demos(t) {
		root, err := parse(job)
		if err != nil {
			t.Fatal(err)
		}
		each(root, "", func(path string, n *node) {
			k, known := kinds[pattern(path)]
			if !known || k.of.Kind() == 0 || tried[pattern(path)] || notShown[pattern(path)] != "" {
				return
			}
			tried[pattern(path)] = true
			bad := root.clone()
			bad.put(path, textNode("\u0007"))
			p := theBench.planned(bad)
			w := newWriter(bad, p)
			if len(w.faults[path]) == 0 {
				t.Errorf("%s: %s: the fault does not stand there: %v", name, path, p.faults)
			}
		})
	}
	if len(tried) < 100 {
		t.Errorf("%d fields tried", len(tried))
	}
}

// each goes through the values that hold no others.
func each(n *node, path string, do func(string, *node)) {
	if n.kind != '{' && n.kind != '[' {
		do(path, n)
	}
	for _, m := range n.members {
		each(m.value, join(path, m.name), do)
	}
	for i, item := range n.items {
		each(item, fmt.Sprintf("%s[%d]", path, i), do)
	}
}

// TestBadJobsLand: every place that the library's own tests of bad jobs name has a box or a group on the page, but for what
// is of no field of a job.
func TestBadJobsLand(t *testing.T) {
	source, err := os.ReadFile("../../oversize/jobsheet/badjobs_test.go")
	if err != nil {
		t.Fatal(err)
	}
	var pages []*writer
	for _, job := range demos(t) {
		root, err := parse(job)
		if err != nil {
			t.Fatal(err)
		}
		for _, more := range []string{"engine.oversizes[0].pistons[0].size", "cylinders[0].feeler_test[0].depth", "cylinders[0].feeler_test[1].depth", "accepted[0].by",
			"cylinders[0].honing[0].at", "cylinders[0].honing[1].at", "tools.phases[0].groove", "engine.rings[0].name", "cylinders[0].rings[0].gap", "cylinders[0].proof[0].depth"} {
			root.put(more, textNode(""))
		}
		pages = append(pages, newWriter(root, planned{}))
	}
	ofNoField := []string{"version", "colour", "engin", "x", "engine.wal", "engine.Stroke"}
	landed := map[string]string{}
	for _, m := range regexp.MustCompile("[`\"]((?:version|title|units|engine|gauge|survey|cylinders|tools|cuts|proof|counted|not_known|confirmed|accepted|risk)(?:\\.[a-zA-Z_]+|\\[\\d+\\])*)(?:: |[\"`], )").FindAllStringSubmatch(string(source), -1) {
		path := m[1]
		for _, w := range pages {
			if at := w.nearest(path); at != "" {
				landed[path] = at
			}
		}
		if landed[path] == "" && !slices.Contains(ofNoField, path) {
			t.Errorf("%s lands nowhere", path)
		}
	}
	if len(landed) < 50 {
		t.Errorf("%d places", len(landed))
	}
	for path, at := range landed {
		if !strings.HasPrefix(at, path) && !strings.HasPrefix(path, at) {
			t.Errorf("%s lands at %s", path, at)
		}
	}
}

// TestWord: what can go on a word gets one to be given, and goes on it; what nobody can accept is refused.
func TestWord(t *testing.T) {
	// The wall is not measured, which a word may stand for, and there is no piston, which none may.
	open := after(t, "keep", Entry{Do: "drop", At: "cylinders[0].piston"}, Entry{Do: "drop", At: "cylinders[0].piston_for"}, Entry{Do: "drop", At: "proof.torque_plate"}, Entry{Do: "drop", At: "cylinders[0].crosshatch"})
	root, _ := parse(open.Job)
	rows := theBench.planned(root).sheet.Ledger
	taken, refused := 0, 0
	for _, r := range rows {
		if r.State != jobsheet.StateOpen && r.State != jobsheet.StateFailed || taken > 0 && refused > 0 {
			continue
		}
		a := theBench.turn(Request{Job: open.Job, Entries: []Entry{{Do: "accept", At: r.Key}}})
		if a.Job == open.Job {
			refused++
			if !strings.Contains(a.Head, text(wordNobody)) {
				t.Errorf("%s: does not say why", r.Key)
			}
			continue
		}
		taken++
		if a.Sheet != open.Sheet {
			t.Errorf("%s: goes on a word that nobody gave", r.Key)
		}
		root, _ := parse(a.Job)
		last := len(root.at("accepted").items) - 1
		at := fmt.Sprintf("accepted[%d].", last)
		given := theBench.turn(Request{Job: a.Job, Entries: []Entry{{"set", at + "by", []string{"the machinist"}}, {"set", at + "why", []string{"seen"}}}})
		root, _ = parse(given.Job)
		s := theBench.planned(root).sheet
		if i := slices.IndexFunc(s.Ledger, func(x jobsheet.Row) bool { return x.Key == r.Key }); s.Ledger[i].State != jobsheet.StateAccepted {
			t.Errorf("%s: the word does not serve: %s", r.Key, s.Ledger[i].Stands)
		}
	}
	if taken == 0 || refused == 0 {
		t.Errorf("%d taken, %d refused", taken, refused)
	}
}

// TestTraceTyped: a trace is typed as numbers a line, or as an instrument writes them, and a fault names which it is of.
func TestTraceTyped(t *testing.T) {
	const at = "cylinders[0].traces[0].deviations"
	before := after(t, "traced")
	lines := strings.Repeat("0.010\n0,012\n", 11) + " 0.011  0.0120 \n"
	a := after(t, "traced", Entry{"set", at, []string{lines, " mm"}})
	root, err := parse(a.Job)
	if err != nil || a.Sheet == "" || a.Sheet == before.Sheet {
		t.Fatalf("%v: %s", err, a.Head)
	}
	if l := root.at(at); len(l.items) != 24 || l.items[1].text != "0.012 mm" || l.items[23].text != "0.0120 mm" {
		t.Errorf("%s", l)
	}
	a = theBench.turn(Request{Job: a.Job, Entries: []Entry{{"set", at, []string{strings.Replace(lines, "0,012", "x", 1), " mm"}}}})
	if a.Sheet != "" || !strings.Contains(a.htmlOf(), `id="cylinders-0-traces-0-deviations-fault">`+fmt.Sprintf(wordValue, 2)) {
		t.Errorf("the fault does not stand at its box: %s", a.Head)
	}
	a = theBench.turn(Request{Job: a.Job, Entries: []Entry{{"set", at, []string{"", " mm"}}}})
	if root, err = parse(a.Job); err != nil || root.at(at) != nil || a.Sheet != "" {
		t.Errorf("not taken out: %v", err)
	}
}

// TestStepIsEntered: what is next leads first to where the work is written down, and then to what proves it.
func TestStepIsEntered(t *testing.T) {
	for name, want := range map[string][2]string{"pump": {"cylinders-1-honing", "cylinders-1-proof"}, "sleeve": {"cylinders-0-sleeve_fitted-seat", "cylinders-0-proof"}} {
		links := regexp.MustCompile(`href="#([^"]+)"`).FindAllStringSubmatch(after(t, name).Head, 2)
		if len(links) < 2 || links[0][1] != want[0] || links[1][1] != want[1] {
			t.Errorf("%s leads to %q, want %q", name, links, want)
		}
	}
}

// TestUnfoldsAsItGoes: typed in the order of the form, a job has another step whenever other parts are to be open, which the
// page unfolds then and not before.
func TestUnfoldsAsItGoes(t *testing.T) {
	changes := 0
	for _, name := range []string{"../refresh/jobs/unread.json", "testdata/route.json"} {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		job, err := parse(string(data))
		if err != nil {
			t.Fatal(err)
		}
		entries, _ := typing(t, job)
		a, was := Answer{}, ""
		for _, e := range entries {
			step := a.Step
			a = theBench.turn(Request{Job: a.Job, Entries: []Entry{e}})
			open := ""
			for _, p := range a.Form {
				if p.Open {
					open += p.ID
				}
			}
			if open != was {
				changes++
				if a.Step == step {
					t.Fatalf("%s, %s: %q is to be open after %q, and the step stays %q", name, e.At, open, was, step)
				}
			}
			was = open
		}
	}
	if changes < 6 {
		t.Errorf("%d changes", changes)
	}
}

// TestReadingsAreAskedFor: a bore that is not read is asked for, with the box of its first reading, whatever else the job does
// not say.
func TestReadingsAreAskedFor(t *testing.T) {
	a := after(t, "unread", Entry{Do: "drop", At: "engine.rings"}, Entry{Do: "drop", At: "counted.rings"})
	for _, at := range []string{"engine-rings", "cylinders-0-readings", "counted-pits"} {
		if !strings.Contains(a.Head, `href="#`+at+`"`) {
			t.Errorf("no way to %s: %s", at, a.Head)
		}
	}
	if a.Now != (Lead{"head", wordNext + "measure"}) {
		t.Errorf("%v", a.Now)
	}
	if strings.Count(a.Head, "not read") != 2 || strings.Contains(a.Head, "cylinders-0-proof") {
		t.Errorf("says one thing more than once, or what comes later: %s", a.Head)
	}
}

// TestLead: the few words lead to the first box that is asked for, or at fault.
func TestLead(t *testing.T) {
	a := theBench.turn(Request{})
	if a.Now != (Lead{"engine-cylinders", wordAsked + label("engine.cylinders")}) {
		t.Errorf("%v", a.Now)
	}
	a = after(t, "pump", Entry{"set", "cylinders[1].readings[3].diameter", []string{"7.8", " mm"}}, Entry{"set", "proof.washed", []string{"on"}})
	if a.Now.At != "cylinders-1-readings-3-diameter" || !strings.HasPrefix(a.Now.Words, wordFault) {
		t.Errorf("%v", a.Now)
	}
}

// TestStepUnfolds: the part of the form that the next step needs is open, and no other.
func TestStepUnfolds(t *testing.T) {
	for name, want := range map[string]string{"unread": "part-survey", "pump": "part-passes", "sleeve": "part-passes", "pump-finished": ""} {
		open := ""
		for _, p := range after(t, name).Form {
			if p.Open {
				open += p.ID
			}
		}
		if open != want {
			t.Errorf("%s: %q is open, want %q", name, open, want)
		}
	}
}
