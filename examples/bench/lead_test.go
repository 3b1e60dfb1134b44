// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"os"
	"regexp"
	"strings"
	"testing"
)

var linkTo = regexp.MustCompile(`href="#([^"]+)"`)

// leadsSomewhere holds every way out of the head to a box or group of the form.
func leadsSomewhere(t *testing.T, a Answer) {
	t.Helper()
	for _, link := range linkTo.FindAllStringSubmatch(a.Head, -1) {
		if !strings.Contains(a.htmlOf(), `id="`+link[1]+`"`) {
			t.Errorf("#%s leads nowhere: %s", link[1], a.Head)
		}
	}
	if at := a.Now.At; at != "head" && !strings.Contains(a.htmlOf(), `id="`+at+`"`) {
		t.Errorf("%v leads nowhere", a.Now)
	}
}

// TestSlipIsAskedFor: a reading that looks like a slip withholds the route, and then the way out is that reading, by its place,
// or to say that it is right; places before it that are still to be read do not move it.
func TestSlipIsAskedFor(t *testing.T) {
	const path = "cylinders[0].readings"
	file, err := os.ReadFile("testdata/route.json")
	if err != nil {
		t.Fatal(err)
	}
	read := []Entry{{Do: "drop", At: path}, {"set", "counted.readings", []string{"9"}}}
	for i, microns := range []int{35, 50, 40, 30, 140, 35, 20, 25, 20} { // the fifth was 40
		at := fmt.Sprintf("%s[%d].", path, i)
		read = append(read, Entry{Do: "add", At: path}, Entry{"set", at + "depth", []string{[]string{"12", "48", "84"}[i/3], " mm"}},
			Entry{"set", at + "axis", []string{[]string{"pin", "thrust", "45°"}[i%3]}}, Entry{"set", at + "diameter", []string{fmt.Sprintf("67.%03d", microns), " mm"}})
	}
	for name, more := range map[string][]Entry{"": nil, "with places to read": {{"again", path, []string{"12 mm"}}, {"set", path + "[9].diameter", []string{"67.035", " mm"}},
		{"set", path + "[0].diameter", []string{"", " mm"}}}} {
		a := theBench.turn(Request{Job: string(file), Entries: append(read[:len(read):len(read)], more...)})
		root, _ := parse(a.Job)
		p := placeOf(root, path, 4)
		if !strings.Contains(a.Head, `href="#cylinders-0-readings-4-diameter"`) || !strings.Contains(a.Head, p.depth+" "+p.axis) {
			t.Fatalf("%s: no way to the reading: %s", name, a.Head)
		}
		if strings.Contains(regexp.MustCompile(`<[^>]+>`).ReplaceAllString(a.Head, ""), "readings[") {
			t.Errorf("%s: speaks in paths: %s", name, a.Head)
		}
		leadsSomewhere(t, a)
		button := regexp.MustCompile(`data-do="confirm" data-at="([^"]+)" data-then="head" data-part="([^"]+)"`).FindStringSubmatch(a.Head)
		if button == nil || button[1] != path+"[4]" {
			t.Fatalf("%s: cannot be said to be right: %s", name, a.Head)
		}
		b := theBench.turn(Request{Job: a.Job, Entries: []Entry{{"confirm", button[1], []string{button[2]}}}})
		if strings.Contains(b.Head, `href="#cylinders-0-readings-4-diameter"`) {
			t.Errorf("%s: said to be right, it is asked for again: %s", name, b.Head)
		}
	}
}

// TestHeadsOfTheGrid: what is wrong with a depth or an axis stands at its head, once, and there is a way to it.
func TestHeadsOfTheGrid(t *testing.T) {
	for field, typed := range map[string][]string{"axis": {"along crank"}, "depth": {"deep", " mm"}} {
		a := after(t, "unread", Entry{"propose", "cylinders[0].readings", []string{"3"}}, Entry{"set", "cylinders[0].readings[0,1,2,3,4,5]." + field, typed},
			Entry{"set", "cylinders[0].readings[0].diameter", []string{"67.05", " mm"}}, Entry{"set", "cylinders[0].readings[1].diameter", []string{"67.04", " mm"}})
		leadsSomewhere(t, a)
		if got := strings.Count(a.htmlOf(), `class="fault"`); got != 1 || strings.Count(a.Head, "<li>") != 1 {
			t.Errorf("%s: %d faults: %s", field, got, a.Head)
		}
	}
}

// TestUnitGoesOn: a box that is empty has the unit of the one before it, the first deviation that of the dial.
func TestUnitGoesOn(t *testing.T) {
	const at = "cylinders[0].readings"
	units := func(a Answer, field string) (list []string) {
		for _, b := range boxesOf(t, a) {
			if strings.HasPrefix(b.at, at+"[") && strings.HasSuffix(b.at, field) {
				list = append(list, b.parts[1])
			}
		}
		return list
	}
	a := after(t, "unread", Entry{"propose", at, []string{"3"}}, Entry{"set", at + "[1].diameter", []string{"2640", " thou"}})
	if got := units(a, ".diameter"); len(got) < 9 || got[0] != " mm" || got[1] != " thou" || got[2] != " thou" || got[8] != " thou" {
		t.Errorf("%q", got)
	}
	a = after(t, "unread", Entry{"set", "gauge.dial", []string{"plus is larger"}}, Entry{"set", "gauge.resolution", []string{"0.5", " thou"}}, Entry{"propose", at, []string{"3"}})
	if got := units(a, ".deviation"); len(got) < 9 || strings.Trim(fmt.Sprint(got), "[ thou]") != "" {
		t.Errorf("%q", got)
	}
}

