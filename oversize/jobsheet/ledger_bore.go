// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// proofRows writes how the finished bore was read: washed, at rest, held as before.
func (b *book) proofRows() {
	held := b.Survey.TorquePlate != nil && b.Proof.TorquePlate != nil // that they differ is a fault of the job
	b.put(b.asRead(demandWashed, b.Proof.Washed, StepWashAndProve, "proof.washed"))
	at, there := b.finished()
	switch {
	case !there:
		b.put(open(demandRest, "", toCome, b.workStep()))
	case at.standard() == (Standard{}):
		b.put(open(demandRest, "", noStandard, StepMeasureBetter, "gauge.standard"))
	case !at.atRest():
		b.put(open(demandRest, "", notAtRest, StepWashAndProve, "proof.temperatures"))
	default:
		b.put(provenBy(demandRest, "", byOwnRecord))
	}
	b.put(b.asRead(demandClamping, held, StepTell, "survey.torque_plate", "proof.torque_plate"))
}

// ridge writes whether a bore that is kept has a ridge left at the top of ring travel. US Army TM 5-3895-348-14&P-2 and
// TM 5-3895-359-14&P take it off even where the bore is inside its limits, for the new top ring strikes it; what is cut to
// size has none.
func (b *book) ridge() {
	route, gone := b.chosen().Route, b.Cylinders[b.at].RidgeGone
	switch _, there := b.finished(); {
	case route != oversize.HoneAndKeep && route != oversize.Undecided:
		b.put(notAsked(demandRidge, ""))
	case !there || route == oversize.Undecided:
		b.put(open(demandRidge, "", toCome, b.workStep()))
	case gone == nil:
		b.put(open(demandRidge, "", notSaid, StepWashAndProve, b.path+"ridge_gone"))
	case !*gone:
		b.put(Row{Demand: demandRidge, State: StateFailed, Reason: ridgeLeft, Step: StepRework})
	default:
		b.put(provenBy(demandRidge, "", byOwnRecord))
	}
}

// asRead is a row about how the finished bore was read; of one that stays as it is nobody asks.
func (b *book) asRead(d Demand, said bool, step Step, give ...string) Row {
	_, there := b.finished()
	switch {
	case !there:
		return open(d, "", toCome, b.workStep())
	case b.proofs[b.at] == nil:
		return notAsked(d, "")
	case said:
		return provenBy(d, "", byOwnRecord)
	}
	return open(d, "", notSaid, step, give...)
}

// unseenTravel are the blind spots along ring travel.
var unseenTravel = [...]bore.Unseen{bore.UnseenTop, bore.UnseenMiddle, bore.UnseenBottom}

// travel writes whether all of ring travel was looked at, and in the proof all places of the survey.
func (b *book) travel() {
	found, there := b.finished()
	g := found.bore
	step, at := StepMeasure, b.path+"readings"
	p := b.proofs[b.at]
	if p != nil {
		step, at = StepWashAndProve, b.path+"proof"
	}
	r := provenBy(demandTravel, "", byOwnRecord)
	for _, u := range g.Unseen {
		if slices.Contains(unseenTravel[:], u) {
			r = open(demandTravel, "", notSeen, step, at)
			r.Says = u.String()
		}
	}
	switch {
	case unread(g):
		r = open(demandTravel, "", notRead, StepMeasure, at)
	case b.Engine.Layout.RingBottom == 0 && !b.unknown(ringTravel):
		r = open(demandTravel, "", notSaid, StepTell, "engine.layout.ring_top", "engine.layout.ring_bottom", "not_known")
	case p != nil && len(p.Missing) > 0:
		r = open(demandTravel, "", notSeen, step, at)
		r.Says = fmt.Sprintf("places of the survey not read again: %d", len(p.Missing))
	case !there && r.State == StateProven:
		r = open(demandTravel, "", toCome, b.workStep())
	}
	b.put(r)
}

// An asked is a limit on the size or the form of a bore, whether the maker gives it, and where he would.
type asked struct {
	demand Demand
	limit  bore.Limit
	given  bool
	field  string
}

// asked are the limits on a worn bore.
func (l Limits) asked() [wearFigures]asked {
	taper := asked{demandTaper, bore.LimitTaper, l.Taper != 0, "engine.limits.taper"}
	if !l.Choke.IsZero() { // which stands in place of it
		taper.limit, taper.given = bore.LimitChoke, true
	}
	return [...]asked{
		{demandSize, bore.LimitService, l.Service != 0, "engine.limits.service"}, {demandOvality, bore.LimitOvality, l.Ovality != 0, "engine.limits.ovality"},
		taper, {demandSpread, bore.LimitSpread, l.GreatestLessLeast != 0, "engine.limits.greatest_less_least"},
	}
}

