// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"errors"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// TestFaultKeeps: a fault keeps its place in the file, the value as it was typed, and the error of whoever refused it.
func TestFaultKeeps(t *testing.T) {
	for _, c := range []struct {
		old, new    string
		path, value string
		line        int
		beneath     error
	}{
		{`"67.051 mm"`, `"067.051"`, "cylinders[0].readings[0].diameter", `"067.051"`, 22, units.ErrMissingUnit},
		{`"49.5 mm"`, `"6 m"`, "engine.stroke", `"6 m"`, 4, nil},
		{`"two-point"`, `"laser"`, "gauge.kind", `"laser"`, 13, units.ErrUnknownName},
	} {
		_, err := jobsheet.ReadJob(strings.NewReader(with(t, c.old, c.new)))
		var fs jobsheet.Faults
		if !errors.As(err, &fs) || len(fs) != 1 || !errors.Is(err, jobsheet.ErrJob) {
			t.Errorf("%s: %v", c.new, err)
			continue
		}
		f := fs[0]
		if f.Path != c.path || f.Value != c.value || f.Line != c.line || (c.line > 0) != (f.Column > 0) {
			t.Errorf("%s: %+v", c.new, f)
		}
		if c.beneath != nil && (!errors.Is(err, c.beneath) || !errors.Is(f.Err, c.beneath)) {
			t.Errorf("%s: %v is not %v", c.new, err, c.beneath)
		}
	}
}
