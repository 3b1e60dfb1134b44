// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units/uncertainty"
)

// proof has the finished bores: what was read, or blanks to write on.
func (s *draft) proof() {
	if s.Choice.Route == oversize.Undecided || s.Choice.Route == oversize.MakersProcess {
		return
	}
	s.checks(notes.Washing)
	if s.Job.proven() {
		read, _, _ := s.Job.taken(true)
		s.gaugeLine(s.Job.proofGauge(), read)
	}
	for i, c := range s.Cylinders {
		if c.Proof == nil {
			s.proofBlanks(i)
			continue
		}
		s.heading("Cylinder %s", c.Name)
		s.geometry(c.Proof.Bore)
		s.drawBore(c.Proof.Bore, picture.Marks{Finish: s.Choice.Cylinders[i].Finish})
		s.formText(c.Proof.Form)
		for _, u := range c.Proof.Bore.Unseen {
			if !slices.Contains(c.Bore.Unseen, u) { // else it has been said of the survey
				s.add(page.Caution("The proof cannot show " + u.String() + "."))
			}
		}
		if s.Choice.Cylinders[i].Route == oversize.Sleeve {
			s.add(page.Sentence("A new wall: there is nothing to compare it with."))
		} else {
			s.changes(*c.Proof)
		}
		s.proofFindings(i)
		s.proofWork(i)
	}
}

// proofBlanks is room to write the proof of a cylinder, at the places of the survey.
func (s *draft) proofBlanks(i int) {
	c := s.Cylinders[i]
	s.heading("Cylinder %s: to be read", c.Name)
	warm, _, _ := strings.Cut(s.show.Either("°C", "°F"), " = ")
	s.add(page.Form{{Label: "date"}, {Label: "name"}, {Label: "standard at", Unit: warm}, {Label: "gauge set at", Unit: warm},
		{Label: "gauge used at", Unit: warm}, {Label: "cylinder at", Unit: warm}})
	again := toRead(places(c.Bore))
	slices.SortStableFunc(again, func(a, b bore.Reading) int { return cmp.Compare(a.Depth, b.Depth) })
	s.table(show.Blanks(s.show.Plain, again, page.Blank))
	rest := page.Form{{Label: "crosshatch", Unit: "° included"}}
	for _, r := range s.Job.Engine.Rings {
		rest = append(rest, page.Field{Label: "gap, " + r.Name})
	}
	s.add(rest)
}

// changes puts before and after side by side.
func (s *draft) changes(proof ProofSheet) {
	c := proof.Changed
	if c == nil {
		s.add(page.Sentence("No place was read both before and after."))
		return
	}
	at := func(p bore.PlaceChange) string {
		return fmt.Sprintf("at %s, %s", s.show.Plain(p.Depth), p.Axis.String())
	}
	s.add(facts([][]string{
		{"came off, mean", s.show.Estimate(c.Stock), "on the diameter"},
		{"came off, most", s.show.Estimate(c.Most.Stock), at(c.Most)},
		{"came off, least", s.show.Estimate(c.Least.Stock), at(c.Least)},
		{"ovality better by", s.show.Known(c.OvalityGained)},
		{"taper better by", s.show.Known(c.TaperGained)},
		{"greatest minus least better by", s.show.Known(c.SpreadGained)},
	}))
}

