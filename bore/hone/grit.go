// SPDX-License-Identifier: BSD-3-Clause

package hone

import (
	"fmt"

	"borewright.example/internal/enum"
)

// A Facing is what the face of a top ring is made of, which the wall is finished for. The zero value is not
// given.
type Facing int8

// The facings that sources name a grit for.
const (
	FacingUnknown Facing = iota
	FacingIron
	FacingChromium
	FacingMolybdenum
)

var facingNames = []string{"", "plain iron", "chromium", "molybdenum"}

// String returns "", "plain iron", "chromium" or "molybdenum".
func (f Facing) String() string { return enum.Name(f, facingNames) }

// MarshalText returns the text of [Facing.String]. A value that is no facing is [units.ErrUnknownName].
func (f Facing) MarshalText() ([]byte, error) { return enum.Marshal(f, facingNames) }

// UnmarshalText reads the text of [Facing.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (f *Facing) UnmarshalText(text []byte) error { return enum.Unmarshal(f, text, facingNames) }

// A Stage is the work on a bare iron wall that a grit is named for.
type Stage int8

// The stages.
const (
	StageDeglaze Stage = iota // a worn wall made rough for new rings, its size left as it is
	StageFinish               // to size
	StagePlateau              // the peaks of the last honing taken off, its grooves left
)

var stageNames = []string{"deglazing", "last honing", "plateau strokes"}

// String returns "deglazing", "last honing" or "plateau strokes".
func (s Stage) String() string { return enum.Name(s, stageNames) }

// MarshalText returns the text of [Stage.String]. A value that is no stage is [units.ErrUnknownName].
func (s Stage) MarshalText() ([]byte, error) { return enum.Marshal(s, stageNames) }

// UnmarshalText reads the text of [Stage.String]; any other is [units.ErrUnknownName]. On error the
// receiver keeps its value.
func (s *Stage) UnmarshalText(text []byte) error { return enum.Unmarshal(s, text, stageNames) }

// A Grit is a range of grit, the number that abrasives are sold by (a higher one is finer), that a source
// names for a stage.
type Grit struct {
	Stage  Stage  `json:"stage"`           // that it is named for
	Facing Facing `json:"facing,omitzero"` // of the rings it is named for; FacingUnknown where the source names none
	Coarse int    `json:"coarse"`          // coarsest number named
	Fine   int    `json:"fine"`            // finest, not below Coarse
	Of     string `json:"of,omitzero"`     // what else the source says of it
	Source string `json:"source"`          // a manual, or "common practice", which no one answers for
}

const (
	magazine = commonPractice + ", a trade magazine of 2004"
	tradeWeb = commonPractice + ", a trade page"
	makers   = commonPractice + ", an engine maker's manual"
)

// grits returns what sources name, by stage, the coarsest first.
func grits() []Grit {
	return []Grit{
		{StageDeglaze, FacingUnknown, 80, 100, "a small air-cooled cylinder", "US Army TM 10-4320-351-14, 6.4.5"},
		{StageDeglaze, FacingUnknown, 120, 120, "a liner", "US Army TM 9-2815-202-34; TM 5-3895-346-14; TM 5-3895-359-14&P"},
		{StageDeglaze, FacingUnknown, 280, 280, "20 to 60 strokes, looked at every 20", makers},
		{StageFinish, FacingUnknown, 180, 220, "", makers},
		{StageFinish, FacingUnknown, 220, 220, "", makers + ", another"},
		{StageFinish, FacingIron, 220, 220, "silicon carbide", magazine},
		{StageFinish, FacingChromium, 220, 220, "silicon carbide", magazine},
		{StageFinish, FacingMolybdenum, 280, 280, "silicon carbide", magazine},
		{StageFinish, FacingUnknown, 320, 320, "aluminium oxide, a small air-cooled engine", makers + ", a third"},
		{StageFinish, FacingMolybdenum, 320, 400, "silicon carbide, for competition", magazine},
		{StagePlateau, FacingMolybdenum, 400, 400, "a brief touch after 280, or a few strokes with a brush of abrasive nylon", magazine},
		{StagePlateau, FacingMolybdenum, 600, 600, "or cork", tradeWeb},
	}
}

// A GritBand is what sources come to for one stage and facing.
type GritBand struct {
	Coarse int    `json:"coarse,omitzero"` // coarsest number of all
	Fine   int    `json:"fine,omitzero"`   // finest of all
	Agree  bool   `json:"agree,omitzero"`  // whether some number is within what every source names
	Rows   []Grit `json:"rows,omitzero"`   // what each names
}

// GritsFor returns what sources name for a stage and a facing, those that name no facing among them; the zero
// band where none does, as for plateau strokes for other rings than molybdenum-faced ones. They disagree: for
// honing an iron wall again the numbers run from 80 to 400. The supplier of the rings outranks them all. None
// is for a plated or a bare aluminium-silicon wall: those are not honed so.
//
// A grit is no roughness. That hangs on the abrasive, its bond, the oil and the pressure as well: one table for
// polished steel gives a grit of 240 as 0.45 µm in one system of grits and as 1.50 µm in another. See
// [Finishes] for roughness, and trace the wall.
//
// How many plateau strokes is no number that one shop can take from another: package surface reckons them from
// the profile of the wall and the metal that a stroke takes.
func GritsFor(stage Stage, facing Facing) (band GritBand) {
	from, to := 0, 0 // what all agree on
	for _, g := range grits() {
		if g.Stage != stage || g.Facing != FacingUnknown && g.Facing != facing {
			continue
		}
		if band.Rows == nil {
			band.Coarse, band.Fine, from, to = g.Coarse, g.Fine, g.Coarse, g.Fine
		}
		band.Coarse, band.Fine = min(band.Coarse, g.Coarse), max(band.Fine, g.Fine)
		from, to = max(from, g.Coarse), min(to, g.Fine)
		band.Rows = append(band.Rows, g)
	}
	band.Agree = band.Rows != nil && from <= to
	return band
}

// String returns the band in a line: "grit 180 to 320, sources disagree", "no source names a grit".
func (b GritBand) String() string {
	if b.Rows == nil {
		return "no source names a grit"
	}
	text := fmt.Sprintf("grit %d", b.Coarse)
	if b.Fine != b.Coarse {
		text += fmt.Sprintf(" to %d", b.Fine)
	}
	if !b.Agree {
		text += ", sources disagree"
	}
	return text
}
