// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// chosen returns the choice for the cylinder; undecided while there is none.
func (b *book) chosen() oversize.CylinderChoice {
	if len(b.choice.Cylinders) == 0 {
		return oversize.CylinderChoice{}
	}
	return b.choice.Cylinders[b.at]
}

// finished returns the bore that goes together, and whether it is there: as proven, or as it stays. Until then
// it is the worn one.
func (b *book) finished() (at sitting, there bool) {
	if p := b.proofs[b.at]; p != nil {
		return p.as, true
	}
	return b.read[b.at].sitting, b.chosen().Route == oversize.MakersProcess
}

// workStep is the step that brings a cylinder on while its work is to come.
func (b *book) workStep() Step {
	c, p := b.chosen(), b.passes[b.at]
	switch {
	case !b.Cylinders[b.at].surveyed():
		return StepMeasure
	case len(b.choice.Cylinders) == 0:
		return StepWaitForOthers
	case b.withheld():
		return StepTell
	case c.Route == oversize.Undecided:
		return StepMeasureBetter
	case c.Route == oversize.MakersProcess:
		return StepLeaveUntouched
	case waiting(b.Job, b.choice) || b.spoilt():
		return StepWaitForOthers
	case p.recorded && p.broken == noReason:
		return passStep(p.next.Decision, b.Cylinders[b.at].passes())
	case p.recorded:
		return StepMeasureBetter // never back to the boring bar on a record that cannot be followed
	case c.Route == oversize.Sleeve:
		return StepFitSleeve
	case c.Work == oversize.Deglaze:
		return StepDeglaze
	case c.Work == oversize.CorrectForm:
		return StepHone
	}
	return StepBore
}

// withheld reports whether the choice decides nothing because of what was not said.
func (b *book) withheld() bool { return len(b.untold)+len(b.slipped) > 0 }

// later is the step that settles a row about the finished bore: while that is still to come, its work.
func (b *book) later(step Step) Step {
	if _, there := b.finished(); !there {
		return b.workStep()
	}
	return step
}

// spoilt reports whether another cylinder that shares this one's size is past it: the size may change.
func (b *book) spoilt() bool {
	if b.Engine.ownSizes() {
		return false
	}
	for i := range b.Cylinders {
		if i != b.at && b.pastSize(i) {
			return true
		}
	}
	return false
}

// route writes whether what is to be done is decided.
func (b *book) route() {
	c := b.chosen()
	at, _ := b.finished()
	r := provenBy(demandRoute, "", noReason)
	switch {
	case len(b.choice.Cylinders) == 0:
		step := StepWaitForOthers
		if !b.Cylinders[b.at].surveyed() {
			step = StepMeasure
		}
		r = open(demandRoute, "", notRead, step)
	case c.Route == oversize.Undecided:
		r = open(demandRoute, "", doubtful, StepMeasureBetter, b.path+"readings")
		if b.Cylinders[b.at].WearShare == 0 && sideDecides(c, b.read[b.at].cleanUp) {
			r.Give = []string{b.path + "wear_share", b.path + "readings"}
		}
		if b.withheld() {
			r = open(demandRoute, "", untold, StepTell)
		}
		for _, x := range c.Refused {
			if x.Reason.Open() && !b.withheld() {
				r.Says = list(r.Says, x.Reason.String())
				if x.Reason == oversize.PistonNotMeasured || x.Reason == oversize.WallNotMeasured {
					r.Reason, r.Step = notMeasured, StepMeasureBetter
				}
			}
		}
	case waiting(b.Job, b.choice):
		r = open(demandRoute, "", othersFirst, StepWaitForOthers)
	case c.Route == oversize.HoneAndKeep && betweenAxes(at.bore) != "": // along another axis it may not be one to keep
		r = open(demandRoute, "", notSeen, StepMeasureBetter, b.path+"readings", b.path+"proof")
		r.Says = betweenAxes(at.bore)
	case c.Route == oversize.MakersProcess:
		r.Step = StepLeaveUntouched
		switch whole := b.Cylinders[b.at].PlatingWhole; {
		case whole != nil && !*whole:
			r = Row{Demand: demandRoute, State: StateFailed, Reason: peels, Step: StepAskMaker}
		case whole == nil && b.Engine.Wall == oversize.Plated:
			r = open(demandRoute, "", notSaid, StepMeasure, b.path+"plating_whole")
		}
	}
	r.Price = b.price(c)
	b.put(r)
}

