// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"cmp"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
)

// Tools are what is on hand for honing.
type Tools struct {
	Hone       hone.Kind    `json:"hone,omitzero"`                   // kind of hone; its cautions depend on it
	Drive      hone.Drive   `json:"drive,omitzero"`                  // by hand or by machine
	Grit       int          `json:"grit,omitzero" most:"5000"`       // of the abrasive
	ToolLength units.Length `json:"tool_length,omitzero" want:"far"` // of the abrasive
	Stroke     units.Length `json:"stroke,omitzero" want:"far"`      // one way; left out, it follows from tool, bore and room
	// Room is what is free beyond each end of the bore, 0 at a closed one; overtravel is how much
	// of the tool stands out there at the end of a stroke; left out at both ends, what is usual
	// for the kind of hone.
	RoomTop          *units.Length `json:"room_top,omitempty" want:"far"`
	RoomBottom       *units.Length `json:"room_bottom,omitempty" want:"far"`
	OvertravelTop    units.Length  `json:"overtravel_top,omitzero" want:"far"`
	OvertravelBottom units.Length  `json:"overtravel_bottom,omitzero" want:"far"`

	Crosshatch hone.Crosshatch `json:"crosshatch,omitzero" usual:"crosshatch"`                // wanted; its text names the convention
	Tolerance  units.Angle     `json:"tolerance,omitzero" want:"tolerance" usual:"tolerance"` // either side, on the included angle; left out, 5°

	Spindle  hone.SpindleRange  `json:"spindle,omitzero" want:"valid"`  // what the drill or machine can turn
	Stroking hone.StrokingRange `json:"stroking,omitzero" want:"valid"` // what the hand or machine can hold

	// Lines of abrasive round the tool and the width of one, for how many strokes cover the wall;
	// the width of the track that one line draws, for whether a machine runs in its own tracks.
	Lines     int          `json:"lines,omitzero" most:"1000"`
	LineWidth units.Length `json:"line_width,omitzero" want:"far"`
	Track     units.Length `json:"track,omitzero" want:"far"`

	// Crank says that a stroke is fastest in the middle, as a crank makes it, or that it is even; left out, even for
	// a machine, and for a hand as a crank.
	Crank *bool `json:"crank,omitempty"`
	// Pressing is how the abrasive is pressed on; where the metal goes depends on it.
	Pressing hone.Pressing `json:"pressing,omitzero"`
	// The first pass, while nothing is known of the rate, and the longest of any.
	TrialPass   Duration `json:"trial_pass,omitzero" want:"lasting"`
	LongestPass Duration `json:"longest_pass,omitzero" want:"lasting"`

	// The setting that is meant to be used, if there is one already.
	SpindleNow  units.Frequency `json:"spindle_now,omitzero" want:"turning"`
	StrokingNow hone.Stroking   `json:"stroking_now,omitzero" want:"valid"`

	// Phases are the settings used one after the other, where the last is to replace the lines of
	// those before.
	Phases []Phase `json:"phases,omitzero" most:"12"`
}

// A Phase is a stretch of honing with one setting.
type Phase struct {
	Spindle     units.Frequency `json:"spindle" want:"turning"`                                     // turning of the tool
	Stroking    hone.Stroking   `json:"stroking"`                                                   // strokes or cycles of the tool
	RadialStock units.Length    `json:"radial_stock" needs:"what comes off the radius" want:"fine"` // what it takes off the RADIUS: half of what the diameter grows
	Groove      units.Length    `json:"groove,omitzero" want:"fine"`                                // how deep its lines are; left out, not known
}

// Cuts is how the stock is to be divided, and what a cut has to take besides it. What is left out is not done.
type Cuts struct {
	oversize.Shop
	// How far the boring axis may miss the one meant, how far it may lean over the length bored, and
	// what has to go under the worn skin for a sound surface: all radial.
	Locating    *units.Length `json:"locating,omitempty" want:"small" usual:"bar"`
	OutOfSquare *units.Length `json:"out_of_square,omitempty" want:"small" usual:"bar"`
	Surface     *units.Length `json:"surface,omitempty" want:"small" usual:"skin"`
	// Deglaze is what deglazing takes, on the diameter; left out, 4 µm.
	Deglaze units.Length `json:"deglaze,omitzero"`
	// Warm is the temperature of the cylinder while it is roughed out, for what the gauge shows then.
	Warm units.Temperature `json:"warm,omitzero" usual:"honing"`
}

// usualDeglaze is what a few strokes take where nobody measured it (common practice).
const usualDeglaze = 4 * units.Micrometre

func (b Cuts) deglaze() units.Length { return cmp.Or(b.Deglaze, usualDeglaze) }
