// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func two(r float64) uncertainty.Budget {
	return uncertainty.Budget{
		Components:   []uncertainty.Component{{Name: "a", Std: 3, Sensitivity: 1, DoF: 7}, {Name: "b", Std: 2, Sensitivity: -2, DoF: 9}},
		Correlations: []uncertainty.Correlation{{A: "b", B: "a", R: r}},
	}
}

// Full correlation adds contributions as they stand (JCGM 100:2008 5.2.2, note 1).
func TestFullCorrelation(t *testing.T) {
	for r, want := range map[float64]float64{1: 1, -1: 7, 0: 5, 0.5: math.Sqrt(13)} {
		std, dof, err := two(r).Combined()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "std", std, want, 1e-14)
		wantDoF := 7.0
		if r == 0 {
			wantDoF = 625 / (81.0/7 + 256.0/9)
		}
		near(t, "dof", dof, wantDoF, 1e-12)
	}
	b := two(1)
	b.Components[1].Std = 1.5 // all cancels
	std, dof, err := b.Combined()
	if err != nil || std > 1e-7 || dof != 0 {
		t.Error(std, dof, err)
	}
}

func TestCorrelationsRefused(t *testing.T) {
	names := []uncertainty.Component{{Name: "a", Std: 1, Sensitivity: 1}, {Name: "b", Std: 1, Sensitivity: 1}, {Name: "c", Std: 1, Sensitivity: 1}, {Name: "c", Std: 1, Sensitivity: 1}}
	pair := func(a, b string, r float64) uncertainty.Correlation { return uncertainty.Correlation{A: a, B: b, R: r} }
	for _, c := range []struct {
		why string
		n   int
		rs  []uncertainty.Correlation
	}{
		{"above 1", 2, []uncertainty.Correlation{pair("a", "b", 1.0000001)}},
		{"below −1", 2, []uncertainty.Correlation{pair("a", "b", -2)}},
		{"NaN", 2, []uncertainty.Correlation{pair("a", "b", math.NaN())}},
		{"unknown", 2, []uncertainty.Correlation{pair("a", "x", 0.1)}},
		{"itself", 2, []uncertainty.Correlation{pair("a", "a", 1)}},
		{"ambiguous", 4, []uncertainty.Correlation{pair("a", "c", 0.1)}},
		{"twice", 2, []uncertainty.Correlation{pair("a", "b", 0.1), pair("b", "a", 0.1)}},
		// a goes with b and b with c, so a cannot go against c: determinant −0.2
		{"impossible", 3, []uncertainty.Correlation{pair("a", "b", 0.9), pair("b", "c", 0.9), pair("a", "c", 0.5)}},
		{"impossible", 3, []uncertainty.Correlation{pair("a", "b", 1), pair("b", "c", 1), pair("a", "c", 0.9)}},
		{"impossible", 3, []uncertainty.Correlation{pair("a", "b", -0.6), pair("b", "c", -0.6), pair("a", "c", -0.6)}},
	} {
		b := uncertainty.Budget{Components: names[:c.n], Correlations: c.rs}
		if _, _, err := b.Combined(); !errors.Is(err, uncertainty.ErrCorrelation) {
			t.Errorf("%s: %v", c.why, err)
		}
		if _, err := b.Rows(); !errors.Is(err, uncertainty.ErrCorrelation) {
			t.Errorf("%s: %v", c.why, err)
		}
	}
	// just possible: three at 120° to each other
	b := uncertainty.Budget{Components: names[:3], Correlations: []uncertainty.Correlation{pair("a", "b", -0.5), pair("b", "c", -0.5), pair("a", "c", -0.5)}}
	if std, _, err := b.Combined(); err != nil || std > 1e-7 {
		t.Error(std, err)
	}
}

func TestBudgetEstimate(t *testing.T) {
	b := two(0)
	e := must[uncertainty.Estimate](t)(b.Estimate(72*units.Millimetre, units.Micrometre))
	if e.Value != 72*units.Millimetre || e.Std != 5*units.Micrometre {
		t.Error(e)
	}
	near(t, "dof", e.DoF, 625/(81.0/7+256.0/9), 1e-12)
	// what is not nothing does not become exact
	b.Components[0].Std, b.Components[1].Std = 1e-9, 0
	if e := must[uncertainty.Estimate](t)(b.Estimate(0, units.Micrometre)); e.Std != 1 {
		t.Error(e.Std, e.DoF)
	}
	b.Components[0].Sensitivity = 0
	if e := must[uncertainty.Estimate](t)(b.Estimate(5, units.Micrometre)); e != (uncertainty.Estimate{Value: 5}) {
		t.Error(e)
	}
	b.Components[0].Sensitivity, b.Components[0].Std = 1, 1e9
	for _, unit := range []units.Length{units.Micrometre, 0, -1} {
		if _, err := b.Estimate(0, unit); !errors.Is(err, units.ErrRange) {
			t.Error(err)
		}
	}
}

func TestRows(t *testing.T) {
	b := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "x", Std: 3, Sensitivity: 1, DoF: 5, Unit: "µm"}, {Name: "y", Std: 2, Sensitivity: -2}, {Name: "z", Std: 9},
	}}
	rows := must[[]uncertainty.Row](t)(b.Rows())
	want := []uncertainty.Row{
		{Component: b.Components[0], Contribution: 3, Share: 0.36},
		{Component: b.Components[1], Contribution: 4, Share: 0.64},
		{Component: b.Components[2]},
	}
	for i := range rows {
		near(t, "contribution", rows[i].Contribution, want[i].Contribution, 0)
		near(t, "share", rows[i].Share, want[i].Share, 1e-15)
		if rows[i].Component != want[i].Component {
			t.Error(rows[i])
		}
	}
	if rows = must[[]uncertainty.Row](t)(uncertainty.Budget{Components: b.Components[2:]}.Rows()); rows[0].Share != 0 {
		t.Error(rows)
	}
	// the same as data
	text, err := json.Marshal(two(0.25))
	if err != nil {
		t.Fatal(err)
	}
	var back uncertainty.Budget
	if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(back, two(0.25)) {
		t.Error(string(text), err)
	}
}

func TestCombinedNoAllocs(t *testing.T) {
	b := eight()
	e := uncertainty.Estimate{Value: 72 * units.Millimetre, Std: 2 * units.Micrometre, DoF: 9}
	w := window("71.990 to 72.003 mm")
	for name, f := range map[string]func(){
		"Combined": func() { b.Combined() },
		"Estimate": func() { b.Estimate(e.Value, units.Micrometre) },
		"Expanded": func() { e.Expanded(0.95) },
		"Judge":    func() { uncertainty.Judge(e, w, uncertainty.Risk{}) },
	} {
		if n := testing.AllocsPerRun(100, f); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}
