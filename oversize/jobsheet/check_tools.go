// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
)

// missingTemperature says how a temperature may be written.
const missingTemperature = `missing: write it, "21 °C" or "21 ± 1 °C", or where nobody measured it the range it must have been in, "10 to 25 °C"`

func (c *checker) gauge(g Gauge) {
	if len(g.Study) > 0 && g.Repeatability != 0 {
		c.fault("gauge.repeatability", g.Repeatability, "want either this or study, which gives it")
	}
	if g.Spindle.OnStandard && g.Standard == (Standard{}) {
		c.fault("gauge.spindle.on_standard", true, "want gauge.standard, that it was set on")
	}
	c.temperatures("gauge.temperatures", g.Temperatures, g.Standard != Standard{})
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
}

func (c *checker) cuts(b Cuts, e Engine) {
	if b == (Cuts{}) {
		return
	}
	if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
		c.fault("cuts", nil, "a %v wall is never bored here: leave it out", e.Wall)
		return
	}
	for _, l := range []struct {
		path string
		size units.Length
	}{{"most_depth", b.MostDepth}, {"finish_bore", b.FinishBore}, {"finish_hone", b.FinishHone}, {"plateau", b.Plateau}, {"feed", b.Feed}} {
		c.hold("cuts."+l.path, l.size, small(l.size, e.Bore))
	}
	c.hold("cuts.length", b.Length, upTo(b.Length, largestDepth))
	c.hold("cuts.spindle", b.Spindle, turning(b.Spindle))
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
}
