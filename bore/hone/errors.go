// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"errors"
	"fmt"

	"borewright.example/units"
)

// Why an input was refused or an answer does not exist. Test with [errors.Is].
// An input that the answer needs and that was left at its zero value is [units.ErrNotGiven]; lengths, rates and
// texts that are out of range, crossed or not readable carry the other sentinels of package units.
var (
	// ErrConvention: a text that does not say which of two things it means: an angle without
	// its convention, or a rate that says neither strokes nor cycles.
	ErrConvention = errors.New("convention not named")
	// ErrUnreachable: the answer exists on paper only; it lies beyond what a workshop can have.
	ErrUnreachable = errors.New("cannot be reached")
)

// maxRate is the fastest turning or stroking taken or given: a million a minute. Beyond it lies
// a slip of unit, and below it no product of a setting can overflow.
const maxRate = 1e6 * units.PerMinute

// minRate is the slowest, below which quotients of a setting are lost in floating point: once in two
// million years.
const minRate = 1e-12 * units.PerMinute

func goodLength(l units.Length) bool  { return l > 0 && l <= units.MaxLength }
func goodRate(f units.Frequency) bool { return f >= minRate && f <= maxRate }

// checkLength refuses a length outside (0, 10 m].
func checkLength(name string, l units.Length) error {
	switch {
	case goodLength(l):
		return nil
	case l == 0:
		return fmt.Errorf("hone: %s: %w", name, units.ErrNotGiven)
	}
	return fmt.Errorf("hone: %s %v: %w: want above 0, up to %v", name, l, units.ErrRange, units.MaxLength)
}

// checkRate refuses a frequency outside minRate to maxRate; per names what is counted.
func checkRate(name string, f units.Frequency, per string) error {
	switch {
	case goodRate(f):
		return nil
	case f == 0:
		return fmt.Errorf("hone: %s: %w", name, units.ErrNotGiven)
	}
	return fmt.Errorf("hone: %s %v %s: %w: want %.3g to %.3g %s",
		name, f.In(units.PerMinute), per, units.ErrRange, float64(minRate/units.PerMinute), float64(maxRate/units.PerMinute), per)
}
