// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/internal/notes"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

func (s *draft) crosshatch() {
	h := s.Honing
	if s.work().Behind(notes.Honing) {
		return
	}
	s.checks(notes.Honing)
	if h.Now.Stroke == 0 {
		if len(s.part.Blocks) > 0 { // the work is to be done all the same
			s.passes()
		}
		return
	}
	s.say("Bore %s, stroke %s.", s.show.Length(h.Now.Bore), s.show.Along(h.Now.Stroke))
	if t := h.Travel; t.Tool != 0 {
		s.say("The tool of %s stands out by %s at the top and %s at the bottom.", s.show.Plain(t.Tool), s.show.Along(t.Top), s.show.Along(t.Bottom))
	}
	if !h.Leaves.IsZero() {
		s.say("Your setting, %s with %s leaves %s.", show.Turns(h.Now.Spindle), show.Cycles(h.Now.Stroking), show.Crosshatch(h.Leaves))
		for _, c := range h.Cautions {
			s.add(page.Caution(c.Text))
		}
	}
	if r := h.Reach; r != nil {
		s.reach(*r)
		if n, ok := r.SpindlesAt(r.Best.Stroking); ok {
			s.say("With %s, %s to %s will do.", show.Cycles(r.Best.Stroking), show.Turns(n.Min), show.Turns(n.Max))
		}
		if n := h.Now.Spindle; n != 0 {
			if k, ok := r.StrokingsAt(n); ok {
				s.say("At %s, %s to %s will do.", show.Turns(n), show.Cycles(k.Min), show.Cycles(k.Max))
			} else {
				s.say("At %s no stroking on hand will do.", show.Turns(n))
			}
		}
		for _, c := range r.Cautions {
			s.add(page.Caution(c.Text))
		}
	}
	s.wall()
	facing := ""
	if list := s.Job.Engine.Rings; len(list) > 0 {
		facing = list[0].Facing
	}
	s.add(page.Sentence(s.show.Grit(facing, s.Job.Tools.Grit)))
	s.drawHoning()
	s.traceLines()
	s.passes()
}

// wall says what the setting does along the wall.
func (s *draft) wall() {
	h := s.Honing
	strokes := "With even strokes"
	if s.Job.Tools.crank() {
		strokes = "With strokes fastest in the middle, as by hand or crank"
	}
	if w := h.Wall; w.Mean != 0 {
		along := fmt.Sprintf("%.1f° to %.1f° included along the wall, flattest at its ends, %.1f° as the mean of all lines", w.Min.In(units.Degree), w.Max.In(units.Degree), w.Mean.In(units.Degree))
		if w.Min == w.Max {
			along = fmt.Sprintf("%.1f° included all along the wall", w.Mean.In(units.Degree))
		}
		s.say("%s, %s and %s leave %s; where the tool turns round, the lines curve: in %s at the top and %s at the bottom.",
			strokes, show.Turns(h.Used.Spindle), show.Cycles(h.Used.Stroking), along, s.show.Along(w.ReversalTop), s.show.Along(w.ReversalBottom))
		if n := h.Flat; w.Min != w.Max {
			s.say("Of the lines as one counts them across, %.0f %% are flatter than 30° included, and their mean is %.1f°.", 100*n.Flat, n.Mean.In(units.Degree))
		}
	}
	if r := h.Removal; r.Middle != 0 {
		s.say("%s, %s off the diameter at the middle of the wall is %s off at the top and %s at the bottom: what differs is left on the wall as form.",
			strokes, s.show.Length(r.Middle), s.show.Length(r.Top), s.show.Length(r.Bottom))
	}
	switch r := h.Retrace; {
	case r.Meets:
		text := fmt.Sprintf("It runs in its own tracks after %d cycles, to %s", r.After, s.show.Length(r.Slip))
		if r.Avoid != 0 {
			text += "; " + show.Turns(r.Avoid) + " avoids that"
		}
		s.add(page.Caution(text + "."))
	case r.After > 0:
		s.add(page.Sentence("It stays clear of its own tracks."))
	}
	if c := h.Cover; c.Max > 1 {
		s.say("A machine that holds its speeds covers all of the wall in %d strokes.", c.Max)
	}
}

