// SPDX-License-Identifier: BSD-3-Clause

package picture_test

import (
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// show prints what a picture says to those who cannot see it.
func show(p page.Picture, err error) {
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(p.Title)
	fmt.Println(p.Description)
}

// smallBore is a cylinder read at two depths along two axes; invented.
func smallBore() bore.Geometry {
	var rs []bore.Reading
	for _, r := range []struct {
		depth, axis int
		size        string
	}{{10, 0, "67.061 mm"}, {10, 90, "67.030 mm"}, {60, 0, "67.020 mm"}, {60, 90, "67.012 mm"}} {
		rs = append(rs, bore.Reading{Depth: units.Length(r.depth) * units.Millimetre, Axis: bore.Axis(units.Angle(r.axis) * units.Degree), Diameter: units.MustParseLength(r.size)})
	}
	g, err := bore.Analyse(rs, bore.Gauge{Repeatability: 2 * units.Micrometre})
	if err != nil {
		panic(err)
	}
	return g
}

// Where along the wall is the wear, and is it beyond the limit?
func ExampleWear() {
	show(picture.Wear(smallBore(), bore.Layout{}, picture.Marks{Service: units.MustParseLength("67.1 mm")}, units.Millimetre))
	// Output:
	// Wear down the wall
	// limit 67.100 mm. thrust at 10 mm: 67.0610 ± 0.0039 mm. pin at 10 mm: 67.0300 ± 0.0039 mm. thrust at 60 mm: 67.0200 ± 0.0039 mm. pin at 60 mm: 67.0120 ± 0.0039 mm.
}

// What does the wall look like from above? Two axes fix no form.
func ExampleSection() {
	p, err := picture.Section(smallBore().Planes[0], units.Inch)
	show(p, err)
	fmt.Println(p.Notes[0])
	// Output:
	// Section at 0.3937 in, from above
	// thrust: 2.64020 ± 0.00015 in. pin: 2.63898 ± 0.00015 in.
	// Fewer than three axes fix no form: there is none drawn.
}

// Which size cleans up?
func ExampleLadder() {
	g := smallBore()
	clean, err := g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * units.Millimetre}})
	if err != nil {
		fmt.Println(err)
		return
	}
	rung := func(over string) picture.Rung {
		size := 67*units.Millimetre + units.MustParseLength(over)
		return picture.Rung{Name: "+" + over, Bored: size - 60*units.Micrometre, Finish: units.Limits{Min: size - 10*units.Micrometre, Max: size + 10*units.Micrometre}}
	}
	show(picture.Ladder([]picture.Column{{Name: "1", Geometry: g, CleanUp: clean.Original, Rung: 0}}, []picture.Rung{rung("0.25 mm"), rung("0.5 mm")}, units.Millimetre))
	// Output:
	// The sizes on offer, and what each cylinder needs
	// +0.25 mm: bore to 67.190 mm. +0.5 mm: bore to 67.440 mm. Cylinder 1: read from 67.012 mm to 67.061 mm; cleans up at 67.061 mm to 67.1220 ± 0.0078 mm. Chosen: +0.25 mm.
}

// What does 45° look like, and what the drill leaves?
func ExampleCrosshatch() {
	included := func(degrees units.Angle) hone.Crosshatch {
		c, err := hone.Included(degrees * units.Degree)
		if err != nil {
			panic(err)
		}
		return c
	}
	show(picture.Crosshatch(hone.Want{Crosshatch: included(45), Tolerance: 5 * units.Degree}, included(8.1), hone.Profile{}))
	// Output:
	// The crosshatch, unrolled, at its true angle
	// Wanted: 45° ± 5° included. Left: 8.1° included at the mean speed.
}

// Is there room for the ring to grow?
func ExampleRingGap() {
	e := func(size, std string) uncertainty.Estimate {
		return uncertainty.Estimate{Value: units.MustParseLength(size), Std: units.MustParseLength(std)}
	}
	show(picture.RingGap("top", []picture.Gap{{Name: "cold", Size: e("0.30 mm", "0.01 mm")}, {Name: "hot", Size: e("0.12 mm", "0.03 mm")}}, units.Limits{Min: units.MustParseLength("0.25 mm"), Max: units.MustParseLength("0.45 mm")}, units.Millimetre))
	// Output:
	// The gap of ring top
	// Window: least 0.250 mm. Window: most 0.450 mm. cold: 0.300 ± 0.020 mm. hot: 0.120 ± 0.059 mm.
}

