// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// slack is what rounding centre and radii to a picometre may displace: 2 pm, in mm.
const slack = 2e-9

// Check checks the circle against the trace, from the published numbers alone, by the formulas of
// [Certificate]; it shares no arithmetic with what found them.
//
//	nil             every number is that of the points, and no circle of the kind, wherever its
//	                centre, is better by more than rounding: some picometres. This is the proof.
//	ErrUnproved     every number is that of the points, but they do not prove the circle the best
//	                of the plane: nothing nearer than Reach is better, and for the rest the word of
//	                the search stands, Bound included. Least squares comes out so too: no small
//	                move makes it better, and that is all that is checked.
//	ErrCertificate  a number, or a contact, is not that of the points, or contradicts another
//	ErrPoints       the trace has not the points that the contacts name
func (c Circle) Check(t Trace) error {
	if err := c.checkNumbers(t); err != nil {
		return err
	}
	if c.Reference == LSCI {
		return c.checkLeastSquares(t)
	}
	return c.checkContacts(t)
}

// fail returns an ErrCertificate.
func (c Circle) fail(format string, args ...any) error {
	return fmt.Errorf("form: "+c.Reference.String()+": "+format+": %w", append(args, ErrCertificate)...)
}

// checkNumbers checks what the certificate is not needed for: that Inner and Outer are the
// distances of the nearest and the farthest point, and what follows from them.
func (c Circle) checkNumbers(t Trace) error {
	off := c.Outer - c.Radius - (c.Radius - c.Inner) // how far Radius is from the mean, twice
	switch bound, reach := c.Certificate.Bound, c.Certificate.Reach; {
	case !(0 <= c.Inner && c.Inner <= c.Radius && c.Radius <= c.Outer):
		return c.fail("radius %v, inner %v, outer %v", c.Radius, c.Inner, c.Outer)
	case c.RONt != c.Outer-c.Inner:
		return c.fail("RONt %v of points from %v to %v", c.RONt, c.Inner, c.Outer)
	case c.Reference == MZCI && off.Abs() > 2, c.Reference == MCCI && c.Radius != c.Outer, c.Reference == MICI && c.Radius != c.Inner:
		return c.fail("radius %v of points from %v to %v", c.Radius, c.Inner, c.Outer)
	case c.Reference == LSCI && (c.RONp != c.Radius-c.Inner || c.RONv != c.Outer-c.Radius),
		c.Reference != LSCI && (c.RONp != 0 || c.RONv != 0 || c.RONq != 0):
		return c.fail("RONp %v, RONv %v, RONq %v", c.RONp, c.RONv, c.RONq)
	case bound < 0 || bound > c.RONt+c.rounding(), !c.Certificate.Searched && bound > c.rounding():
		return c.fail("better by up to %v, of a RONt of %v", bound, c.RONt)
	case reach < 0 || reach > units.MaxLength, c.Certificate.n == 0 && reach != 0:
		return c.fail("%d contacts reach %v", c.Certificate.n, reach)
	case c.Certificate.n == 0 && c.Reference != LSCI && !(c.Reference == MZCI && (c.Certificate.Searched || c.RONt == 0)):
		return c.fail("no contacts")
	case c.Reference == LSCI && c.Certificate != Certificate{}:
		return c.fail("least squares has no certificate")
	}
	cx, cy := t.from(c.Centre)
	in, out := c.Inner.In(units.Millimetre), c.Outer.In(units.Millimetre)
	least, most := math.Inf(1), math.Inf(-1)
	for i := range t.x {
		d := math.Hypot(t.x[i]-cx, t.y[i]-cy)
		least, most = min(least, d), max(most, d)
	}
	if !(math.Abs(least-in) <= slack && math.Abs(most-out) <= slack) {
		return c.fail("points lie from %.12g to %.12g mm from the centre, not from %v to %v", least, most, c.Inner, c.Outer)
	}
	return nil
}

// rounding is the largest Bound that a proof by contacts may leave.
func (c Circle) rounding() units.Length { return 2 + units.Length(2*alike*float64(c.Outer)) }

// checkLeastSquares checks that the derivatives of the sum of the squares vanish, and RONq.
func (c Circle) checkLeastSquares(t Trace) error {
	cx, cy := t.from(c.Centre)
	r, n := c.Radius.In(units.Millimetre), float64(t.Len())
	var sum, squares, u, v float64
	for i := range t.x {
		dx, dy := t.x[i]-cx, t.y[i]-cy
		d := math.Hypot(dx, dy)
		f := d - r
		sum, squares = sum+f, squares+float64(f*f)
		if d > 0 {
			u, v = u+float64(f*(dx/d)), v+float64(f*(dy/d))
		}
	}
	if slope := math.Hypot(sum, math.Hypot(u, v)) / n; !(slope <= 2*slack+float64(2*settled*r)) {
		return c.fail("a small move is better: the squares fall by %.3g mm²/mm a point", 2*slope)
	}
	if rms := math.Sqrt(squares / n); math.Abs(rms-c.RONq.In(units.Millimetre)) > slack {
		return c.fail("RONq %v, not %.12g mm", c.RONq, rms)
	}
	return c.unproved("it has no certificate")
}

// unproved returns an ErrUnproved.
func (c Circle) unproved(why string) error {
	return fmt.Errorf("form: %v: the numbers are those of the points, but %s: %w", c.Reference, why, ErrUnproved)
}