// TestListSpreads: a list of numbers in the box of one reading goes on into the empty ones after it, with their unit, and is left as
// typed, which is a fault, where it is too long, would write over another reading, or is one number.
func TestListSpreads(t *testing.T) {
	const at = "cylinders[0].readings"
	places := Entry{"propose", at, []string{"3"}}
	root := func(entries ...Entry) *node {
		job, err := parse(after(t, "unread", entries...).Job)
		if err != nil {
			t.Fatal(err)
		}
		return job
	}
	job := root(places, Entry{"set", at + "[1].diameter", []string{"67.05 67,04 67.030", " mm"}})
	for i, want := range []string{"", "67.05 mm", "67.04 mm", "67.030 mm", ""} {
		if got := job.textAt(fmt.Sprintf("%s[%d].diameter", at, i)); got != want {
			t.Errorf("%d: %q, want %q", i, got, want)
		}
	}
	job = root(places, Entry{"set", at + "[0].diameter", []string{"67.05, 67.04,67.03, 67,02", " mm"}})
	for i, want := range []string{"67.05 mm", "67.04 mm", "67.03 mm", "67.02 mm", ""} {
		if got := job.textAt(fmt.Sprintf("%s[%d].diameter", at, i)); got != want {
			t.Errorf("by commas, %d: %q, want %q", i, got, want)
		}
	}
	twice := root(places, Entry{"set", at + "[0].diameter", []string{"67.05 67.04 67.03", " mm"}})
	n := len(twice.at(at).items)
	again := root(places, Entry{"set", at + "[0].diameter", []string{"67.05 67.04 67.03", " mm"}}, Entry{"again", at, []string{twice.textAt(at + "[0].depth")}},
		Entry{"set", fmt.Sprintf("%s[%d].diameter", at, n), []string{"67.06 67.07 67.08", " mm"}})
	for i, want := range []string{"67.06 mm", "67.07 mm", "67.08 mm"} {
		if got := again.textAt(fmt.Sprintf("%s[%d].diameter", at, n+i)); got != want {
			t.Errorf("read again, %d: %q, want %q", i, got, want)
		}
	}
	job = root(Entry{"set", "gauge.dial", []string{"plus is larger"}}, places, Entry{"set", at + "[0].deviation", []string{"+2\t-1\n0.5", " thou"}})
	if got := job.textAt(at+"[0].deviation") + job.textAt(at+"[1].deviation") + job.textAt(at+"[2].deviation"); got != "+2 thou-1 thou0.5 thou" {
		t.Errorf("%q", got)
	}
	job = root(Entry{Do: "add", At: "gauge.study"}, Entry{"set", "gauge.study[0].reading", []string{"67.01 67.02 67.01 67.00", " mm"}})
	if l := job.at("gauge.study"); len(l.items) != 4 || job.textAt("gauge.study[3].reading") != "67.00 mm" {
		t.Errorf("%s", l)
	}
	filled := Entry{"set", at + "[2].diameter", []string{"67.01", " mm"}}
	for text, entries := range map[string][]Entry{
		"67.05 67.04 67.03":                    {places, filled},
		strings.Repeat("67.05 ", 60) + "67.05": {places},
		"67 05":                                {places},
		"2 5/8 3":                              {places},
	} {
		job := root(append(entries, Entry{"set", at + "[0].diameter", []string{text, " mm"}})...)
		if got := job.textAt(at + "[0].diameter"); got != text+" mm" || job.textAt(at+"[1].diameter") != "" {
			t.Errorf("%q became %q and %q", text, got, job.textAt(at+"[1].diameter"))
		}
	}
}

// TestEachRowLeads: what is next has a way to a box from each of its rows, in every demo job and where a gap of every ring is wanted.
func TestEachRowLeads(t *testing.T) {
	answers := map[string]Answer{"gaps": after(t, "pump", Entry{"set", "cylinders[0].readings[3].diameter", []string{"78.34", " mm"}})}
	for name := range demos(t) {
		answers[name] = after(t, name)
	}
	for name, a := range answers {
		for row := range strings.SplitSeq(a.Head, "<li>Cylinder") {
			if said, links, _ := strings.Cut(row, "<ul"); strings.Contains(said, ": ") && links == "" && !strings.Contains(said, "<button") && !strings.HasPrefix(said, "<h2>") {
				t.Errorf("%s: no way from %q", name, said)
			}
		}
	}
}

// TestDoubtTaken: where pistons are bought by a doubt that nobody stated, there is a way to each box that would say it, and none
// once it is said.
func TestDoubtTaken(t *testing.T) {
	said := []Entry{{"set", "gauge.dial_error", []string{"0.002", " mm"}}, {"set", "gauge.temperatures.place_to_place", []string{"0.3", " K"}}}
	bare := []Entry{{Do: "drop", At: "gauge.dial_error"}, {Do: "drop", At: "gauge.temperatures.place_to_place"}, {Do: "drop", At: "engine.oversizes[1].pistons"},
		{Do: "drop", At: "cylinders[0].piston"}, {Do: "drop", At: "cylinders[1].piston"}, {Do: "drop", At: "cylinders[0].honing"}, {"set", "counted.passes", []string{"0"}}}
	a := after(t, "pump", bare...)
	leadsSomewhere(t, a)
	if a.Now.Words != wordNext+"get and measure the pistons" || !strings.Contains(a.Head, text(wordTaken)) || !strings.Contains(a.Head, `href="#gauge-dial_error"`) {
		t.Fatalf("%v: %s", a.Now, a.Head)
	}
	if b := after(t, "pump", append(bare, said...)...); b.Now != a.Now || strings.Contains(b.Head, `href="#gauge-dial_error"`) {
		t.Errorf("%v: %s", b.Now, b.Head)
	}
}
