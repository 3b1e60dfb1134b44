// SPDX-License-Identifier: BSD-3-Clause

package lobes

import "math"

// A Series is the least-squares r(θ) = Mean + Σ (Cos[k]·cos (k+1)θ + Sin[k]·sin (k+1)θ) through
// points seen from a centre.
type Series struct {
	Mean     float64
	Cos, Sin []float64
}

// few orders need no heap but for their answer.
const few = 8

// Around fits the first `orders` orders to the points (x, y) as seen from (cx, cy): their distances
// over their directions. It reports false where the directions cannot separate the orders, with the
// floor of [Solve], or where a point lies at the centre. x and y have one length.
func Around(x, y []float64, cx, cy float64, orders int) (Series, bool) {
	n := 2*orders + 1
	if orders < 0 || len(x) < n {
		return Series{}, false
	}
	// The normal matrix is made of the sums of cos kθ and sin kθ up to twice the orders.
	var (
		room   [2 * few]term
		normal [(2*few + 1) * (2*few + 1)]float64
		right  [2*few + 1]float64
	)
	terms := room[:]
	if 2*orders > len(terms) {
		terms = make([]term, 2*orders)
	}
	low, high := terms[:orders], terms[orders:2*orders] // of orders 1 and up
	y = y[:len(x)]
	base := norm(x[0]-cx, y[0]-cy) // goes out by itself: what is fitted is micrometres, not the bore
	var sum float64
	// Two points at a time, which is as many as there are registers for; an odd one comes with one of nothing. From order
	// to order by cos (k+1)θ = 2·cos θ·cos kθ − cos (k−1)θ, and so the sines, which is wrong by 4e-16·k² at most.
	for i := 0; i < len(x); i += 2 {
		r := norm(x[i]-cx, y[i]-cy)
		c, s := (x[i]-cx)/r, (y[i]-cy)/r
		r -= base
		var q, d, u, one float64
		if j := i + 1; j < len(x) {
			q = norm(x[j]-cx, y[j]-cy)
			d, u, one = (x[j]-cx)/q, (y[j]-cy)/q, 1
			q -= base
		}
		sum += r + q
		c2, cp, sp, d2, dp, up := 2*c, 1.0, 0.0, 2*d, one, 0.0
		for k := range low {
			t := &low[k]
			t.c += c + d
			t.s += s + u
			t.rc += float64(r*c) + float64(q*d)
			t.rs += float64(r*s) + float64(q*u)
			c, cp = float64(c2*c)-cp, c
			s, sp = float64(c2*s)-sp, s
			d, dp = float64(d2*d)-dp, d
			u, up = float64(d2*u)-up, u
		}
		for k := range high {
			t := &high[k]
			t.c += c + d
			t.s += s + u
			c, cp = float64(c2*c)-cp, c
			s, sp = float64(c2*s)-sp, s
			d, dp = float64(d2*d)-dp, d
			u, up = float64(d2*u)-up, u
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
	a, rhs := normal[:], right[:]
	if n*n > len(normal) {
		a, rhs = make([]float64, n*n), make([]float64, n)
	}
	a, rhs = a[:n*n], rhs[:n]
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
	if !factor(a, n, rankFloor*m) {
		return Series{}, false
	}
	solve(a, rhs)
	coefficients := make([]float64, 2*orders)
	f := Series{Mean: base + rhs[0], Cos: coefficients[:orders:orders], Sin: coefficients[orders:]}
	for k := range orders {
		f.Cos[k], f.Sin[k] = rhs[2*k+1], rhs[2*k+2]
	}
	return f, true
}

// A term is the sums of one order: of its cosines and sines, and of them times the radius.
type term struct{ c, s, rc, rs float64 }

func norm(x, y float64) float64 { return math.Sqrt(float64(x*x) + float64(y*y)) }
