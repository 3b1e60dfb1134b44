// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"fmt"
	"math"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// mostDoubt is the expanded uncertainty, in degrees with 95 % coverage, beyond which an angle is refused.
const mostDoubt = 3.0

// methodStd stands for what the parts of the doubt do not see, in degrees: over rendered walls without noise
// the method is off by up to 0.1°, differently at each angle.
const methodStd = 0.1

// Crosshatch measures the angle of the crosshatch.
//
// What is missing is [units.ErrNotGiven], what is out of range [units.ErrRange]. Else the picture is refused by the
// first that applies: [ErrSmall], [ErrCorners], [ErrFaint], [ErrTurning], [ErrFamilies], [ErrSpread], [ErrDoubt].
func (s Shot) Crosshatch() (Measured, error) {
	v, err := s.look()
	if err != nil {
		return Measured{}, err
	}
	up, down, err := v.chart.families(v.grid)
	if err != nil {
		return Measured{}, err
	}
	spread, err := v.chart.reach(up, down)
	if err != nil {
		return Measured{}, err
	}
	ss := strands(v.pose(), v.used, up/toDegrees, down/toDegrees)
	angle, budget, err := v.budget(ss, up, down)
	if err != nil {
		return Measured{}, err
	}
	std, dof, err := budget.Combined()
	if err != nil {
		return Measured{}, fmt.Errorf("photo: %w", err)
	}
	k, err := uncertainty.Coverage(0.95, dof)
	if err != nil {
		return Measured{}, fmt.Errorf("photo: %w", err)
	}
	if !(k*std <= mostDoubt) {
		return Measured{}, fmt.Errorf("photo: %.1f° ± %.1f°: %w: want ± %v° or less", angle, k*std, ErrDoubt, mostDoubt)
	}
	m := Measured{
		Std: rounded(std), DoF: dof, Budget: budget, Leans: [2]units.Angle{rounded(up), rounded(down)},
		Tilt: rounded(v.pose().tilt() * toDegrees), view: v,
	}
	if m.Crosshatch, err = hone.Included(rounded(angle)); err != nil {
		return Measured{}, fmt.Errorf("photo: %w", err)
	}
	if spread.seen {
		low, high := max(angle+spread.low-k*std, 0.001), min(angle+spread.high+k*std, 179.999)
		if m.Min, err = hone.Included(rounded(low)); err != nil {
			return Measured{}, fmt.Errorf("photo: %w", err)
		}
		if m.Max, err = hone.Included(rounded(high)); err != nil {
			return Measured{}, fmt.Errorf("photo: %w", err)
		}
	}
	return m, nil
}

// rounded is an angle from degrees, to a millionth: below that, machines differ.
func rounded(degrees float64) units.Angle {
	return units.Angle(math.Round(degrees*1e6)/1e6) * units.Degree
}

// budget returns the mean angle of what the strands show, in degrees, and the parts of its doubt.
func (v *view) budget(ss []strand, up, down float64) (angle float64, b uncertainty.Budget, err error) {
	angle, tilts := twice(v.fits, ss)
	corners, focal, middle, bend, err := v.sight.lensStd(&v.fits[0], ss)
	if err != nil {
		return 0, b, err
	}
	blocks, dof := v.chart.blocksStd(up, down)
	for _, c := range []struct {
		name     string
		std, dof float64
	}{
		{"parts of the wall", blocks, dof},
		{"shape of the peaks", v.chart.shapeStd(up, down), 0},
		{"corners of the label", corners, 0},
		{"focal length", focal, 0},
		{"axis of the lens", middle, 0},
		{"bend of the lens", bend, 0},
		{"tilt seen two ways", tilts, 0},
		{"method", methodStd, 0},
	} {
		b.Components = append(b.Components, uncertainty.Component{Name: c.name, Std: c.std, Sensitivity: 1, DoF: c.dof, Unit: "°"})
	}
	return angle, b, nil
}
