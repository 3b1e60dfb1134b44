// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Errors of unit standard deviation by quantile, as one component that dominates its budget has them.
var oneShape = map[string]func(q float64) float64{
	"rectangular": func(q float64) float64 { return math.Sqrt(3) * (2*q - 1) },
	"U-shaped":    func(q float64) float64 { return math.Sqrt2 * math.Cos(math.Pi*q) },
}

// wrongly returns how often values with these errors about a limit, or a hair past it, are called beyond
// or within.
func wrongly(t *testing.T, errors []float64, risk float64) (within, beyond float64) {
	t.Helper()
	const limit = 72 * units.Millimetre
	r := uncertainty.Risk{Accept: risk, Reject: risk}
	for _, e := range errors {
		y := uncertainty.Estimate{Value: limit + scaled(e), Std: sigma}
		f, err := uncertainty.Judge(y, units.Limits{Max: limit - 1}, r)
		if err != nil {
			t.Fatal(err)
		}
		if f.Verdict == uncertainty.Within {
			within++
		}
		if f, err = uncertainty.Judge(y, units.Limits{Max: limit}, r); err != nil {
			t.Fatal(err)
		}
		if f.Verdict == uncertainty.Beyond {
			beyond++
		}
	}
	n := float64(len(errors))
	return within / n, beyond / n
}

// The risk is kept at any size where one rectangular or U-shaped component is all there is: a resolution of
// 10 µm with the limit at the half step, at a risk of 20 %, was wrong in 26 %.
func TestRiskKeptByOneDominatingComponent(t *testing.T) {
	const n = 5_000
	for name, quantile := range oneShape {
		errors := make([]float64, n)
		for i := range errors {
			errors[i] = quantile((float64(i) + 0.5) / n)
		}
		for _, risk := range []float64{0.01, 0.05, 0.066, 0.0661, 0.07, 0.08, 0.1, 0.2, 0.3, 0.4, 0.5} {
			within, beyond := wrongly(t, errors, risk)
			if most := risk + 1.0/n; within > most || beyond > most {
				t.Errorf("%s at %v: wrongly within %.4f, wrongly beyond %.4f", name, risk, within, beyond)
			}
		}
		if within, _ := wrongly(t, errors, 0.2); name == "U-shaped" && within < 0.199 {
			t.Errorf("%s: %.4f of a risk of 20 %% used", name, within)
		}
	}
	// What a normal error asks of it is what it was: the chance of conformity is that of the normal one.
	e := uncertainty.Estimate{Value: 72*units.Millimetre - scaled(1), Std: sigma}
	f, err := uncertainty.Judge(e, units.Limits{Max: 72 * units.Millimetre}, uncertainty.Risk{Accept: 0.2})
	if err != nil || math.Abs(f.Conform-0.841344746) > 1e-9 || f.Verdict != uncertainty.Undecided {
		t.Errorf("%v, %v", f, err)
	}
}

// Two such components of like size: the figures of the package comment, by the sum over all pairs of
// quantiles.
func TestRiskOfTwoDominatingComponents(t *testing.T) {
	const n = 150
	for _, c := range []struct {
		a, b  string
		risks map[float64]float64 // promised, and what becomes of it
	}{
		{"U-shaped", "U-shaped", map[float64]float64{0.03: 0.0193, 0.05: 0.0593, 0.07: 0.087, 0.1: 0.1065, 0.2: 0.1542}},
		{"rectangular", "rectangular", map[float64]float64{0.03: 0.0267, 0.05: 0.054, 0.07: 0.0765, 0.1: 0.0941, 0.2: 0.1424}},
	} {
		var errors []float64
		for i := range n {
			for j := range n {
				errors = append(errors, (oneShape[c.a]((float64(i)+0.5)/n)+oneShape[c.b]((float64(j)+0.5)/n))/math.Sqrt2)
			}
		}
		for risk, want := range c.risks {
			if within, beyond := wrongly(t, errors, risk); math.Abs(within-want) > 0.0025 || math.Abs(beyond-want) > 0.0025 {
				t.Errorf("%s and %s at %v: wrongly within %.4f, beyond %.4f, want %.4f", c.a, c.b, risk, within, beyond, want)
			}
		}
	}
}
