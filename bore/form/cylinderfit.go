// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A tally holds the sums of one pass of Gauss and Newton's method about an axis: u and v are the
// direction of a point from it, h its height, f its distance less r0.
type tally struct {
	u, v, hu, hv                 float64
	uu, uv, huu, huv, hhuu, hhuv float64
	h, hh                        float64
	f, ff, fu, fv, fhu, fhv      float64
}

func tallyPass(x, y, z []float64, p *pose, r0 float64) tally {
	var s tally
	y, z = y[:len(x)], z[:len(x)]
	cu, cv, ch := p.c.dot(p.u), p.c.dot(p.v), p.c.dot(p.w)/p.half
	u0, u1, u2, v0, v1, v2 := p.u[0], p.u[1], p.u[2], p.v[0], p.v[1], p.v[2]
	h0, h1, h2 := p.w[0]/p.half, p.w[1]/p.half, p.w[2]/p.half
	for i := range x {
		a, b, c := x[i], y[i], z[i]
		du := float64(u0*a) + float64(u1*b) + float64(u2*c) - cu
		dv := float64(v0*a) + float64(v1*b) + float64(v2*c) - cv
		h := float64(h0*a) + float64(h1*b) + float64(h2*c) - ch
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
		s.h += h
		s.hh += float64(h * h)
		s.f += f
		s.ff += float64(f * f)
		s.fu += float64(f * u)
		s.fv += float64(f * v)
		s.fhu += float64(f * hu)
		s.fhv += float64(f * hv)
	}
	return s
}

// pullPass renews the sums with f alone, the others being known well enough, and finds the squares of the
// least and the greatest distance.
func (s *tally) pullPass(x, y, z []float64, p *pose, r0 float64) (in, out float64) {
	var sf, sff, sfu, sfv, sfhu, sfhv float64
	in, out = math.Inf(1), -1
	y, z = y[:len(x)], z[:len(x)]
	cu, cv, ch := p.c.dot(p.u), p.c.dot(p.v), p.c.dot(p.w)/p.half
	u0, u1, u2, v0, v1, v2 := p.u[0], p.u[1], p.u[2], p.v[0], p.v[1], p.v[2]
	h0, h1, h2 := p.w[0]/p.half, p.w[1]/p.half, p.w[2]/p.half
	for i := range x {
		a, b, c := x[i], y[i], z[i]
		u := float64(u0*a) + float64(u1*b) + float64(u2*c) - cu
		v := float64(v0*a) + float64(v1*b) + float64(v2*c) - cv
		h := float64(h0*a) + float64(h1*b) + float64(h2*c) - ch
		d2 := float64(u*u) + float64(v*v)
		if d2 < in {
			in = d2
		}
		if d2 > out {
			out = d2
		}
		d := math.Sqrt(d2)
		f := d - r0
		q := f / d
		fu, fv := float64(u*q), float64(v*q)
		sf += f
		sff += float64(f * f)
		sfu += fu
		sfv += fv
		sfhu += float64(h * fu)
		sfhv += float64(h * fv)
	}
	s.f, s.ff, s.fu, s.fv, s.fhu, s.fhv = sf, sff, sfu, sfv, sfhu, sfhv
	return in, out
}

// step solves the normal equations: how the axis and the radius are to move, and the least pivot
// relative to the number of points, which says how firmly the points hold the axis.
func (s *tally) step(n float64) (m move, dr, firmness float64) {
	a := [5][6]float64{ // the radius first: it goes with the mean
		{n, s.u, s.v, s.hu, s.hv, s.f},
		{0, s.uu, s.uv, s.huu, s.huv, s.fu},
		{0, 0, n - s.uu, s.huv, s.h - s.huu, s.fv},
		{0, 0, 0, s.hhuu, s.hhuv, s.fhu},
		{0, 0, 0, 0, s.hh - s.hhuu, s.fhv},
	}
	firmness = 1
	for k := range a {
		pivot := a[k][k]
		if k > 0 {
			firmness = min(firmness, pivot/n)
		}
		for i := k + 1; i < len(a); i++ {
			share := a[k][i] / pivot
			for j := i; j < len(a[k]); j++ {
				a[i][j] -= float64(share * a[k][j])
			}
		}
	}
	var r [5]float64
	for k := len(r) - 1; k >= 0; k-- {
		sum := a[k][5]
		for j := k + 1; j < len(r); j++ {
			sum -= float64(a[k][j] * r[j])
		}
		r[k] = sum / a[k][k]
	}
	return move(r[1:]), r[0], firmness
}

// A fitted cylinder: its radius, the root mean square of the distances from it, and the distances of the
// nearest and the farthest point from its axis.
type fitted struct {
	pose
	r, rms, in, out float64
}

