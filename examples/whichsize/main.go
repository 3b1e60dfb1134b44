// SPDX-License-Identifier: BSD-3-Clause

// Whichsize is a lesson: which oversize a worn bore cleans up at, counted from the piston.
package main

import (
	"fmt"
	"log"
	"strings"

	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

var mm = units.MustParseLength

// Change these. Invented data: one cylinder of an irrigation pump, bare iron, in a village workshop.
var (
	nominal   = mm("78 mm")
	worst     = mm("78.210 mm") // the largest reading
	least     = mm("78.020 mm") // the smallest, below ring travel
	skirt     = mm("77.960 mm") // of a standard piston; those on offer are as much larger as their name says
	clearance = units.Limits{Min: mm("0.040 mm"), Max: mm("0.060 mm")}
	honing    = mm("0.050 mm") // left by boring for honing, on the diameter
	std       = mm("0.002 mm") // standard uncertainty of each size
)

func main() {
	engine := oversize.Engine{
		Wall: oversize.BareIron, Nominal: nominal, Clearance: clearance, Honing: honing, RigidHone: true,
		MostOver: mm("1 mm"), Sizes: oversize.Metric(),
	}
	for i := range engine.Sizes {
		engine.Sizes[i].Piston.Size = uncertainty.Estimate{Value: skirt + engine.Sizes[i].Over}
	}
	// Diameters hold no centre: of the wear W at least half and at most all lies on one side.
	wear := worst - least
	cylinder := oversize.Cylinder{Name: "cylinder 1", Largest: size(worst), Smallest: size(least), Places: 6}
	cylinder.CleanUp.Original.Least, cylinder.CleanUp.Original.Greatest = size(least+wear), size(least+2*wear)
	cylinder.CleanUp.Worn = cylinder.CleanUp.Original
	cylinder.Piston.Size = uncertainty.Estimate{Value: skirt}
	choice := must(oversize.Choose(engine, []oversize.Cylinder{cylinder}, uncertainty.Risk{}))
	c := choice.Cylinders[0]

	fmt.Println("WHICH OVERSIZE: the worn wall below, the piston above")
	fmt.Printf("\nThe question: the bore reads %v to %v. Pistons come in steps of %v.\nWhich is the smallest that leaves no worn wall?\n", least, worst, engine.Sizes[0].Over)
	fmt.Println("\n1  Clean-up     U = least + 2·share·W, W = largest − least, share ½ to 1 on one side")
	fmt.Printf("   W = %v − %v = %v;  U from %v to %v\n", worst, least, wear, least+wear, least+2*wear)
	fmt.Println("\n2  What each size leaves     F.Min = piston + least clearance,  bored to F.Min − honing")
	for _, s := range engine.Sizes {
		f := s.Piston.Size.Value + clearance.Min
		bored := f - honing
		word := "cleans up"
		if bored < least+2*wear {
			word = "may leave worn wall"
		}
		if bored < least+wear {
			word = "leaves worn wall"
		}
		fmt.Printf("   +%s  F.Min = %s + %s = %s,  bored %s  %s\n", s.Over.Format(units.Millimetre, 2), size3(s.Piston.Size.Value), size3(clearance.Min), size3(f), size3(bored), word)
	}
	fmt.Println("\n3  The choice")
	for _, r := range c.Refused {
		fmt.Println("   refused:", strings.Replace(r.String(), " (", "\n      (", 1))
	}
	fmt.Printf("   CHOSEN: %v %v: bore to %v, hone to %v, aim %v\n", c.Route, c.Over, c.Bored, c.Finish, c.Aim)

	fmt.Println("\nON THE NUMBER LINE (a mark is 0.02 mm over nominal; ▓ worn, ░ perhaps worn, ▲ bored, ◆ finished)")
	at := func(l units.Length) int { return max(0, int((l-nominal)/(20*units.Micrometre))) }
	fmt.Printf("   clean-up  %s%s\n", strings.Repeat("▓", at(least+wear)), strings.Repeat("░", at(least+2*wear)-at(least+wear)))
	for _, s := range engine.Sizes {
		f := s.Piston.Size.Value + clearance.Min
		fmt.Printf("   +%s     %s▲%s◆\n", s.Over.Format(units.Millimetre, 2), strings.Repeat(" ", at(f-honing)), strings.Repeat("─", max(0, at(f)-at(f-honing)-1)))
	}

	fmt.Println("\nA SECOND WAY: backwards, in thousandths of a millimetre over nominal")
	um := func(l units.Length) int64 { return int64(l / units.Micrometre) }
	need := um(least-nominal) + 2*um(wear) + um(honing) - um(clearance.Min) - um(skirt-nominal)
	step := um(engine.Sizes[0].Over)
	fmt.Printf("   over ≥ U + honing − clearance − (skirt − nominal) = %d + %d − %d − (%d) = %d µm\n", um(least-nominal)+2*um(wear), um(honing), um(clearance.Min), um(skirt-nominal), need)
	steps := (need + step - 1) / step
	fmt.Printf("   the next step of %d µm: %d µm; the library chose %d µm\n", step, steps*step, um(c.Over))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	diameter := um(worst-nominal) + um(honing) - um(clearance.Min) - um(skirt-nominal)
	fmt.Printf("   • Wear is taken off the diameter, as if the boring bar followed the worn wall: over ≥ %d µm.\n"+
		"     Bored on the original centre one side may keep %.3f mm of worn wall.\n", diameter, float64(wear)/2/float64(units.Millimetre))
	inch := oversize.Inch()[0].Over
	fmt.Printf("   • 0.010 in is taken for 0.25 mm. It is %v: %v, or %.0f %% of this clearance window.\n", inch, inch-oversize.Metric()[0].Over, 100*(inch-oversize.Metric()[0].Over).In(clearance.Max-clearance.Min))
	fmt.Println("   • Bored before the piston is in hand and measured. The piston decides, not its box.")
	fmt.Println("   • Honing is forgotten: boring marks are deeper than the last stones reach.")
	fmt.Println("\nCAUTION: work clamped, eyes guarded, no gloves or loose sleeves near anything that turns. A wall\n" +
		"bored too thin bursts: measure it. Plated and bare aluminium-silicon walls are never bored.")
}

func size(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l, Std: std} }

func size3(l units.Length) string { return l.Format(units.Millimetre, 3) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
