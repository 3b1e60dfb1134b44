// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"errors"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
	"borewright.example/units/material"
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

const (
	pointsToALobe = 7  // ISO 12181-2
	leastLobes    = 3  // that a trace shows which proves a roundness: the least that a gauge is blind to
	mostLobes     = 15 // that are looked for
)

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
	m := comparison(spindle)
	for _, one := range ts {
		depth := length(one.Depth)
		shown, err := form.FromRadii(one.shown(g.zero(by)))
		if err != nil {
			return nil, err
		}
		at, err := shown.LeastSquares()
		if err != nil {
			return nil, err
		}
		axes := make([]units.Angle, one.points()/2)
		for i := range axes {
			axes[i] = units.Angle(float64(i)*360/float64(one.points())) * units.Degree
		}
		rs, err := shown.Readings(depth, at.Centre, axes)
		if err != nil {
			return nil, err
		}
		readings = append(readings, rs...)
		f := TraceForm{Depth: depth}
		if f.Radii, err = at20(one.shown(g.zero(by)), m); err != nil {
			return nil, err
		}
		s, err := g.section(&f)
		if err != nil {
			return nil, fmt.Errorf("at %v: %w", depth, err)
		}
		sections = append(sections, s)
		t.form.Traces = append(t.form.Traces, f)
	}
	var err error
	if t.bore, err = g.layout().Measure(readings, spindle); err != nil {
		return nil, err
	}
	for _, f := range t.form.Traces {
		if len(f.Radii) < leastLobes*pointsToALobe && !slices.Contains(t.form.Unseen, bore.UnseenOddLobes) {
			t.form.Unseen = append(t.form.Unseen, bore.UnseenOddLobes)
		}
	}
	for _, u := range t.bore.Unseen {
		if ofTravel(u) {
			t.form.Unseen = append(t.form.Unseen, u)
		}
	}
	if len(sections) > 1 {
		if err := g.whole(&t, sections); err != nil {
			return nil, err
		}
	}
	g.judgeForm(&t.form)
	return &t, nil
}

// comparison is how a radius is compared with the standard; with none where the indicator was set on none.
func comparison(g bore.Gauge) material.Comparison {
	c := material.Comparison{
		StandardAt: units.ReferenceTemperature, GaugeSetAt: units.ReferenceTemperature, GaugeUseAt: g.UsedAt.Value, PartAt: g.PartAt.Value,
		GaugeExpansion: g.Material.Expansion, PartExpansion: g.Part.Expansion,
	}
	if g.Standard.Size > 0 {
		c.Standard, c.StandardAt, c.GaugeSetAt, c.StandardExpansion = g.Standard.Size, g.Standard.At.Value, g.SetAt.Value, g.Standard.Material.Expansion
	}
	return c
}

// section works out one trace.
func (g given) section(f *TraceForm) (form.Section, error) {
	t, err := form.FromRadii(f.Radii)
	if err != nil {
		return form.Section{}, err
	}
	mean, err := t.LeastSquares()
	if err != nil {
		return form.Section{}, err
	}
	f.Mean = 2 * mean.Radius
	if f.Circle, err = t.MinimumZone(); err != nil {
		return form.Section{}, err
	}
	f.Roundness = g.spindle.difference(f.Circle.RONt)
	if most := min(len(f.Radii)/pointsToALobe, mostLobes); most > 1 {
		_, hs, err := t.Harmonics(mean.Centre, most)
		if err != nil {
			return form.Section{}, err
		}
		f.Lobes = hs[1:] // order 1 is where it stands
	}
	return form.Section{Depth: f.Depth, Trace: t}, nil
}

// whole works out all traces together.
func (g given) whole(t *tracedBore, sections []form.Section) (err error) {
	f := &t.form
	if t.wall, err = form.FromSections(sections); err != nil {
		return err
	}
	if f.Cylinder, err = t.wall.Cylinder(form.MZCY); err != nil {
		return err
	}
	f.Cylindricity = g.spindle.difference(f.Cylinder.CYLt)
	switch f.Cone, err = t.wall.Cone(); {
	case errors.Is(err, form.ErrArc): // a wall can be no cone
	case err != nil:
		return err
	default:
		// As if either end were one diameter, of two radii: the cone goes by all of them, and is in less doubt.
		ends := g.spindle.radii(2)
		for i := range ends.Components {
			ends.Components[i].Sensitivity = 2
		}
		if f.Taper, err = ends.Estimate(f.Cone.Taper, units.Micrometre); err != nil {
			return err
		}
	}
	f.Median, err = t.wall.MedianLine()
	f.Bend = g.spindle.difference(f.Median.Bend)
	return err
}

