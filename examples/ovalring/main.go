// SPDX-License-Identifier: BSD-3-Clause

// Ovalring is a lesson: the way round an oval bore, and what it does to the gap of a ring.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a pump bore worn oval, and a ring whose gap was measured in a round setting
// ring, in a village workshop.
var shipped = data{
	greatest: units.MustParseLength("78.160 mm"), // of the bore, a diameter
	least:    units.MustParseLength("78.040 mm"), // square to it
	tried:    units.MustParseLength("78.000 mm"), // the round ring that the gap was measured in
	gap:      units.MustParseLength("0.300 mm"),
}

type data struct{ greatest, least, tried, gap units.Length }

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	oval := rings.Oval{Max: d.greatest, Min: d.least}
	way, round := must(oval.Perimeter()), must(oval.Round())
	measured := rings.Gap{Measured: uncertainty.Estimate{Value: d.gap}, Bore: uncertainty.Estimate{Value: d.tried}}
	in := func(bore units.Length) units.Length {
		return must(measured.In(uncertainty.Estimate{Value: bore})).Value
	}
	gap, mean := in(round), (d.greatest+d.least)/2

	fmt.Fprintln(w, "A RING IN AN OVAL BORE: which diameter counts")
	fmt.Fprintf(w, "\nThe question: the bore is %s one way and %s the other. A ring with a gap of %s in a round %s:\nwhich gap has it here?\n", mm(d.greatest), mm(d.least), mm(d.gap), mm(d.tried))
	fmt.Fprintln(w, "\n1  The way round     P = 2·D·E     D: the greatest diameter; E: an integral of the ellipse, π/2 if it is round")
	fmt.Fprintf(w, "   P = 2·%s·%.6f = %s\n", mm(d.greatest), way.In(d.greatest)/2, mm(way))
	fmt.Fprintln(w, "\n2  The round bore of the same way     R = P/π")
	fmt.Fprintf(w, "   R = %s/π = %s;  the mean of the two diameters is %s, %.3f µm less\n", mm(way), mm(round), mm(mean), (round - mean).In(units.Micrometre))
	fmt.Fprintln(w, "\n3  The gap     g = gap as tried + π·(R − tried):  the ring's own length stays")
	fmt.Fprintf(w, "   g = %s + π·(%s − %s) = %s\n", mm(d.gap), mm(round), mm(d.tried), mm(gap))
	switch {
	case gap <= 0:
		fmt.Fprintf(w, "   Less than nothing: the ends overlap by %s. The ring is too large for this bore.\n", mm(-gap))
	case gap > d.gap:
		fmt.Fprintln(w, "   The gap is wider than as tried.")
	case gap < d.gap:
		fmt.Fprintln(w, "   The gap is narrower than as tried.")
	default:
		fmt.Fprintln(w, "   The gap is the same.")
	}

	rows := []struct {
		by   string
		bore units.Length
	}{{"greatest diameter", d.greatest}, {"way round", round}, {"mean diameter", mean}, {"least diameter", d.least}}
	step := 10 * units.Micrometre
	for _, row := range rows {
		for in(row.bore).Abs() > 70*step {
			step *= 2
		}
	}
	fmt.Fprintf(w, "\nTHE GAP, BY WHAT IS TAKEN FOR THE BORE (a mark is %v; ─ gap, ╳ overlap)\n", step)
	for _, row := range rows {
		g := in(row.bore)
		fmt.Fprintf(w, "   %-18s│%s│ %s\n", row.by, strings.Repeat(map[bool]string{true: "╳", false: "─"}[g < 0], int(g.Abs()/step)), mm(g))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: walk round the ellipse in ten thousand steps")
	a, b := d.greatest.In(units.Millimetre)/2, d.least.In(units.Millimetre)/2
	walked := 0.0
	for i := range 10000 {
		sin, cos := math.Sincos((float64(i) + 0.5) / 10000 * 2 * math.Pi)
		walked += math.Sqrt(float64(a*a*sin*sin)+float64(b*b*cos*cos)) * 2 * math.Pi / 10000
	}
	fmt.Fprintf(w, "   P = %.4f mm (the library: %s)\n", walked, mm(way))
	wire := math.Pi*d.tried.In(units.Millimetre) - d.gap.In(units.Millimetre)
	fmt.Fprintf(w, "   the ring is a wire of π·%s − %s = %.4f mm: gap %.4f mm (the library: %s)\n", mm(d.tried), mm(d.gap), wire, walked-wire, mm(gap))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • The greatest diameter is taken: %s of gap, %s too much.\n", mm(in(d.greatest)), mm(in(d.greatest)-gap))
	fmt.Fprintf(w, "   • The least is taken: %s, %s too little.\n", mm(in(d.least)), mm(gap-in(d.least)))
	fmt.Fprintf(w, "   • Ovality is thought to open the gap by itself. At the same mean diameter it gives %.3f µm of gap.\n", math.Pi*(round-mean).In(units.Micrometre))
	fmt.Fprintln(w, "   • A good gap is taken for a good bore: the ring need not follow the oval, and the gap does not show it.")
	fmt.Fprintln(w, "\nCAUTION: ring edges are sharp and rings fly: eyes guarded. The maker's window outranks this page.")
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

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
