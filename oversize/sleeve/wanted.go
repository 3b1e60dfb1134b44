// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
)

// GreatestInterference returns the DIAMETRAL interference at which, at 20 °C and without gas, the hoop stress at
// the barrel's bore reaches the one allowed, in tension, or that at the sleeve's bore the other, in compression, as a
// magnitude; whichever comes first. Zero is not asked. It counts with the end of j.Outer that bears more,
// and ignores j.Interference. What is allowed is a fraction of the strength: for the margins that [Joint.Fit]
// wants see [Strength].
//
// No stress at all is units.ErrNotGiven, one that is negative, not finite or beyond 10 GPa units.ErrRange; the other
// errors are those of [Joint.Fit].
func (j Joint) GreatestInterference(barrel, sleeve units.Pressure) (units.Length, error) {
	if barrel == 0 && sleeve == 0 {
		return 0, fmt.Errorf("sleeve: hoop stress allowed: %w", units.ErrNotGiven)
	}
	for _, s := range [...]units.Pressure{barrel, sleeve} {
		if !(s >= 0 && s <= greatestStress) {
			return 0, fmt.Errorf("sleeve: hoop stress allowed, %v: %w (0 to %v)", s, units.ErrRange, greatestStress)
		}
	}
	j.Interference = Diametral{Min: 1, Max: 1} // any that check takes
	if err := j.check(); err != nil {
		return 0, err
	}
	thin, thick := j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)
	most := nothing()
	if barrel > 0 {
		most.add(thin.overlap(float64(barrel) / thin.ko))
	}
	if sleeve > 0 {
		most.add(thick.overlap(float64(sleeve) / (thick.ki + 1)))
	}
	return units.Of(2*most.lo, units.Metre)
}

// LeastInterference returns the DIAMETRAL interference at 20 °C that leaves a pressure at the joint, the grip, when
// sleeve and barrel are at their temperatures, without gas: over the spread of both coefficients of expansion, with
// the end of j.Outer that grips less, and ignoring j.Interference. A temperature that is not given is units.ErrNotGiven. It may
// be negative, a clearance, where the sleeve grows so much more than the barrel.
//
// A grip of zero or less, or one that is not finite or beyond 10 GPa, is [units.ErrRange]; the other errors are those of
// [Joint.Stresses].
func (j Joint) LeastInterference(grip units.Pressure, sleeve, barrel units.Temperature) (units.Length, error) {
	if !(grip > 0 && grip <= greatestStress) {
		return 0, fmt.Errorf("sleeve: pressure wanted at the joint, %v: %w (above 0, up to %v)", grip, units.ErrRange, greatestStress)
	}
	j.Interference = Diametral{Min: 1, Max: 1} // any that check takes
	if err := j.checkThermal(); err != nil {
		return 0, err
	}
	ds, db, err := Warm{Sleeve: sleeve, Barrel: barrel}.above()
	if err != nil {
		return 0, err
	}
	thin := j.tubes(j.Outer.Min)
	small := growths(&j.Sleeve, ds).lo
	seat := j.Seat.In(units.Metre)
	// (seat + δ)·small − seat·grown = 2·overlap
	grown := growths(&j.Barrel, db).hi
	return units.Of((2*thin.overlap(float64(grip))+float64(seat*(grown-small)))/small, units.Metre)
}

// Weaker returns, of two states of a joint, the strength of either part where it has less to spare.
func Weaker(a, b Stresses) (barrel, sleeve Strength) {
	barrel, sleeve = a.Barrel, a.Sleeve
	if b.Barrel.Margin.Min < barrel.Margin.Min {
		barrel = b.Barrel
	}
	if b.Sleeve.Margin.Min < sleeve.Margin.Min {
		sleeve = b.Sleeve
	}
	return barrel, sleeve
}

// Holding returns the DIAMETRAL interference, to a micrometre, with which both parts have the margins that [Joint.Fit]
// wants, as fitted and once honed ([Honing.Joint]), and the honed joint just grips with sleeve and barrel at either of two
// temperatures. It is crossed, Min above Max, where none does both; known is false where the strength of a part is not known. Of
// a j.Interference so small that a margin is said to be 1000 less is returned than holds. The errors are those of Fit and of [Joint.LeastInterference].
func (j Joint) Holding(honed Joint, coldest, hottest units.Temperature) (d Diametral, known bool, err error) {
	fitted, err := j.Fit()
	if err != nil {
		return Diametral{}, false, err
	}
	thinner, err := honed.Fit()
	if err != nil {
		return Diametral{}, false, err
	}
	barrel, sleeve := Weaker(fitted, thinner)
	if barrel.Wanted == 0 || sleeve.Wanted == 0 {
		return Diametral{}, false, nil
	}
	// Without gas, at 20 °C, every stress is in proportion to the interference.
	share := min(barrel.Margin.Min/barrel.Wanted, sleeve.Margin.Min/sleeve.Wanted)
	most, err := units.Of(share*j.Interference.Max.In(units.Millimetre), units.Millimetre)
	if err != nil {
		return Diametral{}, false, err
	}
	const any = 1 * units.Pascal // of grip: the pressure itself is nobody's figure
	for i, t := range [...]units.Temperature{coldest, hottest} {
		least, err := honed.LeastInterference(any, t, t)
		if err != nil {
			return Diametral{}, false, err
		}
		if least = least.Ceil(units.Micrometre); i == 0 || least > d.Min {
			d.Min = least
		}
	}
	d.Max = most.Floor(units.Micrometre)
	return d, true, nil
}
