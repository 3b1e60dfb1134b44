// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore/hone"
	"borewright.example/internal/enum"
)

// A Demand is a kind of thing that must be true before an engine goes together.
type Demand int8

// Demands, in the order in which they stand in the ledger. Those of the engine come first.
const (
	demandTold           Demand = iota // what the route hangs on has been said
	demandCounted                      // nothing that was written down was lost
	demandUsual                        // a figure is one that such an engine can have
	demandAgreement                    // two facts that determine each other agree
	demandRead                         // the bore has been read
	demandRoute                        // what is to be done with it is decided
	demandPistons                      // its piston is there, and measured
	demandWork                         // it is bored, sleeved, honed or deglazed, as was decided
	demandRecord                       // the record of its honing hangs together
	demandSleeve                       // the sleeve: seat, stress, grip
	demandWashed                       // it was washed before it was read again
	demandRest                         // it was at the temperature of the standard when it was read
	demandClamping                     // it was held in the same way both times
	demandTravel                       // all of ring travel was looked at, and all places of the survey again
	demandSize                         // every diameter
	demandOvality                      // greatest minus least in one plane
	demandTaper                        // along one axis
	demandSpread                       // greatest minus least of all
	demandForm                         // roundness and cylindricity of the wall
	demandPits                         // scores and pits gone, or shallow enough
	demandRidge                        // none left in a bore that is kept
	demandWall                         // thick enough at its thinnest place
	demandCrosshatch                   // the one wanted
	demandTexture                      // of the finished wall
	demandLeastClearance               // of its piston, at 20 °C
	demandGreatestClearance
	demandRunningClearance
	demandGap        // of a ring in its bore
	demandServiceGap // against the greatest in service
	demandRunningGap // the ends do not touch in work
	demandHotGap     // what is wanted between them in work
	demandSide       // of a ring in its groove
	demandEnds       // an end of a ring and a port
	demandOthers     // the other cylinders of the engine are as far
)

var demandNames = []string{
	"told", "counted", "usual", "agreement", "read", "route", "pistons", "work", "honing record", "sleeve", "washed", "rest", "clamping",
	"travel", "size", "ovality", "taper", "greatest minus least", "form", "pits", "ridge", "wall", "crosshatch", "texture", "least clearance",
	"greatest clearance", "running clearance", "gap", "gap in service", "running gap", "hot gap", "side clearance", "ring ends", "others",
}

var demandWords = []string{
	"what the work hangs on is said", "nothing written down is lost", "the figure can be", "two facts agree", "the bore is read",
	"what to do is decided", "the piston is there and measured", "the work is done", "the honing record holds", "the sleeve's fit holds",
	"washed before it was read", "at rest when read", "held as before", "all of ring travel is seen", "size", "ovality", "taper",
	"greatest minus least", "roundness and cylindricity", "scores and pits", "no ridge left", "wall left", "crosshatch", "texture", "least clearance", "greatest clearance",
	"running clearance", "ring gap", "ring gap in service", "ring ends apart in work", "hot ring gap wanted", "side clearance in the groove", "ring ends and ports",
	"the other cylinders are as far",
}

// String returns the demand in words, "all of ring travel is seen".
func (d Demand) String() string { return enum.Name(d, demandWords) }

// MarshalText returns a short name, "travel", as keys of rows have it.
func (d Demand) MarshalText() ([]byte, error) { return enum.Marshal(d, demandNames) }

// UnmarshalText reads the short name. On error the receiver keeps its value.
func (d *Demand) UnmarshalText(text []byte) error { return enum.Unmarshal(d, text, demandNames) }

// A State is where a row of the ledger stands.
type State int8

// States. The zero value is open: nothing is true because nobody spoke against it.
const (
	StateOpen State = iota
	StateProven
	StateFailed
	StateAccepted // on somebody's word
	StateNotAsked // no engine needs it, and nobody asked
)

var stateNames = []string{"open", "proven", "failed", "accepted", "not asked"}

// String returns "open", "proven", "failed", "accepted" or "not asked".
func (s State) String() string { return enum.Name(s, stateNames) }

// MarshalText returns the text of [State.String].
func (s State) MarshalText() ([]byte, error) { return enum.Marshal(s, stateNames) }

// UnmarshalText reads the text of [State.String]. On error the receiver keeps its value.
func (s *State) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, stateNames) }

// settled reports whether a row in this state holds nothing up.
func (s State) settled() bool { return s == StateProven || s == StateAccepted || s == StateNotAsked }

// A Reason is why a row of the ledger stands where it does.
type Reason int8

// Reasons, the most pressing first: what makes the readings void, then what is certain, then what is
// missing, then what is in doubt.
const (
	noReason Reason = iota
	// Void.
	contradicts  // two facts that cannot both be true
	notAtRest    // the cylinder was not at the temperature of the standard
	recordBroken // the record of honing cannot be followed
	// Certain.
	beyondLimit // beyond the maker's figure
	touches     // parts that must not touch do
	endCrosses  // an end of a ring crosses a port
	comesLoose  // the sleeve is not proven to stay tight
	wallWasCut  // a coated or bare aluminium-silicon wall was cut in this job
	peels       // plating that lifts
	tooDeep     // a score or pit deeper than what comes off
	ridgeLeft   // at the top of ring travel
	pastSize    // honed past the finish window
	unfit       // no gap in the maker's window leaves what is wanted when hot
	noSoundFit  // the sleeve's fit does not hold, or there is none
	// Missing.
	untold       // the job does not say what the route hangs on
	notCounted   // nobody counted
	looksSlipped // far from what is usual, and not confirmed
	notRead      // no reading
	noStandard   // the gauge was set on no standard: it decides no size
	notSaid      // the job does not say
	notMeasured  // nobody measured it
	wideRing     // nor the gap in the bore it goes into, and by its first reading it will be too wide
	notSeen      // the places read do not show it
	noLimit      // no figure to hold it against
	toCome       // the work is still to come
	// In doubt.
	doubtful       // the doubt reaches over the limit
	mayTouch       // the doubt reaches over touching
	runsTight      // by its temperatures the piston is the larger in work, or may be
	recordDoubtful // what the passes took cannot be told from the doubt
	recordUnasked  // a record of honing where nothing is honed to a size
	othersFirst    // another cylinder is not so far
	// What a settled row rests on, where that is not a finding of its own.
	byColdWindow // the maker's windows at 20 °C stand for the running ones
	byMakersList // the size is on the maker's own list
	byOwnRecord  // the job itself shows it
	unwanted     // nobody asked
)

