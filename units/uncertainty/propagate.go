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
// No input is ErrNoData; a model whose value or derivative is not finite is ErrModel; what
// [Budget.Combined] refuses is refused here.
func Propagate(m Model, inputs []Input, correlations ...Correlation) (Propagation, error) {
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

// A Term is a second-order part of a variance, from one input (A and B the same) or two.
type Term struct {
	A        string  `json:"a"`        // name of an input
	B        string  `json:"b"`        // name of the same or another one
	Variance float64 `json:"variance"` // in the unit of the result squared; third derivatives can make it negative
}

// SecondOrder returns the combined standard uncertainty of a model with the terms of the next
// higher order, and these terms where they are not zero (JCGM 100:2008 5.1.2, note, and H.1.7):
//
//	u² = Σ fᵢ²uᵢ² + ΣΣ (fᵢⱼ²/2 + fᵢ·fᵢⱼⱼ)·uᵢ²uⱼ²
//
// with the partial derivatives fᵢ, fᵢⱼ and fᵢⱼⱼ; the term of the pair i, j is that of both
// orders, (fᵢⱼ² + fᵢfᵢⱼⱼ + fⱼfⱼᵢᵢ)·uᵢ²uⱼ². It holds for independent inputs with normal
// distributions, and matters where a sensitivity is zero or nearly so at the inputs' values: a
// product of two quantities that are themselves expected to be zero has no uncertainty in first
// order. First and second derivatives are exact to rounding, third ones central differences of
// second ones over uᵢ/64.
//
// Errors are those of [Propagate]; a total below zero, where the expansion has broken down, is
// ErrModel.
func SecondOrder(m Model, inputs []Input) (std float64, terms []Term, err error) {
	p, err := Propagate(m, inputs)
	if err != nil {
		return 0, nil, err
	}
	first, _, err := p.Budget.Combined()
	if err != nil {
		return 0, nil, err
	}
	variance := float64(first * first)
	for i, a := range inputs {
		for j, b := range inputs[:i+1] {
			if a.Std == 0 || b.Std == 0 {
				continue
			}
			y, err := m.at(inputs, i, j)
			if err != nil {
				return 0, nil, err
			}
			third, err := m.third(inputs, i, j)
			if err != nil {
				return 0, nil, err
			}
			mixed := float64(y.E1E2mag * a.Std * b.Std)
			t := Term{A: b.Name, B: a.Name, Variance: float64(mixed*mixed) + float64(y.E1mag*a.Std*third)}
			if i == j {
				t.Variance -= float64(mixed*mixed) / 2
			} else {
				third, err = m.third(inputs, j, i)
				if err != nil {
					return 0, nil, err
				}
				t.Variance += float64(y.E2mag * b.Std * third)
			}
			if t.Variance != 0 {
				terms = append(terms, t)
				variance += t.Variance
			}
		}
	}
	if !(variance >= 0) || math.IsInf(variance, 0) {
		return 0, nil, fmt.Errorf("uncertainty: second order: variance %v: %w", variance, ErrModel)
	}
	return math.Sqrt(variance), terms, nil
}

// third returns fᵢⱼⱼ·uᵢ·uⱼ² by the difference of fⱼⱼ between two places of input i.
func (m Model) third(inputs []Input, i, j int) (float64, error) {
	h := inputs[i].Std / 64
	var d [2]float64
	for k, shift := range [...]float64{-h, h} {
		shifted := make([]Input, len(inputs))
		copy(shifted, inputs)
		shifted[i].Value += shift
		y, err := m.at(shifted, j, j)
		if err != nil {
			return 0, err
		}
		d[k] = y.E1E2mag
	}
	u := inputs[j].Std
	return float64((d[1] - d[0]) * 32 * u * u), nil
}
