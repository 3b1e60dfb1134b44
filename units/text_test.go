// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"encoding"
	"errors"
	"fmt"
	"math"
	"strings"
	"testing"

	"borewright.example/units"
)

func TestParseLength(t *testing.T) {
	const pm, nm, um, mm, in = units.Picometre, units.Nanometre, units.Micrometre, units.Millimetre, units.Inch
	for _, c := range []struct {
		text string
		want units.Length
	}{
		{"0", 0},
		{"-0", 0},
		{"+0.00", 0},
		{"0 in", 0},
		{"0/4", 0},
		{"67.02 mm", 67_020 * um},
		{"67.02mm", 67_020 * um},
		{"+67.02 mm", 67_020 * um},
		{"-67.02 mm", -67_020 * um},
		{"5. mm", 5 * mm},
		{".5 mm", 500 * um},
		{"007 mm", 7 * mm},
		{"1.000000000000000000000 mm", mm},
		{"3 um", 3 * um},
		{"3 µm", 3 * um},
		{"3 μm", 3 * um},
		{"2 m", 2000 * mm},
		{"2 nm", 2 * nm},
		{"2 pm", 2 * pm},
		{"2 in", 2 * in},
		{`2"`, 2 * in},
		{"2″", 2 * in},
		{"2 thou", 2 * units.Thou},
		{"2 uin", 2 * units.Microinch},
		{"2 µin", 2 * units.Microinch},
		{"2 μin", 2 * units.Microinch},
		{"0.5 thou", 5 * units.Tenth},
		{"41/64 in", 41 * in / 64},
		{"2-41/64 in", 2*in + 41*in/64},
		{"2 41/64 in", 2*in + 41*in/64},
		{`2-41/64"`, 2*in + 41*in/64},
		{"-2-41/64 in", -(2*in + 41*in/64)},
		{"9/8 in", 9 * in / 8},
		{"1/2 mm", 500 * um},
		{"0-1/2 in", in / 2},
		{"02-041/064 in", 2*in + 41*in/64},
		{"9223372036854775807 pm", math.MaxInt64},
		{"-9223372036854775808 pm", math.MinInt64},
		{"9223372.036854775807 m", math.MaxInt64},
		{"1/512 in", 49_609_375 * pm},
		{"0.00000001 in", 254 * pm},
		{"0.000000005 in", 127 * pm},
		{"6/6 mm", mm},
		{"9223372036854775807/9223372036854775807 mm", mm},
	} {
		if got, err := units.ParseLength(c.text); got != c.want || err != nil {
			t.Errorf("%q is %v, %v, want %v", c.text, got, err, c.want)
		}
	}
}

// TestInexactLengths: the nearest Length comes with the error, halves away from zero.
func TestInexactLengths(t *testing.T) {
	for _, c := range []struct {
		text string
		want units.Length
	}{
		{"67.10499999999999 mm", 67_105 * units.Micrometre}, // 67.105 as some spreadsheets store it
		{"67.10499999999999999 mm", 67_105 * units.Micrometre},
		{"1/3 in", 8_466_666_667},
		{"-1/3 in", -8_466_666_667},
		{"1/1024 in", 24_804_688}, // a half, away from zero
		{"-1/1024 in", -24_804_688},
		{"0.0000000005 mm", 1},
		{"0.0000000004999999999999999999 mm", 0},
		{"0.4 pm", 0},
		{"-0.5 pm", -1},
		{"0.5 pm", 1},
		{"0.000000001 in", 25},
		{"0.5000000000000000000000001 pm", 1},
	} {
		got, err := units.ParseLength(c.text)
		var e *units.ParseError
		if got != c.want || !errors.Is(err, units.ErrInexact) || !errors.As(err, &e) || e.Mend != "the nearest length is "+c.want.String() {
			t.Errorf("%q is %v, %v, want %v and ErrInexact", c.text, int64(got), err, int64(c.want))
		}
		l := 7 * units.Millimetre
		if err := l.UnmarshalText([]byte(c.text)); !errors.Is(err, units.ErrInexact) || l != 7*units.Millimetre {
			t.Errorf("UnmarshalText(%q) left %v, %v", c.text, l, err)
		}
	}
}

// A refusal is a text that must not be read, with the reason, the byte where reading stops and a word of the mend.
type refusal struct {
	text string
	err  error
	pos  int
	mend string
}

