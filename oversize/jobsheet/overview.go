// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// overviewRows are the rows of the front page: what of the ledger each sums up.
var overviewRows = [...]struct {
	what    string
	demands []Demand
}{
	{"size", []Demand{demandSize}},
	{"ovality", []Demand{demandOvality}},
	{"taper", []Demand{demandTaper}},
	{"greatest minus least", []Demand{demandSpread}},
	{"wall left", []Demand{demandWall}},
	{"travel seen, pits, ridge", []Demand{demandRead, demandTravel, demandPits, demandRidge}},
	{"route, sleeve", []Demand{demandRoute, demandSleeve}},
	{"piston, clearance", []Demand{demandPistons, demandLeastClearance, demandGreatestClearance, demandRunningClearance}},
	{"ring gaps, ends", []Demand{demandGap, demandServiceGap, demandRunningGap, demandHotGap, demandSide, demandEnds}},
	{"work, finish, form", []Demand{demandWork, demandRecord, demandCrosshatch, demandTexture, demandForm}},
	{"washed, at rest, held", []Demand{demandWashed, demandRest, demandClamping}},
	{"facts agree", []Demand{demandAgreement}},
}

// mostAcross is for how many cylinders the front page has a column each. Of more than that all but some share the last one,
// with the worst of them.
const (
	mostAcross   = 4
	sharedAcross = mostAcross - 1
)

// overview is the ledger in a glance: cylinders across, what must be true down, with where it stands. Limits stand
// beside what they are of as long as there is room.
func (s *draft) overview() page.Table {
	unit := s.show.First()
	t := page.Table{Keys: 1, Head: []string{"in millimetres"}}
	if unit == units.Inch {
		t.Head[0] = "in inches"
	}
	across := len(s.Cylinders)
	if across > mostAcross {
		across = sharedAcross
	}
	var cylinders [][]*Row
	for i := range across {
		t.Head = append(t.Head, fmt.Sprintf("cyl %d", i+1))
		cylinders = append(cylinders, s.of(i))
	}
	var rest []*Row
	for i := across; i < len(s.Cylinders); i++ {
		rest = append(rest, s.of(i)...)
	}
	if len(rest) > 0 {
		t.Head = append(t.Head, fmt.Sprintf("worst of %d to %d", across+1, len(s.Cylinders)))
	}
	for _, row := range overviewRows {
		cells, limit, alike := []string{row.what}, "", true
		for _, rows := range cylinders {
			r, value := s.sum(rows, row.demands)
			cells = append(cells, strings.TrimSpace(value+" "+mark(r)))
			if r.Finding != nil && len(row.demands) == 1 {
				is := ", " + s.show.Bare(s.show.Limits(r.Finding.Limits))
				limit, alike = is, alike && (limit == "" || limit == is)
				if row.demands[0] == demandTaper && s.choked() {
					cells[0] = "choke"
				}
			}
		}
		if len(s.Cylinders) < mostAcross && alike {
			cells[0] += limit
		}
		if len(rest) > 0 {
			worst, _ := s.sum(rest, row.demands)
			cells = append(cells, mark(worst))
		}
		t.Rows = append(t.Rows, cells)
	}
	engine := &Row{State: StateProven}
	for _, r := range s.of(-1) {
		engine = worse(engine, r)
	}
	t.Rows = append(t.Rows, []string{"said, counted, no slip", mark(engine)})
	return t
}

// choked reports whether a choke is wanted, which stands in place of a taper: minus is larger at the deck.
func (s *draft) choked() bool { return !s.Job.Engine.Limits.Choke.IsZero() }

// sum returns the worst of a cylinder's rows of some kinds, with the value where they are one.
func (s *draft) sum(rows []*Row, demands []Demand) (worst *Row, value string) {
	worst = &Row{State: StateNotAsked}
	for _, r := range rows {
		if !slices.Contains(demands, r.Demand) {
			continue
		}
		worst = worse(worst, r)
		if len(demands) == 1 && r.Finding != nil && r.Finding.Measured != (uncertainty.Estimate{}) {
			size := r.Finding.Measured.Value
			if r.Demand == demandTaper && !s.Job.Engine.Limits.TaperAtDeck && !s.choked() {
				size = size.Abs() // larger at either end
			}
			text := s.show.Length(size)
			if r.Demand == demandWall { // of which nobody knows micrometres
				text = s.show.Gap(size)
			}
			value = s.show.Bare(text)
		}
	}
	return worst, value
}

// worse returns the row that holds more up: one that failed, then one that is open, then one on somebody's word.
func worse(a, b *Row) *Row {
	rank := func(r *Row) int {
		if r.Reason == toCome {
			return 2 // nothing speaks against it so far
		}
		return slices.Index([]State{StateFailed, StateOpen, -1, StateAccepted, StateProven, StateNotAsked}, r.State)
	}
	if rank(b) < rank(a) {
		return b
	}
	return a
}

// mark says where a row stands in a word or two that need no colour. Of a bore still to be cut the finding on
// the worn one is said.
func mark(r *Row) string {
	if r.State == StateOpen && r.Finding != nil && r.Reason == toCome {
		return map[uncertainty.Verdict]string{uncertainty.Within: "ok", uncertainty.Beyond: "OVER", uncertainty.Undecided: "?"}[r.Finding.Verdict]
	}
	if r.State == StateOpen && r.Reason == toCome {
		return "to come"
	}
	if r.Reason == noLimit && r.Finding != nil && r.Finding.Verdict == uncertainty.Beyond {
		return "OVER" // as the worn bore stands; for the finished one a figure is wanted
	}
	return map[State]string{StateOpen: "open", StateProven: "ok", StateFailed: "NO", StateAccepted: "on a word", StateNotAsked: "–"}[r.State]
}
