// SPDX-License-Identifier: BSD-3-Clause

package picture_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestNamesStandBesideTheirDots: where planes crowd, the axis of the largest stands above its dot and that of the least below,
// within two lines of letters, or is left out.
func TestNamesStandBesideTheirDots(t *testing.T) {
	var rs []bore.Reading
	for i := range 6 {
		for _, a := range []struct {
			degrees, over float64
		}{{float64(20 * i), 0.15}, {float64(20*i + 10), 0.05}} { // the largest, the least
			rs = append(rs, bore.Reading{Depth: mm(10 + 2*float64(i)), Axis: bore.Axis(units.Angle(a.degrees) * units.Degree), Diameter: mm(78 + a.over)})
		}
	}
	layout := bore.Layout{Length: mm(100)}
	g := must(layout.Measure(rs, bore.Gauge{Repeatability: 2 * um, Resolution: um}))(t)
	p := must(picture.Wear(g, layout, picture.Marks{}, units.Millimetre))(t)
	const lines = 2 * 1.3 * page.LetterHeight
	named := 0
	for _, d := range of[page.Dot](p) {
		name, _, _ := strings.Cut(d.Text, " at ")
		for _, l := range of[page.Label](p) {
			if l.Text != name || l.Anchor != page.Middle {
				continue
			}
			named++
			from, to := l.Box()
			gap := d.At.Y - to.Y
			if strings.Contains(d.Text, "78.05") {
				gap = from.Y - d.At.Y
			}
			if gap < 0 || gap > lines {
				t.Errorf("%q stands %v beside %s", l.Text, gap, d.Text)
			}
		}
	}
	if named < 4 || named == 12 {
		t.Errorf("%d of 12 names: want some, and some left out", named)
	}
}

// TestTonedIsTheTolerance: a setting lies in the toned area where its crosshatch is within the tolerance, and nowhere else.
func TestTonedIsTheTolerance(t *testing.T) {
	hand := invented(t).reach.Hand
	for _, want := range []hone.Want{
		{Crosshatch: must(hone.Included(45 * units.Degree))(t), Tolerance: 5 * units.Degree},
		{Crosshatch: must(hone.Included(25 * units.Degree))(t), Tolerance: 10 * units.Degree},
		{Crosshatch: must(hone.Included(10 * units.Degree))(t), Tolerance: 4 * units.Degree},
		{Crosshatch: must(hone.Included(18 * units.Degree))(t), Tolerance: 17 * units.Degree}, // over the corner
	} {
		p := must(picture.Speeds(must(hand.SettingFor(want))(t), hone.Setting{}))(t)
		frame := of[page.Line](p)[0].Points
		left, right, top, bottom := frame[0].X, frame[2].X, frame[0].Y, frame[1].Y
		toned := of[page.Area](p)[0].Points
		most, quick := float64(hand.Spindle.Max), float64(hand.Stroking.Max.Cycles())
		in, out := 0, 0
		for i := range 40 {
			for k := range 40 {
				at := page.Point{X: left + (right-left)*(float64(i)+0.5)/40, Y: bottom - (bottom-top)*(float64(k)+0.5)/40}
				s := hone.Setting{Bore: hand.Bore, Stroke: hand.Stroke, Spindle: units.Frequency(most * (at.X - left) / (right - left)),
					Stroking: hone.Cycles(units.Frequency(quick * (bottom - at.Y) / (bottom - top)))}
				off := float64(must(s.Crosshatch())(t).Included() - want.Crosshatch.Included())
				if math.Abs(math.Abs(off)-float64(want.Tolerance)) < 1e-6 {
					continue
				}
				allowed := math.Abs(off) < float64(want.Tolerance)
				if allowed {
					in++
				} else {
					out++
				}
				if within(at, toned) != allowed {
					t.Fatalf("%v: %v, off by %v°, toned %t", want, s, off*180/math.Pi, !allowed)
				}
			}
		}
		if in < 20 || out < 20 {
			t.Errorf("%v: %d settings within, %d beyond", want, in, out)
		}
	}
}

// TestFormStaysInside: the form that three axes carry may be wider than any of them was read; the names stand outside of it.
func TestFormStaysInside(t *testing.T) {
	layout := bore.Layout{Length: mm(100)}
	for _, axis := range []float64{0, 15, 30, 45, 75, 90} {
		var rs []bore.Reading
		for _, a := range []float64{0, 60, 120} {
			rs = append(rs, bore.Reading{Depth: mm(10), Axis: bore.Axis(units.Angle(a) * units.Degree), Diameter: mm(78 + 0.1*math.Cos(2*(a-axis)*math.Pi/180))})
		}
		g := must(layout.Measure(rs, bore.Gauge{Repeatability: um, Resolution: um}))(t)
		p := must(picture.Section(g.Planes[0], units.Millimetre))(t)
		if err := sound(p); err != nil {
			t.Error(err)
		}
		for _, l := range of[page.Label](p) {
			from, to := l.Box()
			for _, q := range of[page.Line](p)[2].Points {
				if q.X > from.X && q.X < to.X && q.Y > from.Y && q.Y < to.Y {
					t.Errorf("lobes at %v°: the form runs through %q", axis, l.Text)
				}
			}
		}
	}
}

