// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"errors"
	"slices"

	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Sleeve is the sleeve to be fitted where no size on offer serves. Interference is DIAMETRAL, never
// radial: the outside diameter of the sleeve less the bore of the barrel.
type Sleeve struct {
	Bore     units.Length `json:"bore" needs:"the inside of the sleeve" want:"wide"`  // inside diameter of the sleeve before it is fitted
	Seat     units.Length `json:"seat" needs:"the diameter bored for it" want:"wide"` // diameter bored in the barrel for it
	Outer    units.Limits `json:"outer" needs:"the outside of the barrel, roots of the fins to their tips" want:"window"`
	Material Metal        `json:"material,omitzero" want:"metal"` // left out, grey iron
	// One of the two: the DIAMETRAL interference, or the ISO 286 classes that give it.
	Interference units.Limits `json:"interference,omitzero" want:"window,small" usual:"interference"`
	Hole         sleeve.Class `json:"hole,omitzero"`                           // of the seat, "H7"
	Shaft        sleeve.Class `json:"shaft,omitzero"`                          // of the outside of the sleeve, "s6"
	Slip         units.Length `json:"slip,omitzero" want:"small" usual:"slip"` // DIAMETRAL, while it goes in; left out, 0.05 mm
	Finish       units.Length `json:"finish,omitzero" want:"near"`             // to hone to; left out, the size that the cylinder is going to have
}

// A SleeveSheet is the fit of the sleeve, cold and hot.
type SleeveSheet struct {
	Joint sleeve.Joint `json:"joint"` // the parts, apart, at 20 °C
	// Bored is what the fitted sleeve is bored to before it is honed; zero where what is to come out is no more than
	// the honing allowance, or the job does not say that.
	Bored units.Length `json:"bored,omitzero"`
	// Seat and Shaft are the limits that the classes give the seat and the outside of the sleeve; zero
	// where the interference was given.
	Seat  units.Limits    `json:"seat,omitzero"`
	Shaft units.Limits    `json:"shaft,omitzero"`
	Fit   sleeve.Stresses `json:"fit"`  // at 20 °C
	Heat  sleeve.Assembly `json:"heat"` // the barrel alone heated
	Hone  sleeve.Honing   `json:"hone"` // of the fitted bore
	// Honed is the joint once it is bored and honed to size, at 20 °C: a thinner sleeve presses less and is mostly strained more.
	Honed sleeve.Stresses `json:"honed"`
	// Running is the joint honed, at the running temperature of the bore; nil where the job does not give that.
	Running *sleeve.Stresses `json:"running,omitempty"`
	// Holding is the DIAMETRAL interference, to a micrometre, with which both parts stand the stress at 20 °C and the joint
	// just grips at the running temperature: crossed, Min above Max, where none does both; nil where that temperature
	// or a strength is not known.
	Holding *sleeve.Diametral `json:"holding,omitempty"`
	Loosens sleeve.Loose      `json:"loosens"` // honed, heated evenly from 20 °C
	// Press is the force that would press it home at 20 °C over the length of the bore; zero where that is not given.
	Press sleeve.Range[units.Force] `json:"press,omitzero"`
}

// usualSlip lets a sleeve held in the hand drop home before it warms through (common practice).
const usualSlip = 50 * units.Micrometre

// sleeved works out the fit of the sleeve where a cylinder is routed to one, and each seat; why says what stands
// against having a fit at all.
func sleeved(g given, read []readBore, choice oversize.Choice) (fit *SleeveSheet, seats []seat, why error, err error) {
	seats = make([]seat, len(read))
	i := slices.IndexFunc(choice.Cylinders, func(c oversize.CylinderChoice) bool { return c.Route == oversize.Sleeve })
	if i < 0 {
		return nil, seats, nil, nil
	}
	if g.Engine.Sleeve == (Sleeve{}) {
		return nil, seats, errNoSleeve, nil
	}
	joint, err := g.sleeve(choice.Cylinders[i].Aim)
	if err != nil {
		return nil, seats, err, nil
	}
	if h := g.Engine.HoningAllowance; h != 0 && joint.Hone.Stock.Max > h {
		joint.Bored = g.Units.in().BoringStop(choice.Cylinders[i].Aim-h, 0)
	}
	for i := range choice.Cylinders {
		if choice.Cylinders[i].Route == oversize.Sleeve {
			if seats[i], err = g.seat(i, read[i]); err != nil {
				return nil, nil, nil, fault("engine.sleeve.seat", err)
			}
		}
	}
	return &joint, seats, nil, nil
}

