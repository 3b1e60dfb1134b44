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

// mean returns the geometric mean of the ends in millimetres, the D of the standard's formulas.
func (b band) mean() float64 {
	return math.Sqrt(b.over.In(units.Millimetre) * b.upTo.In(units.Millimetre))
}

const mm = units.Millimetre

// bandOf returns the band of a nominal size for the grades and all deviations but r and s, and its
// place in the table.
func bandOf(size units.Length) (band, int, error) {
	for i, b := range [...]band{{18 * mm, 30 * mm}, {30 * mm, 50 * mm}, {50 * mm, 80 * mm}} {
		if size > b.over && size <= b.upTo {
			return b, i, nil
		}
	}
	return band{}, 0, fmt.Errorf("sleeve: nominal size %v: %w (over 18 mm, up to and including 80 mm)", size, ErrSize)
}

// subBandOf returns the band of a nominal size for the deviations r and s, for which the last band
// is cut in two at 65 mm.
func subBandOf(size units.Length) (band, int, error) {
	b, i, err := bandOf(size)
	if err != nil || i < 2 {
		return b, i, err
	}
	if size <= 65*mm {
		return band{50 * mm, 65 * mm}, 2, nil
	}
	return band{65 * mm, 80 * mm}, 3, nil
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
	_, i, err := bandOf(size)
	if err != nil {
		return 0, err
	}
	micrometres := [...][IT11 - IT5 + 1]int16{
		{9, 13, 21, 33, 52, 84, 130},
		{11, 16, 25, 39, 62, 100, 160},
		{13, 19, 30, 46, 74, 120, 190},
	}
	return units.Length(micrometres[i][g-IT5]) * units.Micrometre, nil
}

// A Formula is a value of the standard's table beside the value of the formula behind it.
type Formula struct {
	Table      units.Length `json:"table"`
	Formula    units.Length `json:"formula"`
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
	table, err := g.Tolerance(size)
	if err != nil {
		return Formula{}, err
	}
	b, _, err := bandOf(size)
	if err != nil {
		return Formula{}, err
	}
	d := b.mean()
	i := float64(0.45*math.Cbrt(d)) + float64(0.001*d)
	return formula(table, [...]float64{7, 10, 16, 25, 40, 64, 100}[g-IT5]*i)
}
