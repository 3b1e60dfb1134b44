// SPDX-License-Identifier: BSD-3-Clause

package form

import "math"

// Where fewer contacts than unknowns carry an optimum, the bending of the distances holds the axis in the
// rest of the directions, and a linear program only comes and goes across it. A quadratic program has the
// bending in: with G for the second-order part of what is made least,
//
//	out − in + ½·s·G·s least, f − (u, v, hu, hv)·s ≤ out and ≥ in for every point
//
// It is solved by Goldfarb and Idnani's dual method: the constraints held are an optimum of their own;
// the one most violated gets more and more weight until it holds, those that it makes weightless being
// left out; so the optimum only grows.

// A bent holds as equations some constraints, with weights that are not negative.
type bent struct {
	program // its unknowns and rows; inv and trust are not used
	held    int
	g       [4][4]float64
}

// newBent starts from the farthest and the nearest point.
func newBent(kind Reference, s *slopes, g [4][4]float64, far, near int) (b bent, ok bool) {
	b = bent{program: newProgram(kind, s, 0, 0, far, near), g: g}
	for r := 4; r < b.n; r++ {
		b.rows[b.held] = b.rows[r]
		b.held++
	}
	// With the weights 1: G·s = Σ a, and each row holds.
	var room system
	for i := range 4 {
		copy(room[i][:4], g[i][:])
		for _, r := range b.rows[:b.held] {
			room[i][4] += r.a[i]
		}
	}
	if !room.eliminate(4, b.y[:4]) {
		return b, false
	}
	for k := range b.held {
		b.weight[k] = 1
		b.level(b.rows[k])
	}
	return b, true
}

// level sets the distance of the side of a row so that it holds.
func (b *bent) level(r row) {
	at, sum := b.in, r.bound
	if r.outer {
		at = b.out
	}
	for k := range 4 {
		sum -= float64(r.a[k] * b.y[k])
	}
	b.y[at] = sum / r.a[at]
}

// optimise adds what is violated until nothing is by more than the floor.
func (b *bent) optimise(s *slopes, floor float64) bool {
	b.trust = [4]float64{math.Inf(1), math.Inf(1), math.Inf(1), math.Inf(1)}
	for range mostTakes {
		r, by := b.violated(s)
		if by <= floor {
			return true
		}
		if !b.hold(r, by) {
			return false
		}
	}
	return false
}

// hold gives a row weight until it holds.
func (b *bent) hold(r row, by float64) bool {
	var weight float64
	for range 2 * mostRows {
		// With a unit of weight more: G·dy = a + Σ dw·a over those held, and those stay held.
		var room system
		n := b.n + b.held
		for i := range b.n {
			if i < 4 {
				copy(room[i][:4], b.g[i][:])
			}
			for k := range b.held {
				room[i][b.n+k] = -b.rows[k].a[i]
				room[b.n+k][i] = b.rows[k].a[i]
			}
			room[i][n] = r.a[i]
		}
		var d [len(room)]float64
		if !room.eliminate(n, d[:n]) {
			return false
		}
		var toward float64
		for i := range b.n {
			toward += float64(r.a[i] * d[i])
		}
		step, drop := math.Inf(1), -1
		if toward > 1e-12 {
			step = by / toward
		}
		for k := range b.held {
			if dw := d[b.n+k]; dw < 0 && -b.weight[k]/dw < step {
				step, drop = -b.weight[k]/dw, k
			}
		}
		if math.IsInf(step, 1) {
			return false
		}
		for i := range b.n {
			b.y[i] += float64(step * d[i])
		}
		for k := range b.held {
			b.weight[k] += float64(step * d[b.n+k])
		}
		weight += step
		by -= float64(step * toward)
		if drop < 0 {
			if b.held == b.n {
				return false
			}
			b.rows[b.held], b.weight[b.held] = r, weight
			b.held++
			return true
		}
		gone := b.rows[drop]
		b.held--
		b.rows[drop], b.weight[drop] = b.rows[b.held], b.weight[b.held]
		alone := true
		for _, q := range b.rows[:b.held] {
			alone = alone && q.outer != gone.outer
		}
		if alone { // the last of its side: the new one has all of its weight
			b.rows[b.held], b.weight[b.held] = r, weight
			b.held++
			b.level(r)
			return true
		}
	}
	return false
}

