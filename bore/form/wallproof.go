// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"math"

	"borewright.example/units"
)

// An exclusion is what the contacts of a cylinder and the points of its wall prove of other axes.
type exclusion struct {
	reach  float64               // how far the axis may move at either end,
	bound  float64               // and by how much a cylinder of the kind about an axis so found may be better at most
	closed bool                  // whether there is such a bound
	n      int                   // how many axes it leaves open to be tried,
	open   [2 * len(move{})]pose // those found, or where nothing is excluded some: both ways of each part of a move
}

// excluded says what is excluded. Where the points at both ends of the wall close up all round, that reaches to half
// the inner radius, or as far as they exclude what is not near; and what is near the contacts exclude, or a search does.
// Elsewhere the contacts alone reach, and there is no bound. It looks at published numbers only.
func (c Cylinder) excluded(s sight, q *axisSearch) (e exclusion) {
	p := c.bounds(s)
	held := p.reach()
	near := held / math.Sqrt2 // at each end
	r, width := s.inner, s.outer-s.inner
	round := s.closure()
	far := func(m float64) bool {
		ahead := (1 - float64(round*round)) * m * m / r
		tilt := (r + float64(round*m)) * 2 * m * m / (s.length * s.length)
		switch c.Reference {
		case MCCY:
			return float64(round*m)-tilt > width
		case MICY:
			return float64(round*m)-ahead > width
		default:
			return 2*(float64(round*m)-width)-tilt-ahead > 0
		}
	}
	// What far compares is concave in m, so that where it holds twice it holds between.
	if !(round > 0) {
		return exclusion{reach: near}
	}
	within := near
	for within < r/2 && !far(within) {
		within = max(1.05*within, float64(width/round), slack)
	}
	for e.reach = r / 2; e.reach > within && !far(e.reach); {
		e.reach *= 0.9
	}
	if e.reach <= within {
		return exclusion{reach: near}
	}
	if within > near {
		q.margin, q.s, q.held = p, s, held
		q.start(c.Certificate.contacts[:c.Certificate.n])
		q.exclude(within)
		e.bound, e.n = q.bound, copy(e.open[:], q.open[:q.opens])
	}
	e.closed = true
	return e
}

// moved returns the axis after a move of its ends.
func (s *sight) moved(m *[4]float64) pose {
	from := s.origin.plus(s.top, s.along).plus(m[0], s.right).plus(m[1], s.up)
	to := s.origin.plus(s.top+s.length, s.along).plus(m[2], s.right).plus(m[3], s.up)
	return upright(from.plus(0.5, to.plus(-1, from)), to.plus(-1, from), s.length/2)
}

// closure returns c less twice the share: of the points in the first share of the wall, as of those in
// the last, no gap between neighbouring directions is wider than 2·acos(c). Of shares up to a quarter
// it takes the best. Of very many points it looks at some, since those alone close up as far as they show.
func (s *sight) closure() float64 {
	shares := [...]float64{1. / 128, 1. / 64, 1. / 32, 1. / 16, 1. / 8, 3. / 16, 1. / 4}
	var lowest [2][sectors]float64 // how near the end points of a sector come
	for end := range lowest {
		for k := range lowest[end] {
			lowest[end][k] = 1
		}
	}
	o0, o1, o2 := s.origin[0], s.origin[1], s.origin[2]
	a0, a1, a2 := s.along[0], s.along[1], s.along[2]
	y, z := s.wall.y[:len(s.wall.x)], s.wall.z[:len(s.wall.x)]
	stride := len(s.wall.x)/closing | 1
	for i := 0; i < len(s.wall.x); i += stride {
		x := s.wall.x[i]
		h, end := (float64((x-o0)*a0)+float64((y[i]-o1)*a1)+float64((z[i]-o2)*a2)-s.top)/s.length, 0
		if h > 0.5 {
			h, end = 1-h, 1
		}
		if h > shares[len(shares)-1] {
			continue
		}
		u, v, _ := s.at(i)
		sum := math.Abs(u) + math.Abs(v)
		if !(sum > 0) {
			continue
		}
		at := v / sum // round a diamond, a quarter at a time
		switch {
		case u < 0:
			at = 2 - at
		case at < 0:
			at += 4
		}
		if at := &lowest[end][min(int(at*(sectors/4)), sectors-1)]; h < *at {
			*at = h
		}
	}
	worst, angles := math.Inf(1), newRose()
	for end := range lowest {
		best := -1.0
		for _, share := range shares {
			if best >= 1-2*share { // it gets no better
				break
			}
			var taken [sectors]bool
			for k, h := range lowest[end] {
				taken[k] = h <= share
			}
			best = max(best, math.Cos(angles.widest(&taken)/2)-2*share)
		}
		worst = min(worst, best)
	}
	return worst
}

