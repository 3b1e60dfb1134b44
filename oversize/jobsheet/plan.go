// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/strictjson"
	"borewright.example/rings"
	"borewright.example/units"
)

// Plan works a job out through every room: it measures, judges, chooses the route and says what
// follows for hone, rings and displacement, and what of all that must be true is shown to be. The error for
// a job that [ReadJob] would refuse is [Faults].
//
// Plan reads no clock: the same job gives the same sheet.
func Plan(j Job) (Sheet, error) {
	doc := strict().Made()
	if err := j.check(doc); err != nil {
		return Sheet{}, err
	}
	return j.plan(doc)
}

// plan is the chain of the work: each step takes what it needs and returns its part; none writes into an
// earlier one.
//
//	survey -> choice -> sleeve, passes -> stock
//	                                   -> proofs -> matching -> fits
//	                                             -> bores -> rings, hone
//	all of them -> ledger
func (j Job) plan(doc *strictjson.Document) (Sheet, error) {
	g, err := j.given()
	if err != nil {
		return Sheet{}, err
	}
	read, err := perCylinder(g, "readings", func(_ int, c Cylinder) (readBore, error) { return g.readBore(c) })
	if err != nil {
		return Sheet{}, err
	}
	choice, err := choose(g, read)
	if err != nil {
		return Sheet{}, err
	}
	untold, slipped := g.untold(choice), g.slipped(doc, read)
	if len(untold)+len(slipped) > 0 {
		choice = withheld(choice)
	}
	passes := passed(g, read, choice)
	sleeve, seats, noFit, err := sleeved(g, read, choice)
	if err != nil {
		return Sheet{}, err
	}
	cuts, notCut, err := cut(g, read, choice, sleeve, passes)
	if err != nil {
		return Sheet{}, err
	}
	proofs, err := perCylinder(g, "proof", func(i int, c Cylinder) (*ProofSheet, error) {
		if !c.reread() || len(choice.Cylinders) == 0 {
			return nil, nil
		}
		return g.prove(c, read[i], choice.Cylinders[i])
	})
	if err != nil {
		return Sheet{}, err
	}
	pairs, notMatched, err := match(g, choice, proofs)
	if err != nil {
		return Sheet{}, err
	}
	fits, err := perCylinder(g, "piston", func(i int, _ Cylinder) (fitting, error) {
		return g.fitted(i, read[i], choice, proofs[i], pairs.of[i])
	})
	if err != nil {
		return Sheet{}, err
	}
	bores := ringBores(g, read, choice, proofs)
	gaps, notGapped, err := ringGaps(g, read, choice, proofs, bores)
	if err != nil {
		return Sheet{}, err
	}
	var honing HoneSheet
	var notHoned []Remark
	if len(choice.Cylinders) > 0 {
		if honing, notHoned, err = honed(g, choice, bores); err != nil {
			return Sheet{}, err
		}
	}
	walls, err := textures(g)
	if err != nil {
		return Sheet{}, err
	}
	volumes, notRatio, err := capacities(g, choice, proofs)
	if err != nil {
		return Sheet{}, err
	}
	rows := ledger(book{
		given: g, read: read, choice: choice, passes: passes, proofs: proofs, fits: fits, bores: bores, rings: gaps,
		sleeve: sleeve, seats: seats, textures: walls, noFit: noFit, untold: untold, slipped: slipped,
	})
	steps := grouped(rows, len(g.Cylinders))
	s := Sheet{
		Version: Version, Job: j.clone(), Next: next(slices.Concat(steps...)), Ledger: rows, Assumed: g.assumed, Study: g.study, Choice: choice,
		Honing: honing, Sleeve: sleeve, Matched: pairs.matched, Before: volumes.all, After: volumes.then,
		Omitted: slices.Concat(notCut, notMatched, notGapped, notHoned, notRatio), Past: g.risk.past,
		Cylinders: make([]CylinderSheet, 0, len(g.Cylinders)),
	}
	if err := s.usual(); err != nil {
		return Sheet{}, err
	}
	if layout := g.layout(); layout.RingBottom != 0 || layout.Stroke != 0 {
		if s.ToRead, err = layout.ToRead(planAxes, g.Gauge.kind()); err != nil {
			return Sheet{}, fault("engine.layout", err)
		}
	}
	for i, c := range g.Cylinders {
		cs := CylinderSheet{
			Name: c.Name, Next: next(steps[i+1]), Bore: read[i].bore, Form: read[i].form(), Findings: read[i].findings, Coarse: read[i].coarse,
			Remedies: read[i].remedies, CleanUp: read[i].cleanUp, FeelerTaper: read[i].feeler, Profiles: g.profiled[i],
		}
		if len(choice.Cylinders) > 0 {
			cs.Clearances, cs.Seat, cs.Stock, cs.Warm, cs.Dial = fits[i].clearances, cuts[i].seat, cuts[i].stock, cuts[i].warm, cuts[i].dial
			cs.Pass, cs.Skirts = passes[i].next, passes[i].skirts
			if p := proofs[i]; p != nil {
				cs.Skirts = g.skirts(units.Limits{Min: p.Bore.Smallest.Size.Value, Max: p.Bore.Largest.Size.Value})
			}
			cs.Texture = walls[i]
			cs.Rings, cs.Proof, cs.Before, cs.After = gaps[i], proofs[i], volumes.before[i], volumes.after[i]
		}
		s.Cylinders = append(s.Cylinders, cs)
	}
	if len(choice.Cylinders) == 0 {
		s.Omitted = omit(s.Omitted, "everything that follows from the readings", "read every cylinder")
	}
	s.Unused = unused(g, read, rows, choice, proofs, passes)
	work := s.work()
	s.Checklist = remarks(work.Checklist())
	s.Cautions = remarks(work.Cautions())
	return s, nil
}

