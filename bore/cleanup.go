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
	OutOfSquare units.Length `json:"out_of_square,omitzero"` // how far it may lean, over the depth bored
	Surface     units.Length `json:"surface,omitzero"`       // metal under the worn skin that has to go for a sound surface
}

// mostAllowance is the largest allowance taken, 100 mm: beyond it lies a slip of unit.
const mostAllowance = units.MaxLength / 100

func (a Allowances) validate() error {
	for _, l := range [...]units.Length{a.Locating, a.OutOfSquare, a.Surface} {
		if l < 0 || l > mostAllowance {
			return fmt.Errorf("bore: clean-up allowance %v: want 0 to %v: %w", l, mostAllowance, units.ErrRange)
		}
	}
	return nil
}

// onDiameter is what the allowances add to a diameter.
func (a Allowances) onDiameter() units.Length {
	return 2 * (a.Locating + a.OutOfSquare + a.Surface)
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
	// Pits are the scores and pits of the wall, each at its place: what cleans one up counts there, and
	// not on top of the largest diameter, which is elsewhere.
	Pits []Pit `json:"pits,omitzero"`
	Allowances
}

// An Interval is a size known only to lie between two estimates, or at one where they agree.
type Interval struct {
	Min uncertainty.Estimate `json:"min"` // what is needed at best
	Max uncertainty.Estimate `json:"max"` // what is enough at worst
}

