// SPDX-License-Identifier: BSD-3-Clause

// Crosshatch is a lesson: the angle that a hone in a drill leaves, and what leaves the one wanted.
package main

import (
	"bytes"
	"encoding/base64"
	"errors"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"log"
	"math"
	"os"
	"strings"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Change these. One recipe in use for a small engine: a fast drill, half a second to a stroke.
var shipped = data{
	setting: hone.Setting{
		Bore:     67 * units.Millimetre,
		Stroke:   80 * units.Millimetre,
		Spindle:  650 * units.PerMinute,
		Stroking: hone.Strokes(120 * units.PerMinute), // single strokes; two make a cycle
	},
	wanted: 45 * units.Degree, // between the lines
}

type data struct {
	setting hone.Setting
	wanted  units.Angle
}

func main() {
	lesson(os.Stdout, shipped)
	if time.Now().Year() == 2009 { // the playground, whose clock stands; its page shows pictures
		show(shipped)
	}
}

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	s := d.setting
	want, left := must(hone.Included(d.wanted)), must(s.Crosshatch())
	round, along := must(s.Peripheral()), must(s.Axial())
	vt, va := round.In(units.MetrePerMinute), along.In(units.MetrePerMinute)
	spindle, slow := reach(s.SpindleSpeedFor(want))
	stroking, hand := reach(s.StrokingRateFor(want))
	stroke, long := reach(s.StrokeLengthFor(want))

	fmt.Fprintln(w, "THE CROSSHATCH THAT A DRILL REALLY LEAVES")
	fmt.Fprintf(w, "\nThe question: bore %v, stroke %v, %v, %v.\nWhich angle do the lines make, and what would leave %s?\n", s.Bore, s.Stroke, s.Spindle, s.Stroking, want.Format(1))
	fmt.Fprintln(w, "\n1  Two speeds, one line     vt = π·D·n, round the bore;  va = 2·L·f, along it;  tan a = va/vt\n"+
		"   D: bore; n: turns; L: stroke; f: cycles, there and back; a: how far a line leans from square")
	fmt.Fprintf(w, "   vt = π · %v · %v = %.2f m/min\n", s.Bore, s.Spindle, vt)
	fmt.Fprintf(w, "   va = 2 · %v · %s cycles/min = %.2f m/min\n", s.Stroke, four(s.Stroking.Cycles().In(units.PerMinute)), va)
	fmt.Fprintf(w, "   a = atan(%.2f/%.2f) = %.2f°;  between the lines 2a = %s\n", va, vt, left.FromSquare().In(units.Degree), left.Format(1))
	switch off := (left.Included() - want.Included()).In(units.Degree); {
	case math.Abs(off) <= 1:
		fmt.Fprintln(w, "   That is what is wanted.")
	case off < 0:
		fmt.Fprintf(w, "   Too flat by %.1f°: turn more slowly, or stroke faster.\n", -off)
	default:
		fmt.Fprintf(w, "   Too steep by %.1f°: turn faster, or stroke more slowly.\n", off)
	}
	fmt.Fprintf(w, "\n2  What would leave %s, one lever at a time\n", want.Format(1))
	if slow {
		fmt.Fprintf(w, "   the spindle at %s rev/min,\n", four(spindle.In(units.PerMinute)))
	}
	if hand {
		word := map[bool]string{true: "which is more than a hand does", false: "which a hand can do"}[stroking.Cycles() > 2*units.Hertz]
		fmt.Fprintf(w, "   or %s full cycles a second, %s,\n", four(stroking.Cycles().In(units.Hertz)), word)
	}
	if long {
		fmt.Fprintf(w, "   or a stroke of %s mm.\n", four(stroke.In(units.Millimetre)))
	}
	if !slow || !hand || !long {
		fmt.Fprintln(w, "   What is not in this list no workshop can do.")
	}
	fmt.Fprintf(w, "\n3  How fast may it turn?     rev/min for %s, by stroke and by cycles a second\n", want.Format(1))
	fmt.Fprintln(w, "   stroke          1 a second   2 a second")
	for _, eighths := range []int{7, 8, 9} {
		stroke := s.Stroke * units.Length(eighths) / 8
		fmt.Fprintf(w, "   %-12s", stroke.Format(units.Millimetre, 1))
		for _, cycles := range []units.Frequency{1, 2} {
			turn, ok := reach(hone.Setting{Bore: s.Bore, Stroke: stroke, Stroking: hone.Cycles(cycles * units.Hertz)}.SpindleSpeedFor(want))
			fmt.Fprintf(w, "%13s", map[bool]string{true: four(turn.In(units.PerMinute)), false: "none"}[ok])
		}
		fmt.Fprintln(w)
	}

	fmt.Fprintf(w, "\nTHE WALL UNROLLED, a square of it: left as it is, %s, right as it is wanted, %s\n", left.Format(0), want.Format(0))
	one, two := braille(left), braille(want)
	for y := range one {
		fmt.Fprintf(w, "   %s   %s\n", string(one[y]), string(two[y]))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: one turn of the spindle, laid flat")
	turns := s.Spindle.In(units.PerMinute) / s.Stroking.Strokes().In(units.PerMinute)
	climbs, way := s.Stroke.In(units.Millimetre)/turns, math.Pi*s.Bore.In(units.Millimetre)
	fmt.Fprintf(w, "   a stroke has %s turns, so a turn climbs %v/%s = %.3f mm", four(turns), s.Stroke, four(turns), climbs)
	if advance, ok := reach(s.Advance()); ok {
		fmt.Fprintf(w, " (the library: %.3f mm)", advance.In(units.Millimetre))
	}
	fmt.Fprintf(w, "\n   on a way round of %.2f mm: 2·atan(%.3f/%.2f) = %.2f° (the library: %.2f°)\n", way, climbs, way, 2*math.Atan(climbs/way)*180/math.Pi, left.Included().In(units.Degree))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	count := s.Stroking.Strokes()
	cycles, strokes := s, s
	cycles.Stroking, strokes.Stroking = hone.Cycles(count), hone.Strokes(count)
	fmt.Fprintf(w, "   • \"%s a minute\": counted there and back it leaves %s, one way %s.\n", four(count.In(units.PerMinute)), must(cycles.Crosshatch()).Format(1), must(strokes.Crosshatch()).Format(1))
	fmt.Fprintf(w, "   • \"%s degrees\": between the lines it is %s; a line that leans as much from square is ", four(d.wanted.In(units.Degree)), want.Format(0))
	if square, err := hone.FromSquare(d.wanted); err != nil {
		fmt.Fprintln(w, "none.")
	} else {
		fmt.Fprintf(w, "%s.\n", square.Format(0))
	}
	fmt.Fprintf(w, "   • A hand swings: in the middle of its stroke it leaves %s, at the ends 0°.\n", must(s.Steepest(hone.Crank())).Format(1))
	fmt.Fprintf(w, "   • Too fast: up to %.0f m/min is often quoted (common practice). ", units.Speed(hone.SurfaceMost).In(units.MetrePerMinute))
	if round > hone.SurfaceMost {
		fmt.Fprintf(w, "This is %.1f: heat, glaze and flat lines.\n", vt)
	} else {
		fmt.Fprintf(w, "This is %.1f.\n", vt)
	}
	fmt.Fprintln(w, "\nCAUTION: clamp the cylinder, nothing loose near the drill, eyes guarded. A rigid-stone hone turns\n"+
		"only inside the bore; a ball-type hone turns slowly as it enters and leaves, and is oiled.")
}

// four prints a number above 0 to four digits.
func four(x float64) string {
	s := fmt.Sprintf("%.*f", min(6, max(0, 3-int(math.Floor(math.Log10(x))))), x)
	if strings.Contains(s, ".") {
		s = strings.TrimRight(strings.TrimRight(s, "0"), ".")
	}
	return s
}

// lines draws both families of lines on a wall of n by n dots.
func lines(c hone.Crosshatch, n int, dot func(x, y int)) {
	slope := math.Tan(c.FromSquare().In(units.Radian))
	steep := slope > 1
	if steep {
		slope = 1 / slope
	}
	for x := range n {
		rise := int(math.Round(slope * float64(x)))
		for y := range n {
			if (y-rise)%16 != 0 && (y+rise)%16 != 0 {
				continue
			}
			if steep {
				dot(y, x)
			} else {
				dot(x, y)
			}
		}
	}
}

// braille draws the lines as text, eight dots to a character.
func braille(c hone.Crosshatch) [][]rune {
	rows := make([][]rune, 16)
	for y := range rows {
		rows[y] = []rune(strings.Repeat("⠀", 32))
	}
	lines(c, 64, func(x, y int) { rows[y/4][x/2] |= [4][2]rune{{1, 8}, {2, 16}, {4, 32}, {64, 128}}[y%4][x%2] })
	return rows
}

// show prints the lines as a picture.
func show(d data) {
	c, err := d.setting.Crosshatch()
	if err != nil {
		return // the page has said why
	}
	img := image.NewPaletted(image.Rect(0, 0, 256, 256), color.Palette{color.White, color.Gray{Y: 60}})
	lines(c, 256, func(x, y int) { img.SetColorIndex(x, y, 1) })
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		log.Fatal(err)
	}
	time.Sleep(time.Nanosecond) // a line IMAGE: is shown as a picture where it stands alone in its moment
	fmt.Println("IMAGE:" + base64.StdEncoding.EncodeToString(b.Bytes()))
	time.Sleep(time.Nanosecond)
}

// reach returns x, and whether a workshop can have it.
func reach[T any](x T, err error) (T, bool) {
	if errors.Is(err, hone.ErrUnreachable) {
		return x, false
	}
	return must(x, err), true
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
