// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
)

// checklist returns what to look at and to do, in the order of the work.
func checklist(s Sheet) []string {
	list := []string{
		"Before measuring: look for cracks, a ridge at the top of ring travel, scores and pits; measure how deep they are, for gauge anvils bridge them.",
		"Deck and base flange flat, bore square to its base.",
		"Measured free or clamped with a torque plate: note which, and do the same afterwards.",
		"Cylinder, gauge and setting standard at one temperature before the readings that decide.",
	}
	if s.Job.Engine.Cycle == TwoStroke {
		list = append(list, "Ports: no anvil and no ring end in one; chamfer their edges after honing; pegged rings stay at their pegs.")
	}
	switch s.Choice.Route {
	case oversize.Undecided:
		list = append(list, "Undecided: do not reassemble on this. Measure better, as each finding says, and run the job again.")
	case oversize.HoneAndKeep:
		list = append(list, "Deglaze or hone, wash, and measure again at the same places before assembly.")
	case oversize.BoreOversize:
		list = append(list,
			"Measure the new pistons before the last cut; the finish window follows the piston, not the box.",
			"Bore, chamfer the mouth, hone; stop to cool and measure before the last passes.",
			"Wash, and measure again at the same places.")
	case oversize.Sleeve:
		list = append(list, "Sleeve, let it cool, bore and hone the sleeve to the piston; then measure again.")
	case oversize.MakersProcess:
		list = append(list,
			"This wall is neither bored nor honed here. Within every limit and unharmed it may run again as it is, untouched; "+
				"otherwise ask the maker for the process, or replace the cylinder.")
	}
	if len(s.Job.Engine.Rings) > 0 {
		list = append(list, "Each ring's gap measured in the finished bore, where it is smallest, before the ring goes on.")
	}
	return append(list, "Readings, temperatures, gauge and standard written down with date and name.")
}
