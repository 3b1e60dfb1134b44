// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Circle is a reference circle of a trace and the roundness about it, by ISO 12181-1, rounded to
// a picometre. A bore has its material outside: a peak of the wall points to the axis.
type Circle struct {
	Reference Reference `json:"reference"` // which of the four
	Centre    Point     `json:"centre"`    // as the points are: of [FromRadii] and [FromPolar], from the axis of the spindle
	// Radius is of the reference circle itself: the least-squares, circumscribed or inscribed
	// radius; of a minimum zone the mean of its two circles.
	Radius units.Length `json:"radius"`
	Inner  units.Length `json:"inner"` // distance of the nearest point from Centre
	Outer  units.Length `json:"outer"` // distance of the farthest
	RONt   units.Length `json:"ront"`  // peak-to-valley roundness deviation about this circle: Outer − Inner

	// These are defined about the least-squares circle alone, and zero otherwise. RONp + RONv =
	// RONt. On a piston or journal, whose material is inside, RONp and RONv change places.
	RONp units.Length `json:"ronp,omitzero"` // peak-to-reference: Radius − Inner
	RONv units.Length `json:"ronv,omitzero"` // reference-to-valley: Outer − Radius
	// RONq is the root mean square of the deviations of the points, each counting once. ISO 12181-1
	// takes it over the angle, which is the same where the points are evenly spaced.
	RONq units.Length `json:"ronq,omitzero"`

	// Certificate says why no circle of the kind is better. Least squares has none.
	Certificate Certificate `json:"certificate,omitzero"`
}

// LeastSquares returns the least-squares circle: orthogonal distances, not the easier algebraic
// ones. Of an arc it is the circle found from the algebraic one. ErrArc where the points are on a
// line, or on an arc so short that a centre is 1000/√n times as doubtful as a point: under 9.4° of
// many evenly spaced points, 7.5° of three. ErrPoints where there are fewer than three, or all are
// one.
func (t Trace) LeastSquares() (Circle, error) {
	if err := enough(t.Len(), 3); err != nil {
		return Circle{}, err
	}
	cx, cy, r, rms, ok := leastSquares(t.x, t.y)
	if !ok {
		return Circle{}, t.unfit(LSCI)
	}
	_, _, in2, out2 := span(t.x, t.y, cx, cy)
	c, err := t.circle(LSCI, ring{x: cx, y: cy, in: math.Sqrt(in2), out: math.Sqrt(out2)}, r)
	if err != nil {
		return Circle{}, err
	}
	c.RONp, c.RONv = c.Radius-c.Inner, c.Outer-c.Radius
	c.RONq, err = units.Of(rms, units.Millimetre)
	return c, err
}

// MinimumZone returns the minimum zone: of all pairs of circles about one centre that hold the
// points between them, the pair with the least RONt, the best in the whole plane and not only
// nearby. Four points at least, not all one (else ErrPoints). ErrArc where the points are as well on
// a line: where no zone is half as narrow as a straight strip, or the search for one found none.
func (t Trace) MinimumZone() (Circle, error) { return new(workspace).minimax(MZCI, t, 4) }

// MinimumCircumscribed returns the smallest circle around all points. Three points at least, not
// all one (else ErrPoints).
func (t Trace) MinimumCircumscribed() (Circle, error) {
	return new(workspace).minimax(MCCI, t, 3)
}

// MaximumInscribed returns the largest circle that holds no point and touches points on all sides,
// so that it cannot slip out: the best of all such, not only of those nearby. Three points at least,
// not all one (else ErrPoints). ErrArc where none was found whose radius is a tenth of the extent
// of the points or more, as on an arc. ErrUnproved where the search ended before it had excluded
// one larger by a tenth.
func (t Trace) MaximumInscribed() (Circle, error) { return new(workspace).minimax(MICI, t, 3) }

// minimax returns a reference circle that some of the points carry, with its certificate, of so many points at least.
func (w *workspace) minimax(kind Reference, t Trace, points int) (Circle, error) {
	if err := enough(t.Len(), points); err != nil {
		return Circle{}, err
	}
	z, ok := w.solve(kind, t.x, t.y)
	var bound, r, reach float64
	var searched bool
	switch kind {
	case MCCI:
		if z.out == 0 {
			return Circle{}, t.unfit(kind)
		}
		r, bound, reach = z.out, z.gap, units.MaxLength.In(units.Millimetre)
	case MZCI:
		z, bound, searched = w.prove(kind, t.x, t.y, z, ok)
		r = (z.in + z.out) / 2
	case MICI:
		z, bound, searched = w.prove(kind, t.x, t.y, z, ok)
		r = z.in
	}
	if !(bound < math.Inf(1)) {
		return Circle{}, t.unfit(kind)
	}
	if kind == MICI && bound > float64(vague*r) {
		return Circle{}, fmt.Errorf("form: %v of %d points: the search ended at a radius of %.4g mm, one larger by %.4g mm not excluded: %w", kind, t.Len(), r, bound, ErrUnproved)
	}
	if kind != MCCI && z.n > 0 {
		reach = min(z.reach(t.x, t.y), units.MaxLength.In(units.Millimetre))
	}
	c, err := t.circle(kind, z, r)
	if err != nil {
		return Circle{}, err
	}
	c.Certificate = Certificate{contacts: z.contacts, n: z.n, Searched: searched}
	if c.Certificate.Bound, err = units.Of(bound, units.Millimetre); err != nil {
		return Circle{}, err
	}
	c.Certificate.Reach, err = units.Of(reach, units.Millimetre)
	return c, err
}

// unfit says why the points have no circle of the kind.
func (t Trace) unfit(kind Reference) error {
	for i := range t.x {
		if t.x[i] != t.x[0] || t.y[i] != t.y[0] {
			return fmt.Errorf("form: %v of %d points: %s: %w", kind, t.Len(), t.lack(kind), ErrArc)
		}
	}
	return fmt.Errorf("form: %v: all %d points are one: %w", kind, t.Len(), ErrPoints)
}

// lack names what the points of a trace lack for a circle of the kind.
func (t Trace) lack(kind Reference) string {
	switch strip := stripWidth(t.x, t.y); {
	case strip == 0:
		return "they are on a straight line"
	case kind == MZCI:
		return fmt.Sprintf("no zone was found half as narrow as the straight strip of %.4g mm that holds them as well", strip)
	case kind == MICI:
		return "they surround no circle of a tenth of their extent"
	default:
		return fmt.Sprintf("they lie in a straight strip of %.4g mm, and hold no centre", strip)
	}
}

// circle rounds a ring to a Circle with the radius r.
func (t Trace) circle(kind Reference, z ring, r float64) (c Circle, err error) {
	c.Reference = kind
	if c.Centre, err = t.point(z.x, z.y); err == nil {
		c.Inner, err = units.Of(z.in, units.Millimetre)
	}
	if err == nil {
		c.Outer, err = units.Of(z.out, units.Millimetre)
	}
	if err == nil {
		c.Radius, err = units.Of(r, units.Millimetre)
	}
	if err != nil {
		return Circle{}, fmt.Errorf("form: %v: centre or radius beyond %v: %w", kind, units.MaxLength, ErrArc)
	}
	c.RONt = c.Outer - c.Inner
	return c, nil
}
