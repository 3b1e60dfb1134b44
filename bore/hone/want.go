// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Want is a crosshatch to aim at and how far off it may be.
type Want struct {
	Crosshatch Crosshatch  `json:"crosshatch,omitzero"` // to aim at
	Tolerance  units.Angle `json:"tolerance,omitzero"`  // either side, on the included angle; above 0
}

// Judge holds a crosshatch against the one wanted, with the doubt of its included angle as a half-width: within
// where all of it is within the tolerance, ends included, beyond where none is, else undecided. A doubt below zero or no number, and a want
// that is none, are undecided.
func (w Want) Judge(c Crosshatch, doubt units.Angle) uncertainty.Verdict {
	lo, hi, err := w.ends()
	if err != nil || c.IsZero() || !(doubt >= 0) {
		return uncertainty.Undecided
	}
	d := int64(math.Round(min(doubt.In(units.Degree), 180) / 2 * picodegrees))
	switch {
	case c.half-d >= lo.half && c.half+d <= hi.half:
		return uncertainty.Within
	case c.half+d < lo.half || c.half-d > hi.half:
		return uncertainty.Beyond
	}
	return uncertainty.Undecided
}

// String returns "45° ± 5° included".
func (w Want) String() string {
	return fmt.Sprintf("%v ± %v included", w.Crosshatch.Included(), w.Tolerance)
}

// ends returns the flattest and the steepest crosshatch that will do.
func (w Want) ends() (flat, steep Crosshatch, err error) {
	if err := w.Crosshatch.check(); err != nil {
		return flat, steep, err
	}
	if w.Tolerance == 0 {
		return flat, steep, fmt.Errorf("hone: tolerance of the crosshatch: %w", units.ErrNotGiven)
	}
	t := math.Round(w.Tolerance.In(units.Degree) / 2 * picodegrees)
	if !(t >= 1 && t < 90*picodegrees) {
		return flat, steep, fmt.Errorf("hone: tolerance of the crosshatch %v: %w: want above 0°, below 180°", w.Tolerance, units.ErrRange)
	}
	flat, steep = Crosshatch{w.Crosshatch.half - int64(t)}, Crosshatch{w.Crosshatch.half + int64(t)}
	if flat.half < 1 || steep.half > 90*picodegrees-1 {
		return flat, steep, fmt.Errorf("hone: %v: %w: want both ends above 0°, below 180°", w, units.ErrRange)
	}
	return flat, steep, nil
}
