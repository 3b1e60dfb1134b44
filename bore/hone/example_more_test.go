// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"fmt"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// slowDrill is the setting of the examples below, of the invented pump engine.
func slowDrill() hone.Setting {
	return hone.Setting{Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre, Spindle: 110 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
}

func ExampleIncluded() {
	c, err := hone.Included(45 * units.Degree)
	fmt.Println(c.FromSquare(), err)
	// Output: 22.5° <nil>
}

func ExampleFromSquare() {
	c, err := hone.FromSquare(35 * units.Degree)
	fmt.Println(c, err)
	// Output: 70° included <nil>
}

func ExampleCycles() {
	fmt.Println(hone.Cycles(1*units.Hertz).Strokes() == 2*units.Hertz)
	// Output: true
}

func ExampleStrokes() {
	fmt.Println(hone.Strokes(2*units.Hertz), hone.Strokes(2*units.Hertz).Cycles() == 1*units.Hertz)
	// Output: 120 strokes/min true
}

func ExampleParseStroking() {
	k, err := hone.ParseStroking("1 cycle/s")
	fmt.Println(k, err)
	// Output: 60 cycles/min <nil>
}

func ExampleSteady() {
	c, err := slowDrill().Steepest(hone.Steady())
	fmt.Println(c.Format(1), err)
	// Output: 45.0° included <nil>
}

func ExampleCrank() {
	c, err := slowDrill().Steepest(hone.Crank())
	fmt.Println(c.Format(1), err)
	// Output: 66.2° included <nil>
}

func ExampleTrapezoid() {
	c, err := slowDrill().Steepest(hone.Trapezoid(100 * time.Millisecond))
	fmt.Println(c.Format(1), err)
	// Output: 54.8° included <nil>
}

func ExampleCaution() {
	c := hone.RigidStone.Cautions()[2]
	fmt.Println(c.Text, "Source:", c.Source)
	// Output: A rigid-stone hone is put in, started, stopped and taken out with its stones drawn in, and never turns outside the bore or leaves it while turning: it can throw a stone. Source: common practice
}

// A machine may stroke three times a second; a hand should not.
func ExampleDrive() {
	s := slowDrill()
	s.Stroking = hone.Cycles(3 * units.Hertz)
	for _, d := range []hone.Drive{hone.ByHand, hone.ByMachine} {
		cs, err := s.Cautions(d)
		fmt.Println(d, len(cs), err)
	}
	// Output:
	// by hand 1 <nil>
	// by machine 0 <nil>
}

// One thing at a time, from the nearest that can be had.
func ExampleChange() {
	hand := hone.OnHand{
		Bore: 67 * units.Millimetre, Stroke: 80 * units.Millimetre,
		Spindle:  hone.SpindleRange{Min: 300 * units.PerMinute, Max: 300 * units.PerMinute},
		Stroking: hone.StrokingRange{Min: hone.Cycles(60 * units.PerMinute), Max: hone.Cycles(60 * units.PerMinute)},
	}
	r, err := hand.SettingFor(hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range r.Changes {
		fmt.Printf("%.0f rev/min, %.0f cycles/min, %s\n", c.Setting.Spindle.In(units.PerMinute), c.Setting.Stroking.Cycles().In(units.PerMinute), c.Setting.Stroke.Format(units.Millimetre, 0))
	}
	// Output:
	// 110 rev/min, 60 cycles/min, 80 mm
	// 300 rev/min, 163 cycles/min, 80 mm
	// 300 rev/min, 60 cycles/min, 218 mm
}

// Nobody knows how deep the lines of the first phase are: they are taken to stay.
func ExampleTrace() {
	traces, err := hone.Traces([]hone.Phase{
		{Setting: slowDrill(), Stock: 20 * units.Micrometre},
		{Setting: slowDrill(), Stock: 2 * units.Micrometre},
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("gone:", traces[0].Gone, "assumed:", traces[0].Assumed)
	// Output: gone: false assumed: true
}

func ExamplePhase() {
	p := hone.Phase{Setting: slowDrill(), Stock: 20 * units.Micrometre, Groove: 3 * units.Micrometre}
	traces, err := hone.Traces([]hone.Phase{p})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(traces[0].Crosshatch.Format(0), "gone:", traces[0].Gone)
	// Output: 45° included gone: false
}

// By hand nothing of the kind can be foretold.
func ExampleRig() {
	r, err := slowDrill().Retrace(hone.Rig{Kind: hone.RigidStone, Drive: hone.ByHand}, 8)
	fmt.Println(r == hone.Retrace{}, err)
	// Output: true <nil>
}

func ExampleRetrace() {
	s := slowDrill()
	s.Spindle = 120 * units.PerMinute
	r, err := s.Retrace(hone.Rig{Kind: hone.RigidStone, Drive: hone.ByMachine, Lines: 4, Track: 500 * units.Micrometre}, 8)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(r.Meets, r.After, r.Slip)
	// Output: true 1 0 mm
}

func ExampleCover_Untouched() {
	c, err := slowDrill().Cover(hone.Rig{Lines: 2, Width: 6 * units.Millimetre, Length: 20 * units.Millimetre})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.1f %% of the wall untouched after four strokes by hand\n", 100*c.Untouched(4))
	// Output: 5.5 % of the wall untouched after four strokes by hand
}

// With a steady stroke every line leans alike.
func ExampleProfile() {
	travel := hone.Travel{Depth: 80 * units.Millimetre, Tool: 40 * units.Millimetre, Top: 20 * units.Millimetre, Bottom: 20 * units.Millimetre}
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree}
	p, err := slowDrill().Profile(hone.Steady(), travel, want, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.0f° to %.0f°\n", p.Min.In(units.Degree), p.Max.In(units.Degree))
	// Output: 45° to 45°
}

func ExampleLevel() {
	travel := hone.Travel{Depth: 80 * units.Millimetre, Tool: 40 * units.Millimetre, Top: 20 * units.Millimetre, Bottom: 20 * units.Millimetre}
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * units.Degree}
	p, err := slowDrill().Profile(hone.Crank(), travel, want, 3)
	if err != nil {
		fmt.Println(err)
		return
	}
	middle := p.Points[1]
	fmt.Printf("at %v: %.0f° to %.0f°\n", middle.Depth, middle.Min.In(units.Degree), middle.Max.In(units.Degree))
	// Output: at 40 mm: 59° to 66°
}

// Half of a tool of 40 mm out at either end: 0.05 mm leaves the bore this straight.
func ExampleRemoval() {
	travel := hone.Travel{Depth: 80 * units.Millimetre, Tool: 40 * units.Millimetre, Top: 20 * units.Millimetre, Bottom: 20 * units.Millimetre}
	for _, m := range []hone.Motion{hone.Steady(), hone.Crank()} {
		r, err := slowDrill().Removal(m, travel, hone.ConstantPressure, 50*units.Micrometre, 81)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(m, r.Straightness.Format(units.Micrometre, 1))
	}
	// Output:
	// steady 14.3 µm
	// crank 11.2 µm
}

// waisted is a bore that is tight in its middle.
func waisted() hone.Correction {
	at := func(depth int, size string) hone.Place {
		return hone.Place{Depth: units.Length(depth) * units.Millimetre, Diameter: units.MustParseLength(size)}
	}
	return hone.Correction{
		Run: hone.Run{
			Kind: hone.RigidStone, Depth: 90 * units.Millimetre, Tool: 30 * units.Millimetre,
			RoomTop: 50 * units.Millimetre, RoomBottom: 50 * units.Millimetre,
		},
		Measured: []hone.Place{at(10, "67.030 mm"), at(45, "67.010 mm"), at(80, "67.030 mm")},
		Size:     units.MustParseLength("67.045 mm"),
	}
}

func ExampleCorrection() {
	s := slowDrill()
	c := waisted()
	c.Run.Kind = hone.BallType
	_, err := s.Correct(hone.Crank(), hone.ConstantPressure, c)
	fmt.Println(err)
	// Output: hone: shape by a ball-type hone: out of range: want rigid stones
}

func ExampleDwellPlan() {
	s := slowDrill()
	p, err := s.Correct(hone.Crank(), hone.ConstantForce, waisted())
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("strokes of", p.Stroke)
	fmt.Println("differs by", p.After.Format(units.Micrometre, 0), "after")
	// Output:
	// strokes of 7.5 mm
	// differs by 3 µm after
}

func ExampleDwell() {
	s := slowDrill()
	p, err := s.Correct(hone.Crank(), hone.ConstantForce, waisted())
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range p.Dwells {
		if d.Takes >= 1*units.Micrometre {
			fmt.Println(d.Middle.Format(units.Millimetre, 0), d.Takes.Format(units.Micrometre, 0))
		}
	}
	// Output:
	// 16 mm 9 µm
	// 31 mm 4 µm
	// 38 mm 7 µm
	// 45 mm 12 µm
	// 52 mm 7 µm
	// 60 mm 4 µm
	// 74 mm 9 µm
}

func ExamplePlace() {
	p := hone.Place{Depth: 45 * units.Millimetre, Diameter: units.MustParseLength("67.010 mm")}
	fmt.Println(p.Depth, p.Diameter)
	// Output: 45 mm 67.01 mm
}

// A pass that took nothing was no pass: the reading was hot, dirty, or on another axis.
func ExamplePass() {
	reading := func(text string) hone.Reading {
		return hone.Reading{
			Diameter: uncertainty.Estimate{Value: units.MustParseLength(text), Std: 1 * units.Micrometre},
			At:       units.MustParseTemperature("20 °C"),
		}
	}
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: units.MustParseLength("67.020 mm"), Max: units.MustParseLength("67.030 mm")},
		Trial: 5 * time.Second, Longest: 20 * time.Second, Start: reading("67.000 mm"),
		Passes: []hone.Pass{{Lasts: 5 * time.Second, After: reading("66.990 mm")}},
	}
	_, err := z.Next()
	fmt.Println(err)
	// Output: hone: pass 1: bore read smaller after honing than before: by 0.01 mm at 20 °C; look for heat, dirt or another axis
}

// Nothing is known yet: a short trial pass.
func ExampleNext() {
	z := hone.Sizing{
		Metal: material.GreyIron(), Finish: units.Limits{Min: units.MustParseLength("67.020 mm"), Max: units.MustParseLength("67.030 mm")},
		Trial: 5 * time.Second, Longest: 20 * time.Second,
		Start: hone.Reading{
			Diameter: uncertainty.Estimate{Value: units.MustParseLength("67.000 mm"), Std: 1 * units.Micrometre},
			At:       units.MustParseTemperature("20 °C"),
		},
	}
	n, err := z.Next()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(n.Decision, n.Lasts)
	// Output: go on 5s
}