var lengthRefusals = []refusal{
	{"", units.ErrSyntax, 0, "a number and a unit"},
	{"mm", units.ErrSyntax, 0, "a number and a unit"},
	{"-", units.ErrSyntax, 1, "a number and a unit"},
	{". mm", units.ErrSyntax, 1, ""},
	{"+-1 mm", units.ErrSyntax, 1, ""},
	{"--1 mm", units.ErrSyntax, 1, ""},
	{"NaN mm", units.ErrSyntax, 0, ""},
	{"Inf mm", units.ErrSyntax, 0, ""},
	{"0x10 mm", units.ErrUnknownUnit, 1, "units of length"},
	{"2.5", units.ErrMissingUnit, 3, "write 2.5 mm or 2.5 in"},
	{"-2-41/64", units.ErrMissingUnit, 8, "write -2-41/64 mm or -2-41/64 in"},
	{"2.5 ", units.ErrMissingUnit, 4, "write 2.5 mm or 2.5 in"},
	{"0.0000000000000000000001", units.ErrMissingUnit, 24, ""},
	{"2 mil", units.ErrUnknownUnit, 2, "thousandth of an inch and for a millimetre"},
	{"2 mils", units.ErrUnknownUnit, 2, "write thou or mm"},
	{"2 cm", units.ErrUnknownUnit, 2, "units of length: mm, in, µm, thou, µin, m, nm, pm"},
	{"2 MM", units.ErrUnknownUnit, 2, "units of length"},
	{"2 mmm", units.ErrUnknownUnit, 2, "units of length"},
	{"2 ft", units.ErrUnknownUnit, 2, "units of length"},
	{"2'", units.ErrUnknownUnit, 1, "units of length"},
	{"2 мм", units.ErrUnknownUnit, 2, "units of length"}, // Cyrillic
	{"2 m\u0307m", units.ErrSyntax, 3, "nothing may follow"},
	{"67,02 mm", units.ErrSyntax, 2, "decimal point"},
	{"1,000.5 mm", units.ErrSyntax, 1, "nothing between thousands"},
	{"1 000 mm", units.ErrSyntax, 5, "2-41/64"},
	{"1_000 mm", units.ErrSyntax, 1, ""},
	{"1.2.3 mm", units.ErrSyntax, 3, ""},
	{"1e3 mm", units.ErrSyntax, 1, "exponent"},
	{"1e-3 mm", units.ErrSyntax, 1, "exponent"},
	{" 5 mm", units.ErrSyntax, 0, "one plain space"},
	{"5  mm", units.ErrSyntax, 2, "one plain space"},
	{"5\tmm", units.ErrSyntax, 1, "one plain space"},
	{"5\u00a0mm", units.ErrSyntax, 1, "one plain space"}, // no-break space
	{"5 mm ", units.ErrSyntax, 4, "nothing may follow the unit"},
	{"5 mm\n", units.ErrSyntax, 4, "nothing may follow the unit"},
	{"5 mm x", units.ErrSyntax, 4, "nothing may follow the unit"},
	{"5 in.", units.ErrSyntax, 4, "nothing may follow the unit"},
	{"5 mm 3", units.ErrSyntax, 4, "nothing may follow the unit"},
	{"\u22125 mm", units.ErrSyntax, 0, "the sign as - or +"},      // minus sign
	{"\uff15 mm", units.ErrSyntax, 0, ""},                         // full-width 5
	{"5\uff15 mm", units.ErrSyntax, 1, ""},                        // full-width 5
	{"\u0665 mm", units.ErrSyntax, 0, ""},                         // Arabic-Indic 5
	{"2\u201341/64 in", units.ErrSyntax, 1, "the sign as - or +"}, // en dash
	{"2\u204441 in", units.ErrSyntax, 1, ""},                      // fraction slash
	{"\u00bd in", units.ErrSyntax, 0, ""},                         // ½
	{"2-41 in", units.ErrSyntax, 4, "2-41/64"},
	{"2-41", units.ErrSyntax, 4, "2-41/64"},
	{"2-41/ in", units.ErrSyntax, 4, "2-41/64"},
	{"2-41/", units.ErrSyntax, 4, "2-41/64"},
	{"41/", units.ErrUnknownUnit, 2, ""},
	{"2-65/64 in", units.ErrSyntax, 4, "below 1"},
	{"2-64/64 in", units.ErrSyntax, 4, "below 1"},
	{"1/0 in", units.ErrSyntax, 3, "divided by 0"},
	{"2-0/0 in", units.ErrSyntax, 5, "divided by 0"},
	{"1/ in", units.ErrUnknownUnit, 1, "units of length"},
	{"1/-2 in", units.ErrUnknownUnit, 1, "units of length"},
	{"/2 in", units.ErrSyntax, 0, ""},
	{"1/2/3 in", units.ErrUnknownUnit, 3, "units of length"},
	{"2.5-1/2 in", units.ErrSyntax, 3, ""},
	{"9223372036854775808 pm", units.ErrRange, 22, ""},
	{"-9223372036854775809 pm", units.ErrRange, 23, ""},
	{"9223372.036854775808 m", units.ErrRange, 22, ""},
	{"9223372036854775807.5 pm", units.ErrRange, 24, ""},
	{"9223373 m", units.ErrRange, 9, ""},
	{"20000000 m", units.ErrRange, 10, ""},
	{"18446744.073709551617 m", units.ErrRange, 23, ""}, // 2⁶⁴ + 1 pm
	{"9223372036854775807/1 m", units.ErrRange, 23, ""},
	{"18446744073709551615.9 pm", units.ErrRange, 25, ""},
	{"99999999999999999999 mm", units.ErrRange, 23, ""},
	{"1/99999999999999999999 mm", units.ErrRange, 22, ""},
	{"99999999999999999999/3 mm", units.ErrRange, 22, ""},
	{"1\x00 mm", units.ErrSyntax, 1, ""},
	{"1\xff mm", units.ErrSyntax, 1, ""},
}

