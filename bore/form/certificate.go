// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Contact is a point of the trace that carries a circle.
type Contact struct {
	Index  int     // of the point in the trace, from 0
	Outer  bool    // the point lies on the outer circle of two, or the circumscribed one; otherwise on the inner or inscribed one
	Weight float64 // share without unit, not negative, with which it takes part in the balance
}

// A Certificate proves that a circle is the best of its kind. It holds all that is needed to check
// it by hand, and [Circle.Check] checks it. With n the direction of a contact from the centre and w
// its weight:
//
//	MCCI   Σ w = 1 and Σ w·n = 0: two contacts opposite each other, or three that no half circle holds.
//	       About any other centre Σ w·d² grows by the square of the distance moved, so some contact
//	       gets farther.
//	MICI   Σ w = 1 and Σ w·n = 0, three contacts. About a centre moved by t some contact gets nearer, if
//	       t < 2·r·γ, γ being the distance of zero from the nearest side of the triangle of the three n.
//	MZCI   Σ w = 1 over the two outer contacts, and over the two inner ones, and the sums Σ w·n of both are
//	       the same: outer and inner contacts alternate round the circle. About a centre moved by t the
//	       zone gets wider, if t < 2·γ·r/(1 + 2γ), r the inner radius and γ the distance of zero from
//	       the nearest side of the parallelogram whose corners are n(inner) − n(outer).
//
// How far the last two reach is Reach. Farther away the points all round exclude the rest. Seen
// from the centre let no gap between neighbouring points be wider than 2·acos(c), c > 0, let all of
// them lie from r to R away, and s = R + r. When the centre moves by t, there is a point nearly
// ahead that comes at least as near as the larger of √(R² + t² − 2cRt) and √(r² + t² − 2crt), and
// one nearly behind that gets at least as far as √(r² + t² + 2crt). So the zone is no narrower
// where s·(2ct − w)/(s + 2t) and 2crt/(r + t) reach w = R − r, both of which grow with t; and the
// inscribed circle is no larger where both of the nearer distances are at most r, which holds
// between two t if it holds at them. On a bore that begins some micrometres away, and Reach is some
// millimetres.
type Certificate struct {
	contacts [4]Contact
	n        int

	// Reach is how far from the centre the contacts alone prove that no circle is better;
	// [units.MaxLength] for all the plane.
	Reach units.Length
	// Bound is how much better any other circle of the kind might be, wherever its centre: in
	// radius, or for a minimum zone in width. It is zero, to the picometre, unless the search ended
	// before it had excluded all else, which takes wild points or hundreds of thousands of them.
	Bound units.Length
	// Searched says that Reach was not enough, as on an arc, on a wild form, or for an inscribed
	// circle on two contacts nearly opposite, as in an oval bore; and that the rest was excluded by
	// halving boxes of centres. Check does not repeat that.
	Searched bool
}

// Contacts returns the contacts: first outer, then inner ones. There are none of a minimum zone as
// thin as rounding, some picometres, which only the search proves.
func (c Certificate) Contacts() []Contact { return append([]Contact(nil), c.contacts[:c.n]...) }

// slack is what rounding centre and radii to a picometre may displace: 2 pm, in mm.
const slack = 2e-9

