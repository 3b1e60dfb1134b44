// SPDX-License-Identifier: BSD-3-Clause

package rings

import (
	"borewright.example/internal/enum"
)

func (a Action) names() []string { return []string{"undecided", "as is", "file", "too wide"} }

// String returns "undecided", "as is", "file" or "too wide".
func (a Action) String() string { return enum.Name(a, a.names()) }

// MarshalText returns the text of [Action.String]; a value that is none of the four is [units.ErrUnknownName].
func (a Action) MarshalText() ([]byte, error) { return enum.Marshal(a, a.names()) }

// UnmarshalText reads the text of [Action.String]; any other is [units.ErrUnknownName]. On error the receiver
// keeps its value.
func (a *Action) UnmarshalText(text []byte) error { return enum.Unmarshal(a, text, a.names()) }

func (c Caution) names() []string {
	return []string{"maker first", "file square", "file inward", "measure square", "mark up", "facing for wall", "pegs stay", "groove clean"}
}

// String returns the caution as a sentence.
func (c Caution) String() string {
	return enum.Name(c, []string{
		"The maker's gap and limit come before any rule.",
		"File both ends square and parallel, a little at a time, and measure after each.",
		"On a coated ring cut from the face inward, never outward, and restore the chamfer of the outer edge.",
		"Push the ring square with a piston to where the bore is smallest in its travel, clear of the ridge and of ports.",
		"The marked side of a ring faces the head.",
		"Match the ring's facing to the wall: never hard chromium on hard chromium.",
		"Pegged rings keep the place of their pegs; no ring end may cross a port.",
		"Clear the carbon out of a groove before its clearance is measured.",
	})
}

// MarshalText returns the caution's short name, such as "file square"; a value that is none of
// them is [units.ErrUnknownName].
func (c Caution) MarshalText() ([]byte, error) { return enum.Marshal(c, c.names()) }

// UnmarshalText reads the text of [Caution.MarshalText]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, c.names())
}
