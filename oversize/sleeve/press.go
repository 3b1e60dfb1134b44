// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Pressing is a sleeve pushed in, or out, by force alone.
type Pressing struct {
	Length units.Length `json:"length"` // of contact along the axis
	// Friction is the coefficient of friction, a pure number above 0 and up to 1. It is the whole
	// doubt of the answer: for oiled iron see [OiledFriction]; dry is quoted from 0.1 to 0.3, galled
	// beyond (common practice).
	Friction Range[float64] `json:"friction"`
}

// OiledFriction returns the coefficients of friction that oiled iron is quoted with, 0.05 to 0.15 (common practice).
func OiledFriction() Range[float64] { return Range[float64]{Least: 0.05, Greatest: 0.15} }

// A PressForce is an estimate of the force that moves a sleeve.
type PressForce struct {
	// Force is that at full engagement; it rises from nothing as the sleeve goes in. To start a
	// sleeve that has sat for years can take much more.
	Force    Range[units.Force] `json:"force"`
	Friction Range[float64]     `json:"friction"` // what it was worked out with, a pure number
	Cautions Cautions           `json:"cautions"`
}

// Press returns the force that moves the sleeve at 20 °C, friction · pressure · π · seat · length,
// over the ranges of friction, interference and outside diameter. It is an estimate, no better
// than the friction stated.
//
// A length or friction that is missing is ErrNotGiven; a length below 0 or beyond [units.MaxLength], a friction
// below 0, above 1 or NaN and one whose ends are crossed are [units.ErrRange]; the other errors are
// those of [Joint.Validate].
func (j Joint) Press(p Pressing) (PressForce, error) {
	if err := j.check(); err != nil {
		return PressForce{}, err
	}
	if err := checkLength("length of contact", p.Length); err != nil {
		return PressForce{}, err
	}
	f := p.Friction
	switch {
	case f == Range[float64]{}:
		return PressForce{}, fmt.Errorf("sleeve: coefficient of friction: %w", ErrNotGiven)
	case !(f.Least > 0 && f.Least <= f.Greatest && f.Greatest <= 1):
		return PressForce{}, fmt.Errorf("sleeve: coefficient of friction %v to %v: %w (above 0, up to 1, the lesser end first)", f.Least, f.Greatest, units.ErrRange)
	}
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	least := thin.pressure(j.Interference.Least.In(units.Metre)/2, 0)
	greatest := thick.pressure(j.Interference.Greatest.In(units.Metre)/2, 0)
	area := math.Pi * j.Seat.In(units.Metre) * p.Length.In(units.Metre)
	return PressForce{
		Force:    Range[units.Force]{units.Force(f.Least * least * area), units.Force(f.Greatest * greatest * area)},
		Friction: f,
		Cautions: setOf(PressGuard, StopsHalfWay),
	}, nil
}
