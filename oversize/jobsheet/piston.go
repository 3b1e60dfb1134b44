// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// ClearanceAt is where a clearance is.
type ClearanceAt int8

// Places of a clearance.
const (
	LargestNow  ClearanceAt = iota // where the bore is largest, as it is
	SmallestNow                    // where it is smallest
	AtAim                          // at the size to work to
)

var clearanceNames = []string{"greatest now", "least now", "finished"}

// String returns "greatest now", "least now" or "finished".
func (c ClearanceAt) String() string { return enum.Name(c, clearanceNames) }

// MarshalText returns the text of [ClearanceAt.String].
func (c ClearanceAt) MarshalText() ([]byte, error) { return enum.Marshal(c, clearanceNames) }

// UnmarshalText reads the text of [ClearanceAt.String]. On error the receiver keeps its value.
func (c *ClearanceAt) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, clearanceNames)
}

// pistons adds clearances, cold and running, and what rules of thumb say of clearance and gap.
func (s *Sheet) pistons() error {
	e := s.Job.Engine
	var err error
	if e.Duty != fit.DutyNotSaid {
		if s.UsualClearance, err = fit.Usual(e.Duty, e.Bore); err != nil {
			return err
		}
	}
	if e.Running.Piston != (bore.Temperature{}) {
		_, assumed, err := e.pistonMetal()
		if err != nil {
			return err
		}
		s.Assumed = append(s.Assumed, assumed...)
	}
	if len(e.Rings) > 0 {
		if _, s.UsualGap, err = rings.Rules(e.Bore); err != nil {
			return err
		}
	}
	for i := range s.Cylinders {
		c, given := &s.Cylinders[i], s.Job.Cylinders[i]
		if cmp.Or(given.PistonFor, given.Over) == given.Over && s.Choice.Cylinders[i].Route != oversize.Sleeve {
			for _, at := range []struct {
				where ClearanceAt
				size  uncertainty.Estimate
			}{{LargestNow, c.Bore.Largest.Size}, {SmallestNow, c.Bore.Smallest.Size}} {
				if err := c.clearance(e, at.where, at.size, given.Piston); err != nil {
					return err
				}
			}
		}
		if aim := s.Choice.Cylinders[i].Aim; aim != 0 {
			// With the doubt that the gauge will prove the finished bore with.
			size := c.Bore.Mean
			size.Value = aim
			if err := c.clearance(e, AtAim, size, s.pistonFor(i)); err != nil {
				return err
			}
		}
		if stays(s.Choice.Cylinders[i]) {
			const ends = 2 // the least and the greatest clearance
			if c.KeptClearances, err = s.clearanceFindings(i, c.Bore, s.Job.risk().Share(ends*len(s.Cylinders))); err != nil {
				return err
			}
		}
	}
	return nil
}

// stays reports whether a bore keeps its size and form.
func stays(c oversize.CylinderChoice) bool {
	return c.Work == oversize.Deglaze || c.Route == oversize.MakersProcess
}

// clearance adds one clearance, if there is a piston for it.
func (c *CylinderSheet) clearance(e Engine, at ClearanceAt, size uncertainty.Estimate, p Piston) error {
	if p == (Piston{}) {
		return nil
	}
	piston, err := p.fit()
	if err != nil {
		return err
	}
	k := Clearance{At: at}
	if k.Size, err = fit.Clearance(size, piston); err != nil {
		return err
	}
	t := e.Running
	if t.Bore != (bore.Temperature{}) && t.Piston != (bore.Temperature{}) {
		part, _, err := e.part()
		if err != nil {
			return err
		}
		metal, _, err := e.pistonMetal()
		if err != nil {
			return err
		}
		warm := fit.Warm{Bore: t.Bore.Value, Piston: t.Piston.Value, BoreMaterial: part, PistonMaterial: metal}
		if k.Hot, err = warm.Clearance(size, piston); err != nil {
			return err
		}
	}
	c.Clearances = append(c.Clearances, k)
	return nil
}

