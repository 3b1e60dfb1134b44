// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"fmt"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

func ExampleJoint_HeatBarrel() {
	a, err := demoJoint().HeatBarrel(sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.ReferenceTemperature})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("barrel at %.0f °C\n", a.Barrel.Celsius())
	for c := range a.Cautions.All() {
		fmt.Println("-", c)
	}
	_, err = demoJoint().HeatBarrel(sleeve.Assembling{Slip: 50 * units.Micrometre, Stands: units.MustParseTemperature("80 °C"), Sleeve: units.ReferenceTemperature})
	fmt.Println(errors.Is(err, sleeve.ErrTooHot))
	// Output:
	// barrel at 90 °C
	// - even heat
	// - nothing trapped
	// - hot parts
	// - no flame
	// - temper lost
	// - stops half way
	// true
}

// No oven at all: the cold alone, and why it does not serve this joint.
func ExampleJoint_ChillSleeve() {
	a, err := demoJoint().ChillSleeve(sleeve.Assembling{Slip: 20 * units.Micrometre, Barrel: units.ReferenceTemperature})
	fmt.Printf("sleeve at %.0f °C %v\n", a.Sleeve.Celsius(), err)
	_, err = demoJoint().ChillSleeve(sleeve.Assembling{Slip: 150 * units.Micrometre, Barrel: units.ReferenceTemperature})
	fmt.Println(err)
	// Output:
	// sleeve at -76 °C <nil>
	// sleeve: the sleeve at -232.1 °C: cannot be reached: colder than liquid nitrogen
}

// To get an old sleeve out, both parts go into the oven.
func ExampleJoint_Together() {
	a, err := demoJoint().Together(sleeve.Assembling{Slip: 20 * units.Micrometre})
	fmt.Printf("%.0f °C %v\n", a.Barrel.Celsius(), err)
	// Output:
	// 129 °C <nil>
}

// The workshop's oven reaches 100 °C, its freezer -18 °C.
func ExampleJoint_Slips() {
	a, err := demoJoint().Slips(sleeve.Assembling{
		Slip: 50 * units.Micrometre, Barrel: units.MustParseTemperature("100 °C"), Sleeve: units.MustParseTemperature("-18 °C"),
	})
	fmt.Println("DIAMETRAL clearance", a.Clearance.Least.Format(units.Millimetre, 3), a.Slips, err)
	// Output:
	// DIAMETRAL clearance 0.097 mm within <nil>
}

func ExampleAssembling() {
	cold := sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.MustParseTemperature("-40 °C"), Barrel: units.ReferenceTemperature}
	a, err := demoJoint().HeatBarrel(cold)
	fmt.Printf("sleeve at %.0f °C: barrel at %.0f °C %v\n", a.Sleeve.Celsius(), a.Barrel.Celsius(), err)
	// Output:
	// sleeve at -40 °C: barrel at 58 °C <nil>
}

func ExampleAssembly() {
	a, err := demoJoint().HeatBarrel(sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.ReferenceTemperature})
	fmt.Println("DIAMETRAL", a.Clearance.Least, "to spare,", a.Slips, err)
	// Output:
	// DIAMETRAL 0.05 mm to spare, within <nil>
}

// The whole joint in an oven, and the same joint at work with its sleeve 30 K hotter.
func ExampleJoint_Loosens() {
	for _, c := range []sleeve.Condition{
		{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature},
		{Sleeve: units.MustParseTemperature("110 °C"), Barrel: units.MustParseTemperature("80 °C")},
	} {
		l, err := demoJoint().Loosens(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("loose with the barrel at %.0f °C, a margin of %.0f K\n", l.Hot.Least.Celsius(), l.Margin.In(units.Kelvin))
	}
	// Output:
	// loose with the barrel at 101 °C, a margin of 81 K
	// loose with the barrel at 135 °C, a margin of 55 K
}

// A bronze bush in steel grows more than what holds it: it goes loose in the cold, never hot.
func ExampleLoosening() {
	j := demoJoint()
	j.Sleeve.Expansion, j.Barrel.Expansion = 18e-6*units.PerKelvin, 11.5e-6*units.PerKelvin
	l, err := j.Loosens(sleeve.Condition{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("hot: never %v; cold: %.0f °C\n", l.Hot.Least.IsZero(), l.Cold.Greatest.Celsius())
	// Output:
	// hot: never true; cold: -106 °C
}

// The bore of an iron sleeve in aluminium, between 20 °C and 70 °C: neither 11.4 nor 21.5.
func ExampleJoint_Growth() {
	for _, t := range []string{"70 °C", "150 °C"} {
		g, err := demoJoint().Growth(units.MustParseTemperature(t))
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%s: mean %.1fe-6/K, a further kelvin %.1fe-6/K, tight: %v\n", t, float64(g.Mean)*1e6, float64(g.Local)*1e6, g.Grips)
	}
	// Output:
	// 70 °C: mean 18.0e-6/K, a further kelvin 18.0e-6/K, tight: within
	// 150 °C: mean 15.5e-6/K, a further kelvin 11.4e-6/K, tight: beyond
}

// The growth of the fitted bore goes where any material goes: here, to a warm size.
func ExampleGrowth_Material() {
	warm := units.MustParseTemperature("35 °C")
	g, err := demoJoint().Growth(warm)
	if err != nil {
		fmt.Println(err)
		return
	}
	size, err := g.Material().SizeAt(67050*units.Micrometre, warm)
	fmt.Println("67.050 mm at 20 °C shows", size.Format(units.Millimetre, 3), "at 35 °C", err)
	// Output:
	// 67.050 mm at 20 °C shows 67.068 mm at 35 °C <nil>
}

func ExampleGrowth() {
	g, err := benchJoint().Growth(units.MustParseTemperature("60 °C"))
	fmt.Printf("%.1fe-6/K ± %.1fe-6/K %v\n", float64(g.Mean)*1e6, float64(g.MeanWithin)*1e6, err)
	// Output:
	// 18.8e-6/K ± 1.6e-6/K <nil>
}
