// SPDX-License-Identifier: BSD-3-Clause

package bore

import (
	"cmp"
	"errors"
	"fmt"
	"math"
	"slices"

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

// A Rate is a bore's growth by wear, a straight line through dated surveys.
type Rate struct {
	Per  float64              `json:"per"`  // the stretch that Wear is over, in the unit of the log
	Wear uncertainty.Estimate `json:"wear"` // growth of the diameter over that stretch
	// The line: Size at Middle, the weighted middle of the surveys in the unit of the log, where its doubt and that of
	// Wear are independent of each other.
	Middle float64              `json:"middle"`
	Size   uncertainty.Estimate `json:"size"`
	Last   float64              `json:"last"` // of the latest survey, in the unit of the log
}

// WearRate returns the growth over a stretch of usage, in the unit of the log, from two or more surveys of one bore at
// different times: the slope of [uncertainty.FitLine], each survey weighed by its doubt, their
// scatter counting where it is more than their doubts allow. One setting ring for all surveys
// would let its doubt cancel; it is left in, on the safe side.
//
// The line is an assumption: running in wears faster, and so does a bore that has begun to pass
// gas. Surveys from before and after machining do not belong together.
//
// Fewer than two surveys, all at one time, some exact and some not, a time or a stretch that is
// not finite, or a stretch that is not above zero, are ErrSurveys.
func WearRate(surveys []Survey, per float64) (Rate, error) {
	if len(surveys) < 2 {
		return Rate{}, fmt.Errorf("bore: wear rate from %d surveys: want two or more: %w", len(surveys), ErrSurveys)
	}
	if !(per > 0 && per <= mostUsage) {
		return Rate{}, fmt.Errorf("bore: wear rate over %v: want above 0 up to %v: %w", per, mostUsage, ErrSurveys)
	}
	exact := 0
	for _, s := range surveys {
		if err := s.Size.Validate(); err != nil {
			return Rate{}, fmt.Errorf("bore: wear rate: survey at %v: %w: %w", s.At, err, ErrSurveys)
		}
		if !(math.Abs(s.At) <= mostUsage) {
			return Rate{}, fmt.Errorf("bore: wear rate: survey at %v: want within ±%v: %w", s.At, mostUsage, ErrSurveys)
		}
		if s.Size.Std == 0 {
			exact++
		}
	}
	if exact != 0 && exact != len(surveys) {
		return Rate{}, fmt.Errorf("bore: wear rate: %d of %d surveys are exact: give the others' doubt too, or none: %w", exact, len(surveys), ErrSurveys)
	}
	ss := slices.Clone(surveys)
	slices.SortStableFunc(ss, func(a, b Survey) int { return cmp.Compare(a.At, b.At) })
	if ss[0].At == ss[len(ss)-1].At {
		return Rate{}, fmt.Errorf("bore: wear rate: all surveys at %v: %w", ss[0].At, ErrSurveys)
	}
	return fitRate(ss, per)
}

// mostUsage is the greatest usage taken: 10⁹, more than any engine runs in hours or kilometres.
const mostUsage = 1e9

// fitRate fits the line to surveys sorted by time, in units of the stretch between the first and
// the last and in micrometres.
func fitRate(ss []Survey, per float64) (Rate, error) {
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
		return Rate{}, fmt.Errorf("bore: wear rate: %w", err)
	}
	// per is converted last: the growth over the stretch of the surveys is of the order of a size.
	k := per / stretch
	wear, err := rounded(l.Slope*k, l.Tilt.Std*k, l.Tilt.DoF)
	if err != nil {
		return Rate{}, fmt.Errorf("bore: wear rate: growth over %v: %w", per, err)
	}
	size, err := rounded(l.Y, l.Level.Std, l.Level.DoF)
	if err != nil {
		return Rate{}, fmt.Errorf("bore: wear rate: %w", err)
	}
	size.Value += first.Size.Value
	return Rate{
		Per: per, Wear: wear, Middle: first.At + float64(l.Middle*stretch), Size: size, Last: ss[n-1].At,
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

// Until returns when the line reaches a limit, in the usage of the log, and the earliest it may be, with the risk r,
// above 0 up to 0.5, that it is reached before: the usage at which the upper bound of the line, size + k·u with k of
// one-sided Student's t, meets the limit. Neither is before the last survey; a limit already
// reached is reached there.
//
// Where the size does not grow, or so slowly that the limit is further off than a log counts
// (10⁹), it is ErrSurveys, and so is an r outside its range.
func (w Rate) Until(limit units.Length, r float64) (expected, earliest float64, err error) {
	if !(r > 0 && r <= 0.5) {
		return 0, 0, fmt.Errorf("bore: time to %v at a risk of %v: want above 0 up to 0.5: %w", limit, r, ErrSurveys)
	}
	if !(w.Per > 0 && w.Per <= mostUsage) {
		return 0, 0, fmt.Errorf("bore: time to %v: rate over %v: %w", limit, w.Per, ErrSurveys)
	}
	if err := errors.Join(w.Wear.Validate(), w.Size.Validate(), uncertainty.Estimate{Value: limit}.Validate()); err != nil {
		return 0, 0, fmt.Errorf("bore: time to %v: %w: %w", limit, err, ErrSurveys)
	}
	k := 0.0
	if r < 0.5 {
		if k, err = uncertainty.Coverage(1-2*r, fewer(w.Wear.DoF, w.Size.DoF)); err != nil {
			return 0, 0, fmt.Errorf("bore: time to %v at a risk of %v: %w: %w", limit, r, err, ErrSurveys)
		}
	}
	const um = units.Micrometre
	b, ub := w.Wear.Value.In(um), float64(k*w.Wear.Std.In(um))
	room, us := (limit - w.Size.Value).In(um), float64(k*w.Size.Std.In(um))
	last := (w.Last - w.Middle) / w.Per
	if !(b > 0 && last >= 0 && last <= mostUsage) {
		return 0, 0, fmt.Errorf("bore: time to %v: growth of %v: %w", limit, w.Wear, ErrSurveys)
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
	expected, earliest = w.Middle+float64(reached*w.Per), w.Middle+float64(bound*w.Per)
	if !(expected <= mostUsage) {
		return 0, 0, fmt.Errorf("bore: time to %v: growth of %v in %v is too slow to tell: %w", limit, w.Wear, w.Per, ErrSurveys)
	}
	return expected, earliest, nil
}
