// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// An Assembling is how the parts are to go together. A temperature that the question asked needs may not
// be left out.
type Assembling struct {
	// Slip is the DIAMETRAL clearance wanted while the sleeve goes in, from 0 to a hundredth of
	// the seat. 0.05 mm and more lets a hand-held sleeve drop home before it warms through
	// (common practice).
	Slip   units.Length      `json:"diametral_slip"`
	Sleeve units.Temperature `json:"sleeve,omitzero"` // of the sleeve as it goes in
	Barrel units.Temperature `json:"barrel,omitzero"` // of the barrel as the sleeve goes in
	// Stands is the greatest temperature that either part may have. Zero is 200 °C, common
	// practice for an hour in the oven of an aged aluminium casting; iron stands more. The
	// maker's figure wins.
	Stands units.Temperature `json:"stands,omitzero"`
}

// usualStands is what Assembling.Stands of zero is: 200 °C.
const usualStands = 473.15

// coldest is the temperature of boiling nitrogen at atmospheric pressure, in kelvins (NIST, from
// memory). A workshop has nothing colder.
const coldest = 77.36

// An Assembly is the temperatures at which the parts go together, and what clearance they have
// then.
type Assembly struct {
	Sleeve units.Temperature `json:"sleeve"` // of the sleeve, right through, as it goes in
	Barrel units.Temperature `json:"barrel"` // of the barrel, right through
	// Clearance is DIAMETRAL, over the interference and the spread of both coefficients of
	// expansion; negative where the parts overlap.
	Clearance Range[units.Length] `json:"diametral_clearance"`
	// Slips is Within where even the least clearance is at least the slip wanted, and Beyond
	// where even the greatest is not.
	Slips    uncertainty.Verdict `json:"slips"`
	Cautions Cautions            `json:"cautions,omitzero"`
}

// assembling is a checked Assembling in kelvins from 20 °C and metres.
type assembling struct {
	sleeve, barrel float64
	slip           float64
	seat, tight    float64 // seat, greatest interference
}

// assembling checks a question of heat alone; the parts' temperatures it leaves to who asks.
func (j *Joint) assembling(a Assembling) (assembling, error) {
	var r assembling
	if err := j.checkHeat(); err != nil {
		return r, err
	}
	if most := j.Seat / greatestStrain; a.Slip < 0 || a.Slip > most {
		return r, fmt.Errorf("sleeve: DIAMETRAL slip %v: %w (0 to %v)", a.Slip, units.ErrRange, most)
	}
	if !a.Stands.IsZero() {
		if _, err := above("part's limit", a.Stands); err != nil {
			return r, err
		}
	}
	r.slip = a.Slip.In(units.Metre)
	r.seat = j.Seat.In(units.Metre)
	r.tight = j.Interference.Max.In(units.Metre)
	return r, nil
}

// HeatTo returns the temperature to which the barrel must be heated, right through, for the
// sleeve at a.Sleeve to go in with a.Slip to spare. It ignores a.Barrel.
//
// It serves the worst pair of parts: the greatest interference, and both coefficients at the
// unlucky ends of their spread. A sleeve so cold that it slips without any heat leaves the barrel
// at 20 °C. Of the joint only seat, interference and both expansions take part, and the modulus where it
// is given: without it the barrel is cautioned as if it were aluminium.
//
// A sleeve of no temperature is units.ErrNotGiven. Hotter than a.Stands is ErrTooHot; a sleeve colder than liquid
// nitrogen (−195.8 °C, above absolute zero) is ErrUnreachable. A slip below 0 or above a hundredth of the seat is
// [units.ErrRange]; the other errors are those of [Joint.Stresses].
func (j Joint) HeatTo(a Assembling) (Assembly, error) {
	r, err := j.assembling(a)
	if err == nil {
		r.sleeve, err = above("sleeve", a.Sleeve)
	}
	if err != nil {
		return Assembly{}, err
	}
	sleeve := growths(&j.Sleeve, r.sleeve).hi
	need := float64(r.seat*(sleeve-1)) + float64(r.tight*sleeve) + r.slip
	r.barrel = max(0, need/float64(r.seat*float64(j.Barrel.Expansion-j.Barrel.Within)))
	return j.assembly(a, r)
}

// ChillTo returns the temperature to which the sleeve must be chilled, right through, to go
// into the barrel at a.Barrel with a.Slip to spare. It ignores a.Sleeve.
//
// It serves the worst pair of parts, as [Joint.HeatTo] does; a barrel so hot that the sleeve
// slips in unchilled leaves it at 20 °C. Colder than liquid nitrogen (−195.8 °C), let alone than absolute zero,
// is ErrUnreachable; a barrel hotter than a.Stands is ErrTooHot; the other errors are those of
// HeatTo.
func (j Joint) ChillTo(a Assembling) (Assembly, error) {
	r, err := j.assembling(a)
	if err == nil {
		r.barrel, err = above("barrel", a.Barrel)
	}
	if err != nil {
		return Assembly{}, err
	}
	barrel := growths(&j.Barrel, r.barrel).lo
	need := float64(r.seat*(barrel-1)) - r.tight - r.slip // what the sleeve may grow
	r.sleeve = min(0, need/float64((r.seat+r.tight)*float64(j.Sleeve.Expansion-j.Sleeve.Within)))
	return j.assembly(a, r)
}

