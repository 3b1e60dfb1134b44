// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/rings"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	worn, doubtful := shipped, shipped
	worn.free, worn.ovality = 1500*units.Micrometre, 90*units.Micrometre
	doubtful.ovality = 100 * units.Micrometre
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "worn": worn, "doubtful": doubtful},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	um := func(least, spread int64) units.Length { return units.Length(least+r.Int64N(spread)) * units.Micrometre }
	bore := um(40000, 100000)
	d := data{
		ring:    rings.Section{Bore: bore, Thickness: bore * units.Length(30+r.Int64N(25)) / 1000, Height: um(1000, 3000), Young: units.Pressure(80+r.IntN(130)) * units.Gigapascal},
		free:    bore * units.Length(10+r.Int64N(140)) / 1000,
		gap:     um(100, 500),
		ovality: um(0, 300),
	}
	if d.free <= d.gap {
		d.free = d.gap + um(1, 100)
	}
	switch r.IntN(20) {
	case 0:
		d.ovality = 0
	case 1:
		d.ovality = -d.ovality - 1
	case 2:
		d.free = d.gap
	case 3:
		d.ring.Thickness = 0
	case 4:
		d.ring.Thickness = bore
	}
	return d
}

// claims has the two bounds for an oval: k·r/9 and k·r/60, k·r being (free − gap)/(3π).
func claims(d data) map[string]bool {
	if d.ovality < 0 || d.free <= d.gap || d.ring.Thickness <= 0 || d.ring.Thickness >= d.ring.Bore/2 {
		return map[string]bool{lessontest.Refused: true}
	}
	kr := (d.free - d.gap).In(units.Micrometre) / (3 * math.Pi)
	a := d.ovality.In(units.Micrometre) / 4
	if math.Abs(a/(kr/9)-1) < 1e-6 || math.Abs(a/(kr/60)-1) < 1e-6 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:         false,
		"It follows, by both":      a < kr/60,
		"It does not, by either":   a > kr/9,
		"One rule says yes":        a > kr/60 && a < kr/9,
		"Above and below, where":   a > 0,
		"read here: 3, 4, 5, 6.":   true,
		"they differ by 6.7 times": true,
	}
	if x := kr / 9; math.Abs(math.Mod(100*x, 1)-0.5) > 0.001 {
		c[fmt.Sprintf("   2 %12.2f ", x)] = true
	}
	return c
}
