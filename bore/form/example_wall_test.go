// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"fmt"
	"math"

	"borewright.example/bore"
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

// Points in no order, as a probe takes them that goes round and down at once: an invented bore of 67 mm, oval by 4 µm on
// the radius.
func ExampleFromWallPoints() {
	var points []form.WallPoint
	for k := range 40 {
		a := float64(k) * 0.7
		r := 33_500 + 4*math.Cos(2*a)
		points = append(points, form.WallPoint{
			X: units.Length(math.Round(r*math.Cos(a))) * units.Micrometre, Y: units.Length(math.Round(r*math.Sin(a))) * units.Micrometre,
			Depth: units.Length(10+2*k) * units.Millimetre,
		})
	}
	w, err := form.FromWallPoints(points)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := w.Cylindricity(form.MZCY)
	fmt.Println("R", c.Radius.Format(units.Millimetre, 4), "CYLt", show(c.CYLt), err)
	// Output: R 33.5000 mm CYLt 7.46 µm <nil>
}

// The four cylinders of one wall.
func ExampleWall_Cylindricity() {
	w := pumpWall()
	for _, kind := range []form.Reference{form.LSCY, form.MZCY, form.MCCY, form.MICY} {
		c, err := w.Cylindricity(kind)
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
	c, err := w.Cylindricity(form.MZCY)
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
	c, err := pumpWall().Cylindricity(form.LSCY)
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

// A bend and the sizes by depth: what a bore gauge sees of the one and not of the other.
func ExampleWall_MedianLine() {
	m, err := pumpWall().MedianLine()
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, l := range m.Locals {
		fmt.Println(l.Depth, "diameter", l.Diameter.Format(units.Millimetre, 4), "RONt", show(l.RONt))
	}
	fmt.Printf("bent by %s at %v towards %.0f°\n", show(m.Bend), m.BendAt, m.Toward.In(units.Degree))
	// Output:
	// 10 mm diameter 67.0000 mm RONt 12.53 µm
	// 30 mm diameter 67.0000 mm RONt 10.54 µm
	// 50 mm diameter 67.0000 mm RONt 8.54 µm
	// 70 mm diameter 67.0000 mm RONt 6.54 µm
	// 90 mm diameter 67.0000 mm RONt 4.54 µm
	// bent by 8.00 µm at 50 mm towards 0°
}

// The clean-up of a boring bar that stands square to the deck: about the centre of the register, and about
// the centre that suits the wall best.
func ExampleWall_Along() {
	w := pumpWall()
	t, err := w.Along(form.Square(form.Point{}))
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := bore.CleanUpRadial(t.Radial(0), 0, bore.Allowances{})
	if err != nil {
		fmt.Println(err)
		return
	}
	free, err := w.Cylindricity(form.MCCY)
	if err != nil {
		fmt.Println(err)
		return
	}
	mm := func(l units.Length) string { return l.Format(units.Millimetre, 3) }
	fmt.Println("on the register", mm(c.Original.Min.Value))
	fmt.Println("on the wear, square to the deck", mm(c.Worn.Min.Value))
	fmt.Println("on the wear, leaning with it", mm(2*free.Radius))
	// Output:
	// on the register 67.062 mm
	// on the wear, square to the deck 67.036 mm
	// on the wear, leaning with it 67.015 mm
}

// The taper of a wall as a length and as an angle: next to none, so that the cone lies no nearer to the wall
// than the least-squares cylinder.
func ExampleWall_Cone() {
	c, err := pumpWall().Cone()
	if err != nil {
		fmt.Println(err)
		return
	}
	fmt.Printf("taper %s, apex angle %.4f°, deviation %s\n", show(c.Taper), c.Angle.In(units.Degree), show(c.Deviation))
	// Output:
	// taper -0.02 µm, apex angle 0.0000°, deviation 17.82 µm
}

// One line of the wall along its axis, section by section, and how straight it is.
func ExampleWall_Generator() {
	w := pumpWall()
	c, err := w.Cylindricity(form.LSCY)
	if err != nil {
		fmt.Println(err)
		return
	}
	points, err := w.Generator(c.Axis, 0)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, p := range points {
		fmt.Println(p.Depth, show(p.Deviation))
	}
	line, err := form.StraightMinimumZone(points)
	fmt.Println("STRt", show(line.STRt), err)
	// Output:
	// 10 mm 0.00 µm
	// 30 mm -5.46 µm
	// 50 mm -6.92 µm
	// 70 mm -4.38 µm
	// 90 mm 2.16 µm
	// STRt 8.00 µm <nil>
}

// Two generators opposite each other, along the pin axis: the wall is bent along the thrust axis, and they
// stay straight.
func ExampleWall_Pair() {
	w := pumpWall()
	c, err := w.Cylindricity(form.LSCY)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, at := range []units.Angle{0, 90 * units.Degree} {
		p, err := w.Pair(c.Axis, at)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%.0f°: STRt %s and %s, taper %s\n", at.In(units.Degree), show(p.At.STRt), show(p.Opposite.STRt), show(p.Taper))
	}
	// Output:
	// 0°: STRt 8.00 µm and 8.00 µm, taper 4.32 µm
	// 90°: STRt 0.00 µm and 0.00 µm, taper -4.35 µm
}
