// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore/fit"
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
	Finish       units.Length `json:"finish,omitzero"` // to hone to; left out, the size that the cylinder is going to have
}

// A SleeveSheet is the fit of the sleeve, cold and hot.
type SleeveSheet struct {
	Joint  sleeve.Joint `json:"joint"`           // the parts, apart, at 20 °C
	Finish units.Limits `json:"finish,omitzero"` // window for the finished bore
	Aim    units.Length `json:"aim"`             // size to work to
	// Seat and Shaft are the limits that the classes give the seat and the outside of the sleeve; zero
	// where the interference was given.
	Seat  units.Limits    `json:"seat,omitzero"`
	Shaft units.Limits    `json:"shaft,omitzero"`
	Fit   sleeve.State    `json:"fit"`  // at 20 °C
	Heat  sleeve.Assembly `json:"heat"` // the barrel alone heated
	Hone  sleeve.Honing   `json:"hone"` // of the fitted bore
	// Running is the joint honed, at the running temperature of the bore; HasRunning says whether the job gives that.
	Running    sleeve.State     `json:"running,omitzero"`
	HasRunning bool             `json:"has_running,omitzero"`
	Loosens    sleeve.Loosening `json:"loosens"` // honed, heated evenly from 20 °C
}

// usualSlip lets a sleeve held in the hand drop home before it warms through (common practice).
const usualSlip = 50 * units.Micrometre

// sleeves adds the fit of the sleeve where a cylinder is routed to one.
func (s *Sheet) sleeves() error {
	i := slices.IndexFunc(s.Choice.Cylinders, func(c oversize.CylinderChoice) bool { return c.Route == oversize.Sleeve })
	if i < 0 {
		return nil
	}
	v := s.Job.Engine.Sleeve
	if v == (Sleeve{}) {
		s.omit(sleeveFit, "give engine.sleeve: bore, seat, outer, and interference or hole and shaft")
		return nil
	}
	window, aim, err := s.sleeved(i)
	if err != nil {
		s.omit(sleeveFit, "%v", err)
		return nil
	}
	joint, err := s.Job.Engine.sleeve(aim)
	if err != nil {
		s.omit(sleeveFit, "%v", err)
		return nil
	}
	joint.Finish, joint.Aim = window, aim
	s.Sleeve = &joint
	for i := range s.Cylinders {
		if s.Choice.Cylinders[i].Route == oversize.Sleeve {
			if err := s.seat(i); err != nil {
				return err
			}
		}
	}
	return nil
}

// sleeveFit is what is left out where there is no fit.
const sleeveFit = "the fit of the sleeve"

// sleeved returns what the bore of a sleeve is finished to: the window that the piston of its size leaves,
// where one was measured, and the size to work to. All that share a size share a piston.
func (s *Sheet) sleeved(i int) (window units.Limits, aim units.Length, err error) {
	e, choice := s.Job.Engine, s.Choice.Cylinders[i]
	window = choice.Finish
	if p := s.pistonFor(i); p != (Piston{}) && !e.Limits.PistonClearance.IsZero() {
		piston, err := p.fit()
		if err != nil {
			return window, 0, err
		}
		if window, err = fit.FinishWindow(piston, e.Limits.PistonClearance); err != nil {
			return window, 0, err
		}
	}
	aim = e.at(choice.Over)
	if window.HasMin() && window.HasMax() {
		if aim, err = fit.Centre.Size(window, 0); err != nil {
			return window, 0, err
		}
	}
	return window, cmp.Or(e.Sleeve.Finish, aim), nil
}

// seat holds the seat of the sleeve against the worn bore that it is cut in and the wall around it.
func (s *Sheet) seat(i int) error {
	c, given, v := &s.Cylinders[i], s.Job.Cylinders[i], s.Job.Engine.Sleeve
	const seats = 2 // cleaned up, and thick enough around
	risk := s.Job.risk().Share(seats * len(s.Cylinders))
	clean, err := uncertainty.Judge(c.CleanUp.Original.Greatest, units.Limits{Max: v.Seat}, risk)
	if err != nil {
		return err
	}
	clean.Subject = "clean-up of the seat"
	c.SeatCleansUp = clean
	least := s.Job.Engine.Limits.LeastWall
	if least == 0 || given.ThinnestWall == 0 {
		return nil
	}
	wall, err := certified(given.ThinnestWall, given.WallUncertainty)
	if err != nil {
		return err
	}
	left, err := oversize.WallLeft(wall, c.Bore.Smallest.Size, v.Seat, 0)
	if err != nil {
		return err
	}
	c.WallAroundSeat, err = uncertainty.Judge(left, units.Limits{Min: least}, risk)
	c.WallAroundSeat.Subject = "wall left around the seat"
	return err
}

