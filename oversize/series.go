// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"

	"borewright.example/bore/fit"
	"borewright.example/units"
)

// A Size is one size on offer.
type Size struct {
	Over   units.Length `json:"over"`            // over the nominal bore; 0 is the standard size
	Piston fit.Piston   `json:"piston,omitzero"` // for this size, measured or as its supplier states it; zero: not known yet
}

// A Series is the sizes on offer, the smallest first. A supplier's own is one literal.
type Series []Size

// Metric returns the usual metric series: 0.25, 0.50, 0.75 and 1.00 mm (common practice).
//
// It is not the inch series in other clothes: 0.25 mm is 0.00984 in, and a 0.010 in piston is
// 4 µm larger than a 0.25 mm one.
func Metric() Series { return steps(units.Millimetre/4, 4) }

// Inch returns the usual inch series: 0.010, 0.020, 0.030 and 0.040 in (common practice), which
// are 0.254, 0.508, 0.762 and 1.016 mm.
func Inch() Series { return steps(10*units.Thou, 4) }

func steps(step units.Length, n int) Series {
	s := make(Series, n)
	for i := range s {
		s[i].Over = units.Length(i+1) * step
	}
	return s
}

// validate refuses sizes that do not rise strictly, and one that is negative or beyond
// [units.MaxLength]. An empty series is valid: nothing is on offer.
func (s Series) validate() error {
	for i, size := range s {
		if size.Over < 0 || size.Over > units.MaxLength {
			return fmt.Errorf("oversize: size %d of the series, %v over: %w", i+1, size.Over, units.ErrRange)
		}
		if i > 0 && size.Over <= s[i-1].Over {
			return fmt.Errorf("oversize: size %d of the series, %v over, after %v: %w (rising)", i+1, size.Over, s[i-1].Over, units.ErrRange)
		}
	}
	return nil
}
