// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Warm is how warm the parts of a joint are, each a mean, and the gas in the bore.
// Neither temperature may be left out.
type Warm struct {
	Sleeve units.Temperature `json:"sleeve,omitzero"` // mean over the sleeve
	Barrel units.Temperature `json:"barrel,omitzero"` // mean over the barrel, the fins left out
	Gas    units.Pressure    `json:"gas,omitzero"`    // above the pressure outside, 0 to 100 MPa
}

// above returns how far sleeve and barrel are above 20 °C, in kelvins, each given and within reach.
func (w Warm) above() (sleeve, barrel float64, err error) {
	if sleeve, err = above("sleeve", w.Sleeve); err == nil {
		barrel, err = above("barrel", w.Barrel)
	}
	return sleeve, barrel, err
}

// Stresses are what a joint bears. Every range runs over the interference, the coefficients of
// expansion and the outside diameter of the barrel; tension is positive, compression negative.
type Stresses struct {
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

// Fit returns what the joint bears as fitted: at 20 °C, with no gas. It is an error where the joint cannot be:
//
//   - a size that is missing is units.ErrNotGiven, one that is negative or beyond [units.MaxLength]
//     [units.ErrRange]; an outside with one end missing units.ErrNotGiven, crossed [units.ErrCrossed];
//   - a bore that is not smaller than the seat, or a seat not smaller than the outside, is units.ErrRange;
//   - an interference of zero at both ends is units.ErrNotGiven; one whose greater end is zero or
//     negative, or of which an end is beyond a hundredth of the seat, units.ErrRange, one whose ends are
//     crossed [units.ErrCrossed];
//   - a Young's modulus that is missing is units.ErrNotGiven; outside 1 to 1000 GPa, a Poisson's ratio
//     below 0 or above 0.5, a strength below 0 or above 10 GPa, a coefficient of expansion below
//     0 or above 1e-4/K and one no larger than its spread are units.ErrRange, and so is a NaN;
//   - a range of the coefficient that is no temperature has the errors of
//     [units.Temperature.Validate].
//
// An interference whose lesser end is negative is a transition fit, and is taken: it can be loose.
func (j Joint) Fit() (Stresses, error) {
	if err := j.check(); err != nil {
		return Stresses{}, err
	}
	return j.stresses(j.Interference, 0)
}

// Stresses returns what the joint bears with its parts at the temperatures of w and gas in the bore,
// the parts having their strength and stiffness at 20 °C. Temperatures of parts at work are seldom
// known: take the barrel as hot and the sleeve as cool as they can be, and see [Joint.LooseAt].
//
// Beyond the errors of [Joint.Fit], a temperature or a coefficient of expansion that is missing is units.ErrNotGiven; a
// temperature that is NaN or infinite is [units.ErrNotFinite], one below absolute zero or above 1000 °C
// [units.ErrRange], and so is gas below 0, above 100 MPa or NaN. A temperature outside what a
// coefficient is the mean over is answered, with a caution.
func (j Joint) Stresses(w Warm) (Stresses, error) {
	if err := j.checkThermal(); err != nil {
		return Stresses{}, err
	}
	if !(w.Gas >= 0 && w.Gas <= greatestGas) {
		return Stresses{}, fmt.Errorf("sleeve: gas pressure %v: %w (0 to %v)", w.Gas, units.ErrRange, greatestGas)
	}
	ds, db, err := w.above()
	if err != nil {
		return Stresses{}, err
	}
	gap, err := j.clearance(growths(&j.Sleeve, ds), growths(&j.Barrel, db))
	if err != nil {
		return Stresses{}, err
	}
	s, err := j.stresses(Diametral{Min: -gap.Max, Max: -gap.Min}, float64(w.Gas))
	if err != nil {
		return Stresses{}, err
	}
	s.Cautions |= j.coefficientCaution(w.Sleeve, w.Barrel)
	return s, nil
}

// clearance returns the DIAMETRAL clearance, negative where the parts overlap, of parts grown by
// the factors of the two spans.
func (j *Joint) clearance(sleeve, barrel span) (Range[units.Length], error) {
	seat := j.Seat.In(units.Metre)
	tight := j.Interference.Max.In(units.Metre)
	slack := j.Interference.Min.In(units.Metre)
	return span{
		float64(seat*(barrel.lo-sleeve.hi)) - float64(tight*sleeve.hi), // (6), with the other sign
		float64(seat*(barrel.hi-sleeve.lo)) - float64(slack*sleeve.lo),
	}.lengths()
}

// stresses solves Lamé's equations over the ranges of interference and outside diameter.
//
// A larger outside diameter is a stiffer barrel: it raises the pressure and, the pressure with it,
// lowers the barrel's hoop stress and opening. More interference raises all three, in proportion
// while the parts touch. What the sleeve bears depends on the pressure and the gas alone.
func (j *Joint) stresses(d Diametral, gas float64) (Stresses, error) {
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	slack, tight := d.Min.In(units.Metre)/2, d.Max.In(units.Metre)/2
	slackThin, slackThick := thin.pressure(slack, gas), thick.pressure(slack, gas)
	tightThin, tightThick := thin.pressure(tight, gas), thick.pressure(tight, gas)
	least, greatest := slackThin, tightThick
	inner := &thin // the sleeve is the same in both
	s := Stresses{
		Interference: d,
		Pressure:     span{least, greatest}.pressures(),
		BarrelHoop:   span{thick.barrelHoop(slackThick), thin.barrelHoop(tightThin)}.pressures(),
		SleeveHoop:   span{inner.sleeveHoop(greatest, gas), inner.sleeveHoop(least, gas)}.pressures(),

		BarrelOuterHoop: span{thick.barrelOuterHoop(slackThick), thin.barrelOuterHoop(tightThin)}.pressures(),
		SleeveOuterHoop: span{inner.sleeveOuterHoop(greatest, gas), inner.sleeveOuterHoop(least, gas)}.pressures(),

		Grips: verdict(d.Min > 0, d.Max > 0),
	}
	by := basisOf(&j.Barrel)
	brittle := by == byTensile
	s.Barrel = by.strength(&j.Barrel,
		min(thin.barrelLoad(by, slackThin).stress, thick.barrelLoad(by, slackThick).stress),
		thin.barrelLoad(by, tightThin).worse(thick.barrelLoad(by, tightThick)))
	by = basisOf(&j.Sleeve)
	brittle = brittle || by == byTensile
	s.Sleeve = by.strength(&j.Sleeve,
		inner.sleeveLoad(by, inner.mildest(least, greatest, gas), gas).stress,
		inner.sleeveLoad(by, least, gas).worse(inner.sleeveLoad(by, greatest, gas)))
	if brittle {
		s.Cautions |= setOf(judgedAsBrittle)
	}
	if s.Grips != uncertainty.Within {
		s.Cautions |= setOf(canComeLoose)
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
			return Stresses{}, fmt.Errorf("sleeve: change of diameter: %w", err)
		}
	}
	return s, nil
}

// coefficientCaution returns CoefficientRange where a temperature lies outside what a coefficient
// is the mean over.
func (j *Joint) coefficientCaution(sleeve, barrel units.Temperature) Cautions {
	if outside(&j.Sleeve, sleeve) || outside(&j.Barrel, barrel) {
		return setOf(coefficientRange)
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
