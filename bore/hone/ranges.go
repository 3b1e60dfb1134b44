// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"strings"

	"borewright.example/units"
)

// A SpindleRange is the spindle speeds a drive can be set to, ends included. A drive of one speed
// has Min equal to Max. The zero value stands for "not given".
type SpindleRange struct {
	Min units.Frequency // slowest
	Max units.Frequency // fastest, no slower than Min
}

// contains reports whether f lies in the range, to 1 part in 10⁹.
func (r SpindleRange) contains(f units.Frequency) bool { return inside(f, r.Min, r.Max) }

func (r SpindleRange) validate() error {
	if err := firstError(checkRate("slowest spindle", r.Min, "rev/min"), checkRate("fastest spindle", r.Max, "rev/min")); err != nil {
		return err
	}
	if r.Min > r.Max {
		return fmt.Errorf("hone: spindle %v above %v: %w", r.Min, r.Max, units.ErrCrossed)
	}
	return nil
}

func parseSpindleRange(s string) (SpindleRange, error) {
	r, err := parseRange(s, units.ParseFrequency)
	if err != nil {
		return SpindleRange{}, fmt.Errorf("hone: spindle range %.80q: %w: write 60 to 700 rev/min: %w", s, units.ErrSyntax, err)
	}
	w := SpindleRange{r[0], r[1]}
	return w, w.validate()
}

// String returns "60 rev/min to 700 rev/min", one speed where the ends are equal, or "" where
// the range is not given.
func (r SpindleRange) String() string {
	switch {
	case r == SpindleRange{}:
		return ""
	case r.Min == r.Max:
		return r.Min.String()
	}
	return r.Min.String() + " to " + r.Max.String()
}

// MarshalText returns the text of [SpindleRange.String]; [units.ErrNotGiven], [units.ErrRange] or [units.ErrCrossed]
// where one end is missing, is not a rate, or the ends are the wrong way round.
func (r SpindleRange) MarshalText() ([]byte, error) { return marshalValid(r) }

// UnmarshalText reads "60 rev/min to 700 rev/min", "60 to 700 rev/min", or one speed; empty text is "not
// given". Another text is [units.ErrSyntax]; other errors are those of [SpindleRange.MarshalText], and the receiver
// then keeps its value.
func (r *SpindleRange) UnmarshalText(text []byte) error { return unmarshal(r, text, parseSpindleRange) }

// A StrokingRange is the strokings that a hand or a machine can hold, ends included. The zero
// value stands for "not given".
type StrokingRange struct {
	Min Stroking // slowest
	Max Stroking // fastest, no slower than Min
}

// contains reports whether k lies in the range, to 1 part in 10⁹, whatever it counts.
func (r StrokingRange) contains(k Stroking) bool {
	return inside(k.Cycles(), r.Min.Cycles(), r.Max.Cycles())
}

func (r StrokingRange) validate() error {
	if err := firstError(r.Min.validate(), r.Max.validate()); err != nil {
		return err
	}
	if r.Min.Cycles() > r.Max.Cycles() {
		return fmt.Errorf("hone: stroking %v above %v: %w", r.Min, r.Max, units.ErrCrossed)
	}
	return nil
}

func parseStrokingRange(s string) (StrokingRange, error) {
	r, err := parseRange(s, ParseStroking)
	if err != nil {
		return StrokingRange{}, fmt.Errorf("hone: stroking range %.80q: write 40 to 90 cycles/min: %w", s, err)
	}
	w := StrokingRange{r[0], r[1]}
	return w, w.validate()
}

// String returns "40 cycles/min to 90 cycles/min", one stroking where the ends are equal, or ""
// where the range is not given.
func (r StrokingRange) String() string {
	switch {
	case r == StrokingRange{}:
		return ""
	case r.Min == r.Max:
		return r.Min.String()
	}
	return r.Min.String() + " to " + r.Max.String()
}

// MarshalText returns the text of [StrokingRange.String]; [units.ErrNotGiven], [units.ErrRange] or [units.ErrCrossed]
// where one end is missing, is not a rate, or the ends are the wrong way round.
func (r StrokingRange) MarshalText() ([]byte, error) { return marshalValid(r) }

// UnmarshalText reads "40 cycles/min to 90 cycles/min", "80 to 180 strokes/min", or one stroking; empty text
// is "not given". Both say what they count, as in [ParseStroking], whose errors are this one's, with those of
// [StrokingRange.MarshalText]; the receiver then keeps its value.
func (r *StrokingRange) UnmarshalText(text []byte) error {
	return unmarshal(r, text, parseStrokingRange)
}

// parseRange reads "a to b", where a may borrow the unit of b, or one value for both ends.
func parseRange[V any](s string, parse func(string) (V, error)) (ends [2]V, err error) {
	a, b, ok := strings.Cut(s, " to ")
	if !ok {
		a, b = s, s
	}
	if ends[1], err = parse(b); err != nil {
		return ends, err
	}
	const number = "0123456789."
	if strings.Trim(a, number) == "" {
		a += strings.TrimLeft(b, number)
	}
	ends[0], err = parse(a)
	return ends, err
}

// slack is by how much, in parts, a rate may overstep an edge: enough for one that was computed
// from the edge, too little for any gauge.
const slack = 1e-9

// inside reports lo ≤ f ≤ hi within the slack.
func inside(f, lo, hi units.Frequency) bool {
	return f >= lo*(1-slack) && f <= hi*(1+slack)
}

// marshalValid returns the text of a rate or a range of them, which is "" where none is given.
func marshalValid[V interface {
	comparable
	validate() error
	String() string
}](v V) ([]byte, error) {
	var none V
	if v != none {
		if err := v.validate(); err != nil {
			return nil, err
		}
	}
	return []byte(v.String()), nil
}
