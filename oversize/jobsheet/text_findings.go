// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units/uncertainty"
)

func (s *draft) findings() {
	for _, c := range s.Cylinders {
		rows := [][]string{show.FindingHead()}
		idle := len(c.Findings) - len(oversize.Deciding(c.Findings)) // a worn bore need not be a new one
		for i, f := range c.Findings {
			what := s.show.About(f)
			if i < idle {
				what += " (decides nothing)"
			}
			rows = append(rows, s.show.Finding(what, f.Finding, !f.NotMeasured))
		}
		if len(rows) == 1 {
			continue
		}
		if len(s.Cylinders) > 1 {
			s.heading("Cylinder %s", c.Name)
		}
		s.table(rows)
	}
	if len(s.part.Blocks) == 0 {
		s.add(page.Sentence("No limits were given."))
		return
	}
	s.add(page.Sentence(riskWords(s.Choice.Risk)))
	for _, c := range s.Cylinders {
		for i, f := range c.Findings {
			if r, ok := c.Remedies[i]; ok {
				s.add(page.Item{Text: fmt.Sprintf("cylinder %s, %s, if the value stays: %s.", c.Name, s.show.About(f), s.show.Remedy(r))})
			}
		}
	}
}

func riskWords(r uncertainty.Risk) string {
	return fmt.Sprintf("The last column is the chance that the true value conforms. Of 100 engines judged like this one, at most %.3g have a finding that decides, says within "+
		"and is wrong, and at most %.3g one that says beyond and is wrong, of what these readings can show. The risk is shared over cylinders, limits and "+
		"places, so a finding may look unlikely to conform and still be undecided.", 100*r.Accept, 100*r.Reject)
}

func (s *draft) route() {
	s.cleanUps()
	for i, c := range s.Choice.Cylinders {
		what := s.show.Route(c.Route, c.Over)
		switch {
		case c.Route != oversize.BoreOversize:
		case c.Shift > 0:
			what += ", worn centre"
		default:
			what += ", original centre"
		}
		if c.Work != "" {
			what += ", " + c.Work
		}
		if waiting(s.Job, s.Choice) && c.Route != oversize.Undecided {
			what = "waits for the others, with which it shares its size (by itself: " + what + ")"
		}
		s.say("Cylinder %s: %s", c.Name, what)
		for _, line := range s.refusals(i) {
			s.add(page.Item{Text: line + "."})
		}
		for _, k := range c.Cautions {
			s.add(page.Caution(k))
		}
	}
	for _, k := range s.Choice.Cautions {
		ofOne := func(c oversize.CylinderChoice) bool { return slices.Contains(c.Cautions, k) }
		if !slices.ContainsFunc(s.Choice.Cylinders, ofOne) { // else it has been said
			s.add(page.Caution(k))
		}
	}
}

// cleanUps says at what diameter no worn wall is left, on either centre.
func (s *draft) cleanUps() {
	if s.Choice.Route == oversize.MakersProcess {
		return
	}
	rows := [][]string{{"cylinder", "cleans up on the original centre", "on the worn centre", "which moves the axis by", "allowances in it"}}
	for _, c := range s.Cylinders {
		row := []string{c.Name, s.show.Interval(c.CleanUp.Original), s.show.Interval(c.CleanUp.Worn), s.show.Length(c.CleanUp.Shift), "–"}
		if c.CleanUp.Toward != 0 {
			row[3] += " towards " + show.Degrees(c.CleanUp.Toward)
		}
		if c.CleanUp.Extra != 0 {
			row[4] = s.show.Length(c.CleanUp.Extra)
		}
		rows = append(rows, row)
	}
	s.table(rows)
	s.drawLadder()
}

// refusals say what speaks against each cheaper route, a line each, in the units shown.
func (s *draft) refusals(cylinder int) (lines []string) {
	var against groups[string, *oversize.Refusal]
	refused := s.Choice.Cylinders[cylinder].Refused
	for k := range refused {
		r := &refused[k]
		route := s.show.Route(r.Route, r.Over)
		if r.Work != "" {
			route += ", " + r.Work
		}
		against.add(route, r)
	}
	for _, route := range against.keys {
		var findings groups[oversize.Reason, string]
		for _, r := range against.of[route] {
			findings.add(r.Reason, s.refusedBy(cylinder, r.Finding))
		}
		says := ""
		for _, reason := range findings.keys {
			of := ""
			for _, f := range findings.of[reason] {
				of = list(of, f)
			}
			if of != "" {
				of = " (" + of + ")"
			}
			says = list(says, reason.String()+of)
		}
		lines = append(lines, "not "+route+": "+says)
	}
	return lines
}

