// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"fmt"
	"maps"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// frontOf returns the front page of a job, its lines unbroken.
func frontOf(t *testing.T, j tree) string {
	t.Helper()
	var text bytes.Buffer
	if err := mustPlan(t, j).WriteText(&text); err != nil {
		t.Fatal(err)
	}
	front, _, _ := strings.Cut(text.String(), "Cautions stand")
	return strings.Join(strings.Fields(front), " ")
}

// TestWhyNotNamesWhatIsRefused: a wall that is never worked on has no sizes to be refused, and is not refused to be kept.
func TestWhyNotNamesWhatIsRefused(t *testing.T) {
	front := frontOf(t, demoTrees(t)["plated"])
	if !strings.Contains(front, "honing it: plating lifts") || !strings.Contains(front, "boring it: this wall") || !strings.Contains(front, "a sleeve: this wall") ||
		strings.Contains(front, "+0 mm") || strings.Contains(front, "keeping it") {
		t.Error(front)
	}
}

// kept returns a demo cylinder that can be kept, so far as its readings go.
func kept(t *testing.T) tree {
	j := demoTrees(t)["keep"]
	for _, path := range []string{"proof", "cylinders.0.proof", "cylinders.0.crosshatch", "counted.proof", "cylinders.0.feeler_test"} {
		put(t, j, path, nil)
	}
	for _, r := range cylinderOf(j, 0)["rings"].([]any) {
		put(t, r, "finished", nil)
		put(t, r, "side", nil)
	}
	return j
}

// TestChokeKeepsItsSign: a bore larger at the deck has no choke, and a figure without its sign would lie inside the window.
func TestChokeKeepsItsSign(t *testing.T) {
	j := kept(t)
	put(t, j, "engine.limits.taper", nil)
	put(t, j, "engine.limits.choke", "0.010 to 0.030 mm")
	if front := frontOf(t, j); !strings.Contains(front, "choke, 0.010 to 0.030 -0.01") {
		t.Error(front)
	}
}

// TestRouteComesFirst: where the route is open, the front page says why, and not what waits for it.
func TestRouteComesFirst(t *testing.T) {
	j := kept(t)
	put(t, j, "gauge.kind", "three-point") // blind to ovality
	for path, v := range map[string]any{"engine.oversizes": []any{}, "engine.honing_allowance": "0.04 mm", "engine.may_shift": "0 mm",
		"not_known": []any{"wear share", "least wall"}, "tools.hone": "rigid-stone hone", "counted.passes": 0} {
		put(t, j, path, v)
	}
	if front := frontOf(t, j); !strings.Contains(front, "Cylinder 1: wants: what to do is decided") || strings.Contains(front, "wants: ring gap") {
		t.Error(front)
	}
}

// TestNoCylinderIsLeftOff: the front page has every cylinder of a long engine, those without a column of their own by the worst
// of them, and says once what several want.
func TestNoCylinderIsLeftOff(t *testing.T) {
	j := kept(t)
	one := cylinderOf(j, 0)
	var list []any
	for i := range 6 {
		c := maps.Clone(one)
		if c["name"] = fmt.Sprint(i + 1); i == 5 {
			delete(c, "readings")
		}
		list = append(list, c)
	}
	put(t, j, "cylinders", list)
	put(t, j, "engine.cylinders", len(list))
	put(t, j, "counted.readings", 5*len(one["readings"].([]any)))
	front := frontOf(t, j)
	_, table, _ := strings.Cut(front, "in millimetres")
	if !strings.HasPrefix(table, " cyl 1 cyl 2 cyl 3 worst of 4 to 6 size 67.036 ok 67.036 ok 67.036 ok open ") {
		t.Error(front)
	}
	if strings.Count(front, "wants: what to do is decided") > 1 {
		t.Error("said of each alone: ", front)
	}
}

// TestSmallGapIsFiled: a gap that has to be filed is not measured better first because its ends may touch in work.
func TestSmallGapIsFiled(t *testing.T) {
	j := demoTrees(t)["pump-finished"]
	put(t, cylinderOf(j, 0), "rings.0.finished", "0.22 ± 0.02 mm")
	s := mustPlan(t, j)
	for _, r := range s.Ledger {
		if n := name(r.Demand); r.Cylinder == s.Cylinders[0].Name && r.Of == "top" && (n == "gap" || n == "running gap") && r.State != jobsheet.StateOpen {
			t.Errorf("%s: %v", r.Key, r.State)
		}
	}
	if got := s.Cylinders[0].Next; got != jobsheet.StepSetRingGaps {
		t.Errorf("next: %v", got)
	}
}
