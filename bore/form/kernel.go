// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// All kernels work in millimetres from the origin of the trace, on separate slices of x and y of
// one length. Products are converted, so that no architecture fuses them.

func dot(ax, ay, bx, by float64) float64   { return float64(ax*bx) + float64(ay*by) }
func cross(ax, ay, bx, by float64) float64 { return float64(ax*by) - float64(ay*bx) }
func norm(x, y float64) float64            { return math.Sqrt(float64(x*x) + float64(y*y)) }

// rounding is the relative error that a distance may have: what differs by less is equal.
const rounding = 4e-16

// span returns the points nearest to and farthest from a centre, of equals the first, with the
// squares of their distances. It is one pass, bound by its multiplications and additions.
func span(x, y []float64, cx, cy float64) (near, far int, in, out float64) {
	in = math.Inf(1)
	out = -1
	y = y[:len(x)]
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		s := float64(dx*dx) + float64(dy*dy)
		if s < in {
			in, near = s, i
		}
		if s > out {
			out, far = s, i
		}
	}
	return near, far, in, out
}

// algebraic returns the circle that makes Σ (d² − r²)² least, a linear problem and a good start for
// all others: it differs from the least-squares circle by the square of the form error over the
// radius. One pass, bound by its multiplications. It reports false where the points are on a line.
func algebraic(x, y []float64) (cx, cy, r float64, ok bool) {
	var sx, sy, sz, sxx, sxy, syy, sxz, syz float64
	y = y[:len(x)]
	for i := range x {
		a, b := x[i], y[i]
		aa, bb := float64(a*a), float64(b*b)
		z := aa + bb
		sx += a
		sy += b
		sz += z
		sxx += aa
		syy += bb
		sxy += float64(a * b)
		sxz += float64(a * z)
		syz += float64(b * z)
	}
	m := float64(len(x))
	sx, sy, sz = sx/m, sy/m, sz/m
	sxx, sxy, syy = sxx/m-float64(sx*sx), sxy/m-float64(sx*sy), syy/m-float64(sy*sy)
	sxz, syz = (sxz/m-float64(sx*sz))/2, (syz/m-float64(sy*sz))/2
	det := float64(sxx*syy) - float64(sxy*sxy)
	trace := sxx + syy
	if !(det > 1e-13*float64(trace*trace)) {
		return 0, 0, 0, false
	}
	cx, cy = (float64(syy*sxz)-float64(sxy*syz))/det, (float64(sxx*syz)-float64(sxy*sxz))/det
	return cx, cy, math.Sqrt(max(0, sz-2*dot(cx, cy, sx, sy)+dot(cx, cy, cx, cy))), true
}
