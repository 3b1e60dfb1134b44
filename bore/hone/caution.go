// SPDX-License-Identifier: BSD-3-Clause

package hone

// A Caution is something that can hurt a person or spoil the bore. The zero Caution warns of nothing.
//
// A caution never replaces the tool maker's and the engine maker's instructions, local rules, or
// somebody who has done the work.
type Caution struct {
	Text    string `json:"text"`              // the warning in full, in a sentence or two
	Source  string `json:"source"`            // a published source, "common practice", or this library's own judgement
	AnyWork bool   `json:"any_work,omitzero"` // goes for any work on a cylinder, and not for honing alone
}

const (
	commonPractice = "common practice"
	ownJudgement   = "this library's own judgement"
)

var (
	kindNotGiven = Caution{Text: "Say which kind of hone it is: a rigid-stone hone must stand still as it enters and leaves, " +
		"a ball-type or brush hone must turn. No one rule is safe for both.", Source: commonPractice}
	rigidInside = Caution{Text: "A rigid-stone hone is put in, started, stopped and taken out with its stones drawn in, and never " +
		"turns outside the bore or leaves it while turning: it can throw a stone.", Source: commonPractice}
	ballTurning = Caution{Text: "A ball-type or brush hone turns slowly as it enters and as it leaves, or it draws straight scratches; " +
		"never run it at speed in the open air.", Source: "US Army TM 5-3805-262-34, p. 4-8, for the brush; common practice for the ball type"}
	oilAndStroke   = Caution{Text: "Flood the wall with honing oil and keep the tool travelling as long as it turns.", Source: commonPractice}
	doesNotCorrect = Caution{Text: "A ball-type or brush hone follows the wall it finds: it takes off the glaze, it does not make an " +
		"oval or tapered bore round and straight.", Source: commonPractice}
	nothingLoose  = Caution{Text: "No gloves, rag or loose sleeve near a turning tool; clamp the cylinder; guard the eyes.", Source: commonPractice, AnyWork: true}
	stopToMeasure = Caution{Text: "Stop the drive and see it stand still before measuring or reaching in.", Source: commonPractice, AnyWork: true}
	keepGritOut   = Caution{Text: "Strip the engine, or cover every oil hole and everything below the bore, before abrasive comes near.",
		Source: "US Army TM 9-2815-202-34; TM 5-3895-346-14"}
	washAndOil = Caution{Text: "Solvent only moves the grit about: wash the bore with hot water and soap, brush it till a white " +
		"cloth stays clean, dry it, oil it at once.", Source: "NMWR 9-2815-220, WP 0012 (soap and water at 160 °F); the cloth is common practice", AnyWork: true}
	handTooFast = Caution{Text: "More than two full cycles a second is beyond what a hand strokes evenly: the strokes get short, the " +
		"tool comes out of the bore, the wrist pays.", Source: ownJudgement}
	surfaceFast = Caution{Text: "The abrasive goes round faster than 110 m/min, the top of the band often quoted for stones: heat, glazing, and " +
		"a flatter crosshatch.", Source: commonPractice}
	surfaceSlow = Caution{Text: "The abrasive goes round slower than 15 m/min, the foot of the band often quoted for stones: slow cutting, and a " +
		"setting hard to hold.", Source: commonPractice}
	strokeIsSet = Caution{Text: "The stroke follows from the bore, the tool and what may stand out at each end; to change it for the " +
		"sake of the angle takes the tool out of the bore or leaves part of the wall unhoned.", Source: commonPractice}
)
