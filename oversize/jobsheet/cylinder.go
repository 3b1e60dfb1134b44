// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/internal/enum"
	"borewright.example/units"
)

// A Cylinder is one bore with what belongs to it.
type Cylinder struct {
	Name      string        `json:"name"`                 // as it stands on the sheet; no two alike
	Over      *units.Length `json:"over"`                 // the size it stands at, over nominal; "0 mm" is the standard one
	Readings  []Reading     `json:"readings,omitzero"`    // as taken; none before the survey
	Piston    Piston        `json:"piston,omitzero"`      // the one in hand for it, measured
	PistonFor *units.Length `json:"piston_for,omitempty"` // the size that piston is for, over nominal
	Rings     []RingGap     `json:"rings,omitzero"`
	// ThinnestWall is the thinnest wall as measured, not as drawn.
	ThinnestWall Measured `json:"thinnest_wall,omitzero"`
	// Pits are the scores and pits found by looking: gauge anvils bridge them. That there are none is said
	// by counting them.
	Pits []bore.Pit `json:"pits,omitzero"`
	// WearShare is how much of the wear is on the more worn side, a number without unit from 0.5 to
	// 1; left out, not known.
	WearShare float64 `json:"wear_share,omitzero"`
	// FeelerTest is what one ring's gap was at two depths.
	FeelerTest FeelerTest `json:"feeler_test,omitzero"`
	// Honing is how far the honing to size has got; it grows as the passes are made.
	Honing Honed `json:"honing,omitzero"`
	// SleeveFitted is what was measured of a sleeve before it went in.
	SleeveFitted SleeveFitted `json:"sleeve_fitted,omitzero"`
	// Proof is read in the finished bore, washed and at rest, at the places of Readings.
	Proof []Reading `json:"proof,omitzero"`
	// Crosshatch is that of the finished bore as measured.
	Crosshatch hone.Crosshatch `json:"crosshatch,omitzero"`
	// CrosshatchDoubt is that of its included angle, expanded to 95 %, as a photograph gives it; left out, 2°.
	CrosshatchDoubt units.Angle `json:"crosshatch_doubt,omitzero"`
	// Texture is that of the finished wall, place by place, as an instrument shows it.
	Texture []surface.Reading `json:"texture,omitzero"`
	// Plating is how that of a coated wall looks.
	Plating Plating `json:"plating,omitzero"`
}

// over is the size at which the cylinder stands, over nominal.
func (c Cylinder) over() units.Length { return length(c.Over) }

// A SleeveFitted is a sleeve and its seat as measured, at 20 °C, before the one went into the other.
type SleeveFitted struct {
	Seat    Measured `json:"seat"`    // diameter bored for it
	Outside Measured `json:"outside"` // of the sleeve
}

// Plating is how a plated wall looks.
type Plating int8

// Looks of a plating. Not said leaves a plated wall open.
const (
	PlatingNotSaid Plating = iota
	PlatingWhole
	PlatingPeels // lifts, or lets bare metal show
)

var platingNames = []string{"", "whole", "peels"}

// String returns "whole", "peels" or "".
func (p Plating) String() string { return enum.Name(p, platingNames) }

// MarshalText returns the text of [Plating.String].
func (p Plating) MarshalText() ([]byte, error) { return enum.Marshal(p, platingNames) }

// UnmarshalText reads "whole" or "peels". On error the receiver keeps its value.
func (p *Plating) UnmarshalText(text []byte) error { return enum.Unmarshal(p, text, platingNames) }

// A Reading is one diameter: as read, or as the dial's deviation from the setting standard.
type Reading struct {
	Depth     *units.Length `json:"depth"` // from the deck
	Axis      *Axis         `json:"axis"`
	Diameter  units.Length  `json:"diameter,omitzero"`
	Deviation *Deviation    `json:"deviation,omitempty"`
	Confirmed bool          `json:"confirmed,omitzero"` // taken again and right, though far from the others
}

// A Deviation is what a dial shows, plus or minus. It is a type of its own because zero is a
// reading like any other.
type Deviation struct{ units.Length }

// A RingGap is a ring's end gap as measured.
type RingGap struct {
	Ring string       `json:"ring"` // the name of one of the engine's rings
	Gap  Measured     `json:"gap"`  // end gap, at 20 °C
	Bore units.Length `json:"bore"` // diameter of the bore or ring gauge it was measured in
	// Finished is the gap in the finished bore, after any filing, as measured.
	Finished Measured `json:"finished,omitzero"`
	// Filed says that metal came off its ends between the two.
	Filed bool `json:"filed,omitzero"`
}

// A FeelerTest is one ring pushed square to two depths of a bore and its gap measured at each: the
// old way to look for taper. It decides nothing.
type FeelerTest struct {
	Upper FeelerGap `json:"upper"` // nearer to the deck
	Lower FeelerGap `json:"lower"` // farther from it
}

// A FeelerGap is an end gap at a depth.
type FeelerGap struct {
	Depth units.Length `json:"depth"` // from the deck
	Gap   Measured     `json:"gap"`
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
