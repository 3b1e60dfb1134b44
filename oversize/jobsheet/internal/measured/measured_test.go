// SPDX-License-Identifier: BSD-3-Clause

package measured

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

const mm, um = units.Millimetre, units.Micrometre

// TestParse: what may be written, and what it says.
func TestParse(t *testing.T) {
	for text, want := range map[string]Value{
		"78.194 mm":                      {78_194 * um, 0, 0},
		"78.194 ± 0.004 mm":              {78_194 * um, 4 * um, 0},
		"78.194 mm ± 4 µm":               {78_194 * um, 4 * um, 0},
		"78.190 ± 0.004 mm":              {78_190 * um, 4 * um, 0},
		"78.199 ± 0.004 mm":              {78_199 * um, 4 * um, 0},
		"78.194±0.004mm":                 {78_194 * um, 4 * um, 0},
		"78.194 ± 0.004 mm (9 readings)": {78_194 * um, 4 * um, 9},
		"3 ± 0.0002 in (2 readings)":     {3 * units.Inch, units.Inch / 5000, 2},
		"0.21 ± 0.03 mm (1000 readings)": {210 * um, 30 * um, 1000},
		"-0.2 mm":                        {-200 * um, 0, 0},
	} {
		if got, err := Parse(text); err != nil || got != want {
			t.Errorf("%s: %+v, %v", text, got, err)
		}
	}
	for _, text := range []string{
		"", "±", "78.194", "78.194 ± 0.004", "78.194 ± mm", "± 0.004 mm", "78.194 ± 0 mm", "78.194 ± -0.004 mm", "78 mm (9 readings)", "78.194 ± 0.004 mm (9)",
		"78.194 ± 0.004 mm (1 readings)", "78.194 ± 0.004 mm (1001 readings)", "78.194 ± 0.004 mm (9 readings", "78.194 ± 0.004 mm (9", "78.194 ± 0.004 mm (x readings)", "78.194 ± 0.004 ± 0.001 mm",
	} {
		if got, err := Parse(text); err == nil || got != (Value{}) {
			t.Errorf("%q: %+v", text, got)
		}
	}
}

// TestText: every value is read back from its text.
func TestText(t *testing.T) {
	r := rand.New(rand.NewPCG(16, 88))
	for range 2000 {
		v := Value{Value: units.Length(r.Int64N(int64(units.Metre))) + 1}
		if r.IntN(3) > 0 {
			v.Expanded = units.Length(r.Int64N(int64(mm))) + 1
			if r.IntN(2) > 0 {
				v.Readings = 2 + r.IntN(MostReadings-1)
			}
		}
		if got, err := Parse(v.String()); err != nil || got != v {
			t.Fatalf("%+v as %q: %+v, %v", v, v.String(), got, err)
		}
	}
}

// TestEstimate by hand: half of a certificate's doubt; of nine readings' the 1/2.306 of Student's t for eight degrees of freedom
// (JCGM 100, table G.2); of what came without one half of what is usual.
func TestEstimate(t *testing.T) {
	for _, c := range []struct {
		v    Value
		want uncertainty.Estimate
	}{
		{Value{}, uncertainty.Estimate{}},
		{Value{78 * mm, 4 * um, 0}, uncertainty.Estimate{Value: 78 * mm, Std: 2 * um}},
		{Value{78 * mm, 0, 0}, uncertainty.Estimate{Value: 78 * mm, Std: 5 * um}},
		{Value{78 * mm, 4 * um, 9}, uncertainty.Estimate{Value: 78 * mm, Std: 1735 * units.Nanometre, DoF: 8}},
	} {
		got := c.v.Estimate(10 * um)
		if got.Value != c.want.Value || got.DoF != c.want.DoF || math.Abs(float64(got.Std-c.want.Std)) > float64(units.Nanometre) {
			t.Errorf("%v: %+v, want %+v", c.v, got, c.want)
		}
	}
}
