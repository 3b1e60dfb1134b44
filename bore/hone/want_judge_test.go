// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"fmt"
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestWantJudge: 45° ± 5° included, with angles whose doubt lies inside, across and outside of it.
func TestWantJudge(t *testing.T) {
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree}
	for _, c := range []struct {
		angle string
		doubt units.Angle
		is    uncertainty.Verdict
	}{
		{"45° included", 0, uncertainty.Within},
		{"45° included", 5 * units.Degree, uncertainty.Within},
		{"45° included", 5.1 * units.Degree, uncertainty.Undecided},
		{"48° included", 2 * units.Degree, uncertainty.Within},
		{"48.5° included", 2 * units.Degree, uncertainty.Undecided},
		{"41.5° included", 2 * units.Degree, uncertainty.Undecided},
		{"52.5° included", 2 * units.Degree, uncertainty.Beyond},
		{"37.5° included", 2 * units.Degree, uncertainty.Beyond},
		{"45° included", -1, uncertainty.Undecided},
	} {
		if got := want.Judge(crosshatch(c.angle), c.doubt); got != c.is {
			t.Errorf("%s ± %v: %v, want %v", c.angle, c.doubt, got, c.is)
		}
	}
	if got := (hone.Want{}).Judge(crosshatch("45° included"), 0); got != uncertainty.Undecided {
		t.Errorf("nothing wanted: %v", got)
	}
}

// TestWantJudgeDoubt: without doubt the tolerance alone decides, to the degree, and more doubt never decides.
func TestWantJudgeDoubt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		degrees := func(name string, lo, hi int) units.Angle {
			return units.Angle(rapid.IntRange(lo, hi).Draw(t, name)) * units.Degree / 10
		}
		want, err := hone.Included(degrees("wanted", 200, 900))
		if err != nil {
			t.Fatal(err)
		}
		got, err := hone.Included(degrees("measured", 50, 1200))
		if err != nil {
			t.Fatal(err)
		}
		w := hone.Want{Crosshatch: want, Tolerance: degrees("tolerance", 10, 150)}
		off := math.Abs(got.Included().In(units.Degree) - want.Included().In(units.Degree))
		if v := w.Judge(got, 0); v == uncertainty.Undecided || (v == uncertainty.Within) != (off <= w.Tolerance.In(units.Degree)+1e-9) {
			t.Fatalf("%v against %v: %v", got, w, v)
		}
		small, more := degrees("doubt", 0, 50), degrees("more", 0, 50)
		if v := w.Judge(got, small+more); v != uncertainty.Undecided && v != w.Judge(got, small) {
			t.Fatalf("%v ± %v: %v, ± %v: %v", got, small, w.Judge(got, small), small+more, v)
		}
	})
}

// A photograph gave 43° with a doubt of 1.5°.
func ExampleWant_Judge() {
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree}
	fmt.Println(want.Judge(crosshatch("43° included"), 1.5*units.Degree))
	fmt.Println(want.Judge(crosshatch("41° included"), 1.5*units.Degree))
	// Output:
	// within
	// undecided
}
