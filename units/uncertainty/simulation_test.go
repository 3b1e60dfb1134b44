// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/stat/distuv"
)

// What is promised of a Risk is tried where it is hardest to keep: at true values on a limit,
// which must not be called beyond, and one picometre past it, which must not be called within.
// Errors are normal; with degrees of freedom each judgement gets a standard uncertainty of its
// own, as an estimate from repeats would scatter.
//
// The tests here run a few thousand judgements a case; those of the build tag "deep" many more.

const sigma = units.Micrometre

// A trial judges one simulated measurement.
type trial struct {
	name  string
	wrong uncertainty.Verdict // the verdict that is wrong
	risk  float64             // its promised share
	sharp bool                // the share is reached, not only kept
	cost  int                 // of one judgement: 1 a microsecond, 10 some of them, 1000 a millisecond
	judge func(rng *rand.Rand) (uncertainty.Finding, error)
}

// noisy returns the truth with an error of standard deviation sigma.
func noisy(rng *rand.Rand, truth units.Length) units.Length {
	return truth + units.Length(math.Round(rng.NormFloat64()*float64(sigma)))
}

// guessed returns an estimate of sigma with so many degrees of freedom; 0 knows it.
func guessed(rng *rand.Rand, dof int) units.Length {
	if dof == 0 {
		return sigma
	}
	squares := 0.0
	for range dof {
		z := rng.NormFloat64()
		squares += z * z
	}
	return max(1, units.Length(math.Round(math.Sqrt(squares/float64(dof))*float64(sigma))))
}

// scaled returns x times sigma.
func scaled(x float64) units.Length { return units.Length(math.Round(x * float64(sigma))) }

// shapes are true values, as fractions of their range.
func shapes(n int) map[string][]float64 {
	split, lone, ramp, oval, pair := make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n), make([]float64, n)
	for i := range n {
		split[i] = float64(2 * i / n)
		ramp[i] = float64(i) / float64(n-1)
		pair[i] = 0.5
		oval[i] = (1 + math.Cos(4*math.Pi*float64(i)/float64(n))) / 2
	}
	lone[0], pair[0], pair[n-1] = 1, 0, 1
	lo, hi := 1.0, 0.0
	for _, x := range oval {
		lo, hi = min(lo, x), max(hi, x)
	}
	for i := range oval {
		oval[i] = (oval[i] - lo) / (hi - lo)
	}
	return map[string][]float64{"half and half": split, "one apart": lone, "a ramp": ramp, "an oval": oval, "two apart": pair}
}

