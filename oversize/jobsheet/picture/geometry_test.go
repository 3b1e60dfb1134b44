// SPDX-License-Identifier: BSD-3-Clause

package picture_test

import (
	"errors"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// of returns the shapes of one kind, in the order in which they are drawn.
func of[S page.Shape](p page.Picture) []S {
	var list []S
	for _, s := range p.Shapes {
		if v, ok := s.(S); ok {
			list = append(list, v)
		}
	}
	return list
}

// printed returns the n-th factor that the notes print, "200 : 1" or "1 : 2".
func printed(t *testing.T, p page.Picture, n int) float64 {
	t.Helper()
	var list []float64
	words := strings.Fields(strings.NewReplacer(",", "", ";", "", ".", " ").Replace(strings.Join(p.Notes, " ")))
	for i, w := range words {
		if w != ":" {
			continue
		}
		a, err1 := strconv.ParseFloat(words[i-1], 64)
		b, err2 := strconv.ParseFloat(words[i+1], 64)
		if err1 != nil || err2 != nil {
			t.Fatal(words[i-1 : i+2])
		}
		list = append(list, a/b)
	}
	if n >= len(list) {
		t.Fatalf("%d factors in %q", len(list), p.Notes)
	}
	return list[n]
}

// ticks returns what the figures of a ruler stand for: pairs of a place on the paper and a size.
func ticks(p page.Picture) (list [][2]float64) {
	for _, l := range of[page.Label](p) {
		x, err := strconv.ParseFloat(l.Text, 64)
		if err != nil || l.Anchor != page.Middle {
			continue
		}
		for _, tick := range of[page.Line](p) { // the line that stands above it
			if len(tick.Points) == 2 && tick.Points[0].X == tick.Points[1].X && tick.Points[1].Y-tick.Points[0].Y == 1 && math.Abs(tick.Points[0].X-l.At.X) < 1e-9 {
				list = append(list, [2]float64{l.At.X, x})
			}
		}
	}
	return list
}

func close(a, b, tolerance float64) bool { return math.Abs(a-b) <= tolerance }

// micrometre is a tenth of that at the scale of the drawing's numbers: what a reading may be off by.
const micrometre = 1e-4 // mm

// TestWearReadsBack: from the ruler, the printed factors and the line of the deck, each dot gives back its reading, its depth
// and its doubt.
func TestWearReadsBack(t *testing.T) {
	j := invented(t)
	for _, unit := range []units.Length{units.Millimetre, units.Inch} {
		p := must(picture.Wear(j.geometry, j.layout, j.marks, unit))(t)
		f, down := printed(t, p, 0), printed(t, p, 1)
		ruler := ticks(p)
		if len(ruler) < 2 {
			t.Fatalf("ticks %v", ruler)
		}
		inMM := unit.In(units.Millimetre)
		for i, tick := range ruler[1:] {
			if !close((tick[0]-ruler[i][0])/f, (tick[1]-ruler[i][1])*inMM, micrometre) {
				t.Errorf("ticks %v and %v at %v : 1", ruler[i], tick, f)
			}
		}
		deck := of[page.Line](p)[0].Points[0].Y
		dots := of[page.Dot](p)
		n := 0
		for _, plane := range j.geometry.Planes {
			for _, q := range plane.Places {
				dot := dots[n]
				n++
				size := ruler[0][1]*inMM + (dot.At.X-ruler[0][0])/f
				if !close(size, q.Size.Value.In(units.Millimetre), micrometre) {
					t.Errorf("%v reads %v, is %v", dot, size, q.Size)
				}
				if depth := (dot.At.Y - deck) / down; !close(depth, q.Depth.In(units.Millimetre), 1e-6) {
					t.Errorf("depth %v, is %v", depth, q.Depth)
				}
				u, _ := q.Size.Expanded(0.95)
				if !close((dot.To.X-dot.From.X)/f, 2*u.In(units.Millimetre), micrometre) || dot.From.Y != dot.At.Y || !close(dot.From.X+dot.To.X, 2*dot.At.X, 1e-9) {
					t.Errorf("bar %v, doubt %v", dot, u)
				}
			}
		}
		if n != len(dots) {
			t.Errorf("%d dots, %d places", len(dots), n)
		}
	}
}

// TestHatched: no hatching covers a depth that was read, and some covers every other.
func TestHatched(t *testing.T) {
	j := invented(t)
	p := must(picture.Wear(j.geometry, j.layout, j.marks, j.unit))(t)
	hatched := func(y float64) bool {
		return slices.ContainsFunc(of[page.Area](p), func(a page.Area) bool { return a.Hatched && a.Points[0].Y <= y && y <= a.Points[2].Y })
	}
	for _, d := range of[page.Dot](p) {
		if hatched(d.At.Y) {
			t.Errorf("hatched where %s was read", d.Text)
		}
		if !hatched(d.At.Y + 1.01) {
			t.Errorf("not hatched beside %s", d.Text)
		}
	}
}

// TestSectionReadsBack: opposite dots lie on a line through the centre at the angle of their axis, as far apart as the
// diameter that the printed factor makes of it.
func TestSectionReadsBack(t *testing.T) {
	j := invented(t)
	plane := j.geometry.Planes[1]
	p := must(picture.Section(plane, j.unit))(t)
	f := printed(t, p, 0)
	circle := of[page.Circle](p)[0]
	dots := of[page.Dot](p)
	if len(dots) != 2*len(plane.Places) {
		t.Fatalf("%d dots", len(dots))
	}
	least := plane.Smallest().Size.Value.In(units.Millimetre)
	for i, q := range plane.Places {
		a, b := dots[2*i].At, dots[2*i+1].At
		d := math.Hypot(a.X-b.X, a.Y-b.Y)
		if got := least + (d-2*circle.Radius)/f; !close(got, q.Size.Value.In(units.Millimetre), micrometre) {
			t.Errorf("%v: %v", q.Size, got)
		}
		if angle := math.Atan2(circle.Centre.Y-a.Y, a.X-circle.Centre.X); !close(angle, float64(q.Axis), 1e-9) {
			t.Errorf("axis %v drawn at %v", q.Axis, angle)
		}
	}
	// The dotted form goes through the dots of five axes, which fix it.
	form := of[page.Line](p)[2]
	for _, d := range dots {
		near := math.Inf(1)
		for i, q := range form.Points {
			near = min(near, distance(d.At, q, form.Points[(i+1)%len(form.Points)]))
		}
		if near > 0.05 {
			t.Errorf("the form passes %v mm from %v", near, d.Text)
		}
	}
	// Two axes fix nothing: no form is drawn.
	plane.Places, plane.TwoLobe, plane.FourLobe = plane.Places[:2], bore.Lobes{}, bore.Lobes{}
	if p = must(picture.Section(plane, j.unit))(t); len(of[page.Line](p)) != 2 || !strings.Contains(p.Notes[0], "Fewer than three axes") {
		t.Errorf("%d lines, %q", len(of[page.Line](p)), p.Notes)
	}
}

// distance returns how far a point is from a piece of a line.
func distance(p, a, b page.Point) float64 {
	dx, dy := b.X-a.X, b.Y-a.Y
	t := max(0, min(1, ((p.X-a.X)*dx+(p.Y-a.Y)*dy)/(dx*dx+dy*dy)))
	return math.Hypot(p.X-a.X-t*dx, p.Y-a.Y-t*dy)
}

// TestLadderReadsBack: heights are sizes at the printed factor, and the size chosen is the first whose line lies above the
// hatching.
func TestLadderReadsBack(t *testing.T) {
	j := invented(t)
	p := must(picture.Ladder(j.columns, j.rungs, j.unit))(t)
	f := printed(t, p, 0)
	var bored []float64
	for _, l := range of[page.Line](p) {
		if l.Stroke == page.Dashed {
			bored = append(bored, l.Points[0].Y)
		}
	}
	if len(bored) != len(j.rungs) {
		t.Fatalf("%d dashed lines", len(bored))
	}
	for i, r := range j.rungs {
		if got := (bored[0] - bored[i]) / f; !close(got, (r.Bored - j.rungs[0].Bored).In(units.Millimetre), micrometre) {
			t.Errorf("size %d is %v above the first", i, got)
		}
	}
	dot := of[page.Dot](p)[0]
	if got := (bored[0] - dot.At.Y) / f; !close(got, (j.geometry.Largest.Size.Value - j.rungs[0].Bored).In(units.Millimetre), micrometre) {
		t.Errorf("the largest is %v above the first size", got)
	}
	for _, a := range of[page.Area](p) {
		if a.Hatched && (bored[0] < a.Points[0].Y || bored[1] > a.Points[0].Y) {
			t.Errorf("hatching up to %v, lines at %v", a.Points[0].Y, bored)
		}
	}
}

// TestAnglesAreTrue: every line leans from level by half of the included angle, to a tenth of a degree.
func TestAnglesAreTrue(t *testing.T) {
	for _, included := range []float64{0.5, 8, 45, 60, 120, 170} {
		c := must(hone.Included(units.Angle(included) * units.Degree))(t)
		p := must(crosshatch(hone.Want{Crosshatch: c, Tolerance: 5 * units.Degree}, lines{}))(t)
		up, down := 0, 0
		for _, l := range of[page.Line](p) {
			if len(l.Points) != 2 || l.Stroke != page.Thin || l.Points[0].Y == l.Points[1].Y {
				continue
			}
			a, b := l.Points[0], l.Points[1]
			lean := math.Atan2(b.Y-a.Y, b.X-a.X) * 180 / math.Pi
			if !close(math.Abs(lean), included/2, 0.1) && math.Hypot(a.X-b.X, a.Y-b.Y) > 0.01 {
				t.Errorf("%v°: a line leans by %v°", included, lean)
			}
			if lean > 0 {
				down++
			} else {
				up++
			}
		}
		if up < 3 || down < 3 {
			t.Errorf("%v°: %d lines one way, %d the other", included, up, down)
		}
	}
}

// TestAlongTheWall: what is left leans at each depth as the profile says there, and lies flatter at the ends.
func TestAlongTheWall(t *testing.T) {
	j := invented(t)
	p := must(crosshatch(hone.Want{}, j.lines))(t)
	f := printed(t, p, 0)
	var top float64
	for _, l := range of[page.Line](p) {
		if l.Closed {
			top = l.Points[0].Y
		}
	}
	n := 0
	for _, l := range of[page.Line](p) {
		if len(l.Points) != 2 || l.Stroke != page.Thin || math.Hypot(l.Points[0].X-l.Points[1].X, l.Points[0].Y-l.Points[1].Y) < 0.05 {
			continue
		}
		a, b := l.Points[0], l.Points[1]
		middle := ((a.Y+b.Y)/2 - top) / f
		i := int(middle)
		if i < 0 || i+1 >= len(j.lines.Wall.Points) || a.Y == b.Y {
			continue
		}
		want := float64(j.lines.Wall.Points[i].Mean+j.lines.Wall.Points[i+1].Mean) / 4 * 180 / math.Pi
		if lean := math.Abs(math.Atan((b.Y-a.Y)/(b.X-a.X))) * 180 / math.Pi; !close(lean, want, 0.1) {
			t.Errorf("%v mm down: leans by %v°, want %v°", middle, lean, want)
		}
		n++
	}
	if n < 200 {
		t.Errorf("%d pieces of lines", n)
	}
	if w := j.lines.Wall.Points; w[0].Mean >= w[55].Mean {
		t.Errorf("%v at the top, %v in the middle", w[0].Mean, w[55].Mean)
	}
}

// TestGapReadsBack: a gap is ten times as wide as it is, and the window with it.
func TestGapReadsBack(t *testing.T) {
	j := invented(t)
	p := must(picture.RingGap("top", j.gaps, j.window, j.unit))(t)
	if f := printed(t, p, 0); f != 10 {
		t.Fatalf("%v : 1", f)
	}
	areas, lines := of[page.Area](p), of[page.Line](p)
	for i, g := range j.gaps {
		left, right := areas[2*i].Points[1].X, areas[2*i+1].Points[0].X
		if !close((right-left)/10, g.Size.Value.In(units.Millimetre), micrometre) {
			t.Errorf("%s: %v wide", g.Name, right-left)
		}
		if d := of[page.Dot](p)[i]; d.At.X != right || !close((d.To.X-d.From.X)/10, 2*expanded(t, g).In(units.Millimetre), micrometre) {
			t.Errorf("%s: %v", g.Name, d)
		}
		if least := lines[0].Points[0].X; !close((least-left)/10, j.window.Min.In(units.Millimetre), micrometre) {
			t.Errorf("window from %v", least-left)
		}
	}
	// Ends that overlap are hatched, and a gap with no room is drawn smaller.
	j.gaps[0].Size.Value, j.gaps[1].Size.Value = -300*um, 5*units.Millimetre
	p = must(picture.RingGap("top", j.gaps, j.window, j.unit))(t)
	if !slices.ContainsFunc(of[page.Area](p), func(a page.Area) bool { return a.Hatched }) || printed(t, p, 0) >= 10 {
		t.Errorf("%+v", p)
	}
	// From a closed gap to the widest end of the bar takes 22 mm at most, and the factor is the greatest of 1, 2, 5 and so on.
	for _, size := range []struct{ wide, std float64 }{{3, 0.002}, {4, 0.002}, {4, 0.4}, {4.5, 0.002}, {12, 0.002}} {
		wide := size.wide
		one := picture.Gap{Name: "cold", Size: uncertainty.Estimate{Value: mm(wide), Std: mm(size.std)}}
		p := must(picture.RingGap("top", []picture.Gap{one}, units.Limits{}, j.unit))(t)
		u := expanded(t, one).In(units.Millimetre)
		want := 5.0
		if 5*(wide+u) > 22 {
			want = 2
		}
		if 2*(wide+u) > 22 {
			want = 1
		}
		if f := printed(t, p, 0); f != want {
			t.Errorf("a gap of %v mm at %v : 1, want %v : 1", wide, f, want)
		}
	}
}

func expanded(t *testing.T, g picture.Gap) units.Length {
	t.Helper()
	return must(g.Size.Expanded(0.95))(t)
}

// TestPortsReadBack: ports lie at their depths and angles, and one that goes over the edge of the paper is in two parts that
// make up its width.
func TestPortsReadBack(t *testing.T) {
	j := invented(t)
	p := must(picture.Ports(j.layout, mm(78), j.ends, j.unit))(t)
	frame := of[page.Line](p)[0].Points
	left, wide, top := frame[0].X, frame[1].X-frame[0].X, frame[0].Y
	down := (frame[2].Y - top) / j.layout.Length.In(units.Millimetre)
	var widths []float64
	for _, a := range of[page.Area](p) {
		widths = append(widths, (a.Points[1].X-a.Points[0].X)/wide*360)
		port := j.layout.Ports[min(len(widths)-1, 1)]
		if from := (a.Points[0].Y - top) / down; !close(from, port.From.In(units.Millimetre), 1e-9) {
			t.Errorf("%s from %v", port.Name, from)
		}
	}
	if len(widths) != 3 || !close(widths[0], 50, 1e-9) || !close(widths[1]+widths[2], 40, 1e-9) {
		t.Errorf("widths %v", widths)
	}
	for i, e := range j.ends {
		lines := of[page.Line](p)
		if at := (lines[len(lines)-len(j.ends)+i].Points[0].X - left) / wide * 360; !close(at, e.At.In(units.Degree), 1e-9) {
			t.Errorf("ring %s at %v", e.Name, at)
		}
	}
}

// TestSpeedsReadBack: a place on the line of the wanted angle is a setting that leaves it, and the dots are theirs.
func TestSpeedsReadBack(t *testing.T) {
	j := invented(t)
	p := must(picture.Speeds(j.reach, j.now))(t)
	var x, y [][2]float64
	for _, l := range of[page.Label](p) {
		if v, err := strconv.ParseFloat(l.Text, 64); err == nil {
			if l.Anchor == page.Middle {
				x = append(x, [2]float64{l.At.X, v})
			} else {
				y = append(y, [2]float64{l.At.Y - 1, v})
			}
		}
	}
	read := func(axis [][2]float64, at float64) units.Frequency {
		last := axis[len(axis)-1]
		return units.Frequency(axis[0][1]+(at-axis[0][0])/(last[0]-axis[0][0])*(last[1]-axis[0][1])) * units.PerMinute
	}
	for _, l := range of[page.Line](p) {
		if l.Stroke != page.Dashed {
			continue
		}
		s := hone.Setting{Bore: mm(78.5), Stroke: mm(90), Spindle: read(x, l.Points[1].X), Stroking: hone.Cycles(read(y, l.Points[1].Y))}
		if c := must(s.Crosshatch())(t); !close(c.Included().In(units.Degree), 45, 0.01) {
			t.Errorf("%v on the line of 45°", c)
		}
	}
	for i, s := range []hone.Setting{j.reach.Best, j.now} {
		d := of[page.Dot](p)[i]
		if n, k := read(x, d.At.X), read(y, d.At.Y); !close(float64(n), float64(s.Spindle), 1e-6) || !close(float64(k), float64(s.Stroking.Cycles()), 1e-6) {
			t.Errorf("%v is at %v, %v", d.Text, n, k)
		}
	}
}

// TestTraceContacts: seen through the drawing, the minimum zone holds all of the wall between its circles and the others
// hold it in or out, and each is touched.
func TestTraceContacts(t *testing.T) {
	p := must(picture.Trace(invented(t).trace, units.Millimetre))(t)
	lines := of[page.Line](p)
	wall := lines[0].Points
	for _, c := range []struct {
		name   string
		line   page.Line
		inside bool // the wall lies inside
	}{{"zone, inner", lines[2], false}, {"zone, outer", lines[3], true}, {"circumscribed", lines[4], true}, {"inscribed", lines[5], false}} {
		touch := math.Inf(1)
		for _, q := range wall {
			near := math.Inf(1)
			for i, a := range c.line.Points {
				near = min(near, distance(q, a, c.line.Points[(i+1)%len(c.line.Points)]))
			}
			touch = min(touch, near)
			if within(q, c.line.Points) != c.inside && near > 0.02 {
				t.Errorf("%s: the wall crosses it by %v mm", c.name, near)
			}
		}
		if touch > 0.02 {
			t.Errorf("%s: touched nowhere, %v mm at the nearest", c.name, touch)
		}
	}
}

// within reports whether a point lies inside a closed line: whether a ray from it crosses that an odd number of times.
func within(p page.Point, line []page.Point) bool {
	inside := false
	for i, a := range line {
		b := line[(i+1)%len(line)]
		if (a.Y > p.Y) != (b.Y > p.Y) && p.X < a.X+(p.Y-a.Y)/(b.Y-a.Y)*(b.X-a.X) {
			inside = !inside
		}
	}
	return inside
}

// area is that of a polygon.
func area(points []page.Point) (a float64) {
	for i, p := range points {
		q := points[(i+1)%len(points)]
		a += (p.X*q.Y - q.X*p.Y) / 2
	}
	return math.Abs(a)
}

// TestMaterialRatioReadsBack: measured on the paper, the peaks hold Rpk·Mr1/2 and the valleys the oil, Rvk·(1 − Mr2)/2 (ISO
// 13565-2); the equivalent line falls by Rk, and the curve leaves the core at Mr1 and Mr2.
func TestMaterialRatioReadsBack(t *testing.T) {
	p := invented(t).plateau
	drawn := must(picture.MaterialRatio(p))(t)
	f := printed(t, drawn, 0)
	areas, lines := of[page.Area](drawn), of[page.Line](drawn)
	var curve, straight []page.Point
	for _, l := range lines {
		switch l.Stroke {
		case page.Thick:
			curve = l.Points
		case page.Dashed:
			straight = l.Points
		}
	}
	wide := curve[3].X - curve[0].X
	um := func(l units.Length) float64 { return l.In(units.Micrometre) }
	for _, c := range []struct {
		what      string
		got, want float64
	}{
		{"peaks", area(areas[0].Points) / wide / f * 1000, um(p.Rpk) * p.Mr1 / 2},
		{"oil", area(areas[1].Points) / wide / f * 1000, um(p.Rvk) * (1 - p.Mr2) / 2},
		{"Rk", (straight[1].Y - straight[0].Y) / f * 1000, um(p.Rk)},
		{"Rpk", (straight[0].Y - curve[0].Y) / f * 1000, um(p.Rpk)},
		{"Rvk", (curve[3].Y - straight[1].Y) / f * 1000, um(p.Rvk)},
		{"Mr1", (curve[1].X - curve[0].X) / wide, p.Mr1},
		{"Mr2", (curve[2].X - curve[0].X) / wide, p.Mr2},
		{"where peaks end", curve[1].Y, straight[0].Y},
		{"where valleys begin", curve[2].Y, straight[1].Y},
	} {
		if math.Abs(c.got-c.want) > 1e-9 {
			t.Errorf("%s: %v on the paper, want %v", c.what, c.got, c.want)
		}
	}
	if areas[0].Hatched || !areas[1].Hatched {
		t.Error("oil is hatched, and peaks are not")
	}
}

// TestTextureReadsBack: measured on the paper, the profile has the heights of the roughness at their places, the curve those of
// its material ratio curve, and the two areas are what runs in and what holds oil.
func TestTextureReadsBack(t *testing.T) {
	r := honed(t, 0.2, 3)
	drawn := must(picture.Texture("a texture", r))(t)
	curve := r.Curve()
	p := curve.Plateau()
	up, along := printed(t, drawn, 0), printed(t, drawn, 1)
	lines := of[page.Line](drawn)
	top, bottom := lines[0].Points[0].Y, lines[1].Points[0].Y
	height := func(q page.Point) float64 { return p.Top.In(um) - (q.Y-top)/up*1000 }
	near := func(what string, got, want, within float64) {
		if math.Abs(got-want) > within {
			t.Errorf("%s: %v on the paper, want %v", what, got, want)
		}
	}
	near("Rk", (bottom-top)/up*1000, p.Rk.In(um), 1e-9)
	points := r.Points()
	profile := lines[2].Points
	first := points[0].X
	i, lowest, highest := 0, 0.0, 0.0
	for _, q := range profile {
		x, z := (q.X-profile[0].X)/along, height(q)
		for i < len(points)-1 && (math.Abs((points[i].X-first).In(units.Millimetre)-x) > 1e-6) {
			i++
		}
		near("profile", points[i].Z.In(um), z, 1e-6)
		lowest, highest = min(lowest, z), max(highest, z)
	}
	near("highest", highest, curve.Height(0).In(um), 1e-6)
	near("lowest", lowest, curve.Height(1).In(um), 1e-6)
	for _, l := range lines {
		if l.Stroke == page.Dashed {
			near("line", height(l.Points[0])-height(l.Points[1]), p.Rk.In(um), 1e-9)
		}
		if l.Stroke == page.Thick && len(l.Points) > 100 {
			wide := l.Points[len(l.Points)-1].X - l.Points[0].X
			for _, q := range l.Points {
				near("curve", height(q), curve.Height((q.X-l.Points[0].X)/wide).In(um), 2e-6)
			}
			areas := of[page.Area](drawn)
			// Drawn by sixty steps, of a curve that bends.
			near("peaks", area(areas[0].Points)/wide/up*1000, p.Rpk.In(um)*p.Mr1/2, 0.02*p.Rpk.In(um)*p.Mr1/2)
			near("oil", area(areas[1].Points)/wide/up*1000, p.Oil.In(um), 0.02*p.Oil.In(um))
			if areas[0].Hatched || !areas[1].Hatched {
				t.Error("oil is hatched, and peaks are not")
			}
		}
	}
}

// TestRemovalReadsBack: the curve is what is taken, at the factor printed.
func TestRemovalReadsBack(t *testing.T) {
	j := invented(t)
	p := must(picture.Removal(j.removal, j.unit))(t)
	f, down := printed(t, p, 0), printed(t, p, 1)
	for _, l := range of[page.Line](p) {
		if l.Stroke != page.Thick {
			continue
		}
		for i, q := range j.removal.Points {
			zero := ticks(p)[0]
			if got := zero[1] + (l.Points[i].X-zero[0])/f; !close(got, q.Diameter.In(units.Millimetre), micrometre) {
				t.Errorf("%v: %v", q, got)
			}
			if got := (l.Points[i].Y - l.Points[0].Y) / down; !close(got, (q.Depth - j.removal.Points[0].Depth).In(units.Millimetre), 1e-6) {
				t.Errorf("%v: %v deep", q, got)
			}
		}
		return
	}
	t.Error("no curve")
}

// TestRemovalOfTwoPoints: two points are a line, one is nothing.
func TestRemovalOfTwoPoints(t *testing.T) {
	r := invented(t).removal
	r.Points = r.Points[:2]
	if _, err := picture.Removal(r, units.Millimetre); err != nil {
		t.Error(err)
	}
	r.Points = r.Points[:1]
	if _, err := picture.Removal(r, units.Millimetre); !errors.Is(err, picture.ErrNothing) {
		t.Error(err)
	}
}
