// SPDX-License-Identifier: BSD-3-Clause

package units

// Force is a force, in newtons.
type Force float64

// Units of force. Multiply a constant to make one, divide to count: 2 * units.Newton;
// for a variable use [ForceOf].
const (
	Newton     Force = 1
	PoundForce       = 4.4482216152605 * Newton // 0.45359237 kg × 9.80665 m/s², exactly
)

// ForceOf returns x units as a Force. NaN and infinities are ErrNotFinite.
func ForceOf(x float64, unit Force) (Force, error) {
	v, err := ofFloat("force", x, float64(unit))
	return Force(v), err
}

// In returns the force as a number of the unit.
func (q Force) In(unit Force) float64 { return float64(q / unit) }

// ParseForce reads a number and a unit, as in "26.7 N". Units: N, lbf.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseForce(s string) (Force, error) {
	v, err := parseQuantity("force", s, false, []unitOf{{"N", float64(Newton)}, {"lbf", float64(PoundForce)}})
	return Force(v), err
}

// MustParseForce calls [ParseForce](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseForce(s string) Force {
	q, err := ParseForce(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the force to 12 significant digits with its unit, "26.7 N".
func (q Force) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Force.String].
func (q Force) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(Newton)), " N"...), nil
}

// MarshalText returns the text of [Force.String].
func (q Force) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParseForce] does. On error the receiver keeps its value.
func (q *Force) UnmarshalText(text []byte) error { return unmarshalQuantity(q, text, ParseForce) }
