// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"fmt"
	"testing"

	"borewright.example/bore/fit"
	"borewright.example/units"
)

// slipped is a window written with the point moved by a place at both ends or at one, or one unit
// taken for the other.
func slipped(w units.Limits) []units.Limits {
	return []units.Limits{
		{Min: w.Min * 10, Max: w.Max * 10}, {Min: w.Min / 10, Max: w.Max / 10}, {Min: w.Min, Max: w.Max * 10}, {Min: w.Min / 10, Max: w.Max},
		{Min: w.Min * 10, Max: w.Max}, {Min: w.Min, Max: w.Max / 10},
		{Min: w.Min * 254 / 10, Max: w.Max * 254 / 10}, {Min: w.Min * 10 / 254, Max: w.Max * 10 / 254},
	}
}

// usual reports whether both ends of a window that is not crossed lie in the band.
func usual(band, w units.Limits) bool {
	return w.Validate() == nil && band.Contains(w.Min) && band.Contains(w.Max)
}

// TestUsualClearance holds the band to windows that manuals print.
func TestUsualClearance(t *testing.T) {
	const mm, in = units.Millimetre, units.Inch
	for _, tt := range []struct {
		bore    units.Length
		printed string
		source  string
	}{
		{91 * mm, "0.025 to 0.045 mm", "TM 10-3930-653-14&P (bore about 91 mm, from the sleeves it lists)"},
		{3979 * in / 1000, "0.0035 to 0.0045 in", "TM 9-2320-289-34, Table 3-1"},
		{425 * in / 100, "0.0045 to 0.0083 in", "TM 9-2815-202-34"},
		{50 * mm, "0.0127 to 0.025 mm", "small cast piston, common practice"},
		{73 * mm, "0.07 to 0.0762 mm", "large two-stroke, common practice"},
	} {
		band, w := fit.UsualClearance(tt.bore), printed(t, tt.printed)
		if !usual(band, w) {
			t.Errorf("%s: %v outside %v", tt.source, w, band)
		}
		for _, s := range slipped(w) {
			if usual(band, s) {
				t.Errorf("%s: %v for %v inside %v", tt.source, s, w, band)
			}
		}
	}
	for d := 30 * mm; d <= 250*mm; d += mm {
		for duty := fit.CastWater; duty <= fit.TwoStrokeAir; duty++ {
			w, err := fit.Usual(duty, d)
			if err != nil {
				t.Fatal(err)
			}
			if !usual(fit.UsualClearance(d), w) {
				t.Errorf("%v: %v outside %v", duty, w, fit.UsualClearance(d))
			}
			for _, s := range slipped(w) {
				if usual(fit.UsualClearance(d), s) {
					t.Errorf("%v, %v: %v for %v inside", duty, d, s, w)
				}
			}
		}
	}
}

// TestUsualWornClearance: 0.0120 in on 4.25 in is US Army TM 9-2815-202-34; the ends of 0.0012 to 0.0040 of
// the bore are common practice.
func TestUsualWornClearance(t *testing.T) {
	const mm = units.Millimetre
	check := func(bore, worn units.Length) {
		band := fit.UsualWornClearance(bore)
		if !band.Contains(worn) {
			t.Errorf("bore %v: %v outside %v", bore, worn, band)
		}
		for _, s := range []units.Length{worn * 10, worn / 10, worn * 254 / 10, worn * 10 / 254} {
			if band.Contains(s) {
				t.Errorf("bore %v: %v for %v inside %v", bore, s, worn, band)
			}
		}
	}
	check(units.MustParseLength("4.25 in"), units.MustParseLength("0.0120 in"))
	for d := 30 * mm; d <= 250*mm; d += mm {
		check(d, d*12/10_000)
		check(d, d*40/10_000)
	}
}

// TestUsualOfNoBore: a bore that is none gets a band that allows nothing an engine has, not one that allows all.
func TestUsualOfNoBore(t *testing.T) {
	for _, d := range []units.Length{-1, 0, 1, units.MaxLength + 1, 1 << 62} {
		for _, w := range []units.Limits{fit.UsualClearance(d), fit.UsualWornClearance(d)} {
			if !w.HasMin() || !w.HasMax() || w.Min >= w.Max || w.Contains(50*units.Micrometre) {
				t.Errorf("bore %v: %v", d, w)
			}
		}
	}
}

func printed(t *testing.T, s string) units.Limits {
	t.Helper()
	w, err := units.ParseLimits(s)
	if err != nil {
		t.Fatal(err)
	}
	return w
}

// A clearance of 0.4 mm in a bore of 67 mm: was the point moved?
func ExampleUsualClearance() {
	fmt.Println(fit.UsualClearance(units.MustParseLength("67 mm")))
	// Output:
	// 0.0134 mm to 0.268 mm
}

// TestUsualIsAsSaid pins the ends that the comments name, for a bore of 100 mm.
func TestUsualIsAsSaid(t *testing.T) {
	const mm, um = units.Millimetre, units.Micrometre
	for _, tt := range []struct {
		name            string
		got             units.Limits
		least, greatest units.Length
	}{
		{"clearance", fit.UsualClearance(100 * mm), 20 * um, 400 * um},
		{"worn clearance", fit.UsualWornClearance(100 * mm), 60 * um, 800 * um},
		{"less than a millimetre", fit.UsualClearance(1), 200 * units.Nanometre, 4 * um},
	} {
		if want := (units.Limits{Min: tt.least, Max: tt.greatest}); tt.got != want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, want)
		}
	}
}

// A worn clearance of 1.2 mm instead of 0.12 mm is asked about.
func ExampleUsualWornClearance() {
	fmt.Println(fit.UsualWornClearance(units.MustParseLength("78 mm")))
	// Output:
	// 0.0468 mm to 0.624 mm
}