func checkRefusals(t *testing.T, kind string, parse func(string) (any, error), rs []refusal) {
	t.Helper()
	for _, r := range rs {
		got, err := parse(r.text)
		var e *units.ParseError
		switch {
		case !errors.Is(err, r.err) || !errors.As(err, &e):
			t.Errorf("%s %q: %v, %v, want %v", kind, r.text, got, err, r.err)
		case e.Pos != r.pos || !strings.Contains(e.Mend, r.mend):
			t.Errorf("%s %q: %+v, want byte %d and mend %q", kind, r.text, *e, r.pos, r.mend)
		case len(r.text) <= 80 && !strings.HasPrefix(err.Error(), fmt.Sprintf("units: %s %q: ", kind, r.text)):
			t.Errorf("%s %q: %v", kind, r.text, err)
		}
	}
}

func reader[Q any](parse func(string) (Q, error)) func(string) (any, error) {
	return func(s string) (any, error) { return parse(s) }
}

func TestLengthRefusals(t *testing.T) {
	checkRefusals(t, "length", reader(units.ParseLength), lengthRefusals)
	for _, r := range lengthRefusals {
		if l, _ := units.ParseLength(r.text); l != 0 {
			t.Errorf("%q gives %v with its error", r.text, l)
		}
		l := 7 * units.Millimetre
		if err := l.UnmarshalText([]byte(r.text)); err == nil || l != 7*units.Millimetre {
			t.Errorf("UnmarshalText(%q) left %v, %v", r.text, l, err)
		}
	}
}

func TestParseErrorText(t *testing.T) {
	_, err := units.ParseLength("2.5")
	const want = `units: length "2.5": missing unit at byte 3 (a bare number has no unit: write 2.5 mm or 2.5 in)`
	if err == nil || err.Error() != want {
		t.Errorf("got  %v\nwant %s", err, want)
	}
	_, err = units.ParseLength("99999999999999999999 mm")
	if err == nil || err.Error() != `units: length "99999999999999999999 mm": out of range at byte 23` {
		t.Errorf("got %v", err)
	}
}

// TestHugeTexts: whatever the size, a text is refused or read in one pass, and its error stays small.
func TestHugeTexts(t *testing.T) {
	const size = 1 << 20
	nines, zeros := strings.Repeat("9", size), strings.Repeat("0", size)
	for _, s := range []string{
		nines + " mm", nines, "0." + nines + " mm", "0." + nines, "-" + nines, "1/" + nines + " in", nines + "/2 in", "2-" + nines + "/" + nines + " in",
		"1 " + strings.Repeat("m", size), strings.Repeat(" ", size), "1" + strings.Repeat("µ", size/2), nines + "°", "1e" + nines + " N", zeros + "e1 N",
		"max " + nines, "1 to " + nines + " mm", nines + " ± 1 mm", "1 +" + nines + "/-" + nines + " mm", strings.Repeat(" +", size/2), strings.Repeat("±", size/2),
		strings.Repeat("1°", size/3), "1°" + nines + "'",
	} {
		for _, p := range parsers {
			got, err := p.parse(s)
			if err == nil {
				t.Errorf("%s %.20q… is %v", p.kind, s, got)
			} else if len(err.Error()) > 500 {
				t.Errorf("%s %.20q…: an error of %d bytes", p.kind, s, len(err.Error()))
			}
		}
	}
	if _, err := units.ParseLength(strings.Repeat("9", 10<<20) + " mm"); !errors.Is(err, units.ErrRange) {
		t.Errorf("10 MB of digits: %v", err)
	}
	// Zeros are free, wherever they stand.
	for _, s := range []string{zeros + "5 mm", "5." + zeros + " mm", "5/" + zeros + "1 mm"} {
		if got, err := units.ParseLength(s); got != 5*units.Millimetre || err != nil {
			t.Errorf("%.20q… is %v, %v", s, got, err)
		}
	}
}

// readText reads a quantity that has no Parse of its own.
func readText[Q any, P interface {
	*Q
	encoding.TextUnmarshaler
}](s string) (q Q, err error) {
	err = P(&q).UnmarshalText([]byte(s))
	return q, err
}

