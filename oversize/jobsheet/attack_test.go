// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
)

// A tree is a job as it stands in its file, by the names of its fields: whatever stands there is attacked by
// standing there.
type tree = map[string]any

func demoTrees(t testing.TB) map[string]tree {
	t.Helper()
	names, err := filepath.Glob("../../examples/refresh/jobs/*.json")
	if err != nil || len(names) < 9 {
		t.Fatalf("%d demo jobs: %v", len(names), err)
	}
	all := map[string]tree{}
	for _, name := range names {
		data, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var j tree
		if err := json.Unmarshal(data, &j); err != nil {
			t.Fatal(err)
		}
		all[strings.TrimSuffix(filepath.Base(name), ".json")] = j
	}
	return all
}

// attacked are the demo jobs, those in which everything stands, and honest ones that nobody drew by hand.
func attacked(t testing.TB) map[string]tree {
	t.Helper()
	all := demoTrees(t)
	maps.Copy(all, fullJobs(t))
	maps.Copy(all, spoiltJobs(t))
	asked := 0
	for i, h := range honestJobs(drawnJobs, 11) {
		h.cylinders = min(h.cylinders, 2)
		j := h.tree(i%3 > 0)
		// One in a thousand is asked about by chance, and any change of it makes that chance another.
		if slices.ContainsFunc(mustPlan(t, j).Ledger, func(r jobsheet.Row) bool { return name(r.Demand) == "usual" && !settled(r.State) }) {
			asked++
			continue
		}
		all[fmt.Sprintf("drawn %d", i)] = j
	}
	if asked > 1+drawnJobs/100 {
		t.Errorf("%d of %d honest jobs are asked whether they are", asked, drawnJobs)
	}
	return all
}

// planned returns the sheet of a tree, or why it is refused.
func planned(t testing.TB, j tree) (jobsheet.Sheet, error) {
	t.Helper()
	data, err := json.Marshal(j)
	if err != nil {
		t.Fatal(err)
	}
	job, err := jobsheet.ReadJob(bytes.NewReader(data))
	if err != nil {
		return jobsheet.Sheet{}, err
	}
	return jobsheet.Plan(job)
}

// A place is a value in a tree, and the ways to change it for a while.
type spot struct {
	path   string
	value  any
	set    func(any)
	remove func() (undo func()) // of a field or an item
	item   bool
}

// spots walks every field and every item below a value.
func spots(path string, v any, visit func(spot)) {
	switch v := v.(type) {
	case tree:
		for _, name := range slices.Sorted(maps.Keys(v)) {
			at, was := strings.TrimPrefix(path+"."+name, "."), v[name]
			visit(spot{path: at, value: was, set: func(x any) { v[name] = x }, remove: func() func() {
				delete(v, name)
				return func() { v[name] = was }
			}})
			if inner, ok := was.([]any); ok {
				for i := range inner {
					visit(spot{path: fmt.Sprintf("%s[%d]", at, i), value: inner[i], item: true, set: func(x any) { inner[i] = x }, remove: func() func() {
						v[name] = slices.Delete(slices.Clone(inner), i, i+1)
						return func() { v[name] = was }
					}})
				}
			}
			spots(at, was, visit)
		}
	case []any:
		for i := range v {
			spots(fmt.Sprintf("%s[%d]", path, i), v[i], visit)
		}
	}
}

// boldness orders what a person does on the word of a step: to go together, or on untouched, is bolder than
// any cut, and any cut than reading. Two cuts that are not the same are each bolder than the other.
func bolder(than, next jobsheet.CylinderSheet, was, is oversize.CylinderChoice) bool {
	level := func(s jobsheet.Step) int {
		switch s {
		case jobsheet.StepReassemble, jobsheet.StepLeaveUntouched:
			return 2
		case jobsheet.StepFitSleeve, jobsheet.StepBore, jobsheet.StepHone, jobsheet.StepDeglaze, jobsheet.StepRework:
			return 1
		}
		return 0
	}
	a, b := level(than.Next), level(next.Next)
	return b > a || b == 1 && a == 1 && (than.Next != next.Next || was.Route != is.Route || was.Over != is.Over)
}

// settled reports whether a row holds nothing up.
func settled(s jobsheet.State) bool {
	return s == jobsheet.StateProven || s == jobsheet.StateAccepted || s == jobsheet.StateNotAsked
}

