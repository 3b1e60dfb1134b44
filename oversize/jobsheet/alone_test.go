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

// TestOneReadingOfOneOfTwo: where the size is one for all, a reading decides or not by what the other cylinder asks for, and not by
// what a single reading there does.
func TestOneReadingOfOneOfTwo(t *testing.T) {
	for _, c := range []struct {
		name          string
		first, second float64 // mm, added to one reading of each
		twice         bool    // the second's place is read twice
		want          [2]bool // asked of each
	}{
		{"one slipped", 0.2, 0, false, [2]bool{true, false}},
		{"both slipped", 0.2, 0.21, false, [2]bool{true, true}},
		{"the other is bored as far anyway", 0.19, 0.2, true, [2]bool{false, false}},
		{"the other is bored, and not as far", 0.6, 0.2, true, [2]bool{true, false}},
	} {
		j := honest{bore: 80, stroke: 76, cylinders: 2, r: rand.New(rand.NewPCG(3, 7))}.tree(false)
		for i, by := range []float64{c.first, c.second} {
			cyl := cylinderOf(j, i)
			list := cyl["readings"].([]any)
			r := maps.Clone(list[1].(tree))
			d := numberOf(t, r["diameter"]) + by
			r["diameter"] = fmt.Sprintf("%.3f mm", d)
			list[1] = r
			if i == 1 && c.twice {
				again := maps.Clone(r)
				again["diameter"] = fmt.Sprintf("%.3f mm", d+0.001)
				cyl["readings"] = append(list, again)
				put(t, j, "counted.readings", 2*len(list)+1)
			}
		}
		s := mustPlan(t, j)
		for i, want := range c.want {
			if got := anyRowSays(s, fmt.Sprintf("cylinders[%d].readings[1] ", i)); got != want {
				t.Errorf("%s: cylinder %d asked %v, want %v; next %v", c.name, i, got, want, s.Next)
			}
		}
	}
}
