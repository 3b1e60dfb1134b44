// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"errors"
	"fmt"

	"borewright.example/units"
)

// ErrRoom: the tool, its stroke and the bore do not go together.
var ErrRoom = errors.New("tool does not fit its room")

// A Travel is where the tool goes in a bore: from standing out of the top by Top to standing out
// of the bottom by Bottom. The depth of the bore and the tool are along the axis.
//
// How far a tool may stand out depends on its kind: see [Kind.Cautions]. A blind bore has no
// room at its closed end: 0.
type Travel struct {
	Depth  units.Length `json:"depth,omitzero"` // of the bore, from the top face to the bottom
	Tool   units.Length `json:"tool,omitzero"`  // abrasive length of the tool
	Top    units.Length `json:"top,omitzero"`
	Bottom units.Length `json:"bottom,omitzero"` // what of Tool stands out at the ends of the stroke
}

// Stroke returns the stroke that the travel takes: Depth + Top + Bottom − Tool. A tool that leaves
// the bore altogether, or one so long that no stroke is left, is [ErrRoom].
func (t Travel) Stroke() (units.Length, error) {
	if err := firstError(checkLength("depth of bore", t.Depth), checkLength("tool", t.Tool)); err != nil {
		return 0, err
	}
	for _, end := range []struct {
		name string
		out  units.Length
	}{{"top", t.Top}, {"bottom", t.Bottom}} {
		if end.out < 0 || end.out >= t.Tool {
			return 0, fmt.Errorf("hone: tool out of the %s by %v: %w: want 0 or more, below the tool's %v", end.name, end.out, ErrRoom, t.Tool)
		}
	}
	s := t.Depth + t.Top + t.Bottom - t.Tool
	if s <= 0 {
		return 0, fmt.Errorf("hone: tool of %v: %w: want below %v, the bore and what stands out of it", t.Tool, ErrRoom, t.Depth+t.Top+t.Bottom)
	}
	return s, nil
}
