// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Growth is how the bore of a fitted sleeve grows when the whole joint has one temperature. It
// grows as neither part alone.
type Growth struct {
	// Mean ± MeanWithin is the mean coefficient between 20 °C and At: the size of the bore at At
	// is that at 20 °C times 1 + Mean·(At − 20 °C), loose or not.
	Mean       units.Expansion `json:"mean"`
	MeanWithin units.Expansion `json:"mean_within"`
	// Local ± LocalWithin is what a further kelvin adds at At, to the size at 20 °C: that of the
	// composite while the joint grips, about the sleeve's own once it is loose, both in the range
	// where that is undecided.
	Local       units.Expansion `json:"local"`
	LocalWithin units.Expansion `json:"local_within"`

	At       units.Temperature   `json:"at"`
	Grips    uncertainty.Verdict `json:"grips"` // at At
	Cautions Cautions            `json:"cautions,omitzero"`
}

// Growth returns how the bore grows between 20 °C and t, with sleeve and barrel both at t; a zero
// t is 20 °C. The half-widths cover the spread of both coefficients, the range of the outside
// diameter and that of the interference.
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
// Errors are those of [Joint.At].
func (j Joint) Growth(t units.Temperature) (Growth, error) {
	if err := j.checkThermal(); err != nil {
		return Growth{}, err
	}
	dT, err := above("joint", t)
	if err != nil {
		return Growth{}, err
	}
	var g growth
	seat, bore := j.Seat.In(units.Metre), j.Bore.In(units.Metre)
	sleeves, barrels := coefficients(&j.Sleeve), coefficients(&j.Barrel)
	for _, outer := range [2]units.Length{j.Outer.Min, j.Outer.Max} {
		tubes := j.tubes(outer)
		closing := tubes.closing()
		for _, l := range [2]units.Length{j.Interference.Least, j.Interference.Greatest} {
			d := l.In(units.Metre)
			b := boreGrowth{bore: bore, seat: seat, d: d, closing: closing, dT: dT}
			for _, ab := range barrels {
				for _, as := range sleeves {
					g.add(b.at(as, ab))
				}
				// The joint can let go at a coefficient inside the sleeve's spread: there the
				// size has a kink, and a further kelvin adds one thing on either side of it.
				if as := b.kink(ab); as > sleeves[0] && as < sleeves[1] {
					mean, _ := b.at(as, ab)
					g.add(mean, b.own(as))
					g.add(mean, b.tight(as, ab))
				}
			}
		}
	}
	gap, err := j.clearance(growths(&j.Sleeve, dT), growths(&j.Barrel, dT))
	if err != nil {
		return Growth{}, err
	}
	r := Growth{At: kelvins(dT), Grips: verdict(gap.Greatest < 0, gap.Least < 0), Cautions: j.coefficientCaution(t, t)}
	r.Mean, r.MeanWithin = g.mean.expansion()
	r.Local, r.LocalWithin = g.local.expansion()
	if r.Grips != uncertainty.Within {
		r.Cautions |= setOf(CanComeLoose)
	}
	return r, nil
}

// Material returns the joint's bore as a material for the models of a gauge and of warm sizes,
// which ask for nothing but an expansion, its spread and its range: Mean ± MeanWithin between
// 20 °C and At. It has no strength and no stiffness.
func (g Growth) Material() material.Material {
	return material.Material{
		Name:      "bore of a fitted sleeve",
		Expansion: g.Mean,
		Within:    g.MeanWithin,
		From:      min(g.At, units.ReferenceTemperature),
		To:        max(g.At, units.ReferenceTemperature),
		Source:    "computed from both parts (Lamé)",
	}
}

// coefficients returns the ends of a material's coefficient of expansion, in 1/K.
func coefficients(m *material.Material) [2]float64 {
	return [2]float64{float64(m.Expansion - m.Within), float64(m.Expansion + m.Within)}
}

// boreGrowth is a joint of exact sizes at dT kelvins above 20 °C: diameters and the DIAMETRAL
// interference d in metres, and the closing-in of the bore for a unit of interference.
type boreGrowth struct{ bore, seat, d, closing, dT float64 }

// size returns the diameter of the fitted bore at 20 °C.
func (b boreGrowth) size() float64 { return b.bore - float64(b.closing*max(0, b.d)) }

// own and tight return what a kelvin adds to the bore, to its size at 20 °C, by a sleeve that is
// loose and by one that is gripped.
func (b boreGrowth) own(as float64) float64 { return float64(b.bore*as) / b.size() }

func (b boreGrowth) tight(as, ab float64) float64 {
	return (float64(b.bore*as) + float64(b.closing*b.opening(as, ab))) / b.size()
}

// opening returns how much overlap is lost a kelvin.
func (b boreGrowth) opening(as, ab float64) float64 {
	return float64(b.seat*ab) - float64((b.seat+b.d)*as)
}

// at returns the mean coefficient from 20 °C to dT above it, and what a further kelvin adds.
func (b boreGrowth) at(as, ab float64) (mean, local float64) {
	overlap := b.d - float64(b.opening(as, ab)*b.dT)
	local = b.own(as)
	if overlap > 0 {
		local = b.tight(as, ab)
	}
	if before, after := b.d > 0, overlap > 0; before == after {
		return local, local // it neither let go nor gripped on the way
	}
	gone := max(0, b.d) - max(0, overlap)
	return b.own(as) + float64(b.closing*gone)/float64(b.size()*b.dT), local
}

// kink returns the sleeve's coefficient at which the overlap is just gone; not finite at 20 °C.
func (b boreGrowth) kink(ab float64) float64 {
	return (float64(b.seat*ab) - b.d/b.dT) / (b.seat + b.d)
}

// growth collects the coefficients of the corners of the ranges.
type growth struct {
	mean, local span
	some        bool
}

func (g *growth) add(mean, local float64) {
	if !g.some {
		g.some, g.mean, g.local = true, spanOf(mean), spanOf(local)
		return
	}
	g.mean.add(mean)
	g.local.add(local)
}

// expansion returns a span of coefficients as its middle and half-width, to 1e-15/K.
func (s span) expansion() (middle, within units.Expansion) {
	const step = 1e-15
	half := (s.hi - s.lo) / 2
	return units.Expansion(math.Round((s.lo+half)/step) * step), units.Expansion(math.Round(half/step) * step)
}
