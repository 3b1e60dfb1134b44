// SPDX-License-Identifier: BSD-3-Clause

// Measure is a lesson: what six readings of a dial bore gauge say of a worn cylinder.
package main

import (
	"cmp"
	"fmt"
	"io"
	"os"
	"slices"
	"strings"

	"borewright.example/bore"
	"borewright.example/units"
)

// Change these. Invented data: the cylinder of an irrigation pump in a village workshop. The dial was
// set to zero in a ring; try what the same readings mean when it runs the other way.
var shipped = data{
	setting: 78 * units.Millimetre,
	dial:    bore.PlusIsLarger, // or bore.PlusIsSmaller
	planes: []plane{ // depth below the deck; the dial along the thrust axis, and square to it, along the piston pin
		{12 * units.Millimetre, 105 * units.Micrometre, 70 * units.Micrometre},
		{60 * units.Millimetre, 60 * units.Micrometre, 40 * units.Micrometre},
		{102 * units.Millimetre, 20 * units.Micrometre, 12 * units.Micrometre},
	},
}

type data struct {
	setting units.Length
	dial    bore.Dial
	planes  []plane
}

type plane struct{ depth, thrust, pin units.Length }

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	planes := slices.SortedFunc(slices.Values(d.planes), func(a, b plane) int { return cmp.Compare(a.depth, b.depth) })
	gauge := bore.Gauge{Dial: d.dial, Standard: bore.Standard{Size: d.setting}}
	var readings []bore.Reading
	most, least, far := units.Length(0), units.Length(0), units.Length(0) // of what the dial shows, zero among them
	for i, p := range planes {
		if i > 0 && p.depth == planes[i-1].depth {
			must(0, fmt.Errorf("two planes at %v; want each depth once", p.depth))
		}
		for _, r := range []bore.Reading{{Axis: bore.ThrustAxis, Diameter: p.thrust}, {Axis: bore.PinAxis, Diameter: p.pin}} {
			most, least = max(most, r.Diameter), min(least, r.Diameter)
			if r.Diameter.Abs() > far.Abs() {
				far = r.Diameter
			}
			r.Depth, r.Diameter = p.depth, must(gauge.Diameter(r.Diameter))
			readings = append(readings, r)
		}
	}
	g := must(bore.Analyse(readings, gauge))
	first, last := planes[0], planes[len(planes)-1]

	fmt.Fprintf(w, "MEASURING A BORE: %d readings, four answers\n", len(readings))
	fmt.Fprintln(w, "\nThe question: how large, how oval, how tapered is this bore, and how far from the setting?")
	sign, other := "+", bore.PlusIsSmaller
	if d.dial == bore.PlusIsSmaller {
		sign, other = "−", bore.PlusIsLarger
	}
	fmt.Fprintf(w, "\n1  From the dial to diameters     D = setting %s dial     D: the diameter; on this dial %v\n", sign, d.dial)
	for i, r := range readings {
		dial := planes[i/2].thrust
		if r.Axis == bore.PinAxis {
			dial = planes[i/2].pin
		}
		fmt.Fprintf(w, "   at %6v, %-6s  D = %v %s (%s µm) = %s\n", r.Depth, r.Axis.String(), d.setting, sign, um(dial), mm(r.Diameter))
	}
	fmt.Fprintln(w, "\n2  Ovality = greatest − least diameter in ONE plane, at one depth")
	for _, p := range g.Planes {
		fmt.Fprintf(w, "   at %6v  %s − %s = %s\n", p.Depth, mm(p.Largest().Size.Value), mm(p.Smallest().Size.Value), mm(p.Ovality.Value))
	}
	fmt.Fprintf(w, "   the greatest of them: %s, at %v\n", mm(g.Ovality.Value), g.OvalityAt)
	fmt.Fprintln(w, "\n3  Taper = uppermost − lowest, along ONE axis")
	if len(g.Tapers) == 0 {
		fmt.Fprintln(w, "   There is one depth alone: it shows no taper. Read another.")
	} else {
		for _, t := range g.Tapers {
			fmt.Fprintf(w, "   %s: %s − %s = %s\n", t.Axis.String(), mm(along(g, 0, t)), mm(along(g, len(g.Planes)-1, t)), mm(t.Size.Value))
		}
		word := map[bool]string{true: "wider above", false: "narrower above"}[g.Taper.Size.Value > 0]
		if g.Taper.Size.Value == 0 {
			word = "as wide above as below"
		}
		fmt.Fprintf(w, "   the greater: %s, %s; on 100 mm of bore %s\n", mm(g.Taper.Size.Value.Abs()), word, mm(must(g.Taper.Per(100*units.Millimetre)).Value.Abs()))
	}
	fmt.Fprintf(w, "\n4  Spread = greatest − least of all = %s − %s = %s\n", mm(g.Largest.Size.Value), mm(g.Smallest.Size.Value), mm(g.Spread.Value))
	if over := g.Largest.Over(d.setting).Value; over > 0 {
		fmt.Fprintf(w, "   Some manuals call this wear. Others count from the new size: if that is the setting, %s.\n", mm(over))
	} else {
		fmt.Fprintf(w, "   Some manuals call this wear. From the setting none is seen: the largest is %s below it.\n", mm(-over))
	}
	fmt.Fprintf(w, "   Shape, from the deck down: %s\n", cmp.Or(g.Shape, "unknown"))

	step := units.Micrometre
	for most-least > 60*step {
		step *= 2
	}
	at := func(l units.Length) int { return int((l.Round(step) - least.Round(step)) / step) }
	fmt.Fprintf(w, "\nTHE DIAL (a mark is %v; │ zero, • thrust, ○ pin)\n", step)
	for _, p := range planes {
		for _, side := range []struct {
			dial units.Length
			mark rune
		}{{p.thrust, '•'}, {p.pin, '○'}} {
			line := []rune(strings.Repeat(" ", 1+at(most)))
			for i := min(at(0), at(side.dial)); i < max(at(0), at(side.dial)); i++ {
				line[i] = '·'
			}
			line[at(0)] = '│'
			line[at(side.dial)] = side.mark
			fmt.Fprintf(w, "%8v %s %s µm\n", p.depth, string(line), um(side.dial))
		}
	}

	fmt.Fprintln(w, "\nA SECOND WAY: the dial alone, without any diameter")
	oval, high, low := units.Length(0), first.thrust, first.thrust
	for _, p := range planes {
		oval = max(oval, (p.thrust - p.pin).Abs())
		high, low = max(high, p.thrust, p.pin), min(low, p.thrust, p.pin)
	}
	fmt.Fprintf(w, "   ovality, the greatest difference at one depth: %s µm (the library: %s µm)\n", um(oval), um(g.Ovality.Value))
	if len(g.Tapers) > 0 {
		taper := max((first.thrust - last.thrust).Abs(), (first.pin - last.pin).Abs())
		fmt.Fprintf(w, "   taper, uppermost less lowest without the sign: %s µm (the library: %s µm)\n", um(taper), um(g.Taper.Size.Value.Abs()))
	}
	fmt.Fprintf(w, "   spread, the greatest less the least: %s − (%s) = %s µm (the library: %s µm)\n", um(high), um(low), um(high-low), um(g.Spread.Value))
	fmt.Fprintln(w, "   The setting has cancelled: a ring that is wrong by 5 µm shifts every size by 5 µm, and no\n   ovality and no taper at all. Nor does it matter here which way the dial runs.")

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	gauge.Dial = d.dial
	right := must(gauge.Diameter(far))
	gauge.Dial = other
	fmt.Fprintf(w, "   • The dial is read the wrong way round. %s µm would then be %s and not %s: twice the\n     reading wrong. Press the anvil in by hand and look which way the hand goes.\n", um(far), mm(must(gauge.Diameter(far))), mm(right))
	fmt.Fprintf(w, "   • Which limit? \"0.05 mm\" may be meant of the ovality (here %s), of the taper (%s), or of the\n     spread (%s).\n", mm(g.Ovality.Value), mm(g.Taper.Size.Value.Abs()), mm(g.Spread.Value))
	if len(g.Tapers) > 0 {
		fmt.Fprintf(w, "   • Taper taken across the axes, thrust above against pin below: %s, which mixes the two.\n", mm((first.thrust - last.pin).Abs()))
	}
	fmt.Fprintln(w, "   • The gauge held askew reads too large: rock it, and take the least.")
	fmt.Fprintln(w, "   • What these readings cannot show:")
	for _, u := range g.Unseen {
		fmt.Fprintf(w, "     – %v\n", u)
	}
	fmt.Fprintln(w, "\nCAUTION: ring ridges and port edges cut fingers. The maker's manual outranks this page.")
}

// along returns the size at a plane along the axis of a taper.
func along(g bore.Geometry, i int, t bore.Taper) units.Length {
	for _, p := range g.Planes[i].Places {
		if p.Axis == t.Axis {
			return p.Size.Value
		}
	}
	return 0
}

// mm prints a length to a thousandth of a millimetre, or finer where it is.
func mm(l units.Length) string {
	if l%units.Micrometre != 0 {
		return l.Format(units.Millimetre, 4)
	}
	return l.Format(units.Millimetre, 3)
}

// um prints what a dial shows.
func um(l units.Length) string {
	return strings.TrimSuffix(strings.TrimSuffix(l.Format(units.Micrometre, 1), " µm"), ".0")
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
