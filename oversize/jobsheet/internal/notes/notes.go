// SPDX-License-Identifier: BSD-3-Clause

// Package notes has what to look at, what to do and what can hurt, by the operation it belongs to.
//
// It knows which work is to be done and to what kind of wall, and no number. The cautions that follow from a room's own
// arithmetic are that room's: of the kind of hone in bore/hone, of rings in rings. Sources stand beside the lines that have
// one; all else is common practice. The maker's manual, local rules and a qualified machinist outrank all of it.
package notes

import (
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/show"
	"borewright.example/rings"
)

// Operations, to which notes belong.
const (
	AnyWork       = "any work"
	Stripping     = "stripping"
	Measuring     = "measuring"
	Boring        = "boring"
	Honing        = "honing"
	FittingRings  = "fitting rings"
	Sleeving      = "sleeving"
	Washing       = "washing"
	GoingTogether = "going together"
)

// A Note is a check or a caution, and the operation it belongs to.
type Note struct {
	On, Says string
}

// A rule is a note, and whether it is due.
type rule struct {
	due      bool
	on, says string
}

// Work is what notes hang on.
type Work struct {
	Wall      oversize.Wall
	TwoStroke bool
	Cylinders int      // of the engine
	Rings     []string // of one piston, by name
	Hone      hone.Kind
	Drive     hone.Drive
	// TorquePlate is whether the cylinders were clamped with one; nil where nobody said.
	TorquePlate *bool

	Decided, Open bool // what becomes of every cylinder; all are read, and it is not
	// What becomes of some cylinder: an engine may have one sleeved and the others bored.
	Bored, Sleeved, Kept bool
	Ridged               bool // a cylinder that is deglazed and kept has a ridge that stands out of the doubt
	Stroke               bool // there is a stroke to hone with
	Machined             bool // measuring, boring, sleeving and honing lie behind the whole engine
	Ready                bool // all goes together
}

// Behind reports whether an operation lies behind the whole engine, so that nothing is noted of it.
func (is Work) Behind(op string) bool {
	switch op {
	case Measuring, Boring, Sleeving, Honing:
		return is.Machined
	}
	return false
}

// due returns the notes that are, of operations that do not lie behind.
func (is Work) due(rules []rule) (list []Note) {
	for _, r := range rules {
		if r.due && !is.Behind(r.on) {
			list = append(list, Note{r.on, r.says})
		}
	}
	return list
}