// gapOpen reports whether an agreement that is gone was of a ring whose gap is not shown any more: two facts of which
// one was taken away cannot contradict each other, and the row of that fact is open.
func gapOpen(s jobsheet.Sheet, agreement jobsheet.Row) bool {
	ring, ok := strings.CutPrefix(agreement.Of, "gaps of ring ")
	return ok && slices.ContainsFunc(s.Ledger, func(r jobsheet.Row) bool {
		return name(r.Demand) == "gap" && r.Cylinder == agreement.Cylinder && r.Of == ring && !settled(r.State)
	})
}

// helped lists how a sheet is bolder than the one that more was known for.
func helped(before, after jobsheet.Sheet, own func(jobsheet.Row) bool) []string {
	var list []string
	rows := map[string]jobsheet.Row{}
	for _, r := range after.Ledger {
		rows[r.Key] = r
	}
	for _, r := range before.Ledger {
		now, there := rows[r.Key]
		switch {
		case own(r), name(r.Demand) == "agreement" && !there && gapOpen(after, r):
		case !there && !settled(r.State):
			list = append(list, fmt.Sprintf("row %s, %v, is gone", r.Key, r.State))
		case there && !settled(r.State) && settled(now.State):
			list = append(list, fmt.Sprintf("row %s: %v, was %v", r.Key, now.State, r.State))
		}
	}
	for i := range min(len(before.Cylinders), len(after.Cylinders)) {
		var was, is oversize.CylinderChoice
		if len(before.Choice.Cylinders) > 0 {
			was = before.Choice.Cylinders[i]
		}
		if len(after.Choice.Cylinders) > 0 {
			is = after.Choice.Cylinders[i]
		}
		if bolder(before.Cylinders[i], after.Cylinders[i], was, is) {
			list = append(list, fmt.Sprintf("cylinder %d: %v %v %v, was %v %v %v", i, after.Cylinders[i].Next, is.Route, is.Over, before.Cylinders[i].Next, was.Route, was.Over))
		}
	}
	if len(after.Cylinders) < len(before.Cylinders) {
		list = append(list, "a cylinder is gone")
	}
	return list
}

// ownRow says which rows a field that nobody has to give may take with it, and no others.
var ownRow = []struct {
	field  *regexp.Regexp
	demand string
}{
	{regexp.MustCompile(`^engine\.rings\[\d+\]\.hot_gap$`), "hot gap"},
	{regexp.MustCompile(`^engine\.rings\[\d+\]\.side$`), "side clearance"},
	{regexp.MustCompile(`^engine\.texture`), "texture"},
	{regexp.MustCompile(`^engine\.limits(\.roundness|\.cylindricity)?$`), "form"},
	{regexp.MustCompile(`^engine\.limits\.(roundness|cylindricity)$`), "form"},
}

func mayTake(path string) func(jobsheet.Row) bool {
	return func(r jobsheet.Row) bool {
		for _, o := range ownRow {
			if o.field.MatchString(path) && name(r.Demand) == o.demand {
				return true
			}
		}
		// A reading that alone passes a limit passes none where that is left out; what the maker allows is asked before a bore is kept.
		return strings.HasPrefix(path, "engine.limits") && strings.Contains(r.Says, "without it no limit is passed")
	}
}

// excepted are the risks that a workshop states, and the doubts that it states against a printed default.
var excepted = regexp.MustCompile(`^risk|\.dial_error$|\.repeatability$|\.place_to_place$|material$|barrel$`)

// ignorance takes every field away, one at a time: the job is refused, or no row is the better for it.
func ignorance(t *testing.T, name string, j tree) (tried int) {
	before, err := planned(t, j)
	if err != nil {
		t.Fatalf("%s: %v", name, err)
	}
	turn := 0
	spots("", j, func(s spot) {
		if s.item || excepted.MatchString(s.path) {
			return
		}
		if turn++; turn%stride != 0 {
			return
		}
		undo := s.remove()
		after, err := planned(t, j)
		undo()
		tried++
		if err != nil {
			return
		}
		for _, h := range helped(before, after, mayTake(s.path)) {
			t.Errorf("%s without %s: %s", name, s.path, h)
		}
	})
	return tried
}

func TestIgnoranceNeverHelps(t *testing.T) {
	n := 0
	jobs := attacked(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) { // in one order, so that every run tries the same
		j := jobs[name]
		n += ignorance(t, name, j)
	}
	t.Logf("%d fields taken away", n)
}

// evidence is what can be thinned out.
var evidence = regexp.MustCompile(`(readings|proof|rings|pistons|honing|pits|ports|traces|radii|deviations|texture|profiles|heights)\[\d+\]$`)

