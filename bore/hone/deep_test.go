// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package hone_test

import "testing"

// The simulation of TestSizingKeepsToTheRisk at full size.
func TestDeepSizingKeepsToTheRisk(t *testing.T) {
	for _, w := range workshops() {
		w.run(t, 20_000)
	}
}
