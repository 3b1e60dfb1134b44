// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Level is a bore's size at one height.
type Level struct {
	Depth    units.Length         `json:"depth"`    // below the deck
	Diameter uncertainty.Estimate `json:"diameter"` // mean round the bore, at 20 °C
}

func checkTravel(t bore.RingTravel) error {
	switch {
	case t.Bottom <= t.Top:
		return fmt.Errorf("rings: ring travel from %v to %v: %w (the bottom is deeper than the top)", t.Top, t.Bottom, given.Err(t.Bottom))
	case t.Top.Abs() > units.MaxLength || t.Bottom.Abs() > units.MaxLength:
		return fmt.Errorf("rings: ring travel from %v to %v: %w (±%v)", t.Top, t.Bottom, units.ErrRange, units.MaxLength)
	}
	return nil
}

// Narrowest returns the level at which to measure and to set the end gap: of those inside the
// ring's travel the one with the smallest diameter, where the gap is smallest; of equals the
// first. In a bore worn at the top that is the lowest one, in a choked barrel, which is narrower
// at the head while cold, the highest. A gap taken where the bore is worn is larger than the
// ring's smallest, and filed there the ring would butt lower down.
//
// Of the travel Top and Bottom take part. No level inside it is [units.ErrRange], and so are ends beyond
// [units.MaxLength]; so is a bottom that is not below the top. A bottom or diameter of zero is [units.ErrNotGiven].
func Narrowest(levels []Level, travel bore.RingTravel) (Level, error) {
	if err := checkTravel(travel); err != nil {
		return Level{}, err
	}
	var least Level
	for _, l := range levels {
		if err := checkBore(l.Diameter); err != nil {
			return Level{}, fmt.Errorf("%w at a depth of %v", err, l.Depth)
		}
		if l.Depth < travel.Top || l.Depth > travel.Bottom {
			continue
		}
		if least.Diameter.Value == 0 || l.Diameter.Value < least.Diameter.Value {
			least = l
		}
	}
	if least.Diameter.Value == 0 {
		return Level{}, fmt.Errorf("rings: levels between the depths %v and %v: 0 of %d given: %w (at least 1)", travel.Top, travel.Bottom, len(levels), units.ErrRange)
	}
	return least, nil
}
