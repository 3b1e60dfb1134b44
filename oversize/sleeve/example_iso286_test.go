// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"fmt"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// The standard's table beside the formula that it was rounded from.
func ExampleGrade_Formula() {
	for g := sleeve.IT5; g <= sleeve.IT11; g++ {
		f, err := g.Formula(73 * units.Millimetre)
		if err != nil {
			fmt.Println(err)
			return
		}
		fmt.Printf("%-4v %s, by formula %s, difference %s\n", g, f.Table.Format(units.Micrometre, 0), f.Formula.Format(units.Micrometre, 2), f.Difference.Format(units.Micrometre, 2))
	}
	// Output:
	// IT5  13 µm, by formula 12.99 µm, difference 0.01 µm
	// IT6  19 µm, by formula 18.56 µm, difference 0.44 µm
	// IT7  30 µm, by formula 29.70 µm, difference 0.30 µm
	// IT8  46 µm, by formula 46.40 µm, difference -0.40 µm
	// IT9  74 µm, by formula 74.25 µm, difference -0.25 µm
	// IT10 120 µm, by formula 118.79 µm, difference 1.21 µm
	// IT11 190 µm, by formula 185.61 µm, difference 4.39 µm
}

// A range is over its lower and up to and including its upper end.
func ExampleGrade_Tolerance() {
	for _, size := range []units.Length{30 * units.Millimetre, 30001 * units.Micrometre, 80 * units.Millimetre, 81 * units.Millimetre} {
		w, err := sleeve.IT7.Tolerance(size)
		fmt.Println(size, w, err)
	}
	// Output:
	// 30 mm 0.021 mm <nil>
	// 30.001 mm 0.025 mm <nil>
	// 80 mm 0.03 mm <nil>
	// 81 mm 0 mm sleeve: nominal size 81 mm: size outside the table (over 18 mm, up to and including 80 mm)
}

func ExampleFormula() {
	s6 := sleeve.Class{Position: sleeve.ShaftS, Grade: sleeve.IT6}
	f, err := s6.Formula(73 * units.Millimetre)
	fmt.Println(f.Table, f.Formula.Format(units.Millimetre, 5), err)
	// Output:
	// 0.059 mm 0.05884 mm <nil>
}

func ExampleGrade() {
	fmt.Println(sleeve.IT5, sleeve.IT11, sleeve.Grade(7) == sleeve.IT7)
	// Output:
	// IT5 IT11 true
}

func ExamplePosition() {
	for p := sleeve.HoleH; p <= sleeve.ShaftS; p++ {
		fmt.Print(p, " ")
	}
	fmt.Println()
	// Output:
	// H f g h k m n p r s
}

func ExampleClass() {
	s6 := sleeve.Class{Position: sleeve.ShaftS, Grade: sleeve.IT6}
	d, err := s6.Deviations(73 * units.Millimetre)
	fmt.Println(s6, d.Least, d.Greatest, err)
	// Output:
	// s6 0.059 mm 0.078 mm <nil>
}

func ExampleClass_Sizes() {
	h7 := sleeve.Class{Position: sleeve.HoleH, Grade: sleeve.IT7}
	w, err := h7.Sizes(73 * units.Millimetre)
	fmt.Println(w, err)
	// Output:
	// 73 mm to 73.03 mm <nil>
}

// What the table has not is refused.
func ExampleParseClass() {
	c, err := sleeve.ParseClass("s6")
	fmt.Println(c, err)
	_, err = sleeve.ParseClass("js6")
	fmt.Println(errors.Is(err, sleeve.ErrClass))
	// Output:
	// s6 <nil>
	// true
}

// A transition fit: it may be loose, and nothing here hides it.
func ExampleDiametralFromClasses() {
	h7, _ := sleeve.ParseClass("H7")
	for _, text := range []string{"s6", "k6", "g6"} {
		shaft, _ := sleeve.ParseClass(text)
		d, err := sleeve.DiametralFromClasses(73*units.Millimetre, h7, shaft)
		fmt.Println(h7, shaft, d.Least, "to", d.Greatest, err)
	}
	// Output:
	// H7 s6 0.029 mm to 0.078 mm <nil>
	// H7 k6 -0.028 mm to 0.021 mm <nil>
	// H7 g6 -0.059 mm to -0.01 mm <nil>
}
