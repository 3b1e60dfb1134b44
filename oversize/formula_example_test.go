// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"errors"
	"fmt"

	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// How much stock to leave for honing after boring? Sources differ from 0.02 to 0.13 mm; here
// 0.05 mm, of which the finish hone takes 0.01.
func ExampleShop_Cuts() {
	shop := oversize.Shop{
		MostDepth: units.MustParseLength("0.10 mm"), FinishBore: units.MustParseLength("0.05 mm"),
		FinishHone: units.MustParseLength("0.010 mm"), Plateau: units.MustParseLength("0.003 mm"),
		Length: units.MustParseLength("90 mm"), Feed: units.MustParseLength("0.1 mm"), Spindle: 300 * units.PerMinute,
	}
	ops, err := shop.Cuts(units.MustParseLength("67.010 mm"), units.MustParseLength("67.460 mm"), units.MustParseLength("67.510 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, o := range ops {
		fmt.Printf("%-14v %s to %s, stock %s", o.Kind, o.Before.Format(units.Millimetre, 3), o.After.Format(units.Millimetre, 3), o.Stock.Format(units.Millimetre, 3))
		if o.Passes > 0 {
			fmt.Printf(", %d × %v deep, %v", o.Passes, o.Depth, o.Time)
		}
		fmt.Println()
	}
	// Output:
	// rough bore     67.010 mm to 67.410 mm, stock 0.400 mm, 2 × 0.1 mm deep, 6m0s
	// finish bore    67.410 mm to 67.460 mm, stock 0.050 mm, 1 × 0.025 mm deep, 3m0s
	// mouth chamfer  67.460 mm to 67.460 mm, stock 0.000 mm
	// rough hone     67.460 mm to 67.497 mm, stock 0.037 mm
	// finish hone    67.497 mm to 67.507 mm, stock 0.010 mm
	// plateau hone   67.507 mm to 67.510 mm, stock 0.003 mm
}

// Honing alone, rings entering from below: no chamfer is touched.
func ExampleShop() {
	ops, err := oversize.Shop{BothEnds: true, FinishHone: 5 * units.Micrometre}.Cuts(67_010*units.Micrometre, 0, 67_040*units.Micrometre)
	for _, o := range ops {
		fmt.Println(o.Kind, o.Stock)
	}
	fmt.Println(err)
	// Output:
	// rough hone 0.025 mm
	// finish hone 0.005 mm
	// <nil>
}

func ExampleOperation() {
	ops, err := oversize.Shop{BothEnds: true, MostDepth: 100 * units.Micrometre}.Cuts(67*units.Millimetre, 67_450*units.Micrometre, 67_500*units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	o := ops[0]
	fmt.Println(o.Kind, o.Passes, "passes of", o.Depth)
	// Output: rough bore 3 passes of 0.075 mm
}

// A sleeve of 73 mm outside, bored from 67 to 68 mm, measured at 3.0 mm.
func ExampleWallLeft() {
	wall := uncertainty.Estimate{Value: units.MustParseLength("3.0 mm"), Std: units.MustParseLength("0.05 mm")}
	now := uncertainty.Estimate{Value: units.MustParseLength("67 mm")}
	left, err := oversize.WallLeft(wall, now, units.MustParseLength("68 mm"), 0)
	fmt.Println(left, err)
	shifted, err := oversize.WallLeft(wall, now, units.MustParseLength("68 mm"), units.MustParseLength("0.1 mm"))
	fmt.Println(shifted, err)
	// Output:
	// 2.500 ± 0.098 mm <nil>
	// 2.400 ± 0.098 mm <nil>
}

func ExampleHoopWall() {
	bore := units.MustParseLength("100 mm")
	carries, err := oversize.HoopWall(bore, 5*units.Megapascal, 50*units.Megapascal)
	fmt.Println(carries, err)
	spare, err := oversize.ReboringAllowance(bore)
	fmt.Println(spare, err)
	// Output:
	// 5 mm <nil>
	// 2.4 mm <nil>
}

func ExampleReboringAllowance() {
	_, err := oversize.ReboringAllowance(units.MustParseLength("67 mm"))
	fmt.Println(errors.Is(err, units.ErrRange), err)
	// Output: true oversize: reboring allowance of a bore of 67 mm: out of range (75 mm to 500 mm)
}

func ExampleDisplacement_oneCylinder() {
	v, err := oversize.Displacement(units.MustParseLength("67 mm"), units.MustParseLength("49.5 mm"), 1)
	fmt.Printf("%.2f cm³ %v\n", v.In(units.CubicCentimetre), err)
	// Output: 174.52 cm³ <nil>
}

func ExampleDisplacement() {
	v, err := oversize.Displacement(units.MustParseLength("3.5 in"), units.MustParseLength("4 in"), 4)
	fmt.Printf("%.2f in³ %v\n", v.In(units.CubicInch), err)
	// Output: 153.94 in³ <nil>
}

// What displacement and compression ratio after the overbore?
func ExampleChamber_Compression() {
	c := oversize.Chamber{Head: 16 * units.CubicCentimetre, Gasket: units.MustParseLength("1.2 mm")}
	for _, bore := range []string{"67 mm", "67.5 mm", "68 mm"} {
		r, err := c.Compression(units.MustParseLength(bore), units.MustParseLength("49.5 mm"))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-8s %.2f cm³ %.3f to 1\n", bore, r.Swept.In(units.CubicCentimetre), r.Ratio)
	}
	// Output:
	// 67 mm    174.52 cm³ 9.626 to 1
	// 67.5 mm  177.13 cm³ 9.728 to 1
	// 68 mm    179.77 cm³ 9.830 to 1
}

// The piston's rim stands 0.2 mm out of the barrel, its crown has a dish of 3 cm³.
func ExampleChamber() {
	c := oversize.Chamber{
		Head: 12 * units.CubicCentimetre, Crown: -3 * units.CubicCentimetre,
		Deck: units.MustParseLength("-0.2 mm"), Gasket: units.MustParseLength("1.2 mm"), GasketHole: units.MustParseLength("70 mm"),
	}
	r, err := c.Compression(units.MustParseLength("67 mm"), units.MustParseLength("49.5 mm"))
	fmt.Printf("%.2f cm³ %v\n", r.Clearance.In(units.CubicCentimetre), err)
	// Output: 18.91 cm³ <nil>
}

// How much must the head hold for the old ratio in the new bore?
func ExampleChamber_HeadFor() {
	c := oversize.Chamber{Gasket: units.MustParseLength("1.2 mm")}
	for _, bore := range []string{"67 mm", "68 mm"} {
		head, err := c.HeadFor(units.MustParseLength(bore), units.MustParseLength("49.5 mm"), 9.5)
		fmt.Printf("%s: %.2f cm³ %v\n", bore, head.In(units.CubicCentimetre), err)
	}
	// Output:
	// 67 mm: 16.30 cm³ <nil>
	// 68 mm: 16.79 cm³ <nil>
}

// A two-stroke compresses only once the exhaust port is closed: here 85° before top dead
// centre on the way up.
func ExamplePistonTravel() {
	stroke, rod := units.MustParseLength("49.5 mm"), units.MustParseLength("100 mm")
	left, err := oversize.PistonTravel(stroke, rod, 85*units.Degree)
	if err != nil {
		fmt.Println(err)
		return
	}
	c := oversize.Chamber{Head: 20 * units.CubicCentimetre, PortTop: left}
	r, err := c.Compression(units.MustParseLength("67 mm"), stroke)
	fmt.Printf("%s of the stroke left: %.2f to 1, not %.2f %v\n", left.Format(units.Millimetre, 2), r.FromPort, r.Ratio, err)
	// Output: 25.68 mm of the stroke left: 5.53 to 1, not 9.73 <nil>
}

func ExampleCompression() {
	r, err := oversize.Chamber{Deck: units.MustParseLength("0.125 in")}.Compression(units.MustParseLength("3 in"), units.MustParseLength("2.875 in"))
	fmt.Printf("%.3f %v\n", r.Ratio, err)
	// Output: 24.000 <nil>
}

func ExampleRatio() {
	r, err := oversize.Ratio(410.25*units.CubicCentimetre, 59.06*units.CubicCentimetre)
	fmt.Printf("%.2f %v\n", r, err)
	_, err = oversize.Ratio(410.25*units.CubicCentimetre, 0)
	fmt.Println(errors.Is(err, oversize.ErrNoSpace))
	// Output:
	// 7.95 <nil>
	// true
}

func ExampleClearanceVolume() {
	v, err := oversize.ClearanceVolume(174.52*units.CubicCentimetre, 9)
	fmt.Printf("%.3f cm³ %v\n", v.In(units.CubicCentimetre), err)
	// Output: 21.815 cm³ <nil>
}

// An allowance of 0.2 mm for honing: is that much?
func ExampleUsualHoning() {
	fmt.Println(oversize.UsualHoning(), oversize.UsualHoning().Contains(200*units.Micrometre))
	// Output: 0.02 mm to 0.13 mm false
}
