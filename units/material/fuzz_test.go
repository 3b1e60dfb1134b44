// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"math"
	"testing"

	"borewright.example/units/material"
)

func FuzzParseDensity(f *testing.F) {
	for _, s := range []string{
		"7.2 g/cm³", "7200 kg/m3", "7.2e3kg/m³", // read
		"7.2", "7,2 g/cm³", "-1 g/cm3", "1e400 kg/m3", "0x7 g/cm3", "NaN kg/m3", "g", "", // refused
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		d, err := material.ParseDensity(s)
		if err != nil {
			if d != 0 {
				t.Fatalf("%q gives %v with %v", s, d, err)
			}
			return
		}
		if !(d >= 0 && d <= 1e6) {
			t.Fatalf("%q is %v", s, float64(d))
		}
		back, err := material.ParseDensity(d.String())
		if d > 1e-280 && (err != nil || math.Abs(float64(back-d)) > 1e-11*float64(d)) {
			t.Fatalf("%q is %v, which reads back as %v, %v", s, d, back, err)
		}
	})
}