// proofFindings holds what was read against what was wanted.
func (s *draft) proofFindings(i int) {
	c := s.Cylinders[i]
	rows := [][]string{show.FindingHead()}
	for _, f := range c.Proof.Findings {
		rows = append(rows, s.show.Finding(s.show.AboutFinished(f), f.Finding, !f.NotMeasured))
	}
	rows = append(rows, c.Proof.Form.rows(s.show)...)
	for _, r := range c.Rings {
		if f := r.Measured; f.Subject != "" {
			row := s.show.Finding(f.Subject+", "+r.Ring, f, true)
			row[1], row[2] = s.show.GapEstimate(f.Measured), s.show.GapLimits(f.Limits)
			rows = append(rows, row)
		}
	}
	if v := c.Proof.Crosshatch; v != nil {
		rows = append(rows, []string{"crosshatch", s.Job.Cylinders[i].Crosshatch.Format(1), s.Job.Tools.want().String(), v.String(), "–"})
	}
	s.table(rows)
	for _, p := range c.Profiles {
		s.say("Profile at %s: %v.", p.Place, p.Texture)
	}
	for _, f := range c.Texture {
		s.say("Texture: %v.", f)
	}
	s.drawTexture(s.Job.Cylinders[i])
	for k, f := range c.Proof.Findings {
		if r, ok := c.Proof.Remedies[k]; ok {
			s.add(page.Item{Text: fmt.Sprintf("%s, if the value stays: %s.", s.show.AboutFinished(f), s.show.Remedy(r))})
		}
	}
	for _, r := range c.Rings {
		if r.Grown != (uncertainty.Estimate{}) && !s.Job.Cylinders[i].filed(r.Ring) {
			s.say("By its gap, ring %s finds the bore %s larger than the one it was first measured in, and nothing was filed off since.", r.Ring, s.show.Estimate(r.Grown))
		}
	}
}

// proofWork says what a proof that failed, or is not whole, calls for.
func (s *draft) proofWork(i int) {
	c, proof := s.Cylinders[i], s.Cylinders[i].Proof
	say := func(when bool, text string) {
		if when {
			s.add(page.Caution(text))
		}
	}
	say(s.row(i, "rest").Reason == notAtRest, "The cylinder was not at the temperature of the standard: let them lie together, and read again.")
	if len(proof.Missing) > 0 {
		s.add(page.Caution("Not read again, though the survey had it:"))
		s.table(show.Blanks(s.show.Plain, proof.Missing, page.Blank))
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
		say(cut && f.Verdict != uncertainty.Within && f.Edge == uncertainty.Lower, "Too small, or not proven to be large enough: hone on towards "+s.show.Length(choice.Aim)+".")
		say(cut && f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper, s.wayOut(c.Skirts))
		say(!cut && f.Verdict == uncertainty.Beyond, "Beyond its limit, "+s.show.About(f)+": true it with rigid stones "+room+"; else the next oversize.")
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
func (s *draft) together() {
	if s.Next != StepReassemble {
		return
	}
	s.checks(notes.GoingTogether)
}

// record is what goes back with the engine: what each bore was, what it is, and who says so.
func (s *draft) record() {
	if s.Next != StepReassemble {
		return
	}
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
		rows = append(rows, []string{c.Name, s.show.Known(was.Largest.Size), s.show.Known(is.Largest.Size), s.show.Known(was.Ovality), s.show.Known(is.Ovality),
			s.show.Known(was.Taper.Size), s.show.Known(is.Taper.Size)})
		fit := []string{c.Name, s.clearance(i, demandLeastClearance), s.clearance(i, demandGreatestClearance), "–"}
		if c.Proof.Crosshatch != nil {
			fit[3] = s.Job.Cylinders[i].Crosshatch.Format(0)
		}
		for _, ring := range s.Job.Engine.Rings {
			gap := "–"
			for _, r := range c.Rings {
				if r.Ring == ring.Name && r.inBore() {
					gap = s.show.GapEstimate(r.Gap)
				}
			}
			fit = append(fit, gap)
		}
		fits = append(fits, fit)
		if f := c.Proof.Form; f != nil {
			walls = append(walls, []string{c.Name, s.show.Estimate(f.leastRound().Roundness), s.show.Known(f.Cylindricity), s.show.Known(f.Bend)})
		}
	}
	s.table(rows)
	s.table(fits)
	s.table(walls)
	read, _, _ := s.Job.taken(true)
	s.gaugeLine(s.Job.proofGauge(), read)
	s.add(page.Form{{Label: "pistons, make and size"}, {Label: "rings, make and size"}, {Label: "date"}, {Label: "name"}})
}

// clearance returns a clearance of the piston in the bore that goes together, as its row has it.
func (s *draft) clearance(cylinder int, which Demand) string {
	for _, r := range s.of(cylinder) {
		if r.Demand == which && r.Finding != nil {
			return s.show.Known(r.Finding.Measured)
		}
	}
	return "–"
}
