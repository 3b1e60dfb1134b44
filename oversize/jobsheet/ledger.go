// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Row is one thing that must be true before the engine goes together. The rows of a sheet are its
// ledger: they alone say what is next, and everything printed is printed from them. A row is never left
// out: what was not given, not read or not tested is a row that is open.
type Row struct {
	Key      string `json:"key"`               // stays the same while the job grows: "cylinders[0].rings[1].gap"
	Demand   Demand `json:"demand"`            // what must be true
	Cylinder string `json:"cylinder,omitzero"` // its name; "" for the engine
	Of       string `json:"of,omitzero"`       // the ring, the port, the two facts
	State    State  `json:"state"`
	Reason   Reason `json:"reason,omitzero"` // why it stands there
	// Finding is what it rests on; nil where that is no measurement.
	Finding *uncertainty.Finding `json:"finding,omitempty"`
	Says    string               `json:"says,omitzero"`   // the facts, where a finding does not say them
	Give    []string             `json:"give,omitzero"`   // the fields of the job that would settle it
	Step    Step                 `json:"step"`            // that would settle it; Reassemble where nothing is to be done
	Price   *Price               `json:"price,omitempty"` // what less doubt could spare
	// Stands is what an acceptance has to quote; By and Why are whose word it goes on.
	Stands string `json:"stands"`
	By     string `json:"by,omitzero"`
	Why    string `json:"why,omitzero"`
	Lapsed bool   `json:"lapsed,omitzero"` // it was accepted, and what stood there has changed since
}

// rank is how pressing the row is.
func (r Row) rank() rank {
	if r.State.settled() {
		return isSettled
	}
	return r.Reason.fact().rank
}

// presses reports whether r calls for its step before other does.
func (r Row) presses(other Row) bool {
	if a, b := r.rank(), other.rank(); a != b {
		return a < b
	}
	return r.Step < other.Step
}

// next is the step of a cylinder, or of the engine: that of its most pressing row. Nothing else decides.
func next(rows []Row) Step {
	if len(rows) == 0 {
		return Measure
	}
	most := rows[0]
	for _, r := range rows[1:] {
		if r.presses(most) {
			most = r
		}
	}
	return most.Step
}

// A book is a ledger being written: what every row is worked out from.
type book struct {
	given
	read    []readBore
	choice  oversize.Choice
	passes  []passing
	proofs  []*ProofSheet
	fits    []fitting
	bores   []ringBore
	rings   [][]RingSheet
	sleeve  *SleeveSheet
	seats   []seat
	noFit   error // why there is no sleeve's fit
	untold  []need
	slipped []slip

	rows []Row
	at   int // the cylinder being written; -1 for the engine
}

// ledger writes the row of everything that must be true of the engine and of each cylinder, and has what was
// accepted stand in for what is open.
func ledger(b book) []Row {
	b.at = -1
	b.engineRows()
	for b.at = range b.Cylinders {
		b.cylinderRows()
	}
	accept(b.rows, b.Accepted)
	b.others()
	for i := range b.rows {
		if b.rows[i].Stands == "" {
			b.rows[i].Stands = b.rows[i].stands()
		}
	}
	return b.rows
}

// of returns the rows of one cylinder.
func of(rows []Row, cylinder int) []Row {
	var list []Row
	for _, r := range rows {
		if r.cylinder() == cylinder {
			list = append(list, r)
		}
	}
	return list
}

// cylinder returns which cylinder the row is of, -1 for the engine.
func (r Row) cylinder() int {
	var i int
	if _, err := fmt.Sscanf(r.Key, "cylinders[%d].", &i); err != nil {
		return -1
	}
	return i
}

// put adds a row, with its key and its cylinder.
func (b *book) put(r Row) {
	name, err := r.Demand.MarshalText()
	if err != nil {
		name = []byte(r.Demand.String())
	}
	prefix := "engine."
	if b.at >= 0 {
		prefix, r.Cylinder = fmt.Sprintf("cylinders[%d].", b.at), b.Cylinders[b.at].Name
	}
	if r.Key != "" {
		prefix += r.Key + "."
	}
	r.Key = prefix + string(name)
	if r.State.settled() && r.Step == 0 {
		r.Step = Reassemble
	}
	r.Stands = ""
	b.rows = append(b.rows, r)
}

// A verdict is what a finding makes of a row: the step where it is beyond, and where it is in doubt.
type verdict struct {
	beyond, doubtful Step
}

// judged is a row that rests on a finding.
func judged(d Demand, of string, f uncertainty.Finding, v verdict, give ...string) Row {
	r := Row{Demand: d, Of: of, Finding: &f, Give: give}
	switch f.Verdict {
	case uncertainty.Within:
		r.State, r.Give = Proven, nil
	case uncertainty.Beyond:
		r.State, r.Reason, r.Step = Failed, BeyondLimit, v.beyond
	default:
		r.Reason, r.Step = Doubtful, v.doubtful
	}
	return r
}

