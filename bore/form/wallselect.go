// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// tube finds a minimax cylinder on all points of a wall by way of few of them, as solve does the
// circle of a trace: on some, evenly taken; then on those that lie near the two cylinders so found;
// and that is the answer for all, if the axis has not moved farther than the margin they were taken
// with.
func (w *workspace) tube(kind Reference, wall Wall, p pose) (tube, bool) {
	n := wall.len()
	if n <= fewPoints {
		return w.settle(kind, wall.x, wall.y, wall.z, p)
	}
	w.partOfWall(wall)
	t, ok := w.settle(kind, w.x, w.y, w.z, p)
	share := 16.
	if ok && n > 2*sparse*partPoints {
		t, ok = w.narrowTube(kind, wall, sparse, t, share)
		share = 64
	}
	if ok {
		t, ok = w.narrowTube(kind, wall, 1, t, share)
	}
	if ok {
		return t, true
	}
	return w.settle(kind, wall.x, wall.y, wall.z, p)
}

// partOfWall takes some of the points, evenly.
func (w *workspace) partOfWall(wall Wall) {
	w.x, w.y, w.z, w.index = w.x[:0], w.y[:0], w.z[:0], w.index[:0]
	for k := range partPoints {
		w.takePoint(wall, k*wall.len()/partPoints)
	}
}

func (w *workspace) takePoint(wall Wall, i int) {
	w.x, w.y, w.z, w.index = append(w.x, wall.x[i]), append(w.y, wall.y[i]), append(w.z, wall.z[i]), append(w.index, i)
}

// narrowTube goes from a cylinder near the one sought to that of every stride-th point, by way of those
// that lie within a share of the form from it.
func (w *workspace) narrowTube(kind Reference, wall Wall, stride int, t tube, share float64) (tube, bool) {
	margin := (t.out - t.in) / share
	for range 4 {
		in, out := -1.0, math.Inf(1) // of no matter to the kind
		if kind != MCCY {
			in = t.in + margin
		}
		if kind != MICY {
			out = t.out - margin
		}
		w.collectWall(wall, stride, &t.pose, in, out)
		if len(w.x) < wallPoints {
			return t, false
		}
		next, ok := w.settle(kind, w.x, w.y, w.z, t.pose)
		if !ok {
			return t, false
		}
		if kind == MCCY { // the other of the two is not among those taken, and matters little yet
			next.in = t.in
		}
		if kind == MICY {
			next.out = t.out
		}
		moved := t.apart(&next.pose) + float64(4*rounding*next.out)
		if (kind == MCCY || next.in <= in-moved) && (kind == MICY || next.out >= out+moved) {
			for k := range next.n {
				next.contacts[k].Index = w.index[next.contacts[k].Index]
			}
			if stride == 1 && kind != MZCY {
				_, _, in2, out2 := next.around(wall.x, wall.y, wall.z)
				next.in, next.out = math.Sqrt(in2), math.Sqrt(out2)
			}
			return next, true
		}
		t, margin = next, max(2*margin, 2*moved)
	}
	return t, false
}

// apart returns how much farther from one axis a point of the wall may be than from the other, at
// most: by as much as the axes are apart at its height, and by the shift of that height with the tilt.
func (t *tube) apart(q *pose) float64 {
	const end = 1.25 // heights go a little beyond 1 where the axis leans
	tilt := norm(t.w.dot(q.u), t.w.dot(q.v))
	u, v, h := t.seen(q.c[0], q.c[1], q.c[2])
	a, b := q.w.dot(t.u)*t.half/q.w.dot(t.w), q.w.dot(t.v)*t.half/q.w.dot(t.w)
	at := func(height float64) float64 { return norm(u+float64((height-h)*a), v+float64((height-h)*b)) }
	return max(at(end), at(-end)) + float64(2*t.out*tilt*tilt)
}

// collectWall takes, of every stride-th point, those at most `in` or at least `out` from the axis.
func (w *workspace) collectWall(wall Wall, stride int, p *pose, in, out float64) {
	in2, out2 := max(0, in), out
	in2, out2 = float64(in2*in2), float64(out2*out2)
	w.x, w.y, w.z, w.index = w.x[:0], w.y[:0], w.z[:0], w.index[:0]
	x, y, z := wall.x, wall.y[:len(wall.x)], wall.z[:len(wall.x)]
	cu, cv := p.c.dot(p.u), p.c.dot(p.v)
	u0, u1, u2, v0, v1, v2 := p.u[0], p.u[1], p.u[2], p.v[0], p.v[1], p.v[2]
	for i := 0; i < len(x); i += stride {
		u := float64(u0*x[i]) + float64(u1*y[i]) + float64(u2*z[i]) - cu
		v := float64(v0*x[i]) + float64(v1*y[i]) + float64(v2*z[i]) - cv
		if s := float64(u*u) + float64(v*v); s <= in2 || s >= out2 {
			w.takePoint(wall, i)
		}
	}
}
