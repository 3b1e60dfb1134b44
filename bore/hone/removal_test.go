// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"testing"
	"time"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

const um = units.Micrometre

// For a steady stroke and a tool of length l with o out at the end, the end gets o/l of the
// middle under constant pressure, ln(l/(l − o)) under constant force. Closed forms, derived in the
// package; equal to the middle at o/l = 1 − 1/e.
func TestRemovalAtTheEnd(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	for _, out := range []float64{0, 0.1, 1.0 / 3, 0.5, 1 - 1/math.E, 0.9, 0.999} {
		for _, tool := range []units.Length{1 * mm, 20 * mm, 45 * mm} {
			travel := hone.Travel{Depth: 90 * mm, Tool: tool, Top: units.Length(out * float64(tool))}
			share := travel.Top.In(tool)
			for law, want := range map[hone.Pressing]float64{hone.ConstantPressure: share, hone.ConstantForce: -math.Log1p(-share)} {
				r := must[hone.Removal](t)(s.Removal(hone.Steady(), travel, law, 10*mm, 2))
				// Sizes are whole picometres: 1e-9 of 10 mm is far above their grain.
				near(t, law.String(), r.Top.In(r.Middle), want, 1e-9)
				for name, m := range motions() {
					if r := must[hone.Removal](t)(s.Removal(m, travel, law, 10*mm, 2)); r.Bottom != 0 || r.Min != 0 {
						t.Errorf("%s, %v: the closed end gets %v", name, law, r.Bottom)
					}
				}
			}
		}
	}
}

// motions of every shape, with what quadrature needs of them: the speed over the share of time.
func motions() map[string]hone.Motion {
	return map[string]hone.Motion{
		"steady":    hone.Steady(),
		"crank":     hone.Crank(),
		"trapezoid": hone.Trapezoid(100 * time.Millisecond),
		"shaped":    hone.Shaped(func(t float64) float64 { return 0.2 + t*t*(1-t) }),
	}
}

// Whatever the motion, the travel and the law, the removal integrates to the stock.
func TestRemovalIntegratesToStock(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		name := rapid.SampledFrom([]string{"steady", "crank", "trapezoid", "shaped"}).Draw(t, "motion")
		depth := units.Length(rapid.Int64Range(20, 300).Draw(t, "depth")) * mm
		tool := units.Length(rapid.Int64Range(20, 300).Draw(t, "tool")) * mm
		out := func(name string) units.Length {
			return units.Length(rapid.Float64Range(0, 0.9).Draw(t, name) * float64(tool))
		}
		travel := hone.Travel{Depth: depth, Tool: tool, Top: out("top"), Bottom: out("bottom")}
		if _, err := travel.Stroke(); err != nil {
			return
		}
		law := rapid.SampledFrom([]hone.Pressing{hone.ConstantPressure, hone.ConstantForce}).Draw(t, "law")
		s := small(rapid.Float64Range(20, 700).Draw(t, "rev/min"), 0, hone.Cycles(1*units.Hertz))
		const points = 2001
		r := must[hone.Removal](t)(s.Removal(motions()[name], travel, law, 1*mm, points))
		sum := 0.0
		for i, p := range r.Points {
			if i == 0 || i == points-1 {
				sum += p.Diameter.In(mm) / 2
				continue
			}
			sum += p.Diameter.In(mm)
		}
		// The trapezoid rule over 2,000 steps h, where the curve bends by up to √h at a crank's ends:
		// wrong by a few h^1.5 of the greatest, or 3e-4 for the short, sharp bends of a short tool.
		near(t, "mean", sum/(points-1), 1, 5e-4*r.Max.In(mm))
		if r.Straightness != (r.Max-r.Min)/2 || r.Min < 0 {
			t.Errorf("least %v, greatest %v, straightness %v", r.Min, r.Max, r.Straightness)
		}
	})
}

