// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"
)

// lobe is the width of what one line makes of a spectrum through Hann's window, as a standard deviation in
// periods to a tile. The window alone makes it 0.6; lines end and have a width.
const lobe = 0.75

// Of the spread of a family, in degrees.
const (
	spreadStep = 0.25
	spreadMost = 12.0
	spreadBins = 16 // to either side
)

// spread returns the standard deviation, in degrees, of the leans of the lines of a family: a line is a ridge
// of the same breadth at all radii, so towards the middle of a rose its angle widens; a spread of leans is as
// wide at every radius. The spread is that whose ridge fits all rings best, each of its own height and on its
// own ground.
func (r *rose) spread(trust []float64, lean float64) float64 {
	least, at := math.Inf(1), 0.0
	middle := binOf(lean)
	const n = 2*spreadBins + 1
	for s := 0.0; s <= spreadMost; s += spreadStep {
		var total float64
		for k := range r.rings {
			if trust[k] == 0 {
				continue
			}
			width := lobe / float64(leastRing+k) * 180 / math.Pi
			double := 2 * (float64(width*width) + float64(s*s))
			var g, gg, q, qg, qq float64
			for i := -spreadBins; i <= spreadBins; i++ {
				x := r.rings[k][(middle+i+bins)%bins]/float64(r.tiles) + 1
				x *= x // amplitude to power
				d := leanOf(float64(middle+i)) - lean
				f := math.Exp(-d * d / double)
				g += f
				gg += float64(f * f)
				q += x
				qg += float64(x * f)
				qq += float64(x * x)
			}
			gg -= float64(g * g / n)
			qg -= float64(q * g / n)
			qq -= float64(q * q / n)
			height := max(0, qg/gg)
			total += float64(trust[k] * (qq - float64(2*height*qg) + float64(height*height*gg)))
		}
		if total < least {
			least, at = total, s
		}
	}
	return at
}

// When leans change over a wall, in degrees. Chosen on rendered walls, honed evenly and by a swinging hand.
const (
	wideSpread  = 2.4 // of a family: more is no angle
	someSpread  = 1.8 // of both together: more is a range
	leastTrend  = 0.5 // from end to end of the wall, along the bore, beyond trendRatio times that round it
	trendRatio  = 1.5
	shapeMost   = 0.3 // by how much smoothing shifts the angle: a swing leaves a tail of flat lines
	tailOfSwing = 2.9 // how far down the range goes, in spreads of both families: a tail of flat lines again
	headOfSwing = 1.3 // and how far up: a swing has a steepest line
)

// A reach is how far the angle goes below and above its mean over the wall seen, in degrees, where it was seen
// to spread.
type reach struct {
	low, high float64
	seen      bool
}

// reach looks for leans that change along the bore, as those of a swinging hand do, and for families of many
// leans. Round the bore nothing should change: what does is chance, and measures it.
func (c *chart) reach(up, down float64) (reach, error) {
	whole := rose{rings: make([]profile, len(c.trust))}
	for i := range c.roses {
		whole.add(&c.roses[i])
	}
	su, sd := whole.spread(c.trust, up), whole.spread(c.trust, down)
	if wide := max(su, sd); wide > wideSpread {
		return reach{}, fmt.Errorf("photo: %w: those of one family by %.1f°, as a standard deviation", ErrSpread, wide)
	}
	if c.shapeStd(up, down) > shapeMost {
		return reach{}, fmt.Errorf("photo: %w: a family has more to one side of it than to the other, from a hand that swings or from other lines beside it", ErrSpread)
	}
	low, high := c.ends(up, down, func(i int) int { return i / across })
	left, right := c.ends(up, down, func(i int) int { return i % across })
	if su+sd <= someSpread && high-low <= trendRatio*(right-left)+leastTrend {
		return reach{}, nil
	}
	return reach{low - float64(tailOfSwing*(su+sd)) - (high-low)/2, high + float64(headOfSwing*(su+sd)), true}, nil
}

// ends returns by how much the angle of the strips that part makes of the blocks falls below and rises above
// that of the whole.
func (c *chart) ends(up, down float64, part func(i int) int) (low, high float64) {
	for k := range across {
		p, n := c.mean(func(i int) bool { return part(i) == k })
		if n < leastStrip {
			continue
		}
		d := p.climb(up, astray) - p.climb(down, astray) - (up - down)
		low, high = min(low, d), max(high, d)
	}
	return low, high
}

// leastStrip is how many tiles a strip needs to be asked.
const leastStrip = 3
