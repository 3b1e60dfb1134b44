// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"iter"
	"slices"

	"borewright.example/internal/enum"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/units"
)

// Shown is the units that a sheet prints lengths in.
type Shown int8

// Units to print in. A job that does not say gets what it is written in: both where it mixes.
const (
	_ Shown = iota // as the job is written
	ShownMillimetres
	ShownInches
	ShownBoth
)

var shownNames = []string{"", "mm", "in", "both"}

// String returns "mm", "in", "both" or "".
func (s Shown) String() string { return enum.Name(s, shownNames) }

// MarshalText returns the text of [Shown.String].
func (s Shown) MarshalText() ([]byte, error) { return enum.Marshal(s, shownNames) }

// UnmarshalText reads "mm", "in" or "both". On error the receiver keeps its value.
func (s *Shown) UnmarshalText(text []byte) error {
	return enum.Unmarshal(s, text, shownNames)
}

// shownIn are the units of each.
var shownIn = [...]show.In{
	0: {units.Millimetre}, ShownMillimetres: {units.Millimetre}, ShownInches: {units.Inch}, ShownBoth: {units.Millimetre, units.Inch},
}

// in is the units to print in.
func (s Shown) in() show.In {
	if s < 0 || int(s) >= len(shownIn) {
		return shownIn[0]
	}
	return shownIn[s]
}

// written returns the units in which the lengths among the texts of a job are written.
func written(texts iter.Seq[string]) Shown {
	in := show.Written(texts)
	return Shown(1 + slices.Index(shownIn[1:], in))
}
