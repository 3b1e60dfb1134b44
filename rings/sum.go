// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A sum is a linear model of independent inputs, in picometres. It gives what an
// [uncertainty.Budget] of them gives (JCGM 100:2008 5.1.2 and G.4.1), in half the time and
// without names.
type sum struct{ value, variance, fourth float64 }

// add adds by·e.
func (s *sum) add(by float64, e uncertainty.Estimate) {
	s.value += float64(by * float64(e.Value))
	u := by * float64(e.Std)
	v := float64(u * u)
	s.variance += v
	if e.DoF != 0 {
		s.fourth += float64(v*v) / e.DoF
	}
}

// doubt adds a standard uncertainty with no doubt of its own.
func (s *sum) doubt(u float64) { s.variance += float64(u * u) }

// mostDoF is where Student's distribution is the normal one to all digits.
const mostDoF = 1e16

// estimate rounds the sum, once. An uncertainty above zero stays above zero.
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
	if s.variance > 0 {
		e.Std = max(e.Std, units.Picometre)
	}
	if s.fourth > 0 {
		if dof := float64(s.variance*s.variance) / s.fourth; dof <= mostDoF {
			e.DoF = max(dof, 1) // never less but by rounding
		}
	}
	return e, nil
}
