// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// sums are those of one pass of Gauss and Newton's method about a centre: u and v are the direction
// of a point from it, f its distance less r0.
type sums struct{ u, v, uu, uv, f, ff, uf, vf float64 }

// normalPass is bound by one square root and one division a point. Two sums more would no longer
// fit the registers and cost it half as much again.
func normalPass(x, y []float64, cx, cy, r0 float64) sums {
	var su, sv, suu, suv, sf, sff, suf, svf float64
	y = y[:len(x)]
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		d := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		q := 1 / d
		u, v, f := float64(dx*q), float64(dy*q), d-r0
		su += u
		sv += v
		suu += float64(u * u)
		suv += float64(u * v)
		sf += f
		sff += float64(f * f)
		suf += float64(u * f)
		svf += float64(v * f)
	}
	return sums{su, sv, suu, suv, sf, sff, suf, svf}
}

const (
	mostSteps = 200
	// arcFloor is the least eigenvalue of the normal matrix, relative to the number of points, that
	// still fixes a centre: below it the centre is 1000/√n times as doubtful as a point. Of many
	// points evenly on an arc of φ rad the eigenvalue is φ⁴/720 of their number: 9.4°.
	arcFloor = 1e-6
	// settled is how far, relative to the radius, a centre may still be from where the steps lead:
	// a thirtieth of a picometre for a bore of 70 mm.
	settled = 1e-12
)

// leastSquares returns the circle from which the sum of the squares of the distances is least, and
// the root mean square of the distances; it reports false where the points are on a line, or on too
// short an arc, or the steps find no end. It starts from the algebraic circle, so that on a bore one
// step is enough, and goes by Gauss and Newton's method with its steps halved where the sum would
// grow.
func leastSquares(x, y []float64) (cx, cy, r, rms float64, ok bool) {
	n := float64(len(x))
	if cx, cy, r, ok = algebraic(x, y); !ok {
		return 0, 0, 0, 0, false
	}
	lastX, lastY, last := cx, cy, math.Inf(1)
	for range mostSteps {
		s := normalPass(x, y, cx, cy, r)
		if math.IsNaN(s.uf) || math.IsNaN(s.vf) { // a point at the centre has no direction
			cx += float64(1e-9 * r)
			continue
		}
		mean := s.f / n
		squares := max(0, s.ff-float64(s.f*mean))
		if squares > float64(last*(1+1e-9))+float64(n*float64(rounding*r)*float64(rounding*r)) {
			cx, cy = (cx+lastX)/2, (cy+lastY)/2
			continue
		}
		r += mean
		auu, auv, avv := s.uu-float64(s.u*s.u)/n, s.uv-float64(s.u*s.v)/n, n-s.uu-float64(s.v*s.v)/n
		gu, gv := s.uf-float64(s.u*mean), s.vf-float64(s.v*mean)
		firmness := least(auu, auv, avv)
		if firmness < float64(arcFloor*n) {
			return 0, 0, 0, 0, false
		}
		det := float64(auu*avv) - float64(auv*auv)
		dx, dy := (float64(avv*gu)-float64(auv*gv))/det, (float64(auu*gv)-float64(auv*gu))/det
		lastX, lastY, last = cx, cy, squares
		cx, cy = cx+dx, cy+dy
		r -= dot(s.u, s.v, dx, dy) / n
		// The next step is at most this one times the curvature of the distances over the normal
		// matrix, and what is of second order in this one.
		step, rms := norm(dx, dy), math.Sqrt(squares/n)
		if step*(step+float64(rms*n)/firmness) <= float64(settled*r*r) {
			return cx, cy, r, rms, true
		}
	}
	return 0, 0, 0, 0, false
}

// least returns the smaller eigenvalue of the symmetric matrix (a b; b c).
func least(a, b, c float64) float64 { return (a+c)/2 - norm((a-c)/2, b) }
