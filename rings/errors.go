// SPDX-License-Identifier: BSD-3-Clause

package rings

import "errors"

// Why data were refused. Test with [errors.Is]. Values that are not finite or out of range, and
// crossed limits, carry the sentinels of package units; impossible estimates and risks and
// missing limits those of units/uncertainty.
var (
	// ErrOverlap: a measured end gap of zero or less. Ends that overlap have no gap to measure.
	ErrOverlap = errors.New("ring ends overlap")
	// ErrSize: a size that is not positive, or that no ring of its neighbours can have.
	ErrSize = errors.New("impossible size")
	// ErrDoubt: the window is too narrow for the uncertainty of the measurement.
	ErrDoubt = errors.New("too uncertain for the window")
	// ErrButts: the ends of the ring meet when hot. It comes together with the overlap, as a
	// negative gap. A ring that butts scuffs the wall, breaks, or seizes the engine.
	ErrButts = errors.New("ring butts when hot")
)
