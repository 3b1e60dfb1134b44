// SPDX-License-Identifier: BSD-3-Clause

// Fourcircles is a lesson: one trace of a wall, the standards' four circles, and what each answers.
package main

import (
	"bytes"
	"encoding/base64"
	"fmt"
	"image"
	"image/color"
	"image/png"
	"io"
	"log"
	"math"
	"os"
	"slices"
	"strings"
	"time"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// Change these. Invented data: a pump cylinder on a rotary table in a village workshop, a dial against
// its wall, read once round at even steps: micrometres over the radius. At 270° there is a score.
var shipped = data{
	radius: 39 * units.Millimetre,
	dial: []float64{32, 35, 39, 40, 40, 39, 37, 32, 27, 21, 17, 13, 11, 11, 12, 15, 16, 16,
		16, 13, 11, 9, 7, 6, 6, 6, 9, 18, 14, 16, 19, 20, 23, 25, 26, 29},
}

type data struct {
	radius units.Length
	dial   []float64 // µm
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
	trace := must(d.trace())
	circles := must(circlesOf(trace))
	has := []string{"Σ(d − R)² least:      how large is it on the whole?", "max d − min d least:  does it keep a tolerance of form?",
		"max d least:          at what size does it clean up?", "min d greatest:       which plug enters?"}
	step := 360 / float64(len(d.dial))

	fmt.Fprintln(w, "FOUR CIRCLES OF ONE WALL")
	fmt.Fprintf(w, "\nThe question: %d radii of a wall in one plane. How large is it, and how round?\n", len(d.dial))
	fmt.Fprintln(w, "\n1  A circle to count from     x, y: a centre; d: distances of the points from it; R: the radius\n"+
		"   LSCI: least squares; MZCI: minimum zone; MCCI: minimum circumscribed; MICI: maximum inscribed")
	for i, c := range circles {
		fmt.Fprintf(w, "   %v  x %+6.2f y %+6.2f µm  2R = %s  has %s\n", c.Reference, um(c.Centre.X), um(c.Centre.Y), mm(2*c.Radius), has[i])
	}
	fmt.Fprintln(w, "\n2  Roundness     RONt = max d − min d, the peak-to-valley deviation; and the points on which each circle rests")
	for _, c := range circles {
		fmt.Fprintf(w, "   %v  %s − %s = %6.2f µm ", c.Reference, mm(c.Outer), mm(c.Inner), um(c.RONt))
		for _, p := range c.Certificate.Contacts() {
			fmt.Fprintf(w, " %.0f° %s", float64(p.Index)*step, map[bool]string{true: "out", false: "in"}[p.Outer])
		}
		if c.Reference != form.LSCI {
			fmt.Fprintf(w, ": %s", map[bool]string{true: "no other is better", false: "found by searching"}[c.Check(trace) == nil])
		}
		fmt.Fprintln(w)
	}

	scale := d.scale(circles)
	fmt.Fprintf(w, "\nTHE WALL (●) BETWEEN THE TWO CIRCLES OF ITS ZONE (·), departures %.0f times too large\n", scale*um(d.radius)/30)
	for y := 43.0; y >= -43; y -= 2.4 {
		row := ""
		for x := -43.0; x <= 43; x += 1.2 {
			row += [...]string{" ", "●", " ", "·", "·", " ", " "}[d.passes(circles, scale, x, y, 1.1)]
		}
		if row = strings.TrimRight(row, " "); row != "" {
			fmt.Fprintln(w, "   "+row)
		}
	}

	fmt.Fprintln(w, "   (Where a picture in colours follows: the wall black, LSCI grey, MZCI blue, MCCI red, MICI green.)")

	fmt.Fprintln(w, "\nA SECOND WAY: try the centres of a grid, and finer ones about the best, from 9 starts")
	points := d.points()
	for i, c := range circles {
		// A plug can rest in one of two places, each the best of its neighbours: hence nine starts.
		span, best, cx, cy := (slices.Max(d.dial)-slices.Min(d.dial))/2, d.cost(points, i, 0, 0), 0.0, 0.0
		for start := range 9 {
			if x, y, v := d.search(points, i, span*float64(start%3-1), span*float64(start/3-1), span); v < best {
				best, cx, cy = v, x, y
			}
		}
		fmt.Fprintf(w, "   %v  x %+6.2f y %+6.2f µm: %s = %.1f µm (the library: %.1f µm)\n", c.Reference, cx, cy,
			[]string{"root mean square of d − R", "max d − min d", "max d − radius", "radius − min d"}[i], best, d.cost(points, i, um(c.Centre.X), um(c.Centre.Y)))
	}

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	zone, lsc, mcc := circles[1], circles[0], circles[2]
	fmt.Fprintf(w, "   • Roundness counted about the spindle: %.1f µm. The work stands %.1f µm off its axis.\n", d.cost(points, 1, 0, 0), math.Hypot(um(zone.Centre.X), um(zone.Centre.Y)))
	bad := d
	bad.dial = slices.Clone(d.dial)
	bad.dial[0] += 10
	worse := must(bad.trace())
	fmt.Fprintf(w, "   • One bad point, the first read 10 µm too large: MCCI grows by %.2f µm, LSCI by %.2f µm.\n",
		um(2*(must(worse.MinimumCircumscribed()).Radius-mcc.Radius)), um(2*(must(worse.LeastSquares()).Radius-lsc.Radius)))
	fmt.Fprintf(w, "   • One word, \"the diameter\", for four: between plug and clean-up lie %.1f µm.\n", um(2*(mcc.Radius-circles[3].Radius)))
	fmt.Fprintf(w, "   • Points %.4g° apart see no scratch between two of them, and one plane nothing of the next.\n", step)
	fmt.Fprintln(w, "\nCAUTION: keep hands, sleeves and leads away from a turning table. A cylinder unbolted has another\nform than in use.")
}

func (d data) trace() (form.Trace, error) {
	var radii []units.Length
	for _, x := range d.dial {
		off, err := units.Of(x, units.Micrometre)
		if err != nil {
			return form.Trace{}, err
		}
		radii = append(radii, d.radius+off)
	}
	return form.FromRadii(radii)
}

// circlesOf returns the four, in the order of cost.
func circlesOf(t form.Trace) (circles []form.Circle, err error) {
	for _, find := range []func() (form.Circle, error){t.LeastSquares, t.MinimumZone, t.MinimumCircumscribed, t.MaximumInscribed} {
		c, err := find()
		if err != nil {
			return nil, err
		}
		circles = append(circles, c)
	}
	return circles, nil
}

// points returns the wall's points, in µm from the spindle.
func (d data) points() (points [][2]float64) {
	for i, r := range d.dial {
		sin, cos := math.Sincos(float64(i) / float64(len(d.dial)) * 2 * math.Pi)
		points = append(points, [2]float64{(um(d.radius) + r) * cos, (um(d.radius) + r) * sin})
	}
	return points
}

// cost is what each of the four circles makes least, in µm, about a centre.
func (d data) cost(points [][2]float64, circle int, x, y float64) float64 {
	n, sum, squares, least, most := float64(len(points)), 0.0, 0.0, math.Inf(1), math.Inf(-1)
	for _, p := range points {
		x, y := p[0]-x, p[1]-y
		off := math.Sqrt(float64(x*x)+float64(y*y)) - um(d.radius)
		sum, squares, least, most = sum+off, squares+float64(off*off), min(least, off), max(most, off)
	}
	return []float64{math.Sqrt(max(0, squares/n-float64(sum/n*sum/n))), most - least, most, -least}[circle]
}

// search returns the centre that it comes to from a start, by ever finer grids, and its cost.
func (d data) search(points [][2]float64, circle int, cx, cy, size float64) (x, y, best float64) {
	best = d.cost(points, circle, cx, cy)
	for turn := 1.0; size > 0.01; turn, size = turn+1, size*0.88 { // grids lie askew to each other: so a ridge is met along it
		sin, cos := math.Sincos(turn)
		for x0, y0, k := cx, cy, 0; k < 25; k++ {
			dx, dy := size*float64(k%5-2), size*float64(k/5-2)
			x, y := x0+float64(dx*cos)-float64(dy*sin), y0+float64(dx*sin)+float64(dy*cos)
			if v := d.cost(points, circle, x, y); v < best {
				best, cx, cy = v, x, y
			}
		}
	}
	return cx, cy, best
}

// scale is how many units of the drawing a micrometre has, the zone being drawn with a radius of 30.
func (d data) scale(circles []form.Circle) float64 { return 14 / max(um(circles[1].RONt), 0.01) }

// passes tells which line passes a place of the drawing: 0 none, 1 the wall, 2 LSCI, 3 and 4 the inner and
// outer circle of the zone, 5 MCCI, 6 MICI.
func (d data) passes(circles []form.Circle, scale, x, y, width float64) int {
	zone, theta := circles[1], math.Mod(math.Atan2(y, x)+2*math.Pi, 2*math.Pi)
	sin, cos := math.Sincos(theta)
	at := func(r units.Length, centre form.Point) float64 {
		return um(r-zone.Radius) + float64(um(centre.X-zone.Centre.X)*cos) + float64(um(centre.Y-zone.Centre.Y)*sin)
	}
	step, part := math.Modf(theta / (2 * math.Pi) * float64(len(d.dial)))
	n := int(step) % len(d.dial)
	between := d.dial[n]*(1-part) + d.dial[(n+1)%len(d.dial)]*part
	lines := []float64{at(d.radius, form.Point{}) + between, at(circles[0].Radius, circles[0].Centre), at(zone.Inner, zone.Centre),
		at(zone.Outer, zone.Centre), at(circles[2].Radius, circles[2].Centre), at(circles[3].Radius, circles[3].Centre)}
	for i, l := range lines {
		if math.Abs(math.Hypot(x, y)-30-scale*l) < width {
			return i + 1
		}
	}
	return 0
}

// show prints a picture of all of them.
func show(d data) {
	defer refuse(io.Discard) // the page has said why
	circles := must(circlesOf(must(d.trace())))
	blue := color.RGBA{0, 90, 220, 255}
	img := image.NewPaletted(image.Rect(0, 0, 258, 258), color.Palette{color.White, color.Black, color.RGBA{130, 130, 130, 255}, blue, blue,
		color.RGBA{200, 0, 0, 255}, color.RGBA{0, 140, 0, 255}})
	for i := range img.Pix {
		img.Pix[i] = uint8(d.passes(circles, d.scale(circles), float64(i%258-129)/3, float64(129-i/258)/3, 0.25))
	}
	var b bytes.Buffer
	if err := png.Encode(&b, img); err != nil {
		log.Fatal(err)
	}
	time.Sleep(time.Nanosecond) // a line IMAGE: is shown as a picture where it stands alone in its moment
	fmt.Println("IMAGE:" + base64.StdEncoding.EncodeToString(b.Bytes()))
	time.Sleep(time.Nanosecond)
}

func um(l units.Length) float64 { return l.In(units.Micrometre) }

func mm(l units.Length) string { return l.Format(units.Millimetre, 4) }

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