// traceLines says what is left of the lines of each phase.
func (s *draft) traceLines() {
	if len(s.Honing.Traces) == 0 {
		return
	}
	rows := [][]string{{"phase", "turning", "stroking", "crosshatch", "radial stock after it", "its lines"}}
	for i, t := range s.Honing.Traces[:min(len(s.Honing.Traces), len(s.Job.Tools.Phases))] {
		phase := s.Job.Tools.Phases[i]
		lines := "stay"
		switch {
		case t.Gone:
			lines = "cut away"
		case t.Assumed:
			lines = "assumed to stay"
		}
		rows = append(rows, []string{
			fmt.Sprint(i + 1), show.Turns(phase.Spindle), show.Cycles(phase.Stroking), show.Crosshatch(t.Crosshatch), s.show.Length(t.Later), lines,
		})
	}
	s.table(rows)
}

// passes says how far the honing has got, and how long the next pass may be.
func (s *draft) passes() {
	for i, c := range s.Cylinders {
		n := c.Pass
		if n.Size.Value == 0 {
			continue
		}
		text := fmt.Sprintf("Cylinder %s is %s now: %v", c.Name, s.show.Estimate(n.Size), n.Decision)
		if n.Growth.Value != 0 {
			text += fmt.Sprintf(". A minute of honing has taken %s on the diameter", s.show.Estimate(n.Growth))
		}
		if n.Decision == hone.GoOn {
			text += fmt.Sprintf(". Next pass: %v", n.Lasts)
			if n.Risk == 0 {
				text += ", then measure; nothing is known of the rate yet"
			} else {
				text += ", which should bring " + s.show.Estimate(n.Then)
			}
			if n.Passes > 0 {
				text += fmt.Sprintf("; %d to come, %v in all", n.Passes, n.Time)
			}
		}
		s.add(page.Sentence(text + "."))
		switch {
		case n.Decision == hone.StopHere && s.Job.Cylinders[i].passes() == 0:
			s.add(page.Caution("Bored so far that the hone has no stock: light strokes for the pattern alone, and where marks of the boring tool stay, the next oversize."))
		case n.Decision == hone.PastSize:
			s.add(page.Caution(s.wayOut(c.Skirts)))
		}
	}
}

// wayOut says what to do with a bore past its size.
func (s *draft) wayOut(skirts units.Limits) string {
	if skirts.IsZero() {
		return "Past its size: the next oversize, or a larger piston."
	}
	return "Past its size: a piston of " + s.show.Limits(skirts) + " would fit it; else the next oversize."
}

// reach says whether the wanted crosshatch can be had and what would have to change, in the units
// shown.
func (s *draft) reach(r hone.Found) {
	at := fmt.Sprintf("%s with %s leaves %s", show.Turns(r.Best.Spindle), show.Cycles(r.Best.Stroking), show.Crosshatch(r.Leaves))
	if r.Met {
		s.say("With what is on hand, %v can be had: %s.", r.Want, at)
		return
	}
	s.say("With what is on hand, %v is out of reach; nearest, %s. It would take one of these:", r.Want, at)
	for _, c := range r.Changes {
		var to string
		switch set := c.Setting; {
		case set.Spindle != r.Best.Spindle:
			to = show.Turns(set.Spindle)
		case set.Stroking != r.Best.Stroking:
			to = show.Cycles(set.Stroking)
		default:
			to = "a stroke of " + s.show.Along(set.Stroke)
		}
		if c.Against != (hone.Caution{}) {
			to += ", not advised: " + c.Against.Text
		}
		s.add(page.Item{Text: to})
	}
}
