// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import "borewright.example/internal/enum"

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