// difference returns what lies between two radii of one set-up, with the doubt of both: roundness, cylindricity and
// bend are such differences, or of means of radii, which are in less doubt.
//
// That holds for a minimum zone too, although its centre is chosen: with the weights of the contacts of the true zone,
// the width found is at least the weighed mean of the outer radii less that of the inner ones, in which the centre
// cancels.
func (s Spindle) difference(value units.Length) uncertainty.Estimate {
	e, err := s.radii(2).Estimate(value, units.Micrometre)
	if err != nil { // of no spindle that a job may have: then nothing is known
		return uncertainty.Estimate{Value: value, Std: units.MaxLength}
	}
	return e
}

// radii is the budget of so many radii that share nothing.
func (s Spindle) radii(n int) (b uncertainty.Budget) {
	for range n {
		b.Components = append(b.Components,
			uncertainty.Component{Name: "scatter of a radius", Sensitivity: 1, Std: s.Repeatability.In(units.Micrometre)},
			uncertainty.Component{Name: "error of a radius", Sensitivity: 1, Std: uncertainty.Rectangular(s.Error.In(units.Micrometre))})
	}
	return b
}

// gauge is the spindle as an instrument that reads diameters, two radii each: both may err alike.
func (s Spindle) gauge(g bore.Gauge) bore.Gauge {
	both := Spindle{Repeatability: s.Repeatability}.difference(0)
	g.Kind, g.Resolution, g.Repeatability, g.RepeatabilityDoF, g.DialError = bore.TwoPoint, 0, both.Std, 0, 2*s.Error
	if !s.OnStandard {
		g.Standard = bore.Standard{}
	}
	return g
}

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
	doubt := g.spindle.radii(2) // of the radius, and of the centre as if it were one
	doubt.Components = append(doubt.Components, uncertainty.Component{Name: "size", Sensitivity: 0.5, Std: t.bore.Largest.Size.Std.In(units.Micrometre)})
	radius, err := doubt.Estimate(0, units.Micrometre)
	if err != nil {
		return c, false, err
	}
	w.OutOfSquare += g.spindle.OutOfSquare
	c, err = bore.CleanUpRadial(along.Radial(0), radius.Std, w.Allowances)
	return c, err == nil, err
}

// ofTravel reports whether a blind spot is one along ring travel.
func ofTravel(u bore.Unseen) bool {
	return u == bore.UnseenTravel || slices.Contains(unseenTravel[:], u)
}

// shownByTraces are the blind spots of diameters in each plane that traces from end to end of ring travel do not have,
// though the diameters of the traces may; a trace at one depth shows none of them at another.
var shownByTraces = []bore.Unseen{
	bore.UnseenOvality, bore.UnseenBetweenAxes, bore.UnseenFolded, bore.UnseenFourLobes, bore.UnseenHigherLobes, bore.UnseenOddLobes,
	bore.UnseenLobesInSize, bore.UnseenCentre,
}

// unseen returns what readings and traces together cannot show.
func (t *tracedBore) unseen(by []bore.Unseen) []bore.Unseen {
	if t == nil {
		return by
	}
	whole := !slices.ContainsFunc(t.form.Unseen, ofTravel)
	return slices.DeleteFunc(slices.Clone(by), func(u bore.Unseen) bool {
		if slices.Contains(shownByTraces, u) {
			return whole && (!slices.Contains(t.bore.Unseen, u) || len(t.form.Unseen) == 0)
		}
		return !slices.Contains(t.bore.Unseen, u)
	})
}

// judge holds the traced diameters against limits, those of size only where the indicator was set, and returns for each
// limit the worse of two findings.
func (t *tracedBore) judge(read []bore.Finding, l bore.Limits, sized bool, r uncertainty.Risk) ([]bore.Finding, error) {
	if !sized {
		l.New, l.Service = units.Limits{}, units.Limits{}
	}
	traced, err := t.bore.Judge(l, r)
	if err != nil {
		return nil, err
	}
	all := slices.Clone(read)
	for i, f := range all {
		for _, q := range traced {
			if q.Limit == f.Limit && !q.NotMeasured && (f.NotMeasured || pressing(q.Verdict) > pressing(f.Verdict)) {
				all[i] = q
			}
		}
	}
	return all, nil
}

// pressing orders verdicts, the worst last.
func pressing(v uncertainty.Verdict) int {
	return slices.Index([]uncertainty.Verdict{uncertainty.Within, uncertainty.Undecided, uncertainty.Beyond}, v)
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
