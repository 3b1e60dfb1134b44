// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package main

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/units"
)

// Sheets of 35° to 120° in tubes, by lenses that bend by up to 3 % at the corners, by cameras tilted along the
// bore by up to 25°, with dark corners, rolling light, noise, and corners marked to half a pixel.
func TestDeepLens(t *testing.T) {
	const n = 40
	for _, bend := range []float64{-0.03, -0.01, 0, 0.01, 0.03} {
		answered, covered := 0, 0
		var sum, square, us float64
		for i := range uint64(n) {
			r := rand.New(rand.NewPCG(i, 177))
			span := func(a, b float64) float64 { return a + r.Float64()*(b-a) }
			truth := math.Round(span(35, 120))
			c := camera{
				bore: math.Round(span(60, 110)), round: 10, along: 5, w: 640, h: 480, tilt: span(-25, 25), roll: span(-20, 20),
				bend: bend, shade: 0.4, flicker: 0.1, noise: func() float64 { return 2 * r.NormFloat64() },
			}
			c.away = min(span(18, 50), 0.9*c.bore)
			c.f = c.away / span(22, 28) * 640
			m, err := c.shot(darkness(ruled(t, text(truth), text(c.bore), "10x5"), 34), r).Crosshatch()
			if err != nil {
				continue
			}
			off, u := m.Crosshatch.Included().In(units.Degree)-truth, expanded(t, m)
			answered++
			if math.Abs(off) <= u {
				covered++
			}
			sum, square, us = sum+off, square+off*off, us+u
		}
		k := float64(answered)
		t.Logf("bent by %v: %d of %d answered, %d covered; off by %+.2f° on the mean, %.2f° as the root of the mean square; mean U95 %.2f°",
			bend, answered, n, covered, sum/k, math.Sqrt(square/k), us/k)
		if answered < n*3/4 || covered < answered*9/10 {
			t.Error("too few")
		}
	}
}
