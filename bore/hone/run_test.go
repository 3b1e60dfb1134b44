// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// A ball-type tool half out at both ends has a stroke as long as the bore, 90 mm, whatever its
// length (common practice, and geometry). A rigid stone of 45 mm a third out: 90 + 2·15 − 45 =
// 75 mm (common practice; computed).
func TestUsualTravel(t *testing.T) {
	roomy := hone.Run{Kind: hone.BallType, Depth: 90 * mm, RoomTop: 300 * mm, RoomBottom: 300 * mm}
	for _, kind := range []hone.Kind{hone.BallType, hone.BrushType} {
		for _, tool := range []units.Length{20 * mm, 60 * mm, 90 * mm, 140 * mm} {
			r := roomy
			r.Kind, r.Tool = kind, tool
			if l := must[units.Length](t)(must[hone.Travel](t)(hone.UsualTravel(r)).Stroke()); l != 90*mm {
				t.Errorf("%v of %v: stroke %v, want 90 mm", kind, tool, l)
			}
		}
	}
	r := roomy
	r.Kind, r.Tool = hone.RigidStone, 45*mm
	if l := must[units.Length](t)(must[hone.Travel](t)(hone.UsualTravel(r)).Stroke()); l != 75*mm {
		t.Errorf("rigid stones: stroke %v, want 75 mm", l)
	}
	// A blind bore with 10 mm above it.
	r.RoomTop, r.RoomBottom = 10*mm, 0
	if got, want := must[hone.Travel](t)(hone.UsualTravel(r)), (hone.Travel{Depth: 90 * mm, Tool: 45 * mm, Top: 10 * mm}); got != want {
		t.Errorf("blind bore: %+v, want %+v", got, want)
	}
}

func TestRunRefuses(t *testing.T) {
	good := hone.Run{Kind: hone.RigidStone, Depth: 90 * mm, Tool: 45 * mm, RoomTop: 40 * mm, RoomBottom: 10 * mm}
	with := func(change func(*hone.Run)) hone.Run { r := good; change(&r); return r }
	rows := []struct {
		name        string
		run         hone.Run
		top, bottom units.Length
		want        error
	}{
		{"as it is", good, 22 * mm, 10 * mm, nil},
		{"half", good, 22500 * units.Micrometre, 0, nil},
		{"over half", good, 22500*units.Micrometre + 1, 0, hone.ErrRoom},
		{"over the room", good, 0, 10*mm + 1, hone.ErrRoom},
		{"below nothing", good, -1, 0, hone.ErrRoom},
		{"no kind", with(func(r *hone.Run) { r.Kind = 0 }), 0, 0, units.ErrNotGiven},
		{"no such kind", with(func(r *hone.Run) { r.Kind = 9 }), 0, 0, units.ErrRange},
		{"no tool", with(func(r *hone.Run) { r.Tool = 0 }), 0, 0, units.ErrNotGiven},
		{"no bore", with(func(r *hone.Run) { r.Depth = 0 }), 0, 0, units.ErrNotGiven},
		{"room below nothing", with(func(r *hone.Run) { r.RoomTop = -1 }), 0, 0, units.ErrRange},
		{"room beyond all", with(func(r *hone.Run) { r.RoomBottom = 11 * units.Metre }), 0, 0, units.ErrRange},
		{"tool too long", with(func(r *hone.Run) { r.Tool = 140 * mm }), 40 * mm, 10 * mm, hone.ErrRoom},
		{"port spanned", with(func(r *hone.Run) { r.Ports = []units.Limits{{Min: 50 * mm, Max: 72 * mm}} }), 0, 0, nil},
		{"port too high", with(func(r *hone.Run) { r.Ports = []units.Limits{{Min: 50 * mm, Max: 72500 * units.Micrometre}} }), 0, 0, hone.ErrRoom},
		{"port high but flexible", with(func(r *hone.Run) { r.Kind, r.Ports = hone.BallType, []units.Limits{{Min: 30 * mm, Max: 72 * mm}} }), 0, 0, nil},
		{"port crossed", with(func(r *hone.Run) { r.Ports = []units.Limits{{Min: 60 * mm, Max: 60 * mm}} }), 0, 0, units.ErrRange},
		{"port at the top", with(func(r *hone.Run) { r.Ports = []units.Limits{{Min: 0, Max: 5 * mm}} }), 0, 0, units.ErrRange},
		{"port at the bottom", with(func(r *hone.Run) { r.Ports = []units.Limits{{Min: 80 * mm, Max: 90 * mm}} }), 0, 0, units.ErrRange},
	}
	for _, row := range rows {
		if _, err := row.run.Travel(row.top, row.bottom); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", row.name, err, row.want)
		}
	}
}

// Whatever the room, the usual travel keeps within it and within half of the tool, and no more
// room ever makes it shorter.
func TestUsualTravelKeepsRoom(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string, most int64) units.Length {
			return units.Length(rapid.Int64Range(0, most).Draw(t, name))
		}
		r := hone.Run{
			Kind:  rapid.SampledFrom([]hone.Kind{hone.BallType, hone.BrushType, hone.RigidStone}).Draw(t, "kind"),
			Depth: draw("depth", int64(units.Metre)), Tool: draw("tool", int64(units.Metre)),
			RoomTop: draw("top", int64(units.Metre)), RoomBottom: draw("bottom", int64(units.Metre)),
		}
		travel, err := hone.UsualTravel(r)
		if err != nil {
			return
		}
		if travel.Top > r.RoomTop || travel.Bottom > r.RoomBottom || travel.Top > r.Tool/2 || travel.Bottom > r.Tool/2 {
			t.Errorf("%+v leaves the room of %+v", travel, r)
		}
		short := must[units.Length](t)(travel.Stroke())
		r.RoomTop += draw("more", int64(units.Metre))
		if long := must[units.Length](t)(must[hone.Travel](t)(hone.UsualTravel(r)).Stroke()); long < short {
			t.Errorf("more room makes the stroke %v, from %v", long, short)
		}
	})
}
