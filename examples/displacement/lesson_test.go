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
	sleeved, tight := shipped, shipped
	sleeved.after, sleeved.cylinders = units.MustParseLength("76 mm"), 1
	tight.head, tight.deck = 0.2*units.CubicCentimetre, units.MustParseLength("3 mm")
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "sleeved": sleeved, "tight": tight},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	um := func(least, spread int64) units.Length { return units.Length(least+r.Int64N(spread)) * units.Micrometre }
	d := data{before: um(40000, 60000), stroke: um(30000, 90000), cylinders: 1 + r.IntN(8),
		deck: um(0, 600), gasket: um(500, 1500)}
	d.after = d.before + um(-2000, 4000)
	d.hole = max(d.before, d.after) + um(0, 3000)
	d.head = units.Volume(math.Round(1+r.Float64()*90)) * units.CubicCentimetre
	switch r.IntN(15) {
	case 0:
		d.after = d.before
	case 1:
		d.hole = d.before - units.Millimetre
	case 2:
		d.cylinders = 0
	case 3:
		d.head = -d.head
	case 4:
		d.stroke = 0
	case 5:
		d.head, d.deck = 0.1*units.CubicCentimetre, um(5000, 10000)
		d.after = d.before - um(1000, 2000)
	}
	return d
}

// claims works in millimetres, without π/4: ratios have none of it.
func claims(d data) map[string]bool {
	mm := func(l units.Length) float64 { return l.In(units.Millimetre) }
	if d.hole < max(d.before, d.after) || d.cylinders < 1 || d.head < 0 || d.stroke <= 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	head := d.head.In(units.CubicCentimetre) * 1000 * 4 / math.Pi
	space := func(bore units.Length) float64 {
		return head + mm(bore)*mm(bore)*mm(d.deck) + mm(d.hole)*mm(d.hole)*mm(d.gasket)
	}
	swept := func(bore units.Length) float64 { return mm(bore) * mm(bore) * mm(d.stroke) }
	before, after := 1+swept(d.before)/space(d.before), 1+swept(d.after)/space(d.after)
	wants := swept(d.after)/(before-1) - (space(d.after) - head)
	more := (wants - head) * math.Pi / 4 / 1000
	if d.after != d.before && math.Abs(after-before) < 1e-9 || math.Abs(math.Abs(more)-0.005) < 1e-5 || math.Abs(wants) < 1 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:    false,
		"Nothing has changed": d.after == d.before,
		"It grows by":         d.after > d.before,
		"It shrinks by":       d.after < d.before,
		"   It rises by":      after > before && d.after != d.before,
		"   It falls by":      after < before && d.after != d.before,
		"   It stays.":        d.after == d.before,
		"No head does":        wants < 0,
		"the head as it is":   wants > 0 && math.Abs(more) < 0.005,
		"to be thicker by":    wants > 0 && more > 0.005,
		"to be thinner by":    wants > 0 && more < -0.005,
	}
	if v := swept(d.after) * math.Pi / 4000; math.Abs(math.Mod(v*100, 1)-0.5) > 0.001 {
		c[fmt.Sprintf(" = %.2f cm³;  all", v)] = true
	}
	return c
}
