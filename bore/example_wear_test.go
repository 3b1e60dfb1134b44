// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"fmt"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Wear of 0.15 mm on the diameter, the side not known.
func ExampleGeometry_CleanUp() {
	g, err := bore.Analyse([]bore.Reading{{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.15 mm")}}, bore.Gauge{})
	if err != nil {
		fmt.Println(err)
	}
	wear := bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * units.Millimetre}}
	wear.Surface = 20 * units.Micrometre
	for _, share := range []float64{0, 1} {
		wear.Share = share
		c, err := g.CleanUp(wear)
		fmt.Println("original centre", c.Original.Min, "to", c.Original.Max)
		fmt.Println("worn centre    ", c.Worn.Min, "to", c.Worn.Max, "the axis moving by", c.Shift, err)
	}
	// Output:
	// original centre 67.19 mm to 67.34 mm
	// worn centre     67.19 mm to 67.34 mm the axis moving by 0.075 mm <nil>
	// original centre 67.34 mm to 67.34 mm
	// worn centre     67.19 mm to 67.34 mm the axis moving by 0.075 mm <nil>
}

// Radial points leave nothing open.
func ExampleCleanUpRadial() {
	var wall []bore.Point
	for i := range 36 {
		wall = append(wall, bore.Point{Angle: units.Angle(10*i) * units.Degree, Radius: units.MustParseLength("33.5 mm")})
	}
	wall[0].Radius += 150 * units.Micrometre // one deep place, on the thrust side
	c, err := bore.CleanUpRadial(wall, 0, bore.Allowances{})
	fmt.Println("original centre", c.Original.Min, "- worn centre", c.Worn.Min)
	fmt.Println("the axis moves by", c.Shift, "toward", c.Toward, err)
	// Output:
	// original centre 67.3 mm - worn centre 67.15 mm
	// the axis moves by 0.075 mm toward 0° <nil>
}

// What a hone took off, place by place.
func ExampleCompare() {
	read := func(thrust, pin string) bore.Geometry {
		g, err := bore.Analyse([]bore.Reading{
			{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength(thrust)},
			{Depth: 10 * units.Millimetre, Axis: bore.PinAxis, Diameter: units.MustParseLength(pin)},
		}, bore.Gauge{Repeatability: units.Micrometre})
		if err != nil {
			fmt.Println(err)
		}
		return g
	}
	c, err := bore.Compare(read("67.035 mm", "67.010 mm"), read("67.050 mm", "67.046 mm"))
	for _, p := range c.Places {
		fmt.Println(p.Axis.String(), p.Stock)
	}
	fmt.Println("ovality gained", c.OvalityGained, err)
	// Output:
	// thrust 0.0150 ± 0.0028 mm
	// pin 0.0360 ± 0.0028 mm
	// ovality gained 0.0210 ± 0.0039 mm <nil>
}

// Two dated surveys give a rate, and when the limit will be reached.
func ExampleWearRate() {
	surveys := []bore.Survey{
		{At: 500, Size: uncertainty.Estimate{Value: units.MustParseLength("67.02 mm"), Std: 2 * units.Micrometre}},
		{At: 2500, Size: uncertainty.Estimate{Value: units.MustParseLength("67.08 mm"), Std: 2 * units.Micrometre}},
	}
	rate, err := bore.WearRate(surveys, 1000)
	fmt.Println("in 1000 hours", rate, err)
	expected, earliest, err := bore.WornOutAt(surveys, units.MustParseLength("67.15 mm"), 0.05)
	fmt.Printf("0.15 mm expected at %.0f hours, earliest %.0f %v\n", expected, earliest, err)
	_, err = bore.WearRate(surveys[:1], 1000)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// in 1000 hours 0.0300 ± 0.0028 mm <nil>
	// 0.15 mm expected at 4833 hours, earliest 4582 <nil>
	// true
}

// Every allowance is radial and counts twice on the diameter.
func ExampleAllowances() {
	c, err := bore.CleanUpRadial([]bore.Point{
		{Angle: 0, Radius: 33 * units.Millimetre}, {Angle: 90 * units.Degree, Radius: 33 * units.Millimetre},
		{Angle: 180 * units.Degree, Radius: 33 * units.Millimetre}, {Angle: 270 * units.Degree, Radius: 33 * units.Millimetre},
	}, 0, bore.Allowances{Locating: 10 * units.Micrometre, OutOfSquare: 18 * units.Micrometre, Surface: 30 * units.Micrometre})
	fmt.Println(c.Extra, "makes it", c.Original.Min, err)
	// Output: 0.116 mm makes it 66.116 mm <nil>
}

// A size known only between two ends: the axis may be anywhere, the side of the wear is not known.
func ExampleInterval() {
	i := bore.Interval{
		Min: uncertainty.Estimate{Value: units.MustParseLength("67.19 mm")},
		Max: uncertainty.Estimate{Value: units.MustParseLength("67.34 mm")},
	}
	fmt.Println("the next size up must be at least", i.Max, "to be sure, and", i.Min, "to have a chance")
	// Output: the next size up must be at least 67.34 mm to be sure, and 67.19 mm to have a chance
}

// The unworn size from a plane below ring travel: the doubt of the ring counts once.
func ExampleWear() {
	g, err := bore.Analyse([]bore.Reading{
		{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.15 mm")},
		{Depth: 95 * units.Millimetre, Diameter: units.MustParseLength("67.00 mm")},
	}, bore.Gauge{Standard: bore.Standard{Size: 67 * units.Millimetre, Std: 3 * units.Micrometre}, Repeatability: units.Micrometre})
	if err != nil {
		fmt.Println(err)
	}
	here, err := g.CleanUp(bore.Wear{UnwornAt: 95 * units.Millimetre})
	fmt.Println(here.Original.Max, err)
	elsewhere, err := g.CleanUp(bore.Wear{Unworn: g.Smallest.Size}) // as if from another gauge
	fmt.Println(elsewhere.Original.Max, err)
	// Output:
	// 67.3000 ± 0.0073 mm <nil>
	// 67.300 ± 0.014 mm <nil>
}

// Points of a wall by a rotary table.
func ExamplePoint() {
	p := bore.Point{Depth: 10 * units.Millimetre, Angle: 90 * units.Degree, Radius: units.MustParseLength("33.512 mm")}
	_, err := bore.CleanUpRadial([]bore.Point{p}, 0, bore.Allowances{})
	fmt.Println(errors.Is(err, bore.ErrReading)) // one point does not close a wall
	// Output: true
}

// Stock is on the diameter: half of it came off each side.
func ExamplePlaceChange() {
	c := bore.PlaceChange{Depth: 10 * units.Millimetre, Stock: uncertainty.Estimate{Value: 30 * units.Micrometre, Std: units.Micrometre}}
	fmt.Println(c.Axis.String(), "at", c.Depth, "lost", c.Stock)
	// Output: thrust at 10 mm lost 0.0300 ± 0.0020 mm
}

// A survey is a size and what the log showed.
func ExampleSurvey() {
	s := bore.Survey{At: 1200, Size: uncertainty.Estimate{Value: units.MustParseLength("67.034 mm"), Std: 2 * units.Micrometre}}
	_, err := bore.WearRate([]bore.Survey{s}, 1000)
	fmt.Println(s.Size, errors.Is(err, units.ErrRange)) // one alone has no rate
	// Output: 67.0340 ± 0.0039 mm true
}

// When a limit is expected to be reached, and before when it is not to be trusted.
func ExampleWornOutAt() {
	expected, earliest, err := bore.WornOutAt([]bore.Survey{
		{At: 500, Size: uncertainty.Estimate{Value: units.MustParseLength("67.02 mm"), Std: 3 * units.Micrometre}},
		{At: 1500, Size: uncertainty.Estimate{Value: units.MustParseLength("67.06 mm"), Std: 4 * units.Micrometre}},
	}, units.MustParseLength("67.15 mm"), 0.05)
	fmt.Printf("expected at %.0f hours, survey again by %.0f %v\n", expected, earliest, err)
	// Output: expected at 3750 hours, survey again by 3249 <nil>
}

// A score counts where it is: of a bore worn by 0.15 mm at the top, one near the bottom asks for nothing
// more, and one below ring travel is no matter of the clean-up at all.
func ExamplePit() {
	g, err := bore.Layout{RingTop: 8 * units.Millimetre, RingBottom: 90 * units.Millimetre}.Analyse([]bore.Reading{
		{Depth: 10 * units.Millimetre, Diameter: units.MustParseLength("67.15 mm")},
		{Depth: 85 * units.Millimetre, Diameter: units.MustParseLength("67.01 mm")},
		{Depth: 95 * units.Millimetre, Diameter: units.MustParseLength("67.00 mm")},
	}, bore.Gauge{})
	if err != nil {
		fmt.Println(err)
	}
	for _, depth := range []units.Length{85 * units.Millimetre, 10 * units.Millimetre, 93 * units.Millimetre} {
		score := bore.Pit{Below: 40 * units.Micrometre, Depth: depth}
		c, err := g.CleanUp(bore.Wear{UnwornAt: 95 * units.Millimetre, Share: 0.5, Pits: []bore.Pit{score}})
		fmt.Println("at", depth, "in ring travel:", c.Pits[0].InTravel, "- cleans up at", c.Original.Max, err)
	}
	// Output:
	// at 85 mm in ring travel: true - cleans up at 67.15 mm <nil>
	// at 10 mm in ring travel: true - cleans up at 67.23 mm <nil>
	// at 93 mm in ring travel: false - cleans up at 67.15 mm <nil>
}

// Two planes 4 mm apart say nothing of the taper of the bore, however like they are.
func ExampleRingTravel() {
	travel := bore.Layout{RingTop: 8 * units.Millimetre, RingBottom: 106 * units.Millimetre}
	for _, lower := range []units.Length{16 * units.Millimetre, 90 * units.Millimetre} {
		g, err := travel.Analyse([]bore.Reading{
			{Depth: 12 * units.Millimetre, Diameter: 67 * units.Millimetre}, {Depth: lower, Diameter: 67 * units.Millimetre},
		}, bore.Gauge{Repeatability: units.Micrometre})
		if err != nil {
			fmt.Println(err)
		}
		findings, err := g.Judge(bore.Limits{Taper: 30 * units.Micrometre}, uncertainty.Risk{})
		fmt.Println(g.Travel)
		fmt.Println(findings[0].Subject, "-", findings[0].Verdict, err)
	}
	// Output:
	// 12 mm to 16 mm, of a ring travel from 8 mm to 106 mm
	// taper, not measured - undecided <nil>
	// 12 mm to 90 mm, of a ring travel from 8 mm to 106 mm
	// taper, thrust axis - within <nil>
}

// A barrel choked on purpose is smaller at the deck when cold: a limit on a bore larger there has nothing
// against it, and the choke has a window of its own.
func ExampleLimits_choke() {
	g, err := bore.Layout{Stroke: 52 * units.Millimetre}.Analyse([]bore.Reading{
		{Depth: 12 * units.Millimetre, Diameter: units.MustParseLength("94.92 mm")},
		{Depth: 88 * units.Millimetre, Diameter: units.MustParseLength("95 mm")},
	}, bore.Gauge{})
	if err != nil {
		fmt.Println(err)
	}
	for _, l := range []bore.Limits{
		{Taper: 50 * units.Micrometre},
		{Taper: 50 * units.Micrometre, TaperAtDeck: true, Choke: units.Limits{Min: 50 * units.Micrometre, Max: 100 * units.Micrometre}},
	} {
		findings, err := g.Judge(l, uncertainty.Risk{})
		for _, f := range findings {
			fmt.Println(f.Subject, "-", f.Measured, f.Verdict)
		}
		fmt.Println(err)
	}
	// Output:
	// taper, thrust axis - -0.08 mm beyond
	// <nil>
	// taper larger at the deck, thrust axis - -0.08 mm within
	// choke, thrust axis - 0.08 mm within
	// <nil>
}

// The wall between the ports stands out along the one axis that misses them.
func ExampleGeometry_ports() {
	l := bore.Layout{RingTop: 8 * units.Millimetre, RingBottom: 72 * units.Millimetre, Ports: []bore.Port{
		{Name: "exhaust", From: 45 * units.Millimetre, To: 60 * units.Millimetre, At: units.Angle(bore.PinAxis), Width: 60 * units.Degree},
	}}
	var rs []bore.Reading
	for depth, size := range map[units.Length]string{9: "60.040 mm", 30: "60.040 mm", 52: "60.110 mm", 70: "60.030 mm"} {
		rs = append(rs, bore.Reading{Depth: depth * units.Millimetre, Diameter: units.MustParseLength(size)})
	}
	g, err := l.Analyse(rs, bore.Gauge{Repeatability: units.Micrometre})
	if err != nil {
		fmt.Println(err)
	}
	findings, err := g.Judge(bore.Limits{Taper: 50 * units.Micrometre}, uncertainty.Risk{})
	fmt.Println(g.Shape)
	fmt.Println(findings[0].Subject, "-", findings[0].Measured, findings[0].Verdict, err)
	// Output:
	// belly at the ports
	// taper, as a difference from 52 mm to 70 mm, thrust axis - 0.0800 ± 0.0028 mm beyond <nil>
}

// Repeats that scatter more than the gauge is said to are read again before they widen every doubt.
func ExampleContradiction() {
	var rs []bore.Reading
	for _, size := range []string{"67.000 mm", "67.020 mm", "67.001 mm"} {
		rs = append(rs, bore.Reading{Depth: 50 * units.Millimetre, Diameter: units.MustParseLength(size)})
	}
	g, err := bore.Analyse(rs, bore.Gauge{Repeatability: units.Micrometre})
	fmt.Println(g.Contradictions, err)
	// Output: [50 mm, thrust: 3 repeats scatter by 0.0113 mm, the gauge is said to repeat within 0.001 mm] <nil>
}
