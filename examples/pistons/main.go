// SPDX-License-Identifier: BSD-3-Clause

// Pistons is a lesson: which piston goes into which bore.
package main

import (
	"fmt"
	"log"
	"math"

	"borewright.example/bore/fit"
	"borewright.example/units"
)

var mm = units.MustParseLength

// Change these. Invented data: four bores of a pump engine as finished, four pistons as measured across
// the pin, all at 20 °C.
var (
	bores   = []units.Length{mm("78.510 mm"), mm("78.514 mm"), mm("78.518 mm"), mm("78.522 mm")}
	pistons = []units.Length{mm("78.462 mm"), mm("78.452 mm"), mm("78.468 mm"), mm("78.458 mm")}
	window  = units.Limits{Min: mm("0.040 mm"), Max: mm("0.060 mm")}
)

func main() {
	fmt.Println("MATCHING PISTONS: sort both")
	fmt.Printf("\nThe question: %d bores, %d pistons, a clearance of %v. Which into which?\n", len(bores), len(pistons), window)
	m := must(fit.Matching{Bores: bores, Pistons: pistons, Window: window}.Match())

	fmt.Println("\n1  Clearance     C = D − P of every piston in every bore, µm")
	fmt.Print("                 ")
	for _, p := range pistons {
		fmt.Printf("%10s", size(p))
	}
	fmt.Println()
	for i, b := range bores {
		fmt.Printf("   %d  %s ", i+1, size(b))
		for _, p := range pistons {
			fmt.Printf("%10d", (b-p)/units.Micrometre)
		}
		fmt.Println()
	}
	fmt.Println("\n2  The measure     root of the mean of (C − middle)²")
	fmt.Printf("   by number %s, matched %s\n", micro(m.OffByNumber), micro(m.Off))

	fmt.Println("\nON THE LINE (a mark is a micrometre from 30 to 70; ▒ the window, ● the piston)")
	fmt.Println("   by number")
	draw(m.ByNumber)
	fmt.Println("   matched")
	draw(m.Pairs)

	fmt.Println("\nA SECOND WAY: try all of them")
	best, worst, inside, count := math.Inf(1), 0.0, 0, 0
	middle, _ := window.Middle()
	order := append([]units.Length(nil), pistons...)
	var try func(k int)
	try = func(k int) {
		if k < len(order) {
			for i := k; i < len(order); i++ {
				order[k], order[i] = order[i], order[k]
				try(k + 1)
				order[k], order[i] = order[i], order[k]
			}
			return
		}
		sum, all := 0.0, 1
		for i, p := range order {
			off := (bores[i] - p - middle).In(units.Micrometre)
			sum += float64(off * off)
			if !window.Contains(bores[i] - p) {
				all = 0
			}
		}
		rms := math.Sqrt(sum / float64(len(order)))
		best, worst = min(best, rms), max(worst, rms)
		count, inside = count+1, inside+all
	}
	try(0)
	fmt.Printf("   of %d ways %d keep every clearance in the window; the best is off by %.2f µm, the worst by %.2f µm\n", count, inside, best, worst)
	fmt.Printf("   the library: %s. Why sorting wins: uncross two pairs that cross, and the two clearances\n   come closer together while their sum stays.\n", micro(m.Off))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	left := append([]units.Length(nil), pistons...)
	for i, b := range bores { // each bore in turn takes what suits it best
		k := i
		for j := i; j < len(left); j++ {
			if (b - left[j] - middle).Abs() < (b - left[k] - middle).Abs() {
				k = j
			}
		}
		left[i], left[k] = left[k], left[i]
	}
	fmt.Print("   • Each bore in turn takes what suits it best, and the last takes what is left:")
	for i, b := range bores {
		fmt.Printf(" %d", (b-left[i])/units.Micrometre)
	}
	fmt.Println(" µm.")
	fmt.Println("   • Measured along the pin: skirts are ground oval, and the clearance comes out too large by tenths.")
	fmt.Printf("   • A bore still warm from the hone: 5 K of iron are %.1f µm of a window of %v.\n", 5*11.4e-6*bores[0].In(units.Micrometre), window.Max-window.Min)
	fmt.Println("\nCAUTION: mark each piston for its bore, and its front. Weigh them too: the maker says how closely\nthey must agree.")
}

// draw shows each clearance between 30 and 70 µm.
func draw(pairs []fit.Fitted) {
	for _, p := range pairs {
		line := ""
		for l := 30 * units.Micrometre; l <= 70*units.Micrometre; l += units.Micrometre {
			switch {
			case l == p.Clearance.Round(units.Micrometre):
				line += "●"
			case window.Contains(l):
				line += "▒"
			default:
				line += "·"
			}
		}
		fmt.Printf("   bore %d, piston %d  %s %d µm\n", p.Bore+1, p.Piston+1, line, p.Clearance/units.Micrometre)
	}
}

func size(l units.Length) string { return l.Format(units.Millimetre, 3) }

func micro(l units.Length) string { return fmt.Sprintf("%.2f µm", l.In(units.Micrometre)) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
