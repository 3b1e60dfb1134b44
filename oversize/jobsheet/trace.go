// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/oversize/jobsheet/internal/trace"
	"borewright.example/units"
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

// maxPoints is how many radii all traces of one cylinder may have.
const maxPoints = 20_000

// round is a trace as package trace has it.
func (t Trace) round() trace.Trace { return trace.Trace(t) }

// zero is the radius at which the indicator stands at zero; any near the bore's where it was set on nothing.
func (j Job) zero(by Gauge) units.Length {
	if by.Spindle.OnStandard && by.Standard.Size.Value > 0 {
		return by.Standard.Size.Value / 2
	}
	return j.Engine.Bore / 2
}

// traces checks the traces of a cylinder.
func (c *checker) traces(path string, ts []Trace, by Gauge, j Job) {
	all := 0
	for _, t := range ts {
		all += t.round().Points()
	}
	if all > maxPoints {
		c.fault(path, all, "want at most %d radii in all", maxPoints)
		return
	}
	for i, t := range ts {
		path := fmt.Sprintf("%s[%d].", path, i)
		c.traceDepth(path+"depth", ts, i, j.layout())
		for _, f := range t.round().Faults(j.zero(by), j.Engine.Bore) {
			c.doc.Fault(path+f.At, f.Value, f.Want)
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
