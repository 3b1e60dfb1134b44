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
	kept, gone, doubtful := shipped, shipped, shipped
	kept.worst, kept.least = mm("78.016 mm"), mm("78.008 mm")
	gone.worst = mm("78.900 mm")
	doubtful.worst, doubtful.least, doubtful.std = mm("78.018 mm"), mm("78.014 mm"), mm("0.004 mm")
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "kept": kept, "gone": gone, "doubtful": doubtful},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	um := func(least, spread int64) units.Length { return units.Length(least+r.Int64N(spread)) * units.Micrometre }
	d := shipped
	d.nominal = um(40000, 80000)
	d.least = d.nominal + um(0, 30)
	d.worst = d.least + um(0, []int64{20, 200, 1000}[r.IntN(3)])
	d.clearance = units.Limits{Min: um(10, 60)}
	d.clearance.Max = d.clearance.Min + um(5, 40)
	d.skirt = d.nominal - d.clearance.Min - um(0, 5)
	d.honing, d.std = um(0, 100), um(0, 6)
	d.mostOver = um(200, 1500)
	switch r.IntN(20) {
	case 0:
		d.worst = d.least - units.Millimetre/100
	case 1:
		d.mostOver = 0
	case 2:
		d.nominal = 0
	case 3:
		d.skirt = -d.skirt
	case 4:
		d.clearance.Min, d.clearance.Max = d.clearance.Max, d.clearance.Min
	case 5:
		d.std = -d.std - 1
	}
	return d
}

// claims counts whole micrometres, and 1.96 standard uncertainties for a risk of a half of 5 %.
func claims(d data) map[string]bool {
	if d.worst < d.least || d.nominal == 0 || d.skirt < 0 || d.clearance.Min > d.clearance.Max || d.std < 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	u := um(d.std)
	clean, half := um(2*d.worst-d.least), um(d.worst)
	serves, chosen, open := 0, 0.0, false
	for over := 250.0; over <= 1000; over += 250 {
		bored := um(d.skirt+d.clearance.Min-d.honing) + over
		if d.mostOver > 0 && over > um(d.mostOver) {
			continue
		}
		sure, never := (bored-clean)/max(u, 1e-9), (half-bored)/max(u, 1e-9)
		if math.Abs(sure-1.96) < 0.06 || math.Abs(never-1.96) < 0.06 {
			return nil
		}
		switch {
		case clean+1.96*u <= bored:
			if serves++; serves == 1 {
				chosen = over
			}
		case half-1.96*u <= bored:
			open = true // worn wall may be left, or may not
		}
	}
	loose, tight := um(d.worst-d.skirt), um(d.least-d.skirt)
	keep := loose+2.1*u <= um(d.clearance.Max) && tight-2.1*u >= um(d.clearance.Min)
	rid := loose-3.5*u > um(d.clearance.Max) // of six places
	if !keep && !rid {
		return map[string]bool{lessontest.Refused: false} // whether it may stay hangs on the doubt
	}
	c := map[string]bool{
		lessontest.Refused:  false,
		"the bore may stay": keep,
		"CHOSEN: oversize":  !keep && serves > 0,
		"UNDECIDED: ":       !keep && serves == 0 && open,
		"CHOSEN: none":      !keep && serves == 0 && !open,
	}
	if !keep && serves > 0 {
		c[fmt.Sprintf("CHOSEN: oversize %.2f mm: bore to", chosen/1000)] = true
	}
	return c
}
