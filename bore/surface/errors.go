// SPDX-License-Identifier: BSD-3-Clause

package surface

import "errors"

// Why data were refused or an answer does not exist. Test with [errors.Is]. Lengths and shares out of
// range carry [units.ErrRange].
var (
	// ErrPoints: too few or too many points, or points whose places do not increase.
	ErrPoints = errors.New("points of a profile")
	// ErrTable: a text that is no table of a profile.
	ErrTable = errors.New("not a table of a profile")
	// ErrForm: a profile that the circle of the bore cannot lie along.
	ErrForm = errors.New("does not lie along a circle")
	// ErrFilter: cut-offs or sections that cannot be, or that the spacing of the points cannot carry.
	ErrFilter = errors.New("impossible filter")
	// ErrShort: a profile shorter than the length to be evaluated.
	ErrShort = errors.New("profile too short")
	// ErrOneProcess: a curve in which no two processes can be told apart.
	ErrOneProcess = errors.New("no two processes")
	// ErrReadings: no readings, or values that no surface has.
	ErrReadings = errors.New("readings of a texture")
)
