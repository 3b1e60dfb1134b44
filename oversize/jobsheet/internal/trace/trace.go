// SPDX-License-Identifier: BSD-3-Clause

// Package trace has radii round a bore, as an instrument that turns about an axis takes them.
//
// It says whether all of a trace is there, brings it to 20 °C, reads it as diameters, and works out the form of a wall,
// by package form, with the doubt of the instrument: roundness, cylindricity and bend are no more than the difference of
// two radii of one set-up, and have the doubt of that (ISO 12181-1 and 12180-1 define them; the budget is JCGM 100's).
package trace

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A Trace is one round at one depth: radii from the axis, or deviations of an indicator, plus where the wall is farther off.
// The first points to one end of the thrust axis.
type Trace struct {
	Depth      *units.Length
	Step       units.Angle // from one to the next
	Radii      []units.Length
	Deviations []units.Length
}

const (
	leastPoints = 12   // of a trace,
	mostPoints  = 3600 // and at the most

	pointsToALobe = 7  // ISO 12181-2
	leastLobes    = 3  // that a trace shows which proves a roundness: the least that a gauge is blind to
	mostLobes     = 15 // that are looked for
)

// OddLobes is how many radii show three lobes, the least that a two-point gauge is blind to.
const OddLobes = leastLobes * pointsToALobe

// Points is how many radii a trace has.
func (t Trace) Points() int { return len(t.Radii) + len(t.Deviations) }

// Written returns what stands in a job, and in which field.
func (t Trace) Written() (list []units.Length, field string) {
	if len(t.Deviations) > 0 {
		return t.Deviations, "deviations"
	}
	return t.Radii, "radii"
}

// Shown returns the radii as they were when the trace was taken. Deviations count from zero, where the indicator was set.
func (t Trace) Shown(zero units.Length) []units.Length {
	if len(t.Radii) > 0 {
		return t.Radii
	}
	radii := make([]units.Length, len(t.Deviations))
	for i, d := range t.Deviations {
		radii[i] = zero + d
	}
	return radii
}

// A Fault is what is wrong with a trace.
type Fault struct {
	At    string // the field, "radii[3]"
	Value any    // that stands there; nil where nothing need be shown
	Want  error
}

// Faults returns what is wrong with a trace in a bore of a nominal size: radii are lost, of another unit or of another bore,
// or no trace at all.
func (t Trace) Faults(zero, nominal units.Length) (list []Fault) {
	n, field := t.Points(), "radii"
	if len(t.Deviations) > 0 {
		field = "deviations"
	}
	fault := func(at string, value any, want error) { list = append(list, Fault{at, value, want}) }
	switch {
	case len(t.Radii) > 0 && len(t.Deviations) > 0:
		fault(field, nil, errors.New("want either these or radii, not both"))
		return list
	case n < leastPoints || n > mostPoints || n%2 != 0:
		fault(field, n, fmt.Errorf("want an even number of them, from %d to %d", leastPoints, mostPoints))
		return list
	case !(math.Abs(float64(n)*t.Step.In(units.Degree)-360) < 1e-6): // NaN too
		fault("step", t.Step, fmt.Errorf("%d of them want %.6g°: is one lost?", n, 360/float64(n)))
		return list
	}
	radii := t.Shown(zero)
	for k, r := range radii {
		if err := sense.Near(2*r, nominal); err != nil {
			fault(fmt.Sprintf("%s[%d]", field, k), 2*r, err)
		}
	}
	if _, err := form.FromRadii(radii); err != nil {
		fault(field, nil, err)
	}
	return list
}

// Diameters reads a trace along every direction of it, about the centre of its least-squares circle.
func (t Trace) Diameters(zero units.Length) ([]bore.Reading, error) {
	shown, err := form.FromRadii(t.Shown(zero))
	if err != nil {
		return nil, err
	}
	at, err := shown.LeastSquares()
	if err != nil {
		return nil, err
	}
	axes := make([]units.Angle, t.Points()/2)
	for i := range axes {
		axes[i] = units.Angle(float64(i)*360/float64(t.Points())) * units.Degree
	}
	return shown.Readings(t.depth(), at.Centre, axes)
}

func (t Trace) depth() units.Length {
	if t.Depth == nil {
		return 0
	}
	return *t.Depth
}

// comparison is how what a gauge shows is compared with its standard; where it was set on none, what it shows is right at
// 20 °C.
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

// at20 returns radii at 20 °C, by the comparison of each with the standard; each by itself where there was none.
func at20(radii []units.Length, m material.Comparison) ([]units.Length, error) {
	list := make([]units.Length, len(radii))
	for i, r := range radii {
		is := m
		if is.Deviation = 2*r - m.Standard; m.Standard == 0 {
			is.Standard, is.Deviation = 2*r, 0
		}
		size, err := is.SizeAt20()
		if err != nil {
			return nil, err
		}
		list[i] = size / 2
	}
	return list, nil
}

// A Spindle is what is known of the instrument.
type Spindle struct {
	OnStandard    bool         // its indicator was set on the standard
	Repeatability units.Length // standard deviation of one radius
	Error         units.Length // greatest of a radius, either way
	OutOfSquare   units.Length // of its axis to the deck, over the length traced
}

