// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// clearances writes the piston in the bore that goes together, cold and running.
func (b *book) clearances() {
	f := b.fits[b.at]
	least, waits := b.pistonWaits(f)
	greatest, running := least, least
	if !waits {
		least, greatest = b.clearance(demandLeastClearance, f.least), b.clearance(demandGreatestClearance, f.greatest)
		if least.State != StateProven {
			b.touching(&least, f.tight, b.clearanceSteps(uncertainty.Lower))
		}
		running = b.runningClearance(f, least)
	}
	least.Demand, greatest.Demand, running.Demand = demandLeastClearance, demandGreatestClearance, demandRunningClearance
	b.put(least)
	b.put(greatest)
	b.put(running)
}

// pistonWaits is a row of a piston that cannot be held against its bore yet, and whether that is so.
func (b *book) pistonWaits(f fitting) (r Row, waits bool) {
	at, there := b.finished()
	c := b.chosen()
	switch {
	case c.Route == oversize.Undecided:
		return open(0, "", toCome, b.workStep()), true
	case !f.got:
		return open(0, "", notMeasured, b.getPistons(), b.path+"piston"), true
	case at.standard() == (Standard{}):
		return open(0, "", noStandard, StepMeasureBetter, "gauge.standard"), true
	case !there:
		return open(0, "", toCome, b.workStep()), true
	case !f.own:
		r = open(0, "", notMeasured, StepWaitForOthers, b.path+"piston")
		r.Says = "which of the pistons it gets is not known until every bore of its size has been read"
		if b.sizeRead(c.Over) {
			r.Step, r.Says = StepMeasureBetter, "which of the pistons it gets cannot be told"
		}
		return r, true
	}
	return r, false
}

// clearance is the row of a clearance at 20 °C.
func (b *book) clearance(d Demand, found uncertainty.Finding) Row {
	if found.Subject == "" {
		return open(d, "", noLimit, StepTell, "engine.limits.piston_clearance")
	}
	return judged(d, "", found, b.clearanceSteps(found.Edge), b.path+"piston")
}

// clearanceSteps are the steps that a clearance calls for which passes its window, or may, at an edge.
func (b *book) clearanceSteps(edge uncertainty.Edge) verdict {
	switch c := b.chosen(); {
	case c.Route == oversize.MakersProcess:
		return verdict{StepAskMaker, StepMeasureBetter}
	case edge == uncertainty.Lower && cutToSize(c):
		return verdict{StepRework, StepHone}
	}
	return verdict{StepRework, StepMeasureBetter}
}

// sizeRead reports whether every finished bore of a size has been read.
func (b *book) sizeRead(over units.Length) bool {
	for i, c := range b.choice.Cylinders {
		if c.Over == over && c.Route != oversize.Undecided && b.proofs[i] == nil {
			return false
		}
	}
	return true
}

// touching turns a row about parts that must not touch into one that nobody may accept, where they do or may.
func (b *book) touching(r *Row, room uncertainty.Estimate, v verdict) {
	f := finding(r.Demand.String(), room, notTouching, b.risk.row)
	switch {
	case f.Verdict == uncertainty.Undecided && room.Value > 0:
		r.State, r.Reason, r.Step = StateOpen, mayTouch, v.doubtful
	case f.Verdict != uncertainty.Within:
		r.State, r.Reason, r.Step = StateFailed, touches, v.beyond
	}
	if r.Finding == nil {
		r.Finding = &f
	}
}

// runningClearance writes the piston at its running temperatures: an indicator, since a skirt is oval and gives
// way, so that its supplier's word may stand for it. least is the row of the least clearance at 20 °C.
func (b *book) runningClearance(f fitting, least Row) Row {
	switch {
	case f.running.Subject != "":
		r := judged(demandRunningClearance, "", f.running, verdict{StepAskMaker, StepAskMaker}, "engine.running", "engine.oversizes.pistons")
		if r.State != StateProven {
			r.State, r.Reason = StateOpen, runsTight
		}
		return r
	case b.Engine.Running.PistonByWindow:
		if least.State == StateProven {
			least.Reason = byColdWindow
		}
		return least
	}
	return open(demandRunningClearance, "", notSaid, b.later(StepTell), "engine.running.bore", "engine.running.piston", "engine.running.piston_by_window")
}

