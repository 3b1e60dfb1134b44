// SPDX-License-Identifier: BSD-3-Clause

// Package jobsheet carries a whole job: from the readings of an engine's cylinders, as a job
// file holds them, to the job sheet that a person works by.
//
//	job, err := jobsheet.ReadJob(file)  // strict: every fault at once, each with its place
//	sheet, err := jobsheet.Plan(job)    // through every room of the library
//	err = sheet.WriteText(os.Stdout)    // or WriteJSON
//
// # What it does, and does not
//
// It holds no formula. Sizes, ovality, taper and clean-up come from package bore, verdicts from
// units/uncertainty, the route, stock, warm sizes and volumes from oversize, finish windows,
// clearances and the matching of pistons from bore/fit, crosshatch, wall, tracks and passes from
// bore/hone, gaps, filing, hot gaps, ports and conformability from rings, the sleeve's fit from
// oversize/sleeve; each cites its sources there. What is here is the order of the work, the checks
// of sense on a job that a stranger wrote, and words.
//
// # A file that lives as long as the job
//
// One file serves the whole round. What is done is put down in it, and it is planned again:
//
//	nothing read yet            readings empty, layout given   Measure: where to read, and blanks
//	barrel read                 readings                       the route; MeasureBetter where they do not decide
//	bored                       honing.start                   HoneToSize: the trial pass
//	after each honing pass      honing.passes                  HoneToSize, WashAndProve or Oversized
//	washed and at rest          proof of cylinder and job      SetRingGaps, Rework or MeasureBetter
//	gaps measured in the bore   rings: finished                Reassemble
//
// [Sheet.Next] and [CylinderSheet.Next] say what is next. What is beyond a limit for certain calls first,
// then what is missing, then what is in doubt; where one bore of a shared size is past it the others
// wait, and an engine is ready as a whole. A bore is not proven where places of the survey were not
// read again, a wanted crosshatch was not measured, the cylinder was more than 5 K from the temperature
// of the standard (this library's own judgement), or two sets of readings cannot both be true. The proof stands beside the survey,
// place by place; survey and proof have to be clamped alike. [Plan] reads no clock: dates are those
// of the job.
//
// # The job
//
// A job is JSON of at most 1 MiB and 32 levels; the fields of [Job] say what it holds. Reading is
// strict, since a misspelt field is a limit that nobody applies: unknown, doubled and wrongly
// cased fields, null, bare numbers where a unit belongs, broken text and whatever follows the
// job are faults. Sizes more than 10 % from the nominal bore are too, for then a unit or a
// digit has slipped.
//
// # What it assumes
//
// Boring is on the original centre unless engine.may_shift says how far the axis may move; from
// diameters alone, which hold no centre, the worn one proves no smaller size without
// wear_share. The unworn size is that of the uppermost plane read below ring travel, else the least of
// the maker's new bore.
//
// Where the drive is a hand, or nothing is said, the hone moves as a crank does; by machine evenly.
// What follows along the wall is worked out for the setting in the job where that leaves the
// crosshatch wanted, else for the best on hand. A kept bore's rings may be used ones.
//
// Where the job names no material, a bare-iron wall or a sleeve is grey iron, any other wall and
// a barrel the aluminium of blocks, a piston the eutectic alloy of castings, the gauge's rod plain steel and its standard gauge steel; the
// sheet says so. Uncertainties in a job are expanded ones with k = 2. No temperature is assumed:
// one that nobody measured is given as a range and widens every size.
//
// # Risk
//
// The risk of a wrong finding is per engine, 0.05 each way where the job says nothing, and each
// stage has one of its own: the findings of the survey, the choice of the route, running past the
// size in honing, the ring gaps, the proof. Running past the size is judged with 0.01 a bore at the least, so that from six cylinders on an
// engine's risk in honing is more. Within a stage it is shared over the cylinders and what
// is judged of each (Bonferroni), so more limits make more findings undecided, not more of them
// wrong. An undecided finding is not a pass: the sheet says not to
// reassemble on it.
//
// # Cautions
//
// The sheet carries cautions for the operations on it. The maker's manual, local rules and a
// qualified machinist outrank it.
package jobsheet
