// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"math"
	"slices"
	"testing"

	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestLargestOfMany: the largest of many places may be it by chance. Called beyond the greatest clearance it must stand further
// out, by as much as makes the chance of it for each place as many times smaller.
func TestLargestOfMany(t *testing.T) {
	// chance returns the probability of a reading as far out as the first that is called beyond.
	chance := func(places int) float64 {
		const steps = 1000 // of a standard uncertainty of 1 µm
		at := func(k int) bool {
			c := cylinder("1", mm("0.09")+units.Length(k)*units.Micrometre/steps)
			c.Largest.Std, c.Places = units.Micrometre, places
			choice, err := oversize.Choose(pump(), []oversize.Cylinder{c}, uncertainty.Risk{})
			if err != nil {
				t.Fatal(err)
			}
			return slices.ContainsFunc(choice.Cylinders[0].Refused, func(r oversize.Refusal) bool { return r.Reason == oversize.ClearanceBeyond })
		}
		lo, hi := 0, 6*steps
		if at(lo) || !at(hi) {
			t.Fatal("no threshold")
		}
		for hi-lo > 1 {
			if mid := (lo + hi) / 2; at(mid) {
				hi = mid
			} else {
				lo = mid
			}
		}
		return math.Erfc(float64(hi)/steps/math.Sqrt2) / 2
	}
	one := chance(1)
	if none := chance(0); none != one {
		t.Errorf("no places said: %v, one: %v", none, one)
	}
	for _, places := range []int{2, 9, 40} {
		if got := one / chance(places); math.Abs(got/float64(places)-1) > 0.02 {
			t.Errorf("%d places: the chance is %v times smaller", places, got)
		}
	}
}