var errNoSleeve = errors.New("give engine.sleeve: bore, seat, outer, and interference or hole and shaft")

// A seat is the seat of a sleeve held against the worn bore that it is cut in and the wall round it; zero
// where there is none, or the wall is not measured.
type seat struct {
	cleansUp uncertainty.Finding
	wall     uncertainty.Finding
}

func (g given) seat(i int, read readBore) (s seat, err error) {
	given, v := g.Cylinders[i], g.Engine.Sleeve
	s.cleansUp = finding("clean-up of the seat", read.cleanUp.Original.Max, units.Limits{Max: v.Seat}, g.risk.survey)
	least := g.Engine.Limits.LeastWall
	if least == 0 || given.ThinnestWall.isZero() {
		return s, nil
	}
	left, err := oversize.WallLeft(given.ThinnestWall.estimate(byCalliper), read.bore.Smallest.Size, v.Seat, 0)
	s.wall = finding("wall left around the seat", left, units.Limits{Min: least}, g.risk.survey)
	return s, err
}

// sleeve works out the job's sleeve through package sleeve.
func (g given) sleeve(finish units.Length) (SleeveSheet, error) {
	e, v := g.Engine, g.Engine.Sleeve
	inside, barrel := v.Material.or(material.GreyIron()), e.Material.or(material.GreyIron())
	if e.Wall == oversize.IronSleeve {
		barrel = e.Barrel.or(material.AluminiumBlock())
	}
	tight := sleeve.Diametral{Min: v.Interference.Min, Max: v.Interference.Max}
	var s SleeveSheet
	var err error
	if v.Interference.IsZero() {
		var hole, shaft error
		tight, err = sleeve.DiametralFromClasses(v.Seat, v.Hole, v.Shaft)
		s.Seat, hole = v.Hole.Sizes(v.Seat)
		s.Shaft, shaft = v.Shaft.Sizes(v.Seat)
		if err = cmp.Or(err, hole, shaft); err != nil {
			return SleeveSheet{}, err
		}
	}
	s.Joint = sleeve.Joint{Bore: v.Bore, Seat: v.Seat, Outer: v.Outer, Interference: tight, Sleeve: inside, Barrel: barrel}
	var fit, heat, press, hone error
	s.Fit, fit = s.Joint.Fit()
	s.Heat, heat = s.Joint.HeatTo(sleeve.Assembling{Slip: cmp.Or(v.Slip, usualSlip), Sleeve: units.ReferenceTemperature})
	if e.Layout.Length != 0 {
		friction := sleeve.Range[float64]{Min: 0.05, Max: 0.3} // oiled at the least, dry at the most (common practice)
		s.Press, press = s.Joint.Press(e.Layout.Length, friction)
	}
	s.Hone, hone = s.Joint.Hone(finish)
	if err = cmp.Or(fit, heat, press, hone); err != nil {
		return s, err
	}
	if s.Honed, err = s.Hone.Joint.Fit(); err != nil {
		return s, err
	}
	if at := g.atWork.Bore; !at.IsZero() {
		// At the ends of what the temperature may be, the one that grips less.
		for _, t := range []units.Temperature{at.Value.Add(-at.Within), at.Value.Add(at.Within)} {
			state, err := s.Hone.Joint.Stresses(sleeve.Warm{Sleeve: t, Barrel: t})
			if err != nil {
				return s, err
			}
			if s.Running == nil || state.Pressure.Min < s.Running.Pressure.Min {
				s.Running = &state
			}
		}
		if holding, known, err := s.Joint.Holding(s.Hone.Joint, at.Value.Add(-at.Within), at.Value.Add(at.Within)); err != nil {
			return s, err
		} else if known {
			s.Holding = &holding
		}
	}
	s.Loosens, err = s.Hone.Joint.LooseAt(sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature}) // heated evenly from 20 °C
	return s, err
}
