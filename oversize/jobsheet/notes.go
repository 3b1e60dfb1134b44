// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/rings"
)

// Kinds of work that checks and cautions belong to.
const (
	anyWork       = "any work"
	stripping     = "stripping"
	measuring     = "measuring"
	boring        = "boring"
	honing        = "honing"
	fittingRings  = "fitting rings"
	sleeving      = "sleeving"
	washing       = "washing"
	goingTogether = "going together"
)

// operations is the order of the work.
var operations = [...]string{anyWork, stripping, measuring, boring, honing, fittingRings, sleeving, washing, goingTogether}

// A due is what has to be the case for a remark to be due, all of it.
type due uint32

const (
	always     due = 0
	ifPlated   due = 1 << iota // by the wall
	ifAlSi                     // bare aluminium-silicon
	ifIron                     // bare
	ifInserted                 // a sleeve of iron
	ifNoWall                   // not given
	ifTwoStroke
	ifFourStroke
	ifRinged
	ifPlate   // the cylinder was clamped with a torque plate
	ifFree    // or lay free
	ifNotHeld // or nobody said
	ifDecided // what becomes of every cylinder is
	ifOpen    // though all are read, it is not
	ifBored
	ifSleeved
	ifCut      // bored or sleeved
	ifHoned    // or kept
	ifHoning   // or there is a stroke
	ifSeveral  // cylinders
	ifFollowed // the hone follows the wall
	ifReady
)

// due returns what is the case.
func (s Sheet) due() (is due) {
	e, held, kind := s.Job.Engine, s.Job.Survey.TorquePlate, s.Job.Tools.Hone
	routed := map[oversize.Route]bool{} // an engine may have one cylinder sleeved and the others bored
	for _, c := range s.Choice.Cylinders {
		routed[c.Route] = true
	}
	bored, sleeved, kept := routed[oversize.BoreOversize], routed[oversize.Sleeve], routed[oversize.HoneAndKeep]
	decided := len(s.Choice.Cylinders) > 0 && s.Choice.Route != oversize.Undecided
	for what, holds := range map[due]bool{
		ifPlated: e.Wall == oversize.Plated, ifAlSi: e.Wall == oversize.BareAlSi, ifIron: e.Wall == oversize.BareIron,
		ifInserted: e.Wall == oversize.IronSleeve, ifNoWall: e.Wall == oversize.WallNotGiven,
		ifTwoStroke: e.Cycle == TwoStroke, ifFourStroke: e.Cycle != TwoStroke, ifRinged: len(e.Rings) > 0,
		ifPlate: held != nil && *held, ifFree: held != nil && !*held, ifNotHeld: held == nil,
		ifDecided: decided, ifOpen: len(s.Choice.Cylinders) > 0 && !decided,
		ifBored: bored, ifSleeved: sleeved, ifCut: bored || sleeved, ifHoned: bored || sleeved || kept,
		ifHoning: bored || sleeved || kept || s.Honing.Now.Stroke != 0, ifFollowed: kind != hone.RigidStone, ifSeveral: len(s.Cylinders) > 1, ifReady: s.Next == StepReassemble,
	} {
		if holds {
			is |= what
		}
	}
	return is
}

// A rule is a remark with when it is due.
type rule struct {
	Remark
	when due
}

// done reports whether an operation lies behind the whole engine, so that it leaves the sheet.
func (s Sheet) done(op string) bool {
	switch op {
	case measuring, boring, sleeving, honing:
		return s.Next == StepSetRingGaps || s.Next == StepReassemble
	}
	return false
}

// checklist returns what to look at and to do, in the order of the work. All of it is common practice.
func checklist(s Sheet) (list []Remark) {
	is := s.due()
	for _, r := range checks {
		if r.when&^is == 0 && !s.done(r.On) {
			if r.Says == stagger {
				r.Says = staggerWords(s.Job.Engine)
			}
			list = append(list, r.Remark)
		}
	}
	return list
}

// cautions returns what the operations on the sheet call for, in the order of the work: what hangs on the engine and the
// work, then what the rooms own whose arithmetic it is.
func cautions(s Sheet) (list []Remark) {
	is, kind := s.due(), s.Job.Tools.Hone
	for _, op := range operations {
		if s.done(op) {
			continue
		}
		for _, r := range warnings {
			if r.On == op && r.when&^is == 0 {
				list = append(list, r.Remark)
			}
		}
		switch {
		case op == honing && is&ifHoning != 0:
			for _, c := range kind.Cautions() {
				if !c.AnyWork { // what goes for any work is said there
					list = append(list, Remark{op, c.Text})
				}
			}
		case op == fittingRings && is&ifRinged != 0:
			for _, text := range rings.Cautions() {
				list = append(list, Remark{op, text})
			}
			if is&ifTwoStroke != 0 {
				list = append(list, Remark{op, rings.CautionPegs})
			}
		}
	}
	return list
}

