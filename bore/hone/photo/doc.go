// SPDX-License-Identifier: BSD-3-Clause

// Package photo measures the crosshatch that is really on a wall, from a photograph. It gives the included
// angle with its doubt, or a refusal by name where two families of lines do not stand out.
//
//	m, err := photo.Shot{
//		Picture: img, Bore: 67 * units.Millimetre, Whole: true,
//		Label:   photo.Label{Round: 20 * units.Millimetre, Along: 10 * units.Millimetre},
//		Corners: [4]photo.Pixel{{X: 710, Y: 530}, {X: 1290, Y: 541}, {X: 1284, Y: 836}, {X: 705, Y: 822}},
//	}.Crosshatch()
//	fmt.Println(m.Crosshatch.Format(1), m.Std)
//
// What a setting of drill and hand should leave is told by [borewright.example/bore/hone.Setting.Crosshatch].
//
// # How to photograph
//
//   - Stick an oblong label of known size on the wall, square to the bore, clean-edged and flat to the wall: a
//     third of the picture's width or more. Measure its sides; know which one runs round the bore.
//   - The whole picture sharp, and 1,000 pixels or more over 10 to 30 mm of wall. Mid-stroke, where the angle is
//     what the drill makes it.
//   - Soft light, and a second picture lit from the other side: a groove that light runs along does not show.
//   - Turn the camera some 10° to 20° about its line of sight, so that no lines run along the rows or columns of
//     the picture. No crop, no filter, no digital zoom. Square to the wall, or tilted up to 50°.
//   - Mark the four corners to half a pixel, clockwise, the first two on a side that runs round the bore. Say so
//     with Marking if it was worse.
//   - Before the final wash; or wash again: a label and its glue are dirt.
//
// # How it works
//
// The label gives four corners, eight numbers. A camera without distortion that looks at a label on a cylinder
// of the known diameter has nine unknowns: where it stands (3), how it is turned (3), its focal length f in
// pixels, and where the axis of its lens meets the picture (2). Something is held of the last three before:
//
//	ln f     ln(1.1 · longer side) ± 0.6, or the given one ± 3 %
//	axis     the middle of the picture ± 2 % of its longer side; ± 30 % where it may have been cropped
//
// and least squares (Levenberg and Marquardt) does the rest. A flat thing from afar looks alike at two tilts:
// all poses that fit take part, each weighed by exp(−χ²/2).
//
// The wall is then unrolled at the picture's own pitch, in square tiles of 64 to 128 pixels, each half over the
// next; brightness is divided by its surroundings, and label, glare and black are left out. Lines that lean by
// a make waves square to them, so in the amplitude spectrum of a tile (Hann's window) they are a ridge through
// the middle. Its amplitudes, ring by ring over the mean of the ring, are added over the tiles, and the rings
// by how much two halves of the wall agree in them. Two crests are the two families, each with its own lean;
// the included angle is the difference.
//
// # What the doubt is made of
//
//	parts of the wall     leaving out one of sixteen parts at a time (the jackknife)
//	shape of the peaks    how far the angle goes with half as much more smoothing
//	corners of the label  through the fit, from how well they were marked
//	focal length          through the fit, from what was held of it
//	axis of the lens      the same
//	bend of the lens      its distortion, 1.5 % at the corners of the picture, through the fit and along the lines
//	tilt seen two ways    between the poses that fit
//	method                0.1°, found on rendered walls without noise
//
// A hand that swings leaves flat lines where it turns and steep ones at mid-stroke. Where the angle changes
// along the bore more than it does round it, or families hold more leans than lines of one lean show, Min and
// Max give its range; where no range is safe, the answer is [ErrSpread].
//
// # What it was tried on, and what nobody has tried
//
// No openly licensed photograph of a honed wall with a stated angle was found. All figures come from rendered
// walls of known truth: see the tests.
//
//	tried, on rendered walls                                    nobody has tried
//	20° to 120° included; 300 to 3,000 pixels a side            a photograph of a real wall
//	sheets of examples/wall, 35° to 120°, in a tube, also as    the same on paper, by a camera
//	  printers leave them, by a browser's 3D renderer
//	bores of 50 to 120 mm, 10 to 30 mm of wall in the picture   narrower bores, wider pictures
//	lenses of 0.7 to 2 times the width of the picture; on       fish-eyes; wide-angle telephones near to
//	  sheets, lenses that distort by up to 3 % at the corners
//	tilt to 30° any way, 45° to 50° along the bore              steeper views, mirrors, borescopes
//	grooves darker than the wall, 0.2 to 40 grey levels         grooves that glint, torn and folded metal, plateaus
//	lines of 30 to 150 % of the picture, scattered by to 1°     ball-type hones, whose lines are short and many
//	up to 30 % strays; the second family half as deep           wear, rust, carbon, oil, old lines under new
//	even and uneven light, one hot spot; on sheets, dark        light along one family; coloured light; shadows
//	  corners and light that rolls from row to row
//	blur to 1.3 pixels, noise to 6 levels, JPEG 30 to 95        pictures sharp in part; sharpened, denoised, resized
//	corners marked with a standard deviation of half a pixel;   labels with a bulge, torn or askew; people
//	  on printed sheets by eye, to 0.5 to 1.5 pixels
//	swinging hands: sines of 60 to 90 mm of stroke              real hands
//
// Of 1,000 everyday walls 896 were answered: off by 0.2° at the median, 0.9° at 95 %, 2.5° at worst, the doubt of
// 95 % covering 97 %, 0.7° at the median. Of 250 walls of a swinging hand 107 were, 100 of them held by range or
// doubt. Of 1,581 without a crosshatch none was. Ten printed sheets by the browser's renderer were up to 0.7° off,
// each within its doubt. A camera and a honed wall nobody has tried. DEVELOPERS.md of this module has the rest.
//
// # Validity
//
// The angle is that of the wall in the picture and of no other. Lines want to be closer together than a quarter
// of a tile: evenly ruled ones 28 pixels apart in a picture of 480 by 360 came out 1.1° off at ± 0.7°. Sheets
// ruled at less than 35° are refused: where long even lines cross so flat, their crossings are lines of their
// own. Leans up to 70° from square to the axis; two families that lean alike within 12°; pictures of 200 pixels to
// 65,536 a side, read at no more than 1,500. Lenses that distort by more than 3 % at the corners of the picture
// are beyond the doubt. Pixels, and the focal length in them, are bare numbers. Angles are rounded to a millionth
// of a degree; the same picture gives the same angle to better than a thousandth on every machine.
//
// # Sources
//
// The camera and the cylinder are geometry, derived here. Focal lengths of cameras, and how far their lenses
// distort, are common practice. The window is J. von Hann's, the jackknife M. Quenouille's and J. Tukey's (from
// memory); the sum of parts is that of JCGM 100:2008, see [borewright.example/units/uncertainty.Budget]. Thresholds
// were chosen on rendered walls apart from those that judge.
//
// # Cautions
//
// A crosshatch of the right angle proves neither size nor roughness nor a clean bore. Nothing near the wall
// turns while it is photographed. The maker's manual outranks all of this.
package photo
