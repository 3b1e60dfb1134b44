// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
	"borewright.example/oversize"
	"borewright.example/rings"
	"borewright.example/units/uncertainty"
)

// A Step is what is to be done next.
type Step int8

// The steps, in the order in which an engine comes to them.
const (
	Measure        Step = iota // read the bore
	MeasureBetter              // the readings do not decide
	AskMaker                   // the wall is not to be worked on here
	FitSleeve                  // and bore it
	BoreOut                    // to the size that leaves the honing allowance
	HoneToSize                 // the next pass
	Oversized                  // honed past its size: a larger piston, or the next oversize
	DeglazeBore                // wash it, and read it again
	WashAndProve               // and read it at rest, at the places of the survey
	Rework                     // the proof failed
	SetRingGaps                // and measure each in its bore
	WaitForOthers              // whose size this bore shares
	LeaveUntouched             // within every limit, and of a wall that is not worked on here
	Reassemble                 // proven
)

var stepNames = []string{
	"measure", "measure better", "ask the maker", "fit a sleeve", "bore", "hone", "past its size", "deglaze",
	"wash and prove", "rework", "set the ring gaps", "wait for the others", "leave untouched", "reassemble",
}

// String returns the step, "wash and prove".
func (s Step) String() string { return enum.Name(s, stepNames) }

// MarshalText returns the text of [Step.String].
func (s Step) MarshalText() ([]byte, error) { return enum.Marshal(s, stepNames) }

// UnmarshalText reads the text of [Step.String]. On error the receiver keeps its value.
func (s *Step) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, stepNames) }

// steps says for each cylinder, and for the engine, what is next.
func (s *Sheet) steps() {
	s.Next = Reassemble
	for i := range s.Cylinders {
		c := &s.Cylinders[i]
		c.Next = s.step(i)
		s.Next = min(s.Next, c.Next)
	}
}

func (s *Sheet) step(i int) Step {
	given, c := s.Job.Cylinders[i], s.Cylinders[i]
	if len(given.Readings) == 0 {
		return Measure
	}
	if len(s.Choice.Cylinders) == 0 {
		return WaitForOthers
	}
	choice := s.Choice.Cylinders[i]
	switch {
	case choice.Route == oversize.Undecided:
		return MeasureBetter
	case choice.Route == oversize.MakersProcess:
		return untouched(c, given)
	case s.waiting():
		return WaitForOthers
	case c.Proof != nil:
		return s.proven(i)
	case c.Pass.Size.Value != 0:
		return passStep(c.Pass.Decision)
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
// was judged is within.
func untouched(c CylinderSheet, given Cylinder) Step {
	deciding := oversize.Deciding(c.Findings)
	if given.Peeling || len(deciding) == 0 {
		return AskMaker
	}
	for _, f := range deciding {
		switch f.Verdict {
		case uncertainty.Undecided:
			return MeasureBetter
		case uncertainty.Beyond:
			return AskMaker
		}
	}
	return LeaveUntouched
}

func passStep(d hone.Decision) Step {
	switch d {
	case hone.GoOn:
		return HoneToSize
	case hone.StopHere:
		return WashAndProve
	case hone.PastSize:
		return Oversized
	}
	return MeasureBetter
}

// proven is the step of a bore that has been finished and read.
func (s *Sheet) proven(i int) Step {
	c := s.Cylinders[i]
	switch c.Proof.verdict() {
	case uncertainty.Beyond:
		return Rework
	case uncertainty.Undecided:
		return MeasureBetter
	}
	if len(c.Rings) < len(s.Job.Engine.Rings) {
		return SetRingGaps
	}
	for _, r := range c.Rings {
		switch {
		case r.Filing.Now.Subject == "" && r.Service.Subject == "":
			continue // nothing to hold it against
		case r.Measured.Subject == "" || r.Measured.Verdict == uncertainty.Beyond:
			return SetRingGaps
		case r.Measured.Verdict == uncertainty.Undecided:
			return MeasureBetter
		}
		for _, room := range r.Ports {
			if room.Crosses {
				return Rework
			}
		}
	}
	return Reassemble
}

// fresh reports whether a ring's gap has to be that of a new ring: any bore that was cut gets new
// ones.
func fresh(c oversize.CylinderChoice) bool { return c.Work != oversize.Deglaze }

// settled reports whether what is to be done about a ring is known.
func (r RingSheet) settled() bool {
	return !r.Doubtful && (r.Filing.Now.Subject == "" || r.Filing.Action != rings.Undecided)
}
