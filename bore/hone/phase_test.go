// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"pgregory.net/rapid"
)

const µm = units.Micrometre

// Against the wall itself: a groove is on it while its ground lies deeper than the surface.
func checkTraces(t *rapid.T) {
	c := crosshatch("45° included")
	var phases []hone.Phase
	for range rapid.IntRange(1, 5).Draw(t, "phases") {
		s := small(0, 80*mm, hone.Cycles(units.Frequency(rapid.Float64Range(0.5, 2).Draw(t, "hertz"))))
		s.Spindle = must[units.Frequency](t)(s.SpindleSpeedFor(c))
		phases = append(phases, hone.Phase{
			Setting: s,
			Stock:   units.Length(rapid.IntRange(0, 20).Draw(t, "stock")) * µm,
			Groove:  units.Length(rapid.IntRange(0, 20).Draw(t, "groove")) * µm,
		})
	}
	ts, err := hone.Traces(phases)
	if err != nil || len(ts) != len(phases) {
		t.Fatal(len(ts), err)
	}
	surface := make([]units.Length, len(phases)) // radial place of the wall after each phase
	var at units.Length
	for i, p := range phases {
		at += p.Stock
		surface[i] = at
	}
	for i, p := range phases {
		ground := surface[i] + p.Groove
		last := i == len(phases)-1
		assumed := !last && p.Groove == 0
		gone := !last && p.Groove != 0 && ground <= at
		if ts[i].Gone != gone || ts[i].Assumed != assumed || ts[i].Left != max(0, ground-at) || ts[i].Later != at-surface[i] || included(ts[i].Crosshatch)-45 > 1e-9 {
			t.Fatalf("phase %d: %+v, want gone %v, assumed %v", i+1, ts[i], gone, assumed)
		}
	}
}

func TestTraces(t *testing.T) { rapid.Check(t, checkTraces) }

func TestTracesBadInput(t *testing.T) {
	good := hone.Phase{Setting: small(110, 80*mm, hone.Cycles(1)), Stock: 3 * µm, Groove: 2 * µm}
	for name, row := range map[string]struct {
		change func(*hone.Phase)
		err    error
	}{
		"no setting":      {func(p *hone.Phase) { p.Setting = hone.Setting{} }, units.ErrNotGiven},
		"negative stock":  {func(p *hone.Phase) { p.Stock = -1 }, units.ErrRange},
		"stock too great": {func(p *hone.Phase) { p.Stock = units.MaxLength }, units.ErrRange},
		"negative groove": {func(p *hone.Phase) { p.Groove = -1 }, units.ErrRange},
		"endless groove":  {func(p *hone.Phase) { p.Groove = 1 << 62 }, units.ErrRange},
	} {
		bad := good
		row.change(&bad)
		if ts, err := hone.Traces([]hone.Phase{bad, good}); !errors.Is(err, row.err) || ts != nil {
			t.Errorf("%s: %v, %v; want %v", name, ts, err, row.err)
		}
	}
	if ts, err := hone.Traces(nil); !errors.Is(err, units.ErrNotGiven) || ts != nil {
		t.Errorf("no phases: %v, %v", ts, err)
	}
	given := []hone.Phase{good, good}
	if _, err := hone.Traces(given); err != nil || given[0] != good {
		t.Errorf("the caller's phases were changed: %v, %v", given, err)
	}
}
