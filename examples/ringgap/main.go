// SPDX-License-Identifier: BSD-3-Clause

// Ringgap is a lesson: a ring's end gap in another bore, what to file off, and what is left when hot.
package main

import (
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a new ring, tried in the setting ring of the workshop before its bore
// was finished.
var (
	tried    = units.MustParseLength("78.500 mm") // the ring lay in this
	goes     = units.MustParseLength("0.15 mm")   // thickest feeler leaf that goes into its gap there
	refuses  = units.MustParseLength("0.20 mm")   // thinnest that does not
	finished = units.MustParseLength("78.512 mm") // the bore as it was finished, at its narrowest
	window   = units.Limits{Min: units.MustParseLength("0.25 mm"), Max: units.MustParseLength("0.40 mm")}
	ringHot  = units.MustParseTemperature("200 °C") // means round the ring and round the wall behind it, guessed
	boreHot  = units.MustParseTemperature("140 °C")
)

func main() {
	iron := material.GreyIron()
	fmt.Println("RING GAP: π for every hundredth")
	fmt.Printf("\nThe question: in %s a leaf of %v goes into the gap and %v does not. Which gap has the\nring in its bore of %s, and what is to be filed for %v?\n", mm(tried), goes, refuses, mm(finished), window)

	fmt.Println("\n1  The gap as tried     anywhere between the leaves: their middle, u = half the step/√3")
	feeler := must(rings.Feeler(goes, refuses))
	fmt.Printf("   g = (%v + %v)/2 = %v\n", goes, refuses, feeler)
	fmt.Println("\n2  In the finished bore     the ring's own length does not change:  Δg = π·ΔD")
	gap := must(rings.Gap{Measured: feeler, Bore: exact(tried)}.In(exact(finished)))
	fmt.Printf("   g = %s + π·(%s − %s) = %s + %s = %v\n", mm(feeler.Value), mm(finished), mm(tried), mm(feeler.Value), mm(gap.Value-feeler.Value), gap)
	fmt.Println("\n3  What to file")
	f := must(rings.File(gap, window, uncertainty.Risk{}))
	fmt.Printf("   as it is the gap is %v its window, and the advice: %v\n", f.Now.Verdict, f.Action)
	fmt.Printf("   to a gap of %s, which takes off %s; measured on the way at", mm(f.Target), mm(f.TakeOff))
	for _, s := range f.Steps {
		fmt.Printf(" %s", mm(s))
	}
	fmt.Println("\n\n4  Hot     Δg = π·d·(αb·ΔTb − αr·ΔTr)")
	heat := rings.Heat{Ring: iron, Bore: iron, RingAt: ringHot, BoreAt: boreHot}
	heat.Ring.Within, heat.Bore.Within = 0, 0
	hot := must(heat.Hot(f.After(), exact(finished)))
	a := iron.Expansion.In(1e-6 * units.PerKelvin)
	fmt.Printf("   = π·%s·%.3ge-6·(%v − %v) = %s;  left: %s\n", mm(finished), a, boreHot.AboveReference(), ringHot.AboveReference(),
		mm(hot.Value-f.Target), mm(hot.Value))

	fmt.Println("\nTHE GAP TO SCALE (a mark is 0.01 mm; │ the ends of the ring, ▒ the maker's window)")
	marks := func(l units.Length) int { return int(l.Round(10*units.Micrometre) / (10 * units.Micrometre)) }
	fmt.Printf("   window    │%s%s\n", strings.Repeat(" ", marks(window.Min)), strings.Repeat("▒", marks(window.Max)-marks(window.Min)))
	for _, row := range []struct {
		name string
		gap  units.Length
	}{{"tried", feeler.Value}, {"finished", gap.Value}, {"filed", f.Target}, {"hot", hot.Value}} {
		fmt.Printf("   %-9s │%s│ %s\n", row.name, strings.Repeat("─", max(0, marks(row.gap))), mm(row.gap))
	}

	fmt.Println("\nA SECOND WAY: the ring is a wire of one length; walk round each bore")
	wire := math.Pi*tried.In(units.Millimetre) - feeler.Value.In(units.Millimetre)
	round := math.Pi * finished.In(units.Millimetre)
	fmt.Printf("   wire π·%s − %.3f mm = %.3f mm; round the bore %.3f mm; gap %.3f mm (the library: %s)\n", mm(tried), feeler.Value.In(units.Millimetre), wire, round, round-wire, mm(gap.Value))
	filed := round - f.Target.In(units.Millimetre)
	hotGap := round*(1+a*1e-6*boreHot.AboveReference().In(units.Kelvin)) - filed*(1+a*1e-6*ringHot.AboveReference().In(units.Kelvin))
	fmt.Printf("   hot, each grown by itself: %.3f mm (the library: %s)\n", hotGap, mm(hot.Value))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	least := must(heat.Least(finished, 0))
	fmt.Printf("   • The gap is set at the worn top. 0.1 mm of taper takes %.3f mm of it lower down.\n", 0.1*math.Pi)
	fmt.Printf("   • The next size of ring in the same bore: 0.25 mm larger has %.3f mm less gap, so its ends overlap.\n", 0.25*math.Pi)
	start := heat
	start.RingAt, start.BoreAt = units.MustParseTemperature("120 °C"), units.MustParseTemperature("40 °C")
	fmt.Printf("   • Too little, so that it butts when hot: here below %s; a minute after a hard start, the ring\n     at %v and the bore at %v (guessed), below %s.\n", mm(least.Value),
		start.RingAt, start.BoreAt, mm(must(start.Least(finished, 0)).Value))
	rules, spread, err := rings.Rules(finished)
	if err != nil {
		log.Fatal(err)
	}
	fmt.Printf("   • A rule of thumb for a limit: %d rules ask for %s to %s in this bore.\n", len(rules), mm(spread.Min), mm(spread.Max))
	fmt.Println("   • Filed out of square, or from the inside out: a coating chips. Metal filed off does not come back.")
	fmt.Println("\nCAUTION: ring edges are sharp and rings fly: eyes guarded. A ring that butts breaks or seizes the\nengine. The maker's window outranks every rule.")
}

func exact(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }

func mm(l units.Length) string { return l.Format(units.Millimetre, 3) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
