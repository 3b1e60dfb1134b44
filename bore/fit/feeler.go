// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A FeelerRule is how a maker reads a clearance from a feeler strip beside the skirt that takes
// a stated pull to draw out.
type FeelerRule struct {
	Pull units.Force  `json:"pull"` // at which the rule holds
	Adds units.Length `json:"adds"` // by which the clearance is then larger than the strip
}

// samePull is how far two pulls may lie apart and still be one, of the larger: a spring scale is not read
// closer (common practice), and 6 lbf, 26.7 N and 2.72 kgf, as manuals print one pull, differ by a
// thousandth.
const samePull = 0.01

// Clearance returns what a strip of that thickness and pull says of the diametral clearance. At the
// pull of the rule both ends are the strip plus what the rule adds. A lighter pull says only
// that the clearance is at least that, a heavier one that it is at most that: try the next
// strip. Pulls that lie within a hundredth of each other are one.
//
// A thickness of zero is [units.ErrNotGiven]; one below that, a pull that is not positive or not finite, and a rule
// that adds less than nothing, are [units.ErrRange].
func (r FeelerRule) Clearance(strip units.Length, pull units.Force) (units.Limits, error) {
	switch {
	case strip <= 0 || strip > units.Millimetre*10:
		return units.Limits{}, fmt.Errorf("fit: feeler strip of %v: %w (above 0, up to 10 mm)", strip, given.Err(strip))
	case !(pull > 0 && r.Pull > 0) || math.IsInf(float64(pull), 0) || math.IsInf(float64(r.Pull), 0):
		return units.Limits{}, fmt.Errorf("fit: pull of %v against a rule for %v: %w (above 0)", pull, r.Pull, units.ErrRange)
	case r.Adds < 0 || r.Adds > units.Millimetre:
		return units.Limits{}, fmt.Errorf("fit: feeler rule that adds %v: %w (0 to 1 mm)", r.Adds, units.ErrRange)
	}
	c := strip + r.Adds
	switch apart := float64(pull - r.Pull); {
	case math.Abs(apart) <= float64(samePull*float64(max(pull, r.Pull))):
	case pull < r.Pull:
		return units.Limits{Min: c}, nil
	case pull > r.Pull:
		return units.Limits{Max: c}, nil
	}
	return units.Limits{Min: c, Max: c}, nil
}
