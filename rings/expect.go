// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// An Expected is what is to be expected of a ring in a bore that is still to be finished, anywhere in
// its window. It serves to order rings and to see what is coming, not to file by: a ring is filed only in the
// finished and washed bore ([FileTo]).
type Expected struct {
	Min uncertainty.Estimate `json:"min"` // end gap in the smallest bore that the window allows
	Max uncertainty.Estimate `json:"max"` // and in the largest
	// Action is what [FileTo] would say whichever size the bore gets: AsIs or TooWide only where it says so of the
	// smallest and the largest bore alike, FileEnds where a ring that fits some of them is too small for
	// others, Undecided where nothing can be said before the bore is there.
	Action  Action       `json:"action"`
	TakeOff units.Limits `json:"take_off,omitzero"` // for FileEnds: least and most that comes off; no least where it may be nothing
}

// Expect returns what is to be expected of a ring in a bore to be finished inside a window, from its
// gap in any bore. Both ends of the finish window are taken as exact: the doubt is which of them it
// will be.
//
// A finish window with crossed ends is units.ErrCrossed, one with an end missing [units.ErrNotGiven], below zero
// [units.ErrRange]; the other errors are those of [Gap.In] and [FileTo].
func Expect(gap Gap, finish, window units.Limits, risk uncertainty.Risk) (Expected, error) {
	if err := finish.Validate(); err != nil {
		return Expected{}, fmt.Errorf("rings: finish window: %w", err)
	}
	small, err := gap.file(finish.Min, window, risk)
	if err != nil {
		return Expected{}, err
	}
	large, err := gap.file(finish.Max, window, risk)
	if err != nil {
		return Expected{}, err
	}
	e := Expected{Min: small.Now.Measured, Max: large.Now.Measured}
	switch {
	case small.Action == large.Action:
		e.Action = small.Action
	case small.Action == FileEnds && large.Action == AsIs:
		e.Action = FileEnds
	}
	if e.Action == FileEnds {
		e.TakeOff = units.Limits{Min: large.TakeOff, Max: small.TakeOff}
	}
	return e, nil
}

// file plans the filing of a ring for a bore of exactly that size.
func (g Gap) file(bore units.Length, window units.Limits, risk uncertainty.Risk) (Filing, error) {
	there, err := g.In(uncertainty.Estimate{Value: bore})
	if err != nil {
		return Filing{}, err
	}
	return FileTo(there, window, risk)
}
