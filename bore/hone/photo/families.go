// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"
	"slices"
)

// What a direction needs to be taken for a family of lines. Chosen on rendered walls.
const (
	leastZ      = 7.0  // how far it stands out, in standard deviations of chance
	secondShare = 0.15 // how high the second is, in parts of the first
	thirdShare  = 0.55 // and how high a third may be, in parts of the second
	support     = 0.65 // in what share of the parts of the wall the second is seen: a scratch is in few
	supportedBy = 0.3  // seen: of its mean height

	turningLean = 4.0  // degrees from square to the axis
	steepest    = 70.0 // degrees: of steeper lines the two families would run into one another
	lopsided    = 6.0  // degrees: how far the middle of two families may lean to one side

	gridReach = 4.0  // degrees about the rows and columns of the picture, where its grid may feign lines
	gridShare = 0.25 // how much the one may have of what the other has
)

// A peak is a direction that stands out.
type peak struct {
	lean    float64 // degrees
	height  float64
	z       float64 // height over its standard deviation by chance
	support float64 // share of the parts of the wall that have it
}

// peaks returns the crests of the chart, highest first.
func (c *chart) peaks() []peak {
	var out []peak
	for b, x := range c.high {
		if x > 0 && x > c.high[(b+bins-1)%bins] && x >= c.high[(b+1)%bins] {
			_, height := c.high.crest(b)
			out = append(out, peak{c.all.climb(leanOf(float64(b)), 5), height, height / c.chance, c.support(b)})
		}
	}
	slices.SortStableFunc(out, func(a, b peak) int {
		switch {
		case a.height > b.height:
			return -1
		case a.height < b.height:
			return 1
		}
		return 0
	})
	return out
}

// support is the share of the blocks that have a good part of the mean height in bin b.
func (c *chart) support(b int) float64 {
	n := 0
	for i := range c.standing {
		if c.standing[i][b] > supportedBy*c.high[b]*float64(c.roses[i].tiles) {
			n++
		}
	}
	return float64(n) / float64(c.full)
}

// apart is the angle between two directions in degrees, 0 to 90.
func apart(a, b float64) float64 {
	d := math.Abs(math.Mod(a-b, 180))
	return min(d, 180-d)
}

// families returns the leans of the two families of lines in degrees, up and down. Grid holds the leans that the rows and the columns of the picture have on the wall.
func (c *chart) families(grid [2]float64) (up, down float64, err error) {
	ps := c.peaks()
	if len(ps) == 0 || !(ps[0].z >= leastZ) {
		return 0, 0, fmt.Errorf("photo: %w: no direction stands out of the wall", ErrFaint)
	}
	first := ps[0]
	if apart(first.lean, 0) < turningLean {
		return 0, 0, fmt.Errorf("photo: %w: the plainest lines lean by %.1f° from square to the axis", ErrTurning, first.lean)
	}
	if len(ps) < 2 || ps[1].z < leastZ || ps[1].height < secondShare*first.height || ps[1].support < support {
		if onGrid(first, grid) {
			return 0, 0, fmt.Errorf("photo: %w: all that stands out lies along the rows or columns of the picture", ErrFaint)
		}
		return 0, 0, fmt.Errorf("photo: %w: lines lean by %.0f°, and none enough the other way", ErrFamilies, first.lean)
	}
	second := ps[1]
	up, down = max(first.lean, second.lean), min(first.lean, second.lean)
	switch {
	case apart(second.lean, 0) < turningLean:
		return 0, 0, fmt.Errorf("photo: %w: lines lean by %.0f° and by %.0f° from square to the axis", ErrTurning, first.lean, second.lean)
	case up < 0 || down > 0 || math.Abs(up+down) > 2*lopsided:
		return 0, 0, fmt.Errorf("photo: %w: lines lean by %.0f° and %.0f°, not one up and one down alike", ErrFamilies, first.lean, second.lean)
	case up > steepest || down < -steepest:
		return 0, 0, fmt.Errorf("photo: %w: lines lean by %.0f° and %.0f°: steeper than %v° they are not told from marks along the axis",
			ErrFamilies, up, down, steepest)
	}
	if err := c.feigned(first, second, grid); err != nil {
		return 0, 0, err
	}
	for _, p := range ps[2:] {
		if p.z >= leastZ && p.height > thirdShare*second.height {
			return 0, 0, fmt.Errorf("photo: %w: lines lean by %.0f°, %.0f° and %.0f°", ErrFamilies, first.lean, second.lean, p.lean)
		}
	}
	return up, down, nil
}

// onGrid reports whether a peak lies along the rows or the columns of the picture.
func onGrid(p peak, grid [2]float64) bool {
	return apart(p.lean, grid[0]) < gridReach || apart(p.lean, grid[1]) < gridReach
}

// feigned refuses peaks that the grid of the picture may have made. A grid feigns lines along both rows and
// columns: one of them is believed where the other is quiet, and the weaker family not where it is much weaker.
func (c *chart) feigned(first, second peak, grid [2]float64) error {
	for i, one := range [2]peak{first, second} {
		for k, along := range grid {
			if apart(one.lean, along) >= gridReach {
				continue
			}
			other := c.high[binOf(grid[1-k])]
			if i == 1 && one.height < gridShare*first.height || other > gridShare*one.height {
				return fmt.Errorf("photo: %w: lines that lean by %.0f° lie along the rows or columns of the picture, "+
					"whose grid looks the same: turn the camera by some 20°", ErrFaint, one.lean)
			}
		}
	}
	return nil
}
