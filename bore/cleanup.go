// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Allowances are what a clean-up needs beyond the wear that was measured. All are radial.
type Allowances struct {
	Locating    units.Length `json:"locating,omitzero"`      // how far the boring axis may miss the one meant
	OutOfSquare units.Length `json:"out_of_square,omitzero"` // how far it may lean, over the depth bored: see [Lean]
	Pit         units.Length `json:"pit,omitzero"`           // depth of the deepest score or pit below the wall around it: anvils bridge it
	Surface     units.Length `json:"surface,omitzero"`       // metal under the worn skin that has to go for a sound surface
}

// mostAllowance is the largest allowance taken, 100 mm: beyond it lies a slip of unit.
const mostAllowance = units.MaxLength / 100

func (a Allowances) validate() error {
	for _, l := range [...]units.Length{a.Locating, a.OutOfSquare, a.Pit, a.Surface} {
		if l < 0 || l > mostAllowance {
			return fmt.Errorf("bore: clean-up allowance %v: want 0 to %v: %w", l, mostAllowance, ErrLimits)
		}
	}
	return nil
}

// onDiameter is what the allowances add to a diameter.
func (a Allowances) onDiameter() units.Length {
	return 2 * (a.Locating + a.OutOfSquare + a.Pit + a.Surface)
}

// Lean returns how far an axis leans over a depth, out of square by so much in a length: 0.02 mm
// in 100 mm is 0.018 mm over a bore 90 mm deep. A length that is not above zero, or anything else
// below zero or beyond [units.MaxLength], is ErrLimits.
func Lean(outOfSquare, in, depth units.Length) (units.Length, error) {
	l, err := outOfSquare.MulDiv(int64(depth), int64(in))
	if err != nil || outOfSquare < 0 || in <= 0 || depth < 0 || outOfSquare > units.MaxLength || in > units.MaxLength || depth > units.MaxLength || l > units.MaxLength {
		return 0, fmt.Errorf("bore: out of square by %v in %v, over %v: %w", outOfSquare, in, depth, ErrLimits)
	}
	return l, nil
}

// Wear is what is known of the metal that is gone, besides the readings.
type Wear struct {
	// Unworn is the size before any wear, known from elsewhere: the least of the maker's new
	// sizes, say. The smaller it is taken, the larger the clean-up on the original centre.
	Unworn uncertainty.Estimate `json:"unworn,omitzero"`
	// UnwornAt is used where Unworn is zero: the depth of a plane of the same readings that no
	// ring reaches. The doubt of the gauge's setting, which it shares with the largest size,
	// then counts once.
	UnwornAt units.Length `json:"unworn_at,omitzero"`
	// Share is the share, a number without unit, of the wear that is on the more worn side: of what the diameter along
	// any axis has gained, at most so much lies at one end, and along the most worn one just so
	// much. It goes from 0.5 (both alike) to 1 (all of it). Zero is not known, as it is from
	// diameters alone.
	Share float64 `json:"share,omitzero"`
	Allowances
}

// An Interval is a size known only to lie between two estimates, or at one where they agree.
type Interval struct {
	Least    uncertainty.Estimate `json:"least"`    // what is needed at best
	Greatest uncertainty.Estimate `json:"greatest"` // what is enough at worst
}

// A CleanUp is the diameter of the smallest true cylinder that leaves no worn wall.
type CleanUp struct {
	// Original is for boring on the original centre, from the register or the unworn bottom.
	Original Interval `json:"original"`
	// Worn is for boring on the centre that suits the wear best. Least does for wear in one
	// narrow place; wear around much of the wall, or in three places, wants up to Greatest.
	Worn Interval `json:"worn"`
	// Shift is how far the axis moves along the most worn axis where Worn.Least does, the share
	// not being known at most; Toward is the direction, where radial points give it.
	Shift  units.Length `json:"shift"`
	Toward units.Angle  `json:"toward,omitzero"`
	// Extra is what the allowances add to each of the diameters.
	Extra units.Length `json:"extra,omitzero"`
	// Unseen is what the readings cannot show and a clean-up depends on.
	Unseen []Unseen `json:"unseen,omitzero"`
}

