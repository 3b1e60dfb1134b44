// SPDX-License-Identifier: BSD-3-Clause

// Package simulate propagates distributions through a model by Monte Carlo (JCGM 101:2008). It takes
// the same model as uncertainty.Propagate.
//
// The law of propagation replaces a model by a plane and a result by a normal distribution. That
// serves where inputs are many, none leads, and the model hardly bends over their doubt; in a shop, nearly
// always. It fails where a sensitivity is zero at the best estimates (the square of an offset, the
// product of two small errors, 1 − cos of a tilt), where one rectangle is larger than all the rest, and
// where a quantity cannot be negative. Here every input is drawn from its own distribution, the model
// is worked out a million times, and the results are sorted:
//
//	mean, u    mean and standard deviation of the results           (7.6)
//	symmetric  as many results below the interval as above it       (7.7.2)
//	shortest   the shortest of all that hold as many                 (7.7.4)
//
// [Simulation.Run] takes a number of trials, [Simulation.Adapt] a number of steady digits (7.9),
// [Result.Validate] says whether the first order would have done (8.1).
//
// # The same digits everywhere
//
// There is no randomness here but the Seed. A simulation with the same seed draws the same inputs, bit by
// bit, on every machine and in every version that keeps to this promise: draws are whole numbers and +,
// −, ×, ÷ and √ alone, with no product fused into a sum. A model that takes sines or logarithms, or
// lets the compiler fuse, may differ in its last bits, and the digits that a result is good for do not.
//
// Trials come in chunks of 10,000, each with a stream of its own by its number, so that a caller with
// several cores may fill them side by side with [Simulation.Chunk] and put them together with
// [Summarise]; the answer is that of Run. Nothing here starts a goroutine.
//
// # How many trials
//
// The standard error of the mean is u/√n, that of u about u/√(2n) for results near normal, that of an
// end of a 95 % interval about 0.0027·u for a million. The ends of the shortest interval are less sure
// than its length.
//
// # Inputs
//
// Of each input its best estimate, its Std and the [Shape] of its distribution are wanted. What is
// known of an input decides: repeats give Student's t, a certificate a normal distribution, a
// division or a catalogue's bound a rectangle, a swinging temperature an arcsine. A t of two degrees of
// freedom, from three repeats, has no standard deviation and is refused: take a fourth reading.
//
// # Cautions
//
// Many trials make the arithmetic sure, and not the model, nor what was put in. A doubt that was
// left out is left out a million times.
//
// # Sources
//
//   - JCGM 101:2008, Evaluation of measurement data: Supplement 1 to the GUM, Propagation of distributions using a
//     Monte Carlo method; clause numbers from memory.
//   - Marsaglia, G., Tsang, W. W., The ziggurat method for generating random variables, J. Statistical Software
//     5 (2000) 8; A simple method for generating gamma variables, ACM Trans. Mathematical Software 26 (2000) 363.
//   - Steele, G. L., Lea, D., Flood, C. H., Fast splittable pseudorandom number generators, OOPSLA 2014.
package simulate
