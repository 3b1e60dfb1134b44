// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"encoding/json"
	"fmt"
	"math"

	"borewright.example/units"
)

// A Material is what the sums of a workshop need to know of a metal. A user's own is one struct literal;
// the maker's figure always outranks the typical ones of this package. A field of zero is not known. In JSON a person
// may write the name alone, "grey iron"; what is stored are the figures, so that it is worked out again with the same
// ones when the table of this package has changed.
type Material struct {
	Name      string            `json:"name,omitzero"`      // as [ByName] knows it, or the user's own
	Expansion units.Expansion   `json:"expansion,omitzero"` // mean coefficient of linear expansion between From and To
	Within    units.Expansion   `json:"within,omitzero"`    // half-width of the spread of Expansion between grades and sources
	From      units.Temperature `json:"from,omitzero"`      // lower end of that range; zero where the source says "room temperature"
	To        units.Temperature `json:"to,omitzero"`        // upper end of that range; zero as From
	Young     units.Pressure    `json:"young,omitzero"`     // Young's modulus
	Poisson   float64           `json:"poisson,omitzero"`   // Poisson's ratio, dimensionless
	Tensile   units.Pressure    `json:"tensile,omitzero"`   // ultimate tensile strength; Source says of what grade and state
	Yield     units.Pressure    `json:"yield,omitzero"`     // 0.2 % proof stress; zero for grey iron, which has none
	Source    string            `json:"source,omitzero"`    // where each figure comes from, and how far to trust it
}

// UnmarshalJSON reads the name of a metal as [ByName] knows it, or its figures. On error the receiver keeps its value.
func (m *Material) UnmarshalJSON(text []byte) error {
	var name string
	if json.Unmarshal(text, &name) == nil && name != "" {
		known, err := ByName(name)
		if err == nil {
			*m = known
		}
		return err
	}
	type figures Material
	f := figures(*m)
	if err := json.Unmarshal(text, &f); err != nil {
		return err
	}
	*m = Material(f)
	return nil
}

// SizeAt returns the size at temperature t of a part that is l20 at 20 °C, l20·(1 + α(t − 20 °C)). A
// temperature that is not given is [units.ErrNotGiven], and so is an expansion where t is not 20 °C. It is
// [units.ErrRange] where the answer lies beyond [units.MaxLength], t below absolute zero, or the part would grow
// or shrink by more than a tenth, which says that a coefficient has lost its 10⁻⁶; [units.ErrNotFinite] where t
// or the coefficient is not finite.
func (m Material) SizeAt(l20 units.Length, t units.Temperature) (units.Length, error) {
	g, err := m.growth(t)
	if err != nil {
		return 0, err
	}
	return size(float64(l20) * g) // (1)
}

// growth returns 1 + α(t − 20 °C).
func (m Material) growth(t units.Temperature) (float64, error) {
	g, err := growth(m.Name, m.Expansion, t, units.ReferenceTemperature)
	if err == nil && m.Expansion == 0 && t.AboveReference() != 0 {
		err = fmt.Errorf("material: %q at %v: expansion %w", m.Name, t, units.ErrNotGiven)
	}
	return g, err
}

// SizeAt20 returns the size at 20 °C of a part that is l at temperature t, l/(1 + α(t − 20 °C)): the inverse of
// [Material.SizeAt] but for rounding, with its errors.
func (m Material) SizeAt20(l units.Length, t units.Temperature) (units.Length, error) {
	g, err := m.growth(t)
	if err != nil {
		return 0, err
	}
	return size(float64(l) / g) // (2)
}

// most is the largest relative change of size that is taken for a temperature's doing. Steel grows by about 0.02 up to
// its melting point.
const most = 0.1

// growth returns 1 + α(to − from).
func growth(what string, a units.Expansion, to, from units.Temperature) (float64, error) {
	for _, t := range []units.Temperature{to, from} {
		if t.IsZero() {
			return 0, fmt.Errorf("material: %s: temperature %w", what, units.ErrNotGiven)
		}
		if err := t.Validate(); err != nil {
			return 0, fmt.Errorf("material: %s: %w", what, err)
		}
	}
	x := float64(a) * above(to, from)
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return 0, fmt.Errorf("material: %s with an expansion of %v: %w", what, a, units.ErrNotFinite)
	case math.Abs(x) > most:
		return 0, fmt.Errorf("material: %s with an expansion of %v from %v to %v grows by %.3g: %w (±%v; 11.4e-6/K is usual)",
			what, a, from, to, x, units.ErrRange, most)
	}
	return 1 + x, nil
}

// above returns to − from in kelvins.
func above(to, from units.Temperature) float64 {
	return float64(to.Sub(from))
}

// size returns pm picometres, rounded once.
func size(pm float64) (units.Length, error) {
	l, err := units.Of(pm, units.Picometre)
	if err != nil {
		return 0, fmt.Errorf("material: size: %w", err)
	}
	return l, nil
}
