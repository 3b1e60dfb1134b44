// SPDX-License-Identifier: BSD-3-Clause

// Package study finds out what a gauge, and those who read it, are good for. Studies go from one ring
// read ten times up to a crossed study of parts, persons and repeats.
//
// Everything that is decided about a bore hangs on the doubt of its gauge, and a workshop can find
// that doubt in half an hour with what lies on the bench. Read one setting ring ten times, taking
// the gauge out each time and, if others read it too, letting each of them do so; write down
// every reading, in order, as it was seen. [Analyse] makes a [Study] of it, whose Repeatability goes
// into bore.Gauge; [Study.Repeats] says how many readings of a place would do for a limit, and
// [DriftOf] whether the order shows that the dial creeps.
//
// # Analysis of variance
//
// For a parts, b persons and n repeats of each, all random, with mean squares MS:
//
//	repeatability   s² = MS within
//	interaction     i² = (MS interaction − MS within)/n
//	person          o² = (MS person − MS interaction)/(a·n)
//	part            p² = (MS part − MS interaction)/(b·n)
//	reproducibility o² + i²      gauge s² + o² + i²      total gauge + p²
//
// Parts and persons are held against the interaction, not against the repeatability as some sheets
// do. With one person, or one part, or one reading of each, what cannot be seen is named in
// Unseen, and its component is empty: absent is not zero. A variance that comes out below zero is
// shown as 0 and marked Negative; it still has an interval, which says how large it may be.
//
// Numbers that are not equal, or cells that are empty, are treated by Henderson's third method, which
// gives the same for equal ones; [Analyse] says how.
//
// # Which interval
//
// Repeatability has an exact one, from chi-squared. For sums and differences there are two in use, and
// they do not agree. In the crossed study of 10 parts and 3 persons that textbooks reprint, the
// upper 95 % end of the gauge's variance, estimated as 1.8, is
//
//	27.0   modified large sample
//	 4.7   Satterthwaite
//
// since three persons say next to nothing of how persons differ. In 10,000 simulated studies of that
// size, persons differing as much as repeats, the first held the truth in 93.8 % and lay below it in
// 2.9 %, the second in 86.9 and 12.8 %. [Component.Interval] is the first; the degrees of freedom of a Component, which
// a budget goes on with, are Satterthwaite's.
//
// # Ranges, drift, linearity
//
// [ByRanges] is the older way by averages and ranges. It is blind to the interaction: of the study above it
// makes a gauge of 1.03 where the analysis finds 1.34.
//
// [Linear] is the error of a dial over its travel from three or more rings, with its doubt.
//
// # Many parts
//
// A shop with hundreds of bores may ask what its gauge lets through: [Process.Risks] are the
// consumer's and the producer's risk of sorting, [Process.GuardBand] how far inside the limits to
// accept, [Process.Given] what one reading means for a part of a known process (JCGM 106:2012).
// For one engine none of that is wanted: uncertainty.Judge promises its risk whatever the bore is.
//
// # Units
//
// Readings and results are lengths; a trial may hold sizes or deviations, as long as all of a study are
// of one kind. Degrees of freedom need not be whole. All intervals are of 95 %.
//
// # Cautions
//
// A study shows what varied while it was made: this gauge, these persons, that day. It does not show a
// wrong setting ring, a warm cylinder, a worn dial over another part of its travel, or what a worn wall
// does to the anvils: ten readings of a clean ring are the best that the gauge will ever do. Where all
// readings are alike, the dial is coarser than the hand, and its resolution is the doubt.
//
// # Sources
//
//   - Searle, S. R., Casella, G., McCulloch, C. E., Variance Components, 1992, for analysis of variance with
//     unequal numbers; from memory.
//   - Graybill, F. A., Wang, C.-M., Confidence intervals on nonnegative linear combinations of variances,
//     J. American Statistical Association 75 (1980) 869–873; Ting, N., Burdick, R. K., and others, Confidence
//     intervals on linear combinations of variance components that are unrestricted in sign, J. Statistical
//     Computation and Simulation 35 (1990) 135–143; from memory, and held to simulations.
//   - JCGM 100:2008 H.5, analysis of variance; JCGM 106:2012; clause numbers of the latter from memory.
//   - NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.5 and 2.4.
package study
