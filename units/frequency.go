// SPDX-License-Identifier: BSD-3-Clause

package units

// Frequency is a rate of turning or of anything that repeats, in hertz. Strokes and cycles of a hone are
// another matter: package bore/hone keeps them apart.
type Frequency float64

// Units of frequency. Multiply a constant to make one, divide to count: 2 * units.Hertz;
// for a variable use [FrequencyOf].
const (
	Hertz     Frequency = 1          // one a second
	PerMinute           = Hertz / 60 // one a minute: rev/min
)

// FrequencyOf returns x units as a Frequency. NaN and infinities are ErrNotFinite.
func FrequencyOf(x float64, unit Frequency) (Frequency, error) {
	v, err := ofFloat("frequency", x, float64(unit))
	return Frequency(v), err
}

// In returns the frequency as a number of the unit.
func (q Frequency) In(unit Frequency) float64 { return float64(q / unit) }

// ParseFrequency reads a number and a unit, as in "650 rev/min". Units: rev/min, rpm, Hz.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseFrequency(s string) (Frequency, error) {
	v, err := parseQuantity("frequency", s, false, []unitOf{{"rev/min", float64(PerMinute)}, {"rpm", float64(PerMinute)}, {"Hz", float64(Hertz)}})
	return Frequency(v), err
}

// MustParseFrequency calls [ParseFrequency](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseFrequency(s string) Frequency {
	q, err := ParseFrequency(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the frequency to 12 significant digits with its unit, "650 rev/min".
func (q Frequency) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Frequency.String].
func (q Frequency) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(PerMinute)), " rev/min"...), nil
}

// MarshalText returns the text of [Frequency.String].
func (q Frequency) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParseFrequency] does. On error the receiver keeps its value.
func (q *Frequency) UnmarshalText(text []byte) error {
	return unmarshalQuantity(q, text, ParseFrequency)
}
