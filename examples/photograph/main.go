// SPDX-License-Identifier: BSD-3-Clause

// Photograph is a lesson: the angle that the lines on a wall really make, from a picture of it.
package main

import (
	"errors"
	"fmt"
	"image"
	"image/color"
	"io"
	"math"
	"os"
	"strings"

	"borewright.example/bore/hone/photo"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// Change these. Invented data: a wall that this lesson draws, so that its true angle is known, and a camera
// that looks at it, tilted along the bore.
var shipped = data{
	bore:     67 * units.Millimetre,
	round:    8 * units.Millimetre, // the label on the wall: its side round the bore
	along:    4 * units.Millimetre, // and along it
	included: 45 * units.Degree,    // between the two families of lines
	tilt:     20 * units.Degree,
	depth:    40, // how much darker a groove is than the wall, of 150 levels of grey
	second:   1,  // the second family's depth, in parts of the first's
}

type data struct {
	bore, round, along units.Length
	included, tilt     units.Angle
	depth, second      float64
}

func main() { lesson(os.Stdout, shipped) }

// The picture, in pixels; the focal length of its lens too.
const (
	width, height = 288, 216
	focal         = 360.0
)

// lesson writes the page for any data.
func lesson(w io.Writer, d data) {
	defer refuse(w)
	shot := must(d.shot())
	m := must(shot.Crosshatch())
	k := must(uncertainty.Coverage(0.95, m.DoF))
	std, drawn, found := m.Std.In(units.Degree), d.included.In(units.Degree), m.Crosshatch.Included().In(units.Degree)

	fmt.Fprintln(w, "THE ANGLE THAT IS THERE, FROM A PHOTOGRAPH")
	fmt.Fprintf(w, "\nThe question: a wall in a bore of %v, a label of %s by %s on it, one picture. Which angle do the lines make?\n", d.bore, mm(d.round), mm(d.along))
	across, down := side(shot.Corners, 0), side(shot.Corners, 1)
	scaleR, scaleA := across/d.round.In(units.Millimetre), down/d.along.In(units.Millimetre)
	fmt.Fprintln(w, "\n1  What the label tells     scale = pixels / millimetres, each way;  cos t = scale along / scale round, t: tilt")
	fmt.Fprintf(w, "   round: %.1f px / %s = %.2f px/mm;  along: %.1f px / %s = %.2f px/mm\n", across, mm(d.round), scaleR, down, mm(d.along), scaleA)
	shorter := scaleA / scaleR
	if shorter < 0.999 {
		fmt.Fprintf(w, "   t = acos(%.2f/%.2f) = %.0f°, about; all four corners on a round wall tell it better: %.0f°\n", scaleA, scaleR, math.Acos(shorter)*180/math.Pi, m.Tilt.In(units.Degree))
	} else {
		fmt.Fprintf(w, "   The two are as good as equal: the camera looked about square at the wall; by all four corners %.0f°.\n", m.Tilt.In(units.Degree))
	}
	lean := found / 2 * math.Pi / 180
	flat := 2 * math.Atan(math.Tan(lean)*shorter) * 180 / math.Pi
	fmt.Fprintln(w, "\n2  By protractor on the picture     tan b = tan a · cos t;  a: lean of a line on the wall, b: in the picture")
	fmt.Fprintf(w, "   b = atan(tan %.1f° · %.3f) = %.1f°;  between the lines 2b = %.1f°, and not 2a = %.1f°\n", found/2, shorter, flat/2, flat, found)
	fmt.Fprintln(w, "\n3  By the library, with its doubt")
	fmt.Fprintf(w, "   lines lean %.1f° one way and %.1f° the other; between them %s ± %.1f° (95 %%)\n", m.Leans[0].In(units.Degree), -m.Leans[1].In(units.Degree), m.Crosshatch.Format(1), k*std)
	if !m.Min.IsZero() {
		fmt.Fprintf(w, "   Lines of more than one lean are not excluded: over the wall seen it may run from %s to %s.\n", m.Min.Format(0), m.Max.Format(0))
	}
	fmt.Fprintln(w, "   made of, as standard uncertainties:")
	sum := 0.0
	for _, r := range must(m.Budget.Rows()) {
		sum += r.Contribution * r.Contribution
		fmt.Fprintf(w, "      %-21s %.2f°  %s\n", r.Name, r.Contribution, strings.Repeat("━", int(math.Round(min(r.Contribution, 3)*30))))
	}
	fmt.Fprintf(w, "   The wall was drawn with %.1f°. ", drawn)
	if off := found - drawn; math.Abs(off) <= k*std {
		fmt.Fprintf(w, "The answer is off by %+.1f°, inside its doubt.\n", off)
	} else {
		fmt.Fprintf(w, "The answer is off by %+.1f°, outside its doubt: one in twenty may be.\n", off)
	}

	fmt.Fprintln(w, "\nTHE PICTURE, dark dots for grooves")
	for _, row := range braille(shot.Picture) {
		fmt.Fprintf(w, "   %s\n", string(row))
	}

	fmt.Fprintln(w, "\nA SECOND WAY: the doubt by hand, and the other name of the angle")
	fmt.Fprintf(w, "   the squares of the parts add up: u = √%.3f = %.2f° (the library: %.2f°)\n", sum, math.Sqrt(sum), std)
	fmt.Fprintf(w, "   a label taken for a quarter turn would have it the other way: 180° − %.1f° = %.1f° (the library: %.1f°) across the axis\n",
		found, 180-found, m.Crosshatch.AcrossAxis().In(units.Degree))

	fmt.Fprintln(w, "\nWHAT USUALLY GOES WRONG")
	for _, slip := range []struct {
		what   string
		change func(*photo.Shot)
	}{
		{"A picture that may have been cropped, by a lens nobody knows", func(s *photo.Shot) { s.Focal, s.Whole = 0, false }},
		{"The sides of the label taken for one another", func(s *photo.Shot) { s.Label.Round, s.Label.Along = s.Label.Along, s.Label.Round }},
	} {
		other := shot
		slip.change(&other)
		switch n, err := other.Crosshatch(); {
		case err != nil:
			fmt.Fprintf(w, "   • %s: refused,\n     %s.\n", slip.what, strings.ReplaceAll(strings.TrimPrefix(err.Error(), "photo: "), ": ", ":\n     "))
		default:
			fmt.Fprintf(w, "   • %s: the doubt goes from ± %.2f° to ± %.2f°.\n", slip.what, k*std, must(uncertainty.Coverage(0.95, n.DoF))*n.Std.In(units.Degree))
		}
	}
	fmt.Fprintln(w, "\nCAUTION: stop the drive before a hand or a lens goes near. A label and its glue are dirt: wash the bore again.\n"+
		"A good angle proves neither the size nor a clean wall; the maker's manual outranks it.")
}

// shot draws the wall and photographs it.
func (d data) shot() (photo.Shot, error) {
	s := photo.Shot{Bore: d.bore, Label: photo.Label{Round: d.round, Along: d.along}, Focal: focal, Whole: true}
	if d.bore <= 0 || d.round <= 0 || d.along <= 0 || !(d.included > 0 && d.included < math.Pi) || !(math.Abs(float64(d.tilt)) < 1.2) {
		return s, errors.New("a bore, a label, an angle between 0° and 180° and a tilt below 69° are wanted")
	}
	r, size := d.bore.In(units.Millimetre)/2, max(d.round, d.along).In(units.Millimetre)
	away := 3.2 * size * focal / width // the label is about a third of the picture
	sin, cos := math.Sincos(float64(d.tilt))
	img := image.NewGray(image.Rect(0, 0, width, height))
	for j := range height {
		for i := range width {
			// The ray of the pixel leaves the bore at (x, y), round and along.
			u, v := (float64(i)+0.5-width/2)/focal, (float64(j)+0.5-height/2)/focal
			ry, rz := -v*cos-sin, cos-v*sin
			oz := r - away*cos
			a, b, c := u*u+rz*rz, oz*rz, oz*oz-r*r
			t := (math.Sqrt(max(0, b*b-a*c)) - b) / a
			x, y := r*math.Atan2(t*u, oz+t*rz), away*sin+t*ry
			img.SetGray(i, j, color.Gray{uint8(d.grey(x, y, size) + 3*chance(i, j) + 0.5)})
		}
	}
	s.Picture = img
	for i, c := range [4][2]float64{{-1, 1}, {1, 1}, {1, -1}, {-1, -1}} {
		round, y := c[0]*d.round.In(units.Millimetre)/2, c[1]*d.along.In(units.Millimetre)/2-away*sin
		x, z := r*math.Sin(round/r), r*math.Cos(round/r)-r+away*cos
		ahead := z*cos - y*sin
		s.Corners[i] = photo.Pixel{X: width/2 + focal*x/ahead, Y: height/2 - focal*(y*cos+z*sin)/ahead}
	}
	return s, nil
}

// grey is how bright the place (x, y) of the wall is.
func (d data) grey(x, y, size float64) float64 {
	if math.Abs(x) <= d.round.In(units.Millimetre)/2 && math.Abs(y) <= d.along.In(units.Millimetre)/2 {
		return 225
	}
	g, apart := 150.0, size/16 // millimetres from line to line
	sin, cos := math.Sincos(float64(d.included) / 2)
	for k, depth := range [2]float64{d.depth, d.depth * d.second} {
		at := (y*cos - x*sin*float64(1-2*k)) / apart
		for n := int(math.Floor(at)) - 1; n <= int(math.Floor(at))+2; n++ {
			off := (at - float64(n) - 0.4*chance(n, k)) * 5 // no two lines are as far apart as the next
			g -= depth * (1 + 0.5*chance(k, n)) * math.Exp(-off*off)
		}
	}
	return min(max(g, 10), 240)
}

// chance is a number between −1 and 1 that looks like chance, and is the same on every run.
func chance(i, j int) float64 {
	h := uint32(i)*0x9E3779B1 ^ uint32(j)*0x85EBCA77 ^ 0x5bd1e995
	h = (h ^ h>>15) * 0x2C1B3C6D
	h = (h ^ h>>12) * 0x297A2D39
	return float64(h^h>>15)/(1<<31) - 1
}

// side is how long two opposite sides of the label are in the picture, on the mean.
func side(c [4]photo.Pixel, i int) float64 {
	length := func(a, b photo.Pixel) float64 { return math.Hypot(a.X-b.X, a.Y-b.Y) }
	return (length(c[i], c[i+1]) + length(c[i+2], c[(i+3)%4])) / 2
}

// braille draws what is darker than its surroundings, eight dots to a character.
func braille(img image.Image) [][]rune {
	const step = 3
	rows := make([][]rune, height/step/4)
	for y := range rows {
		rows[y] = []rune(strings.Repeat("⠀", width/step/2))
		for x := range rows[y] {
			for k, dot := range [8]rune{1, 8, 2, 16, 4, 32, 64, 128} {
				i, j := (2*x+k%2)*step, (4*y+k/2)*step
				if g := img.At(i, j).(color.Gray).Y; g < 132 {
					rows[y][x] |= dot
				}
			}
		}
	}
	return rows
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
