// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A ProofSheet is a finished bore, read after the wash, and what it proves.
type ProofSheet struct {
	Bore    bore.Geometry `json:"bore"`             // sizes and form at 20 °C
	Changed *bore.Change  `json:"changed,omitzero"` // since the survey; nil where no place was read both times
	// Missing is where the survey was read and the proof was not; NotAtRest says that the cylinder was
	// not at the temperature of the standard, Shrunk that the bore would have become smaller, since the
	// survey or since the last pass, which no cutting does. With any of these the proof is void.
	Missing   []bore.Reading `json:"missing,omitzero"`
	NotAtRest bool           `json:"not_at_rest,omitzero"`
	Shrunk    bool           `json:"shrunk,omitzero"`
	// Findings of the bore: as New the finish window, where it is bored or honed to a size.
	Findings   []bore.Finding        `json:"findings,omitzero"`
	Clearances []uncertainty.Finding `json:"clearances,omitzero"` // of its piston against the maker's window
	// Crosshatch is that measured, against the one wanted: zero unless the job has both.
	Crosshatch CrosshatchFinding `json:"crosshatch,omitzero"`
	// Remedies has, for each undecided finding of the bore, what would settle it if the value stayed.
	Remedies []Remedy `json:"remedies,omitzero"`
	// Skirts is the skirt diameters that fit the bore as it is; zero where its form leaves none.
	Skirts units.Limits `json:"skirts,omitzero"`
}

// A CrosshatchFinding is a crosshatch held against the one wanted, as measured: no doubt of it takes
// part.
type CrosshatchFinding struct {
	Measured hone.Crosshatch     `json:"measured"` // of the finished bore
	Want     hone.Want           `json:"want"`     // from the job's tools
	Verdict  uncertainty.Verdict `json:"verdict"`  // within the tolerance, or beyond it
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
		c.Proof.Missing = missing(c.Bore, g)
		p := j.proofGauge()
		apart := p.Temperatures.Cylinder.Value.Sub(p.Temperatures.Standard.Value)
		c.Proof.NotAtRest = p.Standard != (Standard{}) && max(apart, -apart) > atRest
		if s.Choice.Cylinders[i].Route == oversize.Sleeve {
			continue // the bore that was read then is gone
		}
		if change, err := bore.Compare(c.Bore, g); err == nil {
			c.Proof.Changed = &change
			shrunk, err := uncertainty.Judge(change.Stock, units.Limits{Min: units.Picometre}, uncertainty.Risk{})
			if err != nil {
				return err
			}
			c.Proof.Shrunk = shrunk.Verdict == uncertainty.Beyond
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

// atRest is how far the cylinder may be from the temperature of the setting standard in the reading
// that decides: this library's own judgement. The maker of the gauge may want less.
const atRest = 5 * units.Kelvin

// missing returns the places of the survey that were not read again.
func missing(before, after bore.Geometry) []bore.Reading {
	var list []bore.Reading
	again := toRead(places(after))
	for _, r := range toRead(places(before)) {
		if !slices.Contains(again, r) {
			list = append(list, r)
		}
	}
	return list
}

// skirts returns the skirts that fit a bore as it is; zero where none does, or no clearance is given.
func (j Job) skirts(bore units.Limits) units.Limits {
	w, err := fit.PistonWindow(bore, j.Engine.Limits.PistonClearance)
	if err != nil {
		return units.Limits{}
	}
	return w
}

// judgeProof holds one finished bore against its limits. The risk of the engine is shared over its
// cylinders and what is judged of each, as it was for the survey.
func (s *Sheet) judgeProof(i int, p *ProofSheet) error {
	j, choice := s.Job, s.Choice.Cylinders[i]
	if choice.Route == oversize.Sleeve {
		var err error
		if choice.Finish, _, err = s.sleeved(i); err != nil {
			return err
		}
	}
	limits, err := j.finishLimits(choice)
	if err != nil {
		return err
	}
	const clearances = 2 // the greatest and the least
	each := j.risk().Share(len(j.Cylinders) * (count(limits) + clearances))
	if p.Findings, err = p.Bore.Judge(limits, each); err != nil {
		return err
	}
	if p.Remedies, err = remedies(p.Bore, p.Findings); err != nil {
		return err
	}
	if p.Clearances, err = s.clearanceFindings(i, p.Bore, each); err != nil {
		return err
	}
	p.Skirts = j.skirts(units.Limits{Min: p.Bore.Smallest.Size.Value, Max: p.Bore.Largest.Size.Value})
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
