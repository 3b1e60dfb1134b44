// SPDX-License-Identifier: BSD-3-Clause

package units

// Speed is a speed along a line or a surface, in metres a second.
type Speed float64

// Units of speed. Multiply a constant to make one, divide to count: 2 * units.MetrePerSecond;
// for a variable use [SpeedOf].
const (
	MetrePerSecond      Speed = 1
	MetrePerMinute            = MetrePerSecond / 60
	MillimetrePerSecond       = MetrePerSecond / 1000
	FootPerMinute             = 0.3048 * MetrePerMinute // 1 ft is 0.3048 m exactly
)

// SpeedOf returns x units as a Speed. NaN and infinities are ErrNotFinite.
func SpeedOf(x float64, unit Speed) (Speed, error) {
	v, err := ofFloat("speed", x, float64(unit))
	return Speed(v), err
}

// In returns the speed as a number of the unit.
func (q Speed) In(unit Speed) float64 { return float64(q / unit) }

// ParseSpeed reads a number and a unit, as in "60 m/min". Units: m/min, ft/min, mm/s, m/s.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseSpeed(s string) (Speed, error) {
	v, err := parseQuantity("speed", s, false, []unitOf{{"m/min", float64(MetrePerMinute)}, {"ft/min", float64(FootPerMinute)}, {"mm/s", float64(MillimetrePerSecond)}, {"m/s", float64(MetrePerSecond)}})
	return Speed(v), err
}

// MustParseSpeed calls [ParseSpeed](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseSpeed(s string) Speed {
	q, err := ParseSpeed(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the speed to 12 significant digits with its unit, "60 m/min".
func (q Speed) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Speed.String].
func (q Speed) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(MetrePerMinute)), " m/min"...), nil
}

// MarshalText returns the text of [Speed.String].
func (q Speed) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParseSpeed] does. On error the receiver keeps its value.
func (q *Speed) UnmarshalText(text []byte) error { return unmarshalQuantity(q, text, ParseSpeed) }
