// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"slices"
	"strings"
	"unicode"

	"borewright.example/units"
)

// An Acceptance lets one open row of the ledger go on somebody's word; or, where the maker gives no figure for
// a kind of thing, every row of that kind. A failed row is accepted only where it is a maker's figure that a
// person decides to exceed. Nobody can accept parts that touch, an end of a ring that crosses a port, a sleeve
// that comes loose, a coated wall that was cut, or facts that contradict each other.
type Acceptance struct {
	Row    string `json:"row,omitzero"`    // the key of the row
	Demand Demand `json:"demand,omitzero"` // or the kind for which the maker gives no figure
	By     string `json:"by"`              // who says so
	Why    string `json:"why"`
	// Stood is what stood in the row, as the sheet prints it: the word lapses when that changes.
	Stood string `json:"stood,omitzero"`
}

// acceptedKind reports whether a kind of row is accepted for want of a figure.
func acceptedKind(as []Acceptance, d Demand) bool {
	return slices.ContainsFunc(as, func(a Acceptance) bool { return a.Row == "" && a.Demand == d && a.By != "" })
}

// accept has what was accepted stand in for what is open.
func accept(rows []Row, as []Acceptance) {
	for i := range rows {
		r := &rows[i]
		for _, a := range as {
			fact := r.Reason.fact()
			allowed := r.State == StateOpen && fact.accepts && !mustBeShown(*r) || r.State == StateFailed && fact.exceeds
			switch {
			case !allowed:
			case a.Row == "" && a.Demand == r.Demand && r.Reason == noLimit, a.Row == r.Key && a.Stood == r.Stands:
				r.State, r.Step, r.By, r.Why, r.Lapsed = StateAccepted, StepReassemble, a.By, a.Why, false
			case a.Row == r.Key:
				r.Lapsed = true
			}
		}
	}
}

// idle says why an acceptance settles nothing; "" where it does.
func idle(a Acceptance, rows []Row) string {
	why := "no row has this key, or no row of this kind wants a figure"
	for _, r := range rows {
		switch {
		case r.State == StateAccepted && (r.Key == a.Row || a.Row == "" && r.Demand == a.Demand):
			return ""
		case r.Key != a.Row:
		case r.Lapsed:
			why = "it has lapsed, since what stood there has changed: \"" + r.Stands + "\""
		case r.State.settled():
			why = "the row is " + r.State.String() + " without it"
		default:
			why = "nobody can accept this: " + r.Reason.String()
		}
	}
	return why
}

// mustBeShown reports whether a row wants a measurement that no word replaces: where the failure itself could not be
// accepted, not having looked cannot be either.
func mustBeShown(r Row) bool {
	if r.Reason == noLimit {
		return false
	}
	switch r.Demand {
	case demandPistons, demandLeastClearance, demandEnds, demandWashed, demandRidge:
		return true
	case demandRunningGap:
		return r.Reason != notSaid // that nobody knows the temperatures is another matter
	}
	return false
}

// stands is the row in one line that an acceptance quotes, always in millimetres. about is the cylinder, its size
// and the day of its proof; "" for the engine.
func (r Row) stands(about string) string {
	var parts [12]string
	list := parts[:0]
	if about != "" {
		list = append(list, about, ": ")
	}
	list = append(list, r.State.String())
	if s := r.Reason.String(); s != "" {
		list = append(list, ": ", s)
	}
	if r.Says != "" {
		list = append(list, "; ", r.Says)
	}
	if f := r.Finding; f != nil && f.Subject != "" {
		list = append(list, "; ", f.Subject, " ", f.Measured.String(), ", ", limitWords(f.Limits))
	}
	text := strings.Join(list, "")
	if !strings.Contains(text, "  ") && !strings.ContainsFunc(text, func(r rune) bool { return r != ' ' && unicode.IsSpace(r) }) {
		return text // as nearly every one is
	}
	return strings.Join(strings.Fields(text), " ")
}

// notTouching is what is wanted of parts that must not touch.
var notTouching = units.Limits{Min: units.Picometre}

func limitWords(w units.Limits) string {
	if w == notTouching {
		return "above 0"
	}
	return w.String()
}
