// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units/uncertainty"
)

// about says what a finding is about, in the units shown.
func about(p *page, f bore.Finding) string {
	switch {
	case f.NotMeasured:
		return f.Limit.String() + ", not measured"
	case f.Limit == bore.LimitOvality || f.Limit == bore.LimitTrueOvality:
		return f.Limit.String() + " at " + p.show.plain(f.Depth)
	case f.Between:
		return fmt.Sprintf("%s, as a difference from %s to %s, %s axis", f.Limit, p.show.plain(f.From), p.show.plain(f.To), bore.FormatAxis(f.Axis))
	case f.Limit == bore.LimitTaper:
		return f.Limit.String() + ", " + bore.FormatAxis(f.Axis) + " axis"
	}
	return f.Limit.String()
}

// findingRow is the row of one finding in a table.
func findingRow(p *page, cylinder, what string, f uncertainty.Finding, measured bool) []string {
	row := []string{cylinder, what, "–", p.show.limits(f.Limits), f.Verdict.String(), "–"}
	if measured {
		row[2], row[5] = p.show.estimate(f.Measured), percent(f.Conform)
	}
	return row
}

var findingHead = []string{"cylinder", "limit on", "measured", "allowed", "finding", "chance it conforms"}

func (s Sheet) findings(p *page) {
	p.title("FINDINGS against the maker's limits, along the axes and depths read")
	rows := [][]string{findingHead}
	for _, c := range s.Cylinders {
		idle := len(c.Findings) - len(oversize.Deciding(c.Findings)) // a worn bore need not be a new one
		for i, f := range c.Findings {
			what := about(p, f)
			if i < idle {
				what += " (decides nothing)"
			}
			rows = append(rows, findingRow(p, c.Name, what, f.Finding, !f.NotMeasured))
		}
	}
	if len(rows) == 1 {
		p.line("  No limits were given.")
		return
	}
	p.judged(rows)
	p.wrapped("  ", riskWords(s.Choice.Risk))
	for _, c := range s.Cylinders {
		for _, r := range c.Remedies {
			p.wrapped("    - ", fmt.Sprintf("cylinder %s, %s, if the value stays: %s.", c.Name, about(p, c.Findings[r.Finding]), r.Remedy.Format(p.show.units()[0])))
		}
	}
}

func riskWords(r uncertainty.Risk) string {
	return fmt.Sprintf("The chance that any finding of this engine that decides wrongly says within is at most %s, wrongly says beyond %s, of "+
		"what these readings can show. It is shared over cylinders, limits and places, so a finding may look unlikely to "+
		"conform and still be undecided.", percent(r.Accept), percent(r.Reject))
}

// percent prints a probability; what rounds to nothing or all is said to be near it.
func percent(x float64) string {
	switch {
	case x > 0 && x < 0.001, x == 0:
		return "< 0.1 %"
	case x > 0.999:
		return "> 99.9 %"
	}
	return fmt.Sprintf("%.1f %%", x*100)
}

func (s Sheet) route(p *page) {
	p.title("ROUTE: " + s.routeWords(p))
	s.cleanUps(p)
	for i, c := range s.Choice.Cylinders {
		what := c.Route.String()
		if c.Route == oversize.BoreOversize {
			what += " " + p.show.length(c.Over) + ", " + c.Centre.String()
		}
		if c.Work != oversize.NoHoning {
			what += ", " + c.Work.String()
		}
		if waiting(s.Job, s.Choice) && c.Route != oversize.Undecided {
			what = "waits for the others, with which it shares its size (by itself: " + what + ")"
		}
		p.line("  Cylinder %s: %s", c.Name, what)
		for _, r := range c.Refused {
			p.wrapped("    - ", "not "+s.refusal(p, i, r)+".")
		}
		for _, k := range c.Cautions {
			p.wrapped("    ! ", k.Text())
		}
	}
	for _, k := range s.Choice.Cautions {
		ofOne := func(c oversize.CylinderChoice) bool { return slices.Contains(c.Cautions, k) }
		if !slices.ContainsFunc(s.Choice.Cylinders, ofOne) { // else it has been said
			p.wrapped("  ! ", k.Text())
		}
	}
}

