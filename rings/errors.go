// SPDX-License-Identifier: BSD-3-Clause

package rings

import "errors"

// Why data were refused. Test with [errors.Is]. Lengths beyond ±[units.MaxLength] and crossed
// limits carry the sentinels of package units, impossible estimates those of units/uncertainty.
var (
	// ErrOverlap: a measured end gap of zero or less. Ends that overlap cannot be measured as a gap.
	ErrOverlap = errors.New("ring ends overlap")
	// ErrGap: an end gap that no ring for this bore can have.
	ErrGap = errors.New("no ring of this size has such a gap")
	// ErrSize: a diameter, thickness or height that is not positive or does not fit its neighbour.
	ErrSize = errors.New("impossible size")
	// ErrDoubt: the limits are too close together for the uncertainty of the measurement.
	ErrDoubt = errors.New("the measurement is too uncertain for the limits")
	// ErrText: the text or number of no Action or other enumeration of this package.
	ErrText = errors.New("unknown text")
)
