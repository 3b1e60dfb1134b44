// SPDX-License-Identifier: BSD-3-Clause

package page_test

import (
	"bytes"
	"math"
	"strings"
	"testing"

	"borewright.example/oversize/jobsheet/page"
)

// every is a picture with each kind of shape.
func every() page.Picture {
	return page.Picture{
		Title: "Every <shape>", Description: "One of each & no more.", Notes: []string{"Scale 2 : 1.", strings.Repeat("A note that is longer than the picture is wide. ", 2)},
		Width: 90, Height: 40,
		Shapes: []page.Shape{
			page.Area{Points: rectangle(page.Point{X: 0, Y: 0}, page.Point{X: 20, Y: 40})},
			page.Area{Points: rectangle(page.Point{X: 20, Y: 0}, page.Point{X: 30, Y: 40}), Hatched: true},
			page.Line{Points: []page.Point{{X: 0, Y: 1}, {X: 90, Y: 2}}},
			page.Line{Points: []page.Point{{X: 0, Y: 3}, {X: 90, Y: 3}, {X: 90, Y: 5}}, Stroke: page.Thick, Closed: true},
			page.Line{Points: []page.Point{{X: 0, Y: 7}, {X: 90, Y: 7}}, Stroke: page.Dashed},
			page.Circle{Centre: page.Point{X: 60, Y: 25}, Radius: 10.0005, Stroke: page.Dotted},
			page.Dot{At: page.Point{X: 40, Y: 20}, From: page.Point{X: 37, Y: 16}, To: page.Point{X: 43, Y: 24}, Text: "40 ± 5 mm"},
			page.Dot{At: page.Point{X: 1. / 3, Y: -0.0001}},
			page.Label{At: page.Point{X: 10, Y: 30}, Text: "left ±"},
			page.Label{At: page.Point{X: 45, Y: 30}, Text: "middle", Anchor: page.Middle},
			page.Label{At: page.Point{X: 90, Y: 30}, Text: "right", Anchor: page.End},
			page.Label{At: page.Point{X: 90, Y: 30}},
		},
	}
}

func rectangle(upperLeft, lowerRight page.Point) []page.Point {
	return []page.Point{upperLeft, {X: lowerRight.X, Y: upperLeft.Y}, lowerRight, {X: upperLeft.X, Y: lowerRight.Y}}
}

func TestGoldenSVG(t *testing.T) {
	var b bytes.Buffer
	if err := every().WriteSVG(&b); err != nil {
		t.Fatal(err)
	}
	golden(t, "every.svg", b.String())
	text, err := attack(b.String())
	if err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"Every <shape>", "One of each & no more.", "40 ± 5 mm", "Scale 2 : 1.", "left ±"} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in %q", want, text)
		}
	}
}

// TestBox: a label of so many letters takes their widths, from the end that is held, and the height of capitals and of
// what hangs below the line.
func TestBox(t *testing.T) {
	for _, c := range []struct {
		anchor   page.Anchor
		from, to float64
	}{{page.Start, 20, 20 + 6*1.92}, {page.Middle, 20 - 3*1.92, 20 + 3*1.92}, {page.End, 20 - 6*1.92, 20}} {
		from, to := page.Label{At: page.Point{X: 20, Y: 10}, Text: "± 5 µm", Anchor: c.anchor}.Box()
		if math.Abs(from.X-c.from) > 1e-9 || math.Abs(to.X-c.to) > 1e-9 || from.Y > 10-0.7*page.LetterHeight || to.Y < 10+0.2*page.LetterHeight || to.Y-from.Y > 1.3*page.LetterHeight {
			t.Errorf("anchor %d: %v %v", c.anchor, from, to)
		}
	}
}

// TestNoNumbers: what is no number is not written as one.
func TestNoNumbers(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		p := page.Picture{Width: 10, Height: x, Shapes: []page.Shape{
			page.Line{Points: []page.Point{{X: x, Y: x}}}, page.Line{Closed: true}, page.Circle{Radius: x}, page.Circle{Radius: -1},
			page.Dot{At: page.Point{X: x}, From: page.Point{X: x}}, page.Area{Points: []page.Point{{X: x}}}, page.Label{At: page.Point{X: x}, Text: "x", Anchor: 7},
		}}
		var b bytes.Buffer
		if err := p.WriteSVG(&b); err != nil {
			t.Fatal(err)
		}
		if s := b.String(); strings.Contains(s, "NaN") || strings.Contains(s, "Inf") || strings.Contains(s, "e+") || strings.Contains(s, `="-`) {
			t.Errorf("%v:\n%s", x, s)
		}
	}
}
