// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// A Reading is one diameter, as the gauge showed it: how far below the deck, along which axis,
// and how large. Readings at the same depth and axis are repeats of one place.
type Reading struct {
	Depth    units.Length `json:"depth,omitzero"`    // from the deck, positive downwards
	Axis     Axis         `json:"axis"`              // along which it was read
	Diameter units.Length `json:"diameter,omitzero"` // as shown, not yet brought to 20 °C; zero of a place still to be read
	// Confirmed says that a reading far from its fellows was taken again and is right.
	Confirmed bool `json:"confirmed,omitzero"`
}

// An Axis is a direction across the bore, as its angle from the thrust axis; 180° apart is the same axis.
type Axis units.Angle

// The two axes that every manual names. The thrust axis stands square to the piston pin; wear
// is usually greatest along it.
const (
	ThrustAxis Axis = 0
	PinAxis         = Axis(90 * units.Degree)
)

// String returns "thrust", "pin" or the angle to a tenth of a degree, "45°", from 0 up to 180°.
func (a Axis) String() string {
	switch deg := math.Round(a.Fold().angle().In(units.Degree)*10) / 10; deg {
	case 0, 180:
		return "thrust"
	case 90:
		return "pin"
	default:
		return units.Angle(deg * float64(units.Degree)).String()
	}
}

// MarshalText returns "thrust", "pin" or the angle with all its digits; of one that is not finite, the error of
// [units.Angle.MarshalText].
func (a Axis) MarshalText() ([]byte, error) {
	switch a {
	case ThrustAxis:
		return []byte("thrust"), nil
	case PinAxis:
		return []byte("pin"), nil
	}
	return a.angle().MarshalText()
}

// UnmarshalText reads "thrust", "pin", or an angle from the thrust axis, "45°". Any other text is one of the errors of
// [units.ParseAngle], and the receiver keeps its value.
func (a *Axis) UnmarshalText(text []byte) error {
	switch string(text) {
	case "thrust":
		*a = ThrustAxis
		return nil
	case "pin":
		*a = PinAxis
		return nil
	}
	angle, err := units.ParseAngle(string(text))
	var p *units.ParseError
	if errors.As(err, &p) && errors.Is(err, units.ErrSyntax) {
		named := *p
		named.Mend = `write "thrust", "pin" or an angle such as "45°"`
		err = &named
	}
	if err != nil {
		return fmt.Errorf("bore: axis: %w", err)
	}
	*a = Axis(angle)
	return nil
}

func (a Axis) angle() units.Angle { return units.Angle(a) }

// Fold returns the axis from 0 up to 180°, to a millionth of a degree: anvils that are turned by half a turn lie along the same one.
func (a Axis) Fold() Axis { return Axis(foldAxis(a.angle())) }

// angleSteps to a degree: how close two angles may lie and still be one. A millionth of a degree
// is far below any setting by hand and far above what half turns cost in rounding.
const angleSteps = 1e6

// foldAngle returns the angle from 0 up to a period, given in degrees, to a millionth of a degree.
func foldAngle(a units.Angle, period float64) units.Angle {
	deg := math.Mod(a.In(units.Degree), period)
	if deg < 0 {
		deg += period
	}
	deg = math.Round(deg*angleSteps) / angleSteps
	if deg == period {
		deg = 0
	}
	return units.Angle(deg * float64(units.Degree))
}

// foldAxis returns the angle of an axis from 0 up to 180°.
func foldAxis(a units.Angle) units.Angle { return foldAngle(a, 180) }

// mostAngle is the largest angle taken, either sign: beyond a thousand turns it is a slip of the
// pen and floating point no longer holds the fraction of a turn.
const mostAngle = 1000 * 360 * units.Degree

func validAngle(a units.Angle) bool { return math.Abs(float64(a)) <= float64(mostAngle) } // false for NaN

func (r Reading) validate() error {
	switch {
	case !validAngle(r.Axis.angle()):
		return fmt.Errorf("bore: reading at %v: axis of %v rad: want a finite angle: %w", r.Depth, float64(r.Axis), ErrReading)
	case r.Depth < 0 || r.Depth > units.MaxLength:
		return fmt.Errorf("bore: reading at depth %v: want 0 to %v below the deck: %w", r.Depth, units.MaxLength, ErrReading)
	case r.Diameter == 0:
		return fmt.Errorf("bore: reading at %v, %s: diameter: %w: %w", r.Depth, r.Axis, units.ErrNotGiven, ErrReading)
	case r.Diameter < 0 || r.Diameter > units.MaxLength:
		return fmt.Errorf("bore: reading at %v, %s: diameter %v: want above 0, up to %v: %w",
			r.Depth, r.Axis, r.Diameter, units.MaxLength, ErrReading)
	}
	return nil
}

// A reading is far from its fellows where it is further from their median than slipFar of it, or
// further than slipAlone from every single other one. A cylinder worn by a fiftieth of its bore
// would long have stopped running, and one worn by a hundredth (0.7 mm of 67 mm) is worn on more
// than one reading. So a slip of a whole millimetre is found in bores of up to 100 mm. One of a
// tenth cannot be told from wear.
const (
	slipFar   = 50
	slipAlone = 100
)

// checkSlips refuses unconfirmed readings far from their fellows. The readings are sorted by
// diameter for it and left so.
func checkSlips(rs []Reading) error {
	slices.SortStableFunc(rs, func(a, b Reading) int { return cmp.Compare(a.Diameter, b.Diameter) })
	median := rs[len(rs)/2].Diameter
	var errs []error
	for i, r := range rs {
		if r.Confirmed {
			continue
		}
		from, what := median, "median"
		apart := median / slipFar
		if (r.Diameter - median).Abs() <= apart {
			if len(rs) < 3 { // of two readings neither is the odd one
				continue
			}
			apart = median / slipAlone
			below, above := units.MaxLength, units.MaxLength
			if i > 0 {
				below = r.Diameter - rs[i-1].Diameter
			}
			if i+1 < len(rs) {
				above = rs[i+1].Diameter - r.Diameter
			}
			if min(below, above) <= apart {
				continue
			}
			from, what = r.Diameter-below, "nearest other reading"
			if above < below {
				from = r.Diameter + above
			}
		}
		errs = append(errs, fmt.Errorf("bore: reading %v at %v, %s: more than %v from the %s, %v; read it again, or confirm it: %w",
			r.Diameter, r.Depth, r.Axis, apart.Round(units.Micrometre), what, from, ErrSlippedDigit))
	}
	return errors.Join(errs...)
}
