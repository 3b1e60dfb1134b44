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
// A bore that is not positive or beyond [units.MaxLength] or has a negative uncertainty is
// [units.ErrRange]; the errors of [Piston.Skirt] come through.
func Clearance(bore uncertainty.Estimate, p Piston) (uncertainty.Estimate, error) {
	skirt, err := p.Skirt()
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	if bore.Value <= 0 || bore.Value > units.MaxLength || bore.Std < 0 || bore.Std > bore.Value {
		return uncertainty.Estimate{}, fmt.Errorf("fit: bore %v, standard uncertainty %v: %w", bore.Value, bore.Std, units.ErrRange)
	}
	e, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "bore", Sensitivity: 1, Std: bore.Std.In(units.Picometre), DoF: bore.DoF},
		{Name: "piston", Sensitivity: -1, Std: skirt.Std.In(units.Picometre), DoF: skirt.DoF},
	}}.Estimate(bore.Value-skirt.Value, units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: clearance: %w", err)
	}
	return e, nil
}
