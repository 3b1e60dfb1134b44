// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
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

// A rule is a remark, and whether it is due.
type rule struct {
	due      bool
	on, says string
}

// cases are what remarks hang on.
type cases struct {
	twoStroke, ringed                  bool
	ridged                             bool // a cylinder that is deglazed and kept has a ridge that stands out of the doubt
	decided, open                      bool // what becomes of every cylinder; all are read, and it is not
	bored, sleeved, cut, honed, honing bool // cut is bored or sleeved, honed that or kept, honing that or there is a stroke
	plate, free, ready                 bool // the cylinders were clamped with a torque plate, or lay free; all goes together
}

func (s Sheet) cases() (is cases) {
	e, held := s.Job.Engine, s.Job.Survey.TorquePlate
	kept := false
	for i, c := range s.Choice.Cylinders { // an engine may have one cylinder sleeved and the others bored
		is.bored = is.bored || c.Route == oversize.BoreOversize
		is.sleeved = is.sleeved || c.Route == oversize.Sleeve
		kept = kept || c.Route == oversize.HoneAndKeep
		is.ridged = is.ridged || stays(c) && s.Cylinders[i].Bore.HasRidge
	}
	is.cut = is.bored || is.sleeved
	is.honed = is.cut || kept
	is.honing = is.honed || s.Honing.Now.Stroke != 0
	is.decided = s.decided() && s.Choice.Route != oversize.Undecided
	is.open = s.decided() && !is.decided
	is.plate, is.free = held != nil && *held, held != nil && !*held
	is.twoStroke, is.ringed, is.ready = e.Cycle == TwoStroke, len(e.Rings) > 0, s.Next == StepReassemble
	return is
}