// A rose holds the angles at which the sectors round a diamond begin.
type rose [sectors + 1]float64

// closing is about how many points are looked at, of more than that.
const closing = 1000

// sectors is how many there are, an equal number in each quarter.
const sectors = 256

func newRose() (r rose) {
	for i := range sectors/4 + 1 {
		part := float64(i) / (sectors / 4)
		a := math.Atan2(part, 1-part)
		for quarter := range 4 {
			r[quarter*(sectors/4)+i] = float64(math.Pi/2*float64(quarter)) + a
		}
	}
	return r
}

// widest returns the widest gap that directions may have which fall into these sectors, at most once
// round.
func (r *rose) widest(taken *[sectors]bool) float64 {
	first, last, most := -1, -1, 0.0
	for i, is := range taken {
		if !is {
			continue
		}
		if first < 0 {
			first = i
		} else {
			most = max(most, r[i+1]-r[last])
		}
		last = i
	}
	if first < 0 {
		return 2 * math.Pi
	}
	return min(2*math.Pi, max(most, r[first+1]+2*math.Pi-r[last]))
}

// A margin is what the contacts of a cylinder prove about a move of its axis, both ends taken together
// by their squares.
type margin struct {
	growth, stiff float64 // as growth returns them
	bent          float64 // for a move m, weighed distances bend the wrong way by at most bent·m²
	total         float64 // and either way by at most total·m²
	unbalanced    float64
	in, out       float64
	length        float64
	outer, inner  bool
}

func (c Cylinder) bounds(s sight) margin {
	p := margin{in: c.nearest(s), out: s.outer, length: s.length, outer: c.Reference != MICY, inner: c.Reference != MCCY}
	p.unbalanced = s.unbalanced(c.Certificate.contacts[:c.Certificate.n])
	p.growth, p.stiff = c.growth(s)
	p.growth -= p.unbalanced
	p.bend()
	return p
}

// bend sets the bounds of the second order: that of a distance lies between −out·(m/length)² and m²/(2·in).
func (p *margin) bend() {
	if p.outer {
		p.bent += p.out / (p.length * p.length)
		p.total += max(1/(2*p.in), p.out/(p.length*p.length))
	}
	if p.inner {
		p.bent += 1 / (2 * p.in)
		p.total += max(1/(2*p.in), p.out/(p.length*p.length))
	}
}

// third bounds what is left of the weighed distances beyond the second order of a move.
func (p margin) third(m float64) float64 {
	a := math.Sqrt2 * m / p.length
	left := p.in - m
	e := m*m*m/(2*left*p.in) + 1.5*m*a*a + (p.out+m)*a*a*a*a/2 + m*m*a*a/(2*left)
	var sum float64
	if p.outer {
		x := max(m*m, (p.out+2*m)*(p.out+2*m)*a*a)
		sum += e + x*x/(2*left*left*left)
	}
	if p.inner {
		sum += e
	}
	return sum
}

// holds reports whether no move up to m gives a better cylinder.
func (p margin) holds(m float64) bool {
	switch lost := (float64(p.bent*m) + p.third(m)/m) / p.growth; {
	case !(p.growth > 0):
		return false
	case p.stiff < 0: // the contacts hold the axis in every direction
		return lost < 1
	default:
		return lost < 1 && p.stiff*(1-lost*lost)-2*p.total*lost-p.total*lost*lost > p.third(m)/(m*m)
	}
}

