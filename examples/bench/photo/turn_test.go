// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"fmt"
	"image"
	"image/color"
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// wall draws a bore of 67 mm, with lines at an included angle in degrees and a label of 8 by 4 mm, as a camera sees it that
// looks square at the wall, and returns where the corners of the label are.
func wall(included float64, families int) (image.Image, [8]string) {
	const wide, high, focal, away, radius = 640, 480, 800.0, 24.0, 33.5
	chance := func(i, j int) float64 { // between −1 and 1, the same on every run
		h := uint32(i)*0x9E3779B1 ^ uint32(j)*0x85EBCA77 ^ 0x5bd1e995
		h = (h ^ h>>15) * 0x2C1B3C6D
		h = (h ^ h>>12) * 0x297A2D39
		return float64(h^h>>15)/(1<<31) - 1
	}
	sin, cos := math.Sincos(included / 2 * math.Pi / 180)
	img := image.NewGray(image.Rect(0, 0, wide, high))
	for j := range high {
		for i := range wide {
			// The ray leaves the camera, away from the wall and on the side of the axis, and meets the wall at x round, y along.
			u, v := (float64(i)+0.5-wide/2)/focal, (float64(j)+0.5-high/2)/focal
			from := radius - away
			t := (math.Sqrt(radius*radius*(1+u*u)-from*from*u*u) - from) / (1 + u*u)
			x, y := radius*math.Atan2(t*u, from+t), -t*v
			g := 150.0
			if math.Abs(x) <= 4 && math.Abs(y) <= 2 {
				g = 225
			} else {
				for k := range families {
					at := (y*cos - x*sin*float64(1-2*k)) / 0.5
					for n := int(math.Floor(at)) - 1; n <= int(math.Floor(at))+2; n++ {
						off := (at - float64(n) - 0.4*chance(n, k)) * 5
						g -= 40 * math.Exp(-off*off)
					}
				}
			}
			img.SetGray(i, j, color.Gray{uint8(max(10, g+3*chance(i, j)))})
		}
	}
	var corners [8]string
	for i, c := range [4][2]float64{{-1, 1}, {1, 1}, {1, -1}, {-1, -1}} {
		s, c0 := math.Sincos(4 / radius)
		z := radius*c0 - (radius - away)
		corners[2*i] = fmt.Sprintf("%.1f", wide/2+focal*c[0]*radius*s/z)
		corners[2*i+1] = fmt.Sprintf("%.1f", high/2-focal*c[1]*2/z)
	}
	return img, corners
}

func asked(corners [8]string) Request {
	return Request{Bore: "67", Round: "8 mm", Along: "4,0", Corners: corners, Whole: true}
}

// TestTurn: a wall that was drawn with a known angle gets it back, within the doubt that is shown.
func TestTurn(t *testing.T) {
	for _, truth := range []float64{40, 70} {
		picture, corners := wall(truth, 2)
		a := turn(picture, asked(corners))
		m := regexp.MustCompile(`<h2>([\d.]+)° included ± ([\d.]+)° \(95 %\)</h2>`).FindStringSubmatch(a.HTML)
		if m == nil {
			t.Fatalf("%v°: %s", truth, a.HTML)
		}
		angle, _ := strconv.ParseFloat(m[1], 64)
		doubt, _ := strconv.ParseFloat(m[2], 64)
		if math.Abs(angle-truth) > doubt || doubt > 3 {
			t.Errorf("%v° came out as %v ± %v", truth, angle, doubt)
		}
		if !strings.Contains(a.HTML, "Its doubt: <b>"+m[2]+"°") || strings.Count(a.HTML, "<tr>") < 5 || a.Seen == nil || a.Seen.Rect.Dx() < 200 {
			t.Errorf("no lines for the job, no parts or no picture: %s", a.HTML)
		}
	}
}

// TestRefused: what gives no angle says why, and no number.
func TestRefused(t *testing.T) {
	picture, corners := wall(40, 2)
	one, _ := wall(40, 1)
	for name, c := range map[string]struct {
		picture image.Image
		change  func(*Request)
		says    string
	}{
		"one family":    {one, func(*Request) {}, "not two families"},
		"mirrored":      {picture, func(r *Request) { r.Corners[0], r.Corners[2] = r.Corners[2], r.Corners[0] }, "corners"},
		"no corner":     {picture, func(r *Request) { r.Corners[5] = "" }, "Corner 3, down"},
		"no number":     {picture, func(r *Request) { r.Marking = "<b>" }, "&lt;b&gt;"},
		"no bore":       {picture, func(r *Request) { r.Bore = "" }, "Diameter of the bore"},
		"no picture":    {nil, func(*Request) {}, "picture"},
		"a pixel":       {image.NewGray(image.Rect(0, 0, 1, 1)), func(*Request) {}, "too small"},
		"NaN":           {picture, func(r *Request) { r.Corners[0] = "NaN" }, "orner"},
		"it breaks":     {breaks{picture}, func(*Request) {}, "The library broke"},
		"wrong sides":   {picture, func(r *Request) { r.Round, r.Along = r.Along, r.Round }, "corners"},
		"square, plain": {picture, func(r *Request) { r.Along = r.Round }, "abel"},
	} {
		r := asked(corners)
		c.change(&r)
		a := turn(c.picture, r)
		if !strings.HasPrefix(a.HTML, "<h2>No angle</h2>") || !strings.Contains(a.HTML, c.says) || a.Seen != nil {
			t.Errorf("%s: %s", name, a.HTML)
		}
	}
}

// breaks is a picture that cannot be read.
type breaks struct{ image.Image }

func (breaks) At(int, int) color.Color { panic("index out of range") }
