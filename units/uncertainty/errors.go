// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "errors"

// Why data were refused. Test with [errors.Is]. Lengths out of range and crossed limits carry
// the sentinels of package units.
var (
	// ErrStd: a standard uncertainty, half-width or spread that is negative or not finite.
	ErrStd = errors.New("uncertainty must be a finite number of at least 0")
	// ErrDoF: degrees of freedom that are neither 0, which stands for infinitely many, nor a
	// finite number of at least 1.
	ErrDoF = errors.New("degrees of freedom must be 0 (infinitely many) or at least 1")
	// ErrProbability: a probability, coverage or risk outside its range.
	ErrProbability = errors.New("probability out of range")
	// ErrNoLimits: nothing to judge against.
	ErrNoLimits = errors.New("no limit given")
	// ErrNoData: too few values, components or estimates.
	ErrNoData = errors.New("too few data")
	// ErrCorrelation: correlation coefficients that no set of quantities can have.
	ErrCorrelation = errors.New("impossible correlation")
	// ErrModel: a measurement model whose value or sensitivity is not finite.
	ErrModel = errors.New("model gives no finite value")
)
