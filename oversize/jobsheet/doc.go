// SPDX-License-Identifier: BSD-3-Clause

// Package jobsheet carries a whole job, from a file of readings to the sheet that a person works by.
//
//	job, err := jobsheet.ReadJob(file)  // strict: every fault at once, each with its place
//	sheet, err := jobsheet.Plan(job)    // through every room of the library
//	err = sheet.WriteText(os.Stdout)    // or WriteHTML, WriteJSON
//
// A [Job] may be built in Go as well. Where zero is an answer, as for the depth and the axis of a [Reading] or the size
// that a [Cylinder] stands at over nominal, the field is a pointer, so that leaving it out is not to say zero. What a
// file is refused for, Plan refuses too.
//
// # Nothing goes together unless it is proven
//
// [Sheet.Ledger] has a [Row] for everything that must be true before the engine goes together: for each
// cylinder its size and form, all of ring travel looked at, scores and pits, the wall left, the crosshatch, the
// piston's clearances, every ring's gap cold, in service and in work and its ends at every port, a sleeve's
// grip, how the finished bore was read; for the engine that nothing was left unsaid or lost. A row is open until
// something shows it; a limit that was not given, a piston that nobody measured, a ring without a window are
// rows that are open and name the fields of the job that would settle them. No row is left out. Two axes prove no
// ovality: one whose long axis lies midway between them reads alike on both.
//
// The rows decide, and nothing else does. [Sheet.Next] and [CylinderSheet.Next] are the step of the most
// pressing row: what makes readings void before what is certain, that before what is missing, that before what
// is in doubt. What is printed is printed from them. The choice of the route is withheld while anything that it
// hangs on is not said: leaving a field out moves no route and proves nothing.
//
// A row may go on somebody's word ([Acceptance]): with a name, a reason, and what stood there, so that the word
// lapses when that changes. A failed row is accepted only where it is a maker's figure that somebody decides to
// exceed. Nobody can accept parts that touch, an end of a ring that crosses a port, a sleeve that comes loose, a
// coated wall that was cut, facts that contradict each other, or what was not said.
//
// # What is not known is said
//
// Leaving a field out and not knowing it are two things. not_known lists what a workshop has to go without: the
// ring travel (taken then to be one and a half strokes, from 10 mm below the deck), the share of the wear, a least wall
// (then only sizes on the maker's own list are bored). Where nobody stated a doubt a wide one is taken and
// shown ([Sheet.Assumed]): 0.010 mm for a micrometer without a certificate and what was measured with it, 0.03 mm
// for a gap by feelers, 0.5 mm for a wall, two steps of the scale for the dial, one for scatter where no place was
// read twice and unalike, 10 µm for a radius of a trace, 1 K along the wall, 2° for a crosshatch,
// 10 % and a step of 0.05 µm for a texture. A gauge set on no standard decides no size.
//
// counted says how many readings, passes, pits, rings and ports stand on the paper at the bench: one that is lost
// on the way here may be the one that mattered. What looks like a slip, a point moved by a place or one unit for
// another, is open until confirmed names the field and its value; the bands of what is usual live with the rooms.
//
// # Traces beside readings, or instead of them
//
// A cylinder that stood on a rotary table may have traces, radii round the bore at several depths, of the worn wall and
// of the finished one. They are read as diameters along every direction of them, which find a size, an ovality and a
// taper as readings do; where there are both, of two findings on one limit the worse counts, and diameters that were
// read and traced must agree. What diameters hold nothing of becomes seen: roundness and cylindricity by ISO 12181-1
// and 12180-1, each of the minimum zone and carried by the points that prove it, held against engine.limits.roundness
// and cylindricity where these are asked; odd lobes, which the rings meet too; how the axis is bent; and, where a trace
// lies below ring travel and the job says how square the spindle stood to the deck, the original centre, from which
// the clean-up follows without a share of the wear.
//
// That holds where the indicator was set on the standard (gauge.spindle); otherwise traces have form and no size. A
// radius that stands out of its neighbours is a score or a slip, and wants to be confirmed; step says how many radii
// go round, counted.traces how many traces there are, so that none is lost. Roundness, cylindricity and bend are no
// more than the difference of two radii, and have the doubt of that.
//
// # A texture, from the instrument or from its profile
//
// What the rings want of the finished wall is held against readings at several places. A reading is the parameters that an
// instrument shows (cylinders.texture), or a [Profile], of which the sheet works them out by the two steps of ISO 13565-1 and
// draws it with its material ratio curve. One place decides nothing, however often it is read: repeats at a place have its name,
// whatever its blanks and capitals, and what was read at one place and stands at another, in this cylinder or the next, wants to be
// confirmed. Where both stand for one place they must be alike, half as much again, or one is confirmed. A profile goes to its
// length by its spacing, and counted.textures counts it among the readings, so that no point is lost, and no place.
//
// # What it does, and does not
//
// It holds no formula. Sizes, ovality, taper and clean-up come from package bore, verdicts from
// units/uncertainty, the route, stock, warm sizes and volumes from oversize, finish windows,
// clearances and the matching of pistons from bore/fit, roundness, cylindricity and bend from bore/form, crosshatch, wall, tracks and passes from
// bore/hone, gaps, filing, hot gaps, ports and conformability from rings, the sleeve's fit from
// oversize/sleeve, the gauge's own scatter from units/uncertainty/study; each cites its sources there. What is
// here is the order of the work, the checks of sense on a job that a stranger wrote, the ledger, and how the
// risk is divided (budget.go, which says what is promised).
//
// # A file that lives as long as the job
//
// One file serves the whole round. What is done is put down in it, and it is planned again:
//
//	nothing read yet            readings empty, layout given   measure: where to read, and blanks
//	barrel read                 readings                       the route; measure better where they do not decide
//	pistons got                 oversizes: pistons             bore: the window follows from them
//	bored                       honing: the size then          hone: the trial pass
//	after each honing pass      honing: the pass               hone, wash and prove, or past its size
//	washed and at rest          proof of cylinder and job;     set the ring gaps, rework or measure better
//	                            ridge_gone, of one kept
//	gaps measured in the bore   rings: finished                reassemble
//
// Where one bore of a shared size is past it the others wait, and an engine is ready as a whole. The proof stands
// beside the survey, place by place, held alike. [Plan] reads no clock: dates are those of the job.
//
// # The job
//
// A job is JSON of at most 1 MiB and 32 levels; the fields of [Job] say what it holds. A value with its doubt is one
// text, as sheets print it: "78.194 ± 0.004 mm". Reading is strict, since a misspelt field is a limit that nobody
// applies: unknown, doubled and wrongly cased fields, null, bare numbers where a unit belongs, a zero that says
// nothing, broken text and whatever follows the job are faults. Sizes more than 10 % from the nominal bore are
// too, for then a unit or a digit has slipped. What only a room can refuse is a fault of [Plan], with its path
// and the room's error.
//
// Beside a field's JSON name its tags say what is checked: "needs" is what no job can do without, in words; "want" is a
// rule for its range and "most" the greatest number or length, beyond which it is a fault; "usual" is a band, beyond
// which it has to be confirmed.
//
// # What it assumes
//
// Boring is on the original centre unless engine.may_shift says how far the axis may move; from diameters alone,
// which hold no centre, the worn one proves no smaller size without wear_share. The unworn size is that of the
// uppermost plane read below ring travel, else the least of the maker's new bore. Deglazing takes 4 µm on the
// diameter where nothing else is said. A cylinder within 5 K of the standard is at rest (this library's own
// judgement). The running clearance of a piston is an indicator, not a limit: its supplier's word may stand for it.
//
// Where the drive is a hand, or nothing is said, the hone moves as a crank does; by machine evenly. What follows
// along the wall is worked out for the setting in the job where that leaves the crosshatch wanted, else for the
// best on hand. A kept bore's rings may be used ones. Where the job names no material, a bare-iron wall or a
// sleeve is grey iron, any other wall and a barrel the aluminium of blocks, a piston the eutectic alloy of
// castings, the gauge's rod plain steel and its standard gauge steel; the sheet says so. A doubt in a job is
// expanded to 95 %.
//
// # Cautions
//
// The sheet carries cautions for the operations on it, printed at the step they belong to. The maker's
// manual, local rules and a qualified machinist outrank it.
package jobsheet
