// SPDX-License-Identifier: BSD-3-Clause

package rings

import "errors"

// Why data were refused. Test with [errors.Is]. Values that are not finite or out of range, and
// crossed limits, carry the sentinels of package units; impossible estimates and risks and
// missing limits those of units/uncertainty.
var (
	// ErrOverlap: a measured end gap of zero or less. Ends that overlap have no gap to measure.
	ErrOverlap = errors.New("ring ends overlap")
	// ErrGap: an end gap, or a free gap to close, that no ring for this bore can have.
	ErrGap = errors.New("no ring for this bore has such a gap")
	// ErrSize: a size that is not positive or that its neighbours do not allow.
	ErrSize = errors.New("impossible size")
	// ErrDoubt: the window is too narrow for the uncertainty of the measurement.
	ErrDoubt = errors.New("too uncertain for the window")
	// ErrTooWide: no ring offered brings the end gap into its window.
	ErrTooWide = errors.New("end gap stays too wide")
	// ErrButts: the ends of the ring meet when hot. It comes together with the overlap, as a
	// negative gap. A ring that butts scuffs the wall, breaks, or seizes the engine.
	ErrButts = errors.New("ring butts when hot")
	// ErrForce: a force or a modulus that is not positive.
	ErrForce = errors.New("must be more than 0")
	// ErrTension: a Tension whose parameter k belongs to no ring of its section. Make one with
	// FromClosing, FromTangential or FromDiametral of [Section].
	ErrTension = errors.New("no tension of this ring")
	// ErrOrder: an order that no ring can be asked to follow, or orders out of order.
	ErrOrder = errors.New("impossible order")
	// ErrCount: too few or too many rings, bores, levels or ports.
	ErrCount = errors.New("impossible number")
)
