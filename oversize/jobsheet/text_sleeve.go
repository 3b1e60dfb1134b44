// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// class says the limits that a tolerance class gives; nothing where the interference was given.
func (s *draft) class(what string, c sleeve.Class, w units.Limits) string {
	if w.IsZero() {
		return ""
	}
	return what + " to " + c.String() + ", " + s.show.Limits(w)
}

// holding says which interference both parts stand and grips in work; nothing where that is not known.
func (s *draft) holding() (interference, why string) {
	v := s.Sleeve
	if v == nil || v.Holding == nil {
		return "", ""
	}
	if v.Holding.Min <= v.Holding.Max {
		return s.show.Length(v.Holding.Min) + " to " + s.show.Length(v.Holding.Max), "the parts stand the most of it, the least just grips when running"
	}
	part := "sleeve"
	if b, in := sleeve.Weaker(v.Fit, v.Honed); b.Margin.Min*in.Wanted < in.Margin.Min*b.Wanted {
		part = "barrel"
	}
	return "none", fmt.Sprintf("the %s stands %s at most, the grip when running asks for %s: a thicker wall, a stronger metal or two that grow alike, or a collar and the maker's word",
		part, s.show.Length(v.Holding.Max), s.show.Length(v.Holding.Min))
}

// sleeve prints the fit for a person at a bench.
func (s *draft) sleeve() {
	v := s.Sleeve
	i := slices.IndexFunc(s.Choice.Cylinders, func(c oversize.CylinderChoice) bool { return c.Route == oversize.Sleeve })
	if v == nil || i < 0 {
		return
	}
	c := s.Choice.Cylinders[i]
	span := func(r sleeve.Range[units.Length]) string {
		return s.show.Length(r.Min) + " to " + s.show.Length(r.Max)
	}
	pressure := func(r sleeve.Range[units.Pressure]) string { return s.show.Pressures(r.Min, r.Max) }
	s.checks(notes.Sleeving)
	comes, bored := "to hone out", []string{"bore it to", "–", "honed alone"}
	if v.Bored != 0 {
		comes, bored = "to bore and hone out", []string{"bore it to", s.show.Stop(v.Bored), "then hone the rest"}
	}
	rows := [][]string{
		{"seat in the barrel", s.show.Length(v.Joint.Seat), s.class("bored", s.Job.Engine.Sleeve.Hole, v.Seat)},
		{"interference", span(sleeve.Range[units.Length](v.Joint.Interference)), "outside of the sleeve less the seat, at 20 °C" + s.class("; turned", s.Job.Engine.Sleeve.Shaft, v.Shaft)},
		{"pressure at the joint", pressure(v.Fit.Pressure), "at 20 °C"},
		{"hoop stress, barrel", pressure(v.Fit.BarrelHoop), "against its strength: " + v.Fit.Barrel.Verdict.String()},
		{"hoop stress, sleeve", pressure(v.Fit.SleeveHoop), "against its strength: " + v.Fit.Sleeve.Verdict.String()},
		{"bore once fitted", span(v.Hone.Fitted), "it closes in by " + span(v.Fit.BoreCloses)},
		{comes, span(v.Hone.Stock), "cleans up: " + v.Hone.CleansUp.String()},
		bored,
		{"hoop stress, honed", pressure(v.Honed.SleeveHoop), "against its strength: " + v.Honed.Sleeve.Verdict.String()},
		{"finished bore", s.show.Limits(c.Finish), "aim " + s.show.Length(c.Aim)},
		{"heat the barrel to", s.show.Temperature(v.Heat.Barrel), "slips home: " + v.Heat.Slips.String()},
	}
	if v.Press != (sleeve.Range[units.Force]{}) {
		rows = append(rows, []string{"or press it in with", s.show.Forces(v.Press.Min, v.Press.Max), "at its end, cold: oiled to dry"})
		s.add(page.Caution(sleeve.CautionPress))
	}
	cautions := v.Fit.Cautions | v.Honed.Cautions | v.Heat.Cautions | v.Loosens.Cautions
	if v.Running != nil {
		cautions |= v.Running.Cautions
		rows = append(rows, []string{"pressure when running", pressure(v.Running.Pressure), "0 is loose"})
	}
	if hot := v.Loosens.Hot; !hot.Min.IsZero() { // zero is never
		text := "from " + s.show.Temperature(hot.Min)
		if !hot.Max.IsZero() {
			text += ", surely by " + s.show.Temperature(hot.Max)
		}
		rows = append(rows, []string{"can come loose", text, "sleeve and barrel at one temperature"})
	}
	if interference, why := s.holding(); interference != "" {
		rows = append(rows, []string{"interference to hold", interference, why})
	}
	s.add(facts(rows))
	s.say("The seat follows the sleeve: its outside as measured, less %s.", span(sleeve.Range[units.Length](v.Joint.Interference)))
	s.add(page.Form{{Label: "sleeve, outside"}, {Label: "seat to bore"}})
	for _, c := range s.Cylinders {
		if len(c.Seat) > 0 && !c.there() {
			s.heading("Cylinder %s, the seat of its sleeve", c.Name)
			s.add(s.steps(c.Seat, nil))
		}
	}
	rows = [][]string{show.FindingHead()}
	for _, r := range s.Ledger {
		if r.Demand == demandSleeve && r.Finding != nil {
			rows = append(rows, s.show.Finding(r.Finding.Subject+", cylinder "+r.Cylinder, *r.Finding, true))
		}
	}
	s.table(rows)
	for _, r := range s.Ledger {
		if r.Demand == demandSleeve && !r.State.settled() && r.Reason != toCome {
			s.add(page.Caution(fmt.Sprintf("Cylinder %s: %s.", r.Cylinder, cmp.Or(r.Says, r.Reason.String()))))
		}
	}
	for _, text := range cautions.Texts() {
		s.add(page.Caution(text))
	}
}
