// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"gonum.org/v1/gonum/integrate/quad"
	"gonum.org/v1/gonum/mathext"
	"pgregory.net/rapid"
)

// halfOut is a bore of 90 mm with a tool of 60 mm that comes half out at both ends.
var halfOut = hone.Travel{Depth: 90 * mm, Tool: 60 * mm, Top: 30 * mm, Bottom: 30 * mm}

var want45 = hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 8 * degree}

// A crank against the closed form. With θ the angle of the crank, k the greatest slope of a line and
// y = (1 − cos θ)/2 the travel, lines drawn over dθ have the length √(1 + k²·sin²θ)·dθ, whose
// integral is Legendre's of the second kind: Abramowitz and Stegun, 17.2.8.
func TestProfileCrank(t *testing.T) {
	s := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	p := must[hone.Profile](t)(s.Profile(hone.Crank(), halfOut, want45, 91))
	k := math.Tan(must[hone.Crosshatch](t)(s.Steepest(hone.Crank())).FromSquare().In(units.Radian))
	m := k * k / (1 + k*k)
	length := func(a, b float64) float64 {
		if b <= a {
			return 0
		}
		return math.Sqrt(1+k*k) * (mathext.EllipticE(math.Pi/2-a, m) - mathext.EllipticE(math.Pi/2-b, m))
	}
	// Lines are within the tolerance on the way up to mid-stroke and again on the way down.
	from := math.Asin(math.Tan(float64(18.5*degree)) / k)
	to := math.Asin(math.Tan(float64(26.5*degree)) / k)
	for _, pt := range p.Points {
		z := pt.Depth.In(mm) + 30
		a := math.Acos(1 - 2*max(0, (z-60)/90))
		b := math.Acos(1 - 2*min(1, z/90))
		within := length(max(a, from), min(b, to)) + length(max(a, math.Pi-to), min(b, math.Pi-from))
		near(t, "within", pt.Within, within/length(a, b), 1e-8)
		mean := quad.Fixed(func(x float64) float64 {
			slope := k * math.Sin(x)
			return 2 * math.Atan(slope) * math.Sqrt(1+slope*slope)
		}, a, b, 60, quad.Legendre{}, 0) / length(a, b)
		near(t, "mean", float64(pt.Mean), mean, 1e-8)
		greatest := k
		if a > math.Pi/2 || b < math.Pi/2 {
			greatest = k * max(math.Sin(a), math.Sin(b))
		}
		near(t, "greatest", float64(pt.Max), 2*math.Atan(greatest), 1e-8)
		near(t, "least", float64(pt.Min), 2*math.Atan(k*min(math.Sin(a), math.Sin(b))), 1e-7)
	}
	// All lines of the wall together: those drawn at y weigh as much more as the tool then has
	// more of its length inside the bore.
	var length2, angle2 float64
	for _, piece := range [][2]float64{{0, 30}, {30, 60}, {60, 90}} { // of travel; the tool's ends pass the bore's
		a, b := math.Acos(1-piece[0]/45), math.Acos(1-piece[1]/45)
		inside := func(x float64) float64 {
			y := 45 * (1 - math.Cos(x))
			return min(y+30, 90) - max(y-30, 0)
		}
		line := func(x float64) float64 { return math.Hypot(1, k*math.Sin(x)) * inside(x) }
		length2 += quad.Fixed(line, a, b, 60, quad.Legendre{}, 0)
		angle2 += quad.Fixed(func(x float64) float64 { return 2 * math.Atan(k*math.Sin(x)) * line(x) }, a, b, 60, quad.Legendre{}, 0)
	}
	fine := must[hone.Profile](t)(s.Profile(hone.Crank(), halfOut, want45, 3001))
	// Points stand for steps of 1/3000, and lines at the ends of a crank's travel grow as a root.
	near(t, "mean of the wall", float64(fine.Mean), angle2/length2, math.Pow(3000, -1.5))

	// Flat marks reach half a tool in from each end, and there the least angle is 0.
	if p.ReversalTop != 30*mm || p.ReversalBottom != 30*mm {
		t.Errorf("marks of turning round reach %v and %v", p.ReversalTop, p.ReversalBottom)
	}
	for _, pt := range p.Points {
		if flat := pt.Depth <= 30*mm || pt.Depth >= 60*mm; flat != (pt.Min == 0) {
			t.Errorf("at %v the least angle is %v", pt.Depth, pt.Min)
		}
	}
}

