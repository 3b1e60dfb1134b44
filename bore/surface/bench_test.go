// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// invented is a plateau-honed wall of n points, half a micrometre apart: scatter, less of it on top, and
// grooves.
func invented(n int) []units.Length {
	r := rand.New(rand.NewPCG(uint64(n), 1))
	z := make([]units.Length, n)
	depth := 0.0
	for i := range z {
		if i%140 == 0 {
			depth = 4 * r.Float64()
		}
		h := r.NormFloat64() * 0.5
		if h > 0.1 {
			h = 0.1 + (h-0.1)/3
		}
		if at := i % 140; at < 50 {
			h -= depth * (1 - float64(max(at-25, 25-at))/25)
		}
		z[i] = units.Length(h * float64(um))
	}
	return z
}

// BenchmarkTexture is λs, both steps of λc, and all parameters, from a profile in memory, all of it evaluated:
// of 8000 points 4 mm by five sections of 0.8 mm.
func BenchmarkTexture(b *testing.B) {
	for _, n := range []int{1000, 8000, 64_000} {
		b.Run(fmt.Sprint(n), func(b *testing.B) {
			p, err := surface.FromHeights(um/2, invented(n))
			must(b, p, err)
			f := surface.Filter{CutOff: units.Length(n) * um / 10, Short: 5 * um / 2, Sections: 5}
			b.ReportAllocs()
			for b.Loop() {
				if _, err := p.Texture(f); err != nil {
					b.Fatal(err)
				}
			}
			b.ReportMetric(float64(b.Elapsed().Nanoseconds())/float64(b.N)/float64(n), "ns/point")
		})
	}
}

// BenchmarkReach is the search for the cut that leaves a wanted Rpk.
func BenchmarkReach(b *testing.B) {
	p, err := surface.FromHeights(um/2, invented(8000))
	must(b, p, err)
	r, err := p.TwoStep(surface.Filter{CutOff: 800 * um, Sections: 4})
	c := must(b, r, err).Curve()
	b.ReportAllocs()
	for b.Loop() {
		if _, err := c.Reach(c.Plateau().Rpk / 3); err != nil {
			b.Fatal(err)
		}
	}
}
