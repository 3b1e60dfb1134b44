// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/cmplx"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	perfect, leaning := shipped, shipped
	perfect.dial, leaning.dial = make([][]float64, 5), make([][]float64, 5)
	for k := range 5 {
		for i := range 12 {
			perfect.dial[k] = append(perfect.dial[k], 8)
			leaning.dial[k] = append(leaning.dial[k], math.Round(float64(k)*30*math.Cos(float64(i)/6*math.Pi)))
		}
	}
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "perfect": perfect, "leaning": leaning},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	d := data{radius: units.Length(25+r.Int64N(40)) * units.Millimetre}
	n, lean, bend, rough := 8+r.IntN(5), 40*r.Float64(), 20*r.Float64(), 6*r.Float64()
	for k := range 3 + r.IntN(3) {
		d.depths = append(d.depths, float64(10+20*k))
		var row []float64
		for i := range n {
			turn := float64(i) / float64(n) * 2 * math.Pi
			row = append(row, math.Round(10*(lean*float64(k)*math.Cos(turn-1)+bend*float64(k*k-2*k)*math.Cos(turn)+10*math.Cos(2*turn)+rough*r.NormFloat64()))/10)
		}
		d.dial = append(d.dial, row)
	}
	switch r.IntN(20) {
	case 0:
		d.depths = d.depths[1:]
	case 1:
		d.dial[1] = d.dial[1][1:]
	case 2:
		d.radius = 0
	case 3:
		d.depths[1] = d.depths[0]
	case 4:
		d.dial, d.depths = nil, nil
	}
	return d
}

// claims knows what cannot be, and that no axis tried may be better than the zone's.
func claims(d data) map[string]bool {
	no := len(d.dial) != len(d.depths) || len(d.dial) == 0 || d.radius == 0
	for k, row := range d.dial {
		no = no || len(row) != len(d.dial[0]) || k > 0 && d.depths[k] <= d.depths[k-1]
	}
	if no {
		return map[string]bool{lessontest.Refused: true}
	}
	c := map[string]bool{
		lessontest.Refused: false,
		"none is better.":  true,
		fmt.Sprintf("The question: %d sections of %d points", len(d.dial), len(d.dial[0])): true,
	}
	if bar, ok := barred(d); ok {
		c[fmt.Sprintf("centred in the first section it cleans up at %.4f mm", bar)] = true
	}
	return c
}

// barred is the diameter about the centre of the first section that holds all points, in mm, and whether it is not
// so near an edge that rounding decides.
func barred(d data) (float64, bool) {
	var radii []units.Length
	for _, off := range d.dial[0] {
		radii = append(radii, d.radius+units.Length(math.Round(off*float64(units.Micrometre))))
	}
	first, err := form.FromRadii(radii)
	if err != nil {
		return 0, false
	}
	ls, err := first.LeastSquares()
	if err != nil {
		return 0, false
	}
	centre := complex(ls.Centre.X.In(units.Millimetre), ls.Centre.Y.In(units.Millimetre))
	bar := 0.0
	for _, row := range d.dial {
		for i, off := range row {
			at := cmplx.Rect(d.radius.In(units.Millimetre)+off/1000, 2*math.Pi*float64(i)/float64(len(row)))
			bar = max(bar, 2*cmplx.Abs(at-centre))
		}
	}
	_, part := math.Modf(bar * 1e4)
	return bar, math.Abs(part-0.5) > 1e-3
}
