// SPDX-License-Identifier: BSD-3-Clause

// Package given tells what was left out from what cannot be.
package given

import "borewright.example/units"

// Err returns why a quantity that has to be above zero is refused: [units.ErrNotGiven] where it is zero, which is how
// one that was left out arrives, else [units.ErrRange].
func Err[T ~int64 | ~float64](x T) error {
	if x == 0 {
		return units.ErrNotGiven
	}
	return units.ErrRange
}
