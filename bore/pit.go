// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Pit is a pit, a score or a spot of rust that the anvils bridge, so that no diameter shows it: its
// depth is measured by itself. What nobody noted of where it lies is left out, and counts at its worst.
type Pit struct {
	Below  units.Length `json:"below"`           // the wall around it, radial: as deep as it may be at most
	Depth  units.Length `json:"depth,omitzero"`  // of its upper end, from the deck; zero: it may be at any depth
	Length units.Length `json:"length,omitzero"` // from there downwards; zero: it may run down to the end
	At     *units.Angle `json:"at,omitempty"`    // direction, once round from the thrust axis, which is 0; nil: it may run all round
}

// end returns the depth of its lower end, as deep as it may be.
func (p Pit) end() units.Length {
	if p.Depth == 0 || p.Length == 0 {
		return units.MaxLength
	}
	return p.Depth + p.Length
}

func (p Pit) validate() error {
	at := units.Angle(0)
	if p.At != nil {
		at = *p.At
	}
	if p.Below <= 0 || p.Below > mostAllowance || p.Depth < 0 || p.Length < 0 ||
		p.Depth > units.MaxLength || p.Length > units.MaxLength-p.Depth || !validAngle(at) {
		return fmt.Errorf("bore: pit %v below the wall, from %v over %v, at %v rad: want it above 0, up to %v, inside a bore of %v at most, and a finite angle: %w",
			p.Below, p.Depth, p.Length, float64(at), mostAllowance, units.MaxLength, units.ErrRange)
	}
	return nil
}

// A WornPit is a pit with the wall around it.
type WornPit struct {
	Pit
	// Wall is the largest size next to it: between the nearest depths that were read at or above its
	// upper and at or below its lower end, along the nearest axes on both sides.
	Wall uncertainty.Estimate `json:"wall"`
	// InTravel says that rings pass over it, or may: ring travel is not known. A pit that none passes
	// over leaks no gas along the wall, and takes no part in the clean-up.
	InTravel bool `json:"in_travel,omitempty"`
}

// passed reports whether rings may pass over the pit.
func (t RingTravel) passed(p Pit) bool {
	return !t.known() || t.Assumed || p.Depth <= t.Bottom && p.end() >= t.Top
}

// beside returns the largest place next to a pit.
func (g *Geometry) beside(p Pit) Place {
	var near []Place
	var above, below *Plane
	for _, planes := range [...][]Plane{g.Planes, g.Bridges} {
		for i := range planes {
			q := &planes[i]
			if q.Depth <= p.Depth && (above == nil || q.Depth > above.Depth) {
				above = q
			}
			if q.Depth >= p.end() && (below == nil || q.Depth < below.Depth) {
				below = q
			}
			if p.Depth < q.Depth && q.Depth < p.end() {
				near = append(near, q.beside(p)...)
			}
		}
	}
	for _, q := range [...]*Plane{above, below} {
		if q != nil {
			near = append(near, q.beside(p)...)
		}
	}
	largest, _ := extremes(near)
	return largest
}

// beside returns the places of a plane along the nearest axes on both sides of a pit; all of them where
// it may run round.
func (p *Plane) beside(pit Pit) []Place {
	if pit.At == nil {
		return p.Places
	}
	var left, right Place
	toLeft, toRight := units.Angle(-1), units.Angle(-1)
	for _, q := range p.Places {
		if d := foldAxis(*pit.At - q.Axis.angle()); toLeft < 0 || d < toLeft {
			left, toLeft = q, d
		}
		if d := foldAxis(q.Axis.angle() - *pit.At); toRight < 0 || d < toRight {
			right, toRight = q, d
		}
	}
	return []Place{left, right}
}
