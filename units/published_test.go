// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"encoding/csv"
	"math"
	"os"
	"testing"

	"borewright.example/units"
)

// The values of this file come from outside the project; each row names its source. "Computed" rows were
// computed independently, in exact fractions or with 20 and more digits, from the inputs shown.

func length(t testing.TB, s string) units.Length {
	t.Helper()
	l, err := units.ParseLength(s)
	if err != nil {
		t.Fatal(err)
	}
	return l
}

// equalTexts are two ways to write one length, exactly.
var equalTexts = []struct{ a, b, source string }{
	{"1 in", "25.4 mm", "ANSI/IEEE 268: the inch is 25.4 mm exactly"},
	{"1 thou", "25.4 µm", "ANSI/IEEE 268"},
	{"1 µin", "0.0254 µm", "ANSI/IEEE 268"},
	{"1/64 in", "0.015625 in", "decimal-equivalent tables of handbooks"},
	{"1/64 in", "0.396875 mm", "decimal-equivalent tables of handbooks"},
	{"16 µin", "0.4064 µm", "computed"},
	{"0.010 in", "0.254 mm", "computed: an oversize of 0.25 mm is not one of 0.010 in"},
	{"3 uin", "0.0762 um", "Machinery's Handbook 31st ed. p. 1338, honed surfaces 3 to 50 µin"},
	{"50 uin", "1.27 um", "Machinery's Handbook 31st ed. p. 1338"},
	{"0.003 in", "0.0762 mm", "computed"},
	{"0.0040 in", "0.1016 mm", "computed; US Army TM 9-2320-289-34 Table 3-1 prints 0.112 mm, a slip"},
}

func TestEqualTexts(t *testing.T) {
	for _, c := range equalTexts {
		if a, b := length(t, c.a), length(t, c.b); a != b {
			t.Errorf("%s = %v, %s = %v (%s)", c.a, a, c.b, b, c.source)
		}
	}
	// 0.03937 in is not a millimetre, though tables round it so.
	if length(t, "0.03937 in") == units.Millimetre {
		t.Error("0.03937 in came out as 1 mm")
	}
}

// printed are conversions as a source prints them, to the last printed digit.
var printed = []struct {
	length string
	unit   units.Length
	places int
	want   string
	source string
}{
	{"67.000 mm", units.Inch, 5, "2.63780 in", "US Army TM 9-6115-670-14&P, 6.30 (prints 2.63779, cut off)"},
	{"67.019 mm", units.Inch, 5, "2.63854 in", "US Army TM 9-6115-670-14&P, 6.30"},
	{"0.15 mm", units.Inch, 4, "0.0059 in", "US Army TM 9-6115-670-14&P, 6.30"},
	{"99.950 mm", units.Inch, 4, "3.9350 in", "US Army TM 5-3895-382-24, liner hone specifications"},
	{"100.012 mm", units.Inch, 4, "3.9375 in", "US Army TM 5-3895-382-24"},
	{"100.017 mm", units.Inch, 4, "3.9377 in", "US Army TM 5-3895-382-24"},
	{"73.01 mm", units.Inch, 5, "2.87441 in", "computed; US Army TM 5-4320-304-14 prints 2.8774, a slip"},
	{"0.25 mm", units.Inch, 5, "0.00984 in", "computed"},
	{"0.50 mm", units.Inch, 5, "0.01969 in", "computed"},
	{"0.75 mm", units.Inch, 5, "0.02953 in", "computed"},
	{"1.00 mm", units.Inch, 5, "0.03937 in", "computed"},
}

func TestPrintedConversions(t *testing.T) {
	for _, c := range printed {
		if got := length(t, c.length).Format(c.unit, c.places); got != c.want {
			t.Errorf("%s is %s, want %s (%s)", c.length, got, c.want, c.source)
		}
	}
}

