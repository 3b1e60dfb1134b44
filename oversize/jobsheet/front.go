// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/surface"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// front has what is to be seen first, and hung by the machine: what the engine is, what to do now, where to stop, how to set
// the hone; then why, what must be true and where it stands, what to buy, what was not seen.
func (s *draft) front() {
	e := s.Job.Engine
	s.say("%d × bore %s, stroke %s, %v, %v", e.Cylinders, s.show.Plain(e.Bore), s.show.Plain(e.Stroke), e.Cycle, e.Wall)
	for _, taken := range []struct {
		what string
		Survey
	}{{"Read", s.Job.Survey}, {"Proven", s.Job.Proof.Survey}} {
		var words []string
		if taken.On != "" {
			words = append(words, "on "+taken.On)
		}
		if taken.By != "" {
			words = append(words, "by "+taken.By)
		}
		if taken.TorquePlate != nil {
			words = append(words, notes.Clamped(*taken.TorquePlate))
		}
		if len(words) > 0 {
			s.say("%s %s.", taken.what, strings.Join(words, ", "))
		}
	}
	s.add(page.Item{Label: "NEXT:", Text: s.nextWords()})
	if text := s.settledBy(); text != "" {
		s.add(page.Item{Label: "SETTLED BY:", Text: text})
	}
	for i, line := range s.orders() {
		s.add(page.Item{Label: ordinal(i), Text: line})
	}
	if s.decided() {
		s.add(page.Item{Label: "ROUTE:", Text: s.routeWords()})
	}
	s.items(page.Item{Label: "STOP AT:", Text: s.stops()}, page.Item{Label: "DIAL:", Text: s.dial()}, page.Item{Label: "HONE:", Text: s.hones()},
		page.Item{Label: "SLEEVE:", Text: s.holds()})
	s.reasons()
	s.why()
	s.add(s.overview())
	s.items(page.Item{Label: "BUY:", Text: s.buys()}, page.Item{Label: "UNSEEN:", Text: s.unseen()}, page.Item{Label: "ASK:", Text: s.asks()},
		page.Item{Label: "WORD:", Text: s.words()}, page.Item{Label: "UNASKED:", Text: s.unasked()}, page.Item{Label: "PRICE:", Text: s.prices()})
	s.add(page.Sentence("Cautions stand at the steps and at the end: read them before the work."))
}

// items adds those that have something to say.
func (s *draft) items(list ...page.Item) {
	for _, item := range list {
		if item.Text != "" {
			s.add(item)
		}
	}
}

// why says, a line a cylinder, what speaks against everything cheaper than its route.
func (s *draft) why() {
	var names, lines []string
	for _, c := range s.Choice.Cylinders {
		var against groups[string, *oversize.Refusal]
		for k := range c.Refused {
			against.add(s.cheaper(c.Route, &c.Refused[k]), &c.Refused[k])
		}
		var parts []string
		for _, what := range against.keys {
			says := against.of[what][0]
			for _, r := range against.of[what] {
				if says.Reason.Open() && !r.Reason.Open() && r.Work == says.Work { // what is sure says more than what is not
					says = r
				}
			}
			parts = append(parts, what+": "+says.Reason.String())
		}
		if len(parts) > 0 && c.Route != oversize.Undecided {
			names, lines = append(names, c.Name), append(lines, strings.Join(parts, "; "))
		}
	}
	if len(lines) > 0 {
		s.add(page.Item{Label: "WHY NOT:", Text: alike(names, lines)})
	}
}

// settledBy says what decides a cylinder of which no diameter can tell, however well it is read, whether a size cleans it up:
// nothing where better readings may.
func (s *draft) settledBy() string {
	var names, lines []string
	for i, c := range s.Choice.Cylinders {
		if s.Job.Cylinders[i].WearShare == 0 && sideDecides(c, s.Cylinders[i].CleanUp) {
			names, lines = append(names, c.Name), append(lines, s.beyondReading(c.Over))
		}
	}
	return alike(names, lines)
}

