// SPDX-License-Identifier: BSD-3-Clause

package rings

import "borewright.example/internal/enum"

// A Caution is a thing to mind with rings. [Caution.Text] is the warning in full,
// [Caution.Source] where it comes from.
type Caution int8

// The cautions. The zero value always holds.
const (
	MakerFirst    Caution = iota // the maker's window and limit come before any rule
	FileSquare                   // filing: both ends square and parallel
	FileInward                   // filing: a coated face is cut from the outside inward, and its chamfer restored
	MeasureSquare                // the ring is pushed square with a piston, clear of ridge and ports
	MarkUp                       // the marked side faces the head
	FacingForWall                // the facing must suit the wall
	PegsStay                     // pegged rings are not staggered, and no ring end crosses a port
	GrooveClean                  // carbon is cleared out of a groove before its clearance is measured
	FinishedBore                 // a ring is filed only in the bore it is for, finished and washed
	SharpEdges                   // edges of rings cut, and a ring let go flies
	ExpanderButts                // the ends of an oil ring's expander butt, and are never cut
)

const (
	commonPractice = "common practice"
	filing         = "US Army TM 9-2815-202-34; TM 5-4320-305-24"
)

var cautionRows = [...]enum.Row{
	MakerFirst:    {"maker first", "The maker's gap and limit come before any rule.", commonPractice},
	FileSquare:    {"file square", "File both ends square and parallel, a little at a time, and measure after each.", filing},
	FileInward:    {"file inward", "On a coated ring cut from the face inward, never outward, and restore the chamfer of the outer edge.", filing},
	MeasureSquare: {"measure square", "Push the ring square with a piston to where the bore is smallest in its travel, clear of the ridge and of ports.", commonPractice},
	MarkUp: {"mark up", "The marked side of a ring, TOP or dimples, faces the crown. A ring with a twist or a taper goes by its mark; " +
		"without one ask the maker: an undercut outside is mostly down, one inside up.", "US Army TM 9-2815-255-24; TM 5-3895-346-14; TM 10-4320-344-24"},
	FacingForWall: {"facing for wall", "Match the ring's facing to the wall: never hard chromium on hard chromium.", commonPractice},
	PegsStay:      {"pegs stay", "Pegged rings keep the place of their pegs; no ring end may cross a port.", commonPractice},
	GrooveClean:   {"groove clean", "Clear the carbon out of a groove before its clearance is measured.", commonPractice},
	FinishedBore:  {"finished bore", "File a ring only in the bore it is for, finished, washed and cold: what is said before is what to expect.", commonPractice},
	SharpEdges:    {"sharp edges", "Ring edges are sharp and a ring that is let go flies: eye protection, and open it no more than it needs to go on.", commonPractice},
	ExpanderButts: {"expander butts", "The ends of an oil ring's expander butt. They never overlap, and are never cut or ground.", "US Army TM 55-1930-209-14&P-21"},
}

// String returns a short name, "file square".
func (c Caution) String() string { return enum.Name(c, enum.Names(cautionRows[:])) }

// Text returns the warning in full, in a sentence or two; "" for a value that warns of nothing.
func (c Caution) Text() string { return enum.Sentence(c, cautionRows[:]) }

// Source returns where the caution comes from, "" for a value that is none.
func (c Caution) Source() string { return enum.Source(c, cautionRows[:]) }

// MarshalText returns the text of [Caution.String]. A value that is none of the cautions is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return enum.Marshal(c, enum.Names(cautionRows[:])) }

// UnmarshalText reads the text of [Caution.String]; any other is [units.ErrUnknownName]. On error the receiver keeps
// its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, enum.Names(cautionRows[:]))
}
