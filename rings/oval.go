// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/mathext"

	"borewright.example/bore"
	"borewright.example/internal/given"
	"borewright.example/units"
)

// An Oval is a bore of elliptical section, given by two diameters at right angles. Max less
// Min is its ovality, which is four times the radial amplitude of order 2. A diameter of zero is
// [units.ErrNotGiven]; below that, beyond [units.MaxLength] or the wrong way round they are [units.ErrRange].
type Oval struct {
	Max units.Length `json:"max"` // a diameter
	Min units.Length `json:"min"` // the diameter square to it
}

func (o Oval) validate() error {
	switch {
	case o.Min <= 0 || o.Max < o.Min:
		return fmt.Errorf("rings: oval bore %v by %v: %w (greatest first, both more than 0)", o.Max, o.Min, given.Err(min(o.Max, o.Min)))
	case o.Max > units.MaxLength:
		return fmt.Errorf("rings: oval bore %v by %v: %w (up to %v)", o.Max, o.Min, units.ErrRange, units.MaxLength)
	}
	return nil
}

// Perimeter returns the length of the wall round the bore, 2·D·E(1 − (d/D)²), with E the
// complete elliptic integral of the second kind (DLMF 19.9.9). Diameters that no [Oval] has are its errors, and a
// perimeter beyond [units.MaxLength] is units.ErrRange.
func (o Oval) Perimeter() (units.Length, error) { return o.perimeter(1) }

// Round returns the diameter of the round bore with the same perimeter, in which a ring has the
// same end gap. It is larger than the mean of the two diameters, by (D − d)²/(16·mean) nearly:
// 0.06 µm for 0.3 mm of ovality in 87.5 mm. Errors are those of [Oval.Perimeter].
func (o Oval) Round() (units.Length, error) { return o.perimeter(1 / math.Pi) }

func (o Oval) perimeter(by float64) (units.Length, error) {
	if err := o.validate(); err != nil {
		return 0, err
	}
	g, l := float64(o.Max), float64(o.Min)
	m := (g - l) / g * ((g + l) / g) // 1 − (l/g)², without the loss of digits
	p, err := units.Of(2*g*mathext.CompleteE(m)*by, units.Picometre)
	if err != nil {
		return 0, fmt.Errorf("rings: oval bore %v by %v: %w", o.Max, o.Min, err)
	}
	return p, nil
}

// Harmonic returns the form of the bore, as [Tension.Follow] asks for it: order 2, with a RADIAL amplitude of a
// quarter of the ovality, its greatest diameter at an axis. Of a bore measured along two axes only, the
// ovality is the least that it can be. An axis that is not finite is units.ErrNotFinite.
func (o Oval) Harmonic(greatest units.Angle) (bore.Harmonic, error) {
	if err := o.validate(); err != nil {
		return bore.Harmonic{}, err
	}
	if err := checkAngle(greatest); err != nil {
		return bore.Harmonic{}, err
	}
	amplitude, err := (o.Max - o.Min).MulDiv(1, 4)
	return bore.Harmonic{Order: 2, Amplitude: amplitude, Phase: greatest}, err
}
