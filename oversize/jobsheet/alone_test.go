// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"maps"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestOneReadingCutsNothing: a good bore with one digit wrong in one reading is read there again, and not cut; a bore that two
// readings of that place, or others beside it, find past a limit is.
func TestOneReadingCutsNothing(t *testing.T) {
	asked := func(s jobsheet.Sheet) bool {
		return anyRowSays(s, "without it no limit is passed")
	}
	for n := range 12 {
		j := honest{bore: 80, stroke: 76, cylinders: 1, r: rand.New(rand.NewPCG(3, 7))}.tree(false)
		c := cylinderOf(j, 0)
		list := c["readings"].([]any)
		if s := mustPlan(t, j); asked(s) || s.Next != jobsheet.StepDeglaze {
			t.Fatalf("as it is: %v", s.Next)
		}
		r := list[n].(tree)
		d := numberOf(t, r["diameter"])
		slip := maps.Clone(r)
		slip["diameter"] = fmt.Sprintf("%.3f mm", d+0.2)
		list[n] = slip
		if s := mustPlan(t, j); !asked(s) || s.Next >= jobsheet.StepLeaveUntouched {
			t.Errorf("reading %d slipped by 0.2 mm: asked %v, next %v", n, asked(s), s.Next)
		}
		again := maps.Clone(slip)
		again["diameter"] = fmt.Sprintf("%.3f mm", d+0.2005)
		put(t, j, "cylinders.0.readings", append(slices.Clone(list), any(again)))
		put(t, j, "counted.readings", len(list)+1)
		if s := mustPlan(t, j); asked(s) || s.Next == jobsheet.StepDeglaze || len(s.Choice.Cylinders) == 0 {
			t.Errorf("reading %d, read twice: asked %v, next %v", n, asked(s), s.Next)
		}
	}
}