// checkContacts checks that the contacts lie on their circles, that their weights balance, and what
// that and the points all round exclude.
func (c Circle) checkContacts(t Trace) error {
	cx, cy := t.from(c.Centre)
	in, out := c.Inner.In(units.Millimetre), c.Outer.In(units.Millimetre)
	var balance, squares [2]float64 // outer less inner
	var weight, count [2]float64
	var u, v [mostContacts]float64
	for k, p := range c.Certificate.contacts[:c.Certificate.n] {
		if p.Index < 0 || p.Index >= t.Len() {
			return fmt.Errorf("form: %v: contact %d in a trace of %d points: %w", c.Reference, p.Index, t.Len(), ErrPoints)
		}
		dx, dy := t.x[p.Index]-cx, t.y[p.Index]-cy
		d := math.Hypot(dx, dy)
		side, sign, on := 0, 1.0, out
		if !p.Outer {
			side, sign, on = 1, -1, in
		}
		if math.Abs(d-on) > slack {
			return c.fail("contact %d lies %.3g mm off its circle", p.Index, d-on)
		}
		if !(p.Weight >= 0) {
			return c.fail("contact %d weighs %v", p.Index, p.Weight)
		}
		u[k], v[k] = dx/d, dy/d
		weight[side] += p.Weight
		count[side]++
		balance[0] += float64(sign * p.Weight * u[k])
		balance[1] += float64(sign * p.Weight * v[k])
		squares[0] += float64(p.Weight * dx)
		squares[1] += float64(p.Weight * dy)
	}
	if c.Certificate.n == 0 {
		if c.RONt == 0 { // nothing is narrower than no width
			return nil
		}
		return c.unproved("only the search proves it")
	}
	want := map[Reference][2]float64{MZCI: {2, 2}, MCCI: {float64(c.Certificate.n), 0}, MICI: {0, 3}}[c.Reference]
	for side, n := range count {
		if n != want[side] || n > 0 && !(math.Abs(weight[side]-1) <= 1e-12) {
			return c.fail("%v outer and %v inner contacts, weights %v", count[0], count[1], weight)
		}
	}
	off := math.Hypot(balance[0], balance[1])
	bound := c.Certificate.Bound.In(units.Millimetre) + slack
	if c.Reference == MCCI {
		// Σ w·d² about any centre is at least that about Σ w·p.
		moved := math.Hypot(squares[0], squares[1])
		if better := moved * moved / out; better > bound {
			return c.fail("a circle smaller by %.3g mm is not excluded", better)
		}
		return nil
	}
	if most := 4*faint + 2*slack/in; off > most { // what that leaves open is less than the slack
		return c.fail("contacts are out of balance by %.3g", off)
	}
	g := math.Inf(1)
	var reach float64
	if c.Reference == MICI {
		for k := range 3 {
			g = min(g, fromLine(u[k], v[k], u[(k+1)%3], v[(k+1)%3]))
		}
		reach = 2 * in * g
	} else {
		corner := func(i, o int) (float64, float64) { return u[2+i] - u[o], v[2+i] - v[o] }
		at := [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}} // round the parallelogram
		for k := range at {
			px, py := corner(at[k][0], at[k][1])
			qx, qy := corner(at[(k+1)%4][0], at[(k+1)%4][1])
			g = min(g, fromLine(px, py, qx, qy))
		}
		reach = 2 * g * in / (1 + 2*g)
	}
	if published := c.Certificate.Reach.In(units.Millimetre); published > float64(reach*(1+1e-6))+slack {
		return c.fail("contacts reach %.6g mm, not %.6g", reach, published)
	}
	if c.Certificate.Searched {
		return c.unproved("beyond " + c.Certificate.Reach.String() + " from the centre only the search excludes a better one")
	}
	if !c.excludedBeyond(t, reach) {
		return c.fail("%.3g mm and more from the centre nothing is excluded", reach)
	}
	// Zero lies inside what the directions span, whatever is off in the weights, if they come
	// nearer to it than its sides.
	if better := off * reach; off >= g && better > bound {
		return c.fail("something better by %.3g mm is not excluded", better)
	}
	return nil
}

// excludedBeyond reports whether the points all round exclude what lies farther from the centre
// than the contacts reach.
func (c Circle) excludedBeyond(t Trace, reach float64) bool {
	cx, cy := t.from(c.Centre)
	in, out := c.Inner.In(units.Millimetre), c.Outer.In(units.Millimetre)
	angles := make([]float64, t.Len())
	for i := range t.x {
		angles[i] = math.Atan2(t.y[i]-cy, t.x[i]-cx)
	}
	slices.Sort(angles)
	gap := angles[0] + 2*math.Pi - angles[len(angles)-1]
	for i, a := range angles[1:] {
		gap = max(gap, a-angles[i])
	}
	cosine := math.Cos(gap / 2)
	excluded := cosine > 0
	if c.Reference == MZCI {
		w, s, t := out-in, out+in, reach
		return excluded && min(s*(float64(2*cosine*t)-w)/(s+2*t), 2*in*cosine*t/(in+t)) >= w-slack
	}
	// The centre of a circle that touches points on all sides lies among them, no farther than out.
	for _, t := range [...]float64{reach, out} {
		ahead := max(float64(out*out)-float64(2*out*t*cosine), float64(in*in)-float64(2*in*t*cosine)) + float64(t*t)
		excluded = excluded && ahead <= float64(in*(in+2*slack))
	}
	return excluded
}

// fromLine returns the distance of zero from the line through two points.
func fromLine(px, py, qx, qy float64) float64 {
	return math.Abs(float64(px*qy)-float64(py*qx)) / math.Hypot(qx-px, qy-py)
}
