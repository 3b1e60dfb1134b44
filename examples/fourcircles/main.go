// SPDX-License-Identifier: BSD-3-Clause

// Fourcircles is a lesson: one trace of a wall, the four circles of the standards, and what each answers.
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

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder on a rotary table in a village workshop, a dial against
// its wall, read once round at even steps: micrometres over the radius. At 270° there is a score.
var (
	radius = 39 * units.Millimetre
	dial   = []units.Length{32, 35, 39, 40, 40, 39, 37, 32, 27, 21, 17, 13, 11, 11, 12, 15, 16, 16,
		16, 13, 11, 9, 7, 6, 6, 6, 9, 18, 14, 16, 19, 20, 23, 25, 26, 29}
)

func main() {
	var radii []units.Length
	for _, d := range dial {
		radii = append(radii, radius+d*units.Micrometre)
	}
	trace := must(form.FromRadii(radii))
	circles := []form.Circle{must(trace.LeastSquares()), must(trace.MinimumZone()), must(trace.MinimumCircumscribed()), must(trace.MaximumInscribed())}
	has := []string{"Σ(d − R)² least:      how large is it on the whole?", "max d − min d least:  does it keep a tolerance of form?",
		"max d least:          at what size does it clean up?", "min d greatest:       which plug enters?"}

	fmt.Println("FOUR CIRCLES OF ONE WALL")
	fmt.Printf("\nThe question: %d radii of a wall in one plane. How large is it, and how round?\n", len(dial))
	fmt.Println("\n1  A circle to count from     d: distances of the points from a centre x, y; R: the radius")
	for i, c := range circles {
		fmt.Printf("   %v  x %+6.2f y %+6.2f µm  2R = %s  has %s\n", c.Reference, um(c.Centre.X), um(c.Centre.Y), mm(2*c.Radius), has[i])
	}
	fmt.Println("\n2  Roundness     RONt = max d − min d;  and the points that prove that no other circle is better")
	for _, c := range circles {
		fmt.Printf("   %v  %s − %s = %5.2f µm ", c.Reference, mm(c.Outer), mm(c.Inner), um(c.RONt))
		for _, p := range c.Certificate.Contacts() {
			fmt.Printf(" %.0f° %s", float64(p.Index)/float64(len(dial))*360, map[bool]string{true: "out", false: "in"}[p.Outer])
		}
		if c.Reference != form.LSCI {
			fmt.Printf("  proved: %t", c.Check(trace) == nil)
		}
		fmt.Println()
	}

	fmt.Println("\nTHE WALL (●) BETWEEN THE TWO CIRCLES OF ITS ZONE (·), departures 1300 times too large")
	for y := 43.0; y >= -43; y -= 2.4 {
		row := ""
		for x := -43.0; x <= 43; x += 1.2 {
			row += [...]string{" ", "●", " ", "·", "·", " ", " "}[passes(circles, x, y, 1.1)]
		}
		fmt.Println("   " + strings.TrimRight(row, " "))
	}

	fmt.Println("\nA SECOND WAY: try the centres of a grid, and finer ones about the best")
	for i, c := range circles {
		best, cx, cy := math.Inf(1), 0.0, 0.0
		for step := 8.0; step > 0.001; step /= 2 {
			for x0, y0, k := cx, cy, 0; k < 169; k++ {
				x, y := x0+step*float64(k%13-6), y0+step*float64(k/13-6)
				if v := cost(i, x, y); v < best {
					best, cx, cy = v, x, y
				}
			}
		}
		fmt.Printf("   %v  x %+6.2f y %+6.2f µm, and %.3f µm worse than the library's\n", c.Reference, cx, cy, math.Abs(best-cost(i, um(c.Centre.X), um(c.Centre.Y))))
	}

	fmt.Println("\nWHAT USUALLY GOES WRONG")
	zone, lsc, mcc := circles[1], circles[0], circles[2]
	fmt.Printf("   • Roundness counted about the spindle: %.0f µm, for the work stands %.1f µm off its axis.\n", cost(1, 0, 0), math.Hypot(um(zone.Centre.X), um(zone.Centre.Y)))
	radii[0] += 10 * units.Micrometre
	bad := must(form.FromRadii(radii))
	fmt.Printf("   • One bad point, the first read 10 µm too large: MCCI grows by %.2f µm, LSCI by %.2f µm.\n",
		um(2*(must(bad.MinimumCircumscribed()).Radius-mcc.Radius)), um(2*(must(bad.LeastSquares()).Radius-lsc.Radius)))
	fmt.Printf("   • One word, \"the diameter\", for four: between plug and clean-up lie %.1f µm.\n", um(2*(mcc.Radius-circles[3].Radius)))
	fmt.Println("   • Points 10° apart see no scratch between two of them, and one plane nothing of the next.")
	fmt.Println("\nCAUTION: keep hands, sleeves and leads away from a turning table. A cylinder unbolted has another\nform than in use.")
	show(circles)
}

