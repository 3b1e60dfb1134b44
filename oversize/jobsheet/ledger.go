// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"borewright.example/bore/fit"
	"borewright.example/bore/surface"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
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
	Step    Step                 `json:"step"`            // that would settle it; [StepReassemble] where nothing is to be done
	Price   *Price               `json:"price,omitempty"` // what less doubt could spare
	// Stands is what an acceptance has to quote; By and Why are whose word it goes on.
	Stands string `json:"stands"`
	By     string `json:"by,omitzero"`
	Why    string `json:"why,omitzero"`
	Lapsed bool   `json:"lapsed,omitzero"` // it was accepted, and what stood there has changed since
}

// at is which cylinder a row is of, by its key; -1 for the engine.
func (r *Row) at() int {
	if rest, ok := strings.CutPrefix(r.Key, "cylinders["); ok {
		number, _, _ := strings.Cut(rest, "]")
		if i, err := strconv.Atoi(number); err == nil {
			return i
		}
	}
	return -1
}

// what names what must be true, and of which ring, port or facts.
func (r *Row) what() string {
	if r.Of == "" {
		return r.Demand.String()
	}
	return r.Demand.String() + ", " + r.Of
}

// rank is how pressing the row is.
func (r *Row) rank() rank {
	if r.State.settled() {
		return isSettled
	}
	return r.Reason.fact().rank
}

// presses reports whether r calls for its step before other does.
func (r *Row) presses(other *Row) bool {
	if a, b := r.rank(), other.rank(); a != b {
		return a < b
	}
	return r.Step < other.Step
}

// next is the step of a cylinder, or of the engine: that of its most pressing row. Nothing else decides.
func next(rows []*Row) Step {
	if len(rows) == 0 {
		return StepMeasure
	}
	most := rows[0]
	for _, r := range rows[1:] {
		if r.presses(most) {
			most = r
		}
	}
	return most.Step
}

// grouped returns where the rows of the engine stand, then those of each cylinder.
func grouped(rows []Row, cylinders int) [][]*Row {
	groups := make([][]*Row, cylinders+1)
	each := len(rows)/len(groups) + 8 // in each, about
	all := make([]*Row, len(groups)*each)
	for i := range groups {
		groups[i] = all[i*each : i*each : (i+1)*each]
	}
	for k := range rows {
		if at := rows[k].at() + 1; at < len(groups) {
			groups[at] = append(groups[at], &rows[k])
		}
	}
	return groups
}

// A book is what the steps of the plan returned, from which every row of the ledger is written.
type book struct {
	given
	read     []readBore
	choice   oversize.Choice
	passes   []passing
	cuts     []cutting
	proofs   []*ProofSheet
	matched  []fit.Matched
	fits     []fitting
	bores    []ringBore
	rings    [][]RingSheet
	honing   HoneSheet
	sleeve   *SleeveSheet
	seats    []seat
	noFit    error // why there is no sleeve's fit
	textures [][]surface.Finding
	volumes  capacitySheet
	omitted  []Remark
	untold   []need
	slipped  []slip

	rows  []Row
	at    int    // the cylinder being written; -1 for the engine
	path  string // of its fields, "cylinders[0]."
	about string // names it, the size it goes to and when that was proven; "" for the engine
}

// ledger writes the row of everything that must be true of the engine and of each cylinder, and has what was
// accepted stand in for what is open.
func (b *book) ledger() []Row {
	b.at = -1
	b.engineRows()
	for i := range b.Cylinders {
		b.turnTo(i)
		b.cylinderRows()
		if i == 0 { // the others have as many
			b.rows = slices.Grow(b.rows, len(b.Cylinders)*len(b.rows))
		}
	}
	accept(b.rows, b.Accepted)
	b.others()
	return b.rows
}

// put adds a row, with its key, its cylinder and what an acceptance of it has to quote.
func (b *book) put(r Row) {
	prefix := "engine."
	if b.at >= 0 {
		prefix, r.Cylinder = b.path, b.Cylinders[b.at].Name
	}
	if name := enum.Name(r.Demand, demandNames); r.Key == "" {
		r.Key = prefix + name
	} else {
		r.Key = prefix + r.Key + "." + name
	}
	if r.State.settled() && r.Step == 0 {
		r.Step = StepReassemble
	}
	if b.withheld() && (r.Step == StepRework || r.Step == StepHone) {
		r.Step = StepTell // nothing is cut on what may be a slip
	}
	r.Stands = r.stands(b.about)
	b.rows = append(b.rows, r)
}

