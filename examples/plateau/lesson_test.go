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
)

func TestLesson(t *testing.T) {
	gentle, hard := shipped, shipped
	gentle.stroke, gentle.wanted = nanometres(5), nanometres(1500)
	hard.strokes, hard.rough, hard.stroke = 60, nanometres(1500), nanometres(9)
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "gentle": gentle, "hard": hard},
		Draw:  draws, Claims: claims,
	}.Test(t)
}

func nanometres(n int64) units.Length { return units.Length(n) * units.Nanometre }

func draws(r *rand.Rand) data {
	d := data{
		rough: nanometres(200 + r.Int64N(8000)), deep: nanometres(r.Int64N(9000)),
		every: nanometres(50_000 + r.Int64N(400_000)), wide: nanometres(5_000 + r.Int64N(150_000)),
		stroke: nanometres(r.Int64N(40)), strokes: r.IntN(25), wanted: nanometres(r.Int64N(2000)),
	}
	switch r.IntN(20) { // extremes
	case 0:
		d.rough, d.deep = 0, 0
	case 1:
		d.stroke = -d.stroke - 1
	case 2:
		d.strokes = -d.strokes - 1
	case 3:
		d.strokes, d.stroke = 1<<30, 1<<40
	case 4:
		d.wanted = -1
	case 5:
		d.every, d.wide = 0, -5
	case 6:
		d.rough = math.MaxInt64
	case 7:
		d.rough, d.wanted = 20*units.Millimetre, nanometres(300_000)
	case 8:
		d.strokes = 1
	case 9:
		d.stroke, d.strokes = d.rough/20, 20
	case 10:
		d.rough, d.deep = units.Length(r.Int64N(3)), units.Length(r.Int64N(3))
	}
	return d
}

// five are the numbers of heights sorted down: the flattest window, normal equations, slices of the curve.
type five struct {
	rpk, rvk, top, mr1 float64
	from               int
	fall               float64
}

func numbers(z []float64) (f five) {
	n := len(z)
	wide := n * 2 / 5
	f.fall = math.Inf(1)
	for i := 0; i+wide < n; i++ {
		if d := z[i] - z[i+wide]; d < f.fall {
			f.fall, f.from = d, i
		}
	}
	var sx, sy, sxx, sxy, m float64
	for i := f.from; i <= f.from+wide; i++ {
		x := (float64(i) + 0.5) / float64(n)
		sx, sy, sxx, sxy, m = sx+x, sy+z[i], sxx+x*x, sxy+x*z[i], m+1
	}
	slope := (m*sxy - sx*sy) / (m*sxx - sx*sx)
	f.top = (sy - slope*sx) / m
	ground := f.top + slope
	over, under, above, below := 0.0, 0.0, 0, 0
	for _, h := range z {
		if h > f.top+1e-9 {
			over, above = over+h-f.top, above+1
		}
		if h < ground-1e-9 {
			under, below = under+ground-h, below+1
		}
	}
	if f.mr1 = float64(above) / float64(n); above > 0 {
		f.rpk = 2 * over / float64(above)
	}
	if below > 0 {
		f.rvk = 2 * under / float64(below)
	}
	return f
}

// claims reckons with plain floats in µm: heights sorted by the standard library, and the height of the cut by
// adding up from the top.
func claims(d data) map[string]bool {
	refused := map[string]bool{lessontest.Refused: true}
	if d.rough > units.MaxLength || d.stroke < 0 || d.strokes < 0 || d.wanted < 0 || d.stroke > units.MaxLength/4 && d.strokes > 0 {
		return refused
	}
	var z []float64
	mean := 0.0
	for _, h := range wall(d, 1) {
		z = append(z, h.In(units.Micrometre))
		mean += h.In(units.Micrometre) / 2000
	}
	slices.Sort(z)
	slices.Reverse(z)
	metal, least := float64(d.strokes)*d.stroke.In(units.Micrometre), z[len(z)-1]
	if math.Abs(metal-(mean-least)) < 1e-5 && metal > 0 {
		return nil
	}
	if metal > mean-least {
		return refused
	}
	before := numbers(z)
	cut := slices.Clone(z)
	k, sum := 1, z[0]
	for ; k < len(z) && sum-float64(k)*z[k] < metal*float64(len(z)); k++ {
		sum += z[k]
	}
	level := (sum - metal*float64(len(z))) / float64(k)
	for i := range cut {
		cut[i] = min(cut[i], level)
	}
	after := numbers(cut)
	flat := after.fall < 2e-6
	c := map[string]bool{
		lessontest.Refused:    false,
		"Nothing was taken":   metal == 0,
		"Two fifths":          flat,
		"lowers the highest":  metal > 0 && d.strokes > 1,
		"grooves are deeper":  after.rvk > before.rvk,
		"Rpk falls by":        !flat && after.from == before.from && level >= before.top && metal > 0,
		"lie elsewhere now":   !flat && after.from != before.from,
		"   None: Rpk is":     before.rpk <= d.wanted.In(units.Micrometre),
		"Never: these stones": before.rpk > d.wanted.In(units.Micrometre) && d.stroke == 0,
	}
	// Windows as flat as another, a picometre's rounding of a height, and the edges of shares may go either way.
	if near := 0.02*before.rpk + 1e-5; math.Abs(before.rpk-d.wanted.In(units.Micrometre)) < near {
		delete(c, "   None: Rpk is")
		delete(c, "Never: these stones")
	}
	if math.Abs(after.rvk-before.rvk) < 0.02*before.rvk+1e-5 {
		delete(c, "grooves are deeper")
	}
	if z[0]-least < 0.05 || math.Abs(level-before.top) < 1e-4 || after.fall < 1e-3 && after.fall > 1e-7 {
		delete(c, "Rpk falls by")
		delete(c, "lie elsewhere now")
		delete(c, "Two fifths")
	}
	if stock := z[0] - level; math.Abs(math.Mod(stock*100, 1)-0.5) > 0.01 {
		c[fmt.Sprintf("c lies %.2f µm below", stock)] = true
	}
	return c
}
