// SPDX-License-Identifier: BSD-3-Clause

package hone

// A Grit is a range of grit, the number that abrasives are sold by (a higher one is finer), that a source
// names for a stage of the work on a bare iron wall.
type Grit struct {
	Stage  string `json:"stage"`           // "deglazing": a worn wall made rough, its size left; "last honing": to size and crosshatch; "plateau strokes": peaks taken off, grooves left
	Facing string `json:"facing,omitzero"` // of the top ring it is named for: "plain iron", "chromium", "molybdenum"; empty where the source names none
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

// Grits returns what sources name, by stage, the coarsest first. They disagree: for honing an iron wall again
// the numbers run from 80 to 400, and for the last honing no number is within what all of them name. The
// supplier of the rings outranks them all. None is for a plated or a bare aluminium-silicon wall: those are not
// honed so.
//
// A grit is no roughness. That hangs on the abrasive, its bond, the oil and the pressure as well: one table for
// polished steel gives a grit of 240 as 0.45 µm in one system of grits and as 1.50 µm in another. See
// [Finishes] for roughness, and trace the wall.
//
// How many plateau strokes is no number that one shop can take from another: package surface reckons them from
// the profile of the wall and the metal that a stroke takes.
func Grits() []Grit {
	const deglaze, finish, plateau = "deglazing", "last honing", "plateau strokes"
	const iron, chromium, molybdenum = "plain iron", "chromium", "molybdenum"
	return []Grit{
		{deglaze, "", 80, 100, "a small air-cooled cylinder", "US Army TM 10-4320-351-14, 6.4.5"},
		{deglaze, "", 120, 120, "a liner", "US Army TM 9-2815-202-34; TM 5-3895-346-14; TM 5-3895-359-14&P"},
		{deglaze, "", 280, 280, "20 to 60 strokes, looked at every 20", makers},
		{finish, "", 180, 220, "", makers},
		{finish, "", 220, 220, "", makers + ", another"},
		{finish, iron, 220, 220, "silicon carbide", magazine},
		{finish, chromium, 220, 220, "silicon carbide", magazine},
		{finish, molybdenum, 280, 280, "silicon carbide", magazine},
		{finish, "", 320, 320, "aluminium oxide, a small air-cooled engine", makers + ", a third"},
		{finish, molybdenum, 320, 400, "silicon carbide, for competition", magazine},
		{plateau, molybdenum, 400, 400, "a brief touch after 280, or a few strokes with a brush of abrasive nylon", magazine},
		{plateau, molybdenum, 600, 600, "or cork", tradeWeb},
	}
}
