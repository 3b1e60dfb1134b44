// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units/uncertainty"
)

// proofText has the finished bores: what was read, or blanks to write on.
func (s Sheet) proofText(p *page) {
	if s.Choice.Route == oversize.Undecided || s.Choice.Route == oversize.MakersProcess {
		return
	}
	p.title("PROOF: the finished bores, after the wash")
	s.checks(p, Washing)
	for i, c := range s.Cylinders {
		p.line("")
		if c.Proof == nil {
			s.proofBlanks(p, i)
			continue
		}
		p.line("  Cylinder %s", c.Name)
		gaugeLine(p, s.Job.proofGauge())
		geometry(p, c.Proof.Bore)
		for _, u := range c.Proof.Bore.Unseen {
			if !slices.Contains(c.Bore.Unseen, u) { // else it has been said of the survey
				p.wrapped("  ! ", "The proof cannot show "+u.String()+".")
			}
		}
		if s.Choice.Cylinders[i].Route == oversize.Sleeve {
			p.line("  A new wall: there is nothing to compare it with.")
		} else {
			s.changes(p, *c.Proof)
		}
		s.proofFindings(p, c)
		s.proofWork(p, i)
	}
}

// proofBlanks is room to write the proof of a cylinder, at the places of the survey.
func (s Sheet) proofBlanks(p *page, i int) {
	c := s.Cylinders[i]
	p.line("  Cylinder %s: to be read", c.Name)
	warm := blank + " " + degree(p.show.units()[0])
	p.list([][]string{
		{"date", blank, "name", blank},
		{"standard at", warm, "gauge set at", warm},
		{"gauge used at", warm, "cylinder at", warm},
	})
	again := toRead(places(c.Bore))
	slices.SortStableFunc(again, func(a, b bore.Reading) int { return cmp.Compare(a.Depth, b.Depth) })
	p.table(blankTable(p, again))
	row := []string{"crosshatch " + blank + "° included"}
	for _, r := range s.Job.Engine.Rings {
		row = append(row, "gap, "+r.Name+" "+blank)
	}
	p.list([][]string{row})
}

// changes puts before and after side by side.
func (s Sheet) changes(p *page, proof ProofSheet) {
	c := proof.Changed
	if c == nil {
		p.line("  No place was read both before and after.")
		return
	}
	p.list([][]string{
		{"came off on the diameter", "mean " + p.show.estimate(c.Stock),
			fmt.Sprintf("most %s at %s, %s", p.show.estimate(c.Most.Stock), p.show.plain(c.Most.Depth), bore.FormatAxis(c.Most.Axis)),
			fmt.Sprintf("least %s at %s, %s", p.show.estimate(c.Least.Stock), p.show.plain(c.Least.Depth), bore.FormatAxis(c.Least.Axis))},
		{"better by", "ovality " + gained(p, c.OvalityGained), "taper " + gained(p, c.TaperGained), "greatest less least " + gained(p, c.SpreadGained)},
	})
}

func gained(p *page, e uncertainty.Estimate) string {
	if e == (uncertainty.Estimate{}) {
		return "–"
	}
	return p.show.estimate(e)
}

// proofFindings holds what was read against what was wanted.
func (s Sheet) proofFindings(p *page, c CylinderSheet) {
	rows := [][]string{findingHead}
	for _, f := range c.Proof.Findings {
		rows = append(rows, findingRow(p, c.Name, aboutProof(p, f), f.Finding, !f.NotMeasured))
	}
	for _, r := range c.Rings {
		if f := r.Measured; f.Subject != "" {
			rows = append(rows, findingRow(p, c.Name, f.Subject+", "+r.Ring, f, true))
		}
	}
	if x := c.Proof.Crosshatch; x != (CrosshatchFinding{}) {
		rows = append(rows, []string{c.Name, "crosshatch", angle(x.Measured), x.Want.String(), x.Verdict.String(), "–"})
	}
	if len(rows) > 1 {
		p.judged(rows)
	}
	for _, r := range c.Proof.Remedies {
		p.wrapped("    - ", fmt.Sprintf("%s, if the value stays: %s.", aboutProof(p, c.Proof.Findings[r.Finding]), r.Remedy.Format(p.show.units()[0])))
	}
	for _, r := range c.Rings {
		if r.Grown != (uncertainty.Estimate{}) {
			p.wrapped("  ", fmt.Sprintf("By its gap, ring %s finds the bore %s larger than the one it was first measured in, if nothing was filed off since.", r.Ring, p.show.estimate(r.Grown)))
		}
	}
}

// aboutProof says what a finding of a finished bore is about.
func aboutProof(p *page, f bore.Finding) string {
	if f.Limit == bore.LimitNew {
		return "finished bore"
	}
	return about(p, f)
}

// proofWork says what a proof that failed, or is not whole, calls for.
func (s Sheet) proofWork(p *page, i int) {
	c, proof := s.Cylinders[i], s.Cylinders[i].Proof
	say := func(when bool, text string) {
		if when {
			p.wrapped("  ! ", text)
		}
	}
	say(proof.NotAtRest, "The cylinder was not at the temperature of the standard: let them lie together, and read again.")
	if len(proof.Missing) > 0 {
		p.line("  ! Not read again, though the survey had it:")
		p.table(blankTable(p, proof.Missing))
	}
	if proof.Crosshatch == (CrosshatchFinding{}) {
		say(!s.Job.Tools.Crosshatch.IsZero(), "The crosshatch was not measured: the mean of the wall, "+blank+"° included.")
	}
	say(proof.Crosshatch.Verdict == uncertainty.Beyond, "The pattern is not the one wanted: cut it again at a setting above; a hand leaves it flat at the ends.")
	choice := s.Choice.Cylinders[i]
	aim, room := choice.Aim, "while the finish window leaves room"
	switch {
	case choice.Route == oversize.Sleeve && s.Sleeve != nil:
		aim = s.Sleeve.Aim
	case stays(choice):
		room = "up to the service limit"
	}
	for _, f := range proof.Findings {
		cut := f.Limit == bore.LimitNew
		say(cut && f.Verdict != uncertainty.Within && f.Edge == uncertainty.Lower, "Too small, or not proven to be large enough: hone on towards "+p.show.length(aim)+".")
		say(cut && f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper, wayOut(p, proof.Skirts))
		say(!cut && f.Verdict == uncertainty.Beyond, "Beyond its limit, "+about(p, f)+": true it with rigid stones "+room+"; else the next oversize.")
	}
	for _, r := range c.Rings {
		for _, room := range r.Ports {
			say(room.Crosses, "An end of ring "+r.Ring+" crosses a port: see whether the angle of the peg, and which way the piston points, are as written; else another piston.")
		}
	}
}