// A trapezoid against closed forms: on a ramp the slope grows as c·t, and the length of its lines
// is (x·√(1 + x²) + asinh x)/(2c) with x = c·t.
func TestProfileTrapezoid(t *testing.T) {
	s := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	p := must[hone.Profile](t)(s.Profile(hone.Trapezoid(100*time.Millisecond), halfOut, want45, 91))
	k := math.Tan(must[hone.Crosshatch](t)(s.Steepest(hone.Trapezoid(100 * time.Millisecond))).FromSquare().In(units.Radian))
	const ramp = 0.2 // of the time of a stroke
	c := k / ramp
	ramped := func(time float64) float64 { x := c * time; return (x*math.Sqrt(1+x*x) + math.Asinh(x)) / (2 * c) }
	flat := math.Sqrt(1 + k*k)
	total := 2*ramped(ramp) + (1-2*ramp)*flat
	upTo := func(time float64) float64 {
		switch {
		case time < ramp:
			return ramped(time)
		case time > 1-ramp:
			return total - ramped(1-time)
		}
		return ramped(ramp) + (time-ramp)*flat
	}
	when := func(y float64) float64 { // y in shares of the stroke; the ramp takes an eighth of it
		switch {
		case y < 0.125:
			return math.Sqrt(y * 2 * ramp * (1 - ramp))
		case y > 0.875:
			return 1 - math.Sqrt((1-y)*2*ramp*(1-ramp))
		}
		return ramp + (y-0.125)*(1-ramp)
	}
	enter := math.Tan(float64(18.5*degree)) / c // the plateau, 27.4° included from square, is beyond 26.5
	leave := math.Tan(float64(26.5*degree)) / c
	if leave > ramp {
		t.Fatal("the plateau was to be beyond the tolerance")
	}
	span := func(a, b float64) float64 { return max(0, upTo(b)-upTo(a)) }
	for _, pt := range p.Points {
		z := pt.Depth.In(mm) + 30
		a, b := when(max(0, (z-60)/90)), when(min(1, z/90))
		within := span(max(a, enter), min(b, leave)) + span(max(a, 1-leave), min(b, 1-enter))
		near(t, "within", pt.Within, within/span(a, b), 1e-8)
		if pt.Depth == 45*mm { // the tool passes at full speed all the time
			near(t, "least in the middle", float64(pt.Min), 2*math.Atan(k), 1e-9)
			near(t, "mean in the middle", float64(pt.Mean), 2*math.Atan(k), 1e-9)
		}
	}
}

// anyMotion draws a motion and a plain function for its speed, of any scale.
func anyMotion(t *rapid.T, k hone.Stroking) (hone.Motion, func(float64) float64) {
	switch rapid.IntRange(0, 4).Draw(t, "motion") {
	case 0:
		return hone.Steady(), func(float64) float64 { return 1 }
	case 1:
		return hone.Crank(), func(x float64) float64 { return math.Sin(math.Pi * x) }
	case 2:
		r := rapid.Float64Range(0.01, 0.5).Draw(t, "ramp")
		half := r / float64(k.Strokes()) * float64(time.Second)
		return hone.Trapezoid(time.Duration(half)), func(x float64) float64 { return min(1, x/r, (1-x)/r) }
	case 3:
		e := rapid.Float64Range(0.2, 3).Draw(t, "exponent")
		f := func(x float64) float64 { return 7 * math.Pow(x, e) * (1 - x) }
		return hone.Shaped(f), f
	}
	d := rapid.Float64Range(0, 0.4).Draw(t, "dwell") // rests at mid-stroke
	f := func(x float64) float64 { return max(0, math.Abs(x-0.5)-d/2) }
	return hone.Shaped(f), f
}

