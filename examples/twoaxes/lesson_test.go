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
	round, lucky := shipped, shipped
	round.ovality = 0
	lucky.lies, lucky.ovality = 95, 7*units.Micrometre
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "round": round, "lucky": lucky},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{
		mean:    units.Length(20+r.Int64N(200)) * units.Millimetre,
		ovality: units.Length(r.Int64N(150)) * units.Micrometre,
		lies:    math.Round(r.Float64()*7200-3600) / 10,
	}
	switch r.IntN(15) {
	case 0:
		d.ovality = -d.ovality - 1
	case 1:
		d.ovality = 0
	case 2:
		d.lies = float64(45 * r.IntN(5))
	case 3:
		d.lies = 400
	case 4:
		d.mean = -d.mean
	case 5:
		d.ovality = units.Micrometre
	}
	return d
}

func claims(d data) map[string]bool {
	if d.ovality < 0 || d.mean < 0 || math.Abs(d.lies) > 360 {
		return map[string]bool{lessontest.Refused: true}
	}
	v := d.ovality.In(units.Millimetre)
	seen := v * math.Abs(math.Cos(d.lies/180*math.Pi*2))
	if d.ovality > 0 && math.Abs(seen-0.9*v) < 1e-6 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:           false,
		"This wall is round":         d.ovality == 0,
		"kept on paper":              v > 0 && seen < 0.9*v,
		"by luck":                    v > 0 && seen > 0.9*v,
		"At 45° they read 0.0000 mm": true,
	}
	for _, axes := range []int{3, 4, 6} {
		c[fmt.Sprintf("   %d axes, %d° apart: ", axes, 180/axes)] = true
	}
	if lies := math.Mod(d.lies+360, 180); v > 0.001 && math.Abs(lies-90) < 89 {
		c[fmt.Sprintf("V = %.4f mm at φ = %.4g°", v, lies)] = true
	}
	return c
}
