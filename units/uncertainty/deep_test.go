// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package uncertainty_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// The simulations at full size, some minutes: go test -tags deep -run Deep -v -timeout 1h
func TestDeepRiskKept(t *testing.T) {
	worst := map[int]float64{}
	for _, tr := range trials() {
		n := map[int]int{1: 400_000, 10: 40_000, 1000: 1_500}[tr.cost]
		rate := try(t, tr, n)
		t.Logf("%-60s wrongly %-6v in %.4f of %d, promised %.2f", tr.name, tr.wrong, rate, n, tr.risk)
		worst[tr.cost] = max(worst[tr.cost], rate/tr.risk)
	}
	t.Logf("greatest share of the risk used, by cost: %v", worst)
}

// For a guessed σ the share of wrong "beyond" of a difference or a range is a double integral
// without randomness: over the guess, of the probability that the range exceeds what would be
// called beyond at that guess. It must stay at or below the risk over all splits of the true
// values, and the even split must be the worst of a known σ.
func TestDeepRangeSize(t *testing.T) {
	for _, risk := range []float64{0.05, 0.01, 0.002} {
		for _, n := range []int{2, 3, 6, 20} {
			for _, dof := range []float64{2, 3, 5, 10, 30} {
				for _, wide := range []float64{0.02, 0.5, 1.5, 4} {
					size, weights := make([]float64, n), 0.0
					limit := scaled(1000 * wide)
					step := 0.8 / math.Sqrt(2*dof)
					for i := -40; i <= 12; i++ {
						y := step * float64(i)
						weight := math.Exp(dof * (y - math.Expm1(2*y)/2))
						if weight < 1e-7 {
							continue
						}
						s := scaled(1000 * math.Exp(y))
						reach := beyondFrom(t, n, s, dof, limit, risk).In(scaled(1000))
						weights += weight
						for k := 1; k < n; k++ {
							size[k] += weight * splitTail(n, k, reach, wide)
						}
					}
					for k := 1; k < n; k++ {
						if got := size[k] / weights; got > risk*1.002 {
							t.Errorf("risk %v, n %d, ν %v, limit %v σ, %d apart: %v", risk, n, dof, wide, k, got)
						}
					}
				}
			}
		}
	}
	for n := 2; n <= 30; n++ {
		for wide := 0.0; wide < 8; wide += 0.25 {
			for over := 0.1; over < 6; over += 0.25 {
				even := splitTail(n, n/2, wide+over, wide)
				for k := 1; k < n; k++ {
					if p := splitTail(n, k, wide+over, wide); p > even+1e-12 {
						t.Errorf("n %d, limit %v, range %v: %d apart %v, even %v", n, wide, wide+over, k, p, even)
					}
				}
			}
		}
	}
}

// beyondFrom returns the least range of n readings that is called beyond.
func beyondFrom(t *testing.T, n int, s units.Length, dof float64, limit units.Length, risk float64) units.Length {
	t.Helper()
	called := func(r units.Length) bool {
		values := make([]units.Length, n)
		values[0] = r
		f, err := uncertainty.JudgeRange(values, s, dof, units.Limits{Max: limit}, uncertainty.Risk{Reject: risk})
		if err != nil {
			t.Fatal(err)
		}
		return f.Verdict == uncertainty.Beyond
	}
	low, high := limit, limit+s
	for !called(high) {
		low, high = high, limit+4*(high-limit)
	}
	for high-low > (high-limit)/5000 {
		if middle := low + (high-low)/2; called(middle) {
			high = middle
		} else {
			low = middle
		}
	}
	return high
}

// splitTail returns the probability that n normal readings of unit standard deviation, k of
// them of a true value wide and the others of 0, have a range of at least r.
func splitTail(n, k int, r, wide float64) float64 {
	cdf := func(x float64) float64 { return 0.5 * math.Erfc(-x/math.Sqrt2) }
	const step = 0.2
	inside := 0.0
	for x := -9.0; x <= 9+wide; x += step { // the least reading
		a, b := cdf(x+r)-cdf(x), cdf(x+r-wide)-cdf(x-wide)
		inside += step / math.Sqrt(2*math.Pi) * (float64(n-k)*math.Exp(-x*x/2)*math.Pow(a, float64(n-k-1))*math.Pow(b, float64(k)) +
			float64(k)*math.Exp(-(x-wide)*(x-wide)/2)*math.Pow(a, float64(n-k))*math.Pow(b, float64(k-1)))
	}
	return 1 - inside
}

// Budgets that one component dominates, the rest normal, 400,000 runs each: the share of the promised risk that
// is used.
func TestDeepDominatedBudgets(t *testing.T) {
	rng := rand.New(rand.NewPCG(7, 11))
	const n = 400_000
	worst := 0.0
	for name, quantile := range oneShape {
		for _, share := range []float64{1, 0.9, 0.7, 0.5} { // of the variance
			errors := make([]float64, n)
			for i := range errors {
				errors[i] = math.Sqrt(share)*quantile(rng.Float64()) + math.Sqrt(1-share)*rng.NormFloat64()
			}
			for _, risk := range []float64{0.01, 0.05, 0.07, 0.1, 0.2, 0.4} {
				within, beyond := wrongly(t, errors, risk)
				worst = max(worst, within/risk, beyond/risk)
				if most := risk + 4*math.Sqrt(risk*(1-risk)/n); max(within, beyond) > most {
					t.Errorf("%s, %v of the variance, at %v: wrongly within %.4f, beyond %.4f", name, share, risk, within, beyond)
				}
			}
		}
	}
	t.Logf("greatest share of the risk used: %.3f", worst)
}
