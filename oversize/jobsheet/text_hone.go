// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/units"
)

func (s *draft) crosshatch() {
	h := s.Honing
	if s.done(honing) {
		return
	}
	s.checks(honing)
	if h.Now.Stroke == 0 {
		if len(s.part.Blocks) > 0 { // the work is to be done all the same
			s.passes()
		}
		return
	}
	s.say("Bore %s, stroke %s.", s.show.length(h.Now.Bore), s.show.along(h.Now.Stroke))
	if t := h.Travel; t.Tool != 0 {
		s.say("The tool of %s stands out by %s at the top and %s at the bottom.", s.show.plain(t.Tool), s.show.along(t.Top), s.show.along(t.Bottom))
	}
	if !h.Leaves.IsZero() {
		s.say("Your setting, %s with %s leaves %s.", turns(h.Now.Spindle), cycles(h.Now.Stroking), angle(h.Leaves))
		for _, c := range h.Cautions {
			s.add(page.Caution(c.Text))
		}
	}
	if r := h.Reach; r != nil {
		s.reach(*r)
		if n, ok := r.SpindlesAt(r.Best.Stroking); ok {
			s.say("With %s, %s to %s will do.", cycles(r.Best.Stroking), turns(n.Min), turns(n.Max))
		}
		if n := h.Now.Spindle; n != 0 {
			if k, ok := r.StrokingsAt(n); ok {
				s.say("At %s, %s to %s will do.", turns(n), cycles(k.Min), cycles(k.Max))
			} else {
				s.say("At %s no stroking on hand will do.", turns(n))
			}
		}
		for _, c := range r.Cautions {
			s.add(page.Caution(c.Text))
		}
	}
	s.wall()
	s.grit()
	s.drawHoning()
	s.traceLines()
	s.passes()
}

// grit says what sources name for the last honing before such rings, and how many of them name what is on hand.
func (s *draft) grit() {
	facing, on := "", s.Job.Tools.Grit
	if list := s.Job.Engine.Rings; len(list) > 0 {
		facing = list[0].Facing
	}
	var names []string
	all, by := 0, 0
	for _, g := range hone.Grits() {
		if g.Stage != "last honing" || g.Facing != "" && facing != "" && g.Facing != facing {
			continue
		}
		all++
		if g.Coarse <= on && on <= g.Fine {
			by++
		}
		name := fmt.Sprint(g.Coarse)
		if g.Fine != g.Coarse {
			name += " to " + fmt.Sprint(g.Fine)
		}
		if !slices.Contains(names, name) {
			names = append(names, name)
		}
	}
	of := "any facing of the top ring"
	if facing != "" {
		of = "a top ring of " + facing
	}
	text := "Grit of the last honing: for " + of + " sources name " + strings.Join(names, ", ")
	if on != 0 {
		text += fmt.Sprintf("; yours, %d, is named by %d of %d", on, by, all)
	}
	var rough units.Limits
	for _, f := range hone.Finishes() {
		if f.Measure == "Ra" {
			rough.Min, rough.Max = min(cmp.Or(rough.Min, f.Roughness.Min), f.Roughness.Min), max(rough.Max, f.Roughness.Max)
		}
	}
	text += ". They disagree, and the supplier of the rings comes before them all. Of bores and liners sources print Ra " + s.show.rough(rough) + ", and none by facing: a band, and no limit of this engine."
	s.add(page.Sentence(text))
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
			strokes, turns(h.Used.Spindle), cycles(h.Used.Stroking), along, s.show.along(w.ReversalTop), s.show.along(w.ReversalBottom))
		if n := h.Flat; w.Min != w.Max {
			s.say("Of the lines as one counts them across, %.0f %% are flatter than 30° included, and their mean is %.1f°.", 100*n.Flat, n.Mean.In(units.Degree))
		}
	}
	if r := h.Removal; r.Middle != 0 {
		s.say("%s, %s off the diameter at the middle of the wall is %s off at the top and %s at the bottom: what differs is left on the wall as form.",
			strokes, s.show.length(r.Middle), s.show.length(r.Top), s.show.length(r.Bottom))
	}
	switch r := h.Retrace; {
	case r.Meets:
		text := fmt.Sprintf("It runs in its own tracks after %d cycles, to %s", r.After, s.show.length(r.Slip))
		if r.Avoid != 0 {
			text += "; " + turns(r.Avoid) + " avoids that"
		}
		s.add(page.Caution(text + "."))
	case r.After > 0:
		s.add(page.Sentence("It stays clear of its own tracks."))
	}
	if c := h.Cover; c.Most > 1 {
		s.say("A machine that holds its speeds covers all of the wall in %d strokes.", c.Most)
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
			fmt.Sprint(i + 1), turns(phase.Spindle), cycles(phase.Stroking), angle(t.Crosshatch), s.show.length(t.Later), lines,
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
		text := fmt.Sprintf("Cylinder %s is %s now: %v", c.Name, s.show.estimate(n.Size), n.Decision)
		if n.Growth.Value != 0 {
			text += fmt.Sprintf(". A minute of honing has taken %s on the diameter", s.show.estimate(n.Growth))
		}
		if n.Decision == hone.GoOn {
			text += fmt.Sprintf(". Next pass: %v", n.Lasts)
			if n.Risk == 0 {
				text += ", then measure; nothing is known of the rate yet"
			} else {
				text += ", which should bring " + s.show.estimate(n.Then)
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
			s.add(page.Caution(wayOut(s.show, c.Skirts)))
		}
	}
}

// wayOut says what to do with a bore past its size.
func wayOut(show Shown, skirts units.Limits) string {
	if skirts.IsZero() {
		return "Past its size: the next oversize, or a larger piston."
	}
	return "Past its size: a piston of " + show.limits(skirts) + " would fit it; else the next oversize."
}

// angle says a crosshatch both ways.
func angle(c hone.Crosshatch) string {
	return fmt.Sprintf("%s (%.1f° from square)", c.Format(1), c.FromSquare().In(units.Degree))
}

// reach says whether the wanted crosshatch can be had and what would have to change, in the units
// shown.
func (s *draft) reach(r hone.Found) {
	at := fmt.Sprintf("%s with %s leaves %s", turns(r.Best.Spindle), cycles(r.Best.Stroking), angle(r.Leaves))
	if r.Met {
		s.say("With what is on hand, %v can be had: %s.", r.Want, at)
		return
	}
	s.say("With what is on hand, %v is out of reach; nearest, %s. It would take one of these:", r.Want, at)
	for _, c := range r.Changes {
		var to string
		switch set := c.Setting; {
		case set.Spindle != r.Best.Spindle:
			to = turns(set.Spindle)
		case set.Stroking != r.Best.Stroking:
			to = cycles(set.Stroking)
		default:
			to = "a stroke of " + s.show.along(set.Stroke)
		}
		if c.Against != (hone.Caution{}) {
			to += ", not advised: " + c.Against.Text
		}
		s.add(page.Item{Text: to})
	}
}

func turns(f units.Frequency) string { return perMinute(f) + " rev/min" }

// perMinute says a rate to a tenth, for to a whole one it would leave another angle than is said.
func perMinute(f units.Frequency) string {
	return strconv.FormatFloat(math.Round(f.In(units.PerMinute)*10)/10, 'f', -1, 64)
}

// cycles says a stroking both ways, since the trade counts either.
func cycles(k hone.Stroking) string {
	return fmt.Sprintf("%s cycles/min (%s strokes)", perMinute(k.Cycles()), perMinute(k.Strokes()))
}
