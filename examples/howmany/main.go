// SPDX-License-Identifier: BSD-3-Clause

// Howmany is a lesson: how many repeated readings settle an undecided size, and when none will.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a worn bore near its service limit, in a village workshop. What one reading
// scatters by is known from many trials of the same gauge.
var shipped = data{
	limit:   units.MustParseLength("78.1500 mm"), // the bore may be so large
	size:    units.MustParseLength("78.1480 mm"), // mean of the readings taken
	taken:   2,                                   // how many
	scatter: 2.5,                                 // µm, standard deviation of one reading
	rest:    0.8,                                 // µm, of what no repeat makes better: ring, temperatures
}

type data struct {
	limit, size   units.Length
	taken         int
	scatter, rest float64
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	if d.taken < 1 || d.taken > 1000 {
		must(0, fmt.Errorf("%d readings taken; want 1 to 1000", d.taken))
	}
	if d.size <= 0 {
		must(0, fmt.Errorf("a size of %v; want one above 0", d.size))
	}
	if d.scatter == 0 && d.rest == 0 {
		must(0, fmt.Errorf("no doubt at all is given, and no measurement is as good as that"))
	}
	limits := units.Limits{Max: d.limit}
	judge := func(n int) (uncertainty.Estimate, uncertainty.Finding) {
		e := must(uncertainty.Budget{Components: []uncertainty.Component{
			{Name: "scatter", Std: d.scatter / math.Sqrt(float64(n)), Sensitivity: 1, Unit: "µm"},
			{Name: "rest", Std: d.rest, Sensitivity: 1, Unit: "µm"},
		}}.Estimate(d.size, units.Micrometre))
		return e, must(uncertainty.Judge(e, limits, uncertainty.Risk{}))
	}
	e, f := judge(d.taken)
	u, gap := um(e.Std), math.Abs(um(d.limit-d.size))
	most := gap / 1.6448536 // the largest u that settles it

	fmt.Fprintln(w, "HOW MANY READINGS? What repeats make better, and what they do not")
	fmt.Fprintf(w, "\nThe question: the mean of %d readings is %s, the limit %s. Is it settled, and if not, how many more?\n", d.taken, mm(d.size), mm(d.limit))
	fmt.Fprintln(w, "\n1  The doubt of a mean     u² = s²/n + r²\n"+
		"   u: its standard uncertainty; s: scatter of one reading; n: readings; r: the rest, the same in all of them")
	fmt.Fprintf(w, "   u = √(%.4g²/%d + %.4g²) = %.3f µm\n", d.scatter, d.taken, d.rest, u)
	fmt.Fprintln(w, "\n2  What settles it     the limit lies 1.645·u away or more: then the other answer has a chance of 5 % or less")
	fmt.Fprintf(w, "   the limit lies %.2f µm away, 1.645·u = %.2f µm: %s\n", gap, 1.645*u, strings.ToUpper(f.Verdict.String()))
	fmt.Fprintln(w, "\n3  How many     n = s²/((distance/1.645)² − r²)")
	need := math.Inf(1)
	switch room := most*most - d.rest*d.rest; {
	case f.Verdict != uncertainty.Undecided:
		fmt.Fprintf(w, "   It is settled: %v. More readings are not wanted.\n", f.Verdict)
		need = float64(d.taken)
	case room <= 0:
		fmt.Fprintf(w, "   None will: r = %.4g µm alone is more than %.3f µm. Not repeats, but a better ring and a soaked\n   barrel, or the limit stays open: do not reassemble on it.\n", d.rest, most)
	default:
		need = math.Ceil(d.scatter * d.scatter / room)
		fmt.Fprintf(w, "   n = %.4g²/(%.3f² − %.4g²) = %.1f: %.0f readings, if the mean stays where it is\n", d.scatter, most, d.rest, d.scatter*d.scatter/room, need)
		if need > 100 {
			fmt.Fprintln(w, "   Nobody takes so many: look for what scatters, or for a better gauge.")
		}
	}

	ns := []int{1, 2, 3, 5, 10, 20, 50, 100, 1000}
	first, _ := judge(1)
	scale := 60 / max(1.645*um(first.Std), gap)
	fmt.Fprintln(w, "\nTHE DOUBT 1.645·u BY READINGS (█ doubt; │ how far the limit lies)")
	for _, n := range ns {
		en, fn := judge(n)
		line := []rune(fmt.Sprintf("%-62s", strings.Repeat("█", int(1.645*um(en.Std)*scale+0.5))))
		line[min(61, int(gap*scale+0.5))] = '│'
		fmt.Fprintf(w, "   %4d  %6.2f µm %s %v\n", n, 1.645*um(en.Std), string(line), fn.Verdict)
	}
	fmt.Fprintf(w, "   Four times the readings halve the scatter's part; %.2f µm of the rest stay for ever.\n", 1.645*d.rest)

	byHand := func(n float64) float64 { return math.Sqrt(d.scatter*d.scatter/n + d.rest*d.rest) }
	fmt.Fprintln(w, "\nA SECOND WAY: ask for one, two, three ... readings, until it is settled")
	fmt.Fprintf(w, "   u of %d by hand %.3f µm (the library: %.3f µm)\n", d.taken, byHand(float64(d.taken)), u)
	n := d.taken
	for n <= 2000 {
		if _, fn := judge(n); fn.Verdict != uncertainty.Undecided {
			break
		}
		n++
	}
	switch {
	case n > 2000 && need > 2000:
		fmt.Fprintln(w, "   2000 readings do not settle it, by either.")
	case need != float64(n) && math.Abs(byHand(need)-byHand(float64(n))) < 1e-6:
		fmt.Fprintln(w, "   The count rests on less than a millionth of a micrometre, to which the library rounds u.")
	default:
		fmt.Fprintf(w, "   settled at %.0f readings by the formula (the library: %d)\n", need, n)
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • The same reading is taken many times with the same ring: its %.4g µm are in every one of them.\n", d.rest)
	fmt.Fprintln(w, "   • Read on until it comes out right, and stop there. The number is fixed first.")
	fmt.Fprintln(w, "   • Repeats without taking the gauge out: they repeat the mistake. Set it anew, rock it anew.")
	fmt.Fprintln(w, "   • More readings move the mean as well: the number above holds if it stays.")
	fmt.Fprintln(w, "\nCAUTION: do not reassemble on an undecided finding. The maker's limits outrank any rule here.")
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
