// SPDX-License-Identifier: BSD-3-Clause

package circle_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/internal/circle"
)

// brute tries every circle through two and three points.
func brute(x, y []float64) float64 {
	best := math.Inf(1)
	try := func(cx, cy float64) {
		var r float64
		for i := range x {
			r = math.Max(r, math.Hypot(x[i]-cx, y[i]-cy))
		}
		best = math.Min(best, r)
	}
	n := len(x)
	for i := range n {
		try(x[i], y[i])
		for j := range i {
			try((x[i]+x[j])/2, (y[i]+y[j])/2)
			for k := range j {
				ax, ay, bx, by := x[i]-x[k], y[i]-y[k], x[j]-x[k], y[j]-y[k]
				if d := 2 * (ax*by - ay*bx); d != 0 {
					aa, bb := ax*ax+ay*ay, bx*bx+by*by
					try(x[k]+(by*aa-ay*bb)/d, y[k]+(ax*bb-bx*aa)/d)
				}
			}
		}
	}
	return best
}

// checkProof checks the certificate with nothing but itself: all points inside, the contacts on
// the circle, the weights balancing them at the centre.
func checkProof(t *rapid.T, c circle.Circle, x, y []float64, tolerance float64) {
	for i := range x {
		if d := math.Hypot(x[i]-c.X, y[i]-c.Y); d > c.R+tolerance {
			t.Fatalf("point %d lies %g outside", i, d-c.R)
		}
	}
	var sum, sx, sy float64
	for k, w := range c.Weights {
		if w < 0 {
			t.Fatalf("weight %v", c.Weights)
		}
		if w == 0 {
			continue
		}
		p := c.Contacts[k]
		if d := math.Abs(math.Hypot(x[p]-c.X, y[p]-c.Y) - c.R); d > tolerance {
			t.Fatalf("contact %d lies %g off the circle", p, d)
		}
		sum, sx, sy = sum+w, sx+w*x[p], sy+w*y[p]
	}
	if math.Abs(sum-1) > 1e-12 || math.Hypot(sx-c.X, sy-c.Y) > 1e-7 {
		t.Fatalf("weights %v sum to %v and balance at %v, %v instead of %v, %v", c.Weights, sum, sx, sy, c.X, c.Y)
	}
}

func TestEnclosingIsSmallest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 12).Draw(t, "n")
		grid := rapid.Bool().Draw(t, "grid")
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			if grid { // many equal, collinear and cocircular points
				x[i], y[i] = float64(rapid.IntRange(-3, 3).Draw(t, "x")), float64(rapid.IntRange(-3, 3).Draw(t, "y"))
			} else {
				x[i], y[i] = rapid.Float64Range(-40, 40).Draw(t, "x"), rapid.Float64Range(-40, 40).Draw(t, "y")
			}
		}
		c := circle.Enclosing(x, y)
		if want := brute(x, y); math.Abs(c.R-want) > 1e-11 {
			t.Fatalf("radius %.15g, brute force %.15g", c.R, want)
		}
		checkProof(t, c, x, y, 1e-11)
	})
}

// A worn bore: a circle but for micrometres, and many points.
func TestEnclosingOfABore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(4, 400).Draw(t, "n")
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			r := 33.5 + rapid.Float64Range(0, 0.3).Draw(t, "wear")
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			x[i], y[i] = r*c, r*s
		}
		checkProof(t, circle.Enclosing(x, y), x, y, 1e-12)
	})
}

// All points on one circle, and all in one place.
func TestEnclosingOfEqualPoints(t *testing.T) {
	for _, n := range []int{1, 2, 3, 4, 1000, 100_000} {
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			x[i], y[i] = 33.5*c, 33.5*s
		}
		want := 33.5
		if n == 1 {
			want = 0
		}
		if c := circle.Enclosing(x, y); math.Abs(c.R-want) > 1e-12 {
			t.Errorf("%d points on a circle: %v", n, c)
		}
		for i := range x {
			x[i], y[i] = 7, -3
		}
		if c := circle.Enclosing(x, y); c.R != 0 || c.X != 7 || c.Y != -3 {
			t.Errorf("%d points in one place: %v", n, c)
		}
	}
}

// An acute triangle and a point inside, in every order.
func TestEnclosingInEveryOrder(t *testing.T) {
	px, py := []float64{0, 4, 1.5, 1.8}, []float64{0, 0.5, 3.5, 1.2}
	want := brute(px, py)
	for a := range 4 {
		for b := range 4 {
			for c := range 4 {
				d := 6 - a - b - c
				if a == b || a == c || b == c || d < 0 || d > 3 || d == a || d == b || d == c {
					continue
				}
				x, y := []float64{px[a], px[b], px[c], px[d]}, []float64{py[a], py[b], py[c], py[d]}
				got := circle.Enclosing(x, y)
				if math.Abs(got.R-want) > 1e-14 || min(got.Weights[0], got.Weights[1], got.Weights[2]) < 0.1 {
					t.Errorf("order %d%d%d%d: %v, want radius %v on three points", a, b, c, d, got, want)
				}
			}
		}
	}
}
