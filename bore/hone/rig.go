// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/units"
)

// A Rig is what drives a tool and what of it touches the wall: lines of abrasive along the axis, such as
// stones, equally spaced round the bore. Every question needs only the fields it names.
type Rig struct {
	Kind   Kind         `json:"kind,omitzero"`   // of hone
	Drive  Drive        `json:"drive,omitzero"`  // what strokes it
	Lines  int          `json:"lines,omitzero"`  // of abrasive, 1 to 1,000
	Width  units.Length `json:"width,omitzero"`  // of one line, round the bore
	Length units.Length `json:"length,omitzero"` // of one line, along the bore
	Track  units.Length `json:"track,omitzero"`  // width of the track of one line, to be told from its neighbour's
}

const maxLines = 1000

func checkLines(n int) error {
	switch {
	case n == 0:
		return fmt.Errorf("hone: lines of abrasive: %w", units.ErrNotGiven)
	case n < 0 || n > maxLines:
		return fmt.Errorf("hone: %d lines of abrasive: %w: want 1 to %d", n, units.ErrRange, maxLines)
	}
	return nil
}
