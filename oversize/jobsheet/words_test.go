// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"regexp"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/uncertainty/study"
)

// TestUntoldOfBoring: whoever bores is asked how the bar is set up and what it cuts; whoever keeps the bore is not.
func TestUntoldOfBoring(t *testing.T) {
	for _, field := range []string{"locating", "out_of_square", "surface"} {
		for _, bored := range []bool{true, false} {
			j := finished(bored, false)
			put(t, j, "cuts."+field, nil)
			r := rowOf(t, mustPlan(t, j), "engine.told")
			if asked := slices.Contains(r.Give, "cuts."+field); asked != bored {
				t.Errorf("cuts.%s left out, bored %t: asked %t", field, bored, asked)
			}
		}
	}
}

// TestOthersOfOne: an engine of one cylinder has no others, whether it is worked on or left as it is.
func TestOthersOfOne(t *testing.T) {
	for name, change := range map[string]map[string]any{
		"bored": nil,
		"plated": {"engine.wall": "plated", "engine.material": "aluminium block", "cylinders.0.plating_whole": true, "cuts": nil,
			"cylinders.0.proof": []any{}, "counted.proof": 0},
	} {
		j := finished(change == nil, false)
		for path, v := range change {
			put(t, j, path, v)
		}
		if r := rowOf(t, mustPlan(t, j), "cylinders[0].others"); r.State != notAsked {
			t.Errorf("%s: %v, %v", name, r.State, r.Step)
		}
	}
}

// TestReadingsBehindADoubt: from 2 to 1,000.
func TestReadingsBehindADoubt(t *testing.T) {
	for n, want := range map[int]bool{-2: false, 0: false, 1: false, 2: true, 1000: true, 1001: false} {
		var m jobsheet.Measured
		text := fmt.Sprintf("67.02 ± 0.004 mm (%d readings)", n)
		if err := m.UnmarshalText([]byte(text)); (err == nil) != want || want && m.Readings != n {
			t.Errorf("%s: %v, %v", text, m, err)
		}
	}
}

// TestStudyOnTheSheet: what the trials of a gauge tell apart is the doubt of a difference of two single readings.
func TestStudyOnTheSheet(t *testing.T) {
	j := finished(true, false)
	var trials []any
	for i, um := range []int{1, 4, 2, 0, 3, 5, 2, 1} {
		trials = append(trials, tree{"part": "ring", "person": "A", "reading": fmt.Sprintf("80.%03d mm", um+i%2)})
	}
	put(t, j, "gauge.study", trials)
	put(t, j, "counted.trials", len(trials))
	put(t, j, "gauge.repeatability", nil)
	s := mustPlan(t, j)
	if s.Study == nil {
		t.Fatal("no study")
	}
	e, err := s.Study.Doubt(study.Differences, 1)
	if err != nil {
		t.Fatal(err)
	}
	u, err := e.Expanded(0.95)
	if err != nil {
		t.Fatal(err)
	}
	b := asPrinted(t, s)
	told := regexp.MustCompile(`two places are told apart from ± ([0-9.]+) mm on`).FindStringSubmatch(unbroken(b))
	if told == nil {
		t.Fatal("the sheet does not say what is told apart")
	}
	if got, err := units.ParseLength(told[1] + " mm"); err != nil || (got-u).Abs() > units.Micrometre/2 {
		t.Errorf("told apart from %s mm on, want %v", told[1], u)
	}
}

// TestOneIsCounted: what is asked for where the job holds any is asked for where it holds one.
func TestOneIsCounted(t *testing.T) {
	j := finished(true, false)
	put(t, j, "cylinders.0.texture", []any{tree{"place": "middle", "texture": tree{"ra": "0.4 µm"}}})
	put(t, j, "counted.textures", nil)
	if _, err := planned(t, j); err == nil || !strings.Contains(err.Error(), "counted.textures") {
		t.Error(err)
	}
	put(t, j, "counted.textures", 1)
	mustPlan(t, j)
}
