// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package rings_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Many rings measured, filed by the plan and fitted: how often is the true gap outside the window? Plans and
// fits as it is must stay below the risk that was asked for, and a plan reaches half of it, since it
// goes to the lower end of Stop only. Too wide must be true but for the risk of rejecting.
func TestDeepFiling(t *testing.T) {
	const n = 400_000
	rnd := rand.New(rand.NewPCG(20, 26))
	for _, dof := range []int{0, 4, 9, 30} {
		for _, accept := range []float64{0.05, 0.2} {
			count, outside := map[rings.Action]float64{}, map[rings.Action]float64{}
			for range n {
				// The true gap is anywhere: the risks are those of a measurement, not of a stock of rings.
				truth := 100*µm + units.Length(rnd.Float64()*500e6)
				sigma := 10e6 // pm
				s := sigma
				if dof > 0 {
					sum := 0.0
					for range dof {
						x := rnd.NormFloat64()
						sum += x * x
					}
					s = sigma * math.Sqrt(sum/float64(dof))
				}
				gap := uncertainty.Estimate{Value: truth + units.Length(rnd.NormFloat64()*sigma), Std: units.Length(s), DoF: float64(dof)}
				f, err := rings.FileTo(gap, window, uncertainty.Risk{Accept: accept})
				if err != nil {
					continue
				}
				count[f.Action]++
				if end := truth + f.TakeOff; window.Contains(end) == (f.Action == rings.TooWide) {
					outside[f.Action]++
				}
			}
			for _, a := range []rings.Action{rings.FileEnds, rings.AsIs, rings.TooWide} {
				rate := outside[a] / count[a]
				t.Logf("%d degrees of freedom, risk %v: %6.0f %v, wrong %.4f", dof, accept, count[a], a, rate)
				// four standard deviations of a count
				if most := accept + 4*math.Sqrt(accept/count[a]); rate > most {
					t.Errorf("%v wrong in %v, more than %v", a, rate, most)
				}
			}
			if rate, want := outside[rings.FileEnds]/count[rings.FileEnds], accept/2; math.Abs(rate-want) > want/3 {
				t.Errorf("%d degrees of freedom: filed rings outside %v, want about %v", dof, rate, want)
			}
		}
	}
}
