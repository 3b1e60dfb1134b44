// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math/rand/v2"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
	"borewright.example/units/material"
)

func TestLesson(t *testing.T) {
	transition, loose := shipped, shipped
	transition.outside, transition.round = "k6", material.GreyIron()
	loose.outside = "h6"
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "transition": transition, "loose": loose},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	pick := func(of ...string) string { return of[r.IntN(len(of))] }
	metals := []material.Material{material.GreyIron(), material.AluminiumBlock(), material.PlainSteel()}
	d := data{
		size: units.Length(30+r.Int64N(160)) * units.Millimetre, seat: pick("H6", "H7", "H8", "K7", "P7"),
		outside: pick("s6", "p6", "k6", "h6", "u7", "g6"), metal: metals[r.IntN(3)], round: metals[r.IntN(3)],
	}
	d.bore = d.size - units.Length(2+r.Int64N(10))*units.Millimetre
	d.barrel = d.size + units.Length(4+r.Int64N(40))*units.Millimetre
	switch r.IntN(20) {
	case 0:
		d.seat = pick("", "H", "h7", "7H", "H99")
	case 1:
		d.outside = pick("", "S6", "zz", "s")
	case 2:
		d.size = units.Length(r.Int64N(2)) * units.Metre
	}
	return d
}

// claims has the windows at one size from the tables of ISO 286 (over 65 to 80 mm; µm), and elsewhere what the
// letters promise: an H hole starts at the size, and h, s, u shafts end there, above it, far above it.
func claims(d data) map[string]bool {
	holes := map[string]bool{"H6": true, "H7": true, "H8": true, "K7": true, "P7": true}
	shafts := map[string]bool{"s6": true, "p6": true, "k6": true, "h6": true, "u7": true, "g6": true}
	if !holes[d.seat] || !shafts[d.outside] || d.size == 0 || d.size == units.Metre {
		return map[string]bool{lessontest.Refused: true}
	}
	c := map[string]bool{lessontest.Refused: false}
	known := d.size > 65*units.Millimetre && d.size <= 80*units.Millimetre
	if known && d.seat == "H7" {
		c["least    "] = true
		c["an interference fit"] = d.outside == "s6" || d.outside == "p6" || d.outside == "u7" // p6: +32 over +30
		c["a transition fit"] = d.outside == "k6"
		c["a clearance fit"] = d.outside == "h6" || d.outside == "g6"
		c["+29.0 µm\n   greatest"] = d.outside == "s6" // +59 and +78 against 0 and +30
		c["= +78.0 µm\n"] = d.outside == "s6"
	}
	if d.seat[0] == 'H' {
		c["a clearance fit"] = d.outside == "h6" || d.outside == "g6"
		c["There is none to reckon"] = d.outside == "h6" || d.outside == "g6"
		if d.outside == "k6" {
			c["a transition fit"] = true
		}
	}
	return c
}