// CleanUp returns the clean-up of the bore. With W = largest − unworn, on the diameter:
//
//	on the original centre   unworn + 2·share·W; share unknown: from unworn + W to unworn + 2W
//	on the worn centre       from unworn + W, the axis moving by (share − ½)·W, to the same end
//
// each plus twice the sum of the allowances. These are bounds that cannot be narrowed from
// diameters: on the original centre all of W may lie on one side; on any centre two opposite
// walls at W cannot be spanned by less than unworn + W, while three worn places a third of a turn
// apart, each with sound wall opposite, need as much as the original centre does.
//
// Where the share is known and half, or the wall is known by radial points ([CleanUpRadial]),
// both ends agree. Wear that the axes and depths read have missed is in neither: see Unseen.
//
// Errors: ErrNoReadings, also for no plane at UnwornAt; ErrLimits for an unworn size above the
// largest reading, a share outside 0.5 to 1 or an impossible allowance.
func (g Geometry) CleanUp(w Wear) (CleanUp, error) {
	if g.Largest.Size.Value <= 0 {
		return CleanUp{}, fmt.Errorf("bore: clean-up: %w", ErrNoReadings)
	}
	if err := w.validate(); err != nil {
		return CleanUp{}, err
	}
	if w.Share != 0 && !(w.Share >= 0.5 && w.Share <= 1) { // NaN too
		return CleanUp{}, fmt.Errorf("bore: clean-up: share of wear on one side %v: want 0.5 to 1, or 0 for not known: %w", w.Share, ErrLimits)
	}
	// combine returns a value with the doubt of k·largest + (1 − k)·unworn.
	combine := func(value units.Length, k float64) (uncertainty.Estimate, error) {
		return independent(value, g.Largest.Size, k, w.Unworn, 1-k)
	}
	unworn := w.Unworn.Value
	if unworn == 0 {
		plane, ok := g.At(w.UnwornAt)
		if !ok {
			return CleanUp{}, fmt.Errorf("bore: clean-up: unworn size: no plane at %v: %w", w.UnwornAt, ErrNoReadings)
		}
		unworn = plane.Mean.Value
		combine = func(value units.Length, k float64) (uncertainty.Estimate, error) {
			return independent(value, g.Largest.shared(), 1, weighted(0, g.Largest.Own, k, plane.own(), 1-k), 1)
		}
	}
	worn := g.Largest.Size.Value - unworn
	if err := w.Unworn.Validate(); err != nil || unworn <= 0 || worn < 0 {
		return CleanUp{}, fmt.Errorf("bore: clean-up: unworn size %v: want above 0, up to the largest size %v: %w",
			w.Unworn.Value, g.Largest.Size.Value, ErrLimits)
	}
	least, greatest := 0.5, 1.0
	if w.Share != 0 {
		least, greatest = w.Share, w.Share
	}
	c := CleanUp{Extra: w.onDiameter(), Unseen: g.unseenByCleanUp(w)}
	for _, v := range [...]struct {
		to    *uncertainty.Estimate
		share float64
	}{{&c.Original.Least, least}, {&c.Original.Greatest, greatest}, {&c.Worn.Least, 0.5}, {&c.Worn.Greatest, greatest}} {
		k := 2 * v.share
		more, err := units.Of(float64(k*worn.In(units.Micrometre)), units.Micrometre)
		if err != nil {
			return CleanUp{}, err
		}
		if *v.to, err = combine(unworn+more+c.Extra, k); err != nil {
			return CleanUp{}, fmt.Errorf("bore: clean-up: %w", err)
		}
	}
	var err error
	c.Shift, err = units.Of(float64((greatest-0.5)*worn.In(units.Micrometre)), units.Micrometre)
	return c, err
}

// unseenByCleanUp returns what a clean-up depends on of what the readings cannot show.
func (g Geometry) unseenByCleanUp(w Wear) []Unseen {
	var us []Unseen
	for _, u := range g.Unseen {
		switch u {
		case UnseenCentre:
			if w.Share != 0 {
				continue
			}
		case UnseenScores:
			if w.Pit != 0 {
				continue
			}
		case UnseenOvality, UnseenBetweenAxes, UnseenLobesInSize, UnseenTop, UnseenElsewhere:
		default:
			continue
		}
		us = append(us, u)
	}
	return us
}
