// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"maps"
	"slices"
	"strings"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
)

// reasons says, a line each, what the next step of the engine and of each cylinder rests on: the rows that call
// for it.
func (s *draft) reasons() {
	var wanting groups[string, string] // the cylinders, by what they want
	for i := -1; i < len(s.Cylinders); i++ {
		rows, name := s.of(i), ""
		step, pressing := next(rows), isSettled
		for _, r := range rows {
			pressing = min(pressing, r.rank())
		}
		if i >= 0 {
			name = s.Cylinders[i].Name
		}
		var calling []*Row
		for _, r := range rows {
			if r.State.settled() || r.Step != step || r.Reason == toCome {
				continue
			}
			if r.Demand == demandRoute && r.rank() != pressing { // what else calls for the step waits for the route
				calling = []*Row{r}
				break
			}
			if r.rank() == pressing {
				calling = append(calling, r)
			}
		}
		if len(calling) > 0 {
			wanting.add("wants: "+wants(calling)+".", name)
		}
	}
	for _, text := range wanting.keys {
		head := "Engine:"
		if names := wanting.of[text]; len(names) > 1 {
			head = "Cylinders " + strings.Join(names, "; ") + ":"
		} else if names[0] != "" {
			head = "Cylinder " + names[0] + ":"
		}
		s.add(page.Item{Label: head, Text: text})
	}
}

// wants says what must be true, and what stands in its way: once where that is the same of several rings, ports or facts.
func wants(rows []*Row) string {
	type want struct {
		Demand
		why string
	}
	var of groups[want, *Row]
	for _, r := range rows {
		why := r.Reason.String()
		if r.Says != "" {
			why += ": " + r.Says
		}
		of.add(want{r.Demand, why}, r)
	}
	const most = 4
	var parts []string
	left := len(rows)
	for n, k := range of.keys {
		if n == most && len(of.keys) > most+1 {
			parts = append(parts, fmt.Sprintf("and %d more", left))
			break
		}
		left -= len(of.of[k])
		text := k.Demand.String()
		for _, r := range of.of[k] {
			if r.Of != "" {
				text += ", " + r.Of
			}
		}
		parts = append(parts, text+" ("+k.why+")")
	}
	return strings.Join(parts, "; ")
}

// ledger prints what must be true, and where it stands: a line for those rows of one demand that have the same to say,
// and in a list those that have nothing.
func (s *draft) ledger() {
	const shown, waits, unasked = "proven:", "to come:", "not asked:"
	type line struct {
		Demand
		State
		why string
	}
	var lines groups[line, *Row]
	lists, all := map[string]map[Demand][]*Row{shown: {}, waits: {}, unasked: {}}, map[Demand]int{}
	for i := range s.Ledger {
		r, label := &s.Ledger[i], ""
		all[r.Demand]++
		switch {
		case r.State == StateProven:
			label = shown
		case r.State == StateNotAsked:
			label = unasked
		case r.State == StateOpen && r.Reason == toCome && r.Says == "" && r.By == "":
			label = waits
		case r.By != "":
			lines.add(line{r.Demand, r.State, "by " + r.By + ": " + r.Why}, r)
			continue
		default:
			lines.add(line{r.Demand, r.State, cmp.Or(r.Says, r.Reason.String())}, r)
			continue
		}
		lists[label][r.Demand] = append(lists[label][r.Demand], r)
	}
	for _, k := range lines.keys {
		s.add(page.Item{Label: k.State.String() + ":", Text: k.Demand.String() + s.whose(lines.of[k], all[k.Demand]) + ": " + k.why + "."})
	}
	for _, label := range []string{shown, waits, unasked} {
		var words []string
		for _, d := range slices.Sorted(maps.Keys(lists[label])) {
			words = append(words, d.String()+s.whose(lists[label][d], all[d]))
		}
		if len(words) > 0 {
			s.add(page.Item{Label: label, Text: strings.Join(words, "; ") + "."})
		}
	}
}

// whose names in brackets the cylinders that some rows of one demand are about, and of what in them, where they are
// not all.
func (s *draft) whose(some []*Row, all int) string {
	if len(some) == all {
		return ""
	}
	var of groups[string, string]
	for _, r := range some {
		of.add(r.Cylinder, r.Of)
	}
	var names []string
	for _, name := range of.keys {
		what := strings.Join(slices.DeleteFunc(of.of[name], func(s string) bool { return s == "" }), ", ")
		switch {
		case what != "" && len(s.Cylinders) == 1:
			name = what
		case what != "":
			name += ": " + what
		}
		names = append(names, name)
	}
	return " (" + strings.Join(names, "; ") + ")"
}

// nextWords says what is next, and for which cylinders where they differ.
func (s *draft) nextWords() string {
	order, names := s.bySteps()
	if len(order) == 1 && order[0] == s.Next {
		return order[0].String() + s.onTheWord()
	}
	if engine := next(s.of(-1)); engine == s.Next && names[engine] == nil {
		return engine.String()
	}
	var parts []string
	for _, step := range order {
		parts = append(parts, fmt.Sprintf("%v (cylinder %s)", step, strings.Join(names[step], "; ")))
	}
	return strings.Join(parts, ", ")
}

// bySteps returns the next steps of the cylinders in the order of the work, and which cylinders each is of.
func (s *draft) bySteps() (steps []Step, names map[Step][]string) {
	names = map[Step][]string{}
	for _, c := range s.Cylinders {
		names[c.Next] = append(names[c.Next], c.Name)
	}
	return slices.Sorted(maps.Keys(names)), names
}