func TestEvidenceCannotBeThinnedOut(t *testing.T) {
	n, turn := 0, 0
	jobs := attacked(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) { // in one order, so that every run tries the same
		j := jobs[name]
		before, err := planned(t, j)
		if err != nil {
			t.Fatal(err)
		}
		spots("", j, func(s spot) {
			if turn++; !s.item || !evidence.MatchString(s.path) || turn%stride != 0 {
				return
			}
			undo := s.remove()
			after, err := planned(t, j)
			undo()
			n++
			if err != nil {
				return
			}
			for _, h := range helped(before, after, func(jobsheet.Row) bool { return false }) {
				t.Errorf("%s without %s: %s", name, s.path, h)
			}
		})
	}
	t.Logf("%d pieces of evidence taken away", n)
}

// TestNothingIsKnownExactly: to leave out how far a value may be off is not to know it exactly.
func TestNothingIsKnownExactly(t *testing.T) {
	n, turn := 0, 0
	jobs := attacked(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) {
		j := jobs[name]
		before, err := planned(t, j)
		if err != nil {
			t.Fatal(err)
		}
		spots("", j, func(s spot) {
			text, ok := s.value.(string)
			value, doubt, doubtful := strings.Cut(text, " ± ")
			if !ok || !doubtful || words.MatchString(s.path) {
				return
			}
			if turn++; turn%stride != 0 {
				return
			}
			if f := strings.Fields(doubt); len(f) > 1 { // the unit stands behind the doubt
				value += " " + f[1]
			}
			s.set(value)
			after, err := planned(t, j)
			s.set(s.value)
			n++
			if err != nil {
				return
			}
			for _, h := range helped(before, after, func(jobsheet.Row) bool { return false }) {
				t.Errorf("%s, %s %s for %s: %s", name, s.path, value, text, h)
			}
		})
	}
	t.Logf("%d doubts left out", n)
}

var numeral = regexp.MustCompile(`\d+(\.\d+)?`)

// slips returns a text with one slip: the point moved or lost, a zero, one unit for another.
func slips(text string) []string {
	var list []string
	for _, at := range numeral.FindAllStringIndex(text, -1) {
		x, err := strconv.ParseFloat(text[at[0]:at[1]], 64)
		if err != nil || x == 0 {
			continue
		}
		for _, to := range []string{
			strconv.FormatFloat(x*10, 'f', -1, 64), strconv.FormatFloat(x/10, 'f', -1, 64), "0",
			strings.Replace(text[at[0]:at[1]], ".", "", 1),
		} {
			if to != text[at[0]:at[1]] {
				list = append(list, text[:at[0]]+to+text[at[1]:])
			}
		}
	}
	for _, u := range [][2]string{{" mm", " in"}, {" in", " mm"}, {" °C", " °F"}, {" °F", " °C"}} {
		if strings.HasSuffix(text, u[0]) {
			list = append(list, strings.TrimSuffix(text, u[0])+u[1])
		}
	}
	return list
}

// words are fields whose digits are names and dates.
var words = regexp.MustCompile(`(^|\.)(title|name|ring|by|why|on|set_on|stood|row|field|value|version|cylinders)$|^risk`)

func TestOneSlip(t *testing.T) {
	n, bold, turn := 0, 0, 0
	jobs := attacked(t)
	for _, name := range slices.Sorted(maps.Keys(jobs)) { // in one order, so that every run tries the same
		j := jobs[name]
		before, err := planned(t, j)
		if err != nil {
			t.Fatal(err)
		}
		spots("", j, func(s spot) {
			if words.MatchString(s.path) {
				return
			}
			var variants []any
			switch v := s.value.(type) {
			case string:
				for _, x := range slips(v) {
					variants = append(variants, x)
				}
			case float64:
				variants = []any{v * 10, v / 10, 0.0}
			}
			for _, x := range variants {
				if turn++; turn%slipStride != 0 {
					continue
				}
				s.set(x)
				after, err := planned(t, j)
				s.set(s.value)
				n++
				if err != nil {
					continue
				}
				for i := range before.Cylinders {
					var was, is oversize.CylinderChoice
					if len(before.Choice.Cylinders) > 0 {
						was = before.Choice.Cylinders[i]
					}
					if len(after.Choice.Cylinders) > 0 {
						is = after.Choice.Cylinders[i]
					}
					if bolder(before.Cylinders[i], after.Cylinders[i], was, is) {
						bold++
						t.Errorf("%s, %s %v for %v: cylinder %d: %v %v %v, was %v %v %v", name, s.path, x, s.value, i,
							after.Cylinders[i].Next, is.Route, is.Over, before.Cylinders[i].Next, was.Route, was.Over)
					}
				}
			}
		})
	}
	t.Logf("%d slips, %d bolder", n, bold)
}
