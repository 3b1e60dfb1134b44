// SPDX-License-Identifier: BSD-3-Clause

// Package form turns radial traces of a bore into roundness, cylindricity and straightness. A
// trace is what a roundness instrument, a rotary table or a measuring machine gives; the answers
// are those of the standards: the four reference circles with the roundness about each, three of
// them certified; straightness; harmonics and the Gaussian filter; and what a two-point gauge, a
// three-point gauge or a vee-block would have made of the same wall.
//
//	t, err := form.FromRadii(radii)         // or FromPolar, FromPoints
//	z, err := t.MinimumZone()               // z.RONt, z.Centre, z.Certificate.Contacts()
//	err = z.Check(t)                        // nil: proved, by other arithmetic
//	mean, hs, err := t.Harmonics(z.Centre, 15) // []bore.Harmonic, for rings.Tension.Follow
//	rs, err := t.Readings(depth, z.Centre, axes) // []bore.Reading, for bore.Analyse
//	c, err := bore.CleanUpRadial(t.Radial(depth), std, allowances)
//
//	w, err := form.FromSections(sections)    // or FromWallPoints
//	c, err := w.Cylindricity(form.MZCY)          // c.CYLt, c.Axis.At(0), c.Axis.OutOfSquare()
//	err = c.Check(w)                         // nil: proved
//
// Lengths are [units.Length] and round to a picometre, once; inside, points are float64 millimetres
// from an exact origin. A trace is a copy and never changes.
//
// # The four circles of one trace
//
// Roundness is what is left of a trace when a circle is taken away, so it depends on which (ISO
// 12181-1). With d the distances of the points from a centre:
//
//	LSCI  least squares         Σ (d − R)² least               one for every trace, moved little by one bad point
//	MZCI  minimum zone          max d − min d least            the smallest RONt of all, what a tolerance zone means
//	MCCI  minimum circumscribed max d least                    what the bore would clean up at, centre free
//	MICI  maximum inscribed     min d greatest                 the largest plug that enters
//
// Call a trace closed if, as seen from the centre of its minimum zone, its points lie all round and
// each is less than the inner diameter from the next, so that the inner circle cannot slip out
// between two of them. Then the radii stand in this order: inner circle of the zone ≤ MICI ≤ MCCI ≤
// outer circle of the zone. Of other traces the first of the three may fail. The symbols of the
// results:
//
//	RONt  peak-to-valley roundness deviation, max d − min d, about any of the four
//	RONp  peak-to-reference, about LSCI   }
//	RONv  reference-to-valley, about LSCI } RONp + RONv = RONt
//	RONq  root mean square, √(Σ (d − R)²/n), about LSCI; the standard's is over the angle, not the points,
//	      which is the same where they are evenly spaced
//	STRt, STRp, STRv, STRq  the same of straightness (ISO 12780-1), STRt also of a minimum zone
//	UPR   undulations per revolution, of a filter's cut-off
//
// A peak is out of the material. The material of a bore lies outside the circle, so its peaks point
// to the axis: RONp = R − min d, RONv = max d − R. Of a piston or a journal it is the other way
// round.
//
// # Why the answers are certain
//
// Least squares is solved by Gauss and Newton's method on the orthogonal distances, from the
// algebraic circle. The other three are carried by few points, the contacts, and the contacts prove
// them. Take a circumscribed circle on three contacts that no half circle holds. Their directions n
// from the centre can be weighed, each w ≥ 0, Σ w = 1, so that Σ w·n = 0. About any other centre
// the weighed mean of their squared distances is R² + t², t the distance moved: it has grown, so at
// least one of them lies outside the old circle. Nothing smaller holds all three. Two contacts
// opposite each other do as well.
//
// A minimum zone is carried by two outer and two inner contacts that alternate round the circle, an
// inscribed circle by three. These problems have other, local optima, where a search from nearby
// gets stuck. [Certificate] says how far the contacts exclude all else (on a bore, millimetres),
// and why, farther than some hundredths of a millimetre away, the points all round exclude it.
// Where the two meet, the circle is proved the best of the plane, and [Circle.Check] returns nil.
//
// Where they do not meet, on an arc, on a wild form, or for the inscribed circle of an oval bore,
// the plane is searched by halving boxes of centres, and the certificate says so, and how much
// better another centre might still be: nothing, unless the work ran out. The search is not a proof
// that can be checked: Check then returns [ErrUnproved], after having found every number and the
// contacts right. So it does for least squares, which has no certificate: no small move makes it
// better, and more is not checked.
//
// # The wall
//
// A bore is not a circle. Of traces at several depths, or of points in space, the same four are asked for
// as cylinders about an axis that is free to lean (ISO 12180-1), distances counting square to it:
//
//	LSCY  least squares           its CYLp + CYLv = CYLt, and CYLq
//	MZCY  minimum zone            the smallest CYLt of all: what a tolerance of cylindricity means
//	MCCY  minimum circumscribed   what the bore would clean up at, axis free
//	MICY  maximum inscribed       the largest plug as long as the wall that enters
//
// CYLt is not RONt of the worst section: taper, a bend and a lean of the sections against each other are
// in it. Least squares is solved as for a circle. The others go by linear programs, exchanging contacts,
// and, where fewer contacts than unknowns carry them, by Newton's method on those. They have worse local
// optima, some micrometres away. The certificate tells what is excluded: on a closed wall mostly all axes, by
// contacts, by the points at the ends, and, part by part, by those next to the cylinders. Where that leaves
// something open, axes there are tried, or all round where the wall is an arc; what then is open is its Bound.
//
// Where the axis is given, as a boring bar's is that stands square to the deck, the wall seen along it is
// one trace ([Wall.Along]), and its circles are the cylinders about that direction. Beside the cylinder
// stand the least-squares cone, of which taper is a size and not a deviation; the centres and local sizes
// by depth with the bend ([MedianLine]: size by depth is the local size of ISO 14405-1); and generators,
// lines along the wall, whose straightness and parallelism ([Pair]) are those of lines.
//
// # Harmonics, filter, gauges
//
// The radius about a centre is mean + Σ A·cos k(θ − φ), order k by order, fitted by least squares
// at the angles given. The Gaussian filter passes order k with exp(−ln 2·(k/kc)²), half of it at
// the cut-off kc (ISO 16610-21, ISO 12181-2). A gauge that touches the wall in two or three places
// adds the radii there: two opposed anvils double even orders and see no odd one; three at 120°
// double 3, 6, 9 and see no other; a vee of angle a with the indicator opposite reads 1 +
// cos(k·(90° + a/2))/sin(a/2) times order k (J. Japan Soc. Precision Eng. 43-514 (1977) 1167). So a
// wall of three lobes is round by every dial bore gauge, and a trace alone shows it: the Reuleaux
// triangle has one diameter all round and a RONt of 0.155 of it.
//
// # Sources and validity
//
// ISO 12181-1 and -2 (roundness), ISO 12780-1 (straightness), ISO 16610-21 (Gaussian filter), ISO
// 4292 (two- and three-point methods): definitions from memory, from general literature. Exchange
// of contacts: Remez's method for polynomials; balance of contacts: John (1948), Chetwynd (1979),
// from memory. The bounds were derived here. Checked against the NIST algorithm testing sets,
// published traces and exhaustive search.
//
// The wall is where the points are, and nowhere else: a trace of 36 points does not see a scratch
// between them. Answers carry no measurement uncertainty; that of the instrument's spindle and
// probe is not in the points. Sizes are as measured; bring them to 20 °C with
// [borewright.example/units/material]. What a probe tip bridges, and what the filter takes away, is
// not in them.
//
// # Cautions
//
// A cylinder off its block, or without its torque plate, has another form than in use. A round
// trace in one plane says nothing of the next. Keep hands, sleeves and leads away from a turning
// table. The maker's manual and a qualified metrologist outrank every number that comes out of
// here.
//
// NaN and infinities do not get in (angles) or come out; wrong data are errors that match the
// sentinels below with [errors.Is], and nothing panics.
package form
