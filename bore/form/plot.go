// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"

	"borewright.example/units"
)

// A Plot says how a trace is drawn larger than life: the reference circle as one of Radius, and
// what lies off it Magnification times as far.
type Plot struct {
	Radius        units.Length `json:"radius"`        // on the paper, above 0, up to 5 m
	Magnification float64      `json:"magnification"` // a number without unit, from above 0 to 1e9
}

// Points returns the places on the paper, about its middle, of all points of a trace about a
// circle: the point in the same direction from the centre, at Radius + Magnification·(d − R).
//
// ErrSetup for a Plot that cannot be, or one that magnifies so much that a point would come to lie
// behind the middle, or beyond 5 m; ErrPoint where a point lies at the centre of the circle.
func (p Plot) Points(t Trace, c Circle) ([]Point, error) {
	if p.Radius <= 0 || p.Radius > mostRadius || !(p.Magnification > 0 && p.Magnification <= 1e9) {
		return nil, fmt.Errorf("form: plot on a circle of %v, magnified %v times: want above 0, up to %v and 1e9: %w", p.Radius, p.Magnification, mostRadius, ErrSetup)
	}
	cx, cy := t.from(c.Centre)
	base, r := p.Radius.In(units.Millimetre), c.Radius.In(units.Millimetre)
	ps := make([]Point, t.Len())
	for i := range ps {
		dx, dy := t.x[i]-cx, t.y[i]-cy
		d := norm(dx, dy)
		if d == 0 {
			return nil, fmt.Errorf("form: plot: point %d lies at the centre: %w", i, ErrPoint)
		}
		q := base + float64(p.Magnification*(d-r))
		if !(q >= 0 && q <= mostRadius.In(units.Millimetre)) {
			return nil, fmt.Errorf("form: plot magnified %v times: point %d falls %.3g mm from the middle, want 0 to %v: %w", p.Magnification, i, q, mostRadius, ErrSetup)
		}
		var err error
		if ps[i].X, err = units.Of(dx/d*q, units.Millimetre); err != nil {
			return nil, err
		}
		if ps[i].Y, err = units.Of(dy/d*q, units.Millimetre); err != nil {
			return nil, err
		}
	}
	return ps, nil
}
