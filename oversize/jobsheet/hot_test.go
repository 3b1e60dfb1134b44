// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestWindowsStandForRunning: where the maker's windows at 20 °C stand for the running ones, a piece within its window says
// that it does by that, and one that is not says what the window does.
func TestWindowsStandForRunning(t *testing.T) {
	const gap, running, least, work = "cylinders[0].rings[0].gap", "cylinders[0].rings[0].running gap", "cylinders[0].least clearance", "cylinders[0].running clearance"
	s := mustPlan(t, finished(false, false))
	for _, key := range []string{running, work} {
		if r := rowOf(t, s, key); r.State != jobsheet.StateProven || !strings.Contains(r.Stands, "by the maker's window at 20 °C") {
			t.Errorf("%s stands: %v, %s", key, r.State, r.Stands)
		}
	}
	j := finished(false, false)
	put(t, j, "cylinders.0.rings.0.finished", "0.02 mm")
	put(t, j, "cylinders.0.piston.size", "79.999 ± 0.002 mm")
	s = mustPlan(t, j)
	for was, is := range map[string]string{gap: running, least: work} {
		cold, hot := rowOf(t, s, was), rowOf(t, s, is)
		if hot.State == jobsheet.StateProven || cold.State == jobsheet.StateProven || strings.Contains(hot.Stands, "by the maker's window") || (is == running && hot.State != cold.State) {
			t.Errorf("%s stands: %v, %s; %s: %v, %s", was, cold.State, cold.Stands, is, hot.State, hot.Stands)
		}
	}
}

// TestUnmeasuredGapsAreOpen: nothing proves the gap of a ring in work that was not measured in its finished bore, neither
// windows nor temperatures, and it asks for that gap.
func TestUnmeasuredGapsAreOpen(t *testing.T) {
	for name, running := range map[string]tree{
		"windows":      {"piston_by_window": true, "rings_by_window": true},
		"temperatures": {"piston_by_window": true, "ring": "170 ± 10 °C", "bore": "110 ± 10 °C"},
	} {
		j := finished(false, false)
		put(t, j, "engine.running", running)
		rows := []string{"running gap"}
		if name == "temperatures" {
			put(t, j, "engine.rings.0.hot_gap", "0.05 mm")
			rows = append(rows, "hot gap")
		}
		for _, measured := range []bool{true, false} {
			if !measured {
				put(t, j, "cylinders.0.rings.0.finished", nil)
				put(t, j, "cylinders.0.rings.0.filed", nil)
			}
			s := mustPlan(t, j)
			for _, row := range rows {
				r := rowOf(t, s, "cylinders[0].rings[0]."+row)
				if (r.State == jobsheet.StateProven) != measured || !measured && (r.State != jobsheet.StateOpen || len(r.Give) != 1 || !strings.HasSuffix(r.Give[0], ".finished")) {
					t.Errorf("%s, measured %t: the %s stands: %v, %s, %v", name, measured, row, r.State, r.Stands, r.Give)
				}
			}
		}
	}
}

// TestMayTouch: a piston that its bore may be too small for is in doubt, one that is the larger by what was read has failed,
// and one that is only tighter than its window is neither: its limit says so.
func TestMayTouch(t *testing.T) {
	for size, want := range map[string]string{"79.990 ± 0.002 mm": "", "80.007 ± 0.004 mm": "open: by the doubt the parts may touch", "80.012 ± 0.004 mm": "failed: parts touch that must not", "80.060 ± 0.002 mm": "failed: parts touch that must not"} {
		j := finished(false, false)
		put(t, j, "cylinders.0.piston.size", size)
		r := rowOf(t, mustPlan(t, j), "cylinders[0].least clearance")
		if r.State == jobsheet.StateProven || want == "" && strings.Contains(r.Stands, "touch") || !strings.Contains(r.Stands, want) {
			t.Errorf("%s: %v, %s; want %q", size, r.State, r.Stands, want)
		}
	}
}
