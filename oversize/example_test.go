// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// survey measures and judges one cylinder of an invented pump engine: diameters in micrometres
// over 67 mm, along and across the thrust axis, at three depths.
func survey(name string, thrust, pin [3]units.Length) (oversize.Cylinder, error) {
	var rs []bore.Reading
	for i, depth := range []units.Length{10 * units.Millimetre, 45 * units.Millimetre, 90 * units.Millimetre} {
		rs = append(rs,
			bore.Reading{Depth: depth, Axis: bore.ThrustAxis, Diameter: 67*units.Millimetre + thrust[i]*units.Micrometre},
			bore.Reading{Depth: depth, Axis: bore.PinAxis, Diameter: 67*units.Millimetre + pin[i]*units.Micrometre})
	}
	g, err := bore.Layout{RingTop: 8 * units.Millimetre, RingBottom: 95 * units.Millimetre}.Analyse(rs, bore.Gauge{Repeatability: units.Micrometre})
	if err != nil {
		return oversize.Cylinder{}, err
	}
	found, err := g.Judge(bore.Limits{Taper: 100 * units.Micrometre, Spread: 150 * units.Micrometre}, uncertainty.Risk{})
	if err != nil {
		return oversize.Cylinder{}, err
	}
	clean, err := g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * units.Millimetre}})
	c := oversize.NewCylinder(name, g, clean, found)
	c.Piston = fit.Piston{Size: uncertainty.Estimate{Value: 66_970 * units.Micrometre, Std: units.Micrometre}, Axis: fit.AcrossPin}
	c.ThinnestWall = uncertainty.Estimate{Value: 5 * units.Millimetre, Std: 50 * units.Micrometre}
	return c, err
}

func pumpEngine() oversize.Engine {
	return oversize.Engine{
		Wall: oversize.BareIron, Nominal: 67 * units.Millimetre, Sizes: oversize.Metric(),
		NewBore:   units.Limits{Min: 67_000 * units.Micrometre, Max: 67_019 * units.Micrometre},
		Clearance: units.Limits{Min: 25 * units.Micrometre, Max: 45 * units.Micrometre}, WornClearance: 150 * units.Micrometre,
		LeastWall: 4 * units.Millimetre, Honing: 50 * units.Micrometre,
	}
}

