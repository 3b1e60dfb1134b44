// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A workspace keeps the room that the circles of a long trace and the cylinders of a long wall need. The zero
// workspace is ready; one that was used before gives the same answers, and allocates nothing for a closed trace.
type workspace struct {
	x, y  []float64 // of the points under consideration
	index []int     // theirs in the trace
	boxes []box     // of the plane, still to be searched

	z             []float64  // of the points of a wall under consideration
	slopes, ahead slopes     // theirs about an axis, and about the one to come
	bent          slopes     // about one that was tried
	search        axisSearch // for better axes of a wall
	program       program    // the last one, of these points unless its n is 0
}

const (
	fewPoints  = 200 // up to so many go to the solver as they are
	partPoints = 128 // of more, so many are solved first
	sparse     = 16  // and of very many every sixteenth after that
)

// solve finds the circle of a kind on all points by way of few of them. The circle of about a
// hundred, evenly taken, shows where contacts may lie; one pass over all points collects what lies
// there; and the circle of those is that of all, if its centre has not moved further than the
// margin they were taken with. With very many points a pass over a part of them first makes the
// margin smaller. So a trace of any length costs little more than the one pass.
func (w *workspace) solve(kind Reference, x, y []float64) (ring, bool) {
	if len(x) > fewPoints {
		w.part(x, y)
		z, ok := start(kind, w.x, w.y)
		share := 16.
		if ok && len(x) > 2*sparse*partPoints {
			z, ok = w.narrow(kind, x, y, sparse, z, share)
			share = 64
		}
		if ok {
			z, ok = w.narrow(kind, x, y, 1, z, share)
		}
		if ok {
			return z, true
		}
	}
	return start(kind, x, y)
}

// narrow goes from a circle near the one sought to that of every stride-th point, by way of those
// that lie within a share of the form from the circle.
func (w *workspace) narrow(kind Reference, x, y []float64, stride int, z ring, share float64) (ring, bool) {
	margin := (z.out - z.in) / share
	for range 3 {
		in, out := -1.0, math.Inf(1) // of no matter to the kind
		if kind != MCCI {
			in = z.in + margin
		}
		if kind != MICI {
			out = z.out - margin
		}
		w.collect(x, y, stride, z.x, z.y, in, out)
		if len(w.x) < 3 {
			return z, false
		}
		next, ok := from(kind, w.x, w.y, z.x, z.y)
		if !ok {
			return z, false
		}
		switch kind { // the other of the two circles is not among those taken, and matters little yet
		case MCCI:
			next.in = z.in
		case MICI:
			next.out = z.out
		}
		moved := norm(next.x-z.x, next.y-z.y) + float64(4*rounding*next.out)
		if (kind == MCCI || next.in <= in-moved) && (kind == MICI || next.out >= out+moved) {
			for k := range next.n {
				next.contacts[k].Index = w.index[next.contacts[k].Index]
			}
			if kind != MZCI && stride == 1 {
				_, _, in2, out2 := span(x, y, next.x, next.y)
				next.in, next.out = math.Sqrt(in2), math.Sqrt(out2)
			}
			return next, true
		}
		z, margin = next, max(2*margin, 2*moved)
	}
	return z, false
}

// part takes some of the points, evenly.
func (w *workspace) part(x, y []float64) {
	w.x, w.y, w.index = w.x[:0], w.y[:0], w.index[:0]
	for k := range partPoints {
		i := k * len(x) / partPoints
		w.x, w.y, w.index = append(w.x, x[i]), append(w.y, y[i]), append(w.index, i)
	}
}

// collect takes, of every stride-th point, those at most `in` or at least `out` from the centre.
func (w *workspace) collect(x, y []float64, stride int, cx, cy, in, out float64) {
	in2, out2 := max(0, in), out
	in2, out2 = float64(in2*in2), float64(out2*out2)
	w.x, w.y, w.index = w.x[:0], w.y[:0], w.index[:0]
	y = y[:len(x)]
	for i := 0; i < len(x); i += stride {
		dx, dy := x[i]-cx, y[i]-cy
		if s := float64(dx*dx) + float64(dy*dy); s <= in2 || s >= out2 {
			w.x, w.y, w.index = append(w.x, x[i]), append(w.y, y[i]), append(w.index, i)
		}
	}
}

// start finds the circle of a kind from nothing.
func start(kind Reference, x, y []float64) (ring, bool) {
	if kind == MCCI {
		return circumscribed(x, y), true
	}
	cx, cy, _, ok := algebraic(x, y)
	if !ok {
		return ring{}, false
	}
	return from(kind, x, y, cx, cy)
}

// from finds the circle of a kind near a centre.
func from(kind Reference, x, y []float64, cx, cy float64) (ring, bool) {
	switch kind {
	case MZCI:
		return zone(x, y, cx, cy)
	case MICI:
		return inscribed(x, y, cx, cy)
	default:
		return circumscribed(x, y), true
	}
}
