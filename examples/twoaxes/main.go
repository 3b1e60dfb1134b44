// SPDX-License-Identifier: BSD-3-Clause

// Twoaxes is a lesson: two axes at right angles can miss ovality, and what more axes see.
package main

import (
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// Change these. Invented data: a bore worn oval, the greatest diameter 40 µm over the least.
const (
	mean    = 78 * units.Millimetre
	ovality = 40 * units.Micrometre
	lies    = 40 * units.Degree // where the long axis lies, from the thrust axis
)

func main() {
	fmt.Println("TWO AXES CAN MISS OVALITY")
	fmt.Printf("\nThe question: a wall is oval by V = %v, its long axis at φ = %v from the thrust\n", ovality, angle(lies))
	fmt.Println("axis. Who measures along thrust and pin, as most manuals ask, reads how much?")
	fmt.Println("\n1  One diameter     D(θ) = mean + V/2·cos 2(θ − φ)")
	for _, r := range around(2, lies) {
		fmt.Printf("   D(%3s) = %v %+.1f µm·cos 2(%s − %s) = %s\n", angle(r.Axis), mean, ovality.In(units.Micrometre)/2,
			angle(r.Axis), angle(lies), r.Diameter.Format(units.Millimetre, 4))
	}
	fmt.Println("\n2  Ovality as read     greatest − least along the axes")
	for _, axes := range []int{2, 3, 4, 6} {
		p := plane(axes, lies)
		fit := "no fit"
		if !p.TwoLobe.IsZero() {
			fit = fmt.Sprintf("fit of two lobes 2A = %s mm at %s", micro(2*p.TwoLobe.Amplitude.Value), angle(p.TwoLobe.Axis))
		}
		fmt.Printf("   %d axes, %2d° apart: %s mm   %s\n", axes, 180/axes, micro(p.Ovality.Value), fit)
	}
	fmt.Println("   Three axes or more carry the fit, and the fit has all of V, wherever it lies.")

	fmt.Println("\nTHE WALL from above, its departure far out of scale (─ │ the two axes)")
	picture()

	fmt.Println("\n3  The two axes' reading, the long axis turned step by step")
	for turn := 0; turn <= 90; turn += 10 {
		seen := plane(2, units.Angle(turn)*units.Degree).Ovality.Value
		fmt.Printf("   φ = %2d°  %s mm %s\n", turn, micro(seen), strings.Repeat("█", int(seen/units.Micrometre)))
	}
	fmt.Printf("   At 45° nothing is left of it: %s mm.\n", micro(plane(2, 45*units.Degree).Ovality.Value))

	fmt.Println("\nA SECOND WAY: the formula V·|cos 2φ|, and its mean over all directions")
	sum, seen, off := 0.0, 0.0, 0.0
	const steps = 360
	for i := range steps {
		phi := (float64(i) + 0.5) / steps * math.Pi
		sum += math.Abs(math.Cos(2 * phi))
		read := plane(2, units.Angle(phi)).Ovality.Value.In(ovality)
		seen += read
		off = max(off, math.Abs(read-math.Abs(math.Cos(2*phi))))
	}
	fmt.Printf("   mean of |cos 2φ| = %.4f, of the readings = %.4f, 2/π = %.4f; farthest apart %.6f\n", sum/steps, seen/steps, 2/math.Pi, off)

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	fmt.Printf("   • %s mm is read of an ovality of %s mm: a limit between the two is kept on paper alone.\n", micro(plane(2, lies).Ovality.Value), micro(ovality))
	fmt.Println("   • Two axes are read twice as a check. That repeats the blindness; turn by 45° instead.")
	radius := func(theta float64) float64 { return 20 * math.Cos(theta*math.Pi/60) } // µm, θ in degrees: three lobes
	three := 0.0
	for i := range 180 {
		three = max(three, math.Abs(radius(float64(i))+radius(float64(i)+180)))
	}
	fmt.Printf("   • Three lobes of ±20 µm on the radius: no diameter is off the mean by more than %.1f µm,\n     on any axis. A round reading is not a round bore.\n", three)
	fmt.Println("   • A three-point gauge shows size and no ovality at all.")
	fmt.Println("\nCAUTION: ring ridges and port edges cut fingers. The maker's manual outranks this page.")
}

// around returns readings of the oval wall along evenly spaced axes.
func around(axes int, phi units.Angle) []bore.Reading {
	var rs []bore.Reading
	for i := range axes {
		theta := units.Angle(float64(i) * math.Pi / float64(axes))
		d := ovality.In(units.Micrometre) / 2 * math.Cos(2*(theta-phi).In(units.Radian))
		rs = append(rs, bore.Reading{Axis: theta, Diameter: mean + must(units.Of(d, units.Micrometre))})
	}
	return rs
}

func plane(axes int, phi units.Angle) bore.Plane {
	return must(bore.Measure(around(axes, phi), bore.Gauge{})).Planes[0]
}

func picture() {
	for y := 10; y >= -10; y-- {
		line := []rune(strings.Repeat(" ", 50))
		for x := -22; x <= 22; x++ {
			theta, r := math.Atan2(float64(y), float64(x)/2), math.Hypot(float64(y), float64(x)/2)
			wall := 8 + ovality.In(units.Micrometre)/20*math.Cos(2*(theta-lies.In(units.Radian)))
			switch {
			case math.Abs(r-wall) < 0.5:
				line[x+25] = '●'
			case y == 0:
				line[x+25] = '─'
			case x == 0:
				line[x+25] = '│'
			}
		}
		fmt.Println(strings.TrimRight(string(line), " "))
	}
}

func micro(l units.Length) string { return fmt.Sprintf("%.4f", l.In(units.Millimetre)) }

func angle(a units.Angle) string { return fmt.Sprintf("%.0f°", a.In(units.Degree)) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
