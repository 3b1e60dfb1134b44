// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"math"
	"testing"
	"time"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func mm(s string) units.Length { return units.MustParseLength(s + " mm") }

func inch(s string) units.Length { return units.MustParseLength(s + " in") }

func cc(v units.Volume) float64 { return v.In(units.CubicCentimetre) }

func close(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

func exact(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }

// worn returns a cylinder of known walls: unworn size, and the greatest diameter, with clean-up
// sizes on both centres.
func worn(largest, original, centred, shift units.Length) oversize.Cylinder {
	at := func(l units.Length) bore.Interval { return bore.Interval{Min: exact(l), Max: exact(l)} }
	return oversize.Cylinder{
		Name: "1", Largest: exact(largest), Smallest: exact(mm("67.000")),
		CleanUp:  bore.CleanUp{Original: at(original), Worn: at(centred), Shift: shift},
		Findings: []bore.Finding{{Finding: uncertainty.Finding{Subject: "size", Measured: exact(largest), Limits: units.Limits{Max: mm("67.1")}, Verdict: uncertainty.Beyond}}},
	}
}

func TestChosenStep(t *testing.T) {
	shifting := oversize.Engine{
		Wall: oversize.BareIron, Nominal: mm("67"), Sizes: oversize.Metric(),
		NewBore: units.Limits{Min: mm("67"), Max: mm("67")},
	}
	fixed := shifting
	shifting.MayShift = mm("0.1")
	for _, test := range []struct {
		name  string
		e     oversize.Engine
		c     oversize.Cylinder
		want  units.Length
		moves bool
	}{
		// The rule "a spot worn larger than the first oversize takes the next" is that of a United
		// States handbook of aircraft powerplants; the numbers are computed.
		{"worst spot 67.31", fixed, worn(mm("67.31"), mm("67.31"), mm("67.31"), 0), mm("0.50"), false},
		// Computed: wear of 0.15 on one side, 0.02 of surface allowance all round.
		{"original centre", fixed, worn(mm("67.15"), mm("67.34"), mm("67.19"), mm("0.075")), mm("0.50"), false},
		{"worn centre", shifting, worn(mm("67.15"), mm("67.34"), mm("67.19"), mm("0.075")), mm("0.25"), true},
	} {
		c, err := oversize.Choose(test.e, []oversize.Cylinder{test.c}, uncertainty.Risk{})
		if err != nil || c.Route != oversize.BoreOversize || c.Over != test.want || (c.Cylinders[0].Shift > 0) != test.moves {
			t.Errorf("%s: %+v, %v; want %v over, axis moves: %t", test.name, c, err, test.want, test.moves)
		}
	}
}

// A United States handbook of aircraft powerplants gives the steps, and 0.015 in over 3.875 in
// as 3.890 ± 0.0005 in.
func TestAircraftSteps(t *testing.T) {
	e := oversize.Engine{
		Wall: oversize.BareIron, Nominal: inch("3.875"), NewBore: units.Limits{Min: inch("3.8745"), Max: inch("3.8755")},
		Sizes: oversize.Series{{Over: inch("0.010")}, {Over: inch("0.015")}, {Over: inch("0.020")}, {Over: inch("0.030")}},
	}
	c := worn(inch("3.886"), inch("3.886"), inch("3.886"), 0)
	c.Smallest = exact(inch("3.875"))
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if want := (units.Limits{Min: inch("3.8895"), Max: inch("3.8905")}); err != nil || got.Over != inch("0.015") || got.Cylinders[0].Finish != want || got.Cylinders[0].Aim != inch("3.890") {
		t.Errorf("%+v, %v; want 0.015 in over, %v", got, err, want)
	}
}

// US Army TM 10-3930-653-14&P: a bore more than 1.5 mm over standard gets a liner.
func TestSleevedBeyondGreatest(t *testing.T) {
	e := oversize.Engine{
		Wall: oversize.BareIron, Nominal: mm("91"), NewBore: units.Limits{Min: mm("91"), Max: mm("91")}, MostOver: mm("1.5"),
		Sizes: oversize.Series{{Over: mm("0.5")}, {Over: mm("1.0")}, {Over: mm("1.5")}, {Over: mm("2.0")}},
	}
	for largest, want := range map[units.Length]oversize.Route{mm("92.49"): oversize.BoreOversize, mm("92.51"): oversize.Sleeve} {
		c := worn(largest, largest, largest, 0)
		c.Smallest = exact(mm("91"))
		got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		if err != nil || got.Route != want {
			t.Errorf("worn to %v: %+v, %v; want %v", largest, got, err, want)
		}
	}
}

// Metric and inch steps are not the same sizes: printed conversions of 0.25 to 1.00 mm.
func TestSeries(t *testing.T) {
	metric, in := oversize.Metric(), oversize.Inch()
	for i, inches := range []string{"0.00984", "0.01969", "0.02953", "0.03937"} {
		m := metric[i].Over
		if got := m.Round(10 * units.Microinch); got != inch(inches) {
			t.Errorf("%v is %v in, printed %v", m, got.In(units.Inch), inches)
		}
		if d := in[i].Over - m; d != units.Length(i+1)*4*units.Micrometre {
			t.Errorf("%v and %v differ by %v", in[i].Over, m, d)
		}
	}
	if in[0].Over != mm("0.254") || len(in) != len(metric) {
		t.Errorf("inch series %v", in)
	}
}

// P + C − H: piston 95.455, clearance 0.0245, honing allowance 0.02 mm (the formula of several
// workshop manuals, common practice).
func TestBoredSize(t *testing.T) {
	e := oversize.Engine{
		Wall: oversize.BareIron, Nominal: mm("95"), Honing: mm("0.02"), Clearance: units.Limits{Min: mm("0.0245"), Max: mm("0.0245")},
		Sizes: oversize.Series{{Over: mm("0.48"), Piston: piston("95.455")}},
	}
	c := worn(mm("95.2"), mm("95.4"), mm("95.4"), 0)
	c.Smallest = exact(mm("95"))
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil || got.Cylinders[0].Bored != mm("95.4595") || got.Cylinders[0].Aim != mm("95.4795") {
		t.Errorf("%+v, %v; want bored to 95.4595 mm, finished at 95.4795 mm", got, err)
	}
}

func TestStock(t *testing.T) {
	// US Army TM 5-3895-382-24: a liner honed from 99.950 to 100.012 and then to 100.017 mm.
	ops, err := oversize.Shop{FinishHone: mm("0.005")}.Cuts(mm("99.950"), 0, mm("100.017"))
	if err != nil || len(ops) != 2 || ops[0].After != mm("100.012") || ops[0].Stock != mm("0.062") || ops[1].Stock != mm("0.005") {
		t.Errorf("%+v, %v; want 0.062 and 0.005 mm", ops, err)
	}
	// Metal removed by 0.50 mm in a bore of 67 mm, 90 mm long: 4753.6 mm³, computed.
	small, serr := oversize.Displacement(mm("67"), mm("90"), 1)
	large, lerr := oversize.Displacement(mm("67.5"), mm("90"), 1)
	if got := (large - small).In(units.CubicCentimetre / 1000); serr != nil || lerr != nil || !close(got, 4753.6, 4.8) {
		t.Errorf("%v mm³, %v, %v; want 4753.6", got, serr, lerr)
	}
}

func TestBoringTime(t *testing.T) {
	for _, test := range []struct {
		length, feed units.Length
		rpm          units.Frequency
		passes       int
		want, within time.Duration
	}{
		// T = L/(f·N), computed.
		{mm("90"), mm("0.1"), 300, 1, 3 * time.Minute, 0},
		{mm("90"), mm("0.1"), 300, 400, 20 * time.Hour, 0},
		{mm("90"), mm("0.1"), 300, 365 * 24 * 20, 365 * 24 * time.Hour, 0}, // the most allowed
		// 60·L·passes/(in/rev·rev/min), the shortcut of inch shops; computed.
		{inch("3.54"), inch("0.005"), 500, 2, 169900 * time.Millisecond, 100 * time.Millisecond},
	} {
		got, err := oversize.BoringTime(test.length, test.feed, test.rpm*units.PerMinute, test.passes)
		if err != nil || (got-test.want).Abs() > test.within {
			t.Errorf("%v at %v a turn: %v, %v; want %v", test.length, test.feed, got, err, test.want)
		}
	}
}

func TestWall(t *testing.T) {
	// Computed: half the growth of the bore, 3.0 mm left of a sleeve of 73 mm at 67 mm, 2.5 at 68.
	left, err := oversize.WallLeft(exact(mm("3")), exact(mm("67")), mm("68"), 0)
	if err != nil || left != exact(mm("2.5")) {
		t.Errorf("%v, %v; want 2.5 mm", left, err)
	}
	// Khurmi and Gupta, A Textbook of Machine Design, table 32.1.
	for bore, want := range map[string]string{"75": "1.5", "100": "2.4", "150": "4.0", "200": "6.3", "250": "8.0", "300": "9.5", "350": "11.0", "400": "12.5", "450": "12.5", "500": "12.5", "125": "3.2", "325": "10.25"} {
		if got, err := oversize.ReboringAllowance(mm(bore)); err != nil || got != mm(want) {
			t.Errorf("allowance of %s mm: %v, %v; want %s mm", bore, got, err, want)
		}
	}
	// Their t = pD/(2σ) + C for 100 mm, 5 MPa and 50 MPa: 7.4 mm.
	hoop, herr := oversize.HoopWall(mm("100"), 5*units.Megapascal, 50*units.Megapascal)
	extra, eerr := oversize.ReboringAllowance(mm("100"))
	if herr != nil || eerr != nil || hoop+extra != mm("7.4") {
		t.Errorf("%v + %v, %v, %v; want 7.4 mm", hoop, extra, herr, eerr)
	}
}

func piston(size string) fit.Piston { return fit.Piston{Size: exact(mm(size)), Axis: fit.AcrossPin} }
