// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// An Action is what to do about a ring's end gap. The zero value is the safe one.
type Action int8

// Metal filed off cannot be put back, so a gap that may already be too wide is left Undecided.
const (
	Undecided Action = iota // the gap may be too wide or may not: measure better
	AsIs                    // the gap is within the window, its uncertainty included
	FileEnds                // the gap is, or may be, too small: file it
	TooWide                 // the gap is beyond the window, its uncertainty included
)

// A Filing says what to do about one end gap.
type Filing struct {
	Now     uncertainty.Finding `json:"now"` // the gap as it is, in the finished bore, against the window
	Action  Action              `json:"action"`
	Stop    units.Limits        `json:"stop,omitzero"`     // for FileEnds: the readings that prove the gap
	Target  units.Length        `json:"target,omitzero"`   // for FileEnds: the first of them, to file to
	TakeOff units.Length        `json:"take_off,omitzero"` // for FileEnds: what comes off the ends, both together
	Steps   []units.Length      `json:"steps,omitempty"`   // for FileEnds: readings to stop at and measure, the last of them Target
}

// finestCut is the least that a step asks for: a stroke or two of a fine file (common practice).
const finestCut = 10 * units.Micrometre

// FileTo plans the filing of a ring from its end gap in the finished bore and the maker's window.
//
// The gap is judged first: within the window it is AsIs, beyond its upper end TooWide, in doubt
// about the upper end Undecided. Otherwise it is FileEnds. With U the expanded uncertainty of
// the gap for a coverage of 1 − risk.Accept, a reading inside the window by U at either end
// would be judged within: these are Stop, and the plan takes off what brings the gap to the
// first of them, so that for every true gap within U of the measured one the filed gap lies
// inside the window. Every step is short enough that filing twice as much as was meant does not
// pass the last of them, or else it is 0.01 mm.
//
// A gap may be negative, as [Gap.In] predicts it for a ring too large for its bore: the ends
// overlap by as much. Where the gap is neither within nor too wide and the window is narrower
// than 2U, or at a risk of some 0.1 and more a little wider, so that no reading would prove anything, it is ErrDoubt. The zero
// Estimate, a gap that nobody measured, and no window at all are [units.ErrNotGiven], an end of the window below 0 or
// beyond [units.MaxLength] is units.ErrRange.
func FileTo(gap uncertainty.Estimate, window units.Limits, risk uncertainty.Risk) (Filing, error) {
	if window.Min < 0 || window.Max < 0 || max(window.Min, window.Max) > units.MaxLength {
		return Filing{}, fmt.Errorf("rings: end gap window %v: %w (0 to %v)", window, units.ErrRange, units.MaxLength)
	}
	if gap == (uncertainty.Estimate{}) {
		return Filing{}, fmt.Errorf("rings: end gap: %w", units.ErrNotGiven)
	}
	now, err := uncertainty.Judge(gap, window, risk)
	if err != nil {
		return Filing{}, fmt.Errorf("rings: end gap: %w", err)
	}
	now.Subject = "end gap"
	f := Filing{Now: now}
	if now.Verdict == uncertainty.Within {
		f.Action = AsIs
		return f, nil
	}
	if now.Verdict == uncertainty.Beyond && window.HasMax() && gap.Value > window.Max {
		f.Action = TooWide
		return f, nil
	}
	u, err := gap.Expanded(1 - now.Risk.Accept)
	if err != nil {
		return Filing{}, fmt.Errorf("rings: end gap: %w", err)
	}
	if u > 0 {
		u++ // it was rounded
	}
	stop := window
	if window.HasMin() {
		stop.Min += u
	}
	if window.HasMax() {
		stop.Max -= u
	}
	if window.HasMin() && window.HasMax() && stop.Min > stop.Max {
		return Filing{}, fmt.Errorf("rings: end gap known to ±%v, window %v: %w (at most half the window)", u, window, ErrDoubt)
	}
	if !window.HasMin() || gap.Value >= stop.Min {
		return f, nil
	}
	// At a great risk, where an even or a U-shaped doubt has more in its tails, less than half the window may not do.
	filed := gap
	filed.Value = stop.Min
	proof, err := uncertainty.Judge(filed, window, risk)
	if err != nil {
		return Filing{}, fmt.Errorf("rings: end gap: %w", err)
	}
	if proof.Verdict != uncertainty.Within {
		return Filing{}, fmt.Errorf("rings: end gap known to ±%v, window %v: %w (no reading in it would be within)", u, window, ErrDoubt)
	}
	f.Action = FileEnds
	f.Stop = stop
	f.Target = stop.Min
	f.TakeOff = f.Target - gap.Value
	f.Steps = steps(gap.Value, stop)
	return f, nil
}

// After returns the end gap with which the ring is fitted: the measured one, or for FileEnds the
// target with the same uncertainty, since the filed gap is measured in the same way.
func (f Filing) After() uncertainty.Estimate {
	e := f.Now.Measured
	if f.Action == FileEnds {
		e.Value = f.Target
	}
	return e
}

// steps returns the readings to stop at on the way from the gap to the lower end of stop.
func steps(gap units.Length, stop units.Limits) []units.Length {
	var s []units.Length
	for gap < stop.Min {
		cut := stop.Min - gap
		if stop.HasMax() {
			cut = min(cut, max((stop.Max-gap)/2, finestCut))
		}
		gap += cut
		s = append(s, gap)
	}
	return s
}
