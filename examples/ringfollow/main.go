// SPDX-License-Identifier: BSD-3-Clause

// Ringfollow is a lesson: whether a ring follows a bore that is not round, by its own spring.
package main

import (
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/rings"
	"borewright.example/units"
)

// Change these. Invented data: a plain one-piece ring of grey iron, and an oval bore. All of a village
// workshop.
var (
	ring = rings.Section{
		Bore: 78 * units.Millimetre, Thickness: 3200 * units.Micrometre, Height: 2 * units.Millimetre, Young: 100 * units.Gigapascal,
	}
	free    = 10 * units.Millimetre  // gap with the ring lying on the bench
	gap     = 300 * units.Micrometre // end gap in the bore
	ovality = 60 * units.Micrometre  // greatest less least DIAMETER
)

func main() {
	t := must(ring.FromGaps(free, gap))
	d, a := ring.Bore.In(units.Millimetre), ring.Thickness.In(units.Millimetre)
	h, e := ring.Height.In(units.Millimetre), ring.Young.In(units.Megapascal) // N/mm²
	m, r, inertia := t.Closing.In(units.Millimetre), (d-a)/2, h*a*a*a/12

	fmt.Println("WILL THE RING FOLLOW? Its spring against the lobes of the bore")
	fmt.Printf("\nThe question: a ring of %v by %v for %v springs open to %v.\nDoes it follow a bore that is oval by %v?\n", ring.Thickness, ring.Height, ring.Bore, free, ovality)
	fmt.Println("\n1  The spring     m = free gap − end gap;  k = 2m/(3π·(d − a));  Ft = k·E·I/r²;  p = 2·Ft/(d·h)")
	fmt.Printf("   m = %v − %v = %.4g mm;  r = (%.4g − %.4g)/2 = %.4g mm;  I = h·a³/12 = %.4g mm⁴\n", free, gap, m, d, a, r, inertia)
	ft := t.Tangential.In(units.Newton)
	fmt.Printf("   k = 2·%.4g/(3π·%.4g) = %.5f;  Ft = %.5f·%.6g·%.4g/%.4g² = %.2f N\n", m, d-a, t.Parameter, t.Parameter, e, inertia, r, ft)
	fmt.Printf("   p = 2·%.2f/(%.4g·%.4g) = %.3f MPa\n", ft, d, h, t.Wall.In(units.Megapascal))
	fmt.Println("\n2  How far it follows i lobes     radial amplitude A ≤ k·r/(i² − 1)²,  or from experience k·r/(20·(i² − 1))")
	fmt.Println("   i   derived µm   empirical µm   the lesser, each █ a factor of 1.5 over 0.5 µm")
	for i := 2; i <= 8; i++ {
		reach := must(t.Reach(i))
		lesser := min(reach.Derived, reach.Empirical).In(units.Micrometre)
		fmt.Printf("   %d %10.2f %13.2f   %s\n", i, reach.Derived.In(units.Micrometre), reach.Empirical.In(units.Micrometre),
			strings.Repeat("█", max(0, int(math.Round(math.Log(lesser/0.5)/math.Log(1.5))))))
	}
	fmt.Println("\n3  This bore     ovality V has i = 2 and a RADIAL amplitude of V/4")
	form := must(rings.Ovality(ovality, 0))
	c := must(t.Follow(list(form)))
	fmt.Printf("   A = %v/4 = %.1f µm: %.0f %% of the derived bound, %.0f %% of the empirical one: %s\n", ovality, form.Amplitude.In(units.Micrometre),
		100*c.Derived.Used, 100*c.Empirical.Used, strings.ToUpper(c.Verdict.String()))

	fmt.Println("\nTHE BORE (●, ovality out of scale) AND THE RING LYING FREE IN IT (○, round)")
	for y := 7; y >= -7; y-- {
		line := ""
		for x := -22; x <= 22; x++ {
			theta, radius := math.Atan2(float64(y), float64(x)/2), math.Hypot(float64(y), float64(x)/2)
			wall := 8 + 1.2*math.Cos(2*theta)
			switch {
			case math.Abs(radius-wall) < 0.5:
				line += "●"
			case math.Abs(radius-6.8) < 0.4 && math.Abs(theta) > 0.15:
				line += "○"
			default:
				line += " "
			}
		}
		fmt.Println("   " + strings.TrimRight(line, " "))
	}
	fmt.Println("   Above and below, where the bore is narrow, the ring touches; left and right its spring has to reach.")

	fmt.Println("\nA SECOND WAY: bend the ring in a thousand pieces")
	opened := 0.0
	const pieces = 1000
	for i := range pieces { // M = Ft·r·(1 − cos θ) turns each piece by M·r·dθ/(E·I); the end moves by that times its lever
		lever := 1 - math.Cos((float64(i)+0.5)/pieces*math.Pi)
		opened += 2 * ft * r * lever / (e * inertia) * r * lever * r * math.Pi / pieces
	}
	fmt.Printf("   pulled by Ft = %.3f N its gap closes by %.4f mm; m was %.4f mm\n", ft, opened, m)
	amplitude := form.Amplitude.In(units.Millimetre)
	load := e * inertia * 9 * amplitude / (r * r * r * r) // N/mm, to bend it into two lobes: (i² − 1)² = 9
	fmt.Printf("   to lie against A it needs %.4f N/mm at the crests; its spring gives Ft/r = %.4f N/mm: %.0f %%\n", load, ft/r, 100*load/(ft/r))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	fmt.Printf("   • Ovality, a difference of diameters, is put in as an amplitude: %v is then four times too much.\n", ovality)
	four := must(t.Reach(4))
	fmt.Printf("   • Ovality is feared and bolts are not: four head bolts draw four lobes, and of those the ring\n     follows %.1f µm or less, of two %.1f.\n",
		four.Empirical.In(units.Micrometre), must(t.Reach(2)).Empirical.In(units.Micrometre))
	fmt.Printf("   • Two rules for a law: they differ by %.1f times at i = 2. Where they disagree the answer is undecided.\n", must(t.Reach(2)).Derived.In(must(t.Reach(2)).Empirical))
	fmt.Printf("   • A worn ring: with half the closing it follows half as far. Orders unseen here: %v.\n", c.Unseen)
	fmt.Println("\nCAUTION: ring edges are sharp and rings fly: eyes guarded. Gas pressure helps a ring once the engine\nruns, and none of it is counted here.")
}

// list makes a list of what it is given, whatever that is.
func list[T any](xs ...T) []T { return xs }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
