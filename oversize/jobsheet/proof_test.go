// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet"
)

// TestPastSizeByItsProof: of two cylinders that share a size the second is proved. Where it came out too large the first, still
// to be bored, waits, for the size may change, and the sheet says what would fit; where it came out too small it is honed on.
func TestPastSizeByItsProof(t *testing.T) {
	const past, small = "Past its size:", "Too small, or not proven to be large enough:"
	for _, c := range []struct{ diameter, says string }{{"", ""}, {"80.600 mm", past}, {"80.480 mm", small}} {
		j := honest{bore: 80, stroke: 76, cylinders: 2, bored: true, r: rand.New(rand.NewPCG(3, 7))}.tree(true)
		put(t, j, "cylinders.0.proof", nil)
		put(t, j, "counted.proof", len(cylinderOf(j, 1)["proof"].([]any)))
		if c.diameter != "" {
			put(t, j, "cylinders.1.proof.0.diameter", c.diameter)
			put(t, j, "cylinders.1.proof.0.confirmed", true)
		}
		s := mustPlan(t, j)
		if r := rowOf(t, s, "cylinders[0].work"); (r.Step == jobsheet.StepWaitForOthers) != (c.says == past) {
			t.Errorf("second at %q: the first is to %v", c.diameter, r.Step)
		}
		b := asPrinted(t, s)
		text := unbroken(b)
		for _, word := range []string{past, small} {
			if strings.Contains(text, word) != (word == c.says) {
				t.Errorf("second at %q: %q %t", c.diameter, word, word != c.says)
			}
		}
	}
}
