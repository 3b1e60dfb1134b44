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

	"gonum.org/v1/gonum/stat/distuv"
)

func TestLesson(t *testing.T) {
	creeping, coarse, hopeless := shipped, shipped, shipped
	creeping.readings = []float64{0, 1, 0, 2, 2, 3, 2, 4, 4, 5}
	coarse.readings, coarse.division = []float64{0, 0, 0, 0, 0}, units.MustParseLength("0.01 mm")
	hopeless.size, hopeless.ovality = units.MustParseLength("0.0005 mm"), units.MustParseLength("0.002 mm")
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "creeping": creeping, "coarse": coarse, "hopeless": hopeless},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	micro := func(x float64) units.Length { return units.Length(math.Round(x*10)) * 100 * units.Nanometre }
	d := data{ring: micro(1e4 + 1e5*r.Float64()), division: []units.Length{0, 1, 2, 10}[r.IntN(4)] * units.Micrometre,
		size: micro(0.1 + 30*r.Float64()), ovality: micro(0.1 + 30*r.Float64())}
	scatter, creep := 4*r.Float64(), 0.0
	if r.IntN(3) == 0 {
		creep = r.NormFloat64()
	}
	for i := range 3 + r.IntN(12) {
		d.readings = append(d.readings, math.Round(10*(scatter*r.NormFloat64()+creep*float64(i)))/10)
	}
	switch r.IntN(16) {
	case 0:
		d.readings = d.readings[:r.IntN(3)]
	case 1, 2:
		d.readings = slices.Repeat(d.readings[:1], 2+len(d.readings))
	case 3:
		d.size = 0
	case 4:
		d.ring = -d.ring
	case 5:
		d.division = -1
	case 6:
		d.readings[0] = 1e9
	}
	return d
}

// claims works in micrometres, with quantiles of another library.
func claims(d data) map[string]bool {
	n := float64(len(d.readings))
	if n < 3 || d.ring <= 0 || d.division < 0 || d.size <= 0 || d.ovality <= 0 || slices.Max(d.readings) > 1000 {
		return map[string]bool{lessontest.Refused: true}
	}
	mean, index := 0.0, (n-1)/2
	for _, x := range d.readings {
		mean += x / n
	}
	var xx, xy, yy float64
	for i, x := range d.readings {
		yy += (x - mean) * (x - mean)
		xy += (x - mean) * (float64(i) - index)
		xx += (float64(i) - index) * (float64(i) - index)
	}
	s, step := math.Sqrt(yy/(n-1)), d.division.In(units.Micrometre)/math.Sqrt(12)
	if s < 1e-9 && step == 0 {
		return map[string]bool{lessontest.Refused: true}
	}
	if math.Abs(s-step) < 1e-4 {
		return nil
	}
	c := map[string]bool{lessontest.Refused: false, "the dial is coarser": s < step, "do not know s well": s > step}
	t := distuv.StudentsT{Sigma: 1, Nu: n - 1}.Quantile(0.975)
	if s < step {
		t, s = 1.959963984540054, step
	}
	for _, x := range []struct {
		what    string
		u       float64
		allowed units.Length
	}{{"size, ±", t * s, d.size}, {"ovality, ", t * s * math.Sqrt2, d.ovality}} {
		start := fmt.Sprintf("   %s%v allowed, so U = %.2f µm: ", x.what, x.allowed, (x.allowed / 4).In(units.Micrometre))
		ratio := x.u / (x.allowed / 4).In(units.Micrometre)
		times := math.Ceil(ratio * ratio)
		switch {
		case math.Abs(ratio*ratio-math.Round(ratio*ratio)) < 1e-3:
		case times <= 1:
			c[start+"one reading does"] = true
		case s == step:
			c[start+"no number of readings does"] = true
		case times > 100:
			c[start+"more than a hundred"] = true
		default:
			c[start+fmt.Sprintf("%.0f readings, and", times)] = true
		}
	}
	if rest := yy - xy*xy/xx; yy > 1e-9 && rest > 1e-9 {
		slope := xy / xx / math.Sqrt(rest/(n-2)/xx)
		p := 2 * distuv.StudentsT{Sigma: 1, Nu: n - 2}.CDF(-math.Abs(slope))
		if p < 0.0249 {
			c["THE DIAL CREEPS"] = true
		}
		if n < 10 && p > 0.0251 { // so few readings never have too few runs
			c["THE DIAL CREEPS"] = false
		}
	} else if yy < 1e-9 {
		c["THE DIAL CREEPS"] = false
	}
	return c
}
