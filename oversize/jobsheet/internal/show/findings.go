// SPDX-License-Identifier: BSD-3-Clause

package show

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// About says what a finding is about.
func (s In) About(f bore.Finding) string {
	switch {
	case f.NotMeasured:
		return f.Limit.String() + ", not measured"
	case f.Limit == bore.LimitOvality || f.Limit == bore.LimitTrueOvality:
		return f.Limit.String() + " at " + s.Plain(f.Depth)
	case f.Between:
		return fmt.Sprintf("%s, as a difference from %s to %s, %s axis", f.Limit, s.Plain(f.From), s.Plain(f.To), f.Axis.String())
	case f.Limit == bore.LimitTaper || f.Limit == bore.LimitChoke:
		return f.Limit.String() + ", " + f.Axis.String() + " axis"
	}
	return f.Limit.String()
}

// AboutFinished says what a finding of a finished bore is about, for which the window of a new bore is its own.
func (s In) AboutFinished(f bore.Finding) string {
	if f.Limit == bore.LimitNew {
		return "finished bore"
	}
	return s.About(f)
}

// FindingHead is the head of a table of findings.
func FindingHead() []string {
	return []string{"limit on", "measured", "allowed", "finding", "conforms"}
}

// Finding is the row of one finding in a table.
func (s In) Finding(what string, f uncertainty.Finding, measured bool) []string {
	row := []string{what, "–", s.Limits(f.Limits), f.Verdict.String(), "–"}
	if measured {
		row[1], row[4] = s.Estimate(f.Measured), percent(f.Conform)
	}
	return row
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

// leastStd is the least standard uncertainty that a gauge can be brought to at a bench (common practice).
const leastStd = 200 * units.Nanometre

// Remedy says what would settle a finding, where anything at a bench would.
func (s In) Remedy(r uncertainty.Remedy) string {
	if r.Repeats != 1 && r.Std > 0 && r.Std < leastStd {
		return "no gauge would settle it, the value stands too near the limit"
	}
	return r.Format(s.First())
}

// Interval prints a size that is known only to lie between two.
func (s In) Interval(i bore.Interval) string {
	if i.Min == i.Max {
		return s.Estimate(i.Min)
	}
	return s.Length(i.Min.Value) + " to " + s.Estimate(i.Max)
}

// NoTrace says what traces do not show.
func NoTrace(u bore.Unseen) string {
	if u == bore.UnseenOddLobes {
		return "three lobes: they want more points round the bore"
	}
	return u.String()
}

// Cylinder says how sure a cylindricity is, which is in such a doubt.
func Cylinder(c form.Certificate, doubt units.Length) string {
	text := fmt.Sprintf("CYLt of the minimum zone, carried by %d points", len(c.Contacts()))
	switch {
	case !c.Searched:
		return text + ": proved"
	case c.Bound < doubt:
		return text + ": proved but for less than its doubt"
	}
	return text + ": found by search, not proved"
}

// Cone says how a wall tapers: between which depths, which way, and the full angle of its cone.
func (s In) Cone(c form.Cone, taper uncertainty.Estimate) string {
	text := fmt.Sprintf("on the diameter, of the least-squares cone, %s to %s", s.Plain(c.Axis.From.Depth), s.Plain(c.Axis.To.Depth))
	if !StandsOut(taper) {
		return text + ": none that stands out of the doubt"
	}
	end := "larger at the deck"
	if taper.Value < 0 {
		end = "smaller at the deck, as a choke is"
	}
	return fmt.Sprintf("%s: %s, full angle %.2g°", text, end, c.Angle.In(units.Degree))
}

// Bend says where the axis of a wall is bent most.
func (s In) Bend(m form.MedianLine, bend uncertainty.Estimate) string {
	if !StandsOut(bend) {
		return "none that stands out of the doubt"
	}
	return fmt.Sprintf("at %s, towards %s from thrust", s.Plain(m.BendAt), Degrees(m.Toward))
}
