// SPDX-License-Identifier: BSD-3-Clause

// Crosshatch is a lesson: the angle that a hone in a drill really leaves, and what would leave 45°.
package main

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"log"
	"math"
	"strings"
	"time"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Change these. One recipe in use for a small engine: a fast drill, half a second to a stroke.
var setting = hone.Setting{
	Bore:     67 * units.Millimetre,
	Stroke:   80 * units.Millimetre,
	Spindle:  650 * units.PerMinute,
	Stroking: hone.Strokes(120 * units.PerMinute), // single strokes; two make a cycle
}

func main() {
	want := must(hone.Included(45 * units.Degree))
	left := must(setting.Crosshatch())
	round, along := must(setting.Peripheral()), must(setting.Axial())

	fmt.Println("THE CROSSHATCH THAT A DRILL REALLY LEAVES")
	fmt.Printf("\nThe question: bore %v, stroke %v, %v, %v. Which angle do the lines make?\n", setting.Bore, setting.Stroke, setting.Spindle, setting.Stroking)
	fmt.Println("\n1  Two speeds, one line     tan a = v_a / v_t, included angle 2a")
	fmt.Printf("   v_t = π·D·n = π · %v · %v = %.2f m/min\n", setting.Bore, setting.Spindle, round.In(units.MetrePerMinute))
	fmt.Printf("   v_a = 2·L·f = 2 · %v · %.3g cycles/s = %.3f m/s = %.2f m/min\n", setting.Stroke, setting.Stroking.Cycles().In(units.Hertz), along.In(units.MetrePerSecond), along.In(units.MetrePerMinute))
	fmt.Printf("   a = atan(%.2f/%.2f) = %.2f°;  2a = %s (wanted: 45°)\n", along.In(units.MetrePerMinute), round.In(units.MetrePerMinute), left.FromSquare().In(units.Degree), left.Format(1))
	fmt.Println("\n2  What would leave 45°, one lever at a time")
	fmt.Printf("   the spindle at %.0f rev/min,\n", must(setting.SpindleFor(want)).In(units.PerMinute))
	fmt.Printf("   or %.1f full cycles a second, where 2 is much for a hand,\n", must(setting.StrokingFor(want)).Cycles().In(units.Hertz))
	fmt.Printf("   or a stroke of %.0f mm. So: turn slowly.\n", must(setting.StrokeFor(want)).In(units.Millimetre))
	fmt.Println("\n3  How fast may it turn?     rev/min for 45°, by stroke and by cycles a second")
	fmt.Println("   stroke    1 a second   2 a second")
	for _, stroke := range []units.Length{70, 80, 90} {
		s := hone.Setting{Bore: setting.Bore, Stroke: stroke * units.Millimetre}
		fmt.Printf("   %v", s.Stroke)
		for _, cycles := range []units.Frequency{1, 2} {
			s.Stroking = hone.Cycles(cycles * units.Hertz)
			fmt.Printf("%13.0f", must(s.SpindleFor(want)).In(units.PerMinute))
		}
		fmt.Println()
	}

	slow := setting
	slow.Spindle = must(setting.SpindleFor(want))
	fmt.Printf("\nTHE WALL UNROLLED, a square of it: left %s, right %s\n", left.Format(0), must(slow.Crosshatch()).Format(0))
	one, two := braille(left), braille(want)
	for y := range one {
		fmt.Printf("   %s   %s\n", string(one[y]), string(two[y]))
	}

	fmt.Println("\nA SECOND WAY: one turn of the spindle, laid flat")
	advance := must(setting.Advance())
	turns := setting.Spindle.In(units.PerMinute) / setting.Stroking.Strokes().In(units.PerMinute)
	circumference := math.Pi * setting.Bore.In(units.Millimetre)
	fmt.Printf("   a stroke has %.0f/%.0f = %.3f turns, so a turn climbs %v/%.3f = %.3f mm (the library: %.3f mm)\n", setting.Spindle.In(units.PerMinute),
		setting.Stroking.Strokes().In(units.PerMinute), turns, setting.Stroke, turns, setting.Stroke.In(units.Millimetre)/turns, advance.In(units.Millimetre))
	fmt.Printf("   on a way round of %.2f mm: 2·atan(%.3f/%.2f) = %.2f° (the library: %s)\n", circumference, advance.In(units.Millimetre), circumference,
		2*math.Atan(setting.Stroke.In(units.Millimetre)/turns/circumference)*180/math.Pi, left.Format(2))

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	cycles := setting
	cycles.Stroking = hone.Cycles(setting.Stroking.Strokes())
	fmt.Printf("   • \"%.0f strokes a minute\": there and back would leave %s, one way leaves %s.\n", setting.Stroking.Strokes().In(units.PerMinute), must(cycles.Crosshatch()).Format(1), left.Format(1))
	fmt.Printf("   • \"45 degrees\": between the lines it is %s; of one line to the square it is %s.\n", want.Format(0), must(hone.FromSquare(45*units.Degree)).Format(0))
	fmt.Printf("   • A hand swings: at mid-stroke it leaves %s, at the ends 0°.\n", must(setting.Steepest(hone.Crank())).Format(1))
	fmt.Printf("   • Too fast. Up to %.[2]f m/min is often quoted (common practice), and this is %.[1]f: beyond it\n     come heat, glaze and flat lines.\n", round.In(units.MetrePerMinute), units.Speed(hone.SurfaceMost).In(units.MetrePerMinute))
	fmt.Println("\nCAUTION: clamp the cylinder, nothing loose near the drill, eyes guarded. A rigid-stone hone turns\n" +
		"only inside the bore; a ball-type hone turns slowly as it enters and leaves, and is oiled.")
	show(left)
}

// lines draws both families of lines on a wall of w by h dots.
func lines(c hone.Crosshatch, w, h int, dot func(x, y int)) {
	slope := math.Tan(c.FromSquare().In(units.Radian))
	for x := range w {
		rise := int(math.Round(slope * float64(x)))
		for y := range h {
			if (y-rise)%16 == 0 || (y+rise)%16 == 0 {
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
	lines(c, 64, 64, func(x, y int) { rows[y/4][x/2] |= [4][2]rune{{1, 8}, {2, 16}, {4, 32}, {64, 128}}[y%4][x%2] })
	return rows
}

// show prints the lines as a picture, which the Go playground shows.
func show(c hone.Crosshatch) {
	img := image.NewPaletted(image.Rect(0, 0, 256, 256), color.Palette{color.White, color.Gray{Y: 60}})
	lines(c, 256, 256, func(x, y int) { img.SetColorIndex(x, y, 1) })
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		log.Fatal(err)
	}
	time.Sleep(time.Nanosecond) // a line IMAGE: is shown as a picture where it stands alone in its moment
	fmt.Println("IMAGE:" + base64.StdEncoding.EncodeToString(b.Bytes()))
	time.Sleep(time.Nanosecond)
}

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
