// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units/uncertainty"
)

// together has what is left to do once everything is proven.
func (s Sheet) together() (part page.Section) {
	if s.Next != StepReassemble {
		return
	}
	part.Title = "GOING TOGETHER, after the maker's manual"
	s.checks(&part, goingTogether)
	return part
}

// record is what goes back with the engine: what each bore was, what it is, and who says so.
func (s Sheet) record() (part page.Section) {
	if s.Next != StepReassemble {
		return
	}
	show := s.Job.Units
	part.Title = "RECORD to hand back with the engine"
	rows := [][]string{{"cylinder", "largest, before", "largest, now", "ovality, before", "ovality, now", "taper, before", "taper, now"}}
	fits := [][]string{{"cylinder", "clearance, least", "clearance, greatest", "crosshatch"}}
	walls := [][]string{{"cylinder", "roundness", "cylindricity", "bend of the axis"}}
	for _, r := range s.Job.Engine.Rings {
		fits[0] = append(fits[0], "gap, "+r.Name)
	}
	for i, c := range s.Cylinders {
		if !c.there() {
			continue
		}
		was, is := c.Bore, c.Proof.Bore
		rows = append(rows, []string{c.Name, known(show, was.Largest.Size), known(show, is.Largest.Size), known(show, was.Ovality), known(show, is.Ovality),
			known(show, was.Taper.Size), known(show, is.Taper.Size)})
		fit := []string{c.Name, s.clearance(i, demandLeastClearance), s.clearance(i, demandGreatestClearance), "–"}
		if c.Proof.Crosshatch != nil {
			fit[3] = s.Job.Cylinders[i].Crosshatch.Format(0)
		}
		for _, ring := range s.Job.Engine.Rings {
			gap := "–"
			for _, r := range c.Rings {
				if r.Ring == ring.Name && r.inBore() {
					gap = show.gapEstimate(r.Gap)
				}
			}
			fit = append(fit, gap)
		}
		fits = append(fits, fit)
		if f := c.Proof.Form; f != nil {
			walls = append(walls, []string{c.Name, show.estimate(f.leastRound().Roundness), known(show, f.Cylindricity), known(show, f.Bend)})
		}
	}
	part.Add(table(rows), table(fits))
	if len(walls) > 1 {
		part.Add(table(walls))
	}
	read, _, _ := s.Job.taken(true)
	gaugeLine(&part, show, s.Job.proofGauge(), read)
	part.Add(page.Form{{Label: "pistons, make and size"}, {Label: "rings, make and size"}, {Label: "date"}, {Label: "name"}})
	return part
}

// clearance returns a clearance of the piston in the bore that goes together, as its row has it.
func (s Sheet) clearance(cylinder int, which Demand) string {
	for _, r := range s.of(cylinder) {
		if r.Demand == which && r.Finding != nil {
			return known(s.Job.Units, r.Finding.Measured)
		}
	}
	return "–"
}

// known returns an estimate, a dash where there is none.
func known(show Shown, e uncertainty.Estimate) string {
	if e == (uncertainty.Estimate{}) {
		return "–"
	}
	return show.estimate(e)
}
