// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"fmt"

	"borewright.example/units"
)

// A Stack is the heights from the crankshaft up to the deck. A new piston may have another pin
// height than the old one.
type Stack struct {
	Block     units.Length // from the axis of the crankshaft to the deck, gaskets under the barrel included
	Stroke    units.Length
	Rod       units.Length // between the centres of its eyes
	PinHeight units.Length // from the axis of the pin to the rim of the piston's crown
}

// Deck returns how far the rim of the crown stays below the deck at top dead centre, Block −
// Stroke/2 − Rod − PinHeight; negative where it stands out. The axes of cylinder and pin are
// taken to meet that of the crankshaft.
//
// A height that is not positive or beyond a tenth of [units.MaxLength] is [units.ErrRange].
func (s Stack) Deck() (units.Length, error) {
	for _, h := range []struct {
		what   string
		height units.Length
	}{{"block", s.Block}, {"stroke", s.Stroke}, {"rod", s.Rod}, {"pin height", s.PinHeight}} {
		if h.height <= 0 || h.height > units.MaxLength/10 {
			return 0, fmt.Errorf("fit: %s %v: %w (above 0, up to %v)", h.what, h.height, units.ErrRange, units.MaxLength/10)
		}
	}
	half, err := s.Stroke.MulDiv(1, 2)
	return s.Block - half - s.Rod - s.PinHeight, err
}
