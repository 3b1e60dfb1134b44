// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/num/hyperdual"
)

var hostile = []float64{
	math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64,
	-1, 0, math.Copysign(0, -1), 1e-300, 0.5, 1, math.Nextafter(1, 0), 1e9, 1e16, 1e300,
}

func finite(t *testing.T, what string, xs ...float64) {
	t.Helper()
	for _, x := range xs {
		if math.IsNaN(x) || math.IsInf(x, 0) {
			t.Errorf("%s: %v comes out", what, xs)
		}
	}
}

// Nothing panics, and neither NaN nor an infinity comes out, whatever goes in.
func TestHostileNumbers(t *testing.T) {
	lengths := []units.Length{0, 1, -1, units.Millimetre, units.MaxLength, -units.MaxLength, units.MaxLength + 1, math.MaxInt64, math.MinInt64}
	for _, x := range hostile {
		for name, f := range map[string]func(float64) float64{
			"Rectangular": uncertainty.Rectangular, "Triangular": uncertainty.Triangular, "UShaped": uncertainty.UShaped,
			"Resolution": uncertainty.Resolution,
		} {
			u := f(x)
			finite(t, name, u)
			if (u == -1) == (x >= 0 && x < 1e308 || x == math.MaxFloat64) {
				t.Errorf("%s(%v) = %v", name, x, u)
			}
		}
		for _, y := range hostile {
			finite(t, "FromCertificate", uncertainty.FromCertificate(x, y))
			k, err := uncertainty.Coverage(x, y)
			finite(t, "Coverage", k)
			if valid := x > 0 && x < 1 && (y == 0 || y >= 1 && !math.IsInf(y, 0)); (err == nil) != valid {
				t.Errorf("Coverage(%v, %v): %v", x, y, err)
			}
			s, err := uncertainty.Describe(x, y, 1)
			finite(t, "Describe", s.Mean, s.Std)
			if err != nil && !errors.Is(err, units.ErrNotFinite) {
				t.Error(err)
			}
			p, _ := uncertainty.Pool(uncertainty.Spread{Std: x, DoF: y}, uncertainty.Spread{Std: y, DoF: 2})
			finite(t, "Pool", p.Std, p.DoF)

			for _, z := range hostile {
				b := uncertainty.Budget{Components: []uncertainty.Component{{Name: "a", Std: x, Sensitivity: y, DoF: z}, {Name: "b", Std: 1, Sensitivity: z, DoF: 1}}}
				for _, rs := range [][]uncertainty.Correlation{nil, {{A: "a", B: "b", R: y}}} {
					b.Correlations = rs
					std, dof, err := b.Combined()
					finite(t, "Combined", std, dof)
					if err == nil && (std < 0 || dof != 0 && dof < 1) {
						t.Errorf("%v: %v, %v", b, std, dof)
					}
					rows, _ := b.Rows()
					for _, r := range rows {
						finite(t, "Rows", r.Contribution, r.Share)
					}
					if e, err := b.Estimate(1, units.Micrometre); err == nil && e.Validate() != nil {
						t.Errorf("%v: %v", b, e)
					}
				}
			}
			for _, l := range lengths {
				for _, std := range lengths {
					e := uncertainty.Estimate{Value: l, Std: std, DoF: x}
					_, _ = e.Expanded(y)
					_ = e.String() + e.Format(l)
					r := uncertainty.Risk{Accept: y, Reject: x}
					for _, f := range []func() (uncertainty.Finding, error){
						func() (uncertainty.Finding, error) { return uncertainty.Judge(e, units.Limits{Min: std, Max: l}, r) },
						func() (uncertainty.Finding, error) { return uncertainty.JudgeDifference(e, units.Limits{Max: std}, r) },
						func() (uncertainty.Finding, error) { return uncertainty.JudgeExpanded(e, units.Limits{Max: std}, y) },
						func() (uncertainty.Finding, error) { return uncertainty.JudgeExpanded(e, units.Limits{Min: std}, 0) },
					} {
						got, err := f()
						finite(t, "Judge", got.Conform, got.Risk.Accept, got.Risk.Reject)
						if err != nil {
							if got != (uncertainty.Finding{}) {
								t.Errorf("%v with %v", got, err)
							}
							continue
						}
						if _, err := json.Marshal(got); err != nil {
							t.Errorf("%v: %v", got, err)
						}
						_ = got.String()
						remedy, _ := got.Settle(std)
						_ = remedy.Format(l)
					}
				}
			}
		}
	}
}

