// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// An Oversize is a larger ring in place of one whose gap is too wide, and the filing that it
// needs.
type Oversize struct {
	Over   units.Length `json:"over"` // larger in diameter than the measured ring by
	Filing Filing       `json:"filing"`
}

// Larger returns the smallest of the oversizes on offer with which the end gap comes into the
// window, filed or as it is, from the gap of the present ring in the finished bore. A ring
// larger by Over in diameter has a gap smaller by π·Over, which may be negative: its ends
// overlap until they are filed.
//
// The larger ring is taken to differ from the measured one by Over alone. Of a measured ring
// that has worn on its face the true gap of the larger one is smaller yet, by 2π times the
// radial wear, and more is to be filed. A ring filed by much is no longer of the shape that
// presses evenly: the maker's ring for the finished size is the better choice wherever there is
// one.
//
// Where every oversize leaves the gap too wide, or in doubt, it is ErrTooWide; an oversize that
// is not positive is ErrSize, one beyond [units.MaxLength] units.ErrRange. Other errors are
// those of [File].
func Larger(gap uncertainty.Estimate, window units.Limits, overs []units.Length, risk uncertainty.Risk) (Oversize, error) {
	for _, over := range slices.Sorted(slices.Values(overs)) {
		switch {
		case over <= 0:
			return Oversize{}, fmt.Errorf("rings: oversize %v: %w (more than 0)", over, ErrSize)
		case over > units.MaxLength:
			return Oversize{}, fmt.Errorf("rings: oversize %v: %w (up to %v)", over, units.ErrRange, units.MaxLength)
		}
		var s sum
		s.add(1, gap)
		s.value -= float64(math.Pi * float64(over))
		less, err := s.estimate()
		if err != nil {
			return Oversize{}, fmt.Errorf("rings: oversize %v: %w", over, err)
		}
		f, err := File(less, window, risk)
		if err != nil {
			return Oversize{}, err
		}
		if f.Action == AsIs || f.Action == FileEnds {
			return Oversize{Over: over, Filing: f}, nil
		}
	}
	return Oversize{}, fmt.Errorf("rings: end gap %v, window %v, %d oversizes: %w", gap, window, len(overs), ErrTooWide)
}
