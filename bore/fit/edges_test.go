// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"errors"
	"strings"
	"testing"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestEdges walks the ends of what is taken: the last that is, and the first that is not.
func TestEdges(t *testing.T) {
	const most = units.MaxLength
	good := fit.Piston{Size: exact(mm("66.97"))}
	window := units.Limits{Min: mm("0.03"), Max: mm("0.05")}
	skirt := func(p fit.Piston) error { _, err := p.Skirt(); return err }
	size := func(value, std units.Length) error {
		return skirt(fit.Piston{Size: uncertainty.Estimate{Value: value, Std: std}})
	}
	coated := func(c units.Length) error { return skirt(fit.Piston{Size: exact(mm("66")), Coating: c}) }
	at := func(height, maker units.Length) error {
		return skirt(fit.Piston{Size: exact(mm("66")), Height: height, MakerHeight: maker})
	}
	finish := func(w units.Limits) error { _, err := fit.FinishWindow(good, w); return err }
	pistons := func(bore units.Limits) error { _, err := fit.PistonWindow(bore, window); return err }
	guarded := func(guard units.Length) error {
		_, err := fit.AimIn(units.Limits{Min: mm("67"), Max: mm("67.02")}, guard, fit.Tight)
		return err
	}
	strip := func(l, adds units.Length) error {
		_, err := fit.FeelerRule{Pull: 26, Adds: adds}.Clearance(l, 26)
		return err
	}
	two := []units.Length{mm("67"), mm("67.01")}
	match := func(bores, pistons []units.Length) error { _, err := fit.Match(bores, pistons, window); return err }
	many := func(bores, pistons int) error {
		sizes := make([]units.Length, max(bores, pistons))
		for i := range sizes {
			sizes[i] = mm("67")
		}
		return match(sizes[:bores], sizes[:pistons])
	}
	usual := func(bore units.Length) error { _, err := fit.Usual(fit.CastWater, bore); return err }
	spread := func(bore, piston units.Expansion) error {
		w := fit.Warm{BoreAt: kelvins(10), PistonAt: kelvins(10), Bore: grows(11), Piston: grows(21)}
		w.Bore.Within, w.Piston.Within = bore, piston
		_, err := w.HotClearance(exact(mm("67")), good)
		return err
	}
	for _, tt := range []struct {
		name string
		err  error
		want error // nil: taken
	}{
		{"size of 2 pm, as unsure as it is large", size(2, 2), nil},
		{"size of 2 pm, less sure than that", size(2, 3), units.ErrRange},
		{"coating of half a piston, less 1 pm", coated(mm("33") - 1), nil},
		{"coating of half a piston", coated(mm("33")), units.ErrRange},
		{"coating of none", coated(0), nil},
		{"coating below none", coated(-1), units.ErrRange},
		{"heights of none", at(0, 0), nil},
		{"height below none", at(-1, 0), units.ErrRange},
		{"maker's height below none", at(0, -1), units.ErrRange},

		{"greatest clearance", finish(units.Limits{Min: 1, Max: most}), nil},
		{"clearance beyond it", finish(units.Limits{Min: 1, Max: most + 1}), units.ErrRange},
		{"least clearance of 1 pm", finish(units.Limits{Min: 1, Max: 1}), nil},

		{"bore just over the greatest clearance", pistons(units.Limits{Min: mm("0.05") + 1, Max: mm("0.05") + 1}), nil},
		{"bore of the greatest clearance", pistons(units.Limits{Min: mm("0.05"), Max: mm("0.05")}), units.ErrRange},
		{"greatest bore", pistons(units.Limits{Min: most, Max: most}), nil},
		{"bore beyond it", pistons(units.Limits{Min: most, Max: most + 1}), units.ErrRange},
		{"bore as uneven as the window is wide", pistons(units.Limits{Min: mm("67"), Max: mm("67.02")}), nil},
		{"bore more uneven", pistons(units.Limits{Min: mm("67"), Max: mm("67.02") + 1}), fit.ErrNarrow},
		{"guard of none", guarded(0), nil},
		{"guard as wide as the window", guarded(mm("0.02")), nil},

		{"thickest strip", strip(mm("10"), 0), nil},
		{"thicker", strip(mm("10")+1, 0), units.ErrRange},
		{"thinnest strip", strip(1, 0), nil},
		{"rule that adds most", strip(1, mm("1")), nil},
		{"rule that adds more", strip(1, mm("1")+1), units.ErrRange},

		{"most bores", many(128, 128), nil},
		{"more bores", many(129, 129), units.ErrRange},
		{"more pistons", many(1, 129), units.ErrRange},
		{"no bores", many(0, 1), units.ErrRange},
		{"greatest bore matched", match([]units.Length{most}, two), nil},
		{"bore of 1 pm matched", match([]units.Length{1}, two), nil},
		{"bore beyond it matched", match([]units.Length{most + 1}, two), units.ErrRange},

		{"usual in the greatest bore", usual(most), nil},
		{"usual beyond it", usual(most + 1), units.ErrRange},
		{"usual in 1 pm", usual(1), nil},

		{"exact coefficients", spread(0, 0), nil},
		{"bore's spread negative", spread(-1e-6, 1e-6), uncertainty.ErrStd},
		{"piston's spread negative", spread(1e-6, -1e-6), uncertainty.ErrStd},
	} {
		if !errors.Is(tt.err, tt.want) || tt.want == nil && tt.err != nil {
			t.Errorf("%s: %v; want %v", tt.name, tt.err, tt.want)
		}
	}
}

