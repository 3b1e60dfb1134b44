// SPDX-License-Identifier: BSD-3-Clause

package units

import (
	"errors"
	"fmt"
	"strings"
)

// Why a text or a number was refused. Test with [errors.Is].
var (
	// ErrSyntax: the text is not a number (or window) in any form this package reads.
	ErrSyntax = errors.New("not a quantity")
	// ErrMissingUnit: a bare number. Only 0 needs no unit.
	ErrMissingUnit = errors.New("missing unit")
	// ErrUnknownUnit: the number is followed by a unit that this quantity does not have.
	ErrUnknownUnit = errors.New("unknown unit")
	// ErrInexact: the text is a length that is no whole number of picometres.
	// It comes together with the nearest Length.
	ErrInexact = errors.New("not a whole number of picometres")
	// ErrRange: the quantity is outside what the type or the shop can hold.
	ErrRange = errors.New("out of range")
	// ErrNotFinite: NaN or an infinity.
	ErrNotFinite = errors.New("not a finite number")
	// ErrCrossed: the lower limit of a window lies above the upper one.
	ErrCrossed = errors.New("limits crossed")
	// ErrNoGridValue: no multiple of the grid lies inside a window.
	ErrNoGridValue = errors.New("no value of the grid lies inside the window")
	// ErrEmpty: the mean of no lengths was asked for.
	ErrEmpty = errors.New("no values")
)

// A ParseError reports a text that could not be read, how far the reading came, and the mend.
// It wraps one of the sentinels of this package.
type ParseError struct {
	Kind  string // what was wanted: "length", "temperature", …
	Input string // the text given, cut to its first 80 bytes
	Pos   int    // byte offset in the text where reading stopped
	Err   error  // ErrSyntax, ErrMissingUnit, ErrUnknownUnit, ErrInexact, ErrRange, ErrNotFinite or ErrCrossed
	Mend  string // what to write instead; may be empty
}

func (e *ParseError) Error() string {
	s := fmt.Sprintf("units: %s %q: %v at byte %d", e.Kind, e.Input, e.Err, e.Pos)
	if e.Mend != "" {
		s += " (" + e.Mend + ")"
	}
	return s
}

func (e *ParseError) Unwrap() error { return e.Err }

// parseError clones its input, so that a caller's text does not escape on the success path.
func parseError(kind, input string, pos int, err error, mend string) error {
	const most = 80
	if len(input) > most {
		input = input[:most] + "…"
	}
	return &ParseError{Kind: kind, Input: strings.Clone(input), Pos: pos, Err: err, Mend: mend}
}