// Check checks the circle against the trace: that no point lies inside Inner or outside Outer, that
// the contacts lie on them, that the weights balance, and that nothing is better by more than
// Bound. It uses the published numbers alone, by the formulas of [Certificate], and shares no
// arithmetic with what found them. ErrCertificate tells what does not hold; the least-squares
// circle has no certificate. ErrPoints where the trace is not that of the circle.
func (c Circle) Check(t Trace) error {
	fail := func(format string, args ...any) error {
		return fmt.Errorf("form: "+c.Reference.String()+": "+format+": %w", append(args, ErrCertificate)...)
	}
	// Nothing is narrower than no width, and what only the search proves has no contacts to check.
	bare := c.Reference == MZCI && (c.RONt == 0 || c.Certificate.n == 0 && c.Certificate.Searched)
	if c.Certificate.n == 0 && !bare {
		return fail("no contacts")
	}
	cx, cy := t.from(c.Centre)
	in, out := c.Inner.In(units.Millimetre), c.Outer.In(units.Millimetre)
	angles := make([]float64, t.Len())
	for i := range t.x {
		dx, dy := t.x[i]-cx, t.y[i]-cy
		if d := math.Hypot(dx, dy); d < in-slack || d > out+slack {
			return fail("point %d lies %.3g mm from the centre, not from %v to %v", i, d, c.Inner, c.Outer)
		}
		angles[i] = math.Atan2(dy, dx)
	}
	if bare {
		return nil
	}
	var balance, squares [2]float64 // outer less inner
	var weight, count [2]float64
	var u, v [4]float64
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
			return fail("contact %d lies %.3g mm off its circle", p.Index, d-on)
		}
		if !(p.Weight >= 0) {
			return fail("contact %d weighs %v", p.Index, p.Weight)
		}
		u[k], v[k] = dx/d, dy/d
		weight[side] += p.Weight
		count[side]++
		balance[0] += float64(sign * p.Weight * u[k])
		balance[1] += float64(sign * p.Weight * v[k])
		squares[0] += float64(p.Weight * dx)
		squares[1] += float64(p.Weight * dy)
	}
	want := map[Reference][2]float64{MZCI: {2, 2}, MCCI: {float64(c.Certificate.n), 0}, MICI: {0, 3}}[c.Reference]
	for side, n := range count {
		if n != want[side] || n > 0 && math.Abs(weight[side]-1) > 1e-12 {
			return fail("%v outer and %v inner contacts, weights %v", count[0], count[1], weight)
		}
	}
	off := math.Hypot(balance[0], balance[1])
	bound := c.Certificate.Bound.In(units.Millimetre) + slack
	if c.Reference == MCCI {
		// Σ w·d² about any centre is at least that about Σ w·p.
		moved := math.Hypot(squares[0], squares[1])
		if better := moved * moved / out; better > bound {
			return fail("a circle smaller by %.3g mm is not excluded", better)
		}
		return nil
	}
	if most := 4*faint + 2*slack/in; off > most { // what that leaves open is less than the slack
		return fail("contacts are out of balance by %.3g", off)
	}
	var g, reach float64
	if c.Reference == MICI {
		g = math.Inf(1)
		for k := range 3 {
			g = min(g, fromLine(u[k], v[k], u[(k+1)%3], v[(k+1)%3]))
		}
		reach = 2 * in * g
	} else {
		corner := func(i, o int) (float64, float64) { return u[2+i] - u[o], v[2+i] - v[o] }
		g = math.Inf(1)
		at := [4][2]int{{0, 0}, {1, 0}, {1, 1}, {0, 1}} // round the parallelogram
		for k := range at {
			px, py := corner(at[k][0], at[k][1])
			qx, qy := corner(at[(k+1)%4][0], at[(k+1)%4][1])
			g = min(g, fromLine(px, py, qx, qy))
		}
		reach = 2 * g * in / (1 + 2*g)
	}
	if published := c.Certificate.Reach.In(units.Millimetre); published > float64(reach*(1+1e-6))+slack {
		return fail("contacts reach %.6g mm, not %.6g", reach, published)
	}
	if c.Certificate.Searched {
		return nil
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
		excluded = excluded && min(s*(float64(2*cosine*t)-w)/(s+2*t), 2*in*cosine*t/(in+t)) >= w-slack
	} else {
		// The centre of a circle that touches points on all sides lies among them, no farther than
		// out.
		for _, t := range [...]float64{reach, out} {
			ahead := max(float64(out*out)-float64(2*out*t*cosine), float64(in*in)-float64(2*in*t*cosine)) + float64(t*t)
			excluded = excluded && ahead <= float64(in*(in+2*slack))
		}
	}
	if !excluded {
		return fail("%.3g mm and more from the centre nothing is excluded", reach)
	}
	// Zero lies inside what the directions span, whatever is off in the weights, if they come
	// nearer to it than its sides.
	if better := off * reach; off >= g && better > bound {
		return fail("something better by %.3g mm is not excluded", better)
	}
	return nil
}

// fromLine returns the distance of zero from the line through two points.
func fromLine(px, py, qx, qy float64) float64 {
	return math.Abs(float64(px*qy)-float64(py*qx)) / math.Hypot(qx-px, qy-py)
}
