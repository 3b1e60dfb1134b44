// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"fmt"
	"math"
	"testing"

	"borewright.example/bore/form"
)

// Answers for the invented bores in testdata, computed in 80-bit floats with the contact equations
// solved again; inscribed circles and zones agree with exact computational geometry.
var bores = []struct {
	n              int
	ls             [4]float64 // x, y, r, root mean square
	zone, mcc, mic [3]float64 // x, y; width or radius
}{
	{8, [4]float64{0.023504279072314, 0.018859909826933, 33.500003225835715, 0.001913212354249},
		[3]float64{0.023615714764432, 0.019686533463696, 0.005100926458201},
		[3]float64{0.023973300993337, 0.019328947234792, 33.502627581500231},
		[3]float64{0.021320778508113, 0.017391597207377, 33.497526759436951}},
	{36, [4]float64{-0.019669158991119, -0.041180060445076, 33.500013605576455, 0.002073609309295},
		[3]float64{-0.020239924552942, -0.041656715511775, 0.006861275503263},
		[3]float64{-0.019527817033158, -0.038765359344600, 33.502605839733082},
		[3]float64{-0.017100310780888, -0.042210323767849, 33.497010298910325}},
	{360, [4]float64{0.019578138314462, 0.024532051417367, 33.499998794138075, 0.002111825526527},
		[3]float64{0.018920832497358, 0.025019183042990, 0.007670312477339},
		[3]float64{0.021510349427825, 0.025708420645380, 33.503039889617057},
		[3]float64{0.019768674180356, 0.021688375891210, 33.496694525819279}},
}

// The kernels before rounding: widths and radii to 2e-14 mm, twice the last digit of a double
// there; centres, which the same rounding moves further, to 1e-11 mm.
func TestKernelsToTheLastDigits(t *testing.T) {
	for _, b := range bores {
		x, y := points(t, fmt.Sprintf("bore_%d.csv", b.n))
		tr := form.TraceOf(x, y)
		check := func(what string, got, want, tolerance float64) {
			t.Helper()
			if !(math.Abs(got-want) <= tolerance) {
				t.Errorf("%d points, %s: %.17g, want %.17g", b.n, what, got, want)
			}
		}
		ls := form.Solve(form.LSCI, tr)
		check("LSCI x", ls.X, b.ls[0], 3.4e-11) // 1e-12 of the radius
		check("LSCI y", ls.Y, b.ls[1], 3.4e-11)
		check("LSCI radius", ls.R, b.ls[2], 2e-14)
		zone := form.Solve(form.MZCI, tr)
		check("MZCI x", zone.X, b.zone[0], 1e-11)
		check("MZCI y", zone.Y, b.zone[1], 1e-11)
		check("MZCI width", zone.Out-zone.In, b.zone[2], 2e-14)
		mcc := form.Solve(form.MCCI, tr)
		check("MCCI x", mcc.X, b.mcc[0], 1e-11)
		check("MCCI y", mcc.Y, b.mcc[1], 1e-11)
		check("MCCI radius", mcc.Out, b.mcc[2], 2e-14)
		mic := form.Solve(form.MICI, tr)
		check("MICI x", mic.X, b.mic[0], 1e-11)
		check("MICI y", mic.Y, b.mic[1], 1e-11)
		check("MICI radius", mic.In, b.mic[2], 2e-14)
		for _, z := range []form.Ring{zone, mcc, mic} {
			if !z.OK || z.Bound > 1e-13 {
				t.Errorf("%d points: %+v", b.n, z)
			}
		}
	}
}
