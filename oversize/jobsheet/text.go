// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"io"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// doNotReassemble stands wherever the sheet is undecided.
const doNotReassemble = "UNDECIDED: do not reassemble on this."

// WriteText writes the sheet for a person at a bench: the verdict first, then the work in its
// order. An error is the writer's.
func (s Sheet) WriteText(w io.Writer) error {
	p := &page{show: s.Job.Units}
	s.head(p)
	s.sizes(p)
	s.findings(p)
	s.route(p)
	s.finish(p)
	s.sleeve(p)
	s.crosshatch(p)
	s.rings(p)
	s.capacity(p)
	s.end(p)
	_, err := w.Write(p.Bytes())
	return err
}

func (s Sheet) head(p *page) {
	e := s.Job.Engine
	p.line("JOB SHEET")
	if s.Job.Title != "" {
		p.line("%s", s.Job.Title)
	}
	p.line("%d × bore %s, stroke %s, %v, %v", e.Cylinders, p.show.length(e.Bore), p.show.length(e.Stroke), e.Cycle, e.Wall)
	p.line("\nROUTE: %s", s.routeWords(p))
	if s.Undecided() {
		p.line(doNotReassemble)
	}
	for _, a := range s.Assumed {
		p.line("Assumed: %s.", a)
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
		return "the maker's own process, neither bored nor honed here"
	}
	return c.Route.String()
}

func (s Sheet) sizes(p *page) {
	p.title("SIZES AT 20 °C (± expanded uncertainty, 95 %)")
	for _, c := range s.Cylinders {
		p.line("\n  Cylinder %s", c.Name)
		for _, unit := range p.show.units() {
			p.table(sizeTable(c.Bore, unit))
		}
		g := c.Bore
		rows := [][]string{{"largest", p.show.estimate(g.Largest.Size), fmt.Sprintf("at %s, %s", p.show.plain(g.Largest.Depth), bore.FormatAxis(g.Largest.Axis))}}
		if g.HasOvality {
			where := "at " + p.show.plain(g.OvalityAt)
			for _, plane := range g.Planes {
				if plane.Depth == g.OvalityAt && !plane.TwoLobe.IsZero() {
					where += fmt.Sprintf("; a two-lobed form through all axes is longest at %s from thrust", degrees(plane.TwoLobe.Axis))
				}
			}
			rows = append(rows, []string{"ovality", p.show.estimate(g.Ovality), where})
		}
		if g.HasTaper() {
			rows = append(rows, []string{"taper", p.show.estimate(g.Taper.Size), taperWords(p, g.Taper)})
		}
		rows = append(rows, []string{"greatest less least", p.show.estimate(g.Spread), ""})
		for _, k := range c.Clearances {
			rows = append(rows, []string{k.What + " piston clearance", p.show.estimate(k.Size), "with the piston in hand"})
		}
		if g.Shape != bore.ShapeUnknown {
			rows = append(rows, []string{"shape", g.Shape.String(), ""})
		}
		p.table(rows)
		p.line("  These readings cannot show:")
		for _, u := range g.Unseen {
			p.wrapped("    - ", u.String()+".")
		}
	}
}

// sizeTable has a row for each depth and a column for each axis.
func sizeTable(g bore.Geometry, unit units.Length) [][]string {
	var axes []units.Angle
	for _, plane := range g.Planes {
		for _, q := range plane.Places {
			if !contains(axes, q.Axis) {
				axes = append(axes, q.Axis)
			}
		}
	}
	head := []string{"depth"}
	for _, a := range axes {
		head = append(head, bore.FormatAxis(a))
	}
	rows := [][]string{append(head, "ovality")}
	for _, plane := range g.Planes {
		row := []string{plainIn(plane.Depth, unit)}
		for _, a := range axes {
			cell := "–"
			for _, q := range plane.Places {
				if q.Axis == a {
					cell = q.Size.Format(unit)
				}
			}
			row = append(row, cell)
		}
		cell := "–"
		if plane.HasOvality {
			cell = plane.Ovality.Format(unit)
		}
		rows = append(rows, append(row, cell))
	}
	return rows
}

func contains(axes []units.Angle, a units.Angle) bool {
	for _, b := range axes {
		if a == b {
			return true
		}
	}
	return false
}

func degrees(a units.Angle) string { return fmt.Sprintf("%.0f°", a.In(units.Degree)) }

func taperWords(p *page, t bore.Taper) string {
	end := "larger at the deck"
	if u, err := t.Size.Expanded(0.95); err == nil && t.Size.Value.Abs() <= u {
		end = "none that stands out of the doubt"
	} else if t.Size.Value < 0 {
		end = "smaller at the deck: worn the other way, or choked on purpose"
	}
	return fmt.Sprintf("%s axis, %s to %s, %s", bore.FormatAxis(t.Axis), p.show.plain(t.From), p.show.plain(t.To), end)
}

