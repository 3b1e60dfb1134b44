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

var cautionNames = [...]string{"none", "axis not said", "height not said", "height differs", "coating taken off"}

var cautionSentences = [...]string{
	"no caution",
	"measure the skirt square to the pin: along the pin it is smaller, and the bore would come out tight",
	"measure the skirt at the maker's height: it is tapered",
	"the skirt was measured at another height than the maker's, and it is tapered",
	"the clearance is counted from under the skirt's coating",
}

// String returns the caution in a sentence.
func (c Caution) String() string { return enum.Name(c, cautionSentences[:]) }

// MarshalText returns a short name, "height differs".
func (c Caution) MarshalText() ([]byte, error) {
	return enum.Marshal(c, cautionNames[:])
}

// UnmarshalText reads the short name. Anything else is [units.ErrUnknownName], and the receiver keeps
// its value.
func (c *Caution) UnmarshalText(text []byte) error {
	return enum.Unmarshal(c, text, cautionNames[:])
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
