// SPDX-License-Identifier: BSD-3-Clause

package units

// Pressure is a pressure or a stress, in pascals.
type Pressure float64

// Units of pressure. Multiply a constant to make one, divide to count: 2 * units.Pascal;
// for a variable use [PressureOf].
const (
	Pascal             Pressure = 1
	Kilopascal                  = 1000 * Pascal
	Megapascal                  = 1e6 * Pascal // = 1 N/mm²
	Gigapascal                  = 1e9 * Pascal // for moduli
	Bar                         = 1e5 * Pascal
	PoundPerSquareInch          = 6894.757293168 * Pascal // 0.45359237 × 9.80665 N over (0.0254 m)², rounded to 13 digits
)

// PressureOf returns x units as a Pressure. NaN and infinities are ErrNotFinite.
func PressureOf(x float64, unit Pressure) (Pressure, error) {
	v, err := ofFloat("pressure", x, float64(unit))
	return Pressure(v), err
}

// In returns the pressure as a number of the unit.
func (q Pressure) In(unit Pressure) float64 { return float64(q / unit) }

// ParsePressure reads a number and a unit, as in "0.2 MPa". Units: MPa, GPa, kPa, Pa, bar, psi.
// A bare number other than 0 is refused. Every error is a [*ParseError].
func ParsePressure(s string) (Pressure, error) {
	v, err := parseQuantity("pressure", s, false, []unitOf{{"MPa", float64(Megapascal)}, {"GPa", float64(Gigapascal)}, {"kPa", float64(Kilopascal)}, {"Pa", float64(Pascal)}, {"bar", float64(Bar)}, {"psi", float64(PoundPerSquareInch)}})
	return Pressure(v), err
}

// MustParsePressure calls [ParsePressure](s) and panics on error. It is intended for constants and
// tests with hard-coded strings.
func MustParsePressure(s string) Pressure {
	q, err := ParsePressure(s)
	if err != nil {
		panic(err)
	}
	return q
}

// String returns the pressure to 12 significant digits with its unit, "0.2 MPa".
func (q Pressure) String() string {
	b, _ := q.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Pressure.String].
func (q Pressure) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, q.In(Megapascal)), " MPa"...), nil
}

// MarshalText returns the text of [Pressure.String].
func (q Pressure) MarshalText() ([]byte, error) { return q.AppendText(nil) }

// UnmarshalText reads a text as [ParsePressure] does. On error the receiver keeps its value.
func (q *Pressure) UnmarshalText(text []byte) error { return unmarshalQuantity(q, text, ParsePressure) }