// The cautions that no room below owns. Common practice, but where a source stands beside them.
var warnings = [...]rule{
	{Remark{anyWork, "The maker's manual, local rules and a qualified machinist outrank this sheet."}, always},
	{Remark{anyWork, "Guard the eyes; wear a mask where there is dust or mist. No gloves, rag or loose sleeve near anything that turns."}, always},
	{Remark{anyWork, "Clamp the work, never hold it in the hand. A slow drill grabs hard: use its side handle."}, always},
	{Remark{anyWork, "Stop the machine and pull the plug before reaching in."}, always},
	{Remark{anyWork, "A block or barrel too heavy to hold out at arm's length goes by hoist, and stands where it cannot tip."}, always},
	{Remark{stripping, "Old gaskets may hold asbestos: wet them, do not scrape them dry, and let no dust fly."}, always},
	{Remark{stripping, "Solvents and oil burn: no flame, fresh air, no drill with a brushed motor near the vapour; oily rags go into a tin with a lid."}, always},
	{Remark{measuring, "A size read warm is not the size: let cylinder, gauge and standard lie together until they agree, and accept the last size only then."}, always},
	{Remark{measuring, "A finding that is undecided is not a pass. Do not reassemble on it."}, always},
	{Remark{boring, "Restore the chamfer at the mouth before the last honing, and at the bottom where rings go in from below."}, ifCut},
	{Remark{sleeving, "Hot parts and cold gases burn, and boiled-off gas drives out the air you breathe: heat-proof gloves, an even oven, no torch, fresh air."}, ifSleeved},
	{Remark{fittingRings, "Ring edges cut, and a ring that slips flies: a ring expander, eyes guarded."}, ifRinged},
	{Remark{washing, "Wash with hot water and soap, in gloves, for what cleans scalds, until a white cloth stays clean. No caustic on aluminium. Dry and oil at once."}, always},
	// US Army TM 5-4320-304-14: at most 30 psi, chip guard and eye protection.
	{Remark{washing, "Compressed air at no more than 2 bar, with a guard, and never at skin."}, always},
	{Remark{goingTogether, "While it is turned by hand: fuel shut and spark or compression off, nobody's fingers at a port, the deck, a belt or the fan."}, ifReady},
	{Remark{goingTogether, "Exhaust gas kills: run it in the open. Guards on, a fire extinguisher at hand, and a way to stop it that does not hang on its governor."}, ifReady},
	{Remark{boring, "A bored cylinder is sized with rigid stones: a ball-type or brush hone follows the wall and takes no size."}, ifCut | ifFollowed},
	{Remark{boring, "A bridge across a wide port runs hotter than the wall: relieve it after boring as the maker says, or it swells and seizes the piston."}, ifCut | ifTwoStroke},
	{Remark{honing, "Stones have to be long enough to span every port; filaments and balls catch in its edges: slowly. A drill run backwards may unscrew its tool."}, ifHoning | ifTwoStroke},
	{Remark{sleeving, "Every port of the sleeve lines up with its port in the barrel before it is driven home, and is chamfered afterwards."}, ifSleeved | ifTwoStroke},
}

// stagger stands where the gaps of the rings are said to go.
const stagger = "stagger"

const sideUp = " with the side up that its mark or its maker says; side clearance and grooves looked at; pistons the way they point."

