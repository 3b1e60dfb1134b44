// SPDX-License-Identifier: BSD-3-Clause

// Package rings is the arithmetic of piston rings: gaps, filing, heat, grooves, force and form.
// It has the end gap in any bore, what to file off, what is left of it when hot, the play in the
// groove, how hard a ring presses, and whether it follows a bore that is not round.
//
// # End gap
//
// A ring's circumference does not change with the bore that it lies in; the gap takes all of it:
//
//	Δgap = π·ΔD
//
// So a gap in one bore gives the gap in another ([Gap.In]), two gaps of one ring give taper, or
// what honing took off ([DiameterChange]), and a ring for a bore 0.25 mm larger has 0.785 mm
// less gap than it should: its ends overlap. The formula is exact at the middle of the ring's
// radial thickness a. The ends tilt as the ring opens, so that the change is D/(D − a) times
// that at their outer edges and (D − 2a)/(D − a) times that at the inner: 4 % either way for 2.7
// mm in 67 mm. One manual prints that 0.0012 in less bore closes the gap by 0.0031 in (US Army
// TM 5-3825-229-14&P, 6-11); it is 0.0038 in, and the printed figure belongs to 0.001 in.
//
// The gap is set where the bore is smallest within the ring's travel ([Narrowest]). A bore that
// is oval counts with the diameter of the round bore of equal perimeter ([Oval]), which for the
// ovality of any usable bore is the mean diameter.
//
// The maker's window comes first. Rules per unit of bore ([Rules]) run from 0.002 to 0.006 and
// do not say for what duty. [FileTo] plans the filing and refuses a window too narrow for the
// gauge; where the gap is too wide already, a ring for a larger size may serve: its gap is smaller by π times the step,
// until it is filed. Before the bore is there [Expect] says what is to be expected in any bore of its finish
// window: rings are ordered by that, and filed in the finished, washed bore alone. The ends of an oil ring's
// expander butt, and are never cut (US Army TM 55-1930-209-14&P-21).
//
// # Hot gap
//
// From 20 °C to the working temperatures the gap grows by ([Warm])
//
//	π·d·(αb·ΔTb − αr·ΔTr)
//
// which is negative in an iron bore, cooler than its ring, and positive in an aluminium barrel.
// What a ring must have cold, to stand beside what it has cold, is [Warm.Least].
// The growth of the ring alone, as some pages have it, overstates the loss: that is a hot ring
// in a cold bore.
//
// # Force
//
// For a thin ring of plain rectangular section and uniform pressure, with d the bore, a the
// radial thickness, h the height, r = (d − a)/2, I = h·a³/12 and m what the free gap closes by:
//
//	(1) M(θ) = Ft·r·(1 − cos θ)              bending moment at θ from the gap; p·d·h = 2·Ft
//	(2) m = 2∫M·r·(1 − cos θ)·r dθ/(E·I) = 3π·Ft·r³/(E·I)      over θ from 0 to π
//	(3) k = Ft·r²/(E·I) = 2m/(3π·(d − a))    whatever the modulus
//	(4) stress = M(π)/(h·a²/6) = 6·Ft·(d − a)/(h·a²)
//	    Q/Ft = 3π/(2 + π/2) = 2.639          Q a pair of loads at 90° to the gap with the same m
//
// [Section] and [Tension] hold these. Oil rings of several pieces, and rings with an expander,
// are outside of them. A textbook's rule for the free gap, 3.5 to 4 thicknesses, does not agree
// with its own wall pressure: at 0.035 MPa, 3.4 mm in 100 mm and 100 GPa, theory gives 5.67 mm
// and the rule 11.9 to 13.6 mm.
//
// # Conformability
//
// To bend without stretching into A·cos(i·θ), A radial, a ring needs the radial load q per
// length; contact is lost where this is more than its own p·h = Ft/r. So
//
//	    q = E·I·(i² − 1)²·A/r⁴
//	(5) A ≤ k·r/(i² − 1)²
//
// Two other rules are in print, from experience (SAE 960356)
//
//	(6) A ≤ k·r/(20·(i² − 1))
//
// and k·r/(3·(i² − 1)), which is the same as (5) at i = 2 and wider beyond. (5) and (6)
// cross between i = 4 and 5. [Tension.Follow] decides by these two, and leaves undecided
// what they do not agree on, and what no order alone does but all together may. Papers that
// print the derived rule with a measured force differ (4.56 with the diametral force in one, a
// third of it in another): 12/2.639 = 4.546 with the diametral force and 12 with the tangential
// one is what follows from the above.
//
// Amplitudes are radial throughout: an ovality, a difference of DIAMETERS, of 0.03 mm is a
// radial amplitude of 0.0075 mm. [Oval.Harmonic] makes the one of the other.
//
// # Units and validity
//
// Lengths are [units.Length], sizes at 20 °C; forces and pressures those of package units.
// Results are rounded once, to 1 pm. NaN and infinities are refused, and never come out.
// One-piece rings, small deflections, no gas pressure.
//
// # Sources
//
//   - JCGM 100:2008, for the uncertainties.
//   - US Army TM 5-3825-229-14&P, TM 10-3930-653-14&P, TM 5-4320-305-24, TM 9-2815-202-34 and
//     TM 9-2815-254-24, for gaps, clearances and their measurement.
//   - A Textbook of Machine Design (Khurmi, Gupta), ch. 32, for proportions of rings.
//   - SAE 960356, 2001-01-0569 and 2009-01-0190, and a report of Michigan State University (MTH 844,
//     2004), for conformability, read in summaries; the derivation above decides where they differ.
//   - "Common practice" for what the trade does and no source could be found for.
//
// # Cautions
//
// A ring that butts scuffs, breaks or seizes the engine; a ring end in a port breaks. Metal
// filed off does not come back. Ring edges are sharp; wear eye protection when expanding or
// filing a ring. The maker's manual overrides all of this. [Cautions] has what a job sheet should
// print.
package rings