// A crank by an independent way: over its angle φ the tool has gone (1 − cos φ)/2, and the time at
// which it covers a point is an arccosine, so that the removal is one smooth integral.
func TestRemovalByQuadrature(t *testing.T) {
	s := small(60, 0, hone.Cycles(1*units.Hertz))
	travel := hone.Travel{Depth: 90 * mm, Tool: 40 * mm, Top: 20 * mm, Bottom: 12 * mm}
	stroke := must[units.Length](t)(travel.Stroke()).In(mm)
	v, along := math.Pi*67*1, stroke*math.Pi // mm/s round, and the peak along
	rate := func(force bool) func(phi float64) float64 {
		return func(phi float64) float64 {
			x := stroke * (1 - math.Cos(phi)) / 2
			p := math.Hypot(v, along*math.Sin(phi))
			if force {
				p *= 40 / (40 - max(0, 20-x) - max(0, 12-(stroke-x)))
			}
			return p
		}
	}
	phi := func(x float64) float64 { return math.Acos(1 - 2*min(max(x/stroke, 0), 1)) }
	for law, force := range map[hone.Pressing]bool{hone.ConstantPressure: false, hone.ConstantForce: true} {
		r := must[hone.Removal](t)(s.Removal(hone.Crank(), travel, law, 100*um, 19))
		at := func(z float64) float64 { // z from the top face
			a, b := phi(z+20-40), phi(z+20)
			sum := 0.0
			corners := []float64{a, phi(20), phi(stroke - 12), b}
			for i := 1; i < len(corners); i++ {
				lo, hi := min(max(corners[i-1], a), b), min(max(corners[i], a), b)
				if lo < hi {
					sum += quad.Fixed(rate(force), lo, hi, 40, nil, 0)
				}
			}
			return sum
		}
		for _, p := range r.Points {
			near(t, law.String()+" at "+p.Depth.String(), p.Diameter.In(r.Middle), at(p.Depth.In(mm))/at(45), 1e-6)
		}
	}
}

// The more of the tool stands out at an end, the more that end gets of what the middle gets.
func TestRemovalGrowsWithOvertravel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		// A motion of one's own moves the middle as well.
		name := rapid.SampledFrom([]string{"steady", "crank", "trapezoid"}).Draw(t, "motion")
		law := rapid.SampledFrom([]hone.Pressing{hone.ConstantPressure, hone.ConstantForce}).Draw(t, "law")
		s := small(120, 0, hone.Cycles(1*units.Hertz))
		tool := units.Length(rapid.Int64Range(20, 60).Draw(t, "tool")) * mm
		less := rapid.Float64Range(0, 0.5).Draw(t, "less")
		more := rapid.Float64Range(less, 0.5).Draw(t, "more")
		end := func(share float64) float64 {
			out := units.Length(share * float64(tool))
			r := must[hone.Removal](t)(s.Removal(motions()[name], hone.Travel{Depth: 150 * mm, Tool: tool, Top: out, Bottom: out}, law, 10*mm, 2))
			return r.Top.In(r.Middle)
		}
		if a, b := end(less), end(more); b < a-1e-9 {
			t.Errorf("%v out gives the end %v of the middle, %v gives %v", less, a, more, b)
		}
	})
}

// Only ratios count: turning and stroking twice as fast takes the metal from the same places; a
// mirrored travel mirrors the removal of a motion that is its own mirror.
func TestRemovalSymmetries(t *testing.T) {
	travel := hone.Travel{Depth: 90 * mm, Tool: 40 * mm, Top: 20 * mm, Bottom: 5 * mm}
	mirrored := travel
	mirrored.Top, mirrored.Bottom = travel.Bottom, travel.Top
	for name, m := range motions() {
		if name == "trapezoid" { // its ramp is a time
			continue
		}
		slow := must[hone.Removal](t)(small(100, 0, hone.Cycles(1)).Removal(m, travel, hone.ConstantForce, 1*mm, 31))
		fast := must[hone.Removal](t)(small(200, 0, hone.Cycles(2)).Removal(m, travel, hone.ConstantForce, 1*mm, 31))
		turned := must[hone.Removal](t)(small(100, 0, hone.Cycles(1)).Removal(m, mirrored, hone.ConstantForce, 1*mm, 31))
		for i, p := range slow.Points {
			near(t, name+" twice as fast", fast.Points[i].Diameter.In(mm), p.Diameter.In(mm), 1e-9)
			if name != "shaped" {
				near(t, name+" mirrored", turned.Points[30-i].Diameter.In(mm), p.Diameter.In(mm), 1e-9)
			}
		}
	}
}

