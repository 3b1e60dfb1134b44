// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// usualTolerance is taken where the job wants a crosshatch and names no tolerance.
const usualTolerance = 5 * units.Degree

// honed works out the crosshatch of the setting in the job and of what is on hand.
func honed(g given, choice oversize.Choice, bores []ringBore) (h HoneSheet, out []Remark, err error) {
	t := g.Tools
	if choice.Route == oversize.MakersProcess {
		return h, omit(nil, "honing", "this wall is never honed"), nil
	}
	h.Now.Stroke, h.Now.Bore = t.Stroke, g.Engine.Bore
	if i := slices.IndexFunc(bores, func(b ringBore) bool { return b.known }); i >= 0 {
		h.Now.Bore = bores[i].size.Value
	}
	if l := g.Engine.Layout; h.Now.Stroke == 0 && l.Length != 0 && t.ToolLength != 0 {
		if t.RoomTop == nil || t.RoomBottom == nil {
			return h, omit(nil, "honing", "give tools.room_top and tools.room_bottom, how much is free beyond each end of the bore: \"0 mm\" at a closed one"), nil
		}
		if h.Travel, err = t.travel(l); err == nil {
			h.Now.Stroke, err = h.Travel.Stroke()
		}
		if err != nil {
			return HoneSheet{}, omit(nil, "honing", "%v", err), nil
		}
	}
	if h.Now.Stroke == 0 {
		return HoneSheet{}, omit(nil, "honing", "give tools.stroke, or engine.layout.length and tools.tool_length"), nil
	}
	if t.SpindleNow != 0 && t.StrokingNow != (hone.Stroking{}) {
		h.Now.Spindle, h.Now.Stroking = t.SpindleNow, t.StrokingNow
		if h.Leaves, err = h.Now.Crosshatch(); err != nil {
			return h, nil, fault("tools.spindle_now", err)
		}
		if h.Cautions, err = h.Now.Cautions(t.Drive); err != nil {
			return h, nil, fault("tools.spindle_now", err)
		}
	}
	if t.Crosshatch.IsZero() || t.Spindle == (hone.SpindleRange{}) || t.Stroking == (hone.StrokingRange{}) {
		out = omit(out, "the crosshatch on hand", "give tools.crosshatch, tools.spindle and tools.stroking")
	} else {
		on := hone.OnHand{Bore: h.Now.Bore, Stroke: h.Now.Stroke, Spindle: t.Spindle, Stroking: t.Stroking, Drive: t.Drive}
		reach, err := on.SettingFor(t.want())
		if out = failed(out, "the crosshatch on hand", err); err == nil {
			h.Reach = &reach
		}
	}
	h.Used = h.Now
	if h.Reach != nil && t.want().Judge(h.Leaves, 0) != uncertainty.Within {
		h.Used = h.Reach.Best
	}
	if h.Used.Spindle != 0 {
		out = append(out, h.alongTheWall(t, g.Engine.HoningAllowance)...)
		out = append(out, h.tracks(t)...)
	}
	h.Traces, err = h.traces(t)
	return h, out, err
}

// travel returns how far the tool goes: as the job says, else as is usual for its kind.
func (t Tools) travel(l bore.Layout) (hone.Travel, error) {
	run := hone.Run{Kind: t.Hone, Depth: l.Length, Tool: t.ToolLength, RoomTop: length(t.RoomTop), RoomBottom: length(t.RoomBottom)}
	for _, p := range l.Ports {
		run.Ports = append(run.Ports, units.Limits{Min: p.From, Max: p.To})
	}
	if t.OvertravelTop != 0 || t.OvertravelBottom != 0 {
		return run.Travel(t.OvertravelTop, t.OvertravelBottom)
	}
	return hone.UsualTravel(run)
}

// want is the crosshatch to aim at.
func (t Tools) want() hone.Want {
	return hone.Want{Crosshatch: t.Crosshatch, Tolerance: cmp.Or(t.Tolerance, usualTolerance)}
}

// crank reports whether a stroke is fastest in the middle, as a hand makes it.
func (t Tools) crank() bool {
	if t.Crank != nil {
		return *t.Crank
	}
	return t.Drive != hone.ByMachine
}

// motion is how the tool moves.
func (t Tools) motion() hone.Motion {
	if t.crank() {
		return hone.Crank()
	}
	return hone.Steady()
}

// alongTheWall adds the angle along the wall, and where the honing allowance goes.
func (h *HoneSheet) alongTheWall(t Tools, stock units.Length) (out []Remark) {
	if h.Travel == (hone.Travel{}) {
		return nil
	}
	const points = 33 // along the wall; the ends, the middle and the extremes are what the sheet shows
	var err error
	if !t.Crosshatch.IsZero() {
		h.Wall, err = h.Used.Profile(t.motion(), h.Travel, t.want(), points)
		out = failed(out, "the angle along the wall", err)
		h.Wall.Points = nil
		flat, err := hone.Included(30 * units.Degree) // often named as the flattest wanted (common practice)
		if err == nil {
			_, h.Flat, err = h.Used.CountLines(t.motion(), h.Travel, flat)
		}
		out = failed(out, "how many lines are flat", err)
	}
	if t.Pressing == 0 || stock == 0 || t.Hone.FollowsWall() {
		return out // what follows the wall takes no stock to a size
	}
	h.Removal, err = h.Used.Removal(t.motion(), h.Travel, t.Pressing, stock, points)
	h.Removal.Points = nil
	return failed(out, "straightness after honing", err)
}

// tracks adds whether the tool runs in its own tracks, and how many strokes cover the wall.
func (h *HoneSheet) tracks(t Tools) (out []Remark) {
	var err error
	if t.Lines != 0 && t.Track != 0 {
		rig := hone.Rig{Kind: t.Hone, Drive: t.Drive, Lines: t.Lines, Track: t.Track}
		h.Retrace, err = h.Used.Retrace(rig, lookAhead)
		out = failed(out, "whether the hone runs in its own tracks", err)
	}
	if t.Lines != 0 && t.LineWidth != 0 && t.ToolLength != 0 {
		h.Cover, err = h.Used.Cover(hone.Rig{Lines: t.Lines, Width: t.LineWidth, Length: t.ToolLength})
		out = failed(out, "how many strokes cover the wall", err)
	}
	return out
}

// lookAhead is over how many cycles the tracks of a hone are looked at.
const lookAhead = 12

// traces returns what is left of the lines of each phase.
func (h *HoneSheet) traces(t Tools) ([]hone.Trace, error) {
	if len(t.Phases) == 0 {
		return nil, nil
	}
	var phases []hone.Phase
	for _, p := range t.Phases {
		phases = append(phases, hone.Phase{
			Setting: hone.Setting{Bore: h.Now.Bore, Stroke: h.Now.Stroke, Spindle: p.Spindle, Stroking: p.Stroking},
			Stock:   p.RadialStock,
			Groove:  p.Groove,
		})
	}
	traces, err := hone.Traces(phases)
	if err != nil {
		return nil, fault("tools.phases", err)
	}
	return traces, nil
}
