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

// The crest of three bins is that of the parabola through them, also across the end of the half turn.
func TestCrest(t *testing.T) {
	for _, at := range []int{0, 5, photo.Bins - 1} {
		for _, off := range []float64{-0.4, 0, 0.3} {
			var p [photo.Bins]float64
			for d := -1; d <= 1; d++ {
				x := float64(d) - off
				p[(at+d+photo.Bins)%photo.Bins] = 3 - 2*x*x
			}
			lean, height := photo.Crest(p, at)
			near(t, "lean", lean, -90+(float64(at)+off)*photo.BinSize, 1e-9)
			near(t, "height", height, 3, 1e-12)
		}
	}
}

// Rings count alike where the halves of the wall agree alike in all, the first and the last too; those in which they agree
// more count more, those in which they contradict each other not at all; and all together count as one.
func TestTrust(t *testing.T) {
	family := func(lean, high float64) (p [photo.Bins]float64) {
		for b := range p {
			d := (-90 + float64(b)*photo.BinSize - lean) / 3
			p[b] = high * math.Exp(-d*d/2)
		}
		return p
	}
	const rings = 12
	for name, high := range map[string]func(k, half int) float64{
		"alike":   func(k, half int) float64 { return 1 },
		"more":    func(k, half int) float64 { return 1 + float64(k/6) },
		"against": func(k, half int) float64 { return 1 - 2*float64(half*(k/6)) },
	} {
		var halves [2][][photo.Bins]float64
		for half := range halves {
			for k := range rings {
				halves[half] = append(halves[half], family(20, high(k, half)))
			}
		}
		got := photo.TrustOf(halves)
		sum := 0.0
		for _, x := range got {
			sum += x
		}
		near(t, name+", sum", sum, 1, 1e-12)
		near(t, name+", first two", got[1], got[0], 1e-12)
		near(t, name+", last two", got[rings-2], got[rings-1], 1e-12)
		switch last := got[rings-1] / got[0]; name {
		case "alike":
			near(t, name, last, 1, 1e-12)
		case "more":
			near(t, name, last, 4, 1e-9) // twice as high in both halves
		case "against":
			near(t, name, last, 0, 0)
		}
	}
}

// A crest is climbed to from either side, over the end of the half turn too, and from a valley to the higher side; one that is
// farther than the reach is not.
func TestClimb(t *testing.T) {
	hill := func(lean float64) (p [photo.Bins]float64) {
		for b := range p {
			d := math.Remainder(-90+float64(b)*photo.BinSize-lean, 180)
			p[b] = -d * d
		}
		return p
	}
	for _, crest := range []float64{-89.8, 12.2, 30, 89.5} {
		for _, from := range []float64{-9, -1, 0, 1, 9} {
			got := photo.Climb(hill(crest), crest+from, 12)
			near(t, "crest", math.Remainder(got-crest, 180), 0, 1e-9)
		}
		if got := photo.Climb(hill(crest), crest+40, 12); math.Abs(math.Remainder(got-crest, 180)) < 20 {
			t.Errorf("from 40° away to %v°, within 12°", got)
		}
	}
	var valley [photo.Bins]float64
	for b := range valley {
		valley[b] = -math.Abs(float64(b%20) - 10) // crests at bins 10, 30, 50, valleys at 20, 40
	}
	lean := func(b float64) float64 { return -90 + b*photo.BinSize }
	for higher, want := range map[int]float64{19: 10, 21: 30} {
		p := valley
		p[higher] += 0.5
		near(t, "from the valley", photo.Climb(p, lean(20), 12), lean(want), 1e-9)
	}
}