var parsers = []struct {
	kind  string
	parse func(string) (any, error)
}{
	{"length", reader(units.ParseLength)},
	{"limits", reader(units.ParseLimits)},
	{"angle", reader(units.ParseAngle)},
	{"expansion", reader(readText[units.Expansion])},
	{"force", reader(readText[units.Force])},
	{"frequency", reader(units.ParseFrequency)},
	{"pressure", reader(readText[units.Pressure])},
	{"speed", reader(readText[units.Speed])},
	{"temperature", reader(units.ParseTemperature)},
	{"temperature change", reader(readText[units.TemperatureChange])},
	{"volume", reader(readText[units.Volume])},
}

func TestPlainQuantities(t *testing.T) {
	const minute, second = units.Degree / 60, units.Degree / 3600
	celsius := func(x float64) units.Temperature { r, err := units.Celsius(x); check(t, err); return r }
	for _, c := range []struct {
		kind, text string
		want       any
		out        string // the text that comes back
	}{
		{"force", "26.7 N", 26.7 * units.Newton, "26.7 N"},
		{"force", "6 lbf", 6 * units.PoundForce, "26.6893296916 N"},
		{"force", "0", units.Force(0), "0 N"},
		{"force", "-0 N", units.Force(0), "0 N"},
		{"frequency", "600 rev/min", 600 * units.PerMinute, "600 rev/min"},
		{"frequency", "600rpm", 600 * units.PerMinute, "600 rev/min"},
		{"frequency", "10 Hz", 10 * units.Hertz, "600 rev/min"},
		{"pressure", "0.2 MPa", 0.2 * units.Megapascal, "0.2 MPa"},
		{"pressure", "30 psi", 30 * units.PoundPerSquareInch, "0.206842718795 MPa"},
		{"pressure", "110 GPa", 110 * units.Gigapascal, "110000 MPa"},
		{"pressure", "2 bar", 2 * units.Bar, "0.2 MPa"},
		{"pressure", "200 kPa", 0.2 * units.Megapascal, "0.2 MPa"},
		{"pressure", "1 Pa", units.Pascal, "1e-06 MPa"},
		{"speed", "60 m/min", units.MetrePerSecond, "60 m/min"},
		{"speed", "-100 ft/min", -100 * units.FootPerMinute, "-30.48 m/min"},
		{"speed", "1000 mm/s", units.MetrePerSecond, "60 m/min"},
		{"speed", "1 m/s", units.MetrePerSecond, "60 m/min"},
		{"volume", "16 cm³", 16 * units.CubicCentimetre, "16 cm³"},
		{"volume", "16 cc", 16 * units.CubicCentimetre, "16 cm³"},
		{"volume", "1 in3", units.CubicInch, "16.387064 cm³"},
		{"volume", "1 in³", units.CubicInch, "16.387064 cm³"},
		{"volume", "5 mm³", 0.005 * units.CubicCentimetre, "0.005 cm³"},
		{"volume", "5 mm3", 0.005 * units.CubicCentimetre, "0.005 cm³"},
		{"volume", "5 cm3", 5 * units.CubicCentimetre, "5 cm³"},
		{"expansion", "11.4e-6/K", 11.4e-6 * units.PerKelvin, "11.4e-6/K"},
		{"expansion", "11.4e-6 /°C", 11.4e-6 * units.PerKelvin, "11.4e-6/K"},
		{"expansion", "0.0000114 1/K", 11.4e-6 * units.PerKelvin, "11.4e-6/K"},
		{"expansion", "11.4e-6 1/°C", 11.4e-6 * units.PerKelvin, "11.4e-6/K"},
		{"expansion", "6.3e-6/°F", 6.3e-6 * units.PerFahrenheit, "11.34e-6/K"},
		{"expansion", "6.3e-6 1/°F", 6.3e-6 * units.PerFahrenheit, "11.34e-6/K"},
		{"expansion", "2e-10/K", 2e-10 * units.PerKelvin, "2e-10/K"},
		{"expansion", "2000 /K", 2000 * units.PerKelvin, "2000/K"},
		{"temperature", "31 °C", celsius(31), "31 °C"},
		{"temperature", "31C", celsius(31), "31 °C"},
		{"temperature", "-40 °F", celsius(-40), "-40 °C"},
		{"temperature", "68 F", units.ReferenceTemperature, "20 °C"},
		{"temperature", "293.15 K", units.ReferenceTemperature, "20 °C"},
		{"temperature", "0 °C", celsius(0), "0 °C"},
		{"temperature change", "10 K", 10 * units.Kelvin, "10 K"},
		{"temperature change", "-10 °C", -10 * units.Kelvin, "-10 K"},
		{"temperature change", "10 C", 10 * units.Kelvin, "10 K"},
		{"temperature change", "18 °F", 18 * units.DegreeFahrenheit, "10 K"},
		{"temperature change", "18 F", 18 * units.DegreeFahrenheit, "10 K"},
		{"angle", "45°", 45 * units.Degree, "45°"},
		{"angle", "45 °", 45 * units.Degree, "45°"},
		{"angle", "45 deg", 45 * units.Degree, "45°"},
		{"angle", "0.5 rad", 0.5 * units.Radian, "28.6478897565°"},
		{"angle", "30'", 30 * minute, "0.5°"},
		{"angle", "36″", 36 * second, "0.01°"},
		{"angle", "44°30'", 44*units.Degree + 30*minute, "44.5°"},
		{"angle", `-1°25'36"`, -(units.Degree + 25*minute + 36*second), "-1.42666666667°"},
		{"angle", "+1° 25′ 36.0″", units.Degree + 25*minute + 36*second, "1.42666666667°"},
		{"angle", `1°36"`, units.Degree + 36*second, "1.01°"},
		{"angle", `30'36"`, 30*minute + 36*second, "0.51°"},
		{"angle", "400°", 400 * units.Degree, "400°"},
		{"angle", `90'`, 90 * minute, "1.5°"},
		{"angle", "-0", units.Angle(0), "0°"},
	} {
		i := indexKind(t, c.kind)
		got, err := parsers[i].parse(c.text)
		if err != nil || !close12(got, c.want) {
			t.Errorf("%s %q is %v, %v, want %v", c.kind, c.text, got, err, c.want)
			continue
		}
		if out := got.(interface{ String() string }).String(); out != c.out {
			t.Errorf("%s %q comes back as %q, want %q", c.kind, c.text, out, c.out)
		}
	}
}

