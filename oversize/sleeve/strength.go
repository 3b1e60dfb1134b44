// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A basis is the strength that a part is judged by. A material with a yield strength is ductile and judged by
// it; one with a tensile strength alone is judged as grey iron, which breaks without yielding.
type basis int8

const (
	noBasis   basis = iota // no strength is known: nothing is judged
	byYield                // the greatest difference of two principal stresses (Tresca) against the yield strength
	byTensile              // the greatest hoop stress against the tensile strength
)

var basisNames = [...]string{noBasis: "not known", byYield: "yield", byTensile: "tensile"}

// The margins that a part must have to be Within.
//
// All are common practice: 1.5 is the least of what is asked of a ductile metal under a load that
// is known, 3 of a brittle one in tension. Grey iron bears three to four times its tensile
// strength in compression, so that 1.5 times the tensile strength is 4.5 to 6 in truth: more than the 3 in tension, on
// purpose, since no source was found that asks for less of a sleeve.
const (
	wantedOfYield       = 1.5 // of the yield strength
	wantedInTension     = 3.0 // of the tensile strength, part in tension
	wantedInCompression = 1.5 // of the tensile strength, part in compression
)

// greatestMargin is what a margin of a part that hardly bears anything says.
const greatestMargin = 1000

// A Strength is a part's stress against its strength, where the stress is worst: at the barrel's
// bore and at the sleeve's bore.
//
// The greatest difference of two principal stresses is never below von Mises's equivalent stress
// and at most 15 % above it: safe for every ductile metal.
type Strength struct {
	// Basis is which strength it is judged by: "yield", the greatest difference of two principal stresses (Tresca), of a
	// material that has one; else "tensile", the greatest hoop stress, as grey iron, which breaks without yielding;
	// "not known" where neither is given, and nothing is judged.
	Basis   string                `json:"basis"`
	Limit   units.Pressure        `json:"limit,omitzero"`  // the yield or tensile strength
	Stress  Range[units.Pressure] `json:"stress,omitzero"` // at the mildest and at the worst, as magnitudes
	Tension bool                  `json:"tension"`         // whether the worst is tension; always true by yield
	Margin  Range[float64]        `json:"margin,omitzero"` // Limit over Stress, a pure number, worst and mildest; at most 1000
	Wanted  float64               `json:"wanted,omitzero"` // the Margin.Min to be Within, a ratio: 1.5 of the yield strength; 3 of the tensile strength in tension, 1.5 in compression
	Verdict uncertainty.Verdict   `json:"verdict"`         // Within: worst margin at least Wanted; Beyond: mildest below 1
}

func basisOf(m *material.Material) basis {
	switch {
	case m.Yield > 0:
		return byYield
	case m.Tensile > 0:
		return byTensile
	}
	return noBasis
}

// A load is the stress that a part is judged by, as a magnitude.
type load struct {
	stress  float64
	use     float64 // by tensile strength, stress × margin wanted: what counts where tension and compression meet
	tension bool
}

// load returns the stress to judge by, of a point with a hoop and a radial stress and none along
// the axis.
func (b basis) load(hoop, radial float64) load {
	if b == byTensile {
		m := math.Abs(hoop)
		return load{m, m * wantedOf(b, hoop > 0), hoop > 0}
	}
	m := max(hoop, radial, 0) - min(hoop, radial, 0)
	return load{m, m, true}
}

// worse returns the load that asks more of the part.
func (l load) worse(o load) load {
	if o.use > l.use {
		return o
	}
	return l
}

// barrelLoad returns the load of the barrel, at its bore.
func (t *tubes) barrelLoad(b basis, p float64) load { return b.load(t.barrelHoop(p), -p) }

// sleeveLoad returns the load of the sleeve, at its bore: nowhere in the wall do principal stresses
// differ by more, and the hoop stress is larger elsewhere only where it is below the gas pressure.
func (t *tubes) sleeveLoad(b basis, p, gas float64) load { return b.load(t.sleeveHoop(p, gas), -gas) }

// mildest returns the pressure between least and greatest at which the sleeve bears least: it bears
// more the further its hoop stress is from 0, either way.
func (t *tubes) mildest(least, greatest, gas float64) float64 {
	return max(least, min(gas*t.ki/(t.ki+1), greatest))
}

func wantedOf(b basis, tension bool) float64 {
	switch {
	case b == byYield:
		return wantedOfYield
	case tension:
		return wantedInTension
	}
	return wantedInCompression
}

// strength judges a part by its load at the worst and by its stress at the mildest.
func (b basis) strength(m *material.Material, mildest float64, worst load) Strength {
	if b == noBasis {
		return Strength{Basis: basisNames[b]}
	}
	s := Strength{Basis: basisNames[b], Limit: m.Tensile, Tension: worst.tension, Wanted: wantedOf(b, worst.tension)}
	if b == byYield {
		s.Limit = m.Yield
	}
	s.Stress = Range[units.Pressure]{units.Pressure(mildest), units.Pressure(worst.stress)}
	s.Margin = Range[float64]{margin(s.Limit, worst.stress), margin(s.Limit, mildest)}
	s.Verdict = verdict(s.Margin.Min >= s.Wanted, s.Margin.Max >= 1)
	return s
}

// margin returns limit over stress, rounded to 1e-9 so that every machine decides alike.
func margin(limit units.Pressure, stress float64) float64 {
	if float64(limit) >= greatestMargin*stress {
		return greatestMargin
	}
	return math.Round(float64(limit)/stress*1e9) / 1e9
}
