// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units/material"
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
	tension, err := section.FromClosing(ring.FreeGap - r.Gap.Value)
	if err != nil {
		return err
	}
	c, err := tension.Follow(form)
	if err == nil {
		r.Follows = &c
	}
	return err
}
