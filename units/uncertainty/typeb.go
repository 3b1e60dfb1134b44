// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "math"

// bad is what a type B helper returns for numbers that are no half-width, step or factor:
// [Budget.Combined] refuses it, as it does every negative uncertainty.
const bad = -1

// typeB returns halfWidth/divisor, or bad.
func typeB(halfWidth, divisor float64) float64 {
	u := halfWidth / divisor
	if !(halfWidth >= 0) || !(divisor > 0) || math.IsInf(u, 0) {
		return bad
	}
	return u
}

// Rectangular returns the standard uncertainty of a value that may lie anywhere within
// ±halfWidth, with equal probability: halfWidth/√3 (JCGM 100:2008 4.3.7).
//
// Like all helpers of type B here it takes and gives numbers of any one unit, and a number that
// is negative or not finite gives −1, which [Budget.Combined] refuses as ErrStd.
func Rectangular(halfWidth float64) float64 { return typeB(halfWidth, math.Sqrt(3)) }

// Triangular returns halfWidth/√6, for a value within ±halfWidth that is likelier near the
// middle, such as the sum of two like rectangular ones (JCGM 100:2008 4.3.9), in the unit of
// halfWidth. A bad number gives −1, as with [Rectangular].
func Triangular(halfWidth float64) float64 { return typeB(halfWidth, math.Sqrt(6)) }

// UShaped returns halfWidth/√2, for a value that swings to and fro between ±halfWidth as a
// sine does, such as a room under a thermostat (arcsine distribution; JCGM 100:2008 H.1.3.4),
// in the unit of halfWidth. A bad number gives −1, as with [Rectangular].
func UShaped(halfWidth float64) float64 { return typeB(halfWidth, math.Sqrt2) }

// Resolution returns step/√12, for an indication that is rounded to the nearest step
// (JCGM 100:2008 F.2.2.1), in the unit of step. A bad number gives −1, as with [Rectangular].
func Resolution(step float64) float64 { return typeB(step, math.Sqrt(12)) }

// FromCertificate returns U/k, for a certificate's expanded uncertainty U with its coverage
// factor k (JCGM 100:2008 4.3.3), in the unit of U. A k that is not above zero, or a bad U, gives
// −1, as with [Rectangular].
func FromCertificate(U, k float64) float64 {
	if math.IsInf(k, 0) {
		return bad
	}
	return typeB(U, k)
}
