// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"borewright.example/internal/enum"
)

// A Caution is something that can hurt a person or spoil the bore. [Caution.Text] is the warning
// in full, [Caution.Source] where it comes from.
//
// A caution never replaces the tool maker's and the engine maker's instructions, local rules, or
// somebody who has done the work.
type Caution int8

// The cautions. The zero value warns of nothing.
const (
	NoCaution Caution = iota
	KindNotGiven
	RigidInside
	BallTurning
	OilAndStroke
	DoesNotCorrect
	NothingLoose
	StopToMeasure
	KeepGritOut
	WashAndOil
	HandTooFast
	SurfaceFast
	SurfaceSlow
	StrokeIsSet
)

const (
	commonPractice = "common practice"
	ownJudgement   = "this library's own judgement"
)

var cautionRows = [...]enum.Row{
	NoCaution: {"none", "", ""},
	KindNotGiven: {"kind not given", "Say which kind of hone it is: a rigid-stone hone must stand still as it enters and leaves, " +
		"a ball-type or brush hone must turn. No one rule is safe for both.", commonPractice},
	RigidInside: {"rigid inside", "A rigid-stone hone is put in, started, stopped and taken out with its stones drawn in, and never " +
		"turns outside the bore or leaves it while turning: it can throw a stone.", commonPractice},
	BallTurning: {"keep turning", "A ball-type or brush hone turns slowly as it enters and as it leaves, or it draws straight scratches; " +
		"never run it at speed in the open air.", "US Army TM 5-3805-262-34, p. 4-8, for the brush; common practice for the ball type"},
	OilAndStroke: {"oil and stroke", "Flood the wall with honing oil and keep the tool travelling as long as it turns.", commonPractice},
	DoesNotCorrect: {"does not correct", "A ball-type or brush hone follows the wall it finds: it takes off the glaze, it does not make an " +
		"oval or tapered bore round and straight.", commonPractice},
	NothingLoose:  {"nothing loose", "No gloves, rag or loose sleeve near a turning tool; clamp the cylinder; guard the eyes.", commonPractice},
	StopToMeasure: {"stop to measure", "Stop the drive and see it stand still before measuring or reaching in.", commonPractice},
	KeepGritOut: {"keep grit out", "Strip the engine, or cover every oil hole and everything below the bore, before abrasive comes near.",
		"US Army TM 9-2815-202-34; TM 5-3895-346-14"},
	WashAndOil: {"wash and oil", "Solvent only moves the grit about: wash the bore with hot water and soap, brush it till a white " +
		"cloth stays clean, dry it, oil it at once.", "NMWR 9-2815-220, WP 0012 (soap and water at 160 °F); the cloth is common practice"},
	HandTooFast: {"hand too fast", "More than two full cycles a second is beyond what a hand strokes evenly: the strokes get short, the " +
		"tool comes out of the bore, the wrist pays.", ownJudgement},
	SurfaceFast: {"surface fast", "The abrasive goes round faster than 110 m/min, the top of the band often quoted for stones: heat, glazing, and " +
		"a flatter crosshatch.", commonPractice},
	SurfaceSlow: {"surface slow", "The abrasive goes round slower than 15 m/min, the foot of the band often quoted for stones: slow cutting, and a " +
		"setting hard to hold.", commonPractice},
	StrokeIsSet: {"stroke is set", "The stroke follows from the bore, the tool and what may stand out at each end; to change it for the " +
		"sake of the angle takes the tool out of the bore or leaves part of the wall unhoned.", commonPractice},
}

// String returns a short name, "rigid inside"; "none" for no caution.
func (c Caution) String() string { return enum.Name(c, enum.Names(cautionRows[:])) }

// Text returns the warning in full, in a sentence or two; "" for a value that warns of nothing.
func (c Caution) Text() string { return enum.Sentence(c, cautionRows[:]) }

// Source returns where the warning comes from: a published source, "common practice", or this
// library's own judgement; "" for a value that is no caution.
func (c Caution) Source() string { return enum.Source(c, cautionRows[:]) }

// MarshalText returns the text of [Caution.String]. A value that is none of the cautions is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return enum.Marshal(c, enum.Names(cautionRows[:])) }

// UnmarshalText reads the text of [Caution.String]; any other is [units.ErrUnknownName]. On error the receiver keeps
// its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, enum.Names(cautionRows[:]))
}
