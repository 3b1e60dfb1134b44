// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"fmt"
	"testing"

	"borewright.example/rings"
	"borewright.example/units"
)

// TestUsualGap holds the band to printed windows and to the rules of the trade: inside as they stand, outside with
// the point moved by a place at either end or both, or one unit taken for the other.
func TestUsualGap(t *testing.T) {
	const mm = units.Millimetre
	check := func(bore units.Length, w units.Limits, source string) {
		t.Helper()
		band, _ := rings.UsualGap(bore)
		usual := func(w units.Limits) bool {
			return w.Validate() == nil && band.Contains(w.Min) && band.Contains(w.Max)
		}
		if !usual(w) {
			t.Errorf("%s, bore %v: %v outside %v", source, bore, w, band)
		}
		for _, s := range []units.Limits{
			{Min: w.Min * 10, Max: w.Max * 10}, {Min: w.Min / 10, Max: w.Max / 10}, {Min: w.Min, Max: w.Max * 10}, {Min: w.Min / 10, Max: w.Max},
			{Min: w.Min * 10, Max: w.Max}, {Min: w.Min, Max: w.Max / 10},
			{Min: w.Min * 254 / 10, Max: w.Max * 254 / 10}, {Min: w.Min * 10 / 254, Max: w.Max * 10 / 254},
		} {
			if usual(s) {
				t.Errorf("%s, bore %v: %v for %v inside %v", source, bore, s, w, band)
			}
		}
	}
	check(91*mm, printed(t, "0.25 to 0.40 mm"), "top, TM 10-3930-653-14&P")
	check(91*mm, printed(t, "0.15 to 0.30 mm"), "second and oil, TM 10-3930-653-14&P")
	check(100*mm, printed(t, "0.2 to 0.4 mm"), "Khurmi and Gupta, ch. 32")
	check(100*mm, printed(t, "0.35 to 0.60 mm"), "top, TM 5-3825-229-14&P (bore not printed)")
	check(100*mm, printed(t, "0.25 to 0.60 mm"), "middle, the same")
	check(100*mm, printed(t, "0.25 to 0.50 mm"), "oil, the same")
	check(units.MustParseLength("4.030 in"), printed(t, "0.0181 to 0.0202 in"), "a trade magazine")
	for d := 30 * mm; d <= 250*mm; d += mm {
		list, _, err := rings.Rules(d)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range list {
			if r.Gap.Min < r.Gap.Max { // a rule of one figure is no window, of which one end can slip alone
				check(d, r.Gap, r.Source)
			}
		}
	}
}

// TestUsualGapInService: 1.0 mm is US Army TM 10-3930-653-14&P; 0.008 to 0.028 of the bore is common practice.
func TestUsualGapInService(t *testing.T) {
	const mm = units.Millimetre
	check := func(bore, gap units.Length) {
		t.Helper()
		_, band := rings.UsualGap(bore)
		if !band.Contains(gap) {
			t.Errorf("bore %v: %v outside %v", bore, gap, band)
		}
		for _, s := range []units.Length{gap * 10, gap / 10, gap * 254 / 10, gap * 10 / 254} {
			if band.Contains(s) {
				t.Errorf("bore %v: %v for %v inside %v", bore, s, gap, band)
			}
		}
	}
	check(91*mm, mm)
	for d := 30 * mm; d <= 250*mm; d += mm {
		check(d, d*8/1000)
		check(d, d*28/1000)
	}
}

// TestUsualOfNoBore: a bore that is none gets a band that allows nothing an engine has, not one that allows all.
func TestUsualOfNoBore(t *testing.T) {
	for _, d := range []units.Length{-1, 0, 1, units.MaxLength + 1, 1 << 62} {
		window, limit := rings.UsualGap(d)
		for _, w := range []units.Limits{window, limit} {
			if !w.HasMin() || !w.HasMax() || w.Min >= w.Max || w.Contains(300*units.Micrometre) {
				t.Errorf("bore %v: %v", d, w)
			}
		}
	}
	if least, greatest := rings.UsualCount(); least != 1 || greatest != 7 {
		t.Errorf("%d to %d rings", least, greatest)
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

// An end gap of 0.02 mm in a bore of 67 mm: was the point moved?
func ExampleUsualGap() {
	window, limit := rings.UsualGap(units.MustParseLength("67 mm"))
	fmt.Println(window, "for a new ring,", limit, "in service")
	// Output:
	// 0.067 mm to 0.804 mm for a new ring, 0.268 mm to 2.01 mm in service
}

// TestUsualIsAsSaid pins the ends that the comments name, for a bore of 100 mm.
func TestUsualIsAsSaid(t *testing.T) {
	const mm, um = units.Millimetre, units.Micrometre
	window, limit := rings.UsualGap(100 * mm)
	tiny, _ := rings.UsualGap(1)
	for _, tt := range []struct {
		name            string
		got             units.Limits
		least, greatest units.Length
	}{
		{"gap", window, 100 * um, 1200 * um},
		{"gap in service", limit, 400 * um, 3 * mm},
		{"less than a millimetre", tiny, 1 * um, 12 * um},
	} {
		if want := (units.Limits{Min: tt.least, Max: tt.greatest}); tt.got != want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, want)
		}
	}
}

func ExampleUsualCount() {
	fmt.Println(rings.UsualCount())
	// Output:
	// 1 7
}
