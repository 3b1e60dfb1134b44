// SPDX-License-Identifier: BSD-3-Clause

package photo

import "errors"

// Why a picture gave no angle. Test with [errors.Is]. Lengths and sizes out of range carry
// [borewright.example/units.ErrRange].
var (
	// ErrNotGiven: the picture, the bore or the label was left at its zero value.
	ErrNotGiven = errors.New("not given")
	// ErrCorners: the corners are crossed, mirrored, in the wrong order, outside the picture, or fit no label
	// of that size on the wall of that bore.
	ErrCorners = errors.New("corners do not fit the label")
	// ErrSmall: picture, label or the wall beside the label has too few pixels.
	ErrSmall = errors.New("too small")
	// ErrNothing: no direction stands out of the wall.
	ErrNothing = errors.New("no lines there")
	// ErrOneFamily: one family of lines stands out, and no second.
	ErrOneFamily = errors.New("only one family of lines")
	// ErrTurning: lines run square to the axis, as turning and boring leave them.
	ErrTurning = errors.New("turning marks")
	// ErrFaint: two directions stand out, too little to be told from chance or from the grid of the picture.
	ErrFaint = errors.New("too faint")
	// ErrThird: a third direction stands out as much as the second.
	ErrThird = errors.New("a third direction of lines")
	// ErrSpread: the leans of the lines change so much over the wall that no range is safe.
	ErrSpread = errors.New("the leans of the lines spread too far")
	// ErrDoubt: the angle is in more doubt than is of use.
	ErrDoubt = errors.New("too much doubt")
)
