// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Survey is the size of a bore at a time: its largest, say, or that at one place. Usage is how far a machine has
// run, as its log counts it: in hours, or in kilometres. Which it is does not matter to a rate of wear, as long as
// one log keeps to it.
type Survey struct {
	At   float64              `json:"at"`   // what the log showed, in its unit
	Size uncertainty.Estimate `json:"size"` // at 20 °C
}

// A rate is a bore's growth by wear, a straight line through dated surveys.
type rate struct {
	per  float64              // the stretch that wear is over, in the unit of the log
	wear uncertainty.Estimate // growth of the diameter over that stretch
	// The line: size at middle, the weighted middle of the surveys in the unit of the log, where its doubt and that of
	// wear are independent of each other.
	middle float64
	size   uncertainty.Estimate
	last   float64 // of the latest survey, in the unit of the log
}

// WearRate returns the growth over a stretch of usage, in the unit of the log, from two or more surveys of one bore at
// different times: the slope of [uncertainty.FitLine], each survey weighed by its doubt, their
// scatter counting where it is more than their doubts allow. One setting ring for all surveys
// would let its doubt cancel; it is left in, on the safe side.
//
// The line is an assumption: running in wears faster, and so does a bore that has begun to pass
// gas. Surveys from before and after machining do not belong together.
//
// A size or a stretch of zero is [units.ErrNotGiven], and so is the doubt of surveys among others that have one. One
// below zero, fewer than two surveys, all of them at one time, and a time beyond what a log counts, ±10⁹, are
// [units.ErrRange].
func WearRate(surveys []Survey, per float64) (uncertainty.Estimate, error) {
	if !(per > 0 && per <= mostUsage) {
		return uncertainty.Estimate{}, fmt.Errorf("bore: wear rate over %v: want above 0 up to %v: %w", per, mostUsage, given.Err(per))
	}
	ss, err := inOrder(surveys)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	w, err := fitRate(ss, per)
	return w.wear, err
}

// WornOutAt returns what the log will show when the line of [WearRate] reaches a limit, and the earliest it may be, with
// the risk r, above 0 up to 0.5, that it is reached before: the usage at which the upper bound of the line, size + k·u
// with k of one-sided Student's t, meets the limit. Neither is before the last survey; a limit already reached is
// reached there.
//
// Where the size does not grow, or so slowly that the limit is further off than a log counts (10⁹), it is
// [units.ErrRange]; so is an r outside its range, or a limit below 0. A limit of zero is [units.ErrNotGiven]; other errors
// are those of [WearRate].
func WornOutAt(surveys []Survey, limit units.Length, r float64) (expected, earliest float64, err error) {
	ss, err := inOrder(surveys)
	if err != nil {
		return 0, 0, err
	}
	w, err := fitRate(ss, ss[len(ss)-1].At-ss[0].At)
	if err != nil {
		return 0, 0, err
	}
	return w.until(limit, r)
}

// inOrder returns the surveys by time, or why no rate follows from them.
func inOrder(surveys []Survey) ([]Survey, error) {
	if len(surveys) < 2 {
		return nil, fmt.Errorf("bore: wear rate from %d surveys: want two or more: %w", len(surveys), units.ErrRange)
	}
	exact := 0
	for _, s := range surveys {
		if err := s.Size.Validate(); err != nil {
			return nil, fmt.Errorf("bore: wear rate: survey at %v: %w", s.At, err)
		}
		if s.Size.Value <= 0 {
			return nil, fmt.Errorf("bore: wear rate: survey at %v: size of %v: %w", s.At, s.Size.Value, given.Err(s.Size.Value))
		}
		if !(math.Abs(s.At) <= mostUsage) {
			return nil, fmt.Errorf("bore: wear rate: survey at %v: want within ±%v: %w", s.At, mostUsage, units.ErrRange)
		}
		if s.Size.Std == 0 {
			exact++
		}
	}
	if exact != 0 && exact != len(surveys) {
		return nil, fmt.Errorf("bore: wear rate: %d of %d surveys are exact: give the others' doubt too, or none: %w", exact, len(surveys), units.ErrNotGiven)
	}
	ss := slices.Clone(surveys)
	slices.SortStableFunc(ss, func(a, b Survey) int { return cmp.Compare(a.At, b.At) })
	if ss[0].At == ss[len(ss)-1].At {
		return nil, fmt.Errorf("bore: wear rate: all surveys at %v: want two times: %w", ss[0].At, units.ErrRange)
	}
	return ss, nil
}