// A CleanUp is the diameter of the smallest true cylinder that leaves no worn wall.
type CleanUp struct {
	// Original is for boring on the original centre, from the register or the unworn bottom.
	Original Interval `json:"original"`
	// Worn is for boring on the centre that suits the wear best. Min does for wear in one
	// narrow place; wear around much of the wall, or in three places, wants up to Max.
	Worn Interval `json:"worn"`
	// Shift is how far the axis moves along the most worn axis where Worn.Min does, the share
	// not being known at most; Toward is the direction, where radial points give it.
	Shift  units.Length `json:"shift"`
	Toward units.Angle  `json:"toward,omitzero"`
	// Pits are those of the wear, with the wall around each.
	Pits []WornPit `json:"pits,omitzero"`
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
// A pit that rings pass over, b below a wall worn by w, wants in its place
//
//	on the original centre   from unworn + 2·((1 − share)·w + b) to unworn + 2·(share·w + b),
//	                         share unknown: from unworn + 2b to unworn + 2·(w + b)
//	on the worn centre       from unworn + w + b, the axis moving by (share − ½)·w + b/2, to the same end
//
// and the larger need decides, plus twice the sum of the allowances. These are bounds that cannot be
// narrowed from diameters: on the original centre all of W may lie on one side; on any centre two
// opposite walls at W cannot be spanned by less than unworn + W, while three worn places a third of a
// turn apart, each with sound wall opposite, need as much as the original centre does.
//
// Where the share is known and half, or the wall is known by radial points ([CleanUpRadial]),
// both ends agree. Wear that the axes and depths read have missed is in neither: see Unseen.
//
// Errors: ErrNoReadings, also for no plane at UnwornAt; [units.ErrNotGiven] where neither Unworn nor a plane at
// UnwornAt is given, [units.ErrRange] for an unworn size above the largest reading, a share outside 0.5 to 1, and an
// impossible pit or allowance.
func (g Geometry) CleanUp(w Wear) (CleanUp, error) {
	if g.Largest.Size.Value <= 0 {
		return CleanUp{}, fmt.Errorf("bore: clean-up: %w", ErrNoReadings)
	}
	if err := w.validate(); err != nil {
		return CleanUp{}, err
	}
	u, err := g.unworn(w)
	if err != nil {
		return CleanUp{}, err
	}
	c := CleanUp{Extra: w.onDiameter(), Unseen: g.unseenByCleanUp(w)}
	least, greatest := 0.5, 1.0
	if w.Share != 0 {
		least, greatest = w.Share, w.Share
	}
	worn := g.Largest.Size.Value - u.size
	if err := c.need(u, g.Largest, 0, [...]float64{least, greatest, 0.5, greatest}); err != nil {
		return CleanUp{}, err
	}
	if c.Shift, err = units.Of(float64((greatest-0.5)*worn.In(units.Micrometre)), units.Micrometre); err != nil {
		return CleanUp{}, err
	}
	for _, p := range w.Pits {
		beside := g.beside(p)
		c.Pits = append(c.Pits, WornPit{p, beside.Size, g.Travel.passed(p)})
		if !g.Travel.passed(p) {
			continue
		}
		before := c.Worn.Min
		if err := c.need(u, beside, p.Below, [...]float64{1 - greatest, greatest, 0.5, greatest}); err != nil {
			return CleanUp{}, err
		}
		if c.Worn.Min != before { // the axis moves for the pit
			there := max(0, beside.Size.Value-u.size)
			shift, err := units.Of(float64((greatest-0.5)*there.In(units.Micrometre)), units.Micrometre)
			if err != nil {
				return CleanUp{}, err
			}
			c.Shift = shift + (p.Below+1)/2
		}
	}
	return c, nil
}

// need raises the ends of the clean-up to what one place wants, by the share of its wear that lies on
// the side of a pit so deep; without a pit, on either. The shares are those of the least and the
// greatest on the original centre, then on the worn one, where the pit's depth counts once.
func (c *CleanUp) need(u unworn, p Place, pit units.Length, shares [4]float64) error {
	worn := max(0, p.Size.Value-u.size)
	for i, to := range [...]*uncertainty.Estimate{&c.Original.Min, &c.Original.Max, &c.Worn.Min, &c.Worn.Max} {
		k := 2 * shares[i]
		more, err := units.Of(float64(k*worn.In(units.Micrometre)), units.Micrometre)
		if err != nil {
			return err
		}
		below := 2 * pit
		if i == 2 {
			below = pit
		}
		e, err := u.combine(p, u.size+more+below+c.Extra, k)
		if err != nil {
			return fmt.Errorf("bore: clean-up: %w", err)
		}
		if e.Value > to.Value {
			*to = e
		}
	}
	return nil
}

// unworn is the size before any wear, and how its doubt goes together with that of a worn place.
type unworn struct {
	size  units.Length
	given uncertainty.Estimate // where it is not a plane of the same readings
	plane *Plane
}

// unworn returns the unworn size that the wear is counted from.
func (g *Geometry) unworn(w Wear) (unworn, error) {
	u := unworn{size: w.Unworn.Value, given: w.Unworn}
	if u.size == 0 {
		plane, ok := g.At(w.UnwornAt)
		if w.UnwornAt == 0 {
			return u, fmt.Errorf("bore: clean-up: give the size before any wear as Unworn, or as UnwornAt the depth of a plane that no ring reaches: %w", units.ErrNotGiven)
		}
		if !ok {
			return u, fmt.Errorf("bore: clean-up: unworn size: no plane at %v: %w", w.UnwornAt, ErrNoReadings)
		}
		u.size, u.plane = plane.Mean.Value, &plane
	}
	if err := w.Unworn.Validate(); err != nil || u.size <= 0 || u.size > g.Largest.Size.Value {
		return u, fmt.Errorf("bore: clean-up: unworn size %v: want above 0, up to the largest size %v: %w",
			w.Unworn.Value, g.Largest.Size.Value, units.ErrRange)
	}
	return u, nil
}

// combine returns a value with the doubt of k·place + (1 − k)·unworn. The doubt of the gauge's setting,
// which a plane of the same readings shares, counts once.
func (u unworn) combine(p Place, value units.Length, k float64) (uncertainty.Estimate, error) {
	if u.plane == nil {
		return independent(value, p.Size, k, u.given, 1-k)
	}
	return independent(value, p.shared(), 1, weighted(0, p.Own, k, u.plane.own(), 1-k), 1)
}

func (w Wear) validate() error {
	if w.Share != 0 && !(w.Share >= 0.5 && w.Share <= 1) { // NaN too
		return fmt.Errorf("bore: clean-up: share of wear on one side %v: want 0.5 to 1, or 0 for not known: %w", w.Share, units.ErrRange)
	}
	for _, p := range w.Pits {
		if err := p.validate(); err != nil {
			return err
		}
	}
	return w.Allowances.validate()
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
		case unseenScores:
			if len(w.Pits) > 0 {
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
