// SPDX-License-Identifier: BSD-3-Clause

package material

// Density is mass a volume, in kilograms a cubic metre.
type Density float64

// Units of density. Multiply a constant to make one: 7.2 * material.GramPerCubicCentimetre.
const (
	KilogramPerCubicMetre  Density = 1
	GramPerCubicCentimetre         = 1000 * KilogramPerCubicMetre
)

// In returns the density as a number of the unit.
func (d Density) In(unit Density) float64 { return float64(d / unit) }