var checks = [...]rule{
	{Remark{measuring, "Wall: plated. Never bored, and honed by nobody but the maker's process: under the plating there is no wall to run on."}, ifPlated},
	{Remark{measuring, "Wall: bare aluminium-silicon. Never bored, honed or brushed in the ordinary way: the silicon has to stand out of it."}, ifAlSi},
	{Remark{measuring, "Wall: bare iron. Bored and honed in the ordinary way."}, ifIron},
	{Remark{measuring, "Wall: iron sleeve. Bored and honed as iron; how thick it is left matters, and it grows with its barrel."}, ifInserted},
	{Remark{measuring, "Wall: not known. Neither bored nor honed until it is."}, ifNoWall},
	{Remark{measuring, "Cracks and leaks looked for; deck and base flange flat; bore square to its base."}, always},
	{Remark{measuring, "Ridge at the top of ring travel looked for, and the depth of every score and pit measured: gauge anvils bridge them."}, always},
	{Remark{measuring, "Ports: edges whole, no anvil in one; how pegged rings lie to them noted."}, ifTwoStroke},
	{Remark{measuring, "Measured free or clamped with a torque plate: note which, and do the same afterwards."}, ifNotHeld},
	{Remark{measuring, "Measured clamped with a torque plate, before and after alike."}, ifPlate},
	{Remark{measuring, "Measured free, without a torque plate, before and after alike."}, ifFree},
	{Remark{measuring, "Cylinder, gauge and setting standard at one temperature before the readings that decide."}, always},
	{Remark{measuring, "Undecided: do not reassemble on this. Measure better, as each finding says, and plan the job again."}, ifOpen},
	{Remark{sleeving, "The sleeve measured first, and the seat bored to suit it; a step or collar for it to stand on; a lead chamfer."}, ifDecided | ifSleeved},
	{Remark{sleeving, "Sleeve home on its step, and left to cool; what stands proud faced to the deck; leaks looked for; the neighbouring bores read again."}, ifDecided | ifSleeved},
	{Remark{sleeving, "Bored and honed to the piston."}, ifDecided | ifSleeved},
	{Remark{boring, "New pistons measured before the last cut: the finish window follows the piston, not the box."}, ifDecided | ifBored},
	{Remark{boring, "Oil ways and neighbouring bores covered; rough bored; stopped to cool and measured; then the last cut; then the mouth chamfered."}, ifDecided | ifBored},
	{Remark{boring, "The torque plate on for every cut, as for the readings."}, ifDecided | ifCut | ifPlate},
	{Remark{honing, "Edges of the ports dressed after boring, before a stone can catch in them."}, ifDecided | ifCut | ifTwoStroke},
	{Remark{honing, "The torque plate on, as for the readings."}, ifDecided | ifHoned | ifPlate},
	{Remark{honing, "Honed; stopped to cool and measured before the last passes."}, ifDecided | ifHoned},
	{Remark{honing, "Edges of the ports dressed lightly again after honing."}, ifDecided | ifHoned | ifTwoStroke},
	{Remark{fittingRings, "Each ring's gap measured in its finished, washed bore, where that is smallest, before the ring goes on; filed only there."}, ifRinged},
	{Remark{fittingRings, "Each ring" + sideUp}, ifRinged | ifTwoStroke},
	{Remark{fittingRings, "Pegged rings at their pegs, no end in a port."}, ifRinged | ifTwoStroke},
	{Remark{fittingRings, "Rings staggered, each" + sideUp}, ifRinged | ifFourStroke},
	{Remark{washing, "Power off, the work cold; swarf off by brush, never by hand. Solvent only moves the grit about: hot water, soap and a brush."}, always},
	{Remark{washing, "Washed until a white cloth stays clean, dried, oiled at once."}, always},
	{Remark{washing, "Read again at rest, at the same places, clamped the same way; readings, temperatures, gauge and standard written down with date and name."}, always},
	{Remark{goingTogether, "Each piston in the bore that it was measured for, pointing the way its mark says; every ring free in its groove."}, ifReady},
	{Remark{goingTogether, "Pistons weighed against one another: as alike as the maker allows."}, ifReady | ifSeveral},
	{Remark{goingTogether, stagger}, ifReady},
	{Remark{goingTogether, "Wall, rings, pins and bearings oiled; the rings closed by a compressor square on the deck, the piston pushed in by hand: where it stops, look, never drive it."}, ifReady},
	{Remark{goingTogether, "New gaskets; torques, their order, timing and valve clearances by the maker's manual."}, ifReady},
	{Remark{goingTogether, "Turned two full turns by hand, without a hard place, before anything drives it."}, ifReady},
	{Remark{goingTogether, "First run and running in by the maker's manual; oil and cooling seen to work before any load; stopped, let cool, and looked over for leaks."}, ifReady},
}

// staggerWords says where the gaps of the rings go.
func staggerWords(e Engine) string {
	if e.Cycle == TwoStroke {
		return "Pegged rings at their pegs; no end over a port."
	}
	angles, err := rings.Stagger(len(e.Rings))
	if err != nil || len(angles) == 1 {
		return "Ring gaps where the maker puts them."
	}
	var at []string
	for i, a := range angles {
		at = append(at, e.Rings[i].Name+" "+degrees(a))
	}
	return "Ring gaps where the maker puts them; where he says nothing, spread round the bore, such as, from thrust: " + strings.Join(at, ", ") + " (common practice)."
}

// clampingWords says how a cylinder was held.
func clampingWords(torquePlate bool) string {
	if torquePlate {
		return "clamped with a torque plate"
	}
	return "free, without a torque plate"
}
