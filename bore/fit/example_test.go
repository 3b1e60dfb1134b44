// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"errors"
	"fmt"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// A piston came for the rebored cylinder. What may the bore be finished to, and what is the
// size to work to?
func Example() {
	piston := fit.Piston{
		Size: uncertainty.Estimate{Value: units.MustParseLength("67.215 mm"), Std: units.MustParseLength("1 um")},
		Axis: fit.AcrossPin, Height: units.MustParseLength("10 mm"), MakerHeight: units.MustParseLength("10 mm"),
	}
	supplier := units.Limits{Min: units.MustParseLength("0.030 mm"), Max: units.MustParseLength("0.050 mm")}
	window, err := fit.FinishWindow(piston, supplier)
	if err != nil {
		fmt.Println(err)
		return
	}
	guard := units.MustParseLength("5 um") // expanded uncertainty of bore and piston together
	aim, err := fit.AimIn(window, guard, fit.Tight)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("finish:", window)
	fmt.Println("aim at:", aim)
	// Output:
	// finish: 67.245 mm to 67.265 mm
	// aim at: 67.25 mm
}

// The finish size for this piston and clearance.
func ExampleFinishWindow() {
	piston := fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("2.6362 in")}, Axis: fit.AcrossPin}
	clearance, err := units.ParseLimits("0.0010 to 0.0018 in")
	if err != nil {
		fmt.Println(err)
		return
	}
	window, err := fit.FinishWindow(piston, clearance)
	fmt.Println(window.Min.Format(units.Inch, 4), "to", window.Max.Format(units.Inch, 4), err)

	piston.Axis = fit.AlongPin
	_, err = fit.FinishWindow(piston, clearance)
	fmt.Println(errors.Is(err, units.ErrRange), err)
	// Output:
	// 2.6372 in to 2.6380 in <nil>
	// true fit: piston of 66.95948 mm measured along its pin: out of range: measure the skirt square to it
}

func ExampleAimIn() {
	window := units.Limits{Min: units.MustParseLength("67.000 mm"), Max: units.MustParseLength("67.020 mm")}
	for _, guard := range []units.Length{2 * units.Micrometre, 12 * units.Micrometre, 25 * units.Micrometre} {
		for _, aim := range []fit.Aim{fit.Centre, fit.Tight} {
			size, err := fit.AimIn(window, guard, aim)
			if errors.Is(err, fit.ErrNarrow) {
				fmt.Println(guard, aim, "the doubt is wider than the window")
				continue
			}
			fmt.Println(guard, aim, size.Format(units.Millimetre, 3))
		}
	}
	// Output:
	// 0.002 mm centre 67.010 mm
	// 0.002 mm tight 67.002 mm
	// 0.012 mm centre 67.012 mm
	// 0.012 mm tight 67.012 mm
	// 0.025 mm centre the doubt is wider than the window
	// 0.025 mm tight the doubt is wider than the window
}

// A clearance is a difference of two measurements, and carries the doubt of both.
func ExampleClearance() {
	bore := uncertainty.Estimate{Value: units.MustParseLength("67.012 mm"), Std: units.MustParseLength("2.0 um")}
	piston := fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("66.975 mm"), Std: units.MustParseLength("1.5 um")}}
	c, err := fit.Clearance(bore, piston)
	fmt.Println(c, err)
	// Output: 0.0370 ± 0.0049 mm <nil>
}

func ExampleSkirtAxis() {
	var a fit.SkirtAxis
	err := a.UnmarshalText([]byte("across pin"))
	fmt.Println(a, a == fit.AcrossPin, err)
	// Output: across pin true <nil>
}

func ExamplePiston_Skirt() {
	coated := fit.Piston{
		Size:    uncertainty.Estimate{Value: units.MustParseLength("66.990 mm")},
		Coating: units.MustParseLength("10 um"), // on each side; the maker counts from the metal
	}
	skirt, err := coated.Skirt()
	fmt.Println(skirt, err)
	// Output: 66.97 mm <nil>
}

func ExamplePiston_Cautions() {
	p := fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("66.970 mm")}, Axis: fit.AcrossPin, Height: units.MustParseLength("6 mm"), MakerHeight: units.MustParseLength("10 mm")}
	for _, c := range p.Cautions() {
		fmt.Println(c)
	}
	// Output: The skirt was measured at another height than the maker's, and it is tapered.
}

// How does the clearance change when hot? An indicator, not a limit: the skirt is ground oval
// and gives way.
func ExampleWarm() {
	bore := uncertainty.Estimate{Value: units.MustParseLength("67.000 mm")}
	piston := fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("66.960 mm")}}
	for _, above := range []units.TemperatureChange{0, 30, 60} {
		at := units.ReferenceTemperature.Add(above)
		warm := fit.Warm{
			BoreAt: at, Bore: material.Material{Expansion: 11.4e-6},
			PistonAt: at, Piston: material.Material{Expansion: 21.5e-6},
		}
		c, err := warm.HotClearance(bore, piston)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(at, c.Value.Format(units.Millimetre, 4))
	}
	// Output:
	// 20 °C 0.0400 mm
	// 50 °C 0.0197 mm
	// 80 °C -0.0006 mm
}

func ExampleWarm_HotClearance() {
	// The spread of the expansions is part of the doubt.
	iron := material.Material{Expansion: 11.2e-6, Within: 0.6e-6}
	alloy := material.Material{Expansion: 19.5e-6, Within: 1.0e-6}
	warm := fit.Warm{
		BoreAt: units.MustParseTemperature("90 °C"), Bore: iron,
		PistonAt: units.MustParseTemperature("110 °C"), Piston: alloy,
	}
	c, err := warm.HotClearance(
		uncertainty.Estimate{Value: units.MustParseLength("100.080 mm"), Std: units.MustParseLength("2 um")},
		fit.Piston{Size: uncertainty.Estimate{Value: units.MustParseLength("99.960 mm"), Std: units.MustParseLength("2 um")}})
	fmt.Println(c, err)
	// Output: 0.023 ± 0.013 mm <nil>
}

