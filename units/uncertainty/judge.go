// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
)

// Judge holds an estimate against its limits, one or both (JCGM 106:2012 7.3, 7.4 and 8.3;
// ISO 14253-1:2017).
//
// It is Within where the probability of conformity, with no prior, is at least 1 − r.Accept:
// for one limit, guarded acceptance with a guard band of k·Std, k the one-sided quantile of
// Student's t. It is Beyond where a true value inside the window would be measured as far
// outside in at most r.Reject of all cases: guarded rejection. For one limit the two
// probabilities are one and the same; why they differ for a window stands in the package
// comment. A limit belongs to its window; an exact estimate is always decided.
//
// An estimate, limits or risk that do not validate are errors, and so are limits that are not
// given (ErrLimits, and units.ErrNotGiven).
func Judge(e Estimate, w units.Limits, r Risk) (Finding, error) {
	return decide(Finding{Kind: OneValue, Measured: e, Limits: w, Risk: r, Per: "value"})
}

// JudgeDifference holds the absolute value of a signed difference against an upper limit: the
// ovality from two axes, or the taper between two planes. e.Value is the first reading less
// the second, either sign, and e.Std the uncertainty of that difference, in which the gauge's
// setting cancels and its repeatability enters twice.
//
// The signed value is judged in a window from −limit to limit. Its absolute value must not be
// handed to [Judge] instead: noise alone makes it positive, and of two true sizes that are the
// same it shows 0.8·Std on average.
//
// A lower limit, or an upper one that is not above zero, is ErrLimits.
func JudgeDifference(e Estimate, w units.Limits, r Risk) (Finding, error) {
	return decide(Finding{Kind: OneDifference, Measured: e, Limits: w, Risk: r, Per: "difference"})
}

// JudgeRange holds the greatest less the least of several true values against an upper limit:
// ovality from readings on several axes, or the spread of sizes over a bore. values are the
// readings; std, with its degrees of freedom dof, is the standard uncertainty of one of them
// as far as it differs from reading to reading, so without what all of them share.
//
// The range of noisy readings is too large: of equal true sizes, 6 readings show a range of
// 2.5·std on average and 20 readings 3.7·std ([MeanRange]), so that plain rules call beyond
// what is within. Here it is Beyond only where readings of true values of any kind with a range
// at the limit would show such a range in at most r.Reject of all cases; for 2 readings that is
// [JudgeDifference]. And it is Within where the difference of the two readings that happen to be
// the extremes is within as [JudgeDifference] has it, since the observed range is no smaller
// than the difference of the readings at those two places that are truly the extremes.
//
// Fewer than two values are ErrNoData, more than a million units.ErrRange; limits are as for
// [JudgeDifference].
func JudgeRange(values []units.Length, std units.Length, dof float64, w units.Limits, r Risk) (Finding, error) {
	for _, v := range values {
		if err := (Estimate{Value: v, Std: std, DoF: dof}).Validate(); err != nil {
			return Finding{}, err
		}
	}
	n := len(values)
	if err := checkReadings(n); err != nil {
		return Finding{}, err
	}
	e, err := estimate(slices.Max(values)-slices.Min(values), math.Sqrt2*std.In(units.Picometre), dof, units.Picometre)
	if err != nil {
		return Finding{}, err
	}
	return decide(Finding{Kind: RangeOf, N: n, Measured: e, Limits: w, Risk: r, Per: fmt.Sprintf("range of %d readings", n)})
}

func decide(f Finding) (Finding, error) {
	f.Risk = f.Risk.OrDefault()
	if err := f.check(); err != nil {
		return Finding{}, err
	}
	f.judge()
	return f, nil
}
