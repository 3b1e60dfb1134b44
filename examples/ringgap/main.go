// SPDX-License-Identifier: BSD-3-Clause

// Ringgap is a lesson: a ring's end gap in another bore, what to file off, and what is left when hot.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a new ring, tried in the setting ring of the workshop before its bore
// was finished.
var shipped = data{
	tried:    units.MustParseLength("78.500 mm"), // the ring lay in this
	goes:     units.MustParseLength("0.15 mm"),   // thickest feeler leaf that goes into its gap there
	refuses:  units.MustParseLength("0.20 mm"),   // thinnest that does not
	finished: units.MustParseLength("78.512 mm"), // the bore as it was finished, at its narrowest
	window:   units.Limits{Min: units.MustParseLength("0.25 mm"), Max: units.MustParseLength("0.40 mm")},
	ring:     material.GreyIron(),
	wall:     material.GreyIron(),                  // of the bore
	ringHot:  units.MustParseTemperature("200 °C"), // means round the ring and round the wall behind it, guessed
	wallHot:  units.MustParseTemperature("140 °C"),
}

type data struct {
	tried, goes, refuses, finished units.Length
	window                         units.Limits
	ring, wall                     material.Material
	ringHot, wallHot               units.Temperature
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	d.ring.Within, d.wall.Within = 0, 0 // their expansion is taken as known
	feeler := must(rings.Feeler(d.goes, d.refuses))
	gap := must(rings.Gap{Measured: feeler, Bore: exact(d.tried)}.In(exact(d.finished)))
	heat := rings.Warm{Ring: d.ring, Bore: d.wall, RingAt: d.ringHot, BoreAt: d.wallHot}
	change := must(heat.Change(d.finished)).Value
	f, err := rings.FileTo(gap, d.window, uncertainty.Risk{})
	narrow := errors.Is(err, rings.ErrDoubt)
	if err != nil && !narrow {
		must(f, err)
	}

	fmt.Fprintln(w, "RING GAP: π for every hundredth")
	fmt.Fprintf(w, "\nThe question: in %s a leaf of %v goes into the gap and %v does not.\nWhich gap has the ring in its bore of %s, and what is to be filed for %v?\n", mm(d.tried), d.goes, d.refuses, mm(d.finished), d.window)

	fmt.Fprintln(w, "\n1  The gap as tried     g: the gap, anywhere between the leaves; take their middle")
	fmt.Fprintf(w, "   g = (%v + %v)/2 = %v (95 %% of the time)\n", d.goes, d.refuses, feeler)
	fmt.Fprintln(w, "\n2  In the finished bore     Δg = π·ΔD     D: the bore; Δ: how much more. The ring stays as long as it is.")
	fmt.Fprintf(w, "   g = %s + π·(%s − %s) = %s %s = %v\n", mm(feeler.Value), mm(d.finished), mm(d.tried), mm(feeler.Value), plus(gap.Value-feeler.Value), gap)
	if gap.Value <= 0 {
		fmt.Fprintf(w, "   Less than nothing: the ends overlap by %s. The ring is too large for this bore.\n", mm(-gap.Value))
	}

	fmt.Fprintln(w, "\n3  What to file")
	fitted := gap.Value
	switch {
	case narrow:
		fmt.Fprintf(w, "   The gap is known too badly for this window: no reading between such leaves could prove it.\n   Try leaves closer together, and then file.\n")
	case f.Action == rings.FileEnds:
		fitted = f.Target
		fmt.Fprintf(w, "   %s is too small, or may be: file to %s, which takes off %s.\n   Stop and measure at", mm(gap.Value), mm(f.Target), mm(f.TakeOff))
		for _, s := range f.Steps {
			fmt.Fprintf(w, " %s", mm(s))
		}
		fmt.Fprintln(w, ".")
	case f.Action == rings.AsIs:
		fmt.Fprintln(w, "   Nothing: the gap is within the window, its doubt included.")
	case f.Action == rings.TooWide:
		fmt.Fprintln(w, "   Nothing: the gap is too wide already, and a file makes it wider. Another ring, or a larger one.")
	default:
		fmt.Fprintln(w, "   Undecided: the gap may be too wide already. Do not file; measure better.")
	}

	fmt.Fprintln(w, "\n4  Hot     Δg = π·D·(αw·ΔTw − αr·ΔTr)     α: growth a kelvin, w of the wall, r of the ring; ΔT: kelvins above 20 °C")
	aw, ar := d.wall.Expansion.In(1e-6*units.PerKelvin), d.ring.Expansion.In(1e-6*units.PerKelvin)
	tw, tr := d.wallHot.AboveReference().In(units.Kelvin), d.ringHot.AboveReference().In(units.Kelvin)
	hot := fitted + change
	fmt.Fprintf(w, "   Δg = π·%s·(%.3g·%.4g − %.3g·%.4g)/1 000 000 = %s;  left: %s\n", mm(d.finished), aw, tw, ar, tr, mm(change), mm(hot))
	switch {
	case fitted <= 0:
		fmt.Fprintln(w, "   There is no gap even cold: this ring is not to be fitted.")
	case hot <= 0:
		fmt.Fprintln(w, "   Nothing is left: the ends meet, the ring BUTTS, and it breaks or seizes.")
	case change >= 0:
		fmt.Fprintln(w, "   The wall grows as much as the ring or more: heat does not close this gap.")
	}

	step := 10 * units.Micrometre
	for most := max(feeler.Value, gap.Value.Abs(), hot.Abs(), fitted, d.window.Min, d.window.Max); most > 60*step; {
		step *= 2
	}
	marks := func(l units.Length) int { return int(l.Abs().Round(step) / step) }
	fmt.Fprintf(w, "\nTHE GAP TO SCALE (a mark is %v; │ the ends of the ring, ─ gap, ╳ overlap, ▒ the maker's window)\n", step)
	if to := d.window.Max; d.window.HasMax() {
		fmt.Fprintf(w, "   window    │%s%s\n", strings.Repeat(" ", marks(d.window.Min)), strings.Repeat("▒", 1+marks(to)-marks(d.window.Min)))
	} else {
		fmt.Fprintf(w, "   window    │%s▒▒▒▒ and more\n", strings.Repeat(" ", marks(d.window.Min)))
	}
	for _, row := range []struct {
		name string
		gap  units.Length
	}{{"tried", feeler.Value}, {"finished", gap.Value}, {"fitted", fitted}, {"hot", hot}} {
		mark := "─"
		if row.gap < 0 {
			mark = "╳"
		}
		fmt.Fprintf(w, "   %-9s │%s│ %s\n", row.name, strings.Repeat(mark, marks(row.gap)), mm(row.gap))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: the ring is a wire of one length; walk round each bore")
	wire := math.Pi*d.tried.In(units.Millimetre) - feeler.Value.In(units.Millimetre)
	round := math.Pi * d.finished.In(units.Millimetre)
	fmt.Fprintf(w, "   wire π·%s − %s = %.3f mm; round the bore %.3f mm: gap %.3f mm (the library: %s)\n", mm(d.tried), mm(feeler.Value), wire, round, round-wire, mm(gap.Value))
	filed := round - fitted.In(units.Millimetre)
	grown, own := round*(1+aw*1e-6*tw)-filed*(1+ar*1e-6*tr), fitted.In(units.Millimetre)*ar*1e-6*tr
	fmt.Fprintf(w, "   hot, each grown by itself: %.4f mm; less what the wire lacks to a whole turn, %.4f mm:\n   %.3f mm (the library: %s)\n", grown, own, grown-own, mm(hot))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • The gap is set at the worn top. 0.1 mm of taper takes %.3f mm of it lower down.\n", 0.1*math.Pi)
	next := fitted - must(units.Of(0.25*math.Pi, units.Millimetre))
	fmt.Fprintf(w, "   • The ring of the next size, 0.25 mm larger, in the same bore: %.3f mm less gap, here %s.\n", 0.25*math.Pi, mm(next))
	if next <= 0 && fitted > 0 {
		fmt.Fprintln(w, "     Its ends overlap.")
	}
	start := heat
	start.RingAt, start.BoreAt = units.MustParseTemperature("120 °C"), units.MustParseTemperature("40 °C")
	least, first := must(heat.Least(d.finished, 0)).Value, must(start.Least(d.finished, 0)).Value
	fmt.Fprintf(w, "   • So little that it butts when hot: here %s or less. A minute after a hard start, the ring at %v and\n     the wall at %v (guessed), %s or less.\n", mm(least), start.RingAt, start.BoreAt, mm(first))
	list, spread, err := rings.Rules(d.finished)
	must(list, err)
	fmt.Fprintf(w, "   • A rule of thumb for a limit: %d rules ask for %s to %s in this bore.\n", len(list), mm(spread.Min), mm(spread.Max))
	fmt.Fprintln(w, "   • Filed out of square, or from the inside out: a coating chips. Metal filed off does not come back.")
	fmt.Fprintln(w, "\nCAUTION: ring edges are sharp and rings fly: eyes guarded. A ring that butts breaks or seizes the\nengine. The maker's window outranks every rule.")
}

func exact(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }

func mm(l units.Length) string { return l.Format(units.Millimetre, 3) }

func plus(l units.Length) string {
	return map[bool]string{true: "− ", false: "+ "}[l < 0] + mm(l.Abs())
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
