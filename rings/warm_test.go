// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
)

// iron is a grey iron ring in a grey iron bore at temperatures in °C.
func iron(ring, bore float64) rings.Warm {
	m := material.Material{Name: "iron", Expansion: 11.4e-6}
	return rings.Warm{Ring: m, Bore: m, RingAt: must(units.Celsius(ring)), BoreAt: must(units.Celsius(bore))}
}

// TestColdAgainstCold: a ring of 67 mm, 180 K hotter, in a bore 120 K hotter, all 11.4e-6/K, loses 0.1440 mm of its gap (0.268 mm
// leaves 0.1240; computed). So 0.050 mm hot asks for 0.1940 mm cold.
func TestColdAgainstCold(t *testing.T) {
	w := iron(200, 140)
	near(t, "least cold gap", must(w.Least(length("67 mm"), length("0.050 mm"))).Value, "0.1940 mm", "0.0001 mm")
	// In an aluminium barrel the gap opens, and the margin itself is the least.
	w.Bore.Expansion = 21.5e-6
	if l := must(w.Least(length("67 mm"), length("0.050 mm"))); l.Value != length("0.050 mm") {
		t.Errorf("%v", l)
	}
}

// TestColdIsHot: where the gap closes, a cold gap has as much over the least cold one as the hot gap has over the margin.
func TestColdIsHot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGap(t)
		w := iron(rapid.Float64Range(100, 300).Draw(t, "ring"), rapid.Float64Range(30, 100).Draw(t, "bore at"))
		w.Ring.Within = 1e-6
		w.RingWithin, w.BoreWithin = 20*units.Kelvin, 10*units.Kelvin
		margin := draw(t, "margin", 1, 100*µm, 1)
		least, err := w.Least(g.Bore.Value, margin)
		if err != nil {
			t.Fatal(err)
		}
		hot, err := w.HotGap(g.Measured, g.Bore)
		if err != nil && !errors.Is(err, rings.ErrButts) {
			t.Fatal(err)
		}
		within(t, "spare", g.Measured.Value-least.Value, hot.Value-margin, 2)
	})
}

// A gap of 0.282 mm stands beside the least that leaves 0.050 mm when hot, both at 20 °C.
func ExampleWarm_Least() {
	warm := rings.Warm{
		Ring: material.GreyIron(), Bore: material.GreyIron(),
		RingAt: must1(units.Celsius(180)), BoreAt: must1(units.Celsius(140)), RingWithin: 15 * units.Kelvin, BoreWithin: 15 * units.Kelvin,
	}
	least := must1(warm.Least(units.MustParseLength("78.5 mm"), units.MustParseLength("0.050 mm")))
	fmt.Println("it has 0.282 mm and wants", least.Value.Format(units.Millimetre, 3))
	// Output:
	// it has 0.282 mm and wants 0.160 mm
}
