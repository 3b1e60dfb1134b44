// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"
	"slices"

	"borewright.example/units"
	"gonum.org/v1/gonum/num/hyperdual"
)

// A Model computes a result from its inputs, all numbers of the caller's units. It is written
// with the functions of gonum's hyperdual numbers, which carry the derivatives along: where a
// formula has a·b it says hyperdual.Mul(a, b). It is called several times, each time with a
// slice of its own.
type Model func(x []hyperdual.Number) hyperdual.Number

// An Input is a quantity that a [Model] works on.
type Input struct {
	Name  string  `json:"name"`          // for people, and for correlations to refer to
	Value float64 `json:"value"`         // best estimate, in the unit that the model works in
	Std   float64 `json:"std,omitzero"`  // standard uncertainty of Value, in the same unit; 0 = exact
	DoF   float64 `json:"dof,omitzero"`  // degrees of freedom of Std; 0 = infinitely many
	Unit  string  `json:"unit,omitzero"` // of Value and Std, for the table alone
}

// A Propagation is a model's result and the budget of its first-order uncertainty.
type Propagation struct {
	Value  float64 `json:"value"`  // in the unit of the result
	Budget Budget  `json:"budget"` // its components are the inputs, in their order
}

// Propagate returns the model's value at the inputs and the budget that the law of propagation
// gives it (JCGM 100:2008 5.1.2, 5.2.2): a component for each input, with the partial
// derivative at the inputs' values, exact to rounding, as its sensitivity. A sensitivity of 0
// may mean that the input does not matter, or that it matters only in second order: ask
// [SecondOrder].
//
// No input is ErrNoData; no model, or one whose value or derivative is not finite, is ErrModel; what
// [Budget.Combined] refuses is refused here.
func Propagate(m Model, inputs []Input, correlations ...Correlation) (Propagation, error) {
	if m == nil {
		return Propagation{}, fmt.Errorf("uncertainty: propagate: no model: %w", ErrModel)
	}
	p := Propagation{Budget: Budget{Components: make([]Component, len(inputs)), Correlations: slices.Clone(correlations)}}
	for i, in := range inputs {
		y, err := m.at(inputs, i, i)
		if err != nil {
			return Propagation{}, err
		}
		p.Value = y.Real
		p.Budget.Components[i] = Component{Name: in.Name, Std: in.Std, Sensitivity: y.E1mag, DoF: in.DoF, Unit: in.Unit}
	}
	if _, _, err := p.Budget.Combined(); err != nil {
		return Propagation{}, err
	}
	return p, nil
}

// Estimate returns the result as a length, the model's value being a number of the unit. Errors
// are those of [Budget.Estimate].
func (p Propagation) Estimate(unit units.Length) (Estimate, error) {
	value, err := units.Of(p.Value, unit)
	if err != nil {
		return Estimate{}, fmt.Errorf("uncertainty: %w", err)
	}
	return p.Budget.Estimate(value, unit)
}

// at returns the model's value at the inputs with the derivatives by input i (E1mag), input j
// (E2mag), and both (E1E2mag).
func (m Model) at(inputs []Input, i, j int) (hyperdual.Number, error) {
	x := make([]hyperdual.Number, len(inputs))
	for k, in := range inputs {
		x[k].Real = in.Value
	}
	x[i].E1mag, x[j].E2mag = 1, 1
	y := m(x)
	for _, v := range [...]float64{y.Real, y.E1mag, y.E2mag, y.E1E2mag} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return y, fmt.Errorf("uncertainty: model at %q = %v, %q = %v: value %v, derivatives %v, %v, %v: %w",
				inputs[i].Name, inputs[i].Value, inputs[j].Name, inputs[j].Value, y.Real, y.E1mag, y.E2mag, y.E1E2mag, ErrModel)
		}
	}
	return y, nil
}

