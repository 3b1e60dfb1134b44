// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// The linear program of a minimax cylinder, near an axis: with f the distance of a point less a base,
// and the move s as unknown, distances change by −(u, v, hu, hv)·s, and
//
//	zone            out − in least
//	circumscribed   out least
//	inscribed       in greatest
//
// while f − (u, v, hu, hv)·s ≤ out and ≥ in for every point, and every |s[k]| ≤ trust[k]. It is solved by
// the exchange that Stiefel used for Chebyshev's problem, which is the dual simplex method: as many
// constraints as unknowns hold as equations, with weights that balance; the constraint most violated
// takes the place of that whose weight would first turn negative. So the optimum of those held only
// grows, until it holds for all.

// mostRows is the greatest number of unknowns: the four of a move, and two distances.
const mostRows = 6

// A row is one constraint, row·(s, out, in) ≥ bound: of a point as outer or inner one, or of the trust.
type row struct {
	point int // its index, or −1
	outer bool
	a     [mostRows]float64
	bound float64
}

// A program holds as equations as many rows as there are unknowns.
type program struct {
	n       int // unknowns: five, six for a zone
	out, in int // where the two distances stand among them, −1 for none
	rows    [mostRows]row
	inv     [mostRows][mostRows]float64 // of the matrix of rows
	y       [mostRows]float64           // the unknowns
	weight  [mostRows]float64           // of the rows, not negative
	trust   [4]float64                  // how far each of the move may go
}

// newProgram starts from the trust alone and the points farthest and nearest: a move to the corner of
// the trust where these two are best off.
func newProgram(kind Reference, s *slopes, trust, tilt float64, far, near int) program {
	p := program{n: 5, out: 4, in: -1, trust: [4]float64{trust, trust, float64(tilt * trust), float64(tilt * trust)}}
	switch kind {
	case MZCY:
		p.n, p.in = 6, 5
	case MICY:
		p.out, p.in = -1, 4
	}
	var pull [4]float64
	if p.out >= 0 {
		p.rows[p.out] = p.pointRow(s, far, true)
	}
	if p.in >= 0 {
		p.rows[p.in] = p.pointRow(s, near, false)
	}
	for k := range pull {
		for r := 4; r < p.n; r++ {
			pull[k] -= p.rows[r].a[k]
		}
		sign := 1.0
		if pull[k] < 0 {
			sign = -1
		}
		p.rows[k] = p.trustRow(k, sign)
		p.weight[k] = math.Abs(pull[k])
		p.inv[k][k] = sign
	}
	for r := 4; r < p.n; r++ {
		p.weight[r] = 1
		side := p.rows[r].a[r]
		p.inv[r][r] = side
		for k := range 4 {
			p.inv[r][k] = -float64(side * p.rows[r].a[k] * p.inv[k][k])
		}
	}
	p.solve()
	return p
}

// again makes the program that about another axis, or with another trust, and starts from the rows which
// it ended with. It reports false where there are none, or they no longer balance with weights that are not
// negative; then it is of no use.
func (p *program) again(s *slopes, trust, tilt float64) bool {
	if p.n == 0 {
		return false
	}
	p.trust = [4]float64{trust, trust, float64(tilt * trust), float64(tilt * trust)}
	var room system // the rows, and the unit matrix beside them
	for k := range p.n {
		if r := p.rows[k]; r.point >= 0 {
			p.rows[k] = p.pointRow(s, r.point, r.outer)
		} else {
			for j := range 4 {
				if r.a[j] != 0 {
					p.rows[k] = p.trustRow(j, r.a[j])
				}
			}
		}
		copy(room[k][:], p.rows[k].a[:p.n])
		room[k][p.n+k] = 1
	}
	if !room.invert(p.n) {
		return false
	}
	for i := range p.n {
		copy(p.inv[i][:p.n], room[i][p.n:])
	}
	for k := range p.n {
		p.weight[k] = 0
		if p.out >= 0 {
			p.weight[k] += p.inv[p.out][k]
		}
		if p.in >= 0 {
			p.weight[k] -= p.inv[p.in][k]
		}
		if p.weight[k] < 0 && p.rows[k].point < 0 { // the trust ends on the other side
			for j := range 4 {
				if a := p.rows[k].a[j]; a != 0 {
					p.rows[k] = p.trustRow(j, -a)
				}
			}
			p.weight[k] = -p.weight[k]
			for i := range p.n {
				p.inv[i][k] = -p.inv[i][k]
			}
		}
		if !(p.weight[k] >= 0) {
			return false
		}
	}
	p.solve()
	return true
}

func (p *program) pointRow(s *slopes, i int, outer bool) row {
	r := row{point: i, outer: outer}
	sign := 1.0
	if outer {
		r.a[p.out] = 1
	} else {
		sign = -1
		r.a[p.in] = -1
	}
	u, v, h := s.u[i], s.v[i], s.h[i]
	r.a[0], r.a[1], r.a[2], r.a[3] = float64(sign*u), float64(sign*v), float64(sign*h*u), float64(sign*h*v)
	r.bound = float64(sign * s.f[i])
	return r
}

