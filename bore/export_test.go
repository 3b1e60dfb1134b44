// SPDX-License-Identifier: BSD-3-Clause

package bore

// Choke is looked at by the tests from outside.
var Choke = Taper.choke

// The shapes, for the tests from outside.
const (
	Straight    = shapeStraight
	Tapered     = shapeTapered
	BellMouthed = shapeBellMouthed
	Barrelled   = shapeBarrelled
	Waisted     = shapeWaisted
	Irregular   = shapeIrregular
	PortBelly   = shapePortBelly
)
