// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Condition is what a joint is at: the mean temperature of each part, and the gas in the bore.
// Neither temperature may be left out.
type Condition struct {
	Sleeve units.Temperature `json:"sleeve,omitzero"` // mean over the sleeve
	Barrel units.Temperature `json:"barrel,omitzero"` // mean over the barrel, the fins left out
	Gas    units.Pressure    `json:"gas,omitzero"`    // above the pressure outside, 0 to 100 MPa
}

// A State is what a joint bears. Every range runs over the interference, the coefficients of
// expansion and the outside diameter of the barrel; tension is positive, compression negative.
type State struct {
	// Interference is DIAMETRAL, with which the parts would overlap if each had its size at its
	// temperature alone; negative is a gap. Gas takes no part in it.
	Interference Diametral             `json:"diametral_interference"`
	Pressure     Range[units.Pressure] `json:"pressure"`    // of one part on the other; 0 where loose
	BarrelHoop   Range[units.Pressure] `json:"barrel_hoop"` // hoop stress at the barrel's bore
	SleeveHoop   Range[units.Pressure] `json:"sleeve_hoop"` // hoop stress at the sleeve's bore
	// Hoop stresses at the outsides. They are nearer to 0 than those at the bores, unless gas takes
	// part, and no verdict rests on them.
	BarrelOuterHoop Range[units.Pressure] `json:"barrel_outer_hoop"`
	SleeveOuterHoop Range[units.Pressure] `json:"sleeve_outer_hoop"`

	// Changes of DIAMETER against the parts lying apart at the same temperatures.
	BarrelOpens   Range[units.Length] `json:"barrel_opens"`   // of the barrel's bore
	SleeveShrinks Range[units.Length] `json:"sleeve_shrinks"` // of the sleeve's outside
	BoreCloses    Range[units.Length] `json:"bore_closes"`    // of the sleeve's bore

	Barrel Strength `json:"barrel"` // in tension
	Sleeve Strength `json:"sleeve"` // in compression, unless gas outweighs the grip

	// Grips is Within where even the least interference is above 0, and Beyond, loose, where even
	// the greatest is not.
	Grips    uncertainty.Verdict `json:"grips"`
	Cautions Cautions            `json:"cautions,omitzero"`
}

// Fit returns what the joint bears as fitted: at 20 °C, with no gas. Errors are those of
// [Joint.Validate].
func (j Joint) Fit() (State, error) {
	if err := j.check(); err != nil {
		return State{}, err
	}
	return j.state(j.Interference, 0)
}

// At returns what the joint bears with its parts at the temperatures of c and gas in the bore,
// the parts having their strength and stiffness at 20 °C. Temperatures of parts at work are seldom
// known: take the barrel as hot and the sleeve as cool as they can be, and see [Joint.Loosens].
//
// Beyond the errors of [Joint.Validate], a temperature or a coefficient of expansion that is missing is ErrNotGiven; a
// temperature that is NaN or infinite is [units.ErrNotFinite], one below absolute zero or above 1000 °C
// [units.ErrRange], and so is gas below 0, above 100 MPa or NaN. A temperature outside what a
// coefficient is the mean over is answered, with the caution [CoefficientRange].
func (j Joint) At(c Condition) (State, error) {
	if err := j.checkThermal(); err != nil {
		return State{}, err
	}
	if !(c.Gas >= 0 && c.Gas <= greatestGas) {
		return State{}, fmt.Errorf("sleeve: gas pressure %v: %w (0 to %v)", c.Gas, units.ErrRange, greatestGas)
	}
	ds, err := above("sleeve", c.Sleeve)
	if err != nil {
		return State{}, err
	}
	db, err := above("barrel", c.Barrel)
	if err != nil {
		return State{}, err
	}
	gap, err := j.clearance(growths(&j.Sleeve, ds), growths(&j.Barrel, db))
	if err != nil {
		return State{}, err
	}
	s, err := j.state(Diametral{Least: -gap.Greatest, Greatest: -gap.Least}, float64(c.Gas))
	if err != nil {
		return State{}, err
	}
	s.Cautions |= j.coefficientCaution(c.Sleeve, c.Barrel)
	return s, nil
}

