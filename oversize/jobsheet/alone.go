// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"
	"slices"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units/uncertainty"
)

// alone asks for a second look at a place that was read once and without which nothing says that the bore is past a limit: one
// wrong digit there would cost it.
func (s *slipper) alone(path string, c Cylinder, read readBore) {
	beyond := pastLimits(read.findings)
	if len(beyond) == 0 || c.bored() || c.reread() { // the bore that was read is gone
		return
	}
	for i, r := range c.Readings {
		others := slices.DeleteFunc(slices.Clone(c.Readings), func(q Reading) bool { return q.place() == r.place() })
		stays := func(f bore.Finding) bool { return !hangsOn(f, read.bore, r) }
		if r.Confirmed || len(c.Readings)-len(others) > 1 || slices.ContainsFunc(beyond, stays) {
			continue
		}
		without, err := s.job.sit(s.job.survey, others, c.Traces)
		if err == nil {
			err = s.job.judge(&without, s.job.limits(c.over()), s.job.risk.survey)
		}
		if err != nil || len(pastLimits(without.findings)) == 0 {
			s.ask(fmt.Sprintf("%s.readings[%d]", path, i), s.job.survey.by.shown(r),
				"without it no limit is passed: read that place again and write both down, or confirm it")
		}
	}
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
