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
	seven, oval := shipped, shipped
	seven.lobes = 7
	oval.lobes, oval.high, oval.vees = 2, 12*units.Micrometre, []float64{72, 120}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "seven": seven, "oval": oval},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{lobes: 2 + r.IntN(20), high: units.Length(r.Int64N(200)) * units.Micrometre}
	for range r.IntN(4) {
		d.vees = append(d.vees, []float64{60, 90, 108, 120, float64(20 + r.IntN(150))}[r.IntN(5)])
	}
	switch r.IntN(20) {
	case 0:
		d.lobes = r.IntN(2)
	case 1:
		d.high = -d.high - 1
	case 2:
		d.vees = []float64{180 * float64(r.IntN(2))}
	}
	return d
}

// claims knows what is published of vees, and asks of any by turning the angle into eighths of a turn.
func claims(d data) map[string]bool {
	if d.lobes < 2 || d.high < 0 || len(d.vees) == 1 && (d.vees[0] == 0 || d.vees[0] == 180) {
		return map[string]bool{lessontest.Refused: true}
	}
	c := map[string]bool{
		lessontest.Refused:                          false,
		"two anvils misses 3, 5, 7, 9, 11, 13, 15":  true,
		"three anvils misses 2, 4, 5, 7, 8, 10, 11": true, // and 13, 14: all but the multiples of three
	}
	blind := d.lobes%2 == 1 || d.lobes%3 != 0
	for _, a := range d.vees {
		switch a {
		case 90:
			c["vee 90° misses 7, 9, 15"] = true
		case 60:
			c["vee 60° misses 2, 4, 5, 7, 8, 10, 11, 13, 14"] = true
		case 120:
			c["vee 120° misses 11, 13"] = true
		}
		angle := math.Cos(float64(d.lobes)*(90+a/2)*math.Pi/180) + math.Sin(a*math.Pi/360)
		blind = blind || math.Abs(angle) < 0.005*math.Sin(a*math.Pi/360)
	}
	c["are missed by none of them"] = !blind
	c[fmt.Sprintf("Of these %d lobes: ", d.lobes)] = blind
	return c
}
