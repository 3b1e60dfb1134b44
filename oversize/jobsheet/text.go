// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	doc "borewright.example/oversize/jobsheet/page"
)

// doNotReassemble stands wherever the sheet is undecided.
const doNotReassemble = "UNDECIDED: do not reassemble on this."

// document puts the sheet in the order of a person at a bench: the verdict first, then the work in its order.
func (s Sheet) document() doc.Doc {
	p := &page{show: s.Job.Units}
	s.head(p)
	s.before(p)
	if s.decided() {
		s.sizes(p)
		s.findings(p)
		s.route(p)
		s.finish(p)
		s.sleeve(p)
		s.crosshatch(p)
		s.clearances(p)
		s.rings(p)
		s.capacity(p)
		s.proofText(p)
	}
	s.ledger(p)
	s.leftOut(p)
	s.cautions(p)
	return p.doc
}

// decided reports whether every cylinder has been read, so that there is a choice.
func (s Sheet) decided() bool { return len(s.Choice.Cylinders) > 0 }

func (s Sheet) head(p *page) {
	e := s.Job.Engine
	p.doc.Title, p.doc.Subject = "JOB SHEET", s.Job.Title
	p.line("%d × bore %s, stroke %s, %v, %v", e.Cylinders, p.show.length(e.Bore), p.show.length(e.Stroke), e.Cycle, e.Wall)
	for _, taken := range []struct {
		what     string
		on       Moment
		by       string
		clamping Clamping
	}{{"Read", s.Job.Survey.On, s.Job.Survey.By, s.Job.Survey.Clamping}, {"Proven", s.Job.Proof.On, s.Job.Proof.By, s.Job.Proof.Clamping}} {
		var words []string
		if !taken.on.IsZero() {
			words = append(words, "on "+taken.on.String())
		}
		if taken.by != "" {
			words = append(words, "by "+taken.by)
		}
		if taken.clamping != ClampingNotSaid {
			words = append(words, taken.clamping.words())
		}
		if len(words) > 0 {
			p.line("%s %s.", taken.what, strings.Join(words, ", "))
		}
	}
	if s.decided() {
		p.wrapped("ROUTE:", s.routeWords(p))
	}
	p.wrapped("NEXT:", s.nextWords())
	for _, line := range s.reasons() {
		p.wrapped(line[0], line[1])
	}
	p.line("Cautions stand at the end: read them before the work.")
	for _, a := range s.Assumed {
		p.wrapped("Assumed:", a.Took+" ("+a.Field+").")
	}
}

// reasons says, a line each, what the next step of the engine and of each cylinder rests on: the rows that call
// for it.
func (s Sheet) reasons() [][2]string {
	var lines [][2]string
	for i := -1; i < len(s.Cylinders); i++ {
		rows, head := of(s.Ledger, i), "Engine: "
		step, pressing := next(rows), isSettled
		for _, r := range rows {
			pressing = min(pressing, r.rank())
		}
		if i >= 0 {
			head = "Cylinder " + s.Cylinders[i].Name + ": "
		}
		var why []string
		for _, r := range rows {
			if !r.State.settled() && r.Step == step && r.rank() == pressing && r.Reason != ToCome {
				why = append(why, r.words())
			}
		}
		const most = 4
		if n := len(why) - most; n > 1 {
			why = append(why[:most], fmt.Sprintf("and %d more", n))
		}
		if len(why) > 0 {
			lines = append(lines, [2]string{head, strings.Join(slices.Compact(why), "; ") + "."})
		}
	}
	return lines
}

// words says a row in a few words.
func (r Row) words() string {
	text := r.Demand.String()
	if r.Of != "" {
		text += " (" + r.Of + ")"
	}
	text += ": " + r.Reason.String()
	if r.Says != "" {
		text += ", " + r.Says
	}
	return text
}

// ledger prints what must be true, and where it stands.
func (s Sheet) ledger(p *page) {
	p.title("WHAT MUST BE TRUE before it goes together")
	rows := [][]string{{"", "what", "state", "why"}}
	for _, r := range s.Ledger {
		what := r.Demand.String()
		if r.Of != "" {
			what += ", " + r.Of
		}
		why := r.Reason.String()
		if r.Says != "" {
			why = r.Says
		}
		if r.By != "" {
			why = "by " + r.By + ": " + r.Why
		}
		rows = append(rows, []string{cmp.Or(r.Cylinder, "engine"), what, r.State.String(), why})
	}
	p.table(rows)
}

// nextWords says what is next, and for which cylinders where they differ.
func (s Sheet) nextWords() string {
	var order []Step
	names := map[Step][]string{}
	for _, c := range s.Cylinders {
		if names[c.Next] == nil {
			order = append(order, c.Next)
		}
		names[c.Next] = append(names[c.Next], c.Name)
	}
	if len(order) == 1 {
		return order[0].String() + s.onTheWord()
	}
	slices.Sort(order)
	var parts []string
	for _, step := range order {
		parts = append(parts, fmt.Sprintf("%v (cylinder %s)", step, strings.Join(names[step], "; ")))
	}
	return strings.Join(parts, ", ")
}

