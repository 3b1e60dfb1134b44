// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/bore/internal/circle"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Point is a point of the wall, as a rotary table or a measuring machine gives it. Its depth
// does not matter to a clean-up, which is one cylinder for all.
type Point struct {
	Depth  units.Length `json:"depth,omitzero"` // from the deck
	Angle  units.Angle  `json:"angle,omitzero"` // once round, from one end of the thrust axis
	Radius units.Length `json:"radius"`         // at 20 °C, from the original centre: the register, or the unworn bottom
}

// mostGap is the largest angle between neighbouring points that still shows the wall to be closed.
const mostGap = 90 * units.Degree

// CleanUpRadial returns the clean-up of a wall known by radial points, each with the standard
// uncertainty std: no interval but one number for each centre, exact for the points given.
//
//	on the original centre   twice the largest radius
//	on the worn centre       the smallest circle around all points, seen along the bore
//
// each plus twice the sum of the allowances, rounded up to a nanometre. Both hold every point,
// and nothing smaller does. A pit or score goes in as a point at its bottom. The axis stays parallel to
// the original one; allow for a lean.
//
// Errors: ErrNoReadings; ErrReading for a point that no bore can have, an std outside 0 to 1 mm,
// or neighbouring points more than 90° apart, between which there might be anything; [units.ErrRange]
// for an impossible allowance.
func CleanUpRadial(points []Point, std units.Length, a Allowances) (CleanUp, error) {
	if err := checkPoints(points, std); err != nil {
		return CleanUp{}, err
	}
	if err := a.validate(); err != nil {
		return CleanUp{}, err
	}
	x, y := make([]float64, len(points)), make([]float64, len(points)) // in mm
	var largest units.Length
	for i, p := range points {
		s, c := math.Sincos(float64(p.Angle))
		r := p.Radius.In(units.Millimetre)
		x[i], y[i] = float64(r*c), float64(r*s)
		largest = max(largest, p.Radius)
	}
	around := circle.Enclosing(x, y)
	diameter, err := units.Of(2*around.R, units.Millimetre)
	if err != nil {
		return CleanUp{}, err
	}
	shift, err := units.Of(math.Sqrt(float64(around.X*around.X)+float64(around.Y*around.Y)), units.Millimetre)
	if err != nil {
		return CleanUp{}, err
	}
	var squares float64
	for _, w := range around.Weights {
		squares += float64(w * w)
	}
	u, err := units.Of(2*math.Sqrt(squares)*std.In(units.Micrometre), units.Micrometre)
	if err != nil {
		return CleanUp{}, err
	}
	c := CleanUp{Extra: a.onDiameter(), Shift: shift.Round(units.Nanometre), Unseen: []Unseen{unseenScores, UnseenElsewhere}}
	if c.Shift > 0 {
		c.Toward = foldAngle(units.Angle(math.Atan2(around.Y, around.X)), 360)
	}
	original := uncertainty.Estimate{Value: (2 * largest).Ceil(units.Nanometre) + c.Extra, Std: 2 * std}
	// No centre needs more than the original one: rounding up may not say so.
	worn := uncertainty.Estimate{Value: min(diameter.Ceil(units.Nanometre)+c.Extra, original.Value), Std: u}
	c.Original, c.Worn = Interval{original, original}, Interval{worn, worn}
	return c, nil
}

func checkPoints(points []Point, std units.Length) error {
	if len(points) == 0 {
		return fmt.Errorf("bore: clean-up: %w", ErrNoReadings)
	}
	if std < 0 || std > units.Millimetre {
		return fmt.Errorf("bore: clean-up: standard uncertainty of a radius %v: want 0 to %v: %w", std, units.Millimetre, ErrReading)
	}
	angles := make([]float64, len(points))
	for i, p := range points {
		if !validAngle(p.Angle) || p.Radius <= 0 || p.Radius > units.MaxLength/2-mostAllowance || p.Depth < 0 || p.Depth > units.MaxLength {
			return fmt.Errorf("bore: clean-up: radius %v at %v rad, depth %v: want above 0 and below 4.9 m, and a finite angle: %w", p.Radius, float64(p.Angle), p.Depth, ErrReading)
		}
		angles[i] = foldAngle(p.Angle, 360).In(units.Degree)
	}
	slices.Sort(angles)
	last := angles[len(angles)-1] - 360
	for _, at := range angles {
		if at-last > mostGap.In(units.Degree)+1/angleSteps {
			return fmt.Errorf("bore: clean-up: no point between %.1f° and %.1f°: want points at most 90° apart: %w", last, at, ErrReading)
		}
		last = at
	}
	return nil
}
