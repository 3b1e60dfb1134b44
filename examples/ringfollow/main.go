// SPDX-License-Identifier: BSD-3-Clause

// Ringfollow is a lesson: whether a ring follows a bore that is not round, by its own spring.
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

// Change these. Invented data: a plain one-piece ring of grey iron, and an oval bore. All of a village
// workshop.
var shipped = data{
	ring: rings.Section{
		Bore: 78 * units.Millimetre, Thickness: 3200 * units.Micrometre, Height: 2 * units.Millimetre, Young: 100 * units.Gigapascal,
	},
	free:    10 * units.Millimetre,  // gap with the ring lying on the bench
	gap:     300 * units.Micrometre, // end gap in the bore
	ovality: 60 * units.Micrometre,  // greatest less least DIAMETER
}

type data struct {
	ring               rings.Section
	free, gap, ovality units.Length
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, data data) {
	defer refuse(w)
	ring := data.ring
	t, form := must(ring.Tension(data.free, data.gap)), must(rings.Oval{Max: ring.Bore + data.ovality, Min: ring.Bore}.Harmonic(0))
	c := must(t.Follow(list(form)))
	d, a := ring.Bore.In(units.Millimetre), ring.Thickness.In(units.Millimetre)
	h, e := ring.Height.In(units.Millimetre), ring.Young.In(units.Megapascal) // N/mm²
	m, r, inertia := t.Closing.In(units.Millimetre), (d-a)/2, h*a*a*a/12
	ft := t.Tangential.In(units.Newton)

	fmt.Fprintln(w, "WILL THE RING FOLLOW? Its spring against the lobes of the bore")
	fmt.Fprintf(w, "\nThe question: a ring of %v by %v for %v springs open to %v.\nDoes it follow a bore that is oval by %v?\n", ring.Thickness, ring.Height, ring.Bore, data.free, data.ovality)
	fmt.Fprintln(w, "\n1  The spring     m = free gap − end gap;  k = 2m/(3π·(d − a));  F = k·E·I/r²;  p = 2·F/(d·h)\n"+
		"   d: bore; a: the ring's thickness, towards the middle; h: its height; r = (d − a)/2; I = h·a³/12, how much\n"+
		"   its shape resists bending; E: Young's modulus, how much its metal does; k: how strong a spring it is for its\n"+
		"   size; F: the pull along the ends that closes it; p: pressure on the wall")
	fmt.Fprintf(w, "   m = %v − %v = %.4g mm;  r = (%.4g − %.4g)/2 = %.4g mm;  I = %.4g mm⁴\n", data.free, data.gap, m, d, a, r, inertia)
	fmt.Fprintf(w, "   k = 2·%.4g/(3π·%.4g) = %.5f;  F = %.5f·%.0f·%.4g/%.4g² = %.2f N\n", m, d-a, t.Parameter, t.Parameter, e, inertia, r, ft)
	fmt.Fprintf(w, "   p = 2·%.2f/(%.4g·%.4g) = %.3f MPa\n", ft, d, h, t.Wall.In(units.Megapascal))
	fmt.Fprintln(w, "\n2  How far it follows i lobes     A ≤ k·r/(i² − 1)², derived;  A ≤ k·r/(20·(i² − 1)), from experience\n"+
		"   A: how far a crest stands out, on the RADIUS; i: how many crests in a turn, two of an oval")
	var reach [9]rings.Bound
	for i := 2; i <= 8; i++ {
		reach[i] = must(t.Bound(i))
	}
	lesser := func(i int) float64 { return min(reach[i].Derived, reach[i].Empirical).In(units.Micrometre) }
	fmt.Fprintln(w, "\nHOW FAR, the lesser of the two (█ each factor of 1.5 over a tenth of a micrometre)\n   i   derived µm   experience µm")
	for i := 2; i <= 8; i++ {
		bar := max(0, int(math.Round(math.Log(max(lesser(i), 0.1)/0.1)/math.Log(1.5))))
		fmt.Fprintf(w, "   %d %12.2f %15.2f   %s\n", i, reach[i].Derived.In(units.Micrometre), reach[i].Empirical.In(units.Micrometre), strings.Repeat("█", bar))
	}
	fmt.Fprintln(w, "\n3  This bore     i = 2 and A = V/4     V: ovality")
	fmt.Fprintf(w, "   A = %v/4 = %.1f µm: %.0f %% of the derived bound, %.0f %% of that from experience: %s\n", data.ovality, form.Amplitude.In(units.Micrometre),
		100*c.Derived.Used, 100*c.Empirical.Used, strings.ToUpper(c.Verdict.String()))
	switch c.Verdict {
	case uncertainty.Within:
		fmt.Fprintln(w, "   It follows, by both rules.")
	case uncertainty.Beyond:
		fmt.Fprintln(w, "   It does not, by either rule: light comes through, and oil and gas.")
	default:
		fmt.Fprintln(w, "   One rule says yes and one no: hone the bore rounder, or hold a lamp behind the ring and look.")
	}

	fmt.Fprintln(w, "\nTHE BORE (●, ovality out of scale) AND THE RING LYING FREE IN IT (○, round)")
	lobes := map[bool]float64{true: 1.2, false: 0}[data.ovality > 0]
	for y := 7; y >= -7; y-- {
		line := ""
		for x := -22; x <= 22; x++ {
			theta, radius := math.Atan2(float64(y), float64(x)/2), math.Hypot(float64(y), float64(x)/2)
			switch {
			case math.Abs(radius-8-lobes*math.Cos(2*theta)) < 0.5:
				line += "●"
			case math.Abs(radius-6.8) < 0.4 && math.Abs(theta) > 0.15:
				line += "○"
			default:
				line += " "
			}
		}
		fmt.Fprintln(w, "   "+strings.TrimRight(line, " "))
	}
	if data.ovality > 0 {
		fmt.Fprintln(w, "   Above and below, where the bore is narrow, the ring touches; left and right its spring has to reach.")
	}

	fmt.Fprintln(w, "\nA SECOND WAY: bend the ring in a thousand pieces")
	opened := 0.0
	const pieces = 1000
	for i := range pieces { // M = F·r·(1 − cos θ) turns each piece by M·r·dθ/(E·I); the end moves by that times its lever
		lever := 1 - math.Cos((float64(i)+0.5)/pieces*math.Pi)
		opened += 2 * ft * r * lever / (e * inertia) * r * lever * r * math.Pi / pieces
	}
	fmt.Fprintf(w, "   pulled by F = %.3f N its gap closes by %.3f mm (the library: %.3f mm)\n", ft, opened, m)
	amplitude := form.Amplitude.In(units.Millimetre)
	load := e * inertia * 9 * amplitude / (r * r * r * r) // N/mm, to bend it into two lobes: (i² − 1)² = 9
	fmt.Fprintf(w, "   to lie against A it needs %.4f N/mm at the crests, and its spring gives F/r = %.4f N/mm:\n   %.0f %% of it (the library: %.0f %%)\n", load, ft/r, 100*load/(ft/r), 100*c.Derived.Used)

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • Ovality, a difference of diameters, is put in as A: %v is then four times too much.\n", data.ovality)
	fmt.Fprintf(w, "   • Ovality is feared and bolts are not: four head bolts draw four lobes, and of those the ring\n     follows %.1f µm or less, of two %.1f.\n", lesser(4), lesser(2))
	fmt.Fprintf(w, "   • Two rules for a law: at i = 2 they differ by %.1f times.\n", reach[2].Derived.In(reach[2].Empirical))
	unseen := strings.Trim(strings.ReplaceAll(fmt.Sprint(c.Unseen), " ", ", "), "[]")
	fmt.Fprintf(w, "   • A bore is called oval and may have other lobes too. Of these nothing was read here: %s.\n", unseen)
	fmt.Fprintln(w, "   • A worn ring: with half the closing it follows half as far.")
	fmt.Fprintln(w, "\nCAUTION: ring edges are sharp and rings fly: eyes guarded. Gas pressure helps a ring once the engine\nruns, and none of it is counted here.")
}

// list makes a list of what it is given, whatever that is.
func list[T any](xs ...T) []T { return xs }

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
