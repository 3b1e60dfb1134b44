// SPDX-License-Identifier: BSD-3-Clause

package rings

import "borewright.example/units"

// UsualGap returns where both ends of a maker's window for the end gap of a new ring usually lie:
// 0.001 to 0.012 of the bore at 20 °C. It catches slips, a point moved by a place or millimetres for
// inches, and is narrower than a factor of ten about what is printed: in US Army TM 10-3930-653-14&P 0.15 to
// 0.40 mm on some 91 mm, by the [Rules] of the trade 0.002 to 0.006 of the bore. What lies outside wants a
// second look and is not wrong; for a choice of gap see [Rules].
//
// A bore below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.
func UsualGap(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore / 1000, Max: bore * 12 / 1000}
}

// UsualGapLimit returns where the largest gap that is allowed in service usually lies: 0.004 to 0.030
// of the bore, as [UsualGap] (US Army TM 10-3930-653-14&P: 1.0 mm on some 91 mm).
func UsualGapLimit(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore * 4 / 1000, Max: bore * 30 / 1000}
}

// UsualCount returns how many rings a piston usually has: one in small two-strokes, up to seven in old slow
// engines (common practice). A list with none of them says nothing of the rings.
func UsualCount() (least, greatest int) { return 1, 7 }
