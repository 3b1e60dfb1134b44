// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"slices"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units/uncertainty"
)

// A Step is what is to be done next.
type Step int8

// The steps, the most pressing first: where cylinders want several, the least is that of the engine.
const (
	Measure        Step = iota // read the bore
	MeasureBetter              // what was read does not decide: read it better
	AskMaker                   // what the maker allows does not go together here, or this wall is not worked on
	Oversized                  // the bore is past its size: it takes a larger piston, or the next oversize
	ChooseSleeve               // choose a fit for the sleeve: there is none in the job, or it is not proven
	FitSleeve                  // fit the sleeve and bore it
	BoreOut                    // bore to the size that leaves the honing allowance
	HoneToSize                 // make the next honing pass, or hone on towards the size to work to
	DeglazeBore                // deglaze, wash, and read the bore again
	WashAndProve               // wash, and read at rest the places of the survey, and the crosshatch
	Rework                     // the proof failed in form, pattern, clearance or at a port
	SetRingGaps                // set each ring's gap and measure it in its bore
	LeaveUntouched             // within every limit, and a wall that is not worked on here: run it as it is
	Reassemble                 // everything is proven
	WaitForOthers              // wait for the bores with which this one shares its size, or its engine
)

var stepNames = []string{
	"measure", "measure better", "ask the maker", "past its size", "choose a sleeve fit", "fit a sleeve", "bore", "hone",
	"deglaze", "wash and prove", "rework", "set the ring gaps", "leave untouched", "reassemble", "wait for the others",
}

// String returns the step, "wash and prove".
func (s Step) String() string { return enum.Name(s, stepNames) }

// MarshalText returns the text of [Step.String].
func (s Step) MarshalText() ([]byte, error) { return enum.Marshal(s, stepNames) }

// UnmarshalText reads the text of [Step.String]. On error the receiver keeps its value.
func (s *Step) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, stepNames) }

// steps says for each cylinder, and for the engine, what is next. Where one bore of those that share a size
// is past it, the others wait, for the size may change; and an engine goes together as a whole.
func (s *Sheet) steps() {
	s.Next = WaitForOthers
	for i := range s.Cylinders {
		s.Cylinders[i].Next = s.step(i)
		s.Next = min(s.Next, s.Cylinders[i].Next)
	}
	for i := range s.Cylinders {
		next := &s.Cylinders[i].Next
		spoilt := s.Next == Oversized && *next > Oversized && !s.Job.Engine.OwnSizes
		if spoilt || *next == Reassemble && s.Next < LeaveUntouched {
			*next = WaitForOthers
		}
	}
}

func (s *Sheet) step(i int) Step {
	given, c := s.Job.Cylinders[i], s.Cylinders[i]
	if len(given.Readings) == 0 {
		return Measure
	}
	if !s.decided() {
		return WaitForOthers
	}
	choice := s.Choice.Cylinders[i]
	switch {
	case choice.Route == oversize.Undecided:
		return MeasureBetter
	case choice.Route == oversize.MakersProcess:
		return s.untouched(i)
	case s.waiting():
		return WaitForOthers
	case s.wantsWall(i):
		return MeasureBetter
	case choice.Route == oversize.Sleeve && len(s.unsound(i)) > 0:
		return ChooseSleeve
	case c.Proof != nil:
		return s.proven(i)
	case c.Pass.Size.Value != 0:
		return passStep(c.Pass.Decision, len(given.Honing.Passes))
	case choice.Route == oversize.Sleeve:
		return FitSleeve
	case choice.Work == oversize.Deglaze:
		return DeglazeBore
	case choice.Work == oversize.Correct:
		return HoneToSize
	}
	return BoreOut
}

// untouched is the step of a wall that is not worked on: it may run as it is where everything that
// was judged of bore, piston and rings is within, and nothing harms it.
func (s *Sheet) untouched(i int) Step {
	given, c := s.Job.Cylinders[i], s.Cylinders[i]
	deciding := oversize.Deciding(c.Findings)
	if given.Peeling || given.Pit != 0 || len(deciding) == 0 {
		return AskMaker
	}
	var all []uncertainty.Verdict
	for _, f := range deciding {
		all = append(all, f.Verdict)
	}
	for _, f := range c.KeptClearances {
		all = append(all, f.Verdict)
	}
	if s.wantsPiston(i) {
		all = append(all, uncertainty.Undecided)
	}
	switch worst(all...) {
	case uncertainty.Undecided:
		return MeasureBetter
	case uncertainty.Beyond:
		return AskMaker
	}
	step := min(LeaveUntouched, ringStep(c.Rings))
	if len(c.Rings) < len(s.Job.Engine.Rings) {
		step = min(step, SetRingGaps)
	}
	for _, r := range c.Rings {
		used := r.Service.Subject != "" && r.Service.Verdict == uncertainty.Within
		if r.Measured.Subject == "" && (r.Filing.Action == rings.FileEnds || r.Filing.Action == rings.TooWide && !used) {
			step = min(step, SetRingGaps)
		}
	}
	return step
}

// wantsWall reports whether a wall has to be measured before a sleeve can be chosen.
func (s Sheet) wantsWall(i int) bool {
	return s.Choice.Cylinders[i].Route == oversize.Sleeve && s.Job.Engine.Limits.LeastWall != 0 && s.Job.Cylinders[i].ThinnestWall == 0
}

