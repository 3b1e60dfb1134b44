// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"
)

// Coverage returns the coverage factor k for which ±k standard uncertainties hold the value
// with probability p, 0 < p < 1: the two-sided quantile of Student's t for the degrees of
// freedom, of the normal distribution for 0 (JCGM 100:2008 G.3, Table G.2).
func Coverage(p, dof float64) (float64, error) {
	if !(p > 0 && p < 1) {
		return 0, fmt.Errorf("uncertainty: coverage probability %v: %w (between 0 and 1)", p, ErrProbability)
	}
	if err := checkDoF(dof); err != nil {
		return 0, err
	}
	return tUpper((1-p)/2, dof), nil
}

// tTail returns the probability that Student's t exceeds x; dof 0 is the normal distribution.
func tTail(x, dof float64) float64 {
	if dof == 0 {
		return 0.5 * math.Erfc(x/math.Sqrt2)
	}
	half := 0.5 * mathext.RegIncBeta(dof/2, 0.5, dof/(dof+x*x))
	if x < 0 {
		return 1 - half
	}
	return half
}

// tUpper returns the x that Student's t exceeds with probability q, 0 < q ≤ 1/2.
func tUpper(q, dof float64) float64 {
	if dof == 0 {
		return math.Sqrt2 * math.Erfcinv(2*q)
	}
	y := mathext.InvRegIncBeta(dof/2, 0.5, 2*q)
	return math.Sqrt(dof * (1 - y) / y)
}