// Difference returns what lies between two radii of one set-up, with the doubt of both: roundness, cylindricity and
// bend are such differences, or of means of radii, which are in less doubt.
//
// That holds for a minimum zone too, although its centre is chosen: with the weights of the contacts of the true zone,
// the width found is at least the weighed mean of the outer radii less that of the inner ones, in which the centre
// cancels.
func (s Spindle) Difference(value units.Length) uncertainty.Estimate {
	e, err := s.two(1).Estimate(value, units.Micrometre)
	if err != nil { // of no spindle that a job may have: then nothing is known
		return uncertainty.Estimate{Value: value, Std: units.MaxLength}
	}
	return e
}

// two is the budget of two radii that share nothing.
func (s Spindle) two(sensitivity float64) (b uncertainty.Budget) {
	for range 2 {
		b.Components = append(b.Components,
			uncertainty.Component{Name: "scatter of a radius", Sensitivity: sensitivity, Std: s.Repeatability.In(units.Micrometre)},
			uncertainty.Component{Name: "error of a radius", Sensitivity: sensitivity, Std: uncertainty.Rectangular(s.Error.In(units.Micrometre))})
	}
	return b
}

// Radial is the doubt of a radius about a centre that is as if it were one more, where the size has a doubt of its own.
func (s Spindle) Radial(size units.Length) (units.Length, error) {
	b := s.two(1)
	b.Components = append(b.Components, uncertainty.Component{Name: "size", Sensitivity: 0.5, Std: size.In(units.Micrometre)})
	e, err := b.Estimate(0, units.Micrometre)
	return e.Std, err
}

// Gauge is the spindle as an instrument that reads diameters, two radii each: both may err alike. What was warm is as with g.
func (s Spindle) Gauge(g bore.Gauge) bore.Gauge {
	both := Spindle{Repeatability: s.Repeatability}.Difference(0)
	g.Kind, g.Resolution, g.Repeatability, g.RepeatabilityDoF, g.DialError = bore.TwoPoint, 0, both.Std, 0, 2*s.Error
	if !s.OnStandard {
		g.Standard = bore.Standard{}
	}
	return g
}

// A Form is what one trace shows at 20 °C.
type Form struct {
	Depth     units.Length
	Radii     []units.Length
	Mean      units.Length         // diameter of its least-squares circle
	Circle    form.Circle          // its minimum zone
	Roundness uncertainty.Estimate // RONt of that
	Lobes     []bore.Harmonic      // radial, from order 2 to a seventh of the points and 15 at most
}

// Section works out one trace, taken as a gauge that is the spindle takes it.
func (s Spindle) Section(t Trace, zero units.Length, by bore.Gauge) (f Form, section form.Section, err error) {
	f.Depth = t.depth()
	if f.Radii, err = at20(t.Shown(zero), comparison(by)); err != nil {
		return f, section, err
	}
	round, err := form.FromRadii(f.Radii)
	if err != nil {
		return f, section, err
	}
	mean, err := round.LeastSquares()
	if err != nil {
		return f, section, err
	}
	f.Mean = 2 * mean.Radius
	if f.Circle, err = round.MinimumZone(); err != nil {
		return f, section, err
	}
	f.Roundness = s.Difference(f.Circle.RONt)
	if most := min(len(f.Radii)/pointsToALobe, mostLobes); most > 1 {
		_, hs, err := round.Harmonics(mean.Centre, most)
		if err != nil {
			return f, section, err
		}
		f.Lobes = hs[1:] // order 1 is where it stands
	}
	return f, form.Section{Depth: f.Depth, Trace: round}, nil
}

// A Whole is what two traces or more show together.
type Whole struct {
	Wall         form.Wall
	Cylinder     form.Cylinder // the minimum zone
	Cylindricity uncertainty.Estimate
	Cone         form.Cone            // by least squares; zero where the traces hold none
	Taper        uncertainty.Estimate // of the cone, on the diameter
	Median       form.MedianLine
	Bend         uncertainty.Estimate
}

// Together works out all traces of a wall.
func (s Spindle) Together(sections []form.Section) (w Whole, err error) {
	if w.Wall, err = form.FromSections(sections); err != nil {
		return w, err
	}
	if w.Cylinder, err = w.Wall.Cylindricity(form.MZCY); err != nil {
		return w, err
	}
	w.Cylindricity = s.Difference(w.Cylinder.CYLt)
	switch w.Cone, err = w.Wall.Cone(); {
	case errors.Is(err, form.ErrArc): // a wall can be no cone
	case err != nil:
		return w, err
	default:
		// As if either end were one diameter, of two radii: the cone goes by all of them, and is in less doubt.
		if w.Taper, err = s.two(2).Estimate(w.Cone.Taper, units.Micrometre); err != nil {
			return w, err
		}
	}
	w.Median, err = w.Wall.MedianLine()
	w.Bend = s.Difference(w.Median.Bend)
	return w, err
}
