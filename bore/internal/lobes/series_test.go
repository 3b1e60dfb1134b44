// SPDX-License-Identifier: BSD-3-Clause

package lobes_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"borewright.example/bore/internal/lobes"
)

// The same series by QR of the design matrix, with angles by arc tangent.
func TestAroundAgainstQR(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		orders := rapid.IntRange(0, 20).Draw(t, "orders")
		n := rapid.IntRange(2*orders+1, 2*orders+12).Draw(t, "points")
		x, y := make([]float64, n), make([]float64, n)
		cx, cy := rapid.Float64Range(-1, 1).Draw(t, "cx"), rapid.Float64Range(-1, 1).Draw(t, "cy")
		a, b := mat.NewDense(n, 2*orders+1, nil), mat.NewVecDense(n, nil)
		for i := range x {
			angle := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.4).Draw(t, "off")) / float64(n)
			r := 40 + rapid.Float64Range(-0.1, 0.1).Draw(t, "r")
			x[i], y[i] = cx+r*math.Cos(angle), cy+r*math.Sin(angle)
			angle = math.Atan2(y[i]-cy, x[i]-cx)
			a.Set(i, 0, 1)
			for k := 1; k <= orders; k++ {
				a.Set(i, 2*k-1, math.Cos(float64(k)*angle))
				a.Set(i, 2*k, math.Sin(float64(k)*angle))
			}
			b.SetVec(i, r)
		}
		f, ok := lobes.Around(x, y, cx, cy, orders)
		if !ok {
			t.Fatal("not solved")
		}
		var want mat.VecDense
		if err := want.SolveVec(a, b); err != nil {
			t.Fatal(err)
		}
		if len(f.Cos) != orders || len(f.Sin) != orders {
			t.Fatalf("%d cosines and %d sines of %d orders", len(f.Cos), len(f.Sin), orders)
		}
		if math.Abs(f.Mean-want.AtVec(0)) > 1e-9 {
			t.Fatalf("mean %v, QR %v", f.Mean, want.AtVec(0))
		}
		for k := range orders {
			if math.Abs(f.Cos[k]-want.AtVec(2*k+1)) > 1e-9 || math.Abs(f.Sin[k]-want.AtVec(2*k+2)) > 1e-9 {
				t.Fatalf("order %d: %v, %v, QR %v, %v", k+1, f.Cos[k], f.Sin[k], want.AtVec(2*k+1), want.AtVec(2*k+2))
			}
		}
	})
}

func TestAroundRefusals(t *testing.T) {
	for _, c := range []struct {
		x, y   []float64
		orders int
	}{
		{[]float64{1, 0}, []float64{0, 1}, 1},              // too few
		{[]float64{1, 2, 3}, []float64{1, 2, 3}, 1},        // one direction
		{[]float64{1, 0, 0, -1}, []float64{0, 0, 1, 0}, 1}, // a point at the centre
		{[]float64{1, 0, -1}, []float64{0, 1, 0}, -1},
	} {
		if f, ok := lobes.Around(c.x, c.y, 0, 0, c.orders); ok {
			t.Errorf("%v, %d orders: %v", c.x, c.orders, f)
		}
	}
}

func BenchmarkAround(b *testing.B) {
	for _, n := range []int{36, 3600} {
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			s, c := math.Sincos(2 * math.Pi * float64(i) / float64(n))
			x[i], y[i] = 67*c, 67*s
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				lobes.Around(x, y, 0, 0, 3)
			}
		})
	}
}

// Every order comes back as it was put in, up to high ones, of an even and an odd number of
// points.
func TestAroundHighOrders(t *testing.T) {
	const orders = 250
	for _, n := range []int{800, 801} {
		x, y := make([]float64, n), make([]float64, n)
		r := rand.New(rand.NewPCG(89, uint64(n)))
		var in [orders]complex128
		for k := range in {
			in[k] = complex(1e-3*r.NormFloat64(), 1e-3*r.NormFloat64())
		}
		for i := range x {
			a := 2 * math.Pi * (float64(i) + 0.4*r.Float64()) / float64(n)
			d := 40.0
			for k, v := range in {
				s, c := math.Sincos(float64(k+1) * a)
				d += real(v)*c + imag(v)*s
			}
			s, c := math.Sincos(a)
			x[i], y[i] = d*c, d*s
		}
		f, ok := lobes.Around(x, y, 0, 0, orders)
		if !ok {
			t.Fatal("not solved")
		}
		off := math.Abs(f.Mean - 40)
		for k, v := range in {
			off = max(off, math.Abs(f.Cos[k]-real(v)), math.Abs(f.Sin[k]-imag(v)))
		}
		if t.Logf("%d points: off by %.1e", n, off); off > 1e-11 {
			t.Errorf("%d points: off by %v", n, off)
		}
	}
}
