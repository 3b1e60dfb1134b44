// SPDX-License-Identifier: BSD-3-Clause

// Nextpass is a lesson: how long the next honing pass may be, from what the last ones took.
package main

import (
	"fmt"
	"log"
	"strings"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a bore on its way to size. Each pass: how long, what the gauge showed
// after it, and how warm the cylinder was then.
var (
	finish = units.Limits{Min: units.MustParseLength("78.500 mm"), Max: units.MustParseLength("78.520 mm")}
	start  = reading("78.4500 mm", "21 °C")
	passes = []hone.Pass{
		{Lasts: 10 * time.Second, After: reading("78.4571 mm", "23 °C")},
		{Lasts: 20 * time.Second, After: reading("78.4719 mm", "27 °C")},
		{Lasts: 25 * time.Second, After: reading("78.4894 mm", "31 °C")},
	}
	gaugeStd = units.Micrometre // standard uncertainty of one reading
)

func main() {
	iron := material.GreyIron()
	job := hone.Sizing{Metal: iron, Finish: finish, Trial: 10 * time.Second, Longest: time.Minute, Start: start}

	fmt.Println("THE NEXT PASS: stop before the size is past, not after")
	fmt.Printf("\nThe question: the bore is to end between %s and %s.\nHow long may the next pass be, so that it is not run past in 19 jobs of 20?\n", mm(finish.Min), mm(finish.Max))
	fmt.Println("\n1  What each reading is at 20 °C     D = d/(1 + α·ΔT)")
	sizes := []units.Length{cold(iron, start)}
	alpha := iron.Expansion.In(1e-6 * units.PerKelvin)
	fmt.Printf("   start   %s/(1 + %.3ge-6·%2.0f) = %s\n", mm(start.Diameter.Value), alpha, start.At.AboveReference().In(units.Kelvin), mm(sizes[0]))
	for i, p := range passes {
		sizes = append(sizes, cold(iron, p.After))
		fmt.Printf("   pass %d  %s/(1 + %.3ge-6·%2.0f) = %s: %.1f µm in %v, %.2f µm/s\n", i+1, mm(p.After.Diameter.Value), alpha, p.After.At.AboveReference().In(units.Kelvin), mm(sizes[i+1]),
			(sizes[i+1] - sizes[i]).In(units.Micrometre), p.Lasts, (sizes[i+1]-sizes[i]).In(units.Micrometre)/p.Lasts.Seconds())
	}

	fmt.Println("\n2  What the library says after each reading")
	for i := range len(passes) + 1 {
		job.Passes = passes[:i]
		fmt.Printf("   after %d: %v\n", i, must(job.Next()))
	}
	next := must(job.Next())

	fmt.Println("\nTHE WAY TO SIZE (a mark is a micrometre; ▒ the finish window, ● read, ◌ expected next)")
	all := append(sizes, next.Then.Value)
	for i, l := range all {
		mark := "●"
		if i == len(sizes) {
			mark = "◌"
		}
		at := func(l units.Length) int { return int((l - sizes[0]).Round(units.Micrometre) / units.Micrometre) }
		line := []rune(strings.Repeat(" ", max(0, at(finish.Min))) + strings.Repeat("▒", max(1, at(finish.Max)-max(0, at(finish.Min)))) + strings.Repeat(" ", 40))
		if x := at(l); x >= 0 && x < len(line) {
			line[x] = []rune(mark)[0]
		}
		fmt.Printf("   %s │%s\n", mm(l), strings.TrimRight(string(line), " "))
	}

	fmt.Println("\nA SECOND WAY: the rate of thumb")
	last := len(passes) - 1
	rate := (sizes[last+1] - sizes[last]).In(units.Micrometre) / passes[last].Lasts.Seconds()
	toMax := (finish.Max - sizes[last+1]).In(units.Micrometre)
	toMiddle := toMax - (finish.Max-finish.Min).In(units.Micrometre)/2
	fmt.Printf("   to the middle of the window %.1f µm at %.2f µm/s: %.0f s; to its end %.1f µm: %.0f s\n", toMiddle, rate, toMiddle/rate, toMax, toMax/rate)
	fmt.Printf("   the library: %.0f s, since the rate may be a fifth off, the gauge ±%.1f µm, and risk is left for later passes:\n", next.Lasts.Seconds(), 2*gaugeStd.In(units.Micrometre))
	fmt.Printf("   a rate 1.645·20 %% higher would make of these %.0f s %.1f µm, of %.1f µm that are left\n", next.Lasts.Seconds(), next.Lasts.Seconds()*rate*(1+1.645*0.2), toMax)

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	p := passes[last].After
	warm := p.Diameter.Value - sizes[last+1]
	fmt.Printf("   • Measured hot: at %v the bore shows %.1f µm more than it has. Stopped by the hot gauge it\n     ends too small; an aluminium barrel shows %.1f µm.\n",
		p.At, warm.In(units.Micrometre), (p.Diameter.Value - cold(material.AluminiumBlock(), p)).In(units.Micrometre))
	whole := toMax / rate
	fmt.Printf("   • All in one go, %.0f s to the end of the window: run past in half of all jobs, and metal\n     does not come back.\n", whole)
	job.Passes = nil
	fmt.Printf("   • No trial pass: nothing is known of the rate, and the library asks for one: %v.\n", must(job.Next()).Lasts)
	fmt.Println("   • A rate that fades: stones glaze or load. Dress and clean; pressing harder heats the wall.")
	fmt.Println("\nCAUTION: stop the drill before measuring; eyes guarded, nothing loose. Wash grit out with soap\n" +
		"and hot water: solvent only moves it about. The last reading is taken cold.")
}

func reading(diameter, at string) hone.Reading {
	return hone.Reading{Diameter: uncertainty.Estimate{Value: units.MustParseLength(diameter), Std: units.Micrometre}, At: units.MustParseTemperature(at)}
}

func cold(m material.Material, r hone.Reading) units.Length {
	return must(m.SizeAt20(r.Diameter.Value, r.At))
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
