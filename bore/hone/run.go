// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
)

// A Run is a tool and the bore it is to run in, before its stroke is chosen.
type Run struct {
	Kind  Kind         `json:"kind,omitzero"`  // of hone; must be given
	Depth units.Length `json:"depth,omitzero"` // of the bore, from the top face to the bottom
	Tool  units.Length `json:"tool,omitzero"`  // abrasive length of the tool

	// How far the tool can go beyond either face before it meets something: a bearing, the table
	// of the machine. 0 is no room, as at the closed end of a blind bore.
	RoomTop    units.Length `json:"room_top,omitzero"`
	RoomBottom units.Length `json:"room_bottom,omitzero"`

	// Ports are openings in the wall that rigid stones have to span: the depths of their upper and lower edges, both
	// given.
	Ports []units.Limits `json:"ports,omitempty"`
}

// UsualTravel returns the usual travel for the kind of tool: half of a ball-type or brush hone
// stands out at either end of its stroke, which makes the stroke as long as the bore; a third
// of a rigid stone. Less, where there is less room. Both are common practice; the setting of the
// tool's maker outranks them.
//
// A kind that is not given is [units.ErrNotGiven], since no one rule is safe for all. A tool that leaves
// no stroke, and a port that a rigid stone cannot span, are [ErrRoom]; see [Run.Travel].
func UsualTravel(r Run) (Travel, error) {
	usual := r.Tool / 2
	if r.Kind == RigidStone {
		usual = r.Tool / 3
	}
	return r.Travel(min(usual, r.RoomTop), min(usual, r.RoomBottom))
}

// Travel returns the travel on which so much of the tool stands out at the ends of the stroke.
//
// It is [ErrRoom] where that is beyond the room, or beyond half of the tool: past that the
// middle of the tool is out of the bore, stones tip over the edge and may be thrown, and a flexible tool
// swings out. Half is the cap for every kind, and common practice.
//
// The half of a rigid stone that goes ahead must find wall beyond a port while the middle of the
// stone is still at the near edge, or the stone dips into it: a port as high as half of the stone, or
// higher, is [ErrRoom]. A ball-type or brush hone follows no straight line anyway, and ports are
// not looked at.
func (r Run) Travel(top, bottom units.Length) (Travel, error) {
	t := Travel{Depth: r.Depth, Tool: r.Tool, Top: top, Bottom: bottom}
	switch r.Kind {
	case 0:
		return Travel{}, fmt.Errorf("hone: kind of hone: %w", units.ErrNotGiven)
	case BallType, BrushType, RigidStone:
	default:
		return Travel{}, fmt.Errorf("hone: kind of hone %v: %w", r.Kind, units.ErrRange)
	}
	for _, end := range []struct {
		name      string
		room, out units.Length
	}{{"top", r.RoomTop, top}, {"bottom", r.RoomBottom, bottom}} {
		if end.room < 0 || end.room > units.MaxLength {
			return Travel{}, fmt.Errorf("hone: room at the %s %v: %w: want 0 or more, up to %v", end.name, end.room, units.ErrRange, units.MaxLength)
		}
		if most := min(end.room, r.Tool/2); end.out > most {
			return Travel{}, fmt.Errorf("hone: tool out of the %s by %v: %w: want up to %v, the lesser of the room and half the tool",
				end.name, end.out, ErrRoom, most)
		}
	}
	if _, err := t.Stroke(); err != nil {
		return Travel{}, err
	}
	for i, p := range r.Ports {
		if p.Min <= 0 || p.Max <= p.Min || p.Max >= r.Depth {
			return Travel{}, fmt.Errorf("hone: port %d from %v to %v: %w: want it inside the bore, upper edge first", i+1, p.Min, p.Max, units.ErrRange)
		}
		if r.Kind == RigidStone && p.Max-p.Min >= r.Tool/2 {
			return Travel{}, fmt.Errorf("hone: port %d, %v high: %w: want below half of the stone's %v, which must span it", i+1, p.Max-p.Min, ErrRoom, r.Tool)
		}
	}
	return t, nil
}
