// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"cmp"
	"fmt"
	"strings"
)

// Limits is a window for a length, such as a maker's tolerance. Both ends belong to it. The zero Limits allows all. A
// limit of exactly zero cannot be told from none: a window from 0 up is an upper limit alone, which is the same thing
// for every quantity that cannot be negative.
type Limits struct {
	Min, Max Length // zero where this end is not given
}

// IsZero reports whether neither end is given. It also serves JSON's omitzero.
func (w Limits) IsZero() bool { return w == Limits{} }

// HasMin reports whether the lower end is given.
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

// Width returns Max − Min, and whether both ends are given and that fits in a Length.
func (w Limits) Width() (Length, bool) {
	d := w.Max - w.Min
	if !w.HasMin() || !w.HasMax() || (d < 0) != (w.Max < w.Min) {
		return 0, false
	}
	return d, true
}

// Middle returns the middle of the window, halves of a picometre away from zero, and whether both ends are given.
func (w Limits) Middle() (Length, bool) {
	if !w.HasMin() || !w.HasMax() {
		return 0, false
	}
	m, err := Mean(w.Min, w.Max)
	return m, err == nil
}

// Shift returns the window moved by d; an end that is not given stays so. Where an end would leave the range of a
// Length, or come to exactly zero and so turn into none, it is ErrRange.
func (w Limits) Shift(d Length) (Limits, error) {
	s := w
	if w.HasMin() {
		s.Min += d
	}
	if w.HasMax() {
		s.Max += d
	}
	wrapped := d > 0 && (s.Min < w.Min || s.Max < w.Max) || d < 0 && (s.Min > w.Min || s.Max > w.Max)
	if wrapped || w.HasMin() != s.HasMin() || w.HasMax() != s.HasMax() {
		return Limits{}, fmt.Errorf("units: limits %v shifted by %v: %w", w, d, ErrRange)
	}
	return s, nil
}

// Inward returns the window with Min rounded up and Max rounded down to multiples of grid, so that it never widens.
// Where no multiple lies inside, where an end comes to zero, which would say that it is not given, or where the grid is
// not above 0, it is ErrRange; a crossed window is ErrCrossed.
func (w Limits) Inward(grid Length) (Limits, error) {
	if err := w.Validate(); err != nil {
		return Limits{}, err
	}
	r := Limits{w.Min.Ceil(grid), w.Max.Floor(grid)}
	saturated := grid > 0 && (r.Min%grid != 0 || r.Max%grid != 0)
	switch {
	case saturated || w.HasMin() && w.HasMax() && r.Min > r.Max:
		return Limits{}, fmt.Errorf("units: no multiple of %v inside limits %v: %w", grid, w, ErrRange)
	case grid <= 0 || w.HasMin() != r.HasMin() || w.HasMax() != r.HasMax():
		return Limits{}, fmt.Errorf("units: limits %v inward to a grid of %v: %w", w, grid, ErrRange)
	}
	return r, nil
}

