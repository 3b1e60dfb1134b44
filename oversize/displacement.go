// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// ErrNoSpace: a volume above the piston that is zero or less.
var ErrNoSpace = errors.New("no space left above the piston")

// Displacement returns the swept volume of n equal cylinders, n·π/4·bore²·stroke: of an engine, or with n = 1 of one
// cylinder. Bore and stroke must be above 0 and at most [units.MaxLength], n 1 to 64; else [units.ErrRange], for a
// length of zero [units.ErrNotGiven].
func Displacement(bore, stroke units.Length, n int) (units.Volume, error) {
	if err := checkSize("bore", bore); err != nil {
		return 0, err
	}
	if err := checkSize("stroke", stroke); err != nil {
		return 0, err
	}
	if n < 1 || n > maxCylinders {
		return 0, fmt.Errorf("oversize: %d cylinders: %w (1 to %d)", n, units.ErrRange, maxCylinders)
	}
	return units.Volume(float64(discVolume(bore, stroke)) * float64(n)), nil // (1)
}

// Ratio returns the compression ratio (swept + clearance) / clearance, a pure number above 1.
// clearance is all the space that is left above the piston at top dead centre.
//
// A clearance volume of zero or less is ErrNoSpace; a swept volume of zero [units.ErrNotGiven], one below
// that or not finite [units.ErrRange].
func Ratio(swept, clearance units.Volume) (float64, error) {
	if err := checkSwept(swept); err != nil {
		return 0, err
	}
	if !(clearance > 0) {
		return 0, fmt.Errorf("oversize: clearance volume %v: %w", clearance, ErrNoSpace)
	}
	r := 1 + float64(swept)/float64(clearance) // (3)
	if math.IsInf(r, 0) || clearance > maxVolume {
		return 0, fmt.Errorf("oversize: clearance volume %v under a swept volume of %v: %w", clearance, swept, units.ErrRange)
	}
	return r, nil
}

// ClearanceVolume returns the space above the piston that gives the compression ratio,
// swept / (ratio − 1). A ratio that is not above 1 or is above 1000 is [units.ErrRange].
func ClearanceVolume(swept units.Volume, ratio float64) (units.Volume, error) {
	if err := checkSwept(swept); err != nil {
		return 0, err
	}
	if !(ratio > 1 && ratio <= 1000) {
		return 0, fmt.Errorf("oversize: compression ratio %v: %w (above 1, up to 1000)", ratio, units.ErrRange)
	}
	return units.Volume(float64(swept) / (ratio - 1)), nil
}

const maxVolume = 1000 * units.CubicMetre // a cube with edges of units.MaxLength

func checkSwept(v units.Volume) error {
	if !(v > 0 && v <= maxVolume) {
		return fmt.Errorf("oversize: swept volume %v: %w (above 0, up to %v)", v, given.Err(v), units.Volume(maxVolume))
	}
	return nil
}

func checkSize(what string, l units.Length) error {
	if l <= 0 || l > units.MaxLength {
		return refuseLength(what, l)
	}
	return nil
}

func refuseLength(what string, l units.Length) error {
	return fmt.Errorf("oversize: %s %v: %w (above 0, up to %v)", what, l, given.Err(l), units.MaxLength)
}

// discVolume returns π/4·d²·h, with the sign of h.
func discVolume(d, h units.Length) units.Volume {
	m := d.In(units.Metre)
	return units.Volume(float64(float64(math.Pi/4*float64(m*m)) * h.In(units.Metre)))
}