// form writes the size and the form of the bore that goes together.
func (b *book) form() {
	at, there := b.finished()
	c, l := b.chosen(), b.Engine.Limits
	all := l.asked()
	if cutToSize(c) {
		size, ovality, taper := &all[0], &all[1], &all[2]
		if there { // else what stands there is the worn bore
			size.limit = bore.LimitNew
		}
		size.given, size.field = !c.Finish.IsZero() && !l.PistonClearance.IsZero(), "engine.limits.piston_clearance"
		ovality.given, ovality.field = l.FinishOvality != 0, "engine.limits.finish_ovality"
		taper.given, taper.field = l.FinishTaper != 0 || !l.Choke.IsZero(), "engine.limits.finish_taper"
	}
	for _, q := range all {
		r := b.held(q, at, there)
		if c.Route == oversize.Undecided && r.State == StateProven {
			// Which limit holds, of a bore that is kept or of one that is cut, is not decided.
			r = Row{Demand: q.demand, Finding: r.Finding, Reason: toCome, Step: b.workStep()}
		}
		b.put(r)
	}
}

// held is the row of a bore that is held to a limit.
func (b *book) held(q asked, at sitting, there bool) Row {
	var f *bore.Finding
	for k := range at.findings {
		if at.findings[k].Limit == q.limit {
			f = &at.findings[k]
		}
	}
	between := betweenAxes(at.bore)
	switch {
	case unread(at.bore):
		return open(q.demand, "", notRead, StepMeasure, b.path+"readings")
	case q.demand == demandSize && at.standard() == (Standard{}):
		return open(q.demand, "", noStandard, StepMeasureBetter, "gauge.standard")
	case !there:
		r := open(q.demand, "", toCome, b.workStep())
		if f != nil && !f.NotMeasured {
			r.Finding = &f.Finding
		}
		if !q.given {
			r.Reason, r.Give = noLimit, []string{q.field}
		}
		return r
	case !q.given || f == nil:
		return open(q.demand, "", noLimit, StepTell, q.field)
	case f.NotMeasured:
		return open(q.demand, "", notSeen, StepMeasureBetter, b.path+"readings", b.path+"proof")
	case (q.demand == demandOvality || q.demand == demandSpread) && f.Verdict != uncertainty.Beyond && between != "":
		r := open(q.demand, "", notSeen, StepMeasureBetter, b.path+"readings", b.path+"proof")
		r.Finding, r.Says = &f.Finding, between
		return r
	}
	return judged(q.demand, "", f.Finding, b.sizeSteps(*f), b.path+"readings", b.path+"proof")
}

// betweenAxes says that an ovality may lie unseen between the axes of a bore; "" where it cannot.
func betweenAxes(g bore.Geometry) string {
	for _, u := range []bore.Unseen{bore.UnseenOvality, bore.UnseenBetweenAxes} {
		if slices.Contains(g.Unseen, u) {
			return u.String()
		}
	}
	return ""
}

// sizeSteps are the steps that a finding of a finished bore calls for. One that was cut to a size can be honed
// on where it is too small, or may be, and is past its size where it is too large.
func (b *book) sizeSteps(f bore.Finding) verdict {
	c := b.chosen()
	switch {
	case c.Route == oversize.MakersProcess:
		return verdict{StepAskMaker, StepMeasureBetter}
	case f.Limit == bore.LimitNew && f.Edge == uncertainty.Lower:
		return verdict{StepHone, StepHone}
	case f.Limit == bore.LimitNew:
		return verdict{StepOversized, StepMeasureBetter}
	}
	return verdict{StepRework, StepMeasureBetter}
}

// wallForm writes whether the wall that goes together has the roundness and the cylindricity that are asked of it:
// traces alone show them.
func (b *book) wallForm() {
	l := b.Engine.Limits
	at, there := b.finished()
	f := at.form()
	step, give := StepMeasure, b.path+"traces"
	if b.proofs[b.at] != nil {
		step, give = StepWashAndProve, b.path+"proof_traces"
	}
	r := provenBy(demandForm, "", noReason)
	switch {
	case l.Roundness == 0 && l.Cylindricity == 0:
		r = notAsked(demandForm, "")
	case !there:
		r = open(demandForm, "", toCome, b.workStep())
	case f == nil:
		r = open(demandForm, "", notMeasured, step, give)
	case l.Cylindricity != 0 && len(f.Traces) < 2:
		r = open(demandForm, "", notSeen, step, give)
		r.Says = "cylindricity: it wants two traces at least"
	case len(f.Unseen) > 0:
		r = open(demandForm, "", notSeen, step, give)
		r.Says = "no trace shows " + show.NoTrace(f.Unseen[0])
	}
	if r.State == StateProven || r.Reason == notSeen {
		for i, found := range f.Findings {
			q := judged(demandForm, "", found, b.sizeSteps(bore.Finding{Limit: bore.LimitOvality}), give)
			if i == 0 && r.State == StateProven || q.presses(&r) {
				r = q
			}
		}
	}
	b.put(r)
}

