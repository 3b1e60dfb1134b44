// SPDX-License-Identifier: BSD-3-Clause

// Package sleeve is about a sleeve held in a barrel by interference. It says how tight it sits
// and what that does to both parts, which classes of ISO 286 give which interference, how hot or
// cold the parts must be to go together, how far the bore closes in and what is left to hone, and
// whether the sleeve stays tight when the engine is hot.
//
// # DIAMETRAL interference
//
// Interference goes in as DIAMETRAL, everywhere in this package: the outside diameter of the
// sleeve less the bore of the barrel, both at 20 °C with the parts apart. It is what two
// micrometers show. Textbooks print the formulas with the RADIAL interference, half of it; a
// slip between the two is a factor of two in every stress, and published solutions have made it.
// The type that carries it is called [Diametral] so that no call can leave it unsaid.
//
// # The order of the work
//
// The sleeve is got and measured first: at the top, the middle and the bottom, and again at right angles, the mean of the
// six. The seat is bored to suit, so much less the interference; it stops short and leaves a step for the sleeve to
// stand on, or the sleeve has a collar, or more interference must hold it; its mouth is chamfered to lead the sleeve
// in. Heated or chilled the parts go together in one stroke; the sleeve is left to stand proud, and once cold faced to the
// deck. The joint is tested for leaks, the neighbouring bores are read again, and only then is the sleeve bored and honed to its piston.
// All common practice; the maker's own order comes first. Sleeves are stored upright: on their side they go
// oval (US Army TM 5-4310-379-14).
//
// # Formulas
//
// Two tubes, radii a (bore), c (joint) and b (outside), sleeve i inside barrel o, DIAMETRAL
// interference δ, RADIAL interference δ/2, gas pressure g in the bore (Lamé; the press and shrink
// fits of any textbook of machine design):
//
//	(1) Ki = (c² + a²)/(c² − a²)              Ko = (b² + c²)/(b² − c²)
//	(2) p  = [ (δ/2)/c + g·(Ki − 1)/Ei ] / [ (Ko + νo)/Eo + (Ki − νi)/Ei ],  never below 0
//	(3) hoop stress at the barrel's bore      +p·Ko
//	(4) hoop stress at the sleeve's bore      g·Ki − p·(Ki + 1)
//	(5) the sleeve's bore closes, diametral   (2a/Ei)·[ p·(Ki + 1) − g·(Ki + νi) ]
//
// Tension is positive, compression negative. With parts at temperatures Ts and Tb
//
//	(6) δ(T) = (seat + δ)·(1 + αs·(Ts − 20 °C)) − seat·(1 + αb·(Tb − 20 °C))
//
// takes the place of δ; below 0 it is a gap and nothing presses.
//
// This is plane stress: both parts free to slide along the axis. Some texts divide by 1 − ν²
// (plane strain, ends held) and get up to a tenth more; one published problem (radii 50, 75 and
// 150 mm, RADIAL interference 0.025 mm, E 200 GPa, ν 0.28) prints 16.9 MPa where plane stress
// gives 15.625.
//
// # Ranges
//
// The outside of a finned barrel is no hoop section, so [Joint.Outer] is a range: the diameter at
// the roots of the fins and that over their tips. Interference is a range too, from two
// tolerances or from the doubt of two measurements, and so is a coefficient of expansion. Every
// answer is then the [Range] from the mildest to the worst of their combinations, and a verdict
// is [uncertainty.Within] only if the worst combination passes, [uncertainty.Beyond] only if the
// mildest fails, and [uncertainty.Undecided] otherwise.
//
// # The way through
//
//   - which interference: [DiametralFromClasses], [TradeInterference], [Joint.GreatestInterference],
//     [Joint.LeastInterference]
//   - sizes to make: [Class.Sizes]; a seat to suit the sleeve as it came: [SeatFor]
//   - what the parts as measured have: [DiametralFromMeasured]
//   - what it does to both parts: [Joint.Fit]
//   - to put it together: [Joint.HeatTo], [Joint.ChillTo], [Joint.Press]
//   - to take it apart: [Joint.TakeOut], [Joint.Press]
//   - what stands above the deck, to be faced off: [Proud]
//   - what to hone out, and whether a hone should: [Joint.Hone], [Honing.Allowed]
//   - whether it stays tight hot: [Joint.Stresses], [Joint.LooseAt]
//   - how the fitted bore grows: [Joint.Growth]
//
// # Validity
//
// Round, concentric, elastic tubes of one thickness along their length, each at one temperature.
// A flange, a stepped sleeve, ribs, bolts, an oval or tapered seat and a wall that varies round
// the bore all disturb it. Lengths are those at 20 °C. Strengths are those of the cold metal:
// aluminium at 200 °C has much less. Cold pressing flattens the finish of both surfaces and loses
// some interference; a slip fit by heat keeps it (common practice).
//
// NaN and infinities are refused with an error and never come out.
//
// # Sources
//
// Lamé's thick cylinders, as any textbook of machine design has them; the joint with ranges, heat and gas is derived
// from them here, and held to published problems. The tables of ISO 286 over 18 up to 80 mm and over 180 up to 400 mm were
// read in K. L. Narayana, P. Kannaiah, K. Venkata Reddy, Machine Drawing, tables 15.1 to 15.4; over 80 up to 180 mm, over
// 400 mm, and f at all sizes are from memory. Verdicts and doubts: JCGM 100:2008 and 106:2012. Interferences, clearances and
// the measuring of sleeves: US Army technical manuals, named where they stand.
//
// # Cautions
//
// Hot castings, boiling traces of water, cold gas and a press can maim. Results carry their
// [Cautions]; the maker's manual, local rules and a qualified machinist outrank all of them.
package sleeve
