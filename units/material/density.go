// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"

	"borewright.example/units"
)

// Density is mass a volume, in kilograms a cubic metre.
type Density float64

// Units of density; 7.2 * material.GramPerCubicCentimetre.
const (
	KilogramPerCubicMetre  Density = 1
	GramPerCubicCentimetre         = 1000 * KilogramPerCubicMetre
)

// In returns the density as a number of the unit; a unit of zero gives 0.
func (d Density) In(unit Density) float64 {
	if unit == 0 {
		return 0
	}
	return float64(d / unit)
}

// ParseDensity reads a number and a unit, "7.2 g/cm³"; units: g/cm³, g/cm3, kg/m³, kg/m3. A text that is none is
// [units.ErrSyntax], [units.ErrMissingUnit] or [units.ErrUnknownUnit]; one below zero or above 1e6 kg/m³ is [units.ErrRange].
func ParseDensity(s string) (Density, error) {
	refuse := func(err error) (Density, error) {
		return 0, fmt.Errorf("material: density %.80q: %w (write 7.2 g/cm³ or 7200 kg/m³)", s, err)
	}
	number, name := s, ""
	if i := strings.IndexAny(s, " gk"); i >= 0 {
		number, name = s[:i], strings.TrimPrefix(s[i:], " ")
	}
	x, err := strconv.ParseFloat(number, 64)
	switch {
	case errors.Is(err, strconv.ErrRange):
		return refuse(units.ErrRange)
	case err != nil || strings.Trim(number, "0123456789.e+-") != "":
		return refuse(units.ErrSyntax)
	}
	d := Density(x)
	switch name {
	case "g/cm³", "g/cm3":
		d = Density(x * float64(GramPerCubicCentimetre))
	case "kg/m³", "kg/m3":
	case "":
		return refuse(units.ErrMissingUnit)
	default:
		return refuse(units.ErrUnknownUnit)
	}
	if d < 0 || d > 1e6 {
		return refuse(units.ErrRange)
	}
	return d, nil
}

// String returns the density in grams a cubic centimetre to 12 significant digits, "7.2 g/cm³".
func (d Density) String() string {
	return strconv.FormatFloat(d.In(GramPerCubicCentimetre), 'g', 12, 64) + " g/cm³"
}

// AppendText appends the text of [Density.String]; what is not finite is [units.ErrNotFinite].
func (d Density) AppendText(b []byte) ([]byte, error) {
	if math.IsNaN(float64(d)) || math.IsInf(float64(d), 0) {
		return b, fmt.Errorf("material: density of %v: %w", d, units.ErrNotFinite)
	}
	return append(b, d.String()...), nil
}

// MarshalText returns what [Density.AppendText] appends.
func (d Density) MarshalText() ([]byte, error) { return d.AppendText(nil) }

// UnmarshalText is [ParseDensity]. On error the receiver keeps its value.
func (d *Density) UnmarshalText(text []byte) error {
	v, err := ParseDensity(string(text))
	if err == nil {
		*d = v
	}
	return err
}
