// SPDX-License-Identifier: BSD-3-Clause

package hone

// What the tests look at from outside.
const HandLimit = handLimit

var (
	ParseSpindleRange  = parseSpindleRange
	ParseStrokingRange = parseStrokingRange
	AcrossAxis         = acrossAxis
	FromAxis           = fromAxis
	PeakAxial          = Setting.peakAxial
	HasSpindle         = SpindleRange.contains
	HasStroking        = StrokingRange.contains
)
