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

// Cylinder returns the reference cylinder of a kind, LSCY, MZCY, MCCY or MICY, by orthogonal
// distances, its axis free to lean. Six points at least (else ErrPoints, as where all are one).
//
// ErrArc where the points do not hold an axis: all at one depth, a wall shorter than a hundredth of
// its radius, an axis that leans by 45° or more. ErrArc where they are on too short an arc all the
// way down, on a line or on one generator, or do not surround the cylinder asked for. units.ErrRange for a
// reference that is not a cylinder.
func (w Wall) Cylinder(kind Reference) (Cylinder, error) { return new(workspace).cylinder(kind, w) }

// A tube is what a solver found: two cylinders about one axis, all points on or between them, and
// the points that carry it, with the weights that balance them.
type tube struct {
	pose
	in, out  float64
	contacts [mostContacts]Contact
	n        int
}

// cylinder is [Wall.Cylinder], with the same errors.
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
	f, ok := startCylinder(wall.x, wall.y, wall.z)
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
		f, ok = startCylinder(w.x, w.y, w.z)
	}
	if !ok {
		f, ok = startCylinder(wall.x, wall.y, wall.z)
	}
	if !ok || f.half < float64(shortest*f.r) {
		return Cylinder{}, wall.unfit(kind, f)
	}
	p := f.pose
	low, high := extremes(wall.z)
	p.half = (high - low) / 2
	t, ok := w.tube(kind, wall, p)
	if ok {
		if c, err = wall.certified(kind, t); err != nil || !c.Certificate.Searched {
			return c, err
		}
	}
	// Not proved: there may be better ones not far away.
	if t, ok = w.elsewhere(kind, wall, t, ok, p); !ok {
		return Cylinder{}, fmt.Errorf("form: %v of %d points: no cylinder that they surround was found: %w", kind, wall.len(), ErrArc)
	}
	return wall.certified(kind, t)
}

// elsewhere goes from axes all round one that is nearly right, displaced and leaning by as much as the
// form is, to the best cylinder that any of them leads to. It goes by the points that lie within a sixteenth
// of the form from the best so far, and asks all only where those have a better one.
func (w *workspace) elsewhere(kind Reference, wall Wall, best tube, found bool, p pose) (tube, bool) {
	in2, out2 := p.spread(wall, 1)
	form := math.Sqrt(out2) - math.Sqrt(in2)
	var some Wall
	known := &best
	for k := range 2 * len(move{}) {
		switch {
		case some.len() > 0: // the same as before
		case found && wall.len() > fewOfWall:
			w.collectWall(kind, wall, 1, &best, form/16)
			some = Wall{x: w.x, y: w.y, z: w.z}
		default:
			some, w.program.n = wall, 0
		}
		if !found {
			known = nil
		}
		var m move
		m[k/2] = form * float64(2*(k%2)-1)
		t, ok := w.settle(kind, some.x, some.y, some.z, p.moved(m), known)
		if !ok || found && cost(kind, t.in, t.out) >= cost(kind, best.in, best.out)-float64(alike*t.out) {
			continue
		}
		if some.len() < wall.len() {
			some = Wall{} // the points taken go
			if t, ok = w.tube(kind, wall, t.pose); !ok || cost(kind, t.in, t.out) >= cost(kind, best.in, best.out)-float64(alike*t.out) {
				continue
			}
		}
		best, found, known, some = t, true, &best, Wall{}
	}
	return best, found
}

// certified rounds a tube to a minimax cylinder with its certificate.
func (w Wall) certified(kind Reference, t tube) (Cylinder, error) {
	r := (t.in + t.out) / 2
	switch kind {
	case MCCY:
		r = t.out
	case MICY:
		r = t.in
	}
	c, err := w.cylinder(kind, t, r)
	if err != nil {
		return Cylinder{}, err
	}
	if c.CYLt <= thin && kind == MZCY {
		return c, nil
	}
	c.Certificate = Certificate{contacts: t.contacts, n: t.n}
	return c, c.certify(w)
}

// shortest is the least length of a wall over its radius, halves of both: on a shorter one the axis
// leans more for a form error than its place in the wall is worth.
const shortest = 0.005

// unfit says why the points have no cylinder of the kind.
func (w Wall) unfit(kind Reference, f fitted) error {
	low, high := extremes(w.z)
	one := true
	for i := range w.x {
		one = one && w.x[i] == w.x[0] && w.y[i] == w.y[0] && w.z[i] == w.z[0]
	}
	switch {
	case one:
		return fmt.Errorf("form: %v: all %d points are one: %w", kind, w.len(), ErrPoints)
	case low == high:
		return fmt.Errorf("form: %v: all %d points are at one depth: %w", kind, w.len(), ErrArc)
	case f.r > 0 && (high-low)/2 < float64(shortest*f.r):
		return fmt.Errorf("form: %v: a wall %.4g mm long of a radius of %.4g mm: want a hundredth of it at least: %w", kind, high-low, f.r, ErrArc)
	case f.r > 0:
		return fmt.Errorf("form: %v: no cylinder that leans by less than 45° holds the points to a tenth of its radius: depths have to count along the bore: %w", kind, ErrArc)
	default:
		return fmt.Errorf("form: %v: %d points do not hold a cylinder: on a line or a plane, or too short an arc: %w", kind, w.len(), ErrArc)
	}
}

// axis returns the axis of a pose from the least to the greatest depth of the points.
func (w Wall) axis(p pose) (a Axis, err error) {
	low, high := extremes(w.z)
	if a.From, err = w.place(p.c.plus((low-p.c[2])/p.w[2], p.w)); err == nil {
		a.To, err = w.place(p.c.plus((high-p.c[2])/p.w[2], p.w))
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