// cost is what each of the four circles makes least, in µm, about a centre.
func cost(circle int, x, y float64) float64 {
	sum, squares, least, most := 0.0, 0.0, math.Inf(1), math.Inf(-1)
	for i, r := range dial {
		sin, cos := math.Sincos(float64(i) / float64(len(dial)) * 2 * math.Pi)
		d := math.Hypot(um(radius+r*units.Micrometre)*cos-x, um(radius+r*units.Micrometre)*sin-y) - um(radius)
		sum, squares, least, most = sum+d, squares+float64(d*d), min(least, d), max(most, d)
	}
	n := float64(len(dial))
	return []float64{math.Sqrt(squares/n - float64(sum/n*sum/n)), most - least, most, -least}[circle]
}

// passes tells which line passes a place of the drawing: 0 none, 1 the wall, 2 LSCI, 3 and 4 the inner and
// outer circle of the zone, 5 MCCI, 6 MICI. Departures are in µm about a zone drawn with a radius of 30 µm.
func passes(circles []form.Circle, x, y, width float64) int {
	zone, theta := circles[1], math.Mod(math.Atan2(y, x)+2*math.Pi, 2*math.Pi)
	sin, cos := math.Sincos(theta)
	at := func(r units.Length, centre form.Point) float64 {
		return um(r-zone.Radius) + float64(um(centre.X-zone.Centre.X)*cos) + float64(um(centre.Y-zone.Centre.Y)*sin)
	}
	step, part := math.Modf(theta / (2 * math.Pi) * float64(len(dial)))
	n := int(step) % len(dial)
	between := float64(dial[n])*(1-part) + float64(dial[(n+1)%len(dial)])*part
	lines := []float64{at(radius, form.Point{}) + between, at(circles[0].Radius, circles[0].Centre), at(zone.Inner, zone.Centre),
		at(zone.Outer, zone.Centre), at(circles[2].Radius, circles[2].Centre), at(circles[3].Radius, circles[3].Centre)}
	for i, l := range lines {
		if math.Abs(math.Hypot(x, y)-30-l) < width {
			return i + 1
		}
	}
	return 0
}

// show prints a picture of all of them, which the Go playground shows.
func show(circles []form.Circle) {
	blue := color.RGBA{0, 90, 220, 255}
	img := image.NewPaletted(image.Rect(0, 0, 258, 258), color.Palette{color.White, color.Black, color.RGBA{130, 130, 130, 255}, blue, blue,
		color.RGBA{200, 0, 0, 255}, color.RGBA{0, 140, 0, 255}})
	for i := range img.Pix {
		img.Pix[i] = uint8(passes(circles, float64(i%258-129)/3, float64(129-i/258)/3, 0.25))
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		log.Fatal(err)
	}
	fmt.Println("The wall black, LSCI grey, MZCI blue, MCCI red, MICI green:")
	time.Sleep(time.Nanosecond) // a line IMAGE: is shown as a picture where it stands alone in its moment
	fmt.Println("IMAGE:" + base64.StdEncoding.EncodeToString(b.Bytes()))
	time.Sleep(time.Nanosecond)
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

func must[T any](x T, err error) T {
	if err != nil {
		log.Fatal(err)
	}
	return x
}
