// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "errors"

// Why data were refused. Test with [errors.Is]. Lengths and probabilities out of range,
// numbers that are not finite and crossed limits carry units.ErrRange, units.ErrNotFinite and units.ErrCrossed.
var (
	// ErrStd: a standard uncertainty that is negative or not finite, or degrees of freedom that are
	// neither 0, which stands for infinitely many, nor a finite number of at least 1.
	ErrStd = errors.New("no standard uncertainty: want at least 0, with 0 (infinitely many) or at least 1 degrees of freedom")
	// ErrLimits: no limit, or limits that the quantity cannot be held against.
	ErrLimits = errors.New("limits do not fit the question")
	// ErrNoData: too few values, components or estimates.
	ErrNoData = errors.New("too few data")
	// ErrCorrelation: a correlation that no set of quantities can have.
	ErrCorrelation = errors.New("impossible correlation")
	// ErrModel: a model whose value or derivatives are not finite.
	ErrModel = errors.New("model gives no finite value")
)
