// SPDX-License-Identifier: BSD-3-Clause

package oversize

import "borewright.example/units"

// What is usual in an engine catches slips: a point moved by a place, millimetres for inches. Each
// band is wide enough for honest engines of 30 to 250 mm bore and narrower than a factor of ten about
// them. What lies outside is not wrong, it wants a second look. No band is a limit; all are common
// practice. A bore below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.

// UsualStroke returns where the stroke of an engine of this bore usually lies: 0.4 to 2.5 bores. Published
// examples run from 0.68 (65.5 × 44.5 mm) to 1.76 (170 × 300 mm).
func UsualStroke(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore * 4 / 10, Max: bore * 25 / 10}
}

// UsualRatio returns where a compression ratio usually lies, 4 for kerosene engines of old to 25 for small
// diesels.
func UsualRatio() (least, greatest float64) { return 4, 25 }

// UsualOver returns where an oversize on offer, and the greatest overbore, usually lie: 0.16 to 2.4 mm over nominal,
// about the series 0.010 in to 1.00 mm and the greatest of 1.5 mm of US Army TM 10-3930-653-14&P.
func UsualOver() units.Limits {
	return units.Limits{Min: 160 * units.Micrometre, Max: 2400 * units.Micrometre}
}

// UsualWall returns where the wall of a cylinder of this bore usually lies, as measured or as the least
// that a maker wants: 1 mm + 0.008 of the bore to 8 mm + 0.1 of it. Textbooks have 4.5 to 25 mm for new cylinders of
// 75 to 300 mm (R. S. Khurmi, J. K. Gupta, A Textbook of Machine Design, chapter 32).
func UsualWall(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: units.Millimetre + bore*8/1000, Max: 8*units.Millimetre + bore/10}
}

// UsualHoning returns where a honing allowance, on the diameter, usually lies: sources give 0.02 mm, 0.03 mm (0.001 in), 0.05
// to 0.08 mm (0.002 to 0.003 in) and 0.05 to 0.13 mm (0.002 to 0.005 in). A coarse boring finish wants the larger ones.
func UsualHoning() units.Limits {
	return units.Limits{Min: 20 * units.Micrometre, Max: 130 * units.Micrometre}
}
