// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"testing"

	"borewright.example/oversize"
	"borewright.example/units"
)

// checkUsual wants a figure inside its band, and outside of it with the point moved by a place or one unit
// taken for the other.
func checkUsual(t *testing.T, what string, band units.Limits, figure units.Length) {
	t.Helper()
	if !band.HasMin() || !band.HasMax() || !band.Contains(figure) {
		t.Errorf("%s: %v outside %v", what, figure, band)
	}
	for _, s := range []units.Length{figure * 10, figure / 10, figure * 254 / 10, figure * 10 / 254} {
		if band.Contains(s) {
			t.Errorf("%s: %v for %v inside %v", what, s, figure, band)
		}
	}
}

// TestUsual holds the bands to engines of published examples of displacement and compression, and to the
// walls of a textbook.
func TestUsual(t *testing.T) {
	const mm = units.Millimetre
	for _, e := range [...]struct{ bore, stroke float64 }{
		{87, 69}, {100, 83}, {65.5, 44.5}, {77, 64}, {85.5, 69}, {90, 69}, {94, 74}, {94, 84}, {170, 300}, {50.8, 50.8},
		{67, 49.5}, {90.5, 82}, {76.2, 69}, {88.9, 101.6}, {95.46, 98}, {30, 28}, {250, 300},
	} {
		bore, stroke := units.Length(e.bore*1000)*units.Micrometre, units.Length(e.stroke*1000)*units.Micrometre
		checkUsual(t, "stroke", oversize.UsualStroke(bore), stroke)
	}
	least, greatest := oversize.UsualRatio()
	for _, r := range []float64{5.4289, 7.946, 9.6264, 10.479, 24, 4, 25, 17} {
		if r < least || r > greatest || r*10 <= greatest || r/10 >= least {
			t.Errorf("ratio %v and %v to %v", r, least, greatest)
		}
	}
	for _, s := range append(oversize.Metric(), oversize.Inch()...) {
		checkUsual(t, "oversize", oversize.UsualOver(), s.Over)
	}
	checkUsual(t, "greatest overbore, TM 10-3930-653-14&P", oversize.UsualOver(), 1500*units.Micrometre)
	for _, w := range []struct {
		bore, wall units.Length
		source     string
	}{
		{75 * mm, 4500 * units.Micrometre, "Khurmi and Gupta, ch. 32"},
		{300 * mm, 25 * mm, "Khurmi and Gupta, ch. 32"},
		{100 * mm, 7400 * units.Micrometre, "Khurmi and Gupta, 5 MPa at 50 MPa with the allowance"},
		{30 * mm, 2500 * units.Micrometre, "common practice"},
		{30 * mm, 6 * mm, "common practice"},
		{250 * mm, 8 * mm, "common practice"},
		{250 * mm, 25 * mm, "common practice"},
	} {
		checkUsual(t, "wall, "+w.source, oversize.UsualWall(w.bore), w.wall)
	}
}

// TestUsualOfNoBore: a bore that is none gets a band that allows nothing an engine has, not one that allows all.
func TestUsualOfNoBore(t *testing.T) {
	for _, d := range []units.Length{-1, 0, 1, units.MaxLength + 1, 1 << 62} {
		for _, w := range []units.Limits{oversize.UsualStroke(d), oversize.UsualWall(d)} {
			if !w.HasMin() || !w.HasMax() || w.Min >= w.Max || w.Contains(70*units.Millimetre) {
				t.Errorf("bore %v: %v", d, w)
			}
		}
	}
}

// TestUsualIsAsSaid pins the ends that the comments name, for a bore of 100 mm.
func TestUsualIsAsSaid(t *testing.T) {
	const mm, um = units.Millimetre, units.Micrometre
	for _, tt := range []struct {
		name            string
		got             units.Limits
		least, greatest units.Length
	}{
		{"stroke", oversize.UsualStroke(100 * mm), 40 * mm, 250 * mm},
		{"over", oversize.UsualOver(), 160 * um, 2400 * um},
		{"wall", oversize.UsualWall(100 * mm), 1800 * um, 18 * mm},
	} {
		if want := (units.Limits{Min: tt.least, Max: tt.greatest}); tt.got != want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, want)
		}
	}
}
