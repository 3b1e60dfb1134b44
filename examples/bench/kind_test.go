// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math/rand/v2"
	"strings"
	"testing"
)

// TestTyped: what is typed becomes the text of the job, as typed but for a decimal comma that can be nothing else.
func TestTyped(t *testing.T) {
	for _, c := range []struct {
		field string
		parts []string
		want  string
	}{
		{"engine.bore", []string{"78.166", " mm"}, "78.166 mm"},
		{"engine.bore", []string{" 78.166 ", " mm"}, "78.166 mm"},
		{"engine.bore", []string{"3 1/8", " in"}, "3 1/8 in"},
		{"engine.bore", []string{"3 1/8 in", ""}, "3 1/8 in"},
		{"engine.bore", []string{"3.125 in", " mm"}, "3.125 in"}, // the unit that was typed is meant
		{"engine.bore", []string{"78,166", " mm"}, "78.166 mm"},  // 78 m of bore cannot be
		{"engine.bore", []string{"3,125", " in"}, "3.125 in"},
		{"engine.bore", []string{"78,16", " mm"}, "78.16 mm"},
		{"engine.bore", []string{"0,050", " mm"}, "0.050 mm"},
		{"engine.bore", []string{"1,234", " mm"}, "1,234 mm"}, // may be either: the library refuses it, and the page says what to type
		{"engine.bore", []string{"1,234.5", " mm"}, "1,234.5 mm"},
		{"engine.bore", []string{"1,2,3", " mm"}, "1,2,3 mm"},
		{"engine.bore", []string{"", " in"}, ""},
		{"engine.bore", []string{"thick", " mm"}, "thick mm"},
		{"engine.limits.new_bore", []string{"78.000", " to ", "78.020", " mm"}, "78.000 to 78.020 mm"},
		{"engine.limits.new_bore", []string{"78.010", " ± ", "0.010", " mm"}, "78.010 ± 0.010 mm"},
		{"engine.limits.new_bore", []string{"", " to ", "78.020", " mm"}, "max 78.020 mm"},
		{"engine.limits.new_bore", []string{"78.000", " to ", "", " mm"}, "min 78.000 mm"},
		{"engine.limits.new_bore", []string{"78,000", " to ", "78,020", " mm"}, "78.000 to 78.020 mm"},
		{"engine.limits.new_bore", []string{"", " to ", "", " mm"}, ""},
		{"gauge.standard.size", []string{"78.003", " ± ", "0.002", " mm"}, "78.003 ± 0.002 mm"},
		{"gauge.standard.size", []string{"78.003", " ± ", "", " mm"}, "78.003 mm"},
		{"gauge.temperatures.cylinder", []string{"10", " to ", "25", " °C"}, "10 to 25 °C"},
		{"gauge.temperatures.cylinder", []string{"21", " ± ", "", " °C"}, "21 °C"},
		{"tools.crosshatch", []string{"45", "° included"}, "45° included"},
		{"tools.stroking", []string{"20", " to ", "60", " cycles/min"}, "20 to 60 cycles/min"},
		{"cylinders[].honing[].lasts", []string{"15", "s"}, "15s"},
		{"engine.compression_ratio", []string{"7,2"}, "7.2"},
		{"title", []string{"Pump, old"}, "Pump, old"},
	} {
		k := kinds[c.field]
		got := k.typed(c.parts)
		if got != c.want {
			t.Errorf("%s %q: %q, want %q", c.field, c.parts, got, c.want)
		}
		if back := k.typed(k.shows(got)); back != got && !strings.Contains(got, "1,2") {
			t.Errorf("%s: %q is shown as %q, which is %q", c.field, got, k.shows(got), back)
		}
	}
}

// TestCommaAsked: a comma that may part thousands is asked about, with both ways to write it.
func TestCommaAsked(t *testing.T) {
	a := after(t, "unread", Entry{"set", "engine.gasket_hole", []string{"1,234", " mm"}})
	if a.Sheet != "" || !strings.Contains(a.Head, "1.234") || !strings.Contains(a.Head, "1234") {
		t.Errorf("%s", a.Head)
	}
}

// TestSplit: however a text is parted among the boxes of a field, together they give that text again.
func TestSplit(t *testing.T) {
	r := rand.New(rand.NewPCG(1, 2))
	bits := []string{"78", "78.020", "0", "-", "+", " ", " to ", " ± ", "±", " mm", " in", "mm", "°", " °C", "s", "max ", "min ", " rev/min", "° included", "x", ",", "3 1/8", " cycles/min", "(9 readings)"}
	paths, _ := leaves()
	for range 20_000 {
		var b strings.Builder
		for range 1 + r.IntN(5) {
			b.WriteString(bits[r.IntN(len(bits))])
		}
		path := paths[r.IntN(len(paths))]
		k := kinds[path]
		if k.boxes == 0 || k.several {
			continue
		}
		if got := k.joined(k.split(b.String())); got != b.String() {
			t.Fatalf("%s: %q is %+v, which is %q", path, b.String(), k.split(b.String()), got)
		}
	}
}
