// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

func (s *draft) sizes() {
	read, _, _ := s.Job.taken(false)
	s.gaugeLine(s.Job.Gauge, read)
	if v := s.Study; v != nil {
		text := fmt.Sprintf("By %d trials one reading of this gauge scatters by %s, one standard deviation", v.Trials, s.show.length(v.Repeatability.Std))
		if two, err := v.Doubt(study.Differences, 1); err == nil {
			if u, err := two.Expanded(0.95); err == nil {
				text += fmt.Sprintf("; two places are told apart from ± %s on", s.show.length(u))
			}
		}
		s.add(page.Sentence(text + "."))
		if r := v.Reproducibility; r.Std > 0 {
			s.say("Between persons it differs by %s more: that is not in the findings, so let one person read.", s.show.length(r.Std))
		}
	}
	alike := len(s.Cylinders) > 1 && !slices.ContainsFunc(s.Cylinders, func(c CylinderSheet) bool { return !slices.Equal(c.Bore.Unseen, s.Cylinders[0].Bore.Unseen) })
	for i, c := range s.Cylinders {
		s.heading("Cylinder %s", c.Name)
		s.geometry(c.Bore)
		s.drawBore(c.Bore, s.marks(i))
		s.formText(c.Form)
		if t := c.FeelerTaper; t != (uncertainty.Estimate{}) {
			s.say("By the ring and feeler gauge the bore is %s larger above than below; it decides no size.", s.show.estimate(t))
		}
		switch {
		case !alike:
			s.blind("These readings cannot show:", c.Bore)
		case i == len(s.Cylinders)-1:
			s.blind("Of no cylinder can these readings show:", c.Bore)
		}
		for _, k := range c.Coarse {
			s.add(page.Caution(fmt.Sprintf("The gauge is coarse for the limit on %v: a doubt of ± %s against %s allowed.", k.Limit, s.show.length(k.Expanded), s.show.length(k.Allowed))))
		}
	}
}

// blind lists what readings cannot show of a bore.
func (s *draft) blind(head string, g bore.Geometry) {
	s.add(page.Sentence(head))
	for _, u := range g.Unseen {
		s.add(page.Item{Text: u.String() + "."})
	}
}

// gaugeLine says what was read with, and how warm everything was. Where nothing was read there are traces.
func (s *draft) gaugeLine(g Gauge, read bool) {
	text := "spindle"
	if read {
		text = fmt.Sprintf("%v gauge, reading to %s", g.kind(), s.show.plain(g.Resolution))
	}
	if g.Standard != (Standard{}) {
		text += ", set on " + cmp.Or(g.Standard.Name, "a standard") + " of " + s.show.length(g.Standard.Size.Value)
	}
	if g.SetOn != "" {
		text += " on " + g.SetOn
	}
	var at []string
	for _, t := range []struct {
		what string
		at   bore.Temperature
	}{
		{"standard", g.Temperatures.Standard}, {"gauge when set", g.Temperatures.GaugeSet},
		{"gauge when used", g.Temperatures.GaugeUsed}, {"cylinder", g.Temperatures.Cylinder},
	} {
		if t.at != (bore.Temperature{}) {
			at = append(at, t.what+" at "+s.show.within(t.at))
		}
	}
	s.add(page.Sentence(strings.ToUpper(text[:1]) + text[1:] + "; " + strings.Join(at, ", ") + "."))
}

// geometry prints the sizes and the form of one bore.
func (s *draft) geometry(g bore.Geometry) {
	for _, unit := range s.show.units() {
		rows := sizeTable(g, unit)
		last := len(rows[0]) - 1
		var each []string
		for _, of := range []struct {
			what     string
			from, to int
		}{{"size", 1, last}, {"ovality", last, last + 1}} {
			if doubt := alikeDoubt(rows[1:], of.from, of.to); doubt != "" {
				each = append(each, "each "+of.what+" ± "+doubt)
			}
		}
		s.table(rows)
		if text := strings.Join(each, ", "); text != "" {
			s.add(page.Sentence(strings.ToUpper(text[:1]) + text[1:] + "."))
		}
	}
	if axes := axesOf(toRead(places(g))); len(axesPrinted(axes)) < len(axes) {
		s.say("Four of %d axes are printed; the figures below are of all.", len(axes))
	}
	rows := [][]string{{"largest", s.show.estimate(g.Largest.Size), fmt.Sprintf("at %s, %s", s.show.plain(g.Largest.Depth), g.Largest.Axis.String())}}
	if g.HasOvality {
		where := "at " + s.show.plain(g.OvalityAt)
		for _, plane := range g.Planes {
			if plane.Depth == g.OvalityAt && plane.TwoLobe != (bore.Lobes{}) && standsOut(g.Ovality) {
				where += fmt.Sprintf("; as two lobes through all axes, largest about %s from thrust", degrees(plane.TwoLobe.Axis))
			}
		}
		rows = append(rows, []string{"ovality", s.show.estimate(g.Ovality), where})
	}
	if len(g.Tapers) > 0 {
		rows = append(rows, []string{"taper", s.show.estimate(g.Taper.Size), taperWords(s.show, g.Taper)})
	}
	rows = append(rows, []string{"greatest minus least", s.show.estimate(g.Spread), ""})
	if g.Ridge != (uncertainty.Estimate{}) {
		words := "at the top of ring travel, lost in the doubt"
		if g.HasRidge {
			words = "at the top of ring travel, on the diameter"
		}
		rows = append(rows, []string{"ridge", s.show.estimate(g.Ridge), words})
	}
	if g.Shape != bore.ShapeUnknown {
		rows = append(rows, []string{"shape", g.Shape.String(), ""})
	}
	s.add(facts(rows))
}

