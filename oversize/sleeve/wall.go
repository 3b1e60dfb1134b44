// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Wall is the thickness left of one part, on one side, against the least that is wanted.
type Wall struct {
	Left  units.Length `json:"left"`           // least thickness, on one side
	Least units.Length `json:"least,omitzero"` // wanted; 0: not known
	// Verdict is Within where Left is at least Least, Beyond where it is not, Undecided where
	// nobody has said what is wanted.
	Verdict uncertainty.Verdict `json:"verdict"`
}

// SleeveWall returns the wall of the sleeve, half of the outside diameter at the least
// interference less the bore, against the least that the sleeve's or engine's maker wants; 0 is not
// known. Of the sleeve as it runs ask the joint of [Joint.Hone].
//
// A least below 0 or beyond [units.MaxLength] is [units.ErrRange]; the other errors are those of
// [Joint.Validate].
func (j Joint) SleeveWall(least units.Length) (Wall, error) {
	return j.wall("sleeve", j.Seat+j.Interference.Least-j.Bore, least)
}

// BarrelWall returns the wall of the barrel left around the seat, half of the smaller outside
// diameter less the seat, against the least that the engine's maker wants; 0 is not known. A
// cast wall is seldom concentric: measure the thinnest place, and see [Joint] for how to give it.
// Errors are those of [Joint.SleeveWall].
func (j Joint) BarrelWall(least units.Length) (Wall, error) {
	return j.wall("barrel", j.Outer.Min-j.Seat, least)
}

func (j *Joint) wall(part string, both, least units.Length) (Wall, error) {
	if err := j.check(); err != nil {
		return Wall{}, err
	}
	if least < 0 || least > units.MaxLength {
		return Wall{}, fmt.Errorf("sleeve: least wall of the %s, %v: %w (0 to %v)", part, least, units.ErrRange, units.MaxLength)
	}
	w := Wall{Left: both / 2, Least: least}
	if least != 0 {
		enough := w.Left >= least
		w.Verdict = verdict(enough, enough)
	}
	return w, nil
}
