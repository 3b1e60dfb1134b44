// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"errors"
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/num/hyperdual"
	"pgregory.net/rapid"
)

// Sensitivities against central differences of the same model, and a product against its rule:
// the relative uncertainties of a power product add in squares (JCGM 100:2008 5.1.6).
func TestPropagateProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// In thousandths: a power of 1e-307 leaves an uncertainty that has too few bits left to compare.
		thousandths := rapid.SliceOfN(rapid.IntRange(-3000, 3000), 3, 3).Draw(t, "powers, in thousandths")
		powers := make([]float64, 3)
		inputs := make([]uncertainty.Input, 3)
		want := 0.0
		for i := range inputs {
			powers[i] = float64(thousandths[i]) / 1000
			inputs[i] = uncertainty.Input{Name: string(rune('a' + i)), Value: rapid.Float64Range(0.5, 20).Draw(t, "value"), Std: rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-6, 1)).Draw(t, "std")}
			want = math.Hypot(want, powers[i]*inputs[i].Std/inputs[i].Value)
		}
		model := func(x []hyperdual.Number) hyperdual.Number {
			y := hyperdual.Number{Real: 1}
			for i := range x {
				y = hyperdual.Mul(y, hyperdual.PowReal(x[i], powers[i]))
			}
			return y
		}
		p, err := uncertainty.Propagate(model, inputs)
		if err != nil {
			t.Fatal(err)
		}
		std, _, err := p.Budget.Combined()
		if err != nil {
			t.Fatal(err)
		}
		same(t, "u/y", std/math.Abs(p.Value), want)
		for i := range inputs {
			h := 1e-5 * inputs[i].Value
			at := func(d float64) float64 {
				x := make([]hyperdual.Number, 3)
				for k := range x {
					x[k].Real = inputs[k].Value
				}
				x[i].Real += d
				return model(x).Real
			}
			slope := (at(h) - at(-h)) / (2 * h)
			if got := p.Budget.Components[i].Sensitivity; math.Abs(got-slope) > 1e-7*(math.Abs(slope)+math.Abs(p.Value)) {
				t.Fatalf("sensitivity %v, difference %v", got, slope)
			}
		}
	})
}

// The second-order formula holds to its order for normal inputs; where the model is a polynomial
// whose moments are known in closed form it can be checked exactly.
func TestSecondOrderClosedForms(t *testing.T) {
	x := uncertainty.Input{Name: "x", Value: 3, Std: 0.25}
	y := uncertainty.Input{Name: "y", Value: 2, Std: 0.5}
	for _, c := range []struct {
		name  string
		model uncertainty.Model
		want  float64 // variance
		shift float64 // of the mean
	}{
		// x²: Var = 4µ²u² + 2u⁴, which the formula gives exactly
		{"square", func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(x[0], x[0]) }, 4*9*0.0625 + 2*0.0625*0.0625, 0.0625},
		// xy: Var = µx²uy² + µy²ux² + ux²uy², exactly
		{"product", func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(x[0], x[1]) }, 9*0.25 + 4*0.0625 + 0.0625*0.25, 0},
		// x³: Var = 9µ⁴u² + 36µ²u⁴ + 15u⁶, of which the formula holds the first two terms,
		// half of the second through the third derivative
		{"cube", func(x []hyperdual.Number) hyperdual.Number { return hyperdual.PowReal(x[0], 3) }, 9*81*0.0625 + 36*9*0.0625*0.0625, 3 * 3 * 0.0625},
		// x²y: to fourth order 4µx²µy²ux² + µx⁴uy² + 2µy²ux⁴ + (4µx² + 2µx²)ux²uy²
		{"mixed", func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(hyperdual.Mul(x[0], x[0]), x[1]) },
			4*9*4*0.0625 + 81*0.25 + 2*4*0.0625*0.0625 + 6*9*0.0625*0.25, 2 * 0.0625},
	} {
		s := must[moments](t)(secondOrder(c.model, []uncertainty.Input{x, y}))
		near(t, c.name, s.Std*s.Std, c.want, 1e-9*c.want)
		near(t, c.name+", shift", s.Shift, c.shift, 1e-12)
	}
	// sin x at 0: the third derivative takes away: u² − u⁴
	s := must[moments](t)(secondOrder(func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Sin(x[0]) }, []uncertainty.Input{{Name: "x", Std: 0.1}}))
	near(t, "sine", s.Std*s.Std, 0.01-0.0001, 1e-8)
	// so much that the expansion breaks down
	if _, err := secondOrder(func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Sin(x[0]) }, []uncertainty.Input{{Name: "x", Std: 1.5}}); err == nil {
		t.Error("a negative variance")
	}
	// linear models have no second order
	s = must[moments](t)(secondOrder(func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Add(x[0], hyperdual.Scale(2, x[1])) }, []uncertainty.Input{x, y}))
	if s.Shift != 0 {
		t.Error(s)
	}
	near(t, "linear", s.Std, math.Sqrt(0.0625+1), 1e-15)
}

