// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/internal/given"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Groove is a ring groove of a piston, as measured. Where its depth below the land was taken,
// Root is the diameter of the land less twice that depth.
type Groove struct {
	Height uncertainty.Estimate `json:"height"` // axial, where it is worn most for the wear, at the root for a new one
	Root   uncertainty.Estimate `json:"root"`   // diameter at the bottom of the groove
}

// SideClearance returns the axial play in the groove of a ring of that height, groove height less ring
// height. A ring higher than its groove is [units.ErrRange]. Clear the carbon out before a groove is measured.
func (g Groove) SideClearance(height uncertainty.Estimate) (uncertainty.Estimate, error) {
	for _, e := range []uncertainty.Estimate{g.Height, height} {
		if err := checkPart("height", e); err != nil {
			return uncertainty.Estimate{}, err
		}
	}
	if height.Value > g.Height.Value {
		return uncertainty.Estimate{}, fmt.Errorf("rings: ring height %v in a groove of %v: %w (the ring does not go in)", height.Value, g.Height.Value, units.ErrRange)
	}
	var s sum
	s.add(1, g.Height)
	s.add(-1, height)
	return s.estimate()
}

// BackClearance returns the radial room behind a ring of that thickness with the piston in the middle of a bore of
// that diameter: half of bore less groove root, less the ring's thickness. A ring thicker than half the
// bore, or one that would stand on the bottom of its groove before it cleared the bore, and
// seize, is [units.ErrRange].
func (g Groove) BackClearance(thickness, bore uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := checkBore(bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkPart("root diameter", g.Root); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkPart("thickness", thickness); err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	s.add(0.5, bore)
	s.add(-0.5, g.Root)
	s.add(-1, thickness)
	back, err := s.estimate()
	if err == nil && back.Value < 0 {
		return uncertainty.Estimate{}, fmt.Errorf("rings: ring thickness %v on a groove root of %v in a bore of %v: %w (the ring stands %v proud)",
			thickness.Value, g.Root.Value, bore.Value, units.ErrRange, -back.Value)
	}
	return back, err
}

// GrooveHeight returns the height of a groove from the axial play of a ring in it, as a leaf shows it, and the
// height of that ring. With it [Groove.SideClearance] tells what play a new ring will have: where that is too much
// the groove is worn, and else the ring was. A play or height of zero is [units.ErrNotGiven], below that
// [units.ErrRange].
func GrooveHeight(side, ring uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := checkPart("side clearance", side); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkPart("height", ring); err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	s.add(1, side)
	s.add(1, ring)
	return s.estimate()
}

func checkPart(what string, e uncertainty.Estimate) error {
	if err := e.Validate(); err != nil {
		return fmt.Errorf("rings: %s: %w", what, err)
	}
	if e.Value <= 0 {
		return fmt.Errorf("rings: %s %v: %w (more than 0)", what, e.Value, given.Err(e.Value))
	}
	return nil
}