// A strip of 0.004 in beside the skirt takes 6 lbf to draw out. The maker's rule is that the
// clearance is then 0.001 in more than the strip.
func ExampleFeelerRule() {
	rule := fit.FeelerRule{Pull: 6 * units.PoundForce, Adds: units.MustParseLength("0.001 in")}
	for _, pull := range []units.Force{4 * units.PoundForce, 6 * units.PoundForce, 9 * units.PoundForce} {
		c, err := rule.Clearance(units.MustParseLength("0.004 in"), pull)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f lbf: %v\n", pull.In(units.PoundForce), c)
	}
	// Output:
	// 4 lbf: min 0.127 mm
	// 6 lbf: 0.127 mm to 0.127 mm
	// 9 lbf: max 0.127 mm
}

func ExampleFeelerRule_Clearance() {
	rule := fit.FeelerRule{Pull: 6 * units.PoundForce, Adds: units.MustParseLength("0.001 in")}
	c, err := rule.Clearance(units.MustParseLength("0.004 in"), 4*units.PoundForce)
	fmt.Println(c.Min.Format(units.Inch, 3), "at least; an upper end is given:", c.HasMax(), err)
	// Output: 0.005 in at least; an upper end is given: false <nil>
}

// What clearance for cast or forged, air- or water-cooled? The supplier's figure, and where
// it has been lost, these rules show what is usual.
func ExampleUsual() {
	for _, d := range []fit.Duty{fit.CastWater, fit.CastAir, fit.ForgedWater, fit.ForgedAir, fit.TwoStrokeAir} {
		w, err := fit.Usual(d, units.MustParseLength("67 mm"))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-24v %s to %s\n", d, w.Min.Format(units.Millimetre, 3), w.Max.Format(units.Millimetre, 3))
	}
	// Output:
	// cast, water-cooled       0.034 mm to 0.067 mm
	// cast, air-cooled         0.067 mm to 0.101 mm
	// forged, water-cooled     0.067 mm to 0.134 mm
	// forged, air-cooled       0.101 mm to 0.168 mm
	// two-stroke, air-cooled   0.067 mm to 0.101 mm
}

func ExampleDuty() {
	var d fit.Duty
	err := d.UnmarshalText([]byte("cast, air-cooled"))
	fmt.Println(d == fit.CastAir, err)
	// Output: true <nil>
}

// Four pistons from one box, four bores off one machine.
func ExampleMatch() {
	bores, pistons := fourOfEach()
	r, err := fit.Match(bores, pistons, units.Limits{Min: 30 * units.Micrometre, Max: 50 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	for i, f := range r.Pairs {
		was := r.ByNumber[i]
		fmt.Printf("bore %d: piston %d, %s (by number %s, inside %v)\n",
			f.Bore+1, f.Piston+1, f.Clearance.Format(units.Millimetre, 3), was.Clearance.Format(units.Millimetre, 3), was.Inside)
	}
	fmt.Println("off the middle:", r.Off.Format(units.Millimetre, 4), "by number:", r.OffByNumber.Format(units.Millimetre, 4))
	// Output:
	// bore 1: piston 2, 0.042 mm (by number 0.048 mm, inside true)
	// bore 2: piston 4, 0.040 mm (by number 0.030 mm, inside true)
	// bore 3: piston 1, 0.042 mm (by number 0.030 mm, inside true)
	// bore 4: piston 3, 0.042 mm (by number 0.058 mm, inside false)
	// off the middle: 0.0017 mm by number: 0.0121 mm
}

func fourOfEach() (bores, pistons []units.Length) {
	for _, b := range []string{"67.512", "67.500", "67.506", "67.518"} {
		bores = append(bores, units.MustParseLength(b+" mm"))
	}
	for _, p := range []string{"67.464", "67.470", "67.476", "67.460"} {
		pistons = append(pistons, units.MustParseLength(p+" mm"))
	}
	return bores, pistons
}

func ExamplePair() {
	bores, pistons := fourOfEach()
	r, err := fit.Match(bores, pistons, units.Limits{Min: 30 * units.Micrometre, Max: 50 * units.Micrometre})
	f := r.Pairs[0]
	fmt.Println("bore", f.Bore, "piston", f.Piston, "clearance", f.Clearance, "inside", f.Inside, err)
	// Output: bore 0 piston 1 clearance 0.042 mm inside true <nil>
}

// Two bores, four pistons: the other two stay on the shelf.
func ExampleMatched() {
	bores, pistons := fourOfEach()
	r, err := fit.Match(bores[:2], pistons, units.Limits{Min: 30 * units.Micrometre, Max: 50 * units.Micrometre})
	fmt.Println("spared by matching:", r.OffByNumber-r.Off, err)
	// Output: spared by matching: 0.007641171 mm <nil>
}

// A bore honed past its window: which piston would still fit it?
func ExamplePistonWindow() {
	bore := units.Limits{Min: units.MustParseLength("78.518 mm"), Max: units.MustParseLength("78.523 mm")}
	clearance := units.Limits{Min: units.MustParseLength("0.045 mm"), Max: units.MustParseLength("0.070 mm")}
	fmt.Println(fit.PistonWindow(bore, clearance))
	// Output: 78.453 mm to 78.473 mm <nil>
}
