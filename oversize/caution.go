// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"borewright.example/internal/enum"
)

// A Caution is something that a choice rests on and that the workshop has to know.
type Caution int8

// Cautions.
const (
	NoCaution        Caution = iota
	WindowSpansSizes         // the clearance window is wider than the step to the next size
	PistonToCome             // the finish window waits for the new piston's measured size
	WallUnknown              // boring with no least wall given or no wall measured
	HoningUnusual            // the honing allowance lies outside the range that sources give
	GaugeTooCoarse           // the doubt of the clearance is wider than its window
	AxisMoves                // bored on the worn centre
	OvalityUnseen            // no plane was read along two axes
	LifeUsed                 // a bore corrected to a clearance that only a worn one may have
)

var cautionNames = [...]string{
	"none", "window spans sizes", "piston to come", "wall unknown", "honing unusual",
	"gauge too coarse", "axis moves", "ovality unseen", "life used",
}

var cautionSentences = [...]string{
	"no caution",
	"the clearance window is wider than the step to the next size: right for graded pistons; else one of the two is misread",
	"the finish window waits: measure the new pistons before the last honing",
	"how much wall is left is not known: core shift and corrosion do not show in the bore",
	"the honing allowance lies outside the 0.02 mm to 0.13 mm that sources give",
	"the clearance cannot be proven: the doubt of bore and piston is wider than its window",
	"bored on the worn centre the axis moves, and the piston no longer stands over its old place on the crankshaft",
	"ovality was not seen: where no axis was read the bore may be beyond its limit, and worn wall may be left",
	"corrected so far, the bore has more clearance than a fresh one may: much of its life is used before it runs",
}

// String returns the caution in a sentence.
func (c Caution) String() string { return enum.Name(c, cautionSentences[:]) }

// MarshalText returns a short name, "axis moves"; a value that has none is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) {
	return enum.Marshal(c, cautionNames[:])
}

// UnmarshalText reads the short name. On error, [units.ErrUnknownName], the receiver keeps its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, cautionNames[:])
}