// beyondReading says what decides whether a size cleans up a bore of which nobody knows the side of the wear.
func (s *draft) beyondReading(over units.Length) string {
	text := "which side has worn (wear_share), which no diameter shows"
	e := s.Job.Engine
	larger := ""
	for _, size := range e.Oversizes {
		if size.Over <= over || larger != "" {
			continue
		}
		if larger = s.show.Over(size.Over); e.GasketHole != 0 && e.Bore+size.Over > e.GasketHole {
			return text + "; or a gasket for " + larger + ", whose hole is larger"
		}
	}
	if larger == "" {
		text += "; or a larger size on offer"
	}
	return text
}

// cheaper names what is refused to a cylinder of such a route. A wall that is never worked on has no sizes, and may well be
// kept as it is.
func (s *draft) cheaper(route oversize.Route, r *oversize.Refusal) string {
	switch {
	case r.Route == oversize.Sleeve:
		return "a sleeve"
	case r.Route == oversize.BoreOversize && r.Over == 0:
		return "boring it"
	case r.Route == oversize.BoreOversize:
		return s.show.Over(r.Over)
	case route == oversize.MakersProcess:
		return "honing it"
	}
	return "keeping it"
}

func ordinal(i int) string {
	return [...]string{"1st", "2nd", "3rd", "4th", "5th", "6th", "7th", "8th", "9th"}[min(i, 8)]
}

// orders says what to do now, in order, a line for each kind of work. Whatever makes chips comes first, and the
// others are covered while it does.
func (s *draft) orders() []string {
	if s.Next <= StepAskMaker || !s.decided() {
		return nil
	}
	steps, names := s.bySteps()
	if len(steps) == 1 && len(s.Cylinders) == 1 && steps[0] != StepBore && steps[0] != StepHone {
		return nil
	}
	bored := slices.Contains(steps, StepBore)
	var lines []string
	for _, step := range steps {
		line := fmt.Sprintf("%v: cylinder %s", step, strings.Join(names[step], "; "))
		switch step {
		case StepBore, StepFitSleeve:
			if others := s.others(names[step]); len(others) > 0 {
				line += ", with " + strings.Join(others, "; ") + " covered"
			}
			if len(s.Cylinders) > 1 && len(names[step]) == len(s.Cylinders) {
				line += ": all of them, before any is honed"
			}
		case StepHone:
			if bored {
				line += ", once all are bored and washed"
			}
		case StepWaitForOthers, StepReassemble, StepLeaveUntouched:
			continue
		}
		lines = append(lines, line)
	}
	return lines
}

// others names the cylinders that are not among those named.
func (s *draft) others(names []string) (list []string) {
	for _, c := range s.Cylinders {
		if !slices.Contains(names, c.Name) {
			list = append(list, c.Name)
		}
	}
	return list
}

// alike joins lines, each with the names that it is about where they differ.
func alike(names, lines []string) string {
	var of groups[string, string]
	for i, line := range lines {
		of.add(line, names[i])
	}
	for i, line := range of.keys {
		if len(of.keys) > 1 {
			of.keys[i] = strings.Join(of.of[line], "; ") + ": " + line
		}
	}
	return strings.Join(of.keys, ". ")
}

