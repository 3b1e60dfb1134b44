// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"fmt"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// A Comparison is one comparison of a part with a setting standard by a dial gauge. The size of the part at 20 °C is
//
//	L20 = [Ls·(1 + αs·ΔTs)·(1 + αg·(Tuse − Tset)) + d] / (1 + αp·ΔTp)          (3)
//
// with ΔT the difference from 20 °C. The gauge is set on the standard, which has the size Ls·(1 + αs·ΔTs) then. Until
// it is used the gauge itself grows by αg·(Tuse − Tset), and the dial shows by how much the part is larger than that.
// All four temperatures are separate, and one that is not given is [units.ErrNotGiven]. The gauge's coefficient is that
// of what spans the bore: its rods.
type Comparison struct {
	Standard  units.Length `json:"standard"`  // Ls: size of the setting standard at 20 °C
	Deviation units.Length `json:"deviation"` // d: what the dial shows, plus where the part is larger than the standard

	StandardAt units.Temperature `json:"standard_at"`  // of the standard while the gauge was set
	GaugeSetAt units.Temperature `json:"gauge_set_at"` // Tset: of the gauge while it was set
	GaugeUseAt units.Temperature `json:"gauge_use_at"` // Tuse: of the gauge while it measured the part
	PartAt     units.Temperature `json:"part_at"`      // of the part while it was measured

	StandardExpansion units.Expansion `json:"standard_expansion"` // αs
	GaugeExpansion    units.Expansion `json:"gauge_expansion"`    // αg
	PartExpansion     units.Expansion `json:"part_expansion"`     // αp
}

// Sensitivities says how far the size at 20 °C moves with each input of a [Comparison]: the first derivatives, for a
// budget of uncertainty (JCGM 100:2008, 5.1.3). Where one thing moves two inputs (one thermometer, or standard and part
// of one steel) add their derivatives before squaring.
type Sensitivities struct {
	Standard  float64 `json:"standard"`  // dimensionless, close to 1: of the size of the standard
	Deviation float64 `json:"deviation"` // dimensionless, close to 1: of what the dial shows

	StandardAt units.Length `json:"standard_at"`  // for +1 K of the standard: αs·Ls, about
	GaugeSetAt units.Length `json:"gauge_set_at"` // for +1 K of the gauge while it was set: −αg·Ls, about
	GaugeUseAt units.Length `json:"gauge_use_at"` // for +1 K of the gauge in use: +αg·Ls, about
	PartAt     units.Length `json:"part_at"`      // for +1 K of the part: −αp·L20, about

	StandardExpansion units.Length `json:"standard_expansion"` // for +1e-6/K of the standard's coefficient
	GaugeExpansion    units.Length `json:"gauge_expansion"`    // for +1e-6/K of the gauge's
	PartExpansion     units.Length `json:"part_expansion"`     // for +1e-6/K of the part's
}

// factors returns 1 + growth of the standard, the gauge and the part.
func (c Comparison) factors() (s, g, p float64, err error) {
	if s, err = growth("setting standard", c.StandardExpansion, c.StandardAt, units.ReferenceTemperature); err != nil {
		return 0, 0, 0, err
	}
	if g, err = growth("gauge", c.GaugeExpansion, c.GaugeUseAt, c.GaugeSetAt); err != nil {
		return 0, 0, 0, err
	}
	p, err = growth("part", c.PartExpansion, c.PartAt, units.ReferenceTemperature)
	return s, g, p, err
}

// SizeAt20 returns the size of the part at 20 °C, rounded once. The errors are those of [Material.SizeAt], for the
// standard, the gauge or the part.
func (c Comparison) SizeAt20() (units.Length, error) {
	s, g, p, err := c.factors()
	if err != nil {
		return 0, err
	}
	return size(c.at20(s, g, p))
}

func (c Comparison) at20(s, g, p float64) float64 {
	return (float64(float64(c.Standard)*s*g) + float64(c.Deviation)) / p // (3)
}

// DialReading is the inverse of [Comparison.SizeAt20]: what the dial shows, plus where the part is larger than the
// standard, when the part has that size at 20 °C, at the temperatures of the comparison. Deviation takes no part.
//
// It is for roughing alone: a finished size is accepted only after part and gauge have soaked at one temperature. A
// size, or one of the standard, of zero is [units.ErrNotGiven], below that or beyond [units.MaxLength]
// [units.ErrRange]; the other errors are those of SizeAt20.
func (c Comparison) DialReading(at20 units.Length) (units.Length, error) {
	for _, l := range [2]units.Length{at20, c.Standard} {
		if l <= 0 || l > units.MaxLength {
			return 0, fmt.Errorf("material: size %v of part or standard: %w (above 0, up to %v)", l, given.Err(l), units.MaxLength)
		}
	}
	s, g, p, err := c.factors()
	if err != nil {
		return 0, err
	}
	return size(float64(float64(at20)*p) - float64(float64(c.Standard)*s*g)) // (3), solved for d
}

// Sensitivities returns the first derivatives of [Comparison.SizeAt20], with its errors. One that lies beyond
// [units.MaxLength] is [units.ErrRange].
func (c Comparison) Sensitivities() (Sensitivities, error) {
	s, g, p, err := c.factors()
	if err != nil {
		return Sensitivities{}, err
	}
	length := func(pm float64) (l units.Length) {
		if err == nil {
			l, err = size(pm)
		}
		return l
	}
	const ppm = 1e-6
	ls, l20 := float64(c.Standard), c.at20(s, g, p)
	r := Sensitivities{
		Standard: s * g / p, Deviation: 1 / p,

		StandardAt: length(ls * float64(c.StandardExpansion) * g / p),
		GaugeSetAt: length(-ls * s * float64(c.GaugeExpansion) / p),
		GaugeUseAt: length(ls * s * float64(c.GaugeExpansion) / p),
		PartAt:     length(-l20 * float64(c.PartExpansion) / p),

		StandardExpansion: length(ls * above(c.StandardAt, units.ReferenceTemperature) * g / p * ppm),
		GaugeExpansion:    length(ls * s * above(c.GaugeUseAt, c.GaugeSetAt) / p * ppm),
		PartExpansion:     length(-l20 * above(c.PartAt, units.ReferenceTemperature) / p * ppm),
	}
	if _, tooLarge := size(l20); err == nil {
		err = tooLarge
	}
	if err != nil {
		return Sensitivities{}, err
	}
	return r, nil
}
