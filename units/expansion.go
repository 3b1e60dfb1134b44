// SPDX-License-Identifier: BSD-3-Clause

package units

// Expansion is a mean coefficient of linear thermal expansion, in 1/K.
type Expansion float64

// Units of expansion. 11.4e-6 * units.PerKelvin is a grey iron's.
const (
	PerKelvin     Expansion = 1
	PerFahrenheit           = 1.8 * PerKelvin // per °F: handbooks in inches print these
)

// ExpansionOf returns x units as an Expansion. NaN and infinities are ErrNotFinite.
func ExpansionOf(x float64, unit Expansion) (Expansion, error) {
	v, err := ofFloat("expansion", x, float64(unit))
	return Expansion(v), err
}

// In returns the expansion as a number of the unit.
func (e Expansion) In(unit Expansion) float64 { return float64(e / unit) }

// ParseExpansion reads a coefficient: "11.4e-6/K", "6.3e-6/°F", "0.0000114 1/K". A bare number
// other than 0 is refused. Every error is a [*ParseError].
func ParseExpansion(s string) (Expansion, error) {
	v, err := parseQuantity("expansion", s, true, []unitOf{
		{"/K", float64(PerKelvin)}, {"1/K", float64(PerKelvin)}, {"/°C", float64(PerKelvin)}, {"/°F", float64(PerFahrenheit)}, {"1/°F", float64(PerFahrenheit)},
	})
	return Expansion(v), err
}

// MustParseExpansion calls [ParseExpansion](s) and panics on error. It is intended for
// constants and tests with hard-coded strings.
func MustParseExpansion(s string) Expansion {
	e, err := ParseExpansion(s)
	if err != nil {
		panic(err)
	}
	return e
}

// String returns the coefficient in millionths a kelvin, "11.4e-6/K", to 12 significant digits.
func (e Expansion) String() string {
	b, _ := e.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Expansion.String].
func (e Expansion) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, float64(e)*1e6), "e-6/K"...), nil
}

// MarshalText returns the text of [Expansion.String].
func (e Expansion) MarshalText() ([]byte, error) { return e.AppendText(nil) }

// UnmarshalText reads a text as [ParseExpansion] does. On error the receiver keeps its value.
func (e *Expansion) UnmarshalText(text []byte) error {
	return unmarshalQuantity(e, text, ParseExpansion)
}
