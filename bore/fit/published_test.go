// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"errors"
	"testing"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

func mm(s string) units.Length   { return units.MustParseLength(s + " mm") }
func inch(s string) units.Length { return units.MustParseLength(s + " in") }

func exact(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }

func near(a, b, tolerance units.Length) bool { return (a - b).Abs() <= tolerance }

// grows returns a material with nothing known but its expansion, in millionths a kelvin.
func grows(millionths float64) material.Material {
	return material.Material{Expansion: units.Expansion(millionths * 1e-6)}
}

func TestFinishWindow(t *testing.T) {
	for _, test := range []struct {
		source                  string
		piston                  units.Length
		clearance, want, inches units.Limits
	}{
		// P + C, the workshop formula printed in several manuals (common practice); numbers computed.
		{"common practice", mm("95.455"), units.Limits{Min: mm("0.0245"), Max: mm("0.0245")},
			units.Limits{Min: mm("95.4795"), Max: mm("95.4795")}, units.Limits{}},
		// The printed fit of a light engine: 0.025 to 0.045 mm at 20 °C, 0.0010 to 0.0018 in.
		{"US Army TM 10-3930-653-14&P", mm("66.970"), units.Limits{Min: mm("0.025"), Max: mm("0.045")},
			units.Limits{Min: mm("66.995"), Max: mm("67.015")}, units.Limits{Min: inch("0.0010"), Max: inch("0.0018")}},
	} {
		w, err := fit.FinishWindow(fit.Piston{Size: exact(test.piston)}, test.clearance)
		if err != nil || w != test.want {
			t.Errorf("%s: piston %v, clearance %v: %v, %v; want %v", test.source, test.piston, test.clearance, w, err, test.want)
		}
		in := units.Limits{Min: test.clearance.Min.Round(units.Tenth), Max: test.clearance.Max.Round(units.Tenth)}
		if !test.inches.IsZero() && in != test.inches {
			t.Errorf("%s: clearance %v is %v, printed %v", test.source, test.clearance, in, test.inches)
		}
	}
}

func TestFeeler(t *testing.T) {
	// US Army TM 9-2815-202-34, p. 6-36: a 0.004 in strip drawn out with 6 lb means 0.005 in.
	six := 6 * units.PoundForce
	rule := fit.FeelerRule{Pull: six, Adds: inch("0.001")}
	c, err := rule.Clearance(inch("0.004"), six)
	if want := (units.Limits{Min: inch("0.005"), Max: inch("0.005")}); err != nil || c != want {
		t.Errorf("%v, %v; want %v", c, err, want)
	}
	if got := six.In(units.Newton); got < 26.65 || got > 26.75 { // "26.7 N"
		t.Errorf("6 lbf is %v N", got)
	}
	// The same pull as a newton and a kilogram scale show it, and as text keeps it.
	var back units.Force
	text, err := six.MarshalText()
	if err != nil || back.UnmarshalText(text) != nil {
		t.Fatal(err)
	}
	both := units.Limits{Min: inch("0.005"), Max: inch("0.005")}
	for _, same := range []units.Force{26.7 * units.Newton, 2.72 * 9.80665 * units.Newton, back, six * 0.991, six * 1.009} {
		if c, err := rule.Clearance(inch("0.004"), same); err != nil || c != both {
			t.Errorf("pull %v: %v, %v; want %v", same, c, err, both)
		}
	}
	// A hundredth itself is still the same, in numbers that have no rounding.
	rule.Pull = 100 * units.Newton
	for _, same := range []units.Force{99 * units.Newton, 100 * units.Newton} {
		if c, err := rule.Clearance(inch("0.004"), same); err != nil || c != both {
			t.Errorf("pull %v: %v, %v; want %v", same, c, err, both)
		}
	}
	rule.Pull = six
	for _, test := range []struct {
		pull units.Force
		want units.Limits
	}{{six * 0.98, units.Limits{Min: inch("0.005")}}, {six * 1.02, units.Limits{Max: inch("0.005")}}, {six / 2, units.Limits{Min: inch("0.005")}}, {six * 2, units.Limits{Max: inch("0.005")}}} {
		if c, err := rule.Clearance(inch("0.004"), test.pull); err != nil || c != test.want {
			t.Errorf("pull %v: %v, %v; want %v", test.pull, c, err, test.want)
		}
	}
}

