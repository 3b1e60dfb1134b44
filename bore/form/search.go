// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"math"
	"slices"
)

// A box is a square of centres under search.
type box struct{ x, y, half float64 }

const (
	mostBoxes = 1 << 16
	mostWork  = 1 << 25 // points looked at, once or a few times, for that
	// alike is how much better, relative to the radius, another centre may be and still count as no
	// better: a thirtieth of a picometre for a bore of 70 mm.
	alike = 1e-12
	// straight is how narrow a zone has to be, relative to a straight strip, to speak of a circle.
	straight = 0.5
	// small is how large an inscribed circle has to be, relative to the extent of the points:
	// smaller ones lie in gaps between neighbours. One proved by its contacts alone is larger.
	small = 0.1
	// vague is how much larger another inscribed circle may be, relative to the radius, where the one
	// found is still an answer.
	vague = 0.1
)

// reach returns how far around its centre the contacts alone prove that nothing is better: at a
// distance t they make the zone wider by γ·t − t²/(2(r − t)) at least, r the inner radius, and the
// square of the inscribed radius smaller by 2rγ·t − t².
func (z *ring) reach(x, y []float64) float64 {
	g := z.growth(x, y)
	if z.n == 3 {
		return 2 * g * z.in
	}
	return 2 * g * z.in / (1 + 2*g)
}

// beyond returns the distances between which no centre is better, whatever the form: with no gap
// between neighbouring points as seen from the centre wider than 2·acos(c), there is one nearly
// ahead of a centre that moves away, which comes nearer, and one nearly behind, which gets farther.
func (z *ring) beyond(c float64) (from, to float64) {
	r, R := z.in, z.out
	if z.n == 3 {
		root := float64(R*c)*float64(R*c) - float64((R-r)*(R+r))
		if !(c > 0 && root >= 0) {
			return math.Inf(1), 0
		}
		root = math.Sqrt(root)
		return max(0, float64((R-r)*(R+r))/(float64(R*c)+root)), min(float64(R*c)+root, 2*r*c)
	}
	w, s := R-r, R+r
	if !(float64(c*s) > w && float64(2*r*c) > w) {
		return math.Inf(1), 0
	}
	return max(w*s/(float64(c*s)-w), w*r/(float64(2*r*c)-w)), math.Inf(1)
}

// prove returns the best circle there is, from a local one or from none, how much better another
// might still be, and whether it had to search the plane for it.
func (w *workspace) prove(kind Reference, x, y []float64, z ring, ok bool) (best ring, bound float64, searched bool) {
	within := math.Inf(1)
	if ok {
		// A circle that touches points all round has its centre among them.
		if from, to := z.beyond(closed(x, y, z.x, z.y)); kind == MZCI || to >= z.out {
			within = from
		}
		if within <= z.reach(x, y) {
			return z, z.gap, false
		}
	}
	if kind == MZCI {
		return w.searchZone(x, y, z, ok, within)
	}
	return w.searchInscribed(x, y, z, ok, within)
}

// few takes points that stand for all: those of a short trace, or some of a long one with the
// contacts.
func (w *workspace) few(x, y []float64, z *ring) {
	if len(x) <= fewPoints {
		w.x, w.y = append(w.x[:0], x...), append(w.y[:0], y...)
		return
	}
	w.part(x, y)
	for _, c := range z.contacts[:z.n] {
		w.x, w.y = append(w.x, x[c.Index]), append(w.y, y[c.Index])
	}
}

// A zoneSearch is the state of a search of the plane for a minimum zone.
type zoneSearch struct {
	x, y  []float64 // all points; those of the workspace stand for them
	best  ring      // the narrowest zone so far, or no more than its width
	reach float64   // how far round it its contacts exclude all else
	floor float64   // the least width that the boxes given up may hold
	work  int
}

func (s *zoneSearch) width() float64 { return s.best.out - s.best.in }

// searchZone excludes the rest of the plane by halving boxes of centres, the large ones first: a zone of
// some of the points is never wider than that of all, and over a box it changes by no more than the
// directions allow.
func (w *workspace) searchZone(x, y []float64, z ring, ok bool, within float64) (best ring, bound float64, searched bool) {
	if !ok {
		cx, cy, _, found := algebraic(x, y)
		if !found {
			return z, math.Inf(1), true
		}
		_, _, in2, out2 := span(x, y, cx, cy)
		z = ring{x: cx, y: cy, in: math.Sqrt(in2), out: math.Sqrt(out2)}
		z.gap = z.out - z.in
		if z.gap <= float64(alike*z.out) { // all points on one circle: nothing is narrower than nothing
			return z, z.gap, false
		}
	}
	w.few(x, y, &z)
	s := zoneSearch{x: x, y: y, best: z, floor: math.Inf(1)}
	from := box{z.x, z.y, within}
	if math.IsInf(within, 1) {
		from = w.plane(&s)
	}
	if s.best.n > 0 {
		s.reach = s.best.reach(x, y)
	}
	w.boxes = append(w.boxes[:0], from)
	for count := 0; count < len(w.boxes); count++ {
		b := w.boxes[count]
		least := w.narrowest(&s, b)
		switch {
		case least >= s.width():
		case count >= mostBoxes || s.work >= mostWork:
			s.floor = min(s.floor, least)
		default:
			w.split(b)
		}
	}
	z = s.best
	if z.in == 0 {
		return ring{}, math.Inf(1), true
	}
	if z.n == 0 { // as thin as rounding, so that no four points carry it for certain
		z.gap = float64(alike * z.out)
	}
	return z, min(z.gap+max(0, s.width()-s.floor), s.width()), true
}

