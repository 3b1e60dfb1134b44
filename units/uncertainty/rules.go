// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// JudgeExpanded applies the rule "U inside, U outside" with U = k·Std: Within where the value
// lies inside the limits by at least U, Beyond where it lies outside one of them by more than
// U, Undecided between (ISO 14253-1 with k = 2; JCGM 106:2012 8.3.2 and 8.3.3).
//
// The finding's Risk is what the rule amounts to: 0.023 each way for one limit and k = 2. In a
// window narrower than 2U nothing is ever Within, and Reject grows.
//
// A k of 0 is simple acceptance, whatever the uncertainty (JCGM 106:2012 8.2): a risk of 0.5 each
// way at one limit, where a true value at the limit is called either with even odds. For exact
// readings all rules are this one.
//
// k counts standard uncertainties. One that is negative or not finite is units.ErrRange; the rest is as for [Judge].
func JudgeExpanded(e Estimate, w units.Limits, k float64) (Finding, error) {
	if !(k >= 0) || math.IsInf(k, 0) {
		return Finding{}, fmt.Errorf("uncertainty: coverage factor %v: %w (finite, at least 0)", k, units.ErrRange)
	}
	f, err := Judge(e, w, Risk{})
	if err != nil {
		return Finding{}, err
	}
	u, err := units.Of(k*e.Std.In(units.Picometre), units.Picometre)
	if err != nil {
		return Finding{}, fmt.Errorf("uncertainty: %w", err)
	}
	y := e.Value
	switch {
	case w.HasMin() && w.Min-y > u || w.HasMax() && y-w.Max > u:
		f.Verdict = Beyond
	case w.HasMin() && y-w.Min < u || w.HasMax() && w.Max-y < u:
		f.Verdict = Undecided
	default:
		f.Verdict = Within
	}
	f.setEdge(f.tails(tTail))
	f.Risk = Risk{}
	if e.Std != 0 {
		f.Risk = Risk{Accept: round(tTail(k, e.DoF)), Reject: round(tTail(k, e.DoF))}
		if width, both := w.Width(); both {
			f.Risk.Reject = round(tTail(k, e.DoF) + tTail(k+width.In(e.Std), e.DoF))
		}
	}
	return f, nil
}