func trials() []trial {
	var all []trial
	add := func(t trial) { all = append(all, t) }
	r := uncertainty.Risk{Accept: 0.02, Reject: 0.05}
	for _, dof := range []int{0, 1, 4} {
		for _, width := range []float64{0, 0.5, 2, 10} { // 0: no lower limit
			limit := units.Millimetre
			w := units.Limits{Max: limit}
			if width > 0 {
				w.Min = limit - scaled(width)
			}
			at := func(truth units.Length) func(rng *rand.Rand) (uncertainty.Finding, error) {
				return func(rng *rand.Rand) (uncertainty.Finding, error) {
					return uncertainty.Judge(uncertainty.Estimate{Value: noisy(rng, truth), Std: guessed(rng, dof), DoF: float64(dof)}, w, r)
				}
			}
			name := fmt.Sprintf("value, ν %d, window %v σ, ", dof, width)
			add(trial{name: name + "on", wrong: uncertainty.Beyond, risk: r.Reject, sharp: dof == 0 || width == 0, cost: 1, judge: at(limit)})
			add(trial{name: name + "past", wrong: uncertainty.Within, risk: r.Accept, sharp: width == 0, cost: 1, judge: at(limit + 1)})

			if width == 0 {
				continue
			}
			half := units.Limits{Max: scaled(width / 2)}
			apart := func(truth units.Length) func(rng *rand.Rand) (uncertainty.Finding, error) {
				return func(rng *rand.Rand) (uncertainty.Finding, error) {
					first, second := noisy(rng, 80*units.Millimetre+truth), noisy(rng, 80*units.Millimetre)
					std := units.Length(math.Round(math.Sqrt2 * float64(guessed(rng, dof))))
					return uncertainty.JudgeDifference(uncertainty.Estimate{Value: first - second, Std: std, DoF: float64(dof)}, half, r)
				}
			}
			name = fmt.Sprintf("difference, ν %d, limit %v σ, ", dof, width/2)
			add(trial{name: name + "on", wrong: uncertainty.Beyond, risk: r.Reject, sharp: dof == 0, cost: 1, judge: apart(half.Max)})
			add(trial{name: name + "past", wrong: uncertainty.Within, risk: r.Accept, cost: 1, judge: apart(-half.Max - 1)})
		}
	}
	for _, n := range []int{6, 20} {
		for _, dof := range []int{0, 3, 10} {
			for _, wide := range []float64{0.1, 1, 12} {
				for shape, fractions := range shapes(n) {
					limit := units.Limits{Max: scaled(wide)}
					at := func(reach units.Length) func(rng *rand.Rand) (uncertainty.Finding, error) {
						return func(rng *rand.Rand) (uncertainty.Finding, error) {
							values := make([]units.Length, n)
							for i, x := range fractions {
								values[i] = noisy(rng, units.Length(math.Round(x*float64(reach))))
							}
							return uncertainty.JudgeRange(values, guessed(rng, dof), float64(dof), limit, r)
						}
					}
					cost := 10
					if dof > 0 {
						cost = 1000
					}
					name := fmt.Sprintf("range of %d, %s, ν %d, limit %v σ, ", n, shape, dof, wide)
					add(trial{name: name + "on", wrong: uncertainty.Beyond, risk: r.Reject, sharp: dof == 0 && shape == "half and half", cost: cost, judge: at(limit.Max)})
					add(trial{name: name + "past", wrong: uncertainty.Within, risk: r.Accept, sharp: dof == 0 && shape == "two apart" && wide == 12, cost: cost, judge: at(limit.Max + 1)})
				}
			}
		}
	}
	return all
}

// try runs n judgements and reports how often they were wrong.
func try(t *testing.T, tr trial, n int) float64 {
	t.Helper()
	h := uint64(14695981039346656037) // FNV-1a of the name: a seed for each case, the same every time
	for _, b := range []byte(tr.name) {
		h = (h ^ uint64(b)) * 1099511628211
	}
	rng := rand.New(rand.NewPCG(h, 20))
	wrong := 0
	for range n {
		f, err := tr.judge(rng)
		if err != nil {
			t.Fatal(tr.name, err)
		}
		if f.Verdict == tr.wrong {
			wrong++
		}
	}
	rate := float64(wrong) / float64(n)
	allowed := 4 * math.Sqrt(tr.risk*(1-tr.risk)/float64(n))
	if rate > tr.risk+allowed || tr.sharp && rate < tr.risk-allowed {
		t.Errorf("%s: wrongly %v in %.4f of %d, promised %.4f (allowance %.4f)", tr.name, tr.wrong, rate, n, tr.risk, allowed)
	}
	return rate
}

func TestRiskKept(t *testing.T) {
	for i, tr := range trials() {
		switch {
		case tr.cost == 1:
			try(t, tr, 2000)
		case tr.cost == 10:
			try(t, tr, 300)
		case i%7 == 0:
			try(t, tr, 30)
		}
	}
}

