// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// inscribed goes to a circle near the centre given that holds no point and cannot be made larger by
// moving it: three points surround the centre of the circle through them; the nearest point takes
// the place of the one of the three without which they still surround it; so the circle only
// shrinks, until it holds none. It reports false where it finds no start, or no end.
func inscribed(x, y []float64, cx, cy float64) (best ring, ok bool) {
	best.gap = math.Inf(1)
	b, ok := surrounding(x, y, cx, cy)
	for range mostExchanges {
		if !ok {
			break
		}
		if cx, cy, ok = circumcentre(x, y, b); !ok {
			break
		}
		r := (distance(x, y, b[0], cx, cy) + distance(x, y, b[1], cx, cy) + distance(x, y, b[2], cx, cy)) / 3
		near, _, in2, out2 := span(x, y, cx, cy)
		least := math.Sqrt(in2)
		if gap := max(0, r-least); gap <= float64(alike*r) && gap < best.gap {
			z := ring{x: cx, y: cy, in: least, out: math.Sqrt(out2), gap: gap, n: 3}
			z.contacts = [mostContacts]Contact{{Index: b[0]}, {Index: b[1]}, {Index: b[2]}}
			if z.weighInscribed(x, y) {
				best = z
			}
		}
		if r-least <= float64(8*rounding*r) {
			break
		}
		at, most := 0, math.Inf(-1)
		for k := range b {
			p, q := b[(k+1)%3], b[(k+2)%3]
			if inside := between(cx-x[near], cy-y[near], x[p]-cx, y[p]-cy, x[q]-cx, y[q]-cy); inside > most {
				at, most = k, inside
			}
		}
		b[at], ok = near, most >= -faint
	}
	return best, best.n > 0
}

// faint is a weight so near zero that its sign is rounding: it moves the point of balance of a bore
// by less than a nanometre, and the radius there by less than a rounding error.
const faint = 1e-9

// noise is a weight that may well be zero.
const noise = 1e-13

// between returns how deep e lies in the cone of p and q, relative to them: the smaller of its two
// parts along p and q, negative outside; NaN where both are on one line.
func between(ex, ey, px, py, qx, qy float64) float64 {
	det := cross(px, py, qx, qy)
	return min(cross(ex, ey, qx, qy)/det, cross(px, py, ex, ey)/det)
}

// surrounding returns three points around the centre to start from: the nearest, the nearest of
// those within 45° of straight opposite, and the nearest opposite to all between the two. Where
// there are none such, the two that come nearest to straight opposite, on either side.
func surrounding(x, y []float64, cx, cy float64) (b [3]int, ok bool) {
	var in float64
	b[0], _, in, _ = span(x, y, cx, cy)
	if !(in > 0) {
		return b, false
	}
	ax, ay := x[b[0]]-cx, y[b[0]]-cy
	y = y[:len(x)]
	var least float64
	b[1], least = opposite(x, y, b[0], cx, cy)
	if !math.IsInf(least, 1) {
		ex, ey := x[b[1]]-cx, y[b[1]]-cy
		least = math.Inf(1)
		for i := range x {
			dx, dy := x[i]-cx, y[i]-cy
			if s := dot(dx, dy, dx, dy); s < least && between(-dx, -dy, ax, ay, ex, ey) >= 0 {
				least, b[2] = s, i
			}
		}
		if !math.IsInf(least, 1) {
			return b, true
		}
	}
	var lx, ly, rx, ry float64
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		switch side := cross(ax, ay, dx, dy); {
		case side > 0 && (lx == 0 && ly == 0 || cross(lx, ly, dx, dy) > 0):
			lx, ly, b[1] = dx, dy, i
		case side < 0 && (rx == 0 && ry == 0 || cross(rx, ry, dx, dy) < 0):
			rx, ry, b[2] = dx, dy, i
		}
	}
	return b, between(-ax, -ay, lx, ly, rx, ry) >= 0
}

// opposite returns the nearest of the points within 45° of straight opposite to p as seen from a
// centre, and the square of its distance, infinite where there is none.
func opposite(x, y []float64, p int, cx, cy float64) (o int, least float64) {
	ax, ay := x[p]-cx, y[p]-cy
	least = math.Inf(1)
	y = y[:len(x)]
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		if s := dot(dx, dy, dx, dy); s < least && -dot(dx, dy, ax, ay) >= math.Abs(cross(dx, dy, ax, ay)) {
			least, o = s, i
		}
	}
	return o, least
}

