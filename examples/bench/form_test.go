// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestNotKnown: the library knows what the page offers to be not known.
func TestNotKnown(t *testing.T) {
	for _, what := range append([]string{"anything else"}, notKnown...) {
		_, err := jobsheet.ReadJob(strings.NewReader(fmt.Sprintf(`{"not_known": [%q]}`, what)))
		var fs jobsheet.Faults
		if !errors.As(err, &fs) || strings.Contains(fs.Error(), "not_known[0]") != (what == "anything else") {
			t.Errorf("%s: %v", what, err)
		}
	}
}

// TestEveryField: every field of a job is in the form, once, with a label of its own, or in the list of those that are
// kept and not shown.
func TestEveryField(t *testing.T) {
	shown := map[string]int{}
	var walk func(p part, base string)
	walk = func(p part, base string) {
		if words, ok := partWords[p.key]; !ok || words[0] == "" {
			t.Errorf("part %q has no head", p.key)
		}
		if p.list != "" {
			base = join(base, p.list) + "[]"
		}
		for _, name := range append(append([]string(nil), p.boxes...), p.more...) {
			shown[join(base, name)]++
		}
		for _, below := range p.parts {
			walk(below, base)
		}
	}
	for _, section := range form {
		walk(section, "")
	}
	paths, _ := leaves()
	if len(paths) < 200 {
		t.Fatalf("%d fields, want more", len(paths))
	}
	for _, path := range paths {
		why, kept := notShown[path]
		switch {
		case kept && why == "":
			t.Errorf("%s is not shown, and nobody says why", path)
		case kept && shown[path] > 0:
			t.Errorf("%s is in the form and in the list of those that are not shown", path)
		case !kept && shown[path] != 1:
			t.Errorf("%s is %d times in the form, and not in the list of those that are not shown", path, shown[path])
		case !kept && label(path) == path[strings.LastIndexByte(path, '.')+1:]:
			t.Errorf("%s has no words", path)
		}
		delete(shown, path)
	}
	for path := range shown {
		t.Errorf("%s is in the form and no field of a job", path)
	}
	for path := range notShown {
		if _, ok := kinds[path]; !ok {
			t.Errorf("%s is no field of a job: take it off the list", path)
		}
	}
}