// Plain rules for a range do not keep their risk, which is why JudgeRange exists: the observed
// range held against the limit as if it were the difference of two readings chosen beforehand
// calls most round bores out of round.
func TestPlainRuleFails(t *testing.T) {
	limit := units.Limits{Max: scaled(1)}
	rng := rand.New(rand.NewPCG(1, 2))
	for n, least := range map[int]float64{6: 0.15, 20: 0.6} {
		plain, ours, runs := 0, 0, 1000
		for range runs {
			values := make([]units.Length, n)
			for i := range values {
				values[i] = noisy(rng, 80*units.Millimetre)
			}
			f := must[uncertainty.Finding](t)(uncertainty.JudgeRange(values, sigma, 0, limit, uncertainty.Risk{}))
			d := must[uncertainty.Finding](t)(uncertainty.JudgeDifference(f.Measured, limit, uncertainty.Risk{}))
			if d.Verdict == uncertainty.Beyond {
				plain++
			}
			if f.Verdict == uncertainty.Beyond {
				ours++
			}
		}
		if rate := float64(plain) / float64(runs); rate < least {
			t.Errorf("%d readings: the plain rule is wrong in %.3f only", n, rate)
		}
		if rate := float64(ours) / float64(runs); rate > 0.05 {
			t.Errorf("%d readings: wrong in %.3f", n, rate)
		}
	}
}

// The Welch–Satterthwaite formula is an approximation (JCGM 100:2008 G.4.1). How much of a
// promise it keeps when a standard uncertainty of few degrees of freedom, σ, meets a known one
// of rho·σ, at the rho that is worst: the share of wrong verdicts at a limit, by the middle of
// 2000 equal parts of the chi-squared distribution. The figures of the package comment.
func TestWelchSatterthwaite(t *testing.T) {
	const parts = 2000
	for _, c := range []struct{ dof, rho5, share5, rho1, share1 float64 }{
		{1, 0.29, 0.0845, 0.22, 0.0489}, {2, 0.39, 0.0620, 0.32, 0.0240}, {4, 0.42, 0.0536, 0.42, 0.0143}, {9, 0.47, 0.0508, 0.47, 0.0109},
	} {
		for _, x := range [][3]float64{{0.05, c.rho5, c.share5}, {0.01, c.rho1, c.share1}} {
			risk, rho, share := x[0], x[1], 0.0
			for i := range parts {
				guess := math.Sqrt(distuv.ChiSquared{K: c.dof}.Quantile((float64(i)+0.5)/parts) / c.dof)
				b := uncertainty.Budget{Components: []uncertainty.Component{{Std: guess, Sensitivity: 1, DoF: c.dof}, {Std: rho, Sensitivity: 1}}}
				std, dof, err := b.Combined()
				if err != nil {
					t.Fatal(err)
				}
				k := must[float64](t)(uncertainty.Coverage(1-2*risk, dof))
				share += 0.5 * math.Erfc(k*std/math.Hypot(1, rho)/math.Sqrt2) / parts
			}
			near(t, fmt.Sprintf("share of wrong verdicts for %v, ν %v", risk, c.dof), share, x[2], 0.0003)
		}
	}
}

// TestRangeAtALimit: where a range begins to be beyond its limit, readings of which half are of one true value and half of
// another, as far off as the limit allows, show such a range as often as was risked.
func TestRangeAtALimit(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 14))
	const sigma, runs = units.Micrometre, 100_000
	for _, n := range []int{3, 4, 7} {
		for _, apart := range []float64{0.5, 1, 2.5} {
			const risk = 0.05
			limit := units.Length(apart * float64(sigma))
			beyond := func(r units.Length) bool {
				values := make([]units.Length, n)
				values[0] = r
				f := must[uncertainty.Finding](t)(uncertainty.JudgeRange(values, sigma, 0, units.Limits{Max: limit}, uncertainty.Risk{Reject: risk}))
				return f.Verdict == uncertainty.Beyond
			}
			low, high := limit, limit+20*sigma
			for high-low > sigma/1000 {
				if mid := low + (high-low)/2; beyond(mid) {
					high = mid
				} else {
					low = mid
				}
			}
			wide := 0
			for range runs {
				least, most := math.Inf(1), math.Inf(-1)
				for i := range n {
					x := rng.NormFloat64()
					if i < n/2 {
						x += apart
					}
					least, most = min(least, x), max(most, x)
				}
				if most-least >= float64(high)/float64(sigma) {
					wide++
				}
			}
			if p := float64(wide) / runs; math.Abs(p-risk) > 4*math.Sqrt(risk/runs) {
				t.Errorf("%d readings, true values %v deviations apart: %.4f, want %v", n, apart, p, risk)
			}
		}
	}
}
