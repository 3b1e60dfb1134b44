// SPDX-License-Identifier: BSD-3-Clause

package hone

import "fmt"

// A Kind is the kind of honing tool. The kinds want opposite things as they enter and leave the
// bore, so the kind decides the cautions; the zero value, not given, carries a caution of its own.
type Kind int8

// The kinds of hone.
const (
	KindUnknown Kind = iota
	BallType         // a flexible shaft set with abrasive balls
	BrushType        // a brush of abrasive filaments
	RigidStone       // stones in a rigid, expanding carrier
)

// String returns "ball-type hone", "brush hone", "rigid-stone hone", or "not given".
func (k Kind) String() string {
	switch k {
	case KindUnknown:
		return "not given"
	case BallType:
		return "ball-type hone"
	case BrushType:
		return "brush hone"
	case RigidStone:
		return "rigid-stone hone"
	}
	return fmt.Sprintf("Kind(%d)", int8(k))
}

// MarshalText returns the text of [Kind.String]. A value that is no kind is [units.ErrUnknownName].
func (k Kind) MarshalText() ([]byte, error) { return marshalEnum(k, RigidStone) }

// UnmarshalText reads the text of [Kind.String] back; empty text is the zero value. On error
// the receiver keeps its value.
func (k *Kind) UnmarshalText(text []byte) error { return unmarshalEnum(k, text, RigidStone) }

// Cautions returns what must be said before this kind of tool is used, in the order of the work.
func (k Kind) Cautions() []Caution {
	cs := []Caution{NothingLoose, KeepGritOut}
	switch k {
	case BallType, BrushType:
		cs = append(cs, BallTurning, OilAndStroke, DoesNotCorrect)
	case RigidStone:
		cs = append(cs, RigidInside, OilAndStroke)
	default:
		cs = append(cs, KindNotGiven)
	}
	return append(cs, StopToMeasure, WashAndOil)
}

// A Drive is what moves the tool along the bore. The zero value, not given, is treated as a hand,
// which holds neither its speed nor its stroke exactly.
type Drive int8

// The drives.
const (
	DriveUnknown Drive = iota
	ByHand             // a drill held in the hand, or a lever
	ByMachine          // a machine that holds its spindle speed and its stroking
)

// String returns "by hand", "by machine", or "not given".
func (d Drive) String() string {
	switch d {
	case DriveUnknown:
		return "not given"
	case ByHand:
		return "by hand"
	case ByMachine:
		return "by machine"
	}
	return fmt.Sprintf("Drive(%d)", int8(d))
}

// MarshalText returns the text of [Drive.String]. A value that is no drive is [units.ErrUnknownName].
func (d Drive) MarshalText() ([]byte, error) { return marshalEnum(d, ByMachine) }

// UnmarshalText reads the text of [Drive.String] back; empty text is the zero value. On error
// the receiver keeps its value.
func (d *Drive) UnmarshalText(text []byte) error { return unmarshalEnum(d, text, ByMachine) }
