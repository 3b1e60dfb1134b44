// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"strings"
	"testing"
)

// TestDialThatNobodyTellsOf: a deviation is said with the way it runs, where the job does not say which way the dial does.
func TestDialThatNobodyTellsOf(t *testing.T) {
	for dial, said := range map[any]bool{nil: true, "plus is larger": false, "plus is smaller": false} {
		j := demoTrees(t)["pump"]
		put(t, j, "gauge.dial", dial)
		text := asPrinted(t, mustPlan(t, j))
		if !strings.Contains(text, "DIAL:") || strings.Contains(text, "plus for larger, all cold: ") != said {
			t.Errorf("dial %v: %.2000s", dial, text)
		}
	}
}