// circumcentre returns the centre of the circle through three points.
func circumcentre(x, y []float64, b [3]int) (cx, cy float64, ok bool) {
	ax, ay := x[b[1]]-x[b[0]], y[b[1]]-y[b[0]]
	bx, by := x[b[2]]-x[b[0]], y[b[2]]-y[b[0]]
	aa, bb, d := dot(ax, ay, ax, ay), dot(bx, by, bx, by), 2*cross(ax, ay, bx, by)
	cx, cy = x[b[0]]+(float64(by*aa)-float64(ay*bb))/d, y[b[0]]+(float64(ax*bb)-float64(bx*aa))/d
	return cx, cy, finite(cx) && finite(cy)
}

// weighInscribed finds the weights with which the directions of three contacts balance, and reports
// whether none is negative: whether they surround the centre.
func (z *ring) weighInscribed(x, y []float64) bool {
	var u, v [3]float64
	for k := range u {
		u[k], v[k] = direction(x, y, z.contacts[k].Index, z.x, z.y)
	}
	var w [3]float64
	var sum float64
	for k := range w {
		p, q := (k+1)%3, (k+2)%3
		w[k] = cross(u[p], v[p], u[q], v[q])
		sum += w[k]
	}
	var total float64
	idle := -1
	for k := range w {
		w[k] /= sum // whichever way round the contacts go
		if !(w[k] >= -faint) {
			return false
		}
		if w[k] <= noise {
			idle = k
		}
		w[k] = max(0, w[k])
		total += w[k]
	}
	for k := range w {
		z.contacts[k].Weight = w[k] / total
	}
	return idle < 0 || z.locked(x, y, idle)
}

// locked reports whether a circle on two contacts opposite each other is held from both sides of
// the line through them, and not by the third contact alone, from which it would slip away. What it
// could still grow until it is held goes to its gap: moved by t, the circle is larger by t²/2r.
func (z *ring) locked(x, y []float64, third int) bool {
	a, b := z.contacts[(third+1)%3].Index, z.contacts[(third+2)%3].Index
	ex, ey := x[b]-x[a], y[b]-y[a]
	r := norm(ex, ey) / 2
	held := cross(ex, ey, x[z.contacts[third].Index]-z.x, y[z.contacts[third].Index]-z.y)
	if held < 0 {
		ex, ey = -ex, -ey
	}
	play := math.Inf(1)
	for i := range x {
		// Ahead is how squarely the point stands in the way.
		if ahead := -cross(ex, ey, x[i]-z.x, y[i]-z.y) / (2 * r * r); ahead > 1e-6 {
			play = min(play, max(0, distance(x, y, i, z.x, z.y)-r)/ahead)
		}
	}
	grows := float64(play / (2 * r) * play)
	z.gap += grows
	return grows <= float64(alike*r)
}

// touching returns the largest circle that touches three of the points nearest to a centre and
// holds none, for where the centre is all but right and the exchange finds no way.
func touching(x, y []float64, cx, cy float64) (best ring, ok bool) {
	const some = 8
	var near [some]int
	var n int
	square := func(i int) float64 { dx, dy := x[i]-cx, y[i]-cy; return dot(dx, dy, dx, dy) }
	for range some {
		p := -1
		for i := range x {
			if (p < 0 || square(i) < square(p)) && !same(x, y, near[:n], i) {
				p = i
			}
		}
		if p < 0 {
			break
		}
		near[n] = p
		n++
	}
	for i := range n {
		for j := range i {
			for k := range j {
				b := [3]int{near[i], near[j], near[k]}
				z := ring{n: 3, contacts: [mostContacts]Contact{{Index: b[0]}, {Index: b[1]}, {Index: b[2]}}}
				var solved bool
				if z.x, z.y, solved = circumcentre(x, y, b); !solved {
					continue
				}
				r := max(distance(x, y, b[0], z.x, z.y), distance(x, y, b[1], z.x, z.y), distance(x, y, b[2], z.x, z.y))
				if r <= best.in {
					continue
				}
				_, _, in2, out2 := span(x, y, z.x, z.y)
				z.in, z.out = math.Sqrt(in2), math.Sqrt(out2)
				if z.gap = r - z.in; z.gap <= float64(alike*r) && z.weighInscribed(x, y) {
					best, ok = z, true
				}
			}
		}
	}
	return best, ok
}

// same reports whether a point lies where one of the list does.
func same(x, y []float64, list []int, i int) bool {
	for _, l := range list {
		if x[l] == x[i] && y[l] == y[i] {
			return true
		}
	}
	return false
}
