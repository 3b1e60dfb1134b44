// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Component is one source of doubt in a [Budget].
type Component struct {
	Name        string  `json:"name"`
	Std         float64 `json:"std"`           // standard uncertainty of the input, at least 0
	Sensitivity float64 `json:"sensitivity"`   // how much the result moves per unit of the input; 0 is 0
	DoF         float64 `json:"dof,omitzero"`  // degrees of freedom of Std; 0 = infinitely many
	Unit        string  `json:"unit,omitzero"` // of Std, for the table alone
}

// Contribution returns |Sensitivity|·Std, in the unit of the result.
func (c Component) Contribution() float64 { return math.Abs(c.Sensitivity * c.Std) }

// A Correlation is the correlation coefficient between two components, by their names.
type Correlation struct {
	A string  `json:"a"`
	B string  `json:"b"`
	R float64 `json:"r"`
}

// A Budget is the list of what a result's uncertainty is made of (JCGM 100:2008 clause 5).
type Budget struct {
	Components   []Component   `json:"components"`
	Correlations []Correlation `json:"correlations,omitzero"`
}

// Combined returns the combined standard uncertainty, root sum of squares (JCGM 100:2008 5.1.2),
// and its effective degrees of freedom (G.4.1), 0 where they are infinite.
func (b Budget) Combined() (std, dof float64, err error) {
	if len(b.Components) == 0 {
		return 0, 0, fmt.Errorf("uncertainty: budget: %w", ErrNoData)
	}
	var variance, fourth float64
	for i := range b.Components {
		c := &b.Components[i]
		u := c.Contribution()
		if !(c.Std >= 0) || math.IsInf(u, 0) || math.IsNaN(u) {
			return 0, 0, fmt.Errorf("uncertainty: component %q: std %v × %v: %w", c.Name, c.Std, c.Sensitivity, ErrStd)
		}
		if err := checkDoF(c.DoF); err != nil {
			return 0, 0, err
		}
		v := float64(u * u)
		variance += v
		if c.DoF != 0 {
			fourth += float64(v*v) / c.DoF
		}
	}
	if fourth > 0 {
		dof = float64(variance*variance) / fourth
	}
	return math.Sqrt(variance), dof, nil
}

// Estimate returns the value with the budget's combined standard uncertainty, the components
// being numbers of the unit.
func (b Budget) Estimate(value, unit units.Length) (Estimate, error) {
	std, dof, err := b.Combined()
	if err != nil {
		return Estimate{}, err
	}
	u, err := units.Of(std, unit)
	if err != nil {
		return Estimate{}, err
	}
	e := Estimate{Value: value, Std: u, DoF: dof}
	return e, e.Validate()
}
