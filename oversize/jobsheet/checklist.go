// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"strings"

	"borewright.example/oversize"
	"borewright.example/rings"
)

// checklist returns what to look at and to do, in the order of the work. All of it is common practice.
func checklist(s Sheet) []Note {
	var list []Note
	add := func(op, text string) {
		if !s.done(op) {
			list = append(list, Note{op, text})
		}
	}
	e := s.Job.Engine
	add(measuring, wallWords(e.Wall))
	add(measuring, "Cracks and leaks looked for; deck and base flange flat; bore square to its base.")
	add(measuring, "Ridge at the top of ring travel looked for, and the depth of every score and pit measured: gauge anvils bridge them.")
	if e.Cycle == TwoStroke {
		add(measuring, "Ports: edges whole, no anvil in one; how pegged rings lie to them noted.")
	}
	clamped := s.Job.Survey.TorquePlate
	if clamped == nil {
		add(measuring, "Measured free or clamped with a torque plate: note which, and do the same afterwards.")
	} else {
		add(measuring, "Measured "+clampingWords(*clamped)+", before and after alike.")
	}
	add(measuring, "Cylinder, gauge and setting standard at one temperature before the readings that decide.")
	does := map[oversize.Route]bool{} // an engine may have one cylinder sleeved and the others bored
	for _, c := range s.Choice.Cylinders {
		does[c.Route] = s.Choice.Route != oversize.Undecided
	}
	plate, bored := clamped != nil && *clamped, does[oversize.BoreOversize] || does[oversize.Sleeve]
	if len(s.Choice.Cylinders) > 0 && s.Choice.Route == oversize.Undecided {
		add(measuring, "Undecided: do not reassemble on this. Measure better, as each finding says, and plan the job again.")
	}
	if does[oversize.Sleeve] {
		add(sleeving, "The sleeve measured first, and the seat bored to suit it; a step or collar for it to stand on; a lead chamfer.")
		add(sleeving, "Sleeve home on its step, and left to cool; what stands proud faced to the deck; leaks looked for; the neighbouring bores read again.")
		add(sleeving, "Bored and honed to the piston.")
	}
	if does[oversize.BoreOversize] {
		add(boring, "New pistons measured before the last cut: the finish window follows the piston, not the box.")
		add(boring, "Oil ways and neighbouring bores covered; rough bored; stopped to cool and measured; then the last cut; then the mouth chamfered.")
	}
	if bored && plate {
		add(boring, "The torque plate on for every cut, as for the readings.")
	}
	if bored || does[oversize.HoneAndKeep] {
		if e.Cycle == TwoStroke && bored {
			add(honing, "Edges of the ports dressed after boring, before a stone can catch in them.")
		}
		if plate {
			add(honing, "The torque plate on, as for the readings.")
		}
		add(honing, "Honed; stopped to cool and measured before the last passes.")
		if e.Cycle == TwoStroke {
			add(honing, "Edges of the ports dressed lightly again after honing.")
		}
	}
	if len(e.Rings) > 0 {
		add(fittingRings, "Each ring's gap measured in its finished, washed bore, where that is smallest, before the ring goes on; filed only there.")
		const side = " with the side up that its mark or its maker says; side clearance and grooves looked at; pistons the way they point."
		if e.Cycle == TwoStroke {
			add(fittingRings, "Each ring"+side)
			add(fittingRings, "Pegged rings at their pegs, no end in a port.")
		} else {
			add(fittingRings, "Rings staggered, each"+side)
		}
	}
	add(washing, "Power off, the work cold; swarf off by brush, never by hand. Solvent only moves the grit about: hot water, soap and a brush.")
	add(washing, "Washed until a white cloth stays clean, dried, oiled at once.")
	add(washing, "Read again at rest, at the same places, clamped the same way; readings, temperatures, gauge and standard written down with date and name.")
	if s.Next == StepReassemble {
		add(goingTogether, "Each piston in the bore that it was measured for, pointing the way its mark says; every ring free in its groove.")
		add(goingTogether, staggerWords(e))
		add(goingTogether, "Wall, rings, pins and bearings oiled; the rings closed by a compressor square on the deck, the piston pushed in by hand: where it stops, look, never drive it.")
		add(goingTogether, "New gaskets; torques, their order, timing and valve clearances by the maker's manual.")
		add(goingTogether, "Turned two full turns by hand, without a hard place, before anything drives it.")
		add(goingTogether, "First run and running in by the maker's manual; oil and cooling seen to work before any load; stopped, let cool, and looked over for leaks.")
	}
	return list
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

// wallWords says what a wall is and what it forbids.
func wallWords(w oversize.Wall) string {
	switch w {
	case oversize.Plated:
		return "Wall: plated. Never bored, and honed by nobody but the maker's process: under the plating there is no wall to run on."
	case oversize.BareAlSi:
		return "Wall: bare aluminium-silicon. Never bored, honed or brushed in the ordinary way: the silicon has to stand out of it."
	case oversize.BareIron:
		return "Wall: bare iron. Bored and honed in the ordinary way."
	case oversize.IronSleeve:
		return "Wall: iron sleeve. Bored and honed as iron; how thick it is left matters, and it grows with its barrel."
	}
	return "Wall: not known. Neither bored nor honed until it is."
}

// clampingWords says how a cylinder was held.
func clampingWords(torquePlate bool) string {
	if torquePlate {
		return "clamped with a torque plate"
	}
	return "free, without a torque plate"
}
