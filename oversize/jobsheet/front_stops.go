// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
)

// toFinish lists the cylinders whose size to stop at is decided and still to come, with their names.
func (s *draft) toFinish() (at []int, names []string) {
	for i, c := range s.Choice.Cylinders {
		if c.Aim != 0 && !s.Cylinders[i].there() && s.Cylinders[i].Next != StepChooseSleeve && c.Route != oversize.Undecided && s.Choice.Route != oversize.Undecided {
			at, names = append(at, i), append(names, c.Name)
		}
	}
	return at, names
}

// stops says the sizes to stop at, those that are alike once.
func (s *draft) stops() string {
	var lines []string
	at, names := s.toFinish()
	for _, i := range at {
		c := s.Choice.Cylinders[i]
		text := "hone " + s.show.length(c.Aim)
		if bored := cmp.Or(c.Bored, s.sleeveBored(i)); bored != 0 && !s.Job.Cylinders[i].bored() {
			text = "bore " + s.show.stop(bored) + ", " + text
		}
		if c.Route == oversize.Sleeve && s.Sleeve != nil {
			text = "seat " + s.show.length(s.Sleeve.Joint.Seat) + " to suit the sleeve as measured; fitted, " + text
		}
		if !c.Finish.IsZero() {
			text += " (" + s.show.limits(c.Finish) + ")"
		}
		if s.row(i, "pistons").Reason == notMeasured {
			text = "not before its piston is measured, which moves them: " + text
		}
		lines = append(lines, text)
	}
	return alike(names, lines)
}

// holds says, where a fit of the sleeve is to be chosen, which interference holds.
func (s *draft) holds() string {
	interference, why := s.holding()
	if interference == "" || !slices.ContainsFunc(s.Cylinders, func(c CylinderSheet) bool { return c.Next == StepChooseSleeve }) {
		return ""
	}
	return "interference " + interference + ": " + why
}

// sleeveBored returns what the sleeve of a cylinder is bored to once it is fitted, 0 where it has none.
func (s *draft) sleeveBored(cylinder int) units.Length {
	if s.Sleeve == nil || s.Choice.Cylinders[cylinder].Route != oversize.Sleeve {
		return 0
	}
	return s.Sleeve.Bored
}

// dial says what the gauge shows at the sizes to stop at, when all is at one temperature.
func (s *draft) dial() string {
	var lines []string
	at, names := s.toFinish()
	for _, i := range at {
		var shows []string
		for _, d := range s.Cylinders[i].Dial {
			if d.Operation == oversize.FinishBore && s.Job.Cylinders[i].bored() {
				continue
			}
			shows = append(shows, signed(s.show.length(d.Shows)))
		}
		lines = append(lines, strings.Join(shows, ", then "))
	}
	text := alike(names, lines)
	if strings.Trim(text, ". ") == "" {
		return ""
	}
	return fmt.Sprintf("on the standard of %s,%s all cold: %s", s.show.length(s.Job.Gauge.Standard.Size.Value), s.plus(), text)
}

// plus says which way the deviations of a dial run that the job does not tell of: to read them the other way is to stop short of a
// size, or beyond it.
func (s *draft) plus() string {
	if s.Job.Gauge.Dial == bore.DialNotGiven {
		return " plus for larger,"
	}
	return ""
}

// hones says how to set the hone, and how not.
func (s *draft) hones() string {
	r := s.Honing.Reach
	if r == nil || s.Next >= StepSetRingGaps {
		return ""
	}
	text := fmt.Sprintf("%s, %s: %s", turns(r.Best.Spindle), cycles(r.Best.Stroking), angle(r.Leaves))
	if k := settable(r.Best.Stroking); r.Met {
		if n, ok := r.SpindlesAt(k); ok && inward(n).Min <= inward(n).Max {
			n = inward(n)
			best := min(max(whole(r.Best.Spindle, math.Round), n.Min), n.Max)
			text = fmt.Sprintf("%s (%s to %s will do), %s: about %s", turns(best), turns(n.Min), turns(n.Max), cycles(k), r.Leaves.Format(0))
		}
	}
	if now := s.Honing.Now.Spindle; now != 0 && s.Honing.Used != s.Honing.Now {
		text += "; NOT " + turns(now)
	}
	return text
}

// whole returns a rate as a machine or a hand can be set: by whole ones a minute, or by tenths where it is slow.
func whole(f units.Frequency, round func(float64) float64) units.Frequency {
	const slow = 20
	n := f.In(units.PerMinute)
	if n < slow {
		return units.Frequency(round(10*n) / 10 * float64(units.PerMinute))
	}
	return units.Frequency(round(n) * float64(units.PerMinute))
}

func settable(k hone.Stroking) hone.Stroking { return hone.Cycles(whole(k.Cycles(), math.Round)) }

// inward returns a range of speeds whose ends can be set and lie in it.
func inward(n hone.SpindleRange) hone.SpindleRange {
	return hone.SpindleRange{Min: whole(n.Min, math.Ceil), Max: whole(n.Max, math.Floor)}
}
