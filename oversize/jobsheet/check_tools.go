// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"math"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
)

// missingTemperature says how a temperature may be written.
const missingTemperature = `missing: write it, "21 °C" or "21 ± 1 °C", or where nobody measured it the range it must have been in, "10 to 25 °C"`

func (c *checker) gauge(g Gauge) {
	if g.Kind == nil {
		c.fault("gauge.kind", nil, "missing: want %v, %v or %v", bore.TwoPoint, bore.ThreePoint, bore.Telescoping)
	}
	c.needed("gauge.resolution", g.Resolution, coarsest)
	if len(g.Study) > 0 && g.Repeatability != 0 {
		c.fault("gauge.repeatability", g.Repeatability, "want either this or study, which gives it")
	}
	if g.Spindle.OnStandard && g.Standard == (Standard{}) {
		c.fault("gauge.spindle.on_standard", true, "want gauge.standard, that it was set on")
	}
	if len(g.Study) > maxReadings {
		c.fault("gauge.study", len(g.Study), "want at most %d", maxReadings)
	}
	c.temperatures("gauge.temperatures", g.Temperatures, g.Standard != Standard{})
	c.standard("gauge.standard", g.Standard)
}

func (c *checker) temperatures(path string, t Temperatures, set bool) {
	for _, at := range []struct {
		path   string
		at     bore.Temperature
		needed bool
	}{
		{"standard", t.Standard, set}, {"gauge_set", t.GaugeSet, set}, {"gauge_used", t.GaugeUsed, true}, {"cylinder", t.Cylinder, true},
	} {
		if at.needed && at.at.IsZero() {
			c.fault(path+"."+at.path, nil, missingTemperature)
		}
	}
	if s := float64(t.PlaceToPlace); !(s >= 0 && s <= 100) {
		c.fault(path+".place_to_place", t.PlaceToPlace, "want 0 to 100 K")
	}
}

func (c *checker) standard(path string, s Standard) {
	if s != (Standard{}) {
		c.needed(path+".size", s.Size.Value, largestBore)
		c.length(path+".size", s.Size.Expanded, coarsest)
	}
}

func (c *checker) cuts(b Cuts, e Engine) {
	if b == (Cuts{}) {
		return
	}
	if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
		c.fault("cuts", nil, "a %v wall is never bored here: leave it out", e.Wall)
		return
	}
	nominal := e.Bore
	for _, l := range []struct {
		path string
		size units.Length
	}{{"most_depth", b.MostDepth}, {"finish_bore", b.FinishBore}, {"finish_hone", b.FinishHone}, {"plateau", b.Plateau}, {"feed", b.Feed}} {
		c.small("cuts."+l.path, l.size, nominal)
	}
	c.length("cuts.length", b.Length, largestDepth)
	if err := turning(b.Spindle); err != nil {
		c.fault("cuts.spindle", b.Spindle, "%w", err)
	}
}

func (c *checker) tools(t Tools) {
	for _, end := range []struct {
		path      string
		out, room units.Length
	}{{"top", t.OvertravelTop, length(t.RoomTop)}, {"bottom", t.OvertravelBottom, length(t.RoomBottom)}} {
		if end.out > end.room {
			c.fault("tools.overtravel_"+end.path, end.out, "want at most tools.room_%s, %v", end.path, end.room)
		}
	}
	for _, d := range []struct {
		path  string
		lasts Duration
	}{{"trial_pass", t.TrialPass}, {"longest_pass", t.LongestPass}} {
		if d.lasts.Duration < 0 {
			c.fault("tools."+d.path, d.lasts, "want above 0")
		}
	}
	if t.Grit < 0 || t.Grit > 5000 {
		c.fault("tools.grit", t.Grit, "want a whole number up to 5000")
	}
	if t.Lines < 0 || t.Lines > 1000 {
		c.fault("tools.lines", t.Lines, "want a whole number up to 1000")
	}
	if len(t.Phases) > maxPhases {
		c.fault("tools.phases", len(t.Phases), "want at most %d", maxPhases)
	} else {
		for i, p := range t.Phases {
			path := fmt.Sprintf("tools.phases[%d]", i)
			c.needed(path+".radial_stock", p.RadialStock, coarsest)
		}
	}
	for _, v := range []struct {
		path  string
		text  string
		given bool
		err   error
	}{
		{"spindle", t.Spindle.String(), !t.Spindle.IsZero(), t.Spindle.Validate()},
		{"stroking", t.Stroking.String(), !t.Stroking.IsZero(), t.Stroking.Validate()},
		{"stroking_now", t.StrokingNow.String(), !t.StrokingNow.IsZero(), t.StrokingNow.Validate()},
	} {
		if v.given && v.err != nil {
			c.fault("tools."+v.path, v.text, "%w", v.err)
		}
	}
	if a := float64(t.Tolerance); math.IsNaN(a) || a < 0 || a > float64(90*units.Degree) {
		c.fault("tools.tolerance", t.Tolerance, "want 0 to 90°")
	}
}
