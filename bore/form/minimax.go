// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// cost is what a minimax cylinder makes least.
func cost(kind Reference, in, out float64) float64 {
	switch kind {
	case MCCY:
		return out
	case MICY:
		return -in
	default:
		return out - in
	}
}

// mostRounds bounds the steps of a minimax cylinder; half a dozen do on a bore.
const mostRounds = 100

// settle goes from an axis to a minimax cylinder near it. Each round solves the linear program within
// a trust, and takes the move where it keeps a tenth of its promise; where it does not keep most of it,
// a quadratic program, which knows how distances bend, may do better. That goes the last steps too where a
// contact that weighs little is still off its cylinder: it hardly costs, and without it the others do not balance.
// The first program starts from the rows of the last one, where that was of the same points. It reports false where
// the steps find no end or leave the wall.
func (w *workspace) settle(kind Reference, x, y, z []float64, p pose) (best tube, ok bool) {
	_, _, in2, out2 := p.around(x, y, z)
	base, r := (math.Sqrt(in2)+math.Sqrt(out2))/2, math.Sqrt(out2)
	near, far, in, out := w.slopes.see(x, y, z, &p, base)
	floor := float64(alike * r)
	trust := min(max(2*(out-in), 1e-3*r), r/4)
	// A tilt bends the distances by r·(m/half)²/2, a shift by m²/2r.
	tilt := min(1, p.half/r)
	moved, last, slow := 0.0, 0, 0
	g := &w.program
	for range mostRounds {
		now := cost(kind, in, out)
		if !g.again(&w.slopes, trust, tilt) {
			*g = newProgram(kind, &w.slopes, trust, tilt, far, near)
		}
		g.optimise(&w.slopes, float64(2*rounding*r))
		promise := now - (g.value() + cost(kind, base, base))
		best = tube{pose: p, in: in, out: out}
		best.carry(kind, g)
		m := move(g.y[:4])
		next := p.moved(m)
		nextNear, nextFar, nextIn, nextOut := w.ahead.see(x, y, z, &next, base)
		gain := now - cost(kind, nextIn, nextOut)
		if promise <= floor { // as good as it gets; a contact that weighs next to nothing may still be off
			t := best
			if last++; last > mostTouches || t.touched(x, y, z, float64(touch*r)) {
				break
			}
			if gain < -floor { // the program goes too far along what bending alone holds
				if t = best; t.stands(kind, x, y, z) {
					return t, true
				}
				var found bool
				if next, _, found = w.bend(kind, x, y, z, &best, base, far, near, -floor); !found {
					break
				}
				nextNear, nextFar, nextIn, nextOut = w.ahead.see(x, y, z, &next, base)
			}
			p, near, far, in, out = next, nextNear, nextFar, nextIn, nextOut
			w.slopes, w.ahead = w.ahead, w.slopes
			continue
		}
		bends := false
		if gain < float64(0.9*promise) {
			if q, better, found := w.bend(kind, x, y, z, &best, base, far, near, gain); found {
				next, gain, bends = q, better, true
				nextNear, nextFar, nextIn, nextOut = w.ahead.see(x, y, z, &next, base)
			}
		}
		switch {
		case !(gain > 0) || gain < float64(0.1*promise) && !bends:
			trust /= 4
		case gain > float64(0.5*promise) && g.atTrust():
			trust = min(2*trust, r/2)
		}
		if trust < float64(rounding*r) {
			break
		}
		if !(gain > 0) {
			continue
		}
		if gain > float64(crawling*r) {
			slow = 0
		} else if slow++; slow >= 3 {
			if t := best; t.stands(kind, x, y, z) {
				return t, true
			}
		}
		moved += m.size()
		if moved > 8*r || norm(next.w[0], next.w[1]) >= leaning {
			return best, false
		}
		p, near, far, in, out = next, nextNear, nextFar, nextIn, nextOut
		w.slopes, w.ahead = w.ahead, w.slopes
	}
	return best, best.stands(kind, x, y, z)
}

const (
	// crawling is a gain, relative to the radius, not worth another round after two that gained no more:
	// on an optimum so flat what is left is a picometre or two, and it stays in the bound.
	crawling = 2e-12
	// touch is how far a contact is to be off its cylinder at most, relative to the radius, a seventh of
	// a picometre for a bore of 70 mm, and hardly how far it may be in the end, half a picometre.
	touch  = 4e-12
	hardly = 5e-10
	// mostTouches bounds the steps taken for that.
	mostTouches = 6
)

// touched reports whether all contacts lie within so much of their cylinders, and leaves out those that
// do not.
func (t *tube) touched(x, y, z []float64, within float64) bool {
	n := 0
	for _, c := range t.contacts[:t.n] {
		u, v, _ := t.seen(x[c.Index], y[c.Index], z[c.Index])
		on := t.in
		if c.Outer {
			on = t.out
		}
		if math.Abs(norm(u, v)-on) <= within {
			t.contacts[n] = c
			n++
		}
	}
	all := n == t.n
	t.n = n
	return all
}

// stands reports whether the contacts that touch balance, and weighs them.
func (t *tube) stands(kind Reference, x, y, z []float64) bool {
	t.touched(x, y, z, hardly)
	return t.weigh(kind, x, y, z)
}

// bend goes from the axis of a tube by a quadratic program, the bending taken of its contacts; by softer ones
// first, to the first axis that gains more than given. Each point bends in its own way, not as the contacts do on the
// whole, which after a long step may cost more than it gained: a second program makes that good.
func (w *workspace) bend(kind Reference, x, y, z []float64, t *tube, base float64, far, near int, gain float64) (pose, float64, bool) {
	now, r := cost(kind, t.in, t.out), t.out
	bending := t.bending(x, y, z)
	for soft := 1e-3; soft < 10; soft *= 10 {
		g := stiffened(bending, soft/r)
		q, s, f, n := t.pose, &w.slopes, far, near
		for range 2 {
			b, ok := newBent(kind, s, g, f, n)
			if !ok || !b.optimise(s, float64(2*rounding*r)) {
				break
			}
			q = q.moved(move(b.y[:4]))
			var in, out float64
			s = &w.bent
			if n, f, in, out = s.see(x, y, z, &q, base); now-cost(kind, in, out) > gain {
				return q, now - cost(kind, in, out), true
			}
		}
	}
	return t.pose, 0, false
}

// atTrust reports whether the trust takes part in the balance.
func (p *program) atTrust() bool {
	for k := range p.n {
		if p.rows[k].point < 0 && p.weight[k] > 1e-9 {
			return true
		}
	}
	return false
}

// carry takes the points of a program that have a weight as contacts, the outer ones first.
func (t *tube) carry(kind Reference, g *program) {
	t.n = 0
	for _, outer := range [...]bool{true, false} {
		for k := range g.n {
			if r := g.rows[k]; r.point >= 0 && r.outer == outer && g.weight[k] > faint {
				t.contacts[t.n] = Contact{Index: r.point, Outer: outer, Weight: g.weight[k]}
				t.n++
			}
		}
	}
}