// mostUsage is the greatest usage taken: 10⁹, more than any engine runs in hours or kilometres.
const mostUsage = 1e9

// fitRate fits the line to surveys sorted by time, in units of the stretch between the first and
// the last and in micrometres.
func fitRate(ss []Survey, per float64) (rate, error) {
	const um = units.Micrometre
	n, first := len(ss), ss[0]
	stretch := ss[n-1].At - first.At
	points := make([]uncertainty.Observation, n)
	for i, s := range ss {
		points[i] = uncertainty.Observation{
			X: (s.At - first.At) / stretch, Y: (s.Size.Value - first.Size.Value).In(um),
			Std: s.Size.Std.In(um), DoF: s.Size.DoF,
		}
	}
	l, err := uncertainty.FitLine(points...)
	if err != nil {
		return rate{}, fmt.Errorf("bore: wear rate: %w", err)
	}
	// per is converted last: the growth over the stretch of the surveys is of the order of a size.
	k := per / stretch
	wear, err := rounded(l.Slope*k, l.Tilt.Std*k, l.Tilt.DoF)
	if err != nil {
		return rate{}, fmt.Errorf("bore: wear rate: growth over %v: %w", per, err)
	}
	size, err := rounded(l.Y, l.Level.Std, l.Level.DoF)
	if err != nil {
		return rate{}, fmt.Errorf("bore: wear rate: %w", err)
	}
	size.Value += first.Size.Value
	return rate{
		per: per, wear: wear, middle: first.At + float64(l.Middle*stretch), size: size, last: ss[n-1].At,
	}, size.Validate()
}

// rounded returns an estimate of numbers in micrometres.
func rounded(value, std, dof float64) (uncertainty.Estimate, error) {
	v, err := units.Of(value, units.Micrometre)
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	return combined(v, []uncertainty.Component{{Name: "scatter", Sensitivity: 1, Std: std, DoF: dof}})
}

// until returns when the line reaches a limit, and the earliest it may be.
func (w rate) until(limit units.Length, r float64) (expected, earliest float64, err error) {
	if !(r > 0 && r <= 0.5) {
		return 0, 0, fmt.Errorf("bore: time to %v at a risk of %v: want above 0 up to 0.5: %w", limit, r, units.ErrRange)
	}
	if limit <= 0 || limit > units.MaxLength {
		return 0, 0, fmt.Errorf("bore: time to a limit of %v: %w (above 0, up to %v)", limit, given.Err(limit), units.MaxLength)
	}
	k := 0.0
	if r < 0.5 {
		if k, err = uncertainty.Coverage(1-2*r, fewer(w.wear.DoF, w.size.DoF)); err != nil {
			return 0, 0, fmt.Errorf("bore: time to %v at a risk of %v: %w", limit, r, err)
		}
	}
	const um = units.Micrometre
	b, ub := w.wear.Value.In(um), float64(k*w.wear.Std.In(um))
	room, us := (limit - w.size.Value).In(um), float64(k*w.size.Std.In(um))
	last := (w.last - w.middle) / w.per
	if !(b > 0) {
		return 0, 0, fmt.Errorf("bore: time to %v: growth of %v: %w", limit, w.wear, units.ErrRange)
	}
	reached := max(last, room/b)
	// The upper bound b·x + √(us² + (ub·x)²) rises with x ≥ 0. It meets room where
	// (room − b·x)² = us² + (ub·x)² with room − b·x ≥ 0: at the smaller root, or at the only
	// positive one. Written without the difference of nearly equal numbers.
	bound := last
	if rest := room - float64(b*last); rest > 0 && float64(rest*rest) > float64(us*us)+float64(ub*last*ub*last) {
		p, q, c := float64(b*b)-float64(ub*ub), float64(b*room), float64(room*room)-float64(us*us)
		bound = max(last, c/(q+math.Sqrt(max(0, float64(q*q)-float64(p*c)))))
	}
	expected, earliest = w.middle+float64(reached*w.per), w.middle+float64(bound*w.per)
	if !(expected <= mostUsage) {
		return 0, 0, fmt.Errorf("bore: time to %v: growth of %v in %v is too slow to tell: %w", limit, w.wear, w.per, units.ErrRange)
	}
	return expected, earliest, nil
}
