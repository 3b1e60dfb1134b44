// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestCopiesWithAChange: the survey with one reading changed proves nothing, nor does another cylinder's proof.
func TestCopiesWithAChange(t *testing.T) {
	change := func(list []any) []any {
		list = slices.Clone(list)
		r := maps.Clone(list[1].(tree))
		d := numberOf(t, r["diameter"])
		r["diameter"] = fmt.Sprintf("%.4f mm", d+0.001)
		list[1] = r
		return list
	}
	j := finished(false, false)
	c := cylinderOf(j, 0)
	put(t, c, "proof", change(c["readings"].([]any)))
	put(t, j, "counted.proof", len(c["readings"].([]any)))
	if r := rowOf(t, mustPlan(t, j), "engine.cylinders[0].proof.usual"); r.State != jobsheet.StateOpen || !strings.Contains(r.Says, "once more") {
		t.Errorf("the survey, changed: %v, %s", r.State, r.Says)
	}
	j = demoTrees(t)["pump-finished"]
	put(t, j, "cylinders.1.proof", change(cylinderOf(j, 0)["proof"].([]any)))
	if s := mustPlan(t, j); s.Next >= jobsheet.StepLeaveUntouched || !anyRowSays(s, "cylinders[0] once more") {
		t.Errorf("another cylinder's proof, changed: next %v", s.Next)
	}
}

// TestCoarseDialIsBelieved: of a wall of which deglazing took 2 µm a dial that reads to 0.01 mm shows most places as before, also
// where nobody said how it repeats; one that reads to 0.001 mm would not.
func TestCoarseDialIsBelieved(t *testing.T) {
	for resolution, copied := range map[string]bool{"0.01 mm": false, "0.001 mm": true} {
		j := finished(false, false)
		for path, v := range map[string]any{"gauge.resolution": resolution, "gauge.repeatability": nil, "gauge.dial_error": nil} {
			put(t, j, path, v)
		}
		c, same := cylinderOf(j, 0), 0
		proof := c["proof"].([]any)
		for i, list := range [][]any{c["readings"].([]any), proof} {
			for k, r := range list {
				d := numberOf(t, r.(tree)["diameter"])
				r.(tree)["diameter"] = fmt.Sprintf("%.2f mm", d)
				if i == 1 && r.(tree)["diameter"] == c["readings"].([]any)[k].(tree)["diameter"] {
					same++
				}
			}
		}
		if same < len(proof)*3/4 || same == len(proof) {
			t.Fatalf("%d of %d as before", same, len(proof))
		}
		asked := anyRowSays(mustPlan(t, j), "the survey's")
		if asked != copied {
			t.Errorf("%s, %d of %d as before: asked %v", resolution, same, len(proof), asked)
		}
	}
}

// TestReadingsWrittenManyTimes: readings written down ten times each decide what they did not once, and are asked about; ten
// honest ones of each place are not, nor repeats by a coarse scale.
func TestReadingsWrittenManyTimes(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 83))
	for _, c := range []struct {
		name       string
		resolution float64 // mm
		times      int
		honest     bool
		asked      bool
	}{
		{"once", 0.002, 1, true, false}, {"ten times down", 0.002, 10, false, true}, {"ten times read", 0.002, 10, true, false},
		{"twice read", 0.002, 2, true, false}, {"a coarse scale", 0.01, 3, false, false},
	} {
		j := kept(t)
		put(t, j, "gauge.resolution", fmt.Sprintf("%.3f mm", c.resolution))
		put(t, j, "gauge.dial_error", nil)
		if put(t, j, "gauge.repeatability", nil); c.resolution == 0.002 {
			put(t, j, "gauge.repeatability", "0.0015 mm")
		}
		var list []any
		for _, one := range once(cylinderOf(j, 0)["readings"]) {
			at := one.(tree)
			d := numberOf(t, at["diameter"])
			read := func() string {
				return fmt.Sprintf("%.3f mm", math.Round((d+0.0015*r.NormFloat64())/c.resolution)*c.resolution)
			}
			first := read()
			for range c.times {
				if c.honest {
					first = read()
				}
				again := maps.Clone(at)
				again["diameter"] = first
				list = append(list, again)
			}
		}
		put(t, j, "cylinders.0.readings", list)
		put(t, j, "counted.readings", len(list))
		asked := slices.ContainsFunc(mustPlan(t, j).Ledger, func(r jobsheet.Row) bool {
			return name(r.Reason) == "looks slipped" && strings.Contains(r.Says, "written down again")
		})
		if asked != c.asked {
			t.Errorf("%s: asked %v", c.name, asked)
		}
	}
}

// TestGaugeThatSticks: a gauge that shows the same everywhere is asked about, where its scale tells as much as a hand scatters.
func TestGaugeThatSticks(t *testing.T) {
	for _, c := range []struct {
		resolution, size string
		asked            bool
	}{{"0.002 mm", "67.030 mm", true}, {"0.01 mm", "67.03 mm", false}} {
		j := kept(t)
		put(t, j, "gauge.resolution", c.resolution)
		put(t, j, "gauge.dial_error", nil)
		var list []any
		for i, r := range cylinderOf(j, 0)["readings"].([]any) {
			if i%2 == 0 { // once at each place
				at := maps.Clone(r.(tree))
				at["diameter"] = c.size
				list = append(list, at)
			}
		}
		put(t, j, "cylinders.0.readings", list)
		put(t, j, "counted.readings", len(list))
		s := mustPlan(t, j)
		asked := anyRowSays(s, "the same everywhere")
		if asked != c.asked || asked && s.Next >= jobsheet.StepLeaveUntouched {
			t.Errorf("%s: asked %v, next %v", c.resolution, asked, s.Next)
		}
	}
}