func indexKind(t *testing.T, kind string) int {
	t.Helper()
	for i, p := range parsers {
		if p.kind == kind {
			return i
		}
	}
	t.Fatal("no parser of " + kind)
	return -1
}

// close12 reports whether two quantities of one type are equal to a few units in the last place of float64.
func close12(a, b any) bool {
	x, y := asFloat(a), asFloat(b)
	return sameType(a, b) && math.Abs(x-y) <= 1e-15*math.Abs(y)
}

var plainRefusals = map[string][]refusal{
	"speed": {
		{"", units.ErrSyntax, 0, ""},
		{"-", units.ErrSyntax, 1, ""},
		{".", units.ErrSyntax, 1, ""},
		{"60", units.ErrMissingUnit, 2, "write 60 m/min or 60 ft/min"},
		{"60 ", units.ErrMissingUnit, 3, "write 60 m/min or 60 ft/min"},
		{"60 mm", units.ErrUnknownUnit, 3, "units of speed: m/min, ft/min, mm/s, m/s"},
		{"60 m", units.ErrUnknownUnit, 3, "units of speed"},
		{"60 m/min.", units.ErrSyntax, 8, "nothing may follow"},
		{"60,5 m/min", units.ErrSyntax, 2, "decimal point"},
		{"60  m/min", units.ErrSyntax, 3, "one plain space"},
		{" 60 m/min", units.ErrSyntax, 0, "one plain space"},
		{"−60 m/min", units.ErrSyntax, 0, "the sign"},
		{"6.0.1 m/min", units.ErrSyntax, 3, ""},
		{"NaN m/min", units.ErrSyntax, 0, ""},
		{"Inf m/min", units.ErrSyntax, 0, ""},
		{"0x1p3 m/s", units.ErrUnknownUnit, 1, ""},
		{"1_0 m/s", units.ErrSyntax, 1, ""},
		{"1e m/s", units.ErrUnknownUnit, 1, ""},
		{"1e400 m/s", units.ErrRange, 5, ""},
		{"1e16 m/s", units.ErrRange, 8, ""},
		{strings.Repeat("1", 101) + " m/s", units.ErrRange, 101, ""},
	},
	"temperature": {
		{"0", units.ErrMissingUnit, 1, "write 0 °C or 0 °F"},
		{"21", units.ErrMissingUnit, 2, "write 21 °C or 21 °F"},
		{"21 R", units.ErrUnknownUnit, 3, "units of temperature: °C, °F, K, C, F"},
		{"21 °", units.ErrUnknownUnit, 3, "units of temperature"},
		{"-273.15 °C", units.ErrRange, 11, "nothing is colder"},
		{"-300 °C", units.ErrRange, 8, "nothing is colder"},
		{"-459.68 °F", units.ErrRange, 11, "nothing is colder"},
		{"0 K", units.ErrRange, 3, "nothing is colder"},
		{"-1 K", units.ErrRange, 4, "nothing is colder"},
		{"1e16 K", units.ErrRange, 6, ""},
		{"not given", units.ErrSyntax, 0, ""},
	},
	"temperature change": {{"10", units.ErrMissingUnit, 2, "write 10 K or 10 °F"}},
	"expansion": {
		{"11.4e-6", units.ErrMissingUnit, 7, "write 11.4e-6 /K or 11.4e-6 /°F"},
		{"11.4e-6 K", units.ErrUnknownUnit, 8, "units of expansion: /K, /°F, /°C"},
	},
	"force":     {{"1 kp", units.ErrUnknownUnit, 2, "units of force: N, lbf"}, {"1", units.ErrMissingUnit, 1, "write 1 N or 1 lbf"}},
	"frequency": {{"60 /min", units.ErrUnknownUnit, 3, "rev/min, Hz, rpm"}, {"1", units.ErrMissingUnit, 1, "1 rev/min"}},
	"pressure":  {{"1 mPa", units.ErrUnknownUnit, 2, "MPa"}, {"1", units.ErrMissingUnit, 1, "1 MPa or 1 psi"}},
	"volume":    {{"1 l", units.ErrUnknownUnit, 2, "cm³"}, {"1", units.ErrMissingUnit, 1, "1 cm³ or 1 in³"}},
	"angle": {
		{"45", units.ErrMissingUnit, 2, "write 45 ° or 45 rad"},
		{" 45°", units.ErrSyntax, 0, "one plain space"},
		{"45 grad", units.ErrUnknownUnit, 3, "units of angle"},
		{"44°30", units.ErrSyntax, 4, "44°30'15.5"},
		{"44°60'", units.ErrSyntax, 4, "below 60"},
		{`44°30'60"`, units.ErrSyntax, 7, "below 60"},
		{"44.5°30'", units.ErrSyntax, 6, "44°30'15.5"},
		{`44°30.5'1"`, units.ErrSyntax, 9, "44°30'15.5"},
		{"44°-30'", units.ErrSyntax, 4, "44°30'15.5"},
		{"44° 30' ", units.ErrSyntax, 8, "44°30'15.5"},
		{"44°  30'", units.ErrSyntax, 4, "44°30'15.5"},
		{`30"44°`, units.ErrSyntax, 3, "44°30'15.5"},
		{"44°x'", units.ErrSyntax, 4, "44°30'15.5"},
		{"44°'", units.ErrSyntax, 4, "44°30'15.5"},
		{"°", units.ErrSyntax, 0, ""},
		{"1e15 rad.", units.ErrSyntax, 8, "nothing may follow"},
		{"2e15 rad", units.ErrRange, 8, ""},
		{"1e300°", units.ErrRange, 7, ""},
	},
}

