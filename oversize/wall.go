// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// WallLeft returns the thickness of wall that is left where it measured wall at a bore of the
// size now, when the bore is finished at that size: wall less half the growth of the bore and
// less the shift of the axis, which may point that way. It may be negative: then there is none.
//
// A size or a wall of zero is [units.ErrNotGiven]; one below that, a negative shift, and values beyond what a cylinder can
// have are [units.ErrRange].
func WallLeft(wall, now uncertainty.Estimate, finished, shift units.Length) (uncertainty.Estimate, error) {
	if err := checkSize("bore", now.Value); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkSize("finished bore", finished); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkSize("wall", wall.Value); err != nil {
		return uncertainty.Estimate{}, err
	}
	if shift < 0 || shift > most || wall.Value > most {
		return uncertainty.Estimate{}, refuseLength("wall or shift", max(shift, wall.Value))
	}
	// (finished − now)/2, halves away from zero: the wall is never flattered
	growth, err := (finished - now.Value).MulDiv(1, 2)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	return uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "wall", Sensitivity: 1, Std: wall.Std.In(units.Picometre), DoF: wall.DoF},
		{Name: "bore", Sensitivity: 0.5, Std: now.Std.In(units.Picometre), DoF: now.DoF},
	}}.Estimate(wall.Value-growth-shift, units.Picometre)
}

// HoopWall returns the thickness of a cylinder wall that carries a gas pressure at a hoop
// stress, p·D/(2σ), by the thin-cylinder rule of textbooks (R. S. Khurmi, J. K. Gupta, A Textbook of
// Machine Design, chapter 32). Together with [ReboringAllowance] it is a design rule for new
// cylinders of iron, whose stress it takes as 35 to 100 MPa; what is left after boring should
// not be less than it. A maker's least wall comes first.
//
// A bore of zero is [units.ErrNotGiven]. One below that or beyond [units.MaxLength], and a pressure or stress
// that is not positive or not finite, are [units.ErrRange]; so are a wall thicker than the bore is wide and
// one that rounds to nothing.
func HoopWall(bore units.Length, pressure, stress units.Pressure) (units.Length, error) {
	if err := checkSize("bore", bore); err != nil {
		return 0, err
	}
	half := float64(pressure) / float64(stress) / 2
	if !(pressure > 0 && stress > 0 && half <= 1) || math.IsInf(float64(stress), 0) {
		return 0, fmt.Errorf("oversize: pressure %v at a stress of %v: %w", pressure, stress, units.ErrRange)
	}
	wall, err := units.Of(float64(float64(bore)*half), units.Picometre)
	if err == nil && wall == 0 {
		err = fmt.Errorf("oversize: pressure %v at a stress of %v: no wall: %w", pressure, stress, units.ErrRange)
	}
	return wall, err
}

// allowances are the bores and reboring allowances of Khurmi and Gupta, table 32.1: read to 300 mm, from memory above.
var allowances = [...]struct{ bore, allowance units.Length }{
	{75 * units.Millimetre, 1500 * units.Micrometre},
	{100 * units.Millimetre, 2400 * units.Micrometre},
	{150 * units.Millimetre, 4000 * units.Micrometre},
	{200 * units.Millimetre, 6300 * units.Micrometre},
	{250 * units.Millimetre, 8000 * units.Micrometre},
	{300 * units.Millimetre, 9500 * units.Micrometre},
	{350 * units.Millimetre, 11000 * units.Micrometre},
	{400 * units.Millimetre, 12500 * units.Micrometre},
	{450 * units.Millimetre, 12500 * units.Micrometre},
	{500 * units.Millimetre, 12500 * units.Micrometre},
}

// ReboringAllowance returns the thickness that textbooks add to the wall of a new cylinder so
// that it can be rebored, for bores of 75 to 500 mm, on straight lines between the rows of the
// table (Khurmi and Gupta, table 32.1; the rows over 300 mm from memory). Other bores are [units.ErrRange], one of zero
// [units.ErrNotGiven].
func ReboringAllowance(bore units.Length) (units.Length, error) {
	for i := 1; i < len(allowances); i++ {
		a, b := allowances[i-1], allowances[i]
		if bore >= a.bore && bore <= b.bore {
			rise, err := (b.allowance - a.allowance).MulDiv(int64(bore-a.bore), int64(b.bore-a.bore))
			return a.allowance + rise, err
		}
	}
	return 0, fmt.Errorf("oversize: reboring allowance of a bore of %v: %w (75 mm to 500 mm)", bore, given.Err(bore))
}
