// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	perfect, lobes := shipped, shipped
	perfect.dial = slices.Repeat([]float64{12}, 24)
	lobes.dial = nil
	for i := range 30 {
		lobes.dial = append(lobes.dial, math.Round(40*math.Cos(float64(i)/5*math.Pi)))
	}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "true": perfect, "lobes": lobes},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{radius: units.Length(10+r.Int64N(100)) * units.Millimetre}
	n := 8 + r.IntN(9)
	off, phase, lobes, rough := 50*r.Float64(), r.Float64(), float64(2+r.IntN(3)), 5*r.Float64()
	high := 30 * r.Float64()
	for i := range n {
		turn := float64(i) / float64(n)
		d.dial = append(d.dial, math.Round(10*(off*math.Cos(2*math.Pi*(turn-phase))+high*math.Cos(2*math.Pi*turn*lobes)+rough*r.NormFloat64()))/10)
	}
	switch r.IntN(20) {
	case 0:
		d.dial = d.dial[:r.IntN(3)]
	case 1:
		d.radius = 0
	case 2:
		for i := range d.dial {
			d.dial[i] = 7
		}
	}
	return d
}

// claims knows what is read about the spindle, and a wall that is round.
func claims(d data) map[string]bool {
	if len(d.dial) < 4 || d.radius <= 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	c := map[string]bool{
		lessontest.Refused: false,
		fmt.Sprintf("Roundness counted about the spindle: %.1f µm", slices.Max(d.dial)-slices.Min(d.dial)): true,
		fmt.Sprintf("The question: %d radii", len(d.dial)):                                                 true,
	}
	if slices.Max(d.dial) == slices.Min(d.dial) {
		c["LSCI  x  +0.00 y  +0.00 µm  2R = "+(2*d.radius+14*units.Micrometre).Format(units.Millimetre, 4)] = d.dial[0] == 7
	}
	return c
}
