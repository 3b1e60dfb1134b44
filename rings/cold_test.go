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
	"borewright.example/units/uncertainty"
)

// iron is a grey iron ring in a grey iron bore at temperatures in °C.
func iron(ring, bore float64) rings.Heat {
	m := material.Material{Name: "iron", Expansion: 11.4e-6}
	return rings.Heat{Ring: m, Bore: m, RingAt: must(units.Celsius(ring)), BoreAt: must(units.Celsius(bore))}
}

// TestColdAgainstCold: a ring of 67 mm, 180 K hotter, in a bore 120 K hotter, all 11.4e-6/K, loses 0.1440 mm of its gap (0.268 mm
// leaves 0.1240; computed). So 0.050 mm hot asks for 0.1940 mm cold, and 0.268 mm has it.
func TestColdAgainstCold(t *testing.T) {
	h := iron(200, 140)
	f := must(h.JudgeCold(exact("0.268 mm"), exact("67 mm"), length("0.050 mm"), uncertainty.Risk{}))
	near(t, "least cold gap", f.Limits.Min, "0.1940 mm", "0.0001 mm")
	if f.Measured != exact("0.268 mm") || f.Verdict != uncertainty.Within || f.Limits.HasMax() || f.Subject == "" {
		t.Errorf("%+v", f)
	}
	if f := must(h.JudgeCold(exact("0.193 mm"), exact("67 mm"), length("0.050 mm"), uncertainty.Risk{})); f.Verdict != uncertainty.Beyond {
		t.Errorf("%+v", f)
	}
	// In an aluminium barrel the gap opens, and the margin itself is the least.
	h.Bore.Expansion = 21.5e-6
	if f := must(h.JudgeCold(exact("0.051 mm"), exact("67 mm"), length("0.050 mm"), uncertainty.Risk{})); f.Limits.Min != length("0.050 mm") || f.Verdict != uncertainty.Within {
		t.Errorf("%+v", f)
	}
	// A margin of nothing still wants a gap.
	if f := must(h.JudgeCold(exact("0.051 mm"), exact("67 mm"), 0, uncertainty.Risk{})); f.Limits.Min != 1 || f.Verdict != uncertainty.Within {
		t.Errorf("%+v", f)
	}
	for _, tt := range []struct {
		cold, bore uncertainty.Estimate
		margin     units.Length
		heat       rings.Heat
		want       error
	}{
		{exact("0 mm"), exact("67 mm"), 1, h, rings.ErrOverlap},
		{exact("0.3 mm"), exact("0 mm"), 1, h, rings.ErrSize},
		{exact("0.3 mm"), exact("67 mm"), -1, h, rings.ErrGap},
		{exact("0.3 mm"), exact("67 mm"), 1, rings.Heat{}, units.ErrNotGiven},
	} {
		if _, err := tt.heat.JudgeCold(tt.cold, tt.bore, tt.margin, uncertainty.Risk{}); !errors.Is(err, tt.want) {
			t.Errorf("%v in %v: %v", tt.cold, tt.bore, err)
		}
	}
}

// TestColdIsHot: where the gap closes, judging the cold gap against the least cold one is judging the hot gap against the
// margin: the same verdict, the same spare, the same doubt.
func TestColdIsHot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGap(t)
		h := iron(rapid.Float64Range(100, 300).Draw(t, "ring"), rapid.Float64Range(30, 100).Draw(t, "bore at"))
		h.Ring.Within = 1e-6
		h.RingWithin, h.BoreWithin = 20*units.Kelvin, 10*units.Kelvin
		margin := draw(t, "margin", 1, 100*µm, 1)
		cold, err := h.JudgeCold(g.Measured, g.Bore, margin, uncertainty.Risk{})
		if err != nil {
			t.Fatal(err)
		}
		gap, err := h.Hot(g.Measured, g.Bore)
		if err != nil && !errors.Is(err, rings.ErrButts) {
			t.Fatal(err)
		}
		hot, err := uncertainty.Judge(gap, units.Limits{Min: margin}, uncertainty.Risk{})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "spare", cold.Measured.Value-cold.Limits.Min, gap.Value-margin, 2)
		within(t, "doubt", cold.Measured.Std, gap.Std, 2)
		if d := cold.Conform - hot.Conform; d > 1e-6 || d < -1e-6 {
			t.Fatalf("cold %v %v, hot %v %v", cold.Verdict, cold.Conform, hot.Verdict, hot.Conform)
		}
	})
}

// A gap of 0.282 mm stands beside the least that leaves 0.050 mm when hot, both at 20 °C.
func ExampleHeat_JudgeCold() {
	heat := rings.Heat{
		Ring: material.GreyIron(), Bore: material.GreyIron(),
		RingAt: must1(units.Celsius(180)), BoreAt: must1(units.Celsius(140)), RingWithin: 15 * units.Kelvin, BoreWithin: 15 * units.Kelvin,
	}
	cold := uncertainty.Estimate{Value: units.MustParseLength("0.282 mm"), Std: units.MustParseLength("0.010 mm")}
	f := must1(heat.JudgeCold(cold, atDiameter("78.5 mm"), units.MustParseLength("0.050 mm"), uncertainty.Risk{}))
	fmt.Println("it has", f.Measured, "and wants", f.Limits.Min.Format(units.Millimetre, 3), f.Verdict)
	// Output:
	// it has 0.282 ± 0.089 mm and wants 0.160 mm within
}