// ringRows writes every ring of the piston: its gap in its bore, in service, in work, and its ends at each port.
func (b *book) ringRows() {
	if len(b.Engine.Rings) == 0 {
		r := open(demandGap, "", notSaid, b.later(StepTell), "engine.rings")
		r.Reason = untold
		b.put(r)
		return
	}
	for n, ring := range b.Engine.Rings {
		var sheet RingSheet
		for _, r := range b.rings[b.at] {
			if r.Ring == ring.Name {
				sheet = r
			}
		}
		w := ringRows{book: b, n: n, key: fmt.Sprintf("rings[%d]", n), ring: ring, sheet: sheet}
		w.put(w.gap())
		w.put(w.service())
		w.put(w.running())
		w.put(w.hot())
		w.put(w.side())
		w.ends()
	}
}

// ringRows writes the rows of one ring.
type ringRows struct {
	*book
	n     int
	key   string // of its rows
	ring  Ring
	sheet RingSheet // zero: it was not measured
}

func (w ringRows) put(r Row) {
	if r.Of == "" {
		r.Of, r.Key = w.ring.Name, w.key
	} else { // a port
		r.Of, r.Key = w.ring.Name+" at "+r.Of, w.key+"."+r.Key
	}
	w.book.put(r)
}

// toSet is the row of a gap that was not measured in the bore it goes into, with what its first reading foretells.
func (w ringRows) toSet(d Demand, foretold uncertainty.Finding, give string) Row {
	step := StepSetRingGaps
	if s := w.workStep(); s == StepWaitForOthers || s == StepMeasureBetter || s == StepMeasure {
		step = s
	}
	r := open(d, "", notMeasured, step, w.path+give)
	if foretold.Subject != "" {
		r.Finding = &foretold
	}
	return r
}

// inBore reports whether the gap was measured in the bore that goes together.
func (w ringRows) inBore() bool {
	at, _ := w.finished()
	return w.sheet.inBore() && at.standard() != (Standard{})
}

func (w ringRows) gap() Row {
	field := fmt.Sprintf("engine.rings[%d].gap", w.n)
	switch {
	case w.sheet.unfit:
		return Row{Demand: demandGap, State: StateFailed, Reason: unfit, Step: StepAskMaker, Give: []string{field}}
	case w.ring.Gap.IsZero():
		return open(demandGap, "", noLimit, w.later(StepTell), field)
	case !w.inBore():
		r := w.toSet(demandGap, w.sheet.expected, "rings.finished")
		if f := w.sheet.expected; f.Verdict == uncertainty.Beyond && f.Edge == uncertainty.Upper {
			r.Reason = wideRing
		}
		return r
	}
	v := verdict{StepSetRingGaps, StepMeasureBetter}
	if w.sheet.Filing.Action == rings.FileEnds {
		v.doubtful = StepSetRingGaps
	}
	return judged(demandGap, "", w.sheet.Measured, v, w.path+"rings.finished")
}

func (w ringRows) service() Row {
	if w.ring.GapLimit == 0 {
		return open(demandServiceGap, "", noLimit, w.later(StepTell), fmt.Sprintf("engine.rings[%d].gap_limit", w.n))
	}
	if !w.inBore() {
		return w.toSet(demandServiceGap, w.sheet.Service, "rings.finished")
	}
	return judged(demandServiceGap, "", w.sheet.Service, verdict{StepSetRingGaps, StepMeasureBetter}, w.path+"rings.finished")
}

