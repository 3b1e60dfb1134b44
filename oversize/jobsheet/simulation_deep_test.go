// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package jobsheet_test

import (
	"flag"
	"testing"
)

var (
	engines = flag.Int("engines", 100_000, "how many to draw")
	seed    = flag.Uint64("seed", 2, "of what is drawn, so that runs side by side draw others")
)

// TestDeepReadyIsTrue is TestReadyIsTrue at full size.
func TestDeepReadyIsTrue(t *testing.T) { readyIsTrue(t, *engines, *seed) }