// plane returns the box outside of which no centre has a narrower zone. Seen from a centre at a distance
// D, farther than the points, which lie within ρ of their middle, a circle through them departs from a
// straight line by at most ρ²/2(D − ρ). The zone is a straight strip but for that, so that it is narrower
// than w only if D < ρ + ρ²/2(strip − w). A zone not half as narrow as a strip is none to begin with.
func (w *workspace) plane(s *zoneSearch) box {
	strip := stripWidth(w.x, w.y)
	if s.width() > float64(straight*strip) {
		s.best = ring{out: float64(straight * strip)}
	}
	mx, my := (slices.Min(w.x)+slices.Max(w.x))/2, (slices.Min(w.y)+slices.Max(w.y))/2
	_, _, _, rho2 := span(w.x, w.y, mx, my)
	return box{mx, my, math.Sqrt(rho2) + rho2/(2*(strip-s.width()))}
}

// narrowest returns a width that no zone about a centre in the box goes below, infinity where that is no
// less than the best; it goes to the zone next to the middle of the box where that is better.
func (w *workspace) narrowest(s *zoneSearch, b box) float64 {
	h := float64(b.half * math.Sqrt2)
	if norm(b.x-s.best.x, b.y-s.best.y)+h <= s.reach {
		return math.Inf(1)
	}
	near, far, in2, out2 := span(w.x, w.y, b.x, b.y)
	in, out := math.Sqrt(in2), math.Sqrt(out2)
	least := out - in - float64(w.steepest(b, h, near, far, in, out)*h)
	enough := s.width() - float64(alike*out)
	if least >= enough {
		return math.Inf(1)
	}
	s.work += len(w.x)
	if out-in < s.width() { // not excluded by these points even at the middle: ask all
		s.work += len(s.x)
		_, _, in2, out2 = span(s.x, s.y, b.x, b.y)
		at := ring{x: b.x, y: b.y, in: math.Sqrt(in2), out: math.Sqrt(out2)}
		if at.out-at.in < s.width() {
			s.best, s.reach = zoneNear(s.x, s.y, at)
		}
		// No distance changes by more than the centre moves.
		least = max(least, at.out-at.in-2*h)
		if least >= s.width()-float64(alike*out) {
			return math.Inf(1)
		}
	}
	return least
}

// steepest bounds by how much the distance of the farthest point less that of the nearest falls for each
// length that the centre moves, anywhere within h of the middle of a box. It falls by the difference of
// the directions of the two points, at most 2; and a direction turns by no more than h over the distance
// that is left.
func (w *workspace) steepest(b box, h float64, near, far int, in, out float64) float64 {
	if in <= h {
		return 2
	}
	nu, nv := direction(w.x, w.y, near, b.x, b.y)
	fu, fv := direction(w.x, w.y, far, b.x, b.y)
	return min(2, norm(nu-fu, nv-fv)+h/(in-h)+h/(out-h))
}

// zoneNear returns the minimum zone next to a zone that nothing carries yet, and how far its
// contacts reach; or that zone as it is, if none narrower is found from there.
func zoneNear(x, y []float64, at ring) (z ring, reach float64) {
	most := at.out - at.in + float64(alike*at.out)
	z, ok := zone(x, y, at.x, at.y)
	if !ok || z.out-z.in > most {
		var b quad
		if b, ok = active(x, y, at.x, at.y); ok {
			z, ok = b.exchange(x, y)
		}
	}
	if !ok || z.out-z.in > most {
		return at, 0
	}
	return z, z.reach(x, y)
}

// split puts the four quarters of a box at the end of the queue.
func (w *workspace) split(b box) {
	q := b.half / 2
	w.boxes = append(w.boxes, box{b.x - q, b.y - q, q}, box{b.x - q, b.y + q, q}, box{b.x + q, b.y - q, q}, box{b.x + q, b.y + q, q})
}