// fitCylinder goes from an axis to the nearest least-squares cylinder, by Gauss and Newton's method
// with its steps halved where the sum of the squares would grow. Once near it keeps the normal matrix,
// which changes no more than the axis moves. It reports false where the points do not hold an axis, or the
// steps find no end.
func fitCylinder(x, y, z []float64, p pose, r float64) (fitted, bool) {
	n := float64(len(x))
	best, m, dr, last := p, move{}, 0.0, math.Inf(1)
	var s tally
	near := false
	in2, out2 := 0.0, 0.0
	for range mostSteps {
		if near {
			in2, out2 = s.pullPass(x, y, z, &p, r)
		} else {
			s = tallyPass(x, y, z, &p, r)
		}
		if math.IsNaN(s.fu) || math.IsNaN(s.fv) { // a point on the axis has no direction
			p, near = p.moved(move{1e-9 * r}), false
			continue
		}
		mean := s.f / n
		squares := max(0, s.ff-float64(s.f*mean))
		if squares > float64(last*(1+1e-9))+float64(n*float64(rounding*r)*float64(rounding*r)) {
			for k := range m {
				m[k] /= 2
			}
			p, near = best.moved(m), false
			continue
		}
		var firmness float64
		m, dr, firmness = s.step(n)
		if !(firmness >= arcFloor) {
			return fitted{pose: p}, false
		}
		best, last = p, squares
		p = p.moved(m)
		r += dr
		// As for the circle: the next step is at most this one times the curvature of the distances
		// over the normal matrix, and what is of second order in this one.
		step, rms, lever := m.size(), math.Sqrt(squares/n), r/p.half
		if step*(step*(1+float64(lever*lever))+rms/firmness) <= float64(settled*r*r) {
			f := fitted{pose: p, r: r, rms: math.Sqrt(max(0, s.ff-s.gain(m, dr)) / n)}
			if !near || step > float64(settled*r) { // the distances were about the axis before
				_, _, in2, out2 = p.around(x, y, z)
			}
			f.in, f.out = math.Sqrt(in2), math.Sqrt(out2)
			return f, true
		}
		near = step <= float64(1e-4*r)
	}
	return fitted{pose: p}, false
}

// gain is by how much a step makes the sum of the squares less.
func (s *tally) gain(m move, dr float64) float64 {
	return float64(s.f*dr) + float64(s.fu*m[0]) + float64(s.fv*m[1]) + float64(s.fhu*m[2]) + float64(s.fhv*m[3])
}

// leaning is the sine of the angle to the depth that an axis may have, 45° with room for rounding.
const leaning = 0.7072

// wild is how far points may lie off their cylinder, root mean square over the radius: what lies farther
// is another body, or the depth does not count along it.
const wild = 0.1

// startCylinder returns a least-squares cylinder of the points from nothing. It starts upright, which
// on a bore is nearly right, and where that leads to an axis that leans, or to none, also along the
// line through the middles of the points by depth, and takes the better.
func startCylinder(x, y, z []float64) (f fitted, ok bool) {
	low, high := extremes(z)
	half := (high - low) / 2
	if !(half > 0) {
		return fitted{}, false
	}
	try := func(w vector, from pose) (fitted, bool) {
		cx, cy, r, ok := algebraic(x, y)
		if from.w[2] != 1 {
			cx, cy, r, ok = algebraicAlong(x, y, z, from)
		}
		if !ok {
			return fitted{}, false
		}
		return fitCylinder(x, y, z, upright(from.c.plus(cx, from.u).plus(cy, from.v), w, half), r)
	}
	f, ok = try(vector{0, 0, 1}, upright(vector{0, 0, (low + high) / 2}, vector{0, 0, 1}, half))
	if ok && f.usual() {
		return f, true
	}
	middle, slope := drift(x, y, z)
	middle = middle.plus((low+high)/2-middle[2], slope)
	if g, ok2 := try(slope, upright(middle, slope, half)); ok2 && !(ok && f.rms <= g.rms) {
		f, ok = g, true
	}
	return f, ok && norm(f.w[0], f.w[1]) < leaning && f.rms <= float64(wild*f.r)
}

// usual reports whether the cylinder is one along the depth that the points lie near to, so that no other
// need be looked for.
func (f *fitted) usual() bool { return norm(f.w[0], f.w[1]) < 0.1 && f.rms < float64(0.01*f.r) }

// leastSquaresCylinder is startCylinder by way of part of the points, where there are many.
func (w *workspace) leastSquaresCylinder(wall Wall) (f fitted, ok bool) {
	low, high := extremes(wall.z)
	half := (high - low) / 2
	if wall.len() > 4*partPoints { // fewer are not worth it
		w.partOfWall(wall)
		if f, ok = startCylinder(w.x, w.y, w.z); ok && f.usual() {
			f.half = half
			if f, ok = fitCylinder(wall.x, wall.y, wall.z, f.pose, f.r); ok && f.usual() {
				return f, true
			}
		}
	}
	return startCylinder(wall.x, wall.y, wall.z)
}

func extremes(z []float64) (low, high float64) {
	low, high = z[0], z[0]
	for _, v := range z {
		low, high = min(low, v), max(high, v)
	}
	return low, high
}

// algebraicAlong returns the algebraic circle of the points seen along an axis, about it.
func algebraicAlong(x, y, z []float64, p pose) (cu, cv, r float64, ok bool) {
	us, vs := make([]float64, len(x)), make([]float64, len(x))
	for i := range x {
		us[i], vs[i], _ = p.seen(x[i], y[i], z[i])
	}
	return algebraic(us, vs)
}

// drift returns the middle of the points, and how it moves with the depth.
func drift(x, y, z []float64) (middle, slope vector) {
	n := float64(len(x))
	for i := range x {
		middle = middle.plus(1/n, vector{x[i], y[i], z[i]})
	}
	var zz float64
	for i := range x {
		dz := z[i] - middle[2]
		zz += float64(dz * dz)
		slope = slope.plus(dz, vector{x[i] - middle[0], y[i] - middle[1], dz})
	}
	for k := range slope {
		slope[k] /= zz
	}
	return middle, slope
}
