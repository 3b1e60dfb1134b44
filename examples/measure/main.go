// SPDX-License-Identifier: BSD-3-Clause

// Measure is a lesson: what six readings of a dial bore gauge say of a worn cylinder.
package main

import (
	"fmt"
	"log"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// Change these. Invented data: the cylinder of an irrigation pump in a village workshop. The dial
// was set to zero in a ring of 78 mm; it shows thousandths of a millimetre, plus for a larger bore.
var (
	setting = 78 * units.Millimetre
	depths  = []units.Length{12 * units.Millimetre, 60 * units.Millimetre, 102 * units.Millimetre}
	thrust  = []units.Length{105, 60, 20} // µm on the dial, along the thrust axis
	pin     = []units.Length{70, 40, 12}  // and square to it, along the piston pin
)

func main() {
	fmt.Println("MEASURING A BORE: six readings, four answers")
	fmt.Println("\nThe question: how large, how oval, how tapered is this bore, and how worn?")
	fmt.Println("\n1  From the dial to diameters     D = setting + deviation")
	gauge := bore.Gauge{Dial: bore.PlusIsLarger, Standard: bore.Standard{Size: setting}}
	var readings []bore.Reading
	read := func(depth units.Length, axis units.Angle, dial units.Length) {
		diameter := must(gauge.Diameter(dial * units.Micrometre))
		fmt.Printf("   D(%6v, %-6s) = %v %+4d µm = %s\n", depth, bore.FormatAxis(axis), setting, dial, mm(diameter))
		readings = append(readings, bore.Reading{Depth: depth, Axis: axis, Diameter: diameter})
	}
	for i, depth := range depths {
		read(depth, bore.ThrustAxis, thrust[i])
		read(depth, bore.PinAxis, pin[i])
	}
	g := must(bore.Measure(readings, gauge))

	fmt.Println("\n2  Ovality = greatest − least diameter in ONE plane")
	for _, p := range g.Planes {
		fmt.Printf("   at %6v = %s − %s = %s\n", p.Depth, size(p.Largest()), size(p.Smallest()), mm(p.Ovality.Value))
	}
	fmt.Printf("   the greatest of them: %s, at %v\n", mm(g.Ovality.Value), g.OvalityAt)
	fmt.Println("\n3  Taper = top − bottom, along ONE axis")
	for _, t := range g.Tapers {
		fmt.Printf("   %v\n", t)
	}
	fmt.Printf("   the greater: %s; per 100 mm of bore: %s\n", mm(g.Taper.Size.Value), mm(must(g.Taper.Per(100*units.Millimetre)).Value))
	fmt.Printf("\n4  Greatest − least of all = %s − %s = %s\n", size(g.Largest), size(g.Smallest), mm(g.Spread.Value))
	fmt.Printf("   Some manuals call this wear. Wear over the new size: %v\n", g.Largest.Over(setting))
	fmt.Printf("   Shape: %v\n", g.Shape)

	fmt.Println("\nTHE WALL, its departure from the setting drawn 200 times too large (• thrust, ○ pin)")
	for i, depth := range depths {
		for _, side := range []struct {
			dial units.Length
			mark string
		}{{thrust[i], "•"}, {pin[i], "○"}} {
			fmt.Printf("%8v │%s%s %+d µm\n", depth, strings.Repeat("·", max(0, int(side.dial)/3)), side.mark, side.dial)
		}
	}

	fmt.Println("\nA SECOND WAY: the dial alone, in whole micrometres, without any diameter")
	last := len(depths) - 1
	oval, taper := thrust[0]-pin[0], thrust[0]-thrust[last]
	spread := thrust[0] - pin[last]
	fmt.Printf("   ovality %d − %d = %d µm, taper %d − %d = %d µm, spread %d − %d = %d µm\n",
		thrust[0], pin[0], oval, thrust[0], thrust[last], taper, thrust[0], pin[last], spread)
	fmt.Printf("   the same: %t. The setting has cancelled: a ring that is wrong by 5 µm shifts\n"+
		"   every size by 5 µm, and no ovality and no taper at all.\n",
		oval*units.Micrometre == g.Ovality.Value && taper*units.Micrometre == g.Taper.Size.Value && spread*units.Micrometre == g.Spread.Value)

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	gauge.Dial = bore.PlusIsSmaller
	wrong := must(gauge.Diameter(thrust[0] * units.Micrometre))
	fmt.Printf("   • The dial runs the other way. On many gauges plus is SMALLER: +%d µm is then\n"+
		"     %s, not %s: twice the reading wrong. Press the anvil in\n     by hand and look which way the hand goes.\n",
		thrust[0], mm(wrong), size(g.Largest))
	fmt.Printf("   • Three limits, three quantities: \"0.05 mm\" may be meant of the ovality (%s), of\n"+
		"     the taper (%s) or of the spread (%s).\n", mm(g.Ovality.Value), mm(g.Taper.Size.Value), mm(g.Spread.Value))
	fmt.Printf("   • Taper across the axes, thrust at the top less pin at the bottom: %d µm, which is\n     spread and no taper.\n", spread)
	fmt.Println("   • The gauge held askew reads too large: rock it, and take the least reading.")
	fmt.Println("   • What these six readings cannot show:")
	for _, u := range g.Unseen {
		fmt.Printf("     – %v\n", u)
	}
	fmt.Println("\nCAUTION: ring ridges and port edges cut fingers. The maker's manual outranks this page.")
}

// size prints the diameter at a place.
func size(p bore.Place) string { return mm(p.Size.Value) }

// mm prints a length to a thousandth of a millimetre.
func mm(l units.Length) string { return l.Format(units.Millimetre, 3) }

// must ends the program where something went wrong.
func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
