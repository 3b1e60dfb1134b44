// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"
	"strings"

	"borewright.example/units"
)

// An Estimate is a measured length with its standard uncertainty (JCGM 100). Std 0 means exact.
// DoF is the degrees of freedom of Std; 0 means that Std is known without doubt.
type Estimate struct {
	Value units.Length `json:"value"`        // the best estimate of the true value
	Std   units.Length `json:"std,omitzero"` // standard uncertainty, at least 0; 0 = exact
	DoF   float64      `json:"dof,omitzero"` // degrees of freedom of Std; 0 = infinitely many
}

// Validate reports a Std below zero (ErrStd), a Value or Std beyond ±units.MaxLength
// (units.ErrRange) and degrees of freedom other than 0 or at least 1 (ErrStd).
func (e Estimate) Validate() error {
	switch {
	case e.Std < 0:
		return fmt.Errorf("uncertainty: std %v: %w", e.Std, ErrStd)
	case e.Value.Abs() > units.MaxLength:
		return fmt.Errorf("uncertainty: value %v: %w (±%v)", e.Value, units.ErrRange, units.MaxLength)
	case e.Std > units.MaxLength:
		return fmt.Errorf("uncertainty: std %v: %w (up to %v)", e.Std, units.ErrRange, units.MaxLength)
	}
	return checkDoF(e.DoF)
}

// validDoF reports whether dof is 0, which stands for infinitely many, or a finite number of at
// least 1.
func validDoF(dof float64) bool { return dof == 0 || dof >= 1 && !math.IsInf(dof, 0) }

func checkDoF(dof float64) error {
	if !validDoF(dof) {
		return fmt.Errorf("uncertainty: %v degrees of freedom: %w", dof, ErrStd)
	}
	return nil
}

// Expanded returns the expanded uncertainty U = k·Std for a coverage probability p, 0 < p < 1,
// with k of [Coverage] (JCGM 100:2008 6.2 and G.3). Errors are those of [Estimate.Validate] and
// [Coverage], and units.ErrRange for a U beyond units.MaxLength.
func (e Estimate) Expanded(p float64) (units.Length, error) {
	if err := e.Validate(); err != nil {
		return 0, err
	}
	k, err := Coverage(p, e.DoF)
	if err != nil {
		return 0, err
	}
	return units.Of(k*e.Std.In(units.Picometre), units.Picometre)
}

// textCoverage is the coverage probability of the ± in the text of an Estimate.
const textCoverage = 0.95

// String returns the value and its expanded uncertainty of 95 % coverage in millimetres, the
// uncertainty to two significant digits and the value to the same place: "72.0310 ± 0.0042 mm".
// An exact estimate is its value alone.
func (e Estimate) String() string { return e.Format(units.Millimetre) }

// Format returns the text of [Estimate.String] in the unit, as [units.Length.Format] names it; a
// unit that is not above 0 is taken for a millimetre. The value of an exact estimate is rounded
// to about a nanometre. An estimate that does not validate is "invalid estimate".
func (e Estimate) Format(unit units.Length) string {
	k, err := Coverage(textCoverage, e.DoF)
	if err != nil || e.Validate() != nil {
		return "invalid estimate"
	}
	if unit <= 0 {
		unit = units.Millimetre
	}
	if e.Std == 0 {
		return trimZeros(e.Value.Format(unit, max(0, placesOf(units.Nanometre, unit))))
	}
	u := units.Length(math.Round(k * e.Std.In(units.Picometre)))
	n := placesOf(u, unit) + 1
	text := formatTo(u, unit, n)
	if digits(text) > 2+max(0, -n) { // rounded up to a third digit
		n--
		text = formatTo(u, unit, n)
	}
	value, _, _ := strings.Cut(formatTo(e.Value, unit, n), " ")
	return value + " ± " + text
}

// formatTo is units.Length.Format that also rounds to tens, hundreds … for places below zero.
func formatTo(l, unit units.Length, places int) string {
	step := unit
	for i := places; i < 0; i++ {
		step *= 10
	}
	if places < 0 {
		l = l.Round(step)
	}
	return l.Format(unit, max(places, 0))
}

// placesOf returns how many decimal places of the unit the first significant digit of l > 0
// needs; negative where it stands before the point.
func placesOf(l, unit units.Length) int {
	return -int(math.Floor(math.Log10(l.In(unit))))
}

// digits counts the significant digits of a number with its unit.
func digits(s string) int {
	n := 0
	s, _, _ = strings.Cut(s, " ")
	for _, r := range s {
		if r >= '1' && r <= '9' || r == '0' && n > 0 {
			n++
		}
	}
	return n
}

// trimZeros drops the zeros behind the decimals of a number with its unit.
func trimZeros(s string) string {
	number, unit, _ := strings.Cut(s, " ")
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	return number + " " + unit
}
