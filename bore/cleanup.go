// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Allowances are what a clean-up needs beyond the wear that diameters show. All are radial.
type Allowances struct {
	Locating    units.Length // how far the boring axis may miss the one meant
	OutOfSquare units.Length // how far it may lean, over the depth bored
	Pit         units.Length // depth of the deepest score or pit below the wall around it: anvils bridge it
	Surface     units.Length // metal under the worn skin that has to go for a sound surface
}

func (a Allowances) validate() error {
	for _, l := range []units.Length{a.Locating, a.OutOfSquare, a.Pit, a.Surface} {
		if l < 0 || l > units.MaxLength/100 {
			return fmt.Errorf("bore: clean-up allowance %v: want 0 to %v: %w", l, units.MaxLength/100, ErrLimits)
		}
	}
	return nil
}

// Wear is what is known of the metal that is gone, besides the readings.
type Wear struct {
	// Unworn is the size before any wear: the least of the maker's new sizes, or a reading below
	// ring travel.
	Unworn uncertainty.Estimate
	// Share of the wear that is on the more worn side, from 0.5 (both alike) to 1 (all of it).
	// Zero is not known, as it is from diameters alone.
	Share float64
	Allowances
}

// An Interval is a size known only to lie between two estimates, or at one where they agree.
type Interval struct{ Least, Greatest uncertainty.Estimate }

// A CleanUp is the diameter of the smallest true cylinder that leaves no worn wall.
type CleanUp struct {
	// Original is for boring on the original centre, from the register or the unworn bottom.
	Original Interval
	// Worn is for boring on the centre that suits the wear best. Least does for wear in one
	// narrow place; wear around much of the wall, or in three places, wants up to Greatest.
	Worn Interval
	// Shift is how far the axis moves with Worn.Least, at most.
	Shift units.Length
}

// CleanUp returns the clean-up of the bore. With W = largest − unworn:
//
//	on the original centre   unworn + 2·share·W; share unknown: from unworn + W to unworn + 2W
//	on the worn centre       from unworn + W, the axis moving by (share − ½)·W, to the same end
//
// each plus twice the sum of the allowances. Errors: ErrNoReadings; ErrLimits for an unworn
// size above the largest reading, a share outside 0.5 to 1 or an impossible allowance.
func (g Geometry) CleanUp(w Wear) (CleanUp, error) {
	if len(g.Planes) == 0 {
		return CleanUp{}, fmt.Errorf("bore: clean-up: %w", ErrNoReadings)
	}
	if err := w.validate(); err != nil {
		return CleanUp{}, err
	}
	largest := g.Largest.Size
	worn := largest.Value - w.Unworn.Value
	if err := w.Unworn.Validate(); err != nil || w.Unworn.Value <= 0 || worn < 0 {
		return CleanUp{}, fmt.Errorf("bore: clean-up: unworn size %v: want above 0, up to the largest size %v: %w",
			w.Unworn.Value, largest.Value, ErrLimits)
	}
	if w.Share != 0 && !(w.Share >= 0.5 && w.Share <= 1) { // NaN too
		return CleanUp{}, fmt.Errorf("bore: clean-up: share of wear on one side %v: want 0.5 to 1, or 0 for not known: %w", w.Share, ErrLimits)
	}
	extra := 2 * (w.Locating + w.OutOfSquare + w.Pit + w.Surface)
	least, share := 0.5, 1.0
	if w.Share != 0 {
		least, share = w.Share, w.Share
	}
	var c CleanUp
	for _, v := range []struct {
		to    *uncertainty.Estimate
		share float64
	}{{&c.Original.Least, least}, {&c.Original.Greatest, share}, {&c.Worn.Least, 0.5}, {&c.Worn.Greatest, share}} {
		// unworn + 2·share·(largest − unworn)
		k := 2 * v.share
		size, err := units.Of(float64(k*worn.In(units.Micrometre)), units.Micrometre)
		if err != nil {
			return CleanUp{}, err
		}
		*v.to, err = uncertainty.Budget{Components: []uncertainty.Component{
			{Name: "largest size", Sensitivity: k, Std: largest.Std.In(units.Micrometre), DoF: largest.DoF},
			{Name: "unworn size", Sensitivity: 1 - k, Std: w.Unworn.Std.In(units.Micrometre), DoF: w.Unworn.DoF},
		}}.Estimate(w.Unworn.Value+size+extra, units.Micrometre)
		if err != nil {
			return CleanUp{}, err
		}
	}
	shift, err := units.Of(float64((share-0.5)*worn.In(units.Micrometre)), units.Micrometre)
	c.Shift = shift
	return c, err
}
