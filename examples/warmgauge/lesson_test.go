// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
	"borewright.example/units/material"
)

func TestLesson(t *testing.T) {
	frost, cancels := shipped, shipped
	frost.barrelT, frost.dial = celsius(-10), -25*units.Micrometre
	cancels.setAt, cancels.usedAt, cancels.barrelT, cancels.barrel = celsius(30), celsius(30), celsius(30), material.GaugeSteel()
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "frost": frost, "cancels": cancels},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func celsius(x float64) units.Temperature {
	t, err := units.Celsius(x)
	if err != nil {
		panic(err)
	}
	return t
}

func draw(r *rand.Rand) data {
	metals := []material.Material{material.GreyIron(), material.AluminiumBlock(), material.GaugeSteel(), must(material.ByName("bronze"))}
	at := func() units.Temperature { return celsius(math.Round(r.Float64()*100 - 30)) }
	d := data{
		ring: units.Length(5+r.Int64N(300)) * units.Millimetre, dial: units.Length(r.Int64N(1000)-500) * units.Micrometre,
		barrel: metals[r.IntN(4)], setAt: at(), usedAt: at(), barrelT: at(),
	}
	switch r.IntN(15) {
	case 0:
		d.ring = -units.Length(r.Int64N(2)) * units.Millimetre
	case 1:
		d.setAt, d.usedAt, d.barrelT = 0, 0, 0
	case 2:
		d.dial = 0
	case 3:
		d.barrel = material.GaugeSteel()
		d.usedAt, d.barrelT = d.setAt, d.setAt
	case 4:
		d.barrelT = celsius(400)
	case 5:
		d.dial = -d.ring - units.Millimetre
	}
	return d
}

// claims multiplies the formula out in millimetres.
func claims(d data) map[string]bool {
	if d.ring <= 0 || d.dial < -d.ring { // below nothing
		return map[string]bool{lessontest.Refused: true}
	}
	above := func(t units.Temperature) float64 {
		if t == 0 {
			return 0
		}
		return t.Celsius() - 20
	}
	const steel = 11.5e-6
	ring, dial := d.ring.In(units.Millimetre), d.dial.In(units.Millimetre)
	size := (ring*(1+steel*above(d.setAt))*(1+steel*(above(d.usedAt)-above(d.setAt))) + dial) / (1 + float64(d.barrel.Expansion)*above(d.barrelT))
	off := 1000 * (ring + dial - size)
	if math.Abs(math.Abs(off)-0.05) < 1e-5 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:        false,
		"here temperature cancel": math.Abs(off) < 0.05,
		"µm too large\n":          off > 0.05,
		"µm too small\n":          off < -0.05,
		"is taken for iron":       d.barrel.Name != "grey iron",
		"is taken for aluminium":  d.barrel.Name == "grey iron",
	}
	if math.Abs(math.Mod(size*1e4, 1)-0.5) > 0.001 {
		c[fmt.Sprintf("at 20 °C: %.4f mm\n", size)] = true
	}
	return c
}
