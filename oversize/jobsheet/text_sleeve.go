// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// classWords says the limits that a tolerance class gives; nothing where the interference was given.
func classWords(show Shown, what string, c sleeve.Class, w units.Limits) string {
	if w.IsZero() {
		return ""
	}
	return what + " to " + c.String() + ", " + show.limits(w)
}

// sleeve prints the fit for a person at a bench.
func (s Sheet) sleeve() (part page.Section) {
	show := s.Job.Units
	v := s.Sleeve
	i := slices.IndexFunc(s.Choice.Cylinders, func(c oversize.CylinderChoice) bool { return c.Route == oversize.Sleeve })
	if v == nil || i < 0 {
		return
	}
	c := s.Choice.Cylinders[i]
	span := func(r sleeve.Range[units.Length]) string {
		return show.length(r.Min) + " to " + show.length(r.Max)
	}
	pressure := func(r sleeve.Range[units.Pressure]) string { return show.pressures(r.Min, r.Max) }
	part.Title = "SLEEVE (interference is DIAMETRAL)"
	s.checks(&part, sleeving)
	bored := []string{"bore it to", "–", "honed alone"}
	if v.Bored != 0 {
		bored = []string{"bore it to", show.plain(v.Bored), "then hone the rest"}
	}
	rows := [][]string{
		{"seat in the barrel", show.length(v.Joint.Seat), classWords(show, "bored", s.Job.Engine.Sleeve.Hole, v.Seat)},
		{"interference", span(sleeve.Range[units.Length](v.Joint.Interference)), "outside of the sleeve less the seat, at 20 °C" + classWords(show, "; turned", s.Job.Engine.Sleeve.Shaft, v.Shaft)},
		{"pressure at the joint", pressure(v.Fit.Pressure), "at 20 °C"},
		{"hoop stress, barrel", pressure(v.Fit.BarrelHoop), "against its strength: " + v.Fit.Barrel.Verdict.String()},
		{"hoop stress, sleeve", pressure(v.Fit.SleeveHoop), "against its strength: " + v.Fit.Sleeve.Verdict.String()},
		{"bore once fitted", span(v.Hone.Fitted), "it closes in by " + span(v.Fit.BoreCloses)},
		{"to hone out", span(v.Hone.Stock), "cleans up: " + v.Hone.CleansUp.String()},
		bored,
		{"finished bore", show.limits(c.Finish), "aim " + show.length(c.Aim)},
		{"heat the barrel to", show.temperature(v.Heat.Barrel), "slips home: " + v.Heat.Slips.String()},
	}
	if v.Press != (sleeve.Range[units.Force]{}) {
		rows = append(rows, []string{"or press it in with", show.forces(v.Press.Min, v.Press.Max), "at its end, cold: oiled to dry"})
		part.Add(page.Caution(sleeve.CautionPress))
	}
	cautions := v.Fit.Cautions | v.Heat.Cautions | v.Loosens.Cautions
	if v.Running != nil {
		cautions |= v.Running.Cautions
		rows = append(rows, []string{"pressure when running", pressure(v.Running.Pressure), "0 is loose"})
	}
	if hot := v.Loosens.Hot; !hot.Min.IsZero() { // zero is never
		text := "from " + show.temperature(hot.Min)
		if !hot.Max.IsZero() {
			text += ", surely by " + show.temperature(hot.Max)
		}
		rows = append(rows, []string{"can come loose", text, "sleeve and barrel at one temperature"})
	}
	part.Add(facts(rows))
	part.Add(sentence("The seat follows the sleeve: its outside as measured, less %s.", span(sleeve.Range[units.Length](v.Joint.Interference))))
	part.Add(page.Form{{Label: "sleeve, outside"}, {Label: "seat to bore"}})
	for _, c := range s.Cylinders {
		if len(c.Seat) > 0 && !c.there() {
			part.Add(heading("Cylinder %s, the seat of its sleeve", c.Name))
			part.Add(s.steps(c.Seat, nil))
		}
	}
	rows = [][]string{findingHead}
	for _, r := range s.Ledger {
		if r.Demand == demandSleeve && r.Finding != nil {
			rows = append(rows, findingRow(show, r.Finding.Subject+", cylinder "+r.Cylinder, *r.Finding, true))
		}
	}
	if len(rows) > 1 {
		part.Add(table(rows))
	}
	for _, r := range s.Ledger {
		if r.Demand == demandSleeve && !r.State.settled() {
			part.Add(page.Caution(fmt.Sprintf("Cylinder %s: %s.", r.Cylinder, cmp.Or(r.Says, r.Reason.String()))))
		}
	}
	for _, text := range cautions.Texts() {
		part.Add(page.Caution(text))
	}
	return part
}
