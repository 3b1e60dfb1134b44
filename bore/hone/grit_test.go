// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"slices"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Rows of the table against their sources: US Army TM 10-4320-351-14 (80 to 100), TM 9-2815-202-34, TM
// 5-3895-346-14 and TM 5-3895-359-14&P (120); a trade magazine of May 2004 by facing (220, 220, 280, 320 to 400
// in competition; 400 for the touch after 280); makers' manuals (180 to 220; 220; 280; 320); a trade page (600).
func TestGrits(t *testing.T) {
	want := []struct {
		stage        hone.Stage
		facing       hone.Facing
		coarse, fine int
	}{
		{hone.StageDeglaze, hone.FacingUnknown, 80, 100}, {hone.StageDeglaze, hone.FacingUnknown, 120, 120}, {hone.StageDeglaze, hone.FacingUnknown, 280, 280},
		{hone.StageFinish, hone.FacingUnknown, 180, 220}, {hone.StageFinish, hone.FacingUnknown, 220, 220}, {hone.StageFinish, hone.FacingIron, 220, 220},
		{hone.StageFinish, hone.FacingChromium, 220, 220}, {hone.StageFinish, hone.FacingMolybdenum, 280, 280}, {hone.StageFinish, hone.FacingUnknown, 320, 320},
		{hone.StageFinish, hone.FacingMolybdenum, 320, 400},
		{hone.StagePlateau, hone.FacingMolybdenum, 400, 400}, {hone.StagePlateau, hone.FacingMolybdenum, 600, 600},
	}
	seen := map[hone.Grit]bool{}
	for s := hone.StageDeglaze; s <= hone.StagePlateau; s++ {
		for f := hone.FacingUnknown; f <= hone.FacingMolybdenum; f++ {
			rows := hone.GritsFor(s, f).Rows
			for i, g := range rows {
				seen[g] = true
				if g.Source == "" || i > 0 && g.Coarse < rows[i-1].Coarse {
					t.Errorf("%+v is out of order", g)
				}
			}
		}
	}
	if len(seen) != len(want) {
		t.Errorf("%d rows, want %d", len(seen), len(want))
	}
	for _, w := range want {
		if !slices.ContainsFunc(hone.GritsFor(w.stage, w.facing).Rows, func(g hone.Grit) bool { return g.Facing == w.facing && g.Coarse == w.coarse && g.Fine == w.fine }) {
			t.Errorf("no row %v", w)
		}
	}
}

func TestGritsFor(t *testing.T) {
	for _, row := range []struct {
		stage  hone.Stage
		facing hone.Facing
		rows   int
		text   string
	}{
		{hone.StageFinish, hone.FacingIron, 4, "grit 180 to 320, sources disagree"},
		{hone.StageFinish, hone.FacingChromium, 4, "grit 180 to 320, sources disagree"},
		{hone.StageFinish, hone.FacingMolybdenum, 5, "grit 180 to 400, sources disagree"},
		{hone.StageFinish, hone.FacingUnknown, 3, "grit 180 to 320, sources disagree"},
		{hone.StageDeglaze, hone.FacingIron, 3, "grit 80 to 280, sources disagree"},
		{hone.StagePlateau, hone.FacingMolybdenum, 2, "grit 400 to 600, sources disagree"},
		{hone.StagePlateau, hone.FacingChromium, 0, "no source names a grit"},
		{9, hone.FacingIron, 0, "no source names a grit"},
	} {
		b := hone.GritsFor(row.stage, row.facing)
		if len(b.Rows) != row.rows || b.String() != row.text {
			t.Errorf("%v, %v: %d rows, %q, want %d, %q", row.stage, row.facing, len(b.Rows), b, row.rows, row.text)
		}
		for _, g := range b.Rows {
			if g.Coarse < b.Coarse || g.Fine > b.Fine || g.Stage != row.stage || g.Facing != row.facing && g.Facing != hone.FacingUnknown {
				t.Errorf("%+v in %v", g, b)
			}
		}
	}
	if agreed := (hone.GritBand{Coarse: 220, Fine: 220, Agree: true, Rows: make([]hone.Grit, 1)}).String(); agreed != "grit 220" {
		t.Error(agreed)
	}
}

// What the sources print: Ra 3.6 ± 0.4 µm to 0.65 µm from state to state (TM 5-3895-382-24); 18 to 38 and 15 to 38
// µin, 0.4572, 0.381 and 0.9652 µm (makers' manuals); 3 to 50 µin rms, 0.0762 to 1.27 µm (Machinery's Handbook,
// 31st ed., p. 1338); Rz 1 to 3 µm of bare aluminium-silicon (a maker's manual).
func TestFinishes(t *testing.T) {
	want := []struct {
		least, most float64
		measure     string
	}{{0.65, 4, "Ra"}, {0.4572, 0.9652, ""}, {0.381, 0.9652, "Ra"}, {0.0762, 1.27, "rms"}, {1, 3, "Rz"}}
	rows := hone.Finishes()
	if len(rows) != len(want) {
		t.Fatalf("%d rows, want %d", len(rows), len(want))
	}
	for i, f := range rows {
		if f.Roughness.Min.In(um) != want[i].least || f.Roughness.Max.In(um) != want[i].most || f.Measure != want[i].measure || f.Of == "" || f.Source == "" {
			t.Errorf("%+v, want %v µm", f, want[i])
		}
	}
}

// Texts go both ways, and a text that is none changes nothing.
func TestFacingAndStageTexts(t *testing.T) {
	for f := hone.FacingUnknown; f <= hone.FacingMolybdenum; f++ {
		text, err := f.MarshalText()
		var back hone.Facing
		if err != nil || back.UnmarshalText(text) != nil || back != f {
			t.Errorf("%q is %v", text, back)
		}
	}
	for s := hone.StageDeglaze; s <= hone.StagePlateau; s++ {
		text, err := s.MarshalText()
		var back hone.Stage
		if err != nil || back.UnmarshalText(text) != nil || back != s {
			t.Errorf("%q is %v", text, back)
		}
	}
	f, s := hone.FacingChromium, hone.StageFinish
	if !errors.Is(f.UnmarshalText([]byte("tin")), units.ErrUnknownName) || !errors.Is(s.UnmarshalText([]byte("tin")), units.ErrUnknownName) || f != hone.FacingChromium || s != hone.StageFinish {
		t.Error("a text that is none was taken")
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
