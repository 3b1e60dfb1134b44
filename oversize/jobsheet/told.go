// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/oversize"
)

// A need is something that the route hangs on and the job does not say.
type need struct {
	path string // of the field
	asks string // the question, in words
}

// untold returns what a choice hangs on and the job does not say. A bore is kept on its limits, and cut on
// everything that has a say in which size: leaving any of it out must not move the route.
func (g given) untold(choice oversize.Choice) []need {
	if choice.Route == oversize.MakersProcess || len(choice.Cylinders) == 0 {
		return nil
	}
	var needs []need
	ask := func(missing bool, path, asks string) {
		if missing {
			needs = append(needs, need{path, asks})
		}
	}
	kept, cuts, bored := false, false, false
	for _, c := range choice.Cylinders {
		kept = kept || c.Route == oversize.HoneAndKeep
		cuts = cuts || c.Work != oversize.Deglaze
		bored = bored || c.Route == oversize.BoreOversize || c.Route == oversize.Sleeve
	}
	e, l := g.Engine, g.Engine.Limits
	ask(g.Gauge.Standard == (Standard{}), "gauge.standard", "what was the gauge set on?")
	ask(g.Gauge.Standard != (Standard{}) && !g.Gauge.Spindle.OnStandard && slices.ContainsFunc(g.Cylinders, func(c Cylinder) bool {
		return c.surveyed() && len(c.Readings) == 0
	}), "gauge.spindle.on_standard", "was the spindle's indicator set on the standard?")
	ask(g.Engine.Layout.RingBottom == 0 && !g.unknown(ringTravel), "engine.layout.ring_bottom", "how deep do the rings travel? Turn the crank to find the top ring's highest edge and the lowest ring's lowest; or name it in not_known")
	ask(g.Engine.Layout.RingBottom != 0 && g.Engine.Layout.RingTop == 0, "engine.layout.ring_top", "how near to the deck do the rings come?")
	ask(g.Counted.Readings == nil, "counted.readings", "how many readings were written down?")
	ask(g.Counted.Pits == nil, "counted.pits", "how many scores and pits were found by looking? 0 is an answer")
	ask(l.LeastWall == 0 && !g.unknown(leastWall), "engine.limits.least_wall", "how thin may the wall be? Or name it in not_known")
	for i, c := range g.Cylinders {
		ask((l.LeastWall != 0) != !c.ThinnestWall.isZero(), fmt.Sprintf("cylinders[%d].thinnest_wall", i), "a least wall and a measured one belong together")
	}
	if kept {
		for _, q := range l.asked() {
			ask(!q.given && !acceptedKind(g.Accepted, q.demand), q.field, "what does the maker allow?")
		}
		ask(l.PistonClearance.IsZero() && !acceptedKind(g.Accepted, demandLeastClearance), "engine.limits.piston_clearance", "what does the maker allow?")
	}
	if !cuts {
		return needs
	}
	ask(g.Counted.Passes == nil, "counted.passes", "how many honing passes were written down? 0 where none was made, or no record kept")
	ask(g.Tools.Hone == 0, "tools.hone", "what kind of hone is there?")
	ask(len(g.Cylinders) > 1 && e.OneSize == nil, "engine.one_size", "do the cylinders share one size?")
	ask(e.Oversizes == nil, "engine.oversizes", "which sizes can be had? An empty list is none")
	ask(e.HoningAllowance == 0, "engine.honing_allowance", "how much is left for the hone?")
	ask(e.MayShift == nil, "engine.may_shift", "how far may the axis move? \"0 mm\" is not at all")
	ask(l.PistonClearance.IsZero(), "engine.limits.piston_clearance", "what clearance does the maker want?")
	for i, c := range g.Cylinders {
		ask(c.WearShare == 0 && !g.unknown(wearShare) && len(c.Traces) == 0, fmt.Sprintf("cylinders[%d].wear_share", i), "how much of the wear is on one side? Or name it in not_known")
	}
	if bored {
		ask(e.GasketHole == 0, "engine.gasket_hole", "how wide is the hole of the head gasket to be fitted?")
		ask(g.Cuts.Locating == nil, "cuts.locating", "how far may the boring bar miss the axis meant?")
		ask(g.Cuts.OutOfSquare == nil, "cuts.out_of_square", "how far may the bar lean over the length bored?")
		ask(g.Cuts.Surface == nil, "cuts.surface", "how much has to go under the worn skin?")
		for n, o := range e.Oversizes {
			ask(!o.MakersList && l.GreatestOverbore == 0, fmt.Sprintf("engine.oversizes[%d].makers_list", n), "is the size on the maker's own list? Or give limits.greatest_overbore")
			ask(!o.MakersList && g.unknown(leastWall), fmt.Sprintf("engine.oversizes[%d].makers_list", n), "without a least wall only sizes on the maker's own list are bored")
		}
	}
	return needs
}

