// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A read bore is what the survey of one cylinder says; zero where it was not read.
type readBore struct {
	sitting
	coarse  []bore.Coarse
	cleanUp bore.CleanUp
	feeler  uncertainty.Estimate
}

func (g given) readBore(c Cylinder) (r readBore, err error) {
	if !c.surveyed() {
		return r, nil
	}
	if r.sitting, err = g.sit(g.survey, c.Readings, c.Traces); err != nil {
		return r, err
	}
	if fresh := g.Engine.Limits.NewBore; fresh.HasMin() && cannot(r.bore.Largest.Size, units.Limits{Min: fresh.Min + c.over()}) {
		return r, fmt.Errorf("the largest, %v at 20 °C, is smaller than a new bore, %v: does the dial run the other way, or does the cylinder stand at another size?",
			r.bore.Largest.Size, fresh.Min+c.over())
	}
	limits := g.limits(c.over())
	if err = g.judge(&r.sitting, limits, g.risk.survey); err != nil {
		return r, err
	}
	if len(oversize.Deciding(r.findings)) < len(r.findings) {
		limits.New = units.Limits{} // decides nothing, so that it does not matter how well it is judged
	}
	if r.coarse, err = r.bore.Coarse(limits); err != nil {
		return r, err
	}
	if r.cleanUp, err = g.cleanUp(g.wear(c, r.bore), r.sitting); err != nil {
		return r, err
	}
	if t := c.FeelerTest; len(t) == 2 {
		r.feeler, err = rings.DiameterChange(t[1].Gap.estimate(byFeeler), t[0].Gap.estimate(byFeeler))
	}
	return r, err
}

// limits returns the maker's limits as package bore wants them, for a cylinder that stands at a size over
// nominal; none that a job may have is shifted out of range.
func (j Job) limits(over units.Length) bore.Limits {
	l := j.Engine.Limits
	b := bore.Limits{Ovality: l.Ovality, Taper: l.Taper, TaperAtDeck: l.TaperAtDeck, Choke: l.Choke, Spread: l.GreatestLessLeast}
	b.New, _ = l.NewBore.Shift(over)
	b.Service, _ = units.Limits{Max: l.Service}.Shift(over)
	return b
}

// wear says what is known of the metal that is gone, besides the readings: the unworn size from below ring
// travel where it was read there, else the least of the maker's.
func (j Job) wear(c Cylinder, g bore.Geometry) bore.Wear {
	w := bore.Wear{
		Share: c.WearShare,
		Allowances: bore.Allowances{
			Locating: length(j.Cuts.Locating), OutOfSquare: length(j.Cuts.OutOfSquare), Surface: length(j.Cuts.Surface),
		},
		Pits: c.Pits,
	}
	if low := j.Engine.Layout.RingBottom; low != 0 {
		for _, p := range g.Planes {
			if p.Depth > low {
				w.UnwornAt = p.Depth
				return w
			}
		}
	}
	unworn := j.Engine.at(c.over())
	if fresh := j.Engine.Limits.NewBore; fresh.HasMin() {
		unworn = fresh.Min + c.over()
	}
	// A bore cannot have been larger when new than where it is smallest now.
	w.Unworn = uncertainty.Estimate{Value: min(unworn, g.Smallest.Size.Value)}
	return w
}
