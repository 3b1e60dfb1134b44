// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"math"
	"slices"
)

const (
	// firstNear is how many points of a wall a search knows to begin with, those next to the cylinders, and mostNear how
	// many with those that it turns out to need.
	firstNear, mostNear = 128, 160
	// mostRegions bounds those looked at, which for all but one wall in a thousand is enough, and mostOpen those kept
	// to be looked at, which is as deep as they are halved.
	mostRegions, mostOpen = 100, 24
	// mostTried is how many axes left open are handed on to be tried: each costs a solution with its proof.
	mostTried = 3
	// worth is what a cylinder has to be better by to count, 0.4 pm: it is published as nothing.
	worth = 4e-10
)

// An axisSearch goes through all moves of an axis that are not excluded otherwise, by regions. About the axis in the
// middle of one, each pair of points, one beyond each cylinder, cuts off the moves after which the cylinder is no better.
// What is left is looked at again about its own middle, where the bending of the distances is less; and in two
// halves, where it is not much smaller. A point that it did not know of is asked where all that it knows of are content.
type axisSearch struct {
	margin
	s        sight
	tilt     [2]float64 // of the axis in the middle of the region looked at; in and out are of the points seen from there
	points   [mostNear]nearPoint
	n        int // those that matter to the region looked at, the contacts first
	contacts int
	seen     [mostNear]seenPoint
	regions  [mostOpen]region
	held     float64         // how large the moves are which the contacts exclude
	bound    float64         // by how much one that is not excluded may be better
	open     [mostTried]pose // axes after such
	opens    int
}

// A nearPoint is where a point lies as the axis is seen, and its height; Weight is 0 but for a contact, and below for
// an inner one.
type nearPoint struct {
	u, v, h, weight float64
	index           int
}

// A seenPoint is a point as the axis in the middle of a region has it.
type seenPoint struct {
	pull           [4]float64 // by which it comes nearer
	distance, foot float64    // foot is the height on that axis of the place nearest to it, beyond the ends where they lean
}

// start takes the contacts, and the points near the cylinders that matter.
func (q *axisSearch) start(contacts []Contact) {
	q.n, q.bound, q.opens = 0, 0, 0
	add := func(i int, u, v, t, weight float64) {
		q.points[q.n] = nearPoint{u, v, (t - q.s.top) / q.s.length, weight, i}
		q.n++
	}
	for _, c := range contacts {
		u, v, t := q.s.at(c.Index)
		if !c.Outer {
			c.Weight = -c.Weight
		}
		add(c.Index, u, v, t, c.Weight)
	}
	q.contacts = q.n
	within := q.s.outer - q.s.inner
	near := func(u, v float64) bool {
		d := norm(u, v)
		return q.outer && q.s.outer-d <= within || q.inner && d-q.s.inner <= within
	}
	for i := range q.s.wall.x {
		u, v, t := q.s.at(i)
		if !near(u, v) {
			continue
		}
		for q.n >= firstNear {
			if within /= 2; within < slack { // many in one place
				return
			}
			taken := q.points[q.contacts:q.n]
			q.n = q.contacts
			for _, p := range taken {
				if near(p.u, p.v) {
					q.points[q.n] = p
					q.n++
				}
			}
		}
		add(i, u, v, t, 0)
	}
}

// meet takes a point of the wall besides, for the regions that are left. It reports false where it is known, or there is no
// room.
func (q *axisSearch) meet(i, left int) bool {
	known := q.points[:q.regions[0].points]
	if len(known) == len(q.points) || slices.ContainsFunc(known, func(p nearPoint) bool { return p.index == i }) {
		return false
	}
	copy(q.points[q.contacts+1:], q.points[q.contacts:])
	u, v, t := q.s.at(i)
	q.points[q.contacts] = nearPoint{u, v, (t - q.s.top) / q.s.length, 0, i}
	for k := range q.regions[:left] {
		q.regions[k].points++
	}
	return true
}

// hair is what rounding makes of a distance.
func (q *axisSearch) hair() float64 { return float64(16 * rounding * (q.s.outer + q.s.length)) }

