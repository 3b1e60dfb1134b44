// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"fmt"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/units"
)

// dear is a bored job with a smaller size on offer, which the worn bore clears by some micrometres, and its standard known
// so well.
func dear(t *testing.T, standard float64) tree {
	j := finished(true, false)
	put(t, j, "cylinders.0.proof", []any{})
	put(t, j, "counted.proof", 0)
	put(t, j, "cylinders.0.wear_share", 0.5)
	piston := tree{"size": "80.2155 ± 0.002 mm", "axis": "across pin", "coating": "0 mm"}
	smaller := tree{"over": "0.3 mm", "makers_list": true, "pistons": []any{piston}}
	put(t, j, "engine.oversizes", []any{smaller, j["engine"].(tree)["oversizes"].([]any)[0]})
	put(t, j, "gauge.standard.size", fmt.Sprintf("80.002 ± %.4f mm", standard))
	return j
}

// TestDoubtHasItsPrice: a size that is refused for doubt alone is named with the doubt that would let it through, and a
// better standard, no reading changed, does.
func TestDoubtHasItsPrice(t *testing.T) {
	s := mustPlan(t, dear(t, 0.009))
	p := rowOf(t, s, "cylinders[0].route").Price
	if p == nil || p.Route != oversize.BoreOversize || p.Over != 300*units.Micrometre || p.Would >= p.Now || s.Choice.Over != units.Millimetre/2 {
		t.Fatalf("price %+v, chosen +%v", p, s.Choice.Over)
	}
	text := asPrinted(t, s)
	if said := unbroken(text); !strings.Contains(said, "+0.3 mm could do") {
		t.Error("the sheet does not say what doubt costs")
	}
	through := 0
	for standard := 0.001; standard < 0.009; standard += 0.0005 {
		s := mustPlan(t, dear(t, standard))
		now, err := s.Cylinders[0].CleanUp.Original.Max.Expanded(0.95)
		if err != nil {
			t.Fatal(err)
		}
		off := float64(now-p.Would) / float64(p.Would)
		if smaller := s.Choice.Over == p.Over; off < -0.02 && !smaller || off > 0.02 && smaller {
			t.Errorf("known to ± %v, ± %v would do: +%v", now, p.Would, s.Choice.Over)
		} else if smaller {
			through++
			if rowOf(t, s, "cylinders[0].route").Price != nil {
				t.Error("a price where nothing is to be had")
			}
		}
	}
	if through == 0 {
		t.Error("no doubt tried was small enough")
	}
}
