// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"math"
)

// Temperature is a thermodynamic temperature, in kelvins above absolute zero. The zero value,
// absolute zero, never occurs in a workshop: structures use it for "not given".
type Temperature float64

const (
	zeroCelsius    = 273.15
	zeroFahrenheit = 273.15 - 32/1.8

	// ReferenceTemperature is 20 °C, at which sizes are stated (ISO 1).
	ReferenceTemperature Temperature = 293.15
)

// Celsius returns x °C as a Temperature. NaN and infinities are ErrNotFinite; at or below
// absolute zero is ErrRange.
func Celsius(x float64) (Temperature, error) { return temperature(x+zeroCelsius, x, "°C") }

// Fahrenheit returns x °F as a Temperature. NaN and infinities are ErrNotFinite; at or below
// absolute zero is ErrRange.
func Fahrenheit(x float64) (Temperature, error) {
	return temperature(float64(x/1.8)+zeroFahrenheit, x, "°F")
}

func temperature(kelvin, x float64, unit string) (Temperature, error) {
	switch {
	case math.IsNaN(kelvin) || math.IsInf(kelvin, 0):
		return 0, fmt.Errorf("units: temperature of %v %s: %w", x, unit, ErrNotFinite)
	case kelvin <= 0:
		return 0, fmt.Errorf("units: temperature of %v %s: at or below absolute zero: %w", x, unit, ErrRange)
	}
	return Temperature(kelvin), nil
}

// Celsius returns the temperature in °C.
func (t Temperature) Celsius() float64 { return float64(t) - zeroCelsius }

// Fahrenheit returns the temperature in °F.
func (t Temperature) Fahrenheit() float64 { return float64(t.Celsius()*1.8) + 32 }

// IsZero reports whether the temperature is absolute zero, which stands for "not given".
func (t Temperature) IsZero() bool { return t == 0 }

// Sub returns the difference t − u.
func (t Temperature) Sub(u Temperature) TemperatureChange { return TemperatureChange(t - u) }

// Add returns t + d. It does not check the result; see [Temperature.Validate].
func (t Temperature) Add(d TemperatureChange) Temperature { return t + Temperature(d) }

// AboveReference returns t − 20 °C, or zero where t is not given.
func (t Temperature) AboveReference() TemperatureChange {
	if t.IsZero() {
		return 0
	}
	return t.Sub(ReferenceTemperature)
}

// Validate returns an error where t is not finite (ErrNotFinite) or below absolute zero
// (ErrRange). The zero Temperature passes.
func (t Temperature) Validate() error {
	if t == 0 {
		return nil
	}
	_, err := temperature(float64(t), float64(t), "K")
	return err
}

// ParseTemperature reads a temperature: "31 °C", "31 C", "88 °F", "88 F", "304.15 K". A bare
// number is refused, 0 too. Every error is a [*ParseError].
func ParseTemperature(s string) (Temperature, error) {
	const kind, mend = "temperature", "write 21 °C or 70 °F"
	x, unit, pos, err := splitUnit(kind, s, false)
	if err != nil {
		return 0, err
	}
	var t Temperature
	switch unit {
	case "°C", "C":
		t, err = Celsius(x)
	case "°F", "F":
		t, err = Fahrenheit(x)
	case "K":
		t, err = temperature(x, x, "K")
	case "":
		return 0, parseError(kind, s, pos, ErrMissingUnit, mend)
	default:
		return 0, parseError(kind, s, pos, ErrUnknownUnit, mend)
	}
	if err != nil {
		return 0, parseError(kind, s, pos, ErrRange, "nothing is colder than −273.15 °C")
	}
	return t, nil
}

// MustParseTemperature calls [ParseTemperature](s) and panics on error. It is intended for
// constants and tests with hard-coded strings.
func MustParseTemperature(s string) Temperature {
	t, err := ParseTemperature(s)
	if err != nil {
		panic(err)
	}
	return t
}

// String returns the temperature in °C rounded to 1e-9 °C, "21.5 °C".
func (t Temperature) String() string {
	b, _ := t.AppendText(nil)
	return string(b)
}

// AppendText appends the text of [Temperature.String].
func (t Temperature) AppendText(b []byte) ([]byte, error) {
	return append(appendFloat(b, math.Round(t.Celsius()*1e9)/1e9), " °C"...), nil
}

// MarshalText returns the text of [Temperature.String].
func (t Temperature) MarshalText() ([]byte, error) { return t.AppendText(nil) }

// UnmarshalText reads a text as [ParseTemperature] does. On error the receiver keeps its value.
func (t *Temperature) UnmarshalText(text []byte) error {
	return unmarshalQuantity(t, text, ParseTemperature)
}
