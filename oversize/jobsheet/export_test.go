// SPDX-License-Identifier: BSD-3-Clause

package jobsheet

// OnOneStep is the chance that two readings of one place show the same.
var OnOneStep = onOneStep

// AreCopies asks it of readings by one gauge, which scatters by so many of its steps.
func AreCopies(by Gauge, of, again []Reading, scatter float64) bool {
	return areCopies(by.looks(of), by.looks(again), scatter)
}
