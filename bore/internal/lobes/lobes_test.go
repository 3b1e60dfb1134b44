// SPDX-License-Identifier: BSD-3-Clause

package lobes_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"borewright.example/bore/internal/lobes"
)

// The same least squares by QR of the design matrix, which does not square its condition.
func reference(theta, d []float64, orders int) ([]float64, *mat.Dense) {
	n := 2*orders + 1
	a := mat.NewDense(len(theta), n, nil)
	for i, t := range theta {
		a.Set(i, 0, 1)
		for k := range orders {
			a.Set(i, 2*k+1, math.Cos(float64(2*(k+1))*t))
			a.Set(i, 2*k+2, math.Sin(float64(2*(k+1))*t))
		}
	}
	var x mat.VecDense
	if err := x.SolveVec(a, mat.NewVecDense(len(d), d)); err != nil {
		panic(err)
	}
	var normal, cov mat.Dense
	normal.Mul(a.T(), a)
	if err := cov.Inverse(&normal); err != nil {
		panic(err)
	}
	return x.RawVector().Data, &cov
}

func TestSolveAgainstQR(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		orders := rapid.IntRange(0, 2).Draw(t, "orders")
		n := rapid.IntRange(2*orders+1, 12).Draw(t, "axes")
		theta, d := make([]float64, n), make([]float64, n)
		for i := range theta {
			theta[i] = (float64(i) + rapid.Float64Range(0, 0.5).Draw(t, "off")) * math.Pi / float64(n)
			d[i] = rapid.Float64Range(-300, 300).Draw(t, "d")
		}
		f, ok := lobes.Solve(theta, d, orders)
		if !ok {
			t.Fatal("not solved")
		}
		x, cov := reference(theta, d, orders)
		got := []float64{f.Mean, f.Cos[0], f.Sin[0], f.Cos[1], f.Sin[1]}
		for i, want := range x {
			if math.Abs(got[i]-want) > 1e-8 {
				t.Fatalf("parameter %d: %v, QR %v", i, got[i], want)
			}
			for j := range x {
				if want := cov.At(i, j); math.Abs(f.Cov[i][j]-want) > 1e-8*math.Max(1, math.Abs(want)) {
					t.Fatalf("covariance %d, %d: %v, want %v", i, j, f.Cov[i][j], want)
				}
			}
		}
		for k := range orders {
			// The larger eigenvalue bounds the variance in every direction, and is met in one.
			i, most := 2*k+1, 0.0
			for a := range 3600 {
				s, c := math.Sincos(float64(a) * math.Pi / 3600)
				most = math.Max(most, c*c*cov.At(i, i)+2*c*s*cov.At(i, i+1)+s*s*cov.At(i+1, i+1))
			}
			if v := f.Variance(k); math.Abs(v-most) > 1e-5*most {
				t.Fatalf("variance %v, want %v", v, most)
			}
		}
	})
}

func TestAmplitudeAndPhase(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.IntRange(0, 1).Draw(t, "order")
		m := float64(2 * (k + 1))
		a, phi := rapid.Float64Range(0.1, 100).Draw(t, "a"), rapid.Float64Range(0, 2*math.Pi/m-1e-6).Draw(t, "phi")
		var f lobes.Fit
		f.Cos[k], f.Sin[k] = a*math.Cos(m*phi), a*math.Sin(m*phi)
		amplitude, phase := f.Amplitude(k)
		if math.Abs(amplitude-a) > 1e-12*a || math.Abs(phase-phi) > 1e-12 && math.Abs(phase-phi-2*math.Pi/m) > 1e-12 {
			t.Fatalf("%v at %v, want %v at %v", amplitude, phase, a, phi)
		}
	})
}

func TestRefusals(t *testing.T) {
	for _, c := range []struct {
		theta  []float64
		orders int
	}{
		{nil, 0}, {[]float64{0, 1}, 1}, {[]float64{0, 1, 2, 3}, 2}, {[]float64{0, 1, 2, 3, 4, 5, 6}, 3},
		{[]float64{0, math.Pi, 1}, 1}, {[]float64{0, 1e-6, 1}, 1}, {[]float64{0, 1, 2, 1, 2}, 2},
	} {
		if f, ok := lobes.Solve(c.theta, make([]float64, len(c.theta)), c.orders); ok {
			t.Errorf("%v, %d orders: %v", c.theta, c.orders, f)
		}
	}
}

func TestSolveDoesNotAllocate(t *testing.T) {
	theta, d := make([]float64, 360), make([]float64, 360)
	for i := range theta {
		theta[i] = float64(i) * math.Pi / 360
	}
	if n := testing.AllocsPerRun(10, func() { lobes.Solve(theta, d, 2) }); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

func BenchmarkSolve(b *testing.B) {
	for _, n := range []int{4, 36, 360, 3600} {
		theta, d := make([]float64, n), make([]float64, n)
		for i := range theta {
			theta[i] = float64(i) * math.Pi / float64(n)
			d[i] = math.Cos(2 * theta[i])
		}
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				lobes.Solve(theta, d, min(2, n/2-1))
			}
		})
	}
}

// What is refused would be in doubt by more than 1000/√n times a reading's doubt, and by not much more: at the edge, of few
// axes and of many.
func TestFloorIsARatio(t *testing.T) {
	for _, n := range []int{3, 300} {
		solves := func(spread float64) (f lobes.Fit, ok bool) {
			theta, d := make([]float64, n), make([]float64, n)
			for i := range theta {
				theta[i] = spread * float64(i%3)
				d[i] = 67 + 0.01*float64(i)
			}
			return lobes.Solve(theta, d, 1)
		}
		around := func(spread float64) bool {
			x, y := make([]float64, n), make([]float64, n)
			for i := range x {
				y[i], x[i] = math.Sincos(spread * float64(i%3))
			}
			_, ok := lobes.Around(x, y, 0, 0, 1)
			return ok
		}
		least, most := 1e-6, 1.0 // the spread that is enough, by halves
		for most/least > 1.001 {
			mid := math.Sqrt(least * most)
			if _, ok := solves(mid); ok {
				most = mid
			} else {
				least = mid
			}
		}
		f, _ := solves(most)
		if doubt := math.Sqrt(max(f.Cov[1][1], f.Cov[2][2]) * float64(n)); doubt < 1000 || doubt > 5000 {
			t.Errorf("%d axes: the doubt at the floor is %g/√n of a reading's, want a little over 1000", n, doubt)
		}
		if around(1.9*least) || !around(2.1*most) {
			t.Errorf("%d points: the floor of a series is not where that of a bore's axes is", n)
		}
	}
}
