// SPDX-License-Identifier: BSD-3-Clause

// Package fit is about the piston in its bore: its clearance, and the size of bore that gives it.
// It has the sizes that the finished bore may have, the size to work to, the clearance that is
// left cold and warm, and which piston goes into which bore.
//
// # Formulas
//
//	(1) finish window     F = P + C            P: skirt, C: each end of the clearance window
//	(2) clearance         C = D − P            diametral, at 20 °C; its doubt u² = u²(D) + u²(P)
//	(3) clearance, warm   C = D(1 + αb·ΔTb) − P(1 + αp·ΔTp)
//
// All clearances are diametral: half of one stands on each side of a piston in the middle. All
// sizes are at 20 °C unless a name says warm. P is the skirt measured square to the pin, at the
// height above its edge that the maker names, the gauge's and the micrometer's doubt in it; a
// soft coating on the skirt is taken off where the maker's clearance does not count it.
//
// # The size to work to
//
// A measured bore of the size aimed at must have at least the least clearance, whatever the
// doubt: so no [Aim] comes nearer to the tight end than the expanded uncertainty of the
// clearance. Wear only opens a clearance, so the tight end lasts longest; the centre is surest
// to hit. Where the doubt is wider than the whole window the answer is ErrNarrow: a better gauge,
// or graded pistons.
//
// # Whose clearance
//
// The figure of the piston's supplier comes first, then the engine maker's. [Usual] has rules a unit of
// bore, which are common practice and differ by a factor of ten between duties, only to show
// when a figure is unusual.
//
// # Warm
//
// Free expansion ([Warm]) is an indicator, not a limit. It already makes a usual cold clearance negative
// in an iron bore: 67 mm, 0.040 mm, all 60 K warmer than 20 °C, an aluminium piston, gives
// −0.0006 mm. Real skirts are ground oval and tapered, give way, and run cooler than the crown.
// A positive figure proves nothing either.
//
// # Matching
//
// One piston a bore, the same number of both: sort both. Take two pairs that
// cross, a smaller bore with a larger piston. Uncrossing them brings the two clearances closer
// together and leaves their sum, so every cost that is convex in the clearance falls or stays:
// the sum of squares, the greatest distance from the middle, and a window as a cost that is
// nothing inside and infinite outside. Spare pistons break the argument; then
// [Match] solves the assignment.
//
// # Sources
//
// JCGM 100:2008 5.1.2 and G.4.1 for combined uncertainty. US Army TM 9-2815-202-34, p. 6-36, for
// a clearance felt with a strip and a pull; TM 9-2815-226-34-1, p. 3-143, for the place where a
// skirt is measured; TM 9-2320-289-34, Table 3-1, and TM 10-3930-653-14&P for printed
// clearances. R. Jonker, A. Volgenant, A shortest augmenting path algorithm for dense and sparse
// linear assignment problems, Computing 38 (1987), for the assignment (named from memory).
//
// # Cautions
//
// A bore read while warm from the hone has not its size at 20 °C: let it and the gauge soak
// before the last word. The maker's manual outranks this package.
package fit
