// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
)

// A Step is what is to be done next.
type Step int8

// The steps. Of rows alike in kind the one with the least step calls first.
const (
	Measure        Step = iota // read the bore, or look at it
	Tell                       // put down in the job what it does not say
	MeasureBetter              // what was read does not decide: read it better
	AskMaker                   // what the maker allows does not go together here, or this wall is not worked on
	Oversized                  // the bore is past its size: it takes a larger piston, or the next oversize
	ChooseSleeve               // choose a fit for the sleeve: there is none in the job, or it does not hold
	GetPistons                 // get the pistons and measure them: the window to cut to follows from them
	FitSleeve                  // fit the sleeve and bore it
	BoreOut                    // bore to the size that leaves the honing allowance
	HoneToSize                 // make the next honing pass, or hone on towards the size to work to
	DeglazeBore                // deglaze, wash, and read the bore again
	WashAndProve               // wash, and read at rest the places of the survey, and the crosshatch
	Rework                     // the proof failed in form, pattern, clearance or at a port
	SetRingGaps                // set each ring's gap and measure it in its bore
	WaitForOthers              // wait for the bores with which this one shares its size, or its engine
	LeaveUntouched             // within every limit, and a wall that is not worked on here: run it as it is
	Reassemble                 // everything is proven, or goes on a named person's word
)

var stepNames = []string{
	"measure", "say what is missing", "measure better", "ask the maker", "past its size", "choose a sleeve fit", "get and measure the pistons",
	"fit a sleeve", "bore", "hone", "deglaze", "wash and prove", "rework", "set the ring gaps", "wait for the others", "leave untouched", "reassemble",
}

// String returns the step, "wash and prove".
func (s Step) String() string { return enum.Name(s, stepNames) }

// MarshalText returns the text of [Step.String].
func (s Step) MarshalText() ([]byte, error) { return enum.Marshal(s, stepNames) }

// UnmarshalText reads the text of [Step.String]. On error the receiver keeps its value.
func (s *Step) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, stepNames) }

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
