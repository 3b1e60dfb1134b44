// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Warm says how warm a bore and a piston are and what they are made of. Neither temperature may
// be left out; of the materials only the expansion and its spread take part. An iron sleeve held in
// an aluminium barrel grows with neither coefficient: give it one of its own.
type Warm struct {
	Bore     material.Material `json:"bore"`      // what it grows with
	Piston   material.Material `json:"piston"`    // what it grows with
	BoreAt   units.Temperature `json:"bore_at"`   // mean over the ring travel
	PistonAt units.Temperature `json:"piston_at"` // of the skirt
}

// HotClearance returns the diametral clearance at those temperatures of a bore and a piston whose
// sizes are given at 20 °C, if both were round and free to grow:
//
//	D·(1 + αb·ΔTb) − P·(1 + αp·ΔTp)
//
// The spread of each coefficient takes part in the doubt as an even chance over its width.
//
// It is an indicator, not a limit. A negative figure does not prove that the piston seizes: a
// skirt is ground oval and tapered, gives way, and is cooler than its crown. A positive figure
// proves nothing either, since no skirt has one temperature.
//
// The errors are those of [Clearance]; a temperature that is not given is [units.ErrNotGiven]; temperatures below absolute zero and sizes that grow by
// more than a tenth are [units.ErrRange].
func (w Warm) HotClearance(bore uncertainty.Estimate, p Piston) (uncertainty.Estimate, error) {
	skirt, err := p.Skirt()
	if err != nil {
		return uncertainty.Estimate{}, err
	}
	if err := checkSize("bore", bore); err != nil {
		return uncertainty.Estimate{}, err
	}
	hotBore, err := w.Bore.SizeAt(bore.Value, w.BoreAt)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: bore: %w", err)
	}
	hotSkirt, err := w.Piston.SizeAt(skirt.Value, w.PistonAt)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: piston: %w", err)
	}
	expansions := w.spread(bore.Value, skirt.Value)
	e, err := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "bore", Sensitivity: hotBore.In(bore.Value), Std: float64(bore.Std), DoF: bore.DoF},
		{Name: "piston", Sensitivity: -hotSkirt.In(skirt.Value), Std: float64(skirt.Std), DoF: skirt.DoF},
		{Name: "expansions", Sensitivity: 1, Std: expansions},
	}}.Estimate(hotBore-hotSkirt, units.Picometre) // (3)
	if err != nil {
		return uncertainty.Estimate{}, fmt.Errorf("fit: hot clearance: %w", err)
	}
	return e, nil
}

// spread returns the standard uncertainty, in picometres, that the spreads of both expansions
// give the clearance; a spread that is negative or not finite gives one that no budget takes.
func (w *Warm) spread(bore, skirt units.Length) float64 {
	b := float64(bore) * math.Abs(float64(w.BoreAt.AboveReference())) * float64(w.Bore.Within)
	p := float64(skirt) * math.Abs(float64(w.PistonAt.AboveReference())) * float64(w.Piston.Within)
	if b < 0 || p < 0 {
		return -1
	}
	return uncertainty.Rectangular(math.Sqrt(float64(b*b) + float64(p*p)))
}
