// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A fitted cylinder: its radius, the root mean square of the distances from it, and the distances of the
// nearest and the farthest point from its axis.
type fitted struct {
	pose
	r, rms, in, out float64
}

// arrived is how far, in radii, an axis may still be from where the steps lead, a third of a picometre for a bore
// of 70 mm. That is what the bound allows; what is left is mostly a tenth of it, and of few points, which hold the
// axis less firmly one way than their pivots show, up to some times as much.
const arrived = 1e-11

// kept is how far an axis may have moved, in radii, for the normal matrix to be good for it.
const kept = 2e-3

// fitCylinder goes from an axis to the nearest least-squares cylinder, by Gauss and Newton's method
// with its steps halved where the sum of the squares would grow. Once near it keeps the normal matrix,
// which changes no more than the axis moves; it may be given one, off by no more than if the axis had moved
// so far. It reports false where the points do not hold an axis, or the steps find no end.
func fitCylinder(x, y, z []float64, p pose, r float64, a normal, moved float64) (fitted, bool) {
	n := float64(len(x))
	best, m, dr, last := p, move{}, 0.0, math.Inf(1)
	var s tally
	for range mostSteps {
		if moved <= float64(kept*r) {
			s.pullPass(x, y, z, &p, r)
		} else {
			s, moved = tallyPass(x, y, z, &p, r), 0
			a = s.normal(n, 1)
		}
		if math.IsNaN(s.fu) || math.IsNaN(s.fv) { // a point on the axis has no direction
			p, moved = p.moved(move{1e-9 * r}), math.Inf(1)
			continue
		}
		mean := s.f / n
		squares := max(0, s.ff-float64(s.f*mean))
		if squares > float64(last*(1+1e-9))+float64(n*float64(rounding*r)*float64(rounding*r)) {
			for k := range m {
				m[k] /= 2
			}
			p, moved = best.moved(m), math.Inf(1)
			continue
		}
		m, dr = s.step(&a)
		if !(a.firmness >= arcFloor) {
			return fitted{pose: p}, false
		}
		best, last = p, squares
		p = p.moved(m)
		r += dr
		// As for the circle: the next step is at most this one times the curvature of the distances, and
		// what the axis has moved since the matrix was made, over the matrix; and what is of second order
		// in this one.
		step, rms, lever := m.size(), math.Sqrt(squares/n), r/p.half
		bend := 1 + float64(lever*lever)
		if step*(float64(step*bend)+(float64((2+bend)*rms)+float64(2*bend*moved))/a.firmness) <= float64(arrived*r*r) {
			f := fitted{pose: p, r: r, rms: math.Sqrt(max(0, s.ff-s.gain(m, dr)) / n)}
			_, _, in2, out2 := p.around(x, y, z)
			f.in, f.out = math.Sqrt(in2), math.Sqrt(out2)
			return f, true
		}
		moved += step
	}
	return fitted{pose: p}, false
}

// leaning is the sine of the angle to the depth that an axis may have, 45° with room for rounding.
const leaning = 0.7072

// wild is how far points may lie off their cylinder, root mean square over the radius: what lies farther
// is another body, or the depth does not count along it.
const wild = 0.1

// start returns a least-squares cylinder of points of the wall from nothing. It starts upright, which
// on a bore is nearly right, and where that leads to an axis that leans, or to none, also along the
// line through the middles of the points by depth, and takes the better.
func (w Wall) start(x, y, z []float64) (f fitted, ok bool) {
	half, mid := (w.high-w.low)/2, (w.low+w.high)/2
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
		return fitCylinder(x, y, z, upright(from.c.plus(cx, from.u).plus(cy, from.v), w, half), r, normal{}, math.Inf(1))
	}
	if p, r, a, moved := algebraicCylinder(x, y, z, half); r < math.Inf(1) { // not where it is no number
		if f, ok = fitCylinder(x, y, z, p, r, a, moved); ok && f.usual() {
			return f, true
		}
	}
	f, ok = try(vector{0, 0, 1}, upright(vector{0, 0, mid}, vector{0, 0, 1}, half))
	if ok && f.usual() {
		return f, true
	}
	middle, slope := drift(x, y, z)
	middle = middle.plus(mid-middle[2], slope)
	if g, ok2 := try(slope, upright(middle, slope, half)); ok2 && !(ok && f.rms <= g.rms) {
		f, ok = g, true
	}
	return f, ok && norm(f.w[0], f.w[1]) < leaning && f.rms <= float64(wild*f.r)
}

// usual reports whether the cylinder is one along the depth that the points lie near to, so that no other
// need be looked for.
func (f *fitted) usual() bool { return norm(f.w[0], f.w[1]) < 0.1 && f.rms < float64(0.01*f.r) }

// algebraicCylinder returns an axis and a radius close to those of the least-squares cylinder, a normal matrix of
// the points about them, and how far off that is, as if the axis had moved. The algebraic cylinder of some points
// shows where the axis is, to some micrometres; that of all, linear about that axis, where it is to some tenths of a
// nanometre.
func algebraicCylinder(x, y, z []float64, half float64) (p pose, r float64, a normal, moved float64) {
	const few = 64
	var px, py, pz [few]float64
	part, dice := min(len(x), few), uint64(1)
	for k := range part {
		i := k
		if part < len(x) { // scattered, since the points of sections are in step
			dice = dice*6364136223846793005 + 1442695040888963407 // as Knuth's MMIX, from memory: any would do
			i = int((dice >> 32) * uint64(len(x)) >> 32)
		}
		px[k], py[k], pz[k] = x[i], y[i], z[i]
	}
	s := algebraicPass(px[:part], py[:part], pz[:part], half, 0, 0, 0, 0)
	a = s.normal(float64(part), 1)
	m, _ := s.step(&a)
	dx, dy, ax, ay := m[0], m[1], m[2]/half, m[3]/half
	s = algebraicPass(x, y, z, half, dx, dy, ax, ay)
	a = s.normal(float64(len(x)), 1)
	m, k := s.step(&a)
	dx, dy, ax, ay = dx+m[0], dy+m[1], ax+m[2]/half, ay+m[3]/half
	r = math.Sqrt(2*k + dot(m[0], m[1], m[0], m[1]))
	a.unit, a.firmness = r, a.firmness/float64(r*r)
	return upright(vector{dx, dy, 0}, vector{ax, ay, 1}, half), r, a, m.size() + float64(r*dot(ax, ay, ax, ay))
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
