// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"cmp"
	"errors"
	"fmt"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// pumpReadings are an invented cylinder of 67 mm of a village's irrigation pump, read twice along
// four axes at three depths.
const pumpReadings = `
depth (mm),axis,diameter (mm)
12,thrust,67.112
12,thrust,67.114
12,45°,67.098
12,45°,67.096
12,pin,67.072
12,pin,67.070
12,135°,67.086
12,135°,67.088
50,thrust,67.066
50,45°,67.060
50,pin,67.044
50,135°,67.052
86,thrust,67.026
86,45°,67.024
86,pin,67.018
86,135°,67.020
`

// pumpGauge was set to a ring of 67 mm in the same shed on the same day, at 29 °C.
func pumpGauge() bore.Gauge {
	shed, err := bore.ParseTemperature("29 ± 1 °C")
	if err != nil {
		panic(err)
	}
	return bore.Gauge{
		Dial: bore.PlusIsSmaller, Resolution: 2 * units.Micrometre,
		Standard: bore.Standard{Size: 67 * units.Millimetre, Std: units.Micrometre, Material: material.GaugeSteel(), At: shed},
		Material: material.PlainSteel(), SetAt: shed, UsedAt: shed,
		Part: material.GreyIron(), PartAt: shed,
		DialError: 2 * units.Micrometre, PlaceSpread: 0.2 * units.Kelvin,
	}
}

func pump() bore.Geometry {
	readings, err := bore.ReadCSV(strings.NewReader(pumpReadings), bore.Gauge{})
	if err != nil {
		panic(err)
	}
	travel := bore.Layout{Length: 96 * units.Millimetre, RingTop: 9 * units.Millimetre, RingBottom: 90 * units.Millimetre}
	g, err := travel.Analyse(readings, pumpGauge())
	if err != nil {
		panic(err)
	}
	return g
}

