// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"math"
	"testing"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
)

const (
	mm = units.Millimetre
	um = units.Micrometre
)

// demoIron and demoAluminium are invented metals of a village workshop's irrigation-pump engine.
// Their figures are typical ones, stated here so that no table can move the answers of this file.
func demoIron() material.Material {
	return material.Material{
		Name: "grey iron sleeve", Expansion: 11.4e-6 * units.PerKelvin,
		Young: 110 * units.Gigapascal, Poisson: 0.26, Tensile: 207 * units.Megapascal,
	}
}

func demoAluminium() material.Material {
	return material.Material{
		Name: "aluminium barrel", Expansion: 21.5e-6 * units.PerKelvin,
		Young: 71 * units.Gigapascal, Poisson: 0.33, Tensile: 228 * units.Megapascal, Yield: 165 * units.Megapascal,
	}
}

func exactly(l units.Length) sleeve.Diametral { return sleeve.Diametral{Min: l, Max: l} }

func plain(l units.Length) units.Limits { return units.Limits{Min: l, Max: l} }

// demoJoint is an iron sleeve 67/73 mm in an aluminium barrel of 90 mm, DIAMETRAL interference
// 0.06 mm.
func demoJoint() sleeve.Joint {
	return sleeve.Joint{
		Bore: 67 * mm, Seat: 73 * mm, Outer: plain(90 * mm), Interference: exactly(60 * um),
		Sleeve: demoIron(), Barrel: demoAluminium(),
	}
}

// steel is any elastic metal with the modulus.
func elastic(e units.Pressure, poisson float64) material.Material {
	return material.Material{Young: e, Poisson: poisson}
}

func close64(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %v, want %v ± %v", what, got, want, tol)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

// errText is an error's text, or "" for none.
func errText(err error) string {
	if err == nil {
		return ""
	}
	return err.Error()
}

// room is 20 °C.
const room = units.ReferenceTemperature
