// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// Check checks the cylinder against the wall, from the published numbers alone, by the formulas of
// [Certificate]; it shares no arithmetic with what found them.
//
//	nil             every number is that of the points, and no cylinder of the kind is better by more
//	                than rounding whose axis, at both ends of the wall, passes within Reach of this
//	                one. This is the proof.
//	ErrUnproved     every number is that of the points, and no such cylinder is better by more than
//	                Bound, which is not zero. Least squares comes out so too: no small move makes it
//	                better, and that is all that is checked.
//	ErrCertificate  a number, or a contact, is not that of the points, or contradicts another
//	ErrPoints       the wall has not the points that the contacts name
func (c Cylinder) Check(w Wall) error {
	s, ok := c.sight(w)
	if !ok || !c.Reference.ofWall() {
		return c.fail("%v about an axis from %v to %v in depth", c.Reference, c.Axis.From.Depth, c.Axis.To.Depth)
	}
	if err := c.checkNumbers(s); err != nil {
		return err
	}
	if c.Reference == LSCY {
		return c.checkLeastSquares(s)
	}
	if c.Certificate.n == 0 { // nothing is narrower than no width
		return nil
	}
	if err := c.checkBalance(s); err != nil {
		return err
	}
	e := c.excluded(s, new(axisSearch))
	k := c.Certificate
	if published := k.Reach.In(units.Millimetre); published > float64(e.reach*(1+1e-6))+slack {
		return c.fail("nothing is excluded beyond %.6g mm, not %.6g", e.reach, published)
	}
	if k.Bound != c.unbound() && (!e.closed || k.Bound.In(units.Millimetre) < float64(e.bound*(1-1e-6))-slack) {
		return c.fail("better by more than %v is not excluded", k.Bound)
	}
	if !e.closed {
		return c.unproved("beyond " + k.Reach.String() + " from the axis nothing is excluded")
	}
	if k.Bound != 0 {
		return c.unproved("something better by " + k.Bound.String() + " is not excluded")
	}
	return nil
}

// fail returns an ErrCertificate.
func (c Cylinder) fail(format string, args ...any) error {
	return fmt.Errorf("form: "+c.Reference.String()+": "+format+": %w", append(args, ErrCertificate)...)
}

// unproved returns an ErrUnproved.
func (c Cylinder) unproved(why string) error {
	return fmt.Errorf("form: %v: the numbers are those of the points, but %s: %w", c.Reference, why, ErrUnproved)
}

// A sight is a wall as seen along an axis: from a point of it, in two directions square to it.
type sight struct {
	wall         Wall
	origin       vector
	right, up    vector
	along        vector
	top, length  float64 // where the wall begins along the axis at the earliest, and how long it is at most
	inner, outer float64 // distances of the nearest and the farthest point, as published
	slack        float64 // by how much rounding the axis and those may displace them
}

// sight looks at the wall along the axis of the cylinder.
func (c Cylinder) sight(w Wall) (s sight, ok bool) {
	s = sight{wall: w, origin: w.from(c.Axis.From), inner: c.Inner.In(units.Millimetre), outer: c.Outer.In(units.Millimetre)}
	to := w.from(c.Axis.To)
	length := math.Hypot(to[0]-s.origin[0], math.Hypot(to[1]-s.origin[1], to[2]-s.origin[2]))
	if !(length > 0) || w.len() == 0 {
		return s, false
	}
	for k := range s.along {
		s.along[k] = (to[k] - s.origin[k]) / length
	}
	// Square to it: the axis of least share, less its part along.
	side := 0
	for k := range s.along {
		if math.Abs(s.along[k]) < math.Abs(s.along[side]) {
			side = k
		}
	}
	rest := math.Sqrt((1 - s.along[side]) * (1 + s.along[side]))
	for k := range s.right {
		s.right[k] = -float64(s.along[side]*s.along[k]) / rest
	}
	s.right[side] = rest
	for k := range s.up {
		i, j := (k+1)%3, (k+2)%3
		s.up[k] = float64(s.along[i]*s.right[j]) - float64(s.along[j]*s.right[i])
	}
	// A point lies no farther along than the axis at its depth, but for its distance times the tangent of the lean.
	over := float64(s.outer*math.Hypot(s.along[0], s.along[1])/math.Abs(s.along[2])) + slack
	s.top, s.length = -over, length+2*over
	// Rounding moves each end of the axis by less than a picometre, and by more beyond it, where the points of a
	// short wall lie.
	s.slack = slack * (1 + 2*over/length)
	return s, s.along[2] != 0
}