// usual adds what rules of thumb say of clearance and gap; they decide nothing.
func (s *Sheet) usual() (err error) {
	e := s.Job.Engine
	if s.UsualClearance, err = fit.Usual(e.Duty, e.Bore); err != nil && e.Duty != 0 {
		return fault("engine.duty", err)
	}
	if len(e.Rings) > 0 {
		if _, s.UsualGap, err = rings.Rules(e.Bore); err != nil {
			return fault("engine.bore", err)
		}
	}
	return nil
}

// unused lists what was measured and stands behind no row, and why.
func unused(g given, read []readBore, rows []Row, choice oversize.Choice, proofs []*ProofSheet, passes []passing) (out []Remark) {
	for i, c := range g.Cylinders {
		path := fmt.Sprintf("cylinders[%d].", i)
		if c.reread() && proofs[i] == nil {
			out = omit(out, path+"proof", "not every worn bore has been read")
		}
		if c.bored() && !passes[i].recorded {
			out = omit(out, path+"honing", "not every worn bore has been read")
		}
		if !c.Crosshatch.IsZero() && proofs[i] == nil {
			out = omit(out, path+"crosshatch", "the finished bore has not been read")
		}
		if _, _, both := read[i].atFeeler(c.FeelerTest); len(c.FeelerTest) > 0 && !both {
			out = omit(out, path+"feeler_test", "the bore was not read along three axes at both of its depths")
		}
		if c.Piston.has() && len(choice.Cylinders) > 0 && choice.Cylinders[i].Route != oversize.Undecided && length(c.PistonFor) != choice.Cylinders[i].Over {
			out = omit(out, path+"piston", "it is for another size than the one chosen")
		}
		for n, r := range c.Rings {
			if !r.Finished.isZero() && proofs[i] == nil && (len(choice.Cylinders) == 0 || choice.Cylinders[i].Route != oversize.MakersProcess) {
				out = omit(out, fmt.Sprintf("%srings[%d].finished", path, n), "the finished bore has not been read")
			}
		}
	}
	for n, a := range g.Accepted {
		if why := idle(a, rows); why != "" {
			out = omit(out, fmt.Sprintf("accepted[%d]", n), "%s", why)
		}
	}
	return out
}

// idle says why an acceptance settles nothing; "" where it does.
func idle(a Acceptance, rows []Row) string {
	why := "no row has this key, or no row of this kind wants a figure"
	for _, r := range rows {
		switch {
		case r.State == StateAccepted && (r.Key == a.Row || a.Row == "" && r.Demand == a.Demand):
			return ""
		case r.Key != a.Row:
		case r.Lapsed:
			why = "it has lapsed, since what stood there has changed: \"" + r.Stands + "\""
		case r.State.settled():
			why = "the row is " + r.State.String() + " without it"
		default:
			why = "nobody can accept this: " + r.Reason.String()
		}
	}
	return why
}

// planAxes is along how many axes the sheet asks for readings: five carry lobes of two and of four.
const planAxes = 5

// fault returns what a room refused as a fault of the job.
func fault(path string, err error) error {
	return Faults{{Path: path, Want: err.Error(), Err: err}}
}

// omit notes a part of the sheet that is left out, once.
func omit(list []Remark, part, why string, args ...any) []Remark {
	o := Remark{part, fmt.Sprintf(why, args...)}
	if slices.Contains(list, o) {
		return list
	}
	return append(list, o)
}

// failed notes a part that a room refused to work out, where it did.
func failed(list []Remark, part string, err error) []Remark {
	if err == nil {
		return list
	}
	return omit(list, part, "%v", err)
}
