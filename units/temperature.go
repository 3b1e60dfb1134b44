// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"cmp"
	"fmt"
	"math"
)

// Temperature is in kelvins above absolute zero. That never occurs in a workshop: the zero value is "not given".
type Temperature float64

// ReferenceTemperature is 20 °C (68 °F), at which sizes are stated (ISO 1).
const ReferenceTemperature Temperature = zeroCelsius + 20

const zeroCelsius = 273.15 // K

// Celsius returns x °C. NaN and infinities are ErrNotFinite; at or below absolute zero, or above 1e15 K, is ErrRange.
func Celsius(x float64) (Temperature, error) { return temperature(x+zeroCelsius, x, "°C") }

// Fahrenheit returns x °F, with the errors of [Celsius].
func Fahrenheit(x float64) (Temperature, error) { return temperature((x-32)/1.8+zeroCelsius, x, "°F") }

func temperature(kelvin, x float64, unit string) (Temperature, error) {
	switch {
	case !finite(x):
		return 0, fmt.Errorf("units: temperature of %v %s: %w", x, unit, ErrNotFinite)
	case kelvin <= 0 || kelvin > mostSI:
		return 0, fmt.Errorf("units: temperature of %v %s: %w (above −273.15 °C)", x, unit, ErrRange)
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

// Validate returns the error of [Celsius] where t is no temperature. The zero Temperature passes.
func (t Temperature) Validate() error {
	if t == 0 {
		return nil
	}
	_, err := temperature(float64(t), float64(t), "K")
	return err
}

// ParseTemperature reads "31 °C", "31 C", "88 °F", "88 F", "304.15 K", no bare number. Every error is a [*ParseError].
func ParseTemperature(s string) (t Temperature, err error) {
	const kind, names = "temperature", "°C °F K C F"
	kelvin := func(x float64) (Temperature, error) { return temperature(x, x, "K") }
	x, unit, err := scanUnit(kind, s, names)
	if err != nil {
		return 0, err
	} else if unit < 0 {
		return 0, refuseUnit(kind, s, len(s), names)
	}
	t, err = [...]func(float64) (Temperature, error){Celsius, Fahrenheit, kelvin, Celsius, Fahrenheit}[unit](x)
	if err != nil {
		err = refuse(kind, s, len(s), ErrRange, "nothing is colder than −273.15 °C")
	}
	return t, err
}

// MustParseTemperature is [ParseTemperature] for hard-coded strings: it panics on error.
func MustParseTemperature(s string) Temperature { return must(ParseTemperature(s)) }

// String returns the temperature in °C rounded to 1e-9 °C, "21.5 °C", or "not given" where MarshalText returns nothing.
func (t Temperature) String() string { return cmp.Or(text(t.MarshalText()), "not given") }

// MarshalText returns the text of [Temperature.String], for the zero Temperature nothing; or Validate's error.
func (t Temperature) MarshalText() ([]byte, error) {
	if err := t.Validate(); err != nil || t.IsZero() {
		return nil, err
	}
	return put(math.Round(t.Celsius()*1e9)/1e9, " °C")
}

// UnmarshalText is [ParseTemperature]; empty text is the zero Temperature. On error the receiver keeps its value.
func (t *Temperature) UnmarshalText(text []byte) error { return given(t, text, ParseTemperature) }

// TemperatureChange is a difference of two temperatures, in kelvins. A difference of 10 °F is 5.56 K; a temperature
// of 10 °F is −12.2 °C: the two are different types.
type TemperatureChange float64

// Units of temperature change; 5 * units.Kelvin.
const (
	Kelvin           TemperatureChange = 1            // also a difference of 1 °C
	DegreeFahrenheit                   = Kelvin / 1.8 // a difference of 1 °F
)

// In returns the temperature change as a number of the unit; a unit of zero gives 0.
func (d TemperatureChange) In(unit TemperatureChange) float64 { return in(d, unit) }

// String returns the temperature change in kelvins to 12 significant digits, "10 K".
func (d TemperatureChange) String() string { return text(d.MarshalText()) }

// MarshalText returns the text of [TemperatureChange.String]; what is not finite is ErrNotFinite.
func (d TemperatureChange) MarshalText() ([]byte, error) { return put(d.In(Kelvin), " K") }

// UnmarshalText reads a number and a unit, "10 K"; units: K, °C, C, °F, F.
// On error, a [*ParseError], the receiver keeps its value.
func (d *TemperatureChange) UnmarshalText(text []byte) error {
	return parse((*float64)(d), "temperature change", string(text), "K °F °C C F",
		float64(Kelvin), float64(DegreeFahrenheit), float64(Kelvin), float64(Kelvin), float64(DegreeFahrenheit))
}

// Expansion is a mean coefficient of linear thermal expansion, in 1/K.
type Expansion float64

// Units of expansion; 11.4e-6 * units.PerKelvin is a grey iron's.
const (
	PerKelvin     Expansion = 1
	PerFahrenheit           = 1.8 * PerKelvin // per °F: handbooks in inches print these
)

// In returns the expansion as a number of the unit; a unit of zero gives 0.
func (e Expansion) In(unit Expansion) float64 { return in(e, unit) }

// String returns the expansion in millionths a kelvin to 12 significant digits, "11.4e-6/K", or "2e-10/K" for the
// tiniest.
func (e Expansion) String() string { return text(e.MarshalText()) }

// MarshalText returns the text of [Expansion.String]; what is not finite is ErrNotFinite.
func (e Expansion) MarshalText() ([]byte, error) {
	if x := float64(e) * 1e6; x == 0 || math.Abs(x) >= 1e-3 && math.Abs(x) < 1e9 { // no second exponent
		return put(x, "e-6/K")
	}
	return put(float64(e), "/K")
}

// UnmarshalText reads a number and a unit, "11.4e-6/K"; units: /K, 1/K, /°C, 1/°C, /°F, 1/°F.
// On error, a [*ParseError], the receiver keeps its value.
func (e *Expansion) UnmarshalText(text []byte) error {
	return parse((*float64)(e), "expansion", string(text), "/K /°F /°C 1/K 1/°F 1/°C",
		float64(PerKelvin), float64(PerFahrenheit), float64(PerKelvin),
		float64(PerKelvin), float64(PerFahrenheit), float64(PerKelvin))
}
