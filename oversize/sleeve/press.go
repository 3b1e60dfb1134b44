// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// Press returns the force that moves the sleeve at 20 °C over a length of contact along the axis, friction · pressure
// · π · seat · length, over the ranges of friction, interference and outside diameter. It is that at full
// engagement; it rises from nothing as the sleeve goes in, and to start a sleeve that has sat for years can take
// much more. See [CautionPress].
//
// Friction is the coefficient of friction, a pure number above 0 and up to 1, and the whole doubt of the answer:
// oiled iron is quoted with 0.05 to 0.15, dry with 0.1 to 0.3, galled beyond (common practice).
//
// A length or friction that is missing is units.ErrNotGiven; a length below 0 or beyond [units.MaxLength], a friction
// below 0, above 1 or NaN and one whose ends are crossed are [units.ErrRange]; the other errors are
// those of [Joint.Fit].
func (j Joint) Press(length units.Length, friction Range[float64]) (Range[units.Force], error) {
	if err := j.check(); err != nil {
		return Range[units.Force]{}, err
	}
	if err := checkLength("length of contact", length); err != nil {
		return Range[units.Force]{}, err
	}
	f := friction
	if f == (Range[float64]{}) {
		return Range[units.Force]{}, fmt.Errorf("sleeve: coefficient of friction: %w", units.ErrNotGiven)
	}
	if !(f.Min > 0 && f.Min <= f.Max && f.Max <= 1) {
		return Range[units.Force]{}, fmt.Errorf("sleeve: coefficient of friction %v to %v: %w (above 0, up to 1, the lesser end first)", f.Min, f.Max, units.ErrRange)
	}
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	least := thin.pressure(j.Interference.Min.In(units.Metre)/2, 0)
	greatest := thick.pressure(j.Interference.Max.In(units.Metre)/2, 0)
	area := math.Pi * j.Seat.In(units.Metre) * length.In(units.Metre)
	return Range[units.Force]{units.Force(f.Min * least * area), units.Force(f.Max * greatest * area)}, nil
}
