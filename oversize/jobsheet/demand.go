// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import "borewright.example/internal/enum"

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
	"travel", "size", "ovality", "taper", "greatest minus least", "form", "pits", "wall", "crosshatch", "texture", "least clearance",
	"greatest clearance", "running clearance", "gap", "gap in service", "running gap", "hot gap", "side clearance", "ring ends", "others",
}

var demandWords = []string{
	"what the work hangs on is said", "nothing written down is lost", "the figure can be", "two facts agree", "the bore is read",
	"what to do is decided", "the piston is there and measured", "the work is done", "the honing record holds", "the sleeve's fit holds",
	"washed before it was read", "at rest when read", "held as before", "all of ring travel is seen", "size", "ovality", "taper",
	"greatest minus least", "roundness and cylindricity", "scores and pits", "wall left", "crosshatch", "texture", "least clearance", "greatest clearance",
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
