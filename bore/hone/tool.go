// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

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

var driveNames = []string{"not given", "by hand", "by machine"}

// String returns "by hand", "by machine", or "not given".
func (d Drive) String() string { return enum.Name(d, driveNames) }

// MarshalText returns the text of [Drive.String]. A value that is no drive is [units.ErrUnknownName].
func (d Drive) MarshalText() ([]byte, error) { return enum.Marshal(d, driveNames) }

// UnmarshalText reads the text of [Drive.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (d *Drive) UnmarshalText(text []byte) error { return enum.Unmarshal(d, text, driveNames) }

// Fits reports whether a tool is of a size for a bore that is honed from one diameter to another; it returns
// nil, or why it is not. For rigid stones size is from the least diameter that they draw in to, to the
// greatest they open to: they must go in freely and still reach the last size. For a ball-type or brush
// hone it is the diameter of the free tool, Min alone or Min to Max: it presses only by being larger
// than the bore, up to the last size. By how much is for its maker to say; such tools are mostly sold by
// the bore they are for, and are larger themselves (common practice).
//
// A tool that does not fit is [ErrRoom], a kind that is not given [ErrNotGiven].
func (k Kind) Fits(size units.Limits, from, to units.Length) error {
	if err := (Stock{From: from, To: to, Depth: units.Millimetre}).check(); err != nil {
		return err
	}
	if err := checkLength("size of the tool", size.Min); err != nil {
		return err
	}
	switch k {
	case BallType, BrushType:
		if size.Min <= to {
			return fmt.Errorf("hone: %v of %v in a bore up to %v: %w: want it larger, or it does not press", k, size.Min, to, ErrRoom)
		}
	case RigidStone:
		if size.Min >= from || size.Max < to {
			return fmt.Errorf("hone: %v of %v in a bore from %v to %v: %w: want it to go in and to reach the last size", k, size, from, to, ErrRoom)
		}
	case KindUnknown:
		return fmt.Errorf("hone: kind of hone: %w", ErrNotGiven)
	default:
		return fmt.Errorf("hone: kind of hone %v: %w", k, units.ErrRange)
	}
	return nil
}