func (s Sheet) findings(p *page) {
	p.title("FINDINGS against the maker's limits, along the axes and depths read")
	rows := [][]string{{"cylinder", "limit on", "measured", "allowed", "finding", "chance it conforms"}}
	undecided, asNew := false, false
	for _, c := range s.Cylinders {
		idle := len(c.Findings) - len(oversize.Deciding(c.Findings)) // a worn bore need not be a new one
		for i, f := range c.Findings {
			row := []string{c.Name, f.Subject, "–", p.show.limits(f.Limits), f.Verdict.String(), "–"}
			if !f.NotMeasured {
				row[2], row[5] = p.show.estimate(f.Measured), percent(f.Conform)
			}
			if i < idle {
				row[1] += " (decides nothing)"
			}
			rows = append(rows, row)
			if f.Verdict == uncertainty.Undecided {
				undecided, asNew = undecided || i >= idle, asNew || i < idle
			}
		}
	}
	if len(rows) == 1 {
		p.line("  No limits were given.")
		return
	}
	p.table(rows)
	r := s.Choice.Risk
	p.wrapped("  ", fmt.Sprintf("The chance that any finding of this engine wrongly says within is at most %s, wrongly says beyond %s, of "+
		"what these readings can show. It is shared over cylinders, limits and places, so a finding may look unlikely to "+
		"conform and still be undecided.", percent(r.Accept), percent(r.Reject)))
	switch {
	case undecided:
		p.line("  " + doNotReassemble)
	case asNew:
		p.line("  UNDECIDED whether the bore is a new one: do not reassemble on this as if it were.")
	}
	for _, c := range s.Cylinders {
		for _, r := range c.Remedies {
			p.wrapped("    - ", fmt.Sprintf("cylinder %s, %s, if the value stays: %v.", c.Name, r.Subject, r.Remedy))
		}
	}
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
	for _, c := range s.Choice.Cylinders {
		what := c.Route.String()
		if c.Route == oversize.BoreOversize {
			what += " " + p.show.length(c.Over) + ", " + c.Centre.String()
		}
		if c.Work != oversize.NoHoning {
			what += ", " + c.Work.String()
		}
		if s.waiting() && c.Route != oversize.Undecided {
			what = "waits for the others, with which it shares its size (by itself: " + what + ")"
		}
		p.line("  Cylinder %s: %s", c.Name, what)
		for _, r := range c.Refused {
			p.wrapped("    - ", "not "+refusal(p, r)+".")
		}
	}
	for _, k := range s.Choice.Cautions {
		p.wrapped("  ! ", k.Text())
	}
}

// refusal says why a cheaper route was refused, in the units shown.
func refusal(p *page, r oversize.Refusal) string {
	text := r.Route.String()
	if r.Route == oversize.BoreOversize {
		text += " " + p.show.length(r.Over)
	}
	if r.Work != oversize.NoHoning {
		text += ", " + r.Work.String()
	}
	text += ": " + r.Reason.String()
	switch f := r.Finding; {
	case f.Limits.IsZero():
		return text
	case f.Measured == uncertainty.Estimate{}:
		return text + " (" + f.Subject + ")"
	default:
		return fmt.Sprintf("%s (%s %s, %s)", text, f.Subject, p.show.estimate(f.Measured), p.show.limits(f.Limits))
	}
}

func (s Sheet) finish(p *page) {
	rows := [][]string{{"cylinder", "finished bore", "aim", "bore to", "stock on diameter", "wall left"}}
	for _, c := range s.Choice.Cylinders {
		if c.Finish.IsZero() || c.Work == oversize.Deglaze || s.waiting() {
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
	}
	for _, c := range s.Cylinders {
		if len(c.Stock) == 0 {
			continue
		}
		rows := [][]string{{"cylinder " + c.Name, "from", "to", "stock on diameter", ""}}
		for _, o := range c.Stock {
			row := []string{o.Kind.String(), p.show.length(o.Before), p.show.length(o.After), p.show.length(o.Stock), ""}
			if o.Passes > 0 {
				row[4] = fmt.Sprintf("%d × %s deep", o.Passes, p.show.length(o.Depth))
			}
			if o.Time > 0 {
				row[4] += fmt.Sprintf(", %.1f min", o.Time.Minutes())
			}
			if o.Stock == 0 {
				row[1], row[2], row[3] = "", "", ""
			}
			rows = append(rows, row)
		}
		p.table(rows)
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
	if s.Job.Engine.Cycle == TwoStroke {
		p.line("  The ratio is over the full stroke, not from where the exhaust port closes.")
	}
}

func (s Sheet) end(p *page) {
	p.title("CHECKLIST")
	for _, c := range s.Checklist {
		p.wrapped("  [ ] ", c)
	}
	p.title("CAUTIONS")
	last := Operation(-1)
	for _, c := range s.Cautions {
		if c.Operation != last {
			p.line("  %s", c.Operation)
			last = c.Operation
		}
		p.wrapped("    - ", c.Text)
	}
	for _, o := range s.Omitted {
		p.wrapped("  Left out: ", o.Part+": "+o.Why+".")
	}
}
