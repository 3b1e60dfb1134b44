// SPDX-License-Identifier: BSD-3-Clause

// Overtravel is a lesson: how far a hone stands out of the bore, and how straight the wall is then.
package main

import (
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder in a village workshop, honed with rigid stones. A room
// of 0 is the closed end of a blind bore.
var shipped = data{
	depth:      90 * units.Millimetre,
	stones:     45 * units.Millimetre, // how long they are
	roomTop:    40 * units.Millimetre, // how far they can go beyond either end
	roomBottom: 40 * units.Millimetre,
	stock:      50 * units.Micrometre, // to take off the diameter, on the mean over the wall
	setting:    hone.Setting{Bore: 78 * units.Millimetre, Spindle: 120 * units.PerMinute, Stroking: hone.Cycles(60 * units.PerMinute)},
}

type data struct {
	depth, stones, roomTop, roomBottom, stock units.Length
	setting                                   hone.Setting
}

func main() { lesson(os.Stdout, shipped) }

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	run := hone.Run{Kind: hone.RigidStone, Depth: d.depth, Tool: d.stones, RoomTop: d.roomTop, RoomBottom: d.roomBottom}
	usual, err := hone.UsualTravel(run)
	if errors.Is(err, hone.ErrRoom) {
		err = fmt.Errorf("%w: the stones are too long to move in this bore; two thirds of its depth is usual (common practice)", err)
	}
	must(usual, err)
	long := must(d.removal(usual))

	fmt.Fprintln(w, "OVERTRAVEL AND STRAIGHTNESS: where the metal goes")
	fmt.Fprintf(w, "\nThe question: a bore of %v deep, stones of %v, %v to take off. How long a stroke?\n", d.depth, d.stones, d.stock)
	fmt.Fprintln(w, "\n1  The stroke     L = depth + out at the top + out at the bottom − stones;  out: how far they stand out")
	fmt.Fprintf(w, "   a third of the stones out, where there is room: L = %s + %s + %s − %s = %s\n", mm(d.depth), mm(usual.Top), mm(usual.Bottom), mm(d.stones), mm(must(usual.Stroke())))
	ends := []struct {
		name      string
		room, out units.Length
	}{{"top", d.roomTop, usual.Top}, {"bottom", d.roomBottom, usual.Bottom}}
	for _, end := range ends {
		switch {
		case end.room == 0:
			fmt.Fprintf(w, "   The %s is closed: no stone gets past it, and what it cuts there is next to nothing.\n", end.name)
		case end.out < d.stones/3:
			fmt.Fprintf(w, "   At the %s there is room for %s alone.\n", end.name, mm(end.out))
		}
	}

	fmt.Fprintln(w, "\n2  What the ends get of what the middle gets, by how much stands out")
	fmt.Fprintln(w, "   out at top, bottom      stroke   top, bottom: share of the middle's   wall straight to")
	most := 0.0
	for _, part := range []units.Length{9, 3, 2} {
		t, err := run.Travel(min(d.stones/part, d.roomTop), min(d.stones/part, d.roomBottom))
		if errors.Is(err, hone.ErrRoom) {
			fmt.Fprintf(w, "   one %s      no stroke is left\n", map[units.Length]string{9: "ninth", 3: "third", 2: "half"}[part])
			continue
		}
		r := must(d.removal(must(t, err)))
		most = max(most, r.Top.In(r.Middle), r.Bottom.In(r.Middle))
		fmt.Fprintf(w, "   %8s %9s %11s   %16.3f %8.3f %24.1f µm\n", mm(t.Top), mm(t.Bottom), mm(must(t.Stroke())), r.Top.In(r.Middle), r.Bottom.In(r.Middle), r.Straightness.In(units.Micrometre))
	}
	if most < 1 {
		fmt.Fprintln(w, "   None of these makes the ends equal to the middle: a wall is honed with its ends tight, and the stones\n   dwell there as the gauge asks.")
	} else {
		fmt.Fprintln(w, "   With stones as long as these an end can get as much as the middle, or more.")
	}

	step := 500 * units.Nanometre
	for long.Max > 70*step {
		step *= 2
	}
	fmt.Fprintf(w, "\nWHAT COMES OFF THE DIAMETER, from the top face down (█ each %v)\n", step)
	for _, p := range long.Points {
		fmt.Fprintf(w, "   %8s │%s %.1f µm\n", mm(p.Depth), strings.Repeat("█", int(p.Diameter.Round(step)/step)), p.Diameter.In(units.Micrometre))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: let the stones run past a place and add up, a thousandth of their way past it at a time")
	depth, stones, top := d.depth.In(units.Millimetre), d.stones.In(units.Millimetre), usual.Top.In(units.Millimetre)
	stroke := depth + top + usual.Bottom.In(units.Millimetre) - stones
	took := func(at float64) float64 { // pressure × time at a place, one stroke
		first, last := max(at-stones, -top), min(at, stroke-top) // upper end of the stones as they come to the place and leave it
		sum, steps := 0.0, 1000
		for i := range steps {
			upper := first + (float64(i)+0.5)/float64(steps)*(last-first)
			sum += stones / (min(upper+stones, depth) - max(upper, 0)) // a spring presses what is left in the bore the harder
		}
		return sum * max(0, last-first)
	}
	fmt.Fprintf(w, "   top over middle %.2f (the library: %.2f), bottom over middle %.2f (the library: %.2f)\n",
		took(0)/took(depth/2), long.Top.In(long.Middle), took(depth)/took(depth/2), long.Bottom.In(long.Middle))
	if stones <= depth/2 && usual.Top > 0 {
		out := top / stones
		fmt.Fprintf(w, "   and of the top by the formula of a stone on a spring: ln(1/(1 − out/stones)) = ln(1/(1 − %.3f)) = %.2f\n", out, math.Log(1/(1-out)))
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	blind := run
	blind.RoomBottom = 0
	if t, err := hone.UsualTravel(blind); err == nil {
		b := must(d.removal(t))
		fmt.Fprintf(w, "   • A blind end is honed like an open one. With no room below, the bottom gets %.1f µm where the middle\n     gets %.1f µm: it stays tight, and the ring gap is smallest there.\n", b.Bottom.In(units.Micrometre), b.Middle.In(units.Micrometre))
	}
	fmt.Fprintf(w, "   • More overtravel, to open the ends. Past half, here %s, stones tip over the edge and may be thrown.\n", mm(d.stones/2))
	ball := run
	ball.Kind = hone.BallType
	if t, err := hone.UsualTravel(ball); err == nil {
		fmt.Fprintf(w, "   • One rule for all tools. Of a ball-type hone as long, half stands out where it can: a stroke of %s.\n     It takes the glaze off, and straightens nothing.\n", mm(must(t.Stroke())))
	}
	lines := strings.NewReplacer("; ", ";\n", ". ", ".\n", ", and never", ",\nand never")
	all := run.Kind.Cautions() // of rigid stones the third is theirs alone, and the first for any turning tool
	fmt.Fprintf(w, "\nCAUTION: %s\n%s\n", lines.Replace(all[2].Text), lines.Replace(all[0].Text))
}

// removal is what a travel takes at 19 places, with a steady stroke and stones on a spring.
func (d data) removal(t hone.Travel) (hone.Removal, error) {
	return d.setting.Removal(hone.Steady(), t, hone.ConstantForce, d.stock, 19)
}

func mm(l units.Length) string { return l.Format(units.Millimetre, 1) }

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
