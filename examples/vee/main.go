// SPDX-License-Identifier: BSD-3-Clause

// Vee is a lesson: which lobes a vee-block, two anvils or a three-point gauge do not see.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Change these. Invented data: a piston skirt or a sleeve that came off the lathe with lobes, turned in
// a vee under a dial, in a village workshop.
var shipped = data{
	lobes: 3,
	high:  20 * units.Micrometre,  // from valley to peak, on the radius
	vees:  []float64{60, 90, 108}, // degrees between the faces
}

type data struct {
	lobes int
	high  units.Length
	vees  []float64
}

// most is how many lobes the table goes to.
const most = 15

// A gauge is one of the set-ups of the table.
type gauge struct {
	name  string
	setup form.Setup
	touch []float64 // degrees from the indicator or first anvil to the places touched
	share []float64 // what each counts
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	if d.lobes < 2 || d.lobes > 100 {
		must(0, fmt.Errorf("%d lobes; want 2 to 100 (one is work that stands off its axis)", d.lobes))
	}
	if d.high < 0 {
		must(0, fmt.Errorf("lobes %v high; want 0 or more", d.high))
	}
	gauges := []gauge{
		{"two anvils", form.TwoPoint(), []float64{0, 180}, []float64{1, 1}},
		{"three anvils", form.ThreePoint(), []float64{0, 120, 240}, []float64{2. / 3, 2. / 3, 2. / 3}},
	}
	for _, a := range d.vees {
		setup, share := must(form.Vee(units.Angle(a)*units.Degree)), 1/(2*math.Sin(a*math.Pi/360))
		gauges = append(gauges, gauge{fmt.Sprintf("vee %.4g°", a), setup, []float64{0, 90 + a/2, -90 - a/2}, []float64{1, share, share}})
	}

	fmt.Fprintln(w, "WHAT A VEE MISSES: a dial that stands still on work that is not round")
	fmt.Fprintf(w, "\nThe question: work with %d lobes, %v from valley to peak, is turned in each of these. What moves the dial?\n", d.lobes, d.high)
	fmt.Fprintln(w, "\n1  Each place touched adds a radius     vee: r(θ) + [r(θ + 90° + a/2) + r(θ − 90° − a/2)]/(2·sin(a/2))\n"+
		"   r: the radius there; θ: where the dial is; a: the angle between the faces of the vee")
	fmt.Fprintln(w, "\n2  So n lobes count     F = 1 + cos(n·(90° + a/2))/sin(a/2) times     F: factor, below 0 a peak reads as a valley; n: lobes")
	line := "   n "
	for _, g := range gauges {
		line += fmt.Sprintf("%14s", g.name)
	}
	fmt.Fprintln(w, line)
	for n := 2; n <= most; n++ {
		fmt.Fprintf(w, "  %2d ", n)
		for _, g := range gauges {
			if f := g.setup.Factor(n); math.Abs(f) < 0.005 {
				fmt.Fprintf(w, "%14s", "misses")
			} else {
				fmt.Fprintf(w, "%14.2f", f)
			}
		}
		fmt.Fprintln(w)
	}
	for _, g := range gauges {
		fmt.Fprintf(w, "   %s %s\n", g.name, missed(g))
	}

	fmt.Fprintf(w, "\nTHE DIAL ON THIS WORK (█ a tenth of %v)\n", d.high)
	for _, g := range gauges {
		f := math.Abs(g.setup.Factor(d.lobes))
		fmt.Fprintf(w, "   %-13s %6.1f µm │%s\n", g.name, f*d.high.In(units.Micrometre), strings.Repeat("█", int(10*f+0.5)))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: turn the work, a quarter of a degree at a time, and add the radii up")
	for _, g := range gauges {
		low, high := math.Inf(1), math.Inf(-1)
		for step := range 1440 {
			reading := 0.0
			for k, at := range g.touch {
				reading += g.share[k] * d.high.In(units.Micrometre) / 2 * math.Cos(float64(d.lobes)*(float64(step)/4+at)*math.Pi/180)
			}
			low, high = min(low, reading), max(high, reading)
		}
		fmt.Fprintf(w, "   %-13s the dial moves by %.1f µm (the library: %.1f µm)\n", g.name, high-low, math.Abs(g.setup.Factor(d.lobes))*d.high.In(units.Micrometre))
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintln(w, "   • The dial stands still, and the work is called round. Look first what that vee misses.")
	blind := []string{}
	for _, g := range gauges {
		if math.Abs(g.setup.Factor(d.lobes)) < 0.005 {
			blind = append(blind, g.name)
		}
	}
	if len(blind) > 0 {
		fmt.Fprintf(w, "     Of these %d lobes: %s.\n", d.lobes, strings.Join(blind, ", "))
	} else {
		fmt.Fprintf(w, "     These %d lobes are missed by none of them.\n", d.lobes)
	}
	fmt.Fprintln(w, "   • What the dial shows is taken for the roundness. It is to be divided by F, and for that the lobes\n     are counted: so many peaks in a turn.")
	fmt.Fprintln(w, "   • One vee is believed. Two angles miss different lobes: turn it in a second.")
	fmt.Fprintln(w, "   • Two anvils all round, a micrometer, and three lobes: every diameter is the same.")
	fmt.Fprintln(w, "\nCAUTION: turn the work by hand, and keep it from falling: a sleeve's edge is sharp. The maker's limits\noutrank this page.")
}

// missed says which lobes a set-up does not see.
func missed(g gauge) string {
	var list []string
	for n := 2; n <= most; n++ {
		if math.Abs(g.setup.Factor(n)) < 0.005 {
			list = append(list, fmt.Sprint(n))
		}
	}
	if len(list) == 0 {
		return fmt.Sprintf("misses none up to %d", most)
	}
	return "misses " + strings.Join(list, ", ")
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
