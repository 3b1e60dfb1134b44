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

// filed is the gap once what is to be filed is off.
func (r RingSheet) filed() uncertainty.Estimate {
	if r.Filing.Now.Subject == "" {
		return r.Gap // nothing was planned
	}
	return r.Filing.After()
}

// portRoom adds how far the ends of a pegged ring stay from the ports.
func (s *Sheet) portRoom(r *RingSheet, ring Ring) error {
	layout := s.Job.Engine.Layout
	if ring.Peg == nil || len(layout.Ports) == 0 || layout.RingBottom == 0 {
		return nil
	}
	gap := r.filed()
	if gap.Value <= 0 {
		return nil // it does not go in at all
	}
	ends := rings.Ends{Peg: ring.Peg.Angle, Gap: gap.Value, Play: ring.Play, Bore: r.Bore.Value}
	var err error
	r.Ports, err = ends.Clear(layout.Ports, rings.Travel{Top: layout.RingTop, Bottom: layout.RingBottom})
	return err
}

// heat is a ring and its bore in work, and whether the job says how warm they are.
func (s *Sheet) heat(ring Ring) (h rings.Heat, known bool, err error) {
	t := s.Job.Engine.Running
	if t.Ring == (bore.Temperature{}) || t.Bore == (bore.Temperature{}) {
		return h, false, nil
	}
	metal, _, err := metalOr(ring.Material, material.GreyIron(), "a ring")
	if err != nil {
		return h, false, err
	}
	part, _, err := s.Job.Engine.part()
	return rings.Heat{
		Ring: metal, Bore: part, RingAt: t.Ring.Value, BoreAt: t.Bore.Value,
		RingWithin: t.Ring.Within, BoreWithin: t.Bore.Within,
	}, true, err
}

// hot adds the end gap at the running temperatures, and whether it is enough: ends that butt are a
// negative gap, and never are.
func (s *Sheet) hot(r *RingSheet, h rings.Heat, ring Ring, risk uncertainty.Risk) error {
	cold := r.filed()
	if cold.Value <= 0 {
		return nil // it overlaps cold already
	}
	var err error
	if r.Hot, err = h.Hot(cold, r.Bore); err != nil && !errors.Is(err, rings.ErrButts) {
		return err
	}
	if ring.HotGap != 0 {
		if r.Least, err = h.Least(r.Bore.Value, ring.HotGap); err != nil {
			return err
		}
	}
	const touching = units.Picometre // the least gap that is one
	if r.HotEnough, err = uncertainty.Judge(r.Hot, units.Limits{Min: max(ring.HotGap, touching)}, risk); err != nil {
		return err
	}
	r.HotEnough.Subject = "end gap when hot"
	return nil
}