// measure returns the distances of the nearest and the farthest point, and between which heights all lie.
func (s *sight) measure() (in, out, low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	in, out = math.Inf(1), -1.0
	y, z := s.wall.y[:len(s.wall.x)], s.wall.z[:len(s.wall.x)]
	o0, o1, o2 := s.origin[0], s.origin[1], s.origin[2]
	r0, r1, r2, u0, u1, u2 := s.right[0], s.right[1], s.right[2], s.up[0], s.up[1], s.up[2]
	a0, a1, a2 := s.along[0], s.along[1], s.along[2]
	for i, x := range s.wall.x {
		x, y, z := x-o0, y[i]-o1, z[i]-o2
		u := float64(x*r0) + float64(y*r1) + float64(z*r2)
		v := float64(x*u0) + float64(y*u1) + float64(z*u2)
		t := float64(x*a0) + float64(y*a1) + float64(z*a2)
		d := float64(u*u) + float64(v*v)
		if t < low {
			low = t
		}
		if t > high {
			high = t
		}
		if d < in {
			in = d
		}
		if d > out {
			out = d
		}
	}
	return math.Sqrt(in), math.Sqrt(out), (low - s.top) / s.length, (high - s.top) / s.length
}

// at returns a point as it is seen, and how far along the axis it lies.
func (s *sight) at(i int) (right, up, along float64) {
	x, y, z := s.wall.x[i]-s.origin[0], s.wall.y[i]-s.origin[1], s.wall.z[i]-s.origin[2]
	right = float64(x*s.right[0]) + float64(y*s.right[1]) + float64(z*s.right[2])
	up = float64(x*s.up[0]) + float64(y*s.up[1]) + float64(z*s.up[2])
	along = float64(x*s.along[0]) + float64(y*s.along[1]) + float64(z*s.along[2])
	return right, up, along
}

// checkNumbers checks what the certificate is not needed for.
func (c Cylinder) checkNumbers(s sight) error {
	off := c.Outer - c.Radius - (c.Radius - c.Inner) // how far Radius is from the mean, twice
	k := c.Certificate
	switch {
	case !(0 <= c.Inner && c.Inner <= c.Radius && c.Radius <= c.Outer):
		return c.fail("radius %v, inner %v, outer %v", c.Radius, c.Inner, c.Outer)
	case c.CYLt != c.Outer-c.Inner:
		return c.fail("CYLt %v of points from %v to %v", c.CYLt, c.Inner, c.Outer)
	case c.Reference == MZCY && off.Abs() > 2, c.Reference == MCCY && c.Radius != c.Outer, c.Reference == MICY && c.Radius != c.Inner:
		return c.fail("radius %v of points from %v to %v", c.Radius, c.Inner, c.Outer)
	case c.Reference == LSCY && (c.CYLp != c.Radius-c.Inner || c.CYLv != c.Outer-c.Radius),
		c.Reference != LSCY && (c.CYLp != 0 || c.CYLv != 0 || c.CYLq != 0):
		return c.fail("CYLp %v, CYLv %v, CYLq %v", c.CYLp, c.CYLv, c.CYLq)
	case c.Reference == LSCY && k != Certificate{}:
		return c.fail("least squares has no certificate")
	case k.n == 0 && c.Reference != LSCY && !(c.Reference == MZCY && c.CYLt <= thin && k == Certificate{}):
		return c.fail("no contacts")
	case k.Reach < 0 || k.Reach > units.MaxLength:
		return c.fail("reach %v", k.Reach)
	case k.Searched != (k.Bound != 0), k.Bound < 0, k.Bound > c.unbound():
		return c.fail("better by up to %v, of a CYLt of %v", k.Bound, c.CYLt)
	}
	in, out, low, high := s.measure()
	if !(math.Abs(in-s.inner) <= s.slack && math.Abs(out-s.outer) <= s.slack) {
		return c.fail("points lie from %.12g to %.12g mm from the axis, not from %v to %v", in, out, c.Inner, c.Outer)
	}
	if !(low >= 0 && high <= 1) {
		return c.fail("points lie beyond the ends of the axis, from %.6g to %.6g of its length", low, high)
	}
	return nil
}

// thin is a zone no wider than rounding.
const thin = 4 * units.Picometre

