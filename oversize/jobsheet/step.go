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
	StepMeasure        Step = iota // read the bore, or look at it
	StepTell                       // put down in the job what it does not say
	StepMeasureBetter              // what was read does not decide: read it better
	StepAskMaker                   // what the maker allows does not go together here, or this wall is not worked on
	StepOversized                  // the bore is past its size: it takes a larger piston, or the next oversize
	StepChooseSleeve               // choose a fit for the sleeve: there is none in the job, or it does not hold
	StepGetPistons                 // get the pistons and measure them: the window to cut to follows from them
	StepFitSleeve                  // fit the sleeve and bore it
	StepBore                       // bore to the size that leaves the honing allowance
	StepHone                       // make the next honing pass, or hone on towards the size to work to
	StepDeglaze                    // deglaze, wash, and read the bore again
	StepWashAndProve               // wash, and read at rest the places of the survey, and the crosshatch
	StepRework                     // the proof failed in form, pattern, clearance or at a port
	StepSetRingGaps                // set each ring's gap and measure it in its bore
	StepWaitForOthers              // wait for the bores with which this one shares its size, or its engine
	StepLeaveUntouched             // within every limit, and a wall that is not worked on here: run it as it is
	StepReassemble                 // everything is proven, or goes on a named person's word
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
		return StepHone
	case d == hone.StopHere:
		return StepWashAndProve
	case d == hone.PastSize:
		return StepOversized
	}
	return StepMeasureBetter
}
