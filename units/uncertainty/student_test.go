// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/stat/distuv"
)

// NIST Technical Note 1297, Table B.1. A few entries are one unit of the last place from what
// correct rounding gives, so that much is allowed.
func TestStudentTable(t *testing.T) {
	oneSigma := func(k float64) float64 { return math.Erf(k / math.Sqrt2) }
	ps := []float64{oneSigma(1), 0.90, 0.95, oneSigma(2), 0.99, oneSigma(3)}
	for _, row := range table(t, "student_t_tn1297.csv") {
		dof := 0.0
		if row[0] != "inf" {
			dof = parse(t, row[0])
		}
		for i, p := range ps {
			place := 0.01
			if len(row[i+1]) == 5 && row[i+1][1] == '.' {
				place = 0.001
			}
			near(t, "t("+row[0]+")", must[float64](t)(uncertainty.Coverage(p, dof)), parse(t, row[i+1]), place)
		}
	}
	// the column headed 99.73 % is of three standard deviations
	near(t, "3σ, 1 degree of freedom", must[float64](t)(uncertainty.Coverage(0.9973002039367398, 1)), 235.80149796, 2e-8)
	near(t, "99.73 %, 1 degree of freedom", must[float64](t)(uncertainty.Coverage(0.9973, 1)), 235.78368716, 2e-8)
}

// Values computed with 40 digits, over all degrees of freedom and coverages; relative.
func TestCoverageDigits(t *testing.T) {
	for _, row := range table(t, "student_t_computed.csv") {
		dof, p, want := parse(t, row[0]), parse(t, row[1]), parse(t, row[2])
		k := must[float64](t)(uncertainty.Coverage(p, dof))
		near(t, "k("+row[1]+", "+row[0]+")/want", k/want, 1, 1e-13)
	}
	// JCGM 106:2012 7.3, Table 1 (from memory) prints 0.84 1.28 1.64 2.33 3.09; digits computed
	for p, want := range map[float64]float64{0.80: 0.841621233573, 0.90: 1.281551565545, 0.95: 1.644853626951, 0.99: 2.326347874041, 0.999: 3.090232306168} {
		near(t, "one-sided z", must[float64](t)(uncertainty.Coverage(2*p-1, 0)), want, 1e-11)
	}
	// the guard band for 95 % at one limit, in units of U = 2u (computed)
	near(t, "guard band", must[float64](t)(uncertainty.Coverage(0.90, 0))/2, 0.822426813476, 1e-11)
}

// An independent implementation, as far as its incomplete beta function keeps nine digits.
func TestCoverageAgainstDistuv(t *testing.T) {
	for dof := 1.0; dof < 3000; dof *= 1.37 {
		for _, p := range []float64{0.01, 0.2, 0.5, 0.683, 0.9, 0.95, 0.99, 0.999, 0.999999} {
			k := must[float64](t)(uncertainty.Coverage(p, dof))
			want := distuv.StudentsT{Sigma: 1, Nu: dof}.Quantile((1 + p) / 2)
			near(t, "k", k/want, 1, 2e-9)
		}
	}
	for _, p := range []float64{0.001, 0.5, 0.95, 0.999999} {
		near(t, "k(∞)", must[float64](t)(uncertainty.Coverage(p, 0)), distuv.UnitNormal.Quantile((1+p)/2), 1e-8)
	}
}

// The probability of conformity against the same, over twelve decades of degrees of freedom
// and from far inside to far outside.
func TestConformAgainstDistuv(t *testing.T) {
	const std = units.Micrometre
	w := units.Limits{Max: 72 * units.Millimetre}
	for _, x := range []float64{-40, -8, -3, -2, -1.3, -0.7, -0.01, 0, 0.01, 0.7, 1.3, 2, 3, 8, 40} {
		value := w.Max - units.Length(math.Round(x*float64(std)))
		for dof := 1.0; dof < 3000; dof *= 1.7 {
			f := must[uncertainty.Finding](t)(uncertainty.Judge(uncertainty.Estimate{Value: value, Std: std, DoF: dof}, w, uncertainty.Risk{}))
			near(t, "conform", f.Conform, distuv.StudentsT{Sigma: 1, Nu: dof}.CDF(x), 1e-9)
		}
		for _, dof := range []float64{0, 1e10, 1e12, 1e17, math.MaxFloat64} {
			f := must[uncertainty.Finding](t)(uncertainty.Judge(uncertainty.Estimate{Value: value, Std: std, DoF: dof}, w, uncertainty.Risk{}))
			near(t, "conform", f.Conform, distuv.UnitNormal.CDF(x), 1e-9)
		}
	}
}
