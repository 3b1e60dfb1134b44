// SPDX-License-Identifier: BSD-3-Clause

package photo

import "math"

// SquareSums are the sums of a plane of w by h over the squares up to reach away, a row after the other.
func SquareSums(plane []float32, w, h, reach int) []float64 {
	var out []float64
	s := newSquare(plane, w, h, reach)
	for range h {
		out = append(out, s.next()...)
	}
	return out
}

// BinSize is the step of directions in degrees, Bins how many there are in half a turn.
const (
	BinSize = binSize
	Bins    = bins
)

// Smooth is a profile of directions, smoothed by so many degrees.
func Smooth(p [bins]float64, degrees float64) [bins]float64 { return (*profile)(&p).smooth(degrees) }

// SpreadOf is the spread found about a lean in a rose whose power at a radius, in periods to a tile, and a lean is given.
func SpreadOf(power func(radius, lean float64) float64, lean float64) float64 {
	const side = 64
	r := rose{rings: make([]profile, ringsOf(side)), tiles: 1}
	trust := make([]float64, len(r.rings))
	for k := range r.rings {
		trust[k] = 1
		for b := range bins {
			r.rings[k][b] = math.Sqrt(power(float64(leastRing+k), leanOf(float64(b)))) - 1
		}
	}
	return r.spread(trust, lean)
}

// Lobe is the breadth of a single line, as a standard deviation in periods to a tile.
const Lobe = lobe

// Crest is where a profile is highest about a bin, and how high.
func Crest(p [bins]float64, b int) (lean, height float64) { return (*profile)(&p).crest(b) }

// TrustOf is what each ring counts of a wall whose two halves have these profiles in each ring.
func TrustOf(halves [2][][bins]float64) []float64 {
	var r [2]rose
	for i, rings := range halves {
		for _, p := range rings {
			r[i].rings = append(r[i].rings, profile(p))
		}
	}
	return trust(r)
}

// Climb walks a profile from a lean to the next crest, up to reach degrees away.
func Climb(p [bins]float64, lean, reach float64) float64 { return (*profile)(&p).climb(lean, reach) }

// Poses is how many poses of the camera fit the corners, none of them twice.
func Poses(m Measured) int { return len(m.view.fits) }
