// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Clearance returns the diametral clearance of a piston in a bore, both at 20 °C: bore less
// skirt, negative where the piston is the larger. The two measurements are taken as
// independent; their effective degrees of freedom follow Welch and Satterthwaite
// (JCGM 100:2008 G.4.1).
//
// A bore of zero is [units.ErrNotGiven], one below that or less sure than it is large [units.ErrRange]; an
// estimate that is none brings the error of its Validate; the errors of [Piston.Skirt] come through.
func Clearance(bore uncertainty.Estimate, p Piston) (uncertainty.Estimate, error) {
	skirt, err := p.Skirt()
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkSize("bore", bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	e, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "bore", Sensitivity: 1, Std: bore.Std.In(units.Picometre), DoF: bore.DoF},
		{Name: "piston", Sensitivity: -1, Std: skirt.Std.In(units.Picometre), DoF: skirt.DoF},
	}}.Estimate(bore.Value-skirt.Value, units.Picometre) // (2)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: clearance: %w", err)
	}
	return e, nil
}
