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
	blind, long := shipped, shipped
	blind.roomBottom = 0
	long.stones, long.roomTop = 96*units.Millimetre, 20*units.Millimetre
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "blind": blind, "long": long},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	length := func(least, most int64) units.Length {
		return units.Length(least+r.Int64N(most-least)) * units.Millimetre
	}
	d := shipped
	d.depth = length(20, 300)
	d.stones = d.depth * units.Length(10+r.Int64N(150)) / 100
	d.roomTop, d.roomBottom = length(0, 120), length(0, 120)
	if r.IntN(4) == 0 {
		d.roomBottom = 0
	}
	if r.IntN(8) == 0 {
		d.roomTop = 0
	}
	d.stock = units.Length(1+r.Int64N(300)) * units.Micrometre
	switch r.IntN(25) {
	case 0:
		d.roomTop = -units.Millimetre
	case 1:
		d.stones = 0
	case 2:
		d.stock = 0
	case 3:
		d.setting.Spindle = 0
	case 4:
		d.depth = -d.depth
	}
	return d
}

func claims(d data) map[string]bool {
	mm := func(l units.Length) float64 { return l.In(units.Millimetre) }
	depth, stones := mm(d.depth), mm(d.stones)
	stroke := func(part float64) float64 {
		return depth + min(stones/part, mm(d.roomTop)) + min(stones/part, mm(d.roomBottom)) - stones
	}
	if math.Abs(stroke(3)) < 1e-6 || math.Abs(stroke(9)) < 1e-6 {
		return nil
	}
	if d.roomTop < 0 || d.stones <= 0 || d.depth <= 0 || d.stock <= 0 || d.setting.Spindle == 0 || stroke(3) < 0 {
		return map[string]bool{lessontest.Refused: true, "too long to move in this bore": d.stones > 0 && d.depth > 0 && d.roomTop >= 0 && stroke(3) < 0}
	}
	top, bottom := min(stones/3, mm(d.roomTop)), min(stones/3, mm(d.roomBottom))
	c := map[string]bool{
		lessontest.Refused:            false,
		"The top is closed":           d.roomTop == 0,
		"The bottom is closed":        d.roomBottom == 0,
		"At the top there is room":    d.roomTop > 0 && mm(d.roomTop) < stones/3,
		"At the bottom there is room": d.roomBottom > 0 && mm(d.roomBottom) < stones/3,
		"one ninth      no stroke":    stroke(9) < 0,
	}
	if s := stroke(3); math.Abs(math.Mod(s*10, 1)-0.5) > 0.001 {
		c[fmt.Sprintf(" = %.1f mm\n", s)] = true
	}
	if stones <= depth/2 { // the middle meets all of the stones
		for _, end := range []struct {
			name string
			out  float64
		}{{"top", top}, {"bottom", bottom}} {
			share := math.Log(stones / (stones - end.out))
			if math.Abs(math.Mod(share*100, 1)-0.5) > 0.01 {
				c[fmt.Sprintf("%s over middle %.2f", end.name, share)] = true
			}
		}
		c["None of these makes"] = true
	}
	return c
}
