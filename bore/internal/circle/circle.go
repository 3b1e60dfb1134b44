// SPDX-License-Identifier: BSD-3-Clause

// Package circle finds the smallest circle around points.
package circle

import "math"

// A Circle is the smallest around some points, with its proof: Contacts are the points it
// touches, two or three (one where all points are one), and Weights say how to balance them: not
// negative, with sum 1 and Σ Weights[i]·contact i the centre. No smaller circle holds points
// that balance about a centre (John's condition).
type Circle struct {
	X, Y, R  float64 // R is at least the distance of every point from (X, Y)
	Contacts [3]int
	Weights  [3]float64 // 0 beyond the number of contacts
}

// mostSteps bounds the exchange. Each step makes the circle larger, if by less than rounding shows,
// and a dozen do for any number of points; where rounding would let it go round for ever, the
// best that was met is within rounding of the smallest.
const mostSteps = 100

// Enclosing returns the smallest circle around the points, of which there is at least one. It
// starts from any of them, takes in the point farthest outside, keeps of the at most four those
// that carry the circle around all four, and begins again. The circle around a few is never
// larger than that around all: how far the farthest point lies outside is how much there can be
// left to gain.
func Enclosing(x, y []float64) Circle {
	c, n := Circle{X: x[0], Y: y[0], Weights: [3]float64{1}}, 1
	var best Circle
	gain := math.Inf(1)
	for range mostSteps {
		far, d := farthest(x, y, c.X, c.Y)
		if d-c.R < gain {
			gain = d - c.R
			best, best.R = c, d
		}
		if gain <= 0 {
			break
		}
		four := [4]int{c.Contacts[0], c.Contacts[1], c.Contacts[2], far}
		four[n] = far
		c, n = ofFew(x, y, four[:n+1])
	}
	return best
}

func dot(ax, ay, bx, by float64) float64 { return float64(ax*bx) + float64(ay*by) }

func distance(x, y, cx, cy float64) float64 {
	dx, dy := x-cx, y-cy
	return math.Sqrt(float64(dx*dx) + float64(dy*dy))
}

// farthest returns the point farthest from (cx, cy), of equals the first, and its distance.
func farthest(x, y []float64, cx, cy float64) (far int, d float64) {
	var most float64
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		if s := float64(dx*dx) + float64(dy*dy); s > most {
			far, most = i, s
		}
	}
	return far, math.Sqrt(most)
}

// ofFew returns the smallest circle around two to four points, of which the last lies on it, and
// the number of its contacts: of the centres of all circles through two or three of them with the
// last, the one from which none of them is far.
func ofFew(x, y []float64, ps []int) (best Circle, contacts int) {
	last := ps[len(ps)-1]
	best.R = math.Inf(1)
	try := func(c Circle, n int) {
		for _, p := range ps {
			c.R = max(c.R, distance(x[p], y[p], c.X, c.Y))
		}
		if c.R < best.R {
			best, contacts = c, n
		}
	}
	for i, p := range ps[:len(ps)-1] {
		try(Circle{X: (x[p] + x[last]) / 2, Y: (y[p] + y[last]) / 2, Contacts: [3]int{p, last}, Weights: [3]float64{0.5, 0.5}}, 2)
		for _, q := range ps[i+1 : len(ps)-1] {
			if c, ok := through(x, y, p, q, last); ok {
				try(c, 3)
			}
		}
	}
	return best, contacts
}

// obtuse is how far below zero a weight may lie, for rounding, and still be taken as zero: it then
// moves the point of balance of a bore by less than a nanometre.
const obtuse = -1e-9

// through returns the centre of the circle through three points and how they balance at it. It
// reports false where they are in line or the triangle is obtuse: around an obtuse one a circle on
// two of its points is smaller.
func through(x, y []float64, p, q, r int) (Circle, bool) {
	ax, ay := x[p]-x[r], y[p]-y[r]
	bx, by := x[q]-x[r], y[q]-y[r]
	ex, ey := x[q]-x[p], y[q]-y[p]
	aa, bb, ee := dot(ax, ay, ax, ay), dot(bx, by, bx, by), dot(ex, ey, ex, ey)
	cross := float64(ax*by) - float64(ay*bx)
	if cross == 0 {
		return Circle{}, false
	}
	d := 2 * cross
	cx, cy := (float64(by*aa)-float64(ay*bb))/d, (float64(ax*bb)-float64(bx*aa))/d
	// The weights of the centre are sin 2α : sin 2β : sin 2γ, or the cosine of each angle times
	// the side opposite.
	wr, wp, wq := dot(ax, ay, bx, by)*ee, -dot(ax, ay, ex, ey)*bb, dot(bx, by, ex, ey)*aa
	if min(wp, wq, wr) < obtuse*(wp+wq+wr) {
		return Circle{}, false
	}
	wp, wq, wr = max(0, wp), max(0, wq), max(0, wr)
	sum := wp + wq + wr
	return Circle{X: x[r] + cx, Y: y[r] + cy, Contacts: [3]int{p, q, r}, Weights: [3]float64{wp / sum, wq / sum, wr / sum}}, true
}
