// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
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

// A Note is a check or a warning for one operation. The maker's manual, local rules and a qualified
// machinist outrank it.
type Note struct {
	Operation string `json:"operation"` // the work it belongs to, such as "fitting rings"
	Text      string `json:"text"`      // in a sentence or two
}

// The cautions that no room below owns. Common practice, but where a source stands beside them.
var generalCautions = [...]Note{
	{anyWork, "The maker's manual, local rules and a qualified machinist outrank this sheet."},
	{anyWork, "Guard the eyes; wear a mask where there is dust or mist. No gloves, rag or loose sleeve near anything that turns."},
	{anyWork, "Clamp the work, never hold it in the hand. A slow drill grabs hard: use its side handle."},
	{anyWork, "Stop the machine and pull the plug before reaching in."},
	{anyWork, "A block or barrel too heavy to hold out at arm's length goes by hoist, and stands where it cannot tip."},
	{stripping, "Old gaskets may hold asbestos: wet them, do not scrape them dry, and let no dust fly."},
	{stripping, "Solvents and oil burn: no flame, fresh air, no drill with a brushed motor near the vapour; oily rags go into a tin with a lid."},
	{measuring, "A size read warm is not the size: let cylinder, gauge and standard lie together until they agree, and accept the last size only then."},
	{measuring, "A finding that is undecided is not a pass. Do not reassemble on it."},
	{boring, "Restore the chamfer at the mouth before the last honing, and at the bottom where rings go in from below."},
	{sleeving, "Hot parts and cold gases burn, and boiled-off gas drives out the air you breathe: heat-proof gloves, an even oven, no torch, fresh air."},
	{fittingRings, "Ring edges cut, and a ring that slips flies: a ring expander, eyes guarded."},
	{washing, "Wash with hot water and soap, in gloves, for what cleans scalds, until a white cloth stays clean. No caustic on aluminium. Dry and oil at once."},
	// US Army TM 5-4320-304-14: at most 30 psi, chip guard and eye protection.
	{washing, "Compressed air at no more than 2 bar, with a guard, and never at skin."},
	{goingTogether, "While it is turned by hand: fuel shut and spark or compression off, nobody's fingers at a port, the deck, a belt or the fan."},
	{goingTogether, "Exhaust gas kills: run it in the open. Guards on, a fire extinguisher at hand, and a way to stop it that does not hang on its governor."},
}

// cautions returns what the operations on the sheet call for, in the order of the work.
func cautions(s Sheet) []Note {
	kind, twoStroke := s.Job.Tools.Hone, s.Job.Engine.Cycle == TwoStroke
	does := map[string]bool{
		anyWork: true, stripping: true, measuring: true, washing: true,
		fittingRings: len(s.Job.Engine.Rings) > 0, honing: s.Honing.Now.Stroke != 0,
	}
	for _, cc := range s.Choice.Cylinders {
		switch cc.Route {
		case oversize.HoneAndKeep:
			does[honing] = true
		case oversize.BoreOversize:
			does[boring], does[honing] = true, true
		case oversize.Sleeve:
			does[sleeving], does[boring], does[honing] = true, true, true
		}
	}
	var list []Note
	does[goingTogether] = s.Next == StepReassemble
	for _, op := range operations {
		if !does[op] || s.done(op) {
			continue
		}
		for _, g := range generalCautions {
			if g.Operation == op {
				list = append(list, g)
			}
		}
		// What hangs on the tool or the engine, common practice too.
		if op == boring && kind != hone.RigidStone {
			list = append(list, Note{op, "A bored cylinder is sized with rigid stones: a ball-type or brush hone follows the wall and takes no size."})
		}
		if op == boring && twoStroke {
			list = append(list, Note{op, "A bridge across a wide port runs hotter than the wall: relieve it after boring as the maker says, or it swells and seizes the piston."})
		}
		if op == honing && twoStroke {
			list = append(list, Note{op, "Stones have to be long enough to span every port; filaments and balls catch in its edges: slowly. A drill run backwards may unscrew its tool."})
		}
		if op == sleeving && twoStroke {
			list = append(list, Note{op, "Every port of the sleeve lines up with its port in the barrel before it is driven home, and is chamfered afterwards."})
		}
		list = append(list, ofRooms(op, kind, twoStroke)...)
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

// ofRooms returns the cautions of an operation that the room of its arithmetic owns.
func ofRooms(op string, kind hone.Kind, twoStroke bool) []Note {
	var list []Note
	switch op {
	case honing:
		for _, c := range kind.Cautions() {
			if !c.AnyWork { // what goes for any work is said there
				list = append(list, Note{op, c.Text})
			}
		}
	case fittingRings:
		for _, text := range rings.Cautions() {
			list = append(list, Note{op, text})
		}
		if twoStroke {
			list = append(list, Note{op, rings.CautionPegs})
		}
	}
	return list
}
