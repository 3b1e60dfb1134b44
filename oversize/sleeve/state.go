// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Condition is what a joint is at: the mean temperature of each part, and the gas in the bore.
// A temperature of zero is 20 °C.
type Condition struct {
	Sleeve units.Temperature `json:"sleeve,omitzero"`
	Barrel units.Temperature `json:"barrel,omitzero"`
	Gas    units.Pressure    `json:"gas,omitzero"` // above the pressure outside, 0 to 100 MPa
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

	// Changes of DIAMETER against the parts lying apart at the same temperatures.
	BarrelOpens   Range[units.Length] `json:"barrel_opens"`   // of the barrel's bore
	SleeveShrinks Range[units.Length] `json:"sleeve_shrinks"` // of the sleeve's outside
	BoreCloses    Range[units.Length] `json:"bore_closes"`    // of the sleeve's bore

	Barrel Strength `json:"barrel"`
	Sleeve Strength `json:"sleeve"`

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
// Beyond the errors of [Joint.Validate], a coefficient of expansion that is missing is ErrNotGiven
// and one that is negative, above 1e-4/K or no larger than its spread ErrMaterial; a temperature
// that is NaN or infinite is [units.ErrNotFinite], one below absolute zero or above 1000 °C
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

// state solves Lamé's equations at the four corners of interference and outside diameter. Each
// quantity is monotone in the interference, being linear while the parts touch, and in the
// outside diameter, through which all depend on (b² + c²)/(b² − c²) as a ratio of two linear
// functions: their extremes lie at corners.
func (j *Joint) state(d Diametral, gas float64) (State, error) {
	var (
		pressure, barrelHoop, sleeveHoop, opens, shrinks, closes span
		barrel, sleeve                                           load
	)
	judgeBarrel, judgeSleeve := basisOf(&j.Barrel), basisOf(&j.Sleeve)
	tubes := [2]tubes{j.tubes(j.Outer.Min), j.tubes(j.Outer.Max)}
	first := true
	for i := range tubes {
		t := &tubes[i]
		for _, l := range [2]units.Length{d.Least, d.Greatest} {
			p := t.pressure(l.In(units.Metre)/2, gas)
			bh, sh := t.barrelHoop(p), t.sleeveHoop(p, gas)
			bo, sc, ac := 2*t.opens(p), 2*t.shrinks(p, gas), 2*t.closes(p, gas)
			lb := judgeBarrel.load(bh, -p)
			ls := judgeSleeve.load(sh, -gas).worse(judgeSleeve.load(t.sleeveOuterHoop(p, gas), -p))
			if first {
				first = false
				pressure, barrelHoop, sleeveHoop = spanOf(p), spanOf(bh), spanOf(sh)
				opens, shrinks, closes = spanOf(bo), spanOf(sc), spanOf(ac)
				barrel, sleeve = lb, ls
				continue
			}
			pressure.add(p)
			barrelHoop.add(bh)
			sleeveHoop.add(sh)
			opens.add(bo)
			shrinks.add(sc)
			closes.add(ac)
			barrel.add(lb)
			sleeve.add(ls)
		}
	}
	s := State{
		Interference: d,
		Pressure:     pressure.pressures(),
		BarrelHoop:   barrelHoop.pressures(),
		SleeveHoop:   sleeveHoop.pressures(),
		Barrel:       judgeBarrel.strength(&j.Barrel, barrel),
		Sleeve:       judgeSleeve.strength(&j.Sleeve, sleeve),
		Grips:        verdict(d.Least > 0, d.Greatest > 0),
	}
	if judgeBarrel == ByTensile || judgeSleeve == ByTensile {
		s.Cautions |= setOf(JudgedAsBrittle)
	}
	if s.Grips != uncertainty.Within {
		s.Cautions |= setOf(CanComeLoose)
	}
	var err error
	for _, q := range [3]struct {
		to *Range[units.Length]
		s  span
	}{{&s.BarrelOpens, opens}, {&s.SleeveShrinks, shrinks}, {&s.BoreCloses, closes}} {
		if *q.to, err = q.s.lengths(); err != nil {
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
