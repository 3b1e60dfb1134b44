// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	doc "borewright.example/oversize/jobsheet/page"
	"borewright.example/units/uncertainty"
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
	if s.decided() && s.Undecided() {
		p.line(doNotReassemble)
	}
	for i, c := range s.Choice.Cylinders {
		for _, why := range s.open(p, i) {
			p.wrapped("Open, cylinder "+c.Name+": ", why+".")
		}
		for _, why := range s.why(i) {
			p.wrapped("Why, cylinder "+c.Name+": ", why+".")
		}
		if s.Cylinders[i].Next == ChooseSleeve {
			for _, why := range s.unsound(i) {
				p.wrapped("The sleeve's fit, cylinder "+c.Name+": ", why+".")
			}
		}
	}
	for _, o := range s.Omitted {
		if o.Part == sleeveFit {
			p.wrapped("The sleeve's fit: ", o.Why+".")
		}
	}
	p.line("Cautions stand at the end: read them before the work.")
	for _, a := range s.Assumed {
		p.wrapped("Assumed:", a+".")
	}
}

// open says what a cylinder's next step waits for, each reason once.
func (s Sheet) open(p *page, i int) []string {
	choice, c := s.Choice.Cylinders[i], s.Cylinders[i]
	var list []string
	add := func(why string) {
		if !slices.Contains(list, why) {
			list = append(list, why)
		}
	}
	for _, r := range choice.Refused {
		if choice.Route == oversize.Undecided && r.Reason.Open() {
			add(r.Reason.String())
		}
	}
	if c.Next == MeasureBetter {
		if s.wantsWall(i) {
			add("the wall is not measured")
		}
		if s.wantsPiston(i) {
			add("the piston is not measured")
		}
		if c.Proof != nil {
			if c.Proof.Shrunk {
				add("two sets of readings that cannot both be true")
			}
			for _, f := range c.Proof.Findings {
				if f.Verdict == uncertainty.Undecided {
					add(aboutProof(p, f) + ", in the proof")
				}
			}
			for _, f := range c.Proof.Clearances {
				if f.Verdict == uncertainty.Undecided {
					add(f.Subject + ": measure piston and bore better, or another piston")
				}
			}
		}
	}
	for _, r := range c.Rings {
		if !r.settled() || r.Least.Value != 0 && r.HotEnough.Verdict == uncertainty.Undecided {
			add("the gap of ring " + r.Ring + ": measure it better")
		}
	}
	return list
}

// why says what is certain that calls for a cylinder's next step, where the step alone does not tell.
func (s Sheet) why(i int) []string {
	given, c := s.Job.Cylinders[i], s.Cylinders[i]
	var list []string
	say := func(when bool, text string) {
		if when {
			list = append(list, text)
		}
	}
	say(c.Next == Oversized, "past its size: a larger piston, or the next oversize")
	if c.Next != AskMaker {
		return list
	}
	if s.Choice.Cylinders[i].Route == oversize.MakersProcess {
		say(given.Peeling, "the plating lifts, or bare metal shows")
		say(given.Pit != 0, "the wall has a score or a pit")
		deciding := oversize.Deciding(c.Findings)
		say(len(deciding) == 0, "the job gives no limit that decides on the wall")
		for _, f := range deciding {
			say(f.Verdict == uncertainty.Beyond, f.Limit.String()+", beyond")
		}
		for _, f := range c.KeptClearances {
			say(f.Verdict == uncertainty.Beyond, f.Subject+" of its piston, beyond")
		}
	}
	for _, r := range c.Rings {
		say(r.Unfit, "no gap in the window of ring "+r.Ring+" is enough when hot")
		say(r.butts(), "the gap of ring "+r.Ring+" is too small when hot")
		say(r.crosses(), "an end of ring "+r.Ring+" crosses a port")
	}
	return list
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
		return order[0].String()
	}
	slices.Sort(order)
	var parts []string
	for _, step := range order {
		parts = append(parts, fmt.Sprintf("%v (cylinder %s)", step, strings.Join(names[step], "; ")))
	}
	return strings.Join(parts, ", ")
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
	if len(s.Omitted) == 0 {
		return
	}
	p.title("LEFT OUT")
	for _, o := range s.Omitted {
		p.wrapped("  - ", o.Part+": "+o.Why+".")
	}
}

// routeWords names the route of the whole engine.
func (s Sheet) routeWords(p *page) string {
	c := s.Choice
	switch c.Route {
	case oversize.BoreOversize:
		if s.Job.Engine.OwnSizes {
			return "bore oversize, each cylinder its own size"
		}
		return fmt.Sprintf("bore oversize %s, all cylinders", p.show.length(c.Over))
	case oversize.Undecided:
		if c.Otherwise == oversize.BoreOversize {
			return fmt.Sprintf("undecided (if nothing better is measured: %v %s)", c.Otherwise, p.show.length(c.OtherwiseOver))
		}
	case oversize.MakersProcess:
		if s.Next >= SetRingGaps {
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
