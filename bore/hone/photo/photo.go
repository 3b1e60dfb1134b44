// SPDX-License-Identifier: BSD-3-Clause

package photo

import (
	"image"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Pixel is a place in a picture, in pixels to the right of its left edge and below its upper edge: the
// middle of the first pixel is (0.5, 0.5).
type Pixel struct {
	X float64 `json:"x"` // pixels to the right
	Y float64 `json:"y"` // pixels down
}

// A Label is what stuck on the wall gives the picture its scale and its directions: an oblong of known size,
// its sides round the bore and along it.
type Label struct {
	Round units.Length `json:"round"` // its side round the bore, measured on the wall
	Along units.Length `json:"along"` // its side along the bore

	// Arrowed says that something on the label tells which side is which. Without that an oblong is wanted:
	// a quarter turn of a square would show the angle across the axis for the included one.
	Arrowed bool `json:"arrowed,omitzero"`
}

// A Shot is a photograph of the wall of a bore.
type Shot struct {
	Picture image.Image  `json:"-"`     // any size, in any colours
	Bore    units.Length `json:"bore"`  // its diameter
	Label   Label        `json:"label"` // stuck on the wall

	// Corners are those of the label in the picture, clockwise as seen there, the first two ends of a side
	// that runs round the bore.
	Corners [4]Pixel `json:"corners"`

	// Marking is the standard uncertainty of a coordinate of a corner, in pixels; 0 is half a pixel.
	Marking float64 `json:"marking,omitzero"`

	// Focal is the focal length in pixels of the picture; 0 is not known.
	Focal float64 `json:"focal,omitzero"`

	// Whole says that the picture is all that the lens saw. Where it may have been cropped, the axis of the
	// lens may meet it anywhere, and the doubt holds that.
	Whole bool `json:"whole,omitzero"`
}

// A Measured is the crosshatch that a photograph shows. It keeps the picture, up to some 15 MB, for
// [Measured.Picture].
type Measured struct {
	Crosshatch hone.Crosshatch    `json:"crosshatch"`   // the mean over the wall seen
	Std        units.Angle        `json:"std"`          // its standard uncertainty
	DoF        float64            `json:"dof,omitzero"` // degrees of freedom of Std; 0 = infinitely many
	Budget     uncertainty.Budget `json:"budget"`       // what Std is made of, in degrees

	// Min and Max are the range of the angle over the wall seen, where the leans of its lines spread
	// beyond what one angle shows: those of a hand that swings. They are zero where they do not.
	Min hone.Crosshatch `json:"min,omitzero"`
	Max hone.Crosshatch `json:"max,omitzero"`

	Leans [2]units.Angle `json:"leans"` // of the two families from square to the axis, up to the right and down
	Tilt  units.Angle    `json:"tilt"`  // of the camera from square to the wall at the label

	view *view
}
