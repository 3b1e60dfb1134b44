// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/internal/trace"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A WallForm is what the traces of a bore show at 20 °C, most of which diameters hold nothing of: roundness and
// cylindricity, where the centre runs, odd lobes.
type WallForm struct {
	Traces []TraceForm `json:"traces"` // by depth
	// Cylinder is the minimum zone of all traces together, Cylindricity its CYLt with its doubt, Cone the least-squares
	// cone and Taper its taper, on the diameter from the first trace to the last, with its doubt, Median the line of
	// the centres and Bend how far it is bent; zero of a single trace, the cone also where the traces hold none.
	Cylinder     form.Cylinder         `json:"cylinder,omitzero"`
	Cylindricity uncertainty.Estimate  `json:"cylindricity,omitzero"`
	Cone         form.Cone             `json:"cone,omitzero"`
	Taper        uncertainty.Estimate  `json:"taper,omitzero"`
	Median       form.MedianLine       `json:"median,omitzero"`
	Bend         uncertainty.Estimate  `json:"bend,omitzero"`
	Unseen       []bore.Unseen         `json:"unseen,omitzero"`   // parts of ring travel without a trace, and odd lobes for too few points
	Findings     []uncertainty.Finding `json:"findings,omitzero"` // of roundness and cylindricity, where they are limited
}

// A TraceForm is one trace.
type TraceForm struct {
	Depth     units.Length         `json:"depth"`     // below the deck
	Radii     []units.Length       `json:"radii"`     // at 20 °C, from the axis of the spindle, as evenly as in the job
	Mean      units.Length         `json:"mean"`      // diameter of its least-squares circle
	Circle    form.Circle          `json:"circle"`    // its minimum zone
	Roundness uncertainty.Estimate `json:"roundness"` // RONt of that
	// Lobes are radial, from order 2 to a seventh of the points and 15 at most: what is finer is not seen.
	Lobes []bore.Harmonic `json:"lobes,omitzero"`
}

// A traced bore is a wall as its traces show it, and the diameters along every direction of them.
type tracedBore struct {
	form WallForm
	bore bore.Geometry
	wall form.Wall // at 20 °C; of two traces and more
}

// trace works out the traces of a cylinder; nil where there are none. by is the gauge as the job has it, spindle
// what bore makes of the instrument.
func (g given) trace(ts []Trace, by Gauge, spindle bore.Gauge) (*tracedBore, error) {
	if len(ts) == 0 {
		return nil, nil
	}
	var t tracedBore
	var readings []bore.Reading
	var sections []form.Section
	for _, one := range ts {
		rs, err := one.round().Diameters(g.zero(by))
		if err != nil {
			return nil, err
		}
		f, section, err := g.turning().Section(one.round(), g.zero(by), spindle)
		if err != nil {
			return nil, fmt.Errorf("at %v: %w", f.Depth, err)
		}
		readings, sections, t.form.Traces = append(readings, rs...), append(sections, section), append(t.form.Traces, TraceForm(f))
		if len(f.Radii) < trace.OddLobes && len(t.form.Unseen) == 0 {
			t.form.Unseen = append(t.form.Unseen, bore.UnseenOddLobes)
		}
	}
	var err error
	if t.bore, err = g.layout().Analyse(readings, spindle); err != nil {
		return nil, err
	}
	for _, u := range t.bore.Unseen {
		if trace.OfTravel(u) {
			t.form.Unseen = append(t.form.Unseen, u)
		}
	}
	if len(sections) > 1 {
		w, err := g.turning().Together(sections)
		if err != nil {
			return nil, err
		}
		f := &t.form
		t.wall, f.Cylinder, f.Cylindricity, f.Cone, f.Taper, f.Median, f.Bend = w.Wall, w.Cylinder, w.Cylindricity, w.Cone, w.Taper, w.Median, w.Bend
	}
	g.judgeForm(&t.form)
	return &t, nil
}

// turning is the spindle as package trace has it.
func (g given) turning() trace.Spindle { return trace.Spindle(g.spindle) }

// judgeForm holds a traced wall against the maker's limits on its form, which share the risk of a row. Any two points
// may have become the extremes by chance.
func (g given) judgeForm(f *WallForm) {
	l := g.Engine.Limits
	points := 0
	for _, t := range f.Traces {
		points += len(t.Radii)
	}
	r := g.risk.row.Share(2)
	r.Reject = r.Share(points).Reject
	for _, q := range []struct {
		subject string
		found   uncertainty.Estimate
		limit   units.Length
	}{{"roundness", f.leastRound().Roundness, l.Roundness}, {"cylindricity", f.Cylindricity, l.Cylindricity}} {
		if q.limit != 0 && q.found != (uncertainty.Estimate{}) {
			f.Findings = append(f.Findings, finding(q.subject, q.found, units.Limits{Max: q.limit}, r))
		}
	}
}

// cleanUpByAxis returns the clean-up about the axis that a trace below ring travel shows, square to the deck, and whether there
// is one: the indicator was set, its axis stood square as far as the job says, no pit goes deeper, and no diameter that was read is larger than what was traced.
func (g given) cleanUpByAxis(t *tracedBore, w bore.Wear, read bore.Geometry) (c bore.CleanUp, known bool, err error) {
	low := g.Engine.Layout.RingBottom
	at := slices.IndexFunc(t.form.Traces, func(f TraceForm) bool { return low != 0 && f.Depth > low })
	if at < 1 || !g.spindle.OnStandard || g.spindle.OutOfSquare == 0 || g.Gauge.Standard == (Standard{}) || len(w.Pits) > 0 || len(t.form.Unseen) > 0 ||
		read.Largest.Size.Value > t.bore.Largest.Size.Value {
		return c, false, nil
	}
	along, err := t.wall.Along(form.Square(t.form.Median.Locals[at].Centre))
	if err != nil {
		return c, false, err
	}
	radius, err := g.turning().Radial(t.bore.Largest.Size.Std)
	if err != nil {
		return c, false, err
	}
	w.OutOfSquare += g.spindle.OutOfSquare
	c, err = bore.CleanUpRadial(along.Radial(0), radius, w.Allowances)
	return c, err == nil, err
}

// unseen returns what readings and traces together cannot show.
func (t *tracedBore) unseen(by []bore.Unseen) []bore.Unseen {
	if t == nil {
		return by
	}
	return trace.Unseen(by, t.bore.Unseen, t.form.Unseen)
}

// judge holds the traced diameters against limits, those of size only where the indicator was set, and returns for each
// limit the worse of two findings.
func (t *tracedBore) judge(read []bore.Finding, l bore.Limits, sized bool, r uncertainty.Risk) ([]bore.Finding, error) {
	if !sized {
		l.New, l.Service = units.Limits{}, units.Limits{}
	}
	traced, err := t.bore.Judge(l, r)
	return trace.Worse(read, traced), err
}

// has reports whether there is a trace at a depth.
func (f *WallForm) has(depth units.Length) bool {
	return f != nil && slices.ContainsFunc(f.Traces, func(t TraceForm) bool { return t.Depth == depth })
}

// cleanUp returns the clean-up of a worn bore: about its axis where traces show that, else as far as diameters do.
func (g given) cleanUp(w bore.Wear, r sitting) (bore.CleanUp, error) {
	c, err := r.bore.CleanUp(w)
	if err != nil || r.traced == nil {
		return c, err
	}
	if about, known, err := g.cleanUpByAxis(r.traced, w, r.bore); known || err != nil {
		return about, err
	}
	return c, nil
}
