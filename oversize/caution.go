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
	NoHoningStock            // boring leaves no stock for the hone
	LifeUsed                 // a bore corrected to a clearance that only a worn one may have
)

var cautionRows = [...]enum.Row{
	NoCaution:        {"none"},
	WindowSpansSizes: {"window spans sizes", "The clearance window is wider than the step to the next size: right for graded pistons; else one of the two is misread."},
	PistonToCome:     {"piston to come", "The finish window waits: measure the new pistons before the last honing."},
	WallUnknown:      {"wall unknown", "Whether enough wall is left is not known, for want of a least wall or of a measured one: core shift and corrosion do not show in the bore."},
	HoningUnusual:    {"honing unusual", "The honing allowance lies outside the 0.02 mm to 0.13 mm that sources give."},
	GaugeTooCoarse:   {"gauge too coarse", "The clearance cannot be proven: the doubt of bore and piston is wider than its window."},
	AxisMoves:        {"axis moves", "Bored on the worn centre the axis moves, and the piston no longer stands over its old place on the crankshaft."},
	OvalityUnseen:    {"ovality unseen", "Ovality was not seen: where no axis was read the bore may be beyond its limit, and worn wall may be left."},
	NoHoningStock:    {"no honing stock", "No honing allowance is given, so that the bore is bored straight to its size: the marks of the boring tool stay, and no crosshatch is left."},
	LifeUsed:         {"life used", "Corrected so far, the bore has more clearance than a fresh one may: much of its life is used before it runs."},
}

// String returns a short name, "window spans sizes"; "none" for no caution.
func (c Caution) String() string { return enum.Name(c, enum.Names(cautionRows[:])) }

// Text returns the caution in a sentence; "" for a value that is none.
func (c Caution) Text() string { return enum.Sentence(c, cautionRows[:]) }

// MarshalText returns the text of [Caution.String]. A value that is none of the cautions is
// [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return enum.Marshal(c, enum.Names(cautionRows[:])) }

// UnmarshalText reads the text of [Caution.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, enum.Names(cautionRows[:]))
}