// searchInscribed excludes the rest of the plane likewise: an inscribed circle is never larger than
// one that only some of the points bound, and over a box its radius changes by no more than the
// centre moves.
func (w *workspace) searchInscribed(x, y []float64, z ring, ok bool, within float64) (best ring, bound float64, searched bool) {
	w.few(x, y, &z)
	lx, ly, mx, my := slices.Min(x), slices.Min(y), slices.Max(x), slices.Max(y)
	size := max(mx-lx, my-ly)
	reach := 0.0
	if ok = ok && z.in >= float64(small*size); ok {
		reach = z.reach(x, y)
	} else {
		z.in = small * size
	}
	w.boxes = append(w.boxes[:0], box{(lx + mx) / 2, (ly + my) / 2, size / 2})
	if within < size/2 {
		w.boxes[0] = box{z.x, z.y, within}
	}
	ceiling, work := 0.0, 0
	for count := 0; count < len(w.boxes); count++ { // the large ones first
		b := w.boxes[count]
		h := float64(b.half * math.Sqrt2)
		if norm(b.x-z.x, b.y-z.y)+h <= reach {
			continue
		}
		enough := z.in + float64(alike*size)
		if _, _, in2, _ := span(w.x, w.y, b.x, b.y); math.Sqrt(in2)+h <= enough {
			continue
		}
		work += len(w.x) + len(x)
		near, _, in2, _ := span(x, y, b.x, b.y)
		r := math.Sqrt(in2)
		most := r + h
		// Two points opposite each other bound it better: where one comes nearer the other gets
		// farther.
		if o, s := opposite(x, y, near, b.x, b.y); r > 2*h && !math.IsInf(s, 1) {
			nu, nv := direction(x, y, near, b.x, b.y)
			ou, ov := direction(x, y, o, b.x, b.y)
			most = min(most, (r+math.Sqrt(s))/2+float64((norm(nu+ou, nv+ov)/2+h/(r-h))*h))
		}
		if most <= enough || free(x, y, b, r+2*h, h) {
			continue
		}
		if r > z.in {
			next, found := inscribed(x, y, b.x, b.y)
			if (!found || next.in <= z.in) && h < r/64 {
				next, found = touching(x, y, b.x, b.y)
			}
			if found && next.in > z.in {
				z, ok = next, true
				reach = z.reach(x, y)
			}
		}
		// A box as small as rounding, in which nothing was found, has a circle that slips out.
		if most <= z.in+float64(alike*size) || h <= float64(alike*size) {
			continue
		}
		if count >= mostBoxes || work >= mostWork {
			ceiling = max(ceiling, most)
			continue
		}
		w.split(b)
	}
	if !ok {
		return ring{}, math.Inf(1), true
	}
	// Points that a circle touches on all sides lie in no circle smaller than it, so it is no
	// larger than the outer one.
	return z, min(z.gap+max(0, ceiling-z.in), z.out-z.in), true
}

// free reports whether no circle about a centre in the box can touch points on all sides: fewer
// than three places are within reach of one, or all lie to one side of every centre.
func free(x, y []float64, b box, within, h float64) bool {
	within *= within
	var ux, uy float64
	var met [3]int
	n := 0
	for i := range x {
		dx, dy := x[i]-b.x, y[i]-b.y
		s := dot(dx, dy, dx, dy)
		if s > within {
			continue
		}
		if n < len(met) && !same(x, y, met[:n], i) {
			met[n] = i
			n++
		}
		if d := math.Sqrt(s); d > 0 {
			ux, uy = ux+dx/d, uy+dy/d
		}
	}
	if n < len(met) {
		return true
	}
	d := norm(ux, uy)
	ux, uy = ux/d, uy/d
	for i := range x {
		dx, dy := x[i]-b.x, y[i]-b.y
		if dot(dx, dy, dx, dy) <= within && !(dot(dx, dy, ux, uy) > h) {
			return false
		}
	}
	return true
}

// closed returns c where no gap between neighbouring points, as seen from a centre, is wider than
// 2·acos(c). It looks at eight points first, which on a trace taken round the wall are enough.
func closed(x, y []float64, cx, cy float64) float64 {
	const parts = 8
	n := len(x)
	if n >= parts {
		turn, ok := 0.0, true
		last := (parts - 1) * n / parts
		px, py := x[last]-cx, y[last]-cy
		for k := range parts {
			qx, qy := x[k*n/parts]-cx, y[k*n/parts]-cy
			side := cross(px, py, qx, qy)
			if k == 0 {
				turn = side
			}
			ok = ok && float64(side*turn) > 0 && dot(px, py, qx, qy) > 0
			px, py = qx, qy
		}
		if ok { // each less than a quarter turn further
			return math.Sqrt2 / 2
		}
	}
	// The directions fall into narrow sectors; the widest run of empty ones, with those at its
	// ends, is at least the widest gap.
	const sectors = 512
	var taken [sectors]bool
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		sum := math.Abs(dx) + math.Abs(dy)
		if !(sum > 0) {
			continue
		}
		at := dy / sum // of a diamond around the centre, a quarter at a time
		switch {
		case dx < 0:
			at = 2 - at
		case at < 0:
			at += 4
		}
		taken[min(int(at*(sectors/4)), sectors-1)] = true
	}
	angle := func(sector int) float64 {
		quarter, part := sector/(sectors/4), float64(sector%(sectors/4))/(sectors/4)
		return float64(math.Pi/2*float64(quarter)) + math.Atan2(part, 1-part)
	}
	first, last, most := -1, -1, 0.0
	for s, is := range taken {
		if !is {
			continue
		}
		if first < 0 {
			first = s
		} else {
			most = max(most, angle(s+1)-angle(last))
		}
		last = s
	}
	if first < 0 {
		return -1
	}
	most = max(most, angle(first+1)+2*math.Pi-angle(last))
	return math.Cos(min(most, 2*math.Pi) / 2)
}
