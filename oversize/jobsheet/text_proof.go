// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units/uncertainty"
)

// proofText has the finished bores: what was read, or blanks to write on.
func (s Sheet) proofText() (part page.Section) {
	show := s.Job.Units
	if s.Choice.Route == oversize.Undecided || s.Choice.Route == oversize.MakersProcess {
		return
	}
	part.Title = "PROOF: the finished bores, after the wash"
	s.checks(&part, washing)
	if s.Job.proven() {
		read, _, _ := s.Job.taken(true)
		gaugeLine(&part, show, s.Job.proofGauge(), read)
	}
	for i, c := range s.Cylinders {
		if c.Proof == nil {
			s.proofBlanks(&part, i)
			continue
		}
		part.Add(heading("Cylinder %s", c.Name))
		geometry(&part, show, c.Proof.Bore)
		s.drawBore(&part, c.Proof.Bore, picture.Marks{Finish: s.Choice.Cylinders[i].Finish})
		s.formText(&part, c.Proof.Form)
		for _, u := range c.Proof.Bore.Unseen {
			if !slices.Contains(c.Bore.Unseen, u) { // else it has been said of the survey
				part.Add(page.Caution("The proof cannot show " + u.String() + "."))
			}
		}
		if s.Choice.Cylinders[i].Route == oversize.Sleeve {
			part.Add(page.Sentence("A new wall: there is nothing to compare it with."))
		} else {
			s.changes(&part, *c.Proof)
		}
		s.proofFindings(&part, i)
		s.proofWork(&part, i)
	}
	return part
}

// proofBlanks is room to write the proof of a cylinder, at the places of the survey.
func (s Sheet) proofBlanks(part *page.Section, i int) {
	show := s.Job.Units
	c := s.Cylinders[i]
	part.Add(heading("Cylinder %s: to be read", c.Name))
	warm, _, _ := strings.Cut(show.either("°C", "°F"), " = ")
	part.Add(page.Form{{Label: "date"}, {Label: "name"}, {Label: "standard at", Unit: warm}, {Label: "gauge set at", Unit: warm},
		{Label: "gauge used at", Unit: warm}, {Label: "cylinder at", Unit: warm}})
	again := toRead(places(c.Bore))
	slices.SortStableFunc(again, func(a, b bore.Reading) int { return cmp.Compare(a.Depth, b.Depth) })
	part.Add(table(blankTable(show.plain, again)))
	rest := page.Form{{Label: "crosshatch", Unit: "° included"}}
	for _, r := range s.Job.Engine.Rings {
		rest = append(rest, page.Field{Label: "gap, " + r.Name})
	}
	part.Add(rest)
}

// changes puts before and after side by side.
func (s Sheet) changes(part *page.Section, proof ProofSheet) {
	show := s.Job.Units
	c := proof.Changed
	if c == nil {
		part.Add(page.Sentence("No place was read both before and after."))
		return
	}
	at := func(p bore.PlaceChange) string { return fmt.Sprintf("at %s, %s", show.plain(p.Depth), p.Axis.String()) }
	part.Add(facts([][]string{
		{"came off, mean", show.estimate(c.Stock), "on the diameter"},
		{"came off, most", show.estimate(c.Most.Stock), at(c.Most)},
		{"came off, least", show.estimate(c.Least.Stock), at(c.Least)},
		{"ovality better by", known(show, c.OvalityGained)},
		{"taper better by", known(show, c.TaperGained)},
		{"greatest minus least better by", known(show, c.SpreadGained)},
	}))
}

