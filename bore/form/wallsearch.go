// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

const (
	// mostNear is how many points of a wall a search looks at, those next to the cylinders: more would exclude no
	// less, and cost more.
	mostNear = 160
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
// halves, where it is not much smaller.
type axisSearch struct {
	margin
	s sight
	// Of the axis in the middle of the region looked at: how it is tilted, and what rest and rounding leave of its distances. In
	// and out are of the points seen from there.
	tilt [2]float64
	left float64

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
type nearPoint struct{ u, v, h, weight float64 }

// A seenPoint is a point as the axis in the middle of a region has it.
type seenPoint struct {
	pull           [4]float64 // by which it comes nearer
	distance, foot float64    // foot is the height on that axis of the place nearest to it, beyond the ends where they lean
}

// start takes the contacts, and the points near the cylinders that matter, as many as there is room for.
func (q *axisSearch) start(contacts []Contact) {
	q.n, q.bound, q.opens = 0, 0, 0
	add := func(u, v, t, weight float64) {
		q.points[q.n] = nearPoint{u, v, (t - q.s.top) / q.s.length, weight}
		q.n++
	}
	for _, c := range contacts {
		u, v, t := q.s.at(c.Index)
		if !c.Outer {
			c.Weight = -c.Weight
		}
		add(u, v, t, c.Weight)
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
		for q.n == len(q.points) {
			if within /= 2; within < slack { // many in one place
				return
			}
			q.n = q.contacts
			for _, p := range q.points[q.contacts:] {
				if near(p.u, p.v) {
					q.points[q.n] = p
					q.n++
				}
			}
		}
		add(u, v, t, 0)
	}
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
	q.n, q.left = n, q.rest(size)+q.hair()
}

// face returns what of a move, from the middle of a region, measures more than at where the cylinder after it is no
// better: of all such faces that which a move given is farthest beyond.
func (q *axisSearch) face(m *[4]float64, r *region, middle *[4]float64) (face [4]float64, at float64) {
	far, near, outer, inner := math.Inf(-1), math.Inf(1), 0, 0
	for i := range q.seen[:q.n] {
		p := &q.seen[i]
		d := p.distance - times(&p.pull, m)
		if d > far {
			far, outer = d, i
		}
		if d < near {
			near, inner = d, i
		}
	}
	at = q.left
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
// n the direction of the point in the plane of the moves, the square of the distance becomes
//
//	d² − 2d·n·e + e² − N²/T², N = d·n·a − e·t − e·a, T² = 1 + (t + a)²
//
// So an inner point gets farther by (e² − (n·e)²)/2d, and an outer one comes nearer by (d·n·a − e·t)²/2d, at most. Both are
// convex, so that they are most in a corner.
func (q *axisSearch) bends(p *seenPoint, outer bool, r *region, middle *[4]float64) float64 {
	u, v := p.pull[0]+p.pull[2], p.pull[1]+p.pull[3]
	k, tu, tv := p.distance/q.s.length, q.tilt[0], q.tilt[1]
	u2, v2 := float64(k*u), float64(k*v)
	leans := [4]float64{-u2 - float64((1-p.foot)*tu), -v2 - float64((1-p.foot)*tv), u2 - float64(p.foot*tu), v2 - float64(p.foot*tv)}
	most := 0.0
	for i := range r.corners[:r.n] {
		c := &r.corners[i].at
		m := [4]float64{c[0] - middle[0], c[1] - middle[1], c[2] - middle[2], c[3] - middle[3]}
		if outer {
			b := times(&leans, &m)
			most = max(most, float64(b*b))
			continue
		}
		eu, ev := float64((1-p.foot)*m[0])+float64(p.foot*m[2]), float64((1-p.foot)*m[1])+float64(p.foot*m[3])
		along := dot(u, v, eu, ev)
		most = max(most, dot(eu, ev, eu, ev)-float64(along*along))
	}
	return most / (2 * p.distance)
}

// rest bounds what is left of the weighed distances beyond that, after a move of a size from the middle: of the roots of
// the squares above, by √(x² + s) ≤ x + s/2x and √(x² − s) ≥ x − s/2x − s²/2x³. There is no bound where a point may reach
// the axis.
func (q *axisSearch) rest(size float64) (sum float64) {
	l, tilt := q.s.length, norm(q.tilt[0], q.tilt[1])
	a := math.Sqrt2 * size / l                // how far it tilts
	m := size * (1 + 2*q.out*float64(tilt/l)) // and moves at a foot, which lies that far beyond the ends
	left := q.in - m
	if !(left > 0) {
		return math.Inf(1)
	}
	if q.inner {
		sum += m * m * m / (2 * left * q.in)
	}
	if q.outer {
		n := float64(q.out*a) + float64((tilt+a)*m)
		sum += n*n*m/(2*left*q.in) + a*m*n/q.in + n*n*n*n/(2*left*left*left)
	}
	return sum
}

// gain is by how much the cylinder may be better after a move in a region, by the balance of the contacts.
func (q *axisSearch) gain(r *region, middle *[4]float64) float64 {
	sum := q.left
	if math.IsInf(sum, 1) {
		return sum
	}
	var g [4]float64
	for i := range q.contacts {
		p, w, on := &q.seen[i], q.points[i].weight, q.s.outer
		if w < 0 {
			on = q.s.inner
		}
		sum += float64(math.Abs(w)*q.bends(p, w > 0, r, middle)) + float64(w*(on-p.distance))
		for k := range g {
			g[k] += float64(w * p.pull[k])
		}
	}
	return sum + r.most(&g) - times(&g, middle)
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

// better reports whether the cylinder is better about the axis in the middle of the region looked at.
func (q *axisSearch) better(middle *[4]float64) bool {
	is := q.cost(q.s.inner, q.s.outer) - slack
	if q.cost(q.in, q.out) >= is {
		return false
	}
	p := q.s.moved(middle)
	_, _, in2, out2 := p.around(q.s.wall.x, q.s.wall.y, q.s.wall.z)
	return q.cost(math.Sqrt(in2), math.Sqrt(out2)) < is
}

// exclude goes through all moves by up to half at either end, until none is left after which the cylinder may be
// better, or one is found after which it is.
func (q *axisSearch) exclude(half float64) {
	hair := q.hair()
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
		gain := q.gain(r, &middle)
		_, away := r.farthest(&[4]float64{})
		if away <= q.held || gain <= worth {
			left--
			continue
		}
		if looked++; looked < mostRegions && q.better(&middle) {
			looked = mostRegions
		}
		if looked >= mostRegions || left == len(q.regions) || float64(size*size) <= float64(worth/8*q.in) {
			q.bound = max(q.bound, gain)
			if q.opens < len(q.open) {
				q.open[q.opens] = q.s.moved(&middle)
				q.opens++
			}
			left--
			continue
		}
		corner, was := middle, size
		for r.n > 0 {
			corner, size = r.farthest(&middle)
			face, at := q.face(&corner, r, &middle)
			at -= worth
			if !(times(&face, &corner)-at > hair) || !r.cut(&face, at+times(&face, &middle), hair) {
				break
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
