// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"fmt"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

func ExampleJoint_HeatTo() {
	a, err := demoJoint().HeatTo(sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.ReferenceTemperature})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("barrel at %.0f °C\n", a.Barrel.Celsius())
	fmt.Println(len(a.Cautions.Texts()), "cautions, the first:", a.Cautions.Texts()[0])
	_, err = demoJoint().HeatTo(sleeve.Assembling{Slip: 50 * units.Micrometre, Stands: units.MustParseTemperature("80 °C"), Sleeve: units.ReferenceTemperature})
	fmt.Println(errors.Is(err, sleeve.ErrTooHot))
	// Output:
	// barrel at 90 °C
	// 6 cautions, the first: Heat the bare barrel slowly and right through in a closed oven, with a thermometer on the part. No torch: it warps the casting, softens spots of it and heats nothing evenly.
	// true
}

// No oven at all: the cold alone, and why it does not serve this joint.
func ExampleJoint_ChillTo() {
	a, err := demoJoint().ChillTo(sleeve.Assembling{Slip: 20 * units.Micrometre, Barrel: units.ReferenceTemperature})
	fmt.Printf("sleeve at %.0f °C %v\n", a.Sleeve.Celsius(), err)
	_, err = demoJoint().ChillTo(sleeve.Assembling{Slip: 150 * units.Micrometre, Barrel: units.ReferenceTemperature})
	fmt.Println(err)
	// Output:
	// sleeve at -76 °C <nil>
	// sleeve: the sleeve at -232.1 °C: cannot be reached: colder than liquid nitrogen
}

// To get an old sleeve out, both parts go into the oven.
func ExampleJoint_TakeOut() {
	a, err := demoJoint().TakeOut(sleeve.Assembling{Slip: 20 * units.Micrometre})
	fmt.Printf("%.0f °C %v\n", a.Barrel.Celsius(), err)
	// Output:
	// 129 °C <nil>
}

func ExampleAssembling() {
	cold := sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.MustParseTemperature("-40 °C"), Barrel: units.ReferenceTemperature}
	a, err := demoJoint().HeatTo(cold)
	fmt.Printf("sleeve at %.0f °C: barrel at %.0f °C %v\n", a.Sleeve.Celsius(), a.Barrel.Celsius(), err)
	// Output:
	// sleeve at -40 °C: barrel at 58 °C <nil>
}

func ExampleAssembly() {
	a, err := demoJoint().HeatTo(sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.ReferenceTemperature})
	fmt.Println("DIAMETRAL", a.Clearance.Min, "to spare,", a.Slips, err)
	// Output:
	// DIAMETRAL 0.05 mm to spare, within <nil>
}

// The whole joint in an oven, and the same joint at work with its sleeve 30 K hotter.
func ExampleJoint_LooseAt() {
	for _, c := range []sleeve.Warm{
		{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature},
		{Sleeve: units.MustParseTemperature("110 °C"), Barrel: units.MustParseTemperature("80 °C")},
	} {
		l, err := demoJoint().LooseAt(c)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("loose with the barrel at %.0f °C, %.0f K more\n", l.Hot.Min.Celsius(), l.Hot.Min.Sub(c.Barrel).In(units.Kelvin))
	}
	// Output:
	// loose with the barrel at 101 °C, 81 K more
	// loose with the barrel at 135 °C, 55 K more
}

// A bronze bush in steel grows more than what holds it: it goes loose in the cold, never hot.
func ExampleLoose() {
	j := demoJoint()
	j.Sleeve.Expansion, j.Barrel.Expansion = 18e-6*units.PerKelvin, 11.5e-6*units.PerKelvin
	l, err := j.LooseAt(sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature})
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("hot: never %v; cold: %.0f °C\n", l.Hot.Min.IsZero(), l.Cold.Max.Celsius())
	// Output:
	// hot: never true; cold: -106 °C
}

// The bore of an iron sleeve in aluminium grows as neither metal does, 11.4 nor 21.5; and it goes where any material goes:
// here, to a warm size.
func ExampleJoint_Growth() {
	for _, t := range []string{"35 °C", "70 °C", "150 °C"} {
		warm := units.MustParseTemperature(t)
		m, err := demoJoint().Growth(warm)
		if err != nil {
			fmt.Println(err)
			return
		}
		size, err := m.SizeAt(67050*units.Micrometre, warm)
		fmt.Printf("%s: %.1fe-6/K, 67.050 mm shows %s %v\n", t, float64(m.Expansion)*1e6, size.Format(units.Millimetre, 3), err)
	}
	// Output:
	// 35 °C: 18.0e-6/K, 67.050 mm shows 67.068 mm <nil>
	// 70 °C: 18.0e-6/K, 67.050 mm shows 67.110 mm <nil>
	// 150 °C: 15.5e-6/K, 67.050 mm shows 67.185 mm <nil>
}
