// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"fmt"
	"testing"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// TestUsual holds the bands to what manuals and the trade print: inside as it stands, outside with the
// point moved by a place or one unit taken for the other.
func TestUsual(t *testing.T) {
	check := func(what string, band units.Limits, figure units.Length) {
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
	const mm = units.Millimetre
	check("4.25 in liner of 4.6265 in outside, TM 5-3895-359-14&P", sleeve.UsualWall(4250*units.Thou), 18825*units.Tenth/10)
	for _, w := range [...]struct{ bore, wall units.Length }{
		{30 * mm, 1500 * units.Micrometre}, {30 * mm, 3500 * units.Micrometre}, {67 * mm, 3 * mm}, {78 * mm, 2300 * units.Micrometre},
		{100 * mm, 1500 * units.Micrometre}, {100 * mm, 8 * mm}, {250 * mm, 4 * mm}, {250 * mm, 18 * mm},
	} {
		check("wall, common practice", sleeve.UsualWall(w.bore), w.wall)
	}
	for _, q := range sleeve.TradeInterference() {
		for _, seat := range []units.Length{2 * units.Inch, 73 * mm, 83 * mm, 5125 * units.Thou} {
			check(q.Barrel, sleeve.UsualInterference(seat), q.Interference.Min)
			check(q.Barrel, sleeve.UsualInterference(seat), q.Interference.Max)
		}
	}
	for seat := 120 * mm; seat <= 300*mm; seat += mm {
		d := must(sleeve.DiametralFromClasses(seat, sleeve.MustParseClass("H7"), sleeve.MustParseClass("s6")))
		check("H7/s6", sleeve.UsualInterference(seat), d.Min)
		check("H7/s6", sleeve.UsualInterference(seat), d.Max)
	}
	for _, d := range []units.Length{-1, 0, 1, units.MaxLength + 1, 1 << 62} {
		for _, w := range []units.Limits{sleeve.UsualWall(d), sleeve.UsualInterference(d)} {
			if !w.HasMin() || !w.HasMax() || w.Min >= w.Max || w.Min <= 0 {
				t.Errorf("%v: %v", d, w)
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
		{"wall", sleeve.UsualWall(100 * mm), 1300 * um, 10 * mm},
		{"interference", sleeve.UsualInterference(100 * mm), 15 * um, 160 * um},
	} {
		if want := (units.Limits{Min: tt.least, Max: tt.greatest}); tt.got != want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, want)
		}
	}
}

func ExampleUsualWall() {
	fmt.Println(sleeve.UsualWall(units.MustParseLength("78 mm")))
	// Output:
	// 1.19 mm to 8.46 mm
}

// An interference of 0.5 mm instead of 0.05 mm is asked about.
func ExampleUsualInterference() {
	fmt.Println(sleeve.UsualInterference(units.MustParseLength("83 mm")))
	// Output:
	// 0.01415 mm to 0.1498 mm
}
