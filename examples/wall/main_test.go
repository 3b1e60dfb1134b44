// SPDX-License-Identifier: BSD-3-Clause

package main

import (
	"bytes"
	"encoding/xml"
	"fmt"
	"image/png"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// A drawing is what a reader of SVG finds in a sheet.
type drawing struct {
	Width  string `xml:"width,attr"`
	Height string `xml:"height,attr"`
	View   string `xml:"viewBox,attr"`
	Rects  []struct {
		ID     string  `xml:"id,attr"`
		X      float64 `xml:"x,attr"`
		Y      float64 `xml:"y,attr"`
		Width  float64 `xml:"width,attr"`
		Height float64 `xml:"height,attr"`
	} `xml:"rect"`
	Groups []struct {
		Width float64 `xml:"stroke-width,attr"`
		Lines []line  `xml:"line"`
	} `xml:"g"`
}

type line struct {
	X1 float64 `xml:"x1,attr"`
	Y1 float64 `xml:"y1,attr"`
	X2 float64 `xml:"x2,attr"`
	Y2 float64 `xml:"y2,attr"`
}

func tryRun(t *testing.T, want int, args ...string) (stdout, stderr string) {
	t.Helper()
	var out, err bytes.Buffer
	if got := run(args, &out, &err); got != want {
		t.Fatalf("%v: exit %d, want %d\n%s%s", args, got, want, &out, &err)
	}
	return out.String(), err.String()
}

func ruled(t *testing.T, truth, bore, label string) drawing {
	t.Helper()
	text, _ := tryRun(t, 0, "-truth", truth, "-bore", bore, "-label", label)
	var d drawing
	if err := xml.Unmarshal([]byte(text), &d); err != nil {
		t.Fatal(err)
	}
	return d
}

// The sheet as it is printed: its scale, its label, and every line at half the angle, up or down, in the field.
func TestSheet(t *testing.T) {
	for _, truth := range []float64{20, 45, 90, 120} {
		d := ruled(t, strconv.FormatFloat(truth, 'g', -1, 64), "80", "20x10")
		var view [4]float64
		if _, err := fmt.Sscan(d.View, &view[0], &view[1], &view[2], &view[3]); err != nil {
			t.Fatal(err)
		}
		if d.Width != fmt.Sprintf("%.3fmm", view[2]) || d.Height != fmt.Sprintf("%.3fmm", view[3]) {
			t.Errorf("%s by %s for a view of %v: a unit is no millimetre", d.Width, d.Height, view)
		}
		label := d.Rects[len(d.Rects)-1]
		if label.ID != "label" || label.Width != 20 || label.Height != 10 ||
			math.Abs(label.X+10-math.Pi*40) > 1e-3 || math.Abs(label.Y+5-sheetHeight/2) > 1e-3 {
			t.Errorf("label %+v", label)
		}
		if f := d.Rects[0]; len(d.Rects) != 2 || f.ID != "frame" || math.Abs(f.X+0.4-label.X)+math.Abs(f.Y+0.4-label.Y) > 1e-3 ||
			math.Abs(f.Width-0.8-label.Width)+math.Abs(f.Height-0.8-label.Height) > 1e-3 {
			t.Errorf("frame %+v", f)
		}
		if len(d.Groups) != 1 {
			t.Fatalf("%d groups", len(d.Groups))
		}
		up, down := 0, 0
		for _, l := range d.Groups[0].Lines {
			lean := math.Atan2(l.Y2-l.Y1, l.X2-l.X1) * 180 / math.Pi
			switch {
			case math.Abs(lean-truth/2) < 0.02:
				down++
			case math.Abs(lean+truth/2) < 0.02:
				up++
			default:
				t.Fatalf("a line leans by %v°, want %v° or −%[2]v°", lean, truth/2)
			}
			for _, x := range []float64{l.X1, l.X2} {
				if x < -1e-3 || x > math.Pi*80+1e-3 {
					t.Fatalf("%+v runs out of the field", l)
				}
			}
			for _, y := range []float64{l.Y1, l.Y2} {
				if y < -1e-3 || y > sheetHeight+1e-3 {
					t.Fatalf("%+v runs out of the field", l)
				}
			}
		}
		if up < 100 || down < 100 {
			t.Errorf("%d lines up, %d down", up, down)
		}
	}
}

// A printer makes grey of dots in rows, and rows of dots are lines.
func TestSheetIsBlackAndWhite(t *testing.T) {
	text, _ := tryRun(t, 0, "-truth", "45", "-bore", "80", "-label", "20x10")
	inks := regexp.MustCompile(`(?:fill|stroke)="([^"]*)"`).FindAllStringSubmatch(text, -1)
	for _, ink := range inks {
		if ink[1] != "#000" && ink[1] != "#fff" {
			t.Errorf("printed in %s", ink[1])
		}
	}
	if len(inks) < 2 || strings.Contains(text, "opacity") {
		t.Errorf("%d inks", len(inks))
	}
}

// darkness draws the lines and the frame of a sheet about the middle of its label, a cell to 1/30 mm.
func darkness(d drawing, reach float64) func(x, y float64) float64 {
	const fine = 30
	n := int(2 * reach * fine)
	cells := make([]float64, n*n)
	label := d.Rects[len(d.Rects)-1]
	cx, cy := label.X+label.Width/2, label.Y+label.Height/2
	for _, l := range d.Groups[0].Lines {
		length := math.Hypot(l.X2-l.X1, l.Y2-l.Y1)
		steps := int(length * fine)
		for i := range steps {
			s := float64(i) / float64(steps)
			x, y := l.X1+s*(l.X2-l.X1)-cx+reach, l.Y1+s*(l.Y2-l.Y1)-cy+reach
			for k := -d.Groups[0].Width / 2; k <= d.Groups[0].Width/2; k += 1.0 / fine {
				i, j := int((x-k*(l.Y2-l.Y1)/length)*fine), int((y+k*(l.X2-l.X1)/length)*fine)
				if i >= 0 && j >= 0 && i < n && j < n {
					cells[j*n+i] = 1
				}
			}
		}
	}
	frame := d.Rects[0]
	return func(x, y float64) float64 {
		if math.Abs(x) < frame.Width/2 && math.Abs(y) < frame.Height/2 {
			return 1
		}
		i, j := int((x+reach)*fine), int((y+reach)*fine)
		if i < 0 || j < 0 || i >= n || j >= n {
			return 0
		}
		return cells[j*n+i]
	}
}

// A sheet, rolled into a tube and photographed by arithmetic, gives its angle back, through the files and the
// flags of the command.
func TestSheetInTube(t *testing.T) {
	for _, truth := range []float64{45, 70} {
		c := camera{bore: 80, round: 20, along: 10, w: 640, h: 480, f: 780, away: 48, tilt: 12, roll: 15}
		dark := darkness(ruled(t, strconv.FormatFloat(truth, 'g', -1, 64), "80", "20x10"), 32)
		var corners []string
		for _, q := range c.corners() {
			corners = append(corners, fmt.Sprintf("%.2f,%.2f", q.X, q.Y))
		}
		dir := t.TempDir()
		name, seen := filepath.Join(dir, "wall.png"), filepath.Join(dir, "seen.png")
		var b bytes.Buffer
		if err := png.Encode(&b, c.photograph(dark)); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(name, b.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		text, _ := tryRun(t, 0, "-photo", name, "-bore", "80", "-label", "20x10", "-corners", strings.Join(corners, ","), "-seen", seen, "-whole")
		m := regexp.MustCompile(`Crosshatch  ([\d.]+)° included ± ([\d.]+)°`).FindStringSubmatch(text)
		if m == nil {
			t.Fatal(text)
		}
		got, _ := strconv.ParseFloat(m[1], 64)
		u, _ := strconv.ParseFloat(m[2], 64)
		if math.Abs(got-truth) > u || u > 1.5 {
			t.Errorf("a sheet of %v°: %v° ± %v°\n%s", truth, got, u, text)
		}
		t.Logf("%v°: %v° ± %v°", truth, got, u)
		if s, err := os.ReadFile(seen); err != nil || !bytes.HasPrefix(s, []byte("\x89PNG")) {
			t.Errorf("what was seen: %v", err)
		}
	}
}

// What cannot be done is said, with the exit code that scripts look at.
func TestRefused(t *testing.T) {
	const corners = "1,1,9,1,9,9,1,9"
	for _, row := range []struct {
		want int
		args string
		says string
	}{
		{2, "", "want the sides"},
		{2, "-label 20x10", "-photo or -truth"},
		{2, "-label 20x10 -photo a.png", "four corners"},
		{2, "-label 20 -photo a.png -corners " + corners, "as 20x10"},
		{2, "-label 20x10 -photo a.png -corners 1,2,3,4,5,6,7,x", "invalid syntax"},
		{2, "-label 20x10 -bore 1e30 -truth 45", "out of range"},
		{2, "-label 20x10 -nosuch", "nosuch"},
		{2, "-label 20x10 over", "over"},
		{1, "-label 20x10 -photo nosuch.png -bore 67 -corners " + corners, "nosuch.png"},
		{1, "-label 20x10 -photo main.go -bore 67 -corners " + corners, "unknown format"},
		{1, "-label 20x10 -bore 80 -truth 5", "10° to 140°"},
		{1, "-label 20x10 -bore 8 -truth 45", "20 to 500"},
		{1, "-label 90x10 -bore 80 -truth 45", "fit on the sheet"},
	} {
		_, stderr := tryRun(t, row.want, strings.Fields(row.args)...)
		if !strings.Contains(stderr, row.says) {
			t.Errorf("%s: %q, want %q", row.args, stderr, row.says)
		}
	}
	if _, usage := tryRun(t, 0, "-h"); !strings.Contains(usage, "-corners") {
		t.Error(usage)
	}
}
