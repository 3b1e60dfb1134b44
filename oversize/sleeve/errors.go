// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"errors"
	"fmt"

	"borewright.example/units"
)

// Why an input was refused or an answer does not exist, beside the sentinels of package units.
// Test with [errors.Is].
var (
	// ErrNotGiven: an input that the answer needs was left at its zero value.
	ErrNotGiven = units.ErrNotGiven
	// ErrWall: a sleeve or barrel with a wall of zero or less.
	ErrWall = errors.New("no wall left")
	// ErrInterference: a DIAMETRAL interference that is not positive at its greater end, or is
	// beyond a hundredth of the seat, which no metal bears.
	ErrInterference = errors.New("no such interference")
	// ErrMaterial: a modulus, ratio, strength or coefficient that no metal has.
	ErrMaterial = errors.New("not a metal's property")
	// ErrClass: a tolerance class that is not in this package's table, or stands on the wrong part.
	ErrClass = errors.New("class not in the table")
	// ErrSize: a nominal size outside the ranges of the table.
	ErrSize = errors.New("size outside the table")
	// ErrTooHot: the answer is hotter than the part stands.
	ErrTooHot = errors.New("hotter than the part stands")
	// ErrUnreachable: no temperature that can be reached does it.
	ErrUnreachable = errors.New("cannot be reached")
	// ErrNoStock: the fitted bore is already as large as the finish size, or larger.
	ErrNoStock = errors.New("no stock left to hone")
)

// checkLength refuses a length outside (0, 10 m].
func checkLength(what string, l units.Length) error {
	switch {
	case l == 0:
		return fmt.Errorf("sleeve: %s: %w", what, ErrNotGiven)
	case l < 0 || l > units.MaxLength:
		return fmt.Errorf("sleeve: %s %v: %w (above 0, up to %v)", what, l, units.ErrRange, units.MaxLength)
	}
	return nil
}
