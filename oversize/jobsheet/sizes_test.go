// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// TestDoubtOfEach: sizes share a doubt below their table only where it is that of each: a place read nine times has less.
func TestDoubtOfEach(t *testing.T) {
	for _, more := range []int{0, 8} {
		j := job(t, "pump")
		j.Gauge.Repeatability = 4 * units.Micrometre
		one := &j.Cylinders[0]
		for range more {
			one.Readings = append(one.Readings, one.Readings[0])
		}
		readings := *j.Counted.Readings + more
		j.Counted.Readings = &readings
		s := plan(t, j)
		b := asPrinted(t, s)
		_, sizes, _ := strings.Cut(b, "Cylinder 1, flywheel side\n")
		sizes, _, _ = strings.Cut(sizes, "  largest ")
		row := strings.Fields(strings.Split(sizes, "\n")[1])
		below := strings.Contains(sizes, "Each size ± ")
		if beside := row[3] == "±"; below != (more == 0) || beside == below {
			t.Errorf("%d more of one place:\n%s", more, sizes)
		}
	}
}

// TestUnseenOfEach: what readings cannot show is said once where it is so of every cylinder, and of each where they differ.
func TestUnseenOfEach(t *testing.T) {
	for _, fewer := range []bool{false, true} {
		j := job(t, "pump")
		if fewer { // two axes leave an ovality between them unseen
			other := &j.Cylinders[1]
			was := len(other.Readings)
			other.Readings = slices.DeleteFunc(other.Readings, func(r jobsheet.Reading) bool { return r.Axis.String() == "45°" })
			readings := *j.Counted.Readings - was + len(other.Readings)
			j.Counted.Readings = &readings
		}
		b := asPrinted(t, plan(t, j))
		each, all := strings.Count(b, "These readings cannot show:"), strings.Count(b, "Of no cylinder can these readings show:")
		if fewer && (each != 2 || all != 0) || !fewer && (each != 0 || all != 1) {
			t.Errorf("an axis fewer in one %v: said %d times of each, %d of all", fewer, each, all)
		}
	}
}
