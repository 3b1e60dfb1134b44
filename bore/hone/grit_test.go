// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"testing"

	"borewright.example/bore/hone"
)

// Rows of the table against their sources: US Army TM 10-4320-351-14 (80 to 100), TM 9-2815-202-34, TM
// 5-3895-346-14 and TM 5-3895-359-14&P (120); a trade magazine of May 2004 by facing (220, 220, 280, 320 to 400
// in competition; 400 for the touch after 280); makers' manuals (180 to 220; 220; 280; 320); a trade page (600).
func TestGrits(t *testing.T) {
	want := []struct {
		stage, facing string
		coarse, fine  int
	}{
		{"deglazing", "", 80, 100}, {"deglazing", "", 120, 120}, {"deglazing", "", 280, 280},
		{"last honing", "", 180, 220}, {"last honing", "", 220, 220}, {"last honing", "plain iron", 220, 220},
		{"last honing", "chromium", 220, 220}, {"last honing", "molybdenum", 280, 280}, {"last honing", "", 320, 320},
		{"last honing", "molybdenum", 320, 400},
		{"plateau strokes", "molybdenum", 400, 400}, {"plateau strokes", "molybdenum", 600, 600},
	}
	rows := hone.Grits()
	if len(rows) != len(want) {
		t.Fatalf("%d rows, want %d", len(rows), len(want))
	}
	for i, w := range want {
		g := rows[i]
		if g.Stage != w.stage || g.Facing != w.facing || g.Coarse != w.coarse || g.Fine != w.fine || g.Source == "" {
			t.Errorf("row %d: %+v, want %+v", i, g, w)
		}
		if i > 0 && rows[i-1].Stage == g.Stage && g.Coarse < rows[i-1].Coarse {
			t.Errorf("%+v is out of order", g)
		}
	}
}

// As the comment says: for the last honing no number is within what all sources name, and 80 to 400 is what they
// run through.
func TestGritsDisagree(t *testing.T) {
	coarsest, finest, from, to := 1000, 0, 0, 1000
	for _, g := range hone.Grits() {
		switch g.Stage {
		case "plateau strokes":
			continue
		case "last honing":
			from, to = max(from, g.Coarse), min(to, g.Fine)
		}
		coarsest, finest = min(coarsest, g.Coarse), max(finest, g.Fine)
	}
	if from <= to || coarsest != 80 || finest != 400 {
		t.Errorf("all name %d to %d; from %d to %d", from, to, coarsest, finest)
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