// wantsPiston reports whether a piston has to be measured before a wall that is not worked on can be kept.
func (s Sheet) wantsPiston(i int) bool {
	return s.Choice.Cylinders[i].Route == oversize.MakersProcess && !s.Job.Engine.Limits.PistonClearance.IsZero() &&
		len(s.Cylinders[i].KeptClearances) == 0
}

// worst returns Beyond where any is beyond, Within where all are within.
func worst(all ...uncertainty.Verdict) uncertainty.Verdict {
	v := uncertainty.Within
	for _, a := range all {
		if a == uncertainty.Beyond || a == uncertainty.Undecided && v == uncertainty.Within {
			v = a
		}
	}
	return v
}

// passStep is the step while a bore is honed. One that was bored into its window has no stock left for
// the hone, and still needs its pattern.
func passStep(d hone.Decision, made int) Step {
	switch {
	case d == hone.GoOn, d == hone.StopHere && made == 0:
		return HoneToSize
	case d == hone.StopHere:
		return WashAndProve
	case d == hone.PastSize:
		return Oversized
	}
	return MeasureBetter
}

// proven is the step of a bore that has been finished and read. What is beyond its limit for certain calls
// before what is missing, and that before what is in doubt.
func (s *Sheet) proven(i int) Step {
	c, p := s.Cylinders[i], s.Cylinders[i].Proof
	wanted := !s.Job.Tools.Crosshatch.IsZero()
	switch {
	case p.Shrunk:
		return MeasureBetter
	case p.NotAtRest:
		return WashAndProve
	}
	beyond, doubtful := Reassemble, Reassemble
	hear := func(v uncertainty.Verdict, step Step) {
		switch v {
		case uncertainty.Beyond:
			beyond = min(beyond, step)
		case uncertainty.Undecided:
			doubtful = min(doubtful, step)
		}
	}
	sized := false // whether the bore itself is what its size wants
	for _, f := range p.Findings {
		hear(f.Verdict, sizeStep(f))
		sized = sized || f.Limit == bore.LimitNew && f.Verdict != uncertainty.Within
	}
	for _, f := range p.Clearances {
		if sized {
			break // the size is what its piston leaves
		}
		step := Rework // another piston
		if f.Verdict == uncertainty.Undecided {
			step = MeasureBetter
			if f.Edge == uncertainty.Lower && !stays(s.Choice.Cylinders[i]) {
				step = HoneToSize
			}
		}
		hear(f.Verdict, step)
	}
	if wanted && p.Crosshatch != (CrosshatchFinding{}) {
		hear(p.Crosshatch.Verdict, Rework)
	}
	switch {
	case beyond != Reassemble:
		return beyond
	case len(p.Missing) > 0, wanted && p.Crosshatch == (CrosshatchFinding{}):
		return WashAndProve
	case len(p.Findings) == 0:
		return MeasureBetter // nothing was given to hold it against
	}
	step := min(doubtful, ringStep(c.Rings))
	if len(c.Rings) < len(s.Job.Engine.Rings) {
		step = min(step, SetRingGaps)
	}
	for _, r := range c.Rings {
		if r.Measured.Subject == "" && (r.Filing.Now.Subject != "" || r.Service.Subject != "") {
			step = min(step, SetRingGaps) // not measured in this bore yet
		}
	}
	return step
}

// sizeStep is the step that a finding of a finished bore calls for. One that was cut to a size can be
// honed on where it is too small, or may be, and is past its size where it is too large.
func sizeStep(f bore.Finding) Step {
	switch {
	case f.NotMeasured:
		return MeasureBetter
	case f.Limit == bore.LimitNew && f.Edge == uncertainty.Lower:
		return HoneToSize
	case f.Verdict == uncertainty.Undecided:
		return MeasureBetter
	case f.Limit == bore.LimitNew:
		return Oversized
	}
	return Rework
}

// ringStep is the step that the rings call for.
func ringStep(rs []RingSheet) Step {
	step := Reassemble
	for _, r := range rs {
		if r.Unfit || r.butts() || r.crosses() {
			step = min(step, AskMaker)
		}
		if r.Least.Value != 0 && r.HotEnough.Verdict == uncertainty.Undecided {
			step = min(step, MeasureBetter)
		}
		switch {
		case r.Measured.Subject == "" || r.Measured.Verdict == uncertainty.Within:
		case r.Measured.Verdict == uncertainty.Beyond, r.Filing.Action == rings.FileEnds:
			step = min(step, SetRingGaps)
		default:
			step = min(step, MeasureBetter)
		}
	}
	return step
}

// butts reports whether the ends of a ring touch when hot, or leave less than is wanted there.
func (r RingSheet) butts() bool {
	return r.Hot.Value < 0 || r.HotEnough.Verdict == uncertainty.Beyond
}

// crosses reports whether an end of a pegged ring crosses a port.
func (r RingSheet) crosses() bool {
	return slices.ContainsFunc(r.Ports, func(room rings.Room) bool { return room.Crosses })
}

// settled reports whether what is to be done about a ring is known: by its gap as measured, or else as
// foretold.
func (r RingSheet) settled() bool {
	if r.Measured.Subject != "" {
		return r.Measured.Verdict != uncertainty.Undecided || r.Filing.Action == rings.FileEnds
	}
	return !r.Doubtful && (r.Filing.Now.Subject == "" || r.Filing.Action != rings.Undecided)
}
