// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "fmt"

// A Risk is what a decision may be wrong with at most. Zero in either field means 0.05.
type Risk struct {
	Accept float64 `json:"accept"` // greatest chance of calling within what is beyond
	Reject float64 `json:"reject"` // greatest chance of calling beyond what is within
}

const defaultRisk = 0.05

// orDefault returns r with 0.05 for each zero, and refuses what is not in [1e-9, 0.5].
func (r Risk) orDefault() (Risk, error) {
	if r.Accept == 0 {
		r.Accept = defaultRisk
	}
	if r.Reject == 0 {
		r.Reject = defaultRisk
	}
	if !(r.Accept >= 1e-9 && r.Accept <= 0.5 && r.Reject >= 1e-9 && r.Reject <= 0.5) {
		return Risk{}, fmt.Errorf("uncertainty: risk %v, %v: %w (1e-9 to 0.5)", r.Accept, r.Reject, ErrProbability)
	}
	return r, nil
}

// Share returns the risk for each of n decisions of which none may be wrong with more than r:
// both parts divided by n (Bonferroni's inequality). An n of 1 or less leaves r as it is.
func (r Risk) Share(n int) Risk {
	if r.Accept == 0 {
		r.Accept = defaultRisk
	}
	if r.Reject == 0 {
		r.Reject = defaultRisk
	}
	if n > 1 {
		r.Accept /= float64(n)
		r.Reject /= float64(n)
	}
	return r
}
