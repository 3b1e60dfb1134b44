// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"borewright.example/internal/enum"
)

// A Wall is what the rings run on. It forbids more than any reading can allow.
type Wall int8

// Kinds of wall. The zero Wall is not given, and is refused.
const (
	_          Wall = iota // not given
	BareIron               // a cylinder or liner of iron
	IronSleeve             // an iron sleeve in an aluminium barrel
	Plated                 // chromium, or nickel with silicon carbide: never bored, never honed
	BareAlSi               // aluminium whose silicon crystals are laid bare: never bored, never honed
)

var wallNames = [...]string{"not given", "bare iron", "iron sleeve", "plated", "bare Al-Si"}

// String returns "bare iron", "iron sleeve", "plated", "bare Al-Si" or "not given".
func (w Wall) String() string { return enum.Name(w, wallNames[:]) }

// MarshalText returns the text of [Wall.String]; a value that has none is [units.ErrUnknownName].
func (w Wall) MarshalText() ([]byte, error) { return enum.Marshal(w, wallNames[:]) }

// UnmarshalText reads the text of [Wall.String]. On error, [units.ErrUnknownName], the receiver keeps
// its value.
func (w *Wall) UnmarshalText(text []byte) error {
	return enum.Unmarshal(w, text, wallNames[:])
}

// A Route is what is to be done with a cylinder, or with the engine.
type Route int8

// Routes. The zero Route is Undecided: do not reassemble on this.
const (
	Undecided     Route = iota // measure better first
	HoneAndKeep                // the present size stays
	BoreOversize               // bore and hone to the next size that serves
	Sleeve                     // no size on offer serves
	MakersProcess              // a plated or bare aluminium-silicon wall: the maker's own process alone
)

var routeNames = [...]string{"undecided", "hone and keep", "rebore", "sleeve", "maker's process"}

// String returns "undecided", "hone and keep", "rebore", "sleeve" or "maker's process".
func (r Route) String() string { return enum.Name(r, routeNames[:]) }

// MarshalText returns the text of [Route.String]; a value that has none is [units.ErrUnknownName].
func (r Route) MarshalText() ([]byte, error) { return enum.Marshal(r, routeNames[:]) }

// UnmarshalText reads the text of [Route.String]. On error, [units.ErrUnknownName], the receiver keeps
// its value.
func (r *Route) UnmarshalText(text []byte) error {
	return enum.Unmarshal(r, text, routeNames[:])
}

// What the hone has to do to a cylinder that keeps its size, [CylinderChoice.Work]. A ball-type or brush hone follows the
// wall as it is: it can deglaze and nothing more.
const (
	Deglaze     = "deglaze"          // size and form stand; any hone breaks the glaze
	CorrectForm = "restore the form" // rigid stones bring form and size into the finish window
)