// ParseLimits reads a window as a manual writes it:
//
//	72.000 to 72.020 mm      72.000 - 72.020 mm
//	0.0055-0.0075 in         0.2–0.4 mm         4.0039/4.0034 in
//	72.010 ± 0.010 mm        72.010 +/- 0.010 mm
//	72 +0.020/-0 mm          72 +0.020 -0.000 mm
//	max 0.05 mm              min 1.2 mm
//
// A unit after the last number serves all that have none; each may have its own. A hyphen without spaces, and a stroke,
// stand between two decimals with points: 2-41/64 in is one length. The two deviations from a size come in either
// order, and so do the limits at a stroke. Other limits that are crossed are ErrCrossed. Since zero means not given, a
// lower end of exactly zero leaves an upper limit alone, and any other end at zero is ErrRange, as is what lies beyond
// [MaxLength]. Every error is a [*ParseError].
func ParseLimits(s string) (w Limits, err error) {
	end, bare := len(s), Length(0)
	fail := func(pos int, why error, mend string) {
		if err == nil {
			err = refuse("limits", s, pos, why, mend)
		}
	}
	number := func(from, to int) Length { // called for the last number first, whose unit serves those without
		l, unit, at := parseLength(s[from:to], bare)
		if at.err == nil && l.Abs() > MaxLength {
			at.err = ErrRange
		}
		if at.err != nil {
			e := lengthError(s[from:to], l, at)
			fail(from+e.Pos, e.Err, e.Mend)
		}
		bare = cmp.Or(bare, unit)
		return l
	}
	i, j := cut(s, " to ", " - ", " – ", "–")
	m, n := cut(s, " ± ", " +/- ", "±", "+/-")
	d, e := 1, strings.LastIndexAny(s, "+-") // the deviations from a size, as in 72 +0.020/-0 mm
	for d < e && (s[d-1] != ' ' || s[d] != '+' && s[d] != '-') {
		d++
	}
	switch {
	case strings.HasPrefix(s, "max "):
		w.Max = number(4, end)
	case strings.HasPrefix(s, "min "):
		w.Min = number(4, end)
	case i > 0:
		w.Max = number(j, end)
		w.Min = number(0, i)
	case m > 0:
		half := number(n, end)
		size := number(0, m)
		w = Limits{size - half, size + half}
	case tight(s) > 0:
		i = tight(s)
		w.Max = number(i+1, end)
		w.Min = number(0, i)
		if s[i] == '/' {
			w = Limits{min(w.Min, w.Max), max(w.Min, w.Max)}
		}
	case d < e && (s[e-1] == ' ' || s[e-1] == '/'):
		second := number(e, end)
		first := number(d, e-1)
		size := number(0, d-1)
		w = Limits{size + min(first, second), size + max(first, second)}
	default:
		_, _, at := parseLength(s, 0)
		const mend = "write 72.000 to 72.020 mm, 72.010 ± 0.010 mm, 72 +0.020/-0 mm, max 0.05 mm or min 1.2 mm"
		fail(at.pos, ErrSyntax, mend)
	}
	if w.IsZero() || w.Max == 0 && !strings.HasPrefix(s, "min ") {
		fail(end, ErrRange, "a limit of zero cannot be told from none")
	} else if w.Validate() != nil || w.Min == 0 && w.Max < 0 && !strings.HasPrefix(s, "max ") { // 0 to -1 mm, too
		fail(end, ErrCrossed, "the smaller limit first")
	}
	if err != nil {
		w = Limits{}
	}
	return w, err
}

// tight returns where a hyphen or a stroke stands between two decimals, or -1.
func tight(s string) int {
	for i := 1; i < len(s)-1; i++ {
		if (s[i] == '-' || s[i] == '/') && isDigit(s[i-1]) && (isDigit(s[i+1]) || s[i+1] == '.') &&
			strings.Contains(s[:i], ".") && strings.Contains(s[i:], ".") {
			return i
		}
	}
	return -1
}

// cut returns where the first separator that s holds begins and ends, or -1.
func cut(s string, separators ...string) (begin, end int) {
	for _, sep := range separators {
		if i := strings.Index(s, sep); i >= 0 {
			return i, i + len(sep)
		}
	}
	return -1, -1
}

// String returns "72 mm to 72.02 mm", "max 0.05 mm", "min 1.2 mm", or "not given".
func (w Limits) String() string { return cmp.Or(text(w.MarshalText()), "not given") }

// MarshalText returns the text of [Limits.String], or nothing where neither end is given, which UnmarshalText reads
// back.
func (w Limits) MarshalText() (b []byte, _ error) {
	switch {
	case w.HasMin() && w.HasMax():
		b = w.Max.appendText(append(w.Min.appendText(b), " to "...))
	case w.HasMax():
		b = w.Max.appendText(append(b, "max "...))
	case w.HasMin():
		b = w.Min.appendText(append(b, "min "...))
	}
	return b, nil
}

// UnmarshalText is [ParseLimits]; empty text is the zero Limits. On error the receiver keeps its value.
func (w *Limits) UnmarshalText(text []byte) error { return given(w, text, ParseLimits) }
