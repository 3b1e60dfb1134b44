// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A ring is what a solver found: two circles about one centre, all points on or between them, and
// the points that carry it, with the weights that balance their directions from the centre.
type ring struct {
	x, y, in, out float64
	gap           float64 // how much better one could be that only the contacts bound: rounding
	contacts      [mostContacts]Contact
	n             int
}

// mostExchanges bounds the exchange of contacts; a dozen do on any trace seen.
const mostExchanges = 200

// direction returns the unit vector from the centre to a point.
func direction(x, y []float64, p int, cx, cy float64) (u, v float64) {
	dx, dy := x[p]-cx, y[p]-cy
	d := norm(dx, dy)
	return dx / d, dy / d
}

// zone goes to a minimum zone near the centre given, by the exchange that Remez used for
// polynomials: two outer and two inner contacts, alternately placed, have one centre equally far
// from both of a pair; the point farthest outside their zone takes the place of the contact of its
// kind on its side of the line through the other two; so the zone of the four only grows, until it
// holds all. It reports false where it finds no start, or no end.
func zone(x, y []float64, cx, cy float64) (z ring, ok bool) {
	b, ok := alternating(x, y, cx, cy)
	if !ok {
		return ring{}, false
	}
	return b.exchange(x, y)
}

func (b quad) exchange(x, y []float64) (best ring, ok bool) {
	best.gap = math.Inf(1)
	for step := range mostExchanges {
		cx, cy, ok := bisected(x, y, b)
		if !ok {
			break
		}
		out := (distance(x, y, b[0], cx, cy) + distance(x, y, b[1], cx, cy)) / 2
		in := (distance(x, y, b[2], cx, cy) + distance(x, y, b[3], cx, cy)) / 2
		near, far, in2, out2 := span(x, y, cx, cy)
		least, most := math.Sqrt(in2), math.Sqrt(out2)
		outside, inside := most-out, in-least
		floor := float64(8 * rounding * most)
		if gap := max(0, outside) + max(0, inside); gap <= float64(alike*most) && gap < best.gap {
			z := ring{x: cx, y: cy, in: least, out: most, gap: gap, n: 4}
			z.contacts = [mostContacts]Contact{{Index: b[0], Outer: true}, {Index: b[1], Outer: true}, {Index: b[2]}, {Index: b[3]}}
			if z.weighZone(x, y) {
				best = z
			}
		}
		if max(outside, inside) <= floor {
			break
		}
		// Both at once is quicker, and nearly always right; one at a time never makes the zone
		// smaller.
		both := step < mostExchanges/4
		if outside > floor && (both || outside >= inside) {
			b.replace(x, y, 0, 2, far)
		}
		if inside > floor && (both || outside < inside) {
			b.replace(x, y, 2, 0, near)
		}
	}
	return best, best.n > 0
}

// A quad is two outer contacts and two inner ones.
type quad [4]int

// replace puts p in the place of contact at or at+1, that which lies on its side of the line
// through the contacts line and line+1.
func (b *quad) replace(x, y []float64, at, line, p int) {
	ox, oy := x[b[line]], y[b[line]]
	ex, ey := x[b[line+1]]-ox, y[b[line+1]]-oy
	if (cross(ex, ey, x[p]-ox, y[p]-oy) < 0) == (cross(ex, ey, x[b[at]]-ox, y[b[at]]-oy) < 0) {
		b[at] = p
		return
	}
	b[at+1] = p
}

// bisected returns the centre equally far from both of each pair.
func bisected(x, y []float64, b quad) (cx, cy float64, ok bool) {
	ox, oy := x[b[1]]-x[b[0]], y[b[1]]-y[b[0]]
	ix, iy := x[b[3]]-x[b[2]], y[b[3]]-y[b[2]]
	o := dot(ox, oy, x[b[1]]+x[b[0]], y[b[1]]+y[b[0]]) / 2
	i := dot(ix, iy, x[b[3]]+x[b[2]], y[b[3]]+y[b[2]]) / 2
	det := cross(ox, oy, ix, iy)
	cx, cy = (float64(o*iy)-float64(i*oy))/det, (float64(ox*i)-float64(ix*o))/det
	return cx, cy, finite(cx) && finite(cy)
}

func finite(x float64) bool { return math.Abs(x) <= math.MaxFloat64 }

func distance(x, y []float64, p int, cx, cy float64) float64 { return norm(x[p]-cx, y[p]-cy) }

