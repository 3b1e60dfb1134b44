// SPDX-License-Identifier: BSD-3-Clause

// Knowgauge is a lesson: ten readings of one ring say what a gauge is good for, and what it is not.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

// Change these. Invented data: a setting ring read ten times, the gauge taken out each time, and what
// the maker allows of the bore.
var shipped = data{
	ring:     units.MustParseLength("67 mm"),          // size of the ring
	readings: []float64{1, 3, 2, 0, 2, 4, 1, 2, 3, 1}, // µm above the ring, in the order they were read
	division: units.MustParseLength("0.001 mm"),       // smallest step of the dial that is read
	size:     units.MustParseLength("0.010 mm"),       // the bore may be so much larger or smaller than the middle of its window
	ovality:  units.MustParseLength("0.020 mm"),       // greatest difference allowed between two readings of it
}

type data struct {
	ring          units.Length
	readings      []float64
	division      units.Length
	size, ovality units.Length
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	trials, lengths := []study.Trial{}, []units.Length{}
	for _, r := range d.readings {
		if !(math.Abs(r) <= 1000) {
			must(0, errors.New("a reading is more than a millimetre off its ring"))
		}
		l := d.ring + must(units.Of(r, units.Micrometre))
		lengths = append(lengths, l)
		trials = append(trials, study.Trial{Part: "ring", Person: "one", Reading: l})
	}
	if d.ring <= 0 || d.division < 0 || d.size <= 0 || d.ovality <= 0 {
		must(0, fmt.Errorf("a ring of %v, a division of %v, ±%v and %v allowed; want all above 0", d.ring, d.division, d.size, d.ovality))
	}
	drift := must(study.DriftOf(lengths...))
	s := must(study.Analyse(trials))
	step := units.Length(uncertainty.Resolution(float64(d.division)))
	n := len(d.readings)
	mean := must(uncertainty.Describe(d.readings...)).Mean
	hand := s.Repeatability.Std >= step && s.Repeatability.Std > 0 // the hand is coarser than the dial
	if !hand && step == 0 {
		must(0, errors.New("readings all alike, and a dial without a division; no gauge is as good as that"))
	}

	fmt.Fprintln(w, "KNOW YOUR GAUGE: what one ring, read again and again, says of it")
	fmt.Fprintf(w, "\nThe question: a ring of %v was read %d times. What is the gauge good for on a bore with ±%v allowed?\n", d.ring, n, d.size)

	fmt.Fprintln(w, "\n1  How far readings scatter     s = √(Σ(x − x̄)²/(n − 1))\n   x: a reading above the ring; x̄: the mean of all n; s: about two thirds of all readings lie within x̄ ± s")
	squares := 0.0
	for _, x := range d.readings {
		squares += (x - mean) * (x - mean)
	}
	spread := must(s.Repeatability.Interval())
	fmt.Fprintf(w, "   x̄ = %.2f µm;  s = √(%.2f/%d) = %s\n", mean, squares, n-1, µm(s.Repeatability.Std))
	e := must(s.Doubt(study.Sizes, 1))
	if hand {
		fmt.Fprintf(w, "   %d readings do not know s well: it is between %s and %s, in 95 of 100 such trials\n", n, µm(spread.Min), µm(spread.Max))
	} else {
		e = uncertainty.Estimate{Std: step}
		fmt.Fprintf(w, "   That is less than a step of the dial hides, q/√12 = %s with the division q: the dial is coarser\n   than the hand, and s = %s counts.\n", µm(step), µm(step))
	}
	between := e
	between.Std = units.Length(math.Round(math.Sqrt2 * float64(e.Std)))

	fmt.Fprintln(w, "\n2  What one reading is good for     U = t·s;  of a difference of two  U = t·√2·s\n   t: Student's factor for 95 of 100; it is the larger, the fewer readings s is from")
	one, two := must(e.Expanded(0.95)), must(between.Expanded(0.95))
	t := must(uncertainty.Coverage(0.95, e.DoF))
	fmt.Fprintf(w, "   U = %.2f · %s = ±%s for a size, ±%s for a difference: two sizes nearer than that may be one\n", t, µm(e.Std), µm(one), µm(two))

	fmt.Fprintln(w, "\n3  How many readings of a place     n = (t·s/U)²  with U a quarter of what is allowed (common practice)")
	for _, c := range []struct {
		what    string
		use     study.Use
		u       units.Length
		allowed units.Length
	}{{"size, ±", study.Sizes, one, d.size}, {"ovality, ", study.Differences, two, d.ovality}} {
		fmt.Fprintf(w, "   %s%v allowed, so U = %s: ", c.what, c.allowed, µm(c.allowed/4))
		times := 1
		if hand {
			times = must(s.Repeats(c.use, c.allowed/4))
		} else if c.u > c.allowed/4 {
			times = 0
		}
		switch {
		case times == 1:
			fmt.Fprintln(w, "one reading does")
		case times > 1:
			fmt.Fprintf(w, "%d readings, and their mean\n", times)
		case hand:
			fmt.Fprintln(w, "more than a hundred: a better gauge is wanted")
		default:
			fmt.Fprintln(w, "no number of readings does, they all show one step: a finer dial is wanted")
		}
	}

	fmt.Fprintf(w, "\n4  Does the order matter?     slope of a line through the readings, and runs above and below the middle\n")
	fmt.Fprintf(w, "   slope %.3f µm a reading; by chance so steep in %s of 100 trials; %d runs, so few in %s\n", drift.Creep.Value.In(units.Micrometre), share(drift.CreepP), drift.Runs, share(drift.RunsP))
	if drift.Creeps(0.05) {
		fmt.Fprintln(w, "   THE DIAL CREEPS: let it stand as warm as the room, look at its clamp, and begin again. s holds the creep.")
	} else {
		fmt.Fprintln(w, "   Nothing seen of a dial that creeps.")
	}

	fmt.Fprintln(w, "\nTHE READINGS IN THEIR ORDER (● a reading, ┃ the ring)")
	reach := 0.0
	for _, x := range d.readings {
		reach = max(reach, math.Abs(x))
	}
	for i, x := range d.readings[:min(n, 40)] {
		at := 30
		if reach > 0 {
			at += int(math.Round(25 * x / reach))
		}
		line := []rune(strings.Repeat(" ", 61))
		line[30], line[at] = '┃', '●'
		fmt.Fprintf(w, "   %3d %s\n", i+1, strings.TrimRight(string(line), " "))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: by pairs, without a mean")
	pairs, lever, pull := 0.0, 0.0, 0.0
	for j, y := range d.readings {
		for i, x := range d.readings[:j] {
			pairs += (y - x) * (y - x)
			lever += float64((j - i) * (j - i))
			pull += float64(j-i) * (y - x)
		}
	}
	fmt.Fprintf(w, "   s from half the mean square of all differences: %.3f µm (the library: %.3f)\n", math.Sqrt(pairs/float64(n*(n-1))), s.Repeatability.Std.In(units.Micrometre))
	fmt.Fprintf(w, "   slope from the steps of all pairs: %.3f µm (the library: %.3f)\n", pull/lever, drift.Creep.Value.In(units.Micrometre))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintln(w, "   • The gauge stays in the ring and is looked at ten times. Take it out each time: that is the scatter.")
	fmt.Fprintf(w, "   • \"It reads to %s, so it is good to that.\" It is good to ±%s.\n", µm(d.division), µm(one))
	fmt.Fprintf(w, "   • Three readings are taken for ten: the factor t is 4.30 for three, 2.26 for ten, %.2f for these.\n", must(uncertainty.Coverage(0.95, float64(n-1))))
	fmt.Fprintf(w, "   • The mean of all, good to s/√n = %s, is written down, and then one reading is trusted like it.\n", µm(units.Length(float64(s.Repeatability.Std)/math.Sqrt(float64(n)))))
	fmt.Fprintln(w, "   • Others read the gauge too. One person on one ring has shown nothing of them: let everybody read it.")
	fmt.Fprintln(w, "\nCAUTION: a clean ring on the bench shows a gauge at its best. A worn wall, a warm barrel or a wrong ring is\nnot in these numbers. The maker's limits outrank any rule here.")
}

func µm(l units.Length) string { return fmt.Sprintf("%.2f µm", l.In(units.Micrometre)) }

// share writes a chance as so many in a hundred.
func share(p float64) string {
	if p < 0.01 {
		return "less than 1"
	}
	return fmt.Sprintf("%.0f", 100*p)
}

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
