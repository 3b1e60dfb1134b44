// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/material"
)

// named returns a metal by its name.
func named(name string) material.Material {
	m, err := material.ByName(name)
	if err != nil {
		panic(err)
	}
	return m
}

// figures are a metal's modulus and strengths as American handbooks print them, from memory: in millions and in thousands of
// pounds a square inch, so that they are not the table's figures again; zero where the table has none.
var figures = []struct {
	m                         material.Material
	least, greatest           float64 // modulus, 10⁶ lbf/in²
	tensile, yield            float64 // 10³ lbf/in²
	poisson                   float64
	gpa, mpa, yieldMPa, ratio float64 // what the table has
	source                    string
}{
	{material.GreyIron(), 13, 16.4, 30, 0, 0.26, 100, 207, 0, 0.26, "ASTM A48, class 30: its name is the least tensile strength; modulus of class 30 and grade G3000"},
	{named("ductile iron"), 24, 24.8, 60, 40, 0.29, 168, 414, 276, 0.30, "ASTM A536, grade 60-40-18: its name is the least strengths and the elongation"},
	{material.PlainSteel(), 30, 30, 55, 30, 0.30, 207, 380, 210, 0.30, "SAE J1397, 1020 hot-rolled, least"},
	{named("alloy steel"), 30, 30, 95, 60.5, 0.30, 207, 655, 417, 0.30, "4140, annealed"},
	{material.GaugeSteel(), 30, 30, 0, 0, 0.30, 207, 0, 0, 0.30, "as steel"},
	{named("cast aluminium-silicon, hypoeutectic"), 10.5, 10.5, 33, 24, 0.33, 72.4, 228, 164, 0.33, "356.0-T6, sand cast"},
	{material.EutecticAluminium(), 11.6, 11.6, 0, 0, 0.33, 80, 0, 0, 0.33, "casting alloys of 12 % silicon"},
	{named("cast aluminium-silicon, hypereutectic"), 11.8, 11.8, 0, 0, 0.33, 81, 0, 0, 0.33, "390.0"},
	{named("wrought aluminium 4032"), 11.4, 11.4, 55, 46, 0.33, 79, 380, 315, 0.33, "4032-T6"},
	{named("wrought aluminium 2618"), 10.8, 10.8, 64, 54, 0.33, 74, 440, 370, 0.33, "2618-T61"},
	{material.AluminiumBlock(), 10.7, 10.7, 27, 18, 0.33, 74, 185, 125, 0.33, "319.0-F, sand cast"},
	{named("bronze"), 14.5, 14.5, 35, 18, 0.34, 100, 240, 125, 0.34, "C93200, sand cast"},
}

// TestStrengths holds every modulus, ratio and strength to its row.
func TestStrengths(t *testing.T) {
	const inch, pound, gravity = 0.0254, 0.45359237, 9.80665
	const psi = pound * gravity / (inch * inch) // Pa, exactly
	off := func(got, want float64) float64 {
		if want == 0 {
			return math.Abs(got)
		}
		return math.Abs(got/want - 1)
	}
	for _, f := range figures {
		gpa, mpa, yield := f.m.Young.In(units.Gigapascal), f.m.Tensile.In(units.Megapascal), f.m.Yield.In(units.Megapascal)
		if gpa*1e9 < f.least*1e6*psi*0.992 || gpa*1e9 > f.greatest*1e6*psi*1.008 {
			t.Errorf("%s: modulus %v GPa, %s: %.1f to %.1f", f.m.Name, gpa, f.source, f.least*psi/1e3, f.greatest*psi/1e3)
		}
		if off(mpa*1e6, f.tensile*1e3*psi) > 0.008 || off(yield*1e6, f.yield*1e3*psi) > 0.016 {
			t.Errorf("%s: strengths %v and %v MPa, %s: %.1f and %.1f", f.m.Name, mpa, yield, f.source, f.tensile*psi/1e3, f.yield*psi/1e3)
		}
		if math.Abs(f.m.Poisson-f.poisson) > 0.0101 {
			t.Errorf("%s: Poisson's ratio %v, %s: %v", f.m.Name, f.m.Poisson, f.source, f.poisson)
		}
		// As they stand: a table that moves shows here.
		if off(gpa, f.gpa) > 1e-12 || off(mpa, f.mpa) > 1e-12 || off(yield, f.yieldMPa) > 1e-12 || f.m.Poisson != f.ratio {
			t.Errorf("%s: %v GPa, %v, %v and %v MPa", f.m.Name, gpa, f.m.Poisson, mpa, yield)
		}
	}
	if len(figures) != len(material.Names()) {
		t.Errorf("%d rows for %d metals", len(figures), len(material.Names()))
	}
}

// TestStandardGrades: EN 1561 and EN 1563 as read in a table of material cards that comes with an open-source design program:
// grey iron EN-GJL-200, 105 GPa and 200 MPa; ductile iron EN-GJS-400-15, 167 GPa, 400 and 250 MPa; EN 10083-1: steel 1C22, 210 GPa, 400 and 230
// MPa; 6061-T6 69 GPa. The metals of the table are neighbours of these grades: 5 % in modulus, 10 % in strength.
func TestStandardGrades(t *testing.T) {
	for _, c := range []struct {
		m                   material.Material
		gpa, tensile, yield float64
	}{
		{material.GreyIron(), 105, 200, 0},
		{named("ductile iron"), 167, 400, 250},
		{material.PlainSteel(), 210, 400, 230},
		{named("cast aluminium-silicon, hypoeutectic"), 69, 0, 0},
	} {
		if r := c.m.Young.In(units.Gigapascal) / c.gpa; math.Abs(r-1) > 0.05 {
			t.Errorf("%s: modulus %v, %v GPa printed", c.m.Name, c.m.Young, c.gpa)
		}
		for _, s := range [...][2]float64{{c.m.Tensile.In(units.Megapascal), c.tensile}, {c.m.Yield.In(units.Megapascal), c.yield}} {
			if s[1] != 0 && math.Abs(s[0]/s[1]-1) > 0.11 {
				t.Errorf("%s: strength %v, %v MPa printed", c.m.Name, s[0], s[1])
			}
		}
	}
}

// TestRangesOfExpansion: over what temperatures a coefficient is the mean is said where its source says it: ISO 3650 for
// gauge steel (10 to 30 °C), 20 to 100 °C for light alloys; all from memory. For the others it is not known.
func TestRangesOfExpansion(t *testing.T) {
	said := map[string][2]float64{
		"gauge steel": {10, 30}, "cast aluminium-silicon, eutectic": {20, 100}, "wrought aluminium 4032": {20, 100},
		"wrought aluminium 2618": {20, 100}, "aluminium block": {20, 100},
	}
	for _, name := range material.Names() {
		m, err := material.ByName(name)
		check(t, err)
		if r, ok := said[name]; !ok {
			if !m.From.IsZero() || !m.To.IsZero() {
				t.Errorf("%s: %v to %v", name, m.From, m.To)
			}
		} else if math.Abs(m.From.Celsius()-r[0]) > 1e-9 || math.Abs(m.To.Celsius()-r[1]) > 1e-9 {
			t.Errorf("%s: %v to %v, want %v to %v °C", name, m.From, m.To, r[0], r[1])
		}
	}
}