// look sees the points from the axis in the middle of a region, and moves those to the front which moves of a size
// may bring to the cylinders that matter. With a the place of a point from the axis at its height, square to the axis
// looked along first, and t the tilt since, d² = a² − (a·t)²/(1 + t²).
func (q *axisSearch) look(m *[4]float64, size float64) {
	l := q.s.length
	tu, tv := (m[2]-m[0])/l, (m[3]-m[1])/l
	k, n := 1/(1+dot(tu, tv, tu, tv)), 0
	q.tilt, q.in, q.out = [2]float64{tu, tv}, math.Inf(1), 0
	low, high := math.Inf(-1), math.Inf(1)
	if q.inner {
		low = q.s.inner + size
	}
	if q.outer {
		high = q.s.outer - size
	}
	for i := range q.points[:q.n] {
		p := q.points[i]
		u, v := p.u-float64((1-p.h)*m[0])-float64(p.h*m[2]), p.v-float64((1-p.h)*m[1])-float64(p.h*m[3])
		b := dot(u, v, tu, tv)
		d := float64(b * k)
		b, d = d, math.Sqrt(dot(u, v, u, v)-float64(b*d))
		if i >= q.contacts && low < d && d < high {
			continue
		}
		u, v = (u-float64(b*tu))/d, (v-float64(b*tv))/d
		h := p.h + b/l
		q.seen[n] = seenPoint{[4]float64{float64((1 - h) * u), float64((1 - h) * v), float64(h * u), float64(h * v)}, d, h}
		q.in, q.out = min(q.in, d), max(q.out, d)
		q.points[n], q.points[i] = p, q.points[n]
		n++
	}
	q.n = n
}

// extremes returns the points nearest and farthest after a move from the middle of a region, and their distances, to first
// order.
func (q *axisSearch) extremes(m *[4]float64) (outer, inner int, in, out float64) {
	in, out = math.Inf(1), math.Inf(-1)
	for i := range q.seen[:q.n] {
		p := &q.seen[i]
		d := p.distance - times(&p.pull, m)
		if d > out {
			out, outer = d, i
		}
		if d < in {
			in, inner = d, i
		}
	}
	return outer, inner, in, out
}

// face returns what of a move, from the middle of a region, measures more than at where the cylinder after it is no
// better: of all such faces that which a move given is farthest beyond.
func (q *axisSearch) face(m *[4]float64, r *region, middle *[4]float64) (face [4]float64, at float64) {
	outer, inner, _, _ := q.extremes(m)
	at = q.hair()
	if q.outer {
		p := &q.seen[outer]
		at += q.s.outer - p.distance + q.bends(p, true, r, middle)
		for k, b := range p.pull {
			face[k] -= b
		}
	}
	if q.inner {
		p := &q.seen[inner]
		at += p.distance - q.s.inner + q.bends(p, false, r, middle)
		for k, b := range p.pull {
			face[k] += b
		}
	}
	return face, at
}

// bends returns how much nearer an outer point comes, or how much farther an inner one gets, than to first order, by
// moves from the middle of a region. With e the move of the axis at the foot of the point, a the change of the tilt t, and
// n the direction of the point in the plane of the moves, the square of the distance d becomes
//
//	x² + s − N²/T², x = d − n·e, s = e² − (n·e)², N = d·n·a − e·t − e·a, T² = 1 + (t + a)²
//
// where x is the distance to first order. So an inner point gets farther by s/2x at most, and an outer one comes nearer by
// N²/2x + N⁴/2x³. What these are made of is convex, so that it is most in a corner. There is no bound where the point may
// reach the axis.
func (q *axisSearch) bends(p *seenPoint, outer bool, r *region, middle *[4]float64) float64 {
	u, v := p.pull[0]+p.pull[2], p.pull[1]+p.pull[3]
	k, tu, tv := p.distance/q.s.length, q.tilt[0], q.tilt[1]
	u2, v2, f := float64(k*u), float64(k*v), 1-p.foot
	leans := [4]float64{-u2 - float64(f*tu), -v2 - float64(f*tv), u2 - float64(p.foot*tu), v2 - float64(p.foot*tv)}
	var ahead, aside, moves, turns, lean float64
	for i := range r.corners[:r.n] {
		c := &r.corners[i].at
		m := [4]float64{c[0] - middle[0], c[1] - middle[1], c[2] - middle[2], c[3] - middle[3]}
		eu, ev := float64(f*m[0])+float64(p.foot*m[2]), float64(f*m[1])+float64(p.foot*m[3])
		along, e2 := dot(u, v, eu, ev), dot(eu, ev, eu, ev)
		ahead = max(ahead, along)
		if !outer {
			aside = max(aside, e2-float64(along*along))
			continue
		}
		au, av := m[2]-m[0], m[3]-m[1]
		moves, turns, lean = max(moves, e2), max(turns, dot(au, av, au, av)), max(lean, math.Abs(times(&leans, &m)))
	}
	x := p.distance - ahead
	if !(x > 0) {
		return math.Inf(1)
	}
	if !outer {
		return aside / (2 * x)
	}
	n := lean + math.Sqrt(moves*turns)/q.s.length
	n *= n
	return n / (2 * x) * (1 + n/float64(x*x))
}