func TestPlainRefusals(t *testing.T) {
	for kind, rs := range plainRefusals {
		checkRefusals(t, kind, parsers[indexKind(t, kind)].parse, rs)
	}
}

func TestParseLimits(t *testing.T) {
	const um = units.Micrometre
	for _, c := range []struct {
		text     string
		min, max units.Length
	}{
		{"72.000 to 72.020 mm", 72_000 * um, 72_020 * um},
		{"72.000 mm to 72.020 mm", 72_000 * um, 72_020 * um},
		{"72.000 - 72.020 mm", 72_000 * um, 72_020 * um},
		{"72.000 – 72.020 mm", 72_000 * um, 72_020 * um},
		{"0.0055-0.0075 in", 55 * units.Tenth, 75 * units.Tenth}, // as manuals print them
		{".0055-.0075 in", 55 * units.Tenth, 75 * units.Tenth},
		{"-0.01-0.02 mm", -10 * um, 20 * um},
		{"0.2–0.4 mm", 200 * um, 400 * um},
		{"0.2 mm–0.4 mm", 200 * um, 400 * um},
		{"72–73 mm", 72_000 * um, 73_000 * um},
		{"4.0034/4.0039 in", 4*units.Inch + 34*units.Tenth, 4*units.Inch + 39*units.Tenth},
		{"4.0039/4.0034 in", 4*units.Inch + 34*units.Tenth, 4*units.Inch + 39*units.Tenth},
		{"72.010 ± 0.010 mm", 72_000 * um, 72_020 * um},
		{"72.010±0.010 mm", 72_000 * um, 72_020 * um},
		{"72.010 +/- 0.010 mm", 72_000 * um, 72_020 * um},
		{"72.010 mm ± 10 µm", 72_000 * um, 72_020 * um},
		{"72 +0.020/-0 mm", 72_000 * um, 72_020 * um},
		{"72 +0.020/-0.000 mm", 72_000 * um, 72_020 * um},
		{"72 +0.020 -0.000 mm", 72_000 * um, 72_020 * um},
		{"72 -0.000 +0.020 mm", 72_000 * um, 72_020 * um},
		{"72 mm +0.020 mm/-0", 72_000 * um, 72_020 * um},
		{"72 mm +20 µm -0", 72_000 * um, 72_020 * um},
		{"72 -0.010/-0.030 mm", 71_970 * um, 71_990 * um},
		{"72 +0.030/+0.010 mm", 72_010 * um, 72_030 * um},
		{"max 0.05 mm", 0, 50 * um},
		{"min 1.2 mm", 1200 * um, 0},
		{"0 to 0.05 mm", 0, 50 * um},
		{"0.05 ± 0.05 mm", 0, 100 * um},
		{"-0.05 to 0.02 mm", -50 * um, 20 * um},
		{"-0.05 - -0.02 mm", -50 * um, -20 * um},
		{"-0.05 ± 0.01 mm", -60 * um, -40 * um},
		{"-0.05 +0.01/-0.02 mm", -70 * um, -40 * um},
		{"min -0.05 mm", -50 * um, 0},
		{"72 to 72 mm", 72_000 * um, 72_000 * um},
		{"2.8346 to 2.8354 in", 72_000*um - 1160*units.Nanometre, 72_020*um - 840*units.Nanometre},
		{"2-41/64 to 2-42/64 in", 2*units.Inch + 41*units.Inch/64, 2*units.Inch + 42*units.Inch/64},
		{"2-41/64 - 2-42/64 in", 2*units.Inch + 41*units.Inch/64, 2*units.Inch + 42*units.Inch/64},
		{"2-41/64 +1/64/-1/64 in", 2*units.Inch + 40*units.Inch/64, 2*units.Inch + 42*units.Inch/64},
		{"2 41/64 +1/64 -1/64 in", 2*units.Inch + 40*units.Inch/64, 2*units.Inch + 42*units.Inch/64},
	} {
		got, err := units.ParseLimits(c.text)
		if want := (units.Limits{Min: c.min, Max: c.max}); got != want || err != nil {
			t.Errorf("%q is %v, %v, want %v", c.text, got, err, want)
		}
	}
}

