// SPDX-License-Identifier: BSD-3-Clause

package surface

import "errors"

// Why data were refused or an answer does not exist. Test with [errors.Is]. Lengths, shares and
// filters out of range carry [units.ErrRange].
var (
	// ErrPoints: too few or too many points, points whose places do not increase, a profile shorter than the
	// length to be evaluated, or one that the circle of the bore cannot lie along.
	ErrPoints = errors.New("points of a profile")
	// ErrTable: a text that is no table of a profile.
	ErrTable = errors.New("not a table of a profile")
	// ErrOneProcess: a curve in which no two processes can be told apart.
	ErrOneProcess = errors.New("no two processes")
	// ErrReadings: no readings, or values that no surface has.
	ErrReadings = errors.New("readings of a texture")
)