func (p *program) trustRow(k int, sign float64) row {
	r := row{point: -1, bound: -p.trust[k]}
	r.a[k] = sign
	return r
}

// solve finds the unknowns from the rows.
func (p *program) solve() {
	for i := range p.n {
		p.y[i] = 0
		for k := range p.n {
			p.y[i] += float64(p.inv[i][k] * p.rows[k].bound)
		}
	}
}

// violated returns the row most violated, and by how much.
func (p *program) violated(s *slopes) (r row, by float64) {
	m0, m1, m2, m3 := p.y[0], p.y[1], p.y[2], p.y[3]
	out, in := math.Inf(1), math.Inf(-1)
	if p.out >= 0 {
		out = p.y[p.out]
	}
	if p.in >= 0 {
		in = p.y[p.in]
	}
	most, least, outer, inner := math.Inf(-1), math.Inf(1), -1, -1
	f, u, v, h := s.f, s.u[:len(s.f)], s.v[:len(s.f)], s.h[:len(s.f)]
	for i := range f {
		g := f[i] - float64(u[i]*(m0+float64(h[i]*m2))) - float64(v[i]*(m1+float64(h[i]*m3)))
		if g > most {
			most, outer = g, i
		}
		if g < least {
			least, inner = g, i
		}
	}
	above, below := most-out, in-least
	by = max(above, below)
	k, sign := -1, 0.0
	for j := range 4 {
		if over := math.Abs(p.y[j]) - p.trust[j]; over > by {
			by, k, sign = over, j, -math.Copysign(1, p.y[j])
		}
	}
	switch {
	case by <= 0:
		return row{}, 0
	case k >= 0:
		return p.trustRow(k, sign), by
	case above >= below:
		return p.pointRow(s, outer, true), by
	default:
		return p.pointRow(s, inner, false), by
	}
}

// take exchanges a row for that whose weight would first turn negative. It reports false where there
// is none.
func (p *program) take(r row) bool {
	var mu [mostRows]float64
	for k := range p.n {
		for i := range p.n {
			mu[k] += float64(r.a[i] * p.inv[i][k])
		}
	}
	leave, least := -1, math.Inf(1)
	for k := range p.n {
		if mu[k] > 1e-11 {
			if q := p.weight[k] / mu[k]; q < least {
				leave, least = k, q
			}
		}
	}
	if leave < 0 {
		return false
	}
	for k := range p.n {
		p.weight[k] = max(0, p.weight[k]-float64(least*mu[k]))
	}
	p.weight[leave] = least
	p.rows[leave] = r
	for i := range p.n {
		q := p.inv[i][leave] / mu[leave]
		for k := range p.n {
			p.inv[i][k] -= float64(q * mu[k])
		}
		p.inv[i][leave] = q
	}
	p.solve()
	return true
}

// value returns what the program makes least.
func (p *program) value() float64 {
	var v float64
	if p.out >= 0 {
		v += p.y[p.out]
	}
	if p.in >= 0 {
		v -= p.y[p.in]
	}
	return v
}

// mostTakes bounds the exchange; some twenty do on any wall seen.
const mostTakes = 400

// optimise exchanges rows until none is violated by more than the floor.
func (p *program) optimise(s *slopes, floor float64) {
	for range mostTakes {
		r, by := p.violated(s)
		if by <= floor || !p.take(r) {
			return
		}
	}
}

// slopes are the points of a wall about an axis: directions u and v, heights h, and distances less a
// base.
type slopes struct{ f, u, v, h []float64 }

// see fills the slopes about an axis and returns the distances of the nearest and the farthest point,
// with their indices.
func (s *slopes) see(x, y, z []float64, p *pose, base float64) (near, far int, in, out float64) {
	n := len(x)
	if cap(s.f) < n {
		room := make([]float64, 4*n)
		s.f, s.u, s.v, s.h = room[:n:n], room[n:2*n:2*n], room[2*n:3*n:3*n], room[3*n:]
	}
	s.f, s.u, s.v, s.h = s.f[:n], s.u[:n], s.v[:n], s.h[:n]
	in, out = math.Inf(1), -1
	y, z = y[:n], z[:n]
	k := p.frame(1)
	sf, su, sv, sh := s.f, s.u[:n], s.v[:n], s.h[:n]
	for i := range x {
		u, v, h := k.at(x[i], y[i], z[i])
		sh[i] = h
		d := math.Sqrt(float64(u*u) + float64(v*v))
		q := 1 / d
		if d == 0 {
			q = 0
		}
		sf[i], su[i], sv[i] = d-base, float64(u*q), float64(v*q)
		if d < in {
			in, near = d, i
		}
		if d > out {
			out, far = d, i
		}
	}
	return near, far, in, out
}
