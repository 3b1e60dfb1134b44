// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Cover is how many strokes it takes until abrasive has touched all of the wall.
type Cover struct {
	// Share is the share of the wall that one stroke touches where the whole tool passes, 0 to 1.
	Share float64 `json:"share,omitzero"`

	// Min is the number of strokes below which no luck covers the wall: 1/Share, rounded up.
	Min int `json:"min,omitzero"`

	// Max is the number of strokes after which a machine that holds its speeds has covered
	// every depth, 0 where it has not after a thousand cycles, as when it comes back into its
	// own tracks before that. Some depths are covered earlier, on the return strokes.
	Max int `json:"max,omitzero"`
}

// coverCycles bounds the search for Max, maxPitches the spaces between lines a tool may turn in
// a cycle: together they keep what rounding does to a start below 10⁻⁸ of a space.
const (
	coverCycles = 1000
	maxPitches  = 10_000
	sameStart   = 1e-8
)

// Cover returns how many strokes cover the wall, for a tool that moves at a steady speed. Of the rig its
// lines, their width and their length are used.
//
// While a point of the wall has the tool beside it, each line of abrasive sweeps an arc as wide
// as itself and as long as the tool turns in that time. In shares of the pitch between lines one
// stroke touches N·(n·l/v + w/(π·D)), with N lines of width w and length l, spindle n, axial speed
// v and bore D; one stroke covers all when that is 1 or more. A tool longer than its stroke
// sweeps with no more than the stroke.
//
// By hand the strokes fall by chance: see [Cover.Untouched].
//
// What is missing is [units.ErrNotGiven], what is out of range [units.ErrRange]; abrasive that does not fit round
// the bore is [ErrRoom].
func (s Setting) Cover(r Rig) (Cover, error) {
	err := firstError(s.check(), checkLines(r.Lines), checkLength("width of abrasive", r.Width), checkLength("length of abrasive", r.Length))
	if err != nil {
		return Cover{}, err
	}
	q, err := s.pitches(r.Lines)
	if err != nil {
		return Cover{}, err
	}
	round := math.Pi * s.Bore.In(units.Metre)
	lines := float64(r.Lines)
	width := lines * r.Width.In(units.Metre) / round
	if width > 1 {
		return Cover{}, fmt.Errorf("hone: %d lines of abrasive %v wide: %w: they do not fit round a bore of %v", r.Lines, r.Width, ErrRoom, s.Bore)
	}
	share := float64(lines*float64(s.Spindle)*min(r.Length, s.Stroke).In(units.Metre))/s.axial() + width
	c := Cover{Share: math.Round(min(share, 1)*1e9) / 1e9}
	c.Min = int(min(max(math.Ceil(1/share-1e-9), 1), math.MaxInt32))
	if cycles := cyclesToCover(q, share); cycles > 0 {
		c.Max = 2*cycles - 1
	}
	return c, nil
}

// Untouched returns the share of the wall that is to be expected untouched after so many strokes
// that fall by chance, as by hand: (1 − Share) to that power. No strokes or fewer leave all.
func (c Cover) Untouched(strokes int) float64 {
	return math.Pow(1-min(max(c.Share, 0), 1), float64(max(strokes, 0)))
}

// pitches is by how many spaces between lines the tool turns in one cycle.
func (s Setting) pitches(lines int) (float64, error) {
	q := float64(lines) * float64(s.Spindle) / float64(s.Stroking.Cycles())
	if q > maxPitches {
		return 0, fmt.Errorf("hone: %d lines of abrasive at %v with %v: %w: want the tool to turn by up to %d of their spaces in a cycle",
			lines, s.Spindle, s.Stroking, units.ErrRange, maxPitches)
	}
	return q, nil
}

// cyclesToCover returns after how many cycles the out strokes alone cover a pitch, each touching
// a stretch of share from where it starts, q pitches after the one before; 0 for never. Where
// return strokes fall on the tracks of out strokes, they add nothing.
//
// Starts at 0, q, 2q, … leave gaps of at most three sizes: the least start above 0, the least
// distance to 1, and the sum of the two while it lasts (the three-gap theorem; V. T. Sós, 1958).
func cyclesToCover(q, share float64) int {
	_, q = math.Modf(q)
	ahead, behind := 1.0, 1.0
	var byAhead, byBehind int
	for m := 1; m <= coverCycles; m++ {
		if k := m - 1; k > 0 {
			_, start := math.Modf(float64(k) * q)
			if start < sameStart || 1-start < sameStart {
				return 0 // back at the first start: the gaps stay as they are
			}
			if start < ahead {
				ahead, byAhead = start, k
			}
			if 1-start < behind {
				behind, byBehind = 1-start, k
			}
		}
		gap := max(ahead, behind)
		if m > 1 && m < byAhead+byBehind {
			gap = ahead + behind
		}
		if gap <= share+sameStart {
			return m
		}
	}
	return 0
}
