// SPDX-License-Identifier: BSD-3-Clause

package photo_test

import (
	"math"
	"testing"

	"borewright.example/bore/hone/photo"
)

// Lines whose leans are spread normally about one, each a ridge of one breadth at all radii, on an even ground: their spread
// comes back to half a degree, and that of lines of one lean is nothing to speak of.
func TestSpreadOfManyLines(t *testing.T) {
	for _, lean := range []float64{-50, 12, 30.3} {
		for _, want := range []float64{0, 1, 2.5, 4} {
			power := func(radius, at float64) float64 {
				breadth := photo.Lobe / radius * 180 / math.Pi
				p := 2.0
				for i := range 61 { // lines from three spreads below to three above, as many as the normal curve has
					z := float64(i-30) / 10
					d := (at - lean - z*want) / breadth
					p += radius * math.Exp(-z*z/2) * math.Exp(-d*d/2)
				}
				return p
			}
			if got := photo.SpreadOf(power, lean); math.Abs(got-want) > 0.5 {
				t.Errorf("leans of %v° ± %v°: %v°", lean, want, got)
			}
		}
	}
}

// Smoothing spreads one direction into a normal curve of the standard deviation asked for, cut off at three of them, which
// leaves 0.987 of it; it moves nothing, loses nothing and leaves an even profile even, across the ends of the half turn too.
func TestSmooth(t *testing.T) {
	for _, degrees := range []float64{2, 5, 20} {
		for _, at := range []int{0, 7, 120, photo.Bins - 1} {
			var one, even [photo.Bins]float64
			one[at] = 1
			for i := range even {
				even[i] = 3
			}
			var sum, first, square float64
			for i, x := range photo.Smooth(one, degrees) {
				d := float64((i-at+3*photo.Bins/2)%photo.Bins-photo.Bins/2) * photo.BinSize
				sum, first, square = sum+x, first+x*d, square+x*d*d
			}
			near(t, "sum", sum, 1, 1e-12)
			near(t, "middle", first, 0, 1e-9)
			near(t, "standard deviation", math.Sqrt(square), 0.987*degrees, 0.015*degrees)
			for _, x := range photo.Smooth(even, degrees) {
				near(t, "even", x, 3, 1e-12)
			}
		}
	}
}
