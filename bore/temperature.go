// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"
	"strings"

	"borewright.example/units"
)

// A Temperature is a temperature as a workshop knows it: it lies within ±Within of Value, and
// anywhere there alike. The zero Temperature is not given, which is no temperature at all: where one is
// needed it is asked for ([units.ErrNotGiven]).
//
// A temperature that nobody measured is a wide one, "10 to 30 °C", not a guess: it then takes
// its place in the doubt of every size.
type Temperature struct {
	Value  units.Temperature       // zero: not given
	Within units.TemperatureChange // half-width, at least 0
}

// ParseTemperature reads "31 °C", "31 ± 1 °C", "15 to 25 °C" or "59 to 77 °F"; one unit serves both numbers, unless
// it is K, which is the half-width's alone: "24 °C ± 1 K". A range with the higher end first, or a half-width below
// zero, is [units.ErrRange]; any other text is one of the errors of [units.ParseTemperature].
func ParseTemperature(s string) (Temperature, error) {
	if a, b, ok := strings.Cut(s, " to "); ok {
		hi, err := units.ParseTemperature(b)
		if err != nil {
			return Temperature{}, err
		}
		lo, err := units.ParseTemperature(withUnit(a, unitOf(b)))
		if err != nil {
			return Temperature{}, err
		}
		half := hi.Sub(lo) / 2
		if half < 0 {
			return Temperature{}, fmt.Errorf("bore: temperature %q: the lower one first: %w", s, units.ErrRange)
		}
		return Temperature{Value: lo.Add(half), Within: half}, nil
	}
	for _, sep := range []string{" ± ", " +/- "} {
		if a, b, ok := strings.Cut(s, sep); ok {
			var half units.TemperatureChange
			if err := half.UnmarshalText([]byte(b)); err != nil {
				return Temperature{}, err
			}
			value, err := units.ParseTemperature(withUnit(a, unitOf(b)))
			if err != nil {
				return Temperature{}, err
			}
			if half < 0 {
				return Temperature{}, fmt.Errorf("bore: temperature %q: want a positive half-width: %w", s, units.ErrRange)
			}
			return Temperature{Value: value, Within: half}, nil
		}
	}
	value, err := units.ParseTemperature(s)
	return Temperature{Value: value}, err
}

// unitOf returns what follows the last digit or point of a number with its unit.
func unitOf(s string) string { return s[strings.LastIndexAny(s, "0123456789.")+1:] }

// withUnit returns a number with the unit behind it, unless it has one or there is none. Kelvins
// are not lent: in 24 ± 1 K they are those of the half-width, and the 24 are meant for °C.
func withUnit(number, unit string) string {
	if number == "" || unitOf(number) != "" || strings.TrimSpace(unit) == "K" {
		return number
	}
	return number + unit
}

// IsZero reports whether the temperature is not given. It also serves JSON's omitzero.
func (t Temperature) IsZero() bool { return t == Temperature{} }

// String returns "31 °C" or "31 ± 1 °C", which [ParseTemperature] reads back, or "not given".
func (t Temperature) String() string {
	if t.Within == 0 || t.Value.IsZero() {
		return t.Value.String()
	}
	return strings.TrimSuffix(t.Value.String(), " °C") + " ± " + strings.TrimSuffix(t.Within.String(), " K") + " °C"
}

// MarshalText returns the text of [Temperature.String], empty where none is given; of one that no workshop
// has, as of a Value of plain 30, which is 30 K, [units.ErrRange]; of a half-width of nothing [units.ErrNotGiven].
func (t Temperature) MarshalText() ([]byte, error) {
	if t.IsZero() {
		return nil, nil
	}
	if err := t.validate("", ""); err != nil {
		return nil, err
	}
	return []byte(t.String()), nil
}

// UnmarshalText reads a text as [ParseTemperature] does; empty text is the zero Temperature. On error the
// receiver keeps its value.
func (t *Temperature) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*t = Temperature{}
		return nil
	}
	v, err := ParseTemperature(string(text))
	if err != nil {
		return err
	}
	*t = v
	return nil
}

// orReference returns t with 20 °C where none is given.
func (t Temperature) orReference() Temperature {
	if t.Value.IsZero() {
		t.Value = units.ReferenceTemperature
	}
	return t
}

// isReference reports whether t is 20 °C without doubt. 68 °F is, but for rounding.
func (t Temperature) isReference() bool {
	return t.Within == 0 && math.Abs(float64(t.orReference().Value-units.ReferenceTemperature)) < 1e-9
}

// coldest is, in kelvins, below any air that was ever measured, −89 °C (World Meteorological Organization, from
// memory), and above any number that is meant in °C and put where kelvins belong.
const coldest = 180

// validate refuses what no workshop has; of and what say whose temperature it is, " of the " "cylinder". The zero
// Temperature passes: it is not given.
func (t Temperature) validate(of, what string) error {
	if t.Value.IsZero() && t.Within != 0 {
		return fmt.Errorf("bore: temperature%s%s, within %v: %w", of, what, t.Within, units.ErrNotGiven)
	}
	v, w := float64(t.Value), float64(t.Within)
	if err := t.Value.Validate(); err != nil || !(w >= 0 && w <= 1000) || v > 5000 {
		return fmt.Errorf("bore: temperature%s%s, %v K ± %v K: want one up to 5000 K within 0 to 1000 K: %w", of, what, v, w, units.ErrRange)
	}
	if !t.Value.IsZero() && v < coldest {
		return fmt.Errorf("bore: temperature%s%s, %v K: %w: no workshop is so cold; a plain number is in kelvins, and 30 °C is units.Celsius(30)", of, what, v, units.ErrRange)
	}
	return nil
}
