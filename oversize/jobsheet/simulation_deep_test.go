// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package jobsheet_test

import "testing"

// TestDeepReadyIsTrue is TestReadyIsTrue at full size.
func TestDeepReadyIsTrue(t *testing.T) { readyIsTrue(t, 17_000, 2) }
