// SPDX-License-Identifier: BSD-3-Clause

// Warmgauge is a lesson: setting ring, gauge and barrel are warm, and what each does to a size.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: the gauge was set in the store-room and carried out to a barrel that
// had stood in the sun. All of a village workshop.
var shipped = data{
	ring:    78 * units.Millimetre,               // size of the setting ring at 20 °C
	dial:    62 * units.Micrometre,               // what the dial shows in the barrel, plus is larger
	barrel:  material.AluminiumBlock(),           // what the barrel is made of
	setAt:   units.MustParseTemperature("22 °C"), // ring and gauge while setting
	usedAt:  units.MustParseTemperature("27 °C"), // gauge in use
	barrelT: units.MustParseTemperature("38 °C"), // barrel
}

type data struct {
	ring, dial             units.Length
	barrel                 material.Material
	setAt, usedAt, barrelT units.Temperature
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	if d.ring <= 0 {
		must(0, fmt.Errorf("a ring of %v; want one above 0", d.ring))
	}
	for _, t := range []*units.Temperature{&d.setAt, &d.usedAt, &d.barrelT} {
		if t.IsZero() {
			*t = units.ReferenceTemperature // not given
		}
	}
	steel := material.GaugeSteel()
	c := material.Comparison{
		Standard: d.ring, Deviation: d.dial,
		StandardAt: d.setAt, GaugeSetAt: d.setAt, GaugeUseAt: d.usedAt, PartAt: d.barrelT,
		StandardExpansion: steel.Expansion, GaugeExpansion: steel.Expansion, PartExpansion: d.barrel.Expansion,
	}
	l20, s := must(c.SizeAt20()), must(c.Sensitivities())
	if l20 <= 0 {
		must(0, fmt.Errorf("a dial of %v in a ring of %v; want a bore above 0", d.dial, d.ring))
	}
	naive := d.ring + d.dial
	a, b := steel.Expansion.In(1e-6*units.PerKelvin), d.barrel.Expansion.In(1e-6*units.PerKelvin)
	ringK, gaugeK, barrelK := d.setAt.AboveReference().In(units.Kelvin), d.usedAt.Sub(d.setAt).In(units.Kelvin), d.barrelT.AboveReference().In(units.Kelvin)

	fmt.Fprintln(w, "TEMPERATURE OF GAUGE AND BARREL: four temperatures, one size")
	fmt.Fprintf(w, "\nThe question: set to %v in a ring, the dial shows %+.1f µm in a barrel of %v.\nHow large is the bore at 20 °C, where all sizes are stated (ISO 1)?\n", d.ring, um(d.dial), d.barrelT)
	fmt.Fprintln(w, "\n1  The formula     D = [S·(1 + αs·ΔTs)·(1 + αg·(Tuse − Tset)) + d]/(1 + αb·ΔTb)\n"+
		"   D: size at 20 °C; S: ring; d: dial; α: growth a kelvin, s of the ring, g of the gauge, b of the barrel;\n"+
		"   ΔT: kelvins above 20 °C; Tset, Tuse: of the gauge while it is set and used")
	fmt.Fprintf(w, "   αs = αg = %.3g millionths (%s), αb = %.3g millionths (%s)\n", a, steel.Name, b, d.barrel.Name)
	fmt.Fprintf(w, "   ΔTs = %.4g, Tuse − Tset = %.4g, ΔTb = %.4g K\n", ringK, gaugeK, barrelK)
	fmt.Fprintf(w, "   D = [%s·(1 + %.3g·%.4g/1 000 000)·(1 + %.3g·%.4g/1 000 000) + %s]/(1 + %.3g·%.4g/1 000 000) = %s\n", mm(d.ring),
		a, ringK, a, gaugeK, mm(d.dial), b, barrelK, mm(l20))
	fmt.Fprintf(w, "   without any temperature S + d would be %s", mm(naive))
	switch off := naive - l20; {
	case off.Abs() < 50*units.Nanometre:
		fmt.Fprintln(w, ", which is the same: here temperature cancels.")
	case off > 0:
		fmt.Fprintf(w, ": %.1f µm too large\n", um(off))
	default:
		fmt.Fprintf(w, ": %.1f µm too small\n", um(-off))
	}

	fmt.Fprintln(w, "\n2  What each temperature is worth     by how much D changes for a kelvin")
	for _, row := range []struct {
		what string
		by   units.Length
	}{
		{"ring, a kelvin warmer while setting", s.StandardAt},
		{"gauge, a kelvin warmer while setting", s.GaugeSetAt},
		{"gauge, a kelvin warmer in use", s.GaugeUseAt},
		{"barrel, a kelvin warmer", s.PartAt},
	} {
		fmt.Fprintf(w, "   %-37s %6s µm\n", row.what, fmt.Sprintf("%+.2f", um(row.by)))
	}
	rest := s.GaugeUseAt + s.PartAt
	fmt.Fprintf(w, "   Ring and gauge warmed together while setting cancel. Barrel and gauge in use leave %+.2f µm a kelvin.\n", um(rest))

	ringGrew := must(steel.SizeAt(d.ring, d.setAt)) - d.ring
	gaugeGrew := must(steel.SizeAt(d.ring, d.usedAt)) - must(steel.SizeAt(d.ring, d.setAt))
	steps := []struct {
		what string
		by   units.Length
	}{{"dial", d.dial}, {"ring was off 20 °C", ringGrew}, {"gauge grew", gaugeGrew}, {"barrel back to 20 °C", l20 - naive - ringGrew - gaugeGrew}}
	low, high, at := units.Length(0), units.Length(0), units.Length(0)
	for _, step := range steps {
		at += step.by
		low, high = min(low, at), max(high, at)
	}
	mark := units.Micrometre
	for high-low > 80*mark {
		mark *= 2
	}
	column := func(l units.Length) int { return int((l.Round(mark) - low.Round(mark)) / mark) }
	fmt.Fprintf(w, "\nHOW THE READING BECOMES A SIZE (a mark is %v; │ the ring's size, ▒ more, ░ less)\n", mark)
	at = 0
	for _, step := range steps {
		line := []rune(strings.Repeat(" ", column(high)+1))
		from, to := column(min(at, at+step.by)), column(max(at, at+step.by))
		for i := from; i < to; i++ {
			line[i] = map[bool]rune{true: '▒', false: '░'}[step.by > 0]
		}
		at += step.by
		zero := column(0)
		fmt.Fprintf(w, "   %-21s%s│%s %+.1f µm\n", step.what, string(line[:zero]), string(line[zero:]), um(step.by))
	}
	fmt.Fprintf(w, "   at 20 °C: %s\n", mm(d.ring+at))

	fmt.Fprintln(w, "\nA SECOND WAY: let each part grow by itself, one after the other")
	grow := func(l units.Length, millionths, kelvin float64) units.Length {
		return l + must(units.Of(um(l)*millionths*kelvin/1e6, units.Micrometre))
	}
	warmRing := grow(d.ring, a, ringK)
	gauge := grow(warmRing, a, gaugeK)
	hot := gauge + d.dial
	cold := hot // what grows to the hot size: try, and correct
	for range 30 {
		cold += hot - grow(cold, b, barrelK)
	}
	fmt.Fprintf(w, "   the ring stood at %s, the gauge in use at %s, the barrel at %s:\n   at 20 °C the barrel is %s (the library: %s)\n", mm(warmRing), mm(gauge), mm(hot), mm(cold), mm(l20))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	other, name := material.GreyIron(), "iron"
	if d.barrel.Name == other.Name {
		other, name = material.AluminiumBlock(), "aluminium"
	}
	c.PartExpansion = other.Expansion
	wrong := must(c.SizeAt20())
	fmt.Fprintf(w, "   • The barrel is taken for %s: %s, off by %.1f µm.\n", name, mm(wrong), um(wrong-l20))
	metres := d.ring.In(units.Metre)
	fmt.Fprintf(w, "   • \"It is all one room, so temperature cancels.\" A barrel of this metal and a ring of steel, both at 38 °C, differ\n     by %.1f µm.\n", (b-a)*metres*18)
	fmt.Fprintf(w, "   • A bore read just after honing: each kelvin is %.1f µm. The last pass is judged cold.\n", -um(s.PartAt))
	fmt.Fprintln(w, "   • An iron sleeve held in an aluminium barrel grows with neither coefficient.")
	fmt.Fprintln(w, "\nCAUTION: let everything soak at one temperature before a size is trusted.")
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func um(l units.Length) float64 { return l.In(units.Micrometre) }

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
