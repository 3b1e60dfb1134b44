// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"fmt"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Groove is a ring groove of a piston, as measured. Where its depth below the land was taken,
// Root is the diameter of the land less twice that depth.
type Groove struct {
	Height uncertainty.Estimate `json:"height"` // axial, where it is worn most for the wear, at the root for a new one
	Root   uncertainty.Estimate `json:"root"`   // diameter at the bottom of the groove
}

// A Profile is the rectangular section of a ring, as measured.
type Profile struct {
	Height    uncertainty.Estimate `json:"height"`    // axial
	Thickness uncertainty.Estimate `json:"thickness"` // radial
}

// SideClearance returns the axial play of the ring in the groove, groove height less ring
// height. A ring higher than its groove is ErrSize.
func (g Groove) SideClearance(ring Profile) (uncertainty.Estimate, error) {
	for _, e := range []uncertainty.Estimate{g.Height, ring.Height} {
		if err := checkPart("height", e); err != nil {
			return uncertainty.Estimate{}, err
		}
	}
	if ring.Height.Value > g.Height.Value {
		return uncertainty.Estimate{}, fmt.Errorf("rings: ring height %v in a groove of %v: %w (the ring does not go in)", ring.Height.Value, g.Height.Value, ErrSize)
	}
	var s sum
	s.add(1, g.Height)
	s.add(-1, ring.Height)
	return s.estimate()
}

// BackClearance returns the radial room behind the ring with the piston in the middle of the
// bore: half of bore less groove root, less the ring's thickness. A ring thicker than half the
// bore, or one that would stand on the bottom of its groove before it cleared the bore, and
// seize, is ErrSize.
func (g Groove) BackClearance(ring Profile, bore uncertainty.Estimate) (uncertainty.Estimate, error) {
	if err := checkBore(bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkPart("root diameter", g.Root); err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkPart("thickness", ring.Thickness); err != nil {
		return uncertainty.Estimate{}, err
	}
	var s sum
	s.add(0.5, bore)
	s.add(-0.5, g.Root)
	s.add(-1, ring.Thickness)
	back, err := s.estimate()
	if err == nil && back.Value < 0 {
		return uncertainty.Estimate{}, fmt.Errorf("rings: ring thickness %v on a groove root of %v in a bore of %v: %w (the ring stands %v proud)",
			ring.Thickness.Value, g.Root.Value, bore.Value, ErrSize, -back.Value)
	}
	return back, err
}

// GrooveHeight returns the height of a groove from the axial play of a ring in it, as a leaf shows it, and the height of that
// ring. With it [Groove.SideClearance] tells what play a new ring will have: where that is too much the
// groove is worn, and else the ring was. A play or height that is not positive is ErrSize.
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
		return fmt.Errorf("rings: %s %v: %w (more than 0)", what, e.Value, ErrSize)
	}
	return nil
}

// GrooveLimits are the maker's limits; those not given are not judged. For a used engine they
// are the service limits.
type GrooveLimits struct {
	Side units.Limits `json:"side,omitzero"` // axial, of [Groove.SideClearance]
	Back units.Limits `json:"back,omitzero"` // radial, of [Groove.BackClearance]

	Height units.Limits `json:"height,omitzero"` // axial, of the groove itself: how far it may wear
}

// Judge holds the clearances of a ring in the groove, and the groove's height, against the limits, one finding for each
// that is given, the risk being per finding. The bore is asked for only where there is a limit
// for the back clearance. Errors are those of the clearances and of [uncertainty.Judge].
func (g Groove) Judge(ring Profile, bore uncertainty.Estimate, limits GrooveLimits, risk uncertainty.Risk) ([]uncertainty.Finding, error) {
	var findings []uncertainty.Finding
	if !limits.Side.IsZero() {
		side, err := g.SideClearance(ring)
		if err != nil {
			return nil, err
		}
		if findings, err = judge(findings, "side clearance", side, limits.Side, risk); err != nil {
			return nil, err
		}
	}
	if !limits.Back.IsZero() {
		back, err := g.BackClearance(ring, bore)
		if err != nil {
			return nil, err
		}
		if findings, err = judge(findings, "back clearance", back, limits.Back, risk); err != nil {
			return nil, err
		}
	}
	if !limits.Height.IsZero() {
		err := checkPart("height", g.Height)
		if err != nil {
			return nil, err
		}
		if findings, err = judge(findings, "groove height", g.Height, limits.Height, risk); err != nil {
			return nil, err
		}
	}
	return findings, nil
}

func judge(findings []uncertainty.Finding, subject string, e uncertainty.Estimate, w units.Limits, risk uncertainty.Risk) ([]uncertainty.Finding, error) {
	f, err := uncertainty.Judge(e, w, risk)
	if err != nil {
		return nil, fmt.Errorf("rings: %s: %w", subject, err)
	}
	f.Subject = subject
	return append(findings, f), nil
}