// alternating returns four contacts to start from: the farthest point, the farthest on the other
// side, and on either side of the line through both the nearest.
func alternating(x, y []float64, cx, cy float64) (b quad, ok bool) {
	_, far, _, _ := span(x, y, cx, cy)
	b[0] = far
	hx, hy := x[far]-cx, y[far]-cy
	most := -1.0
	y = y[:len(x)]
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		if dot(dx, dy, hx, hy) < 0 {
			if s := dot(dx, dy, dx, dy); s > most {
				most, b[1] = s, i
			}
		}
	}
	if most < 0 { // an arc: the farthest from the first
		if _, b[1], _, most = span(x, y, x[far], y[far]); most <= 0 {
			return b, false
		}
	}
	ex, ey := x[b[1]]-x[far], y[b[1]]-y[far]
	left, right := math.Inf(1), math.Inf(1)
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		s := dot(dx, dy, dx, dy)
		side := cross(ex, ey, x[i]-x[far], y[i]-y[far])
		if side > 0 && s < left {
			left, b[2] = s, i
		}
		if side < 0 && s < right {
			right, b[3] = s, i
		}
	}
	return b, left < math.Inf(1) && right < math.Inf(1)
}

// weighZone finds the weights with which the directions of the outer contacts balance those of the
// inner ones, and reports whether none is negative: whether the contacts alternate.
func (z *ring) weighZone(x, y []float64) bool {
	var u, v [4]float64
	for k := range u {
		u[k], v[k] = direction(x, y, z.contacts[k].Index, z.x, z.y)
	}
	// w·(1) + (1 − w)·(2) = s·(3) + (1 − s)·(4)
	ax, ay, bx, by := u[0]-u[1], v[0]-v[1], u[2]-u[3], v[2]-v[3]
	cx, cy := u[3]-u[1], v[3]-v[1]
	det := cross(ax, ay, bx, by)
	w, s := cross(cx, cy, bx, by)/det, cross(cx, cy, ax, ay)/det
	if !(min(w, s, 1-w, 1-s) >= -faint) {
		return false
	}
	w, s = min(max(w, 0), 1), min(max(s, 0), 1)
	for k, weight := range [4]float64{w, 1 - w, s, 1 - s} {
		z.contacts[k].Weight = weight
	}
	return true
}

// growth returns γ: at a small distance t from the centre the zone is wider by γ·t at least, or the
// inscribed circle smaller; it is how deep zero lies inside the figure that the directions span.
func (z *ring) growth(x, y []float64) float64 {
	var u, v [4]float64
	for k := range z.n {
		u[k], v[k] = direction(x, y, z.contacts[k].Index, z.x, z.y)
	}
	// off returns the distance of zero from the line through (px, py) along (ex, ey).
	off := func(px, py, ex, ey float64) float64 { return math.Abs(cross(px, py, ex, ey)) / norm(ex, ey) }
	if z.n == 3 {
		return min(off(u[0], v[0], u[1]-u[0], v[1]-v[0]), off(u[1], v[1], u[2]-u[1], v[2]-v[1]), off(u[2], v[2], u[0]-u[2], v[0]-v[2]))
	}
	ax, ay, bx, by := u[0]-u[1], v[0]-v[1], u[2]-u[3], v[2]-v[3]
	return min(off(u[2]-u[0], v[2]-v[0], ax, ay), off(u[3]-u[0], v[3]-v[0], ax, ay),
		off(u[2]-u[0], v[2]-v[0], bx, by), off(u[2]-u[1], v[2]-v[1], bx, by))
}

// active returns four contacts to start from where a centre is nearly right: of the farthest and
// the nearest points, the alternating four about whose centre the zone of all points is narrowest.
func active(x, y []float64, cx, cy float64) (best quad, ok bool) {
	const some = 6
	var far, near [some]int
	n := 0
	square := func(i int) float64 { dx, dy := x[i]-cx, y[i]-cy; return dot(dx, dy, dx, dy) }
	for ; n < some; n++ {
		f, c := -1, -1
		for i := range x {
			s := square(i)
			if (f < 0 || s > square(f)) && !same(x, y, far[:n], i) {
				f = i
			}
			if (c < 0 || s < square(c)) && !same(x, y, near[:n], i) {
				c = i
			}
		}
		if f < 0 || c < 0 {
			break
		}
		far[n], near[n] = f, c
	}
	narrowest := math.Inf(1)
	for o := range n {
		for p := range o {
			for i := range n {
				for j := range i {
					b := quad{far[o], far[p], near[i], near[j]}
					z := ring{n: 4, contacts: [mostContacts]Contact{{Index: b[0]}, {Index: b[1]}, {Index: b[2]}, {Index: b[3]}}}
					var solved bool
					if z.x, z.y, solved = bisected(x, y, b); !solved || !z.weighZone(x, y) {
						continue
					}
					_, _, in2, out2 := span(x, y, z.x, z.y)
					if w := math.Sqrt(out2) - math.Sqrt(in2); w < narrowest {
						narrowest, best, ok = w, b, true
					}
				}
			}
		}
	}
	return best, ok
}