// TestLongTraces: a trace of many points is drawn by 720 at most, its peak among them; one of so few by all.
func TestLongTraces(t *testing.T) {
	for _, n := range []int{720, 721, 1079, 1441, 2161} {
		radii := make([]units.Length, n)
		for i := range radii {
			radii[i] = mm(39 + 0.004*math.Cos(4*math.Pi*float64(i)/float64(n)))
		}
		radii[n/3], radii[n-1] = mm(39.03), mm(38.98) // a speck, and a pit at the very end
		p := must(picture.Trace(must(form.FromRadii(radii))(t), units.Millimetre))(t)
		wall, f := of[page.Line](p)[0].Points, printed(t, p, 0)
		if len(wall) > 720 || n <= 720 && len(wall) != n {
			t.Errorf("%d of %d points", len(wall), n)
		}
		centre := page.Point{X: p.Width / 2, Y: p.Height / 2}
		least, greatest := math.Inf(1), math.Inf(-1)
		for _, q := range wall {
			r := math.Hypot(q.X-centre.X, q.Y-centre.Y)
			least, greatest = min(least, r), max(greatest, r)
		}
		if got := (greatest - least) / f; !close(got, 0.05, 0.001) { // seen from a centre some tenths of a micrometre away
			t.Errorf("%d points: from pit to speck %v mm", n, got)
		}
	}
}

// TestGapsInDoubt: a bar that reaches far to the left of ends that overlap stays on the paper.
func TestGapsInDoubt(t *testing.T) {
	for _, e := range []uncertainty.Estimate{{Value: mm(-1), Std: mm(0.45)}, {Value: mm(0.1), Std: mm(0.6)}, {Value: mm(1), Std: mm(0.45)}} {
		if err := sound(must(picture.RingGap("top", []picture.Gap{{"cold", e}}, units.Limits{}, units.Millimetre))(t)); err != nil {
			t.Error(err)
		}
	}
}

// TestPortAllRound: a port that runs once round is drawn in one piece, wherever its middle is.
func TestPortAllRound(t *testing.T) {
	layout := bore.Layout{Length: mm(100)}
	for _, at := range []float64{0, 1, 77, 180, 359} {
		layout.Ports = []bore.Port{{From: mm(70), To: mm(88), At: units.Angle(at) * units.Degree, Width: 360 * units.Degree}}
		p := must(picture.Ports(layout, mm(78), nil, units.Millimetre))(t)
		frame := of[page.Line](p)[0].Points
		if a := of[page.Area](p); len(a) != 1 || a[0].Points[0].X != frame[0].X || a[0].Points[1].X != frame[1].X {
			t.Errorf("at %v°: %v", at, a)
		}
	}
}

// TestWallAsTallAsItIs: the scale of a wall down which the lines are drawn is the largest that leaves it within the 60 mm of
// its panel.
func TestWallAsTallAsItIs(t *testing.T) {
	for depth, want := range map[float64]float64{12: 5, 29.9: 2, 30: 2, 30.1: 1, 60: 1, 60.1: 0.5, 120: 0.5, 121: 0.2} {
		lines := picture.Lines{Leaves: must(hone.Included(45 * units.Degree))(t)}
		for i := range 13 {
			lines.Wall.Points = append(lines.Wall.Points, hone.Level{Depth: mm(depth * float64(i) / 12), Mean: 45 * units.Degree})
		}
		p := must(picture.Crosshatch(hone.Want{}, lines))(t)
		if got := printed(t, p, 0); !close(got, want, 1e-12) {
			t.Errorf("%v mm: %v : 1, want %v : 1", depth, got, want)
		}
	}
}

// TestLinesFillTheWall: at every depth the lines of each hand follow each other at one distance, from edge to edge.
func TestLinesFillTheWall(t *testing.T) {
	j := invented(t)
	j.lines.Wall.Points = slices.Insert(slices.Clone(j.lines.Wall.Points), 40, j.lines.Wall.Points[40]) // a depth twice
	p := must(picture.Crosshatch(hone.Want{}, j.lines))(t)
	if err := sound(p); err != nil {
		t.Error(err)
	}
	lines := of[page.Line](p)
	panel := lines[slices.IndexFunc(lines, func(l page.Line) bool { return l.Closed })].Points
	for y := panel[0].Y + 0.37; y < panel[2].Y; y += 0.5 {
		for _, hand := range []float64{-1, 1} {
			var at []float64
			for _, l := range lines {
				if len(l.Points) != 2 || l.Stroke != page.Thin {
					continue
				}
				a, b := l.Points[0], l.Points[1]
				if (a.Y > y) == (b.Y > y) || (b.X-a.X)*(b.Y-a.Y)*hand < 0 {
					continue
				}
				at = append(at, a.X+(y-a.Y)/(b.Y-a.Y)*(b.X-a.X))
			}
			slices.Sort(at)
			if len(at) < 2 {
				t.Fatalf("%v down: %d lines", y, len(at))
			}
			apart := at[1] - at[0]
			for i := range at[1:] {
				if !close(at[i+1]-at[i], apart, 1e-6) {
					t.Fatalf("%v down: lines at %v", y, at)
				}
			}
			if at[0]-panel[0].X > apart+1e-6 || panel[1].X-at[len(at)-1] > apart+1e-6 {
				t.Fatalf("%v down: lines from %v to %v, between %v and %v", y, at[0], at[len(at)-1], panel[0].X, panel[1].X)
			}
		}
	}
}
