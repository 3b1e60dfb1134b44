// SPDX-License-Identifier: BSD-3-Clause

package units

// TemperatureChange is a difference of two temperatures, in kelvins. A difference of 10 °F is 5.56 K; a
// temperature of 10 °F is −12.2 °C: the two are different types.
type TemperatureChange float64

// Units of temperature change. Multiply a constant to make one, divide to count: 2 * units.Kelvin;
// for a variable use [TemperatureChangeOf].
const (
	Kelvin           TemperatureChange = 1            // also a difference of 1 °C
	DegreeFahrenheit                   = Kelvin / 1.8 // a difference of 1 °F
)

// TemperatureChangeOf returns x units as a TemperatureChange. NaN and infinities are ErrNotFinite.
func TemperatureChangeOf(x float64, unit TemperatureChange) (TemperatureChange, error) {
	v, err := ofFloat("temperature change", x, float64(unit))
	return TemperatureChange(v), err
}

// In returns the temperature change as a number of the unit.
func (q TemperatureChange) In(unit TemperatureChange) float64 { return float64(q / unit) }

// ParseTemperatureChange reads a number and a unit, as in "10 K". Units: K, °C, C, °F, F.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParseTemperatureChange(s string) (TemperatureChange, error) {
	v, err := parseQuantity("temperature change", s, false, []unitOf{{"K", float64(Kelvin)}, {"°C", float64(Kelvin)}, {"C", float64(Kelvin)}, {"°F", float64(DegreeFahrenheit)}, {"F", float64(DegreeFahrenheit)}})
	return TemperatureChange(v), err
}

// MustParseTemperatureChange calls [ParseTemperatureChange](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParseTemperatureChange(s string) TemperatureChange {
	q, err := ParseTemperatureChange(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the temperature change to 12 significant digits with its unit, "10 K".
func (q TemperatureChange) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [TemperatureChange.String].
func (q TemperatureChange) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(Kelvin)), " K"...), nil
}

// MarshalText returns the text of [TemperatureChange.String].
func (q TemperatureChange) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParseTemperatureChange] does. On error the receiver keeps its value.
func (q *TemperatureChange) UnmarshalText(text []byte) error {
	return unmarshalQuantity(q, text, ParseTemperatureChange)
}
