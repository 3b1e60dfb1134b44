// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// An Abrasive is what of a tool touches the wall: lines of abrasive along the axis, such as
// stones, equally spaced round the bore.
type Abrasive struct {
	Lines  int          `json:"lines,omitzero"`  // 1 to 1,000
	Width  units.Length `json:"width,omitzero"`  // of one line, round the bore
	Length units.Length `json:"length,omitzero"` // of one line, along the bore
}

const maxLines = 1000

func checkLines(n int) error {
	switch {
	case n == 0:
		return fmt.Errorf("hone: lines of abrasive: %w", ErrNotGiven)
	case n < 0 || n > maxLines:
		return fmt.Errorf("hone: %d lines of abrasive: %w: want 1 to %d", n, units.ErrRange, maxLines)
	}
	return nil
}

// RotativeSpeed returns the spindle speed of the handbook's rule for rigid stones: a factor by
// the metal and its hardness, k, over the width of all the stones; n = k/(π·lines·width).
//
// Machinery's Handbook, 31st ed., p. 1337, prints it as R/(W·N) rev/min with W in inches, beside
// surface speed K·D/(W·N) ft/min, both with their factors in a table; k is that K in feet a
// minute: 110 ft/min and four stones of ¼ in make 420 rev/min. R is 12·K/π, rounded there. The
// diameter of the bore drops out. The rule says nothing about the crosshatch.
//
// What is missing is [ErrNotGiven], what is out of range [units.ErrRange].
func (a Abrasive) RotativeSpeed(k units.Speed) (units.Frequency, error) {
	if err := firstError(checkLines(a.Lines), checkLength("width of abrasive", a.Width)); err != nil {
		return 0, err
	}
	switch {
	case k == 0:
		return 0, fmt.Errorf("hone: factor of the rotative speed: %w", ErrNotGiven)
	case !(k > 0) || math.IsInf(float64(k), 0):
		return 0, fmt.Errorf("hone: factor of the rotative speed %v: %w: want above 0", float64(k), units.ErrRange)
	}
	return reachRate("spindle", units.Frequency(float64(k)/(math.Pi*float64(a.Lines)*a.Width.In(units.Metre))), "rev/min")
}
