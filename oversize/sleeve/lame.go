// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import "borewright.example/units"

// tubes are the two parts of a joint with one outside diameter, ready for Lamé's equations.
// Radii are in metres, pressures in pascals; the notation is that of the package comment.
type tubes struct {
	a, c       float64 // radius of the sleeve's bore, of the joint
	ki, ko     float64
	ei, ratioI float64 // Young's modulus and Poisson's ratio of the sleeve
	bi, bo     float64 // what the radius of the joint gives, of sleeve and barrel, per radius and pressure
}

// tubes returns the two parts with the outside diameter outer.
func (j *Joint) tubes(outer units.Length) tubes {
	a, c, b := j.Bore.In(units.Metre)/2, j.Seat.In(units.Metre)/2, outer.In(units.Metre)/2
	t := tubes{
		a: a, c: c,
		ki: thickness(a, c), ko: thickness(c, b),
		ei: float64(j.Sleeve.Young), ratioI: j.Sleeve.Poisson,
	}
	t.bi = (t.ki - t.ratioI) / t.ei
	t.bo = (t.ko + j.Barrel.Poisson) / float64(j.Barrel.Young)
	return t
}

// thickness returns (outer² + inner²)/(outer² − inner²) of a tube, which is 1 for an unbounded one
// and grows without end as the wall gets thin.
func thickness(inner, outer float64) float64 {
	return (float64(outer*outer) + float64(inner*inner)) / float64((outer-inner)*(outer+inner)) // (1)
}

// pressure returns the pressure at the joint for a RADIAL interference and a gas pressure.
func (t *tubes) pressure(radial, gas float64) float64 {
	return max(0, (radial/t.c+float64(gas*(t.ki-1))/t.ei)/(t.bi+t.bo)) // (2)
}

// overlap returns the RADIAL interference that gives a pressure at the joint without gas.
func (t *tubes) overlap(p float64) float64 { return t.c * float64(p*(t.bi+t.bo)) }

// barrelHoop returns the hoop stress at the barrel's bore.
func (t *tubes) barrelHoop(p float64) float64 { return float64(p * t.ko) } // (3)

// sleeveHoop returns the hoop stress at the sleeve's bore.
func (t *tubes) sleeveHoop(p, gas float64) float64 {
	return float64(gas*t.ki) - float64(p*(t.ki+1)) // (4)
}

// barrelOuterHoop returns the hoop stress at the barrel's outside, where no pressure is.
func (t *tubes) barrelOuterHoop(p float64) float64 { return float64(p * (t.ko - 1)) }

// sleeveOuterHoop returns the hoop stress at the sleeve's outside.
func (t *tubes) sleeveOuterHoop(p, gas float64) float64 {
	return float64(gas*(t.ki-1)) - float64(p*t.ki)
}

// opens returns by how much the radius of the barrel's bore grows.
func (t *tubes) opens(p float64) float64 { return t.c * p * t.bo }

// shrinks returns by how much the radius of the sleeve's outside gets smaller.
func (t *tubes) shrinks(p, gas float64) float64 {
	return t.c * (float64(p*t.bi) - float64(gas*(t.ki-1))/t.ei)
}

// closes returns by how much the radius of the sleeve's bore gets smaller.
func (t *tubes) closes(p, gas float64) float64 {
	return t.a / t.ei * (float64(p*(t.ki+1)) - float64(gas*(t.ki+t.ratioI))) // (5), radial
}

// closing returns how much the sleeve's bore closes in for a unit of interference, both radial or
// both diametral.
func (t *tubes) closing() float64 {
	return t.a / t.ei * (t.ki + 1) / (t.c * (t.bi + t.bo))
}
