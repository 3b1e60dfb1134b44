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

// turned is an invented bore of 67 mm on a turning table, 36 radii read: off the spindle by 12 µm,
// oval by 6 µm on the radius, with three lobes of 4 µm.
func turned() form.Trace {
	radii := make([]units.Length, 36)
	for i := range radii {
		a := 2 * math.Pi * float64(i) / 36
		off := 12*math.Cos(a) + 6*math.Cos(2*(a-0.5)) + 4*math.Cos(3*a) + 0.4*math.Sin(11*a)
		radii[i] = 33_500*units.Micrometre + units.Length(math.Round(off*1000))*units.Nanometre
	}
	t, err := form.FromRadii(radii)
	if err != nil {
		panic(err)
	}
	return t
}

func show(l units.Length) string { return l.Format(units.Micrometre, 2) }

// The four circles of one trace.
func Example() {
	t := turned()
	for _, solve := range []func() (form.Circle, error){t.LeastSquares, t.MinimumZone, t.MinimumCircumscribed, t.MaximumInscribed} {
		c, err := solve()
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Println(c.Reference, "R", c.Radius.Format(units.Millimetre, 5), "at", show(c.Centre.X), show(c.Centre.Y), "RONt", show(c.RONt))
	}
	// Output:
	// LSCI R 33.50000 mm at 12.00 µm 0.00 µm RONt 18.26 µm
	// MZCI R 33.50141 mm at 10.75 µm 2.88 µm RONt 15.87 µm
	// MCCI R 33.50612 mm at 16.03 µm -7.13 µm RONt 23.96 µm
	// MICI R 33.49375 mm at 9.69 µm 2.61 µm RONt 16.68 µm
}

// Least squares is the reference of RONp, RONv and RONq. In a bore the valleys are the worn places.
func ExampleTrace_LeastSquares() {
	c, err := turned().LeastSquares()
	fmt.Println("RONp", show(c.RONp), "RONv", show(c.RONv), "RONq", show(c.RONq), err)
	// Output: RONp 9.65 µm RONv 8.61 µm RONq 5.11 µm <nil>
}

// The minimum zone, and the points that prove it: outer and inner contacts alternate round the bore.
func ExampleTrace_MinimumZone() {
	t := turned()
	z, err := t.MinimumZone()
	fmt.Println(show(z.RONt), "better by at most", show(z.Certificate.Bound), err)
	for _, c := range z.Certificate.Contacts() {
		fmt.Printf("%d° outer %v weight %.2f\n", 10*c.Index, c.Outer, c.Weight)
	}
	// Output:
	// 15.87 µm better by at most 0.00 µm <nil>
	// 10° outer true weight 0.59
	// 230° outer true weight 0.41
	// 300° outer false weight 0.65
	// 90° outer false weight 0.35
}

// The smallest circle around the trace is what a bore cleans up at, centre free.
func ExampleTrace_MinimumCircumscribed() {
	c, err := turned().MinimumCircumscribed()
	fmt.Println("cleans up at", (2*c.Radius).Format(units.Millimetre, 4), err)
	// Output: cleans up at 67.0122 mm <nil>
}

// The largest plug that enters.
func ExampleTrace_MaximumInscribed() {
	c, err := turned().MaximumInscribed()
	fmt.Println("plug of", (2*c.Radius).Format(units.Millimetre, 4), err)
	// Output: plug of 66.9875 mm <nil>
}

// A certificate is checked against the points, without the solver. A claim of a better circle fails.
func ExampleCircle_Check() {
	t := turned()
	c, err := t.MinimumCircumscribed()
	fmt.Println(err, c.Check(t))
	c.Outer -= units.Micrometre
	c.Radius, c.RONt = c.Outer, c.Outer-c.Inner
	fmt.Println(errors.Is(c.Check(t), form.ErrCertificate))
	// Output:
	// <nil> <nil>
	// true
}

// In an oval bore the inscribed circle touches two points opposite each other, and its contacts
// prove little: the rest was searched for, and Check says that it found nothing wrong, but no proof.
func ExampleCircle_Check_searched() {
	um := units.Micrometre
	t, err := form.FromRadii([]units.Length{33_520 * um, 33_510 * um, 33_500 * um, 33_510 * um, 33_520 * um, 33_510 * um, 33_500 * um, 33_510 * um})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := t.MaximumInscribed()
	fmt.Println(c.Radius.Format(units.Millimetre, 4), "searched:", c.Certificate.Searched, "better by at most", c.Certificate.Bound, err)
	fmt.Println(errors.Is(c.Check(t), form.ErrUnproved), errors.Is(c.Check(t), form.ErrCertificate))
	// Output:
	// 33.5000 mm searched: true better by at most 0 mm <nil>
	// true false
}

