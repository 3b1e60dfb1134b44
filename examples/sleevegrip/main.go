// SPDX-License-Identifier: BSD-3-Clause

// Sleevegrip is a lesson: what an interference does to a sleeve and its barrel, and where heat takes
// the grip away.
package main

import (
	"fmt"
	"log"
	"strings"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: an iron sleeve for a pump's aluminium barrel, in a village workshop.
var joint = sleeve.Joint{
	Bore: units.MustParseLength("67 mm"), Seat: units.MustParseLength("73 mm"),
	Outer:        units.Limits{Min: units.MustParseLength("90 mm"), Max: units.MustParseLength("90 mm")},
	Interference: sleeve.Diametral{Least: units.MustParseLength("0.06 mm"), Greatest: units.MustParseLength("0.06 mm")},
	Sleeve:       exact(material.GreyIron()), Barrel: exact(material.AluminiumBlock()),
}

func main() {
	fmt.Println("A SLEEVE'S GRIP WHEN HOT")
	delta := joint.Interference.Greatest
	a, c, b := mm(joint.Bore)/2, mm(joint.Seat)/2, mm(joint.Outer.Max)/2
	ei, eo := joint.Sleeve.Young.In(units.Megapascal), joint.Barrel.Young.In(units.Megapascal)
	alphaS, alphaB := joint.Sleeve.Expansion.In(1e-6*units.PerKelvin), joint.Barrel.Expansion.In(1e-6*units.PerKelvin)
	fmt.Printf("\nThe question: a sleeve %v by %v sits in %s with %v of interference, on the diameter.\nHow hard does it sit, and at what temperature has it come loose?\n", joint.Bore, joint.Seat, joint.Barrel.Name, delta)

	fmt.Println("\n1  The grip cold     p = (δ/2)/c / [(Ko + νo)/Eo + (Ki − νi)/Ei],\n   Ki = (c² + a²)/(c² − a²),  Ko = (b² + c²)/(b² − c²)")
	fit := must(joint.Fit())
	ki, ko := (c*c+a*a)/(c*c-a*a), (b*b+c*c)/(b*b-c*c)
	p := mm(delta) / 2 / c / ((ko+joint.Barrel.Poisson)/eo + (ki-joint.Sleeve.Poisson)/ei)
	fmt.Printf("   a, c, b = %.4g, %.4g, %.4g mm;  Ki = %.3f, Ko = %.3f\n", a, c, b, ki, ko)
	fmt.Printf("   p = (%.3g/%.4g)/[(%.3f + %.2f)/%.6g + (%.3f − %.2f)/%.6g] = %.2f MPa\n", mm(delta)/2, c, ko, joint.Barrel.Poisson, eo, ki, joint.Sleeve.Poisson, ei, p)
	fmt.Printf("   the library: p = %.2f MPa;  hoop stress: barrel's bore %+.1f MPa, sleeve's bore %+.1f MPa\n", fit.Pressure.Greatest.In(units.Megapascal), fit.BarrelHoop.Greatest.In(units.Megapascal), fit.SleeveHoop.Least.In(units.Megapascal))
	fmt.Printf("   the bore closes by %.1f µm: it is honed after fitting, not before\n", fit.BoreCloses.Greatest.In(units.Micrometre))

	fmt.Println("\n2  The interference warm     δ(T) = (seat + δ)(1 + αs·ΔT) − seat·(1 + αb·ΔT), both parts at T")
	fmt.Printf("   αs = %.3ge-6/K (%s), αb = %.3ge-6/K (%s)\n", alphaS, joint.Sleeve.Name, alphaB, joint.Barrel.Name)
	loose := must(joint.Loosens(sleeve.Condition{})).Hot.Least

	fmt.Println("\nTHE GRIP, both parts at one temperature (█ 0.1 MPa of pressure, ░ a micrometre of gap)")
	for t := 20.0; t <= 140; t += 10 {
		both := must(units.Celsius(t))
		s := must(joint.At(sleeve.Condition{Sleeve: both, Barrel: both}))
		grip, gap := s.Pressure.Greatest.In(units.Megapascal), -s.Interference.Greatest.In(units.Micrometre)
		fmt.Printf("   %3.0f °C  δ = %+6.1f µm  p = %4.2f MPa  %s%s\n", t, -gap, grip, strings.Repeat("█", int(grip*10+0.5)), strings.Repeat("░", max(0, int(gap+0.5))))
	}
	fmt.Printf("   The grip goes at %s.\n", at(loose))

	fmt.Println("\n3  The running engine: the sleeve is the hotter part, and that helps")
	for _, t := range [][2]float64{{160, 120}, {140, 120}, {120, 120}} {
		s := must(joint.At(sleeve.Condition{Sleeve: must(units.Celsius(t[0])), Barrel: must(units.Celsius(t[1]))}))
		fmt.Printf("   sleeve %.0f °C, barrel %.0f °C: δ = %+.1f µm, grips: %v\n", t[0], t[1], s.Interference.Least.In(units.Micrometre), s.Grips)
	}

	fmt.Println("\nA SECOND WAY: halve the interval until δ(T) = 0, with the growth of each part alone")
	low, high := 0.0, 500.0
	for high-low > 1e-6 {
		dt := (low + high) / 2
		if mm(joint.Seat+delta)*(1+alphaS*1e-6*dt) > mm(joint.Seat)*(1+alphaB*1e-6*dt) {
			low = dt
		} else {
			high = dt
		}
	}
	if high == 500 {
		fmt.Println("   δ stays above 0 as far as 520 °C")
	} else {
		fmt.Printf("   loose at 20 °C + %.1f K = %.1f °C (the library: %s)\n", low, 20+low, at(loose))
	}

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	double := joint
	double.Interference = sleeve.Diametral{Least: 2 * delta, Greatest: 2 * delta}
	fmt.Printf("   • Textbooks print the RADIAL interference: %v taken for it makes %.1f MPa of %.1f.\n", delta, must(double.Fit()).Pressure.Greatest.In(units.Megapascal), fit.Pressure.Greatest.In(units.Megapascal))
	spread := joint
	spread.Sleeve, spread.Barrel = must(material.ByName(joint.Sleeve.Name)), must(material.ByName(joint.Barrel.Name))
	goes := must(spread.Loosens(sleeve.Condition{})).Hot
	fmt.Printf("   • One coefficient is believed: with the spread of handbooks the grip goes somewhere from\n     %s to %s.\n", at(goes.Least), at(goes.Greatest))
	heat := must(joint.HeatBarrel(sleeve.Assembling{Slip: 50 * units.Micrometre}))
	fmt.Printf("   • Pressed in cold, which shaves the seat. At %.0f °C the barrel lets the sleeve drop in with\n     0.05 mm to spare.\n", heat.Barrel.Celsius())
	fmt.Println("   • A loose sleeve passes no heat: it gets hotter, the barrel too, and it stays loose.")
	lines := strings.NewReplacer("; ", ";\n", ". ", ".\n")
	fmt.Printf("\nCAUTION: %s\n%s\n", lines.Replace(sleeve.HotParts.Text()), lines.Replace(sleeve.EvenHeat.Text()))
}

// exact is a material whose expansion is taken as known; the last part of the lesson does not.
func exact(m material.Material) material.Material {
	m.Within = 0
	return m
}

// at prints a temperature at which the grip goes; zero stands for never.
func at(t units.Temperature) string {
	if t.IsZero() {
		return "no temperature"
	}
	return fmt.Sprintf("%.1f °C", t.Celsius())
}

func mm(l units.Length) float64 { return l.In(units.Millimetre) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
