// SPDX-License-Identifier: BSD-3-Clause

// Package bore turns the gauge readings of one cylinder into what they can and cannot say. That
// is everything a careful machinist would conclude from them: sizes, form, wear, whether it is
// worn out by the maker's limits, what it would clean up at, and what the readings cannot show.
//
//	g, err := bore.Analyse(readings, gauge)   // sizes and form at 20 °C, each with its doubt
//	findings, err := g.Judge(limits, risk)    // within, beyond or undecided, limit by limit
//	cleanUp, err := g.CleanUp(wear)           // the smallest true cylinder without worn wall
//	fmt.Println(g.Unseen)                     // what no number above says anything of
//
// Lengths are [units.Length], depths count from the deck downwards, axes are angles from the
// thrust axis, which stands square to the piston pin. Sizes and forms that come out are diameters
// at 20 °C. Amplitudes of [Lobes] are of the diameter; those of a [Harmonic] are radial.
//
// # Why two axes miss ovality
//
// A wall worn oval by V, greatest less least diameter, shows along an axis at angle φ from its long
// one the diameter D(φ) = mean + V/2·cos 2φ. Read along two axes at right angles, which is what
// most manuals ask for, it shows V·|cos 2φ|: all of V where one of them happens to be the long
// axis, and nothing at all where the long axis lies at 45° between them. If wear took no
// heed of the axes, two of them would show 64 % of V on average (2/π), and less than half of it
// in one bore of three.
//
// More axes leave less to chance. Of a purely two-lobed wall the greatest less the least reading is
//
//	2 axes, 90° apart   0 to 100 % of V
//	3 axes, 60° apart   75 to 87 %
//	3 axes, 0, 45, 90°  50 to 100 %
//	4 axes, 45° apart   71 to 100 %
//	6 axes, 30° apart   87 to 100 %
//
// and the least-squares fit through any three or more distinct axes gives V whole: [Plane].TwoLobe. With
// three axes it may be wrong in another way: four lobes, such as four head bolts draw, are then
// taken for two. Four evenly spaced axes keep the two apart but not the size of the four; five
// fix it: [Plane].FourLobe. And no gauge with two opposed anvils sees three, five or seven lobes at all: a
// wall of three lobes has one diameter all round. So nothing here ever says "round".
//
// # Sizes and their doubt
//
// A dial bore gauge compares the warm wall with a warm standard. The size at 20 °C follows from
// the comparison, every temperature by itself ([material.Comparison]):
//
//	L20 = [Ls(1 + αs·ΔTs)(1 + αg·(Tuse − Tset)) + d] / (1 + αp·ΔTp)
//
// Its standard uncertainty is the root sum of squares of what [Geometry].Budget lists (JCGM
// 100:2008, 5.1.2), with the degrees of freedom of Welch and Satterthwaite (G.4.1), rounded up to
// a nanometre and down to a whole number. What all places share, the standard and the mean
// temperatures, cancels in a difference of two: [Place].Own leaves it out. Repeatability, resolution,
// the dial's error over its travel, the drift of its zero and the differences of temperature from
// place to place enter twice. In a mean, repeatability alone averages out: the rest may be the
// same in every place, and the opposite cannot be shown. Repeats of a place give the gauge's
// repeatability, pooled over all places, and with few of them Student's t takes the place of the
// normal distribution.
//
// Extremes of several readings are biased. The greatest less the least of n readings of a round
// bore is not 0 but, for n = 2, 3, 4, 6 and 20, on average 1.13, 1.69, 2.06, 2.53 and 3.73 times the
// standard deviation of one. [Geometry.Judge] allows for that; an Ovality read as a number does not.
//
// # Words
//
//	ovality      greatest less least diameter in one plane
//	taper        size at the uppermost less that at the lowest place, along one axis, with its sign
//	belly        the same from one depth to any other: large where the ends are alike
//	spread       greatest less least of all diameters; some manuals call this wear
//	ridge        step on the diameter where the top ring turns round
//	bell-mouth   wider towards one end than an even taper would be
//	barrel       widest between the ends; waist: narrowest between them
//	choke        smaller at the deck when cold, by intent: a limit on taper may leave it out
//	bridge       wall between two ports
//	clean-up     the smallest true cylinder that leaves no worn wall
//
// Manuals define wear in at least three ways (ovality, taper, spread), and their limits are not
// exchangeable: each of [Limits] holds for its own quantity.
//
// # Verdicts
//
// A finding is within where the doubt leaves at most the risk of being wrong, beyond likewise, and
// otherwise undecided: then do not reassemble on it (JCGM 106:2012, ISO 14253-1). The risk is per
// limit, however many places, planes and axes take part. The findings are about the axes and depths
// read, as manuals mean them. Of the wall itself fewer than five axes may say beyond, or undecided, and
// never within; five or more may say within if the lobes they carry are all it has:
// Limits.TrueOvality.
//
// A taper is that of the bore only where an axis was read near both ends of ring travel: within a tenth
// of it, and 10 mm, of the upper one, since wear is greatest just below where the top ring turns round
// and falls off fast, and within a fifth of the lower one. Two planes 4 mm apart say nothing of it. Where
// neither ring travel nor stroke is given ([Layout]) a taper may be beyond its limit, and never within.
// Along each axis every place counts that has wall under the anvils, also at the depths of ports; and
// where no limit on greatest minus least covers a belly or waist, it is held against that on taper.
//
// # Clean-up
//
// Diameters hold no centre. With W the wear on the diameter, at least half of it and at most all
// of it lies on one side, so that boring on the original centre wants a size from unworn + W to
// unworn + 2W; boring on the worn centre wants at least unworn + W, and moves the axis. Give the
// share of wear on the worse side, or radial points of the wall ([CleanUpRadial]), and the
// interval closes. A pit counts in its place, where rings pass over it. Locating error, lean and surface
// are added openly.
//
// # Sources and validity
//
// Levels: US Navy training manual 14076, 3-5. Definitions of wear: US Army TM 9-6115-670-14&P, 6.30,
// TM 10-4320-351-14, 6.4.5; FAA powerplant handbook. Choke: TM 9-2815-200-35. Uncertainty: JCGM
// 100:2008; decisions: JCGM 106:2012. What two- and three-point gauges see of lobes: the idea of
// ISO 4292. Clean-up and forms are geometry, derived here and tested by simulation. That the doubt
// should be at most a quarter of what is allowed ([Coarse]) is common practice.
//
// Diameters are taken as widths between parallel tangents; the chord through the centre differs
// by less than 0.1 µm for an ovality of 0.1 mm. The wall is taken to be rigid: a cylinder unbolted,
// or without a torque plate where the maker wants one, has another form than in use. An iron sleeve
// in an aluminium barrel grows by neither coefficient but between them.
//
// # Cautions
//
// Sizes read warm are not sizes: let cylinder, standard and gauge come to one temperature, and say
// what it was. Wipe anvils and wall; set the gauge again afterwards and look for drift. Keep
// fingers clear of ring ridges and port edges, which cut. A reading says nothing of cracks, and
// nothing of plating that lifts. The maker's manual and a qualified machinist outrank every number
// that comes out of here.
//
// NaN and infinities are refused on the way in and never come out; wrong data are errors that
// match the sentinels below with [errors.Is], and nothing panics.
package bore
