// SPDX-License-Identifier: BSD-3-Clause

package form

import "borewright.example/internal/enum"

// Reference is a reference circle by ISO 12181-1, or a reference cylinder by ISO 12180-1: what the
// roundness of a trace, or the cylindricity of a wall, is counted from.
type Reference int8

// The four reference circles, and the four cylinders likewise. The first takes heed of all points, and a single one moves it little;
// the others hang on their contacts alone, and say where the wall would touch.
const (
	LSCI Reference = iota // least squares: the sum of the squares of the distances from it is least
	MZCI                  // minimum zone: two circles about one centre, as close together as any that hold all points between them
	MCCI                  // minimum circumscribed: the smallest that holds all points; what a bore would clean up at
	MICI                  // maximum inscribed: the largest that holds none; the largest plug that would enter

	LSCY // least-squares cylinder
	MZCY // minimum zone: two cylinders about one axis, as close together as any that hold all points between them
	MCCY // minimum circumscribed cylinder: what a bore would clean up at, its axis free
	MICY // maximum inscribed cylinder: the largest plug as long as the wall that would enter
)

// ofWall reports whether the reference is a cylinder.
func (r Reference) ofWall() bool { return r >= LSCY && r <= MICY }

var referenceNames = [...]string{"LSCI", "MZCI", "MCCI", "MICI", "LSCY", "MZCY", "MCCY", "MICY"}

// String returns the name.
func (r Reference) String() string { return enum.Name(r, referenceNames[:]) }

// MarshalText returns the name; a value without one is [units.ErrUnknownName].
func (r Reference) MarshalText() ([]byte, error) { return enum.Marshal(r, referenceNames[:]) }

// UnmarshalText reads a name; any other text is [units.ErrUnknownName] and changes nothing.
func (r *Reference) UnmarshalText(text []byte) error {
	return enum.Unmarshal(r, text, referenceNames[:])
}
