// SPDX-License-Identifier: BSD-3-Clause

package picture_test

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/bore/hone"
	"borewright.example/bore/surface"
	"borewright.example/oversize/jobsheet/page"
	"borewright.example/oversize/jobsheet/picture"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

var update = flag.Bool("update", false, "write the golden drawings anew")

const um = units.Micrometre

func mm(x float64) units.Length {
	l, err := units.Of(x, units.Millimetre)
	if err != nil {
		panic(err)
	}
	return l
}

func must[T any](v T, err error) func(t testing.TB) T {
	return func(t testing.TB) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// a job is what all pictures are drawn of.
type job struct {
	geometry bore.Geometry
	layout   bore.Layout
	marks    picture.Marks
	columns  []picture.Column
	rungs    []picture.Rung
	reach    hone.Found
	now      hone.Setting
	lines    lines
	removal  hone.Removal
	gaps     []picture.Gap
	window   units.Limits
	ends     []picture.RingEnd
	trace    form.Trace
	plateau  surface.Plateau
	texture  surface.Roughness
	unit     units.Length
}

// invented returns a worn two-stroke cylinder of 78 mm that a village workshop may have on its bench.
func invented(t testing.TB) job {
	t.Helper()
	j := job{unit: units.Millimetre}
	j.layout = bore.Layout{Length: mm(110), RingTop: mm(12), RingBottom: mm(96),
		Ports: []bore.Port{{Name: "exhaust", From: mm(70), To: mm(88), At: 90 * units.Degree, Width: 50 * units.Degree},
			{Name: "transfer", From: mm(76), To: mm(88), At: 350 * units.Degree, Width: 40 * units.Degree}}}
	var rs []bore.Reading
	for _, row := range []struct {
		depth float64
		over  [5]float64
	}{{8, [5]float64{21, 20, 19, 20, 20}}, {14, [5]float64{165, 152, 110, 101, 125}}, {50, [5]float64{91, 85, 66, 59, 71}}, {100, [5]float64{33, 30, 25, 23, 27}}} {
		for i, a := range []float64{0, 36, 72, 108, 144} {
			rs = append(rs, bore.Reading{Depth: mm(row.depth), Axis: bore.Axis(units.Angle(a) * units.Degree), Diameter: mm(78 + row.over[i]/1000)})
		}
	}
	j.geometry = must(j.layout.Analyse(rs, bore.Gauge{Repeatability: 2 * um, Resolution: um}))(t)
	j.marks = picture.Marks{New: units.Limits{Min: mm(78), Max: mm(78.02)}, Service: mm(78.15), Bored: mm(78.44), Finish: units.Limits{Min: mm(78.49), Max: mm(78.515)}}
	clean := must(j.geometry.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: mm(78.018), Std: um}}))(t)
	j.columns = []picture.Column{{Name: "1", Geometry: j.geometry, CleanUp: clean.Original, Rung: 1}, {Name: "2, pump side", Geometry: j.geometry, CleanUp: clean.Worn, Rung: -1}}
	for i := 1; i <= 3; i++ {
		over := mm(78 + 0.25*float64(i))
		j.rungs = append(j.rungs, picture.Rung{Name: fmt.Sprintf("+%.2f mm", 0.25*float64(i)), Bored: over - 60*um, Finish: units.Limits{Min: over - 10*um, Max: over + 15*um}})
	}
	hand := hone.OnHand{Bore: mm(78.5), Stroke: mm(90), Spindle: hone.SpindleRange{Min: 60 * units.PerMinute, Max: 450 * units.PerMinute},
		Stroking: hone.StrokingRange{Min: hone.Cycles(20 * units.PerMinute), Max: hone.Cycles(45 * units.PerMinute)}}
	want := hone.Want{Crosshatch: must(hone.Included(45 * units.Degree))(t), Tolerance: 5 * units.Degree}
	j.reach = must(hand.SettingFor(want))(t)
	j.now = hone.Setting{Bore: mm(78.5), Stroke: mm(90), Spindle: 450 * units.PerMinute, Stroking: hone.Cycles(40 * units.PerMinute)}
	travel := hone.Travel{Depth: mm(110), Tool: mm(60), Top: mm(20), Bottom: mm(20)}
	set := j.reach.Best
	j.lines = lines{Leaves: must(set.Crosshatch())(t), Wall: must(set.Profile(hone.Crank(), travel, want, 111))(t)}
	j.removal = must(set.Removal(hone.Crank(), travel, hone.ConstantPressure, 60*um, 111))(t)
	e := func(size, u float64) uncertainty.Estimate {
		return uncertainty.Estimate{Value: mm(size), Std: mm(u / 2)}
	}
	j.gaps = []picture.Gap{{"cold, now", e(0.218, 0.023)}, {"filed", e(0.283, 0.005)}, {"hot", e(0.117, 0.097)}}
	j.window = units.Limits{Min: mm(0.25), Max: mm(0.45)}
	j.ends = []picture.RingEnd{{"top", 180 * units.Degree}, {"second", 200 * units.Degree}}
	var radii []units.Length
	for i := range 360 {
		a := float64(i) * math.Pi / 180
		radii = append(radii, mm(39+0.012*math.Cos(a)+0.02*math.Cos(2*a-0.5)+0.006*math.Cos(5*a)+0.002*math.Sin(37*a)))
	}
	j.trace = must(form.FromRadii(radii))(t)
	j.plateau = surface.Plateau{Rpk: um / 4, Rk: 7 * um / 10, Rvk: 16 * um / 10, Mr1: 0.09, Mr2: 0.82}
	j.texture = honed(t, 0.2, 3)
	return j
}

