// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
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
		text := "hone " + s.show.Length(c.Aim)
		if bored := cmp.Or(c.Bored, s.sleeveBored(i)); bored != 0 && !s.Job.Cylinders[i].bored() {
			text = "bore " + s.show.Stop(bored) + ", " + text
		}
		if c.Route == oversize.Sleeve && s.Sleeve != nil {
			text = "seat " + s.show.Length(s.Sleeve.Joint.Seat) + " to suit the sleeve as measured; fitted, " + text
		}
		if !c.Finish.IsZero() {
			text += " (" + s.show.Limits(c.Finish) + ")"
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
			shows = append(shows, show.Signed(s.show.Length(d.Shows)))
		}
		lines = append(lines, strings.Join(shows, ", then "))
	}
	text := alike(names, lines)
	if strings.Trim(text, ". ") == "" {
		return ""
	}
	return fmt.Sprintf("on the standard of %s,%s all cold: %s", s.show.Length(s.Job.Gauge.Standard.Size.Value), s.plus(), text)
}

// plus says which way the deviations of a dial run that the job does not tell of: to read them the other way is to stop short of a
// size, or beyond it.
func (s *draft) plus() string {
	if s.Job.Gauge.Dial == 0 {
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
	text := show.Setting(*r)
	if now := s.Honing.Now.Spindle; now != 0 && s.Honing.Used != s.Honing.Now {
		text += "; NOT " + show.Turns(now)
	}
	return text
}