// Every motion against a walk through small steps of time, and some things that must hold.
func checkProfile(t *rapid.T) {
	s := anySetting(t)
	travel := hone.Travel{Tool: units.Length(rapid.Int64Range(int64(mm), int64(200*mm)).Draw(t, "tool"))}
	travel.Top = units.Length(rapid.Int64Range(0, int64(travel.Tool)-1).Draw(t, "top"))
	travel.Bottom = units.Length(rapid.Int64Range(0, int64(travel.Tool)-1).Draw(t, "bottom"))
	travel.Depth = s.Stroke + travel.Tool - travel.Top - travel.Bottom
	if travel.Depth < mm {
		t.Skip("no bore left")
	}
	m, speed := anyMotion(t, s.Stroking)
	want := anyWant(t)
	p, err := s.Profile(m, travel, want, 7)
	if err != nil {
		t.Fatal(err)
	}
	c := must[hone.Crosshatch](t)(s.Crosshatch())

	const n = 4000
	var at, gone [n]float64
	total := 0.0
	for i := range n {
		at[i] = speed((float64(i) + 0.5) / n)
		gone[i] = total + at[i]/2
		total += at[i]
	}
	slope := math.Tan(float64(c.FromSquare())) * n / total
	lo, hi := (want.Crosshatch.Included()-want.Tolerance)/2, (want.Crosshatch.Included()+want.Tolerance)/2
	for i, pt := range p.Points {
		if want := must[units.Length](t)(travel.Depth.MulDiv(int64(i), 6)); pt.Depth != want {
			t.Fatalf("point %d at %v, want %v", i, pt.Depth, want)
		}
		z := (pt.Depth + travel.Top).In(mm)
		var length, angle, within, unsure float64
		least, greatest, steps := math.Pi, 0.0, 0
		for j := range n {
			y := gone[j] / total * s.Stroke.In(mm)
			if y > z || y < z-travel.Tool.In(mm) {
				continue
			}
			steps++
			a := math.Atan(slope * at[j])
			l := 1 / math.Cos(a)
			length, angle = length+l, angle+2*a*l
			if a >= float64(lo) && a <= float64(hi) {
				within += l
			}
			if math.Abs(a-float64(lo)) < 0.003 || math.Abs(a-float64(hi)) < 0.003 {
				unsure += l
			}
			least, greatest = min(least, 2*a), max(greatest, 2*a)
		}
		if pt.Min > pt.Mean || pt.Mean > pt.Max || pt.Within < 0 || pt.Within > 1 {
			t.Fatalf("out of order: %+v", pt)
		}
		rest := s.Stroke.In(mm) / 2 // a window that ends where the tool may rest, rests or not by a hair
		hair := s.Stroke.In(mm) / 100
		if steps < 40 || math.Abs(z-rest) < hair || math.Abs(z-travel.Tool.In(mm)-rest) < hair {
			continue // the walk is too coarse to say
		}
		tol := 4/float64(steps) + 2e-3
		near(t, "mean", float64(pt.Mean), angle/length, tol*math.Pi)
		near(t, "within", pt.Within, within/length, tol+unsure/length)
		if float64(pt.Min) > least+1e-3 || float64(pt.Max) < greatest-1e-3 {
			t.Fatalf("%v: %v to %v, the walk found %v to %v", pt.Depth, pt.Min, pt.Max, least, greatest)
		}
	}
	if p.Min > p.Mean || p.Mean > p.Max {
		t.Fatalf("out of order: %v, %v, %v", p.Min, p.Mean, p.Max)
	}
}

func TestProfile(t *testing.T) { rapid.Check(t, checkProfile) }

// The steady motion leaves the simple angle everywhere; a zero stroke is taken from the travel; a
// motion that is symmetrical leaves a wall that is.
func TestProfileSteady(t *testing.T) {
	s := small(110, 0, hone.Cycles(1*units.Hertz))
	p := must[hone.Profile](t)(s.Profile(hone.Steady(), halfOut, want45, 10))
	s.Stroke = 90 * mm
	c := must[hone.Crosshatch](t)(s.Crosshatch())
	for _, pt := range p.Points {
		for _, a := range []units.Angle{pt.Min, pt.Mean, pt.Max, p.Min, p.Mean, p.Max} {
			near(t, "angle", float64(a), float64(c.Included()), 1e-13)
		}
		if pt.Within != 1 {
			t.Errorf("within at %v: %v", pt.Depth, pt.Within)
		}
	}
	// At the very edge of the tolerance lines belong to it; a grain outside they do not.
	edge := hone.Want{Crosshatch: must[hone.Crosshatch](t)(hone.Included(c.Included() - 5*degree)), Tolerance: 5 * degree}
	if p := must[hone.Profile](t)(s.Profile(hone.Steady(), halfOut, edge, 3)); p.Within != 1 {
		t.Errorf("at the edge %v are within", p.Within)
	}
	edge.Crosshatch = must[hone.Crosshatch](t)(hone.Included(c.Included() + 5*degree))
	if p := must[hone.Profile](t)(s.Profile(hone.Steady(), halfOut, edge, 3)); p.Within != 1 {
		t.Errorf("at the lower edge %v are within", p.Within)
	}
	edge.Tolerance -= 1e-9 * degree
	if p := must[hone.Profile](t)(s.Profile(hone.Steady(), halfOut, edge, 3)); p.Within != 0 {
		t.Errorf("outside the edge %v are within", p.Within)
	}
	// A blind bottom: the tool turns round just as it touches the last line.
	blind := hone.Travel{Depth: 90 * mm, Tool: 60 * mm, Top: 30 * mm}
	for _, m := range []hone.Motion{hone.Steady(), hone.Crank(), hone.Trapezoid(50 * time.Millisecond)} {
		s.Stroke = 0
		p := must[hone.Profile](t)(s.Profile(m, blind, hone.Want{Crosshatch: want45.Crosshatch, Tolerance: 12 * degree}, 61))
		last := p.Points[60]
		if last.Min != last.Max || last.Mean != last.Min || p.ReversalBottom != 60*mm {
			t.Errorf("%v at the blind end: %+v, marks %v", m, last, p.ReversalBottom)
		}
		if flat := m.String() != "steady"; flat != (last.Mean == 0) || flat == (last.Within == 1) {
			t.Errorf("%v turns round with lines at %v", m, last.Mean)
		}
	}
	p = must[hone.Profile](t)(s.Profile(hone.Crank(), halfOut, want45, 51))
	for i, pt := range p.Points {
		twin := p.Points[50-i]
		near(t, "mean", float64(pt.Mean), float64(twin.Mean), 1e-12)
		near(t, "within", pt.Within, twin.Within, 2e-9)
	}
}

