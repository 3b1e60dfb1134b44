// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package form_test

import (
	"flag"
	"testing"

	"pgregory.net/rapid"
)

// The properties of the circles, ten thousand draws of each.
func TestDeepCircles(t *testing.T) {
	if err := flag.Set("rapid.checks", "10000"); err != nil {
		t.Fatal(err)
	}
	for name, check := range map[string]func(*rapid.T){
		"order": checkOrder, "gaps": checkGaps, "invariance": checkInvariance, "contacts": checkContacts,
	} {
		t.Run(name, func(t *testing.T) { rapid.Check(t, check) })
	}
}