func TestLimitsRefusals(t *testing.T) {
	rs := []refusal{
		{"", units.ErrSyntax, 0, "write 72.000 to 72.020 mm"},
		{"72 mm", units.ErrSyntax, 5, "write 72.000 to 72.020 mm"},
		{" to 72 mm", units.ErrSyntax, 0, "write 72.000 to 72.020 mm"},
		{"72", units.ErrSyntax, 2, "write 72.000 to 72.020 mm"},
		{"not given", units.ErrSyntax, 0, "write 72.000 to 72.020 mm"},
		{"72.020-72.000 mm", units.ErrCrossed, 16, "the smaller limit first"},
		{"72.000-72.020-72.030 mm", units.ErrSyntax, 13, ""},
		{"1.5-1/2 in", units.ErrSyntax, 3, "write 72.000 to 72.020 mm"},
		{"1/2.5 in", units.ErrSyntax, 3, "write 72.000 to 72.020 mm"},
		{"2-41/64 in", units.ErrSyntax, 10, "write 72.000 to 72.020 mm"},
		{"72-73 mm", units.ErrSyntax, 5, "write 72.000 to 72.020 mm"},
		{"72.000 to 72.020", units.ErrMissingUnit, 16, "write 72.020 mm"},
		{"72.000 to 72,020 mm", units.ErrSyntax, 12, "decimal point"},
		{"72,000 to 72.020 mm", units.ErrSyntax, 2, "decimal point"},
		{"72.000 to 72.020 mil", units.ErrUnknownUnit, 17, "write thou or mm"},
		{"72.000 mil to 72.020 mm", units.ErrUnknownUnit, 7, "write thou or mm"},
		{"72.000 to 72.020 mm x", units.ErrSyntax, 19, "nothing may follow"},
		{"72.000  to 72.020 mm", units.ErrMissingUnit, 7, ""},
		{"72.000 to  72.020 mm", units.ErrSyntax, 10, "one plain space"},
		{"72.020 to 72.000 mm", units.ErrCrossed, 19, "the smaller limit first"},
		{"0 to -1 mm", units.ErrCrossed, 10, "the smaller limit first"},
		{"72.020 - 72.000 mm", units.ErrCrossed, 18, "the smaller limit first"},
		{"72.010 ± -0.010 mm", units.ErrCrossed, 19, ""},
		{"72.010 mm ± 0.01", units.ErrMissingUnit, 17, ""},
		{"± 0.01 mm", units.ErrSyntax, 0, "write 72.000 to 72.020 mm"},
		{"72 ±", units.ErrSyntax, 5, ""},
		{"max 0", units.ErrRange, 5, "a limit of zero"},
		{"max 0 mm", units.ErrRange, 8, "a limit of zero"},
		{"min 0 mm", units.ErrRange, 8, "a limit of zero"},
		{"max 5", units.ErrMissingUnit, 5, "write 5 mm or 5 in"},
		{"max  5 mm", units.ErrSyntax, 4, "one plain space"},
		{"maximum 5 mm", units.ErrSyntax, 0, ""},
		{"-1 to 0 mm", units.ErrRange, 10, "a limit of zero"},
		{"-1 ± 1 mm", units.ErrRange, 10, "a limit of zero"},
		{"0 to 0 mm", units.ErrRange, 9, "a limit of zero"},
		{"0 to 11 m", units.ErrRange, 9, ""},
		{"1/3 to 2 in", units.ErrInexact, 3, "the nearest length is 8.466666667 mm"},
		{"1 to 1/3 in", units.ErrInexact, 11, "the nearest length is 8.466666667 mm"},
		{"72 +0.020/0 mm", units.ErrSyntax, 2, "72 +0.020/-0 mm"},
		{"72 +0.020 mm", units.ErrSyntax, 2, "72 +0.020/-0 mm"},
		{"72 +0.020/-0/-1 mm", units.ErrUnknownUnit, 9, ""},
		{"72 +0.020 -0", units.ErrMissingUnit, 9, ""},
		{"1 to 2 to 3 mm", units.ErrUnknownUnit, 7, ""},
	}
	checkRefusals(t, "limits", reader(units.ParseLimits), rs)
	for _, r := range rs {
		w := units.Limits{Max: 7}
		if got, err := units.ParseLimits(r.text); got != (units.Limits{}) {
			t.Errorf("%q gives %v with %v", r.text, got, err)
		}
		if err := w.UnmarshalText([]byte(r.text)); (err == nil) != (r.text == "") || r.text != "" && w != (units.Limits{Max: 7}) {
			t.Errorf("UnmarshalText(%q) left %v, %v", r.text, w, err)
		}
	}
}