// turnTo begins a cylinder.
func (b *book) turnTo(cylinder int) {
	b.at, b.path, b.about = cylinder, fmt.Sprintf("cylinders[%d].", cylinder), b.Cylinders[cylinder].Name
	if c := b.chosen(); c.Over != 0 {
		b.about += ", " + b.Units.in().Over(c.Over)
	}
	if b.proofs[cylinder] != nil && b.Proof.On != "" {
		b.about += ", " + b.Proof.On
	}
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
		r.State, r.Give = StateProven, nil
	case uncertainty.Beyond:
		r.State, r.Reason, r.Step = StateFailed, beyondLimit, v.beyond
	default:
		r.Reason, r.Step = doubtful, v.doubtful
	}
	return r
}

// open is a row that nothing has been shown of yet.
func open(d Demand, of string, why Reason, step Step, give ...string) Row {
	return Row{Demand: d, Of: of, Reason: why, Step: step, Give: give}
}

// provenBy is a row that is true by what the job shows.
func provenBy(d Demand, of string, by Reason) Row {
	return Row{Demand: d, Of: of, State: StateProven, Reason: by}
}

func notAsked(d Demand, of string) Row {
	return Row{Demand: d, Of: of, State: StateNotAsked, Reason: unwanted}
}

// engineRows writes what must be true of the engine.
func (b *book) engineRows() {
	told := provenBy(demandTold, "", byOwnRecord)
	if len(b.untold) > 0 {
		told = open(demandTold, "", untold, StepTell)
		for _, n := range b.untold {
			told.Give = append(told.Give, n.path)
			told.Says = list(told.Says, n.asks)
		}
	}
	b.put(told)
	b.put(b.counted())
	for _, s := range b.slipped {
		r := open(demandUsual, s.path, looksSlipped, StepTell, "confirmed")
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
	r := provenBy(demandCounted, "", byOwnRecord)
	read, proven := len(b.choice.Cylinders) > 0, b.proven()
	needed := map[string]bool{ // the others are a fault where they are missing
		"counted.readings": read, "counted.pits": read, "counted.ports": read && b.Engine.Cycle == TwoStroke,
		"counted.proof": proven, "counted.passes": proven, "counted.rings": proven || b.choice.Route == oversize.MakersProcess,
	}
	for _, n := range b.counts() {
		if needed[n.path] && n.given == nil {
			r.State, r.Reason, r.Step = StateOpen, notCounted, StepTell
			r.Give = append(r.Give, n.path)
		}
	}
	return r
}

// cylinderRows writes what must be true of one cylinder.
func (b *book) cylinderRows() {
	i := b.at
	if !b.Cylinders[i].surveyed() {
		b.put(open(demandRead, "", notRead, StepMeasure, b.path+"readings"))
	} else {
		b.put(provenBy(demandRead, "", byOwnRecord))
	}
	b.route()
	b.pistons()
	b.work()
	b.record()
	b.sleeveRows()
	b.proofRows()
	b.travel()
	b.form()
	b.wallForm()
	b.pits()
	b.ridge()
	b.wallRow()
	b.crosshatch()
	b.texture()
	b.clearances()
	b.ringRows()
	b.agreements()
}

// others writes, for each cylinder that is ready by itself, whether the rest of the engine is: it goes together
// as a whole.
func (b *book) others() {
	groups := grouped(b.rows, len(b.Cylinders))
	engine := next(groups[0]) >= StepLeaveUntouched
	all := true
	for _, rows := range groups {
		all = all && next(rows) >= StepLeaveUntouched
	}
	for i := range b.Cylinders {
		b.turnTo(i)
		r := provenBy(demandOthers, "", byOwnRecord)
		switch {
		case len(b.Cylinders) == 1 && engine:
			r = notAsked(demandOthers, "")
		case !all:
			r = open(demandOthers, "", othersFirst, StepWaitForOthers)
		}
		b.put(r)
	}
}
