// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"pgregory.net/rapid"
)

// turned walks the tool through its cycles and returns, for each of the first ones, by how much
// the nearest of its lines misses a track of the first cycle, along the circumference in mm.
func turned(s hone.Setting, lines, cycles int) []float64 {
	var misses []float64
	space := 2 * math.Pi / float64(lines)
	step := 2 * math.Pi * math.Mod(float64(s.Spindle)/float64(s.Stroking.Cycles()), 1)
	angle := 0.0
	for range cycles {
		angle = math.Mod(angle+step, 2*math.Pi)
		miss := math.Pi
		for line := range lines { // against the track of the line that started at angle 0
			off := math.Mod(angle+float64(line)*space, 2*math.Pi)
			miss = min(miss, off, 2*math.Pi-off)
		}
		misses = append(misses, miss*s.Bore.In(mm)/2)
	}
	return misses
}

// The answer against the walk, over a thousand turns and more.
func checkRetrace(t *rapid.T) {
	s := anySetting(t)
	s.Spindle = units.Frequency(rapid.Float64Range(10, 600).Draw(t, "rev/min")) * units.PerMinute
	if rapid.Bool().Draw(t, "in step") { // often near a fraction of small denominator
		k := rapid.IntRange(1, 12).Draw(t, "k")
		p := rapid.IntRange(1, 60).Draw(t, "p")
		turns := float64(p) / float64(k) * rapid.Float64Range(0.999, 1.001).Draw(t, "off")
		s.Spindle = units.Frequency(turns * float64(s.Stroking.Cycles()))
	}
	r := hone.Rig{
		Kind: hone.RigidStone, Drive: hone.ByMachine,
		Lines: rapid.IntRange(1, 8).Draw(t, "lines"),
		Track: units.Length(rapid.Int64Range(int64(units.Micrometre), int64(6*mm)).Draw(t, "track")),
	}
	cycles := rapid.IntRange(1, 40).Draw(t, "cycles")
	got, err := s.Retrace(r, cycles)
	if err != nil {
		t.Fatal(err)
	}
	const unsure = 1e-5 // mm: the walk sums up rounding
	width := r.Track.In(mm)
	misses := turned(s, r.Lines, cycles)
	first, nearest := 0, math.Inf(1)
	for i, m := range misses {
		if math.Abs(m-width) < unsure {
			return // on the edge, either answer will do
		}
		if m < width && first == 0 {
			first = i + 1
		}
		nearest = min(nearest, m)
	}
	switch {
	case got.Meets:
		if got.After != first {
			t.Fatalf("%+v, the walk met its track after %d", got, first)
		}
		near(t, "slip", got.Slip.In(mm), misses[first-1], unsure)
	case got.After > 0:
		if first != 0 || got.Avoid != 0 {
			t.Fatalf("%+v, the walk met its track after %d", got, first)
		}
		near(t, "slip", got.Slip.In(mm), nearest, unsure)
		near(t, "slip after", got.Slip.In(mm), misses[got.After-1], unsure)
		return
	default:
		t.Fatalf("%+v of a rigid tool on a machine", got)
	}

	clear := func(n units.Frequency) bool {
		moved := s
		moved.Spindle = n
		a, err := moved.Retrace(r, cycles)
		if err != nil {
			t.Fatal(err)
		}
		return a.After > 0 && !a.Meets
	}
	away := math.Abs(float64(got.Avoid - s.Spindle))
	one := float64(s.Stroking.Cycles()) / float64(r.Lines) // of spindle speed, to one more space in a cycle
	if got.Avoid == 0 {
		away = one
	} else if !clear(got.Avoid) || away > one*(1+1e-9) {
		t.Fatalf("%+v: the speed that avoids it does not", got)
	}
	// No speed nearer by is clear, as far as a thousand of them can tell; what lies within the
	// rounding that Avoid keeps clear of is not asked.
	away -= 2.5e-8 * one
	for i := 1; i < 1000; i++ {
		move := units.Frequency(away * float64(i) / 1000)
		if clear(s.Spindle+move) || s.Spindle > move && clear(s.Spindle-move) {
			t.Fatalf("%+v: %v away is clear, too", got, move)
		}
	}
}

func TestRetrace(t *testing.T) { rapid.Check(t, checkRetrace) }

func TestRetraceStates(t *testing.T) {
	rig := hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: mm / 10}
	s := small(120, 80*mm, hone.Cycles(1*units.Hertz)) // two turns a cycle
	r := must[hone.Retrace](t)(s.Retrace(rig, 10))
	if !r.Meets || r.After != 1 || r.Slip != 0 || r.Avoid == 0 {
		t.Errorf("two turns a cycle: %+v", r)
	}
	s.Spindle = 80 * units.PerMinute // 16/3 spaces
	if r := must[hone.Retrace](t)(s.Retrace(rig, 10)); r.After != 3 || r.Slip != 0 {
		t.Errorf("16/3 spaces a cycle: %+v", r)
	}
	if r := must[hone.Retrace](t)(s.Retrace(rig, 2)); r.Meets || r.After != 1 {
		t.Errorf("looking two cycles ahead: %+v", r)
	}
	rig.Track = 40 * mm // wider than half a space: no way round
	if r := must[hone.Retrace](t)(s.Retrace(rig, 10)); !r.Meets || r.Avoid != 0 {
		t.Errorf("tracks too wide: %+v", r)
	}
	for _, other := range []hone.Rig{
		{}, {Kind: hone.BallType, Drive: hone.ByMachine, Lines: 4, Track: mm}, {Kind: hone.BrushType, Drive: hone.ByMachine},
		{Kind: hone.RigidStone, Drive: hone.ByHand, Lines: 4, Track: mm}, {Kind: hone.RigidStone},
	} {
		if r, err := s.Retrace(other, 10); err != nil || r != (hone.Retrace{}) {
			t.Errorf("%+v: %v, %v", other, r, err)
		}
	}
	good := hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: mm / 10}
	for name, row := range map[string]struct {
		s      hone.Setting
		change func(*hone.Rig)
		cycles int
		err    error
	}{
		"no setting":      {hone.Setting{}, func(*hone.Rig) {}, 10, units.ErrNotGiven},
		"no lines":        {s, func(r *hone.Rig) { r.Lines = 0 }, 10, units.ErrNotGiven},
		"too many lines":  {s, func(r *hone.Rig) { r.Lines = 1001 }, 10, units.ErrRange},
		"no track":        {s, func(r *hone.Rig) { r.Track = 0 }, 10, units.ErrNotGiven},
		"negative track":  {s, func(r *hone.Rig) { r.Track = -1 }, 10, units.ErrRange},
		"no cycles":       {s, func(*hone.Rig) {}, 0, units.ErrNotGiven},
		"negative cycles": {s, func(*hone.Rig) {}, -1, units.ErrRange},
		"too many cycles": {s, func(*hone.Rig) {}, 1001, units.ErrRange},
		"turns too much":  {small(1e6, 80*mm, hone.Cycles(1)), func(*hone.Rig) {}, 10, units.ErrRange},
		"hardly strokes":  {small(100, 80*mm, hone.Cycles(5e-324)), func(*hone.Rig) {}, 10, units.ErrRange},
	} {
		r := good
		row.change(&r)
		if got, err := row.s.Retrace(r, row.cycles); !errors.Is(err, row.err) || got != (hone.Retrace{}) {
			t.Errorf("%s: %+v, %v; want %v", name, got, err, row.err)
		}
	}
}