// unbound is the Bound where nothing is proved: no zone is narrower than nothing, and of the others
// nothing is known.
func (c Cylinder) unbound() units.Length {
	if c.Reference == MZCY {
		return c.CYLt
	}
	return units.MaxLength
}

// checkLeastSquares checks that the derivatives of the sum of the squares vanish, and CYLq.
func (c Cylinder) checkLeastSquares(s sight) error {
	r, n := c.Radius.In(units.Millimetre), float64(s.wall.len())
	var sum, squares float64
	var pull [4]float64
	for i := range s.wall.x {
		u, v, t := s.at(i)
		d := math.Hypot(u, v)
		f, h := d-r, (t-s.top)/s.length
		sum, squares = sum+f, squares+float64(f*f)
		if d > 0 {
			u, v = f*(u/d), f*(v/d)
			pull[0], pull[1], pull[2], pull[3] = pull[0]+u, pull[1]+v, pull[2]+float64(h*u), pull[3]+float64(h*v)
		}
	}
	slope := math.Hypot(sum, math.Hypot(math.Hypot(pull[0], pull[1]), math.Hypot(pull[2], pull[3]))) / n
	if !(slope <= 2*s.slack+float64(2*settled*r)) {
		return c.fail("a small move is better: the squares fall by %.3g mm²/mm a point", 2*slope)
	}
	if rms := math.Sqrt(squares / n); math.Abs(rms-c.CYLq.In(units.Millimetre)) > s.slack {
		return c.fail("CYLq %v, not %.12g mm", c.CYLq, rms)
	}
	return c.unproved("it has no certificate")
}

// checkBalance checks that the contacts lie on their cylinders and that their weights balance.
func (c Cylinder) checkBalance(s sight) error {
	var weight, count [2]float64
	for k, p := range c.Certificate.contacts[:c.Certificate.n] {
		if p.Index < 0 || p.Index >= s.wall.len() {
			return fmt.Errorf("form: %v: contact %d in a wall of %d points: %w", c.Reference, p.Index, s.wall.len(), ErrPoints)
		}
		side, on := 0, s.outer
		if !p.Outer {
			side, on = 1, s.inner
		}
		u, v, _ := s.at(p.Index)
		if d := math.Hypot(u, v); !(math.Abs(d-on) <= s.slack) {
			return c.fail("contact %d lies %.3g mm off its cylinder", p.Index, d-on)
		}
		if !(p.Weight >= 0) {
			return c.fail("contact %d weighs %v", p.Index, p.Weight)
		}
		for _, q := range c.Certificate.contacts[:k] {
			if q.Index == p.Index {
				return c.fail("contact %d twice", p.Index)
			}
		}
		weight[side] += p.Weight
		count[side]++
	}
	for side, n := range count {
		wanted := c.Reference == MZCY || (c.Reference == MCCY) == (side == 0)
		if (n > 0) != wanted || wanted && !(math.Abs(weight[side]-1) <= 1e-12) {
			return c.fail("%v outer and %v inner contacts, weights %v", count[0], count[1], weight)
		}
	}
	if off := s.unbalanced(c.Certificate.contacts[:c.Certificate.n]); !(off <= mostUnbalanced) {
		return c.fail("contacts are out of balance by %.3g", off)
	}
	return nil
}

// nearest is how far from the axis the contacts lie at least.
func (c Cylinder) nearest(s sight) float64 {
	if c.Reference == MCCY {
		return s.outer
	}
	return s.inner
}

// mostUnbalanced is how far contacts may be out of balance, which leaves a Bound.
const mostUnbalanced = 1e-3

// unbalanced is how far the weighed pulls are from balance.
func (s *sight) unbalanced(contacts []Contact) float64 {
	var sum [4]float64
	for _, p := range contacts {
		for k, b := range s.pull(p) {
			sum[k] += float64(p.Weight * b)
		}
	}
	return math.Hypot(math.Hypot(sum[0], sum[1]), math.Hypot(sum[2], sum[3]))
}

// pull is the direction of a contact at the two ends of the wall, in shares by its height; that of an
// inner contact turned round.
func (s *sight) pull(p Contact) [4]float64 {
	u, v, t := s.at(p.Index)
	d := math.Hypot(u, v)
	if !p.Outer {
		d = -d
	}
	h := (t - s.top) / s.length
	return [4]float64{(1 - h) * u / d, (1 - h) * v / d, h * u / d, h * v / d}
}