// TestInchFractions reads all of testdata/inch_fractions_64.csv: exact decimals of n/64 in, computed with
// exact fractions, in agreement with published decimal-equivalent tables.
func TestInchFractions(t *testing.T) {
	f, err := os.Open("testdata/inch_fractions_64.csv")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 65 {
		t.Fatalf("%d rows, want a heading and 64", len(rows))
	}
	for i, row := range rows[1:] {
		want := units.Length(i+1) * units.Inch / 64
		fraction, decimal, metric := length(t, row[1]+" in"), length(t, row[2]+" in"), length(t, row[3]+" mm")
		if fraction != want || decimal != want || metric != want {
			t.Errorf("%v: %v, %v, %v, want %v", row, fraction, decimal, metric, want)
		}
		if got := want.Format(units.Inch, 6); got != row[2]+" in" {
			t.Errorf("%d/64 in prints as %s, want %s in", i+1, got, row[2])
		}
		if got := want.Format(units.Millimetre, 6); got != row[3]+" mm" {
			t.Errorf("%d/64 in prints as %s, want %s mm", i+1, got, row[3])
		}
		if text, rest, err := want.FormatFraction(64); text != row[1]+" in" || rest != 0 || err != nil {
			t.Errorf("%d/64 in as a fraction: %s, %v, %v, want %s in", i+1, text, rest, err, row[1])
		}
	}
}

// windows converted to the other system of units.
var converted = []struct {
	window, grid    string
	inward, nearest string
	source          string
}{
	{"11 ± 0.3 mm", "0.001 in", "0.422 to 0.444 in", "0.421 to 0.445 in", "worked conversion after ANSI/IEEE 268: nearest widens both ends"},
	{"1.950 ± 0.016 in", "0.01 mm", "49.13 to 49.93 mm", "49.12 to 49.94 mm", "ASTM E380 / SI 10 methods B and A, from memory; digits computed"},
	{"3.4425 to 3.4435 in", "0.0001 mm", "87.4395 to 87.4649 mm", "87.4395 to 87.4649 mm", "computed: already on the grid"},
	{"3.4425 to 3.4435 in", "0.001 mm", "87.440 to 87.464 mm", "87.440 to 87.465 mm", "computed"},
	{"87.490 to 87.510 mm", "0.0001 in", "3.4445 to 3.4452 in", "3.4445 to 3.4453 in", "computed"},
}

// nearest rounds each end to the grid, as drawings are often converted (the ordinary method of ISO 370 and of SI 10
// practice). It may overstep the window by up to half a grid at either end.
func nearest(w units.Limits, grid units.Length) units.Limits {
	return units.Limits{Min: w.Min.Round(grid), Max: w.Max.Round(grid)}
}

func TestConvertedWindows(t *testing.T) {
	parse := func(s string) units.Limits {
		t.Helper()
		w, err := units.ParseLimits(s)
		if err != nil {
			t.Fatal(err)
		}
		return w
	}
	for _, c := range converted {
		w := parse(c.window)
		if got, err := w.Inward(length(t, c.grid)); got != parse(c.inward) || err != nil {
			t.Errorf("%s inward: %v, %v, want %s (%s)", c.window, got, err, c.inward, c.source)
		}
		if got := nearest(w, length(t, c.grid)); got != parse(c.nearest) {
			t.Errorf("%s nearest: %v, want %s (%s)", c.window, got, c.nearest, c.source)
		}
	}
	// The exact limits, ANSI/IEEE 268 with digits computed.
	w := parse("11 ± 0.3 mm")
	if got := w.Min.Format(units.Inch, 12) + ", " + w.Max.Format(units.Inch, 12); got != "0.421259842520 in, 0.444881889764 in" {
		t.Errorf("exact limits %s", got)
	}
}

// TestOrdinaryConversionOversteps: the ordinary method of ISO 370:1975, which picks the number of decimals by the size of
// the tolerance, oversteps a limit by up to 2 % of the tolerance from inches to millimetres and 2.5 % from
// millimetres to inches (abstract of SIS-TR 18:2007). Only inward rounding keeps every window.
func TestOrdinaryConversionOversteps(t *testing.T) {
	worst := 0.0
	// Windows of 0.010 in (0.254 mm); the method converts them to 0.01 mm, and half of that is 2 % of 0.25 mm.
	for i := range units.Length(20_000) {
		w := units.Limits{Min: 3*units.Inch + i*units.Microinch*10, Max: 3*units.Inch + i*units.Microinch*10 + 10*units.Thou}
		near := nearest(w, 10*units.Micrometre)
		inward, err := w.Inward(10 * units.Micrometre)
		if err != nil || inward.Min < w.Min || inward.Max > w.Max {
			t.Fatalf("%v inward: %v, %v", w, inward, err)
		}
		width, _ := w.Width()
		worst = max(worst, (w.Min - near.Min).In(width), (near.Max - w.Max).In(width))
	}
	if !(worst > 0.0195 && worst < 0.02) {
		t.Errorf("the ordinary method oversteps by up to %.4f of the tolerance, want just under 0.02", worst)
	}
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.12g, want %.12g ± %g", what, got, want, tolerance)
	}
}

