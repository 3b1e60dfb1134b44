// SPDX-License-Identifier: BSD-3-Clause

// Package hone is the arithmetic of honing: crosshatch, strokes, removal, and when to stop. It
// has the crosshatch that a setting really leaves, and the setting that leaves the crosshatch
// wanted; how far to stroke, where along the wall the metal goes, and how long the next pass may
// be.
//
// # The recipe that does not do what it says
//
// One recipe in use for a small engine turns a hone in a drill at 600 to 700 rev/min, takes half
// a second to a single stroke, and expects lines at 45°. In a bore of 67 mm, by the stroke, the
// lines open by
//
//	              70 mm    80 mm    90 mm
//	600 rev/min    7.6°     8.7°     9.8° included
//	650 rev/min    7.0°     8.0°     9.0°
//	700 rev/min    6.5°     7.5°     8.4°
//
// and not by 45°. The abrasive goes round at 126 to 147 m/min and along at 0.14 to 0.18 m/s. A
// hand that swings, fastest at mid-stroke, reaches 10.2° to 15.3° there and 0° at the ends.
//
// It cannot be mended by the stroke. At 650 rev/min and 80 mm it takes 354 cycles a minute, 5.9 a
// second, to leave 45°, and no hand does that; at one cycle a second it takes a stroke of 472 mm.
// Three ways out:
//
//   - Turn slowly: at one cycle a second, 96 rev/min for a stroke of 70 mm, 110 for 80 mm, 124 for
//     90 mm. A geared or speed-controlled drill does it, or a brace.
//   - Meet half-way: at two cycles a second, the most this package advises to a hand, 193, 220
//     and 248 rev/min.
//   - Turn fast to take the stock and slowly at the last: the lines of the fast phase go where the
//     slow phase takes as much off the radius as they are deep, and stay where it does not.
//
// [OnHand.SettingFor] makes this search for any bore, stroke, drive and hand; [Traces] follows the
// phases. The angles are computed from the formulas below.
//
// # One angle, four ways to say it
//
// With a the lean of one line from the plane square to the axis, the same crosshatch is 2a
// between the two families along the circumference ([Included]), a ([FromSquare]), 90° − a
// from the axis and 180° − 2a across the axis. Manuals use all of them, and [ParseCrosshatch] reads them all.
// NMWR 9-2815-220, WP 0012, says two: 35° to the horizontal, 70° included. US Army TM 10-4320-351-14, 6.4.5, asks for "90
// to 120°", which fits usual work only across the axis: 60° to 90° included. Several manuals ask
// for marks "on a 45-degree axis", which may be 45° or 90° included. So a [Crosshatch] is made
// only by naming the way, and a bare "45°" is refused.
//
// In the same way "60 strokes a minute" is said for single strokes and for there and back. A
// [Stroking] is made by [Strokes] or by [Cycles].
//
// # Formulas
//
// D bore, n spindle, L stroke one way, f full cycles, each there and back:
//
//	(1) peripheral speed   v_t = π·D·n
//	(2) axial speed, mean  v_a = 2·L·f
//	(3) crosshatch         tan a = v_a / v_t
//	(4) advance a turn     v_a / n
//
// Only the ratios count: twice the spindle speed and twice the stroking leave the same angle.
//
// A real tool comes to rest at both ends of its stroke. A [Motion] spreads the same mean speed
// over the stroke: a [Crank] peaks at π/2 times the mean, a [Trapezoid] with ramps of t at
// 1/(1 − 2·f·t). Since abrasive lies along the whole tool, each point of the wall is crossed at
// many speeds; [Setting.Profile] gives the least, the mean and the greatest angle along the
// wall. The marks of turning round reach into the bore by the tool's length less what stands out
// of the bore: half a tool, where half of it comes out.
//
// # Where the metal goes
//
// A point of the wall loses metal as pressure times resultant speed times time, while the tool covers
// it. Of a tool of length l with o out at the end, a steady stroke gives that end, over the middle,
//
//	(5) constant pressure   o/l
//	(6) constant force      ln(l/(l − o))
//
// With stones a third out, as is usual, the ends get 0.33 or 0.41 of the middle: 0.05 mm of stock on the
// diameter of a bore of 90 mm, stones of 45 mm, leaves either end 43 or 36 µm tighter than the middle.
// Half out, the most that is safe, still gives 0.50 or 0.69. A blind end gets nothing. See
// [Setting.Removal]; [Setting.Correct] sets rigid stones to dwell against a measured taper.
//
// # How long the next pass may be
//
// [Sizing.Next] takes the readings so far, each brought to 20 °C: a hot aluminium barrel read as 67.030 mm
// at 45 °C is 66.994 mm. It tells the rate with its doubt, whether it fades, and the longest pass that
// runs past the stop size with no more than its part of the risk of the job. In simulations of 20,000
// jobs each, with rates between 0.25 and 1 µm/s that nobody knew, scatter of 0.2, gauges of 0.5 to 2 µm,
// and rates that halve in four minutes, the share of bores run past stayed below the risk stated, in twice
// the passes, at the median, of one who knows the rate, or fewer. With a scatter of 0.3 the
// risk was kept as well, in 5 or 6 passes where the knower, who may hone for five minutes at once,
// made 2.
//
// # Which question, which function
//
//	what does this setting leave?                     Setting.Crosshatch
//	how fast to turn, how often or how far to stroke? Setting.SpindleSpeedFor, StrokingRateFor, StrokeLengthFor
//	what can I do with what I have?                   OnHand.SettingFor
//	what is the angle along the wall?                 Setting.Profile, Setting.Steepest
//	how many lines are flat, by length and by number? Setting.CountLines
//	do the lines of the first phase stay?             Traces
//	how many strokes cover the wall?                  Setting.Cover
//	does the tool run in its own tracks?              Setting.Retrace
//	how long a stroke, how far out of the bore?       UsualTravel, Run.Travel
//	where does the metal go, how straight is it then? Setting.Removal
//	where do I dwell against a taper?                 Setting.Correct
//	how long may the next pass be?                    Sizing.Next
//	my machine neither swings nor goes steadily?      Trapezoid, Shaped
//	which grit, how rough?                            Grits, Finishes
//	what must I beware of?                            Kind.Cautions, Setting.Cautions
//
// # Validity
//
// The geometry is exact for a line of abrasive that follows the drive: no twist of a flexible
// shaft, no slip, no chatter. Lengths run to 10 m, rates to a million a minute; anything that is
// missing, negative or not finite is an error. A crosshatch is rounded to 10⁻¹²°, so that the same
// setting prints the same angle on every machine.
//
// The law of removal has no tilt of the tool, no wall that gives way, no stone that has taken the shape of
// the wall. The promise of [Sizing.Next] holds while readings are as good as they say and the rate
// scatters as stated and does not rise; the trial pass is not in it.
//
// # Sources
//
// The formulas of the crosshatch are plane geometry. The law of removal is F. W. Preston's (The theory and
// design of plate glass polishing machines, J. Soc. Glass Technology 11, 1927, from memory); what is drawn
// from it is derived here. How much of a tool stands out is common practice. The band of surface
// speed that [Setting.Cautions] looks at, 15 to 110 m/min, is common practice. That no more than
// two cycles a second is advised to a hand is this library's own judgement.
//
// # Cautions
//
// The two families of tools want opposite things. A rigid-stone hone is put in, started, stopped
// and taken out with its stones drawn in, inside the bore: outside it can throw a stone. A
// ball-type or brush hone turns slowly as it enters and leaves. No one rule is safe for both;
// [Kind.Cautions] has those of each.
//
// Clamp the cylinder; nothing loose near the drill; guard the eyes; stop before measuring. Follow
// the makers of the engine and of the tool, and somebody who has done it. Plated bores and bare
// aluminium-silicon ones are not honed in this way at all.
package hone
