// SPDX-License-Identifier: BSD-3-Clause

package rings

import "errors"

// Why data were refused. Test with [errors.Is]. Sizes of zero, values that are not finite or out of range, and
// crossed limits carry the sentinels of package units; impossible estimates and risks and
// missing limits those of units/uncertainty.
var (
	// ErrDoubt: the window is too narrow for the uncertainty of the measurement.
	ErrDoubt = errors.New("too uncertain for the window")
	// ErrButts: the ends of the ring meet when hot. It comes together with the overlap, as a
	// negative gap. A ring that butts scuffs the wall, breaks, or seizes the engine.
	ErrButts = errors.New("ring butts when hot")
)
