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
	// worth is what a cylinder has to be better by to count, 0.4 pm: it is published as nothing.
	worth = 4e-10
)

// An axisSearch goes through all moves of an axis that are not excluded otherwise, by regions. About the axis in the
// middle of one, each pair of points, one beyond each cylinder, cuts off the moves after which the cylinder is no better.
// What is left is looked at again about its own middle, where the bending of the distances is less; and in two
// halves, where it is not much smaller.
type axisSearch struct {
	margin
	s        sight
	points   [mostNear]nearPoint
	n        int // those that matter to the region looked at, the contacts first
	contacts int
	seen     [mostNear]seenPoint
	regions  [mostOpen]region
	held     float64 // how large the moves are which the contacts exclude
	bound    float64 // by how much one that is not excluded may be better
	open     [8]pose // axes after such
	opens    int
}

// A nearPoint is where a point lies as the axis is seen, and its height; Weight is 0 but for a contact, and below for
// an inner one.
type nearPoint struct{ u, v, h, weight float64 }

// A seenPoint is a point as the axis in the middle of a region has it.
type seenPoint struct {
	pull        [4]float64 // by which it comes nearer
	distance, h float64
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

// look sees the points from the axis in the middle of a region, and moves those to the front which moves of a size
// may bring to the cylinders that matter. With a the place of a point from the axis at its height, square to the axis
// looked along first, and t the tilt since, d² = a² − (a·t)²/(1 + t²).
func (q *axisSearch) look(m *[4]float64, size float64) {
	l := q.s.length
	tu, tv := (m[2]-m[0])/l, (m[3]-m[1])/l
	k, n := 1/(1+dot(tu, tv, tu, tv)), 0
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
		b /= l
		q.seen[n] = seenPoint{[4]float64{float64((1 - p.h - b) * u), float64((1 - p.h - b) * v), float64((p.h + b) * u), float64((p.h + b) * v)}, d, p.h}
		q.points[n], q.points[i] = p, q.points[n]
		n++
	}
	q.n = n
}

// face returns what of a move, from the middle of a region, measures more than at where the cylinder after it is no
// better, but for what is of third order: of all such faces that which a move given is farthest beyond.
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
// moves from the middle of a region: the square of what is linear, so that it is most in a corner.
func (q *axisSearch) bends(p *seenPoint, outer bool, r *region, middle *[4]float64) float64 {
	u, v := p.pull[0]+p.pull[2], p.pull[1]+p.pull[3] // its direction
	across := [4]float64{-float64((1 - p.h) * v), float64((1 - p.h) * u), -float64(p.h * v), float64(p.h * u)}
	if outer { // it is the tilt along its direction that brings it nearer
		k := p.distance / q.s.length
		u, v = float64(u*k), float64(v*k)
		across = [4]float64{-u, -v, u, v}
	}
	away := [4]float64{-across[0], -across[1], -across[2], -across[3]}
	is := times(&across, middle)
	most := max(r.most(&across)-is, r.most(&away)+is)
	return float64(most*most) / (2 * p.distance)
}

// gain is by how much the cylinder may be better after a move in a region, by the balance of the contacts, but for
// what is of third order.
func (q *axisSearch) gain(r *region, middle *[4]float64) float64 {
	sum := q.cost(q.s.inner, q.s.outer)
	var g [4]float64
	for i := range q.contacts {
		p, w := &q.seen[i], q.points[i].weight
		sum += float64(math.Abs(w)*q.bends(p, w > 0, r, middle)) - float64(w*p.distance)
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
	in, out := math.Inf(1), math.Inf(-1)
	for i := range q.seen[:q.n] {
		in, out = min(in, q.seen[i].distance), max(out, q.seen[i].distance)
	}
	if q.cost(in, out) >= is {
		return false
	}
	p := q.s.moved(middle)
	_, _, in2, out2 := p.around(q.s.wall.x, q.s.wall.y, q.s.wall.z)
	return q.cost(math.Sqrt(in2), math.Sqrt(out2)) < is
}

// exclude goes through all moves by up to half at either end, until none is left after which the cylinder may be
// better, or one is found after which it is. From an axis that is tilted already, distances bend otherwise by up to three
// times that tilt, the move and the tilt of the move, which is √2·size/length at most.
func (q *axisSearch) exclude(half float64) {
	far := math.Sqrt2 * half
	q.in, q.out = q.s.inner-far, q.s.outer+far
	hair := float64(16 * rounding * q.out)
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
		tilt := norm(middle[2]-middle[0], middle[3]-middle[1]) / q.s.length
		rest := q.third(size) + 5*tilt*size*size/q.s.length + hair
		gain := q.gain(r, &middle) + rest
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
			if q.opens < 3 {
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
			at += rest - worth
			if times(&face, &corner)-at <= hair || !r.cut(&face, at+times(&face, &middle), hair) {
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
