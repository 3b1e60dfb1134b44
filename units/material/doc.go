// SPDX-License-Identifier: BSD-3-Clause

// Package material has the properties of workshop metals and the sizes of parts that are not at 20 °C.
//
// # Sizes and temperatures
//
// A size is stated at 20 °C (ISO 1). A part that is l20 there has at the temperature t the size
//
//	l   = l20·(1 + α·(t − 20 °C))     (1)
//	l20 = l/(1 + α·(t − 20 °C))       (2)
//
// with α the mean coefficient of linear expansion between 20 °C and t. [Material.SizeAt] and [Material.SizeAt20] are
// these two, each the inverse of the other; the usual shortcut l·(1 − α·(t − 20 °C)) is not, and misses a bore of 87.5
// mm at 35 °C by 2.6 nm. A temperature that is not given is asked for: where it is really unknown, a wide one is a
// guess whose doubt belongs in the budget.
//
// # A comparison
//
// A dial gauge does not measure a bore, it compares it with a setting standard, and four temperatures take part. See
// [Comparison] for the model, (3), and [Comparison.Sensitivities] for what each of them is worth: in a 90 mm bore of
// iron or against a standard of steel about 1 µm a kelvin, in one of aluminium 2 µm.
//
// # How far to trust a figure
//
// Expansion is the mean over a range, and grows with it: for one steel (AISI 1050) three handbooks print 11.2e-6/K from
// 0 to 100 °C, 12.1 to 200 °C and 13.5 to 400 °C (NIST Engineering Metrology Toolbox, temperature tutorial). From and
// To say what a figure is the mean over, where its source does. Within is the half-width to allow for: 1e-6/K, what ISO
// 3650 allows to gauge blocks of steel (from memory), or more where sources differ more.
//
// Expansions marked as read were read in the source named; everything marked as from memory is typical, and to be
// looked up before anything depends on it. The maker's figure always wins. Strength depends on section, heat treatment
// and temperature: nothing here is an allowable stress.
package material
