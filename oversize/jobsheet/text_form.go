// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"

	"borewright.example/bore/form"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
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
		row := []string{s.show.Plain(t.Depth), s.show.Length(t.Mean), s.show.Estimate(t.Roundness)}
		for _, h := range t.Lobes {
			if h.Order <= orders {
				row = append(row, s.show.Finer(h.Amplitude))
			}
		}
		rows = append(rows, row)
		searched = searched || t.Circle.Certificate.Searched
	}
	s.table(rows)
	if len(f.Traces) > 1 {
		whole := [][]string{{"cylindricity", s.show.Estimate(f.Cylindricity), show.Cylinder(f.Cylinder.Certificate, f.Cylindricity.Std)}}
		if f.Taper != (uncertainty.Estimate{}) {
			whole = append(whole, []string{"taper of the wall", s.show.Estimate(f.Taper), s.show.Cone(f.Cone, f.Taper)})
		}
		s.add(facts(append(whole, []string{"bend of the axis", s.show.Estimate(f.Bend), s.show.Bend(f.Median, f.Bend)})))
	}
	how := "proved by its contacts"
	if searched {
		how = "proved by its contacts, or by search where they do not suffice"
	}
	s.say("Mean diameters are local sizes, by least squares in each section. Roundness is RONt of the minimum zone, radial, %s. Lobes are radial amplitudes; finer ones than these are in the roundness as far as points met them.", how)
	for _, u := range f.Unseen {
		s.add(page.Caution("No trace shows " + show.NoTrace(u) + "."))
	}
	s.drawTrace(f)
}

// lobesShown is the highest order of lobes that every trace carries, 5 at most: what is higher is a row too wide.
func (f *WallForm) lobesShown() int {
	most := 5
	for _, t := range f.Traces {
		most = min(most, len(t.Lobes)+1)
	}
	return most
}

// spindleWords says what the traces were taken with.
func (s *draft) spindleWords() string {
	v := s.Job.Gauge.Spindle
	text := "the indicator set on no standard, so that they hold form and no size"
	if v.OnStandard {
		text = "the indicator set on the standard"
	}
	if v.Repeatability != 0 {
		text += ", one radius scattering by " + s.show.Plain(v.Repeatability)
	}
	if v.Error != 0 {
		text += ", off by " + s.show.Plain(v.Error) + " at most"
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
	p, err := picture.Trace(t, s.show.First())
	p.Title = "The wall at " + show.In{s.show.First()}.Plain(worst.Depth) + ", least round, and its four circles"
	s.draw(p, err)
}

// rows are the findings of roundness and cylindricity, for their table.
func (f *WallForm) rows(in show.In) (rows [][]string) {
	if f == nil {
		return nil
	}
	for _, found := range f.Findings {
		rows = append(rows, in.Finding(found.Subject, found, true))
	}
	return rows
}
