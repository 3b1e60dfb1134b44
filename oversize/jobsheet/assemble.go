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

// sheet writes the ledger, and puts with it what the steps returned.
func (b *book) sheet() (s Sheet, err error) {
	rows := b.ledger()
	steps := grouped(rows, len(b.Cylinders))
	s = Sheet{
		Version: Version, Job: strictjson.Copy(b.Job), Next: next(slices.Concat(steps...)), Ledger: rows, Assumed: b.assumed, Study: b.study, Choice: b.choice,
		Honing: b.honing, Sleeve: b.sleeve, Matched: b.matched, Before: b.volumes.all, After: b.volumes.then, Past: b.risk.past,
		Cylinders: make([]CylinderSheet, len(b.Cylinders)), Omitted: b.omitted, Unused: b.unused(rows),
	}
	if len(b.choice.Cylinders) == 0 {
		s.Omitted = omit(s.Omitted, "everything that follows from the readings", "read every cylinder")
	}
	for i := range b.Cylinders {
		s.Cylinders[i] = b.cylinder(i)
		s.Cylinders[i].Next = next(steps[i+1])
	}
	if err := s.usual(); err != nil {
		return Sheet{}, err
	}
	if layout := b.layout(); layout.RingBottom != 0 || layout.Stroke != 0 {
		if s.ToRead, err = layout.ToRead(planAxes, b.Gauge.kind()); err != nil {
			return Sheet{}, fault("engine.layout", err)
		}
	}
	work := s.work()
	s.Checklist, s.Cautions = remarks(work.Checklist()), remarks(work.Cautions())
	return s, nil
}

// planAxes is along how many axes the sheet asks for readings: five carry lobes of two and of four.
const planAxes = 5

// cylinder is what one bore's readings say and what follows for it.
func (b *book) cylinder(i int) CylinderSheet {
	read := b.read[i]
	s := CylinderSheet{
		Name: b.Cylinders[i].Name, Bore: read.bore, Form: read.form(), Findings: read.findings, Coarse: read.coarse, Remedies: read.remedies,
		CleanUp: read.cleanUp, FeelerTaper: read.feeler, Profiles: b.profiled[i],
	}
	if len(b.choice.Cylinders) == 0 {
		return s
	}
	cut, pass := b.cuts[i], b.passes[i]
	s.Clearances, s.Pass, s.Skirts = b.fits[i].clearances, pass.next, pass.skirts
	s.Seat, s.Stock, s.Warm, s.Dial = cut.seat, cut.stock, cut.warm, cut.dial
	s.Texture, s.Rings, s.Proof = b.textures[i], b.rings[i], b.proofs[i]
	s.Before, s.After = b.volumes.before[i], b.volumes.after[i]
	if p := s.Proof; p != nil {
		s.Skirts = b.skirts(units.Limits{Min: p.Bore.Smallest.Size.Value, Max: p.Bore.Largest.Size.Value})
	}
	return s
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
func (b *book) unused(rows []Row) (out []Remark) {
	for i, c := range b.Cylinders {
		path := fmt.Sprintf("cylinders[%d].", i)
		if c.reread() && b.proofs[i] == nil {
			out = omit(out, path+"proof", "not every worn bore has been read")
		}
		if c.bored() && !b.passes[i].recorded {
			out = omit(out, path+"honing", "not every worn bore has been read")
		}
		if !c.Crosshatch.IsZero() && b.proofs[i] == nil {
			out = omit(out, path+"crosshatch", "the finished bore has not been read")
		}
		if _, _, both := b.read[i].atFeeler(c.FeelerTest); len(c.FeelerTest) > 0 && !both {
			out = omit(out, path+"feeler_test", "the bore was not read along three axes at both of its depths")
		}
		if c.Piston.has() && len(b.choice.Cylinders) > 0 && b.choice.Cylinders[i].Route != oversize.Undecided && length(c.PistonFor) != b.choice.Cylinders[i].Over {
			out = omit(out, path+"piston", "it is for another size than the one chosen")
		}
		for n, r := range c.Rings {
			if !r.Finished.isZero() && b.proofs[i] == nil && (len(b.choice.Cylinders) == 0 || b.choice.Cylinders[i].Route != oversize.MakersProcess) {
				out = omit(out, fmt.Sprintf("%srings[%d].finished", path, n), "the finished bore has not been read")
			}
		}
	}
	for n, a := range b.Accepted {
		if why := idle(a, rows); why != "" {
			out = omit(out, fmt.Sprintf("accepted[%d]", n), "%s", why)
		}
	}
	return out
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