// open is a row that nothing has been shown of yet.
func open(d Demand, of string, why Reason, step Step, give ...string) Row {
	return Row{Demand: d, Of: of, Reason: why, Step: step, Give: give}
}

// proven is a row that is true by what the job shows.
func provenBy(d Demand, of string, by Reason) Row {
	return Row{Demand: d, Of: of, State: Proven, Reason: by}
}

func notAsked(d Demand, of string) Row {
	return Row{Demand: d, Of: of, State: NotAsked, Reason: Unwanted}
}

// engineRows writes what must be true of the engine.
func (b *book) engineRows() {
	told := provenBy(DemandTold, "", ByOwnRecord)
	if len(b.untold) > 0 {
		told = open(DemandTold, "", Untold, Tell)
		for _, n := range b.untold {
			told.Give = append(told.Give, n.path)
			told.Says = list(told.Says, n.asks)
		}
	}
	b.put(told)
	b.put(b.counted())
	for _, s := range b.slipped {
		r := open(DemandUsual, s.path, LooksSlipped, Tell, "confirmed")
		r.Key, r.Says = s.path, s.says
		b.put(r)
	}
}

// list appends to a list in words.
func list(to, more string) string {
	if to == "" || more == "" {
		return to + more
	}
	return to + "; " + more
}

// counted writes whether what stands in the job is what was written down at the bench. That it differs is a
// fault of the job.
func (b *book) counted() Row {
	r := provenBy(DemandCounted, "", ByOwnRecord)
	for _, n := range b.counts() {
		needed := true
		switch n.path {
		case "counted.ports":
			needed = b.Engine.Cycle == TwoStroke && len(b.choice.Cylinders) > 0
		case "counted.proof", "counted.passes", "counted.rings":
			needed = b.proven() || b.choice.Route == oversize.MakersProcess
		case "counted.readings", "counted.pits":
			needed = len(b.choice.Cylinders) > 0
		}
		if needed && n.given == nil {
			r.State, r.Reason, r.Step = Open, NotCounted, Tell
			r.Give = append(r.Give, n.path)
		}
	}
	return r
}

// cylinderRows writes what must be true of one cylinder.
func (b *book) cylinderRows() {
	i := b.at
	path := fmt.Sprintf("cylinders[%d].", i)
	if len(b.Cylinders[i].Readings) == 0 {
		b.put(open(DemandRead, "", NotRead, Measure, path+"readings"))
	} else {
		b.put(provenBy(DemandRead, "", ByOwnRecord))
	}
	b.route(path)
	b.pistons(path)
	b.work(path)
	b.record(path)
	b.sleeveRows(path)
	b.proofRows(path)
	b.travel(path)
	b.form(path)
	b.pits(path)
	b.wallRow(path)
	b.crosshatch(path)
	b.put(notAsked(DemandTexture, ""))
	b.clearances(path)
	b.ringRows(path)
	b.agreements(path)
}

// chosen returns the choice for the cylinder; undecided while there is none.
func (b *book) chosen() oversize.CylinderChoice {
	if len(b.choice.Cylinders) == 0 {
		return oversize.CylinderChoice{}
	}
	return b.choice.Cylinders[b.at]
}

// finished returns the bore that goes together, and whether it is there: as proven, or as it stays. Until then
// it is the worn one.
func (b *book) finished() (g bore.Geometry, findings []bore.Finding, there bool) {
	if p := b.proofs[b.at]; p != nil {
		return p.Bore, p.Findings, true
	}
	return b.read[b.at].bore, b.read[b.at].findings, b.chosen().Route == oversize.MakersProcess
}

// workStep is the step that brings a cylinder on while its work is to come.
func (b *book) workStep() Step {
	c := b.chosen()
	switch {
	case len(b.Cylinders[b.at].Readings) == 0:
		return Measure
	case len(b.choice.Cylinders) == 0:
		return WaitForOthers
	case b.withheld():
		return Tell
	case c.Route == oversize.Undecided:
		return MeasureBetter
	case c.Route == oversize.MakersProcess:
		return LeaveUntouched
	case waiting(b.Job, b.choice) || b.spoilt():
		return WaitForOthers
	case c.Route == oversize.Sleeve:
		if p := b.passes[b.at]; p.recorded && p.broken == NoReason {
			return passStep(p.next.Decision, len(b.Cylinders[b.at].Honing.Passes))
		}
		return FitSleeve
	case b.passes[b.at].recorded && b.passes[b.at].broken == NoReason:
		return passStep(b.passes[b.at].next.Decision, len(b.Cylinders[b.at].Honing.Passes))
	case b.passes[b.at].recorded:
		return MeasureBetter // never back to the boring bar on a record that cannot be followed
	case c.Work == oversize.Deglaze:
		return DeglazeBore
	case c.Work == oversize.Correct:
		return HoneToSize
	}
	return BoreOut
}

// withheld reports whether the choice decides nothing because of what was not said.
func (b *book) withheld() bool { return len(b.untold)+len(b.slipped) > 0 }