// honed is a texture of plateaus as rough as that and grooves as deep, in µm; invented.
func honed(t testing.TB, rough, deep float64) surface.Roughness {
	r := rand.New(rand.NewPCG(5, 1))
	var zs []units.Length
	for i := range 2001 {
		z := r.NormFloat64() * rough
		if z > rough {
			z = rough + (z-rough)/2
		}
		z -= deep * (0.4 + 0.6*math.Cos(float64(i/97))) * max(0, 1-math.Abs(float64(i%97)-20)/18)
		zs = append(zs, mm(z/1000))
	}
	p := must(surface.FromHeights(2*um, zs))(t)
	return must(p.TwoStep(surface.Filter{CutOff: 800 * um}))(t)
}

// all draws every picture.
func (j job) all(t testing.TB) map[string]page.Picture {
	t.Helper()
	return map[string]page.Picture{
		"wear":       must(picture.Wear(j.geometry, j.layout, j.marks, j.unit))(t),
		"section":    must(picture.Section(j.geometry.Planes[len(j.geometry.Planes)/2], j.unit))(t),
		"ladder":     must(picture.Ladder(j.columns, j.rungs, j.unit))(t),
		"crosshatch": must(crosshatch(j.reach.Want, j.lines))(t),
		"gap":        must(picture.RingGap("top", j.gaps, j.window, j.unit))(t),
		"ports":      must(picture.Ports(j.layout, mm(78), j.ends, j.unit))(t),
		"speeds":     must(picture.Speeds(j.reach, j.now))(t),
		"removal":    must(picture.Removal(j.removal, j.unit))(t),
		"trace":      must(picture.Trace(j.trace, j.unit))(t),
		"ratio":      must(picture.MaterialRatio(j.plateau))(t),
		"texture":    must(picture.Texture("Texture: 12 mm, pin", j.texture))(t),
	}
}

