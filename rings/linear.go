// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A term is one input of a linear model, with its sensitivity.
type term struct {
	by float64
	of uncertainty.Estimate
}

// linear returns Σ by·of for independent inputs: uncertainties add in quadrature (JCGM 100:2008
// 5.1.2), degrees of freedom by the Welch-Satterthwaite formula (G.4.1).
func linear(terms ...term) (uncertainty.Estimate, error) {
	var value, variance, quartic float64
	for _, t := range terms {
		value += float64(t.by * float64(t.of.Value))
		u := t.by * float64(t.of.Std)
		v := u * u
		variance += float64(v)
		if t.of.DoF > 0 {
			quartic += float64(v*v) / t.of.DoF
		}
	}
	l, err := units.Of(value, units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	s, err := units.Of(math.Sqrt(variance), units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	e := uncertainty.Estimate{Value: l, Std: s}
	if quartic > 0 {
		e.DoF = max(1, float64(variance*variance)/quartic)
	}
	return e, nil
}
