// SPDX-License-Identifier: BSD-3-Clause

package bore

import "errors"

// Why readings, or a question about them, were refused. Test with [errors.Is]. A gauge, layout, limit or allowance that
// cannot be carries the sentinels of package units.
var (
	// ErrNoReadings: nothing was measured, or nothing at the place asked about.
	ErrNoReadings = errors.New("no readings")
	// ErrReading: a reading that no bore can have.
	ErrReading = errors.New("impossible reading")
	// ErrSlippedDigit: a reading so far from its fellows that a digit has probably slipped.
	ErrSlippedDigit = errors.New("far from its fellows")
	// ErrCSV: a table that is not laid out as readings.
	ErrCSV = errors.New("not a table of readings")
)
