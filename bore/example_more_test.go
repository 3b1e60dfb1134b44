// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"fmt"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Depths and axes to measure at, and what to do where a port is in the way.
func ExampleLayout() {
	l := bore.Layout{
		Length: 90 * units.Millimetre, RingTop: 6 * units.Millimetre, RingBottom: 86 * units.Millimetre,
		Ports: []bore.Port{{Name: "exhaust", From: 58 * units.Millimetre, To: 74 * units.Millimetre, At: 90 * units.Degree, Width: 60 * units.Degree}},
	}
	plan, err := l.ToRead(2, bore.TwoPoint)
	for _, r := range plan {
		fmt.Println(r.Depth, r.Axis.String())
	}
	fmt.Println(err)
	_, err = l.Analyse([]bore.Reading{{Depth: 60 * units.Millimetre, Axis: bore.PinAxis, Diameter: 52 * units.Millimetre}}, bore.Gauge{})
	fmt.Println(errors.Is(err, bore.ErrReading))
	// Output:
	// 10 mm thrust
	// 10 mm pin
	// 46 mm thrust
	// 46 mm pin
	// 82 mm thrust
	// 82 mm pin
	// 88 mm thrust
	// 88 mm pin
	// <nil>
	// true
}

// A port has a place round the bore and one along it.
func ExamplePort() {
	fmt.Println(bore.Port{Name: "exhaust", From: 58 * units.Millimetre, To: 74 * units.Millimetre, At: 90 * units.Degree, Width: 60 * units.Degree})
	// Output: port "exhaust" (58 mm to 74 mm, 60° wide at 90°)
}

