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
