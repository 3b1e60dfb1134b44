// SPDX-License-Identifier: BSD-3-Clause

package rings

import "borewright.example/units"

// UsualGap returns where the end gap usually lies: of a new ring both ends of the maker's window, 0.001 to
// 0.012 of the bore at 20 °C, and the largest that is allowed in service, 0.004 to 0.030 of it. It catches slips, a
// point moved by a place or millimetres for inches, and is narrower than a factor of ten about what is printed: in US
// Army TM 10-3930-653-14&P 0.15 to 0.40 mm on some 91 mm, and 1.0 mm in service, by the [Rules] of the trade 0.002
// to 0.006 of the bore. What lies outside wants a second look and is not wrong; for a choice of gap see [Rules].
//
// A bore below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.
func UsualGap(bore units.Length) (window, limit units.Limits) {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: bore / 1000, Max: bore * 12 / 1000}, units.Limits{Min: bore * 4 / 1000, Max: bore * 30 / 1000}
}

// UsualCount returns how many rings a piston usually has: one in small two-strokes, up to seven in old slow
// engines (common practice). A list with none of them says nothing of the rings.
func UsualCount() (least, greatest int) { return 1, 7 }
