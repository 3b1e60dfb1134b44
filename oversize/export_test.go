// SPDX-License-Identifier: BSD-3-Clause

package oversize

// Names that the tests compare by.
const (
	BeyondLimit        = beyondLimit
	LimitUndecided     = limitUndecided
	NothingJudged      = nothingJudged
	ClearanceBeyond    = clearanceBeyond
	ClearanceUndecided = clearanceUndecided
	PistonTight        = pistonTight
	NoRigidHone        = noRigidHone
	BeyondGreatest     = beyondGreatest
	WallThin           = wallThin
	WallNotProven      = wallNotProven
	GasketHole         = gasketHole
	SharedSize         = sharedSize
	WallForbids        = wallForbids
	Peeling            = peeling
	ScoreLeft          = scoreLeft
	ScoreNotJudged     = scoreNotJudged
	NothingLarger      = nothingLarger

	WindowSpansSizes = windowSpansSizes
	PistonToCome     = pistonToCome
	WallUnknown      = wallUnknown
	HoningUnusual    = honingUnusual
	GaugeTooCoarse   = gaugeTooCoarse
	AxisMoves        = axisMoves
	OvalityUnseen    = ovalityUnseen
	NoHoningStock    = noHoningStock
	LifeUsed         = lifeUsed
)

// BoringTime is the time of passes alone.
var BoringTime = boringTime
