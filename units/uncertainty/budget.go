// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Component is one source of doubt in a [Budget]: an input of the measurement. Its
// contribution, |Sensitivity|·Std, is a number of the unit of the result.
type Component struct {
	Name        string  `json:"name"`          // for people, and for correlations to refer to
	Std         float64 `json:"std"`           // standard uncertainty of the input, in its unit, at least 0
	Sensitivity float64 `json:"sensitivity"`   // how far the result moves per unit of the input; 0 is 0
	DoF         float64 `json:"dof,omitzero"`  // degrees of freedom of Std; 0 = infinitely many
	Unit        string  `json:"unit,omitzero"` // of Std, for people
}

// A Budget is what the uncertainty of a result is made of (JCGM 100:2008 clause 5 and 8).
// Components that no correlation names are independent.
type Budget struct {
	Components   []Component   `json:"components"`            // at least one
	Correlations []Correlation `json:"correlations,omitzero"` // of pairs of them; none = all independent
}

// Combined returns the combined standard uncertainty, a number of the unit of the result, and
// its effective degrees of freedom, 0 where they are infinite:
//
//	u² = Σ (cᵢuᵢ)² + 2 ΣΣ cᵢcⱼuᵢuⱼrᵢⱼ      (JCGM 100:2008 5.1.2, 5.2.2, equations 10 and 16)
//	ν  = u⁴ / Σ (cᵢuᵢ)⁴/νᵢ                 (Welch–Satterthwaite, G.4.1, equation G.2b)
//
// The second holds for independent components. Correlated ones are first put together into
// groups, each with the combined uncertainty of its members and the least of their degrees of
// freedom: exact where the members were read together, so that all have the same (H.2.4),
// cautious elsewhere.
//
// No component is ErrNoData; a Std that is negative, or a contribution that is not finite, is
// ErrStd; degrees of freedom other than 0 or at least 1 are ErrStd; a correlation that names no
// component, or that no quantities can have together, is ErrCorrelation.
func (b Budget) Combined() (std, dof float64, err error) {
	top, err := b.greatest()
	if err != nil {
		return 0, 0, err
	}
	if len(b.Correlations) > 0 {
		return b.combineGroups(top)
	}
	if top == 0 {
		return 0, 0, nil
	}
	var s sum
	for i := range b.Components {
		c := &b.Components[i]
		x := c.signed() / top
		s.add(float64(x*x), c.DoF)
	}
	return s.combined(top)
}

// signed returns the contribution with the sign of the sensitivity.
func (c *Component) signed() float64 { return float64(c.Sensitivity * c.Std) }

// greatest checks the components and returns the greatest contribution.
func (b Budget) greatest() (top float64, err error) {
	if len(b.Components) == 0 {
		return 0, fmt.Errorf("uncertainty: budget without components: %w", ErrNoData)
	}
	for i := range b.Components {
		c := &b.Components[i]
		u := math.Abs(c.signed())
		if !(c.Std >= 0) || math.IsNaN(u) || math.IsInf(u, 0) {
			return 0, fmt.Errorf("uncertainty: component %q: std %v with sensitivity %v: %w", c.Name, c.Std, c.Sensitivity, ErrStd)
		}
		if !validDoF(c.DoF) {
			return 0, fmt.Errorf("uncertainty: component %q: %v degrees of freedom: %w", c.Name, c.DoF, ErrStd)
		}
		top = max(top, u)
	}
	return top, nil
}

// A sum adds variances, as fractions of the square of the greatest contribution, and what the
// Welch–Satterthwaite formula needs.
type sum struct{ variance, fourth, leastDoF float64 }

func (s *sum) add(variance, dof float64) {
	s.variance += variance
	if dof != 0 && variance > 0 {
		s.fourth += float64(variance*variance) / dof
		if s.leastDoF == 0 || dof < s.leastDoF {
			s.leastDoF = dof
		}
	}
}

func (s *sum) combined(top float64) (std, dof float64, err error) {
	std = top * math.Sqrt(s.variance)
	if math.IsInf(std, 0) {
		return 0, 0, fmt.Errorf("uncertainty: combined: %w", ErrStd)
	}
	dof = float64(s.variance*s.variance) / s.fourth
	if s.fourth == 0 || math.IsInf(dof, 0) {
		return std, 0, nil
	}
	return std, max(dof, s.leastDoF), nil // at least the least, whatever the rounding
}

// Estimate returns the value with the budget's combined standard uncertainty and effective
// degrees of freedom, the contributions being numbers of the unit. An uncertainty above zero
// is at least 1 pm, since zero would mean exact. Errors are those of [Budget.Combined], of
// [units.Of] and of [Estimate.Validate].
func (b Budget) Estimate(value, unit units.Length) (Estimate, error) {
	std, dof, err := b.Combined()
	if err != nil {
		return Estimate{}, err
	}
	return estimate(value, std, dof, unit)
}

func estimate(value units.Length, std, dof float64, unit units.Length) (Estimate, error) {
	u, err := units.Of(std, unit)
	if err != nil {
		return Estimate{}, fmt.Errorf("uncertainty: %w", err)
	}
	if std == 0 {
		dof = 0
	} else {
		u = max(u, units.Picometre)
	}
	e := Estimate{Value: value, Std: u, DoF: dof}
	return e, e.Validate()
}

// A Row is a component's part in a budget.
type Row struct {
	Component
	Contribution float64 `json:"contribution"` // |Sensitivity|·Std, in the unit of the result
	Share        float64 `json:"share"`        // fraction of the combined variance; all shares add up to 1
}

// Rows returns the budget as data, a row for each component, in their order. A correlated
// component's share holds its part of the terms it has with others and may be negative. Where
// nothing contributes all shares are 0. Work on the measurement pays where the share is greatest:
// halving that Std takes three quarters of its share off the variance, if nothing is correlated.
// Errors are those of [Budget.Combined].
func (b Budget) Rows() ([]Row, error) {
	std, _, err := b.Combined()
	if err != nil {
		return nil, err
	}
	pairs, err := b.pairs()
	if err != nil {
		return nil, err
	}
	rows := make([]Row, len(b.Components))
	for i := range rows {
		c := b.Components[i]
		rows[i] = Row{Component: c, Contribution: math.Abs(c.signed())}
		if std == 0 {
			continue
		}
		x := c.signed() / std
		share := float64(x * x)
		for _, p := range pairs {
			if p.i == i || p.j == i {
				share += float64(p.r * x * b.Components[p.i+p.j-i].signed() / std)
			}
		}
		rows[i].Share = share
	}
	return rows, nil
}
