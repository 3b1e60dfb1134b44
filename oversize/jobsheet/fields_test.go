// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"errors"
	"slices"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
)

// refused reports whether a route of the first cylinder was refused for a reason, by its short name.
func refused(s jobsheet.Sheet, why string) bool {
	return slices.ContainsFunc(s.Choice.Cylinders[0].Refused, func(r oversize.Refusal) bool {
		name, err := r.Reason.MarshalText()
		return err == nil && string(name) == why
	})
}

// TestFieldsTakePart: each field that has a say in the choice has it: with one value the sheet says so, with another
// it does not. The jobs are a bored and a kept one, finished.
func TestFieldsTakePart(t *testing.T) {
	for _, c := range []struct {
		name      string
		kept      bool
		field     string
		one, with any // leaves the choice alone, and has its say
		also      map[string]any
		says      func(jobsheet.Sheet) bool
	}{
		{name: "the greatest overbore", field: "engine.limits.greatest_overbore", one: "0.8 mm", with: "0.3 mm",
			also: map[string]any{"engine.oversizes.0.makers_list": nil},
			says: func(s jobsheet.Sheet) bool { return refused(s, "beyond greatest") }},
		{name: "the least wall", field: "engine.limits.least_wall", one: "3.6 mm", with: "6.3 mm",
			says: func(s jobsheet.Sheet) bool {
				return refused(s, "wall thin") || refused(s, "wall not proven")
			}},
		{name: "the gasket's hole", field: "engine.gasket_hole", one: "81.5 mm", with: "80.45 mm",
			says: func(s jobsheet.Sheet) bool { return refused(s, "gasket hole") }},
		{name: "how far the axis may move", field: "engine.may_shift", one: "0.2 mm", with: "0 mm",
			also: map[string]any{"engine.oversizes": []any{tree{"over": "0.2 mm", "makers_list": true}}},
			says: func(s jobsheet.Sheet) bool {
				last := s.Choice.Cylinders[0].Refused
				return last[len(last)-1].Finding.Subject == "clean-up on the original centre"
			}},
		{name: "what deglazing takes", kept: true, field: "cuts.deglaze", one: "0.012 mm", with: "0.002 mm",
			also: map[string]any{"cylinders.0.pits": []any{tree{"below": "0.004 mm", "depth": "30 mm", "at": "10°"}}, "counted.pits": 1},
			says: func(s jobsheet.Sheet) bool { return refused(s, "score left") }},
		{name: "where in its window a bore is cut", field: "engine.aim", one: "centre", with: "tight",
			says: func(s jobsheet.Sheet) bool {
				c := s.Choice.Cylinders[0]
				return c.Aim < (c.Finish.Min+c.Finish.Max)/2-units.Micrometre
			}},
		{name: "a plating that lifts", kept: true, field: "cylinders.0.plating_whole", one: true, with: false,
			also: map[string]any{"engine.wall": "plated", "engine.material": "aluminium block", "cuts": nil},
			says: func(s jobsheet.Sheet) bool { return refused(s, "peeling") }},
	} {
		t.Run(c.name, func(t *testing.T) {
			j := finished(!c.kept, false)
			for path, v := range c.also {
				put(t, j, path, v)
			}
			for _, v := range []any{c.one, c.with} {
				put(t, j, c.field, v)
				s := mustPlan(t, j)
				if got := c.says(s); got != (v == c.with) {
					t.Errorf("%s %v: %v; %v", c.field, v, got, s.Choice.Cylinders[0])
				}
			}
		})
	}
}

// TestPistonOfAnotherSize: a piston said to be for a size that it cannot be for is refused, wherever it lies.
func TestPistonOfAnotherSize(t *testing.T) {
	j := finished(false, false)
	put(t, j, "cylinders.0.piston_for", "0.5 mm")
	if _, err := planned(t, j); !errors.Is(err, oversize.ErrPiston) || !errors.Is(err, jobsheet.ErrJob) {
		t.Errorf("in hand: %v", err)
	}
	j = finished(true, false)
	put(t, j, "engine.oversizes.0.pistons.0.size", "79.919 mm")
	if _, err := planned(t, j); !errors.Is(err, oversize.ErrPiston) || !errors.Is(err, jobsheet.ErrJob) {
		t.Errorf("on offer: %v", err)
	}
}

// TestRingsAreSetInTravel: a gap is set where the bore is smallest in ring travel, and not above it.
func TestRingsAreSetInTravel(t *testing.T) {
	j := finished(true, false)
	const upper = 11400 * units.Micrometre // the uppermost plane
	proof := j["cylinders"].([]any)[0].(tree)["proof"].([]any)
	for _, r := range proof[:5] {
		r := r.(tree)
		r["diameter"] = (units.MustParseLength(r["diameter"].(string)) - 3*units.Micrometre).String()
	}
	for top, in := range map[string]bool{"7.6 mm": true, "15 mm": false} {
		put(t, j, "engine.layout.ring_top", top)
		if r := mustPlan(t, j).Cylinders[0].Rings[0]; (r.SetAt == upper) != in {
			t.Errorf("rings go up to %s, and the gap is set at %v", top, r.SetAt)
		}
	}
}

// TestRingOfItsOwnMetal: a ring that grows more than its bore loses more gap, each by its own temperature and doubt.
func TestRingOfItsOwnMetal(t *testing.T) {
	j := finished(true, false)
	put(t, j, "engine.running", tree{"ring": "150 ± 30 °C", "bore": "110 ± 10 °C", "piston_by_window": true})
	put(t, j, "engine.rings.0.material", "17e-6/K ± 1e-6/K")
	s := mustPlan(t, j)
	r, e := s.Cylinders[0].Rings[0], s.Job.Engine.Running
	heat := rings.Warm{
		Ring: material.Material{Expansion: 17e-6, Within: 1e-6}, RingAt: e.Ring.Value, RingWithin: e.Ring.Within,
		Bore: material.GreyIron(), BoreAt: e.Bore.Value, BoreWithin: e.Bore.Within,
	}
	same(t, "hot gap", r.Hot.Measured, must(heat.HotGap(r.Gap, r.Bore))(t))
}

// TestTracks: whether a machine runs in its own tracks and how many strokes cover the wall come from the job's lines,
// their width, the track of one and the tool's length.
func TestTracks(t *testing.T) {
	s := plan(t, job(t, "inch"))
	h, in := s.Honing, units.MustParseLength
	same(t, "tracks", h.Retrace, must(h.Used.Retrace(hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: in("0.02 in")}, 12))(t))
	same(t, "cover", h.Cover, must(h.Used.Cover(hone.Rig{Lines: 4, Width: in("0.25 in"), Length: in("3 in")}))(t))
}
