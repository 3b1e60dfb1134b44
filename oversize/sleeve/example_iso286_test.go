// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"fmt"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
)

// A range is over its lower and up to and including its upper end.
func ExampleTolerance() {
	for _, size := range []units.Length{30 * units.Millimetre, 30001 * units.Micrometre, 500 * units.Millimetre, 501 * units.Millimetre} {
		w, err := sleeve.Tolerance(size, 7)
		fmt.Println(size, w, err)
	}
	// Output:
	// 30 mm 0.021 mm <nil>
	// 30.001 mm 0.025 mm <nil>
	// 500 mm 0.063 mm <nil>
	// 501 mm 0 mm sleeve: nominal size 501 mm: out of range (over 18 mm, up to and including 500 mm)
}

func ExampleClass() {
	s6 := sleeve.MustParseClass("s6")
	d, err := s6.Deviations(73 * units.Millimetre)
	fmt.Println(s6, d.Min, d.Max, err)
	// Output:
	// s6 0.059 mm 0.078 mm <nil>
}

func ExampleClass_Sizes() {
	h7 := sleeve.MustParseClass("H7")
	w, err := h7.Sizes(73 * units.Millimetre)
	fmt.Println(w, err)
	// Output:
	// 73 mm to 73.03 mm <nil>
}

// What the table has not is refused.
func ExampleParseClass() {
	c, err := sleeve.ParseClass("s6")
	fmt.Println(c, err)
	_, err = sleeve.ParseClass("H4")
	fmt.Println(errors.Is(err, units.ErrUnknownName))
	// Output:
	// s6 <nil>
	// true
}

// A transition fit: it may be loose, and nothing here hides it.
func ExampleDiametralFromClasses() {
	h7 := sleeve.MustParseClass("H7")
	for _, text := range []string{"s6", "k6", "g6"} {
		shaft := sleeve.MustParseClass(text)
		d, err := sleeve.DiametralFromClasses(73*units.Millimetre, h7, shaft)
		fmt.Println(h7, shaft, d.Min, "to", d.Max, err)
	}
	// Output:
	// H7 s6 0.029 mm to 0.078 mm <nil>
	// H7 k6 -0.028 mm to 0.021 mm <nil>
	// H7 g6 -0.059 mm to -0.01 mm <nil>
}
