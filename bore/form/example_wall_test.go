// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// pumpWall is an invented bore of 67 mm, five traces 20 mm apart: oval by 6 µm on the radius at the top
// and less below, bent by 8 µm in the middle, and leaning by 30 µm in 100 mm.
func pumpWall() form.Wall {
	var sections []form.Section
	for k := range 5 {
		radii := make([]units.Length, 24)
		down := float64(k) / 4
		for i := range radii {
			a := 2 * math.Pi * float64(i) / 24
			off := (30*down+8*4*down*(1-down))*math.Cos(a) + (6-4*down)*math.Cos(2*(a-0.5)) + 0.4*math.Sin(11*a)
			radii[i] = 33_500*units.Micrometre + units.Length(math.Round(off*1000))*units.Nanometre
		}
		t, err := form.FromRadii(radii)
		if err != nil {
			panic(err)
		}
		sections = append(sections, form.Section{Depth: units.Length(10+20*k) * units.Millimetre, Trace: t})
	}
	w, err := form.FromSections(sections)
	if err != nil {
		panic(err)
	}
	return w
}

// The four cylinders of one wall.
func ExampleWall_Cylinder() {
	w := pumpWall()
	for _, kind := range []form.Reference{form.LSCY, form.MZCY, form.MCCY, form.MICY} {
		c, err := w.Cylinder(kind)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(c.Reference, "R", c.Radius.Format(units.Millimetre, 5), "CYLt", show(c.CYLt), "contacts", len(c.Certificate.Contacts()))
	}
	// Output:
	// LSCY R 33.50000 mm CYLt 17.82 µm contacts 0
	// MZCY R 33.50046 mm CYLt 14.31 µm contacts 6
	// MCCY R 33.50759 mm CYLt 15.14 µm contacts 4
	// MICY R 33.49347 mm CYLt 16.40 µm contacts 5
}

// A zone that proves itself: nothing better within 16 mm of the axis at either end.
func ExampleCylinder_Check() {
	w := pumpWall()
	c, err := w.Cylinder(form.MZCY)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("proved:", c.Check(w) == nil, "within", c.Certificate.Reach.Format(units.Millimetre, 1))
	c.CYLt -= units.Nanometre
	fmt.Println("a nanometre less:", errors.Is(c.Check(w), form.ErrCertificate))
	// Output:
	// proved: true within 16.7 mm
	// a nanometre less: true
}

// The axis meets the deck somewhere, and leans somewhere.
func ExampleAxis() {
	c, err := pumpWall().Cylinder(form.LSCY)
	if err != nil {
		fmt.Println(err)
		return
	}
	at, err := c.Axis.At(0)
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Println("at the deck", show(at.X), show(at.Y))
	fmt.Printf("out of square by %s towards %.0f°\n", show(c.Axis.OutOfSquare()), c.Axis.Toward().In(units.Degree))
	// Output:
	// at the deck 0.25 µm 0.00 µm
	// out of square by 30.00 µm towards 0°
}
