// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"

	"borewright.example/units"
)

// A Risk is how often a decision may be wrong at most, whatever the true value is. Both parts
// lie between 1e-9 and 0.5, and a part of zero stands for 0.05.
//
// A decision whose wrong answer ends in a scrapped engine wants a small Accept; one whose wrong
// answer ends in needless work can live with a greater Reject. The smaller both are, the more
// readings end as undecided.
type Risk struct {
	Accept float64 `json:"accept,omitzero"` // greatest probability of calling within what is beyond
	Reject float64 `json:"reject,omitzero"` // greatest probability of calling beyond what is within
}

const defaultRisk = 0.05

// OrDefault returns the risk with 0.05 in place of each zero.
func (r Risk) OrDefault() Risk {
	if r.Accept == 0 {
		r.Accept = defaultRisk
	}
	if r.Reject == 0 {
		r.Reject = defaultRisk
	}
	return r
}

// Share returns the risk for each of n decisions, so that the chance of any wrong answer of a
// kind among all of them stays at or below r: both parts divided by n (Bonferroni's inequality,
// which asks for no independence). An n below 2 leaves the risk as it is.
//
// Limits, bores and passes multiply: a job of 4 bores with 3 limits each, measured before and
// after, takes Share(24). Risks for which one never needs all answers right together, such as
// the places of one bore whose worst alone decides, need no share of Accept.
func (r Risk) Share(n int) Risk {
	r = r.OrDefault()
	if n > 1 {
		r.Accept /= float64(n)
		r.Reject /= float64(n)
	}
	return r
}

// check refuses what is not between 1e-9 and 0.5.
func (r Risk) check() error {
	for _, p := range [...]float64{r.Accept, r.Reject} {
		if !(p >= 1e-9 && p <= 0.5) {
			return fmt.Errorf("uncertainty: risk of %v: %w (1e-9 to 0.5)", p, units.ErrRange)
		}
	}
	return nil
}