// Checklist returns what to look at and to do, in the order of the work. All of it is common practice.
func (is Work) Checklist() []Note {
	wall, decided, plate := is.Wall, is.Decided, is.TorquePlate
	ringed, cut := len(is.Rings) > 0, is.Bored || is.Sleeved
	honed := cut || is.Kept
	clamped, free := plate != nil && *plate, plate != nil && !*plate
	const sideUp = " with the side up that its mark or its maker says; side clearance and wear of the grooves looked at; pistons the way they point."
	return is.due([]rule{
		{wall == oversize.Plated, Measuring, "Wall: plated. Never bored, and honed by nobody but the maker's process: under the plating there is no wall to run on."},
		{wall == oversize.BareAlSi, Measuring, "Wall: bare aluminium-silicon. Never bored, honed or brushed in the ordinary way: the silicon has to stand out of it."},
		{wall == oversize.BareIron, Measuring, "Wall: bare iron. Bored and honed in the ordinary way."},
		{wall == oversize.IronSleeve, Measuring, "Wall: iron sleeve. Bored and honed as iron; how thick it is left matters, and it grows with its barrel."},
		{wall == 0, Measuring, "Wall: not known. Neither bored nor honed until it is."},
		// US Army TM 5-2815-241-34&P tightens the caps before the bores are measured.
		{true, Measuring, "Cracks and leaks looked for; deck and base flange flat and free of burrs; bore square to its base; main-bearing caps, where the block has them, on and tightened as the maker says."},
		{true, Measuring, "Ridge at the top of ring travel looked for, and the depth of every score and pit measured: gauge anvils bridge them."},
		{is.TwoStroke, Measuring, "Ports: edges whole, no anvil in one; how pegged rings lie to them noted."},
		{plate == nil, Measuring, "Measured free or clamped with a torque plate: note which, and do the same afterwards."},
		{clamped, Measuring, "Measured clamped with a torque plate, before and after alike."},
		{free, Measuring, "Measured free, without a torque plate, before and after alike."},
		{true, Measuring, "Cylinder, gauge and setting standard at one temperature before the readings that decide."},
		{is.Open, Measuring, "Undecided: do not reassemble on this. Measure better, as each finding says, and plan the job again."},
		{decided && is.Sleeved, Sleeving, "The sleeve measured first, and the seat bored to suit it; a step or collar for it to stand on; a lead chamfer."},
		{decided && is.Sleeved, Sleeving, "Sleeve home on its step, and left to cool; what stands proud faced to the deck; leaks looked for; the neighbouring bores read again."},
		{decided && is.Sleeved, Sleeving, "Bored and honed to the piston."},
		{decided && is.Bored, Boring, "New pistons measured before the last cut: the finish window follows the piston, not the box."},
		{decided && is.Bored && is.Cylinders > 1, Boring, "New pistons weighed, where the maker says how far their weights may differ."},
		{decided && is.Bored, Boring, "Oil ways and neighbouring bores covered; rough bored; stopped to cool and measured; then the last cut; then the mouth chamfered."},
		{decided && cut && clamped, Boring, "The torque plate on for every cut, as for the readings."},
		{decided && cut && is.TwoStroke, Honing, "Edges of the ports dressed after boring, before a stone can catch in them."},
		{decided && honed && clamped, Honing, "The torque plate on, as for the readings."},
		// US Army TM 5-3895-348-14&P-2 and TM 5-3895-359-14&P take it off even where the bore is inside its limits.
		{decided && is.Ridged && ringed, Honing, "The ridge at the top taken off, no deeper than the wall below it: a new top ring strikes it and breaks."},
		{decided && honed, Honing, "Honed; stopped to cool and measured before the last passes."},
		{decided && honed && is.TwoStroke, Honing, "Edges of the ports dressed lightly again after honing."},
		{ringed, FittingRings, "Each ring's gap measured in its finished, washed bore, where that is smallest, before the ring goes on; filed only there."},
		{ringed && is.TwoStroke, FittingRings, "Each ring" + sideUp},
		{ringed && is.TwoStroke, FittingRings, "Pegged rings at their pegs, no end in a port."},
		{ringed && !is.TwoStroke, FittingRings, "Rings staggered, each" + sideUp},
		{true, Washing, "Power off, the work cold; swarf off by brush, never by hand. Solvent only moves the grit about: hot water, soap and a brush."},
		{true, Washing, "Washed until a white cloth stays clean, dried, oiled at once."},
		{true, Washing, "Read again at rest, at the same places, clamped the same way; readings, temperatures, gauge and standard written down with date and name."},
		{is.Ready, GoingTogether, "Each piston in the bore that it was measured for, pointing the way its mark says; every ring free in its groove."},
		{is.Ready && is.Cylinders > 1, GoingTogether, "Pistons weighed against one another: as alike as the maker allows."},
		{is.Ready, GoingTogether, is.stagger()},
		{is.Ready, GoingTogether, "Wall, rings, pins and bearings oiled; the rings closed by a compressor square on the deck, the piston pushed in by hand: where it stops, look, never drive it."},
		{is.Ready, GoingTogether, "New gaskets; torques, their order, timing and valve clearances by the maker's manual."},
		{is.Ready, GoingTogether, "Turned two full turns by hand, without a hard place, before anything drives it."},
		{is.Ready, GoingTogether, "First run and running in by the maker's manual; oil and cooling seen to work before any load; stopped, let cool, and looked over for leaks."},
	})
}