// buys lists what has to be got, from the rows that want it.
func (s *draft) buys() string {
	if s.Choice.Route == oversize.Undecided {
		return ""
	}
	var list []string
	wanted := map[units.Length]int{}
	sleeves := 0
	for i, c := range s.Choice.Cylinders {
		r := s.row(i, "pistons")
		if r.Reason == notMeasured && c.Route != oversize.Undecided && s.Cylinders[i].Next != StepAskMaker {
			wanted[c.Over]++
		}
		if c.Route == oversize.Sleeve && !s.Cylinders[i].there() && s.Cylinders[i].Next != StepChooseSleeve {
			sleeves++
		}
	}
	for _, o := range s.Job.Engine.sizes() {
		if n := wanted[o.Over] - len(o.Pistons); n > 0 { // those that came count
			size := "standard size"
			if o.Over != 0 {
				size = s.show.Over(o.Over)
			}
			list = append(list, fmt.Sprintf("%d × piston and rings for %s", n, size))
		}
	}
	if sleeves > 0 {
		list = append(list, fmt.Sprintf("%d × sleeve", sleeves))
	}
	for i, c := range s.Cylinders {
		for _, r := range c.Rings {
			if s.tooWide(r, i) {
				list = append(list, fmt.Sprintf("another %s ring for cylinder %s: this one is too wide", r.Ring, c.Name))
			}
		}
	}
	return strings.Join(list, "; ")
}

// unseen says in a few words what the readings cannot show of any cylinder, which every gauge is blind to left out.
func (s *draft) unseen() string {
	var list []string
	for _, c := range s.Cylinders {
		g := c.Bore
		if c.Proof != nil {
			g = c.Proof.Bore
		}
		for _, u := range g.Unseen {
			name, err := u.MarshalText()
			if err == nil && u != bore.UnseenElsewhere && !slices.Contains(list, string(name)) {
				list = append(list, string(name))
			}
		}
	}
	return strings.Join(list, ", ")
}

// words names what goes on somebody's word.
func (s *draft) words() string {
	var list []string
	for _, r := range s.Ledger {
		if r.State != StateAccepted {
			continue
		}
		what := r.what()
		if r.Cylinder != "" {
			what += " of " + r.Cylinder
		}
		if r.Reason == beyondLimit {
			what += ": beyond"
		}
		list = append(list, fmt.Sprintf("%s, accepted by %s (%s)", what, r.By, r.Why))
	}
	return strings.Join(list, "; ")
}

// unasked says what nobody asked of the engine, since the job has no limit for it: it is not shown to be so.
func (s *draft) unasked() string {
	var list []string
	e := s.Job.Engine
	for _, q := range []struct {
		what  string
		asked bool
	}{
		{"roundness", e.Limits.Roundness != 0}, {"cylindricity", e.Limits.Cylindricity != 0}, {"texture", e.Texture != (surface.Limits{})},
		{"side clearance", !slices.ContainsFunc(e.Rings, func(r Ring) bool { return r.Side.IsZero() })},
		{"hot ring gaps", !slices.ContainsFunc(e.Rings, func(r Ring) bool { return r.HotGap == 0 })},
	} {
		if !q.asked {
			list = append(list, q.what)
		}
	}
	return strings.Join(list, ", ")
}

// asks says what has to be asked before the work: a piston that its running temperatures make the larger.
func (s *draft) asks() string {
	var names []string
	for _, c := range s.Cylinders {
		if c.there() {
			continue // its row says so
		}
		for _, k := range c.Clearances {
			if k.At == atAim && k.Hot != (uncertainty.Estimate{}) && k.Hot.Value < 0 {
				names = append(names, c.Name)
			}
		}
	}
	if len(names) == 0 {
		return ""
	}
	if len(names) == 1 {
		return "the pistons' supplier, before the cut: by these running temperatures the piston of cylinder " + names[0] + " is larger than its bore"
	}
	return "the pistons' supplier, before the cut: by these running temperatures the pistons of cylinders " + strings.Join(names, "; ") + " are larger than their bores"
}

// prices says what less doubt might spare.
func (s *draft) prices() string {
	var list []string
	for _, r := range s.Ledger {
		if p := r.Price; p != nil {
			what := p.Route.String()
			if p.Route == oversize.BoreOversize {
				what = s.show.Over(p.Over)
			}
			list = append(list, fmt.Sprintf("cylinder %s: known to ± %s instead of ± %s, %s could do", r.Cylinder,
				s.show.Length(p.Would), s.show.Length(p.Now), what))
		}
	}
	return strings.Join(list, "; ")
}