// TestPistonWindowTurnsFinishAbout: a piston at either end of the window fits a bore at either of its ends, and none outside of it
// fits both.
func TestPistonWindowTurnsFinishAbout(t *testing.T) {
	bore, clearance := units.Limits{Min: mm("67.010"), Max: mm("67.016")}, units.Limits{Min: mm("0.030"), Max: mm("0.050")}
	w, err := fit.PistonWindow(bore, clearance)
	if err != nil || w.Min != mm("66.966") || w.Max != mm("66.980") {
		t.Fatalf("%v, %v", w, err)
	}
	for _, tt := range []struct {
		skirt units.Length
		fits  bool
	}{{w.Min, true}, {w.Max, true}, {w.Min - 1, false}, {w.Max + 1, false}} {
		finish, err := fit.FinishWindow(fit.Piston{Size: exact(tt.skirt)}, clearance)
		if err != nil || (finish.Contains(bore.Min) && finish.Contains(bore.Max)) != tt.fits {
			t.Errorf("skirt %v: %v, %v", tt.skirt, finish, err)
		}
	}
}

// TestUsualIsAsTheRulesSay pins the rules that the comment on Usual names, for a bore of 100 mm.
func TestUsualIsAsTheRulesSay(t *testing.T) {
	for duty, want := range map[fit.Duty]units.Limits{
		fit.CastWater:    {Min: mm("0.05"), Max: mm("0.10")},
		fit.CastAir:      {Min: mm("0.10"), Max: mm("0.15")},
		fit.ForgedWater:  {Min: mm("0.10"), Max: mm("0.20")},
		fit.ForgedAir:    {Min: mm("0.15"), Max: mm("0.25")},
		fit.TwoStrokeAir: {Min: mm("0.10"), Max: mm("0.15")},
	} {
		if w, err := fit.Usual(duty, mm("100")); err != nil || w != want {
			t.Errorf("%v: %v, %v; want %v", duty, w, err, want)
		}
	}
}

// TestSmallestThings: a pull of less than a newton is a pull, and heights of a picometre are heights.
func TestSmallestThings(t *testing.T) {
	w, err := fit.FeelerRule{Pull: 0.5, Adds: inch("0.001")}.Clearance(inch("0.004"), 0.5)
	if err != nil || w.Min != inch("0.005") || w.Max != inch("0.005") {
		t.Errorf("%v, %v", w, err)
	}
	for _, heights := range [][2]units.Length{{1, 2}, {2, 1}} {
		p := fit.Piston{Size: exact(mm("67")), Axis: fit.AcrossPin, Height: heights[0], MakerHeight: heights[1]}
		if got := p.Cautions(); len(got) != 1 || !strings.HasPrefix(got[0], "The skirt was measured at another height") {
			t.Errorf("heights %v: %v", heights, got)
		}
	}
}
