// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import "borewright.example/internal/enum"

// A Reason is why a row of the ledger stands where it does.
type Reason int8

// Reasons, the most pressing first: what makes the readings void, then what is certain, then what is
// missing, then what is in doubt.
const (
	NoReason Reason = iota
	// Void.
	Contradicts  // two facts that cannot both be true
	NotAtRest    // the cylinder was not at the temperature of the standard
	RecordBroken // the record of honing cannot be followed
	// Certain.
	BeyondLimit // beyond the maker's figure
	Touches     // parts that must not touch do
	EndCrosses  // an end of a ring crosses a port
	ComesLoose  // the sleeve is not proven to stay tight
	WallWasCut  // a coated or bare aluminium-silicon wall was cut in this job
	Peels       // plating that lifts
	TooDeep     // a score or pit deeper than what comes off
	PastSize    // honed past the finish window
	Unfit       // no gap in the maker's window leaves what is wanted when hot
	NoSoundFit  // the sleeve's fit does not hold, or there is none
	// Missing.
	Untold       // the job does not say what the route hangs on
	NotCounted   // nobody counted
	LooksSlipped // far from what is usual, and not confirmed
	NotRead      // no reading
	NoStandard   // the gauge was set on no standard: it decides no size
	NotSaid      // the job does not say
	NotMeasured  // nobody measured it
	NotSeen      // the places read do not show it
	NoLimit      // no figure to hold it against
	ToCome       // the work is still to come
	// In doubt.
	Doubtful       // the doubt reaches over the limit
	MayTouch       // the doubt reaches over touching
	RunsTight      // by its temperatures the piston is the larger in work, or may be
	RecordDoubtful // what the passes took cannot be told from the doubt
	RecordUnasked  // a record of honing where nothing is honed to a size
	OthersFirst    // another cylinder is not so far
	// What a settled row rests on, where that is not a finding of its own.
	ByColdWindow // the maker's windows at 20 °C stand for the running ones
	ByMakersList // the size is on the maker's own list
	ByOwnRecord  // the job itself shows it
	Unwanted     // nobody asked
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
	NoReason:       {"none", "", isSettled, false, false},
	Contradicts:    {"contradicts", "two facts cannot both be true", isVoid, false, false},
	NotAtRest:      {"not at rest", "the cylinder was not at the temperature of the standard", isVoid, false, false},
	RecordBroken:   {"record broken", "the record of honing cannot be followed", isVoid, false, false},
	BeyondLimit:    {"beyond", "beyond the limit", isCertain, false, true},
	Touches:        {"touches", "parts touch that must not", isCertain, false, false},
	EndCrosses:     {"end crosses", "an end crosses a port, where it springs out and breaks", isCertain, false, false},
	ComesLoose:     {"comes loose", "its grip at the running temperature is not proven: do not run on it", isCertain, false, false},
	WallWasCut:     {"wall was cut", "a wall that is never bored or honed was cut", isCertain, false, false},
	Peels:          {"peels", "the plating lifts, or bare metal shows", isCertain, false, false},
	TooDeep:        {"too deep", "a score or pit is deeper than what comes off", isCertain, true, true},
	PastSize:       {"past size", "past its size: a larger piston, or the next oversize", isCertain, false, false},
	Unfit:          {"unfit", "no gap in the maker's window is enough when hot", isCertain, false, false},
	NoSoundFit:     {"no sound fit", "the fit does not hold, or there is none", isCertain, false, false},
	Untold:         {"untold", "the job does not say", isMissing, false, false},
	NotCounted:     {"not counted", "nobody counted", isMissing, false, false},
	LooksSlipped:   {"looks slipped", "far from what is usual: right, or a slip?", isMissing, false, false},
	NotRead:        {"not read", "not read", isMissing, false, false},
	NoStandard:     {"no standard", "the gauge was set on no standard: it decides no size", isMissing, false, false},
	NotSaid:        {"not said", "the job does not say", isMissing, true, false},
	NotMeasured:    {"not measured", "not measured", isMissing, true, false},
	NotSeen:        {"not seen", "the places read do not show it", isMissing, true, false},
	NoLimit:        {"no limit", "no figure is given to hold it against", isMissing, true, false},
	ToCome:         {"to come", "still to come", isMissing, false, false},
	Doubtful:       {"doubtful", "the doubt reaches over the limit", isDoubt, true, false},
	MayTouch:       {"may touch", "by the doubt the parts may touch", isDoubt, false, false},
	RunsTight:      {"runs tight", "by these temperatures the piston may be the larger in work: ask its supplier", isDoubt, true, true},
	RecordDoubtful: {"record doubtful", "what the passes took cannot be told from the doubt of the gauge", isDoubt, false, false},
	RecordUnasked:  {"record unasked", "a record of honing, and no size to hone to", isDoubt, false, false},
	OthersFirst:    {"others first", "another cylinder of the engine is not so far", isDoubt, false, false},
	ByColdWindow:   {"by cold window", "by the maker's window at 20 °C", isSettled, false, false},
	ByMakersList:   {"by maker's list", "by a size on the maker's own list", isSettled, false, false},
	ByOwnRecord:    {"by record", "as the job shows", isSettled, false, false},
	Unwanted:       {"unwanted", "nobody asked", isSettled, false, false},
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
