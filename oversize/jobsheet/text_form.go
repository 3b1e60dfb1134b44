// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// formText prints what the traces of a bore show, where there are any.
func (s *draft) formText(f *WallForm) {
	if f == nil {
		return
	}
	s.add(page.Sentence("By traces, " + s.spindleWords() + ":"))
	orders := f.lobesShown()
	head := []string{"depth", "mean diameter", "roundness"}
	for order := 2; order <= orders; order++ {
		head = append(head, fmt.Sprintf("%d lobes", order))
	}
	rows := [][]string{head}
	searched := false
	for _, t := range f.Traces {
		row := []string{s.show.plain(t.Depth), s.show.length(t.Mean), s.show.estimate(t.Roundness)}
		for _, h := range t.Lobes {
			if h.Order <= orders {
				row = append(row, s.show.finer(h.Amplitude))
			}
		}
		rows = append(rows, row)
		searched = searched || t.Circle.Certificate.Searched
	}
	s.table(rows)
	if len(f.Traces) > 1 {
		whole := [][]string{{"cylindricity", s.show.estimate(f.Cylindricity), f.cylinderWords()}}
		if f.Taper != (uncertainty.Estimate{}) {
			whole = append(whole, []string{"taper of the wall", s.show.estimate(f.Taper), f.coneWords(s.show)})
		}
		s.add(facts(append(whole, []string{"bend of the axis", s.show.estimate(f.Bend), f.bendWords(s.show)})))
	}
	how := "proved by its contacts"
	if searched {
		how = "proved by its contacts, or by search where they do not suffice"
	}
	s.say("Mean diameters are local sizes, by least squares in each section. Roundness is RONt of the minimum zone, radial, %s. Lobes are radial amplitudes; finer ones than these are in the roundness as far as points met them.", how)
	for _, u := range f.Unseen {
		s.add(page.Caution("No trace shows " + noTrace(u) + "."))
	}
	s.drawTrace(f)
}

// noTrace says what traces do not show.
func noTrace(u bore.Unseen) string {
	if u == bore.UnseenOddLobes {
		return "three lobes: they want more points round the bore"
	}
	return u.String()
}

// lobesShown is the highest order of lobes that every trace carries, 5 at most: what is higher is a row too wide.
func (f *WallForm) lobesShown() int {
	most := 5
	for _, t := range f.Traces {
		most = min(most, len(t.Lobes)+1)
	}
	return most
}

func (f *WallForm) cylinderWords() string {
	c := f.Cylinder.Certificate
	text := fmt.Sprintf("CYLt of the minimum zone, carried by %d points", len(c.Contacts()))
	switch {
	case !c.Searched:
		return text + ": proved"
	case c.Bound < f.Cylindricity.Std:
		return text + ": proved but for less than its doubt"
	}
	return text + ": found by search, not proved"
}

// coneWords says how a wall tapers: between which depths, which way, and the full angle of its cone.
func (f *WallForm) coneWords(show Shown) string {
	axis := f.Cone.Axis
	text := fmt.Sprintf("on the diameter, of the least-squares cone, %s to %s", show.plain(axis.From.Depth), show.plain(axis.To.Depth))
	if !standsOut(f.Taper) {
		return text + ": none that stands out of the doubt"
	}
	end := "larger at the deck"
	if f.Taper.Value < 0 {
		end = "smaller at the deck, as a choke is"
	}
	return fmt.Sprintf("%s: %s, full angle %.2g°", text, end, f.Cone.Angle.In(units.Degree))
}

func (f *WallForm) bendWords(show Shown) string {
	if !standsOut(f.Bend) {
		return "none that stands out of the doubt"
	}
	return fmt.Sprintf("at %s, towards %s from thrust", show.plain(f.Median.BendAt), degrees(f.Median.Toward))
}

// spindleWords says what the traces were taken with.
func (s *draft) spindleWords() string {
	v := s.Job.Gauge.Spindle
	text := "the indicator set on no standard, so that they hold form and no size"
	if v.OnStandard {
		text = "the indicator set on the standard"
	}
	if v.Repeatability != 0 {
		text += ", one radius scattering by " + s.show.plain(v.Repeatability)
	}
	if v.Error != 0 {
		text += ", off by " + s.show.plain(v.Error) + " at most"
	}
	return text
}

// leastRound is the trace whose roundness decides; the zero one where there is none.
func (f *WallForm) leastRound() TraceForm {
	if len(f.Traces) == 0 {
		return TraceForm{}
	}
	return slices.MaxFunc(f.Traces, func(a, b TraceForm) int { return cmp.Compare(a.Roundness.Value, b.Roundness.Value) })
}

// drawTrace draws the trace that is least round.
func (s *draft) drawTrace(f *WallForm) {
	if !s.pictures {
		return
	}
	worst := f.leastRound()
	t, err := form.FromRadii(worst.Radii)
	if err != nil {
		return
	}
	p, err := picture.Trace(t, s.unit())
	p.Title = "The wall at " + plainIn(worst.Depth, s.unit()) + ", least round, and its four circles"
	s.draw(p, err)
}

// rows are the findings of roundness and cylindricity, for their table.
func (f *WallForm) rows(show Shown) (rows [][]string) {
	if f == nil {
		return nil
	}
	for _, found := range f.Findings {
		rows = append(rows, findingRow(show, found.Subject, found, true))
	}
	return rows
}

// mostAxes is along how many axes sizes are printed: of a trace there are more.
const mostAxes = 6

// printed returns the places along those axes that are printed.
func printed(rs []bore.Reading) []bore.Reading {
	axes := axesPrinted(axesOf(rs))
	return slices.DeleteFunc(rs, func(r bore.Reading) bool { return !slices.Contains(axes, r.Axis) })
}

// along returns a bore with the places along some axes alone, and the largest and the smallest of each depth.
func along(g bore.Geometry, axes []bore.Axis) bore.Geometry {
	g.Planes = slices.Clone(g.Planes)
	for i, p := range g.Planes {
		most, least := p.Largest().Axis, p.Smallest().Axis
		g.Planes[i].Places = slices.DeleteFunc(slices.Clone(p.Places), func(q bore.Place) bool {
			return !slices.Contains(axes, q.Axis) && q.Axis != most && q.Axis != least
		})
	}
	return g
}

// axesPrinted returns those of the axes that are printed: of many, the four that are nearest to eighths of a turn.
func axesPrinted(axes []bore.Axis) []bore.Axis {
	if len(axes) <= mostAxes {
		return axes
	}
	var few []bore.Axis
	for i := range 4 {
		eighth := bore.Axis(45*units.Degree) * bore.Axis(i)
		few = append(few, slices.MinFunc(axes, func(a, b bore.Axis) int {
			return cmp.Compare(max(a-eighth, eighth-a), max(b-eighth, eighth-b))
		}))
	}
	return slices.Compact(few)
}