// pistonMetal returns the material of the pistons, and the assumption where the job names none.
func (e Engine) pistonMetal() (material.Material, []string, error) {
	return metalOr(e.PistonMaterial, material.EutecticAluminium(), "a piston")
}

// pistonFor returns the piston that cylinder i is going to have: the one matched to it, the one in
// hand where it is for the size chosen, else the one on offer for that size.
func (s *Sheet) pistonFor(i int) Piston {
	given, over := s.Job.Cylinders[i], s.Choice.Cylinders[i].Over
	if given.Piston != (Piston{}) && cmp.Or(given.PistonFor, given.Over) == over {
		return given.Piston
	}
	for _, o := range s.Job.Engine.Oversizes {
		switch {
		case o.Over != over:
		case s.Matched != nil:
			return o.Pistons[s.Matched.Pairs[i].Piston]
		default:
			return o.piston()
		}
	}
	return Piston{}
}

// piston returns the piston that the bores of a size are cut for: the one on offer, or of those that
// came one by one the middle one in size.
func (o Oversize) piston() Piston {
	if o.Piston != (Piston{}) || len(o.Pistons) == 0 {
		return o.Piston
	}
	bySize := slices.Clone(o.Pistons)
	slices.SortFunc(bySize, func(a, b Piston) int { return cmp.Compare(a.Size, b.Size) })
	return bySize[len(bySize)/2]
}

// match finds the piston for each finished bore, where those that came for its size were measured
// one by one and every bore has been read.
func (s *Sheet) match() error {
	i := slices.IndexFunc(s.Job.Engine.Oversizes, func(o Oversize) bool {
		return o.Over == s.Choice.Over && len(o.Pistons) > 0
	})
	if i < 0 || s.Choice.Route != oversize.BoreOversize {
		return nil
	}
	m := fit.Matching{Window: s.Job.Engine.Limits.PistonClearance}
	for _, c := range s.Cylinders {
		if c.Proof == nil {
			s.omit("matching of pistons", "read every finished bore")
			return nil
		}
		m.Bores = append(m.Bores, c.Proof.Bore.Smallest.Size.Value)
	}
	for _, p := range s.Job.Engine.Oversizes[i].Pistons {
		piston, err := p.fit()
		if err != nil {
			return err
		}
		skirt, err := piston.Skirt()
		if err != nil {
			return err
		}
		m.Pistons = append(m.Pistons, skirt.Value)
	}
	matched, err := m.Match()
	if err != nil {
		s.omit("matching of pistons", "%v", err)
		return nil
	}
	s.Matched = &matched
	return nil
}

// clearanceFindings holds the clearance of a piston in a bore against the window: for a bore that stays,
// up to what a worn one may have.
func (s *Sheet) clearanceFindings(i int, g bore.Geometry, r uncertainty.Risk) ([]uncertainty.Finding, error) {
	window := s.Job.Engine.Limits.PistonClearance
	if stays(s.Choice.Cylinders[i]) {
		window.Max = max(window.Max, s.Job.Engine.Limits.WornClearance)
	}
	p := s.pistonFor(i)
	if window.IsZero() || p == (Piston{}) {
		return nil, nil
	}
	piston, err := p.fit()
	if err != nil {
		return nil, err
	}
	r.Reject = r.Share(len(places(g))).Reject // any place may have become the extreme by chance
	var fs []uncertainty.Finding
	for _, at := range []struct {
		what string
		size uncertainty.Estimate
		w    units.Limits
	}{
		{"least clearance", g.Smallest.Size, units.Limits{Min: window.Min}},
		{"greatest clearance", g.Largest.Size, units.Limits{Max: window.Max}},
	} {
		e, err := fit.Clearance(at.size, piston)
		if err != nil {
			return nil, err
		}
		f, err := uncertainty.Judge(e, at.w, r)
		if err != nil {
			return nil, err
		}
		f.Subject = at.what
		fs = append(fs, f)
	}
	return fs, nil
}
