// SPDX-License-Identifier: BSD-3-Clause

package form

import (
	"math"
	"math/bits"
)

// A region is a convex body of moves of the two ends of an axis, given by its corners.
type region struct {
	corners [mostCorners]corner
	n       int
	points  int // of the search, that matter to it
}

// A corner is a move, and the faces that it lies on, one bit each. Two that an edge joins have three faces in
// common at least.
type corner struct {
	at [4]float64
	on uint64
}

// mostCorners bounds those of a region; two dozen are usual.
const mostCorners = 160

func times(a, b *[4]float64) float64 {
	return dot(a[0], a[1], b[0], b[1]) + dot(a[2], a[3], b[2], b[3])
}

// cube makes a region of all moves of which no part is larger than half.
func (r *region) cube(half float64) {
	r.n = 16
	for k := range r.n {
		c := corner{}
		for j := range c.at {
			side := k >> j & 1
			c.at[j] = float64(half * float64(2*side-1))
			c.on |= 1 << (2*j + side)
		}
		r.corners[k] = c
	}
}

// middle returns the mean of the corners.
func (r *region) middle() (m [4]float64) {
	for i := range r.corners[:r.n] {
		for k := range m {
			m[k] += r.corners[i].at[k]
		}
	}
	for k := range m {
		m[k] /= float64(r.n)
	}
	return m
}

// farthest returns the corner that is farthest from a move, as seen from there, and how far.
func (r *region) farthest(from *[4]float64) (m [4]float64, far float64) {
	for i := range r.corners[:r.n] {
		c := &r.corners[i].at
		d := [4]float64{c[0] - from[0], c[1] - from[1], c[2] - from[2], c[3] - from[3]}
		if s := times(&d, &d); s >= far {
			far, m = s, d
		}
	}
	return m, math.Sqrt(far)
}

// most returns the corner of which a face measures most, as seen from a move, and what it measures from there.
func (r *region) most(face, from *[4]float64) (m [4]float64, most float64) {
	most = math.Inf(-1)
	for i := range r.corners[:r.n] {
		c := &r.corners[i].at
		d := [4]float64{c[0] - from[0], c[1] - from[1], c[2] - from[2], c[3] - from[3]}
		if at := times(face, &d); at > most {
			most, m = at, d
		}
	}
	return m, most
}

// cut leaves out the moves of which a face measures more than at: the body of what is left has the corners inside
// it, and those where edges pass through it. What is nearer than a hair to the face lies on it. It reports false
// where there is no room for them, or for the face, and leaves nothing out then.
func (r *region) cut(face *[4]float64, at, hair float64) bool {
	var over [mostCorners]float64
	var used uint64
	for i := range r.corners[:r.n] {
		over[i] = times(face, &r.corners[i].at) - at
		used |= r.corners[i].on
	}
	bit := ^used & -^used // of a face that no corner lies on any more
	if bit == 0 {
		return false
	}
	in, n := 0, r.n
	for i := range r.corners[:n] {
		if over[i] > hair {
			continue
		}
		if over[i] >= -hair {
			r.corners[i].on |= bit
		}
		r.corners[i], r.corners[in] = r.corners[in], r.corners[i]
		over[i], over[in] = over[in], over[i]
		in++
	}
	for i := in; i < r.n; i++ {
		out := &r.corners[i]
		for k := range r.corners[:in] {
			c := &r.corners[k]
			common := c.on & out.on
			if bits.OnesCount64(common) < 3 || c.on&bit != 0 {
				continue
			}
			if n == len(r.corners) {
				return false
			}
			share := over[k] / (over[k] - over[i])
			next := &r.corners[n]
			for j := range next.at {
				next.at[j] = c.at[j] + float64((out.at[j]-c.at[j])*share)
			}
			next.on = common | bit
			n++
		}
	}
	r.n = in + copy(r.corners[in:], r.corners[r.n:n])
	return true
}
