// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// hot adds the end gap at the running temperatures. Ends that butt are a negative gap.
func (s *Sheet) hot(r *RingSheet, ring Ring) error {
	t := s.Job.Engine.Running
	if t == (Running{}) {
		return nil
	}
	cold := r.Gap
	if r.Filing.Now.Subject != "" {
		cold = r.Filing.After()
	}
	if cold.Value <= 0 {
		return nil // it overlaps cold already
	}
	metal, _, err := metalOr(ring.Material, material.GreyIron(), "a ring")
	if err != nil {
		return err
	}
	part, _, err := s.Job.Engine.part()
	if err != nil {
		return err
	}
	h := rings.Heat{
		Ring: metal, Bore: part, RingAt: t.Ring.Value, BoreAt: t.Bore.Value,
		RingWithin: t.Ring.Within, BoreWithin: t.Bore.Within,
	}
	if r.Hot, err = h.Hot(cold, r.Bore); errors.Is(err, rings.ErrButts) {
		err = nil
	}
	return err
}

// follows adds whether a ring follows a bore that is only deglazed: its form stays as read.
func (s *Sheet) follows(r *RingSheet, ring Ring, i int) error {
	if s.Choice.Cylinders[i].Work != oversize.Deglaze || ring.Thickness == 0 || ring.Height == 0 || ring.FreeGap == 0 {
		return nil
	}
	var form []bore.Harmonic
	for _, p := range s.Cylinders[i].Bore.Planes {
		if p.Depth == s.Cylinders[i].Bore.OvalityAt {
			form = p.Harmonics()
		}
	}
	if len(form) == 0 {
		return nil
	}
	metal, _, err := metalOr(ring.Material, material.GreyIron(), "a ring")
	if err != nil {
		return err
	}
	section := rings.Section{Bore: s.Job.Engine.Bore, Thickness: ring.Thickness, Height: ring.Height, Young: metal.Young}
	tension, err := section.FromGaps(ring.FreeGap, r.Gap.Value)
	if err != nil {
		return err
	}
	c, err := tension.Follow(form)
	if err == nil {
		r.Follows = &c
	}
	return err
}

// finished returns the size that cylinder i will have, with the doubt the gauge will prove it
// with, and whether it is known.
func (s *Sheet) finished(i int) (uncertainty.Estimate, bool) {
	c, choice := s.Cylinders[i], s.Choice.Cylinders[i]
	switch {
	case choice.Aim != 0:
		e := c.Bore.Mean
		e.Value = choice.Aim
		return e, true
	case choice.Route == oversize.HoneAndKeep:
		// Where the bore is smallest the gap is, and there it must not butt.
		return c.Bore.Smallest.Size, true
	}
	return uncertainty.Estimate{}, false
}

// ringGaps adds each measured ring's gap in the finished bore, and what to file.
func (s *Sheet) ringGaps(i int) error {
	j := s.Job
	measured := 0
	for _, c := range j.Cylinders {
		measured += len(c.Rings)
	}
	risk := j.risk().Share(measured) // per engine, over all its rings
	size, known := s.finished(i)
	if len(j.Cylinders[i].Rings) == 0 {
		return nil
	}
	if !known {
		s.omit("ring gaps of cylinder "+s.Cylinders[i].Name, "the finished size is not known yet")
		return nil
	}
	for _, given := range j.Cylinders[i].Rings {
		gap, err := certified(given.Gap, given.Uncertainty)
		if err != nil {
			return err
		}
		r := RingSheet{Ring: given.Ring, Bore: size}
		r.Gap, err = rings.Gap{Measured: gap, Bore: uncertainty.Estimate{Value: given.Bore}}.In(size)
		if err != nil {
			return err
		}
		for _, ring := range j.Engine.Rings {
			if ring.Name != given.Ring {
				continue
			}
			if !ring.Gap.IsZero() {
				r.Filing, err = rings.File(r.Gap, ring.Gap, risk)
				if errors.Is(err, rings.ErrDoubt) {
					r.Doubtful, err = true, nil
				}
				if err != nil {
					return err
				}
			}
			if ring.GapLimit != 0 {
				r.Service, err = uncertainty.Judge(r.Gap, units.Limits{Max: ring.GapLimit}, risk)
				if err != nil {
					return err
				}
				r.Service.Subject = "end gap in service"
			}
			if err := s.hot(&r, ring); err != nil {
				s.omit("hot gap of ring "+ring.Name, "%v", err)
			}
			if err := s.follows(&r, ring, i); err != nil {
				s.omit("whether ring "+ring.Name+" follows the bore", "%v", err)
			}
		}
		s.Cylinders[i].Rings = append(s.Cylinders[i].Rings, r)
	}
	return nil
}
