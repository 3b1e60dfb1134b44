// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package oversize_test

import "testing"

// TestDeepMistakes is TestMistakesStayWithinTheRisk at full size.
func TestDeepMistakes(t *testing.T) {
	const engines = 20_000
	for seed := range uint64(2) {
		worn, loose := mistakes(t, engines, seed+10)
		t.Logf("seed %d: of %d engines %d left with worn wall, %d kept loose", seed+10, engines, worn, loose)
		if most := atMost(engines, 0.05); worn > most || loose > most {
			t.Errorf("of %d engines %d left with worn wall, %d kept loose; at most %d", engines, worn, loose, most)
		}
	}
}