// reach returns up to how large a move the contacts prove that nothing is better.
func (p margin) reach() float64 {
	low, high := 0.0, p.in/2
	if p.holds(high) {
		return high
	}
	for range 60 {
		if mid := (low + high) / 2; p.holds(mid) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// growth returns by how much for each length moved the contacts make the cylinder worse, in the
// directions in which they do: the least of weight times height, the height of a pull over the flat
// that the others span. Stiff is by how much for each square of the length moved their bending does in
// the other directions, and −1 if there are none. Growth is 0 where neither holds the axis.
func (c Cylinder) growth(s sight) (growth, stiff float64) {
	contacts := c.Certificate.contacts[:c.Certificate.n]
	growth = math.Inf(1)
	for j, p := range contacts {
		span, ok := s.span(contacts, j)
		if !ok {
			return 0, 0
		}
		mate := -1
		for i, q := range contacts {
			if i != j && q.Outer == p.Outer {
				mate = i
			}
		}
		if mate < 0 { // alone on its side its weight is 1
			continue
		}
		a, b := s.pull(p), s.pull(contacts[mate])
		for k := range a {
			a[k] -= b[k]
		}
		height := span.off(&a)
		growth = min(growth, float64(p.Weight*height))
	}
	all, ok := s.span(contacts, -1)
	if !ok || !(growth > 0) {
		return 0, 0
	}
	if all.n == 4 {
		return growth, -1
	}
	// The directions left over, and the bending in them.
	var free [2][4]float64
	n := 0
	rest := all
	for range 4 - all.n {
		// Of the four ends' displacements that which stands off the most.
		var most [4]float64
		off := 0.0
		for k := range most {
			var e [4]float64
			e[k] = 1
			if d := rest.off(&e); d > off {
				off, most = d, e
			}
		}
		if n == len(free) || !rest.add(most) {
			return 0, 0
		}
		free[n] = rest.base[rest.n-1]
		n++
	}
	var q [2][2]float64
	for i := range n {
		for j := range n {
			q[i][j] = s.bending(contacts, free[i], free[j])
		}
	}
	stiff = q[0][0]
	if n == 2 {
		stiff = least(q[0][0], (q[0][1]+q[1][0])/2, q[1][1])
	}
	if !(stiff > 0) || math.IsInf(growth, 1) {
		return 0, 0
	}
	return growth, stiff
}

// bending is the second-order change of the weighed distances with a move, as a form of two moves.
func (s *sight) bending(contacts []Contact, a, b [4]float64) (sum float64) {
	for _, p := range contacts {
		u, v, t := s.at(p.Index)
		d := math.Hypot(u, v)
		u, v = u/d, v/d
		h := (t - s.top) / s.length
		across := func(m [4]float64) float64 {
			return float64(u*((1-h)*m[1]+h*m[3])) - float64(v*((1-h)*m[0]+h*m[2]))
		}
		tilt := func(m [4]float64) float64 { return (float64(u*(m[2]-m[0])) + float64(v*(m[3]-m[1]))) / s.length }
		q := float64(across(a)*across(b))/(2*d) - float64(d*tilt(a)*tilt(b))/2
		if !p.Outer {
			q = -q
		}
		sum += float64(p.Weight * q)
	}
	return sum
}

// A flat is what some directions span: a base of it, square to each other and of length 1.
type flat struct {
	base [4][4]float64
	n    int
}

// off returns how far a vector stands off the flat, and leaves that part of it.
func (f *flat) off(v *[4]float64) float64 {
	for range 2 { // twice, for rounding
		for _, b := range f.base[:f.n] {
			var d float64
			for k := range b {
				d += float64(b[k] * v[k])
			}
			for k := range b {
				v[k] -= float64(d * b[k])
			}
		}
	}
	return math.Hypot(math.Hypot(v[0], v[1]), math.Hypot(v[2], v[3]))
}

// add widens the flat by a vector; it reports false where that lies in it.
func (f *flat) add(v [4]float64) bool {
	d := f.off(&v)
	if f.n == 4 || !(d > 1e-9) {
		return false
	}
	for k := range v {
		v[k] /= d
	}
	f.base[f.n] = v
	f.n++
	return true
}

// span returns the flat along which the pulls of contacts differ from others on their side, one of
// them left out. It reports false where they are not independent.
func (s *sight) span(contacts []Contact, without int) (f flat, ok bool) {
	for _, outer := range [...]bool{true, false} {
		first := -1
		for i, p := range contacts {
			if i == without || p.Outer != outer {
				continue
			}
			if first < 0 {
				first = i
				continue
			}
			a, b := s.pull(p), s.pull(contacts[first])
			for k := range a {
				a[k] -= b[k]
			}
			if !f.add(a) {
				return f, false
			}
		}
	}
	return f, true
}

// certify says of a cylinder what its contacts and the points prove.
func (c *Cylinder) certify(w Wall, q *axisSearch) (e exclusion, err error) {
	s, ok := c.sight(w)
	if !ok {
		return e, c.fail("no axis")
	}
	e = c.excluded(s, q)
	if c.Certificate.Reach, err = units.Of(e.reach, units.Millimetre); err == nil {
		c.Certificate.Bound, err = units.Of(min(e.bound, c.unbound().In(units.Millimetre)), units.Millimetre)
	}
	if !e.closed {
		c.Certificate.Bound = c.unbound()
	}
	c.Certificate.Searched = c.Certificate.Bound != 0
	return e, err
}
