// SPDX-License-Identifier: BSD-3-Clause

// Sleevegrip is a lesson: what interference does to sleeve and barrel, and where heat ends the grip.
package main

import (
	"errors"
	"fmt"
	"io"
	"os"
	"strings"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: an iron sleeve for a pump's aluminium barrel, in a village workshop.
var shipped = data{
	bore:    units.MustParseLength("67 mm"),   // of the sleeve
	seat:    units.MustParseLength("73 mm"),   // the hole in the barrel
	outside: units.MustParseLength("90 mm"),   // of the barrel
	over:    units.MustParseLength("0.06 mm"), // the sleeve's outside less the seat, on the diameter
	sleeve:  material.GreyIron(),
	barrel:  material.AluminiumBlock(),
}

type data struct {
	bore, seat, outside, over units.Length
	sleeve, barrel            material.Material
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	spread := sleeve.Joint{Bore: d.bore, Seat: d.seat, Outer: units.Limits{Min: d.outside, Max: d.outside},
		Interference: sleeve.Diametral{Min: d.over, Max: d.over}, Sleeve: d.sleeve, Barrel: d.barrel}
	joint := spread
	joint.Sleeve.Within, joint.Barrel.Within = 0, 0 // until the end their expansion is taken as known
	fit, loosens := must(joint.Fit()), must(joint.LooseAt(sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature}))
	a, c, b := mm(d.bore)/2, mm(d.seat)/2, mm(d.outside)/2
	ei, eo := d.sleeve.Young.In(units.Megapascal), d.barrel.Young.In(units.Megapascal)
	as, ab := d.sleeve.Expansion.In(1e-6*units.PerKelvin), d.barrel.Expansion.In(1e-6*units.PerKelvin)
	pressure := fit.Pressure.Max.In(units.Megapascal)

	fmt.Fprintln(w, "A SLEEVE'S GRIP WHEN HOT")
	fmt.Fprintf(w, "\nThe question: a sleeve %v by %v, of %s, sits in %s with %v of interference, on\nthe diameter. How hard does it sit, and at what temperature has it come loose?\n", d.bore, d.seat, d.sleeve.Name, d.barrel.Name, d.over)

	fmt.Fprintln(w, "\n1  The grip cold     p = (δ/2)/c / [(Ko + νo)/Eo + (Ki − νi)/Ei]\n"+
		"   Ki = (c² + a²)/(c² − a²), Ko = (b² + c²)/(b² − c²)\n"+
		"   p: pressure; δ: interference; a, c, b: radius of bore, seat and outside; i: the inner part, o: the outer;\n"+
		"   E: Young's modulus, how stiff a metal is; ν: Poisson's ratio, how much thinner it gets when stretched")
	ki, ko := (c*c+a*a)/(c*c-a*a), (b*b+c*c)/(b*b-c*c)
	p := mm(d.over) / 2 / c / ((ko+d.barrel.Poisson)/eo + (ki-d.sleeve.Poisson)/ei)
	fmt.Fprintf(w, "   a, c, b = %.4g, %.4g, %.4g mm;  Ki = %.3f, Ko = %.3f\n", a, c, b, ki, ko)
	fmt.Fprintf(w, "   p = (%.3g/%.4g)/[(%.3f + %.2f)/%.0f + (%.3f − %.2f)/%.0f] = %.2f MPa\n", mm(d.over)/2, c, ko, d.barrel.Poisson, eo, ki, d.sleeve.Poisson, ei, p)
	fmt.Fprintf(w, "   along the circle the barrel's bore is stretched with %.1f MPa, the sleeve's bore pressed with %.1f MPa\n", fit.BarrelHoop.Max.In(units.Megapascal), -fit.SleeveHoop.Min.In(units.Megapascal))
	fmt.Fprintf(w, "   the bore closes by %.1f µm: it is honed after fitting, not before\n", fit.BoreCloses.Max.In(units.Micrometre))

	fmt.Fprintln(w, "\n2  The interference warm     δ(T) = (seat + δ)·(1 + αs·ΔT) − seat·(1 + αb·ΔT)     T: of both parts\n"+
		"   α: growth a kelvin, s of the sleeve, b of the barrel; ΔT: kelvins above 20 °C")
	fmt.Fprintf(w, "   αs = %.3g and αb = %.3g millionths: ", as, ab)
	hot, cold := loosens.Hot.Min, loosens.Cold.Max
	switch {
	case !hot.IsZero():
		fmt.Fprintf(w, "the barrel grows away from the sleeve.\n   The grip goes at %s.\n", at(hot))
	case !cold.IsZero():
		fmt.Fprintf(w, "the sleeve grows into the barrel, and heat only tightens it.\n   The grip goes in the cold, at %s.\n", at(cold))
	default:
		fmt.Fprintln(w, "they grow so much alike that nothing up to 1000 °C loosens it.")
	}

	step := 10.0
	for !hot.IsZero() && 20+11*step < hot.Celsius() && step < 80 { // nothing is reckoned beyond 1000 °C
		step *= 2
	}
	fmt.Fprintln(w, "\nTHE GRIP, both parts at one temperature (█ pressure, the most of it 40 marks; ░ gap, a mark for 2 µm)")
	var grips, gaps []float64
	for i := range 13 {
		both := must(units.Celsius(20 + float64(i)*step))
		s := must(joint.Stresses(sleeve.Warm{Sleeve: both, Barrel: both}))
		grips, gaps = append(grips, s.Pressure.Max.In(units.Megapascal)), append(gaps, -s.Interference.Max.In(units.Micrometre))
	}
	most := max(grips[0], grips[12])
	for i, grip := range grips {
		gap := max(0, int(gaps[i]/2+0.5))
		bar := strings.Repeat("█", int(grip/most*40+0.5)) + strings.Repeat("░", min(gap, 60))
		if gap > 60 {
			bar += " and more"
		}
		fmt.Fprintf(w, "   %3.0f °C  δ = %+6.1f µm  p = %5.2f MPa  %s\n", 20+float64(i)*step, -gaps[i], grip, bar)
	}

	fmt.Fprintln(w, "\n3  The running engine: the sleeve is the hotter part, and that helps")
	for _, t := range [][2]float64{{160, 120}, {140, 120}, {120, 120}} {
		s := must(joint.Stresses(sleeve.Warm{Sleeve: must(units.Celsius(t[0])), Barrel: must(units.Celsius(t[1]))}))
		fmt.Fprintf(w, "   sleeve %.0f °C, barrel %.0f °C: δ = %+.1f µm, it %s\n", t[0], t[1], s.Interference.Min.In(units.Micrometre), map[bool]string{true: "grips", false: "is LOOSE"}[s.Interference.Min > 0])
	}

	fmt.Fprintln(w, "\nA SECOND WAY: what that pressure does to each part; and halve an interval until δ(T) = 0")
	opens, shrinks := 2000*c*pressure*(ko+d.barrel.Poisson)/eo, 2000*c*pressure*(ki-d.sleeve.Poisson)/ei
	fmt.Fprintf(w, "   the seat opens by %.1f µm, the sleeve's outside shrinks by %.1f µm: together %.1f µm (the library: %.1f µm)\n", opens, shrinks, opens+shrinks, d.over.In(units.Micrometre))
	if low, high := 0.0, 980.0; !hot.IsZero() {
		for high-low > 1e-6 {
			dt := (low + high) / 2
			if mm(d.seat+d.over)*(1+as*1e-6*dt) > mm(d.seat)*(1+ab*1e-6*dt) {
				low = dt
			} else {
				high = dt
			}
		}
		fmt.Fprintf(w, "   loose %.1f K above 20 °C, at %.1f °C (the library: %.1f °C)\n", low, 20+low, hot.Celsius())
	} else {
		fmt.Fprintf(w, "   at 1000 °C the interference is still %.1f µm\n", 1000*(mm(d.seat+d.over)*(1+as*980e-6)-mm(d.seat)*(1+ab*980e-6)))
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • Textbooks print the RADIAL interference, half of this: %v taken for it makes %.1f MPa of %.1f.\n", d.over, 2*pressure, pressure)
	goes := must(spread.LooseAt(sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature})).Hot
	switch {
	case goes.Min.IsZero():
		fmt.Fprintln(w, "   • One growth is believed of each metal. Here the spread of handbooks changes nothing: heat loosens nothing.")
	case goes.Max.IsZero():
		fmt.Fprintf(w, "   • One growth is believed of each metal: with the spread of handbooks the grip may go at %s, or never.\n", at(goes.Min))
	default:
		fmt.Fprintf(w, "   • One growth is believed of each metal: with the spread of handbooks the grip goes somewhere from\n     %s to %s.\n", at(goes.Min), at(goes.Max))
	}
	fmt.Fprint(w, "   • Pressed in cold, which shaves the seat. ")
	switch heat, err := joint.HeatTo(sleeve.Assembling{Slip: 50 * units.Micrometre, Sleeve: units.ReferenceTemperature}); {
	case errors.Is(err, sleeve.ErrTooHot):
		fmt.Fprintln(w, "To let the sleeve drop in with 0.05 mm to spare the barrel\n     would be hotter than the 200 °C that it stands: chill the sleeve too.")
	default:
		fmt.Fprintf(w, "At %s the barrel lets the sleeve drop in with\n     0.05 mm to spare.\n", at(must(heat, err).Barrel))
	}
	fmt.Fprintln(w, "   • A loose sleeve passes no heat: it gets hotter, and the wall round it does what it likes.")
	lines := strings.NewReplacer("; ", ";\n", ". ", ".\n")
	fmt.Fprintf(w, "\nCAUTION: %s\n%s\n", lines.Replace(sleeve.CautionHotParts), lines.Replace(sleeve.CautionEvenHeat))
}

func at(t units.Temperature) string { return fmt.Sprintf("%.1f °C", t.Celsius()) }

func mm(l units.Length) float64 { return l.In(units.Millimetre) }

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
