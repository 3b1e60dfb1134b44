// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"

	"borewright.example/internal/given"
	"borewright.example/units"
)

// The tables of ISO 286 for nominal sizes over 18 mm up to and including 500 mm, in µm. A range is
// "over … up to and including …": 30 mm belongs to 18 to 30 mm.
//
// Sources, row by row. Over 18 up to 80 mm and over 180 up to 400 mm: read in K. L. Narayana, P. Kannaiah, K.
// Venkata Reddy, Machine Drawing, tables 15.1 to 15.4, pp. 213 to 222, and in a table after EN ISO
// 286-1; J, K, M, N and P to 80 mm in reprints of JIS B 0401 too. Over 80 up to 180 mm, over 400 mm, and f at all
// sizes: from memory. Where a formula of the standard stands behind a value, a test holds the two together.

// from is where the tables begin; the first range is over it.
const from = 18 * units.Millimetre

// A sizeRange has what is the same all over a main range of sizes.
type sizeRange struct {
	upTo       int16                // mm
	tolerance  [coarsest - 4]int16  // of grades 5 to 11
	f, g       int16                // upper deviations of shafts, below the nominal size
	k, m, n, p int16                // lower deviations of shafts, above it; k for grades 5 to 7
	j          [greatestJ - 5]int16 // upper deviations of holes J6 to J8
}

var sizeRanges = [...]sizeRange{
	{30, [...]int16{9, 13, 21, 33, 52, 84, 130}, 20, 7, 2, 8, 15, 22, [...]int16{8, 12, 20}},
	{50, [...]int16{11, 16, 25, 39, 62, 100, 160}, 25, 9, 2, 9, 17, 26, [...]int16{10, 14, 24}},
	{80, [...]int16{13, 19, 30, 46, 74, 120, 190}, 30, 10, 2, 11, 20, 32, [...]int16{13, 18, 28}},
	{120, [...]int16{15, 22, 35, 54, 87, 140, 220}, 36, 12, 3, 13, 23, 37, [...]int16{16, 22, 34}},
	{180, [...]int16{18, 25, 40, 63, 100, 160, 250}, 43, 14, 3, 15, 27, 43, [...]int16{18, 26, 41}},
	{250, [...]int16{20, 29, 46, 72, 115, 185, 290}, 50, 15, 4, 17, 31, 50, [...]int16{22, 30, 47}},
	{315, [...]int16{23, 32, 52, 81, 130, 210, 320}, 56, 17, 4, 20, 34, 56, [...]int16{25, 36, 55}},
	{400, [...]int16{25, 36, 57, 89, 140, 230, 360}, 62, 18, 4, 21, 37, 62, [...]int16{29, 39, 60}},
	{500, [...]int16{27, 40, 63, 97, 155, 250, 400}, 68, 20, 5, 23, 40, 68, [...]int16{33, 43, 66}},
}

// A stepRange has the lower deviations of the shafts r to x, which climb in narrower steps of size.
type stepRange struct{ upTo, r, s, t, u, x int16 }

var stepRanges = [...]stepRange{
	{24, 28, 35, 0, 41, 54}, // there is no t here
	{30, 28, 35, 41, 48, 64},
	{40, 34, 43, 48, 60, 80},
	{50, 34, 43, 54, 70, 97},
	{65, 41, 53, 66, 87, 122},
	{80, 43, 59, 75, 102, 146},
	{100, 51, 71, 91, 124, 178},
	{120, 54, 79, 104, 144, 210},
	{140, 63, 92, 122, 170, 248},
	{160, 65, 100, 134, 190, 280},
	{180, 68, 108, 146, 210, 310},
	{200, 77, 122, 166, 236, 350},
	{225, 80, 130, 180, 258, 385},
	{250, 84, 140, 196, 284, 425},
	{280, 94, 158, 218, 315, 475},
	{315, 98, 170, 240, 350, 525},
	{355, 108, 190, 268, 390, 590},
	{400, 114, 208, 294, 435, 660},
	{450, 126, 232, 330, 490, 740},
	{500, 132, 252, 360, 540, 820},
}

// rangesOf returns the rows that a nominal size belongs to.
func rangesOf(size units.Length) (sizeRange, stepRange, error) {
	if size > from {
		for _, w := range sizeRanges {
			if size > units.Length(w.upTo)*units.Millimetre {
				continue
			}
			for _, n := range stepRanges {
				if size <= units.Length(n.upTo)*units.Millimetre {
					return w, n, nil
				}
			}
		}
	}
	return sizeRange{}, stepRange{}, fmt.Errorf("sleeve: nominal size %v: %w (over 18 mm, up to and including 500 mm)", size, given.Err(size))
}

// Grades of the tables, and the coarsest of J and K.
const (
	finest    = 5
	coarsest  = 11
	greatestJ = 8
)

// grade returns the tolerance of a grade of the tables.
func (w *sizeRange) grade(g int8) units.Length {
	return units.Length(w.tolerance[g-finest]) * units.Micrometre
}

// Tolerance returns the standard tolerance of a grade of ISO 286, 5 to 11 for IT5 to IT11, at a nominal
// size: the width of the window in which a diameter must lie.
//
// The table governs, for sizes over 18 mm up to and including 500 mm; any other is [units.ErrRange]. It is the
// formula of the standard rounded, 7, 10, 16, 25, 40, 64 or 100 times
//
//	i = 0.45·∛D + 0.001·D  (µm, D the geometric mean of the ends of the range in mm)
//
// but not always to the nearest: IT11 over 50 mm comes to 185.6 µm, and the table has 190. A grade outside
// of 5 to 11 is [units.ErrRange], a size of zero [units.ErrNotGiven].
func Tolerance(size units.Length, grade int) (units.Length, error) {
	if grade < finest || grade > coarsest {
		return 0, fmt.Errorf("sleeve: grade IT%d: %w (IT5 to IT11)", grade, units.ErrRange)
	}
	w, _, err := rangesOf(size)
	if err != nil {
		return 0, err
	}
	return w.grade(int8(grade)), nil
}
