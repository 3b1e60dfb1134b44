// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"strings"
	"testing"

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
		var b bytes.Buffer
		if err := s.WriteText(&b); err != nil {
			t.Fatal(err)
		}
		_, sizes, _ := strings.Cut(b.String(), "Cylinder 1, flywheel side\n")
		sizes, _, _ = strings.Cut(sizes, "  largest ")
		row := strings.Fields(strings.Split(sizes, "\n")[1])
		below := strings.Contains(sizes, "Each size ± ")
		if beside := row[3] == "±"; below != (more == 0) || beside == below {
			t.Errorf("%d more of one place:\n%s", more, sizes)
		}
	}
}
