// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

func (c *checker) engine(e Engine) {
	switch {
	case e.Chamber != (oversize.Chamber{}) && (e.ClearanceVolume != 0 || e.CompressionRatio != 0):
		c.fault("engine.chamber", nil, "want this, clearance_volume or compression_ratio, and no two of them")
	case e.ClearanceVolume != 0 && e.CompressionRatio != 0:
		c.fault("engine.compression_ratio", e.CompressionRatio, "want either this or clearance_volume, not both")
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
	c.sleeve(e.Sleeve)
	seen := map[string]bool{}
	for i, r := range e.Rings {
		path := fmt.Sprintf("engine.rings[%d]", i)
		c.name(path+".name", r.Name, seen)
		if r.GapLimit > 0 && r.GapLimit < r.Gap.Max {
			c.fault(path+".gap_limit", r.GapLimit, "want at least the upper end of gap, %v", r.Gap.Max)
		}
		if r.Facing != "" && !slices.ContainsFunc(hone.Grits(), func(g hone.Grit) bool { return g.Facing == r.Facing }) {
			c.fault(path+".facing", r.Facing, "want \"plain iron\", \"chromium\" or \"molybdenum\"")
		}
	}
	for i, o := range e.Oversizes {
		path := fmt.Sprintf("engine.oversizes[%d]", i)
		if i > 0 && o.Over <= e.Oversizes[i-1].Over {
			c.fault(path+".over", o.Over, "want more than the size before it, %v", e.Oversizes[i-1].Over)
		}
		if most := e.Limits.GreatestOverbore; o.MakersList && most != 0 && o.Over > most {
			c.fault(path+".makers_list", true, "the maker lists it, and allows %v at the most: one of the two is wrong", most)
		}
		if n := len(o.Pistons); n > 0 && n < e.Cylinders && !e.ownSizes() {
			c.fault(path+".pistons", n, "want one for each of the %d cylinders, or more", e.Cylinders)
		}
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
	none := sleeve.Class{}
	switch classes := v.Hole != none || v.Shaft != none; {
	case v == (Sleeve{}):
	case v.Interference.IsZero() && !classes:
		c.fault(path, nil, "missing: want the DIAMETRAL interference, or hole and shaft")
	case !v.Interference.IsZero() && classes:
		c.fault(path, v.Interference, "want either this or hole and shaft, not both")
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
