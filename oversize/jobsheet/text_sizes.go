// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

func (s *draft) sizes() {
	read, _, _ := s.Job.taken(false)
	s.gaugeLine(s.Job.Gauge, read)
	if v := s.Study; v != nil {
		text := fmt.Sprintf("By %d trials one reading of this gauge scatters by %s, one standard deviation", v.Trials, s.show.Length(v.Repeatability.Std))
		if two, err := v.Doubt(study.Differences, 1); err == nil {
			if u, err := two.Expanded(0.95); err == nil {
				text += fmt.Sprintf("; two places are told apart from ± %s on", s.show.Length(u))
			}
		}
		s.add(page.Sentence(text + "."))
		if r := v.Reproducibility; r.Std > 0 {
			s.say("Between persons it differs by %s more: that is not in the findings, so let one person read.", s.show.Length(r.Std))
		}
	}
	alike := len(s.Cylinders) > 1 && !slices.ContainsFunc(s.Cylinders, func(c CylinderSheet) bool { return !slices.Equal(c.Bore.Unseen, s.Cylinders[0].Bore.Unseen) })
	for i, c := range s.Cylinders {
		s.heading("Cylinder %s", c.Name)
		s.geometry(c.Bore)
		s.drawBore(c.Bore, s.marks(i))
		s.formText(c.Form)
		if t := c.FeelerTaper; t != (uncertainty.Estimate{}) {
			s.say("By the ring and feeler gauge the bore is %s larger above than below; it decides no size.", s.show.Estimate(t))
		}
		switch {
		case !alike:
			s.blind("These readings cannot show:", c.Bore)
		case i == len(s.Cylinders)-1:
			s.blind("Of no cylinder can these readings show:", c.Bore)
		}
		for _, k := range c.Coarse {
			s.add(page.Caution(fmt.Sprintf("The gauge is coarse for the limit on %v: a doubt of ± %s against %s allowed.", k.Limit, s.show.Length(k.Expanded), s.show.Length(k.Allowed))))
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
		text = fmt.Sprintf("%v gauge, reading to %s", g.kind(), s.show.Plain(g.Resolution))
	}
	if g.Standard != (Standard{}) {
		text += ", set on " + cmp.Or(g.Standard.Name, "a standard") + " of " + s.show.Length(g.Standard.Size.Value)
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
			at = append(at, t.what+" at "+s.show.Within(t.at))
		}
	}
	s.add(page.Sentence(strings.ToUpper(text[:1]) + text[1:] + "; " + strings.Join(at, ", ") + "."))
}

// geometry prints the sizes and the form of one bore.
func (s *draft) geometry(g bore.Geometry) {
	for _, in := range s.show.Units() {
		rows, each := in.Sizes(g)
		s.table(rows)
		s.sentence(each)
	}
	rows, of := s.show.Figures(g)
	s.sentence(of)
	s.add(facts(rows))
}
