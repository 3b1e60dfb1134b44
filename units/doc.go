// SPDX-License-Identifier: BSD-3-Clause

// Package units has the quantities of a workshop, exact lengths first. There are windows for lengths, and
// temperatures, angles, speeds, frequencies, volumes, pressures, forces and expansions.
//
// # Why 25.4 is exact and 0.03937 is not
//
// The inch is 25.4 mm by definition, so a [Length] counts picometres and holds both systems on one grid without loss:
//
//	1 in        = 25 400 000 000 pm    (127·2⁹·5⁸)
//	1/512 in    =     49 609 375 pm    the finest binary fraction that is whole
//	0.0001 in   =      2 540 000 pm    a machinist's tenth
//	1 µin       =         25 400 pm
//	0.000001 mm =          1 000 pm
//
// Backwards it never ends: 1 mm = 1/25.4 in = 0.03937007874…, since 25.4 contains the prime 127 and no power of ten
// does. Tables cut it to 0.03937: a bore of 87.5 mm so converted and read back is 87.499 825 mm. Divide by 25.4, or let
// [Length.Format] do it. What is no whole number of picometres (1/3 in, a spreadsheet's 67.10499999999999999 mm) is
// [ErrInexact], and the nearest Length comes with it; nothing is rounded in silence. [Of] is the one way in from
// float64.
//
// # Mistakes the types catch
//
//	bore < temperature                // does not compile
//	2.5 * units.Inch                  // does not compile: write units.Length(2.5 * units.PerInch)
//	units.Length(1.0/3*units.PerInch) // does not compile: not a whole number of picometres
//	units.ParseLength("67.02")        // ErrMissingUnit; "67,02 mm", "1e3 mm" and "2.5 mil" are refused too
//	units.ParseTemperature("10 °F")   // −12.2 °C; as a TemperatureChange, 10 °F is 5.56 K
//
// # Mistakes they cannot catch
//
//	a * b                             // two Lengths: compiles, and is nonsense; use MulDiv, or In and float64
//	(41 / 64) * units.Inch            // 0, for Go divides 41 by 64 first; 41 * units.Inch / 64 is exact
//	units.Length(x * units.PerMillimetre) // truncates where x is a variable: 67.02 gives 67.019999999 mm
//	fmt.Sscan("3", &l)                // 3 pm: Sscan, %d and database/sql see the bare number; store the text
//	units.Speed(math.NaN())           // a conversion checks nothing: In gives NaN back, text is ErrNotFinite
//
// Nor do they know a diameter from a radius, at what temperature a length was read, or a 0.25 mm oversize from one of
// 0.010 in (0.254 mm).
//
// # The other quantities
//
// They are float64 in SI units, at most ±1e15 as text, with typed constants: 600 * units.PerMinute, or
// units.Frequency(x) * units.PerMinute. Text has the unit and 12 significant digits, so that machines agree in it; a
// bare number other than 0, NaN and infinities are refused. Zero is [Temperature]'s and [Limits]'s "not given". Text
// serves JSON (value and key), XML, flag.TextVar, slog and text/template alike, and is read by UnmarshalText where
// there is no Parse; a text that is refused changes nothing, and its [ParseError] says where and what to mend.
//
// Sources: ISO 1 (20 °C), ISO 80000-1:2009 Annex B (rounding), the inch and pound of 1959 (25.4 mm, 0.45359237 kg).
package units
