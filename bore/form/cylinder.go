// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Cylinder is a reference cylinder of a wall and the cylindricity about it, by ISO 12180-1, rounded
// to a picometre. A bore has its material outside: a peak of the wall points to the axis.
type Cylinder struct {
	Reference Reference `json:"reference"` // which of the four
	Axis      Axis      `json:"axis"`      // its ends at the least and the greatest depth of the points
	// Radius is of the reference cylinder itself: the least-squares, circumscribed or inscribed
	// radius; of a minimum zone the mean of its two cylinders.
	Radius units.Length `json:"radius"`
	Inner  units.Length `json:"inner"` // distance of the nearest point from Axis, square to it
	Outer  units.Length `json:"outer"` // distance of the farthest
	CYLt   units.Length `json:"cylt"`  // peak-to-valley cylindricity deviation about this cylinder: Outer − Inner

	// These are defined about the least-squares cylinder alone, and zero otherwise. CYLp + CYLv =
	// CYLt. On a piston or journal, whose material is inside, CYLp and CYLv change places.
	CYLp units.Length `json:"cylp,omitzero"` // peak-to-reference: Radius − Inner
	CYLv units.Length `json:"cylv,omitzero"` // reference-to-valley: Outer − Radius
	CYLq units.Length `json:"cylq,omitzero"` // root mean square of the deviations, each point counting once

	// Certificate says why no cylinder of the kind is better. Least squares has none.
	Certificate Certificate `json:"certificate,omitzero"`
}

// Cylindricity returns the reference cylinder of a kind, LSCY, MZCY, MCCY or MICY, by orthogonal
// distances, its axis free to lean. Six points at least (else ErrPoints, as where all are one).
//
// ErrArc where the points do not hold an axis: all at one depth, a wall shorter than a hundredth of
// its radius, an axis that leans by 45° or more. ErrArc where they are on too short an arc all the
// way down, on a line or on one generator, or do not surround the cylinder asked for. units.ErrRange for a
// reference that is not a cylinder.
func (w Wall) Cylindricity(kind Reference) (Cylinder, error) { return new(workspace).cylinder(kind, w) }

// A tube is what a solver found: two cylinders about one axis, all points on or between them, and
// the points that carry it, with the weights that balance them.
type tube struct {
	pose
	in, out    float64
	contacts   [mostContacts]Contact
	n          int
	unbalanced float64 // how far they are from balance
}

// cylinder is [Wall.Cylindricity], with the same errors.
func (w *workspace) cylinder(kind Reference, wall Wall) (Cylinder, error) {
	if !kind.ofWall() {
		return Cylinder{}, fmt.Errorf("form: %v of a wall: want LSCY, MZCY, MCCY or MICY: %w", kind, units.ErrRange)
	}
	if err := enough(wall.len(), wallPoints); err != nil {
		return Cylinder{}, err
	}
	if kind != LSCY {
		return w.minimaxCylinder(kind, wall)
	}
	f, ok := wall.start(wall.x, wall.y, wall.z)
	if !ok || f.half < float64(shortest*f.r) {
		return Cylinder{}, wall.unfit(kind, f)
	}
	c, err := wall.cylinder(kind, tube{pose: f.pose, in: f.in, out: f.out}, f.r)
	if err != nil {
		return Cylinder{}, err
	}
	c.CYLp, c.CYLv = c.Radius-c.Inner, c.Outer-c.Radius
	c.CYLq, err = units.Of(f.rms, units.Millimetre)
	return c, err
}

