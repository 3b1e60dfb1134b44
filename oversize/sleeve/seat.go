// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// SeatFor returns the window to which the seat is bored for a sleeve that has been measured: its outside
// diameter less each end of the DIAMETRAL interference wanted; a negative interference is a clearance, as slip-fit
// sleeves have. The sleeve is measured first and the seat cut to suit, since the spread of sleeves is often wider
// than that of the fit: of one slip-fit class the outsides spread by 0.0015 in and the clearance by 0.0010 in, and
// no one seat serves them all (US Army TM 5-3895-359-14&P, table 2). A thin sleeve is oval when it lies free and rounds up
// in its seat, so outside is the mean of readings at the top, the middle and the bottom, each in two
// directions at right angles (common practice; US Army TM 9-2815-202-34, p. 4-150, has the mean of three places).
//
// Whether the parts as measured have the interference, their doubt included, says [DiametralFromMeasured].
// An outside that is missing is units.ErrNotGiven, negative or beyond [units.MaxLength] units.ErrRange, and so is an
// interference beyond a hundredth of the outside; one whose ends are crossed is [units.ErrCrossed].
func SeatFor(outside units.Length, wanted Diametral) (units.Limits, error) {
	if err := checkLength("sleeve's outside diameter", outside); err != nil {
		return units.Limits{}, err
	}
	most := outside / greatestStrain
	if wanted.Min > wanted.Max {
		return units.Limits{}, fmt.Errorf("sleeve: DIAMETRAL interference %v to %v: %w (the lesser end first)", wanted.Min, wanted.Max, units.ErrCrossed)
	}
	if wanted.Max > most || wanted.Min < -most {
		return units.Limits{}, fmt.Errorf("sleeve: DIAMETRAL interference %v to %v on %v: %w (±%v)", wanted.Min, wanted.Max, outside, units.ErrRange, most)
	}
	return units.Limits{Min: outside - wanted.Max, Max: outside - wanted.Min}, nil
}

// Proud returns how far a sleeve stands above the deck, negative where it stands below: the sum of what stacks
// up (length or flange, shims) less the sum of the depths it stands in (seat, counterbore, what lies on the
// deck), each anywhere in its window, all at their worst. A window with equal ends is a size that is known.
//
// A window with an end missing is units.ErrNotGiven, a negative end or one beyond [units.MaxLength] units.ErrRange, crossed
// ends units.ErrCrossed.
func Proud(up, down []units.Limits) (Range[units.Length], error) {
	var r Range[units.Length]
	for i, w := range append(append([]units.Limits{}, up...), down...) {
		switch {
		case !w.HasMin() || !w.HasMax():
			return Range[units.Length]{}, fmt.Errorf("sleeve: height %d of the stack, %q: %w (both ends)", i+1, w, units.ErrNotGiven)
		case w.Min < 0 || w.Max > units.MaxLength:
			return Range[units.Length]{}, fmt.Errorf("sleeve: height %d of the stack, %v: %w (above 0, up to %v)", i+1, w, units.ErrRange, units.MaxLength)
		}
		if err := w.Validate(); err != nil {
			return Range[units.Length]{}, fmt.Errorf("sleeve: height %d of the stack: %w", i+1, err)
		}
		if i < len(up) {
			r.Min, r.Max = r.Min+w.Min, r.Max+w.Max
		} else {
			r.Min, r.Max = r.Min-w.Max, r.Max-w.Min
		}
	}
	return r, nil
}

// Allowed holds what is to be honed out against the allowance for honing, on the DIAMETER. Enough is Within where
// even the least stock is at least the allowance's lower end, and Beyond where not even the greatest is: then
// marks of the boring tool may stay. NotTooMuch is Within where even the greatest stock is at most its
// upper end, and Beyond where not even the least is: then the fitted bore is bored first. Where an end is not given, or the
// ends are crossed, the answer is Undecided.
func (h Honing) Allowed(allowance units.Limits) (enough, notTooMuch uncertainty.Verdict) {
	if allowance.Validate() != nil {
		return uncertainty.Undecided, uncertainty.Undecided
	}
	if allowance.HasMin() {
		enough = verdict(h.Stock.Min >= allowance.Min, h.Stock.Max >= allowance.Min)
	}
	if allowance.HasMax() {
		notTooMuch = verdict(h.Stock.Max <= allowance.Max, h.Stock.Min <= allowance.Max)
	}
	return enough, notTooMuch
}
