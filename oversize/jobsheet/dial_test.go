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
		var text strings.Builder
		if err := mustPlan(t, j).WriteText(&text); err != nil {
			t.Fatal(err)
		}
		if !strings.Contains(text.String(), "DIAL:") || strings.Contains(text.String(), "plus for larger, all cold: ") != said {
			t.Errorf("dial %v: %.2000s", dial, text.String())
		}
	}
}
