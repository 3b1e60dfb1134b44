// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
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
		if !cyl.surveyed() && j.Engine.Layout.RingBottom == 0 && !j.unknown(ringTravel) {
			c.fault(path+".readings", nil, "missing: want at least one reading, or ring travel in engine.layout to plan them by")
		}
		c.readings(path+".readings", cyl.Readings, j.Gauge, j)
		c.readings(path+".proof", cyl.Proof, j.proofGauge(), j)
		c.traces(path+".traces", cyl.Traces, j.Gauge, j)
		c.traces(path+".proof_traces", cyl.ProofTraces, j.proofGauge(), j)
		if s := cyl.WearShare; s != 0 && !(s >= 0.5 && s <= 1) {
			c.fault(path+".wear_share", s, "want 0.5, as much on one side as on the other, to 1, all on one")
		}
		c.feeler(path+".feeler_test", cyl.FeelerTest, j.Engine.Bore)
		c.piston(path+".piston", cyl.Piston)
		c.told(path+".over", cyl.Over, j.Engine.Bore, `write at which size it stands over nominal, "0 mm" for the standard one`)
		if cyl.Piston.has() {
			c.told(path+".piston_for", cyl.PistonFor, j.Engine.Bore, `write for which size the piston is, over nominal, "0 mm" for the standard one`)
		}
		c.honing(path+".honing", cyl.Honing, j.Engine.Bore)
		c.ringGaps(path+".rings", cyl.Rings, j.Engine)
		c.pits(path+".pits", cyl.Pits, j.Engine)
		if v := cyl.SleeveFitted; v != (SleeveFitted{}) {
			c.needed(path+".sleeve_fitted.seat", v.Seat.Value, largestBore)
			c.needed(path+".sleeve_fitted.outside", v.Outside.Value, largestBore)
		}
		coated := j.Engine.Wall == oversize.Plated || j.Engine.Wall == oversize.BareAlSi
		if !coated && cyl.PlatingWhole != nil {
			c.fault(path+".plating_whole", *cyl.PlatingWhole, "there is none on %v: is engine.wall right?", j.Engine.Wall)
		}
	}
}

// told checks a length that must be there, zero or not.
func (c *checker) told(path string, l *units.Length, nominal units.Length, want string) {
	if l == nil {
		c.fault(path, nil, "missing: %s", want)
		return
	}
	c.small(path, *l, nominal)
}

// measured checks a value that may be left out, and its doubt, which is smaller than it.
func (c *checker) measured(path string, m Measured, most units.Length) {
	if m.isZero() {
		return
	}
	if m.Value <= 0 || m.Value > most || m.Expanded < 0 || m.Expanded >= m.Value {
		c.fault(path, m, "want above 0, up to %v, and a doubt that is smaller", most)
	}
}

func (c *checker) pits(path string, pits []bore.Pit, e Engine) {
	if len(pits) > maxReadings {
		c.fault(path, len(pits), "want at most %d", maxReadings)
		return
	}
	for i, p := range pits {
		path := fmt.Sprintf("%s[%d]", path, i)
		if c.needed(path+".below", p.Below, e.Bore) {
			c.small(path+".below", p.Below, e.Bore)
		}
		if most := cmp.Or(e.Layout.Length, largestDepth); p.Depth < 0 || p.Depth+p.Length > most || p.Length < 0 {
			c.fault(path+".depth", p.Depth, "want 0 at the deck, up to %v", most)
		}
	}
}

func (c *checker) feeler(path string, gaps []FeelerGap, nominal units.Length) {
	if len(gaps) != 0 && len(gaps) != 2 {
		c.fault(path, len(gaps), "want the gap at two depths, the upper one first")
		return
	}
	for i, f := range gaps {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.length(path+".depth", f.Depth, largestDepth)
		if c.needed(path+".gap", f.Gap.Value, largestBore) {
			c.smallMeasured(path+".gap", f.Gap, nominal)
		}
		if i > 0 && f.Depth <= gaps[0].Depth {
			c.fault(path+".depth", f.Depth, "want more than the upper one, %v", gaps[0].Depth)
		}
	}
}

func (c *checker) readings(path string, rs []Reading, g Gauge, j Job) {
	if len(rs) > maxReadings {
		c.fault(path, len(rs), "want at most %d", maxReadings)
		return
	}
	depth := cmp.Or(j.Engine.Layout.Length, largestDepth)
	for i, r := range rs {
		path := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case r.Depth == nil:
			c.fault(path+".depth", nil, "missing: want how far below the deck")
		case *r.Depth < 0 || *r.Depth > depth:
			c.fault(path+".depth", r.Depth, "want 0 at the deck, up to %v", depth)
		}
		if r.Axis == nil {
			c.fault(path+".axis", nil, `missing: want "thrust", "pin" or an angle from the thrust axis`)
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
		case r.Deviation != nil && g.Standard.Size.Value <= 0:
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

// smallMeasured checks a small difference of sizes that may be left out, and its doubt.
func (c *checker) smallMeasured(path string, m Measured, nominal units.Length) {
	if nominal > 0 && !m.isZero() {
		c.measured(path, m, nominal)
		c.small(path, m.Value, nominal)
	}
}

func (c *checker) honing(path string, made []Pass, nominal units.Length) {
	if len(made) > maxReadings {
		c.fault(path, len(made), "want at most %d", maxReadings)
		return
	}
	for i, p := range made {
		path := fmt.Sprintf("%s[%d]", path, i)
		switch {
		case i == 0 && p.Lasts.Duration != 0:
			c.fault(path+".lasts", p.Lasts, "want the size before the first pass here, which lasts no time")
		case i > 0 && p.Lasts.Duration <= 0:
			c.fault(path+".lasts", p.Lasts, "want above 0")
		}
		if c.needed(path+".diameter", p.Diameter, largestBore) {
			c.near(path+".diameter", p.Diameter, nominal)
		}
		if p.At.IsZero() {
			c.fault(path+".at", nil, `missing: write the cylinder's temperature then, "27 °C"`)
		}
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
		if c.needed(path+".gap", g.Gap.Value, units.MaxLength) {
			c.smallMeasured(path+".gap", g.Gap, e.Bore)
		}
		c.smallMeasured(path+".finished", g.Finished, e.Bore)
		if g.Filed && g.Finished.isZero() {
			c.fault(path+".filed", true, "want finished too, the gap after filing")
		}
		if c.needed(path+".bore", g.Bore, units.MaxLength) {
			c.near(path+".bore", g.Bore, e.Bore)
		}
	}
}
