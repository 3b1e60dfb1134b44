// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A tally holds the sums of one pass of Gauss and Newton's method about an axis: u and v are the
// direction of a point from it, h its height, f its distance less r0.
type tally struct {
	u, v, hu, hv            float64
	uu, uv, vv              float64
	huu, huv, hvv           float64
	hhuu, hhuv, hhvv        float64
	f, ff, fu, fv, fhu, fhv float64
}

// A frame has what turns a place into u, v and h about an axis, u and v counted in a unit.
type frame struct{ u0, u1, u2, v0, v1, v2, h0, h1, h2, cu, cv, ch float64 }

func (p *pose) frame(unit float64) frame {
	u, v, w := vector{}.plus(1/unit, p.u), vector{}.plus(1/unit, p.v), vector{}.plus(1/p.half, p.w)
	return frame{u[0], u[1], u[2], v[0], v[1], v[2], w[0], w[1], w[2], p.c.dot(u), p.c.dot(v), p.c.dot(w)}
}

// at returns where a place is.
func (k *frame) at(x, y, z float64) (u, v, h float64) {
	u = float64(k.u0*x) + float64(k.u1*y) + float64(k.u2*z) - k.cu
	v = float64(k.v0*x) + float64(k.v1*y) + float64(k.v2*z) - k.cv
	h = float64(k.h0*x) + float64(k.h1*y) + float64(k.h2*z) - k.ch
	return u, v, h
}

// tallyPass takes all sums.
func tallyPass(x, y, z []float64, p *pose, r0 float64) (s tally) {
	k := p.frame(1)
	var sh, shh float64
	y, z = y[:len(x)], z[:len(x)]
	for i := range x {
		du, dv, h := k.at(x[i], y[i], z[i])
		d := math.Sqrt(float64(du*du) + float64(dv*dv))
		q := 1 / d
		u, v, f := float64(du*q), float64(dv*q), d-r0
		hu, hv := float64(h*u), float64(h*v)
		s.u += u
		s.v += v
		s.hu += hu
		s.hv += hv
		s.uu += float64(u * u)
		s.uv += float64(u * v)
		s.huu += float64(hu * u)
		s.huv += float64(hu * v)
		s.hhuu += float64(hu * hu)
		s.hhuv += float64(hu * hv)
		sh += h
		shh += float64(h * h)
		s.f += f
		s.ff += float64(f * f)
		s.fu += float64(f * u)
		s.fv += float64(f * v)
		s.fhu += float64(f * hu)
		s.fhv += float64(f * hv)
	}
	s.vv, s.hvv, s.hhvv = float64(len(x))-s.uu, sh-s.huu, shh-s.hhuu
	return s
}

// pullPass takes anew the sums of f alone, about a radius above 0. It counts in radii: what keeps it busy is its
// products and sums, and the root and the division of a point are done beside them.
func (s *tally) pullPass(x, y, z []float64, p *pose, r float64) {
	k := p.frame(r)
	var sf, sff, sfu, sfv, sfhu, sfhv float64
	y, z = y[:len(x)], z[:len(x)]
	for i := range x {
		u, v, h := k.at(x[i], y[i], z[i])
		d := math.Sqrt(float64(u*u) + float64(v*v))
		f := d - 1
		g := f / d
		sf += f
		sff += float64(f * f)
		u *= g
		v *= g
		sfu += u
		sfv += v
		sfhu += float64(h * u)
		sfhv += float64(h * v)
	}
	s.f, s.ff = float64(sf*r), float64(sff*float64(r*r))
	s.fu, s.fv, s.fhu, s.fhv = float64(sfu*r), float64(sfv*r), float64(sfhu*r), float64(sfhv*r)
}

