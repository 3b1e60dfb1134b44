// SPDX-License-Identifier: BSD-3-Clause

// Whichsize is a lesson: which oversize a worn bore cleans up at, counted from the piston.
package main

import (
	"fmt"
	"io"
	"os"
	"strings"

	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

var mm = units.MustParseLength

// Change these. Invented data: one cylinder of an irrigation pump, bare iron, in a village workshop.
var shipped = data{
	nominal:   mm("78 mm"),
	worst:     mm("78.210 mm"), // the largest reading
	least:     mm("78.020 mm"), // the smallest, below ring travel
	skirt:     mm("77.960 mm"), // of the standard piston; those on offer are as much larger as their name says
	clearance: units.Limits{Min: mm("0.040 mm"), Max: mm("0.060 mm")},
	honing:    mm("0.050 mm"), // left by boring for honing, on the diameter
	std:       mm("0.002 mm"), // standard uncertainty of each size
	mostOver:  mm("1 mm"),     // the maker allows no larger bore
}

type data struct {
	nominal, worst, least, skirt units.Length
	clearance                    units.Limits
	honing, std, mostOver        units.Length
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	engine := oversize.Engine{
		Wall: oversize.BareIron, Nominal: d.nominal, Clearance: d.clearance, Honing: d.honing, RigidHone: true,
		MostOver: d.mostOver, Sizes: oversize.Metric(),
	}
	for i := range engine.Sizes {
		engine.Sizes[i].Piston.Size = uncertainty.Estimate{Value: d.skirt + engine.Sizes[i].Over}
	}
	// Diameters hold no centre: of the wear W at least half and at most all lies on one side.
	wear := d.worst - d.least
	size := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l, Std: d.std} }
	cylinder := oversize.Cylinder{Name: "cylinder 1", Largest: size(d.worst), Smallest: size(d.least), Places: 6}
	cylinder.CleanUp.Original.Min, cylinder.CleanUp.Original.Max = size(d.least+wear), size(d.least+2*wear)
	cylinder.CleanUp.Worn = cylinder.CleanUp.Original
	cylinder.Piston.Size = uncertainty.Estimate{Value: d.skirt}
	choice := must(oversize.Choose(engine, []oversize.Cylinder{cylinder}, uncertainty.Risk{}))
	c := choice.Cylinders[0]
	bored := func(s oversize.Size) units.Length { return s.Piston.Size.Value + d.clearance.Min - d.honing }

	fmt.Fprintln(w, "WHICH OVERSIZE: the worn wall below, the piston above")
	fmt.Fprintf(w, "\nThe question: the bore reads %v to %v. Pistons come in steps of %v.\nMust it be bored, and to which size, so that no worn wall is left?\n", d.least, d.worst, engine.Sizes[0].Over)
	fmt.Fprintln(w, "\n1  Clean-up     U = least + W to least + 2·W;  W = largest − least\n"+
		"   U: the smallest true cylinder that leaves no worn wall; W: wear, of which half to all may lie on one side")
	fmt.Fprintf(w, "   W = %s − %s = %s;  U from %s to %s\n", three(d.worst), three(d.least), three(wear), three(d.least+wear), three(d.least+2*wear))
	fmt.Fprintln(w, "\n2  What each size leaves     F = piston + least clearance, then bored to F − honing;  F: the smallest finished bore")
	for _, s := range engine.Sizes {
		b, word := bored(s), "cleans up"
		switch {
		case s.Over > d.mostOver && d.mostOver > 0:
			word = "larger than the maker allows"
		case b < d.least+wear:
			word = "leaves worn wall"
		case b < d.least+2*wear:
			word = "may leave worn wall"
		}
		fmt.Fprintf(w, "   +%s  F = %s + %s = %s,  bored %s  %s\n", two(s.Over), three(s.Piston.Size.Value), three(d.clearance.Min), three(b+d.honing), three(b), word)
	}
	fmt.Fprintln(w, "\n3  The choice, with the doubt of each size, ±, in it")
	for _, r := range c.Refused {
		fmt.Fprintln(w, "   refused:", strings.Replace(r.String(), " (", "\n      (", 1))
	}
	switch c.Route {
	case oversize.HoneAndKeep:
		fmt.Fprintf(w, "   CHOSEN: the bore may stay, and is honed: %v.\n", c.Work)
		if c.Finish.HasMax() {
			fmt.Fprintf(w, "   It may be as large as %v for this piston.\n", c.Finish.Max)
		}
	case oversize.BoreOversize:
		fmt.Fprintf(w, "   CHOSEN: oversize %s: bore to %s, hone to between %s and %s, aim at %s.\n", two(c.Over), three(c.Bored), three(c.Finish.Min), three(c.Finish.Max), three(c.Aim))
	case oversize.Sleeve:
		fmt.Fprintln(w, "   CHOSEN: none. No size on offer serves: a sleeve, or another cylinder.")
	default:
		fmt.Fprintf(w, "   UNDECIDED: better measuring may still turn it, of the doubt or of which side is worn.\n   If all that is open turns out badly: %v", choice.Otherwise)
		if choice.Otherwise == oversize.BoreOversize {
			fmt.Fprintf(w, " %s", two(choice.OtherwiseOver))
		}
		fmt.Fprintln(w, ".")
	}

	step := 20 * units.Micrometre
	last := engine.Sizes[len(engine.Sizes)-1]
	for max(d.least+2*wear, bored(last)+d.honing)-d.nominal > 90*step {
		step *= 2
	}
	at := func(l units.Length) int { return max(0, int((l-d.nominal)/step)) }
	fmt.Fprintf(w, "\nON THE NUMBER LINE (a mark is %v over nominal; ▓ worn, ░ perhaps worn, ▲ bored, ◆ finished)\n", step)
	fmt.Fprintf(w, "   clean-up  %s%s\n", strings.Repeat("▓", at(d.least+wear)), strings.Repeat("░", at(d.least+2*wear)-at(d.least+wear)))
	for _, s := range engine.Sizes {
		b, f := at(bored(s)), at(bored(s)+d.honing)
		fmt.Fprintf(w, "   +%s  %s▲%s◆\n", two(s.Over), strings.Repeat(" ", b), strings.Repeat("─", max(0, f-b-1)))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: backwards, in thousandths of a millimetre over nominal")
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	doubt := 1.96 * um(d.std) // so far the half of 5 % that boring and wall have each is kept
	need := um(d.least-d.nominal) + 2*um(wear) + doubt + um(d.honing) - um(d.clearance.Min) - um(d.skirt-d.nominal)
	fmt.Fprintf(w, "   over ≥ U + its doubt + honing − clearance − (skirt − nominal)\n        = %.0f + %.1f + %.0f − %.0f − (%.0f) = %.1f µm\n", um(d.least-d.nominal)+2*um(wear), doubt, um(d.honing), um(d.clearance.Min), um(d.skirt-d.nominal), need)
	asked := c.Over
	if c.Route == oversize.Sleeve {
		asked = last.Over
	}
	small, refused := 0, 0
	for _, s := range engine.Sizes {
		if s.Over <= asked && um(s.Over) < need {
			small++
		}
	}
	for _, r := range c.Refused {
		if r.Route == oversize.BoreOversize && (r.Reason == oversize.NoCleanUp || r.Reason == oversize.CleanUpNotProven) {
			refused++
		}
	}
	fmt.Fprintf(w, "   sizes on offer up to %s that are less: %d (the library: %d)\n", two(asked), small, refused)

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • Wear is taken off the diameter, as if the boring bar followed the worn wall: over ≥ %.1f µm. Bored on\n"+
		"     the original centre one side may keep %s of worn wall.\n", need-um(wear), three(wear/2))
	inch := oversize.Inch()[0].Over
	fmt.Fprintf(w, "   • 0.010 in is taken for 0.25 mm. It is %v: %v more", inch, inch-oversize.Metric()[0].Over)
	if width := d.clearance.Max - d.clearance.Min; width > 0 {
		fmt.Fprintf(w, ", or %.0f %% of this clearance window", 100*(inch-oversize.Metric()[0].Over).In(width))
	}
	fmt.Fprintln(w, ".")
	fmt.Fprintln(w, "   • Bored before the piston is in hand and measured. The piston decides, not its box.")
	fmt.Fprintln(w, "   • Honing is forgotten: boring marks are deeper than the last stones reach.")
	fmt.Fprintln(w, "\nCAUTION: work clamped, eyes guarded, no gloves or loose sleeves near anything that turns. A wall\n"+
		"bored too thin bursts: measure it. Plated and bare aluminium-silicon walls are never bored.")
}

func three(l units.Length) string { return l.Format(units.Millimetre, 3) }

func two(l units.Length) string { return l.Format(units.Millimetre, 2) }

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