// refusedBy is the finding that a refusal rests on, "" where it rests on none.
func (s *draft) refusedBy(cylinder int, f uncertainty.Finding) string {
	if f.Limits.IsZero() {
		return ""
	}
	subject := f.Subject
	for _, own := range s.Cylinders[cylinder].Findings {
		if own.Subject == subject {
			subject = s.show.About(own)
		}
	}
	if f.Measured == (uncertainty.Estimate{}) {
		return subject
	}
	return fmt.Sprintf("%s %s, %s", subject, s.show.Estimate(f.Measured), s.show.Limits(f.Limits))
}

func (s *draft) finish() {
	rows := [][]string{{"cylinder", "finished bore", "aim", "bore to", "stock", "wall left"}}
	for i, c := range s.Choice.Cylinders {
		if c.Finish.IsZero() || c.Work == oversize.Deglaze || waiting(s.Job, s.Choice) {
			continue // deglazing works to no size
		}
		row := []string{c.Name, s.show.Limits(c.Finish), "–", "–", "–", "–"}
		if c.Aim != 0 {
			row[2] = s.show.Length(c.Aim)
			if c.Stock.Max != 0 { // of a sleeve its own section says what comes out
				row[4] = s.show.Length(c.Stock.Min) + " to " + s.show.Length(c.Stock.Max)
			}
		}
		if bored := cmp.Or(c.Bored, s.sleeveBored(i)); bored != 0 {
			row[3] = s.show.Stop(bored)
		}
		if c.WallLeft.Value != 0 {
			row[5] = s.show.Estimate(c.WallLeft)
		}
		rows = append(rows, row)
	}
	if len(rows) > 1 {
		s.table(rows)
		s.checks(notes.Boring)
		if h := s.Job.Engine.HoningAllowance; h != 0 {
			s.say("The hone has %s on the diameter, or a little more; %s to %s is usual.", s.show.Length(h), s.show.Length(oversize.UsualHoning().Min), s.show.Length(oversize.UsualHoning().Max))
		}
	}
	for _, c := range s.Cylinders {
		if len(c.Stock) == 0 || c.there() {
			continue
		}
		what := "step by step"
		if len(c.Seat) > 0 {
			what = "once its sleeve is in"
		}
		s.heading("Cylinder %s, %s", c.Name, what)
		s.add(s.steps(c.Stock, c.Warm))
		if len(c.Warm) > 0 {
			s.say("What the gauge then shows is its deviation from the setting standard,%s while the cylinder is that warm: for roughing alone. The last size is accepted only when all is at one temperature.", s.plus())
		}
	}
}

// steps is a row for each operation, with what the gauge shows of its end while the work is warm.
func (s *draft) steps(stock []oversize.Operation, warm []GaugeSize) page.Table {
	rows := [][]string{{"", "from", "to", "stock"}}
	if len(warm) > 0 {
		rows[0] = append(rows[0], "shows at "+s.show.Temperature(s.Job.Cuts.Warm))
	}
	rows[0] = append(rows[0], "cuts")
	for _, o := range stock {
		if o.Stock == 0 {
			rows = append(rows, []string{o.Kind})
			continue
		}
		row := []string{o.Kind, s.show.Length(o.Before), s.show.Length(o.After), s.show.Stock(o.Before, o.After)}
		for _, w := range warm {
			if w.Operation == o.Kind {
				row = append(row, show.Signed(s.show.Length(w.Shows)))
			}
		}
		row = append(row, make([]string, max(0, len(rows[0])-len(row)))...)
		cuts := &row[len(row)-1]
		if o.Passes > 0 {
			*cuts = fmt.Sprintf("%d × %s deep", o.Passes, s.show.Length(o.Depth))
		}
		if o.Time > 0 {
			*cuts += fmt.Sprintf(", %.1f min", o.Time.Minutes())
		}
		rows = append(rows, row)
	}
	return headed(rows)
}
