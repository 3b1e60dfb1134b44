// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/sense"
)

func (c *checker) cylinders(j Job) {
	n := len(j.Cylinders)
	c.refuse(n != j.Engine.Cylinders, "engine.cylinders", j.Engine.Cylinders, "want as many as are listed under cylinders, %d", n)
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
		for k, r := range cyl.Texture {
			c.place(fmt.Sprintf("%s.texture[%d].place", path, k), r.Place)
		}
		c.profiles(path+".profiles", cyl.Profiles)
		c.feeler(path+".feeler_test", cyl.FeelerTest)
		if cyl.Piston.has() && cyl.PistonFor == nil {
			c.fault(path+".piston_for", nil, `missing: write for which size the piston is, over nominal, "0 mm" for the standard one`)
		}
		c.honing(path+".honing", cyl.Honing)
		c.ringGaps(path+".rings", cyl.Rings, j.Engine)
		c.pits(path+".pits", cyl.Pits, j.Engine)
		coated := j.Engine.Wall == oversize.Plated || j.Engine.Wall == oversize.BareAlSi
		if !coated && cyl.PlatingWhole != nil {
			c.fault(path+".plating_whole", *cyl.PlatingWhole, "there is none on %v: is engine.wall right?", j.Engine.Wall)
		}
	}
}

func (c *checker) pits(path string, pits []bore.Pit, e Engine) {
	for i, p := range pits {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.refuse(p.Below == 0, path+".below", nil, "missing: want how far below the wall")
		c.hold(path+".below", p.Below, sense.Small(p.Below, e.Bore))
		if most := cmp.Or(e.Layout.Length, sense.LargestDepth); p.Depth < 0 || p.Depth+p.Length > most || p.Length < 0 {
			c.fault(path+".depth", p.Depth, "want 0 at the deck, up to %v", most)
		}
	}
}

func (c *checker) feeler(path string, gaps []FeelerGap) {
	switch {
	case len(gaps) != 0 && len(gaps) != 2:
		c.fault(path, len(gaps), "want the gap at two depths, the upper one first")
	case len(gaps) == 2 && gaps[1].Depth <= gaps[0].Depth:
		c.fault(path+"[1].depth", gaps[1].Depth, "want more than the upper one, %v", gaps[0].Depth)
	}
}

func (c *checker) readings(path string, rs []Reading, g Gauge, j Job) {
	deepest := cmp.Or(j.Engine.Layout.Length, sense.LargestDepth)
	for i, r := range rs {
		fault := func(field string, value any, want string, args ...any) {
			c.fault(fmt.Sprintf("%s[%d].%s", path, i, field), value, want, args...)
		}
		if d := r.depth(); d < 0 || d > deepest {
			fault("depth", d, "want 0 at the deck, up to %v", deepest)
		}
		switch {
		case r.Diameter == 0 && r.Deviation == nil:
			fault("diameter", nil, "missing: want diameter or deviation")
			continue
		case r.Diameter != 0 && r.Deviation != nil:
			fault("deviation", r.Deviation, "want either this or diameter, not both")
			continue
		case r.Deviation != nil && g.Dial == 0:
			c.fault("gauge.dial", nil, "missing: the readings are deviations: want which way the dial runs, %q or %q", bore.PlusIsLarger, bore.PlusIsSmaller)
			continue
		case r.Deviation != nil && g.Standard.Size.Value <= 0:
			c.fault("gauge.standard.size", nil, "missing: the readings are deviations from it")
			continue
		}
		field := "diameter"
		if r.Deviation != nil {
			field = "deviation"
		}
		if d, err := g.diameter(r); err != nil {
			fault(field, nil, "%w", err)
		} else if err := sense.Near(d, j.Engine.Bore); err != nil {
			want := "%w"
			if r.Diameter != 0 && r.depth() != 0 && sense.Near(r.depth(), j.Engine.Bore) == nil {
				want += " Or are depth and diameter the wrong way round?"
			}
			fault(field, d, want, err)
		}
	}
}

func (c *checker) honing(path string, made []Pass) {
	for i, p := range made {
		switch lasts := p.Lasts.Duration; {
		case i == 0 && lasts != 0:
			c.fault(path+"[0].lasts", p.Lasts, "want the size before the first pass here, which lasts no time")
		case i > 0 && lasts <= 0:
			c.fault(fmt.Sprintf("%s[%d].lasts", path, i), p.Lasts, "want above 0")
		}
	}
}

func (c *checker) ringGaps(path string, gaps []RingGap, e Engine) {
	var names []string
	for _, r := range e.Rings {
		names = append(names, r.Name)
	}
	seen := map[string]bool{}
	for i, g := range gaps {
		path := fmt.Sprintf("%s[%d]", path, i)
		c.name(path+".ring", g.Ring, seen)
		if !slices.Contains(names, g.Ring) {
			c.fault(path+".ring", g.Ring, "want the name of one of engine.rings: %s", strings.Join(names, ", "))
		}
		c.refuse(g.Filed && g.Finished.isZero(), path+".filed", true, "want finished too, the gap after filing")
	}
}
