// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
)

// A Stock is metal that comes out of a bore, evenly over its wall, while the bore grows from one
// diameter to another.
type Stock struct {
	From  units.Length `json:"from,omitzero"`  // diameter before
	To    units.Length `json:"to,omitzero"`    // diameter after, no smaller
	Depth units.Length `json:"depth,omitzero"` // of the bore
}

// Mass is a mass, in kilograms.
type Mass float64

// Units of mass. Multiply a constant to make one: 3 * hone.Gram.
const (
	Kilogram Mass = 1
	Gram          = Kilogram / 1000
)

// In returns the mass as a number of the unit; a unit of zero gives 0.
func (m Mass) In(unit Mass) float64 {
	if unit == 0 {
		return 0
	}
	return float64(m / unit)
}

// Radial returns what comes off the wall, half of what the diameter grows; half a picometre is cut off.
// A length that is missing is [ErrNotGiven], one out of range [units.ErrRange], a bore that shrinks [units.ErrCrossed].
func (s Stock) Radial() (units.Length, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	return (s.To - s.From) / 2, nil
}

// Volume returns the metal's volume, π/4·(To² − From²)·Depth. Errors are those of [Stock.Radial].
func (s Stock) Volume() (units.Volume, error) {
	if err := s.check(); err != nil {
		return 0, err
	}
	ring := (s.To - s.From).In(units.Metre) * (s.To + s.From).In(units.Metre) // no difference of large numbers
	return units.Volume(math.Pi / 4 * ring * s.Depth.In(units.Metre)), nil
}

// Mass returns the metal's mass. A metal whose density is not known is [ErrNotGiven]; other errors are
// those of [Stock.Radial].
func (s Stock) Mass(metal material.Material) (Mass, error) {
	v, err := s.Volume()
	if err := firstError(err, checkDensity(metal)); err != nil {
		return 0, err
	}
	return Mass(float64(v) * float64(metal.Density)), nil
}

// StockOfVolume returns the stock by which a bore of the diameter and depth loses the volume. It is
// the inverse of [Stock.Volume]. A volume that is negative or not finite is [units.ErrRange], a bore that
// would grow beyond 10 m [ErrUnreachable].
func StockOfVolume(from, depth units.Length, v units.Volume) (Stock, error) {
	s := Stock{From: from, To: from, Depth: depth}
	if err := s.check(); err != nil {
		return Stock{}, err
	}
	if !(v >= 0) || math.IsInf(float64(v), 0) {
		return Stock{}, fmt.Errorf("hone: volume of stock %v m³: %w: want 0 or more", float64(v), units.ErrRange)
	}
	d := from.In(units.Metre)
	ring := float64(v) / (math.Pi / 4 * depth.In(units.Metre))
	grows, err := units.Of(ring/(math.Sqrt(float64(d*d)+ring)+d), units.Metre)
	if err != nil || grows > units.MaxLength-from {
		return Stock{}, fmt.Errorf("hone: volume of stock %.3g m³: %w: want a bore up to %v", float64(v), ErrUnreachable, units.MaxLength)
	}
	s.To += grows
	return s, nil
}

// StockOfMass returns the stock by which a bore loses the mass, as when the cylinder is weighed before
// and after, washed and dry. It is the inverse of [Stock.Mass], with the errors of both.
//
// Oil and grit weigh too: an iron bore of 67 mm by 90 mm loses 3.5 g with 0.05 mm of its diameter, so
// that 0.1 g left behind hides 1.4 µm.
func StockOfMass(from, depth units.Length, m Mass, metal material.Material) (Stock, error) {
	if err := checkDensity(metal); err != nil {
		return Stock{}, err
	}
	return StockOfVolume(from, depth, units.Volume(float64(m)/float64(metal.Density)))
}

func (s Stock) check() error {
	err := firstError(checkLength("diameter before", s.From), checkLength("diameter after", s.To), checkLength("depth of bore", s.Depth))
	if err == nil && s.To < s.From {
		return fmt.Errorf("hone: bore from %v to %v: %w: honing makes it no smaller", s.From, s.To, units.ErrCrossed)
	}
	return err
}

func checkDensity(metal material.Material) error {
	switch d := float64(metal.Density); {
	case d == 0:
		return fmt.Errorf("hone: density of the metal: %w", ErrNotGiven)
	case !(d > 0) || d > 1e5:
		return fmt.Errorf("hone: density of the metal %v kg/m³: %w: want above 0, up to 100000", d, units.ErrRange)
	}
	return nil
}
