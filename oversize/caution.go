// SPDX-License-Identifier: BSD-3-Clause

package oversize

// What a choice rests on and the workshop has to know, in sentences.
const (
	windowSpansSizes = "The clearance window is wider than the step to the next size: right for graded pistons; else one of the two is misread."
	pistonToCome     = "The finish window waits: measure the new pistons before the last honing."
	wallUnknown      = "Whether enough wall is left is not known, for want of a least wall or of a measured one: core shift and corrosion do not show in the bore."
	honingUnusual    = "The honing allowance lies outside the 0.02 mm to 0.13 mm that sources give."
	gaugeTooCoarse   = "The clearance cannot be proven: the doubt of bore and piston, to both sides, is wider than its window."
	axisMoves        = "Bored on the worn centre the axis moves, and the piston no longer stands over its old place on the crankshaft."
	ovalityUnseen    = "Ovality was not seen: where no axis was read the bore may be beyond its limit, and worn wall may be left."
	noHoningStock    = "No honing allowance is given, so that the bore is bored straight to its size: the marks of the boring tool stay, and no crosshatch is left."
	lifeUsed         = "Corrected so far, the bore has more clearance than a fresh one may: much of its life is used before it runs."
)
