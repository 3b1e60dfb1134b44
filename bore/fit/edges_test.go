// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"errors"
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
		_, err := fit.Tight.Size(units.Limits{Min: mm("67"), Max: mm("67.02")}, guard)
		return err
	}
	strip := func(l, adds units.Length) error {
		_, err := fit.FeelerRule{Pull: 26, Adds: adds}.Clearance(l, 26)
		return err
	}
	deck := func(change func(*fit.Stack)) error {
		s := fit.Stack{Block: mm("180"), Stroke: mm("50"), Rod: mm("110"), PinHeight: mm("44")}
		change(&s)
		_, err := s.Deck()
		return err
	}
	two, three := []units.Length{mm("67"), mm("67.01")}, []units.Length{mm("66.96"), mm("66.97"), mm("66.98")}
	match := func(m fit.Matching) error { m.Window = window; _, err := m.Match(); return err }
	barred := func(bore, piston int) error {
		return match(fit.Matching{Bores: two, Pistons: three, Barred: []fit.Pair{{Bore: bore, Piston: piston}}})
	}
	many := func(bores, pistons int) error {
		sizes := make([]units.Length, max(bores, pistons))
		for i := range sizes {
			sizes[i] = mm("67")
		}
		return match(fit.Matching{Bores: sizes[:bores], Pistons: sizes[:pistons]})
	}
	usual := func(bore units.Length) error { _, err := fit.Usual(fit.CastWater, bore); return err }
	spread := func(bore, piston units.Expansion) error {
		w := fit.Warm{Bore: kelvins(10), Piston: kelvins(10), BoreMaterial: grows(11), PistonMaterial: grows(21)}
		w.BoreMaterial.Within, w.PistonMaterial.Within = bore, piston
		_, err := w.Clearance(exact(mm("67")), good)
		return err
	}
	tenth := most / 10
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

		{"greatest block", deck(func(s *fit.Stack) { s.Block = tenth }), nil},
		{"block beyond it", deck(func(s *fit.Stack) { s.Block = tenth + 1 }), units.ErrRange},
		{"rod of 1 pm", deck(func(s *fit.Stack) { s.Rod = 1 }), nil},
		{"rod of none", deck(func(s *fit.Stack) { s.Rod = 0 }), units.ErrRange},
		{"no pin height", deck(func(s *fit.Stack) { s.PinHeight = 0 }), units.ErrRange},
		{"no stroke", deck(func(s *fit.Stack) { s.Stroke = 0 }), units.ErrRange},

		{"first pair barred", barred(0, 0), nil},
		{"last pair barred", barred(1, 2), nil},
		{"bore before the first barred", barred(-1, 0), units.ErrRange},
		{"piston before the first barred", barred(0, -1), units.ErrRange},
		{"bore after the last barred", barred(2, 0), units.ErrRange},
		{"piston after the last barred", barred(0, 3), units.ErrRange},
		{"most bores", many(128, 128), nil},
		{"more bores", many(129, 129), units.ErrRange},
		{"more pistons", many(1, 129), units.ErrRange},
		{"no bores", many(0, 1), units.ErrRange},
		{"greatest bore matched", match(fit.Matching{Bores: []units.Length{most}, Pistons: two}), nil},
		{"bore of 1 pm matched", match(fit.Matching{Bores: []units.Length{1}, Pistons: two}), nil},
		{"bore beyond it matched", match(fit.Matching{Bores: []units.Length{most + 1}, Pistons: two}), units.ErrRange},

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
		if got := p.Cautions(); len(got) != 1 || got[0] != fit.HeightDiffers {
			t.Errorf("heights %v: %v", heights, got)
		}
	}
}
