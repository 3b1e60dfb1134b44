// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/units"
)

var sizes = []int{8, 36, 360, 3600, 100_000}

// invented is a bore of 67 mm with lobes 2, 3 and 5, scatter and eccentricity, n points in order.
func invented(n int) form.Trace {
	r := rand.New(rand.NewPCG(uint64(n), 1))
	ps := make([]form.Point, n)
	for i := range ps {
		a := 2 * math.Pi * float64(i) / float64(n)
		d := 33.5 + 0.0025*math.Cos(2*(a-0.3)) + 0.0014*math.Cos(3*(a-1)) + 0.0008*math.Cos(5*a) + 0.0002*r.NormFloat64()
		ps[i] = form.Point{X: length(0.03 + d*math.Cos(a)), Y: length(-0.02 + d*math.Sin(a))}
	}
	t, err := form.FromPoints(ps)
	if err != nil {
		panic(err)
	}
	return t
}

func benchmark(b *testing.B, solve func(*form.Workspace, form.Trace) (form.Circle, error)) {
	for _, n := range sizes {
		t := invented(n)
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			b.ReportAllocs()
			var w form.Workspace
			for b.Loop() {
				if _, err := solve(&w, t); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
		})
	}
}

func BenchmarkLeastSquares(b *testing.B) { benchmark(b, (*form.Workspace).LeastSquares) }
func BenchmarkMinimumZone(b *testing.B)  { benchmark(b, (*form.Workspace).MinimumZone) }
func BenchmarkMinimumCircumscribed(b *testing.B) {
	benchmark(b, (*form.Workspace).MinimumCircumscribed)
}
func BenchmarkMaximumInscribed(b *testing.B) { benchmark(b, (*form.Workspace).MaximumInscribed) }

func BenchmarkFromPoints(b *testing.B) {
	ps := make([]form.Point, 3600)
	for i := range ps {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 3600)
		ps[i] = form.Point{X: length(33.5 * c), Y: length(33.5 * s)}
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := form.FromPoints(ps); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkHarmonics(b *testing.B) {
	for _, n := range []int{36, 360, 3600} {
		for _, most := range []int{3, 15} {
			t := invented(n)
			b.Run(fmt.Sprintf("%d/%d", n, most), func(b *testing.B) {
				b.ReportAllocs()
				for b.Loop() {
					if _, _, err := t.Harmonics(form.Point{}, most); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}

func BenchmarkFilter(b *testing.B) {
	for _, cutoff := range []int{15, 50, 500} {
		rs := make([]units.Length, 3600)
		for i := range rs {
			rs[i] = length(33.5 + 0.003*math.Cos(float64(i)/100))
		}
		t, err := form.FromRadii(rs)
		if err != nil {
			b.Fatal(err)
		}
		b.Run(fmt.Sprint(cutoff), func(b *testing.B) {
			for b.Loop() {
				if _, err := t.Filter(cutoff); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}
