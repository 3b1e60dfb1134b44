// SPDX-License-Identifier: BSD-3-Clause

package oversize

import (
	"fmt"
	"strings"

	"borewright.example/internal/enum"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A Reason is why a route, or a size, was refused.
type Reason int8

// Reasons that a caller asks for; the others have their words alone. Those that end in NotProven, NotJudged or
// Undecided could turn with a better measurement: see [Reason.Open].
const (
	noReason           Reason = iota
	beyondLimit               // a finding is beyond the maker's limit
	limitUndecided            // a finding is undecided
	nothingJudged             // no limit and no clearance window was given to hold the bore against
	PistonNotMeasured         // a clearance window is given, and no piston for it
	clearanceBeyond           // the worn bore leaves the piston too much clearance
	clearanceUndecided        // whether it does is within the doubt
	pistonTight               // the piston is not proven to have its least clearance in this bore
	noRigidHone               // only rigid stones would do, and there are none
	NoCleanUp                 // worn wall would be left
	CleanUpNotProven          // worn wall may be left
	beyondGreatest            // larger than the greatest overbore
	wallThin                  // too little wall would be left
	wallNotProven             // too little wall may be left
	WallNotMeasured           // a least wall is given, and no measured wall: a drawing knows nothing of core shift and corrosion
	gasketHole                // the finished bore would stand out into the gasket's hole
	sharedSize                // another cylinder needs another size, and all share one
	wallForbids               // plated and bare aluminium-silicon walls are neither bored nor honed
	peeling                   // plating lifts, or bare metal shows
	scoreLeft                 // a score or pit deeper than deglazing takes
	scoreNotJudged            // a shallow score or pit, and nothing says what deglazing takes
	nothingLarger             // no size on offer is larger than the one at which the cylinder stands
)

var reasonNames = [...]string{
	"none", "beyond limit", "limit undecided", "nothing judged", "piston not measured",
	"clearance beyond", "clearance undecided", "piston tight", "no rigid hone", "no clean-up",
	"clean-up not proven", "beyond greatest", "wall thin", "wall not proven", "wall not measured",
	"gasket hole", "shared size", "wall forbids", "peeling", "score left", "score not judged", "nothing larger",
}

var reasonSentences = [...]string{
	"no reason",
	"beyond its limit",
	"undecided against its limit",
	"no limit and no clearance window to hold it against",
	"the piston is not measured",
	"clearance beyond its limit",
	"clearance undecided against its limit",
	"the piston is not proven to have its least clearance",
	"only rigid stones would correct it, and there are none",
	"worn wall would be left",
	"worn wall may be left",
	"larger than the greatest overbore",
	"too little wall would be left",
	"too little wall may be left",
	"the wall was not measured",
	"the gasket's hole is smaller than the finished bore: with a gasket for the oversize it may serve",
	"all cylinders share a size, and this one does not serve them all",
	"this wall is never bored or honed",
	"plating lifts or bare metal shows",
	"a score or pit is deeper than deglazing takes",
	"whether deglazing takes a shallow score or pit with it: what it takes is not given",
	"no larger size is on offer",
}

// String returns the reason in words, "worn wall would be left".
func (r Reason) String() string { return enum.Name(r, reasonSentences[:]) }

// MarshalText returns a short name, "no clean-up"; a value that has none is [units.ErrUnknownName].
func (r Reason) MarshalText() ([]byte, error) { return enum.Marshal(r, reasonNames[:]) }

// UnmarshalText reads the short name. On error, [units.ErrUnknownName], the receiver keeps its value.
func (r *Reason) UnmarshalText(text []byte) error {
	return enum.Unmarshal(r, text, reasonNames[:])
}

// Open reports whether a better measurement could lift the refusal.
func (r Reason) Open() bool {
	switch r {
	case limitUndecided, nothingJudged, PistonNotMeasured, clearanceUndecided, pistonTight,
		CleanUpNotProven, wallNotProven, WallNotMeasured, scoreNotJudged:
		return true
	}
	return false
}

// A Refusal is a cheaper route that a cylinder was not given, and why.
type Refusal struct {
	Route   Route               `json:"route"`         // what was refused
	Work    string              `json:"work,omitzero"` // of HoneAndKeep: deglazing alone, or correcting
	Over    units.Length        `json:"over"`          // the size refused, over the nominal bore
	Reason  Reason              `json:"reason"`
	Finding uncertainty.Finding `json:"finding,omitzero"` // what was held against what; zero where nothing was
}

// String returns the refusal in a line: "rebore to +0.25 mm: worn wall would be left
// (clean-up 67.310 mm, max 67.230 mm)".
func (r Refusal) String() string {
	var b strings.Builder
	b.WriteString(r.Route.String())
	switch {
	case r.Route == BoreOversize && r.Reason != wallForbids && r.Reason != nothingLarger: // those are of no one size
		fmt.Fprintf(&b, " to +%v", r.Over)
	case r.Work != "":
		fmt.Fprintf(&b, ", %s", r.Work)
	}
	fmt.Fprintf(&b, ": %v", r.Reason)
	if f := r.Finding; f != (uncertainty.Finding{}) {
		fmt.Fprintf(&b, " (%s %v, %v)", f.Subject, f.Measured, f.Limits)
	}
	return b.String()
}
