// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/units"
	"borewright.example/units/material"
)

// A Trace is the wall of a cylinder at one depth, radius by radius once round, as an instrument shows it that turns
// about an axis: a rotary table with an indicator, a roundness instrument, a measuring machine. The first radius
// points to one end of the thrust axis, and angles grow as those of readings do. All traces of one cylinder are of
// one set-up, about one axis.
type Trace struct {
	Depth *units.Length `json:"depth" needs:"how far below the deck" usual:"depth"` // of all its radii
	// Step is the angle from one radius to the next: all of them go once round by it, so that one that is lost is missed.
	Step units.Angle `json:"step" needs:"the angle from one to the next"`
	// Either Radii from the axis, or Deviations as the indicator shows them, plus where the wall is farther off.
	Radii      []units.Length `json:"radii,omitzero"`
	Deviations []units.Length `json:"deviations,omitzero"`
}

// A Spindle is what is known of the instrument that takes traces; what was warm is as with the gauge.
type Spindle struct {
	// OnStandard says that its indicator was set on the gauge's standard, and its deviations count from half of that;
	// left out, traces hold form and no size.
	OnStandard    bool         `json:"on_standard,omitzero"`
	Repeatability units.Length `json:"repeatability,omitzero" want:"fine" usual:"spindle scatter"` // standard deviation of one radius; left out, a step of the gauge's scale
	Error         units.Length `json:"error,omitzero" want:"fine" usual:"spindle"`                 // greatest of a radius, either way: of axis, indicator and column; left out, 10 µm
	// OutOfSquare is how far its axis may have stood out of square to the deck, over the length traced; left out, traces
	// hold no centre that the cylinder could be bored about.
	OutOfSquare units.Length `json:"out_of_square,omitzero" want:"fine" usual:"bar"`
}

const (
	leastPoints = 12     // of one trace,
	mostPoints  = 3600   // and at the most
	maxPoints   = 20_000 // of all traces of one cylinder
)

// points is how many radii a trace has.
func (t Trace) points() int { return len(t.Radii) + len(t.Deviations) }

// written returns what stands in the job, and in which field.
func (t Trace) written() (list []units.Length, field string) {
	if len(t.Deviations) > 0 {
		return t.Deviations, "deviations"
	}
	return t.Radii, "radii"
}

// shown returns the radii of a trace as they were when it was taken. Deviations count from zero, where the indicator
// was set.
func (t Trace) shown(zero units.Length) []units.Length {
	if len(t.Radii) > 0 {
		return t.Radii
	}
	radii := make([]units.Length, len(t.Deviations))
	for i, d := range t.Deviations {
		radii[i] = zero + d
	}
	return radii
}

// zero is the radius at which the indicator stands at zero; any near the bore's where it was set on nothing.
func (j Job) zero(by Gauge) units.Length {
	if by.Spindle.OnStandard && by.Standard.Size.Value > 0 {
		return by.Standard.Size.Value / 2
	}
	return j.Engine.Bore / 2
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

// traces checks the traces of a cylinder.
func (c *checker) traces(path string, ts []Trace, by Gauge, j Job) {
	all := 0
	for _, t := range ts {
		all += t.points()
	}
	if all > maxPoints {
		c.fault(path, all, "want at most %d radii in all", maxPoints)
		return
	}
	for i, t := range ts {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.traceDepth(path+".depth", ts, i, j.layout())
		n := t.points()
		_, field := t.written()
		list := path + "." + field
		switch {
		case len(t.Radii) > 0 && len(t.Deviations) > 0:
			c.fault(list, nil, "want either these or radii, not both")
			continue
		case n < leastPoints || n > mostPoints || n%2 != 0:
			c.fault(list, n, "want an even number of them, from %d to %d", leastPoints, mostPoints)
			continue
		case !(math.Abs(float64(n)*t.Step.In(units.Degree)-360) < 1e-6): // NaN too
			c.fault(path+".step", t.Step, "%d of them want %.6g°: is one lost?", n, 360/float64(n))
			continue
		}
		radii := t.shown(j.zero(by))
		for k, r := range radii {
			if err := sense.Near(2*r, j.Engine.Bore); err != nil {
				c.fault(fmt.Sprintf("%s[%d]", list, k), 2*r, "%w", err)
			}
		}
		if _, err := form.FromRadii(radii); err != nil {
			c.fault(list, nil, "%w", err)
		}
	}
}

// traceDepth checks the depth of a trace: they go down the wall, clear of ports, in which there is none.
func (c *checker) traceDepth(path string, ts []Trace, i int, l bore.Layout) {
	t, most := ts[i], cmp.Or(l.Length, sense.LargestDepth)
	switch {
	case t.Depth == nil: // a fault by its tag
		return
	case *t.Depth < 0 || *t.Depth > most:
		c.fault(path, t.Depth, "want 0 at the deck, up to %v", most)
		return
	case i > 0 && ts[i-1].Depth != nil && *t.Depth <= *ts[i-1].Depth:
		c.fault(path, t.Depth, "want more than that before it, %v", ts[i-1].Depth)
	}
	for _, p := range l.Ports {
		if *t.Depth >= p.From && *t.Depth <= p.To {
			c.fault(path, t.Depth, "a port cuts the wall there, %v to %v: trace it above or below", p.From, p.To)
		}
	}
}
