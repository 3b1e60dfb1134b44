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
	barrel, soaked := shipped, shipped
	barrel.metal, barrel.gauge = material.AluminiumBlock(), celsius(19)
	soaked.metal, soaked.setAt, soaked.gauge, soaked.bore = material.GaugeSteel(), celsius(26), celsius(26), celsius(26)
	chilled := shipped
	chilled.gauge, chilled.bore = celsius(35), celsius(12)
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "barrel": barrel, "soaked": soaked, "chilled": chilled},
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
	metals := []material.Material{material.GreyIron(), material.AluminiumBlock(), material.GaugeSteel()}
	at := func() units.Temperature { return celsius(math.Round(r.Float64()*80 - 10)) }
	d := data{ring: units.Length(10000+r.Int64N(190000)) * units.Micrometre, metal: metals[r.IntN(3)], setAt: at(), gauge: at(), bore: at()}
	d.wanted = d.ring + units.Length(r.Int64N(1000)-500)*units.Micrometre
	switch r.IntN(15) {
	case 0:
		d.wanted = -d.wanted
	case 1:
		d.ring = 0
	case 2:
		d.setAt, d.gauge, d.bore = 0, 0, 0
	case 3:
		d.gauge, d.bore, d.metal = d.setAt, d.setAt, material.GaugeSteel()
		d.wanted = d.ring
	case 4:
		d.bore = celsius(250)
	}
	return d
}

func claims(d data) map[string]bool {
	if d.wanted <= 0 || d.ring <= 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	above := func(t units.Temperature) float64 {
		if t == 0 {
			return 0
		}
		return t.Celsius() - 20
	}
	wanted, ring := d.wanted.In(units.Micrometre), d.ring.In(units.Micrometre)
	const steel = 11.5e-6
	shows := wanted*(1+float64(d.metal.Expansion)*above(d.bore)) - ring*(1+steel*above(d.setAt))*(1+steel*(above(d.gauge)-above(d.setAt)))
	off := shows - (wanted - ring)
	if math.Abs(math.Abs(off)-0.05) < 1e-4 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:      false,
		"No difference: what":   math.Abs(off) < 0.05,
		"µm too SMALL":          off > 0.05,
		"µm too LARGE":          off < -0.05,
		"of aluminium block th": d.metal.Name != "aluminium block",
	}
	if math.Abs(math.Mod(shows*10, 1)) < 0.45 && math.Abs(shows) > 0.1 {
		c[fmt.Sprintf("B − Z = %+.1f µm", shows)] = true
	}
	return c
}
