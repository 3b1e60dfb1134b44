// SPDX-License-Identifier: BSD-3-Clause

package hone

import "borewright.example/internal/enum"

// A Kind is the kind of honing tool. The kinds want opposite things as they enter and leave the
// bore, so the kind decides the cautions; the zero value, not given, carries a caution of its own.
type Kind int8

// The kinds of hone.
const (
	_          Kind = iota // not given
	BallType               // a flexible shaft set with abrasive balls
	BrushType              // a brush of abrasive filaments
	RigidStone             // stones in a rigid, expanding carrier
)

var kindNames = []string{"not given", "ball-type hone", "brush hone", "rigid-stone hone"}

// String returns "ball-type hone", "brush hone", "rigid-stone hone", or "not given".
func (k Kind) String() string { return enum.Name(k, kindNames) }

// MarshalText returns the text of [Kind.String]. A value that is no kind is [units.ErrUnknownName].
func (k Kind) MarshalText() ([]byte, error) { return enum.Marshal(k, kindNames) }

// UnmarshalText reads the text of [Kind.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (k *Kind) UnmarshalText(text []byte) error { return enum.Unmarshal(k, text, kindNames) }

// FollowsWall reports whether the tool follows the wall that it finds: it deglazes and cuts the crosshatch,
// and takes no bore to a size or a form. It is false of a kind that is not given.
func (k Kind) FollowsWall() bool { return k == BallType || k == BrushType }

// Cautions returns what must be said before this kind of tool is used, in the order of the work.
func (k Kind) Cautions() []Caution {
	cs := []Caution{nothingLoose, keepGritOut}
	switch k {
	case BallType, BrushType:
		cs = append(cs, ballTurning, oilAndStroke, doesNotCorrect)
	case RigidStone:
		cs = append(cs, rigidInside, oilAndStroke)
	default:
		cs = append(cs, kindNotGiven)
	}
	return append(cs, stopToMeasure, washAndOil)
}

// A Drive is what moves the tool along the bore. The zero value, not given, is treated as a hand,
// which holds neither its speed nor its stroke exactly.
type Drive int8

// The drives.
const (
	_         Drive = iota // not given
	ByHand                 // a drill held in the hand, or a lever
	ByMachine              // a machine that holds its spindle speed and its stroking
)

var driveNames = []string{"not given", "by hand", "by machine"}

// String returns "by hand", "by machine", or "not given".
func (d Drive) String() string { return enum.Name(d, driveNames) }

// MarshalText returns the text of [Drive.String]. A value that is no drive is [units.ErrUnknownName].
func (d Drive) MarshalText() ([]byte, error) { return enum.Marshal(d, driveNames) }

// UnmarshalText reads the text of [Drive.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (d *Drive) UnmarshalText(text []byte) error { return enum.Unmarshal(d, text, driveNames) }
