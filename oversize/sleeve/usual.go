// SPDX-License-Identifier: BSD-3-Clause

package sleeve

import "borewright.example/units"

// UsualWall returns where the wall of a sleeve of this bore usually lies, as it runs: 0.8 mm + 0.005 of the bore to 3 mm +
// 0.07 of it, from slip-fit dry sleeves to wet liners (common practice; US Army TM 9-2815-202-34 and
// TM 5-3895-359-14&P come to 4.8 mm on 4.25 in). It catches slips, a point moved by a place or
// millimetres for inches; what lies outside wants a second look and is not wrong.
//
// A bore below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.
func UsualWall(bore units.Length) units.Limits {
	bore = min(max(bore, units.Millimetre), units.MaxLength)
	return units.Limits{Min: 800*units.Micrometre + bore*5/1000, Max: 3*units.Millimetre + bore*70/1000}
}

// UsualInterference returns where both ends of the DIAMETRAL interference of a sleeve in a seat of this diameter
// usually lie: 0.010 mm + 0.00005 of the seat to 0.10 mm + 0.0006 of it, about the 0.0015 to 0.004 in of [TradeInterference]
// for seats of 2 to 5 in, and the H7/s6 of ISO 286 in larger ones (common practice). A sleeve that slides in by hand has none,
// and is another matter.
//
// A seat below 1 mm counts as 1 mm, one beyond [units.MaxLength] as that.
func UsualInterference(seat units.Length) units.Limits {
	seat = min(max(seat, units.Millimetre), units.MaxLength)
	return units.Limits{Min: 10*units.Micrometre + seat*50/1_000_000, Max: 100*units.Micrometre + seat*600/1_000_000}
}
