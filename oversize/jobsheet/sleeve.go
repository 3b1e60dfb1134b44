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
	Bore     units.Length `json:"bore"`              // inside diameter of the sleeve before it is fitted
	Seat     units.Length `json:"seat"`              // diameter bored in the barrel for it
	Outer    units.Limits `json:"outer"`             // outside of the barrel: roots of the fins to their tips
	Material Metal        `json:"material,omitzero"` // left out, grey iron
	// One of the two: the DIAMETRAL interference, or the ISO 286 classes that give it.
	Interference units.Limits `json:"interference,omitzero"`
	Hole         sleeve.Class `json:"hole,omitzero"`   // of the seat, "H7"
	Shaft        sleeve.Class `json:"shaft,omitzero"`  // of the outside of the sleeve, "s6"
	Slip         units.Length `json:"slip,omitzero"`   // DIAMETRAL, while it goes in; left out, 0.05 mm
	Finish       units.Length `json:"finish,omitzero"` // to hone to; left out, the nominal bore
}

// A SleeveSheet is the fit of the sleeve, cold and hot.
type SleeveSheet struct {
	Joint   sleeve.Joint     `json:"joint"`            // the parts, apart, at 20 °C
	Fit     sleeve.State     `json:"fit"`              // at 20 °C
	Heat    sleeve.Assembly  `json:"heat"`             // the barrel alone heated
	Hone    sleeve.Honing    `json:"hone"`             // of the fitted bore
	Running sleeve.State     `json:"running,omitzero"` // honed, at the running temperature of the bore
	Loosens sleeve.Loosening `json:"loosens"`          // honed, heated evenly from 20 °C
	Hot     bool             `json:"hot,omitzero"`     // whether a running temperature was given
}

// usualSlip lets a sleeve held in the hand drop home before it warms through (common practice).
const usualSlip = 50 * units.Micrometre

// sleeves adds the fit of the sleeve where a cylinder is routed to one.
func (s *Sheet) sleeves() error {
	routed := func(c oversize.CylinderChoice) bool { return c.Route == oversize.Sleeve }
	if !slices.ContainsFunc(s.Choice.Cylinders, routed) {
		return nil
	}
	if s.Job.Engine.Sleeve == (Sleeve{}) {
		s.omit("the fit of the sleeve", "give engine.sleeve: bore, seat, outer, and interference or hole and shaft")
		return nil
	}
	fit, err := s.Job.Engine.sleeve()
	if err != nil {
		s.omit("the fit of the sleeve", "%v", err)
		return nil
	}
	s.Sleeve = &fit
	return nil
}

// sleeve works out the job's sleeve through package sleeve.
func (e Engine) sleeve() (SleeveSheet, error) {
	v := e.Sleeve
	inside, _, err := metalOr(v.Material, material.GreyIron(), "the sleeve")
	if err != nil {
		return SleeveSheet{}, err
	}
	around, usual := e.Material, material.GreyIron()
	if e.Wall == oversize.IronSleeve {
		around, usual = e.Barrel, material.AluminiumBlock()
	}
	barrel, _, err := metalOr(around, usual, "the barrel")
	if err != nil {
		return SleeveSheet{}, err
	}
	tight := sleeve.Diametral{Least: v.Interference.Min, Greatest: v.Interference.Max}
	if v.Interference.IsZero() {
		if tight, err = sleeve.DiametralFromClasses(v.Seat, v.Hole, v.Shaft); err != nil {
			return SleeveSheet{}, err
		}
	}
	s := SleeveSheet{Joint: sleeve.Joint{
		Bore: v.Bore, Seat: v.Seat, Outer: v.Outer, Interference: tight, Sleeve: inside, Barrel: barrel,
	}}
	var fit, heat, honing, running, loosens error
	s.Fit, fit = s.Joint.Fit()
	s.Heat, heat = s.Joint.HeatBarrel(sleeve.Assembling{Slip: cmp.Or(v.Slip, usualSlip)})
	s.Hone, honing = s.Joint.Hone(cmp.Or(v.Finish, e.Bore))
	if at := e.Running.Bore.Value; !at.IsZero() {
		s.Hot = true
		s.Running, running = s.Hone.Joint.At(sleeve.Condition{Sleeve: at, Barrel: at})
	}
	s.Loosens, loosens = s.Hone.Joint.Loosens(sleeve.Condition{}) // heated evenly from 20 °C
	return s, errors.Join(fit, heat, honing, running, loosens)
}

// sleeve prints the fit for a person at a bench.
func (s Sheet) sleeve(p *page) {
	v := s.Sleeve
	if v == nil {
		return
	}
	span := func(r sleeve.Range[units.Length]) string {
		return p.show.length(r.Least) + " to " + p.show.length(r.Greatest)
	}
	pressure := func(r sleeve.Range[units.Pressure]) string { return p.show.pressures(r.Least, r.Greatest) }
	p.title("SLEEVE (interference is DIAMETRAL)")
	s.checks(p, Sleeving)
	rows := [][]string{
		{"seat in the barrel", p.show.length(v.Joint.Seat), ""},
		{"interference", span(sleeve.Range[units.Length](v.Joint.Interference)), "outside of the sleeve less the seat, at 20 °C"},
		{"pressure at the joint", pressure(v.Fit.Pressure), "at 20 °C"},
		{"hoop stress, barrel", pressure(v.Fit.BarrelHoop), "against its strength: " + v.Fit.Barrel.Verdict.String()},
		{"hoop stress, sleeve", pressure(v.Fit.SleeveHoop), "against its strength: " + v.Fit.Sleeve.Verdict.String()},
		{"bore once fitted", span(v.Hone.Fitted), "it closes in by " + span(v.Fit.BoreCloses)},
		{"to hone out", span(v.Hone.Stock), "cleans up: " + v.Hone.CleansUp.String()},
		{"heat the barrel to", p.show.temperature(v.Heat.Barrel), "slips home: " + v.Heat.Slips.String()},
	}
	if v.Hot {
		rows = append(rows, []string{"pressure when running", pressure(v.Running.Pressure), "0 is loose"})
	}
	if hot := v.Loosens.Hot; !hot.Least.IsZero() { // zero is never
		text := "from " + p.show.temperature(hot.Least)
		if !hot.Greatest.IsZero() {
			text += ", surely by " + p.show.temperature(hot.Greatest)
		}
		rows = append(rows, []string{"can come loose", text, "sleeve and barrel at one temperature"})
	}
	p.table(rows)
	if v.Hot && v.Running.Grips != uncertainty.Within {
		p.line("  DO NOT RUN on this fit: its grip at the running temperature is not proven.")
	}
	cautions := v.Fit.Cautions | v.Heat.Cautions | v.Loosens.Cautions | v.Running.Cautions
	for c := range cautions.All() {
		p.wrapped("  ! ", c.Text())
	}
}
