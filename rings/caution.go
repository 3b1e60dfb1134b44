// SPDX-License-Identifier: BSD-3-Clause

package rings

// A Caution is a thing to mind with rings, for a job sheet to print. Its String is the sentence,
// its text in JSON a short name.
type Caution int8

// The cautions. The zero value always holds.
const (
	MakerFirst    Caution = iota // the maker's window and limit come before any rule
	FileSquare                   // filing: both ends square and parallel (US Army TM 9-2815-202-34, TM 5-4320-305-24)
	FileInward                   // filing: a coated face is cut from the outside inward, and its chamfer restored (the same)
	MeasureSquare                // the ring is pushed square with a piston, clear of ridge and ports (common practice)
	MarkUp                       // the marked side faces the head (common practice)
	FacingForWall                // the facing must suit the wall: never hard chromium on hard chromium (common practice)
	PegsStay                     // pegged rings are not staggered, and no ring end crosses a port
	GrooveClean                  // carbon is cleared out of a groove before its clearance is measured (common practice)
)
