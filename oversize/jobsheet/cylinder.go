// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/units"
)

// A Cylinder is one bore with what belongs to it.
type Cylinder struct {
	Name      string       `json:"name"`                // as it stands on the sheet; no two alike
	Over      units.Length `json:"over,omitzero"`       // the size it stands at, over nominal
	Readings  []Reading    `json:"readings,omitzero"`   // as taken; none before the survey
	Piston    Piston       `json:"piston,omitzero"`     // the one in hand for it
	PistonFor units.Length `json:"piston_for,omitzero"` // the size that piston is for, over nominal; left out, Over
	Rings     []RingGap    `json:"rings,omitzero"`
	// ThinnestWall is the thinnest wall as measured, not as drawn.
	ThinnestWall    units.Length `json:"thinnest_wall,omitzero"`
	WallUncertainty units.Length `json:"wall_uncertainty,omitzero"` // expanded, k = 2
	// Pit is the depth of the deepest score or pit: gauge anvils bridge it.
	Pit units.Length `json:"pit,omitzero"`
	// WearShare is how much of the wear is on the more worn side, a number without unit from 0.5 to
	// 1; left out, not known.
	WearShare float64 `json:"wear_share,omitzero"`
	// FeelerTest is what one ring's gap was at two depths.
	FeelerTest FeelerTest `json:"feeler_test,omitzero"`
	// Honing is how far the honing to size has got; it grows as the passes are made.
	Honing Honed `json:"honing,omitzero"`
	// Proof is read in the finished bore, washed and at rest, at the places of Readings.
	Proof []Reading `json:"proof,omitzero"`
	// Crosshatch is that of the finished bore as measured.
	Crosshatch hone.Crosshatch `json:"crosshatch,omitzero"`
	// Peeling is a plating that lifts, or bare metal that shows.
	Peeling bool `json:"peeling,omitzero"`
}

// A Reading is one diameter: as read, or as the dial's deviation from the setting standard.
type Reading struct {
	Depth     units.Length `json:"depth"` // from the deck
	Axis      Axis         `json:"axis"`
	Diameter  units.Length `json:"diameter,omitzero"`
	Deviation *Deviation   `json:"deviation,omitempty"`
	Confirmed bool         `json:"confirmed,omitzero"` // taken again and right, though far from the others
}

// A Deviation is what a dial shows, plus or minus. It is a type of its own because zero is a
// reading like any other.
type Deviation struct{ units.Length }

// A RingGap is a ring's end gap as measured.
type RingGap struct {
	Ring        string       `json:"ring"`                 // the name of one of the engine's rings
	Gap         units.Length `json:"gap"`                  // end gap, at 20 °C
	Uncertainty units.Length `json:"uncertainty,omitzero"` // expanded, k = 2
	Bore        units.Length `json:"bore"`                 // diameter of the bore or ring gauge it was measured in
	// Finished is the gap in the finished bore, after any filing, as measured.
	Finished units.Length `json:"finished,omitzero"`
}

// A FeelerTest is one ring pushed square to two depths of a bore and its gap measured at each: the
// old way to look for taper. It decides nothing.
type FeelerTest struct {
	Upper       FeelerGap    `json:"upper"`                // nearer to the deck
	Lower       FeelerGap    `json:"lower"`                // farther from it
	Uncertainty units.Length `json:"uncertainty,omitzero"` // of each gap, expanded, k = 2
}

// A FeelerGap is an end gap at a depth.
type FeelerGap struct {
	Depth units.Length `json:"depth"` // from the deck
	Gap   units.Length `json:"gap"`
}

// An Axis is the direction of a reading, from the thrust axis: "thrust", "pin" or "45°".
type Axis struct{ units.Angle }

// MarshalText returns "thrust", "pin" or the angle.
func (a Axis) MarshalText() ([]byte, error) {
	switch a.Angle {
	case bore.ThrustAxis:
		return []byte("thrust"), nil
	case bore.PinAxis:
		return []byte("pin"), nil
	}
	return a.Angle.MarshalText()
}

// UnmarshalText reads an axis as [bore.ParseAxis] does. On error the receiver keeps its value.
func (a *Axis) UnmarshalText(text []byte) error {
	v, err := bore.ParseAxis(string(text))
	if err != nil {
		return fmt.Errorf(`want "thrust", "pin" or an angle such as "45°"`)
	}
	a.Angle = v
	return nil
}
