// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// What the sources print: grit 80 to 100 (TM 10-4320-351-14) and 120 (TM 9-2815-202-34, TM 5-3895-346-14);
// Ra 2.6 ± 0.4, 1.3 to 1.6, 0.65 to 1.30 µm (TM 5-3895-382-24); 3 to 50 µin rms, which are 0.0762 to
// 1.27 µm (Machinery's Handbook, 31st ed., p. 1338).
func TestGritsAndFinishes(t *testing.T) {
	for i, want := range [][2]int{{80, 100}, {120, 120}} {
		if g := hone.Grits()[i]; g.Coarse != want[0] || g.Fine != want[1] {
			t.Errorf("%+v, want %v", g, want)
		}
	}
	for i, want := range [][2]float64{{2.2, 3.0}, {1.3, 1.6}, {0.65, 1.3}, {0.0762, 1.27}} {
		f := hone.Finishes()[i].Roughness
		if f.Min.In(um) != want[0] || f.Max.In(um) != want[1] {
			t.Errorf("%v, want %v µm", f, want)
		}
	}
	for i, g := range hone.Grits() {
		if g.Fine < g.Coarse || g.For == "" || g.Source == "" || i > 0 && g.Coarse < hone.Grits()[i-1].Coarse {
			t.Errorf("%+v", g)
		}
	}
}

func TestKindFits(t *testing.T) {
	one := func(l units.Length) units.Limits { return units.Limits{Min: l, Max: l} }
	open := units.Limits{Min: 60 * mm, Max: 80 * mm}
	for name, row := range map[string]struct {
		kind     hone.Kind
		size     units.Limits
		from, to units.Length
		want     error
	}{
		"ball larger":      {hone.BallType, one(74 * mm), 67 * mm, 68 * mm, nil},
		"brush larger":     {hone.BrushType, units.Limits{Min: 74 * mm}, 67 * mm, 68 * mm, nil},
		"ball as the bore": {hone.BallType, one(68 * mm), 67 * mm, 68 * mm, hone.ErrRoom},
		"stones":           {hone.RigidStone, open, 67 * mm, 68 * mm, nil},
		"to the last":      {hone.RigidStone, open, 79 * mm, 80 * mm, nil},
		"do not reach":     {hone.RigidStone, open, 79 * mm, 80*mm + 1, hone.ErrRoom},
		"do not go in":     {hone.RigidStone, open, 60 * mm, 61 * mm, hone.ErrRoom},
		"no kind":          {hone.KindUnknown, open, 67 * mm, 68 * mm, hone.ErrNotGiven},
		"no such kind":     {9, open, 67 * mm, 68 * mm, units.ErrRange},
		"no size":          {hone.BallType, units.Limits{}, 67 * mm, 68 * mm, hone.ErrNotGiven},
		"no bore":          {hone.BallType, open, 0, 68 * mm, hone.ErrNotGiven},
		"shrinking":        {hone.BallType, open, 68 * mm, 67 * mm, units.ErrCrossed},
	} {
		if err := row.kind.Fits(row.size, row.from, row.to); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", name, err, row.want)
		}
	}
}
