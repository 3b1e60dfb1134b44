// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"math"
	"strings"
	"testing"

	"borewright.example/units"
	"borewright.example/units/material"
)

// The values of this file come from outside the project; each row names its source. "Computed" values were computed
// independently, with exact fractions or 20 and more digits, from the inputs shown.

const (
	ppm = 1e-6 * units.PerKelvin
	mm  = units.Millimetre
)

func length(t testing.TB, s string) units.Length {
	t.Helper()
	l, err := units.ParseLength(s)
	check(t, err)
	return l
}

func celsius(t testing.TB, x float64) units.Temperature {
	t.Helper()
	c, err := units.Celsius(x)
	check(t, err)
	return c
}

func check(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestSizesAt20(t *testing.T) {
	for _, c := range []struct {
		size   string
		at     float64
		alpha  units.Expansion
		want   string // rounded to a picometre
		source string
	}{
		{"87.5350 mm", 35, 11.4 * ppm, "87.520034074 mm", "l/(1 + α·ΔT) = 87.520034074173, computed"},
		{"95.250 mm", 31, 10.6 * ppm, "95.238895145 mm", "95.238895144826, computed"},
		{"87.5350 mm", 20, 11.4 * ppm, "87.5350 mm", "ISO 1: 20 °C is the reference"},
	} {
		m := material.Material{Expansion: c.alpha}
		got, err := m.SizeAt20(length(t, c.size), celsius(t, c.at))
		if want := length(t, c.want); got != want || err != nil {
			t.Errorf("%s at %v °C: %v, %v, want %v (%s)", c.size, c.at, got, err, want, c.source)
		}
		back, err := m.SizeAt(got, celsius(t, c.at))
		if want := length(t, c.size); (back-want).Abs() > 1 || err != nil {
			t.Errorf("%v at 20 °C: %v, %v, want %v", got, back, err, want)
		}
	}
	// The first-order shortcut l·(1 − α·ΔT) gives 87.520031515: it is not what is computed here.
	got, err := material.Material{Expansion: 11.4 * ppm}.SizeAt20(length(t, "87.5350 mm"), celsius(t, 35))
	if off := got - length(t, "87.520031515 mm"); off < 2*units.Nanometre || off > 3*units.Nanometre || err != nil {
		t.Errorf("%v from the shortcut, %v", off, err)
	}
}

// A bore of 87.500 mm (11.4e-6/K) and a piston of 87.440 mm (21.5e-6/K), both sizes at 20 °C; clearances computed.
func TestClearanceAtTemperature(t *testing.T) {
	for _, c := range []struct {
		at   float64
		want string
	}{{20, "0.060 mm"}, {35, "0.0467631 mm"}, {8, "0.07058952 mm"}} {
		bore, err := material.Material{Expansion: 11.4 * ppm}.SizeAt(length(t, "87.500 mm"), celsius(t, c.at))
		check(t, err)
		piston, err := material.Material{Expansion: 21.5 * ppm}.SizeAt(length(t, "87.440 mm"), celsius(t, c.at))
		check(t, err)
		if got, want := bore-piston, length(t, c.want); (got - want).Abs() > units.Picometre {
			t.Errorf("clearance at %v °C: %v, want %v", c.at, got, want)
		}
	}
}

// A sleeve of 73 mm chilled by 98 K shrinks by 0.0816 mm (11.4e-6/K, computed to that digit).
func TestChilledSleeve(t *testing.T) {
	cold, err := material.Material{Expansion: 11.4 * ppm}.SizeAt(73*mm, units.ReferenceTemperature.Add(-98*units.Kelvin))
	if got := (73*mm - cold).Format(mm, 4); got != "0.0816 mm" || err != nil {
		t.Errorf("shrinks by %s, %v", got, err)
	}
}

// comparisons are worked with all four temperatures apart.
var comparisons = []struct {
	c      material.Comparison
	at     [4]float64 // °C: standard, gauge when set, gauge in use, part
	want   string
	source string
}{
	{
		// The simplified model, in which the whole reading stands at the gauge's temperature: no deviation, gauge steady.
		material.Comparison{Standard: 87_512 * units.Micrometre, StandardExpansion: 11.5 * ppm, PartExpansion: 11.4 * ppm},
		[4]float64{22, 22, 22, 30},
		"87.504037316 mm", "87.504037315746, computed",
	},
	{
		material.Comparison{
			Standard: 87_500 * units.Micrometre, Deviation: 12 * units.Micrometre,
			StandardExpansion: 11.5 * ppm, GaugeExpansion: 11.7 * ppm, PartExpansion: 11.2 * ppm,
		},
		[4]float64{23, 23.5, 28, 31},
		"87.508844694 mm", "87.50884469427085, computed",
	},
	{
		material.Comparison{
			Standard: 67 * mm, Deviation: -21 * units.Micrometre,
			StandardExpansion: 11.5 * ppm, GaugeExpansion: 12.3 * ppm, PartExpansion: 21.5 * ppm,
		},
		[4]float64{18, 18, 24, 41},
		"66.952174579 mm", "66.95217457945158, computed",
	},
	{
		material.Comparison{
			Standard: units.Length(3.5 * units.PerInch), Deviation: -5 * units.Tenth,
			StandardExpansion: 11.5 * ppm, GaugeExpansion: 1.6 * ppm, PartExpansion: 11.2 * ppm,
		},
		[4]float64{15, 16, 12, 5},
		"88.896553944 mm", "3.49986432849518719 in, computed",
	},
}

func TestComparisons(t *testing.T) {
	for _, c := range comparisons {
		c.c.StandardAt, c.c.GaugeSetAt, c.c.GaugeUseAt, c.c.PartAt = celsius(t, c.at[0]), celsius(t, c.at[1]), celsius(t, c.at[2]), celsius(t, c.at[3])
		if got, err := c.c.SizeAt20(); got != length(t, c.want) || err != nil {
			t.Errorf("%+v: %v, %v, want %s (%s)", c.c, got, err, c.want, c.source)
		}
	}
}

// TestDialReading: an aluminium bore that measures 67.030 mm at 45 °C is 66.994 mm at 20 °C (computed).
func TestDialReading(t *testing.T) {
	now := atRest(length(t, "67 mm"))
	now.PartAt, now.PartExpansion, now.Deviation = celsius(t, 45), 21.5e-6, length(t, "1 mm")
	d, err := now.DialReading(length(t, "66.994 mm"))
	if err != nil || (d-length(t, "0.030 mm")).Abs() > units.Micrometre/20 {
		t.Errorf("%v, %v; want 0.030 mm", d, err)
	}
}

// TestTable holds the table to the figures that were read: Callister & Rethwisch, Table B.6; Swyt, J. Res. NIST 99 (1994) 31
// (steel 11.5); public data sheets of 390.0 (18) and A390.0 (20); another handbook's grey iron (6e-6/°F). Each must lie
// within the spread that the table gives.
func TestTable(t *testing.T) {
	for _, c := range []struct {
		m    material.Material
		read []float64 // 1e-6/K
	}{
		{material.GreyIron(), []float64{11.4, 11.2, 10.6, 6 * 1.8}},
		{named("ductile iron"), []float64{11.2, 10.6}},
		{material.PlainSteel(), []float64{11.7, 11.3, 11.5}},
		{named("alloy steel"), []float64{12.3, 12.3}},
		{named("cast aluminium-silicon, hypoeutectic"), []float64{21.5}},
		{named("cast aluminium-silicon, hypereutectic"), []float64{18, 20}},
	} {
		for _, x := range c.read {
			if off := math.Abs(c.m.Expansion.In(ppm) - x); off > c.m.Within.In(ppm) {
				t.Errorf("%s: %v ± %v does not reach %v", c.m.Name, c.m.Expansion, c.m.Within, x)
			}
		}
	}
}

func TestNames(t *testing.T) {
	names := material.Names()
	seen := map[string]bool{}
	for _, name := range names {
		m, err := material.ByName(name)
		if err != nil || m.Name != name || seen[name] || strings.ToLower(name) != name {
			t.Errorf("%q: %+v, %v", name, m, err)
		}
		seen[name] = true
		// Metals, in plausible units.
		if m.Expansion < 5*ppm || m.Expansion > 30*ppm || m.Within < ppm || m.Young < 60*units.Gigapascal || m.Young > 220*units.Gigapascal ||
			m.Poisson < 0.25 || m.Poisson > 0.35 || m.Source == "" || m.Tensile < m.Yield || m.From.IsZero() != m.To.IsZero() || m.From > m.To {
			t.Errorf("%+v", m)
		}
	}
	if len(names) != 12 {
		t.Errorf("%d materials", len(names))
	}
	names[0] = "changed"
	if material.Names()[0] == "changed" {
		t.Error("Names shares its slice")
	}
}
