// SPDX-License-Identifier: BSD-3-Clause

// Whichfit is a lesson: an interference by the classes of ISO 286, and the pressure it makes.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
)

// Change these. Invented data: an iron sleeve for a pump's aluminium barrel, in a village workshop, made to a
// drawing that gives classes.
var shipped = data{
	size:    units.MustParseLength("73 mm"), // nominal, of seat and sleeve
	seat:    "H7",                           // class of the hole
	outside: "s6",                           // class of the sleeve
	bore:    units.MustParseLength("67 mm"), // of the sleeve
	barrel:  units.MustParseLength("90 mm"), // outside of the barrel
	metal:   material.GreyIron(),            // of the sleeve
	round:   material.AluminiumBlock(),      // of the barrel
}

type data struct {
	size          units.Length
	seat, outside string
	bore, barrel  units.Length
	metal, round  material.Material
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	hole, shaft := must(sleeve.ParseClass(d.seat)), must(sleeve.ParseClass(d.outside))
	fit := must(sleeve.DiametralFromClasses(d.size, hole, shaft))
	in, out := must(hole.Sizes(d.size)), must(shaft.Sizes(d.size))
	joint := sleeve.Joint{Bore: d.bore, Seat: d.size, Outer: units.Limits{Min: d.barrel, Max: d.barrel}, Interference: fit, Sleeve: d.metal, Barrel: d.round}
	cold := sleeve.Warm{Sleeve: units.ReferenceTemperature, Barrel: units.ReferenceTemperature}
	holds := fit.Max > 0
	var state sleeve.Stresses
	if holds {
		state = must(joint.Fit())
	}

	fmt.Fprintln(w, "WHICH FIT? From two letters to a pressure")
	fmt.Fprintf(w, "\nThe question: a sleeve of %v %v in a seat %v. How much larger is it, and how hard is it held?\n", d.size, shaft, hole)
	fmt.Fprintln(w, "\n1  The windows     a letter says where the window stands against the size, a number how wide it is (ISO 286)")
	fmt.Fprintf(w, "   seat    %-3v %s to %s\n   sleeve  %-3v %s to %s\n", hole, mm(in.Min), mm(in.Max), shaft, mm(out.Min), mm(out.Max))
	fmt.Fprintln(w, "\n2  The interference     δ = sleeve − seat, on the diameter; least and greatest of any two such parts")
	fmt.Fprintf(w, "   least    %s − %s = %+.1f µm\n   greatest %s − %s = %+.1f µm\n", mm(out.Min), mm(in.Max), um(fit.Min), mm(out.Max), mm(in.Min), um(fit.Max))
	switch {
	case fit.Min > 0:
		fmt.Fprintln(w, "   Every pair holds: an interference fit.")
	case holds:
		fmt.Fprintln(w, "   Some pairs hold and some slip: a transition fit. For a sleeve that is no fit at all.")
	default:
		fmt.Fprintln(w, "   No pair holds: a clearance fit. Nothing presses, and no heat gets across.")
	}
	fmt.Fprintln(w, "\n3  The pressure     p = (δ/2)/c / [(Ko + νo)/Eo + (Ki − νi)/Ei]\n"+
		"   Ki = (c² + a²)/(c² − a²), Ko = (b² + c²)/(b² − c²);  a, b, c: radius of bore, outside and seat;\n"+
		"   E: Young's modulus, how stiff a metal is; ν: Poisson's ratio, how much thinner it gets when stretched;\n"+
		"   i: the sleeve, o: the barrel")
	a, b, c := d.bore.In(units.Millimetre)/2, d.barrel.In(units.Millimetre)/2, d.size.In(units.Millimetre)/2
	eo, ei := d.round.Young.In(units.Megapascal), d.metal.Young.In(units.Megapascal)
	ki, ko := (c*c+a*a)/(c*c-a*a), (b*b+c*c)/(b*b-c*c)
	yields := (ko+d.round.Poisson)/eo + (ki-d.metal.Poisson)/ei // mm of radius for each mm of it and MPa
	if holds {
		fmt.Fprintf(w, "   Ki = %.3f, Ko = %.3f;  p = %.2f to %.2f MPa\n", ki, ko, mpa(state.Pressure.Min), mpa(state.Pressure.Max))
		fmt.Fprintf(w, "   at most the barrel's bore is stretched with %.1f MPa, and the sleeve's bore closes by %.1f µm\n", mpa(state.BarrelHoop.Max), um(state.BoreCloses.Max))
	} else {
		fmt.Fprintln(w, "   There is none to reckon.")
	}

	low, high := min(in.Min, out.Min), max(in.Max, out.Max)
	step := units.Micrometre
	for high-low > 80*step {
		step *= 2
	}
	bar := func(l units.Limits) string {
		return strings.Repeat(" ", int((l.Min-low)/step)) + strings.Repeat("█", 1+int((l.Max-low)/step)-int((l.Min-low)/step))
	}
	fmt.Fprintf(w, "\nTHE WINDOWS (a mark is %v, from %s on)\n   seat    %s\n   sleeve  %s\n", step, mm(low), bar(in), bar(out))

	fmt.Fprintln(w, "\nA SECOND WAY: the deviations alone; and the pressure from what each part gives way")
	ih, is := must(hole.Deviations(d.size)), must(shaft.Deviations(d.size))
	fmt.Fprintf(w, "   least %.1f − (%.1f) = %.1f µm (the library: %.1f µm), greatest %.1f − (%.1f) = %.1f µm (the library: %.1f µm)\n",
		um(is.Min), um(ih.Max), um(is.Min-ih.Max), um(fit.Min), um(is.Max), um(ih.Min), um(is.Max-ih.Min), um(fit.Max))
	if holds {
		one := 2 * c * yields * 1000 // µm of diameter for each MPa
		fmt.Fprintf(w, "   one MPa opens the seat and shrinks the sleeve by %.2f µm together: %.1f µm make %.2f MPa (the library: %.2f MPa)\n", one, um(fit.Max), um(fit.Max)/one, mpa(state.Pressure.Max))
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • Any sleeve for any seat: then δ is anywhere from %.1f to %.1f µm. Measure the sleeve first, and bore the seat for it.\n", um(fit.Min), um(fit.Max))
	fmt.Fprintln(w, "   • Capital and small letter changed: H is a hole, h a shaft.")
	fmt.Fprintln(w, "   • δ on the radius: textbooks print it so, and it is half of this.")
	if holds {
		hot := must(joint.LooseAt(cold)).Hot
		if hot.Min.IsZero() {
			fmt.Fprintln(w, "   • A cold fit is believed hot. Of these two metals heat loosens nothing.")
		} else {
			fmt.Fprintf(w, "   • A cold fit is believed hot: both parts at one temperature, the least of these pairs can be loose from %.0f °C.\n", hot.Min.Celsius())
		}
	}
	lines := strings.NewReplacer("; ", ";\n", ". ", ".\n")
	fmt.Fprintf(w, "\nCAUTION: %s\n%s\n", lines.Replace(sleeve.CautionHotParts), lines.Replace(sleeve.CautionEvenHeat))
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func mpa(p units.Pressure) float64 { return p.In(units.Megapascal) }

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