// Two points opposite each other carry a circle, or three that no half circle holds; their
// directions, weighed, cancel.
func ExampleCertificate_Contacts() {
	t := turned()
	c, err := t.MaximumInscribed()
	var x, y float64
	for _, p := range c.Certificate.Contacts() {
		a := float64(p.Index) * 10 * math.Pi / 180
		x, y = x+p.Weight*math.Cos(a), y+p.Weight*math.Sin(a)
		fmt.Printf("%d° weight %.3f\n", 10*p.Index, p.Weight)
	}
	fmt.Printf("sum of directions %.3f %.3f, %v\n", math.Abs(x), math.Abs(y), err)
	// Output:
	// 290° weight 0.468
	// 90° weight 0.348
	// 150° weight 0.185
	// sum of directions 0.000 0.000, <nil>
}

// Where the contacts stand is the proof: see the type.
func ExampleCertificate() {
	c, err := turned().MinimumZone()
	fmt.Println("within", c.Certificate.Reach.Round(units.Millimetre), "by the contacts alone; searched:", c.Certificate.Searched, err)
	// Output: within 19 mm by the contacts alone; searched: false <nil>
}

// Eight radii at equal angles, the first along the thrust axis.
func ExampleFromRadii() {
	um := units.Micrometre
	t, err := form.FromRadii([]units.Length{33_512 * um, 33_508 * um, 33_500 * um, 33_495 * um, 33_490 * um, 33_494 * um, 33_500 * um, 33_507 * um})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := t.LeastSquares()
	fmt.Println("off the spindle by", show(c.Centre.X), show(c.Centre.Y), "RONt", show(c.RONt), err)
	// Output: off the spindle by 10.10 µm 0.35 µm RONt 2.26 µm <nil>
}

// A point of the plane.
func ExamplePoint() {
	c, err := turned().MinimumCircumscribed()
	fmt.Println(c.Centre == form.Point{X: c.Centre.X, Y: c.Centre.Y}, show(c.Centre.X), show(c.Centre.Y), err)
	// Output: true 16.03 µm -7.13 µm <nil>
}

// References are printed and parsed by their symbols.
func ExampleReference() {
	var r form.Reference
	err := r.UnmarshalText([]byte("MZCI"))
	fmt.Println(r, r == form.MZCI, err)
	// Output: MZCI true <nil>
}

// The contacts of a two-point circle lie opposite each other and share the weight.
func ExampleContact() {
	t, err := form.FromRadii([]units.Length{33_520 * units.Micrometre, 33_500 * units.Micrometre, 33_520 * units.Micrometre, 33_500 * units.Micrometre})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := t.MinimumCircumscribed()
	for _, p := range c.Certificate.Contacts() {
		fmt.Println(p.Index*90, p.Weight)
	}
	fmt.Println(err)
	// Output:
	// 0 0.5
	// 180 0.5
	// <nil>
}

// Radii at angles that are not equal, in the shape that bore.CleanUpRadial takes too.
func ExampleFromPolar() {
	t, err := form.FromPolar([]bore.Point{
		{Angle: 0, Radius: 33_510 * units.Micrometre},
		{Angle: 80 * units.Degree, Radius: 33_500 * units.Micrometre},
		{Angle: 190 * units.Degree, Radius: 33_490 * units.Micrometre},
		{Angle: 275 * units.Degree, Radius: 33_500 * units.Micrometre},
	})
	fmt.Println(t.Len(), err)
	_, err = form.FromPolar([]bore.Point{{Angle: 1, Radius: 1}, {Angle: 1, Radius: 1}, {Angle: 2, Radius: 1}})
	fmt.Println(errors.Is(err, form.ErrAngles))
	// Output:
	// 4 <nil>
	// true
}

// Points of a measuring machine, anywhere on its table.
func ExampleFromPoints() {
	mm := func(x, y float64) form.Point {
		return form.Point{X: units.Length(math.Round(x * units.PerMillimetre)), Y: units.Length(math.Round(y * units.PerMillimetre))}
	}
	t, err := form.FromPoints([]form.Point{mm(533.51, 120), mm(500, 153.5), mm(466.5, 120.01), mm(500.01, 86.5), mm(523.7, 143.7)})
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := t.LeastSquares()
	fmt.Println(c.Centre.X.Format(units.Millimetre, 3), c.Centre.Y.Format(units.Millimetre, 3), c.Radius.Format(units.Millimetre, 3), err)
	// Output: 500.007 mm 120.002 mm 33.504 mm <nil>
}

// Order 1 is how far the set-up is off, 2 the ovality, 3 the lobes that no dial bore gauge sees.
func ExampleTrace_Harmonics() {
	mean, hs, err := turned().Harmonics(form.Point{}, 3)
	fmt.Println(mean.Format(units.Millimetre, 4), err)
	for _, h := range hs {
		fmt.Printf("order %d: %v at %.1f°\n", h.Order, show(h.Amplitude), h.Phase.In(units.Degree))
	}
	// Output:
	// 33.5000 mm <nil>
	// order 1: 12.00 µm at 0.0°
	// order 2: 6.00 µm at 28.6°
	// order 3: 4.00 µm at 0.0°
}

// The filter takes the eleven fine waves away and leaves the lobes.
func ExampleTrace_Filter() {
	t, err := turned().Filter(5)
	if err != nil {
		fmt.Println(err)
		return
	}
	c, err := t.LeastSquares()
	fmt.Println("RONt", show(c.RONt), err)
	// Output: RONt 15.45 µm <nil>
}

