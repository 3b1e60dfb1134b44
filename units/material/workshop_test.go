// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"fmt"
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/material"
)

// TestUsualTemperatures: what workshops and engines have lies inside; with the point moved by a place, or °F for °C, outside.
func TestUsualTemperatures(t *testing.T) {
	inside := func(least, greatest units.Temperature, c float64) bool {
		at, err := units.Celsius(c)
		if err != nil {
			t.Fatal(err)
		}
		return at >= least && at <= greatest
	}
	least, greatest := material.UsualWorkshop()
	for _, c := range []float64{5, 8, 15, 20, 22, 27, 35, 45} {
		fahrenheit := 32 + 1.8*c
		if !inside(least, greatest, c) || inside(least, greatest, c*10) || inside(least, greatest, c/10) {
			t.Errorf("%v °C, and its slips, against %v to %v", c, least, greatest)
		}
		if c >= 8 && inside(least, greatest, fahrenheit) { // what a Fahrenheit thermometer shows, taken for °C
			t.Errorf("%v °F taken for °C lies inside", fahrenheit)
		}
	}
	least, greatest = material.UsualRunning()
	for _, c := range []float64{90, 120, 150, 200, 250, 300} {
		if !inside(least, greatest, c) || inside(least, greatest, c*10) || inside(least, greatest, c/10) {
			t.Errorf("%v °C, and its slips, against %v to %v", c, least, greatest)
		}
	}
	// As they are said to be.
	if least.Celsius() != 60 || math.Abs(greatest.Celsius()-320) > 1e-9 {
		t.Errorf("running: %v to %v", least, greatest)
	}
	if least, greatest = material.UsualWorkshop(); least.Celsius() != 5 || greatest.Celsius() != 45 {
		t.Errorf("workshop: %v to %v", least, greatest)
	}
}

// 68 read as °C from a Fahrenheit thermometer is asked about.
func ExampleUsualWorkshop() {
	least, greatest := material.UsualWorkshop()
	at, _ := units.Celsius(68)
	fmt.Println(least, greatest, at >= least && at <= greatest)
	// Output:
	// 5 °C 45 °C false
}

func ExampleUsualRunning() {
	fmt.Println(material.UsualRunning())
	// Output:
	// 60 °C 320 °C
}
