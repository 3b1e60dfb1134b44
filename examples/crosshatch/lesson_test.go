// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/examples/internal/lessontest"
	"borewright.example/units"
)

func TestLesson(t *testing.T) {
	slow, steep := shipped, shipped
	slow.setting.Spindle = 60 * units.PerMinute
	steep.setting.Spindle, steep.setting.Stroking, steep.wanted = 20*units.PerMinute, hone.Cycles(90*units.PerMinute), 120*units.Degree
	lessontest.Lesson[data]{
		Write: lesson,
		Data:  map[string]data{"": shipped, "slow": slow, "steep": steep},
		Draw:  draw, Claims: claims,
	}.Test(t)
}

func draw(r *rand.Rand) data {
	rate := func(most float64) units.Frequency {
		return units.Frequency(math.Round(math.Exp(r.Float64()*math.Log(most)))) * units.PerMinute
	}
	d := data{
		setting: hone.Setting{
			Bore:    units.Length(20+r.Int64N(200)) * units.Millimetre,
			Stroke:  units.Length(5+r.Int64N(400)) * units.Millimetre,
			Spindle: rate(3000), Stroking: hone.Strokes(rate(600)),
		},
		wanted: units.Angle(1+r.IntN(178)) * units.Degree,
	}
	if r.IntN(2) > 0 {
		d.setting.Stroking = hone.Cycles(rate(300))
	}
	if r.IntN(3) == 0 {
		d.wanted = units.Angle(math.Round(d.angle())) * units.Degree
	}
	switch r.IntN(30) {
	case 0:
		d.setting.Spindle = 0
	case 1:
		d.setting.Bore = -d.setting.Bore
	case 2:
		d.wanted = units.Angle(180*r.IntN(2)) * units.Degree
	case 3:
		d.setting.Stroke = 0
	case 4:
		d.wanted = 0.0001 * units.Degree
	}
	return d
}

// angle is that between the lines, in degrees: the tool climbs two strokes in a cycle while it goes round.
func (d data) angle() float64 {
	s := d.setting
	climb := 2 * s.Stroke.In(units.Metre) * s.Stroking.Cycles().In(units.PerMinute)
	round := math.Pi * s.Bore.In(units.Metre) * s.Spindle.In(units.PerMinute)
	return 2 * math.Atan2(climb, round) * 180 / math.Pi
}

func claims(d data) map[string]bool {
	s, want := d.setting, d.wanted.In(units.Degree)
	if s.Spindle <= 0 || s.Bore <= 0 || s.Stroke <= 0 || want <= 0 || want >= 180 {
		return map[string]bool{lessontest.Refused: true}
	}
	off := d.angle() - want
	if math.Abs(math.Abs(off)-1) < 1e-6 {
		return nil
	}
	round := math.Pi * s.Bore.In(units.Metre) * s.Spindle.In(units.PerMinute)
	c := map[string]bool{
		lessontest.Refused:               false,
		"That is what is wanted":         math.Abs(off) < 1,
		"turn more slowly, or stroke":    off < -1,
		"turn faster, or stroke more sl": off > 1,
		"heat, glaze and flat lines":     round > 110,
	}
	// The tangent of half the angle is the climb over the way round: each lever is in proportion to it.
	share := math.Tan(want*math.Pi/360) / math.Tan(d.angle()*math.Pi/360)
	if n := s.Spindle.In(units.PerMinute) / share; n > 0.01 && n < 9999 {
		c[fmt.Sprintf("the spindle at %.4g rev/min", n)] = true
	}
	cycles := s.Stroking.Cycles().In(units.Hertz) * share
	if math.Abs(cycles-2) > 1e-9 && cycles < 1e4 {
		c["more than a hand does"], c["a hand can do"] = cycles > 2, cycles < 2
	}
	if l := s.Stroke.In(units.Millimetre) * share; l > 0.01 && l < 9999 {
		c[fmt.Sprintf("a stroke of %.4g mm", l)] = true
	} else if l > 10001 {
		c["What is not in this list"] = true
	}
	return c
}