// onTheWord names those on whose word an engine goes together.
func (s *draft) onTheWord() string {
	n, names := 0, []string{}
	for _, r := range s.Ledger {
		if r.State == StateAccepted {
			n++
			if !slices.Contains(names, r.By) {
				names = append(names, r.By)
			}
		}
	}
	if n == 0 || s.Next < StepLeaveUntouched {
		return ""
	}
	return fmt.Sprintf(", %d on the word of %s", n, strings.Join(names, " and "))
}

// before has what comes before the readings, and where to take them.
func (s *draft) before() {
	s.checks(notes.Measuring)
	if len(s.ToRead) > 0 && s.Next == StepMeasure {
		var depths, axes []string
		for _, r := range s.ToRead {
			if d := s.show.Along(r.Depth); !slices.Contains(depths, d) {
				depths = append(depths, d)
			}
		}
		for _, a := range show.Axes(s.ToRead) {
			axes = append(axes, a.String())
		}
		text := fmt.Sprintf("Where to read, each place twice: at %s below the deck, along the axes %s", strings.Join(depths, ", "), strings.Join(axes, ", "))
		if len(s.Job.Engine.Layout.Ports) > 0 {
			text += ", wherever no port is under an anvil"
		}
		s.add(page.Sentence(text + "."))
	}
	for _, c := range s.Cylinders {
		if len(c.Bore.Planes) > 0 || len(c.Bore.Bridges) > 0 {
			continue
		}
		s.heading("Cylinder %s: to be read", c.Name)
		s.table(show.Blanks(s.show.Along, s.ToRead, page.Blank))
	}
}

// checks prints the checks of an operation as boxes to tick, and under them what may hurt somebody at it.
func (s *draft) checks(op string) {
	for _, c := range s.Checklist {
		if c.On == op {
			s.add(page.Check(c.Says))
		}
	}
	for _, c := range s.Cautions {
		if c.On == op {
			s.add(page.Caution(c.Says))
		}
	}
}

func (s *draft) capacity() {
	rows := [][]string{{"", "before", "after"}}
	add := func(name string, before, after oversize.Compression) {
		row := []string{name, s.show.Capacity(before), "–"}
		if after.Swept != 0 {
			row[2] = s.show.Capacity(after)
		}
		rows = append(rows, row)
	}
	for _, c := range s.Cylinders {
		add("cylinder "+c.Name, c.Before, c.After)
	}
	add("engine", oversize.Compression{Swept: s.Before}, oversize.Compression{Swept: s.After})
	s.table(rows)
	if first := s.Cylinders[0].Before; s.Job.Engine.Cycle == TwoStroke && first.Ratio != 0 && first.FromPort == 0 {
		s.add(page.Sentence("The ratio is over the full stroke, not from where the exhaust port closes."))
	}
}

// cautions has those that no section holds: of any work, and of operations that the sheet has no section for. None
// is lost.
func (s *draft) cautions() {
	said := func(text string) bool {
		return slices.ContainsFunc(s.doc.Sections, func(p page.Section) bool { return slices.Contains(p.Blocks, page.Block(page.Caution(text))) })
	}
	last := ""
	for _, c := range s.Cautions {
		if said(c.Says) {
			continue
		}
		if c.On != last {
			s.add(page.Sentence(c.On))
			last = c.On
		}
		s.add(page.Caution(c.Says))
	}
}

// leftOut has what was taken because the job does not say it, what was not used, and what could not be worked out.
func (s *draft) leftOut() {
	for _, a := range s.Assumed {
		s.add(page.Item{Text: "taken: " + a.Says + " (" + a.On + ")."})
	}
	for _, o := range s.Unused {
		s.add(page.Item{Text: "not used: " + o.On + ", because " + o.Says + "."})
	}
	for _, o := range s.Omitted {
		s.add(page.Item{Text: "left out: " + o.On + ": " + o.Says + "."})
	}
}

// routeWords names the route of the whole engine.
func (s *draft) routeWords() string {
	c := s.Choice
	switch c.Route {
	case oversize.BoreOversize:
		if len(c.Cylinders) > 1 && s.Job.Engine.ownSizes() {
			return "rebore, each cylinder its own size"
		}
		if len(c.Cylinders) == 1 {
			return s.show.Route(c.Route, c.Over)
		}
		return s.show.Route(c.Route, c.Over) + ", all cylinders"
	case oversize.Undecided:
		if c.Otherwise == oversize.BoreOversize {
			return "undecided (if nothing better is measured: " + s.show.Route(c.Otherwise, c.OtherwiseOver) + ")"
		}
	case oversize.MakersProcess:
		if s.Next == StepLeaveUntouched {
			return "keep, untouched: this wall is neither bored nor honed here"
		}
		return "the maker's own process, neither bored nor honed here"
	case oversize.Sleeve:
		var sleeved, bored []string
		for _, c := range c.Cylinders {
			if c.Route == oversize.Sleeve {
				sleeved = append(sleeved, c.Name)
			} else {
				bored = append(bored, fmt.Sprintf("%s (%s)", c.Name, s.show.Route(c.Route, c.Over)))
			}
		}
		if len(bored) > 0 {
			return fmt.Sprintf("sleeve cylinder %s; the others: %s", strings.Join(sleeved, "; "), strings.Join(bored, "; "))
		}
	}
	return c.Route.String()
}

// groups are values by what they have in common, in the order in which that comes first.
type groups[K comparable, V any] struct {
	keys []K
	of   map[K][]V
}

func (g *groups[K, V]) add(k K, v V) {
	if g.of == nil {
		g.of = map[K][]V{}
	}
	if _, ok := g.of[k]; !ok {
		g.keys = append(g.keys, k)
	}
	g.of[k] = append(g.of[k], v)
}