// due returns the remarks that are, of operations that do not lie behind the whole engine.
func (s Sheet) due(rules []rule) (list []Remark) {
	for _, r := range rules {
		if r.due && !s.done(r.on) {
			list = append(list, Remark{r.on, r.says})
		}
	}
	return list
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
func checklist(s Sheet) []Remark {
	is, wall := s.cases(), s.Job.Engine.Wall
	const sideUp = " with the side up that its mark or its maker says; side clearance and wear of the grooves looked at; pistons the way they point."
	return s.due([]rule{
		{wall == oversize.Plated, measuring, "Wall: plated. Never bored, and honed by nobody but the maker's process: under the plating there is no wall to run on."},
		{wall == oversize.BareAlSi, measuring, "Wall: bare aluminium-silicon. Never bored, honed or brushed in the ordinary way: the silicon has to stand out of it."},
		{wall == oversize.BareIron, measuring, "Wall: bare iron. Bored and honed in the ordinary way."},
		{wall == oversize.IronSleeve, measuring, "Wall: iron sleeve. Bored and honed as iron; how thick it is left matters, and it grows with its barrel."},
		{wall == oversize.WallNotGiven, measuring, "Wall: not known. Neither bored nor honed until it is."},
		// US Army TM 5-2815-241-34&P tightens the caps before the bores are measured.
		{true, measuring, "Cracks and leaks looked for; deck and base flange flat and free of burrs; bore square to its base; main-bearing caps, where the block has them, on and tightened as the maker says."},
		{true, measuring, "Ridge at the top of ring travel looked for, and the depth of every score and pit measured: gauge anvils bridge them."},
		{is.twoStroke, measuring, "Ports: edges whole, no anvil in one; how pegged rings lie to them noted."},
		{!is.plate && !is.free, measuring, "Measured free or clamped with a torque plate: note which, and do the same afterwards."},
		{is.plate, measuring, "Measured clamped with a torque plate, before and after alike."},
		{is.free, measuring, "Measured free, without a torque plate, before and after alike."},
		{true, measuring, "Cylinder, gauge and setting standard at one temperature before the readings that decide."},
		{is.open, measuring, "Undecided: do not reassemble on this. Measure better, as each finding says, and plan the job again."},
		{is.decided && is.sleeved, sleeving, "The sleeve measured first, and the seat bored to suit it; a step or collar for it to stand on; a lead chamfer."},
		{is.decided && is.sleeved, sleeving, "Sleeve home on its step, and left to cool; what stands proud faced to the deck; leaks looked for; the neighbouring bores read again."},
		{is.decided && is.sleeved, sleeving, "Bored and honed to the piston."},
		{is.decided && is.bored, boring, "New pistons measured before the last cut: the finish window follows the piston, not the box."},
		{is.decided && is.bored && s.Job.Engine.Cylinders > 1, boring, "New pistons weighed, where the maker says how far their weights may differ."},
		{is.decided && is.bored, boring, "Oil ways and neighbouring bores covered; rough bored; stopped to cool and measured; then the last cut; then the mouth chamfered."},
		{is.decided && is.cut && is.plate, boring, "The torque plate on for every cut, as for the readings."},
		{is.decided && is.cut && is.twoStroke, honing, "Edges of the ports dressed after boring, before a stone can catch in them."},
		{is.decided && is.honed && is.plate, honing, "The torque plate on, as for the readings."},
		// US Army TM 5-3895-348-14&P-2 and TM 5-3895-359-14&P take it off even where the bore is inside its limits.
		{is.decided && is.ridged && is.ringed, honing, "The ridge at the top taken off, no deeper than the wall below it: a new top ring strikes it and breaks."},
		{is.decided && is.honed, honing, "Honed; stopped to cool and measured before the last passes."},
		{is.decided && is.honed && is.twoStroke, honing, "Edges of the ports dressed lightly again after honing."},
		{is.ringed, fittingRings, "Each ring's gap measured in its finished, washed bore, where that is smallest, before the ring goes on; filed only there."},
		{is.ringed && is.twoStroke, fittingRings, "Each ring" + sideUp},
		{is.ringed && is.twoStroke, fittingRings, "Pegged rings at their pegs, no end in a port."},
		{is.ringed && !is.twoStroke, fittingRings, "Rings staggered, each" + sideUp},
		{true, washing, "Power off, the work cold; swarf off by brush, never by hand. Solvent only moves the grit about: hot water, soap and a brush."},
		{true, washing, "Washed until a white cloth stays clean, dried, oiled at once."},
		{true, washing, "Read again at rest, at the same places, clamped the same way; readings, temperatures, gauge and standard written down with date and name."},
		{is.ready, goingTogether, "Each piston in the bore that it was measured for, pointing the way its mark says; every ring free in its groove."},
		{is.ready && len(s.Cylinders) > 1, goingTogether, "Pistons weighed against one another: as alike as the maker allows."},
		{is.ready, goingTogether, staggerWords(s.Job.Engine)},
		{is.ready, goingTogether, "Wall, rings, pins and bearings oiled; the rings closed by a compressor square on the deck, the piston pushed in by hand: where it stops, look, never drive it."},
		{is.ready, goingTogether, "New gaskets; torques, their order, timing and valve clearances by the maker's manual."},
		{is.ready, goingTogether, "Turned two full turns by hand, without a hard place, before anything drives it."},
		{is.ready, goingTogether, "First run and running in by the maker's manual; oil and cooling seen to work before any load; stopped, let cool, and looked over for leaks."},
	})
}

// cautions returns what the operations on the sheet call for, in the order of the work: what hangs on the engine and the work, which is common
// practice but where a source stands beside it, then what the rooms own whose arithmetic it is.
func cautions(s Sheet) []Remark {
	is, kind := s.cases(), s.Job.Tools.Hone
	rules := []rule{
		{true, anyWork, "The maker's manual, local rules and a qualified machinist outrank this sheet."},
		{true, anyWork, "Guard the eyes; wear a mask where there is dust or mist. No gloves, rag or loose sleeve near anything that turns."},
		{true, anyWork, "Clamp the work, never hold it in the hand."},
		{true, anyWork, "Stop the machine and pull the plug before reaching in."},
		{true, anyWork, "A block or barrel too heavy to hold out at arm's length goes by hoist, and stands where it cannot tip."},
		{true, stripping, "Old gaskets may hold asbestos: wet them, do not scrape them dry, and let no dust fly."},
		{true, stripping, "Solvents and oil burn: no flame, fresh air, no drill with a brushed motor near the vapour; oily rags go into a tin with a lid."},
		{true, measuring, "A size read warm is not the size: let cylinder, gauge and standard lie together until they agree, and accept the last size only then."},
		{true, measuring, "A finding that is undecided is not a pass. Do not reassemble on it."},
		{is.cut, boring, "Restore the chamfer at the mouth before the last honing, and at the bottom where rings go in from below."},
		{is.cut, boring, "The bar or machine stopped and still before a hand, a gauge or a brush goes near: what it cuts is hot and sharp."},
		{is.cut && kind != hone.RigidStone, boring, "A bored cylinder is sized with rigid stones: a ball-type or brush hone follows the wall and takes no size."},
		{is.cut && is.twoStroke, boring, "A bridge across a wide port runs hotter than the wall: relieve it after boring as the maker says, or it swells and seizes the piston."},
		{is.honing && s.Job.Tools.Drive != hone.ByMachine, honing, "A slow drill grabs hard: the cylinder clamped, the drill held by its side handle; stopped, and its plug pulled, before you measure or reach in."},
		{is.honing && is.twoStroke, honing, "Stones have to be long enough to span every port; filaments and balls catch in its edges: slowly. A drill run backwards may unscrew its tool."},
	}
	for _, c := range kind.Cautions() {
		rules = append(rules, rule{is.honing && !c.AnyWork, honing, c.Text}) // what goes for any work is said there
	}
	rules = append(rules, rule{is.ringed, fittingRings, "Ring edges cut, and a ring that slips flies: a ring expander, eyes guarded."})
	for _, text := range rings.Cautions() {
		rules = append(rules, rule{is.ringed, fittingRings, text})
	}
	return s.due(append(rules, []rule{
		{is.ringed && is.twoStroke, fittingRings, rings.CautionPegs},
		{is.sleeved, sleeving, "Hot parts and cold gases burn, and boiled-off gas drives out the air you breathe: heat-proof gloves, an even oven, no torch, fresh air."},
		{is.sleeved && is.twoStroke, sleeving, "Every port of the sleeve lines up with its port in the barrel before it is driven home, and is chamfered afterwards."},
		{true, washing, "Wash with hot water and soap, in gloves, for what cleans scalds, until a white cloth stays clean. No caustic on aluminium. Dry and oil at once."},
		// US Army TM 5-4320-304-14: at most 30 psi, chip guard and eye protection.
		{true, washing, "Compressed air at no more than 2 bar, with a guard, and never at skin."},
		{is.ready, goingTogether, "While it is turned by hand: fuel shut and spark or compression off, nobody's fingers at a port, the deck, a belt or the fan."},
		{is.ready, goingTogether, "Exhaust gas kills: run it in the open. Guards on, a fire extinguisher at hand, and a way to stop it that does not hang on its governor."},
	}...))
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
		at = append(at, e.Rings[i].Name+" "+show.Degrees(a))
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
