// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// A vector is in mm, from the origin of a wall, or a direction.
type vector [3]float64

func (a vector) dot(b vector) float64 {
	return float64(a[0]*b[0]) + float64(a[1]*b[1]) + float64(a[2]*b[2])
}

// plus returns a + k·b.
func (a vector) plus(k float64, b vector) vector {
	return vector{a[0] + float64(k*b[0]), a[1] + float64(k*b[1]), a[2] + float64(k*b[2])}
}

func (a vector) cross(b vector) vector {
	return vector{cross(a[1], a[2], b[1], b[2]), cross(a[2], a[0], b[2], b[0]), cross(a[0], a[1], b[0], b[1])}
}

func (a vector) unit() vector {
	k := 1 / math.Sqrt(a.dot(a))
	return vector{float64(k * a[0]), float64(k * a[1]), float64(k * a[2])}
}

// A pose is an axis under trial: a point c of it half way down the wall, its direction w, and two
// directions u and v square to it and to each other. Half is half the length of the wall: heights
// along the axis count in it, so that the ends are at −1 and 1, and a tilt is a displacement of the
// ends like any other.
type pose struct {
	c, u, v, w vector
	half       float64
}

// upright returns the pose along a direction through a point.
func upright(c, w vector, half float64) pose {
	return pose{c: c, u: vector{1, 0, 0}, w: w.unit(), half: half}.square()
}

// square makes u and v square to w.
func (p pose) square() pose {
	p.u = p.u.plus(-p.u.dot(p.w), p.w).unit()
	p.v = p.w.cross(p.u)
	return p
}

// A move displaces an axis: by m[0] and m[1] along u and v in the middle of the wall, and by m[2]
// and m[3] more at height 1.
type move [4]float64

func (p pose) moved(m move) pose {
	p.c = p.c.plus(m[0], p.u).plus(m[1], p.v)
	p.w = p.w.plus(m[2]/p.half, p.u).plus(m[3]/p.half, p.v).unit()
	return p.square()
}

// size is how far a move displaces the axis at most, within the wall.
func (m move) size() float64 { return norm(m[0], m[1]) + norm(m[2], m[3]) }

// seen returns a point along u and v from the axis, and its height.
func (p *pose) seen(x, y, z float64) (u, v, h float64) {
	d := vector{x - p.c[0], y - p.c[1], z - p.c[2]}
	return d.dot(p.u), d.dot(p.v), d.dot(p.w) / p.half
}

// around returns the points nearest to and farthest from the axis, of equals the first, with the
// squares of their distances, in one pass.
func (p *pose) around(x, y, z []float64) (near, far int, in, out float64) {
	in, out = math.Inf(1), -1
	y, z = y[:len(x)], z[:len(x)]
	k := p.frame(1)
	for i := range x {
		u, v, _ := k.at(x[i], y[i], z[i])
		s := float64(u*u) + float64(v*v)
		if s < in {
			in, near = s, i
		}
		if s > out {
			out, far = s, i
		}
	}
	return near, far, in, out
}
