// SPDX-License-Identifier: BSD-3-Clause

package units

import "math"

// Angle is a plane angle, in radians.
type Angle float64

// Units of angle. Multiply a constant to make one, 45 * units.Degree; for a variable use [AngleOf].
const (
	Radian Angle = 1
	Degree       = math.Pi / 180 * Radian
	Minute       = Degree / 60
	Second       = Minute / 60
)

// AngleOf returns x units as an Angle. NaN and infinities are ErrNotFinite.
func AngleOf(x float64, unit Angle) (Angle, error) {
	v, err := ofFloat("angle", x, float64(unit))
	return Angle(v), err
}

// In returns the angle as a number of the unit.
func (a Angle) In(unit Angle) float64 { return float64(a / unit) }

// ParseAngle reads a number and a unit, as in "45°", "45 deg" or "0.5 rad".
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseAngle(s string) (Angle, error) {
	v, err := parseQuantity("angle", s, false, []unitOf{{"°", float64(Degree)}, {"deg", float64(Degree)}, {"rad", float64(Radian)}})
	return Angle(v), err
}

// MustParseAngle calls [ParseAngle](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseAngle(s string) Angle {
	a, err := ParseAngle(s)
	if err != nil {
		panic(err)
	}
	return a
}

// String returns the angle in degrees to 12 significant digits, "45°".
func (a Angle) String() string {
	b, _ := a.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Angle.String].
func (a Angle) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, a.In(Degree)), "°"...), nil
}

// MarshalText returns the text of [Angle.String].
func (a Angle) MarshalText() ([]byte, error) { return a.AppendText(nil) }

// UnmarshalText reads a text as [ParseAngle] does. On error the receiver keeps its value.
func (a *Angle) UnmarshalText(text []byte) error { return unmarshalQuantity(a, text, ParseAngle) }
