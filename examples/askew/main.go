// SPDX-License-Identifier: BSD-3-Clause

// Askew is a lesson: a gauge askew in a bore, where the formula for doubt fails and dice do not.
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
	"borewright.example/units/uncertainty/simulate"
	"gonum.org/v1/gonum/num/hyperdual"
)

// Change these. Invented data: a bore read with a gauge that is not swung to its least reading, so that
// it stands a little askew, now to one side, now to the other.
var shipped = data{
	reading: units.MustParseLength("67.030 mm"),
	scatter: units.MustParseLength("0.001 mm"), // standard uncertainty of the reading itself
	tilt:    0.5 * units.Degree,                // two thirds of all readings stand less askew than that
}

type data struct {
	reading, scatter units.Length
	tilt             units.Angle
}

const trials = 100_000

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	R, s, θ := d.reading.In(units.Micrometre), d.scatter.In(units.Micrometre), d.tilt.In(units.Radian)
	if !(R > 0) || !(s > 0) || !(θ > 0 && θ <= 0.2) {
		must(0, errors.New("want a reading, its doubt and a tilt above 0, and a tilt of no more than 0.2 rad, some 11°"))
	}
	// What the bore is less than the reading, in µm: x₀ − R·(1 − cos x₁).
	model := func(x []hyperdual.Number) hyperdual.Number {
		return hyperdual.Sub(x[0], hyperdual.Scale(R, hyperdual.Sub(hyperdual.Number{Real: 1}, hyperdual.Cos(x[1]))))
	}
	inputs := []uncertainty.Input{{Name: "reading", Std: s, Unit: "µm"}, {Name: "tilt", Std: θ, Unit: "rad"}}
	first := must(uncertainty.Propagate(model, inputs))
	rows := must(first.Budget.Rows())
	u := must(first.Estimate(units.Micrometre)).Std.In(units.Micrometre)
	shift, wider, err := uncertainty.SecondOrder(model, inputs)
	must(0, err)
	dice := simulate.Simulation{Model: model, Inputs: []simulate.Input{{Input: inputs[0]}, {Input: inputs[1]}}, Seed: 1}
	r := must(dice.Run(trials))
	check := must(r.Validate(first, 1))
	// So many places show no more than the dice are sure of.
	places := int(math.Floor(-math.Log10(8 * r.Std / math.Sqrt(trials))))
	µm := func(x float64) string {
		if places < 0 {
			return fmt.Sprintf("%.*f mm", places+3, x/1000)
		}
		return fmt.Sprintf("%.*f µm", places, x)
	}

	fmt.Fprintln(w, "ASKEW: where the formula for doubt fails, and the dice do not")
	fmt.Fprintf(w, "\nThe question: a gauge reads %v, to within %v, and stands askew by %.3f° or so. How large is the bore?\n", d.reading, d.scatter, d.tilt.In(units.Degree))

	fmt.Fprintln(w, "\n1  What tilt does     D = R·cos θ,  e = R·(1 − cos θ)\n   R: the reading; θ: the tilt; D: the bore; e: what the reading is too large by, never too small")
	for _, k := range []float64{0.5, 1, 2} {
		fmt.Fprintf(w, "   θ = %.3f rad: e = %s\n", k*θ, µm(R*(1-math.Cos(k*θ))))
	}

	fmt.Fprintln(w, "\n2  The formula     u = √((c₁·s₁)² + (c₂·s₂)²)\n   c: what a unit of each cause does to the bore, at its best estimate; s: how well each is known")
	for _, row := range rows {
		fmt.Fprintf(w, "   %-8s c = %.0f µm per %s, s = %.3g %s: c·s = %.2f µm\n", row.Name, math.Abs(row.Sensitivity), row.Unit, row.Std, row.Unit, row.Contribution)
	}
	fmt.Fprintf(w, "   At no tilt a little tilt does nothing, so the formula sees none of it: u = %.2f µm, the bore is the reading.\n", u)

	fmt.Fprintln(w, "\n3  The next order     shift = −R·θ²/2,  u = √(s² + (R·θ²)²/2)     with θ the usual tilt, in rad")
	fmt.Fprintf(w, "   shift = −%.0f µm·%.4f²/2 = %s;  u = %s\n", R, θ, µm(shift), µm(wider))

	fmt.Fprintf(w, "\n4  The dice     %d times: a reading and a tilt drawn, the bore worked out, all bores sorted\n", trials)
	fmt.Fprintf(w, "   shift = %s,  u = %s\n", µm(r.Mean), µm(r.Std))
	fmt.Fprintf(w, "   95 of 100 bores lie from %s to %s off the reading; the formula says ±%.2f µm\n", µm(r.Symmetric.Min), µm(r.Symmetric.Max), check.First.Max)
	if check.Sound {
		fmt.Fprintf(w, "   Both ends agree to %.2g µm, half a unit of the first digit of u: THE FORMULA WILL DO.\n", check.Tolerance)
	} else {
		fmt.Fprintf(w, "   One end or both are off by more than %.2g µm, half a unit of the first digit of u: THE FORMULA WILL NOT DO.\n", check.Tolerance)
	}

	low, high := min(r.Symmetric.Min, -3*u), max(r.Symmetric.Max, 3*u)
	const lines = 16
	width := (high - low) / lines
	counts := make([]float64, lines)
	values := make([]float64, simulate.ChunkSize)
	must(0, dice.Chunk(0, values))
	for _, v := range values {
		if i := int(math.Floor((v - low) / width)); i >= 0 && i < lines {
			counts[i]++
		}
	}
	most := 0.0
	bell := make([]float64, lines)
	for i, n := range counts {
		x := low + (float64(i)+0.5)*width
		bell[i] = simulate.ChunkSize * width / u / math.Sqrt(2*math.Pi) * math.Exp(-x*x/u/u/2)
		most = max(most, n, bell[i])
	}
	fmt.Fprintln(w, "\nWHERE THE BORE IS (█ the dice; ○ the bell curve of the formula; beside it, how far off the reading)")
	for i, n := range counts {
		line := []rune(strings.Repeat("█", int(50*n/most+0.5)) + strings.Repeat(" ", 60))
		line[int(50*bell[i]/most+0.5)] = '○'
		fmt.Fprintf(w, "   %+9.2f µm %s\n", low+(float64(i)+0.5)*width, strings.TrimRight(string(line), " "))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: of a bell curve of tilts the mean of cos θ is known, e^(−θ²/2), and so is the mean of its square")
	mean := R * math.Expm1(-θ*θ/2)
	square := R * R * (math.Expm1(-2*θ*θ)/2 - math.Expm1(-θ*θ))
	fmt.Fprintf(w, "   shift = R·(e^(−θ²/2) − 1) = %s (the library: %s)\n", µm(mean), µm(r.Mean))
	fmt.Fprintf(w, "   u = √(s² + R²·((1 + e^(−2θ²))/2 − e^(−θ²))) = %s (the library: %s)\n", µm(math.Sqrt(s*s+square)), µm(r.Std))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • A tilt is put down as ± and forgotten: its mean is no error of 0 but of %s. Swing the gauge, read the least.\n", µm(r.Mean))
	fmt.Fprintf(w, "   • Twice the tilt is taken for twice the error. It is four times: %s.\n", µm(R*math.Expm1(-2*θ*θ)))
	fmt.Fprintln(w, "   • A thousand throws are taken for the truth. They are sure of u to 2 %; a million, to 0.07 %.")
	fmt.Fprintln(w, "   • The dice are trusted and the causes forgotten. What was left out is left out in every throw.")
	fmt.Fprintln(w, "\nCAUTION: no arithmetic mends a gauge held askew. Let it centre itself, swing it, and read where the hand turns.\nThe maker's limits outrank any rule here.")
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