// gain is by how much the cylinder may be better after a move in a region, by the balance of the contacts: by at and what
// slope measures of it from the middle.
func (q *axisSearch) gain(r *region, middle *[4]float64) (slope [4]float64, at float64) {
	at = q.hair()
	for i := range q.contacts {
		p, w, on := &q.seen[i], q.points[i].weight, q.s.outer
		if w < 0 {
			on = q.s.inner
		}
		at += float64(math.Abs(w)*q.bends(p, w > 0, r, middle)) + float64(w*(on-p.distance))
		for k := range slope {
			slope[k] += float64(w * p.pull[k])
		}
	}
	if math.IsInf(at, 1) { // on the axis a pull has no direction
		slope = [4]float64{}
	}
	return slope, at
}

// cost is what the cylinder makes least.
func (q *axisSearch) cost(in, out float64) (c float64) {
	if q.outer {
		c += out
	}
	if q.inner {
		c -= in
	}
	return c
}

// ask reports whether the cylinder is better about the axis after a move, which leaves the points known from in to out; or
// whether one has been met that was not known and says otherwise.
func (q *axisSearch) ask(m *[4]float64, in, out float64, left int) (better, met bool) {
	is := q.cost(q.s.inner, q.s.outer) - worth
	if q.cost(in, out) >= is {
		return false, false
	}
	p := q.s.moved(m)
	near, far, in2, out2 := p.around(q.s.wall.x, q.s.wall.y, q.s.wall.z)
	if q.cost(math.Sqrt(in2), math.Sqrt(out2)) < is {
		return true, false
	}
	return false, q.outer && q.meet(far, left) || q.inner && q.meet(near, left)
}

// trim cuts off what a face leaves out that a move from the middle of a region is beyond. It reports false where there is
// none.
func (q *axisSearch) trim(r *region, middle, m *[4]float64) bool {
	face, at := q.face(m, r, middle)
	at -= worth
	return times(&face, m)-at > q.hair() && r.cut(&face, at+times(&face, middle), q.hair())
}

// leave leaves a region open, and hands on the axis after a move in it, to be tried.
func (q *axisSearch) leave(m *[4]float64, gain float64) {
	q.bound = max(q.bound, gain)
	if q.opens < len(q.open) {
		q.open[q.opens] = q.s.moved(m)
		q.opens++
	}
}

// exclude goes through all moves by up to half at either end, until none is left after which the cylinder may be
// better, or one is found after which it is.
func (q *axisSearch) exclude(half float64) {
	q.look(&[4]float64{}, 2*half)
	q.s.inner, q.s.outer = max(q.s.inner, q.in), min(q.s.outer, q.out) // as they are, where they were rounded for the worse
	q.regions[0].cube(half)
	q.regions[0].points = q.n
	for left, looked := 1, 0; left > 0; {
		r := &q.regions[left-1]
		if r.n == 0 {
			left--
			continue
		}
		middle := r.middle()
		_, size := r.farthest(&middle)
		q.n = r.points
		q.look(&middle, size)
		r.points = q.n
		slope, at := q.gain(r, &middle)
		best, most := r.most(&slope, &middle)
		_, away := r.farthest(&[4]float64{})
		if away <= q.held || at+most <= worth {
			left--
			continue
		}
		if looked++; looked < mostRegions {
			better, met := q.ask(&middle, q.in, q.out, left)
			if met {
				continue
			}
			if better {
				looked = mostRegions
			}
		}
		if looked >= mostRegions || left == len(q.regions) {
			q.leave(&middle, at+most)
			left--
			continue
		}
		q.trim(r, &middle, &[4]float64{})
		corner, was := best, size
		for r.n > 0 {
			if corner, size = r.farthest(&middle); !q.trim(r, &middle, &corner) {
				break
			}
		}
		for r.n > 0 {
			if best, most = r.most(&slope, &middle); at+most <= worth {
				r.n = 0
			} else if !q.trim(r, &middle, &best) {
				break
			}
		}
		if r.n > 0 && float64(was*was) <= float64(worth*q.in) { // nothing bends any more
			q.leave(&middle, at+most)
			r.n = 0
		}
		if r.n > 0 && looked < mostRegions {
			_, _, in, out := q.extremes(&best)
			to := [4]float64{middle[0] + best[0], middle[1] + best[1], middle[2] + best[2], middle[3] + best[3]}
			better, met := q.ask(&to, in, out, left)
			if met {
				continue
			}
			if better {
				looked = mostRegions
				q.leave(&to, at+most)
			}
		}
		if r.n > 0 && size > 0.7*was {
			other := &q.regions[left]
			other.n, other.points = copy(other.corners[:], r.corners[:r.n]), r.points
			left++
			at, away := times(&corner, &middle), [4]float64{-corner[0], -corner[1], -corner[2], -corner[3]}
			if !r.cut(&corner, at, 0) || !other.cut(&away, -at, 0) {
				looked = mostRegions
			}
		}
	}
}
