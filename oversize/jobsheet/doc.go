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
// It holds no formula. Sizes, ovality and taper come from package bore, verdicts from
// units/uncertainty, the route and volumes from oversize, finish windows from bore/fit, the
// crosshatch from bore/hone, gaps and filing from rings; each cites its sources there. What is
// here is the order of the work, the checks of sense on a job that a stranger wrote, and words.
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
// Boring is on the original centre: diameters hold no centre, so from them alone the worn one
// proves no smaller size.
//
// Where the job names no material, a bare-iron wall or a sleeve is grey iron, any other wall and
// a barrel the aluminium of blocks, the gauge's rod plain steel and its standard gauge steel; the
// sheet says so. Uncertainties in a job are expanded ones with k = 2. No temperature is assumed:
// one that nobody measured is given as a range and widens every size.
//
// # Risk
//
// The risk of a wrong finding is per engine, 0.05 each way where the job says nothing. It is
// shared over the cylinders and their limits (Bonferroni), so more limits make more findings
// undecided, not more of them wrong. An undecided finding is not a pass: the sheet says not to
// reassemble on it.
//
// # Cautions
//
// The sheet carries cautions for the operations on it. The maker's manual, local rules and a
// qualified machinist outrank it.
package jobsheet
