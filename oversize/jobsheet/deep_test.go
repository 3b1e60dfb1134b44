// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package jobsheet_test

import "testing"

// TestDeepMistakes is TestMistakesStayWithinTheRisk at full size.
func TestDeepMistakes(t *testing.T) {
	checkMistakes(t, 70_000, 2)
}