// My worn readings are these: re-ring, hone, or rebore?
func Example() {
	left, err := survey("left", [3]units.Length{60, 40, 15}, [3]units.Length{45, 30, 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	right, err := survey("right", [3]units.Length{172, 120, 30}, [3]units.Length{110, 80, 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, cylinders := range [][]oversize.Cylinder{{left}, {left, right}} {
		choice, err := oversize.Choose(pumpEngine(), cylinders, uncertainty.Risk{})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%d cylinder(s): %v, %v over\n", len(cylinders), choice.Route, choice.Over)
		for _, c := range choice.Cylinders {
			fmt.Printf("  %s: %v, finish %v\n", c.Name, c.Route, c.Finish)
		}
	}
	// Output:
	// 1 cylinder(s): hone and keep, 0 mm over
	//   left: hone and keep, finish 66.995 mm to 67.12 mm
	// 2 cylinder(s): rebore, 0.5 mm over
	//   left: rebore, finish 67.5 mm to 67.519 mm
	//   right: rebore, finish 67.5 mm to 67.519 mm
}

// Which oversize cleans up, and when is it the next one? Every cheaper route is refused with
// its reason.
func ExampleChoose() {
	right, err := survey("right", [3]units.Length{172, 120, 30}, [3]units.Length{110, 80, 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	choice, err := oversize.Choose(pumpEngine(), []oversize.Cylinder{right}, uncertainty.Risk{})
	if err != nil {
		fmt.Println(err)
		return
	}
	c := choice.Cylinders[0]
	fmt.Println(c.Route, c.Over, "axis moves", c.Shift)
	fmt.Println("bore to", c.Bored, "finish at", c.Aim)
	for _, r := range c.Refused {
		fmt.Println("-", r.Route, r.Over, r.Reason)
	}
	// Output:
	// rebore 0.5 mm axis moves 0 mm
	// bore to 67.4595 mm finish at 67.5095 mm
	// - hone and keep 0 mm beyond its limit
	// - hone and keep 0 mm undecided against its limit
	// - hone and keep 0 mm clearance beyond its limit
	// - hone and keep 0 mm worn wall would be left
	// - rebore 0.25 mm worn wall may be left
}

// Nothing that is undecided is kept: the engine waits for a better measurement.
func ExampleChoose_undecided() {
	c, err := survey("left", [3]units.Length{119, 60, 20}, [3]units.Length{70, 40, 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	choice, err := oversize.Choose(pumpEngine(), []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(choice.Route, "- otherwise", choice.Otherwise, choice.OtherwiseOver)
	for _, r := range choice.Cylinders[0].Refused {
		fmt.Println("-", r.Reason, "open:", r.Reason.Open())
	}
	// Output:
	// undecided - otherwise rebore 0.5 mm
	// - undecided against its limit open: true
	// - clearance undecided against its limit open: true
	// - worn wall may be left open: true
}

// How much wall is left, is a sleeve needed?
func ExampleChoose_sleeve() {
	c, err := survey("right", [3]units.Length{172, 120, 30}, [3]units.Length{110, 80, 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	// Corroded from the water side, and measured by ultrasound.
	c.ThinnestWall = uncertainty.Estimate{Value: units.MustParseLength("4.1 mm"), Std: units.MustParseLength("0.01 mm")}
	choice, err := oversize.Choose(pumpEngine(), []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(choice.Route)
	last := choice.Cylinders[0].Refused[len(choice.Cylinders[0].Refused)-1]
	fmt.Println(last.Over, last.Reason, last.Finding.Measured.Value, last.Finding.Limits)
	// Output:
	// sleeve
	// 1 mm too little wall would be left 3.6005 mm min 4 mm
}

// A plated wall is the maker's affair, whatever was measured.
func ExampleWall() {
	c, err := survey("1", [3]units.Length{172, 120, 30}, [3]units.Length{110, 80, 20})
	if err != nil {
		fmt.Println(err)
		return
	}
	c.Peeling = true
	e := pumpEngine()
	e.Wall = oversize.Plated
	choice, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	fmt.Println(choice.Route, err)
	fmt.Println(choice.Cylinders[0].Refused[0])
	e.Wall = 0
	_, err = oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	fmt.Println(errors.Is(err, units.ErrNotGiven))
	// Output:
	// maker's process <nil>
	// hone and keep: plating lifts or bare metal shows
	// true
}

// A choice goes to JSON and back.
func ExampleChoice() {
	c, err := survey("left", [3]units.Length{60, 40, 15}, [3]units.Length{45, 30, 10})
	if err != nil {
		fmt.Println(err)
		return
	}
	choice, err := oversize.Choose(pumpEngine(), []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil {
		fmt.Println(err)
		return
	}
	choice.Cylinders[0].WallLeft = uncertainty.Estimate{}
	b, err := json.Marshal(choice.Cylinders)
	fmt.Println(string(b), err)
	// Output: [{"name":"left","route":"hone and keep","over":"0 mm","work":"deglaze","finish":"66.995 mm to 67.12 mm"}] <nil>
}

func ExampleCylinderChoice() {
	c := oversize.CylinderChoice{Name: "left", Route: oversize.HoneAndKeep, Work: oversize.Deglaze}
	fmt.Println(c.Name, c.Route, c.Work)
	// Output: left hone and keep deglaze
}

func ExampleCylinder() {
	// Without a survey: sizes taken by hand, all wear known to lie on one side.
	worn, clean := units.MustParseLength("67.310 mm"), units.MustParseLength("67.620 mm")
	all := bore.Interval{Min: uncertainty.Estimate{Value: clean}, Max: uncertainty.Estimate{Value: clean}}
	c := oversize.Cylinder{
		Name: "1", Largest: uncertainty.Estimate{Value: worn}, Smallest: uncertainty.Estimate{Value: units.MustParseLength("67.010 mm")},
		CleanUp: bore.CleanUp{Original: all, Worn: all},
	}
	e := oversize.Engine{Wall: oversize.BareIron, Nominal: units.MustParseLength("67 mm"), Sizes: oversize.Metric(), Clearance: units.Limits{Min: 25 * units.Micrometre, Max: 45 * units.Micrometre}}
	choice, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	fmt.Println(choice.Route, choice.Otherwise, choice.OtherwiseOver, err)
	fmt.Println(choice.Cylinders[0].Refused[0])
	// Output:
	// undecided rebore 0.75 mm <nil>
	// hone and keep, deglaze: the piston is not measured
}

func ExampleEngine() {
	e := pumpEngine()
	e.Sizes = oversize.Series{{Over: 500 * units.Micrometre}, {Over: 250 * units.Micrometre}}
	_, err := oversize.Choose(e, make([]oversize.Cylinder, 2), uncertainty.Risk{})
	fmt.Println(errors.Is(err, units.ErrRange), err)
	// Output: true oversize: size 2 of the series, 0.25 mm over, after 0.5 mm: out of range (rising)
}

// A quarter of a millimetre is not ten thou.
func ExampleSeries() {
	metric, inch := oversize.Metric(), oversize.Inch()
	for i := range metric {
		fmt.Println(metric[i].Over, "is", metric[i].Over.Format(units.Inch, 5), "and not", inch[i].Over.Format(units.Inch, 3), "=", inch[i].Over)
	}
	// Output:
	// 0.25 mm is 0.00984 in and not 0.010 in = 0.254 mm
	// 0.5 mm is 0.01969 in and not 0.020 in = 0.508 mm
	// 0.75 mm is 0.02953 in and not 0.030 in = 0.762 mm
	// 1 mm is 0.03937 in and not 0.040 in = 1.016 mm
}

// A supplier's own series, with the piston of one size already measured.
func ExampleSize() {
	s := oversize.Series{
		{Over: units.MustParseLength("0.30 mm")},
		{Over: units.MustParseLength("0.60 mm"), Piston: fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("67.565 mm")}}},
	}
	fmt.Println(units.MustParseLength("67 mm") + s[1].Over)
	// Output: 67.6 mm
}

func ExampleMetric() {
	for _, s := range oversize.Metric() {
		fmt.Print(s.Over, "; ")
	}
	fmt.Println()
	// Output: 0.25 mm; 0.5 mm; 0.75 mm; 1 mm;
}

func ExampleInch() {
	for _, s := range oversize.Inch() {
		fmt.Print(s.Over.Format(units.Inch, 3), "; ")
	}
	fmt.Println()
	// Output: 0.010 in; 0.020 in; 0.030 in; 0.040 in;
}

func ExampleRefusal() {
	r := oversize.Refusal{Route: oversize.BoreOversize, Over: units.MustParseLength("0.25 mm"), Reason: oversize.NoCleanUp}
	fmt.Println(r)
	// Output: rebore to +0.25 mm: worn wall would be left
}

func ExampleReason() {
	b, err := oversize.CleanUpNotProven.MarshalText()
	fmt.Printf("%s: %v; open: %v %v\n", b, oversize.CleanUpNotProven, oversize.CleanUpNotProven.Open(), err)
	// Output: clean-up not proven: worn wall may be left; open: true <nil>
}

func ExampleRoute() {
	var r oversize.Route
	fmt.Println(r)
	fmt.Println(r.UnmarshalText([]byte("rebore")), r == oversize.BoreOversize)
	fmt.Println(errors.Is(r.UnmarshalText([]byte("bore")), units.ErrUnknownName))
	// Output:
	// undecided
	// <nil> true
	// true
}

// A worn bore need not be a new one, where the maker says how far it may wear.
func ExampleDeciding() {
	findings := []bore.Finding{{Limit: bore.LimitNew}, {Limit: bore.LimitService}, {Limit: bore.LimitTaper}}
	for _, f := range oversize.Deciding(findings) {
		fmt.Println(f.Limit)
	}
	// Output:
	// service limit
	// taper
}