// onTheWord names those on whose word an engine goes together.
func (s Sheet) onTheWord() string {
	n, names := 0, []string{}
	for _, r := range s.Ledger {
		if r.State == Accepted {
			n++
			if !slices.Contains(names, r.By) {
				names = append(names, r.By)
			}
		}
	}
	if n == 0 || s.Next < LeaveUntouched {
		return ""
	}
	return fmt.Sprintf(", %d on the word of %s", n, strings.Join(names, " and "))
}

// before has what comes before the readings, and where to take them.
func (s Sheet) before(p *page) {
	p.title("BEFORE MEASURING")
	s.checks(p, Measuring)
	if len(s.ToRead) > 0 && s.Next == Measure {
		var depths, axes []string
		for _, r := range s.ToRead {
			if d := p.show.plain(r.Depth); !slices.Contains(depths, d) {
				depths = append(depths, d)
			}
		}
		for _, a := range axesOf(s.ToRead) {
			axes = append(axes, bore.FormatAxis(a))
		}
		text := fmt.Sprintf("Where to read, each place twice: at %s below the deck, along the axes %s", strings.Join(depths, ", "), strings.Join(axes, ", "))
		if len(s.Job.Engine.Layout.Ports) > 0 {
			text += ", wherever no port is under an anvil"
		}
		p.wrapped("  ", text+".")
	}
	for _, c := range s.Cylinders {
		if len(c.Bore.Planes) > 0 || len(c.Bore.Bridges) > 0 {
			continue
		}
		p.line("")
		p.line("  Cylinder %s: to be read", c.Name)
		p.table(blankTable(p, s.ToRead))
	}
}

// checks prints the checks of an operation as boxes to tick.
func (s Sheet) checks(p *page, op Operation) {
	for _, c := range s.Checklist {
		if c.Operation == op {
			p.wrapped("  [ ] ", c.Text)
		}
	}
}

func (s Sheet) capacity(p *page) {
	p.title("DISPLACEMENT AND COMPRESSION")
	rows := [][]string{{"", "before", "after"}}
	add := func(name string, before, after Capacity) {
		row := []string{name, p.show.capacity(before), "–"}
		if after.Swept != 0 {
			row[2] = p.show.capacity(after)
		}
		rows = append(rows, row)
	}
	for _, c := range s.Cylinders {
		add("cylinder "+c.Name, c.Before, c.After)
	}
	add("engine", s.Before, s.After)
	p.table(rows)
	if first := s.Cylinders[0].Before; s.Job.Engine.Cycle == TwoStroke && first.Ratio != 0 && first.FromPort == 0 {
		p.line("  The ratio is over the full stroke, not from where the exhaust port closes.")
	}
}

func (s Sheet) cautions(p *page) {
	p.title("CAUTIONS")
	last := Operation(-1)
	for _, c := range s.Cautions {
		if c.Operation != last {
			p.line("  %s", c.Operation)
			last = c.Operation
		}
		p.wrapped("    - ", c.Text)
	}
}

func (s Sheet) leftOut(p *page) {
	if len(s.Omitted)+len(s.Unused) == 0 {
		return
	}
	p.title("LEFT OUT")
	for _, o := range s.Unused {
		p.wrapped("  - ", "not used: "+o.Part+", because "+o.Why+".")
	}
	for _, o := range s.Omitted {
		p.wrapped("  - ", o.Part+": "+o.Why+".")
	}
}

// routeWords names the route of the whole engine.
func (s Sheet) routeWords(p *page) string {
	c := s.Choice
	switch c.Route {
	case oversize.BoreOversize:
		if s.Job.Engine.ownSizes() {
			return "bore oversize, each cylinder its own size"
		}
		return fmt.Sprintf("bore oversize %s, all cylinders", p.show.length(c.Over))
	case oversize.Undecided:
		if c.Otherwise == oversize.BoreOversize {
			return fmt.Sprintf("undecided (if nothing better is measured: %v %s)", c.Otherwise, p.show.length(c.OtherwiseOver))
		}
	case oversize.MakersProcess:
		if s.Next == LeaveUntouched {
			return "keep, untouched: this wall is neither bored nor honed here"
		}
		return "the maker's own process, neither bored nor honed here"
	case oversize.Sleeve:
		var sleeved, bored []string
		for _, c := range c.Cylinders {
			if c.Route == oversize.Sleeve {
				sleeved = append(sleeved, c.Name)
			} else {
				what := c.Route.String()
				if c.Route == oversize.BoreOversize {
					what += " " + p.show.plain(c.Over)
				}
				bored = append(bored, fmt.Sprintf("%s (%s)", c.Name, what))
			}
		}
		if len(bored) > 0 {
			return fmt.Sprintf("sleeve cylinder %s; the others: %s", strings.Join(sleeved, "; "), strings.Join(bored, "; "))
		}
	}
	return c.Route.String()
}