// A slipped digit is named, and taken only when confirmed.
func ExampleReading() {
	rs := []bore.Reading{
		{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.105 mm")},
		{Depth: 10 * units.Millimetre, Axis: bore.PinAxis, Diameter: units.MustParseLength("76.070 mm")},
		{Depth: 45 * units.Millimetre, Diameter: units.MustParseLength("67.060 mm")},
	}
	_, err := bore.Analyse(rs, bore.Gauge{})
	fmt.Println(errors.Is(err, bore.ErrSlippedDigit))
	rs[1].Confirmed = true
	_, err = bore.Analyse(rs, bore.Gauge{})
	fmt.Println(err)
	// Output:
	// true
	// <nil>
}

// Readings give an axis by name or by angle; half a turn on is the same axis.
func ExampleAxis() {
	for _, s := range []string{"thrust", "pin", "45°", "front"} {
		var a bore.Axis
		err := a.UnmarshalText([]byte(s))
		fmt.Println(a, err != nil)
	}
	fmt.Println(bore.Axis(270*units.Degree), bore.Axis(-45*units.Degree))
	// Output:
	// thrust false
	// pin false
	// 45° false
	// thrust true
	// pin 135°
}

// A temperature that nobody measured is a wide one, not a guess.
func ExampleParseTemperature() {
	for _, s := range []string{"31 °C", "31 ± 1 °C", "15 to 25 °C", "59 to 77 °F"} {
		t, err := bore.ParseTemperature(s)
		fmt.Println(t, err)
	}
	// Output:
	// 31 °C <nil>
	// 31 ± 1 °C <nil>
	// 20 ± 5 °C <nil>
	// 20 ± 5 °C <nil>
}

// The zero Temperature is none. Where another is given, it is asked for.
func ExampleTemperature() {
	warm := bore.Temperature{Value: units.MustParseTemperature("31 °C"), Within: 2 * units.Kelvin}
	fmt.Println(bore.Temperature{}, "or", warm)
	_, err := bore.Analyse([]bore.Reading{{Diameter: 67 * units.Millimetre}}, bore.Gauge{Part: material.GreyIron(), PartAt: warm})
	fmt.Println(err)
	// Output:
	// not given or 31 ± 2 °C
	// bore: temperature of the gauge in use: not given, while the cylinder was at 31 ± 2 °C
}

// An inside micrometer out of the same shed as the cylinder: nothing was set, and nothing has to be said of
// a standard.
func ExampleGauge_micrometer() {
	shed := bore.Temperature{Value: units.MustParseTemperature("30 °C"), Within: units.Kelvin}
	micrometer := bore.Gauge{
		Resolution: 10 * units.Micrometre, Standard: bore.Standard{Std: 2 * units.Micrometre},
		Material: material.PlainSteel(), UsedAt: shed, Part: material.AluminiumBlock(), PartAt: shed,
	}
	g, err := bore.Analyse([]bore.Reading{{Diameter: units.MustParseLength("52.03 mm")}}, micrometer)
	fmt.Println(g.Largest.Size, err)
	// Output: 52.0248 ± 0.0071 mm <nil>
}

// An aluminium barrel is at 45 °C, the gauge at 31 °C was set at 22 °C: which mark of a dial that runs backwards is 67.05 mm?
func ExampleGauge_DialReading() {
	at := func(s string) bore.Temperature { return bore.Temperature{Value: units.MustParseTemperature(s)} }
	gauge := bore.Gauge{
		Dial: bore.PlusIsSmaller, Standard: bore.Standard{Size: 67 * units.Millimetre, Material: material.GaugeSteel(), At: at("22 °C")},
		Material: material.GaugeSteel(), SetAt: at("22 °C"), UsedAt: at("31 °C"), Part: material.AluminiumBlock(), PartAt: at("45 °C"),
	}
	shows, err := gauge.DialReading(units.MustParseLength("67.05 mm"))
	fmt.Println(shows.Format(units.Millimetre, 4), err)
	// Output: -0.0776 mm <nil>
}

// A difference of two places leaves out what the gauge's setting is uncertain by.
func ExamplePlace_Minus() {
	g, err := bore.Analyse([]bore.Reading{
		{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.105 mm")},
		{Depth: 90 * units.Millimetre, Diameter: units.MustParseLength("67.020 mm")},
	}, bore.Gauge{
		Standard:      bore.Standard{Size: 67 * units.Millimetre, Std: 5 * units.Micrometre}, // a doubtful ring
		Repeatability: units.Micrometre,
	})
	fmt.Println(g.Largest.Size, "less", g.Smallest.Size, "is", g.Largest.Minus(g.Smallest), err)
	fmt.Println("over nominal", g.Largest.Over(67*units.Millimetre))
	// Output:
	// 67.105 ± 0.010 mm less 67.020 ± 0.010 mm is 0.0850 ± 0.0028 mm <nil>
	// over nominal 0.105 ± 0.010 mm
}

// A two-lobed wall whose long axis lies at 30°, by three axes.
func ExampleLobes() {
	g, err := bore.Analyse([]bore.Reading{
		{Axis: 0, Diameter: units.MustParseLength("67.025 mm")},
		{Axis: bore.Axis(60 * units.Degree), Diameter: units.MustParseLength("67.025 mm")},
		{Axis: bore.Axis(120 * units.Degree), Diameter: units.MustParseLength("66.95 mm")},
	}, bore.Gauge{})
	t := g.Planes[0].TwoLobe
	fmt.Println("greatest less least read", g.Ovality, err)
	fmt.Println("of the wall", 2*t.Amplitude.Value, "long axis at", t.Axis)
	fmt.Println("radial amplitude for a ring to follow", g.Planes[0].Harmonics()[0].Amplitude)
	// Output:
	// greatest less least read 0.075 mm <nil>
	// of the wall 0.1 mm long axis at 30°
	// radial amplitude for a ring to follow 0.025 mm
}

// Five axes tell four lobes from two.
func ExampleLobes_four() {
	w := wall(func(d float64) float64 { return 33.5 })
	rs := w.read(10*units.Millimetre, even(5)...)
	for i, um := range []units.Length{8, -6, 3, 3, -6} { // close to 8·cos 4θ µm
		rs[i].Diameter += um * units.Micrometre
	}
	g, err := bore.Analyse(rs, bore.Gauge{})
	for _, h := range g.Planes[0].Harmonics() {
		fmt.Println("order", h.Order, "radial amplitude", h.Amplitude.Format(units.Micrometre, 1))
	}
	fmt.Println(g.Planes[0].FourLobe.Axis, err)
	// Output:
	// order 2 radial amplitude 0.1 µm
	// order 4 radial amplitude 3.9 µm
	// 0° <nil>
}

// An ovality of 0.03 mm is a radial amplitude of 0.0075 mm.
func ExampleHarmonic() {
	p := bore.Plane{TwoLobe: bore.Lobes{Amplitude: uncertainty.Estimate{Value: 15 * units.Micrometre}}}
	fmt.Println(p.Harmonics()[0].Amplitude)
	// Output: 0.0075 mm
}

// A choked barrel is smaller at the deck when cold.
func ExampleTaper() {
	g, err := bore.Analyse([]bore.Reading{
		{Depth: 5 * units.Millimetre, Diameter: units.MustParseLength("94.92 mm")},
		{Depth: 95 * units.Millimetre, Diameter: units.MustParseLength("95 mm")},
	}, bore.Gauge{})
	if err != nil {
		fmt.Println(err)
	}
	fmt.Println(g.Taper)
	per, err := g.Taper.Per(45 * units.Millimetre)
	fmt.Println("over 45 mm", per, err)
	// Output:
	// thrust: 0.08 mm smaller at 5 mm than at 95 mm
	// over 45 mm -0.04 mm <nil>
}

// The same sizes are a shape or nothing at all, by how well they are known.
func ExampleGeometry_shape() {
	var rs []bore.Reading
	for i, over := range []units.Length{30, 8, 2} {
		rs = append(rs, bore.Reading{Depth: units.Length(10+40*i) * units.Millimetre, Diameter: 67*units.Millimetre + over*units.Micrometre})
	}
	for _, repeatability := range []units.Length{units.Micrometre, 5 * units.Micrometre, 20 * units.Micrometre} {
		g, err := bore.Analyse(rs, bore.Gauge{Repeatability: repeatability})
		fmt.Println(repeatability, g.Shape, err)
	}
	// Output:
	// 0.001 mm bell-mouthed <nil>
	// 0.005 mm tapered <nil>
	// 0.02 mm straight within the doubt <nil>
}

// A gauge that reads to 0.01 mm cannot prove an ovality of less than 0.02 mm.
func ExampleCoarse() {
	g, err := bore.Analyse([]bore.Reading{{Diameter: 67 * units.Millimetre}}, bore.Gauge{Resolution: 10 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
	}
	cautions, err := g.Coarse(bore.Limits{Ovality: 20 * units.Micrometre, Spread: 150 * units.Micrometre})
	for _, c := range cautions {
		fmt.Printf("%v: a doubt of ±%s against %v allowed\n", c.Limit, c.Expanded.Format(units.Millimetre, 4), c.Allowed)
	}
	fmt.Println(err)
	// Output:
	// ovality: a doubt of ±0.0080 mm against 0.02 mm allowed
	// <nil>
}

// The way a dial runs has a text, and none is assumed.
func ExampleDial() {
	var d bore.Dial
	err := d.UnmarshalText([]byte("plus is smaller"))
	fmt.Println(bore.Dial(0), "-", d, err)
	// Output: not given - plus is smaller <nil>
}

// A three-point gauge gives size and is blind to ovality.
func ExampleKind() {
	g, err := bore.Analyse([]bore.Reading{{Diameter: 67 * units.Millimetre}}, bore.Gauge{Kind: bore.ThreePoint})
	fmt.Println(g.Kind, g.HasOvality, g.Unseen[0], err)
	// Output: three-point false ovality: one axis, or a three-point gauge, cannot show it <nil>
}

// The same ring, bought with a certificate of ±2 µm (k = 2) or measured with a micrometer.
func ExampleStandard() {
	for _, std := range []units.Length{units.Micrometre, 5 * units.Micrometre} {
		g, err := bore.Analyse([]bore.Reading{{Diameter: units.MustParseLength("67.05 mm")}},
			bore.Gauge{Standard: bore.Standard{Size: 67 * units.Millimetre, Std: std}})
		fmt.Println(g.Largest.Size, err)
	}
	// Output:
	// 67.0500 ± 0.0020 mm <nil>
	// 67.0500 ± 0.0098 mm <nil>
}
