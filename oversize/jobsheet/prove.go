// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
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

	as sitting
}

// mostApart is how far the cylinder may be from the temperature of the setting standard in the reading that
// decides: this library's own judgement. The maker of the gauge may want less.
const mostApart = 5 * units.Kelvin

// atRest reports whether the cylinder was surely as warm as the standard, as near as that.
func (s session) atRest() bool {
	cylinder, standard := s.gauge.PartAt, s.gauge.Standard.At
	apart := cylinder.Value.Sub(standard.Value)
	return max(apart, -apart)+cylinder.Within+standard.Within <= mostApart
}

// prove reads a finished bore and holds it against what it was to become; nil where it has not been read.
func (g given) prove(c Cylinder, before readBore, choice oversize.CylinderChoice) (*ProofSheet, error) {
	at, err := g.sit(g.proof, c.Proof, c.ProofTraces)
	if err != nil {
		return nil, err
	}
	if err := g.judge(&at, g.finishLimits(choice), g.risk.row); err != nil {
		return nil, err
	}
	p := ProofSheet{Bore: at.bore, Form: at.form(), Findings: at.findings, Remedies: at.remedies, as: at}
	was := toRead(places(before.bore))
	if len(c.Readings) == 0 {
		was = show.Printed(was) // of a trace not every direction
	}
	p.Missing = missing(was, p.Bore, p.Form)
	if choice.Route != oversize.Sleeve { // else the bore that was read then is gone
		if change, err := bore.Compare(before.bore, p.Bore); err == nil {
			p.Changed = &change
		}
	}
	if got, want := c.Crosshatch, g.Tools.want(); !got.IsZero() && !want.Crosshatch.IsZero() {
		v := want.Judge(got, c.crosshatchDoubt())
		p.Crosshatch = &v
	}
	return &p, nil
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
func (j Job) finishLimits(c oversize.CylinderChoice) bore.Limits {
	limits := j.limits(c.Over)
	if stays(c) {
		limits.New = units.Limits{}
		return limits
	}
	limits.Service = units.Limits{}
	if !c.Finish.IsZero() {
		limits.New = c.Finish
	}
	limits.Ovality = cmp.Or(j.Engine.Limits.FinishOvality, limits.Ovality)
	if j.Engine.Limits.FinishTaper != 0 {
		limits.Taper, limits.TaperAtDeck = j.Engine.Limits.FinishTaper, false
	}
	return limits
}

// crosshatchDoubt is the doubt of the crosshatch of a finished bore, expanded to 95 %.
func (c Cylinder) crosshatchDoubt() units.Angle { return cmp.Or(c.CrosshatchDoubt, byProtractor) }
