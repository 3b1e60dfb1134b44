// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import (
	"fmt"
	"math"

	"borewright.example/units"
)

// A Grade is a standard tolerance grade of ISO 286. The zero Grade is not given.
type Grade int8

// The grades of the table.
const (
	IT5 Grade = iota + 5
	IT6
	IT7
	IT8
	IT9
	IT10
	IT11
)

func (g Grade) check() error {
	if g < IT5 || g > IT11 {
		return fmt.Errorf("sleeve: grade %v: %w (IT5 to IT11)", g, ErrClass)
	}
	return nil
}

// A band is a range of nominal sizes, "over … up to and including …" as the standard's tables
// have it: 30 mm belongs to 18 to 30 mm.
type band struct{ over, upTo units.Length }

func (b band) holds(size units.Length) bool { return size > b.over && size <= b.upTo }

// mean returns the geometric mean of the ends in millimetres, the D of the standard's formulas.
func (b band) mean() float64 {
	return math.Sqrt(b.over.In(units.Millimetre) * b.upTo.In(units.Millimetre))
}

// A place is where a nominal size stands in the tables: its band, and the narrower one that the
// deviations r and s have over 50 mm, each with its row.
type place struct {
	wide, narrow     band
	row, deviationAt int
}

const mm = units.Millimetre

func placeOf(size units.Length) (place, error) {
	wide := [...]band{{18 * mm, 30 * mm}, {30 * mm, 50 * mm}, {50 * mm, 80 * mm}}
	narrow := [...]band{wide[0], wide[1], {50 * mm, 65 * mm}, {65 * mm, 80 * mm}}
	for i, w := range wide {
		if w.holds(size) {
			k := i
			if !narrow[i].holds(size) {
				k++
			}
			return place{w, narrow[k], i, k}, nil
		}
	}
	return place{}, fmt.Errorf("sleeve: nominal size %v: %w (over 18 mm, up to and including 80 mm)", size, ErrSize)
}

// Tolerance returns the standard tolerance of the grade for a nominal size, the width of the
// window in which a diameter must lie: from the published table (ISO 286, as reprinted in
// JIS B 0401 and EN 20286).
//
// The table is that for sizes over 18 mm up to and including 80 mm; any other size is ErrSize. It
// is refused rather than worked out: the standard rounds its formulas by rules of its own, see
// [Grade.Formula]. A grade other than IT5 to IT11 is ErrClass.
func (g Grade) Tolerance(size units.Length) (units.Length, error) {
	if err := g.check(); err != nil {
		return 0, err
	}
	at, err := placeOf(size)
	if err != nil {
		return 0, err
	}
	return g.tolerance(at), nil
}

func (g Grade) tolerance(at place) units.Length {
	micrometres := [...][IT11 - IT5 + 1]int16{
		{9, 13, 21, 33, 52, 84, 130},
		{11, 16, 25, 39, 62, 100, 160},
		{13, 19, 30, 46, 74, 120, 190},
	}
	return units.Length(micrometres[at.row][g-IT5]) * units.Micrometre
}

// A Formula is a value of the standard's table beside the value of the formula behind it.
type Formula struct {
	Table      units.Length `json:"table"`      // what counts
	Formula    units.Length `json:"formula"`    // unrounded
	Difference units.Length `json:"difference"` // Table less Formula
}

func formula(table units.Length, micrometres float64) (Formula, error) {
	f, err := units.Of(micrometres, units.Micrometre)
	return Formula{Table: table, Formula: f, Difference: table - f}, err
}

// Formula returns the tolerance of [Grade.Tolerance] beside its formula: a multiple, 7, 10, 16,
// 25, 40, 64 or 100 for IT5 to IT11, of the tolerance factor
//
//	i = 0.45·∛D + 0.001·D  (µm, D the geometric mean of the ends of the size range in mm)
//
// (ISO 286-1, from memory). The table is the formula rounded, but not always to the nearest:
// IT10 and IT11 over 50 mm are 118.8 and 185.6 µm by formula, 120 and 190 in the table. Errors
// are those of Tolerance.
func (g Grade) Formula(size units.Length) (Formula, error) {
	if err := g.check(); err != nil {
		return Formula{}, err
	}
	at, err := placeOf(size)
	if err != nil {
		return Formula{}, err
	}
	d := at.wide.mean()
	i := float64(0.45*math.Cbrt(d)) + float64(0.001*d)
	return formula(g.tolerance(at), [...]float64{7, 10, 16, 25, 40, 64, 100}[g-IT5]*i)
}
