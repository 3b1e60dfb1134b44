// SPDX-License-Identifier: BSD-3-Clause

// Package uncertainty carries the doubt of a measurement into the decision that rests on it.
//
// A gauge set on a ring, at the shop's temperature, read by one person, decides whether an
// engine is bored. This package has the standard arithmetic of that doubt: how large it is
// ([Budget], [Propagate], [Describe] and the helpers of type B), how to write it down
// ([Estimate]), and which of three answers it leaves ([Judge] and its kin, [Verdict]). Whoever
// has no doubt to state leaves Std at 0: such an estimate is exact and is always decided.
//
// # Numbers and units
//
// What is decided upon is a [units.Length]. Inside a budget or a model stand plain numbers, since
// inputs may be degrees and microradians: each Std in the unit of its input, each sensitivity in
// units of the result per unit of the input, each contribution in the unit of the result.
// [Budget.Estimate] is the way from there to lengths. Degrees of freedom of 0 stand for
// infinitely many: a standard uncertainty known without doubt. Below 1 they are refused.
// NaN and infinities are refused where they come in and never come out.
//
// # How large: the law of propagation
//
// For a result y = f(x₁, x₂, …) with sensitivities cᵢ = ∂f/∂xᵢ (JCGM 100:2008 5.1.2, 5.2.2):
//
//	u² = Σ (cᵢuᵢ)² + 2 ΣΣ cᵢcⱼuᵢuⱼrᵢⱼ
//	ν  = u⁴ / Σ (cᵢuᵢ)⁴/νᵢ         effective degrees of freedom (G.4.1)
//	U  = k·u                       expanded; k from Student's t for ν (6.2, G.3)
//
// uᵢ comes from repeats (type A, 4.2: [Describe], [FromRepeats], [Pool]) or from what is known
// otherwise (type B, 4.3: [Rectangular], [Triangular], [UShaped], [Resolution],
// [FromCertificate]). ν is not cut to a whole number here. Where
// sensitivities vanish, the next order counts, and a curved model shifts its mean: [SecondOrder]
// (5.1.2 note, H.1.7). A straight line through readings, such as a dial's error over its travel
// or wear over time, is [FitLine].
//
// # What is decided: three answers
//
// A measured value y with standard uncertainty u and a limit L leave three answers: the true
// value is [Within], it is [Beyond], or it is [Undecided] at the risk one is ready to take. A
// [Risk] has two parts, each a promise whatever the true value is:
//
//	Accept   a true value beyond the limits is called within in at most this share of cases
//	Reject   a true value within the limits is called beyond in at most this share of cases
//
// With no prior the true value is y + u·T, T being Student's t (the normal distribution for
// ν = 0), and its probability of lying within the limits is (JCGM 106:2012 7.2 to 7.4)
//
//	P = F((max − y)/u) − F((min − y)/u)          F: distribution function of T
//
// Within: 1 − P ≤ Accept. That 1 − P is no smaller than the chance of a true value at either
// limit to be measured so far inside, so the promise holds for both limits at once. For one
// limit it is guarded acceptance with the guard band t(1 − Accept)·u (8.3.2).
//
// Beyond: not where P ≤ Reject, for in a window narrow against u P is small wherever y falls,
// and a gauge too coarse for the job would condemn every part. Instead p ≤ Reject, p being the
// greatest chance of any true value in the window to be measured as far from its middle as y
// was. With a window of middle m and half-width h that is a true value at the nearer limit:
//
//	p = 1 − F((|y − m| − h)/u) + F(−(|y − m| + h)/u)
//
// For one limit the second term vanishes and p = P. A window shrunk to a point is tested on two
// sides, a wide one on one, so that between p for the narrow and the wide window there may lie
// a factor of up to 2, and a wider window may be found Beyond where a narrower one inside it is
// not yet. For ν = 0 the promise of Reject is kept exactly at a limit; with Student's t it is
// kept with something to spare in a window of a few u (for ν = 1 a quarter of the risk, for
// ν = 10 a twentieth, by numerical integration).
//
// Where ν is an effective one, the promise is as good as the formula for it. It is poor where a
// component of very few degrees of freedom is the largest: beside a known component of about a
// third of its size the worst case of a promised 5 % is
//
//	ν of the component    1       2       4       9
//	5 % becomes           8.4 %   6.2 %   5.4 %   5.1 %
//	1 % becomes           4.9 %   2.4 %   1.4 %   1.1 %
//
// So take five readings rather than two, or a spread pooled from earlier work.
//
// Normal errors, and those of Student's t, keep the promise at any risk. Other errors that budgets are made
// of do so in part. Of one rectangular or U-shaped component that dominates its budget the tail is lighter
// than the normal one up to a risk of 6.6 %, and heavier beyond: for such risks the verdict is given by the
// heaviest of the three, so that the promise holds whichever it is (a resolution by itself, the limit at its
// half step, was wrong in 26 % of a promised 20 %). Conform stays that of the normal error. Two of like size
// are the worst of mixtures, by a sum over all pairs:
//
//	promised            3 %      5 %      7 %      10 %      20 %
//	two rectangular     2.7 %    5.4 %    7.7 %     9.4 %    14 %
//	two U-shaped        1.9 %    5.9 %    8.7 %    10.6 %    15 %
//
// All probabilities are rounded to 1e-9 before they are compared, so that every machine decides
// alike. The limits belong to their window; a value on a limit is never Beyond.
//
// # Differences, the greatest of several, and ranges
//
// An absolute difference, such as ovality from two axes, is judged by its signed value in the
// window from −limit to limit ([JudgeDifference]): its absolute value alone is biased upwards.
//
// The greatest of n true values is within a limit where each of them is, at the full Accept: a
// wrong answer needs one at the very place that is beyond (intersection-union test). It is beyond
// where one of them is at Reject/n, since every one had its chance to look so (union-intersection
// test, Bonferroni's inequality). Neither asks whether the errors are independent.
// borewright.example/bore judges the sizes of a bore so.
//
// The range of n true values, each read once with standard error s ([JudgeRange]): let R be the
// true range, at places i and j, and r the observed one, of errors e.
//
//   - r ≥ R + eᵢ − eⱼ, whichever readings are the observed extremes. So 1 − P of the difference
//     of two readings, with u = √2·s, serves for Within, without a share for the choice of
//     extremes. A sharper test exists that counts on the noise to widen the range; it would call
//     within the more readily the larger s is stated, and s is more often stated too large than
//     too small. Here a larger s never decides anything.
//   - The set of errors for which the range stays below r is convex and symmetric, and the normal
//     density log-concave, so by Prékopa's theorem the chance of a range below r is least, over
//     all true values of range at most L, at an extreme point of that set: k values at L and
//     n − k at 0. Of those the even split, k = n/2, is the least (by computation for n up to
//     30). Its chance of a range of r or more, an integral over the least reading, is p for
//     Beyond. For n = 2 this is p of the difference; as L goes to 0 it becomes the studentised
//     range. With Student's t it is averaged over σ, and the promise is kept by numerical
//     integration for n of 2, 3, 6 and 20, ν of 2 to 30 and risks down to 0.002. It needs the errors of different readings to be independent: what all readings
//     share (setting, mean temperature) does not belong in s, and does not matter.
//
// # Named rules
//
// [JudgeExpanded] is the rule "U inside, U outside" of ISO 14253-1 and, with a factor of 0, simple
// acceptance (JCGM 106:2012 8.2). Its findings state the risks that they amount to.
//
// # What would settle it, and sharing a risk
//
// [Finding.Settle] tells which standard uncertainty, or how many times as many readings, would
// turn Undecided into an answer if the value stayed; on the limit itself nothing does.
//
// Every decision of a job has a chance to go wrong. [Risk.Share] divides a risk among limits,
// bores and passes, and each finding says what its risk is per.
//
// # Cautions
//
// A verdict is about what was measured, where it was measured. It knows nothing of places
// without a reading, of a form that the gauge is blind to, or of a doubt left out of the budget.
// Undecided is not a weak Within: do not reassemble on it. The maker's manual and its limits go
// before any rule here.
//
// # Sources
//
//   - JCGM 100:2008, Evaluation of measurement data: Guide to the expression of uncertainty in
//     measurement (GUM), and JCGM 101:2008, its first supplement.
//   - JCGM 106:2012, The role of measurement uncertainty in conformity assessment; clause numbers
//     from memory.
//   - ISO 14253-1:2017, Decision rules for verifying conformity or nonconformity with
//     specifications; from memory.
//   - NIST/SEMATECH e-Handbook of Statistical Methods; NIST Technical Note 1297.
//   - Prékopa, A., On logarithmic concave measures and functions, Acta Sci. Math. 34 (1973)
//     335–343, for convexity; from memory.
package uncertainty