// algebraicPass takes the sums of the algebraic cylinder, that which makes Σ (d² − r²)² least, near an axis
// that passes dx, dy at the depth 0, and leans by ax, ay for each length down: a linear problem, but for the
// squares of the lean and of what the axis still has to move. Here u and v are where a point lies, in mm and
// square to the depth, and f is half the square of its distance.
func algebraicPass(x, y, z []float64, half, dx, dy, ax, ay float64) (s tally) {
	y, z = y[:len(x)], z[:len(x)]
	h0, h1, h2 := ax/half, ay/half, 1/half
	ch := float64(h0*dx) + float64(h1*dy)
	for i := range x {
		a, b, c := x[i], y[i], z[i]
		h := float64(h0*a) + float64(h1*b) + float64(h2*c) - ch
		u, v := a-dx-float64(c*ax), b-dy-float64(c*ay)
		uu, vv, uv := float64(u*u), float64(v*v), float64(u*v)
		s.u += u
		s.v += v
		s.uu += uu
		s.vv += vv
		s.uv += uv
		f := uu + vv
		s.fu += float64(f * u)
		s.fv += float64(f * v)
		s.huu += float64(h * uu)
		s.hvv += float64(h * vv)
		s.huv += float64(h * uv)
		u *= h
		v *= h
		s.hu += u
		s.hv += v
		s.fhu += float64(f * u)
		s.fhv += float64(f * v)
		s.hhuv += float64(u * v)
		s.hhuu += float64(u * u)
		s.hhvv += float64(v * v)
	}
	s.f, s.fu, s.fv, s.fhu, s.fhv = (s.uu+s.vv)/2, s.fu/2, s.fv/2, s.fhu/2, s.fhv/2
	return s
}

// A normal matrix, eliminated: its pivots turned over, and the shares of their rows in those below.
type normal struct {
	pivot    [5]float64
	share    [5][5]float64
	unit     float64 // the length of u and v
	firmness float64 // the least pivot but that of the radius, for each point: how firmly they hold the axis
}

// normal eliminates the matrix of the sums, the radius first: it goes with the mean. Of directions the unit
// is 1.
func (s *tally) normal(n, unit float64) (a normal) {
	a.unit = unit
	a.share = [5][5]float64{
		{n, s.u, s.v, s.hu, s.hv},
		{0, s.uu, s.uv, s.huu, s.huv},
		{0, 0, s.vv, s.huv, s.hvv},
		{0, 0, 0, s.hhuu, s.hhuv},
		{0, 0, 0, 0, s.hhvv},
	}
	least := math.Inf(1)
	for k := range a.pivot {
		row := &a.share[k]
		if k > 0 {
			least = min(least, row[k])
		}
		a.pivot[k] = 1 / row[k]
		for i := k + 1; i < len(a.pivot); i++ {
			share := float64(row[i] * a.pivot[k])
			for j := i; j < len(row); j++ {
				a.share[i][j] -= float64(share * row[j])
			}
		}
		for i := k + 1; i < len(row); i++ {
			row[i] *= a.pivot[k]
		}
	}
	a.firmness = least / (n * float64(unit*unit))
	return a
}

// step solves the normal equations: how the axis and the radius are to move.
func (s *tally) step(a *normal) (m move, dr float64) {
	r := [5]float64{s.f, float64(s.fu * a.unit), float64(s.fv * a.unit), float64(s.fhu * a.unit), float64(s.fhv * a.unit)}
	for k := range r {
		for i := k + 1; i < len(r); i++ {
			r[i] -= float64(a.share[k][i] * r[k])
		}
	}
	for k := len(r) - 1; k >= 0; k-- {
		r[k] *= a.pivot[k]
		for j := k + 1; j < len(r); j++ {
			r[k] -= float64(a.share[k][j] * r[j])
		}
	}
	return move{float64(r[1] * a.unit), float64(r[2] * a.unit), float64(r[3] * a.unit), float64(r[4] * a.unit)}, r[0]
}

// gain is by how much a step makes the sum of the squares less.
func (s *tally) gain(m move, dr float64) float64 {
	return float64(s.f*dr) + float64(s.fu*m[0]) + float64(s.fv*m[1]) + float64(s.fhu*m[2]) + float64(s.fhv*m[3])
}
