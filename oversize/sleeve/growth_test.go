// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"math"
	"testing"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// TestGrowthOfASlackFit: parts with a clearance of 0.02 mm down to none at 20 °C, of which the
// sleeve grows more: hot they grip, and the bore falls behind the sleeve's own growth by what it
// closes in. Worked from the definition, with the closing-in that Fit gives for one interference.
func TestGrowthOfASlackFit(t *testing.T) {
	j := demoJoint()
	s := must(j.Fit())
	closing := s.BoreCloses.Min.In(um) / 60 // for a unit of interference
	j.Sleeve.Expansion, j.Barrel.Expansion = 24e-6, 10e-6
	j.Interference = sleeve.Diametral{Min: -20 * um, Max: 1}
	const dT = 100
	g := must(j.Growth(units.ReferenceTemperature + dT))
	at := func(d float64) float64 { // µm
		overlap := (73_000+d)*(1+24e-6*dT) - 73_000*(1+10e-6*dT)
		return 24e-6 - closing*overlap/(67_000*dT)
	}
	close64(t, "least, /K", float64(g.Expansion-g.Within), at(1e-6), 1e-13)
	close64(t, "greatest, /K", float64(g.Expansion+g.Within), at(-20), 1e-13)
	// Cold, they part further: the sleeve's own growth.
	g = must(j.Growth(units.ReferenceTemperature - 50))
	close64(t, "cold, greatest, /K", float64(g.Expansion+g.Within), 24e-6, 1e-13)
}

// scan returns the least and the greatest mean coefficient of exact joints, made by step for
// fractions 0 to 1.
func scan(step func(x float64) sleeve.Joint, at units.Temperature) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	const steps = 4000
	for i := range steps + 1 {
		m := float64(must(step(float64(i) / steps).Growth(at)).Expansion)
		lo, hi = min(lo, m), max(hi, m)
	}
	return lo, hi
}

// TestGrowthAtItsKink: of a soft sleeve in a stiff barrel the hotter bore is largest where the grip
// is just gone, which lies inside the spread of the coefficients and not at its ends. By trial.
func TestGrowthAtItsKink(t *testing.T) {
	j := demoJoint()
	j.Sleeve.Young, j.Barrel.Young = 60e9, 220e9
	j.Outer = plain(150 * mm)
	j.Sleeve.Expansion, j.Barrel.Expansion = 12e-6, 18e-6
	for _, at := range []units.Temperature{units.ReferenceTemperature + 150, units.ReferenceTemperature + 120} {
		ranged := j
		ranged.Sleeve.Within = 2e-6
		g := must(ranged.Growth(at))
		lo, hi := scan(func(x float64) sleeve.Joint {
			k := j
			k.Sleeve.Expansion += units.Expansion(2e-6 * (2*x - 1))
			return k
		}, at)
		// A step of 1e-9/K can miss the kink by as much.
		close64(t, "least, /K", float64(g.Expansion-g.Within), lo, 1e-9)
		close64(t, "greatest, /K", float64(g.Expansion+g.Within), hi, 1e-9)
		for _, end := range []units.Expansion{-2e-6, 2e-6} {
			k := j
			k.Sleeve.Expansion += end
			if m := must(k.Growth(at)).Expansion; float64(m) > hi-2e-8 {
				t.Errorf("at %v an end has %v, the kink only %v", at, m, hi)
			}
		}
	}
}

// TestGrowthMaterial: the material says between which temperatures its coefficient is the mean.
func TestGrowthMaterial(t *testing.T) {
	j := demoJoint()
	for _, at := range []units.Temperature{253.15, 293.15, 333.15} {
		m := must(j.Growth(at))
		if m.From != min(at, units.ReferenceTemperature) || m.To != max(at, units.ReferenceTemperature) || m.Name == "" || m.Source == "" {
			t.Errorf("at %v: %+v", at, m)
		}
	}
}