// From a table to a verdict.
func Example() {
	readings, err := bore.ReadCSV(strings.NewReader("depth (mm),axis,diameter (mm)\n10,thrust,67.105\n10,pin,67.070\n90,thrust,67.020\n90,pin,67.012\n"), bore.Gauge{})
	if err != nil {
		fmt.Println(err)
		return
	}
	g, err := bore.Analyse(readings, bore.Gauge{Resolution: 5 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("largest ", g.Largest.Size)
	fmt.Println("ovality ", g.Ovality, "at", g.OvalityAt)
	fmt.Println("taper   ", g.Taper)
	findings, err := g.Judge(bore.Limits{Spread: 150 * units.Micrometre, Ovality: 35 * units.Micrometre}, uncertainty.Risk{})
	for _, f := range findings {
		fmt.Printf("%s: %v of %v is %v\n", f.Subject, f.Measured, f.Limits, f.Verdict)
	}
	fmt.Println(err)
	// Output:
	// largest  67.1050 ± 0.0028 mm
	// ovality  0.0350 ± 0.0040 mm at 10 mm
	// taper    thrust: 0.0850 ± 0.0040 mm larger at 10 mm than at 90 mm
	// ovality at 10 mm: 0.0350 ± 0.0040 mm of max 0.035 mm is undecided
	// greatest minus least: 0.0930 ± 0.0040 mm of max 0.15 mm is within
	// <nil>
}

// Is it worn out? Each of the maker's limits gets its own answer.
func ExampleGeometry_Judge() {
	findings, err := pump().Judge(bore.Limits{
		New:     units.Limits{Min: 67 * units.Millimetre, Max: 67_019 * units.Micrometre},
		Spread:  150 * units.Micrometre,
		Ovality: 40 * units.Micrometre,
	}, uncertainty.Risk{})
	for _, f := range findings {
		fmt.Println(f.Subject, "-", f.Verdict)
	}
	fmt.Println(err)
	// Output:
	// new bore - beyond
	// ovality at 12 mm - undecided
	// greatest minus least - within
	// <nil>
}

// Where, and which way?
func ExampleGeometry_where() {
	g := pump()
	fmt.Println("largest at", g.Largest.Depth, "along", g.Largest.Axis.String())
	fmt.Println(g.Shape)
	fmt.Println(g.Taper)
	lobes := g.Planes[0].TwoLobe
	fmt.Printf("long axis at %.0f° ± %.0f° from thrust\n", lobes.Axis.In(units.Degree), 2*lobes.AxisStd.In(units.Degree))
	// Output:
	// largest at 12 mm along thrust
	// tapered
	// thrust: 0.0870 ± 0.0054 mm larger at 12 mm than at 86 mm
	// long axis at 7° ± 3° from thrust
}

// How sure? Each size has its doubt, and the budget says what it is made of.
func ExampleGeometry_howSure() {
	g := pump()
	fmt.Println(g.Largest.Size)
	rows, err := g.Budget.Rows()
	most := slices.MaxFunc(rows, func(a, b uncertainty.Row) int { return cmp.Compare(a.Share, b.Share) })
	fmt.Printf("mostly: %s, %.1f µm of %.1f µm\n", most.Name, most.Contribution, g.Largest.Size.Std.In(units.Micrometre))
	fmt.Println("against another place:", g.Largest.Own)
	fmt.Println(err)
	// Output:
	// 67.1132 ± 0.0043 mm
	// mostly: dial error, 1.2 µm of 2.2 µm
	// against another place: 67.1132 ± 0.0034 mm
	// <nil>
}

// What have I not seen?
func ExampleUnseen() {
	fmt.Println("These readings cannot show")
	for _, u := range pump().Unseen {
		fmt.Println("-", u)
	}
	// Output:
	// These readings cannot show
	// - the size of a form with four lobes: five axes would fix it
	// - three, five or seven lobes: two opposed anvils read the same diameter all round
	// - the unworn size: no plane outside ring travel
	// - which side is worn, and whether the axis is straight: diameters hold no centre
	// - the depth of scores and pits: the anvils bridge them
	// - anything between the places read
}

// The maker's limits hold for the axes read. Of the wall itself fewer than five axes never prove that it
// is within: two miss an ovality between them, and three or four a form of four lobes.
func ExampleLimits() {
	read := func(axes ...units.Angle) bore.Geometry {
		var rs []bore.Reading
		for _, a := range axes {
			rs = append(rs, bore.Reading{Axis: bore.Axis(a), Diameter: 67 * units.Millimetre})
		}
		g, err := bore.Analyse(rs, bore.Gauge{Repeatability: units.Micrometre})
		if err != nil {
			fmt.Println(err)
		}
		return g
	}
	limits := bore.Limits{Ovality: 20 * units.Micrometre, TrueOvality: 20 * units.Micrometre}
	for _, g := range []bore.Geometry{read(units.Angle(bore.ThrustAxis), units.Angle(bore.PinAxis)), read(0, 36*units.Degree, 72*units.Degree, 108*units.Degree, 144*units.Degree)} {
		findings, err := g.Judge(limits, uncertainty.Risk{})
		fmt.Println(len(g.Planes[0].Places), "axes:", findings[0].Verdict, "along them; the wall:", findings[1].Verdict, err)
	}
	// Output:
	// 2 axes: within along them; the wall: undecided <nil>
	// 5 axes: within along them; the wall: within <nil>
}

// One axis shows no ovality: the limit stays open rather than out of sight.
func ExampleFinding() {
	g, err := bore.Analyse([]bore.Reading{{Diameter: 67 * units.Millimetre}}, bore.Gauge{})
	if err != nil {
		fmt.Println(err)
	}
	findings, err := g.Judge(bore.Limits{Ovality: 50 * units.Micrometre}, uncertainty.Risk{})
	fmt.Println(findings[0].Subject, "-", findings[0].Verdict, findings[0].NotMeasured, err)
	// Output: ovality, not measured - undecided true <nil>
}

// A gauge set to a ring and read as deviations, on a dial that runs backwards.
func ExampleGauge() {
	g := bore.Gauge{Standard: bore.Standard{Size: 67 * units.Millimetre}, Dial: bore.PlusIsSmaller}
	d, err := g.Diameter(-105 * units.Micrometre)
	fmt.Println(d, err)
	g.Dial = 0
	_, err = g.Diameter(-105 * units.Micrometre)
	fmt.Println(errors.Is(err, units.ErrNotGiven))
	// Output:
	// 67.105 mm <nil>
	// true
}

// An aluminium barrel read warm with a gauge set on a cold ring: the dial is right and the size is
// not.
func ExampleAnalyse() {
	cold, err := bore.ParseTemperature("12 °C")
	if err != nil {
		fmt.Println(err)
		return
	}
	warm, err := bore.ParseTemperature("34 ± 2 °C")
	if err != nil {
		fmt.Println(err)
		return
	}
	gauge := bore.Gauge{
		Standard: bore.Standard{Size: 52 * units.Millimetre, Material: material.GaugeSteel(), At: cold},
		Material: material.PlainSteel(), SetAt: cold, UsedAt: cold,
		Part: material.AluminiumBlock(), PartAt: warm,
	}
	g, err := bore.Analyse([]bore.Reading{{Diameter: 52 * units.Millimetre}}, gauge)
	fmt.Println("dial 52.000 mm, at 20 °C", g.Largest.Size, err)
	// Output:
	// dial 52.000 mm, at 20 °C 51.9796 ± 0.0027 mm <nil>
}

// A spreadsheet's table: units in the header, a binary tail in a cell, which is taken for the nearest picometre.
func ExampleReadCSV() {
	const table = "depth (mm),axis,diameter (mm)\n10,thrust,67.10499999999999\n"
	readings, err := bore.ReadCSV(strings.NewReader(table), bore.Gauge{})
	fmt.Println(readings[0].Depth, (readings[0].Axis).String(), readings[0].Diameter, err)
	// All that is wrong with a table is said at once, each with its place.
	_, err = bore.ReadCSV(strings.NewReader("depth (mm),axis,diameter\n10,pin,67.105 mm\n10,pin,67.070\n"), bore.Gauge{})
	fmt.Println(err)
	// Output:
	// 10 mm thrust 67.105 mm <nil>
	// bore: line 3: diameter: units: length "67.070": missing unit at byte 6 (a bare number has no unit: write 67.070 mm or 67.070 in)
}

// Findings come in the order of the limits, each with the one it is about.
func ExampleLimit() {
	for l := bore.LimitNew; l <= bore.LimitChoke; l++ {
		fmt.Println(l)
	}
	// Output:
	// new bore
	// service limit
	// ovality
	// taper
	// greatest minus least
	// true ovality
	// choke
}