// proofFindings holds what was read against what was wanted.
func (s Sheet) proofFindings(part *page.Section, i int) {
	show, c := s.Job.Units, s.Cylinders[i]
	rows := [][]string{findingHead}
	for _, f := range c.Proof.Findings {
		rows = append(rows, findingRow(show, aboutProof(show, f), f.Finding, !f.NotMeasured))
	}
	rows = append(rows, c.Proof.Form.rows(show)...)
	for _, r := range c.Rings {
		if f := r.Measured; f.Subject != "" {
			row := findingRow(show, f.Subject+", "+r.Ring, f, true)
			row[1], row[2] = show.gapEstimate(f.Measured), show.gapLimits(f.Limits)
			rows = append(rows, row)
		}
	}
	if v := c.Proof.Crosshatch; v != nil {
		rows = append(rows, []string{"crosshatch", s.Job.Cylinders[i].Crosshatch.Format(1), s.Job.Tools.want().String(), v.String(), "–"})
	}
	if len(rows) > 1 {
		part.Add(table(rows))
	}
	for _, p := range c.Profiles {
		part.Add(sentence("Profile at %s: %v.", p.Place, p.Texture))
	}
	for _, f := range c.Texture {
		part.Add(sentence("Texture: %v.", f))
	}
	s.drawTexture(part, s.Job.Cylinders[i])
	for k, f := range c.Proof.Findings {
		if r, ok := c.Proof.Remedies[k]; ok {
			part.Add(page.Item{Text: fmt.Sprintf("%s, if the value stays: %s.", aboutProof(show, f), remedyWords(show, r))})
		}
	}
	for _, r := range c.Rings {
		if r.Grown != (uncertainty.Estimate{}) && !s.Job.Cylinders[i].filed(r.Ring) {
			part.Add(sentence("By its gap, ring %s finds the bore %s larger than the one it was first measured in, and nothing was filed off since.", r.Ring, show.estimate(r.Grown)))
		}
	}
}

// aboutProof says what a finding of a finished bore is about.
func aboutProof(show Shown, f bore.Finding) string {
	if f.Limit == bore.LimitNew {
		return "finished bore"
	}
	return about(show, f)
}

// proofWork says what a proof that failed, or is not whole, calls for.
func (s Sheet) proofWork(part *page.Section, i int) {
	show := s.Job.Units
	c, proof := s.Cylinders[i], s.Cylinders[i].Proof
	say := func(when bool, text string) {
		if when {
			part.Add(page.Caution(text))
		}
	}
	say(s.row(i, "rest").Reason == notAtRest, "The cylinder was not at the temperature of the standard: let them lie together, and read again.")
	if len(proof.Missing) > 0 {
		part.Add(page.Caution("Not read again, though the survey had it:"))
		part.Add(table(blankTable(show.plain, proof.Missing)))
	}
	if proof.Crosshatch == nil {
		say(!s.Job.Tools.Crosshatch.IsZero(), "The crosshatch was not measured: the mean of the wall, "+page.Blank+"° included.")
	}
	say(proof.Crosshatch != nil && *proof.Crosshatch == uncertainty.Beyond, "The pattern is not the one wanted: cut it again at a setting above; a hand leaves it flat at the ends.")
	choice := s.Choice.Cylinders[i]
	room := "while the finish window leaves room"
	if stays(choice) {
		room = "up to the service limit"
	}
	for _, f := range proof.Findings {
		cut := f.Limit == bore.LimitNew
		say(cut && f.Verdict != uncertainty.Within && f.Edge == uncertainty.Lower, "Too small, or not proven to be large enough: hone on towards "+show.length(choice.Aim)+".")
		say(cut && f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper, wayOut(show, c.Skirts))
		say(!cut && f.Verdict == uncertainty.Beyond, "Beyond its limit, "+about(show, f)+": true it with rigid stones "+room+"; else the next oversize.")
	}
	for _, r := range c.Rings {
		for _, room := range r.Ports {
			say(room.Room <= 0, "An end of ring "+r.Ring+" crosses a port: see whether the angle of the peg, and which way the piston points, are as written; else another piston.")
		}
	}
}

// filed reports whether the job says that a ring was filed between its two readings.
func (c Cylinder) filed(ring string) bool {
	return slices.ContainsFunc(c.Rings, func(r RingGap) bool { return r.Ring == ring && r.Filed })
}

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
