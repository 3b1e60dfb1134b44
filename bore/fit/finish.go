// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/internal/enum"
	"borewright.example/units"
)

// FinishWindow returns the diameters that the finished bore may have at 20 °C: the piston's
// skirt plus each end of the clearance window. It is the window for the true size of the bore,
// with the piston as measured; [Clearance] carries the doubt of both into the verdict.
//
// A window with an end missing is [units.ErrNotGiven], since one end alone cannot be worked to (write a
// least clearance of zero as 1 pm); crossed ends are [units.ErrCrossed]; a negative clearance is
// [units.ErrRange]. The errors of [Piston.Skirt] come through.
func FinishWindow(p Piston, clearance units.Limits) (units.Limits, error) {
	skirt, err := p.Skirt()
	if err != nil {
		return units.Limits{}, err
	}
	if err := checkClearance(clearance); err != nil {
		return units.Limits{}, err
	}
	return clearance.Shift(skirt.Value) // (1)
}

// PistonWindow returns the skirts that fit a finished bore at 20 °C, given by its smallest and its
// largest diameter: at the smallest a piston has at least the least clearance, at the largest
// at most the greatest. It turns [FinishWindow] about, and says which piston a bore that has become
// too large still takes.
//
// A bore that varies by more than the window is wide is ErrNarrow. A bore with an end missing is
// [units.ErrNotGiven], one no larger than the clearance or beyond units.MaxLength [units.ErrRange], crossed
// ends are [units.ErrCrossed]; errors of the window are those of [FinishWindow].
func PistonWindow(bore, clearance units.Limits) (units.Limits, error) {
	if err := checkClearance(clearance); err != nil {
		return units.Limits{}, err
	}
	if err := bore.Validate(); err != nil {
		return units.Limits{}, fmt.Errorf("fit: bore: %w", err)
	}
	if !bore.HasMin() || !bore.HasMax() {
		return units.Limits{}, fmt.Errorf("fit: bore %q: both ends: %w", bore, units.ErrNotGiven)
	}
	if bore.Min <= clearance.Max || bore.Max > units.MaxLength {
		return units.Limits{}, fmt.Errorf("fit: bore %v: %w", bore, units.ErrRange)
	}
	w := units.Limits{Min: bore.Max - clearance.Max, Max: bore.Min - clearance.Min}
	if w.Min > w.Max {
		return units.Limits{}, fmt.Errorf("fit: bore %v for a clearance of %v: %w", bore, clearance, ErrNarrow)
	}
	return w, nil
}

func checkClearance(w units.Limits) error {
	switch {
	case !w.HasMin() || !w.HasMax():
		return fmt.Errorf("fit: clearance window %q: both ends: %w", w, units.ErrNotGiven)
	case w.Min < 0 || w.Max > units.MaxLength:
		return fmt.Errorf("fit: clearance window %v: %w", w, units.ErrRange)
	}
	if err := w.Validate(); err != nil {
		return fmt.Errorf("fit: clearance window: %w", err)
	}
	return nil
}

// An Aim is the rule for the size to work to inside a finish window.
type Aim int8

// Wear only opens a clearance, so a bore finished near the tight end lasts longest; the centre
// is the surest to hit.
const (
	Centre Aim = iota
	Tight      // the least size that the doubt of the measurement allows
)

var aimNames = [...]string{Centre: "centre", Tight: "tight"}

// String returns "centre" or "tight".
func (a Aim) String() string { return enum.Name(a, aimNames[:]) }

// MarshalText returns the text of [Aim.String].
func (a Aim) MarshalText() ([]byte, error) { return enum.Marshal(a, aimNames[:]) }

// UnmarshalText reads the text of [Aim.String]. Anything else is [units.ErrUnknownName], and the
// receiver keeps its value.
func (a *Aim) UnmarshalText(text []byte) error {
	return enum.Unmarshal(a, text, aimNames[:])
}

// AimIn returns the diameter to aim at in a finish window by a rule, at 20 °C: its centre, or its tight
// end. guard is the expanded uncertainty of the clearance (of bore and piston together, half of
// its interval); no aim is nearer to the tight end than that, so that a bore which measures the
// size aimed at has at least the least clearance.
//
// A window with an end missing is [units.ErrNotGiven], a negative guard [units.ErrRange], and a guard
// wider than the whole window ErrNarrow.
func AimIn(window units.Limits, guard units.Length, rule Aim) (units.Length, error) {
	mid, ok := window.Middle()
	switch {
	case !ok:
		return 0, fmt.Errorf("fit: finish window %q: both ends: %w", window, units.ErrNotGiven)
	case window.Min > window.Max:
		return 0, fmt.Errorf("fit: finish window: %w", window.Validate())
	case guard < 0:
		return 0, fmt.Errorf("fit: guard %v: %w (0 or more)", guard, units.ErrRange)
	case guard > window.Max-window.Min:
		return 0, fmt.Errorf("fit: window %v, doubt ± %v: %w", window, guard, ErrNarrow)
	}
	least := window.Min + guard
	if rule == Tight {
		return least, nil
	}
	return max(mid, least), nil
}
