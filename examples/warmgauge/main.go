// SPDX-License-Identifier: BSD-3-Clause

// Warmgauge is a lesson: the temperatures of the setting ring, the gauge and the barrel, and what
// each does to a size.
package main

import (
	"fmt"
	"log"
	"strings"

	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: the gauge was set in the store-room and carried out to a barrel that
// had stood in the sun. All of a village workshop.
var (
	ring    = 78 * units.Millimetre               // size of the setting ring at 20 °C
	dial    = 62 * units.Micrometre               // what the dial shows in the barrel, plus is larger
	barrel  = material.AluminiumBlock()           // what the barrel is made of
	setAt   = units.MustParseTemperature("22 °C") // ring and gauge while setting
	usedAt  = units.MustParseTemperature("27 °C") // gauge in use
	barrelT = units.MustParseTemperature("38 °C") // barrel
)

func main() {
	steel := material.GaugeSteel()
	c := material.Comparison{
		Standard: ring, Deviation: dial,
		StandardAt: setAt, GaugeSetAt: setAt, GaugeUseAt: usedAt, PartAt: barrelT,
		StandardExpansion: steel.Expansion, GaugeExpansion: steel.Expansion, PartExpansion: barrel.Expansion,
	}
	l20 := must(c.SizeAt20())
	naive := ring + dial
	a, b := steel.Expansion.In(1e-6*units.PerKelvin), barrel.Expansion.In(1e-6*units.PerKelvin)
	ringK, gaugeK, barrelK := setAt.AboveReference().In(units.Kelvin), usedAt.Sub(setAt).In(units.Kelvin), barrelT.AboveReference().In(units.Kelvin)

	fmt.Println("TEMPERATURE OF GAUGE AND BARREL: four temperatures, one size")
	fmt.Printf("\nThe question: set to %v in a ring, the dial shows %+.0f µm in a warm barrel.\nHow large is the bore at 20 °C, where all sizes are stated (ISO 1)?\n", ring, dial.In(units.Micrometre))
	fmt.Printf("\n1  The formula     L20 = [Ls·(1 + αs·ΔTs)·(1 + αg·(Tuse − Tset)) + d] / (1 + αp·ΔTp)\n")
	fmt.Printf("   Ls = %v, d = %v\n", ring, dial)
	fmt.Printf("   αs = αg = %v (%s), αp = %v (%s)\n", steel.Expansion, steel.Name, barrel.Expansion, barrel.Name)
	fmt.Printf("   ΔTs = %v − 20 °C = %v, Tuse − Tset = %v − %v = %v, ΔTp = %v − 20 °C = %v\n",
		setAt, setAt.AboveReference(), usedAt, setAt, usedAt.Sub(setAt), barrelT, barrelT.AboveReference())
	fmt.Printf("   L20 = [%.6g·(1 + %.3ge-6·%.3g)·(1 + %.3ge-6·%.3g) + %.4g]/(1 + %.3ge-6·%.3g) = %s\n", ring.In(units.Millimetre),
		a, ringK, a, gaugeK, dial.In(units.Millimetre), b, barrelK, mm(l20))
	fmt.Printf("   without any temperature Ls + d would be %s: %s too large\n", mm(naive), um(naive-l20))

	fmt.Println("\n2  What each temperature is worth     the derivatives of L20")
	s := must(c.Sensitivities())
	for _, row := range []struct {
		what string
		by   units.Length
	}{
		{"ring, a kelvin warmer while setting", s.StandardAt},
		{"gauge, a kelvin warmer while setting", s.GaugeSetAt},
		{"gauge, a kelvin warmer in use", s.GaugeUseAt},
		{"barrel, a kelvin warmer", s.PartAt},
	} {
		fmt.Printf("   %-37s %6s µm\n", row.what, fmt.Sprintf("%+.2f", row.by.In(units.Micrometre)))
	}
	fmt.Println("   Ring and gauge warmed together while setting cancel; barrel and gauge in use do not.")

	fmt.Println("\nHOW THE READING BECOMES A SIZE (a mark is a micrometre)")
	ringGrew := must(steel.SizeAt(ring, setAt)) - ring
	gaugeGrew := must(steel.SizeAt(ring, usedAt)) - must(steel.SizeAt(ring, setAt))
	warm := naive + ringGrew + gaugeGrew
	barrelGrew := l20 - warm
	at := ring
	for _, row := range []struct {
		what string
		by   units.Length
	}{{"dial", dial}, {"ring was warm", ringGrew}, {"gauge grew", gaugeGrew}, {"barrel back to 20 °C", barrelGrew}} {
		from, to := at-ring, at+row.by-ring
		at += row.by
		left, right := min(from, to), max(from, to)
		mark := "▒"
		if row.by < 0 {
			mark = "░"
		}
		pad := func(l units.Length) int { return max(0, int(l.Round(units.Micrometre)/units.Micrometre)) }
		fmt.Printf("   %-21s│%s%s %+.1f µm\n", row.what, strings.Repeat(" ", pad(left)), strings.Repeat(mark, pad(right)-pad(left)), row.by.In(units.Micrometre))
	}
	fmt.Printf("   %-21s└ at 20 °C: %s\n", "", mm(at))

	fmt.Println("\nA SECOND WAY: bring each part to 20 °C by itself, in plain micrometres")
	metres := ring.In(units.Metre)
	r, g, p := float64(a*metres*ringK), float64(a*metres*gaugeK), float64(b*metres*barrelK)
	byHand := naive.In(units.Millimetre) + (r+g-p)/1000
	fmt.Printf("   ring %.3g·%.4g·%.3g = %+.2f µm, gauge %.3g·%.4g·%.3g = %+.2f µm, barrel −%.3g·%.4g·%.3g = %+.2f µm\n",
		a, metres, ringK, r, a, metres, gaugeK, g, b, metres, barrelK, -p)
	fmt.Printf("   %s %+.4f mm = %.4f mm; the formula has %s: %.0f nm between them,\n   which is growth of the growth.\n", mm(naive), (r+g-p)/1000, byHand, mm(l20), (byHand-l20.In(units.Millimetre))*1e6)

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	c.PartExpansion = material.GreyIron().Expansion
	fmt.Printf("   • The barrel is taken for iron: %s, wrong by %s.\n", mm(must(c.SizeAt20())), um(must(c.SizeAt20())-l20))
	fmt.Printf("   • \"It is all one room, so temperature cancels.\" In iron it nearly does; this barrel and a\n     ring of steel, both at %v, differ by %.1f µm.\n", barrelT, float64((b-a)*metres*barrelK))
	fmt.Printf("   • A bore read just after honing: each kelvin is %.1f µm. The last pass is judged cold.\n", -s.PartAt.In(units.Micrometre))
	fmt.Println("   • An iron sleeve held in an aluminium barrel grows with neither coefficient.")
	fmt.Println("\nCAUTION: let everything soak at one temperature before a size is trusted.")
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func um(l units.Length) string { return fmt.Sprintf("%.1f µm", l.In(units.Micrometre)) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
