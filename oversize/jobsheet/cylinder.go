// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/units"
)

// A Cylinder is one bore with what belongs to it.
type Cylinder struct {
	// Name is as it stands on the sheet, Over the size it stands at.
	Name string        `json:"name"` // no two alike
	Over *units.Length `json:"over" needs:"at which size it stands over nominal, \"0 mm\" for the standard one" want:"small" usual:"over"`

	Readings  []Reading     `json:"readings,omitzero" most:"1000"`     // as taken; none before the survey
	Traces    []Trace       `json:"traces,omitzero" most:"64"`         // of the same wall, instead of readings or beside them, by depth
	Piston    Piston        `json:"piston,omitzero"`                   // the one in hand for it, measured
	PistonFor *units.Length `json:"piston_for,omitempty" want:"small"` // the size that piston is for, over nominal
	Rings     []RingGap     `json:"rings,omitzero" most:"12"`
	// ThinnestWall is the thinnest wall as measured, not as drawn.
	ThinnestWall Measured `json:"thinnest_wall,omitzero" want:"measured" usual:"wall,wall doubt"`
	// Pits are the scores and pits found by looking: gauge anvils bridge them. That there are none is said
	// by counting them.
	Pits []bore.Pit `json:"pits,omitzero" most:"1000"`
	// WearShare is how much of the wear is on the more worn side, a number without unit from 0.5 to
	// 1; left out, not known.
	WearShare float64 `json:"wear_share,omitzero" want:"share"`
	// FeelerTest is what one ring's gap was at two depths, the upper one first.
	FeelerTest []FeelerGap `json:"feeler_test,omitzero"`
	// Honing is how far the honing to size has got: the size before the first pass, then each pass made.
	Honing []Pass `json:"honing,omitzero" most:"1000"`
	// SleeveFitted is what was measured of a sleeve before it went in: its interference, held to that of the fit and above 0; left
	// out, nothing says that it holds.
	SleeveFitted SleeveFitted `json:"sleeve_fitted,omitzero"`
	// Proof is read in the finished bore, washed and at rest, at the places of Readings.
	Proof []Reading `json:"proof,omitzero" most:"1000"`
	// ProofTraces are those of the finished bore, instead of Proof or beside it.
	ProofTraces []Trace `json:"proof_traces,omitzero" most:"64"`
	// Crosshatch is that of the finished bore as measured.
	Crosshatch hone.Crosshatch `json:"crosshatch,omitzero" usual:"crosshatch"`
	// CrosshatchDoubt is that of its included angle, expanded to 95 %, as a photograph gives it; left out, 2°.
	CrosshatchDoubt units.Angle `json:"crosshatch_doubt,omitzero" usual:"angle doubt"`
	// Texture is that of the finished wall, place by place, as an instrument shows it.
	Texture []surface.Reading `json:"texture,omitzero" most:"1000"`
	// Profiles are of the finished wall too, place by place: instead of Texture or beside it.
	Profiles []Profile `json:"profiles,omitzero" most:"1000"`
	// PlatingWhole says that the plating of a coated wall is whole, or that it lifts or lets bare metal show; left out,
	// nobody looked.
	PlatingWhole *bool `json:"plating_whole,omitempty"`
	// RidgeGone says of a bore that is kept that no ridge is left at the top of ring travel, or that one is; left out, nobody
	// looked.
	RidgeGone *bool `json:"ridge_gone,omitempty"`
}

// surveyed reports whether the worn bore has been read, and reread whether the finished one has.
func (c Cylinder) surveyed() bool { return len(c.Readings)+len(c.Traces) > 0 }
func (c Cylinder) reread() bool   { return len(c.Proof)+len(c.ProofTraces) > 0 }

// over is the size at which the cylinder stands, over nominal.
func (c Cylinder) over() units.Length { return length(c.Over) }

// A SleeveFitted is a sleeve and its seat as measured, at 20 °C, before the one went into the other.
type SleeveFitted struct {
	Seat    Measured `json:"seat" needs:"the seat as bored" want:"measured"`          // diameter bored for it
	Outside Measured `json:"outside" needs:"the outside as measured" want:"measured"` // of the sleeve
}

// A Reading is one diameter: as read, or as the dial's deviation from the setting standard.
type Reading struct {
	Depth     *units.Length `json:"depth" needs:"how far below the deck" usual:"depth"`                // of the anvils
	Axis      *bore.Axis    `json:"axis" needs:"\"thrust\", \"pin\" or an angle from the thrust axis"` // that the anvils lie along
	Diameter  units.Length  `json:"diameter,omitzero"`                                                 // the size, where the gauge shows that
	Deviation *units.Length `json:"deviation,omitempty"`                                               // plus or minus, as the dial shows
	Confirmed bool          `json:"confirmed,omitzero"`                                                // taken again and right, though far from the others
}

// A RingGap is a ring's end gap as measured.
type RingGap struct {
	Ring string       `json:"ring"`                                                                        // the name of one of the engine's rings
	Gap  Measured     `json:"gap" needs:"the end gap as measured" want:"measured,small" usual:"gap doubt"` // at 20 °C
	Bore units.Length `json:"bore" needs:"the bore it was measured in" want:"near"`
	// Finished is the gap in the finished bore, after any filing, as measured.
	Finished Measured `json:"finished,omitzero" want:"measured,small" usual:"gap doubt"`
	// Side is its axial play in the groove of the piston that goes in, as a leaf shows it.
	Side Measured `json:"side,omitzero" want:"measured,small" usual:"gap doubt"`
	// Filed says that metal came off its ends between the two.
	Filed bool `json:"filed,omitzero"`
}

// A FeelerGap is the end gap of a ring at one depth of a bore.
type FeelerGap struct {
	Depth units.Length `json:"depth" want:"far" usual:"depth"` // from the deck
	Gap   Measured     `json:"gap" needs:"the end gap there" want:"measured,small"`
}

// bored reports whether the job shows that a cylinder has been bored: its honing has begun.
func (c Cylinder) bored() bool { return len(c.Honing) > 0 }

// passes is how many passes of the hone have been made.
func (c Cylinder) passes() int { return max(len(c.Honing)-1, 0) }