// SecondOrder returns the shift of a model's result, which is its mean less the model's value at the
// inputs' best estimates: what a curved model makes of doubt, and its combined standard uncertainty with
// the terms of the next higher order, both in the unit of the result (JCGM 100:2008 5.1.2, note, and H.1.7; the shift is what 4.1.4,
// note, warns of). With the partial derivatives fᵢ, fᵢⱼ and fᵢⱼₖ, and the covariances cᵢⱼ = rᵢⱼuᵢuⱼ:
//
//	shift = ½ ΣΣ fᵢⱼcᵢⱼ
//	u²    = ΣΣ fᵢfⱼcᵢⱼ + ½ ΣΣΣΣ fᵢⱼcⱼₖfₖₗcₗᵢ + ΣΣΣΣ fᵢcᵢⱼfⱼₖₗcₖₗ
//
// which for independent inputs is the guide's Σ fᵢ²uᵢ² + ΣΣ (fᵢⱼ²/2 + fᵢ·fᵢⱼⱼ)·uᵢ²uⱼ². It holds for
// inputs with normal distributions, together where they are correlated, and matters where a
// sensitivity is zero or nearly so at the inputs' values: a product of two quantities that are
// themselves expected to be zero has no uncertainty in first order. First and second derivatives
// are exact to rounding, third ones central differences of second ones over uᵢ/64.
//
// Errors are those of [Propagate]; a total below zero, where the expansion has broken down, is
// ErrModel. Where that may be so, or inputs are far from normal, propagate the distributions
// themselves.
func SecondOrder(m Model, inputs []Input, correlations ...Correlation) (shift, std float64, err error) {
	p, err := Propagate(m, inputs, correlations...)
	if err != nil {
		return 0, 0, err
	}
	c, err := p.Budget.covariances()
	if err != nil {
		return 0, 0, err
	}
	n := len(inputs)
	h := make([]float64, n*n) // second derivatives
	for i := range n {
		for j := range i + 1 {
			y, err := m.at(inputs, i, j)
			if err != nil {
				return 0, 0, err
			}
			h[i*n+j], h[j*n+i] = y.E1E2mag, y.E1E2mag
		}
	}
	hc, chc := product(h, c, n), product(c, product(h, c, n), n)
	variance := 0.0
	for i := range n {
		shift += hc[i*n+i] / 2
		for j := range n {
			variance += float64(p.Budget.Components[i].Sensitivity * float64(c[i*n+j]*p.Budget.Components[j].Sensitivity))
		}
	}
	for i, a := range inputs {
		for j, b := range inputs[:i+1] {
			if a.Std == 0 || b.Std == 0 {
				continue
			}
			term := float64(h[i*n+j] * chc[i*n+j])
			if i == j {
				term /= 2
			}
			for _, k := range [...][2]int{{i, j}, {j, i}} {
				slope := 0.0 // along what all inputs that go with the first pull it by
				for l, x := range p.Budget.Components {
					slope += float64(c[k[0]*n+l] * x.Sensitivity)
				}
				third, err := m.third(inputs, c, k[0], k[1])
				if err != nil {
					return 0, 0, err
				}
				term += float64(slope * third)
				if i == j {
					break
				}
			}
			variance += term
		}
	}
	if !(variance >= 0) || math.IsInf(variance, 0) || math.IsNaN(shift) || math.IsInf(shift, 0) {
		return 0, 0, fmt.Errorf("uncertainty: second order: variance %v, shift %v: %w", variance, shift, ErrModel)
	}
	return shift, math.Sqrt(variance), nil
}

// covariances returns rᵢⱼuᵢuⱼ of the components, n×n.
func (b Budget) covariances() ([]float64, error) {
	pairs, err := b.pairs()
	if err != nil {
		return nil, err
	}
	n := len(b.Components)
	c := make([]float64, n*n)
	for i, x := range b.Components {
		c[i*n+i] = float64(x.Std * x.Std)
	}
	for _, p := range pairs {
		v := float64(p.r * float64(b.Components[p.i].Std*b.Components[p.j].Std))
		c[p.i*n+p.j], c[p.j*n+p.i] = v, v
	}
	return c, nil
}

// product returns the n×n matrix a·b.
func product(a, b []float64, n int) []float64 {
	c := make([]float64, n*n)
	for i := range n {
		for j := range n {
			for k := range n {
				c[i*n+j] += float64(a[i*n+k] * b[k*n+j])
			}
		}
	}
	return c
}

// third returns Σ fᵢⱼₖcₖⱼ over k by the difference of fᵢⱼ between two places along column j of the
// covariances.
func (m Model) third(inputs []Input, c []float64, i, j int) (float64, error) {
	const part = 64
	n, u := len(inputs), inputs[j].Std
	var d [2]float64
	for s, sign := range [...]float64{-1, 1} {
		shifted := slices.Clone(inputs)
		for k := range shifted {
			shifted[k].Value += sign * c[k*n+j] / u / part
		}
		y, err := m.at(shifted, i, j)
		if err != nil {
			return 0, err
		}
		d[s] = y.E1E2mag
	}
	return float64((d[1] - d[0]) * (part / 2) * u), nil
}
