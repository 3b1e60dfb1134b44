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
	round, small := shipped, shipped
	round.greatest, round.least, round.tried = shipped.tried, shipped.tried, shipped.tried
	small.greatest, small.least = units.MustParseLength("77.900 mm"), units.MustParseLength("77.850 mm")
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "round": round, "small": small},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	um := func(least, spread int64) units.Length { return units.Length(least+r.Int64N(spread)) * units.Micrometre }
	d := data{tried: um(40000, 80000), gap: um(50, 800)}
	d.least = d.tried + um(-200, 400)
	d.greatest = d.least + um(0, 400)
	switch r.IntN(15) {
	case 0:
		d.greatest, d.least = d.least, d.greatest+1
	case 1:
		d.gap = 0
	case 2:
		d.tried = -d.tried
	case 3:
		d.greatest, d.least = d.tried, d.tried
	case 4:
		d.greatest = d.least + um(5000, 10000)
	case 5:
		d.gap = d.tried / 5
	}
	return d
}

// claims has the series of an ellipse's way round: π·m·(1 + h/4 + h²/64 + h³/256), h = ((a − b)/(a + b))².
func claims(d data) map[string]bool {
	if d.greatest < d.least || d.gap <= 0 || d.tried <= 0 || d.gap > d.tried/10 {
		return map[string]bool{lessontest.Refused: true}
	}
	a, b := d.greatest.In(units.Millimetre), d.least.In(units.Millimetre)
	h := (a - b) / (a + b) * (a - b) / (a + b)
	mean := (a + b) / 2
	round := mean * (1 + h/4 + h*h/64 + h*h*h/256)
	gap := d.gap.In(units.Millimetre) + math.Pi*(round-d.tried.In(units.Millimetre))
	change := gap - d.gap.In(units.Millimetre)
	if math.Abs(gap) < 1e-7 || d.greatest != d.tried && math.Abs(change) < 1e-7 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:       false,
		"the ends overlap by":    gap < 0,
		"wider than as tried":    gap > 0 && change > 1e-9,
		"narrower than as tried": gap > 0 && change < -1e-9,
		"The gap is the same":    math.Abs(change) < 1e-9,
	}
	if frac := math.Abs(math.Mod(gap*1e4, 1)); math.Abs(frac-0.5) > 0.01 && math.Abs(gap) > 1e-4 {
		c[fmt.Sprintf(") = %.4f mm\n", gap)] = true
	}
	return c
}
