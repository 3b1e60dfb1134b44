// SPDX-License-Identifier: BSD-3-Clause

// Verdict is a lesson: a measured size, its doubt and a limit leave three answers, not two.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a service limit, the size of a worn bore read five times, and what
// else may be wrong with it.
var shipped = data{
	limit:    units.MustParseLength("78.150 mm"),                     // the bore may be so large
	repeats:  []float64{78.1482, 78.1501, 78.1494, 78.1479, 78.1489}, // mm
	ringStd:  1,                                                      // µm, standard uncertainty of the setting ring, from its certificate
	division: 1,                                                      // µm, the smallest step of the dial that is read
	warmth:   1,                                                      // K, the ring may be so much warmer or colder than the barrel
}

type data struct {
	limit                     units.Length
	repeats                   []float64
	ringStd, division, warmth float64
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	limit := units.Limits{Max: d.limit}
	s := must(uncertainty.Describe(d.repeats...))
	value := must(units.Of(s.Mean, units.Millimetre))
	budget := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "mean of the readings", Std: s.OfMean().Std * 1000, DoF: s.OfMean().DoF, Sensitivity: 1, Unit: "µm"},
		{Name: "setting ring", Std: d.ringStd, Sensitivity: 1, Unit: "µm"},
		{Name: "resolution", Std: uncertainty.Resolution(d.division), Sensitivity: 1, Unit: "µm"},
		{Name: "ring against barrel", Std: uncertainty.Rectangular(d.warmth), Sensitivity: material.GreyIron().Expansion.In(units.PerKelvin) * s.Mean * 1000, Unit: "K"},
	}}
	rows, e := must(budget.Rows()), must(budget.Estimate(value, units.Micrometre))
	if value <= 0 {
		must(0, fmt.Errorf("a mean of %v; want a bore above 0", value))
	}
	if e.Std == 0 {
		must(0, errors.New("no doubt at all is given, and no measurement is as good as that"))
	}
	f := must(uncertainty.Judge(e, limit, uncertainty.Risk{}))
	u, t := e.Std.In(units.Micrometre), (d.limit-value).In(units.Micrometre)/e.Std.In(units.Micrometre)

	fmt.Fprintln(w, "WITHIN, BEYOND OR UNDECIDED: what a limit asks of a measurement")
	fmt.Fprintf(w, "\nThe question: %d readings of a worn bore, and a service limit, %v at most. May it stay?\n", len(d.repeats), d.limit)
	fmt.Fprintln(w, "\n1  What is doubtful     uᵢ = cᵢ·s for each cause, u² = Σ uᵢ²\n"+
		"   s: standard uncertainty, about two thirds of all values lie within it; c: what a unit of it does to the size")
	most, squares := 0.0, []string{}
	for _, r := range rows {
		most = max(most, r.Contribution)
		squares = append(squares, fmt.Sprintf("%.2f²", r.Contribution))
	}
	for _, r := range rows {
		fmt.Fprintf(w, "   %-21s %5.3f µm/%-2s · %5.3f = %5.2f µm  %s\n", r.Name, r.Sensitivity, r.Unit, r.Std, r.Contribution, strings.Repeat("█", int(r.Contribution/most*20+0.5)))
	}
	known := fmt.Sprintf("itself known as from %.0f readings", e.DoF+1)
	if e.DoF == 0 {
		known = "itself known for certain"
	}
	fmt.Fprintf(w, "   u = √(%s) = %.2f µm, %s;\n   the size is %v in 95 of 100 cases\n", strings.Join(squares, " + "), u, known, e)

	fmt.Fprintln(w, "\n2  The verdict     P = F((limit − y)/u): the chance that the size is within\n"+
		"   y: the mean; F: Student's t, the bell curve with the doubt of u in it. Within where P ≥ 95 %, beyond where P ≤ 5 %")
	fmt.Fprintf(w, "   (%s − %s)/%.2f µm = %.2f;  P = %.1f %%:  %s\n", mm(d.limit), mm(value), u, t, 100*f.Conform, strings.ToUpper(f.Verdict.String()))
	remedy := must(f.Settle(must(units.Of(s.OfMean().Std, units.Millimetre))))
	switch {
	case f.Verdict == uncertainty.Within:
		fmt.Fprintln(w, "   It may stay.")
	case f.Verdict == uncertainty.Beyond:
		fmt.Fprintln(w, "   It may not.")
	case remedy.Toward == uncertainty.Undecided:
		fmt.Fprintln(w, "   The mean stands on the limit itself: nothing settles that, and the bore counts as not within.")
	case remedy.Repeats > 0:
		fmt.Fprintf(w, "   If the mean stays, %d times as many readings settle it as %v; or u of %v.\n", remedy.Repeats, remedy.Toward, remedy.Std.Round(10*units.Nanometre))
	default:
		fmt.Fprintf(w, "   No number of readings settles it: the rest of u is too much. It wants u of %v: a better ring,\n   or all of it left to stand until it is as warm as the room.\n", remedy.Std.Round(10*units.Nanometre))
	}

	U := must(e.Expanded(0.95))
	step := 500 * units.Nanometre
	for U > 14*step {
		step *= 2
	}
	fmt.Fprintf(w, "\nWHERE OTHER SIZES WOULD STAND (a mark is %v; ┃ the limit, ● the size, ─ its doubt, 95 of 100 cases)\n", step)
	for d := -12; d <= 12; d += 4 {
		at := limit.Max + units.Length(d)*step
		verdict := must(uncertainty.Judge(uncertainty.Estimate{Value: at, Std: e.Std, DoF: e.DoF}, limit, uncertainty.Risk{})).Verdict
		line := ""
		for i := -28; i <= 28; i++ {
			switch l := limit.Max + units.Length(i)*step; {
			case l == at:
				line += "●"
			case l == limit.Max:
				line += "┃"
			case (l - at).Abs() <= U:
				line += "─"
			default:
				line += " "
			}
		}
		fmt.Fprintf(w, "   %s %s %v\n", mm(at), line, verdict)
	}

	fmt.Fprintln(w, "\nA SECOND WAY: add up the curve; and throw the dice")
	whole, part := 0.0, 0.0
	for i := range 20000 { // x = tan φ, so that the far tails are in it
		phi := ((float64(i)+0.5)/20000 - 0.5) * math.Pi
		x := math.Tan(phi)
		height := math.Exp(-x * x / 2)
		if e.DoF > 0 {
			height = math.Pow(1+x*x/e.DoF, -(e.DoF+1)/2)
		}
		height *= 1 + x*x
		whole += height
		if x <= t {
			part += height
		}
	}
	fmt.Fprintf(w, "   the part of the curve below %.2f: %.1f %% (the library: %.1f %%)\n", t, 100*part/whole, 100*f.Conform)
	wrong, n, seed := 0, 50000, uint64(1)
	uniform := func() float64 { // xorshift: the same numbers on every machine
		seed ^= seed << 13
		seed ^= seed >> 7
		seed ^= seed << 17
		return float64(seed>>11) / (1 << 53)
	}
	for range n {
		sum := -6.0 // twelve dice from 0 to 1, less their mean, are a bell curve of width 1
		for range 12 {
			sum += uniform()
		}
		if u*sum <= -1.645*u {
			wrong++
		}
	}
	guarded := must(uncertainty.Judge(uncertainty.Estimate{Value: d.limit - must(units.Of(1.645*u, units.Micrometre)), Std: e.Std}, limit, uncertainty.Risk{}))
	fmt.Fprintf(w, "   a bore at the limit itself, called within where it reads 1.645·u = %.2f µm less:\n   of %d throws so many are wrong: %.1f %% (the library: %.1f %%)\n", 1.645*u, n, 100*float64(wrong)/float64(n), 100*(1-guarded.Conform))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • Read, compare, done: %q. At the limit that is wrong every second time.\n", must(uncertainty.JudgeExpanded(e, limit, 0)).Verdict)
	fmt.Fprintln(w, "   • Undecided is taken for a weak within. It wants a better measurement.")
	fmt.Fprintf(w, "   • Only the scatter is counted: %.2f µm in place of %.2f µm. Repeats do not find a wrong ring.\n", s.OfMean().Std*1000, u)
	fmt.Fprintf(w, "   • Twelve limits in one engine, 5 %% each: the chance of some wrong answer is up to %.0f %%.\n     Share the risk: %.2g %% each.\n", 100*(1-math.Pow(0.95, 12)), 100*uncertainty.Risk{}.OrDefault().Share(12).Accept)
	fmt.Fprintln(w, "\nCAUTION: do not reassemble on an undecided finding. The maker's limits outrank any rule here.")
}

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
