// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"maps"
	"strings"
	"testing"
)

// TestAnotherCylinderRepeatsNothing: that the same place was read in another cylinder, or twice there, says nothing of how
// the readings of this one scatter.
func TestAnotherCylinderRepeatsNothing(t *testing.T) {
	j := finished(false, false)
	for path, v := range map[string]any{"gauge.repeatability": nil, "cylinders.0.proof": nil, "counted.proof": nil, "engine.one_size": false} {
		put(t, j, path, v)
	}
	alone := mustPlan(t, j).Cylinders[0].Bore.Largest.Size.Std
	one := j["cylinders"].([]any)[0].(tree)
	readings := one["readings"].([]any)
	for name, more := range map[string][]any{"read once": nil, "one place twice": readings[:1]} {
		other := maps.Clone(one)
		other["name"], other["readings"] = "other", append(readings[:len(readings):len(readings)], more...)
		put(t, j, "cylinders", []any{one, other})
		put(t, j, "engine.cylinders", 2)
		put(t, j, "counted.readings", 2*len(readings)+len(more))
		s := mustPlan(t, j)
		if got := s.Cylinders[0].Bore.Largest.Size.Std; got < alone {
			t.Errorf("%s: %v, alone %v", name, got, alone)
		}
		said := false
		for _, a := range s.Assumed {
			said = said || strings.HasPrefix(a.Says, "one reading scatters by 0.001 mm")
		}
		if !said {
			t.Errorf("%s: taken and not said: %v", name, s.Assumed)
		}
	}
}