// sizeTable has a row for each depth and a column for each axis.
func sizeTable(g bore.Geometry, unit units.Length) [][]string {
	planes := slices.Concat(g.Planes, g.Bridges)
	slices.SortStableFunc(planes, func(a, b bore.Plane) int { return cmp.Compare(a.Depth, b.Depth) })
	axes := axesPrinted(axesOf(toRead(places(g))))
	rows := [][]string{append(depthHead(axes), "ovality")}
	for _, plane := range planes {
		row := []string{plainIn(plane.Depth, unit)}
		for _, a := range axes {
			cell := "–"
			for _, q := range plane.Places {
				if q.Axis == a {
					cell = estimateIn(q.Size, unit, placesFor(unit), 3)
				}
			}
			row = append(row, cell)
		}
		cell := "–"
		if plane.HasOvality {
			cell = estimateIn(plane.Ovality, unit, placesFor(unit), 3)
		}
		if slices.ContainsFunc(g.Bridges, func(b bore.Plane) bool { return b.Depth == plane.Depth }) {
			cell = "between ports"
		}
		rows = append(rows, append(row, cell))
	}
	return rows
}

// alikeDoubt returns the doubt that every cell of some columns prints, with its unit, and takes it off them; "" where
// they differ, or there are none.
func alikeDoubt(rows [][]string, from, to int) (doubt string) {
	for _, row := range rows {
		for _, cell := range row[from:to] {
			_, after, ok := strings.Cut(cell, " ± ")
			if ok && after != cmp.Or(doubt, after) {
				return ""
			}
			doubt = cmp.Or(doubt, after)
		}
	}
	for _, row := range rows {
		for i := from; i < to; i++ {
			row[i], _, _ = strings.Cut(row[i], " ± ")
		}
	}
	return doubt
}

func degrees(a units.Angle) string { return fmt.Sprintf("%.0f°", a.In(units.Degree)) }

// standsOut reports whether a difference is larger than its expanded uncertainty.
func standsOut(e uncertainty.Estimate) bool {
	u, err := e.Expanded(0.95)
	return err != nil || e.Value.Abs() > u
}

func taperWords(show Shown, t bore.Taper) string {
	end := "larger at the deck"
	if !standsOut(t.Size) {
		end = "none that stands out of the doubt"
	} else if t.Size.Value < 0 {
		end = "smaller at the deck: worn the other way, or choked on purpose"
	}
	return fmt.Sprintf("%s axis, %s to %s, %s", t.Axis.String(), show.plain(t.From), show.plain(t.To), end)
}

// blankTable has a row for each depth of the places, a column for each axis, and room to write.
func blankTable(depth func(units.Length) string, places []bore.Reading) [][]string {
	axes := axesPrinted(axesOf(places))
	rows := [][]string{depthHead(axes)}
	for n, r := range places {
		if n > 0 && places[n-1].Depth == r.Depth {
			continue
		}
		if d := depth(r.Depth); rows[len(rows)-1][0] != d {
			row := make([]string, len(axes)+1)
			row[0] = d
			for i, a := range axes {
				row[i+1] = "–"
				if slices.ContainsFunc(places, func(q bore.Reading) bool { return q.Depth == r.Depth && q.Axis == a }) {
					row[i+1] = page.Blank
				}
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// depthHead is the head of a table with a row for each depth and a column for each axis.
func depthHead(axes []bore.Axis) []string {
	head := []string{"depth"}
	for _, a := range axes {
		head = append(head, a.String())
	}
	return head
}
