// SPDX-License-Identifier: BSD-3-Clause

// Pistons is a lesson: which piston goes into which bore.
package main

import (
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/material"
)

var mm = units.MustParseLength

// Change these. Invented data: four bores of a pump engine as finished, four pistons as measured across
// the pin, all at 20 °C.
var (
	bores   = []units.Length{mm("78.510 mm"), mm("78.514 mm"), mm("78.518 mm"), mm("78.522 mm")}
	pistons = []units.Length{mm("78.462 mm"), mm("78.452 mm"), mm("78.468 mm"), mm("78.458 mm")}
	window  = units.Limits{Min: mm("0.040 mm"), Max: mm("0.060 mm")}
)

var middle, _ = window.Middle()

func main() {
	fmt.Println("MATCHING PISTONS: sort both")
	fmt.Printf("\nThe question: %d bores, %d pistons, a clearance of %v. Which into which?\n", len(bores), len(pistons), window)
	m := must(fit.Matching{Bores: bores, Pistons: pistons, Window: window}.Match())

	fmt.Println("\n1  Clearance     C = D − P of every piston in every bore, µm")
	fmt.Print("            ")
	for _, p := range pistons {
		fmt.Printf("%12s", size(p))
	}
	for _, b := range bores {
		fmt.Printf("\n   %s", size(b))
		for _, p := range pistons {
			fmt.Printf("%12d", (b-p)/units.Micrometre)
		}
	}
	fmt.Println()
	fmt.Println("\n2  How far off the middle M     √(mean of (C − M)²);  a mark is a micrometre from 30 to 70, ▒ the window, ● C")
	show("by number", m.ByNumber, m.OffByNumber)
	show("matched", m.Pairs, m.Off)

	fmt.Println("\nA SECOND WAY: try all of them")
	best, worst, inside, count := math.Inf(1), 0.0, 0, 0
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
		for i, b := range bores {
			off := (b - order[i] - middle).In(units.Micrometre)
			sum += float64(off * off)
			if !window.Contains(b - order[i]) {
				all = 0
			}
		}
		rms := math.Sqrt(sum / float64(len(bores)))
		best, worst = min(best, rms), max(worst, rms)
		count, inside = count+1, inside+all
	}
	try(0)
	fmt.Printf("   of %d ways %d keep every clearance in the window; the best is off by %.2f µm, the worst by %.2f µm\n", count, inside, best, worst)
	fmt.Println("   Why sorting wins: uncross two pairs that cross, and the two clearances come closer together\n   while their sum stays.")

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
	fmt.Println("   • Measured along the pin: skirts are ground oval, and the clearance comes out too large by\n     tenths of a millimetre.")
	fmt.Printf("   • A bore still warm from the hone: 5 K of iron are %.1f µm of a window of %v.\n", 5*material.GreyIron().Expansion.In(units.PerKelvin)*bores[0].In(units.Micrometre), window.Max-window.Min)
	fmt.Println("\nCAUTION: mark each piston for its bore, and its front. Weigh them too: the maker says how closely\nthey must agree.")
}

// show draws the clearances of a way to match, and how far they lie from the middle.
func show(way string, pairs []fit.Fitted, off units.Length) {
	var squares []string
	for _, p := range pairs {
		fmt.Printf("   bore %d, piston %d  ", p.Bore+1, p.Piston+1)
		for l := 30 * units.Micrometre; l <= 70*units.Micrometre; l += units.Micrometre {
			mark := "·"
			if window.Contains(l) {
				mark = "▒"
			}
			if l == p.Clearance.Round(units.Micrometre) {
				mark = "●"
			}
			fmt.Print(mark)
		}
		fmt.Printf(" %d µm\n", p.Clearance/units.Micrometre)
		squares = append(squares, fmt.Sprintf("%d²", (p.Clearance-middle).Abs()/units.Micrometre))
	}
	fmt.Printf("   %s: √((%s)/%d) = %.2f µm\n", way, strings.Join(squares, " + "), len(pairs), off.In(units.Micrometre))
}

func size(l units.Length) string { return l.Format(units.Millimetre, 3) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
