// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"math"
	"strings"
)

// Angle is a plane angle, in radians.
type Angle float64

// Units of angle; 45 * units.Degree.
const (
	Radian Angle = 1
	Degree       = math.Pi / 180 * Radian
)

// In returns the angle as a number of the unit; a unit of zero gives 0.
func (a Angle) In(unit Angle) float64 { return in(a, unit) }

// ParseAngle reads "45°", "45 deg", "0.5 rad", 30', 15", and degrees, minutes and seconds: 44°30', 1°25'35.5",
// 1° 25′ 35″. Minutes and seconds behind a larger unit are below 60; only the last number has a decimal
// point, only the first a sign, which covers all. Every error is a [*ParseError].
func ParseAngle(s string) (a Angle, err error) { err = a.UnmarshalText([]byte(s)); return }

// String returns the angle in degrees to 12 significant digits, "44.5°".
func (a Angle) String() string { return text(a.MarshalText()) }

// MarshalText returns the text of [Angle.String]; what is not finite is ErrNotFinite.
func (a Angle) MarshalText() ([]byte, error) { return put(a.In(Degree), "°") }

// UnmarshalText is [ParseAngle]. On error the receiver keeps its value.
func (a *Angle) UnmarshalText(text []byte) error {
	const deg, min, sec = float64(Degree), float64(Degree / 60), float64(Degree / 3600)
	s, at, sum, whole := string(text), 0, 0.0, true
	for i, marks := range [...][2]string{{"°", "°"}, {"'", "′"}, {`"`, "″"}} {
		part := s[at:]
		if at > 0 {
			part = strings.TrimPrefix(part, " ")
		}
		x, n, err := scanFloat(part)
		rest, marked := strings.CutPrefix(part[n:], marks[0])
		if !marked {
			rest, marked = strings.CutPrefix(part[n:], marks[1])
		}
		if err != nil || marked && (!whole || at > 0 && (x >= 60 || !isDigit(part[0]))) {
			break
		}
		if marked {
			whole = !strings.ContainsAny(part[:n], ".e")
			sum += float64(math.Abs(x) * [...]float64{deg, min, sec}[i])
			at = len(s) - len(rest)
		}
	}
	switch {
	case at == 0: // the plain forms, and plain mistakes
		return parse((*float64)(a), "angle", s, `° rad deg ' " ′ ″`, deg, float64(Radian), deg, min, sec, min, sec)
	case at < len(s):
		const mend = `write degrees, minutes and seconds as 44°30'15.5", the last two below 60`
		return refuse("angle", s, at, ErrSyntax, mend)
	case sum > mostSI:
		return refuse("angle", s, at, ErrRange, "")
	case s[0] == '-':
		sum = -sum
	}
	*a = Angle(sum)
	return nil
}