func TestPublishedQuantities(t *testing.T) {
	c := func(x float64) units.Temperature { t.Helper(); r, err := units.Celsius(x); check(t, err); return r }
	f := func(x float64) units.Temperature { t.Helper(); r, err := units.Fahrenheit(x); check(t, err); return r }

	// ISO 1 (read in Swyt, J. Res. NIST 99 (1994) 31): the reference temperature is 20 °C = 68 °F, exactly.
	if c(20) != units.ReferenceTemperature || f(68) != units.ReferenceTemperature {
		t.Errorf("20 °C is %v K, 68 °F %v K", float64(c(20)), float64(f(68)))
	}
	near(t, "wash at 160 °F, NMWR 9-2815-220 WP 0012", f(160).Celsius(), 71.1, 0.05)
	near(t, "138 °F, computed", f(138).Celsius(), 58.9, 0.05)
	near(t, "70 °F, computed", f(70).Celsius(), 21.1, 0.05)
	near(t, "90 °F, computed", f(90).Celsius(), 32.2, 0.05)
	near(t, "180 °C in °F, computed", c(180).Fahrenheit(), 356, 1e-9)
	near(t, "10 °F of difference, computed", (10 * units.DegreeFahrenheit).In(units.Kelvin), 5.5556, 0.0001)
	near(t, "10 °F of temperature, computed", f(10).Celsius(), -12.2, 0.05)

	// Callister & Rethwisch, Table B.6: the same coefficient a °C and a °F.
	for _, row := range []struct{ perC, perF float64 }{{11.4, 6.3}, {11.2, 6.2}, {10.6, 5.9}, {21.5, 11.9}} {
		near(t, "expansion a °F", units.Expansion(row.perC*1e-6).In(1e-6*units.PerFahrenheit), row.perF, 0.05)
	}

	near(t, "1 lbf, NIST SP 811", units.PoundForce.In(units.Newton), 4.4482216, 5e-8)
	near(t, "6 lbf, US Army TM 9-2815-202-34 p. 6-36", (6 * units.PoundForce).In(units.Newton), 26.7, 0.05)
	near(t, "30 psi, US Army TM 5-4320-304-14", (30 * units.PoundPerSquareInch).In(units.Bar), 2.07, 0.005)
	near(t, "30 psi, US Army TM 5-4320-304-14", 1000*(30*units.PoundPerSquareInch).In(units.Megapascal), 206.8, 0.05)
	near(t, "1 in³, exact conversion", units.CubicInch.In(units.CubicCentimetre), 16.387064, 1e-13)
}

func check(t testing.TB, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
}

func TestPublishedSpeeds(t *testing.T) {
	for _, row := range []struct {
		diameter string
		spindle  float64 // rev/min
		unit     units.Speed
		want     float64
		within   float64
		source   string
	}{
		{"67 mm", 300, units.MetrePerMinute, 63.146, 0.0005, "π·D·n, computed"},
		{"67 mm", 475.09, units.MetrePerMinute, 100, 0.005, "N = 1000 V/(π D), lecture notes; computed"},
		{"2.638 in", 434.39, units.FootPerMinute, 300, 0.005, "N = 12 V/(π D), computed"},
		{"67 mm", 600, units.MetrePerMinute, 126.29, 0.005, "computed"},
		{"67 mm", 650, units.MetrePerMinute, 136.82, 0.005, "computed"},
		{"67 mm", 700, units.MetrePerMinute, 147.34, 0.005, "computed"},
		{"5.752 in", 77, units.FootPerMinute, 115.95, 0.005, "inputs NMWR 9-2815-220 WP 0012, computed"},
		{"2.638 in", 420, units.FootPerMinute, 290.2, 0.6, "Machinery's Handbook 31st ed. p. 1337, S = K·D/(W·N) to 0.2 % (its factors are rounded)"},
	} {
		f, err := units.FrequencyFor(length(t, row.diameter), units.Speed(row.want)*row.unit)
		check(t, err)
		near(t, row.diameter+", "+row.source, f.In(units.PerMinute), row.spindle, row.within*row.spindle/row.want+0.005)
	}
	// The workshop shortcut 3.82 V/D for 300 ft/min on 2.638 in is 434.42 rev/min (computed), close to 12 V/(π D).
	f, err := units.FrequencyFor(length(t, "2.638 in"), 300*units.FootPerMinute)
	check(t, err)
	near(t, "shortcut", 3.82*300/2.638, f.In(units.PerMinute), 0.04)
}
