// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"fmt"

	"borewright.example/oversize"
	"borewright.example/units"
)

// A stroke of 7.2 mm for a bore of 78 mm: was the point moved?
func ExampleUsualStroke() {
	band := oversize.UsualStroke(units.MustParseLength("78 mm"))
	fmt.Println(band, band.Contains(units.MustParseLength("7.2 mm")), band.Contains(units.MustParseLength("72 mm")))
	// Output:
	// 31.2 mm to 195 mm false true
}

func ExampleUsualRatio() {
	fmt.Println(oversize.UsualRatio())
	// Output:
	// 4 25
}

// An oversize of 5 mm instead of 0.5 mm is asked about.
func ExampleUsualOver() {
	fmt.Println(oversize.UsualOver(), oversize.UsualOver().Contains(5*units.Millimetre))
	// Output:
	// 0.16 mm to 2.4 mm false
}

func ExampleUsualWall() {
	fmt.Println(oversize.UsualWall(units.MustParseLength("78 mm")))
	// Output:
	// 1.624 mm to 15.8 mm
}
