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
	barrel, large := shipped, shipped
	barrel.wall, barrel.goes, barrel.refuses = material.AluminiumBlock(), um(300), um(350)
	large.finished, large.window = um(78300), units.Limits{Min: um(200)}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "barrel": barrel, "overlap": large},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func um(n int64) units.Length { return units.Length(n) * units.Micrometre }

func draw(r *rand.Rand) data {
	d := shipped
	d.tried = um(78500 + r.Int64N(400) - 200)
	d.goes = um(50 + r.Int64N(600))
	d.refuses = d.goes + um(1+r.Int64N(100))
	d.finished = d.tried + um(r.Int64N(300)-150)
	d.window = units.Limits{Min: um(150 + r.Int64N(300))}
	if r.IntN(5) > 0 {
		d.window.Max = d.window.Min + um(20+r.Int64N(300))
	}
	walls := []material.Material{material.GreyIron(), material.AluminiumBlock(), material.PlainSteel()}
	d.wall, d.ring = walls[r.IntN(3)], walls[2*r.IntN(2)]
	d.ringHot, d.wallHot = celsius(r.Float64()*300), celsius(r.Float64()*300-40)
	switch r.IntN(20) { // extremes
	case 0:
		d.refuses = d.goes
	case 1:
		d.tried, d.finished = um(8000+r.Int64N(1000)), um(8000+r.Int64N(1000))
	case 2:
		d.tried, d.finished = um(1000000), um(1000000+r.Int64N(20000))
	case 3:
		d.goes, d.refuses = um(1500), um(7000)
	case 4:
		d.finished = um(-r.Int64N(2) * 78000)
	case 5:
		d.window = units.Limits{Max: um(100 + r.Int64N(400))}
	case 6:
		d.window = units.Limits{}
	}
	return d
}

func celsius(x float64) units.Temperature {
	t, err := units.Celsius(math.Round(x))
	if err != nil {
		panic(err)
	}
	return t
}

// claims reckons with plain floats: a rectangle's deviation, the error function, and 1.96 for 95 %.
func claims(d data) map[string]bool {
	mm := func(l units.Length) float64 { return l.In(units.Millimetre) }
	gap := mm(d.goes+d.refuses)/2 + math.Pi*mm(d.finished-d.tried)
	if d.refuses <= d.goes || d.finished <= 0 || d.window.IsZero() || mm(d.goes+d.refuses)/2 > mm(d.tried)/10 {
		return map[string]bool{lessontest.Refused: true}
	}
	u := mm(d.refuses-d.goes) / 2 / math.Sqrt(3)
	below := func(x float64) float64 { return math.Erfc((gap-x)/u/math.Sqrt2) / 2 } // chance that the gap is less
	inside, least, most := 1.0, mm(d.window.Min)+1.96*u, math.Inf(1)
	if d.window.HasMax() {
		inside, most = below(mm(d.window.Max)), mm(d.window.Max)-1.96*u
	}
	if d.window.HasMin() {
		inside -= below(mm(d.window.Min))
	}
	// A true gap at the upper end would be read as far outside on either side.
	outside, over := 1.0, gap-mm(d.window.Max)
	if d.window.HasMax() && over > 0 {
		outside = math.Erfc(over/u/math.Sqrt2) / 2
		if d.window.HasMin() {
			outside += math.Erfc((mm(d.window.Max-d.window.Min)+over)/u/math.Sqrt2) / 2
		}
	}
	if math.Abs(inside-0.95) < 0.001 || math.Abs(outside-0.05) < 0.001 {
		return nil
	}
	asIs, wide := inside >= 0.95, outside <= 0.05
	narrow := !asIs && !wide && d.window.HasMin() && least > most
	file := !asIs && !wide && !narrow && d.window.HasMin() && gap < least
	fitted := gap
	if file {
		fitted = least
	}
	grow := func(m material.Material, t units.Temperature) float64 {
		return math.Pi * mm(d.finished) * float64(m.Expansion) * (t.Celsius() - 20)
	}
	change := grow(d.wall, d.wallHot) - grow(d.ring, d.ringHot)
	hot := fitted + change
	c := map[string]bool{
		lessontest.Refused:              false,
		"Less than nothing":             gap <= 0,
		"too small, or may be: file to": file,
		"within the window, its doubt":  asIs,
		"too wide already, and a file":  wide,
		"Undecided: the gap":            !asIs && !wide && !narrow && !file,
		"known too badly":               narrow,
		"There is no gap even cold":     fitted <= 0,
		"the ring BUTTS":                fitted > 0 && hot <= 0,
		"heat does not close this gap":  fitted > 0 && hot > 0 && change >= 0,
		"Its ends overlap":              fitted > 0 && fitted < 0.25*math.Pi,
	}
	if !near(hot) {
		c[fmt.Sprintf("│ %.3f mm\n", hot)] = true
	}
	return c
}

// near reports whether rounding to a thousandth may go either way, or to a zero with a sign.
func near(x float64) bool {
	return math.Abs(x) < 0.0006 || math.Abs(math.Mod(math.Abs(x)*1000, 1)-0.5) < 0.01
}
