// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"fmt"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// eight is a budget of eight components.
func eight() uncertainty.Budget {
	var b uncertainty.Budget
	for i := range 8 {
		b.Components = append(b.Components, uncertainty.Component{
			Name: fmt.Sprint("c", i), Std: 0.3 + float64(i), Sensitivity: 1.5 - 0.25*float64(i), DoF: float64(i * i),
		})
	}
	return b
}

func BenchmarkCombined(b *testing.B) {
	budget := eight()
	correlated := eight()
	for i := range 7 {
		correlated.Correlations = append(correlated.Correlations, uncertainty.Correlation{A: "c0", B: fmt.Sprint("c", i+1), R: 0.2})
	}
	for name, budget := range map[string]uncertainty.Budget{"independent": budget, "correlated": correlated} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				if _, _, err := budget.Combined(); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkExpanded(b *testing.B) {
	for _, dof := range []float64{0, 1, 16.75, 1000} {
		b.Run(fmt.Sprint("dof=", dof), func(b *testing.B) {
			b.ReportAllocs()
			e := uncertainty.Estimate{Std: units.Micrometre, DoF: dof}
			for b.Loop() {
				if _, err := e.Expanded(0.95); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkJudge(b *testing.B) {
	w := units.Limits{Min: 71_990 * units.Micrometre, Max: 72_003 * units.Micrometre}
	for _, dof := range []float64{0, 1, 16.75, 1000} {
		b.Run(fmt.Sprint("dof=", dof), func(b *testing.B) {
			b.ReportAllocs()
			e := uncertainty.Estimate{Value: 72 * units.Millimetre, Std: 2 * units.Micrometre, DoF: dof}
			for b.Loop() {
				if _, err := uncertainty.Judge(e, w, uncertainty.Risk{}); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkJudgeRange(b *testing.B) {
	w := units.Limits{Max: 20 * units.Micrometre}
	for _, c := range []struct {
		name   string
		spread units.Length
	}{
		{"two readings decide", 40 * units.Micrometre},
		{"integral", 27_500 * units.Nanometre}, // between what two readings and what all pairs would say
	} {
		for _, n := range []int{6, 20} {
			for _, dof := range []float64{0, 10, 100} {
				b.Run(fmt.Sprint(c.name, "/n=", n, "/dof=", dof), func(b *testing.B) {
					b.ReportAllocs()
					values := make([]units.Length, n)
					values[0] = c.spread
					for b.Loop() {
						if _, err := uncertainty.JudgeRange(values, 2*units.Micrometre, dof, w, uncertainty.Risk{}); err != nil {
							b.Fatal(err)
						}
					}
				})
			}
		}
	}
}

func BenchmarkSettle(b *testing.B) {
	f, err := uncertainty.Judge(uncertainty.Estimate{Value: 72 * units.Millimetre, Std: 2 * units.Micrometre, DoF: 9}, units.Limits{Max: 72_003 * units.Micrometre}, uncertainty.Risk{})
	if err != nil || f.Verdict != uncertainty.Undecided {
		b.Fatal(f, err)
	}
	b.ReportAllocs()
	for b.Loop() {
		if _, err := f.Settle(units.Micrometre); err != nil {
			b.Fatal(err)
		}
	}
}

func BenchmarkPropagate(b *testing.B) {
	model, inputs := gumH1(50_000_623)
	b.Run("first order", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := uncertainty.Propagate(model, inputs); err != nil {
				b.Fatal(err)
			}
		}
	})
	b.Run("second order", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, _, err := uncertainty.SecondOrder(model, inputs); err != nil {
				b.Fatal(err)
			}
		}
	})
}
