// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"

	"gonum.org/v1/gonum/mathext"
)

func TestLesson(t *testing.T) {
	beyond, scatter := shipped, shipped
	beyond.limit = units.MustParseLength("78.140 mm")
	scatter.repeats = []float64{78.1482, 78.1501, 78.1455, 78.1479, 78.1489}
	scatter.ringStd, scatter.division, scatter.warmth, scatter.limit = 0, 0.1, 0, units.MustParseLength("78.149 mm")
	alike := shipped
	alike.repeats = []float64{78.149, 78.149, 78.149}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "beyond": beyond, "scatter": scatter, "alike": alike},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	tenth := func(x float64) float64 { return math.Round(x*1e4) / 1e4 }
	d := data{ringStd: tenth(2 * r.Float64()), division: []float64{0, 0.1, 1, 10}[r.IntN(4)], warmth: tenth(3 * r.Float64())}
	size, scatter := 30+100*r.Float64(), 0.004*r.Float64()
	for range 2 + r.IntN(6) {
		d.repeats = append(d.repeats, tenth(size+scatter*r.NormFloat64()))
	}
	d.limit = units.Length(math.Round((size+0.006*(2*r.Float64()-1))*1e4)) * 100 * units.Nanometre
	switch r.IntN(20) {
	case 0:
		d.repeats = d.repeats[:1]
	case 1:
		d.ringStd, d.division, d.warmth = 0, 0, 0
		d.repeats = slices.Repeat(d.repeats[:1], 3)
	case 2:
		d.ringStd = -1
	case 3:
		d.limit = 0
	case 4:
		d.repeats[0] = 0
	case 5:
		d.repeats = slices.Repeat(d.repeats[:1], 3)
	case 7, 8, 9, 10:
		d.ringStd, d.division, d.warmth = 0, 0, 0
	case 6:
		for i := range d.repeats {
			d.repeats[i] = -d.repeats[i]
		}
	}
	return d
}

// claims works the mean, the doubt and the chance out in micrometres, the last by an incomplete beta function.
func claims(d data) map[string]bool {
	n, sum, squares := float64(len(d.repeats)), 0.0, 0.0
	for _, x := range d.repeats {
		sum += x
	}
	mean := sum / n
	for _, x := range d.repeats {
		squares += 1e6 * (x - mean) * (x - mean)
	}
	own := squares / (n - 1) / n // variance of the mean, µm²
	other := d.ringStd*d.ringStd + d.division*d.division/12 + math.Pow(11.2e-3*mean*d.warmth, 2)/3
	if n < 2 || mean < 0 || d.ringStd < 0 || d.limit <= 0 || own+other < 1e-12 {
		return map[string]bool{lessontest.Refused: true}
	}
	u := math.Sqrt(own + other)
	t := 1000 * (d.limit.In(units.Millimetre) - mean) / u
	p := math.Erfc(-t/math.Sqrt2) / 2
	if own > 1e-15 {
		dof := math.Pow(own+other, 2) / (own * own / (n - 1))
		p = mathext.RegIncBeta(dof/2, 0.5, dof/(dof+t*t)) / 2
		if t > 0 {
			p = 1 - p
		}
	}
	if math.Abs(p-0.95) < 1e-4 || math.Abs(p-0.05) < 1e-4 || math.Abs(t) < 1e-6 {
		return nil
	}
	open := p > 0.05 && p < 0.95
	c := map[string]bool{
		lessontest.Refused:          false,
		"%:  WITHIN\n":              p >= 0.95,
		"%:  BEYOND\n":              p <= 0.05,
		"%:  UNDECIDED\n":           open,
		"It may stay.":              p >= 0.95,
		"It may not.":               p <= 0.05,
		"itself known for certain":  own < 1e-15,
		"Read, compare, done: \"be": t < 0,
	}
	if math.Abs(math.Mod(1000*p, 1)-0.5) > 0.01 {
		c[fmt.Sprintf("P = %.1f %%", 100*p)] = true
	}
	if open && other > 0 && math.Abs(t)*u/math.Sqrt(other) < 1.6 { // the bell curve's 1.645 of the rest is not reached
		c["No number of readings settles it"] = true
	}
	if open && other == 0 && math.Abs(t) > 0.3 { // at worst (6.32/0.3)² times as many
		c["times as many readings"] = true
	}
	if !open {
		c["No number of readings settles it"], c["times as many readings"] = false, false
	}
	return c
}
