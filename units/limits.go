// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"fmt"
	"strings"
)

// Limits is a window for a length, such as a maker's tolerance. Both ends belong to it.
//
// A zero Min or Max means that this end is not given, so the zero Limits allows everything. A
// limit of exactly zero therefore cannot be told from none; a window from 0 up is an upper
// limit alone, which is the same thing for every quantity that cannot be negative.
type Limits struct{ Min, Max Length }

// IsZero reports whether neither end is given. It also serves JSON's omitzero.
func (w Limits) IsZero() bool { return w == Limits{} }

// HasMin and HasMax report whether an end is given.
func (w Limits) HasMin() bool { return w.Min != 0 }

// HasMax reports whether the upper end is given.
func (w Limits) HasMax() bool { return w.Max != 0 }

// Validate returns ErrCrossed where both ends are given and Min is above Max.
func (w Limits) Validate() error {
	if w.HasMin() && w.HasMax() && w.Min > w.Max {
		return fmt.Errorf("units: limits %v above %v: %w", w.Min, w.Max, ErrCrossed)
	}
	return nil
}

// Contains reports whether l lies inside the window, its ends included.
func (w Limits) Contains(l Length) bool {
	return (!w.HasMin() || l >= w.Min) && (!w.HasMax() || l <= w.Max)
}

// Width returns Max − Min, and whether both ends are given.
func (w Limits) Width() (Length, bool) {
	if !w.HasMin() || !w.HasMax() {
		return 0, false
	}
	return w.Max - w.Min, true
}

// Middle returns the middle of the window, rounded away from zero to a picometre, and whether
// both ends are given.
func (w Limits) Middle() (Length, bool) {
	if !w.HasMin() || !w.HasMax() {
		return 0, false
	}
	m, err := Mean(w.Min, w.Max)
	return m, err == nil
}

// Shift returns the window moved by d; an end that is not given stays so. Moving an end to
// exactly zero would turn it into none and is ErrRange.
func (w Limits) Shift(d Length) (Limits, error) {
	s := w
	if w.HasMin() {
		s.Min += d
	}
	if w.HasMax() {
		s.Max += d
	}
	if w.HasMin() != s.HasMin() || w.HasMax() != s.HasMax() {
		return Limits{}, fmt.Errorf("units: limits %v shifted by %v: an end at zero: %w", w, d, ErrRange)
	}
	return s, nil
}

// Intersect returns the window that both allow. Where they do not meet it is ErrCrossed.
func (w Limits) Intersect(o Limits) (Limits, error) {
	r := w
	if !r.HasMin() || o.HasMin() && o.Min > r.Min {
		r.Min = o.Min
	}
	if !r.HasMax() || o.HasMax() && o.Max < r.Max {
		r.Max = o.Max
	}
	if err := r.Validate(); err != nil {
		return Limits{}, err
	}
	return r, nil
}

// Inward returns the window with Min rounded up and Max rounded down to multiples of grid, so
// that it never widens. Where no multiple lies inside it is ErrNoGridValue; a grid of zero or
// less is ErrRange.
func (w Limits) Inward(grid Length) (Limits, error) {
	if grid <= 0 {
		return Limits{}, fmt.Errorf("units: limits %v to a grid of %v: %w", w, grid, ErrRange)
	}
	r := w
	if w.HasMin() {
		r.Min = w.Min.Ceil(grid)
	}
	if w.HasMax() {
		r.Max = w.Max.Floor(grid)
	}
	if r.Validate() != nil || w.HasMin() != r.HasMin() || w.HasMax() != r.HasMax() {
		return Limits{}, fmt.Errorf("units: limits %v to a grid of %v: %w", w, grid, ErrNoGridValue)
	}
	return r, nil
}

// Nearest returns the window with each end rounded to the nearest multiple of grid, as drawings
// are often converted (the ordinary method of ISO 370 and of SI 10 practice). It may overstep
// the window by up to half a grid at either end; [Limits.Inward] never does.
func (w Limits) Nearest(grid Length) Limits {
	return Limits{Min: w.Min.Round(grid), Max: w.Max.Round(grid)}
}

// ParseLimits reads a window as a manual writes it:
//
//	72.000 to 72.020 mm      72.000 mm to 72.020 mm     72.000 - 72.020 mm (spaces needed)
//	72.010 ± 0.010 mm        72.010 +/- 0.010 mm
//	72 +0.020/-0 mm          72 +0.020 -0.000 mm
//	max 0.05 mm              min 1.2 mm
//
// A unit after the second number serves both; each may have its own. Limits that are crossed
// are ErrCrossed; an end at exactly zero other than a lower one is ErrRange, since zero means
// not given. Every error is a [*ParseError] or wraps a sentinel of this package.
func ParseLimits(s string) (Limits, error) {
	w, err := parseLimits(s)
	if err != nil {
		return Limits{}, err
	}
	if err := w.Validate(); err != nil {
		return Limits{}, parseError("limits", s, 0, ErrCrossed, "the smaller limit first")
	}
	return w, nil
}

