// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import "borewright.example/units"

// A Loose is where a joint lets go, as temperatures of the barrel. A temperature of zero
// stands for never: not within reach, from absolute zero to 1000 °C.
type Loose struct {
	// Hot is where the grip goes as the parts get hotter: Min is the first temperature at which
	// it can, over the interference and the spread of both coefficients, Max the first at
	// which it surely has.
	Hot Range[units.Temperature] `json:"hot,omitzero"`
	// Cold is where the grip goes as the parts get colder: Max is the first temperature at
	// which it can, Min the first at which it surely has.
	Cold Range[units.Temperature] `json:"cold,omitzero"`
	// Cautions says so where Hot.Min or Cold.Max, on which the work turns, or
	// what was asked about lies outside what a coefficient is the mean over.
	Cautions Cautions `json:"cautions,omitzero"`
}

// LooseAt returns the temperatures at which the grip goes when both parts get hotter, or colder,
// by the same amount from w: with both at 20 °C, the whole joint at one temperature, as
// in an oven. Of an engine at work give both temperatures; the
// sleeve is the hotter part, and that helps. Gas takes no part. A joint that can be loose at w
// itself answers with the barrel's temperature there, in both directions.
//
// An iron sleeve in an aluminium barrel goes loose hot; a sleeve that grows more than its barrel
// goes loose cold. Of the joint only seat, interference and both expansions take part. Errors are those
// of [Joint.Stresses].
func (j Joint) LooseAt(w Warm) (Loose, error) {
	if err := j.checkHeat(); err != nil {
		return Loose{}, err
	}
	ds, db, err := w.above()
	if err != nil {
		return Loose{}, err
	}
	seat := j.Seat.In(units.Metre)
	sleeves, barrels := coefficients(&j.Sleeve), coefficients(&j.Barrel)
	hot, cold := parting{at: nothing()}, parting{at: nothing()}
	for _, l := range [2]units.Length{j.Interference.Min, j.Interference.Max} {
		d := l.In(units.Metre)
		for _, as := range sleeves {
			grown := float64((seat + d) * as)
			for _, ab := range barrels {
				overlap := d + float64(grown*ds) - float64(seat*float64(ab*db))
				rate := float64(seat*ab) - grown // loss of overlap a kelvin
				hot.add(rate > 0, overlap, rate, db)
				cold.add(rate < 0, overlap, rate, db)
			}
		}
	}
	r := Loose{
		Hot:      Range[units.Temperature]{Min: hot.can(hot.at.lo), Max: hot.surely(hot.at.hi)},
		Cold:     Range[units.Temperature]{Min: cold.surely(cold.at.lo), Max: cold.can(cold.at.hi)},
		Cautions: j.coefficientCaution(w.Sleeve, w.Barrel),
	}
	if first := r.Hot.Min; !first.IsZero() {
		r.Cautions |= j.coefficientCaution(first, first)
	}
	if first := r.Cold.Max; !first.IsZero() {
		r.Cautions |= j.coefficientCaution(first, first)
	}
	return r, nil
}

// A parting collects where the joints of a range part in one direction, in kelvins from 20 °C.
type parting struct {
	at    span // nothing where none parts within reach or has parted
	not   bool // whether some do not part as they move
	grips bool // whether some grip to begin with
}

// add adds a joint that has the overlap (metres) now, with its barrel that far above 20 °C, and
// loses it at the rate (metres a kelvin that the parts get hotter); does says whether that is a
// loss in the parting's direction.
func (p *parting) add(does bool, overlap, rate, barrel float64) {
	at := barrel
	const none = 0.5e-12 // metres: rounds to no overlap
	grips := overlap > none
	if grips && does {
		at += overlap / rate
		t := kelvins(at)
		does = t > 0 && t <= hottest
	}
	p.grips = p.grips || grips
	p.not = p.not || !does
	if grips && !does {
		return
	}
	p.at.add(at)
}

// can returns dT as a temperature, where a joint of the range parts at all.
func (p *parting) can(dT float64) units.Temperature {
	if p.at == nothing() {
		return 0
	}
	return kelvins(dT)
}

// surely returns dT as a temperature, where all joints of the range part. Where one of its corners
// does not, some joint that grips need not either, even if that corner has parted already.
func (p *parting) surely(dT float64) units.Temperature {
	if p.not && p.grips {
		return 0
	}
	return p.can(dT)
}
