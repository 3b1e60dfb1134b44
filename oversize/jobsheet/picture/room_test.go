// SPDX-License-Identifier: BSD-3-Clause

package picture_test

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
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
	g := must(layout.Analyse(rs, bore.Gauge{Repeatability: 2 * um, Resolution: um}))(t)
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
		g := must(layout.Analyse(rs, bore.Gauge{Repeatability: um, Resolution: um}))(t)
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
		lines := lines{Leaves: must(hone.Included(45 * units.Degree))(t)}
		for i := range 13 {
			lines.Wall.Points = append(lines.Wall.Points, hone.Level{Depth: mm(depth * float64(i) / 12), Mean: 45 * units.Degree})
		}
		p := must(crosshatch(hone.Want{}, lines))(t)
		if got := printed(t, p, 0); !close(got, want, 1e-12) {
			t.Errorf("%v mm: %v : 1, want %v : 1", depth, got, want)
		}
	}
}

// TestLinesFillTheWall: at every depth the lines of each hand follow each other at one distance, from edge to edge.
func TestLinesFillTheWall(t *testing.T) {
	j := invented(t)
	j.lines.Wall.Points = slices.Insert(slices.Clone(j.lines.Wall.Points), 40, j.lines.Wall.Points[40]) // a depth twice
	p := must(crosshatch(hone.Want{}, j.lines))(t)
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

// TestMarks: a finish window is a band between its two sizes; of a single limit there is a line and no window from zero; and
// one port is spoken of as well as two.
func TestMarks(t *testing.T) {
	j := invented(t)
	finish := units.Limits{Min: mm(78.21), Max: mm(78.23)}
	areas := func(m picture.Marks, l bore.Layout) ([]page.Area, page.Picture) {
		p := must(picture.Wear(j.geometry, l, m, units.Millimetre))(t)
		return slices.DeleteFunc(of[page.Area](p), func(a page.Area) bool { return a.Hatched }), p
	}
	layout := j.layout
	layout.Ports = nil
	bands, p := areas(picture.Marks{Finish: finish}, layout)
	if f := printed(t, p, 0); len(bands) != 1 || !close((bands[0].Points[1].X-bands[0].Points[0].X)/f, 0.02, micrometre) || !strings.Contains(p.Description, "finish 78.210 mm to 78.230 mm.") {
		t.Errorf("%v, %s", bands, p.Description)
	}
	for _, one := range []units.Limits{{Max: finish.Max}, {Min: finish.Max}, {Min: finish.Max, Max: finish.Max}} {
		if bands, p = areas(picture.Marks{Finish: one}, layout); len(bands) != 0 || !strings.Contains(p.Description, "finish 78.230 mm.") {
			t.Errorf("%v, %s", bands, p.Description)
		}
	}
	ports := func(p page.Picture) bool { return slices.Contains(p.Notes, "Bands across: ports.") }
	for n := range 3 {
		layout.Ports = j.layout.Ports[:n]
		if bands, p = areas(picture.Marks{}, layout); len(bands) != n || ports(p) != (n > 0) {
			t.Errorf("%d ports: %d bands, %q", n, len(bands), p.Notes)
		}
	}
}

// TestOneLevel: the angle at one depth says nothing of a wall: the lines are those of the mean speed.
func TestOneLevel(t *testing.T) {
	l := lines{Leaves: must(hone.Included(45 * units.Degree))(t)}
	without := must(crosshatch(hone.Want{}, l))(t)
	with := must(crosshatch(hone.Want{}, along(l, hone.Level{Depth: mm(5), Mean: 1})))(t)
	if !reflect.DeepEqual(with, without) {
		t.Errorf("%v, without the level %v", with, without)
	}
}

// TestWedge: the wedge reaches from the least to the greatest lean that the tolerance allows, up to square.
func TestWedge(t *testing.T) {
	for _, row := range []struct{ included, tolerance, least, most float64 }{{45, 5, 20, 25}, {150, 20, 65, 85}, {4, 6, 0, 5}, {170, 30, 70, 90}} {
		want := hone.Want{Crosshatch: must(hone.Included(units.Angle(row.included) * units.Degree))(t), Tolerance: units.Angle(row.tolerance) * units.Degree}
		w := of[page.Area](must(crosshatch(want, lines{}))(t))[0].Points
		lean := func(q page.Point) float64 { return math.Atan2(w[0].Y-q.Y, q.X-w[0].X) * 180 / math.Pi }
		if least, most := lean(w[1]), lean(w[len(w)-1]); !close(least, row.least, 1e-9) || !close(most, row.most, 1e-9) {
			t.Errorf("%v: from %v° to %v°", want, least, most)
		}
	}
}

// TestTextureFromWithin: a profile that is evaluated from its middle on is drawn as large as one that begins at zero.
func TestTextureFromWithin(t *testing.T) {
	z := make([]units.Length, 4001)
	for i := range z {
		z[i] = units.Length(math.Sin(float64(i)/7) * float64(um))
	}
	r := must(must(surface.FromHeights(um, z))(t).Gaussian(surface.Filter{CutOff: 250 * um}))(t)
	if from := r.Points()[0].X; from < mm(1.3) {
		t.Fatalf("evaluated from %v", from)
	}
	p := must(picture.Texture("a texture", r))(t)
	if along := printed(t, p, 1); along != 20 { // 1.25 mm within the 42 mm that a profile has; at 50 : 1 they take 62
		t.Errorf("drawn %v : 1", along)
	}
}

// TestWindowOfAGap: the window for a gap has room though it is much wider than the gap, and only what it gives is drawn.
func TestWindowOfAGap(t *testing.T) {
	gap := []picture.Gap{{"cold", uncertainty.Estimate{Value: mm(0.3), Std: um}}}
	p := must(picture.RingGap("top", gap, units.Limits{Min: mm(1), Max: mm(4)}, units.Millimetre))(t)
	if f := printed(t, p, 0); f != 5 {
		t.Errorf("4 mm at %v : 1, in a room of 22 mm", f)
	}
	for word, window := range map[string]units.Limits{"least": {Max: mm(4)}, "most": {Min: mm(1)}} {
		if p = must(picture.RingGap("top", gap, window, units.Millimetre))(t); strings.Contains(p.Description, word) {
			t.Errorf("%v: %s", window, p.Description)
		}
	}
}

// TestRatioAsTallAsItsRoom: five numbers of any shape are drawn as tall as the 56 mm for them, or by a 1-2-5 step less.
func TestRatioAsTallAsItsRoom(t *testing.T) {
	for _, h := range [][3]units.Length{{200, 2000, 300}, {2000, 300, 200}, {300, 200, 2000}} {
		p := surface.Plateau{Rpk: h[0] * units.Nanometre, Rk: h[1] * units.Nanometre, Rvk: h[2] * units.Nanometre, Mr1: 0.1, Mr2: 0.8}
		axis := of[page.Line](must(picture.MaterialRatio(p))(t))[0].Points
		if tall := axis[1].Y - axis[0].Y; tall > 56+1e-9 || tall < 56/2.5 {
			t.Errorf("%v is %v mm tall", p, tall)
		}
	}
}

// TestRungOfNoSize: a size whose bored diameter or window is not known takes no room on the ladder.
func TestRungOfNoSize(t *testing.T) {
	j := invented(t)
	want := printed(t, must(picture.Ladder(j.columns, j.rungs, j.unit))(t), 0)
	more := append(slices.Clone(j.rungs), picture.Rung{Name: "not known"}, picture.Rung{Name: "no window", Bored: j.rungs[0].Bored}, picture.Rung{Name: "no bore", Finish: units.Limits{Max: j.rungs[0].Finish.Max}})
	j.columns[0].Rung = len(more) - 1
	p := must(picture.Ladder(j.columns, more, j.unit))(t)
	if got := printed(t, p, 0); got != want {
		t.Errorf("%v : 1, without them %v : 1", got, want)
	}
	if err := sound(p); err != nil {
		t.Error(err)
	}
}

// TestPortsAreNamedAbove: the name of a port stands above its upper edge, however many ports crowd there.
func TestPortsAreNamedAbove(t *testing.T) {
	layout := bore.Layout{Length: mm(100)}
	for i := range 12 {
		layout.Ports = append(layout.Ports, bore.Port{Name: "transfer", From: mm(70), To: mm(88), At: units.Angle(15*i) * units.Degree, Width: 10 * units.Degree})
	}
	p := must(picture.Ports(layout, mm(78), nil, units.Millimetre))(t)
	top, named := of[page.Area](p)[0].Points[0].Y, 0
	for _, l := range of[page.Label](p) {
		if l.Text != "transfer" {
			continue
		}
		named++
		if _, to := l.Box(); to.Y > top {
			t.Errorf("a name at %v, the ports from %v", l.At, top)
		}
	}
	if named < 3 {
		t.Errorf("%d names", named)
	}
}
