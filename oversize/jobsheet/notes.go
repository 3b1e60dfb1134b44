// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

import (
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet/internal/notes"
)

// work is what the checks and cautions of a sheet hang on.
func (s Sheet) work() notes.Work {
	e := s.Job.Engine
	is := notes.Work{
		Wall: e.Wall, TwoStroke: e.Cycle == TwoStroke, Cylinders: e.Cylinders, Hone: s.Job.Tools.Hone, Drive: s.Job.Tools.Drive,
		TorquePlate: s.Job.Survey.TorquePlate, Stroke: s.Honing.Now.Stroke != 0,
		Machined: s.Next == StepSetRingGaps || s.Next == StepReassemble, Ready: s.Next == StepReassemble,
	}
	for _, r := range e.Rings {
		is.Rings = append(is.Rings, r.Name)
	}
	for i, c := range s.Choice.Cylinders {
		is.Bored = is.Bored || c.Route == oversize.BoreOversize
		is.Sleeved = is.Sleeved || c.Route == oversize.Sleeve
		is.Kept = is.Kept || c.Route == oversize.HoneAndKeep
		is.Ridged = is.Ridged || stays(c) && s.Cylinders[i].Bore.HasRidge
	}
	is.Decided = s.decided() && s.Choice.Route != oversize.Undecided
	is.Open = s.decided() && !is.Decided
	return is
}

// remarks are notes as a sheet has them.
func remarks(list []notes.Note) (all []Remark) {
	for _, n := range list {
		all = append(all, Remark(n))
	}
	return all
}
