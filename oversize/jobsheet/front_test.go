// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// frontOf returns the front page of a job, its lines unbroken.
func frontOf(t *testing.T, j tree) string {
	t.Helper()
	text := asPrinted(t, mustPlan(t, j))
	front, _, _ := strings.Cut(text, "Cautions stand")
	return unbroken(front)
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

// TestHoneCanBeSet: the speeds on the front page are ones that can be set, and every one of them leaves the angle wanted:
// its half is the angle whose tangent is the speed along the bore over the speed round it.
func TestHoneCanBeSet(t *testing.T) {
	line := regexp.MustCompile(`HONE: (\d+) rev/min \((\d+) rev/min to (\d+) rev/min will do\), (\d+) cycles/min \((\d+) strokes\): about (\d+)° included`)
	for name, want := range map[string]struct{ bore, stroke, angle, tolerance float64 }{
		"pump": {78.504, 95, 45, 5}, "two-stroke": {60.504, 91, 60, 6}, "inch": {80.152, 114.3, 40, 5},
	} {
		said := line.FindStringSubmatch(frontOf(t, demoTrees(t)[name]))
		if said == nil {
			t.Errorf("%s: %s", name, frontOf(t, demoTrees(t)[name]))
			continue
		}
		var n [7]float64
		for i := 1; i < len(n); i++ {
			n[i], _ = strconv.ParseFloat(said[i], 64)
		}
		for _, spindle := range n[1:4] {
			leaves := 360 / math.Pi * math.Atan(2*want.stroke*n[4]/(math.Pi*want.bore*spindle))
			if math.Abs(leaves-want.angle) > want.tolerance {
				t.Errorf("%s: %v rev/min leaves %.2f°", name, spindle, leaves)
			}
		}
		if n[1] < n[2] || n[1] > n[3] || n[5] != 2*n[4] || n[6] != want.angle {
			t.Errorf("%s: %v", name, said[0])
		}
	}
}

// TestRidgeIsTakenOff: a bore that is kept, and was read above ring travel, shows the ridge that a new top ring strikes.
func TestRidgeIsTakenOff(t *testing.T) {
	const says = "The ridge at the top taken off"
	for _, over := range []string{"67.000 mm", "67.035 mm"} { // the wall is 67.0361 mm below it
		j := kept(t)
		c := cylinderOf(j, 0)
		for _, axis := range []string{"thrust", "36°", "72°", "108°", "144°"} {
			c["readings"] = append(c["readings"].([]any), tree{"depth": "3 mm", "axis": axis, "diameter": over})
		}
		put(t, j, "counted.readings", len(c["readings"].([]any)))
		s := mustPlan(t, j)
		said := false
		for _, r := range s.Checklist {
			said = said || strings.HasPrefix(r.Says, says)
		}
		if s.Next != jobsheet.StepDeglaze || said != (over == "67.000 mm") {
			t.Errorf("%s above: %v, said %v", over, s.Next, said)
		}
	}
}

// TestNoStopBeforeThePiston: without its piston a cylinder has a size to stop at by the box alone.
func TestNoStopBeforeThePiston(t *testing.T) {
	j := demoTrees(t)["two-stroke"]
	const warning = "STOP AT: not before its piston is measured"
	if strings.Contains(frontOf(t, j), warning) {
		t.Error("with its piston: ", warning)
	}
	put(t, j, "engine.oversizes.1.pistons", nil)
	if front := frontOf(t, j); !strings.Contains(front, warning) {
		t.Error(front)
	}
}

// TestOneReasonOnce: what stands in the way of several things in one way is said once.
func TestOneReasonOnce(t *testing.T) {
	j := demoTrees(t)["sleeve"]
	put(t, j, "engine.sleeve.interference", "0.10 to 0.12 mm") // more heat to slip home than the barrel stands
	if front := frontOf(t, j); strings.Count(front, "hotter than the part stands") != 1 || !strings.Contains(front, "seat cleans up, stress in the barrel, stress in the sleeve, slips home, stock to hone out, grip (") {
		t.Error(front)
	}
}

// TestLimitsThatDiffer: the limit beside a figure is that of every cylinder, or none: of two that stand at two sizes each has its own.
func TestLimitsThatDiffer(t *testing.T) {
	j := demoTrees(t)["pump"]
	if front := frontOf(t, j); !strings.Contains(front, " size, max 78.150 78.165 OVER 78.117 ok ") {
		t.Error(front)
	}
	c := cylinderOf(j, 1)
	put(t, c, "over", "0.25 mm")
	for _, r := range c["readings"].([]any) {
		d := numberOf(t, r.(tree)["diameter"])
		put(t, r, "diameter", fmt.Sprintf("%.3f mm", d+0.25))
	}
	if front := frontOf(t, j); !strings.Contains(front, " size 78.165 OVER 78.367 ok ") {
		t.Error(front)
	}
}

// TestOnePistonCame: of two pistons one has come; the sheet is written, holds the cut back and orders the other.
func TestOnePistonCame(t *testing.T) {
	j := demoTrees(t)["pump"]
	delete(cylinderOf(j, 0), "honing") // nothing is cut yet
	put(t, j, "counted.passes", 0)
	put(t, j, "engine.oversizes.1.pistons", []any{tree{"size": "78.446 ± 0.003 mm", "axis": "across pin", "coating": "0 mm"}})
	s := mustPlan(t, j)
	front := frontOf(t, j)
	if s.Next != jobsheet.StepGetPistons || !strings.Contains(front, "BUY: 1 × piston and rings for +0.5 mm") || !strings.Contains(front, "not before its piston is measured") {
		t.Error(front)
	}
}