func (w *workspace) minimaxCylinder(kind Reference, wall Wall) (c Cylinder, err error) {
	var f fitted
	var ok bool
	if wall.len() > fewPoints {
		w.partOfWall(wall)
		f, ok = wall.start(w.x, w.y, w.z)
	}
	if !ok {
		f, ok = wall.start(wall.x, wall.y, wall.z)
	}
	if !ok || f.half < float64(shortest*f.r) {
		return Cylinder{}, wall.unfit(kind, f)
	}
	p := f.pose
	var e exclusion
	t, ok := w.tube(kind, wall, p, 4)
	if ok {
		if c, e, err = w.certified(kind, wall, t); err != nil || !c.Certificate.Searched {
			return c, err
		}
	}
	// Not proved: there may be better ones not far away, about the axes left open, or, where nothing is excluded, about
	// such as are displaced and leaning by as much as the form is.
	if !e.closed {
		in2, out2 := p.spread(wall, 1)
		form := math.Sqrt(out2) - math.Sqrt(in2)
		for e.n = range e.open {
			var m move
			m[e.n/2] = form * float64(2*(e.n%2)-1)
			e.open[e.n] = p.moved(m)
		}
		e.n++
	}
	least := math.Inf(1)
	if ok {
		least = cost(kind, t.in, t.out)
	}
	for k := 0; k < e.n; k++ {
		next, found := w.tube(kind, wall, e.open[k], 1)
		if !found {
			continue
		}
		// One as good, as it is published, is taken where its contacts balance better.
		is := cost(kind, next.in, next.out)
		if is > least+worth || is >= least-worth/2 && next.unbalanced >= t.unbalanced/2 {
			continue
		}
		d, f, err := w.certified(kind, wall, next)
		if err != nil {
			continue
		}
		c, t, ok, least = d, next, true, min(least, is)
		if e.closed { // go on from what that leaves open
			e, k = f, -1
		}
	}
	if !ok {
		return Cylinder{}, fmt.Errorf("form: %v of %d points: no cylinder that they surround was found: %w", kind, wall.len(), ErrArc)
	}
	return c, nil
}

// certified rounds a tube to a minimax cylinder with its certificate.
func (w *workspace) certified(kind Reference, wall Wall, t tube) (c Cylinder, e exclusion, err error) {
	r := (t.in + t.out) / 2
	switch kind {
	case MCCY:
		r = t.out
	case MICY:
		r = t.in
	}
	if c, err = wall.cylinder(kind, t, r); err != nil || c.CYLt <= thin && kind == MZCY {
		return c, e, err
	}
	c.Certificate = Certificate{contacts: t.contacts, n: t.n}
	e, err = c.certify(wall, &w.search)
	return c, e, err
}

// shortest is the least length of a wall over its radius, halves of both: on a shorter one the axis
// leans more for a form error than its place in the wall is worth.
const shortest = 0.005

// unfit says why the points have no cylinder of the kind.
func (w Wall) unfit(kind Reference, f fitted) error {
	one := true
	for i := range w.x {
		one = one && w.x[i] == w.x[0] && w.y[i] == w.y[0] && w.z[i] == w.z[0]
	}
	switch {
	case one:
		return fmt.Errorf("form: %v: all %d points are one: %w", kind, w.len(), ErrPoints)
	case w.low == w.high:
		return fmt.Errorf("form: %v: all %d points are at one depth: %w", kind, w.len(), ErrArc)
	case f.r > 0 && (w.high-w.low)/2 < float64(shortest*f.r):
		return fmt.Errorf("form: %v: a wall %.4g mm long of a radius of %.4g mm: want a hundredth of it at least: %w", kind, w.high-w.low, f.r, ErrArc)
	case f.r > 0:
		return fmt.Errorf("form: %v: no cylinder that leans by less than 45° holds the points to a tenth of its radius: depths have to count along the bore: %w", kind, ErrArc)
	default:
		return fmt.Errorf("form: %v: %d points do not hold a cylinder: on a line or a plane, or too short an arc: %w", kind, w.len(), ErrArc)
	}
}

// axis returns the axis of a pose from the least to the greatest depth of the points.
func (w Wall) axis(p pose) (a Axis, err error) {
	if a.From, err = w.place(p.c.plus((w.low-p.c[2])/p.w[2], p.w)); err == nil {
		a.To, err = w.place(p.c.plus((w.high-p.c[2])/p.w[2], p.w))
	}
	return a, err
}

// cylinder rounds a tube to a Cylinder with the radius r.
func (w Wall) cylinder(kind Reference, t tube, r float64) (c Cylinder, err error) {
	c.Reference = kind
	if c.Axis, err = w.axis(t.pose); err == nil {
		c.Inner, err = units.Of(t.in, units.Millimetre)
	}
	if err == nil {
		c.Outer, err = units.Of(t.out, units.Millimetre)
	}
	if err == nil {
		c.Radius, err = units.Of(r, units.Millimetre)
	}
	if err != nil {
		return Cylinder{}, fmt.Errorf("form: %v: axis or radius beyond %v: %w", kind, units.MaxLength, ErrArc)
	}
	c.CYLt = c.Outer - c.Inner
	return c, nil
}