// bending returns the second-order part of the weighed distances of the contacts, as a matrix.
func (t *tube) bending(x, y, z []float64) (g [4][4]float64) {
	for _, c := range t.contacts[:t.n] {
		u, v, h := t.seen(x[c.Index], y[c.Index], z[c.Index])
		d := norm(u, v)
		u, v = u/d, v/d
		w := c.Weight
		if !c.Outer {
			w = -w
		}
		// Across its direction a move takes the point away, by its square over 2d; along it a tilt
		// brings it nearer, by d times the square of the angle over 2.
		across := [4]float64{-v, u, -float64(h * v), float64(h * u)}
		along := [4]float64{0, 0, u / t.half, v / t.half}
		for i := range g {
			for k := range g {
				g[i][k] += float64(w * (across[i]*across[k]/d - float64(d*along[i]*along[k])))
			}
		}
	}
	return g
}

// stiffened returns a symmetric matrix with its eigenvalues turned positive, none below the floor, by
// rotations of Jacobi.
func stiffened(a [4][4]float64, floor float64) (g [4][4]float64) {
	q := [4][4]float64{{1}, {0, 1}, {0, 0, 1}, {0, 0, 0, 1}}
	turned := true
	for sweep := 0; sweep < 12 && turned; sweep++ {
		turned = false
		for i := range 3 {
			for k := i + 1; k < 4; k++ {
				if math.Abs(a[i][k]) <= float64(rounding*(math.Abs(a[i][i])+math.Abs(a[k][k]))) {
					continue
				}
				turned = true
				theta := (a[k][k] - a[i][i]) / (2 * a[i][k])
				t := 1 / (math.Abs(theta) + math.Sqrt(float64(theta*theta)+1))
				if theta < 0 {
					t = -t
				}
				c := 1 / math.Sqrt(float64(t*t)+1)
				s := float64(t * c)
				for j := range 4 {
					p, r := a[j][i], a[j][k]
					a[j][i], a[j][k] = float64(c*p)-float64(s*r), float64(s*p)+float64(c*r)
				}
				for j := range 4 {
					p, r := a[i][j], a[k][j]
					a[i][j], a[k][j] = float64(c*p)-float64(s*r), float64(s*p)+float64(c*r)
					p, r = q[j][i], q[j][k]
					q[j][i], q[j][k] = float64(c*p)-float64(s*r), float64(s*p)+float64(c*r)
				}
			}
		}
	}
	for e := range 4 {
		l := max(math.Abs(a[e][e]), floor)
		for i := range 4 {
			for k := range 4 {
				g[i][k] += float64(l * q[i][e] * q[k][e])
			}
		}
	}
	return g
}

// A system is a few equations, their right sides in the column after the unknowns.
type system [2 * mostRows][2*mostRows + 1]float64

// invert turns n rows with the unit matrix beside them into the unit matrix with the inverse beside it. It
// reports false where there is none.
func (a *system) invert(n int) bool {
	for k := range n {
		best := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[best][k]) {
				best = i
			}
		}
		a[k], a[best] = a[best], a[k]
		if !(math.Abs(a[k][k]) > 1e-13) {
			return false
		}
		pivot := 1 / a[k][k]
		for j := k; j < 2*n; j++ {
			a[k][j] *= pivot
		}
		for i := range n {
			if q := a[i][k]; i != k && q != 0 {
				for j := k; j < 2*n; j++ {
					a[i][j] -= float64(q * a[k][j])
				}
			}
		}
	}
	return true
}

// eliminate solves n of them with pivots sought in the column. It reports false where there is none.
func (a *system) eliminate(n int, s []float64) bool {
	for k := range n {
		best := k
		for i := k + 1; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[best][k]) {
				best = i
			}
		}
		a[k], a[best] = a[best], a[k]
		if !(math.Abs(a[k][k]) > 1e-13) {
			return false
		}
		for i := k + 1; i < n; i++ {
			q := a[i][k] / a[k][k]
			for j := k; j <= n; j++ {
				a[i][j] -= float64(q * a[k][j])
			}
		}
	}
	for k := n - 1; k >= 0; k-- {
		sum := a[k][n]
		for j := k + 1; j < n; j++ {
			sum -= float64(a[k][j] * s[j])
		}
		s[k] = sum / a[k][k]
	}
	return true
}