// A reasonFact is what is to be known of a reason.
type reasonFact struct {
	name, sentence string
	rank           rank
	accepts        bool // an open row may be accepted by a person
	exceeds        bool // a failed row may be: it is a maker's figure
}

// rank is how pressing reasons are against each other.
type rank int8

const (
	isVoid rank = iota
	isCertain
	isMissing
	isDoubt
	isSettled
)

var reasonFacts = [...]reasonFact{
	noReason:       {"none", "", isSettled, false, false},
	contradicts:    {"contradicts", "two facts cannot both be true", isVoid, false, false},
	notAtRest:      {"not at rest", "the cylinder was not at the temperature of the standard", isVoid, false, false},
	recordBroken:   {"record broken", "the record of honing cannot be followed", isVoid, false, false},
	beyondLimit:    {"beyond", "beyond the limit", isCertain, false, true},
	touches:        {"touches", "parts touch that must not", isCertain, false, false},
	endCrosses:     {"end crosses", "an end crosses a port, where it springs out and breaks", isCertain, false, false},
	comesLoose:     {"comes loose", "its grip at the running temperature is not proven: do not run on it", isCertain, false, false},
	wallWasCut:     {"wall was cut", "a wall that is never bored or honed was cut", isCertain, false, false},
	peels:          {"peels", "the plating lifts, or bare metal shows", isCertain, false, false},
	tooDeep:        {"too deep", "a score or pit is deeper than what comes off", isCertain, true, true},
	ridgeLeft:      {"ridge left", "a ridge is left, which a new top ring strikes and breaks on", isCertain, false, false},
	pastSize:       {"past size", "past its size: a larger piston, or the next oversize", isCertain, false, false},
	unfit:          {"unfit", "no gap in the maker's window is enough when hot", isCertain, false, false},
	noSoundFit:     {"no sound fit", "the fit does not hold, or there is none", isCertain, false, false},
	untold:         {"untold", "the job does not say", isMissing, false, false},
	notCounted:     {"not counted", "nobody counted", isMissing, false, false},
	looksSlipped:   {"looks slipped", "far from what is usual: right, or a slip?", isMissing, false, false},
	notRead:        {"not read", "not read", isMissing, false, false},
	noStandard:     {"no standard", "the gauge was set on no standard: it decides no size", isMissing, false, false},
	notSaid:        {"not said", "the job does not say", isMissing, true, false},
	notMeasured:    {"not measured", "not measured", isMissing, true, false},
	wideRing:       {"wide ring", "by its first reading too wide for this bore", isMissing, true, false},
	notSeen:        {"not seen", "the places read do not show it", isMissing, true, false},
	noLimit:        {"no limit", "no figure is given to hold it against", isMissing, true, false},
	toCome:         {"to come", "still to come", isMissing, false, false},
	doubtful:       {"doubtful", "the doubt reaches over the limit", isDoubt, true, false},
	mayTouch:       {"may touch", "by the doubt the parts may touch", isDoubt, false, false},
	runsTight:      {"runs tight", "by these temperatures the piston may be the larger in work: ask its supplier", isDoubt, true, true},
	recordDoubtful: {"record doubtful", "what the passes took cannot be told from the doubt of the gauge", isDoubt, false, false},
	recordUnasked:  {"record unasked", "a record of honing, and no size to hone to", isDoubt, false, false},
	othersFirst:    {"others first", "another cylinder of the engine is not so far", isDoubt, false, false},
	byColdWindow:   {"by cold window", "by the maker's window at 20 °C", isSettled, false, false},
	byMakersList:   {"by maker's list", "by a size on the maker's own list", isSettled, false, false},
	byOwnRecord:    {"by record", "as the job shows", isSettled, false, false},
	unwanted:       {"unwanted", "nobody asked", isSettled, false, false},
}

func reasonNames() []string {
	names := make([]string, len(reasonFacts))
	for i, f := range reasonFacts {
		names[i] = f.name
	}
	return names
}

func (r Reason) fact() reasonFact {
	if r < 0 || int(r) >= len(reasonFacts) {
		return reasonFact{sentence: enum.Name(r, reasonNames())}
	}
	return reasonFacts[r]
}

// String returns the reason in words, "no figure is given to hold it against".
func (r Reason) String() string { return r.fact().sentence }

// MarshalText returns a short name, "no limit".
func (r Reason) MarshalText() ([]byte, error) { return enum.Marshal(r, reasonNames()) }

// UnmarshalText reads the short name. On error the receiver keeps its value.
func (r *Reason) UnmarshalText(text []byte) error { return enum.Unmarshal(r, text, reasonNames()) }

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
