// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// shot is what a person says of the picture; the corners are off by half a pixel where there is a chance.
func (c *camera) shot(dark func(x, y float64) float64, chance *rand.Rand) photo.Shot {
	const micro = float64(units.Micrometre)
	s := photo.Shot{
		Picture: c.photograph(dark), Bore: units.Length(math.Round(c.bore * 1000 * micro)), Whole: true, Corners: c.corners(),
		Label: photo.Label{Round: units.Length(c.round * 1000 * micro), Along: units.Length(c.along * 1000 * micro)},
	}
	for i := range s.Corners {
		if chance != nil {
			s.Corners[i].X += chance.NormFloat64() / 2
			s.Corners[i].Y += chance.NormFloat64() / 2
		}
	}
	return s
}

// expanded is the doubt of an angle in degrees, 95 %.
func expanded(t *testing.T, m photo.Measured) float64 {
	t.Helper()
	k, err := uncertainty.Coverage(0.95, m.DoF)
	if err != nil {
		t.Fatal(err)
	}
	return k * m.Std.In(units.Degree)
}

func text(x float64) string { return strconv.FormatFloat(x, 'g', -1, 64) }

// A lens that bends by 3 % at the corners, either way, dark corners, light that rolls: the angle stays within its
// doubt, and goes as far as the part of the doubt for it says: 1.5 % is its standard uncertainty, and over so little
// what it does is in proportion to it, to a fifth.
func TestLensThatBends(t *testing.T) {
	const truth = 70
	c := camera{bore: 80, round: 10, along: 5, w: 560, h: 420, f: 670, away: 30, tilt: 8, roll: 15, shade: 0.4, flicker: 0.1}
	dark := darkness(ruled(t, text(truth), "80", "10x5"), 25)
	var ends [2]float64
	var part float64
	for i, bend := range [2]float64{-0.03, 0.03} {
		c.bend = bend
		m, err := c.shot(dark, nil).Crosshatch()
		if err != nil {
			t.Fatal(err)
		}
		ends[i] = m.Crosshatch.Included().In(units.Degree)
		if u := expanded(t, m); math.Abs(ends[i]-truth) > u || u > 1.2 {
			t.Errorf("bent by %v: %.2f° ± %.2f°", bend, ends[i], u)
		}
		for _, p := range m.Budget.Components {
			if p.Name == "bend of the lens" {
				part = p.Std
			}
		}
	}
	if moved := math.Abs(ends[1]-ends[0]) / 4; !(math.Abs(moved-part) <= part/5) {
		t.Errorf("1.5 %% move the angle by %.3f°, the part says %.3f°", moved, part)
	}
}