// pistons writes whether the piston that the cylinder is going to have is there and measured. A window that
// follows from a piston nobody has measured is no window to cut to.
func (b *book) pistons() {
	c, f := b.chosen(), b.fits[b.at]
	switch {
	case c.Route == oversize.Undecided:
		b.put(open(demandPistons, "", toCome, b.workStep()))
	case f.got && b.askedOfPiston(f.piston) != "":
		r := open(demandPistons, "", notSaid, StepTell, "engine.oversizes.pistons", b.path+"piston")
		r.Says = b.askedOfPiston(f.piston)
		b.put(r)
	case f.got:
		b.put(provenBy(demandPistons, "", byOwnRecord))
	default:
		b.put(open(demandPistons, "", notMeasured, b.getPistons(), b.path+"piston", "engine.oversizes.pistons"))
	}
}

// getPistons is the step that brings pistons: none is bought while another cylinder may still move the size.
func (b *book) getPistons() Step {
	if b.workStep() == StepWaitForOthers {
		return StepWaitForOthers
	}
	return StepGetPistons
}

// askedOfPiston says what has to be known of how a piston was measured; "" where it is.
func (b *book) askedOfPiston(p Piston) string {
	switch {
	case p.Axis == 0 || p.Coating == nil:
		return "in which axis it was measured, and what coating it has, \"0 mm\" for none"
	case (p.Height == 0) != (p.MakerHeight == 0):
		return "at what height it was measured, and at what height its maker says to: both or neither"
	case p.Height != p.MakerHeight:
		return fmt.Sprintf("it was measured at %v and its maker says %v: measure it there", p.Height, p.MakerHeight)
	}
	return ""
}

// work writes whether the cylinder was bored, sleeved, honed or deglazed.
func (b *book) work() {
	c := b.chosen()
	switch {
	case c.Route == oversize.MakersProcess && b.cutAnyway():
		b.put(Row{Demand: demandWork, State: StateFailed, Reason: wallWasCut, Step: StepAskMaker})
	case c.Route == oversize.MakersProcess:
		b.put(notAsked(demandWork, ""))
	case b.proofs[b.at] != nil && c.Route != oversize.Undecided:
		b.put(provenBy(demandWork, "", byOwnRecord))
	case b.pastSize(b.at):
		b.put(Row{Demand: demandWork, State: StateFailed, Reason: pastSize, Step: StepOversized})
	default:
		b.put(open(demandWork, "", toCome, b.workStep(), b.path+"proof"))
	}
}

// cutAnyway reports whether a wall that is never worked on was honed in this job.
func (b *book) cutAnyway() bool {
	p := b.proofs[b.at]
	return b.Cylinders[b.at].bored() || p != nil && p.Changed != nil && cannot(p.Changed.Stock, notGone)
}

// record writes whether the record of honing can be followed.
func (b *book) record() {
	p := b.passes[b.at]
	switch {
	case !p.recorded && b.Counted.Passes == nil && b.proven():
		b.put(open(demandRecord, "", notCounted, StepTell, "counted.passes"))
	case !p.recorded:
		b.put(notAsked(demandRecord, ""))
	case p.broken != noReason:
		r := open(demandRecord, "", p.broken, StepMeasureBetter, b.path+"honing")
		r.Says = p.says
		b.put(r)
	default:
		b.put(provenBy(demandRecord, "", byOwnRecord))
	}
}

// pastSize reports whether a cylinder is known to be past its size.
func (b *book) pastSize(i int) bool {
	if len(b.choice.Cylinders) == 0 || b.choice.Cylinders[i].Route == oversize.Undecided {
		return false
	}
	if p := b.proofs[i]; p != nil {
		return slices.ContainsFunc(p.Findings, func(f bore.Finding) bool {
			return f.Limit == bore.LimitNew && f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper
		})
	}
	return passStep(b.passes[i].next.Decision, b.Cylinders[i].passes()) == StepOversized && b.passes[i].recorded
}

