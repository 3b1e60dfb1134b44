// SPDX-License-Identifier: BSD-3-Clause

package uncertainty

import "math"

// Standard uncertainties of type B (JCGM 100:2008 4.3): from what is known, not from repeats.
// Each takes and returns numbers of any one unit; a bad number in gives a number that
// [Budget.Combined] refuses.

// Rectangular returns the standard uncertainty of a value that lies anywhere within
// ±halfWidth with equal probability: halfWidth/√3 (JCGM 100:2008 4.3.7).
func Rectangular(halfWidth float64) float64 { return halfWidth / math.Sqrt(3) }

// Triangular returns halfWidth/√6, for a value likelier near the middle (4.3.9).
func Triangular(halfWidth float64) float64 { return halfWidth / math.Sqrt(6) }

// UShaped returns halfWidth/√2, for a value that swings as a sine, such as a thermostat's
// temperature (arcsine distribution; H.1.3.4).
func UShaped(halfWidth float64) float64 { return halfWidth / math.Sqrt2 }

// Resolution returns step/√12, for a reading rounded to a step (F.2.2.1).
func Resolution(step float64) float64 { return step / math.Sqrt(12) }

// FromCertificate returns U/k, for a certificate's expanded uncertainty U and its coverage
// factor k (4.3.3).
func FromCertificate(U, k float64) float64 { return U / k }

// FiftyFifty returns 1.48·halfWidth, for even odds that the value lies within ±halfWidth (4.3.5).
func FiftyFifty(halfWidth float64) float64 {
	return halfWidth / (math.Sqrt2 * math.Erfinv(0.5))
}
