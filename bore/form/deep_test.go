// SPDX-License-Identifier: BSD-3-Clause

//go:build deep

package form_test

import (
	"flag"
	"math/rand/v2"
	"testing"

	"pgregory.net/rapid"
)

// The properties of the circles, ten thousand draws of each.
func TestDeepCircles(t *testing.T) {
	if err := flag.Set("rapid.checks", "10000"); err != nil {
		t.Fatal(err)
	}
	for name, check := range map[string]func(*rapid.T){
		"cylinders": checkCylinderOrder, "frame": checkCylinderInvariance, "order": checkOrder, "gaps": checkGaps, "invariance": checkInvariance, "contacts": checkContacts,
	} {
		t.Run(name, func(t *testing.T) { rapid.Check(t, check) })
	}
}

// The promises of the certificates of cylinders against all sets of contacts of 3,000 walls of 8 or 9 points and
// 20 of 12.
func TestDeepContacts(t *testing.T) {
	r := rand.New(rand.NewPCG(18, 1))
	for range 20 {
		checkAllContacts(t, r, 12)
	}
	for range 3000 {
		checkAllContacts(t, r, 9)
	}
}

// A hundred thousand walls have their inscribed cylinder.
func TestDeepInscribed(t *testing.T) { findInscribed(t, rand.New(rand.NewPCG(19, 2)), 100_000) }

func TestDeepForgeries(t *testing.T) { forgeCylinders(t, rand.New(rand.NewPCG(18, 2)), 500, 60) }