func (w ringRows) running() Row {
	t := w.Engine.Running
	switch {
	case w.sheet.Hot.Subject != "":
		v := verdict{StepAskMaker, StepMeasureBetter}
		if w.sheet.Filing.Action == rings.FileEnds {
			v = verdict{StepSetRingGaps, StepSetRingGaps} // what has to come off makes room
		}
		r := judged(demandRunningGap, "", w.sheet.Hot, v, w.path+"rings.finished", "engine.running")
		switch {
		case r.State == StateFailed:
			r.Reason = touches
		case !w.inBore():
			r = w.toSet(demandRunningGap, w.sheet.Hot, "rings.finished")
		case r.State == StateOpen:
			r.Reason = mayTouch
		}
		return r
	case t.Ring != (bore.Temperature{}) && t.Bore != (bore.Temperature{}):
		return w.toSet(demandRunningGap, uncertainty.Finding{}, "rings.finished")
	case t.RingsByWindow:
		r := w.gap()
		r.Demand = demandRunningGap
		if r.State == StateProven {
			r.Reason = byColdWindow
		}
		return r
	}
	return open(demandRunningGap, "", notSaid, w.later(StepTell), "engine.running.ring", "engine.running.bore", "engine.running.rings_by_window")
}

func (w ringRows) hot() Row {
	switch {
	case w.ring.HotGap == 0:
		return notAsked(demandHotGap, "")
	case w.sheet.Ring == "" || w.sheet.HotEnough.Subject == "" && w.Engine.Running.Ring != (bore.Temperature{}):
		return w.toSet(demandHotGap, uncertainty.Finding{}, "rings.finished")
	case w.sheet.HotEnough.Subject == "":
		return open(demandHotGap, "", notSaid, w.later(StepTell), "engine.running.ring", "engine.running.bore")
	case !w.inBore() && w.sheet.HotEnough.Verdict != uncertainty.Beyond:
		return w.toSet(demandHotGap, w.sheet.HotEnough, "rings.finished")
	}
	return judged(demandHotGap, "", w.sheet.HotEnough, verdict{StepAskMaker, StepMeasureBetter}, w.path+"rings.finished")
}

func (w ringRows) side() Row {
	switch {
	case w.ring.Side.IsZero():
		return notAsked(demandSide, "")
	case w.sheet.Side.Subject == "":
		return w.toSet(demandSide, uncertainty.Finding{}, "rings.side")
	}
	return judged(demandSide, "", w.sheet.Side, verdict{StepSetRingGaps, StepMeasureBetter}, w.path+"rings.side")
}

// ends writes each end of the ring against each port.
func (w ringRows) ends() {
	ports := w.layout().Ports
	none := w.Engine.Cycle == FourStroke || w.Counted.Ports != nil && *w.Counted.Ports == 0
	switch {
	case len(ports) == 0 && none:
		return // a wall without ports has no edge to catch on
	case len(ports) == 0:
		w.put(open(demandEnds, "", untold, w.later(StepTell), "engine.layout.ports", "counted.ports"))
		return
	}
	for n := range ports {
		name := w.Engine.portName(n)
		ring := fmt.Sprintf("engine.rings[%d]", w.n)
		r := open(demandEnds, name, notSaid, w.later(StepTell), ring+".peg", ring+".play")
		if w.ring.Peg != nil && w.ring.Play != nil {
			r = w.toSet(demandEnds, uncertainty.Finding{}, "rings.finished")
			r.Of = name
		}
		for _, room := range w.sheet.Ports {
			if room.Port != n {
				continue
			}
			says := w.Units.in().Gap(room.Room) + " between an end and the port"
			switch {
			case room.Room <= 0:
				r = Row{Demand: demandEnds, Of: name, State: StateFailed, Reason: endCrosses, Step: StepAskMaker}
			case w.inBore():
				r = provenBy(demandEnds, name, noReason)
			}
			if r.Says = says; r.State == StateOpen {
				r.Says = "expected: " + says
			}
		}
		// A port that no ring passes has no room to speak of.
		if len(w.sheet.Ports) > 0 && r.Says == "" && w.inBore() {
			r = notAsked(demandEnds, name)
		}
		r.Key = fmt.Sprintf("ports[%d]", n)
		w.put(r)
	}
}
