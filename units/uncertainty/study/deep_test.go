// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package study_test

import "testing"

// Intervals at full size, a minute: go test -tags deep -run Deep -v
func TestDeepCoverage(t *testing.T) {
	for _, x := range truths() {
		checkCover(t, x, 10_000)
	}
}
