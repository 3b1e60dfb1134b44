// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/units"
)

// Stagger returns where to put the gaps of the rings of a four-stroke piston, counted round the
// bore from the thrust axis: evenly spaced, the top ring's first, and as far as that allows from
// the thrust axis and from the pin axis. It is common practice and no more: rings that are not
// pegged turn in use. The maker's pattern comes first. Patterns differ: three rings 120° apart (US Army
// TM 5-3895-382-24), each ring 45 to 90° on from the last (TM 55-1930-209-14&P-21), no two in line (TM
// 10-4320-344-24).
//
// Pegged rings keep the place of their pegs and are never staggered; see [Ends]. Less than one
// ring or more than seven is [units.ErrRange].
func Stagger(rings int) ([]units.Angle, error) {
	if rings < 1 || rings > 7 {
		return nil, fmt.Errorf("rings: staggering of %d: %w (1 to 7)", rings, units.ErrRange)
	}
	// Modulo a right angle the gaps stand 90°·gcd(4, n)/n apart; half of it keeps both axes
	// clear.
	gcd := 1
	for _, d := range []int{2, 4} {
		if rings%d == 0 {
			gcd = d
		}
	}
	first := 45 * units.Degree * units.Angle(gcd) / units.Angle(rings)
	angles := make([]units.Angle, rings)
	for i := range angles {
		angles[i] = first + 360*units.Degree*units.Angle(i)/units.Angle(rings)
	}
	return angles, nil
}