// JCGM 101:2008 9.4, x₁² + x₂² with x₂ = 0, whose first order is of no use; the inputs as in a
// public repository's data, the exact moments of the chi-squared law and of correlated normals computed.
func TestSecondOrderSquares(t *testing.T) {
	model := func(x []hyperdual.Number) hyperdual.Number {
		return hyperdual.Add(hyperdual.Mul(x[0], x[0]), hyperdual.Mul(x[1], x[1]))
	}
	for _, c := range []struct{ x1, r, first, std float64 }{
		{0, 0, 0, 5.0e-5}, {0.010, 0, 1.0e-4, 1.11803398875e-4}, {0.050, 0, 5.0e-4, 5.02493781056e-4},
		{0, 0.9, 0, 6.72681202354e-5}, {0.010, 0.9, 1.0e-4, 1.20519707932e-4}, {0.050, 0.9, 5.0e-4, 5.04504707609e-4},
	} {
		inputs := []uncertainty.Input{{Name: "x1", Value: c.x1, Std: 0.005}, {Name: "x2", Std: 0.005}}
		r := uncertainty.Correlation{A: "x1", B: "x2", R: c.r}
		p := must[uncertainty.Propagation](t)(uncertainty.Propagate(model, inputs, r))
		std, _, err := p.Budget.Combined()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "first order", std, c.first, 1e-15)
		s := must[moments](t)(secondOrder(model, inputs, r))
		near(t, "second order", s.Std, c.std, 1e-14)
		near(t, "shift", s.Shift, 5.0e-5, 1e-17)
	}
}

// Correlated inputs are independent ones mixed: a model of z₁, z₂ and the same model written in
// x₁ = z₁ + z₂, x₂ = z₁ − 2z₂ have one answer.
func TestSecondOrderMixed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u1, u2 := rapid.Float64Range(0.01, 0.3).Draw(t, "u1"), rapid.Float64Range(0.01, 0.3).Draw(t, "u2")
		z1, z2 := rapid.Float64Range(1, 2).Draw(t, "z1"), rapid.Float64Range(-0.4, 0.4).Draw(t, "z2")
		cube := func(x []hyperdual.Number) hyperdual.Number {
			return hyperdual.Mul(hyperdual.Mul(x[0], x[0]), hyperdual.Add(x[1], hyperdual.Mul(x[1], x[1])))
		}
		of := func(z []hyperdual.Number) hyperdual.Number {
			return cube([]hyperdual.Number{hyperdual.Add(z[0], z[1]), hyperdual.Sub(z[0], hyperdual.Scale(2, z[1]))})
		}
		want, err := secondOrder(of, []uncertainty.Input{{Name: "z1", Value: z1, Std: u1}, {Name: "z2", Value: z2, Std: u2}})
		if err != nil {
			t.Skip(err)
		}
		s1, s2 := math.Hypot(u1, u2), math.Hypot(u1, 2*u2)
		got, err := secondOrder(cube, []uncertainty.Input{{Name: "x1", Value: z1 + z2, Std: s1}, {Name: "x2", Value: z1 - 2*z2, Std: s2}},
			uncertainty.Correlation{A: "x2", B: "x1", R: (u1*u1 - 2*u2*u2) / (s1 * s2)})
		if err != nil {
			t.Fatal(err)
		}
		same(t, "std", got.Std, want.Std)
		same(t, "shift", got.Shift, want.Shift)
	})
}

type moments struct{ Shift, Std float64 }

func secondOrder(m uncertainty.Model, inputs []uncertainty.Input, rs ...uncertainty.Correlation) (s moments, err error) {
	s.Shift, s.Std, err = uncertainty.SecondOrder(m, inputs, rs...)
	return s, err
}

func TestPropagationEstimate(t *testing.T) {
	// a bore read at 35 °C: l/(1 + α·(θ − 20))
	inputs := []uncertainty.Input{{Name: "l", Value: 87.535, Std: 0.002, DoF: 9}, {Name: "α", Value: 11.4e-6, Std: 0.5e-6}, {Name: "θ", Value: 35, Std: 0.5}}
	p := must[uncertainty.Propagation](t)(uncertainty.Propagate(func(x []hyperdual.Number) hyperdual.Number {
		growth := hyperdual.Mul(x[1], hyperdual.Sub(x[2], hyperdual.Number{Real: 20}))
		return hyperdual.Mul(x[0], hyperdual.Inv(hyperdual.Add(hyperdual.Number{Real: 1}, growth)))
	}, inputs))
	e := must[uncertainty.Estimate](t)(p.Estimate(units.Millimetre))
	near(t, "l20/mm (computed)", e.Value.In(units.Millimetre), 87.520034074173, 1e-9)
	// computed by hand: 0.002, 87.5·15·0.5e-6 = 0.000656, 87.5·11.4e-6·0.5 = 0.000499
	near(t, "u/mm", e.Std.In(units.Millimetre), math.Sqrt(0.002*0.002+0.000656*0.000656+0.000499*0.000499), 2e-6)
}

func TestNoModel(t *testing.T) {
	inputs := []uncertainty.Input{{Name: "x", Value: 1, Std: 1}}
	_, err := uncertainty.Propagate(nil, inputs)
	_, err2 := secondOrder(nil, inputs)
	if !errors.Is(err, uncertainty.ErrModel) || !errors.Is(err2, uncertainty.ErrModel) {
		t.Errorf("%v, %v", err, err2)
	}
}