// pits writes whether scores and pits are gone, or shallow enough.
func (b *book) pits() {
	c, choice := b.Cylinders[b.at], b.chosen()
	var deepest units.Length // that rings pass over
	for _, p := range b.read[b.at].cleanUp.Pits {
		if p.InTravel {
			deepest = max(deepest, p.Below)
		}
	}
	r := provenBy(demandPits, "", byOwnRecord)
	switch cut := cutToSize(choice) && b.proofs[b.at] != nil; {
	case b.Counted.Pits == nil:
		r = open(demandPits, "", notRead, StepMeasure, "counted.pits", b.path+"pits")
	case len(c.Pits) == 0, c.surveyed() && deepest == 0: // or no ring passes over any of them
	case c.surveyed() && choice.Route == oversize.MakersProcess:
		r = Row{Demand: demandPits, State: StateFailed, Reason: tooDeep, Step: StepAskMaker, Says: b.Units.in().Plain(deepest) + " deep"}
	case c.surveyed() && (cut || stays(choice) && deepest <= b.Cuts.deglaze()/2): // what cleans up counts their depth
	case c.surveyed() && stays(choice):
		r = Row{Demand: demandPits, State: StateFailed, Reason: tooDeep, Step: StepRework, Says: b.Units.in().Plain(deepest) + " deep"}
	default:
		r = open(demandPits, "", toCome, b.workStep())
	}
	b.put(r)
}

// wallRow writes whether enough wall is left at the thinnest place.
func (b *book) wallRow() {
	c, given := b.chosen(), b.Cylinders[b.at]
	least := b.Engine.Limits.LeastWall
	_, there := b.finished()
	wall := given.ThinnestWall.estimate(byCalliper)
	if c.WallLeft.Value != 0 {
		wall = c.WallLeft
	}
	var r Row
	switch {
	case given.ThinnestWall.isZero() && least == 0 && b.unknown(leastWall):
		r = open(demandWall, "", noLimit, b.later(StepAskMaker), "engine.oversizes.makers_list", "engine.limits.least_wall")
		if !cutToSize(c) && c.Route != oversize.Undecided {
			r = notAsked(demandWall, "")
		} else if b.onMakersList(c.Over) && c.Route == oversize.BoreOversize {
			r = provenBy(demandWall, "", byMakersList)
		}
	case least == 0:
		r = open(demandWall, "", noLimit, b.later(StepTell), "engine.limits.least_wall", "not_known")
	case given.ThinnestWall.isZero():
		r = open(demandWall, "", notMeasured, b.later(StepMeasure), b.path+"thinnest_wall")
	case c.Route == oversize.Undecided:
		r = open(demandWall, "", toCome, b.workStep())
	case c.Route == oversize.Sleeve:
		r = judged(demandWall, "", b.seats[b.at].wall, verdict{StepChooseSleeve, StepMeasureBetter}, b.path+"thinnest_wall", "engine.sleeve.seat")
		if b.sleeve == nil {
			r = open(demandWall, "", toCome, StepChooseSleeve)
		}
	default:
		r = judged(demandWall, "", finding("wall left", wall, units.Limits{Min: least}, b.risk.row), verdict{StepAskMaker, StepMeasureBetter}, b.path+"thinnest_wall")
	}
	if r.State == StateProven && !there {
		r = Row{Demand: demandWall, Finding: r.Finding, Reason: toCome, Step: b.workStep()}
	}
	b.put(r)
}

// onMakersList reports whether the maker lists a size.
func (j Job) onMakersList(over units.Length) bool {
	for _, o := range j.Engine.Oversizes {
		if o.Over == over {
			return o.MakersList
		}
	}
	return false
}

// crosshatch writes whether the finished wall has the pattern that the rings want.
func (b *book) crosshatch() {
	p, c := b.proofs[b.at], b.Cylinders[b.at]
	wanted := !b.Tools.Crosshatch.IsZero()
	switch {
	case b.chosen().Route == oversize.MakersProcess:
		b.put(notAsked(demandCrosshatch, ""))
	case !wanted:
		b.put(open(demandCrosshatch, "", noLimit, b.later(StepTell), "tools.crosshatch"))
	case b.Tools.Tolerance == 0:
		b.put(open(demandCrosshatch, "", notSaid, b.later(StepTell), "tools.tolerance"))
	case p == nil:
		b.put(open(demandCrosshatch, "", toCome, b.workStep()))
	case p.Crosshatch == nil:
		b.put(open(demandCrosshatch, "", notMeasured, StepWashAndProve, b.path+"crosshatch"))
	default:
		r := provenBy(demandCrosshatch, "", noReason)
		switch *p.Crosshatch {
		case uncertainty.Beyond:
			r = Row{Demand: demandCrosshatch, State: StateFailed, Reason: beyondLimit, Step: StepRework}
		case uncertainty.Undecided:
			r = open(demandCrosshatch, "", doubtful, StepMeasureBetter, b.path+"crosshatch_doubt")
		}
		r.Says = fmt.Sprintf("%s, ± %v, wanted %v", show.Crosshatch(c.Crosshatch), c.crosshatchDoubt(), b.Tools.want())
		b.put(r)
	}
}