func TestLimitsEdges(t *testing.T) {
	const um = units.Micrometre
	inward := func(w units.Limits, grid units.Length, want units.Limits, wantErr error) {
		t.Helper()
		if got, err := w.Inward(grid); got != want || !errors.Is(err, wantErr) {
			t.Errorf("%v inward to %v: %v, %v, want %v, %v", w, grid, got, err, want, wantErr)
		}
	}
	inward(units.Limits{Min: 101 * um, Max: 109 * um}, 10*um, units.Limits{}, units.ErrRange)
	inward(units.Limits{Min: 101 * um, Max: 110 * um}, 10*um, units.Limits{Min: 110 * um, Max: 110 * um}, nil)
	inward(units.Limits{Max: 9 * um}, 10*um, units.Limits{}, units.ErrRange)                // max 0
	inward(units.Limits{Min: -9 * um, Max: 15 * um}, 10*um, units.Limits{}, units.ErrRange) // 0 to 10
	inward(units.Limits{Min: 1 * um, Max: 9 * um}, 10*um, units.Limits{}, units.ErrRange)
	inward(units.Limits{Min: 2 * um, Max: um}, um, units.Limits{}, units.ErrCrossed)
	inward(units.Limits{Min: math.MaxInt64}, 10, units.Limits{}, units.ErrRange) // saturated
	inward(units.Limits{}, um, units.Limits{}, nil)
	inward(units.Limits{}, 0, units.Limits{}, units.ErrRange)
	inward(units.Limits{Min: um}, -um, units.Limits{}, units.ErrRange)

	if d, ok := (units.Limits{Min: math.MinInt64, Max: math.MaxInt64}).Width(); ok {
		t.Errorf("a width of %v fits in a Length", d)
	}
	if d, ok := (units.Limits{Min: 5, Max: 3}).Width(); d != -2 || !ok {
		t.Errorf("a crossed window is %v wide, %v", d, ok)
	}
	if m, ok := (units.Limits{Min: 2, Max: 5}).Middle(); m != 4 || !ok {
		t.Errorf("the middle of 2 and 5 pm is %v, %v", m, ok)
	}
	for _, c := range []struct {
		w units.Limits
		d units.Length
	}{
		{units.Limits{Max: math.MaxInt64}, 1},
		{units.Limits{Max: math.MinInt64}, -1},
		{units.Limits{Min: math.MinInt64}, -1},
		{units.Limits{Min: math.MaxInt64}, 1},
		{units.Limits{Min: um}, -um},
		{units.Limits{Min: um, Max: 2 * um}, -2 * um},
		{units.Limits{Min: math.MinInt64, Max: 1}, -3},
	} {
		if got, err := c.w.Shift(c.d); !errors.Is(err, units.ErrRange) || got != (units.Limits{}) {
			t.Errorf("%v shifted by %v: %v, %v, want ErrRange", c.w, c.d, got, err)
		}
	}
}
