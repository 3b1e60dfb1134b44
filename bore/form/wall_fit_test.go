// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"gonum.org/v1/gonum/mat"

	"borewright.example/bore/form"
)

// leaningWall makes points of a wall with a form of that size on the radius, off the axis and leaning by so much.
func leaningWall(r *rand.Rand, n int, radius, length, size, lean float64) [][3]float64 {
	toward, phase := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
	sin, cos := math.Sincos(math.Atan(lean))
	var ps [][3]float64
	for k := range n {
		a, h := 2*math.Pi*(float64(k)+r.Float64())/float64(n)*7, length*(r.Float64()-0.5)
		if k < 2 { // both ends
			h = length * (float64(k) - 0.5)
		}
		d := radius + size*(0.5*math.Cos(2*a+phase)+0.3*math.Cos(3*a)+0.2*r.NormFloat64())
		x, y := d*math.Cos(a), d*math.Sin(a)
		x, z := float64(x*cos)+float64(h*sin), float64(h*cos)-float64(x*sin)
		s, c := math.Sincos(toward)
		ps = append(ps, [3]float64{x*c - y*s + 1.7, x*s + y*c - 0.9, z + 40})
	}
	return ps
}

// left is how far the axis, within the wall, and the radius still are from where the squares of what off says of a
// point are least, by the singular values of the slopes, which are taken by differences; and how firmly the points hold
// both, the least eigenvalue of the normal matrix of a point.
func left(t *testing.T, w form.Wall, c form.Upright, off func(c form.Upright, x, y, z float64) float64) (far, firm float64) {
	t.Helper()
	x, y, z := w.Points()
	half, step := 0.0, 1e-4*c.R
	for i := range z {
		half = max(half, math.Abs(z[i]))
	}
	by := func(k int, d float64) form.Upright {
		c := c
		*[]*float64{&c.X, &c.Y, &c.LeanX, &c.LeanY, &c.R}[k] += d / []float64{1, 1, half, half, 1}[k]
		return c
	}
	design, rhs := mat.NewDense(len(x), 5, nil), mat.NewVecDense(len(x), nil)
	for i := range x {
		for k := range 5 {
			design.Set(i, k, (off(by(k, step), x[i], y[i], z[i])-off(by(k, -step), x[i], y[i], z[i]))/(2*step))
		}
		rhs.SetVec(i, off(c, x[i], y[i], z[i]))
	}
	var svd mat.SVD
	if !svd.Factorize(design, mat.SVDThin) {
		t.Fatal("no singular values")
	}
	var m mat.VecDense
	svd.SolveVecTo(&m, rhs, 5)
	least := svd.Values(nil)[4]
	return math.Hypot(m.AtVec(0), m.AtVec(1)) + math.Hypot(m.AtVec(2), m.AtVec(3)) + math.Abs(m.AtVec(4)), least * least / float64(len(x))
}

// The least-squares cylinder lies no farther from where the squares of the distances are least than its steps are said
// to end: 1e-11 of the radius, over how firmly the points hold it; and so is the root mean square about it.
func TestLeastSquaresCylinderIsStationary(t *testing.T) {
	distance := func(c form.Upright, x, y, z float64) float64 {
		u, v := x-c.X, y-c.Y
		along := (u*c.LeanX + v*c.LeanY + z) / math.Sqrt(c.LeanX*c.LeanX+c.LeanY*c.LeanY+1)
		return math.Sqrt(u*u+v*v+z*z-along*along) - c.R
	}
	r := rand.New(rand.NewPCG(31, 7))
	for _, lean := range []float64{0, 1e-4, 1e-3, 3e-3, 0.01, 0.02, 0.03, 0.04, 0.06, 0.09, 0.3} {
		for _, size := range []float64{0, 1e-6, 1e-5, 1e-4, 1e-3, 3e-3} {
			for _, n := range []int{12, 60, 400} {
				const radius = 35
				w := wallOf(t, leaningWall(r, n, radius, radius*(0.8+3*r.Float64()), size*radius, lean))
				c, rms := form.LeastSquaresCylinder(w)
				d, firm := left(t, w, c, distance)
				if !(d <= 1e-11*radius/firm) {
					t.Errorf("lean %g, form %g of the radius, %d points: %.3g mm are left", lean, size, n, d)
				}
				squares := 0.0
				x, y, z := w.Points()
				for i := range x {
					d := distance(c, x[i], y[i], z[i])
					squares += d * d
				}
				if want := math.Sqrt(squares / float64(n)); !(math.Abs(rms-want) <= 1e-11*radius/firm) {
					t.Errorf("lean %g, form %g of the radius, %d points: root mean square %.6g mm, want %.6g", lean, size, n, rms, want)
				}
			}
		}
	}
}

// The algebraic cylinder, from which that starts, makes Σ (d² − r²)² least, d square to the depth: but for the squares of
// the lean and of what its axis moved in the last of its two steps, some forms, over how firmly the points hold it.
func TestAlgebraicCylinder(t *testing.T) {
	r := rand.New(rand.NewPCG(32, 7))
	for _, lean := range []float64{0, 1e-4, 1e-3, 0.01} {
		for _, size := range []float64{0, 1e-5, 1e-3} {
			for _, n := range []int{12, 60, 400} {
				const radius = 35
				w := wallOf(t, leaningWall(r, n, radius, radius*(0.8+3*r.Float64()), size*radius, lean))
				c := form.AlgebraicCylinder(w)
				square := func(c form.Upright, x, y, z float64) float64 {
					u, v := x-c.X-z*c.LeanX, y-c.Y-z*c.LeanY
					return (u*u + v*v - c.R*c.R) / (2 * radius)
				}
				bound := radius * (lean*lean + size*size + 1e-12)
				d, firm := left(t, w, c, square)
				if !(d <= bound/firm) {
					t.Errorf("lean %g, form %g of the radius, %d points: %.3g mm are left, %.3g allowed", lean, size, n, d, bound)
				}
			}
		}
	}
}