// unsound says what speaks against the sleeve's fit in a cylinder; nothing where everything that it is
// judged by is within. Where the job gives no running temperature its grip in work is not known.
func (s *Sheet) unsound(i int) []string {
	v := s.Sleeve
	if v == nil {
		return []string{"there is none yet"}
	}
	var why []string
	say := func(verdict uncertainty.Verdict, text string) {
		if verdict != uncertainty.Within {
			why = append(why, text)
		}
	}
	c := s.Cylinders[i]
	say(c.SeatCleansUp.Verdict, "the seat does not surely clean up the worn bore: a larger one")
	if c.WallAroundSeat.Subject != "" {
		say(c.WallAroundSeat.Verdict, "too little wall may be left around the seat: DO NOT BORE IT")
	}
	say(v.Fit.Barrel.Verdict, "the barrel may not stand the stress: less interference")
	say(v.Fit.Sleeve.Verdict, "the sleeve may not stand the stress: less interference")
	say(v.Heat.Slips, "it does not surely slip home at that heat")
	say(v.Hone.CleansUp, "there is no stock to hone out of it: a smaller bore")
	if !v.HasRunning {
		why = append(why, "whether it grips in work is not known: give engine.running.bore; DO NOT RUN on it")
	} else {
		say(v.Running.Grips, "its grip at the running temperature is not proven: DO NOT RUN on it")
	}
	return why
}

// sleeve works out the job's sleeve through package sleeve.
func (e Engine) sleeve(finish units.Length) (SleeveSheet, error) {
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
	var s SleeveSheet
	if v.Interference.IsZero() {
		if tight, err = sleeve.DiametralFromClasses(v.Seat, v.Hole, v.Shaft); err != nil {
			return SleeveSheet{}, err
		}
		if s.Seat, err = v.Hole.Sizes(v.Seat); err != nil {
			return SleeveSheet{}, err
		}
		if s.Shaft, err = v.Shaft.Sizes(v.Seat); err != nil {
			return SleeveSheet{}, err
		}
	}
	s.Joint = sleeve.Joint{Bore: v.Bore, Seat: v.Seat, Outer: v.Outer, Interference: tight, Sleeve: inside, Barrel: barrel}
	if s.Fit, err = s.Joint.Fit(); err != nil {
		return s, err
	}
	if s.Heat, err = s.Joint.HeatBarrel(sleeve.Assembling{Slip: cmp.Or(v.Slip, usualSlip)}); err != nil {
		return s, err
	}
	if s.Hone, err = s.Joint.Hone(finish); err != nil {
		return s, err
	}
	if at := e.Running.Bore.Value; !at.IsZero() {
		s.HasRunning = true
		if s.Running, err = s.Hone.Joint.At(sleeve.Condition{Sleeve: at, Barrel: at}); err != nil {
			return s, err
		}
	}
	s.Loosens, err = s.Hone.Joint.Loosens(sleeve.Condition{}) // heated evenly from 20 °C
	return s, err
}

// classWords says the limits that a tolerance class gives; nothing where the interference was given.
func classWords(p *page, what string, c sleeve.Class, w units.Limits) string {
	if w.IsZero() {
		return ""
	}
	return what + " to " + c.String() + ", " + p.show.limits(w)
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
		{"seat in the barrel", p.show.length(v.Joint.Seat), classWords(p, "bored", s.Job.Engine.Sleeve.Hole, v.Seat)},
		{"interference", span(sleeve.Range[units.Length](v.Joint.Interference)), "outside of the sleeve less the seat, at 20 °C" + classWords(p, "; turned", s.Job.Engine.Sleeve.Shaft, v.Shaft)},
		{"pressure at the joint", pressure(v.Fit.Pressure), "at 20 °C"},
		{"hoop stress, barrel", pressure(v.Fit.BarrelHoop), "against its strength: " + v.Fit.Barrel.Verdict.String()},
		{"hoop stress, sleeve", pressure(v.Fit.SleeveHoop), "against its strength: " + v.Fit.Sleeve.Verdict.String()},
		{"bore once fitted", span(v.Hone.Fitted), "it closes in by " + span(v.Fit.BoreCloses)},
		{"to hone out", span(v.Hone.Stock), "cleans up: " + v.Hone.CleansUp.String()},
		{"finished bore", p.show.limits(v.Finish), "aim " + p.show.length(v.Aim)},
		{"heat the barrel to", p.show.temperature(v.Heat.Barrel), "slips home: " + v.Heat.Slips.String()},
	}
	if v.HasRunning {
		rows = append(rows, []string{"pressure when running", pressure(v.Running.Pressure), "0 is loose"})
	}
	if hot := v.Loosens.Hot; !hot.Least.IsZero() { // zero is never
		text := "from " + p.show.temperature(hot.Least)
		if !hot.Greatest.IsZero() {
			text += ", surely by " + p.show.temperature(hot.Greatest)
		}
		rows = append(rows, []string{"can come loose", text, "sleeve and barrel at one temperature"})
	}
	p.list(rows)
	rows = [][]string{findingHead}
	for _, c := range s.Cylinders {
		for _, f := range []uncertainty.Finding{c.SeatCleansUp, c.WallAroundSeat} {
			if f.Subject != "" {
				rows = append(rows, findingRow(p, c.Name, f.Subject, f, true))
			}
		}
	}
	if len(rows) > 1 {
		p.judged(rows)
	}
	for i, c := range s.Choice.Cylinders {
		if c.Route == oversize.Sleeve {
			for _, why := range s.unsound(i) {
				p.wrapped("  ! ", fmt.Sprintf("Cylinder %s: %s.", c.Name, why))
			}
		}
	}
	cautions := v.Fit.Cautions | v.Heat.Cautions | v.Loosens.Cautions | v.Running.Cautions
	for c := range cautions.All() {
		p.wrapped("  ! ", c.Text())
	}
}
