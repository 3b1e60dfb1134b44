// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Local is a wall at one depth: its least-squares circle in that section.
type Local struct {
	Depth    units.Length `json:"depth"`    // from the deck
	Centre   Point        `json:"centre"`   // of the circle
	Diameter units.Length `json:"diameter"` // the local size: where it is largest in the middle the wall is a barrel, where it is least a waist
	RONt     units.Length `json:"ront"`     // about that circle
}

// A MedianLine is the line of the centres of a wall, section by section, and how straight it is.
type MedianLine struct {
	Locals []Local `json:"locals"` // by depth
	Axis   Axis    `json:"axis"`   // straight from the first centre to the last
	// Bend is how far a centre lies off that straight line at most, at the depth BendAt, towards Toward
	// as seen from the line, 0 up to 360° as angles of a trace count. Two sections show none.
	Bend   units.Length `json:"bend"`
	BendAt units.Length `json:"bend_at"`
	Toward units.Angle  `json:"toward"`
}

// MedianLine returns the centres and sizes of the sections of the wall. A bend of it is a bend of the
// bore; two-point readings, which hold no centre, do not see it. ErrPoints where the wall is not made
// from sections; errors are also those of [Trace.LeastSquares].
func (w Wall) MedianLine() (MedianLine, error) {
	n := len(w.sections)
	if n == 0 {
		return MedianLine{}, fmt.Errorf("form: median line of %d points: %w", w.len(), ErrPoints)
	}
	m := MedianLine{Locals: make([]Local, n)}
	for i, s := range w.sections {
		c, err := s.Trace.LeastSquares()
		if err != nil {
			return MedianLine{}, fmt.Errorf("form: median line at %v: %w", s.Depth, err)
		}
		m.Locals[i] = Local{s.Depth, c.Centre, 2 * c.Radius, c.RONt}
	}
	first, last := m.Locals[0], m.Locals[n-1]
	m.Axis = Axis{WallPoint{first.Centre.X, first.Centre.Y, first.Depth}, WallPoint{last.Centre.X, last.Centre.Y, last.Depth}}
	for _, l := range m.Locals {
		at, err := m.Axis.At(l.Depth)
		if err != nil {
			return MedianLine{}, err
		}
		dx, dy := (l.Centre.X - at.X).In(units.Millimetre), (l.Centre.Y - at.Y).In(units.Millimetre)
		if off := units.Length(math.Round(norm(dx, dy) * units.PerMillimetre)); off > m.Bend {
			m.Bend, m.BendAt, m.Toward = off, l.Depth, turnOf(dx, dy)
		}
	}
	return m, nil
}
