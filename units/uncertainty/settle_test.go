// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// What Settle advises for a range and for the greatest of several, taken at its word.
func TestSettleSeveral(t *testing.T) {
	limit := units.Limits{Max: 10 * units.Micrometre}
	for _, n := range []int{2, 6, 20} {
		for _, dof := range []float64{0, 8} {
			for reach, want := range map[units.Length]uncertainty.Verdict{6: uncertainty.Within, 14: uncertainty.Beyond} {
				values := make([]units.Length, n)
				values[0] = reach * units.Micrometre
				judge := func(std units.Length) uncertainty.Finding {
					return must[uncertainty.Finding](t)(uncertainty.JudgeRange(values, std, dof, limit, uncertainty.Risk{}))
				}
				f := judge(5 * units.Micrometre)
				if f.Verdict != uncertainty.Undecided {
					t.Fatal(f)
				}
				r := must[uncertainty.Remedy](t)(f.Settle(f.Measured.Std))
				if r.Toward != want || r.Repeats < 2 {
					t.Errorf("range of %d, ν %v: %v", n, dof, r)
				}
				one := r.Std.In(units.Picometre) / math.Sqrt2
				if got := judge(units.Length(one) - 1); got.Verdict != want {
					t.Errorf("range of %d, ν %v: %v: %v", n, dof, r, got)
				}
				if got := judge(units.Length(1.035 * one)); got.Verdict != uncertainty.Undecided {
					t.Errorf("range of %d, ν %v: %v, but %v", n, dof, r, got)
				}

				es := make([]uncertainty.Estimate, n)
				at := func(std units.Length) uncertainty.Finding {
					for i := range es {
						es[i] = uncertainty.Estimate{Value: values[i], Std: std, DoF: dof}
					}
					return greatest(t, es, limit)
				}
				f = at(5 * units.Micrometre)
				r = must[uncertainty.Remedy](t)(f.Settle(0))
				if r.Toward != want || r.Repeats != 0 {
					t.Errorf("greatest of %d, ν %v: %v", n, dof, r)
				}
				if got := at(r.Std); got.Verdict != want {
					t.Errorf("greatest of %d, ν %v: %v: %v", n, dof, r, got)
				}
				if got := at(r.Std + r.Std/500); got.Verdict != uncertainty.Undecided {
					t.Errorf("greatest of %d, ν %v: %v, but %v", n, dof, r, got)
				}
			}
		}
	}
}

// greatest judges the greatest of several values as GreatestOf is documented: Reject is shared, Accept is not.
func greatest(t *testing.T, es []uncertainty.Estimate, w units.Limits) uncertainty.Finding {
	t.Helper()
	risk := uncertainty.Risk{}.OrDefault()
	shared := uncertainty.Risk{Accept: risk.Accept, Reject: risk.Reject / float64(len(es))}
	var worst uncertainty.Finding
	for i, e := range es {
		f := must[uncertainty.Finding](t)(uncertainty.Judge(e, w, shared))
		beyond, was := f.Verdict == uncertainty.Beyond, worst.Verdict == uncertainty.Beyond
		if i == 0 || beyond && !was || beyond == was && f.Conform < worst.Conform {
			worst = f
		}
	}
	worst.Kind, worst.N, worst.Risk = uncertainty.GreatestOf, len(es), risk
	return worst
}

// TestGreatestOfOne: what settles the greatest of one value settles that value.
func TestGreatestOfOne(t *testing.T) {
	for _, value := range []units.Length{90, 97, 100, 103, 130} {
		e := uncertainty.Estimate{Value: value * units.Micrometre, Std: 3 * units.Micrometre}
		f := must[uncertainty.Finding](t)(uncertainty.Judge(e, units.Limits{Max: 100 * units.Micrometre}, uncertainty.Risk{}))
		one := must[uncertainty.Remedy](t)(f.Settle(2 * units.Micrometre))
		f.Kind, f.N = uncertainty.GreatestOf, 1
		if got := must[uncertainty.Remedy](t)(f.Settle(2 * units.Micrometre)); got != one {
			t.Errorf("%v: %v of one, %v alone", value, got, one)
		}
	}
}