// cleanUps says at what diameter no worn wall is left, on either centre.
func (s Sheet) cleanUps(p *page) {
	if s.Choice.Route == oversize.MakersProcess {
		return
	}
	rows := [][]string{{"cylinder", "cleans up on the original centre", "on the worn centre", "which moves the axis by", "allowances in it"}}
	for _, c := range s.Cylinders {
		row := []string{c.Name, interval(p, c.CleanUp.Original), interval(p, c.CleanUp.Worn), p.show.length(c.CleanUp.Shift), "–"}
		if c.CleanUp.Extra != 0 {
			row[4] = p.show.length(c.CleanUp.Extra)
		}
		rows = append(rows, row)
	}
	p.table(rows)
}

// interval prints a size that is known only to lie between two.
func interval(p *page, i bore.Interval) string {
	if i.Least == i.Greatest {
		return p.show.estimate(i.Least)
	}
	return p.show.length(i.Least.Value) + " to " + p.show.estimate(i.Greatest)
}

// refusal says why a cheaper route was refused, in the units shown.
func (s Sheet) refusal(p *page, cylinder int, r oversize.Refusal) string {
	text := r.Route.String()
	if r.Route == oversize.BoreOversize && r.Over != 0 { // of a wall that forbids boring every size is refused
		text += " " + p.show.length(r.Over)
	}
	if r.Work != oversize.NoHoning {
		text += ", " + r.Work.String()
	}
	text += ": " + r.Reason.String()
	if r.Finding.Limits.IsZero() {
		return text
	}
	subject := r.Finding.Subject
	for _, f := range s.Cylinders[cylinder].Findings {
		if f.Subject == subject {
			subject = about(p, f)
		}
	}
	if r.Finding.Measured == (uncertainty.Estimate{}) {
		return text + " (" + subject + ")"
	}
	return fmt.Sprintf("%s (%s %s, %s)", text, subject, p.show.estimate(r.Finding.Measured), p.show.limits(r.Finding.Limits))
}

func (s Sheet) finish(p *page) {
	rows := [][]string{{"cylinder", "finished bore", "aim", "bore to", "stock on diameter", "wall left"}}
	for _, c := range s.Choice.Cylinders {
		if c.Finish.IsZero() || c.Work == oversize.Deglaze || waiting(s.Job, s.Choice) {
			continue // deglazing works to no size
		}
		row := []string{c.Name, p.show.limits(c.Finish), "–", "–", "–", "–"}
		if c.Aim != 0 {
			row[2] = p.show.length(c.Aim)
			row[4] = p.show.length(c.LeastStock) + " to " + p.show.length(c.MostStock)
		}
		if c.Bored != 0 {
			row[3] = p.show.length(c.Bored)
		}
		if c.WallLeft.Value != 0 {
			row[5] = p.show.estimate(c.WallLeft)
		}
		rows = append(rows, row)
	}
	if len(rows) > 1 {
		p.title("FINISH SIZES at 20 °C")
		p.table(rows)
		s.checks(p, Boring)
		if h := s.Job.Engine.HoningAllowance; h != 0 {
			p.line("  The hone has %s on the diameter; %s to %s is usual.", p.show.length(h), p.show.length(oversize.LeastHoning), p.show.length(oversize.MostHoning))
		}
	}
	for _, c := range s.Cylinders {
		if len(c.Stock) == 0 {
			continue
		}
		rows := [][]string{{"cylinder " + c.Name, "from", "to", "stock on diameter", ""}}
		if len(c.Warm) > 0 {
			rows[0][4] = "gauge shows at " + p.show.temperature(s.Job.Cuts.Warm)
		}
		for _, o := range c.Stock {
			row := []string{o.Kind.String(), p.show.length(o.Before), p.show.length(o.After), p.show.length(o.Stock), ""}
			for _, w := range c.Warm {
				if w.Operation == o.Kind {
					row[4] = signed(p.show.length(w.Shows)) + "  "
				}
			}
			if o.Passes > 0 {
				row[4] += fmt.Sprintf("%d × %s deep", o.Passes, p.show.length(o.Depth))
			}
			if o.Time > 0 {
				row[4] += fmt.Sprintf(", %.1f min", o.Time.Minutes())
			}
			if o.Stock == 0 {
				row[1], row[2], row[3], row[4] = "", "", "", ""
			}
			rows = append(rows, row)
		}
		p.table(rows)
		if len(c.Warm) > 0 {
			p.wrapped("  ", "What the gauge shows is its deviation from the setting standard while the cylinder is that warm: for roughing alone. The last size is accepted only when all is at one temperature.")
		}
	}
}

// signed puts a plus before what has no sign.
func signed(s string) string {
	if strings.HasPrefix(s, "-") {
		return s
	}
	return "+" + s
}
