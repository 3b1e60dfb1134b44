// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"testing"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func mm(s string) units.Length { return units.MustParseLength(s + " mm") }

func exact(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }

// worn returns a cylinder of known walls: unworn size, and the greatest diameter, with clean-up
// sizes on both centres.
func worn(largest, original, centred, shift units.Length) oversize.Cylinder {
	at := func(l units.Length) bore.Interval { return bore.Interval{Least: exact(l), Greatest: exact(l)} }
	return oversize.Cylinder{
		Name: "1", Largest: exact(largest), Smallest: exact(mm("67.000")),
		CleanUp:  bore.CleanUp{Original: at(original), Worn: at(centred), Shift: shift},
		Findings: []uncertainty.Finding{{Subject: "size", Measured: exact(largest), Limits: units.Limits{Max: mm("67.1")}, Verdict: uncertainty.Beyond}},
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
		name   string
		e      oversize.Engine
		c      oversize.Cylinder
		want   units.Length
		centre oversize.Centre
	}{
		// The rule "a spot worn larger than the first oversize takes the next" is that of a United
		// States handbook of aircraft powerplants; the numbers are computed.
		{"worst spot 67.31", fixed, worn(mm("67.31"), mm("67.31"), mm("67.31"), 0), mm("0.50"), oversize.OriginalCentre},
		// Computed: wear of 0.15 on one side, 0.02 of surface allowance all round.
		{"original centre", fixed, worn(mm("67.15"), mm("67.34"), mm("67.19"), mm("0.075")), mm("0.50"), oversize.OriginalCentre},
		{"worn centre", shifting, worn(mm("67.15"), mm("67.34"), mm("67.19"), mm("0.075")), mm("0.25"), oversize.WornCentre},
	} {
		c, err := oversize.Choose(test.e, []oversize.Cylinder{test.c}, uncertainty.Risk{})
		if err != nil || c.Route != oversize.BoreOversize || c.Over != test.want || c.Cylinders[0].Centre != test.centre {
			t.Errorf("%s: %+v, %v; want %v over on the %v", test.name, c, err, test.want, test.centre)
		}
	}
}