// follows adds whether a ring follows a bore that is finished, or only deglazed: its form stays as
// read.
func (s *Sheet) follows(r *RingSheet, ring Ring, i int) error {
	if ring.Thickness == 0 || ring.Height == 0 || ring.FreeGap == 0 {
		return nil
	}
	g := s.Cylinders[i].Bore
	switch proof := s.Cylinders[i].Proof; {
	case proof != nil:
		g = proof.Bore
	case !stays(s.Choice.Cylinders[i]):
		return nil
	}
	var form []bore.Harmonic
	for _, p := range g.Planes {
		if p.Depth == g.OvalityAt {
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

// finished returns the size that a ring of cylinder i will be in, where that bore is smallest, at
// what depth, and whether it is known. Of a bore still to be cut it is the size to work to, with the
// doubt that the gauge will prove it with.
func (s *Sheet) finished(i int) (size uncertainty.Estimate, depth units.Length, known bool) {
	c, choice := s.Cylinders[i], s.Choice.Cylinders[i]
	switch {
	case c.Proof != nil:
		size, depth = s.narrowest(c.Proof.Bore)
		return size, depth, true
	case choice.Aim != 0:
		e := c.Bore.Mean
		e.Value = choice.Aim
		return e, 0, true
	case choice.Route == oversize.HoneAndKeep, choice.Route == oversize.MakersProcess:
		size, depth = s.narrowest(c.Bore)
		return size, depth, true
	}
	return uncertainty.Estimate{}, 0, false
}

// narrowest returns the size and the depth at which a bore is smallest in ring travel: there a ring
// must not butt. Where travel is not known it is the smallest place of all.
func (s *Sheet) narrowest(g bore.Geometry) (uncertainty.Estimate, units.Length) {
	layout := s.Job.Engine.Layout
	var levels []rings.Level
	for _, p := range g.Planes {
		levels = append(levels, rings.Level{Depth: p.Depth, Diameter: p.Mean})
	}
	at, err := rings.Narrowest(levels, rings.Travel{Top: layout.RingTop, Bottom: layout.RingBottom})
	if err != nil {
		return g.Smallest.Size, g.Smallest.Depth
	}
	return at.Diameter, at.Depth
}

// ringGaps adds each measured ring's gap in its finished bore, and what to file.
func (s *Sheet) ringGaps() error {
	judged := 0
	for _, c := range s.Job.Cylinders {
		for _, given := range c.Rings {
			judged += s.judged(s.Job.Engine.ring(given.Ring))
		}
	}
	risk := s.Job.risk().Share(max(judged, 1)) // per engine, over all its rings and what is judged of each
	for i := range s.Cylinders {
		if err := s.ringGapsOf(i, risk); err != nil {
			return err
		}
	}
	return nil
}

// judged is how many things are judged of a ring: its gap against a new ring's window and that of a used
// one, and when hot.
func (s *Sheet) judged(ring Ring) int {
	t := s.Job.Engine.Running
	n := 0
	for _, is := range []bool{!ring.Gap.IsZero(), ring.GapLimit != 0, t.Ring != (bore.Temperature{}) && t.Bore != (bore.Temperature{})} {
		if is {
			n++
		}
	}
	return n
}

func (s *Sheet) ringGapsOf(i int, risk uncertainty.Risk) error {
	j := s.Job
	size, depth, known := s.finished(i)
	if len(j.Cylinders[i].Rings) == 0 {
		return nil
	}
	if !known {
		s.omit("ring gaps of cylinder "+s.Cylinders[i].Name, "the finished size is not known yet")
		return nil
	}
	for _, given := range j.Cylinders[i].Rings {
		r := RingSheet{Ring: given.Ring, Bore: size, SetAt: depth}
		if err := s.ringGap(&r, j.Engine.ring(given.Ring), given, i, risk); err != nil {
			return err
		}
		s.Cylinders[i].Rings = append(s.Cylinders[i].Rings, r)
	}
	return nil
}

// ringGap works out one ring in its bore: from the gap as measured there, or else as the first
// reading foretells it.
func (s *Sheet) ringGap(r *RingSheet, ring Ring, given RingGap, i int, risk uncertainty.Risk) error {
	first, err := certified(given.Gap, given.Uncertainty)
	if err != nil {
		return err
	}
	if r.Gap, err = (rings.Gap{Measured: first, Bore: uncertainty.Estimate{Value: given.Bore}}).In(r.Bore); err != nil {
		return err
	}
	there := s.Cylinders[i].Proof != nil || stays(s.Choice.Cylinders[i]) // else that bore is still to come
	if given.Finished != 0 && there {
		r.Foretold = r.Gap
		if r.Gap, err = certified(given.Finished, given.Uncertainty); err != nil {
			return err
		}
		if r.Grown, err = rings.DiameterChange(first, r.Gap); err != nil {
			return err
		}
	}
	window := ring.Gap
	heat, warm, err := s.heat(ring)
	if err != nil {
		return err
	}
	if warm && ring.HotGap != 0 && !window.IsZero() {
		switch cut, err := heat.Window(window, r.Bore.Value, ring.HotGap); {
		case errors.Is(err, rings.ErrButts):
			r.Unfit = true
		case err != nil:
			s.omit("hot gap of ring "+ring.Name, "%v", err)
		default:
			window = cut
		}
	}
	if err := s.judgeGap(r, ring, window, given, i, risk); err != nil {
		return err
	}
	if err := s.portRoom(r, ring); err != nil {
		return err
	}
	if warm {
		if err := s.hot(r, heat, ring, risk); err != nil {
			s.omit("hot gap of ring "+ring.Name, "%v", err)
		}
	}
	if err := s.follows(r, ring, i); err != nil {
		s.omit("whether ring "+ring.Name+" follows the bore", "%v", err)
	}
	return nil
}

// judgeGap holds the gap against its windows, and plans the filing.
func (s *Sheet) judgeGap(r *RingSheet, ring Ring, window units.Limits, given RingGap, i int, risk uncertainty.Risk) error {
	var err error
	if !window.IsZero() && !r.Unfit {
		r.Filing, err = rings.File(r.Gap, window, risk)
		if errors.Is(err, rings.ErrDoubt) {
			r.Doubtful, err = true, nil
		}
		if err != nil {
			return err
		}
	}
	if ring.GapLimit != 0 {
		if r.Service, err = uncertainty.Judge(r.Gap, units.Limits{Max: ring.GapLimit}, risk); err != nil {
			return err
		}
		r.Service.Subject = "end gap in service"
	}
	if r.Foretold == (uncertainty.Estimate{}) {
		return nil // not measured in this bore
	}
	if stays(s.Choice.Cylinders[i]) && ring.GapLimit != 0 {
		window.Max = ring.GapLimit // a used ring may stay in a bore that stays
	}
	if window.IsZero() && ring.GapLimit != 0 {
		window.Max = ring.GapLimit // all that is known of it
	}
	if window.IsZero() {
		return nil
	}
	r.Measured, err = uncertainty.Judge(r.Gap, window, risk)
	r.Measured.Subject = "end gap as measured"
	return err
}
