// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
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

// A cautionRow is the short name, the warning and the source of one caution.
type cautionRow struct{ name, text, source string }

const (
	commonPractice = "common practice"
	ownJudgement   = "this library's own judgement"
)

func (c Caution) row() (r cautionRow, ok bool) {
	switch c {
	case NoCaution:
		r = cautionRow{"none", "", ""}
	case KindNotGiven:
		r = cautionRow{"kind not given", "Say which kind of hone it is: a rigid-stone hone must stand still as it enters and leaves, " +
			"a ball-type or brush hone must turn. No one rule is safe for both.", commonPractice}
	case RigidInside:
		r = cautionRow{"rigid inside", "A rigid-stone hone is put in, started, stopped and taken out with its stones drawn in, and never " +
			"turns outside the bore or leaves it while turning: it can throw a stone.", commonPractice}
	case BallTurning:
		r = cautionRow{"keep turning", "A ball-type or brush hone turns slowly as it enters and as it leaves, or it draws straight scratches; " +
			"never run it at speed in the open air.", "US Army TM 5-3805-262-34, p. 4-8, for the brush; common practice for the ball type"}
	case OilAndStroke:
		r = cautionRow{"oil and stroke", "Flood the wall with honing oil and keep the tool travelling as long as it turns.", commonPractice}
	case DoesNotCorrect:
		r = cautionRow{"does not correct", "A ball-type or brush hone follows the wall it finds: it takes off the glaze, it does not make an " +
			"oval or tapered bore round and straight.", commonPractice}
	case NothingLoose:
		r = cautionRow{"nothing loose", "No gloves, rag or loose sleeve near a turning tool; clamp the cylinder; guard the eyes.", commonPractice}
	case StopToMeasure:
		r = cautionRow{"stop to measure", "Stop the drive and see it stand still before measuring or reaching in.", commonPractice}
	case KeepGritOut:
		r = cautionRow{"keep grit out", "Strip the engine, or cover every oil hole and everything below the bore, before abrasive comes near.",
			"US Army TM 9-2815-202-34; TM 5-3895-346-14"}
	case WashAndOil:
		r = cautionRow{"wash and oil", "Solvent only moves the grit about: wash the bore with hot water and soap, brush it till a white " +
			"cloth stays clean, dry it, oil it at once.", "NMWR 9-2815-220, WP 0012 (soap and water at 160 °F); the cloth is common practice"}
	case HandTooFast:
		r = cautionRow{"hand too fast", "More than two full cycles a second is beyond what a hand strokes evenly: the strokes get short, the " +
			"tool comes out of the bore, the wrist pays.", ownJudgement}
	case SurfaceFast:
		r = cautionRow{"surface fast", "The abrasive goes round faster than 110 m/min, the top of the band often quoted: heat, glazing, and " +
			"a flatter crosshatch.", commonPractice}
	case SurfaceSlow:
		r = cautionRow{"surface slow", "The abrasive goes round slower than 15 m/min, the foot of the band often quoted: slow cutting, and a " +
			"setting hard to hold.", commonPractice}
	case StrokeIsSet:
		r = cautionRow{"stroke is set", "The stroke follows from the bore, the tool and what may stand out at each end; to change it for the " +
			"sake of the angle takes the tool out of the bore or leaves part of the wall unhoned.", commonPractice}
	default:
		return r, false
	}
	return r, true
}

// Text returns the warning in full, or "" for a value that is no caution.
func (c Caution) Text() string { r, _ := c.row(); return r.text }

// Source returns where the warning comes from: a published source, "common practice", or this
// library's own judgement.
func (c Caution) Source() string { r, _ := c.row(); return r.source }

// String returns the short name, "rigid inside"; "none" for no caution.
func (c Caution) String() string {
	r, ok := c.row()
	if !ok {
		return fmt.Sprintf("Caution(%d)", int8(c))
	}
	return r.name
}

// MarshalText returns the text of [Caution.String]. A value that is no caution is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return marshalEnum(c, StrokeIsSet) }

// UnmarshalText reads the text of [Caution.String] back; empty text is the zero value. On error
// the receiver keeps its value.
func (c *Caution) UnmarshalText(text []byte) error { return unmarshalEnum(c, text, StrokeIsSet) }

// marshalEnum and unmarshalEnum serve the enumerations of this package, whose values run from 0
// to last.
func marshalEnum[E interface {
	~int8
	fmt.Stringer
}](e, last E) ([]byte, error) {
	if e < 0 || e > last {
		return nil, fmt.Errorf("hone: %v: %w", e, units.ErrUnknownName)
	}
	return []byte(e.String()), nil
}

func unmarshalEnum[E interface {
	~int8
	fmt.Stringer
}](e *E, text []byte, last E) error {
	if len(text) == 0 {
		*e = 0
		return nil
	}
	for v := E(0); v <= last; v++ {
		if v.String() == string(text) {
			*e = v
			return nil
		}
	}
	return fmt.Errorf("hone: %.80q is no %T: %w", text, *e, units.ErrUnknownName)
}
