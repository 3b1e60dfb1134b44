// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	straight, wild := shipped, shipped
	straight.tilt = 0.1 * units.Degree
	wild.tilt, wild.scatter = 3*units.Degree, 2*units.Micrometre
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "straight": straight, "wild": wild},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{
		reading: units.Length(10+150*r.Float64()) * units.Millimetre, scatter: units.Length(1+50*r.Float64()) * 100 * units.Nanometre,
		tilt: units.Angle(math.Pow(10, -4+3*r.Float64())) * units.Radian,
	}
	switch r.IntN(16) {
	case 0:
		d.reading = 0
	case 1:
		d.scatter = -d.scatter
	case 2:
		d.tilt = 0
	case 3:
		d.tilt = units.Angle(math.NaN())
	case 4:
		d.tilt = units.Radian
	}
	return d
}

// claims works the chances of the bore out by adding up strips of tilt.
func claims(d data) map[string]bool {
	R, s, θ := d.reading.In(units.Micrometre), d.scatter.In(units.Micrometre), d.tilt.In(units.Radian)
	if !(R > 0 && s > 0 && θ > 0 && θ <= 0.2) {
		return map[string]bool{lessontest.Refused: true}
	}
	below := func(x float64) float64 { // the chance of a bore no more than x off
		p := 0.0
		const strips = 400
		for i := range strips {
			z := -6 + 12*(float64(i)+0.5)/strips
			p += 12.0 / strips * math.Exp(-z*z/2) / math.Sqrt(2*math.Pi) * math.Erfc(-(x+R*(1-math.Cos(z*θ)))/s/math.Sqrt2) / 2
		}
		return p
	}
	end := func(p float64) float64 {
		low, high := -R*0.8-9*s, 9*s
		for range 60 {
			if m := (low + high) / 2; below(m) < p {
				low = m
			} else {
				high = m
			}
		}
		return low
	}
	low, high := end(0.025), end(0.975)
	first := 1.959963984540054 * s
	tolerance := math.Pow10(int(math.Floor(math.Log10(s/0.95)))) / 2 // 0.95 is 1 to one digit
	off := max(math.Abs(low+first), math.Abs(high-first))
	c := map[string]bool{lessontest.Refused: false}
	u := math.Sqrt(s*s + R*R*θ*θ*θ*θ/2)
	if math.Abs(off-tolerance) > 0.05*u { // the dice know the ends to a hundredth or two of u
		c["THE FORMULA WILL DO"], c["THE FORMULA WILL NOT DO"] = off < tolerance, off > tolerance
	}
	return c
}
