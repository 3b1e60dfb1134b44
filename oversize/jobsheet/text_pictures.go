// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"maps"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
)

// Pictures stand behind the figures that they show, where the typist prints any. Where there is nothing to draw there
// is none, and no sheet fails for want of a drawing.

// draw adds a picture.
func (s *draft) draw(p page.Picture, err error) {
	if err == nil {
		s.add(p)
	}
}

// drawBore draws the wear of a cylinder and, where no trace shows more, the plane where it is most oval.
func (s *draft) drawBore(g bore.Geometry, m picture.Marks) {
	if !s.pictures {
		return
	}
	few, fewer := show.Few(g)
	s.draw(picture.Wear(few, s.Job.Engine.Layout, m, s.show.First()))
	if fewer {
		return
	}
	if p, ok := g.At(g.OvalityAt); ok && g.HasOvality {
		s.draw(picture.Section(p, s.show.First()))
	}
}

// marks are the sizes that a worn bore is seen against.
func (s *draft) marks(i int) picture.Marks {
	var m picture.Marks
	for _, f := range s.Cylinders[i].Findings {
		switch f.Limit {
		case bore.LimitNew:
			m.New = f.Limits
		case bore.LimitService:
			m.Service = f.Limits.Max
		}
	}
	if s.decided() {
		m.Bored, m.Finish = s.Choice.Cylinders[i].Bored, s.Choice.Cylinders[i].Finish
	}
	return m
}

// drawLadder draws the cylinders beside the sizes that were held against their clean-up, and the size chosen.
func (s *draft) drawLadder() {
	if !s.pictures {
		return
	}
	byOver := map[units.Length]picture.Rung{}
	for _, c := range s.Choice.Cylinders {
		for _, r := range c.Refused {
			if r.Route == oversize.BoreOversize && r.Finding.Limits.HasMax() && (r.Reason == oversize.NoCleanUp || r.Reason == oversize.CleanUpNotProven) {
				byOver[r.Over] = picture.Rung{Bored: r.Finding.Limits.Max}
			}
		}
	}
	for _, c := range s.Choice.Cylinders { // what was chosen says more
		if c.Route == oversize.BoreOversize && c.Bored != 0 {
			byOver[c.Over] = picture.Rung{Bored: c.Bored, Finish: c.Finish}
		}
	}
	sizes := slices.Sorted(maps.Keys(byOver))
	var rungs []picture.Rung
	for _, over := range sizes {
		r := byOver[over]
		r.Name = show.In{s.show.First()}.Over(over)
		rungs = append(rungs, r)
	}
	var columns []picture.Column
	for i, c := range s.Cylinders {
		k := picture.Column{Name: c.Name, Geometry: c.Bore, CleanUp: c.CleanUp.Original, Rung: -1}
		if choice := s.Choice.Cylinders[i]; choice.Route == oversize.BoreOversize {
			k.Rung = slices.Index(sizes, choice.Over)
			if choice.Shift > 0 {
				k.CleanUp = c.CleanUp.Worn
			}
		}
		columns = append(columns, k)
	}
	s.draw(picture.Ladder(columns, rungs, s.show.First()))
}

// drawHoning draws the crosshatch, the speeds on hand, and where the metal goes.
func (s *draft) drawHoning() {
	if !s.pictures {
		return
	}
	h := s.Honing
	if r := h.Reach; r != nil {
		leaves, wall := h.Leaves, h.Wall // the wall is of the setting used
		switch {
		case h.Leaves.IsZero():
			leaves = r.Leaves
		case h.Used != h.Now:
			wall = hone.Profile{}
		}
		s.draw(picture.Crosshatch(r.Want, leaves, wall))
		s.draw(picture.Speeds(*r, h.Now))
	}
	s.draw(picture.Removal(h.Removal, s.show.First()))
}

// drawRings draws the gaps of a cylinder's rings.
func (s *draft) drawRings(c CylinderSheet) {
	if !s.pictures {
		return
	}
	for _, r := range c.Rings {
		gaps := []picture.Gap{{Name: "cold", Size: r.Gap}}
		if r.Filing.Target != 0 {
			gaps = append(gaps, picture.Gap{Name: "filed", Size: r.filed()})
		}
		if r.Hot.Subject != "" {
			gaps = append(gaps, picture.Gap{Name: "hot", Size: r.Hot.Measured})
		}
		s.draw(picture.RingGap(r.Ring+", cylinder "+c.Name, gaps, s.Job.Engine.ring(r.Ring).Gap, s.show.First()))
	}
}

// drawTexture draws the profiles of a cylinder with their material ratio curves; where there are none, the curve of the means
// of its places.
func (s *draft) drawTexture(c Cylinder) {
	if !s.pictures {
		return
	}
	for _, p := range c.Profiles {
		if r, err := p.line().Roughness(); err == nil {
			s.draw(picture.Texture("Texture: "+p.Place, r))
		}
	}
	if len(c.Profiles) > 0 {
		return
	}
	wall, err := surface.Analyse(c.Texture, s.Job.Gauge.Profiler)
	if err != nil {
		return
	}
	var p surface.Plateau
	for _, v := range wall.Values {
		switch v.Parameter {
		case "Rpk":
			p.Rpk = v.Length.Value
		case "Rk":
			p.Rk = v.Length.Value
		case "Rvk":
			p.Rvk = v.Length.Value
		case "Mr1":
			p.Mr1 = v.Share.Value
		case "Mr2":
			p.Mr2 = v.Share.Value
		}
	}
	s.draw(picture.MaterialRatio(p))
}

// drawPorts draws the ports with the ends of pegged rings.
func (s *draft) drawPorts() {
	if !s.pictures {
		return
	}
	var ends []picture.RingEnd
	for _, r := range s.Job.Engine.Rings {
		if r.Peg != nil {
			ends = append(ends, picture.RingEnd{Name: r.Name, At: *r.Peg})
		}
	}
	s.draw(picture.Ports(s.Job.Engine.Layout, s.Job.Engine.Bore, ends, s.show.First()))
}