func TestClearancePerBore(t *testing.T) {
	for _, test := range []struct {
		source           string
		clearance, bore  units.Length
		perBore, percent float64
	}{
		{"US Army TM 9-2320-289-34, Table 3-1, least", inch("0.0035"), inch("3.979"), 0.00088, 1},
		{"US Army TM 9-2320-289-34, Table 3-1, greatest", inch("0.0045"), inch("3.979"), 0.00113, 1},
		{"US Army TM 9-2815-202-34, new, least", inch("0.0045"), inch("4.25"), 0.00106, 1},
		{"US Army TM 9-2815-202-34, new, greatest", inch("0.0083"), inch("4.25"), 0.00195, 1},
		{"US Army TM 9-2815-202-34, worn", inch("0.0120"), inch("4.25"), 0.00282, 1},
		{"common practice, large forged two-stroke", inch("0.003"), mm("73"), 0.00104, 1},
		{"common practice, small cast four-stroke", mm("0.0127"), mm("50"), 0.00025, 2},
	} {
		c, err := fit.Clearance(exact(test.bore+test.clearance), fit.Piston{Size: exact(test.bore)})
		if err != nil || c.Value != test.clearance {
			t.Errorf("%s: %v, %v; want %v", test.source, c, err, test.clearance)
		}
		if got := c.Value.In(test.bore); got < test.perBore*(1-test.percent/100) || got > test.perBore*(1+test.percent/100) {
			t.Errorf("%s: %v of the bore, printed %v", test.source, got, test.perBore)
		}
	}
	// Common practice: 0.001 of the bore, a ratio without unit.
	w, err := fit.Usual(fit.CastAir, mm("67"))
	if want := (units.Limits{Min: mm("0.067"), Max: mm("0.1005")}); err != nil || w != want {
		t.Errorf("usual, cast, air-cooled, 67 mm: %v, %v; want %v", w, err, want)
	}
	// One manual prints 0.0040 in as 0.112 mm; it is 0.1016 mm (US Army TM 9-2320-289-34).
	if l := inch("0.0040"); l != mm("0.1016") {
		t.Errorf("0.0040 in is %v", l)
	}
}

func TestHotClearance(t *testing.T) {
	for _, test := range []struct {
		source                   string
		bore, clearance          string
		boreGrowth, pistonGrowth float64
		boreAt, pistonAt         units.Temperature
		want                     string
		tolerance                units.Length
	}{
		// D(1 + αb·ΔTb) − (D − c)(1 + αp·ΔTp), computed, printed to 1 nm or 0.01 µm.
		{"computed, iron bore", "67", "0.040", 11.4, 21.5, kelvins(60), kelvins(60), "-0.00055", 5 * units.Nanometre},
		{"computed, aluminium bore", "67", "0.030", 21.5, 21.5, kelvins(100), kelvins(120), "0.00127", 5 * units.Nanometre},
		{"computed, at 35 °C", "87.5", "0.060", 11.4, 21.5, kelvins(15), kelvins(15), "0.0467631", units.Nanometre / 10},
		{"computed, at 8 °C", "87.5", "0.060", 11.4, 21.5, kelvins(-12), kelvins(-12), "0.07058952", units.Nanometre / 100},
	} {
		w := fit.Warm{BoreAt: test.boreAt, PistonAt: test.pistonAt, Bore: grows(test.boreGrowth), Piston: grows(test.pistonGrowth)}
		c, err := w.HotClearance(exact(mm(test.bore)), fit.Piston{Size: exact(mm(test.bore) - mm(test.clearance))})
		if err != nil || c.Std != 0 || !near(c.Value, mm(test.want), test.tolerance) {
			t.Errorf("%s: %v, %v; want %v mm", test.source, c.Value, err, test.want)
		}
	}
}

// kelvins returns a temperature so far above 20 °C.
func kelvins(k units.TemperatureChange) units.Temperature {
	return units.ReferenceTemperature.Add(k)
}

func TestSkirtIsMeasuredSquareToThePin(t *testing.T) {
	// US Army TM 9-2815-226-34-1, p. 3-143: clearance counts from the skirt square to the pin.
	p := fit.Piston{Size: exact(mm("66.97")), Axis: fit.AlongPin}
	if _, err := fit.FinishWindow(p, units.Limits{Min: mm("0.03"), Max: mm("0.05")}); !errors.Is(err, units.ErrRange) {
		t.Errorf("a piston measured along its pin: %v", err)
	}
}
