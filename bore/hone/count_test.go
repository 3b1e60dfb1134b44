// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

var flat30 = crosshatch("30° included")

func counted(t tester, s hone.Setting, m hone.Motion, travel hone.Travel, flat hone.Crosshatch) (byLength, byNumber hone.Tally) {
	t.Helper()
	byLength, byNumber, err := s.CountLines(m, travel, flat)
	if err != nil {
		t.Fatal(err)
	}
	return byLength, byNumber
}

// A crank with a tool as long as the wall, which barely leaves it: by number the positions of the tool count
// alike, y = (1 − cos θ)/2. With k the greatest slope, lines are flatter than 30° included where sin θ < tan 15°/k
// = q: by number that is the share 1 − √(1 − q²), by time 2·asin(q)/π.
func TestCountCrank(t *testing.T) {
	// So little stroke beside the tool that what is inside hardly changes: 0.01 of 90 mm.
	travel := hone.Travel{Depth: 90 * mm, Tool: 90 * mm, Top: 450 * um, Bottom: 450 * um}
	s := small(110, 0, hone.Cycles(1*units.Hertz))
	s.Spindle = units.Frequency(0.01 * float64(s.Spindle))
	byLength, byNumber := counted(t, s, hone.Crank(), travel, flat30)
	s.Stroke = 900 * um
	k := math.Tan(must[hone.Crosshatch](t)(s.Steepest(hone.Crank())).FromSquare().In(units.Radian))
	q := math.Tan(float64(15*degree)) / k
	near(t, "flat by number", byNumber.Flat, 1-math.Sqrt(1-q*q), 0.006)
	along := func(x float64) float64 { return math.Hypot(1, k*math.Sin(x)) }
	length := quad.Fixed(along, 0, math.Pi/2, 60, quad.Legendre{}, 0)
	near(t, "flat by length", byLength.Flat, quad.Fixed(along, 0, math.Asin(q), 60, quad.Legendre{}, 0)/length, 0.006)
	mean := quad.Fixed(func(x float64) float64 { return 2 * math.Atan(k*math.Sin(x)) * math.Sin(x) }, 0, math.Pi/2, 60, quad.Legendre{}, 0)
	near(t, "mean by number", float64(byNumber.Mean), mean, 0.01)
	if !(byNumber.Flat < byLength.Flat && byNumber.Mean > byLength.Mean) {
		t.Errorf("flat lines are long and few: %+v, %+v", byLength, byNumber)
	}
}

// Every motion against a walk through small steps of time, the tool's part within the bore as a difference of
// two ends; the mean by length is that of the profile along the wall.
func checkCount(t *rapid.T) {
	s := anySetting(t)
	travel := hone.Travel{Tool: units.Length(rapid.Int64Range(int64(mm), int64(200*mm)).Draw(t, "tool"))}
	travel.Top = units.Length(rapid.Int64Range(0, int64(travel.Tool)-1).Draw(t, "top"))
	travel.Bottom = units.Length(rapid.Int64Range(0, int64(travel.Tool)-1).Draw(t, "bottom"))
	travel.Depth = s.Stroke + travel.Tool - travel.Top - travel.Bottom
	if travel.Depth < mm {
		t.Skip("no bore left")
	}
	m, speed := anyMotion(t, s.Stroking)
	limit := must[hone.Crosshatch](t)(hone.Included(units.Angle(rapid.Float64Range(1, 170).Draw(t, "flat")) * units.Degree))
	byLength, byNumber := counted(t, s, m, travel, limit)
	c := must[hone.Crosshatch](t)(s.Crosshatch())
	const n = 6000
	total := 0.0
	for i := range n {
		total += speed((float64(i) + 0.5) / n)
	}
	slope := math.Tan(float64(c.FromSquare())) * n / total
	var number, angle, flat, unsure, length, angleL, flatL, unsureL, gone float64
	for i := range n {
		v := speed((float64(i) + 0.5) / n)
		y := (gone + v/2) / total * s.Stroke.In(mm)
		gone += v
		inside := min(y+travel.Tool.In(mm), (travel.Top+travel.Depth).In(mm)) - max(y, travel.Top.In(mm))
		a := 2 * math.Atan(slope*v)
		w, l := inside*v, inside*math.Hypot(1, slope*v)
		number, angle, length, angleL = number+w, angle+w*a, length+l, angleL+l*a
		if a < float64(limit.Included()) {
			flat, flatL = flat+w, flatL+l
		}
		if math.Abs(a-float64(limit.Included())) < 0.005 {
			unsure, unsureL = unsure+w, unsureL+l
		}
	}
	near(t, "mean by number", float64(byNumber.Mean), angle/number, 3e-3)
	near(t, "mean by length", float64(byLength.Mean), angleL/length, 3e-3)
	near(t, "flat by number", byNumber.Flat, flat/number, 3e-3+unsure/number)
	near(t, "flat by length", byLength.Flat, flatL/length, 3e-3+unsureL/length)
	if byNumber.Mean < byLength.Mean-1e-9 || byNumber.Flat > byLength.Flat+1e-9 {
		t.Fatalf("flat lines are long and few: %+v, %+v", byLength, byNumber)
	}
}

func TestCount(t *testing.T) { rapid.Check(t, checkCount) }

// By length it is the same mean as along the wall.
func TestCountAgreesWithProfile(t *testing.T) {
	s := small(110, 0, hone.Cycles(1*units.Hertz))
	for _, m := range []hone.Motion{hone.Steady(), hone.Crank(), hone.Trapezoid(100 * 1e6)} {
		p := must[hone.Profile](t)(s.Profile(m, halfOut, want45, 3001))
		byLength, _ := counted(t, s, m, halfOut, flat30)
		near(t, m.String(), float64(byLength.Mean), float64(p.Mean), math.Pow(3000, -1.5))
	}
	// A steady motion has one angle: all lines are flatter than what is steeper, and none than itself.
	if byLength, byNumber := counted(t, s, hone.Steady(), halfOut, crosshatch("60° included")); byLength != byNumber || byLength.Flat != 1 {
		t.Errorf("%+v, %+v", byLength, byNumber)
	}
	s.Stroke = 90 * mm
	own := must[hone.Crosshatch](t)(s.Crosshatch())
	if byLength, byNumber := counted(t, s, hone.Steady(), halfOut, own); byNumber.Flat != 0 || byLength.Flat != 0 {
		t.Errorf("%+v, %+v", byLength, byNumber)
	}
}

func TestCountRefusals(t *testing.T) {
	good := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	for name, row := range map[string]struct {
		s    hone.Setting
		m    hone.Motion
		t    hone.Travel
		flat hone.Crosshatch
		err  error
	}{
		"no setting":   {hone.Setting{}, hone.Crank(), halfOut, flat30, units.ErrNotGiven},
		"no travel":    {good, hone.Crank(), hone.Travel{}, flat30, units.ErrNotGiven},
		"no flat":      {good, hone.Crank(), halfOut, hone.Crosshatch{}, units.ErrNotGiven},
		"other stroke": {small(110, 80*mm, hone.Cycles(1)), hone.Crank(), halfOut, flat30, hone.ErrRoom},
		"no function":  {good, hone.Shaped(nil), halfOut, flat30, units.ErrNotGiven},
	} {
		if _, _, err := row.s.CountLines(row.m, row.t, row.flat); !errors.Is(err, row.err) {
			t.Errorf("%s: %v, want %v", name, err, row.err)
		}
	}
}
