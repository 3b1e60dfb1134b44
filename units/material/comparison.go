// SPDX-License-Identifier: BSD-3-Clause

package material

import (
	"fmt"

	"borewright.example/units"
)

// A Comparison is one comparison of a part with a setting standard by a dial gauge:
//
//	L20 = [Ls(1 + αs·ΔTs)(1 + αg·(Tuse − Tset)) + d] / (1 + αp·ΔTp)
//
// Every temperature is separate; a zero one is 20 °C.
type Comparison struct {
	Standard  units.Length // Ls: size of the setting standard at 20 °C
	Deviation units.Length // d: what the dial shows, plus where the part is larger than the standard

	StandardAt units.Temperature // of the standard while the gauge was set
	GaugeSetAt units.Temperature // of the gauge while it was set
	GaugeUseAt units.Temperature // of the gauge while it measured the part
	PartAt     units.Temperature // of the part while it was measured

	StandardExpansion, GaugeExpansion, PartExpansion units.Expansion
}

// Sensitivities says how far the size at 20 °C moves with each input of a [Comparison]: the first derivatives.
type Sensitivities struct {
	Standard, Deviation float64 // by which a change of either is multiplied: close to 1

	StandardAt, GaugeSetAt, GaugeUseAt, PartAt units.Length // for +1 K

	StandardExpansion, GaugeExpansion, PartExpansion units.Length // for +1e-6/K
}

// factors returns 1 + growth of the standard, the gauge and the part.
func (c Comparison) factors() (s, g, p float64, err error) {
	if s, err = growth(c.StandardExpansion, c.StandardAt, 0); err != nil {
		return 0, 0, 0, fmt.Errorf("material: setting standard: %w", err)
	}
	if g, err = growth(c.GaugeExpansion, c.GaugeUseAt, c.GaugeSetAt); err != nil {
		return 0, 0, 0, fmt.Errorf("material: gauge: %w", err)
	}
	if p, err = growth(c.PartExpansion, c.PartAt, 0); err != nil {
		return 0, 0, 0, fmt.Errorf("material: part: %w", err)
	}
	return s, g, p, nil
}

// SizeAt20 returns the size of the part at 20 °C.
func (c Comparison) SizeAt20() (units.Length, error) {
	s, g, p, err := c.factors()
	if err != nil {
		return 0, err
	}
	return size((float64(float64(c.Standard)*float64(s*g)) + float64(c.Deviation)) / p)
}

// Sensitivities returns the first derivatives of [Comparison.SizeAt20], for a budget of uncertainty.
func (c Comparison) Sensitivities() (Sensitivities, error) {
	s, g, p, err := c.factors()
	if err != nil {
		return Sensitivities{}, err
	}
	ls := float64(c.Standard)
	l20 := (float64(ls*float64(s*g)) + float64(c.Deviation)) / p
	r := Sensitivities{Standard: s * g / p, Deviation: 1 / p}
	useSet := float64(c.GaugeUseAt.AboveReference() - c.GaugeSetAt.AboveReference())
	const perMillion = 1e-6
	for _, d := range []struct {
		to *units.Length
		pm float64
	}{
		{&r.StandardAt, ls * float64(c.StandardExpansion) * g / p},
		{&r.GaugeSetAt, -ls * s * float64(c.GaugeExpansion) / p},
		{&r.GaugeUseAt, ls * s * float64(c.GaugeExpansion) / p},
		{&r.PartAt, -l20 * float64(c.PartExpansion) / p},
		{&r.StandardExpansion, ls * float64(c.StandardAt.AboveReference()) * g / p * perMillion},
		{&r.GaugeExpansion, ls * s * useSet / p * perMillion},
		{&r.PartExpansion, -l20 * float64(c.PartAt.AboveReference()) / p * perMillion},
	} {
		if *d.to, err = size(d.pm); err != nil {
			return Sensitivities{}, err
		}
	}
	return r, nil
}
