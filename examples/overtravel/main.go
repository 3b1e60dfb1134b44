// SPDX-License-Identifier: BSD-3-Clause

// Overtravel is a lesson: how far a hone stands out of the bore, and how straight the wall is then.
package main

import (
	"errors"
	"fmt"
	"log"
	"math"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder in a village workshop, honed with rigid stones.
var (
	run = hone.Run{
		Kind: hone.RigidStone, Depth: 90 * units.Millimetre, Tool: 45 * units.Millimetre,
		RoomTop: 40 * units.Millimetre, RoomBottom: 40 * units.Millimetre,
	}
	setting = hone.Setting{Bore: 78 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(60 * units.PerMinute)}
	stock   = 50 * units.Micrometre // on the diameter, on the mean over the wall
)

func main() {
	fmt.Println("OVERTRAVEL AND STRAIGHTNESS: where the metal goes")
	fmt.Printf("\nThe question: a bore of %v deep, stones of %v, %v to take off. How long a stroke?\n", run.Depth, run.Tool, stock)
	usual := must(hone.UsualTravel(run))
	fmt.Println("\n1  The stroke     L = depth + out at the top + out at the bottom − tool")
	fmt.Printf("   a third of the stones out: L = %v + %v + %v − %v = %v\n", run.Depth, usual.Top, usual.Bottom, run.Tool, must(usual.Stroke()))

	fmt.Println("\n2  What the ends get of what the middle gets     o/l: balls, filaments;  ln(l/(l − o)): stones on a spring")
	fmt.Println("   out     stroke      o/l      ln(l/(l−o))   ends tighter by   straight to")
	outs := []units.Length{run.Tool / 9, run.Tool / 3, run.Tool / 2}
	for _, out := range outs {
		t := must(run.Travel(out, out))
		r := removal(t)
		share := out.In(units.Millimetre) / run.Tool.In(units.Millimetre)
		fmt.Printf("   %4.1f mm %v  %6.3f   %10.3f   %12.1f µm   %10.1f µm\n", out.In(units.Millimetre), pad(must(t.Stroke()).String(), 7), share,
			math.Log(1/(1-share)), (r.Middle - r.Top).In(units.Micrometre), r.Straightness.In(units.Micrometre))
	}
	fmt.Println("   No overtravel that is safe makes the ends equal to the middle: a wall is honed with its\n" +
		"   ends tight, and the stones dwell there as the gauge asks.")

	fmt.Println("\nWHAT COMES OFF THE DIAMETER, from the top face down (█ each micrometre, a ninth out; ░ more with a third out)")
	short, long := removal(must(run.Travel(outs[0], outs[0]))), removal(usual)
	for i := range short.Points {
		a, b := int(short.Points[i].Diameter.Round(units.Micrometre)/units.Micrometre), int(long.Points[i].Diameter.Round(units.Micrometre)/units.Micrometre)
		fmt.Printf("   %5.1f mm │%s%s\n", short.Points[i].Depth.In(units.Millimetre), strings.Repeat("█", min(a, b)), strings.Repeat("░", max(0, b-a))+strings.Repeat("▒", max(0, a-b)))
	}
	fmt.Println("   (▒: more with a ninth out. The mean of both is the same.)")

	fmt.Println("\nA SECOND WAY: let the tool run and add up, a tenth of a millimetre at a time")
	depth, tool, out := run.Depth.In(units.Millimetre), run.Tool.In(units.Millimetre), usual.Top.In(units.Millimetre)
	took := func(at float64) float64 { // pressure × time at a place, one stroke
		sum, steps := 0.0, int(math.Round((depth+2*out-tool)*10))
		for i := range steps {
			top := -out + (float64(i)+0.5)/10 // of the tool
			if top <= at && at <= top+tool {
				inside := min(top+tool, depth) - max(top, 0)
				sum += tool / inside // a spring presses what is left in the bore the harder
			}
		}
		return sum
	}
	share := took(0) / took(depth/2)
	fmt.Printf("   end over middle by adding up %.3f, by ln(l/(l − o)) %.3f, by the library %.3f\n", share, math.Log(tool/(tool-out)), long.Top.In(long.Middle))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	blind := run
	blind.RoomBottom = 0
	b := removal(must(hone.UsualTravel(blind)))
	fmt.Printf("   • A blind end, no room below: the bottom gets %.1f µm where the middle gets %.1f µm. It stays\n     tight, and the ring gap is smallest there.\n", b.Bottom.In(units.Micrometre), b.Middle.In(units.Micrometre))
	_, err := run.Travel(run.Tool/2+units.Millimetre, run.Tool/2+units.Millimetre)
	fmt.Printf("   • More overtravel to open the ends: refused (%t).\n     Past half, stones tip over the edge and may be thrown.\n", errors.Is(err, hone.ErrRoom))
	ball := run
	ball.Kind = hone.BallType
	fmt.Printf("   • One rule for all tools: of a ball-type hone half stands out, a stroke of %v; it deglazes\n     and straightens nothing.\n", must(must(hone.UsualTravel(ball)).Stroke()))
	lines := strings.NewReplacer("; ", ";\n", ". ", ".\n")
	fmt.Printf("\nCAUTION: %s\n%s\n", lines.Replace(hone.RigidInside.Text()), lines.Replace(hone.NothingLoose.Text()))
}

func removal(t hone.Travel) hone.Removal {
	return must(setting.Removal(hone.Steady(), t, hone.ConstantForce, stock, 19))
}

func pad(s string, n int) string { return fmt.Sprintf("%*s", n, s) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
