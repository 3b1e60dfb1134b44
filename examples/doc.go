// SPDX-License-Identifier: BSD-3-Clause

// Package examples lists the lessons, programs of one file each, and has no code itself. They teach the
// arithmetic of a worn cylinder, one step of the job each.
//
//	go run ./examples/measure                                           from a clone
//	go run borewright.example/examples/measure@latest                   without one, when the module has found a home
//	go run ./examples/bundle ./examples/measure                         as one text for the Go playground
//
// Every lesson says what is asked; works each step as symbol = formula = numbers = result; draws the
// answer; checks it by a second way, by other arithmetic; and ends with what usually goes
// wrong, in numbers. Its data stand on top of the file, under "Change these": a lesson is for changing
// a number, saying first what will happen, and running it again. All of it follows, the text too.
// The data are invented: a village workshop that keeps irrigation-pump engines running.
//
// # In the order of the job
//
// Measuring, about an hour and a half in class:
//
//   - measure: six readings of a dial bore gauge give size, ovality, taper and spread. What would
//     change if the dial ran the other way?
//   - twoaxes: two axes at right angles can miss ovality. Where must the long axis lie to hide?
//   - warmgauge: ring, gauge and barrel each have a temperature. Which of them matters least?
//   - warmbore: what the dial shows on a warm bore when it is as large as wanted.
//   - verdict: within, beyond or undecided. How good must the gauge be to decide?
//   - knowgauge: one ring, read ten times. What does the gauge tell apart, and how many readings would do?
//   - askew: a gauge that stands askew. At which tilt does the formula for doubt fail?
//   - howmany: how many readings settle an undecided size, and when none will.
//   - vee: which lobes a vee-block or a three-point gauge does not see. Which two would you keep?
//
// Deciding, and the work:
//
//   - whichsize: the smallest oversize that leaves no worn wall, counted from the piston.
//   - displacement: volume and compression ratio after a rebore, and what the head gives back.
//   - crosshatch: what a fast drill really leaves, and what would leave 45°.
//   - photograph: the angle that is really on the wall, from a picture of it. What does a tilted camera do to it?
//   - overtravel: how far a hone stands out of the bore, and how straight the wall is then.
//   - nextpass: how long the next honing pass may be. What does one more trial pass buy?
//   - plateau: what ten plateau strokes change of a honed wall. When does Rk rise although metal only went?
//
// Fitting, and looking back:
//
//   - ringgap: the gap in another bore, what to file, what is left when hot.
//   - ovalring: the way round an oval bore, and the gap of a ring in it.
//   - ringfollow: whether a ring follows a bore that is not round.
//   - sleevegrip: an interference, its stresses, and the heat at which the grip goes.
//   - whichfit: an interference by the classes of ISO 286, and its pressure.
//   - pistons: which piston into which bore. Why does sorting win?
//   - fourcircles: one trace of a wall, the four circles of the standards. Which one does a single bad
//     point move most?
//   - wholewall: five traces of one bore, its cylinder, its bend and its taper. What does a bore gauge see
//     of them?
//
// The command [borewright.example/examples/wall] measures the crosshatch in a photograph of a wall, and draws
// a sheet to try it on. [borewright.example/examples/refresh] is the whole job,
// [borewright.example/examples/bench] the same as a page to type into, and
// [borewright.example/examples/bundle] makes the playground texts.
//
// # In the playground
//
// A bundle runs there as it is: paste it, change a number, run. Above 64 KiB, and the bundler says so,
// it runs and cannot be shared by a link. Lines that begin with IMAGE: are pictures there.
//
// # Cautions
//
// A lesson is no instruction for a job. Each ends with the caution that belongs to its work; the
// maker's manual, local rules and a qualified machinist outrank all of it.
package examples