// Does an end of a ring run into a port?
func ExamplePorts() {
	l := bore.Layout{Length: 90 * units.Millimetre, Ports: []bore.Port{{Name: "exhaust", From: 60 * units.Millimetre, To: 75 * units.Millimetre, At: 90 * units.Degree, Width: 50 * units.Degree}}}
	show(picture.Ports(l, 54*units.Millimetre, []picture.RingEnd{{Name: "top", At: 200 * units.Degree}}, units.Millimetre))
	// Output:
	// The ports, unrolled
	// Port exhaust: from 60 mm to 75 mm deep, 50.0° wide, its middle at 90.0°. The ends of ring top at 200.0°.
}

// Which speeds leave the angle wanted, and is the present one among them?
func ExampleSpeeds() {
	c, err := hone.Included(45 * units.Degree)
	if err != nil {
		panic(err)
	}
	hand := hone.OnHand{Bore: 67 * units.Millimetre, Stroke: 90 * units.Millimetre, Spindle: hone.SpindleRange{Min: 60 * units.PerMinute, Max: 700 * units.PerMinute},
		Stroking: hone.StrokingRange{Min: hone.Cycles(30 * units.PerMinute), Max: hone.Cycles(60 * units.PerMinute)}}
	r, err := hand.SettingFor(hone.Want{Crosshatch: c, Tolerance: 5 * units.Degree})
	if err != nil {
		panic(err)
	}
	show(picture.Speeds(r, hone.Setting{Bore: hand.Bore, Stroke: hand.Stroke, Spindle: 600 * units.PerMinute, Stroking: hone.Cycles(50 * units.PerMinute)}))
	// Output:
	// Turning against stroking
	// best: 92.9 rev/min with 45.0 cycles/min leaves 45.0° included. now: 600.0 rev/min with 50.0 cycles/min leaves 8.2° included. On hand: 60 rev/min to 700 rev/min, 30 cycles/min to 60 cycles/min. Wanted: 45° ± 5° included.
}

// Where does the metal go?
func ExampleRemoval() {
	s := hone.Setting{Bore: 67 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(1 * units.Hertz)}
	r, err := s.Removal(hone.Steady(), hone.Travel{Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre, Top: 15 * units.Millimetre, Bottom: 15 * units.Millimetre}, hone.ConstantPressure, 50*units.Micrometre, 91)
	if err != nil {
		panic(err)
	}
	show(picture.Removal(r, units.Millimetre))
	// Output:
	// What honing takes off along the wall
	// 0.021 mm at the top face, 0.064 mm half-way down, 0.021 mm at the bottom; from 0.021 mm to 0.064 mm in all.
}

// What is the roundness of a trace, by which circle?
func ExampleTrace() {
	var radii []units.Length
	for i := range 12 {
		radii = append(radii, 33500*units.Micrometre+units.Length(i%4)*units.Micrometre)
	}
	t, err := form.FromRadii(radii)
	if err != nil {
		panic(err)
	}
	show(picture.Trace(t, units.Millimetre))
	// Output:
	// A trace and its four circles
	// LSCI: radius 33.502 mm, RONt 0.003 mm. MZCI: radius 33.502 mm, RONt 0.003 mm. MCCI: radius 33.503 mm, RONt 0.003 mm. MICI: radius 33.500 mm, RONt 0.003 mm.
}

// What bears, what runs in, and what holds oil?
func ExampleMaterialRatio() {
	show(picture.MaterialRatio(surface.Plateau{
		Rpk: 250 * units.Nanometre, Rk: 700 * units.Nanometre, Rvk: 1600 * units.Nanometre, Mr1: 0.09, Mr2: 0.82,
	}))
	// Output:
	// The material ratio curve
	// Rpk 0.25 µm, Rk 0.70 µm, Rvk 1.60 µm, Mr1 9.0 %, Mr2 82.0 %.
}

// What does the wall look like, and what of it bears? Plateaus with a groove every 0.2 mm.
func ExampleTexture() {
	var heights []units.Length
	for i := range 2001 {
		z := units.Length(i%20) * 30 * units.Nanometre
		if i%100 < 12 {
			z -= 2 * units.Micrometre
		}
		heights = append(heights, z)
	}
	p, err := surface.FromHeights(2*units.Micrometre, heights)
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := p.TwoStep(surface.Filter{CutOff: 800 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	show(picture.Texture("Texture: 12 mm, pin", r))
	// Output:
	// Texture: 12 mm, pin
	// Rpk 0.07 µm, Rk 0.61 µm, Rvk 3.54 µm, Mr1 0.6 %, Mr2 87.7 %.
}
