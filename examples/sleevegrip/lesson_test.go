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
	iron, bronze := shipped, shipped
	iron.barrel = material.GreyIron()
	bronze.sleeve, bronze.barrel = must(material.ByName("bronze")), material.PlainSteel()
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "iron": iron, "bronze": bronze},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func um(n int64) units.Length { return units.Length(n) * units.Micrometre }

func draw(r *rand.Rand) data {
	metals := []material.Material{material.GreyIron(), material.AluminiumBlock(), material.PlainSteel(), must(material.ByName("bronze")), must(material.ByName("ductile iron"))}
	d := data{bore: um(20000 + r.Int64N(130000)), over: um(1 + r.Int64N(150)), sleeve: metals[r.IntN(5)], barrel: metals[r.IntN(5)]}
	d.seat = d.bore + um(1000+r.Int64N(12000))
	d.outside = d.seat + um(2000+r.Int64N(40000))
	switch r.IntN(20) {
	case 0:
		d.over = um(-r.Int64N(2) * 30)
	case 1:
		d.bore = d.seat + um(r.Int64N(2))
	case 2:
		d.outside = d.seat
	case 3:
		d.sleeve.Young = 0
	case 4:
		d.over = d.seat / 50
	}
	return d
}

// claims takes the overlap as linear in the temperature.
func claims(d data) map[string]bool {
	if d.over <= 0 || d.bore >= d.seat || d.seat >= d.outside || d.sleeve.Young == 0 || d.over > d.seat/100 {
		return map[string]bool{lessontest.Refused: true}
	}
	over, seat := d.over.In(units.Micrometre), d.seat.In(units.Micrometre)
	as, ab := float64(d.sleeve.Expansion), float64(d.barrel.Expansion)
	loss := seat*ab - (seat+over)*as // µm a kelvin
	gone := 20 + over/loss
	if math.Abs(gone-1000) < 0.1 || math.Abs(gone+273.15) < 0.1 {
		return nil
	}
	hot, cold := loss > 0 && gone < 1000, loss < 0 && gone > -273.15
	c := map[string]bool{
		lessontest.Refused:                   false,
		"the barrel grows away":              hot,
		"heat only tightens it":              cold,
		"nothing up to 1000 °C loosens it":   !hot && !cold,
		"at 1000 °C the interference is sti": !hot,
	}
	if hot && math.Abs(math.Mod(gone*10, 1)-0.5) > 0.01 {
		c[fmt.Sprintf("The grip goes at %.1f °C", gone)] = true
	}
	for _, t := range [][2]float64{{160, 120}, {140, 120}, {120, 120}} {
		left := over + (seat+over)*as*(t[0]-20) - seat*ab*(t[1]-20)
		if math.Abs(left) > 0.001 {
			c[fmt.Sprintf("sleeve %.0f °C, barrel %.0f °C: δ = %+.1f µm, it is LOOSE", t[0], t[1], left)] = left < 0
		}
	}
	seatWide := (seat + over + 50 - seat) / (seat * ab) // barrel's rise to take sleeve and 50 µm
	if math.Abs(seatWide-180) > 0.1 {
		c["chill the sleeve too"] = seatWide > 180
	}
	w, x := float64(d.sleeve.Within), float64(d.barrel.Within)
	soonest, latest := seat*(ab+x)-(seat+over)*(as-w), seat*(ab-x)-(seat+over)*(as+w)
	can, sure := soonest > 0 && over/soonest < 980, latest > 0 && over/latest < 980
	if math.Abs(over/soonest-980) > 0.1 && math.Abs(over/latest-980) > 0.1 {
		c["heat loosens nothing"], c["or never."], c["grip goes somewhere from"] = !can, can && !sure, sure
	}
	return c
}
