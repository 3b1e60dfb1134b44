// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
)

func allKinds() []form.Reference { return append([]form.Reference{form.LSCY}, minimax...) }

// Points that hold no cylinder are refused by the name of what they lack, in bounded time.
func TestWallsThatHoldNoCylinder(t *testing.T) {
	ring := func(n int, z func(i int) float64, arc float64) (ps [][3]float64) {
		for i := range n {
			s, c := math.Sincos(arc * float64(i) / float64(n))
			ps = append(ps, [3]float64{35 * c, 35 * s, z(i)})
		}
		return ps
	}
	wavy := func(i int) float64 { return float64(i*i%7) * 10 }
	equal := make([][3]float64, 1_000_000)
	for i := range equal {
		equal[i] = [3]float64{1, 2, 3}
	}
	line := [][3]float64{}
	for i := range 40 {
		line = append(line, [3]float64{35, 0, float64(i)})
	}
	flat := [][3]float64{}
	for i := range 40 {
		flat = append(flat, [3]float64{35, float64(i * i % 11), float64(i)})
	}
	var across [][3]float64
	for _, p := range ring(60, wavy, 2*math.Pi) {
		across = append(across, [3]float64{p[2], p[0], p[1]})
	}
	for name, c := range map[string]struct {
		points [][3]float64
		want   error
	}{
		"one level":                 {ring(40, func(int) float64 { return 7 }, 2*math.Pi), form.ErrArc},
		"a hundredth of the radius": {ring(40, func(i int) float64 { return float64(i%2) * 0.3 }, 2*math.Pi), form.ErrArc},
		"one generator":             {line, form.ErrArc},
		"a plane":                   {flat, form.ErrArc},
		"an arc of 3°":              {ring(40, wavy, 3*math.Pi/180), form.ErrArc},
		"all one":                   {equal, form.ErrPoints},
		"across the depth":          {across, form.ErrArc},
	} {
		w := wallOf(t, c.points)
		for _, kind := range allKinds() {
			_, err := w.Cylindricity(kind)
			refused(t, name+" "+kind.String(), err, c.want)
		}
	}
	_, err := wallOf(t, ring(40, wavy, 1.2)).Cylindricity(form.MICY)
	refused(t, "a plug on an arc", err, form.ErrArc)
	_, err = form.Wall{}.Cylindricity(form.LSCY)
	refused(t, "no points", err, form.ErrPoints)
	_, err = wallOf(t, ring(40, wavy, 6)).Cylindricity(form.MZCI)
	refused(t, "a circle", err, units.ErrRange)
}

func TestWallsRefused(t *testing.T) {
	five := make([]form.WallPoint, 5)
	_, err := form.FromWallPoints(five)
	refused(t, "five points", err, form.ErrPoints)
	six := make([]form.WallPoint, 6)
	six[3].Depth = 6 * units.Metre
	_, err = form.FromWallPoints(six)
	refused(t, "6 m down", err, units.ErrRange)
	tr := traceOf(t, []float64{1, 0, -1, 0}, []float64{0, 1, 0, -1})
	for name, c := range map[string]struct {
		sections []form.Section
		want     error
	}{
		"none":       {nil, form.ErrPoints},
		"one":        {[]form.Section{{Depth: 3 * mm, Trace: tr}}, form.ErrPoints},
		"no points":  {[]form.Section{{Depth: 3 * mm, Trace: tr}, {Depth: 5 * mm}}, form.ErrPoints},
		"upwards":    {[]form.Section{{Depth: 3 * mm, Trace: tr}, {Depth: 2 * mm, Trace: tr}}, units.ErrRange},
		"same depth": {[]form.Section{{Depth: 3 * mm, Trace: tr}, {Depth: 3 * mm, Trace: tr}}, units.ErrRange},
		"far down":   {[]form.Section{{Depth: 3 * mm, Trace: tr}, {Depth: 7 * units.Metre, Trace: tr}}, units.ErrRange},
	} {
		_, err := form.FromSections(c.sections)
		refused(t, name, err, c.want)
	}
}

// A true cylinder has nothing off it, leaning or not, however it is given.
func TestTrueCylinder(t *testing.T) {
	var ps [][3]float64
	for i := range 90 {
		s, c := math.Sincos(float64(i))
		ps = append(ps, [3]float64{40*c + float64(i)*0.01 + 3, 40 * s, float64(i)})
	}
	w := wallOf(t, ps) // circles square to the depth, shifted: a cylinder of slightly oval section
	for kind, c := range cylinders(t, w) {
		if c.CYLt > 5*um || (c.Radius-40*mm).Abs() > 5*um {
			t.Errorf("%v: %+v", kind, c)
		}
	}
	r, n := 30.0, vectorOf(0.1, -0.2, 1)
	ps = ps[:0]
	for i := range 90 {
		s, c := math.Sincos(float64(i))
		u, v := vectorOf(1, 0, -n[0]/n[2]), [3]float64{}
		v = [3]float64{n[1]*u[2] - n[2]*u[1], n[2]*u[0] - n[0]*u[2], n[0]*u[1] - n[1]*u[0]}
		var p [3]float64
		for k := range p {
			p[k] = r*(c*u[k]+s*v[k]) + n[k]*float64(i)
		}
		ps = append(ps, p)
	}
	w = wallOf(t, ps)
	for kind, c := range cylinders(t, w) {
		near(t, kind.String(), c.Radius, 30*mm, 2e-9)
		if c.CYLt > 4*pm {
			t.Errorf("%v: CYLt %v", kind, c.CYLt)
		}
	}
}

