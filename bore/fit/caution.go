// SPDX-License-Identifier: BSD-3-Clause

package fit

import (
	"borewright.example/internal/enum"
)

// A Caution is something about a piston's measured size that its clearance rests on.
type Caution int8

// Cautions.
const (
	NoCaution     Caution = iota
	AxisUnsaid            // it was not said in which direction the skirt was measured
	HeightUnsaid          // it was not said at which height
	HeightDiffers         // measured at another height than the maker's
	CoatingTaken          // the coating was taken off the measured size
)

var cautionRows = [...]enum.Row{
	NoCaution:     {"none"},
	AxisUnsaid:    {"axis not said", "Measure the skirt square to the pin: along the pin it is smaller, and the bore would come out tight."},
	HeightUnsaid:  {"height not said", "Measure the skirt at the maker's height: it is tapered."},
	HeightDiffers: {"height differs", "The skirt was measured at another height than the maker's, and it is tapered."},
	CoatingTaken:  {"coating taken off", "The clearance is counted from under the skirt's coating."},
}

// String returns a short name, "axis not said"; "none" for no caution.
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

// Cautions returns what the measured size of the piston leaves open; nothing for the zero
// Piston.
func (p Piston) Cautions() []Caution {
	if p.IsZero() {
		return nil
	}
	var list []Caution
	add := func(c Caution, when bool) {
		if when {
			list = append(list, c)
		}
	}
	add(AxisUnsaid, p.Axis == AxisNotSaid)
	add(HeightUnsaid, p.Height == 0)
	add(HeightDiffers, p.Height != 0 && p.MakerHeight != 0 && p.Height != p.MakerHeight)
	add(CoatingTaken, p.Coating != 0)
	return list
}
