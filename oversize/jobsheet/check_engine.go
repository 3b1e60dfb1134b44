// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"

	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

func (c *checker) engine(e Engine) {
	if e.Cylinders < 1 || e.Cylinders > maxCylinders {
		c.fault("engine.cylinders", e.Cylinders, "want a whole number from 1 to %d", maxCylinders)
	}
	if e.Cycle == CycleNotGiven {
		c.fault("engine.cycle", nil, "missing: want two-stroke or four-stroke")
	}
	if e.Wall == oversize.WallNotGiven {
		c.fault("engine.wall", nil, "missing: want %v, %v, %v or %v", oversize.BareIron, oversize.IronSleeve, oversize.Plated, oversize.BareAlSi)
	}
	c.needed("engine.bore", e.Bore, largestBore)
	c.needed("engine.stroke", e.Stroke, largestDepth)
	switch v := float64(e.ClearanceVolume); {
	case e.Chamber != (oversize.Chamber{}) && (e.ClearanceVolume != 0 || e.CompressionRatio != 0):
		c.fault("engine.chamber", nil, "want this, clearance_volume or compression_ratio, and no two of them")
	case e.ClearanceVolume != 0 && e.CompressionRatio != 0:
		c.fault("engine.compression_ratio", e.CompressionRatio, "want either this or clearance_volume, not both")
	case v < 0 || v > 1:
		c.fault("engine.clearance_volume", e.ClearanceVolume, "want above 0, up to 1 m³")
	case e.CompressionRatio != 0 && !(e.CompressionRatio > 1 && e.CompressionRatio <= 100):
		c.fault("engine.compression_ratio", e.CompressionRatio, "want above 1, up to 100")
	}
	if e.Chamber.GasketHole != 0 {
		c.fault("engine.chamber.gasket_hole", e.Chamber.GasketHole, "give it as engine.gasket_hole")
	}
	if n := len(e.Layout.Ports); n > maxPorts {
		c.fault("engine.layout.ports", n, "want at most %d", maxPorts)
	} else if err := e.Layout.Validate(); err != nil {
		c.fault("engine.layout", nil, "%w", err)
	}
	c.metal(e)
	if r := e.Running; r.PistonByWindow && r.Piston != (bore.Temperature{}) {
		c.fault("engine.running.piston_by_window", true, "want either this or the running temperature of the piston")
	}
	if r := e.Running; r.RingsByWindow && r.Ring != (bore.Temperature{}) {
		c.fault("engine.running.rings_by_window", true, "want either this or the running temperature of the rings")
	}
	c.limits(e.Limits)
	c.sleeve(e.Sleeve, e.Bore)
	if len(e.Rings) > maxRings {
		c.fault("engine.rings", len(e.Rings), "want at most %d", maxRings)
	}
	seen := map[string]bool{}
	for i, r := range e.Rings {
		path := fmt.Sprintf("engine.rings[%d]", i)
		c.name(path+".name", r.Name, seen)
		for _, l := range []struct {
			path string
			size units.Length
		}{{"thickness", r.Thickness}, {"height", r.Height}, {"free_gap", r.FreeGap}} {
			c.length(path+"."+l.path, l.size, max(e.Bore, 0))
		}
		if r.GapLimit > 0 && r.GapLimit < r.Gap.Max {
			c.fault(path+".gap_limit", r.GapLimit, "want at least the upper end of gap, %v", r.Gap.Max)
		}
	}
	if len(e.Oversizes) > maxOversizes {
		c.fault("engine.oversizes", len(e.Oversizes), "want at most %d", maxOversizes)
	}
	for i, o := range e.Oversizes {
		path := fmt.Sprintf("engine.oversizes[%d]", i)
		if c.needed(path+".over", o.Over, units.MaxLength) {
			c.small(path+".over", o.Over, e.Bore)
			if i > 0 && o.Over <= e.Oversizes[i-1].Over {
				c.fault(path+".over", o.Over, "want more than the size before it, %v", e.Oversizes[i-1].Over)
			}
		}
		if most := e.Limits.GreatestOverbore; o.MakersList && most != 0 && o.Over > most {
			c.fault(path+".makers_list", true, "the maker lists it, and allows %v at the most: one of the two is wrong", most)
		}
		c.piston(path+".piston", o.Piston)
		if len(o.Pistons) > maxCylinders {
			c.fault(path+".pistons", len(o.Pistons), "want at most %d", maxCylinders)
			continue
		}
		if n := len(o.Pistons); n > 0 && n < e.Cylinders && !e.ownSizes() {
			c.fault(path+".pistons", n, "want one for each of the %d cylinders, or more", e.Cylinders)
		}
		for k, p := range o.Pistons {
			path := fmt.Sprintf("%s.pistons[%d]", path, k)
			if p == (Piston{}) {
				c.fault(path+".size", nil, "missing: want the skirt's diameter")
			}
			c.piston(path, p)
		}
	}
}

// metal checks that a wall can be of its material: iron hardly expands half as much as aluminium.
func (c *checker) metal(e Engine) {
	const between = 16e-6 / units.PerKelvin
	m, err := e.Material.material()
	if e.Material == "" || err != nil {
		return // not said, or a fault of its own
	}
	switch {
	case (e.Wall == oversize.BareIron || e.Wall == oversize.IronSleeve) && m.Expansion > between:
		c.fault("engine.material", e.Material, "no %v expands so much: is engine.wall right?", e.Wall)
	case e.Wall == oversize.BareAlSi && m.Expansion < between:
		c.fault("engine.material", e.Material, "no %v expands so little: is engine.wall right?", e.Wall)
	}
}

func (c *checker) sleeve(v Sleeve, nominal units.Length) {
	if v == (Sleeve{}) {
		return
	}
	const path = "engine.sleeve."
	c.needed(path+"bore", v.Bore, largestBore)
	c.needed(path+"seat", v.Seat, largestBore)
	if !c.window(path+"outer", v.Outer) && v.Outer.IsZero() {
		c.fault(path+"outer", nil, "missing: want the outside of the barrel, roots of the fins to their tips")
	}
	classes := v.Hole != sleeve.Class{} || v.Shaft != sleeve.Class{}
	switch {
	case v.Interference.IsZero() && !classes:
		c.fault(path+"interference", nil, "missing: want the DIAMETRAL interference, or hole and shaft")
	case !v.Interference.IsZero() && classes:
		c.fault(path+"interference", v.Interference, "want either this or hole and shaft, not both")
	case !v.Interference.IsZero():
		if c.window(path+"interference", v.Interference) {
			c.small(path+"interference", v.Interference.Max, nominal)
		}
	}
}

func (c *checker) limits(l Limits) {
	const path = "engine.limits."
	if l.Service > 0 && l.Service < l.NewBore.Max {
		c.fault(path+"service", l.Service, "want at least the upper end of new_bore, %v", l.NewBore.Max)
	}
	if !l.Choke.IsZero() && (l.Taper != 0 || l.FinishTaper != 0) {
		c.fault(path+"choke", l.Choke, "want either this or taper and finish_taper: a choke is a taper that is wanted")
	}
	if l.WornClearance > 0 && l.WornClearance < l.PistonClearance.Max {
		c.fault(path+"worn_clearance", l.WornClearance, "want at least the upper end of piston_clearance, %v", l.PistonClearance.Max)
	}
}

func (c *checker) piston(path string, p Piston) {
	if p != (Piston{}) && !p.has() {
		c.fault(path+".size", nil, "missing: want the skirt's diameter")
	}
}
