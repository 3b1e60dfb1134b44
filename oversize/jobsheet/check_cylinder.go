// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func (c *checker) cylinders(j Job) {
	if n := len(j.Cylinders); n != j.Engine.Cylinders {
		c.fault("engine.cylinders", j.Engine.Cylinders, "want as many as are listed under cylinders, %d", n)
	}
	if len(j.Cylinders) > maxCylinders {
		return
	}
	seen := map[string]bool{}
	for i, cyl := range j.Cylinders {
		path := fmt.Sprintf("cylinders[%d]", i)
		c.name(path+".name", cyl.Name, seen)
		sound := len(c.doc.Faults()) == 0
		if len(cyl.Readings) == 0 && j.Engine.Layout.RingBottom == 0 {
			c.fault(path+".readings", nil, "missing: want at least one reading, or ring travel in engine.layout to plan them by")
		}
		c.readings(path+".readings", cyl.Readings, j.Gauge, j)
		c.readings(path+".proof", cyl.Proof, j.proofGauge(), j)
		if sound && len(c.doc.Faults()) == 0 {
			c.measured(path, cyl, j) // only now can the room of the readings say what it thinks of them
		}
		if s := cyl.WearShare; s != 0 && !(s >= 0.5 && s <= 1) {
			c.fault(path+".wear_share", s, "want 0.5, as much on one side as on the other, to 1, all on one")
		}
		c.feeler(path+".feeler_test", cyl.FeelerTest, j.Engine.Bore)
		c.piston(path+".piston", cyl.Piston, j.Engine.Bore)
		c.small(path+".over", cyl.Over, j.Engine.Bore)
		c.small(path+".piston_for", cyl.PistonFor, j.Engine.Bore)
		c.honing(path+".honing", cyl.Honing, j.Engine.Bore)
		c.ringGaps(path+".rings", cyl.Rings, j.Engine)
		c.length(path+".thinnest_wall", cyl.ThinnestWall, largestBore)
		c.length(path+".wall_uncertainty", cyl.WallUncertainty, largestBore)
		if w := j.Engine.Wall; cyl.Peeling && (w == oversize.BareIron || w == oversize.IronSleeve) {
			c.fault(path+".peeling", true, "nothing peels off %v: is engine.wall right?", w)
		}
		c.small(path+".pit", cyl.Pit, j.Engine.Bore)
	}
}

// measured checks what the readings of a cylinder come to. A bore that is smaller all over than a new
// one was read on a dial that runs the other way, or stands at another size.
func (c *checker) measured(path string, cyl Cylinder, j Job) {
	if len(cyl.Readings) > 0 {
		g, err := j.measure(cyl.Readings, j.Gauge)
		if err != nil {
			c.fault(path+".readings", nil, "%w", err)
			return
		}
		if fresh := j.Engine.Limits.NewBore; fresh.HasMin() {
			least := units.Limits{Min: fresh.Min + cyl.Over}
			f, err := uncertainty.Judge(g.Largest.Size, least, uncertainty.Risk{})
			if err == nil && f.Verdict == uncertainty.Beyond {
				c.fault(path+".readings", nil, "the largest, %v at 20 °C, is smaller than a new bore, %v: does the dial run the other way, or does the cylinder stand at another size?",
					g.Largest.Size, least)
			}
		}
	}
	if len(cyl.Proof) > 0 {
		if _, err := j.measure(cyl.Proof, j.proofGauge()); err != nil {
			c.fault(path+".proof", nil, "%w", err)
		}
	}
}

func (c *checker) feeler(path string, f FeelerTest, nominal units.Length) {
	if f == (FeelerTest{}) {
		return
	}
	for _, at := range []struct {
		path string
		gap  FeelerGap
	}{{".upper", f.Upper}, {".lower", f.Lower}} {
		c.length(path+at.path+".depth", at.gap.Depth, largestDepth)
		if c.needed(path+at.path+".gap", at.gap.Gap, largestBore) {
			c.small(path+at.path+".gap", at.gap.Gap, nominal)
		}
	}
	if f.Upper.Depth >= f.Lower.Depth {
		c.fault(path+".lower.depth", f.Lower.Depth, "want more than the upper one, %v", f.Upper.Depth)
	}
	c.small(path+".uncertainty", f.Uncertainty, nominal)
}

func (c *checker) readings(path string, rs []Reading, g Gauge, j Job) {
	if len(rs) > maxReadings {
		c.fault(path, len(rs), "want at most %d", maxReadings)
		return
	}
	depth := cmp.Or(j.Engine.Layout.Length, largestDepth)
	for i, r := range rs {
		path := fmt.Sprintf("%s[%d]", path, i)
		if r.Depth < 0 || r.Depth > depth {
			c.fault(path+".depth", r.Depth, "want 0 at the deck, up to %v", depth)
		}
		switch {
		case r.Diameter == 0 && r.Deviation == nil:
			c.fault(path+".diameter", nil, "missing: want diameter or deviation")
			continue
		case r.Diameter != 0 && r.Deviation != nil:
			c.fault(path+".deviation", r.Deviation, "want either this or diameter, not both")
			continue
		case r.Deviation != nil && g.Dial == bore.DialNotGiven:
			c.fault("gauge.dial", nil, "missing: the readings are deviations: want which way the dial runs, %q or %q", bore.PlusIsLarger, bore.PlusIsSmaller)
			continue
		case r.Deviation != nil && g.Standard.Size <= 0:
			c.fault("gauge.standard.size", nil, "missing: the readings are deviations from it")
			continue
		}
		field := ".diameter"
		if r.Deviation != nil {
			field = ".deviation"
		}
		d, err := g.shown(r)
		if err != nil {
			c.fault(path+field, nil, "%w", err)
			continue
		}
		c.near(path+field, d, j.Engine.Bore)
	}
}

func (c *checker) honing(path string, h Honed, nominal units.Length) {
	if h.Start == (HonedSize{}) && len(h.Passes) == 0 {
		return
	}
	if len(h.Passes) > maxReadings {
		c.fault(path+".passes", len(h.Passes), "want at most %d", maxReadings)
		return
	}
	size := func(path string, r HonedSize) {
		if c.needed(path+".diameter", r.Diameter, largestBore) {
			c.near(path+".diameter", r.Diameter, nominal)
		}
		if r.At.IsZero() {
			c.fault(path+".at", nil, `missing: write the cylinder's temperature then, "27 °C"`)
		}
	}
	size(path+".start", h.Start)
	for i, p := range h.Passes {
		path := fmt.Sprintf("%s.passes[%d]", path, i)
		if p.Lasts.Duration <= 0 {
			c.fault(path+".lasts", p.Lasts, "want above 0")
		}
		size(path+".after", p.After)
	}
}

func (c *checker) ringGaps(path string, gaps []RingGap, e Engine) {
	seen := map[string]bool{}
	for i, g := range gaps {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.name(path+".ring", g.Ring, seen)
		var names []string
		known := false
		for _, r := range e.Rings {
			names = append(names, r.Name)
			known = known || r.Name == g.Ring
		}
		if !known {
			c.fault(path+".ring", g.Ring, "want the name of one of engine.rings: %s", strings.Join(names, ", "))
		}
		if c.needed(path+".gap", g.Gap, units.MaxLength) {
			c.small(path+".gap", g.Gap, e.Bore)
		}
		c.small(path+".uncertainty", g.Uncertainty, e.Bore)
		c.small(path+".finished", g.Finished, e.Bore)
		if c.needed(path+".bore", g.Bore, units.MaxLength) {
			c.near(path+".bore", g.Bore, e.Bore)
		}
	}
}
