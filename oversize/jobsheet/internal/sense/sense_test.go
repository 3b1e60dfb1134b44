// SPDX-License-Identifier: BSD-3-Clause

package sense

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/units"
)

const mm, um = units.Millimetre, units.Micrometre

// TestRules: each rule at both ends of what can be and a hair beyond, in a bore of 80 mm.
func TestRules(t *testing.T) {
	nan := math.NaN()
	can := map[string][]any{
		"far": {units.Length(0), 5 * units.Metre}, "wide": {um, units.Metre}, "fine": {um, mm / 2}, "inside": {um, 80 * mm},
		"near":  {units.Length(0), 72 * mm, 88 * mm, units.Limits{Min: 72 * mm, Max: 88 * mm}, units.Limits{Max: 88 * mm}},
		"small": {units.Length(0), 4 * mm, units.Limits{Min: -mm, Max: 4 * mm}}, "window": {units.Limits{}, units.Limits{Min: um, Max: um}, units.Limits{Min: um, Max: mm}},
		"valid": {units.Frequency(1)}, "turning": {units.Frequency(0), 100_000 * units.PerMinute},
		"apart": {units.TemperatureChange(0), units.TemperatureChange(100)}, "tolerance": {units.Angle(0), 90 * units.Degree},
		"volume": {units.Volume(0), units.Volume(1)}, "ratio": {1.001, 100.}, "share": {0.5, 1.},
	}
	cannot := map[string][]any{
		"far": {-um, 5*units.Metre + 1}, "wide": {-um, units.Metre + 1}, "fine": {-um, mm/2 + 1}, "inside": {-um, 80*mm + 1},
		"near":  {72*mm - 1, 88*mm + 1, -80 * mm, units.Limits{Min: 72*mm - 1, Max: 80 * mm}, units.Limits{Min: 80 * mm, Max: 88*mm + 1}},
		"small": {-um, 4*mm + 1, units.Limits{Max: 4*mm + 1}}, "window": {units.Limits{Min: mm, Max: um}, units.Limits{Max: mm}, units.Limits{Min: um}, units.Limits{Min: -um, Max: um}},
		"valid": {units.Frequency(nan)}, "turning": {-units.PerMinute, 100_001 * units.PerMinute, units.Frequency(nan)},
		"apart": {units.TemperatureChange(-1), units.TemperatureChange(100.1), units.TemperatureChange(nan)}, "tolerance": {-units.Degree, 91 * units.Degree},
		"volume": {units.Volume(-1), units.Volume(1.01)}, "ratio": {1., 101., nan}, "share": {0.49, 1.01, nan},
	}
	for name, rule := range Rules(80 * mm) {
		if len(can[name]) == 0 || len(cannot[name]) == 0 {
			t.Errorf("%s is not tried", name)
		}
		for _, v := range can[name] {
			if err := rule(v); err != nil {
				t.Errorf("%s, %v: %v", name, v, err)
			}
		}
		for _, v := range cannot[name] {
			if rule(v) == nil {
				t.Errorf("%s, %v: not refused", name, v)
			}
		}
	}
	// What is left out as a pointer is not wrong either; beside a nominal bore that is a fault itself nothing is far.
	left := Rules(80 * mm)["far"]((*units.Length)(nil))
	if l := 6 * units.Metre; left != nil || Rules(80 * mm)["far"](&l) == nil || Near(mm, 0) != nil || Near(mm, -mm) != nil || Near(mm, 2*units.Metre) != nil || Small(-mm, 0) != nil {
		t.Error("left out")
	}
}

