// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

// OnOneStep is the chance that two readings of one place show the same.
var OnOneStep = onOneStep

// NoSecondLook asks it of readings by one gauge, which scatters by so many of its steps.
func NoSecondLook(by Gauge, of, again []Reading, scatter float64) bool {
	_, copied := areShifted(by.looks(of), by.looks(again), scatter)
	return copied
}
