// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Material is what the sums of a workshop need to know of a metal. A user's own is one struct literal;
// the maker's figure always outranks the typical ones of this package. A field of zero is not known.
type Material struct {
	Name      string            `json:"name,omitzero"`
	Expansion units.Expansion   `json:"expansion,omitzero"` // mean coefficient of linear expansion between From and To
	Within    units.Expansion   `json:"within,omitzero"`    // half-width of the spread of Expansion between grades and sources
	From      units.Temperature `json:"from,omitzero"`      // what Expansion is the mean over; zero where the source says "room temperature"
	To        units.Temperature `json:"to,omitzero"`
	Young     units.Pressure    `json:"young,omitzero"`   // Young's modulus
	Poisson   float64           `json:"poisson,omitzero"` // Poisson's ratio
	Density   Density           `json:"density,omitzero"`
	Tensile   units.Pressure    `json:"tensile,omitzero"` // least or typical ultimate tensile strength; Source says which
	Yield     units.Pressure    `json:"yield,omitzero"`   // 0.2 % proof stress; zero for grey iron, which has none
	Source    string            `json:"source,omitzero"`  // where each figure comes from, and how far to trust it
}

// SizeAt returns the size at temperature t of a part that is l20 at 20 °C, l20·(1 + α(t − 20 °C)).
// The zero Temperature is 20 °C. Where l20 or the answer lies beyond ±[units.MaxLength], or
// growth is beyond a tenth, it is [units.ErrRange].
func (m Material) SizeAt(l20 units.Length, t units.Temperature) (units.Length, error) {
	g, err := growth(m.Expansion, t, units.ReferenceTemperature)
	if err != nil {
		return 0, fmt.Errorf("material: %s at %v: %w", m.Name, t, err)
	}
	return size(float64(float64(l20) * g))
}

// SizeAt20 returns the size at 20 °C of a part that is l at temperature t: l/(1 + α(t − 20 °C)), the exact
// inverse of [Material.SizeAt] but for rounding. The zero Temperature is 20 °C; errors are SizeAt's.
func (m Material) SizeAt20(l units.Length, t units.Temperature) (units.Length, error) {
	g, err := growth(m.Expansion, t, units.ReferenceTemperature)
	if err != nil {
		return 0, fmt.Errorf("material: %s at %v: %w", m.Name, t, err)
	}
	return size(float64(l) / g)
}

// most is the largest relative change of size that is taken for a temperature's doing. Steel grows by
// about 0.02 up to its melting point; beyond 0.1 a coefficient has lost its 10⁻⁶.
const most = 0.1

// growth returns 1 + α(to − from), with zero temperatures standing for 20 °C.
func growth(a units.Expansion, to, from units.Temperature) (float64, error) {
	for _, t := range []units.Temperature{to, from} {
		if err := t.Validate(); err != nil {
			return 0, err
		}
	}
	x := float64(a) * float64(to.AboveReference()-from.AboveReference())
	switch {
	case math.IsNaN(x) || math.IsInf(x, 0):
		return 0, fmt.Errorf("growth of %v: %w", x, units.ErrNotFinite)
	case math.Abs(x) > most:
		return 0, fmt.Errorf("growth by a factor of %v: %w (±%v)", x, units.ErrRange, most)
	}
	return 1 + x, nil
}

// size returns pm picometres, rounded once.
func size(pm float64) (units.Length, error) { return units.Of(pm, units.Picometre) }
