// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"strings"
	"testing"
)

// TestSettledBy: where the size on offer cleans up if the wear is on both sides and not if it is on one, no better reading decides: the
// front page says what does. The share of the wear, once known, does decide, and the line is gone.
func TestSettledBy(t *testing.T) {
	worn := func() tree {
		j := demoTrees(t)["pump"]
		put(t, j, "engine.cylinders", 1)
		put(t, j, "engine.gasket_hole", "78.4 mm")
		j["cylinders"] = []any{cylinderOf(j, 1)}
		put(t, j, "counted.passes", 0)
		put(t, j, "confirmed", []any{
			tree{"field": "cylinders[0].readings[0]", "value": "78.118 mm"}, tree{"field": "cylinders[0].readings[6]", "value": "78.03 mm"},
		})
		put(t, j, "counted.readings", len(cylinderOf(j, 0)["readings"].([]any)))
		return j
	}
	if front := frontOf(t, worn()); !strings.Contains(front, "SETTLED BY: which side has worn") || !strings.Contains(front, "a gasket for +0.5 mm") {
		t.Error(front)
	}
	if r := rowOf(t, mustPlan(t, worn()), "cylinders[0].route"); len(r.Give) == 0 || r.Give[0] != "cylinders[0].wear_share" {
		t.Errorf("the route leads to %v", r.Give)
	}
	known := worn()
	put(t, known, "not_known", []any{})
	put(t, known, "cylinders.0.wear_share", 0.5)
	if front := frontOf(t, known); strings.Contains(front, "SETTLED BY") {
		t.Error(front)
	}
}
