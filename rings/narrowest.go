// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/internal/given"
	"borewright.example/units"
)

func checkTravel(t bore.RingTravel) error {
	switch {
	case t.Bottom <= t.Top:
		return fmt.Errorf("rings: ring travel from %v to %v: %w (the bottom is deeper than the top)", t.Top, t.Bottom, given.Err(t.Bottom))
	case t.Top.Abs() > units.MaxLength || t.Bottom.Abs() > units.MaxLength:
		return fmt.Errorf("rings: ring travel from %v to %v: %w (±%v)", t.Top, t.Bottom, units.ErrRange, units.MaxLength)
	}
	return nil
}

// Narrowest returns the plane in which to measure and to set the end gap: of those inside the
// ring's travel the one with the smallest mean diameter, where the gap is smallest; of equals the
// first. In a bore worn at the top that is the lowest one, in a choked barrel, which is narrower
// at the head while cold, the highest. A gap taken where the bore is worn is larger than the
// ring's smallest, and filed there the ring would butt lower down.
//
// Of a plane Depth and Mean take part, as [bore.Analyse] gives them; of the travel Top and Bottom. No plane inside it is
// [units.ErrRange], and so are ends beyond [units.MaxLength]; so is a bottom that is not below the top. A bottom or mean
// of zero is [units.ErrNotGiven].
func Narrowest(planes []bore.Plane, travel bore.RingTravel) (bore.Plane, error) {
	if err := checkTravel(travel); err != nil {
		return bore.Plane{}, err
	}
	var least bore.Plane
	for _, p := range planes {
		if err := checkBore(p.Mean); err != nil {
			return bore.Plane{}, fmt.Errorf("%w at a depth of %v", err, p.Depth)
		}
		if p.Depth < travel.Top || p.Depth > travel.Bottom {
			continue
		}
		if least.Mean.Value == 0 || p.Mean.Value < least.Mean.Value {
			least = p
		}
	}
	if least.Mean.Value == 0 {
		return bore.Plane{}, fmt.Errorf("rings: planes between the depths %v and %v: 0 of %d given: %w (at least 1)", travel.Top, travel.Bottom, len(planes), units.ErrRange)
	}
	return least, nil
}