func TestGolden(t *testing.T) {
	if _, err := os.Stat("testdata"); errors.Is(err, fs.ErrNotExist) {
		t.Skip("golden files are no part of the module's archive")
	}
	for name, p := range invented(t).all(t) {
		var b bytes.Buffer
		if err := p.WriteSVG(&b); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join("testdata", name+".svg")
		if *update {
			if err := os.WriteFile(file, b.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		if want, err := os.ReadFile(file); err != nil || !bytes.Equal(want, b.Bytes()) {
			t.Errorf("%s differs from %s: %v", name, file, err)
		}
	}
}

func TestNothing(t *testing.T) {
	j := invented(t)
	for name, draw := range map[string]func() (page.Picture, error){
		"wear":       func() (page.Picture, error) { return picture.Wear(bore.Geometry{}, j.layout, j.marks, j.unit) },
		"section":    func() (page.Picture, error) { return picture.Section(bore.Plane{}, j.unit) },
		"ladder":     func() (page.Picture, error) { return picture.Ladder(nil, j.rungs, j.unit) },
		"no rungs":   func() (page.Picture, error) { return picture.Ladder(j.columns, nil, j.unit) },
		"unread":     func() (page.Picture, error) { return picture.Ladder([]picture.Column{{}}, j.rungs, j.unit) },
		"crosshatch": func() (page.Picture, error) { return crosshatch(hone.Want{}, lines{}) },
		"gap":        func() (page.Picture, error) { return picture.RingGap("top", nil, j.window, j.unit) },
		"ports":      func() (page.Picture, error) { return picture.Ports(bore.Layout{}, mm(78), nil, j.unit) },
		"no bore":    func() (page.Picture, error) { return picture.Ports(j.layout, 0, nil, j.unit) },
		"speeds":     func() (page.Picture, error) { return picture.Speeds(hone.Found{}, j.now) },
		"removal":    func() (page.Picture, error) { return picture.Removal(hone.Removal{}, j.unit) },
		"trace":      func() (page.Picture, error) { return picture.Trace(form.Trace{}, j.unit) },
		"texture":    func() (page.Picture, error) { return picture.Texture("none", surface.Roughness{}) },
		"flat":       func() (page.Picture, error) { return picture.Texture("flat", honed(t, 0, 0)) },
		"ratio":      func() (page.Picture, error) { return picture.MaterialRatio(surface.Plateau{Rk: um, Mr2: 0.8}) },
		"no direction": func() (page.Picture, error) {
			return picture.Section(turned(j.geometry.Planes[1], 1000), j.unit)
		},
		"no direction at all": func() (page.Picture, error) {
			return picture.Section(turned(j.geometry.Planes[1], math.NaN()), j.unit)
		},
		"turned back": func() (page.Picture, error) { return picture.Section(turned(j.geometry.Planes[1], -1000), j.unit) },
		"up the wall": func() (page.Picture, error) {
			return crosshatch(j.reach.Want, along(j.lines, hone.Level{Depth: mm(9), Mean: 1}, hone.Level{Depth: mm(3), Mean: 1}))
		},
		"no angle": func() (page.Picture, error) {
			return crosshatch(j.reach.Want, along(j.lines, hone.Level{Depth: mm(3), Mean: 1}, hone.Level{Depth: mm(9), Mean: units.Angle(math.NaN())}))
		},
		"too fast": func() (page.Picture, error) {
			f := j.reach
			f.Hand.Spindle.Max = 2e6 * units.PerMinute
			return picture.Speeds(f, j.now)
		},
		"too slow": func() (page.Picture, error) {
			f := j.reach
			f.Hand.Spindle.Max, f.Best = 1e-4*units.PerMinute, hone.Setting{}
			return picture.Speeds(f, hone.Setting{})
		},
	} {
		if _, err := draw(); !errors.Is(err, picture.ErrNothing) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// turned is a plane whose two lobes point so many degrees round.
func turned(p bore.Plane, degrees float64) bore.Plane {
	p.TwoLobe.Axis = units.Angle(degrees) * units.Degree
	return p
}

// lines are those that a setting leaves: at the mean speed, and along the wall.
type lines struct {
	Leaves hone.Crosshatch
	Wall   hone.Profile
}

func crosshatch(want hone.Want, l lines) (page.Picture, error) {
	return picture.Crosshatch(want, l.Leaves, l.Wall)
}

// along are lines with other levels down the wall.
func along(l lines, levels ...hone.Level) lines {
	l.Wall.Points = levels
	return l
}

// TestNoCurve: five numbers make a curve where the three heights are above zero and the two shares within the wall and in order.
func TestNoCurve(t *testing.T) {
	sound := invented(t).plateau
	for name, spoil := range map[string]func(p *surface.Plateau){
		"no peaks": func(p *surface.Plateau) { p.Rpk = 0 }, "no core": func(p *surface.Plateau) { p.Rk = 0 }, "no valleys": func(p *surface.Plateau) { p.Rvk = 0 },
		"no Mr1": func(p *surface.Plateau) { p.Mr1 = 0 }, "alike": func(p *surface.Plateau) { p.Mr1 = p.Mr2 }, "all": func(p *surface.Plateau) { p.Mr2 = 1 },
		"NaN": func(p *surface.Plateau) { p.Mr2 = math.NaN() }, "below zero": func(p *surface.Plateau) { p.Rk = -um },
	} {
		p := sound
		spoil(&p)
		if _, err := picture.MaterialRatio(p); !errors.Is(err, picture.ErrNothing) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// points returns every point of a shape.
func points(s page.Shape) []page.Point {
	switch s := s.(type) {
	case page.Line:
		return s.Points
	case page.Area:
		return s.Points
	case page.Circle:
		return []page.Point{{X: s.Centre.X - s.Radius, Y: s.Centre.Y - s.Radius}, {X: s.Centre.X + s.Radius, Y: s.Centre.Y + s.Radius}}
	case page.Dot:
		return []page.Point{s.At, s.From, s.To}
	case page.Label:
		from, to := s.Box()
		return []page.Point{from, to}
	}
	return nil
}

// sound holds a picture to what is true of all of them: it has a title and a description, nothing is outside of its
// frame, and no label lies on another.
func sound(p page.Picture) error {
	if p.Title == "" || p.Description == "" || len(p.Notes) == 0 {
		return fmt.Errorf("title %q, description %q, %d notes", p.Title, p.Description, len(p.Notes))
	}
	var labels []page.Label
	for _, s := range p.Shapes {
		for _, q := range points(s) {
			if !(q.X >= -1e-6 && q.X <= p.Width+1e-6 && q.Y >= -1e-6 && q.Y <= p.Height+1e-6) {
				return fmt.Errorf("%T %+v: %v is outside of %v × %v", s, s, q, p.Width, p.Height)
			}
		}
		l, ok := s.(page.Label)
		if !ok {
			continue
		}
		from, to := l.Box()
		for _, other := range labels {
			f, o := other.Box()
			if from.X < o.X && to.X > f.X && from.Y < o.Y && to.Y > f.Y {
				return fmt.Errorf("label %q lies on %q", l.Text, other.Text)
			}
		}
		labels = append(labels, l)
	}
	return nil
}

// unitBelow: the unit of a ruler is named, in the line of its figures or below.
func unitBelow(p page.Picture) error {
	ruler := ticks(p)
	for _, l := range of[page.Label](p) {
		if l.Anchor != page.End || l.Text != "mm" && l.Text != "in" {
			continue
		}
		for _, figure := range of[page.Label](p) {
			if len(ruler) > 0 && figure.At.X == ruler[0][0] && figure.At.Y > p.Height/2 && l.At.Y < figure.At.Y {
				return fmt.Errorf("%q at %v, above the figure at %v", l.Text, l.At, figure.At)
			}
		}
		return nil
	}
	return errors.New("the ruler has no unit")
}

// TestSound: of random jobs.
func TestSound(t *testing.T) {
	for name, p := range invented(t).all(t) {
		if err := sound(p); err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	base := invented(t)
	rapid.Check(t, func(r *rapid.T) {
		j := base
		length := func(what string, from, to float64) units.Length {
			return mm(rapid.Float64Range(from, to).Draw(r, what))
		}
		size := rapid.Float64Range(30, 200).Draw(r, "bore")
		deep := rapid.Float64Range(20, 300).Draw(r, "deep")
		j.unit = rapid.SampledFrom([]units.Length{units.Millimetre, units.Inch}).Draw(r, "unit")
		j.layout = bore.Layout{Length: mm(deep), RingTop: mm(deep * 0.1), RingBottom: mm(deep * 0.9)}
		axes := rapid.IntRange(1, 6).Draw(r, "axes")
		var rs []bore.Reading
		for i := range rapid.IntRange(1, 5).Draw(r, "depths") {
			for a := range axes {
				rs = append(rs, bore.Reading{Depth: mm(deep * (0.03 + 0.18*float64(i))), Axis: bore.Axis(units.Angle(a) * 180 * units.Degree / units.Angle(axes)),
					Diameter: mm(size) + length("worn", 0, size/200)})
			}
		}
		g, err := j.layout.Analyse(rs, bore.Gauge{Repeatability: length("repeats", 0, 0.01), Resolution: length("resolution", 0.001, 0.01)})
		if err != nil {
			r.Skip(err)
		}
		j.geometry = g
		clean, err := g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: mm(size), Std: um}})
		if err != nil {
			r.Fatal(err)
		}
		j.plateau = surface.Plateau{
			Rpk: length("peaks", 1e-5, 0.002), Rk: length("core", 1e-5, 0.005), Rvk: length("valleys", 1e-5, 0.008),
			Mr1: rapid.Float64Range(0.001, 0.4).Draw(r, "where peaks end"), Mr2: rapid.Float64Range(0.41, 0.999).Draw(r, "where valleys begin"),
		}
		j.texture = honed(t, rapid.Float64Range(0.001, 20).Draw(r, "rough"), rapid.Float64Range(0, 200).Draw(r, "deep"))
		mark := func(what string) units.Length {
			if rapid.Bool().Draw(r, "no "+what) {
				return 0
			}
			return mm(size) + length(what, -0.1, 1)
		}
		j.marks = picture.Marks{New: units.Limits{Max: mark("new")}, Service: mark("service"), Bored: mark("bored"), Finish: units.Limits{Min: mark("least"), Max: mark("most")}}
		j.columns, j.rungs = nil, nil
		for i := range rapid.IntRange(1, 16).Draw(r, "cylinders") {
			j.columns = append(j.columns, picture.Column{Name: rapid.StringMatching(`[0-9a-z, ]{1,20}`).Draw(r, "name"), Geometry: g, CleanUp: clean.Original, Rung: i % 4})
		}
		for i := range rapid.IntRange(1, 8).Draw(r, "sizes") {
			over := mm(size + float64(i)*rapid.Float64Range(0.01, 0.5).Draw(r, "size"))
			j.rungs = append(j.rungs, picture.Rung{Name: "+" + over.String(), Bored: over, Finish: units.Limits{Min: over, Max: over + 20*um}})
		}
		j.layout.Ports = []bore.Port{{Name: rapid.StringMatching(`[a-z]{0,60}`).Draw(r, "port"), From: mm(deep * 0.5), To: mm(deep * 0.7),
			At: units.Angle(rapid.Float64Range(-400, 800).Draw(r, "at")) * units.Degree, Width: units.Angle(rapid.Float64Range(1, 360).Draw(r, "width")) * units.Degree}}
		j.ends = []picture.RingEnd{{"top", units.Angle(rapid.Float64Range(-400, 800).Draw(r, "peg")) * units.Degree}}
		for i := range j.gaps {
			j.gaps = append(append([]picture.Gap{}, j.gaps[:i]...), append([]picture.Gap{{j.gaps[i].Name, uncertainty.Estimate{Value: length("gap", -1, 12), Std: length("std", 0, 1)}}}, j.gaps[i+1:]...)...)
		}
		hand := hone.OnHand{Bore: mm(size), Stroke: mm(deep), Spindle: hone.SpindleRange{Min: 20 * units.PerMinute, Max: units.Frequency(rapid.Float64Range(20, 2000).Draw(r, "spindle")) * units.PerMinute},
			Stroking: hone.StrokingRange{Min: hone.Cycles(10 * units.PerMinute), Max: hone.Cycles(units.Frequency(rapid.Float64Range(10, 300).Draw(r, "stroking")) * units.PerMinute)}}
		c, err := hone.Included(units.Angle(rapid.Float64Range(1, 150).Draw(r, "angle")) * units.Degree)
		if err != nil {
			r.Fatal(err)
		}
		reach, err := hand.SettingFor(hone.Want{Crosshatch: c, Tolerance: units.Angle(rapid.Float64Range(0.5, 20).Draw(r, "tolerance")) * units.Degree})
		if err != nil {
			r.Skip(err)
		}
		j.reach, j.now = reach, reach.Best
		j.lines.Leaves = reach.Leaves
		for name, p := range j.all(t) {
			if err := sound(p); err != nil {
				r.Fatalf("%s: %v", name, err)
			}
			if err := unitBelow(p); err != nil && (name == "wear" || name == "removal") {
				r.Fatalf("%s: %v", name, err)
			}
		}
	})
}
