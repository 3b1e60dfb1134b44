// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"slices"
	"strings"

	"borewright.example/oversize/jobsheet"
)

// pressing returns the rows of the ledger that call for the step which is next, the most pressing first: the library has
// its reasons in that order. They are those of the first reason, and on to the one for which the work of the step is written
// down.
func (w *writer) pressing() (rows []jobsheet.Row) {
	if w.plan.sheet == nil {
		return nil
	}
	var open []jobsheet.Row
	for _, r := range w.plan.sheet.Ledger {
		if r.Step == w.plan.sheet.Next && (r.State == jobsheet.StateOpen || r.State == jobsheet.StateFailed) {
			open = append(open, r)
		}
	}
	if said := slices.DeleteFunc(slices.Clone(open), func(r jobsheet.Row) bool { return len(r.Give) == 0 }); len(said) > 0 {
		open = said // the others follow from these
	}
	var first, work jobsheet.Reason // none is the least, and that of no open row
	for _, r := range open {
		if w.slipped(r) != "" { // put right, it may leave nothing else to ask
			rows = append(rows, r)
			continue
		}
		if first == 0 || r.Reason < first {
			first = r.Reason
		}
		if writesWork(r) && (work == 0 || r.Reason < work) {
			work = r.Reason
		}
	}
	for reason := first; reason <= max(first, work); reason++ {
		for _, r := range open {
			if r.Reason == reason && w.slipped(r) == "" {
				rows = append(rows, r)
			}
		}
	}
	return rows
}

// writesWork reports whether a row is settled by the work of its step itself.
func writesWork(r jobsheet.Row) bool {
	where := ".proof"
	if r.Step == jobsheet.StepMeasure {
		where = ".readings"
	} else if enteredIn[r.Step] == "" {
		return false
	}
	return slices.ContainsFunc(r.Give, func(give string) bool { return strings.HasSuffix(give, where) })
}

// boxesOf returns where what a row wants is written down: of work that is still to be done, that work first.
func (w *writer) boxesOf(r jobsheet.Row) (ordered []string) {
	var at []string
	for _, give := range r.Give {
		if of := w.slipped(r); of != "" {
			give = of
		}
		ways := []string{give}
		if cylinder, ok := strings.CutSuffix(give, ".proof"); ok && enteredIn[r.Step] != "" {
			ways = []string{join(cylinder, enteredIn[r.Step]), give}
		}
		for _, way := range ways {
			if a := w.nearest(way); a != "" && !slices.Contains(at, a) {
				at = append(at, a)
			}
		}
	}
	if len(at) == 0 { // a field of every item: where they are listed
		for _, give := range r.Give {
			at = append(at, give[:max(strings.LastIndexByte(give, '.'), 0)])
		}
	}
	for _, a := range w.anchor { // as on the page
		if slices.Contains(at, a) && !slices.Contains(ordered, a) {
			ordered = append(ordered, a)
		}
	}
	return ordered
}

// slipped returns the path of the figure that a row holds for a slip; "" where it is no such row.
func (w *writer) slipped(r jobsheet.Row) string {
	if !slices.Contains(r.Give, "confirmed") {
		return ""
	}
	return w.boxAt(w.plan.moved.back(r.Of))
}

// taken writes, where the doubt decides or pistons are bought by it, the way to what nobody said the doubt of.
func (w *writer) taken() {
	if next := w.plan.sheet.Next; next != jobsheet.StepMeasureBetter && next != jobsheet.StepGetPistons {
		return
	}
	var at []string
	for _, a := range w.plan.sheet.Assumed {
		if (strings.HasPrefix(a.On, "gauge.") || strings.HasPrefix(a.On, "proof.")) && kinds[a.On].units != nil {
			at = append(at, a.On)
		}
	}
	if len(at) > 0 {
		w.raw(`<p>%s</p>`, text(wordTaken))
		w.links(at)
	}
}
