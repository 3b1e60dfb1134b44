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

// What no program asks about by name, for the tests from outside.
const (
	UnseenTaper  = unseenTaper
	UnseenShape  = unseenShape
	UnseenScores = unseenScores
)
