// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

const (
	// fewOfWall is up to how many points of a wall go to the solver as they are.
	fewOfWall = 64
	// thinned is about how many of very many points are looked at first.
	thinned = 800
)

// tube finds a minimax cylinder on all points of a wall by way of few of them, as solve does the
// circle of a trace: on those that lie within a share of the form from the farthest and the nearest about the axis
// given; and that is the answer for all, once they all lie on or between its two cylinders. Of many, some are looked
// at first.
func (w *workspace) tube(kind Reference, wall Wall, p pose, share float64) (tube, bool) {
	if wall.len() > fewOfWall {
		t, ok, stride := tube{pose: p}, true, 1
		if wall.len() >= 2*thinned {
			stride = wall.len()/thinned | 1
		}
		in2, out2 := p.spread(wall, stride)
		t.in, t.out = math.Sqrt(in2), math.Sqrt(out2)
		if stride > 1 {
			t, ok = w.narrowTube(kind, wall, stride, t, share)
			share = 32
		}
		if ok {
			t, ok = w.narrowTube(kind, wall, 1, t, share)
		}
		if ok {
			return t, true
		}
	}
	w.program.n = 0
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

// narrowTube goes from an axis near the one sought to the cylinder of every stride-th point, by way of those
// that lie within a share of the form from the outermost and the innermost. Where one of the others lies
// outside what these give, it goes on from there.
func (w *workspace) narrowTube(kind Reference, wall Wall, stride int, t tube, share float64) (tube, bool) {
	margin := (t.out - t.in) / share
	for range mostNarrows {
		w.collectWall(kind, wall, stride, &t, margin)
		if len(w.x) < wallPoints {
			margin *= 2
			continue
		}
		next, ok := w.settle(kind, w.x, w.y, w.z, t.pose)
		if !ok {
			margin *= 4
			continue
		}
		in2, out2 := next.spread(wall, stride)
		in, out := math.Sqrt(in2), math.Sqrt(out2)
		off := 0.0
		if kind != MCCY {
			off = next.in - in
		}
		if kind != MICY {
			off = max(off, out-next.out)
		}
		if off > margin { // those taken did not hold it
			margin *= 4
			continue
		}
		next.in, next.out = in, out
		if off <= float64(2*rounding*out) {
			for k := range next.n {
				next.contacts[k].Index = w.index[next.contacts[k].Index]
			}
			return next, true
		}
		t, margin = next, max(margin, 2*off)
	}
	return t, false
}

// mostNarrows bounds how often others lie outside; two or three times is usual.
const mostNarrows = 8

// spread returns the squares of the distances of the nearest and the farthest of every stride-th point.
func (p *pose) spread(wall Wall, stride int) (in, out float64) {
	if stride == 1 {
		_, _, in, out = p.around(wall.x, wall.y, wall.z)
		return in, out
	}
	in, out = math.Inf(1), -1
	x, y, z := wall.x, wall.y[:len(wall.x)], wall.z[:len(wall.x)]
	k := p.frame(1)
	for i := 0; i < len(x); i += stride {
		u, v, _ := k.at(x[i], y[i], z[i])
		s := float64(u*u) + float64(v*v)
		if s < in {
			in = s
		}
		if s > out {
			out = s
		}
	}
	return in, out
}

// collectWall takes, of every stride-th point, those within a margin of the two cylinders, or of the one that
// matters to the kind, or beyond.
func (w *workspace) collectWall(kind Reference, wall Wall, stride int, t *tube, margin float64) {
	in2, out2 := -1.0, math.Inf(1)
	if kind != MCCY {
		in2 = float64((t.in + margin) * (t.in + margin))
	}
	if kind != MICY {
		out2 = max(0, t.out-margin)
		out2 = float64(out2 * out2)
	}
	w.x, w.y, w.z, w.index, w.program.n = w.x[:0], w.y[:0], w.z[:0], w.index[:0], 0
	x, y, z := wall.x, wall.y[:len(wall.x)], wall.z[:len(wall.x)]
	k := t.frame(1)
	for i := 0; i < len(x); i += stride {
		u, v, _ := k.at(x[i], y[i], z[i])
		if s := float64(u*u) + float64(v*v); s <= in2 || s >= out2 {
			w.takePoint(wall, i)
		}
	}
}
