// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A read bore is what the survey of one cylinder says; zero where it was not read.
type readBore struct {
	bore     bore.Geometry
	traced   *tracedBore // nil where it was not traced
	findings []bore.Finding
	coarse   []bore.Coarse
	remedies map[int]uncertainty.Remedy
	cleanUp  bore.CleanUp
	feeler   uncertainty.Estimate
}

// readBores measures and judges every bore that has been read.
func readBores(g given) ([]readBore, error) {
	all := make([]readBore, len(g.Cylinders))
	for i, c := range g.Cylinders {
		if !c.surveyed() {
			continue
		}
		var err error
		if all[i], err = g.readBore(c); err != nil {
			return nil, fault(fmt.Sprintf("cylinders[%d].%s", i, c.readFrom()), err)
		}
	}
	return all, nil
}

func (g given) readBore(c Cylinder) (r readBore, err error) {
	if r.traced, err = g.trace(c.Traces, g.Gauge, g.surveySpindle); err != nil {
		return r, err
	}
	if r.bore, err = g.measureOrTraced(c.Readings, g.Gauge, g.survey, r.traced); err != nil {
		return r, err
	}
	if fresh := g.Engine.Limits.NewBore; fresh.HasMin() && cannot(r.bore.Largest.Size, units.Limits{Min: fresh.Min + c.over()}) {
		return r, fmt.Errorf("the largest, %v at 20 °C, is smaller than a new bore, %v: does the dial run the other way, or does the cylinder stand at another size?",
			r.bore.Largest.Size, fresh.Min+c.over())
	}
	limits, err := g.limits(c.over())
	if err != nil {
		return r, err
	}
	if r.findings, err = g.judge(r.bore, r.traced, c.Readings, limits, g.risk.survey); err != nil {
		return r, err
	}
	if len(oversize.Deciding(r.findings)) < len(r.findings) {
		limits.New = units.Limits{} // decides nothing, so that it does not matter how well it is judged
	}
	if r.coarse, err = r.bore.Coarse(limits); err != nil {
		return r, err
	}
	if r.remedies, err = remedies(r.bore, r.findings); err != nil {
		return r, err
	}
	if r.cleanUp, err = g.cleanUp(g.wear(c, r.bore), r); err != nil {
		return r, err
	}
	if t := c.FeelerTest; len(t) == 2 {
		upper, err := gapEstimate(t[0].Gap)
		if err != nil {
			return r, err
		}
		lower, err := gapEstimate(t[1].Gap)
		if err != nil {
			return r, err
		}
		r.feeler, err = rings.DiameterChange(lower, upper)
		return r, err
	}
	return r, nil
}

// wallForm is what the traces show; nil where there are none.
func (r readBore) wallForm() *WallForm {
	if r.traced == nil {
		return nil
	}
	return &r.traced.form
}

// readFrom is the field that a worn bore is known by.
func (c Cylinder) readFrom() string {
	if len(c.Readings) == 0 {
		return "traces"
	}
	return "readings"
}

// limits returns the maker's limits as package bore wants them, for a cylinder that stands at a size over
// nominal.
func (j Job) limits(over units.Length) (bore.Limits, error) {
	l := j.Engine.Limits
	b := bore.Limits{Ovality: l.Ovality, Taper: l.Taper, TaperAtDeck: l.TaperAtDeck, Choke: l.Choke, Spread: l.GreatestLessLeast}
	for _, w := range []struct {
		to   *units.Limits
		from units.Limits
	}{{&b.New, l.NewBore}, {&b.Service, units.Limits{Max: l.Service}}} {
		if w.from.IsZero() {
			continue
		}
		var err error
		if *w.to, err = w.from.Shift(over); err != nil {
			return b, err
		}
	}
	return b, nil
}

// remedies returns what would settle each undecided finding, by its place.
func remedies(g bore.Geometry, fs []bore.Finding) (map[int]uncertainty.Remedy, error) {
	list := map[int]uncertainty.Remedy{}
	for i, f := range fs {
		if f.Verdict != uncertainty.Undecided || f.NotMeasured {
			continue
		}
		// More readings average out what a place has to itself, and no more.
		r, err := f.Settle(min(g.Largest.Own.Std, f.Measured.Std))
		if err != nil {
			return nil, err
		}
		list[i] = r
	}
	return list, nil
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

// places returns the places that were read, plane by plane, those between ports last.
func places(g bore.Geometry) []bore.Place {
	var list []bore.Place
	for _, planes := range [...][]bore.Plane{g.Planes, g.Bridges} {
		for i := range planes {
			list = append(list, planes[i].Places...)
		}
	}
	return list
}

// unread reports whether no place was.
func unread(g bore.Geometry) bool { return len(g.Planes)+len(g.Bridges) == 0 }

// toRead returns where the places were read: readings without their diameters.
func toRead(places []bore.Place) []bore.Reading {
	var list []bore.Reading
	for _, q := range places {
		list = append(list, bore.Reading{Depth: q.Depth, Axis: q.Axis})
	}
	return list
}

// axesOf returns the axes of readings, in the order of their angles.
func axesOf(rs []bore.Reading) []bore.Axis {
	var axes []bore.Axis
	for _, r := range rs {
		axes = append(axes, r.Axis)
	}
	slices.Sort(axes)
	return slices.Compact(axes)
}
