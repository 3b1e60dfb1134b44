// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A ProofSheet is a finished bore, read after the wash, and what it proves.
type ProofSheet struct {
	Bore    bore.Geometry `json:"bore"`             // sizes and form at 20 °C
	Changed *bore.Change  `json:"changed,omitzero"` // since the survey; nil where no place was read both times
	// Findings of the bore: as New the finish window, where it is bored or honed to a size.
	Findings   []bore.Finding        `json:"findings,omitzero"`
	Clearances []uncertainty.Finding `json:"clearances,omitzero"` // of its piston against the maker's window
	// Crosshatch is that measured, against the one wanted: zero unless the job has both.
	Crosshatch CrosshatchFinding `json:"crosshatch,omitzero"`
}

// A CrosshatchFinding is a crosshatch held against the one wanted, as measured: no doubt of it takes
// part.
type CrosshatchFinding struct {
	Measured hone.Crosshatch     `json:"measured"` // of the finished bore
	Want     hone.Want           `json:"want"`     // from the job's tools
	Verdict  uncertainty.Verdict `json:"verdict"`  // within the tolerance, or beyond it
}

// verdict returns the worst of what the proof found; Undecided where nothing was held against
// anything.
func (p *ProofSheet) verdict() uncertainty.Verdict {
	all := []uncertainty.Verdict{}
	for _, f := range p.Findings {
		all = append(all, f.Verdict)
	}
	for _, f := range p.Clearances {
		all = append(all, f.Verdict)
	}
	if p.Crosshatch != (CrosshatchFinding{}) {
		all = append(all, p.Crosshatch.Verdict)
	}
	return worst(all...)
}

// worst returns Beyond where any is beyond, Within where all are within.
func worst(all ...uncertainty.Verdict) uncertainty.Verdict {
	v := uncertainty.Undecided
	for i, a := range all {
		switch {
		case a == uncertainty.Beyond:
			return a
		case i == 0:
			v = a
		case a == uncertainty.Undecided:
			v = a
		}
	}
	return v
}

// proof reads the finished bores, matches the pistons to them and judges what came of it.
func (s *Sheet) proof() error {
	j := s.Job
	for i := range s.Cylinders {
		given := j.Cylinders[i]
		if len(given.Proof) == 0 {
			continue
		}
		c := &s.Cylinders[i]
		g, err := j.measure(given.Proof, j.proofGauge())
		if err != nil {
			return err
		}
		c.Proof = &ProofSheet{Bore: g}
		if change, err := bore.Compare(c.Bore, g); err == nil {
			c.Proof.Changed = &change
		}
	}
	if err := s.match(); err != nil {
		return err
	}
	for i := range s.Cylinders {
		if p := s.Cylinders[i].Proof; p != nil {
			if err := s.judgeProof(i, p); err != nil {
				return err
			}
		}
	}
	return nil
}

// judgeProof holds one finished bore against its limits. The risk of the engine is shared over its
// cylinders and what is judged of each, as it was for the survey.
func (s *Sheet) judgeProof(i int, p *ProofSheet) error {
	j, choice := s.Job, s.Choice.Cylinders[i]
	limits, err := j.finishLimits(choice)
	if err != nil {
		return err
	}
	const clearances = 2 // the greatest and the least
	each := j.risk().Share(len(j.Cylinders) * (count(limits) + clearances))
	if p.Findings, err = p.Bore.Judge(limits, each); err != nil {
		return err
	}
	if choice.Work != oversize.Deglaze {
		if p.Clearances, err = s.clearanceFindings(i, p.Bore, each); err != nil {
			return err
		}
	}
	if got, want := j.Cylinders[i].Crosshatch, j.Tools.want(); !got.IsZero() && !want.Crosshatch.IsZero() {
		p.Crosshatch = CrosshatchFinding{Measured: got, Want: want, Verdict: uncertainty.Beyond}
		if want.Accepts(got) {
			p.Crosshatch.Verdict = uncertainty.Within
		}
	}
	return nil
}

// finishLimits returns what a finished bore is held against: where it was cut to a size, its finish
// window, or the maker's for a new bore of that size where no piston gives one; where it was only
// deglazed, the limits of a worn one.
func (j Job) finishLimits(c oversize.CylinderChoice) (bore.Limits, error) {
	limits, err := j.limits(c.Over)
	if err != nil || c.Work == oversize.Deglaze {
		limits.New = units.Limits{}
		return limits, err
	}
	limits.Service = units.Limits{}
	if !c.Finish.IsZero() {
		limits.New = c.Finish
	}
	limits.Ovality = cmp.Or(j.Engine.Limits.FinishOvality, limits.Ovality)
	limits.Taper = cmp.Or(j.Engine.Limits.FinishTaper, limits.Taper)
	return limits, nil
}
