// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
)

// typing returns the entries by which somebody makes a job from an empty page, in the order of the form, and how many
// boxes are filled in by that: a number, a choice or a tick is one, a window or a value with its doubt two; what the page
// writes by itself (names of cylinders, places from a layout, rows for rings, what a word or a confirmation is about) is none.
func typing(t testing.TB, job *node) (entries []Entry, boxes int) {
	t.Helper()
	proposed := false
	set := func(path string) {
		n := job.at(path)
		if n == nil {
			return
		}
		k := kinds[pattern(path)]
		parts := k.shows(n.shown())
		filled := 0
		switch {
		case k.many:
			lines, unit := k.showsMany(n)
			parts, filled = []string{lines, unit}, len(n.items)
		case k.several:
			parts = nil
			for _, item := range n.items {
				parts = append(parts, item.text)
			}
			filled = len(parts)
		case k.boxes == 0:
			parts, filled = []string{"on"}, 1
		default:
			filled = 1
			if k.boxes == 2 && parts[0] != "" && parts[2] != "" {
				filled = 2
			}
		}
		switch p := pattern(path); {
		case p == "cylinders[].name" && n.text == strconv.Itoa(1+int(path[len("cylinders[")]-'0')),
			proposed && (strings.HasSuffix(p, "s[].depth") || strings.HasSuffix(p, "s[].axis")),
			strings.HasPrefix(p, "cylinders[].proof[].") && (strings.HasSuffix(p, "depth") || strings.HasSuffix(p, "axis")),
			p == "cylinders[].rings[].ring", p == "accepted[].row", p == "accepted[].stood", p == "confirmed[].field", p == "confirmed[].value":
			filled = 0
		}
		entries = append(entries, Entry{"set", path, parts})
		boxes += filled
	}
	var walk func(p part, base string)
	inside := func(p part, base string) {
		for _, name := range append(append([]string(nil), p.boxes...), p.more...) {
			set(join(base, name))
		}
		for _, below := range p.parts {
			walk(below, base)
		}
	}
	walk = func(p part, base string) {
		if p.list == "" {
			inside(p, base)
			return
		}
		path := join(base, p.list)
		l := job.at(path)
		if l == nil {
			return
		}
		if len(l.items) == 0 {
			if p.empty {
				entries, boxes = append(entries, Entry{"none", path, []string{"on"}}), boxes+1
			}
			return
		}
		proposed = p.grid && job.at("engine.layout.ring_bottom") != nil
		for i := range l.items {
			if !p.fixed {
				entries = append(entries, Entry{Do: "add", At: path})
			}
			inside(p, fmt.Sprintf("%s[%d]", path, i))
		}
		proposed = false
	}
	for _, section := range form {
		walk(section, "")
	}
	return entries, boxes
}

// TestWholeRound: every demo job, from before the first reading to the record of the last proof, can be typed into an empty
// page, and is that job and no other.
func TestWholeRound(t *testing.T) {
	for name, file := range demos(t) {
		job, err := parse(file)
		if err != nil {
			t.Fatal(err)
		}
		entries, boxes := typing(t, job)
		if boxes < 10 {
			t.Errorf("%s: %d boxes", name, boxes)
		}
		opened := theBench.turn(Request{Open: &file})
		typed := theBench.turn(Request{Entries: entries})
		want, got := tree(t, opened.Job).(map[string]any), tree(t, typed.Job).(map[string]any)
		for _, c := range want["cylinders"].([]any) { // nothing read is the same with a list of nothing
			if l, ok := c.(map[string]any)["readings"].([]any); ok && len(l) == 0 {
				delete(c.(map[string]any), "readings")
			}
		}
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: typed, it is another job:\n%s\n%s", name, typed.Job, opened.Job)
		}
		if typed.Sheet != opened.Sheet {
			t.Errorf("%s: typed, it has another sheet", name)
		}
	}
}

// TestFewestBoxes: the smallest jobs kept here reach a route and the last step, and no longer do without any one of their boxes; the
// README says how many boxes that takes.
func TestFewestBoxes(t *testing.T) {
	readme, err := os.ReadFile("../../README.md")
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct {
		file, says string
		reaches    func(jobsheet.Sheet) bool
	}{
		{"testdata/route.json", "a route takes %d boxes", hasRoute},
		{"testdata/reassemble.json", "\"reassemble\" %d", isReady},
	} {
		data, err := os.ReadFile(c.file)
		if err != nil {
			t.Fatal(err)
		}
		job, err := parse(string(data))
		if err != nil {
			t.Fatal(err)
		}
		entries, boxes := typing(t, job)
		typed, err := parse(theBench.turn(Request{Entries: entries}).Job)
		if err != nil {
			t.Fatal(err)
		}
		p := theBench.planned(typed)
		if p.sheet == nil || !c.reaches(*p.sheet) {
			t.Errorf("%s does not reach it: %v", c.file, p.faults)
		}
		for _, e := range entries {
			for _, left := range without(e) {
				fewer := typed.clone()
				set(fewer, e.At, left)
				if p := theBench.planned(fewer); p.sheet != nil && c.reaches(*p.sheet) {
					t.Errorf("%s: not needed: %s, or %q will do", c.file, e.At, left)
				}
			}
		}
		if says := fmt.Sprintf(c.says, boxes); !strings.Contains(strings.Join(strings.Fields(string(readme)), " "), says) {
			t.Errorf("the README does not say %q", says)
		}
	}
}

// without returns what stands in the boxes of a field when one of them is left empty, but for names that the page gives itself.
func without(e Entry) (all [][]string) {
	if e.Do != "set" || strings.HasSuffix(e.At, ".name") && strings.HasPrefix(e.At, "cylinders") {
		return nil
	}
	k := kinds[pattern(e.At)]
	for i := range max(k.boxes, 1) {
		at := 2 * i // what joins two boxes stands between them
		if at < len(e.Parts) && e.Parts[at] != "" {
			left := slices.Clone(e.Parts)
			left[at] = ""
			all = append(all, left)
		}
	}
	return all
}

func hasRoute(s jobsheet.Sheet) bool {
	return len(s.Choice.Cylinders) > 0 && s.Choice.Route != oversize.Undecided && s.Choice.Route != oversize.MakersProcess
}

func isReady(s jobsheet.Sheet) bool { return s.Next == jobsheet.StepReassemble }
