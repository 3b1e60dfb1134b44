// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"math"
	"slices"
)

// across is into how many blocks the wall is cut each way, to see how far they agree.
const across = 4

// A chart is what the tiles of a picture say of directions, by blocks of the wall, row after row.
type chart struct {
	roses    [across * across]rose
	trust    []float64
	blocks   [across * across]profile // fine, the sum over the tiles of a block
	standing [across * across]profile // the same, standing
	all      profile                  // fine, the mean over all tiles
	high     profile                  // standing, the same
	chance   float64                  // standard deviation of high in a direction without lines
	tiles    int
	full     int // blocks that hold a tile
}

func newChart(side int) *chart {
	c := &chart{}
	for i := range c.roses {
		c.roses[i] = newRose(side)
	}
	return c
}

// rose returns the rose of a block, to add a tile to.
func (c *chart) rose(block int) *rose {
	r := &c.roses[block]
	if r.tiles == 0 {
		c.full++
	}
	c.tiles++
	return r
}

// close joins the rings of the roses.
func (c *chart) close(side int) {
	halves := [2]rose{newRose(side), newRose(side)}
	for i := range c.roses {
		halves[(i%across+i/across)%2].add(&c.roses[i])
	}
	c.trust = trust(halves)
	for i := range c.roses {
		p := c.roses[i].joined(c.trust)
		c.blocks[i], c.standing[i] = p.smooth(fine), p.standing()
		c.all.add(&c.blocks[i], 1/float64(c.tiles))
		c.high.add(&c.standing[i], 1/float64(c.tiles))
	}
	var spread profile
	n := float64(c.full)
	for b := range spread {
		for i := range c.standing {
			d := c.standing[i][b] - float64(float64(c.roses[i].tiles)*c.high[b])
			spread[b] += float64(d * d)
		}
		spread[b] = math.Sqrt(spread[b]*n/(n-1)) / float64(c.tiles)
	}
	slices.Sort(spread[:])
	c.chance = spread[bins/2]
}

// mean is the mean profile of the blocks that are wanted, and of how many tiles.
func (c *chart) mean(want func(i int) bool) (out profile, tiles int) {
	for i := range c.blocks {
		if want(i) {
			out.add(&c.blocks[i], 1)
			tiles += c.roses[i].tiles
		}
	}
	for b := range out {
		out[b] /= float64(max(tiles, 1))
	}
	return out, tiles
}

// crest returns where the profile is highest about bin b, by the parabola through three bins.
func (p *profile) crest(b int) (lean, height float64) {
	l, m, r := p[(b+bins-1)%bins], p[b], p[(b+1)%bins]
	bend := l - 2*m + r
	if !(bend < 0) {
		return leanOf(float64(b)), m
	}
	off := max(-1, min(1, (l-r)/(2*bend)))
	return leanOf(float64(b) + off), m - float64((l-r)*off)/4
}

// climb walks from a lean to the next crest, up to reach degrees away.
func (p *profile) climb(lean, reach float64) float64 {
	start := binOf(lean)
	b := start
	for range int(reach / binSize) {
		l, r := (b+bins-1)%bins, (b+1)%bins
		switch {
		case p[r] > p[b] && p[r] >= p[l]:
			b = r
		case p[l] > p[b]:
			b = l
		default:
			at, _ := p.crest(b)
			return at
		}
	}
	return leanOf(float64(b))
}