// TestUsual: each band ends where it says: what it prints as usual is, at both ends, and a tenth beyond is asked about;
// nothing is never.
func TestUsual(t *testing.T) {
	e := Engine{Bore: 80 * mm, Stroke: 76 * mm, Seat: 84 * mm, Step: 2 * um}
	lengths := 0
	for name, ask := range e.Usual() {
		switch name {
		case "ratio", "workshop", "running", "place to place", "honing", "tolerance", "angle doubt", "crosshatch", "depth":
			continue // below
		}
		lengths++
		if says := ask(units.Length(0)); says != "" {
			t.Errorf("%s of nothing: %s", name, says)
		}
		asks := func(l units.Length) bool { return ask(l) != "" }
		// The band is one stretch: between what is too small and what is too large.
		var usual []units.Length
		for l := 100 * units.Nanometre; l < 2*units.Metre; l += l/1000 + 1 {
			if !asks(l) {
				usual = append(usual, l)
			}
		}
		if len(usual) < 2 {
			t.Errorf("%s: nothing is usual", name)
			continue
		}
		least, most := usual[0], usual[len(usual)-1]
		for l := least; l < most; l += l/1700 + 1 {
			if asks(l) {
				t.Errorf("%s: %v is asked about, %v and %v are not", name, l, least, most)
			}
		}
		w := units.Limits{Min: least, Max: most}
		if !strings.Contains(name, "doubt") && (ask(w) != "" || ask(units.Limits{Min: least / 2, Max: most}) == "" || ask(units.Limits{Min: least, Max: 2 * most}) == "") {
			t.Errorf("%s: both ends of a window", name)
		}
		if text := ask(2 * most); !strings.HasSuffix(text, "is usual") || strings.HasPrefix(text, "a doubt of ") != strings.HasSuffix(name, "doubt") {
			t.Errorf("%s: %q", name, text)
		}
	}
	if lengths < 25 {
		t.Errorf("only %d bands of lengths", lengths)
	}
	bands := e.Usual()
	at := func(value units.Temperature, within units.TemperatureChange) bore.Temperature {
		return bore.Temperature{Value: value, Within: within}
	}
	const warm = units.ReferenceTemperature
	flat, _ := hone.Included(14 * units.Degree)
	wanted, _ := hone.Included(45 * units.Degree)
	low, high := oversize.UsualRatio()
	for name, c := range map[string][2][]any{ // usual, asked about
		"ratio":          {{0., low, high}, {low - 0.1, high + 0.1}},
		"workshop":       {{at(warm, 0), at(warm, 0.1), at(warm, 15)}, {at(warm, 0.09), at(warm, 15.1), at(warm-60, 2), at(warm+60, 2)}},
		"running":        {{at(warm+100, 20), at(warm+100, 60)}, {at(warm+100, 61), at(warm-40, 20), at(warm+800, 20)}},
		"place to place": {{units.TemperatureChange(0), units.TemperatureChange(0.1), units.TemperatureChange(5)}, {units.TemperatureChange(0.05), units.TemperatureChange(5.1)}},
		"honing":         {{warm, warm + 90}, {warm - 60, warm + 91}},
		"tolerance":      {{units.Angle(0), units.Degree, 15 * units.Degree}, {units.Degree / 2, 16 * units.Degree}},
		"angle doubt":    {{units.Degree / 5, 10 * units.Degree}, {units.Degree / 6, 11 * units.Degree}},
		"crosshatch":     {{wanted}, {flat}},
		"depth":          {{152 * mm}, {152*mm + 1}},
	} {
		for _, v := range c[0] {
			if says := bands[name](v); says != "" {
				t.Errorf("%s, %v: %s", name, v, says)
			}
		}
		for _, v := range c[1] {
			if bands[name](v) == "" {
				t.Errorf("%s, %v: not asked about", name, v)
			}
		}
	}
	e.Length = 300 * mm
	if e.Usual()["depth"](200*mm) != "" {
		t.Error("a bore of which the length is given ends there")
	}
	if !slices.Contains([]string{"0.001 to 0.050 mm is usual", "0.001 mm to 0.05 mm is usual", "0.001 to 0.05 mm is usual"}, bands["bar"](mm)) {
		t.Error(bands["bar"](mm))
	}
}

// TestUsualAtTheBench: what no room owns is usual from one end to the other (common practice), by a gauge that reads to 2 µm in a
// bore of 80 mm.
func TestUsualAtTheBench(t *testing.T) {
	const nm = units.Nanometre
	bands := Engine{Bore: 80 * mm, Stroke: 76 * mm, Seat: 84 * mm, Step: 2 * um}.Usual()
	for name, band := range map[string]units.Limits{
		"shift": {Min: um, Max: 160 * um}, "slip": {Min: 20 * um, Max: 200 * um}, "hot gap": {Min: 20 * um, Max: 200 * um},
		"side": {Min: 10 * um, Max: 250 * um}, "play": {Min: 50 * um, Max: 1500 * um}, "coating": {Min: 3 * um, Max: 40 * um},
		"resolution": {Min: 400 * nm, Max: 20 * um}, "scatter": {Min: 400 * nm, Max: 20 * um}, "dial": {Min: 400 * nm, Max: 8 * um},
		"spindle": {Min: 100 * nm, Max: 30 * um}, "spindle scatter": {Min: 100 * nm, Max: 3 * um}, "bar": {Min: um, Max: 50 * um}, "skin": {Min: um, Max: 20 * um},
		"doubt": {Min: 500 * nm, Max: 30 * um}, "gap doubt": {Min: 5 * um, Max: 120 * um}, "wall doubt": {Min: 50 * um, Max: 1500 * um},
	} {
		ask := bands[name]
		if ask(band.Min) != "" || ask(band.Max) != "" || ask(band.Min-1) == "" || ask(band.Max+1) == "" {
			t.Errorf("%s: not %v: %q %q %q %q", name, band, ask(band.Min-1), ask(band.Min), ask(band.Max), ask(band.Max+1))
		}
	}
}
