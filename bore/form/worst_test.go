// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"borewright.example/bore/form"
)

// Least squares against Gauss and Newton's step by QR at the answer, which has to vanish, and
// against its neighbours, which have to be worse.
func TestLeastSquaresIsStationary(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := drawBore(t, 4, 40)
		tr := trace(t, ps)
		c, err := tr.LeastSquares()
		must(t, c, err)
		x, y := tr.XY()
		origin := form.OriginOf(tr)
		cx, cy, r := (c.Centre.X - origin.X).In(mm), (c.Centre.Y - origin.Y).In(mm), c.Radius.In(mm)
		squares := func(cx, cy, r float64) (sum float64) {
			for i := range x {
				d := math.Hypot(x[i]-cx, y[i]-cy) - r
				sum += d * d
			}
			return sum
		}
		n := len(x)
		design, rhs := mat.NewDense(n, 3, nil), mat.NewVecDense(n, nil)
		for i := range x {
			d := math.Hypot(x[i]-cx, y[i]-cy)
			design.SetRow(i, []float64{(x[i] - cx) / d, (y[i] - cy) / d, 1})
			rhs.SetVec(i, d-r)
		}
		var step mat.VecDense
		if err := step.SolveVec(design, rhs); err != nil {
			t.Fatal(err)
		}
		if norm := mat.Norm(&step, 2); norm > 3e-9 {
			t.Fatalf("a step of %v mm is left", norm)
		}
		best := squares(cx, cy, r)
		for k := range 6 {
			off := [3]float64{}
			off[k/2] = 1e-6 * float64(k%2*2-1)
			if s := squares(cx+off[0], cy+off[1], r+off[2]); s < best-1e-14*best {
				t.Fatalf("%v is better: %v below %v", off, s, best)
			}
		}
		if rms := math.Sqrt(best / float64(n)); math.Abs(rms-c.RONq.In(mm)) > 2e-9 {
			t.Fatalf("RONq %v, want %v", c.RONq, rms)
		}
	})
}

// Long traces go by way of few of their points; short ones do not. Both must give one answer, in
// any order of the points, and a workspace used before must not remember.
func TestLongTraces(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	var w form.Workspace
	for _, n := range []int{199, 200, 201, 1000, 4096, 4097, 5000, 20_000} {
		for _, scatter := range []float64{0, 1e-4, 0.01} {
			ps := make([]form.Point, n)
			for i := range ps {
				a := 2 * math.Pi * float64(i) / float64(n)
				d := 33.5 + 0.005*math.Cos(2*a+1) + scatter*r.NormFloat64()
				ps[i] = form.Point{X: length(5 + d*math.Cos(a)), Y: length(d * math.Sin(a))}
			}
			mixed := slices.Clone(ps)
			r.Shuffle(n, func(i, j int) { mixed[i], mixed[j] = mixed[j], mixed[i] })
			for kind, solve := range map[form.Reference]func(form.Trace) (form.Circle, error){form.MZCI: w.MinimumZone, form.MCCI: w.MinimumCircumscribed, form.MICI: w.MaximumInscribed} {
				a, err := solve(trace(t, ps))
				must(t, a, err)
				b, err := solve(trace(t, mixed))
				must(t, b, err)
				what := fmt.Sprintf("%v of %d points, scatter %v", kind, n, scatter)
				if (a.Radius-b.Radius).Abs() > 2 || kind == form.MZCI && (a.RONt-b.RONt).Abs() > 2 {
					t.Errorf("%s: %v and, mixed, %v", what, a, b)
				}
				if err := errors.Join(faults(a, trace(t, ps)), faults(b, trace(t, mixed))); err != nil || a.Certificate.Bound > 1 {
					t.Errorf("%s: bound %v, %v", what, a.Certificate.Bound, err)
				}
			}
		}
	}
}

