// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A SkirtAxis is the direction in which a piston's skirt was measured.
type SkirtAxis int8

// Skirts are oval: only the diameter square to the pin is the one that clearances count from.
const (
	_         SkirtAxis = iota // answered with a caution
	AcrossPin                  // square to the pin, the greatest diameter
	AlongPin                   // along the pin: refused
)

var axisNames = [...]string{AcrossPin: "across pin", AlongPin: "along pin"}

// String returns "across pin", "along pin", or "" where the axis is not given.
func (a SkirtAxis) String() string { return enum.Name(a, axisNames[:]) }

// MarshalText returns the text of [SkirtAxis.String].
func (a SkirtAxis) MarshalText() ([]byte, error) { return enum.Marshal(a, axisNames[:]) }

// UnmarshalText reads the text of [SkirtAxis.String]. Anything else is [units.ErrUnknownName], and the
// receiver keeps its value.
func (a *SkirtAxis) UnmarshalText(text []byte) error {
	return enum.Unmarshal(a, text, axisNames[:])
}

// A Piston is a piston's skirt as measured, at 20 °C.
type Piston struct {
	Size        uncertainty.Estimate `json:"size"` // as measured, over any coating
	Axis        SkirtAxis            `json:"axis,omitzero"`
	Height      units.Length         `json:"height,omitzero"`       // of the measured place above the lower edge of the skirt; 0: not said
	MakerHeight units.Length         `json:"maker_height,omitzero"` // at which the maker says to measure; 0: not said
	Coating     units.Length         `json:"coating,omitzero"`      // thickness on one side of a coating that the maker's clearance does not count; 0: none
}

// IsZero reports whether no size was measured. It also serves JSON's omitzero.
func (p Piston) IsZero() bool { return p.Size.Value == 0 }

// Skirt returns the diameter that clearances count from: the measured size less the coating on
// both sides, with the same standard uncertainty.
//
// A size of zero is [units.ErrNotGiven]. One below that, one measured along the pin, a doubt larger than the size, a
// negative height or coating and a coating that leaves no piston are [units.ErrRange]; an estimate that is none
// brings the error of its Validate.
func (p Piston) Skirt() (uncertainty.Estimate, error) {
	e := p.Size
	if err := checkSize("piston", e); err != nil {
		return uncertainty.Estimate{}, err
	}
	switch {
	case p.Axis == AlongPin:
		return uncertainty.Estimate{}, fmt.Errorf("fit: piston of %v measured along its pin: %w: measure the skirt square to it", e.Value, units.ErrRange)
	case p.Coating < 0 || p.Coating >= e.Value/2:
		return uncertainty.Estimate{}, fmt.Errorf("fit: coating %v on a piston of %v: %w", p.Coating, e.Value, units.ErrRange)
	case p.Height < 0 || p.MakerHeight < 0:
		return uncertainty.Estimate{}, fmt.Errorf("fit: piston measured at a height of %v, maker's %v: %w (0 or more)", p.Height, p.MakerHeight, units.ErrRange)
	}
	e.Value -= 2 * p.Coating
	return e, nil
}

// checkSize refuses an estimate that no size of a part can be.
func checkSize(what string, e uncertainty.Estimate) error {
	if err := e.Validate(); err != nil {
		return fmt.Errorf("fit: %s: %w", what, err)
	}
	if e.Value <= 0 || e.Std > e.Value {
		return fmt.Errorf("fit: %s of %v, standard uncertainty %v: %w (above 0, and surer than that)", what, e.Value, e.Std, given.Err(e.Value))
	}
	return nil
}
