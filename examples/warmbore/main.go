// SPDX-License-Identifier: BSD-3-Clause

// Warmbore is a lesson: what the dial shows on a warm bore when it is as large as wanted.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: a bore warm from the boring bar, and a gauge from a warm pocket, in a village
// workshop. The gauge was set in a ring in the store-room.
var shipped = data{
	wanted: units.MustParseLength("78.450 mm"),  // size to bore to, at 20 °C
	ring:   units.MustParseLength("78.500 mm"),  // the setting ring, at 20 °C
	metal:  material.GreyIron(),                 // of the cylinder
	setAt:  units.MustParseTemperature("20 °C"), // ring and gauge while setting
	gauge:  units.MustParseTemperature("32 °C"), // gauge now
	bore:   units.MustParseTemperature("38 °C"), // bore now
}

type data struct {
	wanted, ring       units.Length
	metal              material.Material
	setAt, gauge, bore units.Temperature
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	for _, t := range []*units.Temperature{&d.setAt, &d.gauge, &d.bore} {
		if t.IsZero() {
			*t = units.ReferenceTemperature // not given
		}
	}
	steel := material.GaugeSteel()
	now := material.Comparison{Standard: d.ring, StandardAt: d.setAt, GaugeSetAt: d.setAt, GaugeUseAt: d.gauge, PartAt: d.bore,
		StandardExpansion: steel.Expansion, GaugeExpansion: steel.Expansion, PartExpansion: d.metal.Expansion}
	shows := must(now.DialReading(d.wanted))
	cold := d.wanted - d.ring
	as, ab := steel.Expansion.In(1e-6*units.PerKelvin), d.metal.Expansion.In(1e-6*units.PerKelvin)
	kb, kr, kg := d.bore.AboveReference().In(units.Kelvin), d.setAt.AboveReference().In(units.Kelvin), d.gauge.Sub(d.setAt).In(units.Kelvin)

	fmt.Fprintln(w, "THE DIAL ON A WARM BORE: from the size to what is shown")
	fmt.Fprintf(w, "\nThe question: the bore is to be %v at 20 °C. It is at %v now, the gauge at %v,\nset in a ring of %v at %v. At which mark of the dial is it there?\n", d.wanted, d.bore, d.gauge, d.ring, d.setAt)
	fmt.Fprintln(w, "\n1  The bore, warm     B = wanted·(1 + αb·ΔTb)     αb: growth a kelvin of its metal; ΔTb: kelvins above 20 °C")
	warm := must(d.metal.SizeAt(d.wanted, d.bore))
	fmt.Fprintf(w, "   B = %s·(1 + %.3g·%.4g/1 000 000) = %s\n", mm(d.wanted), ab, kb, mm(warm))
	fmt.Fprintln(w, "\n2  Zero of the dial, warm     Z = ring·(1 + αs·ΔTr)·(1 + αs·ΔTg)\n"+
		"   αs: growth of steel, of ring and gauge; ΔTr: of the ring while setting; ΔTg: of the gauge since then")
	zero := must(steel.SizeAt(d.ring, d.setAt))
	zero += must(units.Of(zero.In(units.Micrometre)*as*kg/1e6, units.Micrometre))
	fmt.Fprintf(w, "   Z = %s·(1 + %.3g·%.4g/1 000 000)·(1 + %.3g·%.4g/1 000 000) = %s\n", mm(d.ring), as, kr, as, kg, mm(zero))
	fmt.Fprintf(w, "\n3  The dial     B − Z = %+.1f µm     cold it would be wanted − ring = %+.1f µm\n", um(shows), um(cold))
	switch off := shows - cold; {
	case off.Abs() < 50*units.Nanometre:
		fmt.Fprintln(w, "   No difference: what the bore has grown the gauge has grown too.")
	case off > 0:
		fmt.Fprintf(w, "   Bored to the cold mark it would end %.1f µm too SMALL.\n", um(off))
	default:
		fmt.Fprintf(w, "   Bored to the cold mark it would end %.1f µm too LARGE, and metal does not come back.\n", -um(off))
	}

	step := units.Micrometre
	low, high := min(0, shows, cold), max(0, shows, cold)
	for high-low > 80*step {
		step *= 2
	}
	at := func(l units.Length) int { return int((l - low) / step) }
	fmt.Fprintf(w, "\nTHE DIAL (a mark is %v, plus is larger; │ zero, ○ the cold mark, ● the mark now)\n", step)
	line := []rune(strings.Repeat("·", at(high)+1))
	line[at(0)], line[at(cold)] = '│', '○'
	line[at(shows)] = '●'
	fmt.Fprintf(w, "   %s\n", string(line))

	fmt.Fprintln(w, "\nA SECOND WAY: add up what each part has grown, in micrometres")
	metres := d.wanted.In(units.Metre)
	grown, gone := ab*metres*kb, as*d.ring.In(units.Metre)*(kr+kg)
	fmt.Fprintf(w, "   cold %+.1f, the bore %+.1f, the gauge %+.1f: %.0f µm (the library: %.0f µm)\n", um(cold), grown, -gone, um(cold)+grown-gone, um(shows))
	back := now
	back.Deviation = shows
	fmt.Fprintf(w, "   and back, from the dial to the size at 20 °C, by dividing: %s (the library: %s)\n", mm(must(units.Of((um(zero)+um(shows))/(1+ab*kb/1e6), units.Micrometre))), mm(must(back.SizeAt20())))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • The bore alone is corrected: %.1f µm. The gauge is warm as well, and that is %.1f µm the other way.\n", grown, gone)
	other := material.AluminiumBlock()
	if d.metal.Name == other.Name {
		other = material.GreyIron()
	}
	now.PartExpansion = other.Expansion
	fmt.Fprintf(w, "   • The wrong metal: of %s the mark would be %+.1f µm.\n", other.Name, um(must(now.DialReading(d.wanted))))
	fmt.Fprintf(w, "   • Guessed temperatures: a kelvin of the bore is %.1f µm.\n", ab*metres)
	fmt.Fprintln(w, "   • The last cut by a warm mark. This is for roughing; the finished size is judged cold.")
	fmt.Fprintln(w, "\nCAUTION: stop the bar before the gauge goes in. Work clamped, eyes guarded, no gloves or loose sleeves near\nanything that turns.")
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