const limitsMend = "write 72.000 to 72.020 mm, 72.010 ± 0.010 mm, 72 +0.020/-0 mm or max 0.05 mm"

func parseLimits(s string) (Limits, error) {
	for _, word := range []string{"max ", "min "} {
		if rest, ok := strings.CutPrefix(s, word); ok {
			l, err := ParseLength(rest)
			if err != nil {
				return Limits{}, err
			}
			if l == 0 {
				return Limits{}, parseError("limits", s, len(word), ErrRange, "a limit of zero cannot be told from none")
			}
			if word == "max " {
				return Limits{Max: l}, nil
			}
			return Limits{Min: l}, nil
		}
	}
	for _, sep := range []string{" to ", " - ", " – "} {
		if a, b, ok := strings.Cut(s, sep); ok {
			lo, hi, err := parsePair(a, b)
			if err != nil {
				return Limits{}, err
			}
			if hi == 0 {
				return Limits{}, parseError("limits", s, len(a), ErrRange, "a limit of zero cannot be told from none")
			}
			return Limits{Min: lo, Max: hi}, nil
		}
	}
	for _, sep := range []string{" ± ", " +/- ", "±"} {
		if a, b, ok := strings.Cut(s, sep); ok {
			mid, half, err := parsePair(a, b)
			if err != nil {
				return Limits{}, err
			}
			return aroundMiddle(s, mid, half, -half)
		}
	}
	if a, b, ok := strings.Cut(s, " +"); ok {
		up, down, ok := strings.Cut(b, "/")
		if !ok {
			up, down, ok = strings.Cut(b, " ")
		}
		if ok && strings.HasPrefix(down, "-") {
			suffix := unitSuffix(s)
			mid, err := ParseLength(withUnit(a, suffix))
			if err != nil {
				return Limits{}, err
			}
			plus, minus, err := parsePair(up, down)
			if err != nil {
				return Limits{}, err
			}
			return aroundMiddle(s, mid, plus, minus)
		}
	}
	return Limits{}, parseError("limits", s, 0, ErrSyntax, limitsMend)
}

func aroundMiddle(s string, mid, plus, minus Length) (Limits, error) {
	w := Limits{Min: mid + minus, Max: mid + plus}
	if w.Min == 0 || w.Max == 0 {
		return Limits{}, parseError("limits", s, 0, ErrRange, "a limit of zero cannot be told from none")
	}
	return w, nil
}

// parsePair reads two lengths of which the first may borrow the second's unit.
func parsePair(a, b string) (first, second Length, err error) {
	if second, err = ParseLength(b); err != nil {
		return 0, 0, err
	}
	first, err = ParseLength(withUnit(a, unitSuffix(b)))
	return first, second, err
}

// unitSuffix returns what follows the last digit or point of s.
func unitSuffix(s string) string {
	return s[strings.LastIndexAny(s, "0123456789.")+1:]
}

// withUnit returns s with the suffix where s ends in a digit or point.
func withUnit(s, suffix string) string {
	if unitSuffix(s) == "" {
		return s + suffix
	}
	return s
}

// String returns "72 mm to 72.02 mm", "max 0.05 mm", "min 1.2 mm", or "" where neither end is
// given; [ParseLimits] reads all but the last back to the same value.
func (w Limits) String() string {
	switch {
	case w.HasMin() && w.HasMax():
		return w.Min.String() + " to " + w.Max.String()
	case w.HasMax():
		return "max " + w.Max.String()
	case w.HasMin():
		return "min " + w.Min.String()
	}
	return ""
}

// AppendText appends the text of [Limits.String].
func (w Limits) AppendText(b []byte) ([]byte, error) { return append(b, w.String()...), nil }

// MarshalText returns the text of [Limits.String].
func (w Limits) MarshalText() ([]byte, error) { return []byte(w.String()), nil }

// UnmarshalText reads a window as [ParseLimits] does; empty text is the zero Limits. On error
// the receiver keeps its value.
func (w *Limits) UnmarshalText(text []byte) error {
	if len(text) == 0 {
		*w = Limits{}
		return nil
	}
	v, err := ParseLimits(string(text))
	if err != nil {
		return err
	}
	*w = v
	return nil
}
