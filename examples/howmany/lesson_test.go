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
	none, over := shipped, shipped
	none.rest = 1.5
	over.size, over.taken = units.MustParseLength("78.1530 mm"), 5
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "none": none, "over": over},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	tenth := func(most float64) float64 { return math.Round(r.Float64()*most*10) / 10 }
	d := data{limit: units.Length(60000+r.Int64N(40000)) * units.Micrometre, taken: 1 + r.IntN(10), scatter: tenth(6), rest: tenth(1.5)}
	d.size = d.limit + units.Length(r.Int64N(12000)-6000)*units.Nanometre
	switch r.IntN(20) {
	case 0:
		d.taken = 0
	case 1:
		d.scatter, d.rest = 0, 0
	case 2:
		d.rest = -1
	case 3:
		d.size = d.limit
	case 4:
		d.limit = 0
	case 5:
		d.scatter = 0
	case 6:
		d.size = -d.size
	case 7, 8: // some thousand readings
		many := d.scatter * d.scatter / float64(500+r.IntN(3000))
		d.size = d.limit - units.Length(1645*math.Sqrt(many+d.rest*d.rest))*units.Nanometre
	}
	return d
}

func claims(d data) map[string]bool {
	if d.taken < 1 || d.scatter+d.rest == 0 || d.rest < 0 || d.limit <= 0 || d.size <= 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	gap := math.Abs((d.limit - d.size).In(units.Micrometre)) / math.Sqrt2 / math.Erfinv(0.9)
	u := math.Sqrt(d.scatter*d.scatter/float64(d.taken) + d.rest*d.rest)
	room := gap*gap - d.rest*d.rest
	if math.Abs(gap-u) < 1e-4 || math.Abs(room) < 1e-4 {
		return nil
	}
	n := d.scatter * d.scatter / room
	c := map[string]bool{
		lessontest.Refused:        false,
		"It is settled: within":   gap > u && d.size < d.limit,
		"It is settled: beyond":   gap > u && d.size > d.limit,
		"None will: r":            gap < u && room < 0,
		"if the mean stays where": gap < u && room > 0,
	}
	if n < 1990 || n > 2010 {
		c["2000 readings do not settle it, by either"] = gap < u && (room < 0 || n > 2000)
	}
	if frac := math.Mod(n, 1); gap < u && room > 0 && frac > 0.01 && frac < 0.99 && n < 100 {
		c[fmt.Sprintf(": %.0f readings, if the mean", math.Ceil(n))] = true
		if d.scatter*d.scatter/(2*gap*n*n) > 3e-6 { // what one reading more takes off u, in µm
			c[fmt.Sprintf("settled at %.0f readings by the formula", math.Ceil(n))] = true
		}
	}
	return c
}
