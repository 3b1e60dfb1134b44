// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A sum is a linear model of independent inputs, in picometres. Their uncertainties add in
// quadrature (JCGM 100:2008 5.1.2), their degrees of freedom by G.4.1. It does what
// [uncertainty.Budget] does, without a table and so without an allocation.
type sum struct{ value, variance, fourth float64 }

// add adds by·e.
func (s *sum) add(by float64, e uncertainty.Estimate) {
	s.value += float64(by * float64(e.Value))
	u := by * float64(e.Std)
	s.doubt(u)
	if e.DoF != 0 {
		s.fourth += float64(float64(float64(u*u)*u)*u) / e.DoF
	}
}

// doubt adds a standard uncertainty with no doubt of its own.
func (s *sum) doubt(u float64) { s.variance += float64(u * u) }

// estimate rounds the sum, once.
func (s *sum) estimate() (uncertainty.Estimate, error) {
	value, err := units.Of(s.value, units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	std, err := units.Of(math.Sqrt(s.variance), units.Picometre)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	e := uncertainty.Estimate{Value: value, Std: std}
	if s.fourth > 0 {
		e.DoF = max(1, float64(s.variance*s.variance)/s.fourth)
	}
	return e, nil
}
