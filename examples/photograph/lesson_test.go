// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	if testing.Short() {
		t.Skip("renders and measures 50 walls")
	}
	steep, tilted := shipped, shipped
	steep.included, steep.round, steep.along = 100*units.Degree, 5*units.Millimetre, 10*units.Millimetre
	tilted.tilt, tilted.second = -40*units.Degree, 0.7
	onesided := shipped
	onesided.second = 0
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "steep": steep, "tilted": tilted, "onesided": onesided},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

// draw returns walls that give an angle, and more that give none: those are soon refused.
func draw(r *rand.Rand) data {
	span := func(a, b float64) float64 { return a + r.Float64()*(b-a) }
	tenth := func(x float64) units.Length { return units.Length(math.Round(10*x)) * units.Millimetre / 10 }
	d := data{
		bore: tenth(span(40, 150)), round: tenth(span(6, 10)), included: units.Angle(math.Round(span(30, 100))) * units.Degree,
		tilt: units.Angle(math.Round(span(-25, 25))) * units.Degree, depth: math.Round(span(30, 60)), second: span(0.7, 1.2),
	}
	d.along = tenth(d.round.In(units.Millimetre) * span(0.45, 0.55))
	switch r.IntN(9) {
	case 0:
		d.bore = -d.bore
	case 1:
		d.included = units.Angle(180*r.IntN(2)) * units.Degree
	case 2:
		d.tilt = 80 * units.Degree
	case 3:
		d.depth = 0
	case 4:
		d.second = 0
	case 5:
		d.along = d.round
	case 6:
		d.round = 0
	}
	return d
}

func claims(d data) map[string]bool {
	switch {
	case d.bore <= 0, d.round <= 0, d.included <= 0, d.included >= math.Pi, d.tilt > 1.2:
		return map[string]bool{lessontest.Refused: true, "are wanted": true}
	case d.round == d.along:
		return map[string]bool{lessontest.Refused: true, "a quarter turn round as well": true}
	case d.depth == 0:
		return map[string]bool{lessontest.Refused: true}
	case d.second == 0:
		return map[string]bool{lessontest.Refused: true, "not two families of lines": true}
	}
	c := map[string]bool{
		lessontest.Refused: false,
		fmt.Sprintf("The wall was drawn with %.1f°", d.included.In(units.Degree)): true,
		"The sides of the label taken for one another: refused":                   true,
	}
	if math.Abs(d.tilt.In(units.Degree)) > 8 { // nearer to square, the curve of the wall decides
		c["t = acos("] = true
	}
	return c
}
