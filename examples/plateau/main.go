// SPDX-License-Identifier: BSD-3-Clause

// Plateau is a lesson: how ten plateau strokes change the five numbers of a honed wall.
package main

import (
	"fmt"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// Change these. Invented data: a pump's cylinder, honed with coarse stones and traced over 4 mm along the
// bore, and finer stones to take the peaks off.
var shipped = data{
	rough:   units.MustParseLength("4 µm"),    // from the ground to the top of the highest ridges
	deep:    units.MustParseLength("4 µm"),    // the deepest grooves, below that ground
	every:   units.MustParseLength("0.18 mm"), // from groove to groove
	wide:    units.MustParseLength("0.05 mm"), // a groove, at its mouth
	stroke:  units.MustParseLength("12 nm"),   // metal that one stroke takes: its volume over the area of the wall
	strokes: 10,
	wanted:  units.MustParseLength("0.15 µm"), // the Rpk that the maker of the rings allows
}

type data struct {
	rough, deep, every, wide, stroke units.Length
	strokes                          int
	wanted                           units.Length
}

func main() { lesson(os.Stdout, shipped) }

const spacing = 2 * units.Micrometre // of the points of the trace

var usual = surface.Filter{CutOff: 800 * units.Micrometre} // what is longer is no roughness

// wall is the trace: ridges, few of them high, as a hone leaves them, and V-shaped grooves between.
func wall(d data, seed uint64) (heights []units.Length) {
	chance := func() float64 { // xorshift: the same numbers on every machine
		seed ^= seed << 13
		seed ^= seed >> 7
		seed ^= seed << 17
		return float64(seed>>11) / (1 << 53)
	}
	before, after, depth := chance(), chance(), chance()
	const ridge = 8 // points from ridge to ridge
	for i := range 2000 {
		if i%ridge == 0 {
			before, after = after, chance()
		}
		part := float64(i%ridge) / ridge
		z := um(d.rough) * (before*before*(1-part) + after*after*part)
		if d.every > 0 && d.wide > 0 {
			at := math.Mod((float64(i)*um(spacing)), um(d.every)) - um(d.every)/2
			if at <= -um(d.every)/2+um(spacing) {
				depth = chance()
			}
			z -= um(d.deep) * (0.3 + 0.7*depth) * max(0, 1-2*math.Abs(at)/um(d.wide))
		}
		const most = 2e7 // µm: more than a profile takes, and no more than a length
		heights = append(heights, units.Length(min(max(z, -most), most)*float64(units.Micrometre)))
	}
	return heights
}

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	p := must(surface.FromHeights(spacing, wall(d, 1)))
	r := must(p.TwoStep(surface.Filter{})) // the trace has no waves: all of it is roughness
	curve := r.Curve()
	must(curve.Truncate(min(0, d.stroke, units.Length(d.strokes)))) // which refuses what is below 0
	base := curve.Plateau()
	after := must(curve.Remove(must(d.stroke.MulDiv(int64(d.strokes), 1))))

	fmt.Fprintf(w, "PLATEAU STROKES: off with the peaks, and the grooves stay\n\nThe question: a wall as coarse stones left it. What do %d strokes of fine stones change,\nand how many bring Rpk down to %s?\n", d.strokes, text(d.wanted))

	fmt.Fprintln(w, "\n1  The five numbers of the wall     sort the heights z of the trace, the highest first: so much of the wall is as high")
	fmt.Fprintf(w, "   A straight line through the flattest 40 %% of that curve falls by Rk = %s, the core that bears.\n   Mr1 = %s of the wall stands above the core, Mr2 = %s reaches to its ground or higher\n", text(base.Rk), share(base.Mr1), share(base.Mr2))
	fmt.Fprintf(w, "   Rpk = %s: a triangle on Mr1 as large as the peaks are;  Rvk = %s: one on the rest, as the valleys are\n", text(base.Rpk), text(base.Rvk))
	fmt.Fprintf(w, "   oil: Rvk·(1 − Mr2)/2 = %.2f·%.3f/2 = %.3f µm deep, were it spread\n", um(base.Rvk), 1-base.Mr2, um(base.Oil))

	fmt.Fprintln(w, "\n2  What strokes take     V = n·v     v: metal of one stroke, the same for each; n: strokes. All above one height c goes.")
	fmt.Fprintf(w, "   V = %d·%s = %s, the mean of z − c over the wall where z is above c: c lies %s below the highest peak\n"+
		"   strokes   off the peaks   of the wall bears        Rpk        Rk       Rvk      Mr1      Mr2\n", d.strokes, nano(d.stroke), nano(after.Metal), text(after.Stock))
	for k := range 11 {
		if n := must(units.Length(d.strokes).MulDiv(int64(k), 10)); k == 0 || n > must(units.Length(d.strokes).MulDiv(int64(k-1), 10)) {
			c := must(curve.Remove(must(d.stroke.MulDiv(int64(n), 1))))
			fmt.Fprintf(w, "   %7d   %13s   %17s   %8s  %8s  %8s  %7s  %7s\n", n, text(c.Stock), share(c.Ratio),
				text(c.Plateau.Rpk), text(c.Plateau.Rk), text(c.Plateau.Rvk), share(c.Plateau.Mr1), share(c.Plateau.Mr2))
		}
	}
	if after.Metal == 0 {
		fmt.Fprintln(w, "   Nothing was taken, and nothing changes.")
	} else if d.strokes > 1 {
		first, before := must(curve.Remove(d.stroke)).Stock, must(curve.Remove(must(d.stroke.MulDiv(int64(d.strokes-1), 1))))
		fmt.Fprintf(w, "   The first stroke lowers the highest peak by %s, the last by %s: more wall shares the pressure.\n", text(first), text(after.Stock-before.Stock))
	}
	switch {
	case after.Plateau.Core == "flat core":
		fmt.Fprintln(w, "   Two fifths of the wall or more are one plateau now: Rk is 0 because nothing is left of the ridges there.\n   On a real wall the fine stones leave a texture of their own.")
	case after.Plateau.From == base.From && after.Level >= base.Top && after.Metal > 0:
		fmt.Fprintf(w, "   The cut is above the core. So far each stroke takes its metal from the peaks, and Rpk falls by 2·v/Mr1 = %.3f µm.\n", 2*um(d.stroke)/base.Mr1)
	case after.Plateau.From != base.From:
		fmt.Fprintln(w, "   The flattest 40 % of the curve lie elsewhere now: the core is another part of the wall, and all five numbers jump.")
	}

	fmt.Fprintln(w, "\n3  Strokes for the Rpk wanted     n = V/v")
	enough := must(curve.Reach(d.wanted))
	switch n := um(enough.Metal) / um(d.stroke); {
	case enough.Stock == 0:
		fmt.Fprintf(w, "   None: Rpk is %s, and %s is allowed.\n", text(base.Rpk), text(d.wanted))
	case d.stroke == 0:
		fmt.Fprintf(w, "   Never: these stones take nothing, and %s have to go.\n", nano(enough.Metal))
	default:
		fmt.Fprintf(w, "   V = %s has to go:  n = %s/%s = %.1f: %.0f or more.\n", nano(enough.Metal), nano(enough.Metal), nano(d.stroke), n, math.Ceil(n))
	}

	points := r.Points()
	draw(w, points, curve, after.Level)

	fmt.Fprintln(w, "\nA SECOND WAY: try heights c, and count")
	low, high := um(curve.Height(1)), um(curve.Height(0))
	for range 60 {
		if c := (low + high) / 2; over(points, c) > um(after.Metal) {
			low = c
		} else {
			high = c
		}
	}
	fmt.Fprintf(w, "   %s stand above c = %.2f µm (the library: %.2f µm), from where the mean of all heights was\n", nano(after.Metal), low, um(after.Level))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	fmt.Fprintf(w, "   • The gauge rests on peaks. The bore reads %s larger on the diameter, and has lost %s of metal.\n", text(2*after.Stock), text(2*after.Metal))
	if after.Plateau.Rvk > base.Rvk {
		fmt.Fprintf(w, "   • \"Rvk has grown, so the grooves are deeper now.\" From %s to %s, and nobody touched them: more of the\n     wall counts as valley, since the straight line has moved.\n", text(base.Rvk), text(after.Plateau.Rvk))
	}
	fmt.Fprintf(w, "   • A mean line that dips into the grooves, as for Ra: Rvk %s in place of %s by two steps (λc 0.8 mm).\n",
		text(must(p.Gaussian(usual)).Curve().Plateau().Rvk), text(must(p.TwoStep(usual)).Curve().Plateau().Rvk))
	other := must(must(surface.FromHeights(spacing, wall(d, 7))).TwoStep(surface.Filter{})).Curve().Plateau()
	fmt.Fprintf(w, "   • One trace. Beside it the same wall has Rpk %s and Rvk %s, not %s and %s: read several places.\n   • Strokes counted by habit. Other stones, oil or pressure take another v: trace again, and count anew.\n", text(other.Rpk), text(other.Rvk), text(base.Rpk), text(base.Rvk))
	fmt.Fprintln(w, "\nCAUTION: power off before a hand or a stylus goes in. Wash with hot water, soap and a brush before\ntracing: grit counts as peaks. The maker of the rings says which texture is wanted.")
}