// clearance returns the DIAMETRAL clearance, negative where the parts overlap, of parts grown by
// the factors of the two spans.
func (j *Joint) clearance(sleeve, barrel span) (Range[units.Length], error) {
	seat := j.Seat.In(units.Metre)
	tight := j.Interference.Greatest.In(units.Metre)
	slack := j.Interference.Least.In(units.Metre)
	return span{
		float64(seat*(barrel.lo-sleeve.hi)) - float64(tight*sleeve.hi),
		float64(seat*(barrel.hi-sleeve.lo)) - float64(slack*sleeve.lo),
	}.lengths()
}

// state solves Lamé's equations over the ranges of interference and outside diameter.
//
// A larger outside diameter is a stiffer barrel: it raises the pressure and, the pressure with it,
// lowers the barrel's hoop stress and opening. More interference raises all three, in proportion
// while the parts touch. What the sleeve bears depends on the pressure and the gas alone.
func (j *Joint) state(d Diametral, gas float64) (State, error) {
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	slack, tight := d.Least.In(units.Metre)/2, d.Greatest.In(units.Metre)/2
	slackThin, slackThick := thin.pressure(slack, gas), thick.pressure(slack, gas)
	tightThin, tightThick := thin.pressure(tight, gas), thick.pressure(tight, gas)
	least, greatest := slackThin, tightThick
	inner := &thin // the sleeve is the same in both
	s := State{
		Interference: d,
		Pressure:     span{least, greatest}.pressures(),
		BarrelHoop:   span{thick.barrelHoop(slackThick), thin.barrelHoop(tightThin)}.pressures(),
		SleeveHoop:   span{inner.sleeveHoop(greatest, gas), inner.sleeveHoop(least, gas)}.pressures(),

		BarrelOuterHoop: span{thick.barrelOuterHoop(slackThick), thin.barrelOuterHoop(tightThin)}.pressures(),
		SleeveOuterHoop: span{inner.sleeveOuterHoop(greatest, gas), inner.sleeveOuterHoop(least, gas)}.pressures(),

		Grips: verdict(d.Least > 0, d.Greatest > 0),
	}
	basis := basisOf(&j.Barrel)
	s.Barrel = basis.strength(&j.Barrel,
		min(thin.barrelLoad(basis, slackThin).stress, thick.barrelLoad(basis, slackThick).stress),
		thin.barrelLoad(basis, tightThin).worse(thick.barrelLoad(basis, tightThick)))
	basis = basisOf(&j.Sleeve)
	s.Sleeve = basis.strength(&j.Sleeve,
		inner.sleeveLoad(basis, inner.mildest(least, greatest, gas), gas).stress,
		inner.sleeveLoad(basis, least, gas).worse(inner.sleeveLoad(basis, greatest, gas)))
	if s.Barrel.Basis == ByTensile || s.Sleeve.Basis == ByTensile {
		s.Cautions |= setOf(JudgedAsBrittle)
	}
	if s.Grips != uncertainty.Within {
		s.Cautions |= setOf(CanComeLoose)
	}
	var err error
	for _, q := range [3]struct {
		to *Range[units.Length]
		s  span // radial
	}{
		{&s.BarrelOpens, span{thick.opens(slackThick), thin.opens(tightThin)}},
		{&s.SleeveShrinks, span{inner.shrinks(least, gas), inner.shrinks(greatest, gas)}},
		{&s.BoreCloses, span{inner.closes(least, gas), inner.closes(greatest, gas)}},
	} {
		if *q.to, err = (span{2 * q.s.lo, 2 * q.s.hi}).lengths(); err != nil {
			return State{}, fmt.Errorf("sleeve: change of diameter: %w", err)
		}
	}
	return s, nil
}

// coefficientCaution returns CoefficientRange where a temperature lies outside what a coefficient
// is the mean over.
func (j *Joint) coefficientCaution(sleeve, barrel units.Temperature) Cautions {
	if outside(&j.Sleeve, sleeve) || outside(&j.Barrel, barrel) {
		return setOf(CoefficientRange)
	}
	return 0
}

// A coefficient whose range is not known is taken as good from 0 to 100 °C; one that is said to
// hold from 20 °C up is not cautioned at 15 °C.
const (
	freezing = 273.15
	boiling  = 373.15
)

func outside(m *material.Material, t units.Temperature) bool {
	if t.IsZero() {
		return false
	}
	from, to := units.Temperature(freezing), units.Temperature(boiling)
	if !m.From.IsZero() {
		from = min(from, m.From)
	}
	if !m.To.IsZero() {
		to = m.To
	}
	return t < from || t > to
}
