// SPDX-License-Identifier: BSD-3-Clause

package lobes

import "math"

// A Series is the least-squares r(θ) = Mean + Σ (Cos[k]·cos (k+1)θ + Sin[k]·sin (k+1)θ) through
// points seen from a centre.
type Series struct {
	Mean     float64
	Cos, Sin []float64
}

// Around fits the first `orders` orders to the points (x, y) as seen from (cx, cy): their distances
// over their directions. It reports false where the directions cannot separate the orders, with
// the floor of [Solve], or where a point lies at the centre. x and y have one length.
func Around(x, y []float64, cx, cy float64, orders int) (Series, bool) {
	n := 2*orders + 1
	if orders < 0 || len(x) < n {
		return Series{}, false
	}
	// cs and sn are the sums of cos kθ and sin kθ up to twice the orders, of which the normal matrix
	// is made; rc and rs those of r·cos kθ and r·sin kθ. Space for orders up to 16 needs no heap.
	var room [4*33 + 4]float64
	buf := room[:]
	if width := 2*orders + 1; 4*width > len(buf) {
		buf = make([]float64, 4*width)
	}
	width := 2*orders + 1
	cs, sn, rc, rs := buf[:width], buf[width:2*width], buf[2*width:3*width], buf[3*width:4*width]
	y = y[:len(x)]
	var base float64 // goes out by itself: what is fitted is micrometres, not the bore
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		r := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if i == 0 {
			base = r
		}
		c1, s1 := dx/r, dy/r
		r -= base
		rc[0] += r
		c, s := c1, s1
		for k := 1; k <= orders; k++ {
			cs[k] += c
			sn[k] += s
			rc[k] += float64(r * c)
			rs[k] += float64(r * s)
			c, s = float64(c*c1)-float64(s*s1), float64(s*c1)+float64(c*s1)
		}
		for k := orders + 1; k < width; k++ {
			cs[k] += c
			sn[k] += s
			c, s = float64(c*c1)-float64(s*s1), float64(s*c1)+float64(c*s1)
		}
	}
	m := float64(len(x))
	cs[0] = m
	// Products of cosines and sines are half the sums of those of the sum and the difference.
	a := make([]float64, n*n+n)
	rhs := a[n*n:]
	rhs[0] = rc[0]
	a[0] = m
	for j := 1; j <= orders; j++ {
		row, below := a[(2*j-1)*n:], a[2*j*n:]
		row[0], below[0] = cs[j], sn[j]
		rhs[2*j-1], rhs[2*j] = rc[j], rs[j]
		for k := 1; k <= j; k++ {
			row[2*k-1] = (cs[j-k] + cs[j+k]) / 2
			below[2*k-1] = (sn[j+k] + sn[j-k]) / 2
			below[2*k] = (cs[j-k] - cs[j+k]) / 2
			if k < j {
				row[2*k] = (sn[j+k] - sn[j-k]) / 2
			}
		}
	}
	if !cholesky(a[:n*n], rhs, rankFloor*m) {
		return Series{}, false
	}
	f := Series{Mean: base + rhs[0], Cos: make([]float64, orders), Sin: make([]float64, orders)}
	for k := range orders {
		f.Cos[k], f.Sin[k] = rhs[2*k+1], rhs[2*k+2]
	}
	return f, true
}

// cholesky solves a·x = b in place by the lower triangle of a, row by row. It reports false where a
// pivot is not above floor.
func cholesky(a, b []float64, floor float64) bool {
	n := len(b)
	for r := range n {
		row := a[r*n : r*n+n]
		for c := range r + 1 {
			s, other := row[c], a[c*n:c*n+c+1]
			for k := range c {
				s -= float64(row[k] * other[k])
			}
			if c < r {
				row[c] = s / other[c]
				continue
			}
			if !(s > floor) {
				return false
			}
			row[r] = math.Sqrt(s)
		}
		s := b[r]
		for k := range r {
			s -= float64(row[k] * b[k])
		}
		b[r] = s / row[r]
	}
	for r := n - 1; r >= 0; r-- {
		s := b[r]
		for k := r + 1; k < n; k++ {
			s -= float64(a[k*n+r] * b[k])
		}
		b[r] = s / a[r*n+r]
	}
	return true
}