// over is the mean over the wall of what stands above a height, in µm.
func over(points []surface.Point, c float64) (sum float64) {
	for _, p := range points {
		sum += max(0, um(p.Z)-c) / float64(len(points))
	}
	return sum
}

// draw shows a stretch of the trace and, beside it, its curve: what is left and what went.
func draw(w io.Writer, points []surface.Point, curve surface.Curve, level units.Length) {
	const rows, columns, ratios = 16, 76, 40
	top := curve.Height(0)
	step := max((top-curve.Height(1))/rows, 1)
	fmt.Fprintf(w, "\nTHE WALL ACROSS %.2f MM, AND THE CURVE OF ITS HEIGHTS (a line is %.2f µm; █ metal, ░ gone; below the curve 0 to 100 %%)\n", columns*2*spacing.In(units.Millimetre), um(step))
	for row := range rows {
		from := top - units.Length(row)*step - step // what a mark stands for begins there
		mark := func(z units.Length) string {
			if z <= from {
				return " "
			}
			return map[bool]string{true: "░", false: "█"}[level <= from]
		}
		trace, heights := "", ""
		for i := range columns {
			trace += mark(points[2*i].Z)
		}
		for i := range ratios {
			heights += mark(curve.Height((float64(i) + 0.5) / ratios))
		}
		fmt.Fprintln(w, strings.TrimRight("   "+trace+"  │"+heights, " "))
	}
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func nano(l units.Length) string { return l.Format(units.Nanometre, 1) }

func text(l units.Length) string { return l.Format(units.Micrometre, 2) }

func share(x float64) string { return fmt.Sprintf("%.1f %%", 100*x) }

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