func TestRefusals(t *testing.T) {
	e := uncertainty.Estimate{Value: units.Millimetre, Std: units.Micrometre}
	max := units.Limits{Max: units.Millimetre}
	model := func(f func(x hyperdual.Number) hyperdual.Number) uncertainty.Model {
		return func(x []hyperdual.Number) hyperdual.Number { return f(x[0]) }
	}
	one := []uncertainty.Input{{Name: "x", Value: 0, Std: 1}}
	constant := model(func(x hyperdual.Number) hyperdual.Number { return hyperdual.Number{Real: 1} })
	judge := func(e uncertainty.Estimate, w units.Limits, r uncertainty.Risk) error {
		f, err := uncertainty.Judge(e, w, r)
		if f != (uncertainty.Finding{}) && err != nil {
			t.Error(f, err)
		}
		return err
	}
	second := func(_ any, err error) error { return err }
	third := func(_, _ any, err error) error { return err }
	broken := func(f uncertainty.Finding) error {
		f.Verdict = uncertainty.Undecided
		return second(f.Settle(0))
	}
	good, err := uncertainty.Judge(e, max, uncertainty.Risk{})
	if err != nil || good.Verdict != uncertainty.Undecided {
		t.Fatal(good, err)
	}
	with := func(change func(f *uncertainty.Finding)) uncertainty.Finding {
		f := good
		change(&f)
		return f
	}
	for what, c := range map[string]struct{ got, want error }{
		"negative std":            {judge(uncertainty.Estimate{Std: -1}, max, uncertainty.Risk{}), uncertainty.ErrStd},
		"half a degree":           {judge(uncertainty.Estimate{DoF: 0.5}, max, uncertainty.Risk{}), uncertainty.ErrStd},
		"value too long":          {judge(uncertainty.Estimate{Value: units.MaxLength + 1}, max, uncertainty.Risk{}), units.ErrRange},
		"std too long":            {judge(uncertainty.Estimate{Std: units.MaxLength + 1}, max, uncertainty.Risk{}), units.ErrRange},
		"limit too long":          {judge(e, units.Limits{Max: units.MaxLength + 1}, uncertainty.Risk{}), units.ErrRange},
		"limits crossed":          {judge(e, units.Limits{Min: 3, Max: 2}, uncertainty.Risk{}), units.ErrCrossed},
		"no limits":               {judge(e, units.Limits{}, uncertainty.Risk{}), uncertainty.ErrLimits},
		"risk above one half":     {judge(e, max, uncertainty.Risk{Accept: 0.51}), units.ErrRange},
		"negative risk":           {judge(e, max, uncertainty.Risk{Reject: -0.1}), units.ErrRange},
		"risk below resolution":   {judge(e, max, uncertainty.Risk{Reject: 1e-10}), units.ErrRange},
		"difference, lower limit": {second(uncertainty.JudgeDifference(e, units.Limits{Min: 1}, uncertainty.Risk{})), uncertainty.ErrLimits},
		"difference, window":      {second(uncertainty.JudgeDifference(e, units.Limits{Min: 1, Max: 2}, uncertainty.Risk{})), uncertainty.ErrLimits},
		"difference, below zero":  {second(uncertainty.JudgeDifference(e, units.Limits{Max: -1}, uncertainty.Risk{})), uncertainty.ErrLimits},
		"difference, none":        {second(uncertainty.JudgeDifference(e, units.Limits{}, uncertainty.Risk{})), uncertainty.ErrLimits},
		"range of none":           {second(uncertainty.JudgeRange(nil, 0, 0, max, uncertainty.Risk{})), uncertainty.ErrNoData},
		"range of one":            {second(uncertainty.JudgeRange([]units.Length{1}, 0, 0, max, uncertainty.Risk{})), uncertainty.ErrNoData},
		"range, negative std":     {second(uncertainty.JudgeRange([]units.Length{1, 2}, -1, 0, max, uncertainty.Risk{})), uncertainty.ErrStd},
		"range, lower limit":      {second(uncertainty.JudgeRange([]units.Length{1, 2}, 1, 0, units.Limits{Min: 1}, uncertainty.Risk{})), uncertainty.ErrLimits},
		"range, too long":         {second(uncertainty.JudgeRange([]units.Length{1, math.MaxInt64}, 1, 0, max, uncertainty.Risk{})), units.ErrRange},
		"range constants":         {third(uncertainty.MeanRange(1_000_001)), units.ErrRange},
		"factor":                  {second(uncertainty.JudgeExpanded(e, max, -1)), units.ErrRange},
		"U too long":              {second(uncertainty.JudgeExpanded(e, max, 1e12)), units.ErrRange},
		"rule without limits":     {second(uncertainty.JudgeExpanded(e, units.Limits{}, 0)), uncertainty.ErrLimits},
		"random above std":        {second(good.Settle(e.Std + 1)), uncertainty.ErrStd},
		"random below zero":       {second(good.Settle(-1)), uncertainty.ErrStd},
		"finding of no kind":      {broken(with(func(f *uncertainty.Finding) { f.Kind = 9 })), units.ErrUnknownName},
		"finding of no places":    {broken(with(func(f *uncertainty.Finding) { f.Kind = uncertainty.GreatestOf })), uncertainty.ErrNoData},
		"finding of one reading":  {broken(with(func(f *uncertainty.Finding) { f.Kind, f.N = uncertainty.RangeOf, 1 })), uncertainty.ErrNoData},
		"finding of many":         {broken(with(func(f *uncertainty.Finding) { f.Kind, f.N = uncertainty.RangeOf, 1<<30 })), units.ErrRange},
		"finding of no risk":      {broken(with(func(f *uncertainty.Finding) { f.Risk = uncertainty.Risk{} })), units.ErrRange},
		"scatter of one":          {second(uncertainty.Describe(1)), uncertainty.ErrNoData},
		"repeats of one":          {second(uncertainty.FromRepeats(1)), uncertainty.ErrNoData},
		"repeats too long":        {second(uncertainty.FromRepeats(1, units.MaxLength+1)), units.ErrRange},
		"pool of none":            {second(uncertainty.Pool()), uncertainty.ErrNoData},
		"pool, known":             {second(uncertainty.Pool(uncertainty.Spread{Std: 1})), uncertainty.ErrStd},
		"pool, negative":          {second(uncertainty.Pool(uncertainty.Spread{Std: -1, DoF: 1})), uncertainty.ErrStd},
		"pool, too many":          {second(uncertainty.Pool(uncertainty.Spread{Std: 1, DoF: math.MaxFloat64}, uncertainty.Spread{Std: 1, DoF: math.MaxFloat64})), uncertainty.ErrStd},
		"empty budget":            {third(uncertainty.Budget{}.Combined()), uncertainty.ErrNoData},
		"empty budget, rows":      {second(uncertainty.Budget{}.Rows()), uncertainty.ErrNoData},
		"no inputs":               {second(uncertainty.Propagate(constant, nil)), uncertainty.ErrNoData},
		"model of NaN":            {second(uncertainty.Propagate(model(hyperdual.Log), []uncertainty.Input{{Name: "x", Value: -1}})), uncertainty.ErrModel},
		"model without slope":     {second(uncertainty.Propagate(model(hyperdual.Sqrt), one)), uncertainty.ErrModel},
		"input negative std":      {second(uncertainty.Propagate(constant, []uncertainty.Input{{Name: "x", Std: -1}})), uncertainty.ErrStd},
		"second order of NaN":     {second(secondOrder(model(hyperdual.Log), one)), uncertainty.ErrModel},
		"no model":                {second(uncertainty.Propagate(nil, one)), uncertainty.ErrModel},
		"no model, second order":  {second(secondOrder(nil, one)), uncertainty.ErrModel},
		"correlation of none":     {second(uncertainty.Propagate(constant, one, uncertainty.Correlation{A: "x", B: "y"})), uncertainty.ErrCorrelation},
		"result too long": {second(func() (uncertainty.Estimate, error) {
			p, err := uncertainty.Propagate(model(func(x hyperdual.Number) hyperdual.Number { return hyperdual.Scale(1, x) }), []uncertainty.Input{{Name: "x", Value: 1e9}})
			if err != nil {
				t.Fatal(err)
			}
			return p.Estimate(units.Metre)
		}()), units.ErrRange},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v, want %v", what, c.got, c.want)
		}
	}
}
