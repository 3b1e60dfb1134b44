// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A ProofSheet is a finished bore, read after the wash, and what it shows.
type ProofSheet struct {
	Bore    bore.Geometry  `json:"bore"`             // sizes and form at 20 °C
	Form    *WallForm      `json:"form,omitempty"`   // of the wall, where it was traced
	Changed *bore.Change   `json:"changed,omitzero"` // since the survey; nil where no place was read both times, or the wall is a new one
	Missing []bore.Reading `json:"missing,omitzero"` // where the survey was read and the proof was not
	// Findings of the bore: as New the finish window, where it is cut to a size.
	Findings []bore.Finding `json:"findings,omitzero"`
	// Crosshatch says whether the one measured is the one wanted; nil unless the job has both.
	Crosshatch *uncertainty.Verdict `json:"crosshatch,omitempty"`
	// Remedies has, for each undecided finding by its place from 0, what would settle it if the value stayed.
	Remedies map[int]uncertainty.Remedy `json:"remedies,omitempty"`

	traced *tracedBore // what Form is of
}

// mostApart is how far the cylinder may be from the temperature of the setting standard in the reading that
// decides: this library's own judgement. The maker of the gauge may want less.
const mostApart = 5 * units.Kelvin

// atRest reports whether the cylinder was surely as warm as the standard, as near as that.
func (t Temperatures) atRest() bool {
	t = t.within()
	apart := t.Cylinder.Value.Sub(t.Standard.Value)
	return max(apart, -apart)+t.Cylinder.Within+t.Standard.Within <= mostApart
}

// proofs reads the finished bores and holds them against what they were to become; nil for one that has not
// been read.
func proofs(g given, read []readBore, choice oversize.Choice) ([]*ProofSheet, error) {
	all := make([]*ProofSheet, len(read))
	for i, c := range g.Cylinders {
		if !c.reread() || len(choice.Cylinders) == 0 {
			continue
		}
		p, err := g.prove(c, read[i], choice.Cylinders[i])
		if err != nil {
			return nil, fault(fmt.Sprintf("cylinders[%d].proof", i), err)
		}
		all[i] = &p
	}
	return all, nil
}

func (g given) prove(c Cylinder, before readBore, choice oversize.CylinderChoice) (p ProofSheet, err error) {
	by := g.proofGauge()
	traced, err := g.trace(c.ProofTraces, by, g.proofSpindle)
	if err != nil {
		return p, err
	}
	if p.Bore, err = g.measureOrTraced(c.Proof, by, g.proof, traced); err != nil {
		return p, err
	}
	if traced != nil {
		p.Form, p.traced = &traced.form, traced
	}
	was := toRead(places(before.bore))
	if len(c.Readings) == 0 {
		was = printed(was) // of a trace not every direction
	}
	p.Missing = missing(was, p.Bore, p.Form)
	if choice.Route != oversize.Sleeve { // else the bore that was read then is gone
		if change, err := bore.Compare(before.bore, p.Bore); err == nil {
			p.Changed = &change
		}
	}
	limits, err := g.finishLimits(choice)
	if err != nil {
		return p, err
	}
	if p.Findings, err = g.judge(p.Bore, traced, c.Proof, limits, g.risk.row); err != nil {
		return p, err
	}
	if p.Remedies, err = remedies(p.Bore, p.Findings); err != nil {
		return p, err
	}
	if got, want := c.Crosshatch, g.Tools.want(); !got.IsZero() && !want.Crosshatch.IsZero() {
		v := want.Judge(got, c.crosshatchDoubt())
		p.Crosshatch = &v
	}
	return p, nil
}

// missing returns the places that were neither read again nor traced.
func missing(was []bore.Reading, after bore.Geometry, traced *WallForm) []bore.Reading {
	var list []bore.Reading
	again := toRead(places(after))
	for _, r := range was {
		if !slices.Contains(again, r) && !traced.has(r.Depth) {
			list = append(list, r)
		}
	}
	return list
}

// finishLimits returns what a finished bore is held against: where it was cut to a size, its finish window,
// or the maker's for a new bore of that size where no piston gives one; where it stays, the limits of a worn
// one.
func (j Job) finishLimits(c oversize.CylinderChoice) (bore.Limits, error) {
	limits, err := j.limits(c.Over)
	if err != nil || stays(c) {
		limits.New = units.Limits{}
		return limits, err
	}
	limits.Service = units.Limits{}
	if !c.Finish.IsZero() {
		limits.New = c.Finish
	}
	limits.Ovality = cmp.Or(j.Engine.Limits.FinishOvality, limits.Ovality)
	if j.Engine.Limits.FinishTaper != 0 {
		limits.Taper, limits.TaperAtDeck = j.Engine.Limits.FinishTaper, false
	}
	return limits, nil
}

// crosshatchDoubt is the doubt of the crosshatch of a finished bore, expanded to 95 %.
func (c Cylinder) crosshatchDoubt() units.Angle { return cmp.Or(c.CrosshatchDoubt, byProtractor) }
