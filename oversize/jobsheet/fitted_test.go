// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestSleeveAsMeasured: an engine goes together over a sleeve whose interference was measured to be the one that the fit was worked out
// for, 0.040 to 0.060 mm in a seat of 83 mm, and over no other.
func TestSleeveAsMeasured(t *testing.T) {
	const row = "cylinders[0].interference as measured.sleeve"
	for _, c := range []struct {
		name   string
		fitted any
		state  jobsheet.State
		reason string
	}{
		{"as wanted", tree{"seat": "83.002 ± 0.004 mm", "outside": "83.051 ± 0.003 mm"}, jobsheet.StateProven, "none"},
		{"loose", tree{"seat": "83.002 ± 0.004 mm", "outside": "82.990 ± 0.003 mm"}, jobsheet.StateFailed, "comes loose"},
		{"too tight", tree{"seat": "83.002 ± 0.004 mm", "outside": "83.092 ± 0.003 mm"}, jobsheet.StateFailed, "no sound fit"},
		{"exchanged", tree{"outside": "83.002 ± 0.004 mm", "seat": "83.051 ± 0.003 mm"}, jobsheet.StateFailed, "comes loose"},
		{"near the edge", tree{"seat": "83.002 ± 0.004 mm", "outside": "83.060 ± 0.003 mm"}, jobsheet.StateOpen, "doubtful"},
		{"without doubts", tree{"seat": "83.002 mm", "outside": "83.051 mm"}, jobsheet.StateOpen, "doubtful"},
		{"nobody measured", nil, jobsheet.StateOpen, "not measured"},
	} {
		j := fullJobs(t)["full, sleeved"]
		put(t, j, "cylinders.0.sleeve_fitted", c.fitted)
		s := mustPlan(t, j)
		r := rowOf(t, s, row)
		if r.State != c.state || name(r.Reason) != c.reason || (s.Next == jobsheet.StepReassemble) != (c.state == jobsheet.StateProven) {
			t.Errorf("%s: %v, %s; next %v", c.name, r.State, name(r.Reason), s.Next)
		}
	}
	// Classes whose fit may be loose (H7 to n6, 0.012 mm of clearance at the worst) are no leave to be so.
	loose := fullJobs(t)["full, sleeved"]
	put(t, loose, "engine.sleeve.interference", nil)
	put(t, loose, "engine.sleeve.hole", "H7")
	put(t, loose, "engine.sleeve.shaft", "n6")
	put(t, loose, "cylinders.0.sleeve_fitted", tree{"seat": "83.0120 ± 0.0008 mm", "outside": "83.0060 ± 0.0008 mm"})
	if r := rowOf(t, mustPlan(t, loose), row); r.State != jobsheet.StateFailed || name(r.Reason) != "comes loose" {
		t.Errorf("loose within its classes: %v, %s", r.State, name(r.Reason))
	}
	j := fullJobs(t)["full, sleeved"]
	put(t, j, "cylinders.0.sleeve_fitted", tree{"seat": "82.002 ± 0.004 mm", "outside": "82.051 ± 0.003 mm"})
	if s := mustPlan(t, j); !anyRowSays(s, "engine.sleeve.seat is 83 mm") || s.Next == jobsheet.StepReassemble {
		t.Errorf("a seat of another size: next %v", s.Next)
	}
}
