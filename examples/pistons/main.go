// SPDX-License-Identifier: BSD-3-Clause

// Pistons is a lesson: which piston goes into which bore.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"slices"
	"strings"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/material"
)

var mm = units.MustParseLength

// Change these. Invented data: four bores of a pump engine as finished, four pistons as measured across
// the pin, all at 20 °C.
var shipped = data{
	bores:   []units.Length{mm("78.510 mm"), mm("78.514 mm"), mm("78.518 mm"), mm("78.522 mm")},
	pistons: []units.Length{mm("78.462 mm"), mm("78.452 mm"), mm("78.468 mm"), mm("78.458 mm")},
	window:  units.Limits{Min: mm("0.040 mm"), Max: mm("0.060 mm")},
}

type data struct {
	bores, pistons []units.Length
	window         units.Limits
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	m := must(fit.Match(d.bores, d.pistons, d.window))
	if len(d.pistons) > 8 {
		must(0, fmt.Errorf("%d pistons; want 8 at most, since all ways are to be tried", len(d.pistons)))
	}
	middle, _ := d.window.Middle()

	fmt.Fprintln(w, "MATCHING PISTONS: sort both")
	fmt.Fprintf(w, "\nThe question: %d bores, %d pistons, a clearance of %v. Which into which?\n", len(d.bores), len(d.pistons), d.window)
	fmt.Fprintln(w, "\n1  Clearance, in µm     C = D − P of every pair     D: bore; P: piston")
	fmt.Fprint(w, "            ")
	for _, p := range d.pistons {
		fmt.Fprintf(w, "%12s", size(p))
	}
	low, high := d.window.Min, d.window.Max
	for _, b := range d.bores {
		fmt.Fprintf(w, "\n   %s", size(b))
		for _, p := range d.pistons {
			fmt.Fprintf(w, "%12s", um(b-p))
			low, high = min(low, b-p), max(high, b-p)
		}
	}
	step := units.Micrometre
	for high-low > 60*step {
		step *= 2
	}
	fmt.Fprintf(w, "\n\n2  How far off the middle of the window, M = %s µm     √(mean of (C − M)²)\n", um(middle))
	fmt.Fprintf(w, "\nCLEARANCES (a mark is %v, from %s µm on; ▒ the window, ● C)\n", step, um(low))
	show := func(way string, pairs []fit.Pair, off units.Length) {
		var squares []string
		inside := 0
		for _, p := range pairs {
			line := ""
			for l := low; l < high+step; l += step {
				switch {
				case p.Clearance >= l && p.Clearance < l+step:
					line += "●"
				case l+step > d.window.Min && l <= d.window.Max:
					line += "▒"
				default:
					line += "·"
				}
			}
			fmt.Fprintf(w, "   bore %d, piston %d  %s %s µm\n", p.Bore+1, p.Piston+1, line, um(p.Clearance))
			squares = append(squares, fmt.Sprintf("%s²", um((p.Clearance-middle).Abs())))
			if d.window.Contains(p.Clearance) {
				inside++
			}
		}
		fmt.Fprintf(w, "   %s: √((%s)/%d) = %.2f µm, %d of %d in the window\n", way, strings.Join(squares, " + "), len(pairs), off.In(units.Micrometre), inside, len(pairs))
	}
	show("by number", m.ByNumber, m.OffByNumber)
	show("matched", m.Pairs, m.Off)
	switch {
	case slices.ContainsFunc(m.Pairs, func(p fit.Pair) bool { return !p.Inside }):
		fmt.Fprintln(w, "   No way of pairing has every clearance in the window: hone a bore, or ask for another piston.")
	case m.Off == m.OffByNumber:
		fmt.Fprintln(w, "   As they are numbered they are matched already.")
	}

	fmt.Fprintln(w, "\nA SECOND WAY: try all of them")
	best, worst, inside, count := math.Inf(1), 0.0, 0, 0
	order := slices.Clone(d.pistons)
	var try func(k int)
	try = func(k int) {
		if k < len(d.bores) {
			for i := k; i < len(order); i++ {
				order[k], order[i] = order[i], order[k]
				try(k + 1)
				order[k], order[i] = order[i], order[k]
			}
			return
		}
		sum, all := 0.0, 1
		for i, b := range d.bores {
			off := (b - order[i] - middle).In(units.Micrometre)
			sum += float64(off * off)
			if !d.window.Contains(b - order[i]) {
				all = 0
			}
		}
		rms := math.Sqrt(sum / float64(len(d.bores)))
		best, worst = min(best, rms), max(worst, rms)
		count, inside = count+1, inside+all
	}
	try(0)
	fmt.Fprintf(w, "   the number of ways is %d; %d keep every clearance in the window; the worst is off by %.2f µm,\n   the best by %.2f µm (the library: %.2f µm)\n", count, inside, worst, best, m.Off.In(units.Micrometre))
	if len(d.pistons) == len(d.bores) {
		fmt.Fprintln(w, "   Why sorting wins: uncross two pairs that cross, and the two clearances come closer together\n   while their sum stays.")
	} else {
		fmt.Fprintln(w, "   With pistons to spare sorting alone does not do: the one to leave out is to be found as well.")
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	left := slices.Clone(d.pistons)
	for i, b := range d.bores { // each bore in turn takes what suits it best
		k := i
		for j := i; j < len(left); j++ {
			if (b - left[j] - middle).Abs() < (b - left[k] - middle).Abs() {
				k = j
			}
		}
		left[i], left[k] = left[k], left[i]
	}
	fmt.Fprint(w, "   • Each bore in turn takes what suits it best, and the last takes what is left:")
	for i, b := range d.bores {
		fmt.Fprintf(w, " %s", um(b-left[i]))
	}
	fmt.Fprintln(w, " µm.")
	fmt.Fprintln(w, "   • Measured along the pin: skirts are ground oval, and the clearance comes out too large by\n     tenths of a millimetre.")
	fmt.Fprintf(w, "   • A bore still warm from the hone: 5 K of iron are %.1f µm of a window of %v.\n", 5*material.GreyIron().Expansion.In(units.PerKelvin)*d.bores[0].In(units.Micrometre), d.window.Max-d.window.Min)
	fmt.Fprintln(w, "\nCAUTION: mark each piston for its bore, and its front. Weigh them too: the maker says how closely\nthey must agree.")
}

func size(l units.Length) string { return l.Format(units.Millimetre, 3) }

// um prints micrometres, to a tenth where they are not whole.
func um(l units.Length) string {
	return strings.TrimSuffix(strings.TrimSuffix(l.Format(units.Micrometre, 1), " µm"), ".0")
}

// must returns x, or ends the lesson there.
func must[T any](x T, err error) T {
	if err != nil {
		panic(refusal{err})
	}
	return x
}

type refusal struct{ error }

// refuse ends the page where the numbers cannot be, with the reason.
func refuse(w io.Writer) {
	switch r := recover().(type) {
	case nil:
	case refusal:
		fmt.Fprintf(w, "\nNO ANSWER FOR THESE NUMBERS: %v.\nMend them on top of the file, and run it again.\n", r)
	default:
		panic(r)
	}
}
