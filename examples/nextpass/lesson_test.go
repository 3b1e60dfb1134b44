// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
	"borewright.example/units/material"
)

func TestLesson(t *testing.T) {
	past, coarse := shipped, shipped
	past.passes = append(slices.Clone(shipped.passes), pass{time.Minute, units.MustParseLength("78.5400 mm"), units.MustParseTemperature("36 °C")})
	coarse.gaugeStd, coarse.metal = 12*units.Micrometre, material.AluminiumBlock()
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "past": past, "coarse": coarse},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

// length rounds to a tenth of a micrometre, as gauges read.
func length(mm float64) units.Length {
	return units.Length(math.Round(mm*1e4)) * 100 * units.Nanometre
}

func celsius(x float64) units.Temperature {
	t, err := units.Celsius(x)
	if err != nil {
		panic(err)
	}
	return t
}

func draw(r *rand.Rand) data {
	d := data{metal: material.GreyIron(), gaugeStd: length(r.Float64() * 0.004)}
	if r.IntN(2) > 0 {
		d.metal = material.AluminiumBlock()
	}
	size := 30 + 100*r.Float64()
	d.finish = units.Limits{Min: length(size), Max: length(size + 0.005 + 0.05*r.Float64())}
	size -= 0.001 + 0.1*r.Float64()
	rate, lasts := 0.0002+0.002*r.Float64(), time.Duration(0)
	for range 1 + r.IntN(6) {
		at := math.Round(10 + 40*r.Float64())
		d.passes = append(d.passes, pass{lasts, length(size * (1 + float64(d.metal.Expansion)*(at-20))), celsius(at)})
		lasts = time.Duration(5+r.IntN(30)) * time.Second
		size += rate * lasts.Seconds() * (0.8 + 0.4*r.Float64())
		rate *= []float64{1, 1, 0.6, 1.5}[r.IntN(4)]
	}
	last := len(d.passes) - 1
	switch r.IntN(25) {
	case 0, 8, 9:
		d.gaugeStd = length(0.04)
	case 1:
		d.gaugeStd = 0
	case 2:
		d.passes = nil
	case 3:
		d.passes[last].at = units.Temperature(0)
	case 4:
		d.finish.Min, d.finish.Max = d.finish.Max, d.finish.Min
	case 5:
		d.passes[last].reads += 3 * units.Millimetre
	case 6:
		d.passes[last].reads, d.gaugeStd = d.passes[0].reads-units.Millimetre, length(0.0005)
	case 7:
		for range last {
			d.passes[last].lasts = 0
		}
	}
	return d
}

// claims reckons sizes at 20 °C in millimetres.
func claims(d data) map[string]bool {
	no := map[string]bool{lessontest.Refused: true}
	if len(d.passes) == 0 || d.finish.Min >= d.finish.Max {
		return no
	}
	var sizes []float64
	for i, p := range d.passes {
		if p.at == 0 || i > 0 && p.lasts <= 0 {
			return no
		}
		sizes = append(sizes, p.reads.In(units.Millimetre)/(1+float64(d.metal.Expansion)*(p.at.Celsius()-20)))
		if i > 0 {
			switch shrunk := (sizes[i-1] - sizes[i]) / (3 * math.Sqrt2 * d.gaugeStd.In(units.Millimetre)); {
			case math.Abs(shrunk-1) < 0.01:
				return nil
			case sizes[i-1] > sizes[i] && !(shrunk < 1):
				return no
			}
		}
	}
	y, low, high := sizes[len(sizes)-1], d.finish.Min.In(units.Millimetre), d.finish.Max.In(units.Millimetre)
	if math.Abs(y-low) < 1e-7 || math.Abs(y-high) < 1e-7 {
		return nil
	}
	c := map[string]bool{
		lessontest.Refused:                false,
		"STOP: the size is in the window": y >= low && y <= high,
		"PAST: ":                          y > high,
		"No trial pass: ":                 sizes[0] < low,
	}
	n := len(sizes) - 1
	c["the rate, each pass"] = n > 0
	switch {
	case y >= low:
		c["MEASURE AGAIN"], c["All in one go"] = false, false
	case n > 0 && y+1.645*d.gaugeStd.In(units.Millimetre) > high: // the gauge alone takes all of the risk
		c["MEASURE AGAIN"], c["All in one go"] = true, false
	case n > 0 && d.gaugeStd == 0 && slices.IsSorted(sizes) && low-y > 0.02: // far off at 4 µm a second or less
		c["MEASURE AGAIN"], c["All in one go"] = false, true
	}
	for i, s := range sizes {
		if math.Abs(math.Mod(s*1e4, 1)-0.5) > 0.001 && i > 0 {
			c[fmt.Sprintf("= %.4f mm: ", s)] = true
		}
	}
	if len(sizes) == 1 {
		c[fmt.Sprintf("a pass of %v, then measure", 10*time.Second)] = y < low
	}
	return c
}