// What has no form, or all of it at once, ends soon, with an answer or an error.
func TestWorstCases(t *testing.T) {
	r := rand.New(rand.NewPCG(3, 3))
	cases := map[string]func(i, n int) (x, y float64){
		"on one circle": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * float64(i) / float64(n)
			return 40 * math.Cos(a), 40 * math.Sin(a)
		},
		"equal":      func(i, n int) (x, y float64) { return 1, 2 },
		"on a line":  func(i, n int) (x, y float64) { return float64(i % 4000), 0 },
		"two places": func(i, n int) (x, y float64) { return float64(i%2) * 100, 0 },
		"three places": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * float64(i%3) / 3
			return 40 * math.Cos(a), 40 * math.Sin(a)
		},
		"four places": func(i, n int) (x, y float64) {
			a := math.Pi / 2 * float64(i%4)
			return 40 * math.Cos(a), 40 * math.Sin(a)
		},
		"two clusters": func(i, n int) (x, y float64) { return float64(i%2)*100 + r.NormFloat64(), r.NormFloat64() },
		"a square": func(i, n int) (x, y float64) {
			s := float64(i/4) / float64(n/4+1) * 80
			return [4]float64{s, 80, 80 - s, 0}[i%4], [4]float64{0, s, 80, 80 - s}[i%4]
		},
		"a filled disc": func(i, n int) (x, y float64) {
			a, d := 2*math.Pi*r.Float64(), 40*math.Sqrt(r.Float64())
			return d * math.Cos(a), d * math.Sin(a)
		},
		"an annulus": func(i, n int) (x, y float64) {
			a, d := 2*math.Pi*r.Float64(), 30+10*r.Float64()
			return d * math.Cos(a), d * math.Sin(a)
		},
		"a grid": func(i, n int) (x, y float64) { return float64(i % 50), float64(i / 50 % 50) },
		"half a circle": func(i, n int) (x, y float64) {
			a := math.Pi * float64(i) / float64(n)
			return 40 * math.Cos(a), 40 * math.Sin(a)
		},
		"one point off": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * float64(i) / float64(n)
			d := 40.
			if i == n/3 {
				d = 60
			}
			return d * math.Cos(a), d * math.Sin(a)
		},
		"one point in": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * float64(i) / float64(n)
			d := 40.
			if i == n/3 {
				d = 0
			}
			return d * math.Cos(a), d * math.Sin(a)
		},
		"an ellipse": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * float64(i) / float64(n)
			return 60 * math.Cos(a), 30 * math.Sin(a)
		},
		"a tenth of a micrometre": func(i, n int) (x, y float64) {
			a := 2 * math.Pi * r.Float64()
			return 1e-4 * math.Cos(a), 1e-4 * math.Sin(a)
		},
	}
	for _, what := range slices.Sorted(maps.Keys(cases)) { // the random ones always alike
		at := cases[what]
		for _, n := range []int{3, 4, 7, 300} {
			x, y := make([]float64, n), make([]float64, n)
			for i := range x {
				x[i], y[i] = at(i, n)
			}
			tr := traceOf(t, x, y)
			if c, err := tr.LeastSquares(); err != nil && !errors.Is(err, form.ErrArc) && !errors.Is(err, form.ErrPoints) {
				t.Errorf("%d points, %s: LSCI %v, %v", n, what, c, err)
			}
			for kind, solve := range solvers {
				c, err := solve(tr)
				switch {
				case err != nil && !errors.Is(err, form.ErrArc) && !errors.Is(err, form.ErrPoints):
					t.Errorf("%d points, %s: %v: %v", n, what, kind, err)
				case err == nil && faults(c, tr) != nil:
					t.Errorf("%d points, %s: %v: %v; %+v", n, what, kind, faults(c, tr), c)
				}
			}
		}
	}
}

// A million points in one place, and on one circle.
func TestAMillionPoints(t *testing.T) {
	const n = 1_000_000
	ps := make([]form.Point, n)
	for i := range ps {
		ps[i] = form.Point{X: 5 * mm, Y: mm}
	}
	equal := trace(t, ps)
	for kind, solve := range solvers {
		if _, err := solve(equal); !errors.Is(err, form.ErrPoints) {
			t.Errorf("equal points: %v: %v", kind, err)
		}
	}
	if _, err := equal.LeastSquares(); !errors.Is(err, form.ErrPoints) {
		t.Error(err)
	}
	for i := range ps {
		s, c := math.Sincos(2 * math.Pi * float64(i) / n)
		ps[i] = form.Point{X: length(40 * c), Y: length(40 * s)}
	}
	circle := trace(t, ps)
	for kind, solve := range solvers {
		if c, err := solve(circle); err != nil || c.RONt > 3 || (c.Radius-40*mm).Abs() > 3 {
			t.Errorf("one circle: %v: %v, %v", kind, c, err)
		}
	}
}

// A cylinder of a million points, round to rounding, holds any of them as a contact; one with lobes and a barrel is
// usual.
func TestAWallOfAMillionPoints(t *testing.T) {
	const n = 1_000_000
	ps := make([]form.WallPoint, n)
	for _, lobes := range []float64{0, 0.002} {
		for i := range ps {
			s, c := math.Sincos(float64(i))
			r := 40 + lobes*(math.Sin(3*float64(i))+math.Cos(float64(i)/3e5))
			ps[i] = form.WallPoint{X: length(r * c), Y: length(r * s), Depth: length(float64(i) / 1e4)}
		}
		w, err := form.FromWallPoints(ps)
		must(t, w, err)
		for _, kind := range []form.Reference{form.LSCY, form.MZCY} {
			c, err := w.Cylindricity(kind)
			must(t, c, err)
			if err := c.Check(w); err != nil && !errors.Is(err, form.ErrUnproved) {
				t.Error(err)
			}
			if off := c.CYLt - length(4*lobes); off.Abs() > 1000*pm { // no point is at the very peak, and the axis leans a little
				t.Errorf("%v: CYLt %v, lobes of %v mm", kind, c.CYLt, lobes)
			}
		}
	}
}

func TestWorkspaceDoesNotAllocate(t *testing.T) {
	var w form.Workspace
	for _, n := range []int{8, 36, 360, 3600, 36_000} {
		tr := invented(n)
		for kind, solve := range map[form.Reference]func(form.Trace) (form.Circle, error){
			form.LSCI: w.LeastSquares, form.MZCI: w.MinimumZone, form.MCCI: w.MinimumCircumscribed, form.MICI: w.MaximumInscribed,
		} {
			if a := testing.AllocsPerRun(3, func() {
				if _, err := solve(tr); err != nil {
					t.Fatal(err)
				}
			}); a != 0 {
				t.Errorf("%v of %d points: %v allocations", kind, n, a)
			}
		}
	}
}