func TestRemovalRefuses(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	for name, row := range map[string]struct {
		s      hone.Setting
		m      hone.Motion
		t      hone.Travel
		law    hone.Pressing
		stock  units.Length
		points int
		want   error
	}{
		"good":           {s, hone.Crank(), halfOut, hone.ConstantForce, 50 * um, 2, nil},
		"no law":         {s, hone.Crank(), halfOut, 0, 50 * um, 2, units.ErrNotGiven},
		"no such law":    {s, hone.Crank(), halfOut, 3, 50 * um, 2, units.ErrRange},
		"no stock":       {s, hone.Crank(), halfOut, hone.ConstantForce, 0, 2, units.ErrNotGiven},
		"stock below 0":  {s, hone.Crank(), halfOut, hone.ConstantForce, -1, 2, units.ErrRange},
		"stock too much": {s, hone.Steady(), halfOut, hone.ConstantForce, 10 * units.Metre, 3, units.ErrRange},
		"one point":      {s, hone.Crank(), halfOut, hone.ConstantForce, 50 * um, 1, units.ErrRange},
		"many points":    {s, hone.Crank(), halfOut, hone.ConstantForce, 50 * um, 1_000_001, units.ErrRange},
		"no travel":      {s, hone.Crank(), hone.Travel{}, hone.ConstantForce, 50 * um, 2, units.ErrNotGiven},
		"other stroke":   {small(120, 1*mm, hone.Cycles(1)), hone.Crank(), halfOut, hone.ConstantForce, 50 * um, 2, hone.ErrRoom},
		"no speed":       {small(0, 0, hone.Cycles(1)), hone.Crank(), halfOut, hone.ConstantForce, 50 * um, 2, units.ErrNotGiven},
		"bad motion":     {s, hone.Shaped(func(float64) float64 { return math.NaN() }), halfOut, hone.ConstantForce, 50 * um, 2, units.ErrRange},
	} {
		if _, err := row.s.Removal(row.m, row.t, row.law, row.stock, row.points); !errors.Is(err, row.want) {
			t.Errorf("%s: %v, want %v", name, err, row.want)
		}
	}
}

// The ends of a bore of 90 mm after 0.05 mm with stones of 45 mm a third out, as the package comment has them.
// Computed: the mean is the middle's share of the depth; 50/0.7778·(1 − 1/3) at constant pressure.
func TestRemovalOfThePackageComment(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	travel := hone.Travel{Depth: 90 * mm, Tool: 45 * mm, Top: 15 * mm, Bottom: 15 * mm}
	for law, want := range map[hone.Pressing]float64{hone.ConstantPressure: 42.857, hone.ConstantForce: 35.672} {
		r := must[hone.Removal](t)(s.Removal(hone.Steady(), travel, law, 50*um, 3))
		near(t, law.String(), (r.Middle - r.Top).In(um), want, 0.001)
	}
}

// Answers and questions go through JSON and come back as they were.
func TestPlansAsJSON(t *testing.T) {
	s := small(120, 0, hone.Cycles(1*units.Hertz))
	checkJSON(t, must[hone.Removal](t)(s.Removal(hone.Crank(), halfOut, hone.ConstantForce, 50*um, 5)))
	checkJSON(t, tapered())
	checkJSON(t, must[hone.DwellPlan](t)(s.Correct(hone.Crank(), hone.ConstantForce, tapered())))
	z := sizing(3, 9)
	checkJSON(t, z)
	checkJSON(t, must[hone.Next](t)(z.Next()))
	checkJSON(t, hone.Grits())
	checkJSON(t, hone.Tally{Mean: 40 * degree, Flat: 0.2})
	checkJSON(t, hone.Finishes())
	checkJSON(t, hone.RigidStone.Cautions())
	checkJSON(t, hone.Retrace{Meets: true, After: 3, Slip: 5, Avoid: 2})
	checkJSON(t, hone.Trace{Crosshatch: crosshatch("45° included"), Later: 3, Left: 2, Gone: true, Assumed: true})
}

func checkJSON[V any](t *testing.T, v V) {
	t.Helper()
	var back V
	text := must[[]byte](t)(json.Marshal(v))
	if err := json.Unmarshal(text, &back); err != nil || !reflect.DeepEqual(v, back) {
		t.Errorf("%s\ncame back as %+v, %v", text, back, err)
	}
}
