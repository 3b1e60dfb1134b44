// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
)

// Growth returns the bore of a fitted sleeve as a material for the models of a gauge and of warm sizes, which ask for
// nothing but an expansion, its spread and its range: when the whole joint has one temperature the bore grows as
// neither part alone. Expansion ± Within is the mean coefficient between 20 °C and t, with sleeve and barrel
// both at t: the size of the bore at t is that at 20 °C times 1 + Expansion·(t − 20 °C), loose or not. It has no
// strength and no stiffness; whether it grips at t, and what to mind, says [Joint.Stresses].
//
// The half-width covers the spread of both coefficients, the range of the outside
// diameter and that of the interference, the last but for its second order: the width of its
// window over the seat times the difference of the coefficients, some 1e-8/K.
//
// While the joint grips, the coefficient is
//
//	α = { bore·αs + C·[ seat·αb − (seat + δ)·αs ] } / (bore − C·δ)
//	C = (a/c)·(Ki + 1) / { Ei·[ (Ko + νo)/Eo + (Ki − νi)/Ei ] }
//
// with the DIAMETRAL interference δ, the rest as in the package comment. C is the closing-in of the
// bore for a unit of interference: each kelvin takes some away, and the bore opens by its share. For
// iron in aluminium, and whenever (Ei/Eo)·(Ko + νo) is above 1 + νi, it lies between the two
// coefficients; a soft sleeve in a stiff barrel can leave that interval. Once the joint is loose the
// sleeve grows by itself.
//
// Errors are those of [Joint.Stresses].
func (j Joint) Growth(t units.Temperature) (material.Material, error) {
	if err := j.checkThermal(); err != nil {
		return material.Material{}, err
	}
	dT, err := above("joint", t)
	if err != nil {
		return material.Material{}, err
	}
	gap, err := j.clearance(growths(&j.Sleeve, dT), growths(&j.Barrel, dT))
	if err != nil {
		return material.Material{}, err
	}
	slack, tight := j.Interference.Min.In(units.Metre), j.Interference.Max.In(units.Metre)
	sleeves, barrels := coefficients(&j.Sleeve), coefficients(&j.Barrel)
	mean := nothing()
	b := boreGrowth{bore: j.Bore.In(units.Metre), seat: j.Seat.In(units.Metre), dT: dT}
	if dT != 0 {
		b.perKelvin = 1 / dT
	}
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	closings := [2]float64{thin.closing(), thick.closing()}
	for _, d := range [2]float64{slack, tight} {
		for _, closing := range closings {
			b.set(d, closing)
			mean.corners(&b, sleeves, barrels)
		}
	}
	if gap.Max >= 0 && gap.Min < 0 { // whether it grips is undecided
		mean.kinks(&b, closings, [2]float64{slack, tight}, sleeves, barrels)
	}
	m := material.Material{
		Name:   "bore of a fitted sleeve",
		From:   min(t, units.ReferenceTemperature),
		To:     max(t, units.ReferenceTemperature),
		Source: "computed from both parts (Lamé)",
	}
	m.Expansion, m.Within = mean.expansion()
	return m, nil
}

// coefficients returns the ends of a material's coefficient of expansion, in 1/K.
func coefficients(m *material.Material) [2]float64 {
	return [2]float64{float64(m.Expansion - m.Within), float64(m.Expansion + m.Within)}
}

// boreGrowth is a joint of exact sizes at dT kelvins above 20 °C: diameters and the DIAMETRAL
// interference d in metres, and the closing-in of the bore for a unit of interference.
type boreGrowth struct {
	bore, seat, closing float64
	dT, perKelvin       float64 // one over dT; 0 at 20 °C
	d, perSize          float64 // one over the diameter of the fitted bore at 20 °C
}

// set gives the joint the interference d and its bore the closing-in.
func (b *boreGrowth) set(d, closing float64) {
	b.d, b.closing = d, closing
	b.perSize = 1 / (b.bore - float64(closing*max(0, d)))
}

// own returns what a kelvin adds to the bore, to its size at 20 °C, by a sleeve that is loose.
func (b *boreGrowth) own(as float64) float64 { return float64(float64(b.bore*as) * b.perSize) }

// opening returns how much overlap is lost a kelvin.
func (b *boreGrowth) opening(as, ab float64) float64 {
	return float64(b.seat*ab) - float64((b.seat+b.d)*as)
}

// tight returns what a kelvin adds while the joint grips, mean the mean coefficient from 20 °C to
// dT above it; own is what the loose sleeve adds, opening how much overlap is lost a kelvin.
func (b *boreGrowth) tight(own, opening float64) float64 {
	return own + float64(float64(b.closing*opening)*b.perSize)
}

func (b *boreGrowth) mean(own, opening float64) float64 {
	overlap := b.d - float64(opening*b.dT)
	switch {
	case b.d > 0 && overlap > 0:
		return b.tight(own, opening)
	case b.d <= 0 && overlap <= 0:
		return own
	}
	gone := max(0, b.d) - max(0, overlap)
	return own + float64(float64(b.closing*gone)*float64(b.perSize*b.perKelvin))
}

// corners adds the joint with each pair of coefficients.
func (s *span) corners(b *boreGrowth, sleeves, barrels [2]float64) {
	for _, as := range sleeves {
		for _, ab := range barrels {
			s.add(b.mean(b.own(as), b.opening(as, ab)))
		}
	}
}

// kinks adds the joints that let go at a coefficient inside the sleeve's spread, where their size
// has a kink.
func (s *span) kinks(b *boreGrowth, closings, interferences, sleeves, barrels [2]float64) {
	for _, ab := range barrels {
		for _, d := range interferences {
			as := (float64(b.seat*ab) - float64(d*b.perKelvin)) / (b.seat + d)
			if as <= sleeves[0] || as >= sleeves[1] {
				continue
			}
			for _, closing := range closings {
				b.set(d, closing)
				s.add(b.mean(b.own(as), b.opening(as, ab)))
			}
		}
	}
}

// expansion returns a span of coefficients as its middle and half-width, to 1e-15/K.
func (s span) expansion() (middle, within units.Expansion) {
	const step = 1e-15
	half := (s.hi - s.lo) / 2
	return units.Expansion(math.Round((s.lo+half)/step) * step), units.Expansion(math.Round(half/step) * step)
}