// Three lobes by four ways to touch them.
func ExampleSetup() {
	vee, err := form.Vee(60 * units.Degree)
	fmt.Println(form.TwoPoint().Factor(3), math.Round(form.ThreePoint().Factor(3)), math.Round(vee.Factor(3)), err)
	// Output: 0 2 3 <nil>
}

// A dial bore gauge and a micrometer see ovality whole, and no three lobes.
func ExampleTwoPoint() {
	fmt.Println(form.TwoPoint().Factor(2), form.TwoPoint().Factor(3))
	// Output: 2 0
}

// A three-point micrometer sees three lobes, and no ovality.
func ExampleThreePoint() {
	fmt.Printf("%.0f %.0f\n", math.Abs(form.ThreePoint().Factor(2)), form.ThreePoint().Factor(3))
	// Output: 0 2
}

// A vee of 90° does not see every order.
func ExampleVee() {
	vee, err := form.Vee(90 * units.Degree)
	for n := 2; n <= 5; n++ {
		fmt.Printf("%d: %.2f\n", n, vee.Factor(n))
	}
	fmt.Println(err)
	// Output:
	// 2: 1.00
	// 3: 2.00
	// 4: -0.41
	// 5: 2.00
	// <nil>
}

// A three-point gauge reads a diameter, wherever it is put, that says nothing of ovality.
func ExampleSetup_Read() {
	ds, err := form.ThreePoint().Read(turned(), form.Point{X: 12 * units.Micrometre}, []units.Angle{0, 30 * units.Degree, 60 * units.Degree})
	for _, d := range ds {
		fmt.Println(d.Format(units.Millimetre, 4))
	}
	fmt.Println(err)
	// Output:
	// 67.0080 mm
	// 67.0000 mm
	// 66.9920 mm
	// <nil>
}

// What a dial bore gauge would have read along two axes, ready for bore.Analyse.
func ExampleTrace_Readings() {
	rs, err := turned().Readings(20*units.Millimetre, form.Point{}, []units.Angle{units.Angle(bore.ThrustAxis), units.Angle(bore.PinAxis)})
	for _, r := range rs {
		fmt.Println(r.Axis.String(), r.Diameter.Format(units.Millimetre, 4))
	}
	fmt.Println(err)
	// Output:
	// thrust 67.0065 mm
	// pin 66.9935 mm
	// <nil>
}

// The exact clean-up of the wall, on the centre of the spindle and on the best one.
func ExampleTrace_Radial() {
	c, err := bore.CleanUpRadial(turned().Radial(20*units.Millimetre), 0, bore.Allowances{})
	fmt.Println(c.Original.Min.Value.Format(units.Millimetre, 4), c.Worn.Min.Value.Format(units.Millimetre, 4), err)
	// Output: 67.0409 mm 67.0122 mm <nil>
}

// A wall element read at five depths, deviations towards the axis positive.
func ExampleStraightMinimumZone() {
	var ps []form.LinePoint
	for i, d := range []int{0, 4, 5, 3, 0} {
		ps = append(ps, form.LinePoint{Depth: units.Length(20*i) * units.Millimetre, Deviation: units.Length(d) * units.Micrometre})
	}
	z, err := form.StraightMinimumZone(ps)
	fmt.Println("STRt", show(z.STRt), "held at", ps[z.Contacts[0].Index].Depth, ps[z.Contacts[1].Index].Depth, "and", ps[z.Contacts[2].Index].Depth, err)
	// Output: STRt 5.00 µm held at 0 mm 80 mm and 40 mm <nil>
}

// The same element about the least-squares line.
func ExampleStraightLeastSquares() {
	var ps []form.LinePoint
	for i, d := range []int{0, 4, 5, 3, 0} {
		ps = append(ps, form.LinePoint{Depth: units.Length(20*i) * units.Millimetre, Deviation: units.Length(d) * units.Micrometre})
	}
	l, err := form.StraightLeastSquares(ps)
	fmt.Println("STRt", show(l.STRt), "STRp", show(l.STRp), "STRv", show(l.STRv), "STRq", show(l.STRq), err)
	// Output: STRt 5.20 µm STRp 2.60 µm STRv 2.60 µm STRq 2.05 µm <nil>
}

// A point of a wall element: 3 µm towards the axis, 20 mm below the deck.
func ExampleLinePoint() {
	p := form.LinePoint{Depth: 20 * units.Millimetre, Deviation: 3 * units.Micrometre}
	fmt.Println(p.Depth, show(p.Deviation))
	// Output: 20 mm 3.00 µm
}

// The zone of a line proves itself too.
func ExampleLine_Check() {
	ps := []form.LinePoint{{}, {Depth: 40 * units.Millimetre, Deviation: 5 * units.Micrometre}, {Depth: 80 * units.Millimetre}}
	z, err := form.StraightMinimumZone(ps)
	fmt.Println(show(z.STRt), err, z.Check(ps))
	z.STRt -= units.Micrometre
	fmt.Println(errors.Is(z.Check(ps), form.ErrCertificate))
	// Output:
	// 5.00 µm <nil> <nil>
	// true
}
