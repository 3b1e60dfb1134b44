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
	// ErrWall: a sleeve or barrel with a wall of zero or less.
	ErrWall = errors.New("no wall left")
	// ErrInterference: a DIAMETRAL interference that is not positive at its greater end, or is
	// beyond a hundredth of the seat, which no metal bears.
	ErrInterference = errors.New("no such interference")
	// ErrClass: a tolerance class that is not in this package's table, or stands on the wrong part.
	ErrClass = errors.New("class not in the table")
	// ErrSize: a nominal size outside the ranges of the table.
	ErrSize = errors.New("size outside the table")
	// ErrTooHot: the answer is hotter than the part stands.
	ErrTooHot = errors.New("hotter than the part stands")
	// ErrUnreachable: no temperature that can be reached does it.
	ErrUnreachable = errors.New("cannot be reached")
)

// checkLength refuses a length outside (0, 10 m].
func checkLength(what string, l units.Length) error {
	switch {
	case l == 0:
		return fmt.Errorf("sleeve: %s: %w", what, units.ErrNotGiven)
	case l < 0 || l > units.MaxLength:
		return fmt.Errorf("sleeve: %s %v: %w (above 0, up to %v)", what, l, units.ErrRange, units.MaxLength)
	}
	return nil
}