// later is the step that settles a row about the finished bore: while that is still to come, its work.
func (b *book) later(step Step) Step {
	if _, _, there := b.finished(); !there {
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
func (b *book) route(path string) {
	c := b.chosen()
	r := provenBy(DemandRoute, "", NoReason)
	switch {
	case len(b.choice.Cylinders) == 0:
		step := WaitForOthers
		if len(b.Cylinders[b.at].Readings) == 0 {
			step = Measure
		}
		r = open(DemandRoute, "", NotRead, step)
	case c.Route == oversize.Undecided:
		r = open(DemandRoute, "", Doubtful, MeasureBetter, path+"readings")
		if b.withheld() {
			r = open(DemandRoute, "", Untold, Tell)
		}
		for _, x := range c.Refused {
			if x.Reason.Open() && !b.withheld() {
				r.Says = list(r.Says, x.Reason.String())
				if x.Reason == oversize.PistonNotMeasured || x.Reason == oversize.WallNotMeasured {
					r.Reason, r.Step = NotMeasured, MeasureBetter
				}
			}
		}
	case waiting(b.Job, b.choice):
		r = open(DemandRoute, "", OthersFirst, WaitForOthers)
	case c.Route == oversize.MakersProcess:
		r.Step = LeaveUntouched
		switch plating := b.Cylinders[b.at].Plating; {
		case plating == PlatingPeels:
			r = Row{Demand: DemandRoute, State: Failed, Reason: Peels, Step: AskMaker}
		case plating == PlatingNotSaid && b.Engine.Wall == oversize.Plated:
			r = open(DemandRoute, "", NotSaid, Measure, path+"plating")
		}
	}
	r.Price = b.price(c)
	b.put(r)
}

// pistons writes whether the piston that the cylinder is going to have is there and measured. A window that
// follows from a piston nobody has measured is no window to cut to.
func (b *book) pistons(path string) {
	c, f := b.chosen(), b.fits[b.at]
	switch {
	case c.Route == oversize.Undecided:
		b.put(open(DemandPistons, "", ToCome, b.workStep()))
	case f.measured && f.piston.Axis != 0 && f.piston.Coating != nil:
		b.put(provenBy(DemandPistons, "", ByOwnRecord))
	case f.measured:
		r := open(DemandPistons, "", NotSaid, Tell, "piston.axis", "piston.coating")
		r.Says = "in which axis it was measured, and what coating it has, \"0 mm\" for none"
		b.put(r)
	default:
		step := GetPistons
		if b.workStep() == WaitForOthers {
			step = WaitForOthers
		}
		b.put(open(DemandPistons, "", NotMeasured, step, path+"piston", "engine.oversizes.pistons"))
	}
}

// work writes whether the cylinder was bored, sleeved, honed or deglazed.
func (b *book) work(path string) {
	c := b.chosen()
	switch {
	case c.Route == oversize.MakersProcess && b.cutAnyway():
		b.put(Row{Demand: DemandWork, State: Failed, Reason: WallWasCut, Step: AskMaker})
	case c.Route == oversize.MakersProcess:
		b.put(notAsked(DemandWork, ""))
	case b.proofs[b.at] != nil && c.Route != oversize.Undecided:
		b.put(provenBy(DemandWork, "", ByOwnRecord))
	case b.pastSize(b.at):
		b.put(Row{Demand: DemandWork, State: Failed, Reason: PastSize, Step: Oversized})
	default:
		b.put(open(DemandWork, "", ToCome, b.workStep(), path+"proof"))
	}
}

// cutAnyway reports whether a wall that is never worked on was honed in this job.
func (b *book) cutAnyway() bool {
	h := b.Cylinders[b.at].Honing
	if h.Start != (HonedSize{}) || len(h.Passes) > 0 {
		return true
	}
	p := b.proofs[b.at]
	if p == nil || p.Changed == nil {
		return false
	}
	f, err := uncertainty.Judge(p.Changed.Stock, units.Limits{Max: units.Picometre}, uncertainty.Risk{})
	return err != nil || f.Verdict == uncertainty.Beyond
}

// record writes whether the record of honing can be followed.
func (b *book) record(path string) {
	p := b.passes[b.at]
	switch {
	case !p.recorded && b.Counted.Passes == nil && b.proven():
		b.put(open(DemandRecord, "", NotCounted, Tell, "counted.passes"))
	case !p.recorded:
		b.put(notAsked(DemandRecord, ""))
	case p.broken != NoReason:
		r := open(DemandRecord, "", p.broken, MeasureBetter, path+"honing")
		r.Says = p.says
		b.put(r)
	default:
		b.put(provenBy(DemandRecord, "", ByOwnRecord))
	}
}

// pastSize reports whether a cylinder is known to be past its size.
func (b *book) pastSize(i int) bool {
	if len(b.choice.Cylinders) == 0 || b.choice.Cylinders[i].Route == oversize.Undecided {
		return false
	}
	if p := b.proofs[i]; p != nil {
		for _, f := range p.Findings {
			if f.Limit == bore.LimitNew && f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper {
				return true
			}
		}
		return false
	}
	return passStep(b.passes[i].next.Decision, len(b.Cylinders[i].Honing.Passes)) == Oversized && b.passes[i].recorded
}

// sleeveRows writes the fit of a sleeve, where the cylinder gets one or may.
func (b *book) sleeveRows(string) {
	route := b.chosen().Route
	if route != oversize.Sleeve && route != oversize.Undecided {
		return
	}
	v, s := b.sleeve, b.seats[b.at]
	for _, q := range []struct {
		of      string
		verdict func() uncertainty.Verdict
		finding *uncertainty.Finding
		why     Reason
		says    string
	}{
		{"seat cleans up", func() uncertainty.Verdict { return s.cleansUp.Verdict }, &s.cleansUp, NoSoundFit, "the seat does not surely clean up the worn bore: a larger one"},
		{"stress in the barrel", func() uncertainty.Verdict { return v.Fit.Barrel.Verdict }, nil, NoSoundFit, "the barrel may not stand the stress: less interference"},
		{"stress in the sleeve", func() uncertainty.Verdict { return v.Fit.Sleeve.Verdict }, nil, NoSoundFit, "the sleeve may not stand the stress: less interference"},
		{"slips home", func() uncertainty.Verdict { return v.Heat.Slips }, nil, NoSoundFit, "it does not surely slip home at that heat"},
		{"stock to hone out", func() uncertainty.Verdict { return v.Hone.CleansUp }, nil, NoSoundFit, "there is no stock to hone out of it: a smaller bore"},
		{"grip", func() uncertainty.Verdict { return v.Running.Grips }, nil, ComesLoose, ""},
	} {
		r := Row{Demand: DemandSleeve, Key: q.of, Of: q.of, Give: []string{"engine.sleeve"}}
		switch {
		case route == oversize.Undecided:
			r.Reason, r.Step = ToCome, b.workStep()
		case v == nil:
			r.State, r.Reason, r.Step = Failed, NoSoundFit, ChooseSleeve
			if b.noFit != nil {
				r.Says = b.noFit.Error()
			}
		case q.why == ComesLoose && !v.HasRunning:
			r.Reason, r.Step, r.Give = ComesLoose, ChooseSleeve, []string{"engine.running.bore"}
			r.Says = "the job does not say how warm the bore runs"
		case q.verdict() == uncertainty.Within:
			r.State, r.Finding, r.Give = Proven, q.finding, nil
		default:
			r.State, r.Reason, r.Step, r.Finding, r.Says = Failed, q.why, ChooseSleeve, q.finding, q.says
		}
		b.put(r)
	}
}

// proofRows writes how the finished bore was read: washed, at rest, held as before.
func (b *book) proofRows(path string) {
	p, c := b.proofs[b.at], b.chosen()
	if p == nil && c.Route == oversize.MakersProcess {
		b.put(notAsked(DemandWashed, ""))
		b.rest(b.Gauge)
		b.put(notAsked(DemandClamping, ""))
		return
	}
	if p == nil {
		for _, d := range []Demand{DemandWashed, DemandRest, DemandClamping} {
			b.put(open(d, "", ToCome, b.workStep()))
		}
		return
	}
	if b.Proof.Washed {
		b.put(provenBy(DemandWashed, "", ByOwnRecord))
	} else {
		b.put(open(DemandWashed, "", NotSaid, WashAndProve, "proof.washed"))
	}
	b.rest(b.proofGauge())
	if b.Survey.Clamping != ClampingNotSaid && b.Proof.Clamping != ClampingNotSaid {
		b.put(provenBy(DemandClamping, "", ByOwnRecord)) // that they differ is a fault of the job
	} else {
		b.put(open(DemandClamping, "", NotSaid, b.later(Tell), "survey.clamping", "proof.clamping"))
	}
}

// rest writes whether the cylinder lay at the temperature of the standard.
func (b *book) rest(g Gauge) {
	apart := g.Temperatures.Cylinder.Value.Sub(g.Temperatures.Standard.Value)
	switch {
	case g.Standard == (Standard{}):
		b.put(open(DemandRest, "", NoStandard, MeasureBetter, "gauge.standard"))
	case max(apart, -apart) > atRest:
		b.put(open(DemandRest, "", NotAtRest, WashAndProve, "proof.temperatures"))
	default:
		b.put(provenBy(DemandRest, "", ByOwnRecord))
	}
}

// unseenTravel are the blind spots along ring travel.
var unseenTravel = [...]bore.Unseen{bore.UnseenTop, bore.UnseenMiddle, bore.UnseenBottom}

// travel writes whether all of ring travel was looked at, and in the proof all places of the survey.
func (b *book) travel(path string) {
	g, _, there := b.finished()
	step, at := Measure, path+"readings"
	p := b.proofs[b.at]
	if p != nil {
		step, at = WashAndProve, path+"proof"
	}
	r := provenBy(DemandTravel, "", ByOwnRecord)
	for _, u := range g.Unseen {
		for _, of := range unseenTravel {
			if u == of {
				r = open(DemandTravel, "", NotSeen, step, at)
				r.Says = u.String()
			}
		}
	}
	switch {
	case len(places(g)) == 0:
		r = open(DemandTravel, "", NotRead, Measure, at)
	case b.Engine.Layout.RingBottom == 0 && !b.unknown(RingTravel):
		r = open(DemandTravel, "", NotSaid, Tell, "engine.layout.ring_top", "engine.layout.ring_bottom", "not_known")
	case p != nil && len(p.Missing) > 0:
		r = open(DemandTravel, "", NotSeen, step, at)
		r.Says = fmt.Sprintf("%d places of the survey were not read again", len(p.Missing))
	case !there && r.State == Proven:
		r = open(DemandTravel, "", ToCome, b.workStep())
	}
	b.put(r)
}

// form writes the size and the form of the bore that goes together.
func (b *book) form(path string) {
	g, findings, there := b.finished()
	c := b.chosen()
	limits := b.Engine.Limits
	cut := cutToSize(c)
	for _, q := range []struct {
		demand Demand
		limit  bore.Limit
		given  bool
		field  string
	}{
		{DemandSize, bore.LimitService, limits.Service != 0, "engine.limits.service"},
		{DemandOvality, bore.LimitOvality, limits.Ovality != 0, "engine.limits.ovality"},
		{DemandTaper, bore.LimitTaper, limits.Taper != 0, "engine.limits.taper"},
		{DemandSpread, bore.LimitSpread, limits.GreatestLessLeast != 0, "engine.limits.greatest_less_least"},
	} {
		if cut {
			switch q.demand {
			case DemandSize:
				q.limit, q.given, q.field = bore.LimitNew, !c.Finish.IsZero() && !limits.PistonClearance.IsZero(), "engine.limits.piston_clearance"
			case DemandOvality:
				q.given, q.field = limits.FinishOvality != 0, "engine.limits.finish_ovality"
			case DemandTaper:
				q.given, q.field = limits.FinishTaper != 0, "engine.limits.finish_taper"
			}
		}
		var f *bore.Finding
		for k := range findings {
			if findings[k].Limit == q.limit {
				f = &findings[k]
			}
		}
		sized := !b.gaugeSet()
		var r Row
		switch {
		case len(places(g)) == 0:
			r = open(q.demand, "", NotRead, Measure, path+"readings")
		case q.demand == DemandSize && sized:
			r = open(q.demand, "", NoStandard, MeasureBetter, "gauge.standard")
		case !there:
			r = open(q.demand, "", ToCome, b.workStep())
			if f != nil && !f.NotMeasured {
				r.Finding = &f.Finding
			}
			if !q.given {
				r.Reason, r.Give = NoLimit, []string{q.field}
			}
		case !q.given || f == nil:
			r = open(q.demand, "", NoLimit, Tell, q.field)
		case f.NotMeasured:
			r = open(q.demand, "", NotSeen, MeasureBetter, path+"readings", path+"proof")
		default:
			r = judged(q.demand, "", f.Finding, b.sizeSteps(*f), path+"readings", path+"proof")
		}
		b.put(r)
	}
}

// gaugeSet reports whether the gauge of the readings that decide was set on a standard.
func (b *book) gaugeSet() bool {
	if b.proofs[b.at] != nil {
		return b.Proof.Standard != (Standard{})
	}
	return b.Gauge.Standard != (Standard{})
}

// sizeSteps are the steps that a finding of a finished bore calls for. One that was cut to a size can be honed
// on where it is too small, or may be, and is past its size where it is too large.
func (b *book) sizeSteps(f bore.Finding) verdict {
	c := b.chosen()
	switch {
	case c.Route == oversize.MakersProcess:
		return verdict{AskMaker, MeasureBetter}
	case f.Limit == bore.LimitNew && f.Edge == uncertainty.Lower:
		return verdict{HoneToSize, HoneToSize}
	case f.Limit == bore.LimitNew:
		return verdict{Oversized, MeasureBetter}
	}
	return verdict{Rework, MeasureBetter}
}

// pits writes whether scores and pits are gone, or shallow enough.
func (b *book) pits(path string) {
	c, choice := b.Cylinders[b.at], b.chosen()
	var deepest units.Length // that rings pass over
	for _, p := range b.read[b.at].cleanUp.Pits {
		if p.InTravel {
			deepest = max(deepest, p.Below)
		}
	}
	switch {
	case b.Counted.Pits == nil:
		b.put(open(DemandPits, "", NotRead, Measure, "counted.pits", path+"pits"))
	case len(c.Pits) == 0:
		b.put(provenBy(DemandPits, "", ByOwnRecord))
	case len(c.Readings) == 0:
		b.put(open(DemandPits, "", ToCome, b.workStep()))
	case deepest == 0:
		b.put(provenBy(DemandPits, "", ByOwnRecord)) // no ring passes over any of them
	case choice.Route == oversize.MakersProcess:
		b.put(Row{Demand: DemandPits, State: Failed, Reason: TooDeep, Step: AskMaker, Says: deepest.String() + " deep"})
	case cutToSize(choice) && b.proofs[b.at] != nil:
		b.put(provenBy(DemandPits, "", ByOwnRecord)) // what cleans up counts their depth
	case stays(choice) && deepest <= b.Cuts.deglaze()/2:
		b.put(provenBy(DemandPits, "", ByOwnRecord))
	case stays(choice):
		b.put(Row{Demand: DemandPits, State: Failed, Reason: TooDeep, Step: Rework, Says: deepest.String() + " deep"})
	default:
		b.put(open(DemandPits, "", ToCome, b.workStep()))
	}
}

// wallRow writes whether enough wall is left at the thinnest place.
func (b *book) wallRow(path string) {
	c, given := b.chosen(), b.Cylinders[b.at]
	least := b.Engine.Limits.LeastWall
	_, _, there := b.finished()
	wall, err := given.ThinnestWall.estimate(byCalliper)
	if c.WallLeft.Value != 0 {
		wall = c.WallLeft
	}
	var r Row
	switch {
	case given.ThinnestWall.IsZero() && least == 0 && b.unknown(LeastWall):
		r = open(DemandWall, "", NoLimit, b.later(AskMaker), "engine.oversizes.makers_list", "engine.limits.least_wall")
		if !cutToSize(c) && c.Route != oversize.Undecided {
			r = notAsked(DemandWall, "")
		} else if b.onMakersList(c.Over) && c.Route == oversize.BoreOversize {
			r = provenBy(DemandWall, "", ByMakersList)
		}
	case least == 0:
		r = open(DemandWall, "", NoLimit, b.later(Tell), "engine.limits.least_wall", "not_known")
	case given.ThinnestWall.IsZero():
		r = open(DemandWall, "", NotMeasured, b.later(Measure), path+"thinnest_wall")
	case c.Route == oversize.Undecided || err != nil:
		r = open(DemandWall, "", ToCome, b.workStep())
	case c.Route == oversize.Sleeve:
		r = judged(DemandWall, "", b.seats[b.at].wall, verdict{ChooseSleeve, MeasureBetter}, path+"thinnest_wall", "engine.sleeve.seat")
		if b.sleeve == nil {
			r = open(DemandWall, "", ToCome, ChooseSleeve)
		}
	default:
		f, err := uncertainty.Judge(wall, units.Limits{Min: least}, b.risk.row)
		if err != nil {
			r = open(DemandWall, "", NotMeasured, b.later(Measure), path+"thinnest_wall")
			break
		}
		f.Subject = "wall left"
		r = judged(DemandWall, "", f, verdict{AskMaker, MeasureBetter}, path+"thinnest_wall")
	}
	if r.State == Proven && !there {
		r = Row{Demand: DemandWall, Finding: r.Finding, Reason: ToCome, Step: b.workStep()}
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
func (b *book) crosshatch(path string) {
	p := b.proofs[b.at]
	wanted := !b.Tools.Crosshatch.IsZero()
	switch {
	case b.chosen().Route == oversize.MakersProcess:
		b.put(notAsked(DemandCrosshatch, ""))
	case !wanted:
		b.put(open(DemandCrosshatch, "", NoLimit, b.later(Tell), "tools.crosshatch"))
	case b.Tools.Tolerance == 0:
		b.put(open(DemandCrosshatch, "", NotSaid, b.later(Tell), "tools.tolerance"))
	case p == nil:
		b.put(open(DemandCrosshatch, "", ToCome, b.workStep()))
	case p.Crosshatch == (CrosshatchFinding{}):
		b.put(open(DemandCrosshatch, "", NotMeasured, WashAndProve, path+"crosshatch"))
	default:
		r := provenBy(DemandCrosshatch, "", NoReason)
		if p.Crosshatch.Verdict != uncertainty.Within {
			r = Row{Demand: DemandCrosshatch, State: Failed, Reason: BeyondLimit, Step: Rework}
		}
		r.Says = angle(p.Crosshatch.Measured) + ", wanted " + p.Crosshatch.Want.String()
		b.put(r)
	}
}

// clearances writes the piston in the bore that goes together, cold and running.
func (b *book) clearances(path string) {
	f, c := b.fits[b.at], b.chosen()
	_, _, there := b.finished()
	steps := func(edge uncertainty.Edge) verdict {
		switch {
		case c.Route == oversize.MakersProcess:
			return verdict{AskMaker, MeasureBetter}
		case edge == uncertainty.Lower && cutToSize(c):
			return verdict{Rework, HoneToSize}
		}
		return verdict{Rework, MeasureBetter}
	}
	waits := func(d Demand) (Row, bool) {
		switch {
		case c.Route == oversize.Undecided:
			return open(d, "", ToCome, b.workStep()), true
		case !f.measured:
			step := GetPistons
			if b.workStep() == WaitForOthers {
				step = WaitForOthers
			}
			return open(d, "", NotMeasured, step, path+"piston"), true
		case !b.gaugeSet():
			return open(d, "", NoStandard, MeasureBetter, "gauge.standard"), true
		case !there:
			return open(d, "", ToCome, b.workStep()), true
		}
		return Row{}, false
	}
	for _, q := range []struct {
		demand Demand
		found  uncertainty.Finding
	}{{DemandLeastClearance, f.least}, {DemandGreatestClearance, f.greatest}} {
		r, waits := waits(q.demand)
		if !waits {
			if q.found.Subject == "" {
				r = open(q.demand, "", NoLimit, Tell, "engine.limits.piston_clearance")
			} else {
				r = judged(q.demand, "", q.found, steps(q.found.Edge), path+"piston")
			}
			if q.demand == DemandLeastClearance && r.State != Proven {
				b.touching(&r, f.tight, steps(uncertainty.Lower))
			}
		}
		b.put(r)
	}
	b.put(b.runningClearance(path, f, waits))
}

// touching turns a row about parts that must not touch into one that nobody may accept, where they do or may.
func (b *book) touching(r *Row, room uncertainty.Estimate, v verdict) {
	f, err := uncertainty.Judge(room, units.Limits{Min: units.Picometre}, b.risk.row)
	switch {
	case err != nil, f.Verdict == uncertainty.Undecided && room.Value > 0:
		r.State, r.Reason, r.Step = Open, MayTouch, v.doubtful
	case f.Verdict != uncertainty.Within:
		r.State, r.Reason, r.Step = Failed, Touches, v.beyond
	}
	if r.Finding == nil {
		f.Subject = r.Demand.String()
		r.Finding = &f
	}
}

// runningClearance writes the piston at its running temperatures: an indicator, since a skirt is oval and gives
// way, so that its supplier's word may stand for it.
func (b *book) runningClearance(path string, f fitting, waits func(Demand) (Row, bool)) Row {
	if r, waits := waits(DemandRunningClearance); waits {
		return r
	}
	switch {
	case f.running.Subject != "":
		r := judged(DemandRunningClearance, "", f.running, verdict{AskMaker, AskMaker}, "engine.running", "engine.oversizes.pistons")
		if r.State != Proven {
			r.State, r.Reason = Open, RunsTight
		}
		return r
	case b.Engine.Running.PistonByWindow:
		least := b.rows[len(b.rows)-2] // the least clearance, written just before
		r := Row{Demand: DemandRunningClearance, State: least.State, Reason: least.Reason, Finding: least.Finding, Step: least.Step, Give: least.Give}
		if least.State == Proven {
			r.Reason, r.Finding = ByColdWindow, least.Finding
		}
		return r
	}
	return open(DemandRunningClearance, "", NotSaid, b.later(Tell), "engine.running.bore", "engine.running.piston", "engine.running.piston_by_window")
}

// ringRows writes every ring of the piston: its gap in its bore, in service, in work, and its ends at each port.
func (b *book) ringRows(path string) {
	if len(b.Engine.Rings) == 0 {
		r := open(DemandGap, "", NotSaid, b.later(Tell), "engine.rings")
		r.Reason = Untold
		b.put(r)
		return
	}
	for n, ring := range b.Engine.Rings {
		var sheet *RingSheet
		for k := range b.rings[b.at] {
			if b.rings[b.at][k].Ring == ring.Name {
				sheet = &b.rings[b.at][k]
			}
		}
		w := ringRows{book: b, n: n, ring: ring, sheet: sheet, path: path}
		w.put(w.gap())
		w.put(w.service())
		w.put(w.running())
		w.put(w.hot())
		w.ends()
	}
}

// ringRows writes the rows of one ring.
type ringRows struct {
	*book
	n     int
	ring  Ring
	sheet *RingSheet
	path  string // of its cylinder
}

func (w ringRows) put(r Row) {
	r.Of = list(w.ring.Name, r.Of)
	r.Key = strings.TrimSuffix(fmt.Sprintf("rings[%d].%s", w.n, r.Key), ".")
	w.book.put(r)
}

// toSet is the row of a gap that was not measured in the bore it goes into.
func (w ringRows) toSet(d Demand) Row {
	step := SetRingGaps
	if s := w.workStep(); s == WaitForOthers || s == MeasureBetter || s == Measure {
		step = s
	}
	r := open(d, "", NotMeasured, step, w.path+"rings.finished")
	if w.sheet != nil && w.sheet.Filing.Now.Subject != "" {
		r.Finding = &w.sheet.Filing.Now
	}
	return r
}

// inBore reports whether the gap was measured in the bore that goes together.
func (w ringRows) inBore() bool { return w.sheet != nil && w.sheet.InBore && w.gaugeSet() }

func (w ringRows) gap() Row {
	field := fmt.Sprintf("engine.rings[%d].gap", w.n)
	switch {
	case w.sheet != nil && w.sheet.Unfit:
		return Row{Demand: DemandGap, State: Failed, Reason: Unfit, Step: AskMaker, Give: []string{field}}
	case w.ring.Gap.IsZero():
		return open(DemandGap, "", NoLimit, w.later(Tell), field)
	case !w.inBore():
		return w.toSet(DemandGap)
	}
	v := verdict{SetRingGaps, MeasureBetter}
	if w.sheet.Filing.Action == rings.FileEnds {
		v.doubtful = SetRingGaps
	}
	return judged(DemandGap, "", w.sheet.Measured, v, w.path+"rings.finished")
}

func (w ringRows) service() Row {
	switch {
	case w.ring.GapLimit == 0:
		return open(DemandServiceGap, "", NoLimit, w.later(Tell), fmt.Sprintf("engine.rings[%d].gap_limit", w.n))
	case !w.inBore():
		return w.toSet(DemandServiceGap)
	}
	return judged(DemandServiceGap, "", w.sheet.Service, verdict{SetRingGaps, MeasureBetter}, w.path+"rings.finished")
}

func (w ringRows) running() Row {
	t := w.Engine.Running
	switch {
	case w.sheet != nil && w.sheet.Apart.Subject != "":
		r := judged(DemandRunningGap, "", w.sheet.Apart, verdict{AskMaker, MeasureBetter}, w.path+"rings.finished", "engine.running")
		switch {
		case r.State == Failed:
			r.Reason = Touches
		case !w.inBore():
			r = w.toSet(DemandRunningGap)
			r.Finding = &w.sheet.Apart
		case r.State == Open:
			r.Reason = MayTouch
		}
		return r
	case t.Ring != (bore.Temperature{}) && t.Bore != (bore.Temperature{}):
		return w.toSet(DemandRunningGap)
	case t.RingsByWindow:
		r := w.gap()
		r.Demand = DemandRunningGap
		if r.State == Proven {
			r.Reason = ByColdWindow
		}
		return r
	}
	return open(DemandRunningGap, "", NotSaid, w.later(Tell), "engine.running.ring", "engine.running.bore", "engine.running.rings_by_window")
}

func (w ringRows) hot() Row {
	switch {
	case w.ring.HotGap == 0:
		return notAsked(DemandHotGap, "")
	case w.sheet == nil || w.sheet.HotEnough.Subject == "" && w.Engine.Running.Ring != (bore.Temperature{}):
		return w.toSet(DemandHotGap)
	case w.sheet.HotEnough.Subject == "":
		return open(DemandHotGap, "", NotSaid, w.later(Tell), "engine.running.ring", "engine.running.bore")
	case !w.inBore() && w.sheet.HotEnough.Verdict != uncertainty.Beyond:
		r := w.toSet(DemandHotGap)
		r.Finding = &w.sheet.HotEnough
		return r
	}
	return judged(DemandHotGap, "", w.sheet.HotEnough, verdict{AskMaker, MeasureBetter}, w.path+"rings.finished")
}

// ends writes each end of the ring against each port.
func (w ringRows) ends() {
	ports := w.layout().Ports
	none := w.Engine.Cycle == FourStroke || w.Counted.Ports != nil && *w.Counted.Ports == 0
	switch {
	case len(ports) == 0 && none:
		return // a wall without ports has no edge to catch on
	case len(ports) == 0:
		w.put(open(DemandEnds, "", Untold, w.later(Tell), "engine.layout.ports", "counted.ports"))
		return
	}
	for n := range ports {
		name := w.Engine.portName(n)
		ring := fmt.Sprintf("engine.rings[%d]", w.n)
		r := open(DemandEnds, name, NotSaid, w.later(Tell), ring+".peg", ring+".play")
		if w.ring.Peg != nil && w.ring.Play != nil {
			r = w.toSet(DemandEnds)
			r.Of = name
		}
		if w.sheet != nil {
			for _, room := range w.sheet.Ports {
				if room.Port != n {
					continue
				}
				says := room.Room.String() + " between an end and the port"
				switch {
				case room.Crosses:
					r = Row{Demand: DemandEnds, Of: name, State: Failed, Reason: EndCrosses, Step: AskMaker}
				case w.inBore():
					r = provenBy(DemandEnds, name, NoReason)
				}
				r.Says = says
			}
			// A port that no ring passes has no room to speak of.
			if len(w.sheet.Ports) > 0 && r.Says == "" && w.inBore() {
				r = notAsked(DemandEnds, name)
			}
		}
		r.Key = fmt.Sprintf("ports[%d]", n)
		w.put(r)
	}
}

// others writes, for each cylinder that is ready by itself, whether the rest of the engine is: it goes together
// as a whole.
func (b *book) others() {
	n := len(b.Cylinders)
	ready := make([]bool, n)
	all := next(of(b.rows, -1)) >= LeaveUntouched
	for i := range n {
		ready[i] = next(of(b.rows, i)) >= LeaveUntouched
		all = all && ready[i]
	}
	for b.at = range n {
		r := provenBy(DemandOthers, "", ByOwnRecord)
		switch {
		case n == 1 && next(of(b.rows, -1)) >= LeaveUntouched:
			r = notAsked(DemandOthers, "")
		case !all:
			r = open(DemandOthers, "", OthersFirst, WaitForOthers)
		}
		b.put(r)
	}
}
