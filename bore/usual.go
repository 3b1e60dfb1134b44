// SPDX-License-Identifier: BSD-3-Clause

package bore

import "borewright.example/units"

// What is usual for a bore catches slips: a point moved by a place, millimetres for inches. Each band
// is wide enough for what manuals print for bores of 30 to 250 mm, and narrower than a factor of
// ten about it. What lies outside is not wrong, it wants a second look; what lies inside may be wrong
// all the same. No band is a limit. All are common practice, drawn about the figures of the
// United States Army manuals that each names. A bore below 1 mm counts as 1 mm, one beyond
// [units.MaxLength] as that.

// UsualNew returns where both ends of the window of a new bore usually lie: within 0.4 % of the
// nominal size, either way (US Army TM 9-6115-670-14&P, 6.30: 67 mm, 67.000 to 67.019 mm).
func UsualNew(nominal units.Length) units.Limits {
	nominal = banded(nominal)
	return units.Limits{Min: nominal - nominal*4/1000, Max: nominal + nominal*4/1000}
}

// UsualWindow returns how wide the window of a new or finished bore usually is, greatest less
// least: 0.008 to 0.095 mm whatever the bore, which takes in grades IT6 to IT8 of ISO 286 from 30 to 250 mm
// (US Army TM 9-6115-670-14&P, 6.30: 0.019 mm; TM 5-3895-346-14: 0.0015 in).
func UsualWindow() units.Limits {
	return units.Limits{Min: 8 * units.Micrometre, Max: 95 * units.Micrometre}
}

// UsualService returns where the largest diameter that a worn bore may have usually lies: 0.0004 to
// 0.0050 of the bore over nominal (US Army TM 10-3930-647-14&P: 0.001 in an inch of diameter;
// TM 9-6115-670-14&P, 6.30: 0.15 mm on 67 mm).
func UsualService(nominal units.Length) units.Limits {
	nominal = banded(nominal)
	return units.Limits{Min: nominal + nominal*4/10_000, Max: nominal + nominal*50/10_000}
}

// UsualForm returns what limits of a worn bore usually are, for ovality, taper and greatest less least
// alike: 0.010 mm + 0.0001 of the bore to 0.10 mm + 0.0012 of it. US Army manuals have 0.025 mm of taper on
// 67 mm (TM 10-3930-647-14&P, by its rule a unit of travel), 0.05 mm of either (TM 10-4320-351-14, 6.4.5), 0.05 to 0.08 mm in
// liners (TM 5-3895-346-14, TM 9-2815-202-34) and 0.15 mm of greatest less least (TM 9-6115-670-14&P, 6.30).
func UsualForm(bore units.Length) units.Limits {
	bore = banded(bore)
	return units.Limits{Min: 10*units.Micrometre + bore/10_000, Max: 100*units.Micrometre + bore*12/10_000}
}

// UsualFinishForm returns what limits of ovality and taper usually are for a bore that has just
// been finished: 0.003 mm + 0.000025 of the bore to 0.030 mm + 0.00025 of it. US Army manuals have
// 0.010 to 0.020 mm of form in a honed liner of 100 mm (TM 5-3895-382-24), 0.025 and 0.05 mm in a new one of 98 mm
// (TM 5-3895-346-14).
func UsualFinishForm(bore units.Length) units.Limits {
	bore = banded(bore)
	return units.Limits{Min: 3*units.Micrometre + bore*25/1_000_000, Max: 30*units.Micrometre + bore*250/1_000_000}
}

// UsualStandard returns where the setting standard of a gauge for this bore usually lies: from 1 mm
// under to 2 mm over it, since the dial must reach from the one to the other, and a bore may
// stand at an oversize.
func UsualStandard(bore units.Length) units.Limits {
	bore = banded(bore)
	return units.Limits{Min: bore - min(units.Millimetre, bore/10), Max: bore + 2*units.Millimetre}
}

// banded returns a bore that no band overflows or vanishes at.
func banded(bore units.Length) units.Length {
	return min(max(bore, units.Millimetre), units.MaxLength)
}
