// SPDX-License-Identifier: BSD-3-Clause

// Package oversize decides for a whole engine: hone, bore to which size on offer, or sleeve. Or
// it leaves it to the maker's process. It also divides the stock over the operations, and says
// what a new bore does to displacement and compression.
//
// # The choice
//
// [Choose] tries the present size and then the sizes on offer, the smallest first. All cylinders
// share a size unless the engine says otherwise. The first size that serves every cylinder is
// chosen; where there is none, as few cylinders as will do are sleeved and the rest take the smallest size
// that serves them.
//
// The present size serves where
//
//   - every finding against the maker's limits is within, the piston has its clearance in the
//     largest and the smallest place, and the wall is thick enough: then any hone may deglaze; or
//   - there are rigid stones, and the smallest true cylinder that leaves no worn wall lies inside
//     the window for its piston and the service limit: then they correct form and size. A
//     ball-type or brush hone follows the wall and corrects nothing.
//
// A larger size serves where
//
//	F.Min − H ≥ clean-up       F: finish window, piston + clearance or the maker's new size;
//	                           H: honing allowance; clean-up on the original centre, or on the
//	                           worn one where the axis may move so far
//	wall − (F.Max − smallest)/2 − shift ≥ least wall
//	F.Max ≤ hole of the gasket
//	size ≤ greatest overbore
//
// F.Min stands in the first line because a bore may be finished anywhere in its window. The
// wall is the thinnest one measured, not that of a drawing: core shift and corrosion do not
// show there. Each condition with a measurement in it is held by a verdict at a risk (JCGM 106),
// and only Within counts for it.
//
// Plated and bare aluminium-silicon walls are never bored, honed or sleeved here, whatever was
// measured.
//
// # Undecided
//
// Nothing is kept on an undecided finding; nor is a bore enlarged on one, since a larger size is
// no remedy for a doubt. The engine is then [Undecided], with the reasons, and with the route
// that remains if all doubts turned out badly. Do not reassemble on this. But where any cylinder
// has to be bored for sure, all that share its size are bored, and doubts about keeping them no
// longer matter. A size whose clean-up or wall is not proven is passed over for the next that
// is; its refusal says so ([Reason.Open]), since a better measurement may win it back.
//
// # Metric and inch
//
// [Metric] and [Inch] are different sizes. 0.25 mm is 0.00984 in, and a 0.010 in piston is 4 µm larger
// than one of 0.25 mm: a fifth of many a clearance window. Every decision counts from the real
// piston where it is known.
//
// # Displacement and compression
//
//	(1) swept volume      V = n·π/4·D²·S
//	(2) clearance volume  Vc = head − crown + π/4·D²·deck + π/4·d²·gasket
//	(3) ratio             (V + Vc)/Vc, of one cylinder
//
// With a fixed head the ratio rises with the bore; where all of Vc is a cylinder of the bore it
// does not change. A two-stroke compresses only from exhaust closing.
//
// # Validity
//
// Sizes up to 1 m, at 20 °C. Diameters hold no centre, so the clean-up is an interval until the
// wear's share is known; the choice uses its greater end as proof and its lesser end to refuse
// for good. Text and numbers that are not finite, crossed windows and contradictions are
// errors, and none of the answers is ever NaN or infinite.
//
// # Sources
//
// The rule that a spot worn larger than the first oversize takes the next, and the steps in
// inches, are those of a United States handbook of aircraft powerplants ("Cylinder grinding and
// honing"). US Army TM 10-3930-653-14&P for a greatest overbore of 1.5 mm and a liner beyond it. R.
// S. Khurmi, J. K. Gupta, A Textbook of Machine Design, chapter 32 and table 32.1, for walls.
// Bored size P + C − H, honing allowances of 0.02 to 0.13 mm and 0.05 mm for a last cut are common
// practice. JCGM 106:2012 for decisions under doubt.
//
// # Cautions
//
// Boring: work clamped, eyes guarded, no gloves or loose sleeves near anything that turns. Too
// thin a wall bursts or overheats. The size is right only when bore and gauge have soaked at one
// temperature. The maker's manual, local rules and a qualified machinist outrank this package.
package oversize
