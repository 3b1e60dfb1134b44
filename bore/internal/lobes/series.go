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
// over their directions. It reports false where the directions cannot separate the orders, with the
// floor of [Solve], or where a point lies at the centre. x and y have one length.
func Around(x, y []float64, cx, cy float64, orders int) (Series, bool) {
	n := 2*orders + 1
	if orders < 0 || len(x) < n {
		return Series{}, false
	}
	// The normal matrix is made of the sums of cos kθ and sin kθ up to twice the orders. Room for
	// orders up to 8 needs no heap.
	var room [16]term
	terms := room[:]
	if 2*orders > len(terms) {
		terms = make([]term, 2*orders)
	}
	low, high := terms[:orders], terms[orders:2*orders] // of orders 1 and up
	y = y[:len(x)]
	var base, sum float64 // the base goes out by itself: what is fitted is micrometres, not the bore
	for i := range x {
		dx, dy := x[i]-cx, y[i]-cy
		r := math.Sqrt(float64(dx*dx) + float64(dy*dy))
		if i == 0 {
			base = r
		}
		c1, s1 := dx/r, dy/r
		r -= base
		sum += r
		c, s := c1, s1
		for k := range low {
			t := &low[k]
			t.c += c
			t.s += s
			t.rc += float64(r * c)
			t.rs += float64(r * s)
			c, s = float64(c*c1)-float64(s*s1), float64(s*c1)+float64(c*s1)
		}
		for k := range high {
			t := &high[k]
			t.c += c
			t.s += s
			c, s = float64(c*c1)-float64(s*s1), float64(s*c1)+float64(c*s1)
		}
	}
	m := float64(len(x))
	at := func(k int) term {
		if k == 0 {
			return term{c: m}
		}
		return terms[k-1]
	}
	// Products of cosines and sines are half the sums of those of the sum and the difference.
	a := make([]float64, n*n+n+2*orders)
	rhs := a[n*n : n*n+n]
	a[0], rhs[0] = m, sum
	for j := 1; j <= orders; j++ {
		row, below := a[(2*j-1)*n:], a[2*j*n:]
		row[0], below[0] = at(j).c, at(j).s
		rhs[2*j-1], rhs[2*j] = at(j).rc, at(j).rs
		for k := 1; k <= j; k++ {
			plus, minus := at(j+k), at(j-k)
			row[2*k-1] = (minus.c + plus.c) / 2
			below[2*k-1] = (plus.s + minus.s) / 2
			below[2*k] = (minus.c - plus.c) / 2
			if k < j {
				row[2*k] = (plus.s - minus.s) / 2
			}
		}
	}
	if !factor(a[:n*n], n, rankFloor*m) {
		return Series{}, false
	}
	solve(a[:n*n], rhs)
	coefficients := a[n*n+n:]
	f := Series{Mean: base + rhs[0], Cos: coefficients[:orders:orders], Sin: coefficients[orders:]}
	for k := range orders {
		f.Cos[k], f.Sin[k] = rhs[2*k+1], rhs[2*k+2]
	}
	return f, true
}

// A term is the sums of one order: of its cosines and sines, and of them times the radius.
type term struct{ c, s, rc, rs float64 }
