// SPDX-License-Identifier: BSD-3-Clause

// Nextpass is a lesson: how long the next honing pass may be, from what the last ones took.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a bore on its way to size. Each pass: how long, what the gauge showed
// after it, and how warm the cylinder was then. The first line is the start.
var shipped = data{
	finish: units.Limits{Min: units.MustParseLength("78.500 mm"), Max: units.MustParseLength("78.520 mm")},
	metal:  material.GreyIron(),
	passes: []pass{
		{0, units.MustParseLength("78.4500 mm"), units.MustParseTemperature("21 °C")},
		{10 * time.Second, units.MustParseLength("78.4571 mm"), units.MustParseTemperature("23 °C")},
		{20 * time.Second, units.MustParseLength("78.4719 mm"), units.MustParseTemperature("27 °C")},
		{25 * time.Second, units.MustParseLength("78.4894 mm"), units.MustParseTemperature("31 °C")},
	},
	gaugeStd: units.Micrometre, // standard uncertainty of one reading
}

type data struct {
	finish   units.Limits
	metal    material.Material
	passes   []pass
	gaugeStd units.Length
}

type pass struct {
	lasts time.Duration
	reads units.Length
	at    units.Temperature
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	if len(d.passes) == 0 {
		must(0, fmt.Errorf("no reading at all; want that of the start"))
	}
	job := hone.Sizing{Metal: d.metal, Finish: d.finish, Trial: 10 * time.Second, Longest: time.Minute}
	var sizes []units.Length
	for i, p := range d.passes {
		r := hone.Reading{Diameter: uncertainty.Estimate{Value: p.reads, Std: d.gaugeStd}, At: p.at}
		sizes = append(sizes, must(d.metal.SizeAt20(p.reads, p.at)))
		if i == 0 {
			job.Start = r
		} else {
			job.Passes = append(job.Passes, hone.Pass{Lasts: p.lasts, After: r})
		}
	}
	next, n := must(job.Next()), len(job.Passes)
	last := d.passes[n]

	fmt.Fprintln(w, "THE NEXT PASS: stop before the size is past, not after")
	fmt.Fprintf(w, "\nThe question: the bore is to end between %s and %s.\nHow long may the next pass be, so that it is not run past in 19 jobs of 20?\n", mm(d.finish.Min), mm(d.finish.Max))
	fmt.Fprintln(w, "\n1  Each reading at 20 °C     D = d/(1 + α·ΔT)     d: as read; α: growth a kelvin; ΔT: kelvins above 20 °C")
	alpha := d.metal.Expansion.In(1e-6 * units.PerKelvin)
	for i, p := range d.passes {
		fmt.Fprintf(w, "   %-8s %s/(1 + %.3g·%.4g/1 000 000) = %s", map[bool]string{true: "start", false: fmt.Sprintf("pass %d", i)}[i == 0], mm(p.reads), alpha, p.at.AboveReference().In(units.Kelvin), mm(sizes[i]))
		if i > 0 {
			fmt.Fprintf(w, ": %.1f µm in %v, %.2f µm a second", um(sizes[i]-sizes[i-1]), p.lasts, um(sizes[i]-sizes[i-1])/p.lasts.Seconds())
		}
		fmt.Fprintln(w)
	}
	fmt.Fprintln(w, "\n2  What to do after each reading")
	for i := range n + 1 {
		short := job
		short.Passes = job.Passes[:i]
		fmt.Fprintf(w, "   after %d: %v\n", i, must(short.Next()))
	}
	switch next.Decision {
	case hone.StopHere:
		fmt.Fprintln(w, "   STOP: the size is in the window.")
	case hone.PastSize:
		fmt.Fprintf(w, "   PAST: %s too large. Metal does not come back; ask what piston this bore still takes.\n", mm(sizes[n]-d.finish.Max))
	case hone.MeasureAgain:
		fmt.Fprintln(w, "   MEASURE AGAIN: with this gauge no pass of even a second keeps to the risk. Read several times, and put\n   the mean in place of the last reading, with its smaller doubt.")
	}
	switch {
	case next.Fades:
		fmt.Fprintln(w, "   The rate fades: stones glaze or load. Dress them and clean.")
	case next.Rises:
		fmt.Fprintln(w, "   The rate rises: make shorter passes than told.")
	}

	low, high := min(d.finish.Min, sizes[0]), max(d.finish.Max, next.Then.Value)
	for _, l := range sizes {
		low, high = min(low, l), max(high, l)
	}
	step := units.Micrometre
	for high-low > 75*step {
		step *= 2
	}
	at := func(l units.Length) int { return int((l - low).Round(step) / step) }
	fmt.Fprintf(w, "\nTHE WAY TO SIZE (a mark is %v; ▒ the finish window, ● as measured, ○ expected next)\n", step)
	shown := sizes
	if next.Then.Value > 0 {
		shown = append(shown, next.Then.Value)
	}
	for i, l := range shown {
		line := []rune(strings.Repeat(" ", 1+at(high)))
		for x := at(d.finish.Min); x <= at(d.finish.Max); x++ {
			line[x] = '▒'
		}
		line[at(l)] = map[bool]rune{true: '●', false: '○'}[i < len(sizes)]
		fmt.Fprintf(w, "   %s │%s\n", mm(l), strings.TrimRight(string(line), " "))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: try sizes until their growth gives the reading; the rate by thumb")
	tried, warm := last.reads, 0.0
	for range 30 {
		warm = tried.In(units.Micrometre) * alpha / 1e6 * last.at.AboveReference().In(units.Kelvin)
		tried = last.reads - must(units.Of(warm, units.Micrometre))
	}
	fmt.Fprintf(w, "   now %s (the library: %s)\n", mm(tried), mm(next.Size.Value))
	toMax, toMiddle := um(d.finish.Max-sizes[n]), um(d.finish.Max-sizes[n])-um(d.finish.Max-d.finish.Min)/2
	rate, took, time := 0.0, 0.0, 0.0
	for i := 1; i <= n; i++ { // a pass counts twice as much as the one before it
		took, time = took/2+um(sizes[i]-sizes[i-1]), time/2+d.passes[i].lasts.Seconds()
	}
	if n > 0 {
		rate = took / time
		fmt.Fprintf(w, "   the rate, each pass counting twice the one before it: %.1f µm a minute (the library: %.1f)\n", 60*rate, um(next.Growth.Value))
	}
	going := next.Decision == hone.GoOn && n > 0 && rate > 0
	if going {
		fmt.Fprintf(w, "   to the middle of the window %.1f µm: %.0f s; to its end %.1f µm: %.0f s\n", toMiddle, toMiddle/rate, toMax, toMax/rate)
		fmt.Fprintf(w, "   and %.0f s are allowed, since the rate may be a fifth off, the gauge by %.1f µm, and some risk is kept\n   for passes to come. A rate by 1.645 fifths higher would make of them %.1f µm, of %.1f µm that are left.\n",
			next.Lasts.Seconds(), 2*um(d.gaugeStd), next.Lasts.Seconds()*rate*(1+1.645*0.2), toMax)
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	hot := units.MustParseTemperature("35 °C")
	whole := must(d.metal.SizeAt(sizes[n], hot)) - sizes[n]
	barrel := must(material.AluminiumBlock().SizeAt(sizes[n], hot)) - sizes[n]
	fmt.Fprintf(w, "   • Measured hot: now, at %v, the bore reads %.1f µm off its size at 20 °C; at %v it would read\n     %.1f µm too large, an aluminium barrel %.1f µm. Stopped by a hot reading it ends too small.\n", last.at, um(last.reads-sizes[n]), hot, um(whole), um(barrel))
	if going {
		fmt.Fprintf(w, "   • All in one go, %.0f s to the end of the window: run past in half of all jobs.\n", toMax/rate)
	}
	job.Passes = nil
	if first := must(job.Next()); first.Decision == hone.GoOn {
		fmt.Fprintf(w, "   • No trial pass: nothing is known of the rate, so the first is short: %v.\n", first.Lasts)
	}
	fmt.Fprintln(w, "   • Stones that glaze or load take less and less. Dress them; pressing harder heats the wall.")
	fmt.Fprintln(w, "\nCAUTION: stop the drill before measuring; eyes guarded, nothing loose. Wash grit out with soap\n"+
		"and hot water: solvent only moves it about. The last reading is taken cold.")
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

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
