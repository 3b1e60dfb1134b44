// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore/hone"
	"borewright.example/units/uncertainty"
)

// A budget divides the risk of a job; nothing else in this package does. It is the whole of the promise,
// which has two parts.
//
// A, going together: the chance that an engine goes together on proven rows of the ledger although any of
// them is false is at most the job's accept, 0.05 where it says nothing; that a sound engine has a row
// failed, at most its reject. Both are spent on every row that rests on a measurement and that the engine
// must have or may be asked for, given or not: for each cylinder twelve (the size, ovality, taper, greatest minus
// least, roundness with cylindricity, the piston's least and greatest clearance, its running clearance, the wall, the
// crosshatch, the texture, the interference of a sleeve) and for each of its rings four (the gap, the gap in service, the gap when running, the side clearance). The
// shares are even (Bonferroni: nothing need be independent), and do not grow where something is left out.
//
// B, cutting wrongly: each of three mistakes that cannot be undone has the job's accept, or reject, as a
// figure of its own for the engine: that worn wall or too thin a wall is left, or a bore kept that should
// not be (accept); that a size is wasted, because a finding of the survey calls a bore beyond that is
// within (reject); that honing runs past a size (accept, and never below [hone.LeastRisk] a bore: from
// 0.05 / 0.01 = 5 cylinders on it is 0.01 for each of them, [budget.past]).
//
// What it costs, in standard uncertainties that a proven value keeps away from its limit: one cylinder with
// three rings 2.9, two 3.1, four 3.3, twelve 3.6.
type budget struct {
	row    uncertainty.Risk // of each row of the ledger: part A
	survey uncertainty.Risk // of each finding of the survey: part B
	choice uncertainty.Risk // of the route, for the whole engine: part B
	hone   float64          // of running past the size, in each bore: part B
	past   float64          // the same for the whole engine
}

const (
	boreRows    = 12 // of one cylinder that rest on a measurement
	perRing     = 4  // of one ring
	usualRings  = 3  // where the job does not say
	wearFigures = 4  // what a maker can limit of a worn bore: size, ovality, taper, greatest minus least
)

func (j Job) budget() budget {
	r := j.Risk.OrDefault()
	cylinders, perPiston := len(j.Cylinders), len(j.Engine.Rings)
	if perPiston == 0 {
		perPiston = usualRings
	}
	each := max(hone.LeastRisk, r.Share(cylinders).Accept)
	return budget{
		row:    r.Share(cylinders * (boreRows + perRing*perPiston)),
		survey: r.Share(cylinders * wearFigures),
		choice: r,
		hone:   each,
		past:   min(1, each*float64(cylinders)),
	}
}
