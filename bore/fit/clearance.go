// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"
	"math"

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
	a, b := float64(bore.Std), float64(skirt.Std)
	std, err := units.Of(math.Hypot(a, b), units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: clearance: %w", err)
	}
	return uncertainty.Estimate{Value: bore.Value - skirt.Value, Std: std}, nil
}
