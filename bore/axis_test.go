// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
)

// An axis is named to a tenth of a degree: what is so near to half a turn is the thrust axis again.
func TestAxisIsNamedToATenth(t *testing.T) {
	for at, want := range map[float64]string{
		0: "thrust", 0.04: "thrust", 0.06: "0.1°", -0.04: "thrust", 179.94: "179.9°", 179.96: "thrust", 180: "thrust", 539.96: "thrust",
		89.94: "89.9°", 89.96: "pin", 270.04: "pin", -45: "135°",
	} {
		if got := bore.Axis(degrees(at)).String(); got != want {
			t.Errorf("%v° is %q, want %q", at, got, want)
		}
	}
}

// A choke as large as the taper that is allowed either way can be had, one larger cannot.
func TestChokeWithinTheTaper(t *testing.T) {
	g, err := bore.Layout{Stroke: 52 * mm}.Analyse([]bore.Reading{at(12, 0, "94.92 mm"), at(88, 0, "95 mm")}, bore.Gauge{})
	must(t, g, err)
	for choke, possible := range map[units.Length]bool{80 * um: true, 80*um + 1: false} {
		fs, err := g.Judge(bore.Limits{Taper: 80 * um, Choke: units.Limits{Min: choke, Max: mm}}, noRisk)
		if possible != (err == nil && len(fs) == 2) {
			t.Errorf("choke of %v: %v, %v", choke, fs, err)
		}
	}
}