// Cautions returns what the operations on the sheet call for, in the order of the work: what hangs on the engine and the work, which is common
// practice but where a source stands beside it, then what the rooms own whose arithmetic it is.
func (is Work) Cautions() []Note {
	ringed, cut := len(is.Rings) > 0, is.Bored || is.Sleeved
	work := cut || is.Kept || is.Stroke
	rules := []rule{
		{true, AnyWork, "The maker's manual, local rules and a qualified machinist outrank this sheet."},
		{true, AnyWork, "Guard the eyes; wear a mask where there is dust or mist. No gloves, rag or loose sleeve near anything that turns."},
		{true, AnyWork, "Clamp the work, never hold it in the hand."},
		{true, AnyWork, "Stop the machine and pull the plug before reaching in."},
		{true, AnyWork, "A block or barrel too heavy to hold out at arm's length goes by hoist, and stands where it cannot tip."},
		{true, Stripping, "Old gaskets may hold asbestos: wet them, do not scrape them dry, and let no dust fly."},
		{true, Stripping, "Solvents and oil burn: no flame, fresh air, no drill with a brushed motor near the vapour; oily rags go into a tin with a lid."},
		{true, Measuring, "A size read warm is not the size: let cylinder, gauge and standard lie together until they agree, and accept the last size only then."},
		{true, Measuring, "A finding that is undecided is not a pass. Do not reassemble on it."},
		{cut, Boring, "Restore the chamfer at the mouth before the last honing, and at the bottom where rings go in from below."},
		{cut, Boring, "The bar or machine stopped and still before a hand, a gauge or a brush goes near: what it cuts is hot and sharp."},
		{cut && is.Hone != hone.RigidStone, Boring, "A bored cylinder is sized with rigid stones: a ball-type or brush hone follows the wall and takes no size."},
		{cut && is.TwoStroke, Boring, "A bridge across a wide port runs hotter than the wall: relieve it after boring as the maker says, or it swells and seizes the piston."},
		{work && is.Drive != hone.ByMachine, Honing, "A slow drill grabs hard: the cylinder clamped, the drill held by its side handle; stopped, and its plug pulled, before you measure or reach in."},
		{work && is.TwoStroke, Honing, "Stones have to be long enough to span every port; filaments and balls catch in its edges: slowly. A drill run backwards may unscrew its tool."},
	}
	for _, c := range is.Hone.Cautions() {
		rules = append(rules, rule{work && !c.AnyWork, Honing, c.Text}) // what goes for any work is said there
	}
	rules = append(rules, rule{ringed, FittingRings, "Ring edges cut, and a ring that slips flies: a ring expander, eyes guarded."})
	for _, text := range rings.Cautions() {
		rules = append(rules, rule{ringed, FittingRings, text})
	}
	return is.due(append(rules, []rule{
		{ringed && is.TwoStroke, FittingRings, rings.CautionPegs},
		{is.Sleeved, Sleeving, "Hot parts and cold gases burn, and boiled-off gas drives out the air you breathe: heat-proof gloves, an even oven, no torch, fresh air."},
		{is.Sleeved && is.TwoStroke, Sleeving, "Every port of the sleeve lines up with its port in the barrel before it is driven home, and is chamfered afterwards."},
		{true, Washing, "Wash with hot water and soap, in gloves, for what cleans scalds, until a white cloth stays clean. No caustic on aluminium. Dry and oil at once."},
		// US Army TM 5-4320-304-14: at most 30 psi, chip guard and eye protection.
		{true, Washing, "Compressed air at no more than 2 bar, with a guard, and never at skin."},
		{is.Ready, GoingTogether, "While it is turned by hand: fuel shut and spark or compression off, nobody's fingers at a port, the deck, a belt or the fan."},
		{is.Ready, GoingTogether, "Exhaust gas kills: run it in the open. Guards on, a fire extinguisher at hand, and a way to stop it that does not hang on its governor."},
	}...))
}

// stagger says where the gaps of the rings go.
func (is Work) stagger() string {
	if is.TwoStroke {
		return "Pegged rings at their pegs; no end over a port."
	}
	angles, err := rings.Stagger(len(is.Rings))
	if err != nil || len(angles) == 1 {
		return "Ring gaps where the maker puts them."
	}
	at := make([]string, len(angles))
	for i, a := range angles {
		at[i] = is.Rings[i] + " " + show.Degrees(a)
	}
	return "Ring gaps where the maker puts them; where he says nothing, spread round the bore, such as, from thrust: " + strings.Join(at, ", ") + " (common practice)."
}

// Clamped says how a cylinder was held.
func Clamped(torquePlate bool) string {
	if torquePlate {
		return "clamped with a torque plate"
	}
	return "free, without a torque plate"
}