// withheld returns a choice that decides nothing, since what it hangs on was not said: the route that would
// follow stands in Otherwise alone.
func withheld(c oversize.Choice) oversize.Choice {
	out := oversize.Choice{Risk: c.Risk, Otherwise: c.Route, OtherwiseOver: c.Over, Cautions: c.Cautions}
	if c.Route == oversize.Undecided {
		out.Otherwise, out.OtherwiseOver = c.Otherwise, c.OtherwiseOver
	}
	for _, one := range c.Cylinders {
		out.Cylinders = append(out.Cylinders, oversize.CylinderChoice{Name: one.Name, Refused: one.Refused})
	}
	return out
}

// Counted is how many of each thing stand on the paper at the bench, for the whole engine. A reading, a pass
// or a pit that is lost between paper and file is not seen by anything else, and it may be the one that
// mattered. Zero is a count; nil is none.
type Counted struct {
	Readings *int `json:"readings,omitempty"` // of the survey, all cylinders together, repeats too
	Proof    *int `json:"proof,omitempty"`    // of the finished bores
	Passes   *int `json:"passes,omitempty"`   // of honing; 0 where no record was kept
	Rings    *int `json:"rings,omitempty"`    // on one piston
	Pits     *int `json:"pits,omitempty"`     // scores and pits found by looking, all cylinders together
	Ports    *int `json:"ports,omitempty"`    // in one cylinder of a two-stroke
	Trials   *int `json:"trials,omitempty"`   // of the gauge's study
	Textures *int `json:"textures,omitempty"` // readings and profiles of the texture, all cylinders together
	Traces   *int `json:"traces,omitempty"`   // of worn and of finished bores, all cylinders together
}

// A count is what was counted of one thing beside what the job holds.
type count struct {
	path  string
	given *int
	holds int
	must  bool // it is asked for where the job holds any
}

// counts returns every count, given or not.
func (j Job) counts() []count {
	var readings, proof, passes, pits, textures, traces int
	for _, c := range j.Cylinders {
		readings, proof = readings+len(c.Readings), proof+len(c.Proof)
		passes, pits = passes+c.passes(), pits+len(c.Pits)
		textures, traces = textures+len(c.Texture)+len(c.Profiles), traces+len(c.Traces)+len(c.ProofTraces)
	}
	n := j.Counted
	return []count{
		{"counted.readings", n.Readings, readings, false}, {"counted.proof", n.Proof, proof, false}, {"counted.passes", n.Passes, passes, false},
		{"counted.rings", n.Rings, len(j.Engine.Rings), false}, {"counted.pits", n.Pits, pits, false}, {"counted.ports", n.Ports, len(j.Engine.Layout.Ports), false},
		{"counted.trials", n.Trials, len(j.Gauge.Study), true}, {"counted.textures", n.Textures, textures, true}, {"counted.traces", n.Traces, traces, true},
	}
}

// What may be said to be not known.
const (
	ringTravel = "ring travel"
	wearShare  = "wear share"
	leastWall  = "least wall"
)

// unknown reports whether a thing is said to be not known.
func (j Job) unknown(what string) bool { return slices.Contains(j.NotKnown, what) }

// A Confirmation says that a field which looks like a slip is right as it stands. It lapses when the
// field is changed.
type Confirmation struct {
	Field string `json:"field"` // its path, "engine.limits.service"
	Value string `json:"value"` // what stands there, as the sheet quotes it
}
