// SPDX-License-Identifier: BSD-3-Clause

// Displacement is a lesson: what a rebore does to volume and ratio, and what the head gives back.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/oversize"
	"borewright.example/units"
)

// Change these. Invented data: a two-cylinder irrigation pump, rebored in a village workshop.
var shipped = data{
	before:    units.MustParseLength("78.00 mm"),
	after:     units.MustParseLength("78.50 mm"),
	stroke:    units.MustParseLength("72.00 mm"),
	cylinders: 2,
	head:      52 * units.CubicCentimetre,       // of one chamber in the head, filled and measured
	deck:      units.MustParseLength("0.20 mm"), // from the piston's rim at the top up to the deck
	gasket:    units.MustParseLength("1.20 mm"), // thickness when tightened
	hole:      units.MustParseLength("80 mm"),   // of the gasket
}

type data struct {
	before, after, stroke units.Length
	cylinders             int
	head                  units.Volume
	deck, gasket, hole    units.Length
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	chamber := oversize.Chamber{Head: d.head, Deck: d.deck, Gasket: d.gasket, GasketHole: d.hole}
	old, now := must(chamber.Compression(d.before, d.stroke)), must(chamber.Compression(d.after, d.stroke))
	all := []units.Volume{must(oversize.Displacement(d.before, d.stroke, d.cylinders)), must(oversize.Displacement(d.after, d.stroke, d.cylinders))}

	fmt.Fprintln(w, "DISPLACEMENT AND COMPRESSION AFTER A REBORE")
	fmt.Fprintf(w, "\nThe question: %d × %v by %v is bored to %v. What becomes of volume and compression ratio?\n", d.cylinders, d.before, d.stroke, d.after)
	fmt.Fprintln(w, "\n1  Swept volume     V = π/4·D²·L for each cylinder     D: bore; L: stroke")
	for i, x := range []units.Length{d.before, d.after} {
		fmt.Fprintf(w, "   V = π/4·(%s)²·%s = %.2f cm³;  all: %.2f cm³\n", mm(x), mm(d.stroke), cc([]units.Volume{old.Swept, now.Swept}[i]), cc(all[i]))
	}
	grows := 100 * (now.Swept/old.Swept - 1)
	switch {
	case d.after == d.before:
		fmt.Fprintln(w, "   Nothing has changed.")
	case d.after > d.before:
		fmt.Fprintf(w, "   It grows by %.2f %%: as D², so twice the %.2f %% of the bore, nearly.\n", grows, 100*(d.after-d.before).In(d.before))
	default:
		fmt.Fprintf(w, "   It shrinks by %.2f %%: the bore is smaller than before, as with a sleeve.\n", -grows)
	}
	fmt.Fprintln(w, "\n2  Space above the piston     C = head + π/4·D²·deck + π/4·hole²·gasket     C: at the top of the stroke")
	for i, x := range []units.Length{d.before, d.after} {
		fmt.Fprintf(w, "   C = %.2f + π/4·(%s)²·%s + π/4·(%s)²·%s = %.2f cm³\n", cc(d.head), mm(x), mm(d.deck), mm(d.hole), mm(d.gasket), cc([]units.Volume{old.Clearance, now.Clearance}[i]))
	}
	fmt.Fprintln(w, "\n3  Compression ratio     R = (V + C)/C")
	fmt.Fprintf(w, "   before: (%.2f + %.2f)/%.2f = %.3f;  after: (%.2f + %.2f)/%.2f = %.3f\n", cc(old.Swept), cc(old.Clearance), cc(old.Clearance), old.Ratio,
		cc(now.Swept), cc(now.Clearance), cc(now.Clearance), now.Ratio)
	switch {
	case now.Ratio > old.Ratio:
		fmt.Fprintf(w, "   It rises by %.3f: more is squeezed into a head that has stayed. Ask what fuel bears that.\n", now.Ratio-old.Ratio)
	case now.Ratio < old.Ratio:
		fmt.Fprintf(w, "   It falls by %.3f.\n", old.Ratio-now.Ratio)
	default:
		fmt.Fprintln(w, "   It stays.")
	}
	fmt.Fprintln(w, "\n4  What gives the old ratio back     head = V/(R − 1) − deck and gasket")
	head, err := chamber.HeadFor(d.after, d.stroke, old.Ratio)
	switch {
	case errors.Is(err, oversize.ErrNoSpace):
		fmt.Fprintln(w, "   No head does: deck and gasket alone are more space than that ratio allows.")
	case math.Abs(cc(must(head, err)-d.head)) < 0.005:
		fmt.Fprintf(w, "   %.2f cm³: the head as it is.\n", cc(head))
	case head > d.head:
		fmt.Fprintf(w, "   %.2f cm³: the head wants %.2f cm³ more, or the gasket to be thicker by %.3f mm.\n", cc(head), cc(head-d.head), thicker(head-d.head, d.hole))
	default:
		fmt.Fprintf(w, "   %.2f cm³: the head wants %.2f cm³ less, or the gasket to be thinner by %.3f mm.\n", cc(head), cc(d.head-head), thicker(d.head-head, d.hole))
	}

	most := max(cc(old.Swept+old.Clearance), cc(now.Swept+now.Clearance))
	bar := func(v units.Volume, mark string) string { return strings.Repeat(mark, max(1, int(60*cc(v)/most+0.5))) }
	fmt.Fprintln(w, "\nTHE CYLINDER, from the head down (▒ above the piston, █ swept)")
	fmt.Fprintf(w, "   before  %s%s\n   after   %s%s\n", bar(old.Clearance, "▒"), bar(old.Swept, "█"), bar(now.Clearance, "▒"), bar(now.Swept, "█"))

	fmt.Fprintln(w, "\nA SECOND WAY: fill the new cylinder ring by ring, a thousandth of its radius at a time")
	rings := 0.0
	for i := range 1000 {
		inner, step := float64(i)/1000*cm(d.after)/2, cm(d.after)/2000
		rings += 2 * math.Pi * (inner + step/2) * step * cm(d.stroke)
	}
	fmt.Fprintf(w, "   V = %.2f cm³ (the library: %.2f cm³)\n", rings, cc(now.Swept))
	flat := math.Pi / 4 * (math.Pow(cm(d.after), 2)*cm(d.deck) + math.Pow(cm(d.hole), 2)*cm(d.gasket))
	fmt.Fprintf(w, "   R = 1 + V/C = 1 + %.2f/%.2f = %.2f (the library: %.2f)\n", rings, cc(d.head)+flat, 1+rings/(cc(d.head)+flat), now.Ratio)

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • One cylinder is taken for the engine: %.2f cm³ of %.2f.\n", cc(now.Swept), cc(all[1]))
	fmt.Fprintln(w, "   • Millimetres are put into a formula of centimetres: a thousand times too much.")
	fmt.Fprintf(w, "   • Deck and gasket are left out, and the ratio comes out as %.2f.\n", 1+cc(now.Swept)/cc(d.head))
	fmt.Fprintf(w, "   • A gasket whose hole is smaller than the bore stands out into the flame. Here the hole is %s.\n", mm(d.hole))
	fmt.Fprintln(w, "\nCAUTION: a higher ratio can make an engine knock and break. Fuel, timing and the maker's limits outrank\nthis page.")
}

// thicker is how thick a volume is, in millimetres, under a hole.
func thicker(v units.Volume, hole units.Length) float64 {
	return 10 * cc(v) / (math.Pi / 4 * math.Pow(cm(hole), 2))
}

func cc(v units.Volume) float64 { return v.In(units.CubicCentimetre) }

func mm(l units.Length) string { return l.Format(units.Millimetre, 2) }

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

func cm(l units.Length) float64 { return l.In(units.Millimetre) / 10 }
