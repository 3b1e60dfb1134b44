// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"encoding/json"
	"errors"
	"fmt"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A village workshop keeps irrigation-pump engines running. One barrel of aluminium is worn past
// every piston on offer: it gets an iron sleeve. What interference, how hot an oven, and will the
// sleeve stay tight hot? All figures are invented.
func Example() {
	const mm, micrometre = units.Millimetre, units.Micrometre
	iron := material.Material{
		Name: "grey iron", Expansion: 11.4e-6 * units.PerKelvin, Within: 0.6e-6 * units.PerKelvin,
		Young: 110 * units.Gigapascal, Poisson: 0.26, Tensile: 207 * units.Megapascal,
	}
	aluminium := material.Material{
		Name: "cast aluminium", Expansion: 21.5e-6 * units.PerKelvin, Within: 1e-6 * units.PerKelvin,
		Young: 71 * units.Gigapascal, Poisson: 0.33, Yield: 165 * units.Megapascal,
	}
	work := sleeve.Warm{Sleeve: units.MustParseTemperature("170 °C"), Barrel: units.MustParseTemperature("140 °C")}

	// What interference? First by class, the seat bored to H7 and the sleeve turned to s6; then the
	// sleeve turned larger and both parts measured.
	hole, err := sleeve.ParseClass("H7")
	if err != nil {
		fmt.Println(err)
		return
	}
	shaft, err := sleeve.ParseClass("s6")
	if err != nil {
		fmt.Println(err)
		return
	}
	byClass, err := sleeve.DiametralFromClasses(73*mm, hole, shaft)
	if err != nil {
		fmt.Println(err)
		return
	}
	measured, err := sleeve.DiametralFromMeasured(
		uncertainty.Estimate{Value: 73106 * micrometre, Std: 2 * micrometre},
		uncertainty.Estimate{Value: 73016 * micrometre, Std: 2 * micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, d := range []sleeve.Diametral{byClass, measured} {
		// 90 mm outside at the roots of the fins, 110 mm over their tips.
		joint := sleeve.Joint{
			Bore: 67 * mm, Seat: 73 * mm, Outer: units.Limits{Min: 90 * mm, Max: 110 * mm},
			Interference: d, Sleeve: iron, Barrel: aluminium,
		}
		fit, err := joint.Fit()
		if err != nil {
			fmt.Println(err)
			return
		}
		oven, err := joint.HeatTo(sleeve.Assembling{Slip: 50 * micrometre, Sleeve: units.ReferenceTemperature})
		if err != nil {
			fmt.Println(err)
			return
		}
		hone, err := joint.Hone(67080 * micrometre)
		if err != nil {
			fmt.Println(err)
			return
		}
		hot, err := hone.Joint.Stresses(work)
		if err != nil {
			fmt.Println(err)
			return
		}
		loose, err := hone.Joint.LooseAt(work)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("DIAMETRAL %s to %s\n", d.Min.Format(mm, 3), d.Max.Format(mm, 3))
		fmt.Printf("  fit: %.1f to %.1f MPa; barrel %v, sleeve %v\n", fit.Pressure.Min.In(units.Megapascal),
			fit.Pressure.Max.In(units.Megapascal), fit.Barrel.Verdict, fit.Sleeve.Verdict)
		fmt.Printf("  oven: %.0f °C\n", oven.Barrel.Celsius())
		fmt.Printf("  hone out: %s to %s, to 67.080 mm\n", hone.Stock.Min.Format(mm, 3), hone.Stock.Max.Format(mm, 3))
		fmt.Printf("  tight at work: %v, can come loose from %.0f °C\n", hot.Grips, loose.Hot.Min.Celsius())
	}
	// Output:
	// DIAMETRAL 0.029 mm to 0.078 mm
	//   fit: 2.2 to 7.4 MPa; barrel within, sleeve within
	//   oven: 106 °C
	//   hone out: 0.097 mm to 0.137 mm, to 67.080 mm
	//   tight at work: undecided, can come loose from 140 °C
	// DIAMETRAL 0.084 mm to 0.096 mm
	//   fit: 6.5 to 9.0 MPa; barrel within, sleeve within
	//   oven: 117 °C
	//   hone out: 0.131 mm to 0.150 mm, to 67.080 mm
	//   tight at work: within, can come loose from 147 °C
}

// Half of what two micrometers show is what the textbooks' formulas want; the type says which.
func ExampleDiametral() {
	outside, seat := 73060*units.Micrometre, 73000*units.Micrometre
	d := sleeve.Diametral{Min: outside - seat, Max: outside - seat}
	fmt.Println("DIAMETRAL", d.Min, "is", d.Min/2, "RADIAL")
	// Output:
	// DIAMETRAL 0.06 mm is 0.03 mm RADIAL
}

// The same parts, measured: each micrometer has its doubt, and the interference both.
func ExampleDiametralFromMeasured() {
	d, err := sleeve.DiametralFromMeasured(
		uncertainty.Estimate{Value: 73060 * units.Micrometre, Std: 2 * units.Micrometre},
		uncertainty.Estimate{Value: 73000 * units.Micrometre, Std: 3 * units.Micrometre})
	fmt.Println(d.Min.Format(units.Millimetre, 3), "to", d.Max.Format(units.Millimetre, 3), err)
	// Output:
	// 0.053 mm to 0.067 mm <nil>
}

func ExampleTradeInterference() {
	for _, t := range sleeve.TradeInterference() {
		fmt.Printf("%s: %.4f to %.4f in (%s)\n", t.Barrel, t.Interference.Min.In(units.Inch), t.Interference.Max.In(units.Inch), t.Source)
	}
	// Output:
	// block, metal not said: 0.0030 to 0.0030 in (common practice)
	// aluminium block: 0.0015 to 0.0030 in (common practice)
	// aluminium block: 0.0030 to 0.0040 in (common practice)
}

// A single figure is a range with both ends the same.
func ExampleRange() {
	s, err := demoJoint().Fit()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("%.2f to %.2f MPa\n", s.SleeveHoop.Min.In(units.Megapascal), s.SleeveHoop.Max.In(units.Megapascal))
	// Output:
	// -58.99 to -58.99 MPa
}

// The parts of a joint, equal and opposite: what the barrel opens and the sleeve shrinks add up to
// the interference.
func ExampleJoint_Fit() {
	s, err := demoJoint().Fit()
	if err != nil {
		fmt.Println(err)
		return
	}
	const mm = units.Millimetre
	fmt.Println("barrel opens  ", s.BarrelOpens.Min.Format(mm, 4))
	fmt.Println("sleeve shrinks", s.SleeveShrinks.Min.Format(mm, 4))
	fmt.Println("together      ", (s.BarrelOpens.Min+s.SleeveShrinks.Min).Format(mm, 4))
	fmt.Println("bore closes in", s.BoreCloses.Min.Format(mm, 4))
	// Output:
	// barrel opens   0.0247 mm
	// sleeve shrinks 0.0353 mm
	// together       0.0600 mm
	// bore closes in 0.0359 mm
}

// Gas presses the sleeve outwards, against the barrel's grip.
func ExampleWarm() {
	for _, gas := range []units.Pressure{0, 5 * units.Megapascal} {
		s, err := demoJoint().Stresses(sleeve.Warm{Gas: gas, Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature})
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("gas %v: sleeve %.1f MPa, barrel %.1f MPa\n", gas, s.SleeveHoop.Min.In(units.Megapascal), s.BarrelHoop.Max.In(units.Megapascal))
	}
	// Output:
	// gas 0 MPa: sleeve -59.0 MPa, barrel 22.5 MPa
	// gas 5 MPa: sleeve -35.4 MPa, barrel 35.8 MPa
}

// The whole joint at 120 °C: the aluminium has grown away from the iron.
func ExampleJoint_Stresses() {
	hot := units.MustParseTemperature("120 °C")
	s, err := demoJoint().Stresses(sleeve.Warm{Sleeve: hot, Barrel: hot})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("DIAMETRAL", s.Interference.Max.Format(units.Millimetre, 4), "- tight:", s.Grips)
	text, err := json.Marshal(s.Cautions)
	fmt.Println(string(text), err)
	// Output:
	// DIAMETRAL -0.0137 mm - tight: beyond
	// "coefficient range; judged as brittle; can come loose" <nil>
}

// A State goes to JSON with its units, and back.
func ExampleStresses() {
	s, err := demoJoint().Fit()
	if err != nil {
		fmt.Println(err)
		return
	}
	text, err := json.Marshal(s.Interference)
	fmt.Println(string(text), err)
	text, err = json.Marshal(s.Grips)
	fmt.Println(string(text), err)
	// Output:
	// {"min":"0.06 mm","max":"0.06 mm"} <nil>
	// "within" <nil>
}

// Grey iron has no yield: it is judged by its tensile strength, and asked for less of it in
// compression, which it bears well.
func ExampleStrength() {
	s, err := demoJoint().Fit()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range []sleeve.Strength{s.Barrel, s.Sleeve} {
		fmt.Printf("by %v: %.1f of %v, margin %.1f, wanted %.1f, tension %v: %v\n",
			p.Basis, p.Stress.Max.In(units.Megapascal), p.Limit, p.Margin.Min, p.Wanted, p.Tension, p.Verdict)
	}
	// Output:
	// by yield: 27.2 of 165 MPa, margin 6.1, wanted 1.5, tension true: within
	// by tensile: 59.0 of 207 MPa, margin 3.5, wanted 1.5, tension false: within
}

func ExampleJoint_Hone() {
	h, err := demoJoint().Hone(67050 * units.Micrometre)
	fmt.Println("fitted", h.Fitted.Min.Format(units.Millimetre, 3), "stock on the DIAMETER", h.Stock.Min.Format(units.Millimetre, 3), h.CleansUp, err)
	_, err = demoJoint().Hone(66960 * units.Micrometre)
	fmt.Println(errors.Is(err, units.ErrRange))
	// Output:
	// fitted 66.964 mm stock on the DIAMETER 0.086 mm within <nil>
	// true
}

// What runs is the honed joint: its thinner sleeve is held a little less hard.
func ExampleHoning() {
	h, err := demoJoint().Hone(67500 * units.Micrometre)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, j := range []sleeve.Joint{demoJoint(), h.Joint} {
		s, err := j.Fit()
		fmt.Printf("%.2f MPa %v\n", s.Pressure.Min.In(units.Megapascal), err)
	}
	// Output:
	// 4.65 MPa <nil>
	// 4.38 MPa <nil>
}

func ExampleJoint_Press() {
	oiled := sleeve.Range[float64]{Min: 0.05, Max: 0.15}
	f, err := demoJoint().Press(90*units.Millimetre, oiled)
	fmt.Printf("%.1f to %.1f kN %v\n", f.Min.In(1000*units.Newton), f.Max.In(1000*units.Newton), err)
	// Output:
	// 4.8 to 14.4 kN <nil>
}

func ExampleCautions() {
	a, err := demoJoint().ChillTo(sleeve.Assembling{Slip: 20 * units.Micrometre, Barrel: units.ReferenceTemperature})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println(a.Cautions.Texts()[1])
	// Output:
	// Gas from dry ice or liquid nitrogen drives out the air and gives no warning: work in the open or with doors wide open, never in a pit or a closed car; never seal it in a vessel, which bursts.
}

func ExampleTrade() {
	t := sleeve.TradeInterference()[0]
	fmt.Println(t.Bore, "DIAMETRAL", t.Interference.Min)
	// Output:
	// 50.8 mm to 130.175 mm DIAMETRAL 0.0762 mm
}

func ExampleJoint() {
	// Inches do as well: a sleeve of 2.640 in for a seat of 2.874 in, 0.0024 in tight.
	j := sleeve.Joint{
		Bore: units.MustParseLength("2.640 in"), Seat: units.MustParseLength("2.874 in"),
		Outer:        units.Limits{Min: units.MustParseLength("3.543 in"), Max: units.MustParseLength("3.543 in")},
		Interference: sleeve.Diametral{Min: units.MustParseLength("0.0024 in"), Max: units.MustParseLength("0.0024 in")},
		Sleeve:       demoIron(), Barrel: demoAluminium(),
	}
	s, err := j.Fit()
	fmt.Printf("%.0f psi %v\n", s.Pressure.Min.In(units.PoundPerSquareInch), err)
	// Output:
	// 681 psi <nil>
}