func vectorOf(x, y, z float64) [3]float64 {
	d := math.Sqrt(x*x + y*y + z*z)
	return [3]float64{x / d, y / d, z / d}
}

// Every number of a cylinder survives JSON, and the check with it.
func TestCylinderJSON(t *testing.T) {
	w := wallOf(t, boreWall(rand.New(rand.NewPCG(1, 1)), 4, 12, 35, 80, 0.01))
	for _, kind := range allKinds() {
		c, err := w.Cylindricity(kind)
		text, jsonErr := json.Marshal(must(t, c, err))
		var back form.Cylinder
		if err := json.Unmarshal(must(t, text, jsonErr), &back); err != nil || back != c {
			t.Errorf("%s: %v", text, err)
		}
	}
}

// The same answers from sections as from their points, and none of the work allocates in a workspace.
func TestWorkspaceOfWalls(t *testing.T) {
	var sections []form.Section
	var points []form.WallPoint
	r := rand.New(rand.NewPCG(9, 9))
	for k := range 12 {
		depth := units.Length(5+7*k) * mm
		var radial []bore.Point
		for i := range 60 {
			a := float64(i) / 60 * 2 * math.Pi
			radial = append(radial, bore.Point{Angle: units.Angle(a), Radius: length(35 + 0.004*math.Cos(2*a) + 0.001*r.NormFloat64() + float64(k)*1e-4)})
		}
		tr, err := form.FromPolar(radial)
		sections = append(sections, form.Section{Depth: depth, Trace: must(t, tr, err)})
		x, y := tr.XY()
		for i := range x {
			points = append(points, form.WallPoint{X: length(x[i]), Y: length(y[i]), Depth: depth})
		}
	}
	w, err := form.FromSections(sections)
	if err != nil {
		t.Fatal(err)
	}
	v, err := form.FromWallPoints(points)
	if err != nil {
		t.Fatal(err)
	}
	if w.Len() != 720 || v.Len() != 720 {
		t.Errorf("%d and %d points", w.Len(), v.Len())
	}
	var space form.Workspace
	for _, kind := range allKinds() {
		a, err := space.Cylinder(kind, w)
		b, err2 := space.Cylinder(kind, v)
		if err := errors.Join(err, err2); err != nil {
			t.Fatal(err)
		}
		near(t, kind.String(), a.Radius, b.Radius, 4e-9)
		if err := a.Check(v); err != nil && !errors.Is(err, form.ErrUnproved) {
			t.Error(err)
		}
		if n := testing.AllocsPerRun(3, func() { space.Cylinder(kind, w) }); n != 0 {
			t.Errorf("%v: %v allocations", kind, n)
		}
	}
}

func TestAxis(t *testing.T) {
	a := form.Axis{From: form.WallPoint{X: 1 * mm, Y: 2 * mm, Depth: 10 * mm}, To: form.WallPoint{X: 1*mm + 30*um, Y: 2*mm - 40*um, Depth: 110 * mm}}
	at, err := a.At(0)
	if want := (form.Point{X: 1*mm - 3*um, Y: 2*mm + 4*um}); must(t, at, err) != want {
		t.Errorf("at the deck %v, want %v", at, want)
	}
	if a.OutOfSquare() != 50*um || math.Abs(float64(a.Lean())-math.Atan(0.0005)) > 1e-12 {
		t.Errorf("%v, %v", a.OutOfSquare(), float64(a.Lean()))
	}
	if got := a.Toward().In(units.Degree); math.Abs(got-306.869898) > 1e-6 { // 360° − atan 4/3
		t.Errorf("towards %v", got)
	}
	up := form.Axis{From: a.To, To: a.From}
	if up.Toward() != a.Toward() || up.OutOfSquare() != a.OutOfSquare() {
		t.Errorf("the other way round: %v", up.Toward())
	}
	if s := form.Square(form.Point{X: 3, Y: 4}); s.Lean() != 0 || s.Toward() != 0 || s.OutOfSquare() != 0 {
		t.Errorf("square: %v", s)
	}
	_, err = form.Axis{}.At(5)
	refused(t, "no length", err, units.ErrRange)
	_, err = form.Axis{To: form.WallPoint{X: units.Metre, Depth: 1}}.At(units.Metre)
	refused(t, "far off", err, units.ErrRange)
}
