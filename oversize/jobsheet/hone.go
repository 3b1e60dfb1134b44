// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
)

// usualTolerance is taken where the job wants a crosshatch and names no tolerance.
const usualTolerance = 5 * units.Degree

// hone adds the crosshatch of the setting in the job and of what is on hand.
func (s *Sheet) hone() error {
	t := s.Job.Tools
	if s.Choice.Route == oversize.MakersProcess {
		s.omit("honing", "this wall is never honed")
		return nil
	}
	h := HoneSheet{Stroke: t.Stroke}
	for i := range s.Cylinders {
		if size, _, known := s.finished(i); known && h.Bore == 0 {
			h.Bore = size.Value
		}
	}
	if h.Bore == 0 {
		h.Bore = s.Job.Engine.Bore
	}
	if length := s.Job.Engine.Layout.Length; h.Stroke == 0 && length != 0 && t.ToolLength != 0 {
		run := hone.Run{Kind: t.Hone, Depth: length, Tool: t.ToolLength, RoomTop: t.RoomTop, RoomBottom: t.RoomBottom}
		for _, p := range s.Job.Engine.Layout.Ports {
			run.Ports = append(run.Ports, hone.Port{From: p.From, To: p.To})
		}
		travel, err := hone.UsualTravel(run)
		if t.OvertravelTop != 0 || t.OvertravelBottom != 0 {
			travel, err = run.Travel(t.OvertravelTop, t.OvertravelBottom)
		}
		if err == nil {
			h.Travel = travel
			h.Stroke, err = travel.Stroke()
		}
		if err != nil {
			s.omit("honing", "%v", err)
			return nil
		}
	}
	if h.Stroke == 0 {
		s.omit("honing", "give tools.stroke, or engine.layout.length and tools.tool_length")
		return nil
	}
	var err error
	if t.SpindleNow != 0 && !t.StrokingNow.IsZero() {
		h.Now = hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: t.SpindleNow, Stroking: t.StrokingNow}
		if h.Leaves, err = h.Now.Crosshatch(); err != nil {
			return err
		}
		if h.Cautions, err = h.Now.Cautions(t.Drive); err != nil {
			return err
		}
	}
	if t.Crosshatch.IsZero() || t.Spindle.IsZero() || t.Stroking.IsZero() {
		s.omit("the crosshatch on hand", "give tools.crosshatch, tools.spindle and tools.stroking")
	} else {
		on := hone.OnHand{Bore: h.Bore, Stroke: h.Stroke, Spindle: t.Spindle, Stroking: t.Stroking, Drive: t.Drive}
		reach, err := on.Reach(t.want())
		if err != nil {
			s.omit("the crosshatch on hand", "%v", err)
		} else {
			h.Reach = &reach
		}
	}
	h.Used, h.Motion = h.Now, t.motion()
	if h.Reach != nil && !t.want().Accepts(h.Leaves) {
		h.Used = h.Reach.Best
	}
	s.Honing = h
	if h.Used != (hone.Setting{}) {
		s.alongTheWall()
		s.tracks()
	}
	if len(t.Phases) > 0 {
		return s.traces()
	}
	return nil
}

// want is the crosshatch to aim at.
func (t Tools) want() hone.Want {
	return hone.Want{Crosshatch: t.Crosshatch, Tolerance: cmp.Or(t.Tolerance, usualTolerance)}
}

// motion is how the tool moves: a hand is fastest in the middle of a stroke.
func (t Tools) motion() Motion {
	switch {
	case t.Motion != MotionNotGiven:
		return t.Motion
	case t.Drive == hone.ByMachine:
		return EvenMotion
	}
	return CrankMotion
}

// of returns the motion as package hone wants it.
func (m Motion) of() hone.Motion {
	if m == CrankMotion {
		return hone.Crank()
	}
	return hone.Steady()
}

// alongTheWall adds the angle along the wall, and where the honing allowance goes.
func (s *Sheet) alongTheWall() {
	h, t, stock := &s.Honing, s.Job.Tools, s.Job.Engine.HoningAllowance
	if h.Travel == (hone.Travel{}) {
		return
	}
	const points = 33 // along the wall; the ends, the middle and the extremes are what the sheet shows
	var err error
	if !t.Crosshatch.IsZero() {
		if h.Wall, err = h.Used.Profile(h.Motion.of(), h.Travel, t.want(), points); err != nil {
			s.omit("the angle along the wall", "%v", err)
		}
		h.Wall.Points = nil
	}
	if t.Pressing == hone.PressingUnknown || stock == 0 || t.Hone.FollowsWall() {
		return // what follows the wall takes no stock to a size
	}
	if h.Removal, err = h.Used.Removal(h.Motion.of(), h.Travel, t.Pressing, stock, points); err != nil {
		s.omit("straightness after honing", "%v", err)
	}
	h.Removal.Points = nil
}

// tracks adds whether the tool runs in its own tracks, and how many strokes cover the wall.
func (s *Sheet) tracks() {
	h, t := &s.Honing, s.Job.Tools
	var err error
	if t.Lines != 0 && t.Track != 0 {
		rig := hone.Rig{Kind: t.Hone, Drive: t.Drive, Lines: t.Lines, Track: t.Track, Cycles: lookAhead}
		if h.Retrace, err = h.Used.Retrace(rig); err != nil {
			s.omit("whether the hone runs in its own tracks", "%v", err)
		}
	}
	if t.Lines != 0 && t.LineWidth != 0 && t.ToolLength != 0 {
		if h.Cover, err = h.Used.Cover(hone.Abrasive{Lines: t.Lines, Width: t.LineWidth, Length: t.ToolLength}); err != nil {
			s.omit("how many strokes cover the wall", "%v", err)
		}
	}
}

// lookAhead is over how many cycles the tracks of a hone are looked at.
const lookAhead = 12

// traces adds what is left of the lines of each phase.
func (s *Sheet) traces() error {
	h := &s.Honing
	var phases []hone.Phase
	for _, p := range s.Job.Tools.Phases {
		phases = append(phases, hone.Phase{
			Setting: hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: p.Spindle, Stroking: p.Stroking},
			Stock:   p.RadialStock,
			Groove:  p.Groove,
		})
	}
	var err error
	h.Traces, err = hone.Traces(phases)
	return err
}
