// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units/uncertainty"
)

// A single is a reading of a place that was read once, without which nothing says that its bore is past a limit.
type single struct {
	cylinder, number int
	without          readBore // the bore by the others
}

// singles returns those of a cylinder.
func (s *slipper) singles(i int, read readBore) (list []single) {
	c, beyond := s.job.Cylinders[i], pastLimits(read.findings)
	if len(beyond) == 0 || c.bored() || c.reread() { // the bore that was read is gone
		return nil
	}
	for k, r := range c.Readings {
		others := c
		others.Readings = slices.DeleteFunc(slices.Clone(c.Readings), func(q Reading) bool { return q.place() == r.place() })
		stays := func(f bore.Finding) bool { return !hangsOn(f, read.bore, r) }
		if r.Confirmed || len(c.Readings)-len(others.Readings) > 1 || slices.ContainsFunc(beyond, stays) {
			continue
		}
		if without, err := s.job.readBore(others); err != nil || len(pastLimits(without.findings)) == 0 {
			list = append(list, single{i, k, without})
		}
	}
	return list
}

// alone asks for a second look at singles where the engine would go another way without those of any cylinder: one wrong digit
// there would cost it.
func (s *slipper) alone(read []readBore, choice oversize.Choice) {
	var all []single
	without := slices.Clone(read)
	for i, r := range read {
		list := s.singles(i, r)
		if len(list) > 0 {
			without[i] = list[0].without
		}
		all = append(all, list...)
	}
	for _, one := range all {
		by := slices.Clone(without)
		by[one.cylinder] = one.without
		if !s.sameWay(by, choice) {
			s.ask(fmt.Sprintf("cylinders[%d].readings[%d]", one.cylinder, one.number), s.job.survey.by.shown(s.job.Cylinders[one.cylinder].Readings[one.number]),
				"without it no limit is passed: read that place again and write both down, or confirm it")
		}
	}
}

// sameWay reports whether every cylinder would go the way that is chosen by other readings too.
func (s *slipper) sameWay(read []readBore, chosen oversize.Choice) bool {
	other, err := choose(s.job, read)
	return err == nil && len(chosen.Cylinders) > 0 && slices.EqualFunc(other.Cylinders, chosen.Cylinders, func(a, b oversize.CylinderChoice) bool {
		return a.Route == b.Route && a.Work == b.Work && a.Over == b.Over
	})
}

// pastLimits returns the findings that decide against a worn bore.
func pastLimits(fs []bore.Finding) (past []bore.Finding) {
	for _, f := range oversize.Deciding(fs) {
		if f.Verdict == uncertainty.Beyond {
			past = append(past, f)
		}
	}
	return past
}

// hangsOn reports whether a finding comes from a reading, among others perhaps.
func hangsOn(f bore.Finding, b bore.Geometry, r Reading) bool {
	is := func(p bore.Place) bool { return place{p.Depth, p.Axis} == r.place() }
	switch f.Limit {
	case bore.LimitOvality, bore.LimitTrueOvality:
		return f.Depth == r.depth()
	case bore.LimitTaper, bore.LimitChoke:
		return f.Axis == r.axis() && (f.From == r.depth() || f.To == r.depth())
	}
	return is(b.Largest) || is(b.Smallest)
}