func TestProfileBadInput(t *testing.T) {
	good := small(110, 90*mm, hone.Cycles(1*units.Hertz))
	late := func(v float64) hone.Motion {
		return hone.Shaped(func(t float64) float64 {
			if t > 0.7 {
				return v
			}
			return 1
		})
	}
	for name, row := range map[string]struct {
		s      hone.Setting
		m      hone.Motion
		t      hone.Travel
		w      hone.Want
		points int
		err    error
	}{
		"no setting":        {hone.Setting{}, hone.Crank(), halfOut, want45, 10, units.ErrNotGiven},
		"no travel":         {good, hone.Crank(), hone.Travel{}, want45, 10, units.ErrNotGiven},
		"no want":           {good, hone.Crank(), halfOut, hone.Want{}, 10, units.ErrNotGiven},
		"other stroke":      {small(110, 80*mm, hone.Cycles(1)), hone.Crank(), halfOut, want45, 10, hone.ErrRoom},
		"one point":         {good, hone.Crank(), halfOut, want45, 1, units.ErrRange},
		"too many points":   {good, hone.Crank(), halfOut, want45, 1_000_001, units.ErrRange},
		"ramp too long":     {good, hone.Trapezoid(251 * time.Millisecond), halfOut, want45, 10, units.ErrRange},
		"ramp negative":     {good, hone.Trapezoid(-1), halfOut, want45, 10, units.ErrRange},
		"no function":       {good, hone.Shaped(nil), halfOut, want45, 10, units.ErrNotGiven},
		"speed NaN":         {good, late(math.NaN()), halfOut, want45, 10, units.ErrRange},
		"starts with NaN":   {good, hone.Shaped(func(t float64) float64 { return math.Sqrt(t - 1e-300) }), halfOut, want45, 10, units.ErrRange},
		"ends with Inf":     {good, hone.Shaped(func(t float64) float64 { return 1 / (1 - t) }), halfOut, want45, 10, units.ErrRange},
		"speed infinite":    {good, late(math.Inf(1)), halfOut, want45, 10, units.ErrRange},
		"speed negative":    {good, late(-1e-9), halfOut, want45, 10, units.ErrRange},
		"speed overflows":   {good, late(math.MaxFloat64), halfOut, want45, 10, units.ErrRange},
		"never moves":       {good, hone.Shaped(func(float64) float64 { return 0 }), halfOut, want45, 10, units.ErrRange},
		"tool leaves":       {good, hone.Crank(), hone.Travel{Depth: 90 * mm, Tool: 60 * mm, Top: 60 * mm}, want45, 10, hone.ErrRoom},
		"out by less":       {good, hone.Crank(), hone.Travel{Depth: 90 * mm, Tool: 60 * mm, Bottom: -1}, want45, 10, hone.ErrRoom},
		"tool beyond room":  {good, hone.Crank(), hone.Travel{Depth: 50 * mm, Tool: 60 * mm, Top: 10 * mm}, want45, 10, hone.ErrRoom},
		"negative tool":     {good, hone.Crank(), hone.Travel{Depth: 50 * mm, Tool: -60 * mm}, want45, 10, units.ErrRange},
		"negative depth":    {good, hone.Crank(), hone.Travel{Depth: -50 * mm, Tool: 60 * mm}, want45, 10, units.ErrRange},
		"just half a ramp":  {good, hone.Trapezoid(250 * time.Millisecond), halfOut, want45, 10, nil},
		"ramp of no length": {good, hone.Trapezoid(0), halfOut, want45, 10, nil},
	} {
		p, err := row.s.Profile(row.m, row.t, row.w, row.points)
		if !errors.Is(err, row.err) || row.err != nil && p.Points != nil {
			t.Errorf("%s: %v, %v; want %v", name, p, err, row.err)
		}
		for _, pt := range p.Points {
			if math.IsNaN(float64(pt.Mean+pt.Min+pt.Max)) || math.IsNaN(pt.Within) {
				t.Errorf("%s: %+v", name, pt)
			}
		}
	}
	if c, err := good.Steepest(hone.Trapezoid(time.Hour)); !errors.Is(err, units.ErrRange) {
		t.Errorf("steepest of an endless ramp: %v, %v", c, err)
	}
}
