// SPDX-License-Identifier: BSD-3-Clause

package photo

import "errors"

// Why a picture gave no angle. Test with [errors.Is]. A picture, bore or label left at its zero value is
// [borewright.example/units.ErrNotGiven]; lengths and sizes out of range carry [borewright.example/units.ErrRange].
var (
	// ErrCorners: the corners are crossed, mirrored, in the wrong order, outside the picture, or fit no label
	// of that size on the wall of that bore.
	ErrCorners = errors.New("corners do not fit the label")
	// ErrSmall: picture, label or the wall beside the label has too few pixels.
	ErrSmall = errors.New("too small")
	// ErrFamilies: one family of lines stands out and no second, or a third direction as much as the second.
	ErrFamilies = errors.New("not two families of lines")
	// ErrTurning: lines run square to the axis, as turning and boring leave them.
	ErrTurning = errors.New("turning marks")
	// ErrFaint: nothing stands out of the wall, or too little to be told from chance or from the grid of the picture.
	ErrFaint = errors.New("too faint")
	// ErrSpread: the leans of the lines change so much over the wall that no range is safe.
	ErrSpread = errors.New("the leans of the lines spread too far")
	// ErrDoubt: the angle is in more doubt than is of use.
	ErrDoubt = errors.New("too much doubt")
)
