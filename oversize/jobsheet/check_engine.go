// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/sense"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

func (c *checker) engine(e Engine) {
	chamber, volume, ratio := e.Chamber != (oversize.Chamber{}), e.ClearanceVolume != 0, e.CompressionRatio != 0
	c.refuse(chamber && (volume || ratio), "engine.chamber", nil, "want this, clearance_volume or compression_ratio, and no two of them")
	c.refuse(!chamber && volume && ratio, "engine.compression_ratio", e.CompressionRatio, "want either this or clearance_volume, not both")
	c.refuse(e.Chamber.GasketHole != 0, "engine.chamber.gasket_hole", e.Chamber.GasketHole, "give it as engine.gasket_hole")
	if n := len(e.Layout.Ports); n > maxPorts {
		c.fault("engine.layout.ports", n, "want at most %d", maxPorts)
	} else if err := e.Layout.Validate(); err != nil {
		c.fault("engine.layout", nil, "%w", err)
	}
	c.metal(e)
	run := e.Running
	c.refuse(run.PistonByWindow && run.Piston != (bore.Temperature{}), "engine.running.piston_by_window", true, "want either this or the running temperature of the piston")
	c.refuse(run.RingsByWindow && run.Ring != (bore.Temperature{}), "engine.running.rings_by_window", true, "want either this or the running temperature of the rings")
	c.limits(e.Limits)
	c.sleeve(e.Sleeve)
	seen := map[string]bool{}
	for i, r := range e.Rings {
		path := fmt.Sprintf("engine.rings[%d]", i)
		c.name(path+".name", r.Name, seen)
		c.refuse(r.GapLimit > 0 && r.GapLimit < r.Gap.Max, path+".gap_limit", r.GapLimit, "want at least the upper end of gap, %v", r.Gap.Max)
		known := r.Facing == "" || slices.ContainsFunc(hone.Grits(), func(g hone.Grit) bool { return g.Facing == r.Facing })
		c.refuse(!known, path+".facing", r.Facing, "want \"plain iron\", \"chromium\" or \"molybdenum\"")
	}
	for i, o := range e.Oversizes {
		path := fmt.Sprintf("engine.oversizes[%d]", i)
		if i > 0 && o.Over <= e.Oversizes[i-1].Over {
			c.fault(path+".over", o.Over, "want more than the size before it, %v", e.Oversizes[i-1].Over)
		}
		most := e.Limits.GreatestOverbore
		c.refuse(o.MakersList && most != 0 && o.Over > most, path+".makers_list", true, "the maker lists it, and allows %v at the most: one of the two is wrong", most)
	}
}

// metal checks that a wall can be of its material: iron hardly expands half as much as aluminium.
func (c *checker) metal(e Engine) {
	const between = 16e-6 / units.PerKelvin
	m, err := e.Material.material()
	switch {
	case err != nil: // not said, or a fault of its own
	case (e.Wall == oversize.BareIron || e.Wall == oversize.IronSleeve) && m.Expansion > between:
		c.fault("engine.material", e.Material, "no %v expands so much: is engine.wall right?", e.Wall)
	case e.Wall == oversize.BareAlSi && m.Expansion < between:
		c.fault("engine.material", e.Material, "no %v expands so little: is engine.wall right?", e.Wall)
	}
}

func (c *checker) sleeve(v Sleeve) {
	const path = "engine.sleeve.interference"
	classes := v.Hole != sleeve.Class{} || v.Shaft != sleeve.Class{}
	c.refuse(v != (Sleeve{}) && v.Interference.IsZero() && !classes, path, nil, "missing: want the DIAMETRAL interference, or hole and shaft")
	c.refuse(!v.Interference.IsZero() && classes, path, v.Interference, "want either this or hole and shaft, not both")
}

func (c *checker) limits(l Limits) {
	const path = "engine.limits."
	c.refuse(l.Service > 0 && l.Service < l.NewBore.Max, path+"service", l.Service, "want at least the upper end of new_bore, %v", l.NewBore.Max)
	c.refuse(!l.Choke.IsZero() && (l.Taper != 0 || l.FinishTaper != 0), path+"choke", l.Choke, "want either this or taper and finish_taper: a choke is a taper that is wanted")
	c.refuse(l.WornClearance > 0 && l.WornClearance < l.PistonClearance.Max, path+"worn_clearance", l.WornClearance,
		"want at least the upper end of piston_clearance, %v", l.PistonClearance.Max)
}

// missingTemperature says how a temperature may be written.
const missingTemperature = `missing: write it, "21 °C" or "21 ± 1 °C", or where nobody measured it the range it must have been in, "10 to 25 °C"`

func (c *checker) gauge(g Gauge) {
	c.refuse(len(g.Study) > 0 && g.Repeatability != 0, "gauge.repeatability", g.Repeatability, "want either this or study, which gives it")
	c.refuse(g.Spindle.OnStandard && g.Standard == (Standard{}), "gauge.spindle.on_standard", true, "want gauge.standard, that it was set on")
	c.temperatures("gauge.temperatures", g.Temperatures, g.Standard != Standard{})
}

func (c *checker) temperatures(path string, t Temperatures, set bool) {
	c.refuse(set && t.Standard.IsZero(), path+".standard", nil, missingTemperature)
	c.refuse(set && t.GaugeSet.IsZero(), path+".gauge_set", nil, missingTemperature)
	c.refuse(t.GaugeUsed.IsZero(), path+".gauge_used", nil, missingTemperature)
	c.refuse(t.Cylinder.IsZero(), path+".cylinder", nil, missingTemperature)
}

func (c *checker) cuts(b Cuts, e Engine) {
	if b == (Cuts{}) {
		return
	}
	if e.Wall == oversize.Plated || e.Wall == oversize.BareAlSi {
		c.fault("cuts", nil, "a %v wall is never bored here: leave it out", e.Wall)
		return
	}
	c.hold("cuts.most_depth", b.MostDepth, sense.Small(b.MostDepth, e.Bore))
	c.hold("cuts.finish_bore", b.FinishBore, sense.Small(b.FinishBore, e.Bore))
	c.hold("cuts.finish_hone", b.FinishHone, sense.Small(b.FinishHone, e.Bore))
	c.hold("cuts.plateau", b.Plateau, sense.Small(b.Plateau, e.Bore))
	c.hold("cuts.feed", b.Feed, sense.Small(b.Feed, e.Bore))
	c.hold("cuts.length", b.Length, sense.UpTo(b.Length, sense.LargestDepth))
	c.hold("cuts.spindle", b.Spindle, sense.Turning(b.Spindle))
}

func (c *checker) tools(t Tools) {
	top, bottom := length(t.RoomTop), length(t.RoomBottom)
	c.refuse(t.OvertravelTop > top, "tools.overtravel_top", t.OvertravelTop, "want at most tools.room_top, %v", top)
	c.refuse(t.OvertravelBottom > bottom, "tools.overtravel_bottom", t.OvertravelBottom, "want at most tools.room_bottom, %v", bottom)
}
