// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"strings"
	"testing"

	"borewright.example/bore/hone"
	"pgregory.net/rapid"
)

// Whatever is read prints a text that reads back to the same text; whatever is refused says so
// under the package's name.
func fuzzText[V interface {
	comparable
	String() string
}](f *testing.F, parse func(string) (V, error), seeds ...string) {
	for _, s := range seeds {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		v, err := parse(s)
		if err != nil {
			if !strings.HasPrefix(err.Error(), "hone: ") {
				t.Fatalf("%q: %v", s, err)
			}
			return
		}
		back, err := parse(v.String())
		if err != nil || back.String() != v.String() {
			t.Fatalf("%q is %v and comes back as %v, %v", s, v, back, err)
		}
	})
}

func FuzzParseCrosshatch(f *testing.F) {
	fuzzText(f, hone.ParseCrosshatch,
		"45° included", "22.5° from square", "67.5 deg from axis", "135° across axis", // the four conventions
		"45°", "45", // no convention, no unit
		"0.000000000001° from square", "89.999999999999° from square", // the ends
		"180° included", "-1° included", "1e9° included", " included") // beyond them
}

func FuzzParseStroking(f *testing.F) {
	fuzzText(f, hone.ParseStroking, "60 cycles/min", "120 strokes/min", "1 cycle/s", "60/min", "0 strokes/s", "1000000 cycles/min", "0.000000000001 strokes/s")
}

func FuzzParseSpindleRange(f *testing.F) {
	fuzzText(f, hone.ParseSpindleRange, "60 to 700 rev/min", "1 Hz to 700 rpm", "650 rev/min", " to ", "5 to 5 rev/min", "700 to 60 rev/min")
}

func FuzzParseStrokingRange(f *testing.F) {
	fuzzText(f, hone.ParseStrokingRange, "40 to 90 cycles/min", "60 strokes/min to 90 cycles/min", "60 cycles/min", "40 to 90", "to", "90 to 40 strokes/s")
}

func FuzzConventions(f *testing.F) { f.Fuzz(rapid.MakeFuzz(checkConventions)) }
func FuzzInverses(f *testing.F)    { f.Fuzz(rapid.MakeFuzz(checkInverses)) }
func FuzzFind(f *testing.F)        { f.Fuzz(rapid.MakeFuzz(checkFind)) }
func FuzzRetrace(f *testing.F)     { f.Fuzz(rapid.MakeFuzz(checkRetrace)) }