// TakeOut returns the temperature at which the two parts, both at it, slip with a.Slip to spare:
// hot where the barrel grows more than the sleeve, as aluminium does over iron, cold where it
// grows less. It is how a sleeve is got out again. It ignores a.Sleeve and a.Barrel.
//
// It serves the worst pair of parts, as [Joint.HeatTo] does. Where the coefficients, or the
// unlucky ends of their spread, are too close for any temperature between that of liquid nitrogen
// and 1000 °C to do it, it is ErrUnreachable; the other errors are those of HeatTo.
func (j Joint) TakeOut(a Assembling) (Assembly, error) {
	r, err := j.assembling(a)
	if err != nil {
		return Assembly{}, err
	}
	whole := r.seat + r.tight
	rate := func(within float64) float64 { // growth of the clearance a kelvin
		return float64(r.seat*(float64(j.Barrel.Expansion)-float64(within*float64(j.Barrel.Within)))) -
			float64(whole*(float64(j.Sleeve.Expansion)+float64(within*float64(j.Sleeve.Within))))
	}
	need := r.tight + r.slip
	var dT float64
	switch hot, cold := rate(1), rate(-1); {
	case hot > 0:
		dT = need / hot
	case cold < 0:
		dT = need / cold
	default:
		return Assembly{}, fmt.Errorf("sleeve: %v ± %v in %v ± %v: %w: the coefficients are too close for one temperature to part them",
			j.Sleeve.Expansion, j.Sleeve.Within, j.Barrel.Expansion, j.Barrel.Within, ErrUnreachable)
	}
	r.sleeve, r.barrel = dT, dT
	return j.assembly(a, r)
}

// assembly checks the temperatures of r and says what clearance they give.
func (j *Joint) assembly(a Assembling, r assembling) (Assembly, error) {
	stands := a.Stands
	if stands.IsZero() {
		stands = usualStands
	}
	s := Assembly{Sleeve: kelvins(r.sleeve), Barrel: kelvins(r.barrel)}
	for _, p := range [2]struct {
		name string
		t    units.Temperature
	}{{"sleeve", s.Sleeve}, {"barrel", s.Barrel}} {
		switch {
		case p.t <= 0:
			return Assembly{}, fmt.Errorf("sleeve: the %s would have to be %.1f K colder than 20 °C, below absolute zero: %w",
				p.name, float64(units.ReferenceTemperature-p.t), ErrUnreachable)
		case p.t < coldest:
			return Assembly{}, fmt.Errorf("sleeve: the %s at %.1f °C: %w: colder than liquid nitrogen", p.name, p.t.Celsius(), ErrUnreachable)
		case p.t > hottest:
			return Assembly{}, fmt.Errorf("sleeve: the %s at %.1f °C: %w: hotter than any joint stands", p.name, p.t.Celsius(), ErrUnreachable)
		case p.t > stands:
			return Assembly{}, fmt.Errorf("sleeve: the %s at %.1f °C: %w (%v)", p.name, p.t.Celsius(), ErrTooHot, stands)
		}
	}
	gap, err := j.clearance(growths(&j.Sleeve, r.sleeve), growths(&j.Barrel, r.barrel))
	if err != nil {
		return Assembly{}, err
	}
	// The clearance at a temperature that was solved for can miss its slip by a rounding.
	s.Clearance = gap
	s.Slips = verdict(gap.Min >= a.Slip-rounding, gap.Max >= a.Slip-rounding)
	s.Cautions = setOf(stopsHalfWay) | j.coefficientCaution(s.Sleeve, s.Barrel)
	if max(s.Sleeve, s.Barrel) > handHot {
		s.Cautions |= setOf(evenHeat, nothingTrapped, hotParts, noFlame)
	}
	if s.Barrel > handHot && aluminium(&j.Barrel) || s.Sleeve > handHot && aluminium(&j.Sleeve) {
		s.Cautions |= setOf(temperLost)
	}
	if min(s.Sleeve, s.Barrel) < freezing {
		s.Cautions |= setOf(coldParts, ventilate)
	}
	return s, nil
}

const (
	rounding = units.Picometre
	// handHot is 45 °C, above which a part is cautioned as hot: a little above what skin bears
	// for long (common practice).
	handHot = 318.15
)

// aluminium reports whether a metal is as soft as alloys of aluminium are, 71 to 81 GPa, and no iron, steel or
// bronze is.
func aluminium(m *material.Material) bool { return m.Young < 90*units.Gigapascal }

// kelvins returns 20 °C + dT, rounded to 1e-9 K so that every machine decides alike.
func kelvins(dT float64) units.Temperature {
	return units.ReferenceTemperature.Add(units.TemperatureChange(math.Round(dT*1e9) / 1e9))
}