// sleeveRows writes the fit of a sleeve, where the cylinder gets one or may.
func (b *book) sleeveRows() {
	route := b.chosen().Route
	if route != oversize.Sleeve && route != oversize.Undecided {
		return
	}
	var v SleeveSheet
	if b.sleeve != nil {
		v = *b.sleeve
	}
	seat, grips := b.seats[b.at].cleansUp, uncertainty.Undecided
	strains := func(part string, by sleeve.Strength) string {
		switch {
		case by.Wanted == 0:
			return "nothing is known of the strength of the " + part
		case v.Holding == nil:
			return "the " + part + " may not stand the stress: less interference"
		}
		return "the " + part + " may not stand the stress"
	}
	if v.Running != nil {
		grips = v.Running.Grips
	}
	barrel, inside := sleeve.Weaker(v.Fit, v.Honed)
	for _, q := range []struct {
		of      string
		verdict uncertainty.Verdict
		finding *uncertainty.Finding
		why     Reason
		says    string
	}{
		{"seat cleans up", seat.Verdict, &seat, noSoundFit, "the seat does not surely clean up the worn bore: a larger one"},
		{"stress in the barrel", barrel.Verdict, nil, noSoundFit, strains("barrel", barrel)},
		{"stress in the sleeve", inside.Verdict, nil, noSoundFit, strains("sleeve", inside)},
		{"slips home", v.Heat.Slips, nil, noSoundFit, "it does not surely slip home at that heat"},
		{"stock to hone out", v.Hone.CleansUp, nil, noSoundFit, "there is no stock to hone out of it: a smaller bore"},
		{"grip", grips, nil, comesLoose, ""},
	} {
		r := Row{Demand: demandSleeve, Key: q.of, Of: q.of, Give: []string{"engine.sleeve"}}
		switch {
		case route == oversize.Undecided:
			r.Reason, r.Step = toCome, b.workStep()
		case b.sleeve == nil:
			r.State, r.Reason, r.Step = StateFailed, noSoundFit, StepChooseSleeve
			if b.noFit != nil {
				r.Says = b.noFit.Error()
			}
		case q.why == comesLoose && v.Running == nil:
			r.Reason, r.Step, r.Give = comesLoose, StepChooseSleeve, []string{"engine.running.bore"}
			r.Says = "the job does not say how warm the bore runs"
		case q.verdict == uncertainty.Within:
			r.State, r.Finding, r.Give = StateProven, q.finding, nil
		default:
			r.State, r.Reason, r.Step, r.Finding, r.Says = StateFailed, q.why, StepChooseSleeve, q.finding, q.says
		}
		b.put(r)
	}
	b.put(b.fitted(route, v.Joint.Interference))
}

// fitted is the row of a sleeve and its seat as they were measured: what the fit was worked out for is not what went in.
func (b *book) fitted(route oversize.Route, wanted sleeve.Diametral) Row {
	const of = "interference as measured"
	was, path := b.Cylinders[b.at].SleeveFitted, b.path+"sleeve_fitted"
	_, there := b.finished()
	if route == oversize.Undecided || b.sleeve == nil || was == (SleeveFitted{}) {
		r := open(demandSleeve, of, toCome, b.workStep())
		if there && route == oversize.Sleeve {
			r = open(demandSleeve, of, notMeasured, StepChooseSleeve, path)
			r.Says = "nobody measured the sleeve and its seat before they went together"
		}
		r.Key = of
		return r
	}
	outside, seat := bore.Place{Own: was.Outside.estimate(uncertified)}, bore.Place{Own: was.Seat.estimate(uncertified)}
	f := finding(of, outside.Minus(seat), units.Limits{Min: max(wanted.Min, notTouching.Min), Max: wanted.Max}, b.risk.row)
	r := judged(demandSleeve, of, f, verdict{StepChooseSleeve, StepChooseSleeve}, path)
	r.Key = of
	switch {
	case f.Verdict == uncertainty.Undecided:
		r.Says = "its interference as measured may not be what the fit was worked out for"
	case f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Lower:
		r.Reason, r.Says = comesLoose, "its interference as measured is less than the fit was worked out for: it may come loose"
	case f.Verdict == uncertainty.Beyond:
		r.Reason, r.Says = noSoundFit, "its interference as measured is more than the fit was worked out for: it may not stand the stress"
	}
	return r
}
