// SPDX-License-Identifier: BSD-3-Clause

// Package circle finds the smallest circle around points.
package circle

import "math"

// A Circle is the smallest around some points, with its proof: Contacts are the points it touches,
// two or three (one where all points are one), and Weights say how to balance them: not negative,
// with sum 1 and Σ Weights[i]·contact i the centre. No smaller circle holds points that balance
// about a centre (John's condition).
type Circle struct {
	X, Y, R  float64 // R is at least the distance of every point from (X, Y)
	Contacts [3]int
	Weights  [3]float64 // 0 beyond the number of contacts
}

// mostSteps bounds the exchange. Each step makes the circle larger, if by less than rounding shows,
// and a dozen do for any number of points; where rounding would let it go round for ever, the best
// that was met is within rounding of the smallest.
const mostSteps = 100

// Enclosing returns the smallest circle around the points, of which there is at least one. It
// starts from any of them, three evenly taken if a circle stands on them, takes in the point
// farthest outside, keeps of the at most four those that carry the circle around all four, and
// begins again. The circle around a few is never larger than that around all: how far the farthest
// point lies outside is how much there can be left to gain.
func Enclosing(x, y []float64) Circle {
	c, n := Circle{X: x[0], Y: y[0], Weights: [3]float64{1}}, 1
	if m := len(x); m >= 3 {
		if three, ok := through(x, y, 0, m/3, 2*m/3); ok {
			dx, dy := x[0]-three.X, y[0]-three.Y
			c, n = three, 3
			c.R = math.Sqrt(float64(dx*dx) + float64(dy*dy))
		}
	}
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
// the number of its contacts: of all circles through two or three of them with the last, the first
// that holds all; where rounding leaves none such, the one from which none is far.
func ofFew(x, y []float64, ps []int) (best Circle, contacts int) {
	last := ps[len(ps)-1]
	others := ps[:len(ps)-1]
	// A circle on two points holds all that see them at a right angle or more.
pairs:
	for i, p := range others {
		for j, o := range others {
			if i != j && dot(x[p]-x[o], y[p]-y[o], x[last]-x[o], y[last]-y[o]) > 0 {
				continue pairs
			}
		}
		best = onTwo(x, y, p, last)
		best.R = math.Sqrt(most(x, y, ps, &best))
		return best, 2
	}
	least := math.Inf(1)
	for i, p := range others {
		for _, q := range others[i+1:] {
			c, ok := through(x, y, p, q, last)
			if !ok {
				continue
			}
			s := most(x, y, ps, &c)
			if s < least {
				best, contacts, least = c, 3, s
			}
			if dx, dy := x[last]-c.X, y[last]-c.Y; s <= dot(dx, dy, dx, dy)*(1+rounding) {
				best.R = math.Sqrt(least)
				return best, 3
			}
		}
	}
	for _, p := range others {
		c := onTwo(x, y, p, last)
		if s := most(x, y, ps, &c); s < least {
			best, contacts, least = c, 2, s
		}
	}
	best.R = math.Sqrt(least)
	return best, contacts
}

// rounding is the relative difference that two equal squares of distances may have.
const rounding = 1e-15

// onTwo returns the circle on two points opposite each other, without its radius.
func onTwo(x, y []float64, p, q int) Circle {
	return Circle{X: (x[p] + x[q]) / 2, Y: (y[p] + y[q]) / 2, Contacts: [3]int{p, q}, Weights: [3]float64{0.5, 0.5}}
}

// most returns the square of the greatest distance of the points from the centre.
func most(x, y []float64, ps []int, c *Circle) (m float64) {
	for _, p := range ps {
		dx, dy := x[p]-c.X, y[p]-c.Y
		if s := dot(dx, dy, dx, dy); s > m {
			m = s
		}
	}
	return m
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
	// The weights of the centre are sin 2α : sin 2β : sin 2γ, or the cosine of each angle times the
	// side opposite.
	wr, wp, wq := dot(ax, ay, bx, by)*ee, -dot(ax, ay, ex, ey)*bb, dot(bx, by, ex, ey)*aa
	if floor := float64(obtuse * (wp + wq + wr)); wp < floor || wq < floor || wr < floor {
		return Circle{}, false
	}
	d := 2 * cross
	cx, cy := (float64(by*aa)-float64(ay*bb))/d, (float64(ax*bb)-float64(bx*aa))/d
	wp, wq, wr = max(0, wp), max(0, wq), max(0, wr)
	sum := wp + wq + wr
	return Circle{X: x[r] + cx, Y: y[r] + cy, Contacts: [3]int{p, q, r}, Weights: [3]float64{wp / sum, wq / sum, wr / sum}}, true
}
