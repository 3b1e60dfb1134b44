// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// An Axis is a straight line through a bore, given by two of its points: those at the least and at
// the greatest depth of the wall that it belongs to.
type Axis struct {
	From WallPoint `json:"from"` // at the least depth
	To   WallPoint `json:"to"`   // at the greatest
}

// Square returns the axis through a point of the deck and square to it, as a boring bar has it that
// is set up on the deck.
func Square(p Point) Axis {
	return Axis{WallPoint{p.X, p.Y, 0}, WallPoint{p.X, p.Y, units.Millimetre}}
}

// At returns where the axis passes a depth; the deck is at 0. units.ErrRange where it has no length along
// the depth, or the place lies beyond [units.MaxLength].
func (a Axis) At(depth units.Length) (Point, error) {
	span := a.To.Depth - a.From.Depth
	if span == 0 {
		return Point{}, fmt.Errorf("form: axis from %v to %v in depth: %w", a.From.Depth, a.To.Depth, units.ErrRange)
	}
	part := float64(depth-a.From.Depth) / float64(span)
	x, err := units.Of(float64(part*(a.To.X-a.From.X).In(units.Millimetre)), units.Millimetre)
	if err != nil {
		return Point{}, fmt.Errorf("form: axis at a depth of %v: %w: %w", depth, err, units.ErrRange)
	}
	y, err := units.Of(float64(part*(a.To.Y-a.From.Y).In(units.Millimetre)), units.Millimetre)
	if err != nil {
		return Point{}, fmt.Errorf("form: axis at a depth of %v: %w: %w", depth, err, units.ErrRange)
	}
	p := Point{a.From.X + x, a.From.Y + y}
	if max(p.X.Abs(), p.Y.Abs()) > units.MaxLength {
		return Point{}, fmt.Errorf("form: axis at a depth of %v: beyond %v: %w", depth, units.MaxLength, units.ErrRange)
	}
	return p, nil
}

// aside returns how far To lies aside of From, square to the depth, in mm.
func (a Axis) aside() (dx, dy float64) {
	return (a.To.X - a.From.X).In(units.Millimetre), (a.To.Y - a.From.Y).In(units.Millimetre)
}

// OutOfSquare returns by how much the axis is out of square to the deck from its one end to the
// other: the diameter of the smallest cylinder square to the deck that holds it.
func (a Axis) OutOfSquare() units.Length {
	dx, dy := a.aside()
	return units.Length(math.Round(norm(dx, dy) * units.PerMillimetre))
}

// Lean returns the angle between the axis and the normal of the deck, from 0.
func (a Axis) Lean() units.Angle {
	dx, dy := a.aside()
	return units.Angle(math.Atan2(norm(dx, dy), math.Abs((a.To.Depth - a.From.Depth).In(units.Millimetre))))
}

// Toward returns towards where the axis leans as the depth grows, 0 up to 360°, as angles of a trace
// count; 0 where it does not lean.
func (a Axis) Toward() units.Angle {
	dx, dy := a.aside()
	if a.To.Depth < a.From.Depth {
		dx, dy = -dx, -dy
	}
	return turnOf(dx, dy)
}

// turnOf returns the angle of a direction, 0 up to 360°, to a millionth of a degree.
func turnOf(dx, dy float64) units.Angle {
	if dx == 0 && dy == 0 {
		return 0
	}
	return phase(math.Atan2(dy, dx), 1)
}
