// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
)

// Certified least-squares cones of the NIST algorithm testing service; deviations square to the surface
// computed from the points.
func TestCertifiedCones(t *testing.T) {
	rows := table(t, "nist_cone_expected.csv")
	if len(rows) != 3 {
		t.Fatalf("%d sets", len(rows))
	}
	deviation := map[string]float64{"con2": 0.001309336071, "con20": 0.037767551, "con28": 0.029399557}
	for _, row := range rows {
		for _, to := range [][3]float64{{0, 0, 1}, {0.05, -0.03, 1}, {0.02, 0.01, -1}} {
			w, _ := wallSet(t, "nist_cone_points.csv", row, to)
			c, err := w.Cone()
			if err != nil {
				t.Errorf("%s: %v", row["set"], err)
				continue
			}
			if got, want := c.Angle.In(units.Degree), number(t, row["full_angle_deg"]); math.Abs(got-want) > 1e-7 {
				t.Errorf("%s: %.12f°, want %.12f°", row["set"], got, want)
			}
			near(t, row["set"]+" deviation", c.Deviation, length(deviation[row["set"]]), 1e-9)
			// The certified point is 0; the axis grows downwards, or upwards where it is turned round.
			length := axisLength(c.Axis)
			part := -float64(c.Axis.From.Depth) / float64(c.Axis.To.Depth-c.Axis.From.Depth)
			at := c.From - units.Length(math.Round(part*float64(c.Taper)))
			near(t, row["set"]+" diameter", at, 2*lengthOf(t, row["radius_at_p"]), 2e-7)
			taper := number(t, row["diametral_taper_per_length"]) * length
			if to[2] > 0 {
				taper = -taper
			}
			near(t, row["set"]+" taper", c.Taper, units.Length(math.Round(taper*units.PerMillimetre)), 1e-7)
		}
	}
}

func lengthOf(t failer, s string) units.Length { return length(number(t, s)) }

func axisLength(a form.Axis) float64 {
	dx, dy, dz := (a.To.X - a.From.X).In(mm), (a.To.Y - a.From.Y).In(mm), (a.To.Depth - a.From.Depth).In(mm)
	return math.Sqrt(dx*dx + dy*dy + dz*dz)
}

// sections24 is the wall of three sections of [TestWallOf24], as such.
func sections24(t failer) form.Wall {
	var sections []form.Section
	for _, depth := range []float64{10, 45, 80} {
		var x, y []float64
		for _, p := range table(t, "wall_bore24.csv") {
			if number(t, p["z"]) == depth {
				x, y = append(x, number(t, p["x"])), append(y, number(t, p["y"]))
			}
		}
		sections = append(sections, form.Section{Depth: length(depth), Trace: traceOf(t, x, y)})
	}
	w, err := form.FromSections(sections)
	return must(t, w, err)
}

// A tapered wall looks a third better as a cone than as a cylinder: 31.6 µm against 47.8. Computed by
// another program from the same points, as the straightness of the generators and the taper of the pairs;
// here the generators run between neighbouring points, off which the axis puts them by up to 10 nm.
func TestConeAndGeneratorsOfWall24(t *testing.T) {
	w := sections24(t)
	c, err := w.Cone()
	near(t, "cone", must(t, c, err).Deviation, length(0.0316332794), 1e-9)
	if c.Taper <= 0 || (c.From-c.To) != c.Taper {
		t.Errorf("%+v", c)
	}
	ls, err := w.Cylindricity(form.LSCY)
	if err != nil {
		t.Fatal(err)
	}
	worst := units.Length(0)
	for k, taper := range []float64{0.021, 0.021071782, 0.021, 0.021071782} { // half of the difference of diameters
		p, err := w.Pair(ls.Axis, degrees(45*float64(k)))
		near(t, "taper", must(t, p, err).Taper, length(2*taper), 1e-5)
		worst = max(worst, p.At.STRt, p.Opposite.STRt)
	}
	near(t, "straightness", worst, length(0.005868986), 1e-5)
}

// A wall of which all is known: size by depth, centres, bend, generators.
func TestMedianLine(t *testing.T) {
	var sections []form.Section
	off := []float64{0, 6, 9, 6, 0} // µm, towards 120°, over a lean
	for k, o := range off {
		var x, y []float64
		s, c := math.Sincos(120 * math.Pi / 180)
		cx, cy := o*1e-3*c+0.02*float64(k), o*1e-3*s-0.01*float64(k)
		for i := range 72 {
			a := 2 * math.Pi * float64(i) / 72
			r := 40 + 0.001*float64(k) + 0.003*math.Cos(3*a)
			x, y = append(x, cx+r*math.Cos(a)), append(y, cy+r*math.Sin(a))
		}
		sections = append(sections, form.Section{Depth: units.Length(10+20*k) * mm, Trace: traceOf(t, x, y)})
	}
	w, err := form.FromSections(sections)
	m, err2 := must(t, w, err).MedianLine()
	must(t, m, err2)
	for k, l := range m.Locals {
		near(t, "diameter", l.Diameter, length(80+0.002*float64(k)), 1e-6)
		near(t, "RONt", l.RONt, length(0.006), 1e-6)
		if l.Depth != units.Length(10+20*k)*mm {
			t.Errorf("depth %v", l.Depth)
		}
	}
	near(t, "bend", m.Bend, length(0.009), 1e-7)
	if m.BendAt != 50*mm || math.Abs(m.Toward.In(units.Degree)-120) > 1e-3 {
		t.Errorf("bend at %v towards %v", m.BendAt, m.Toward)
	}
	near(t, "out of square", m.Axis.OutOfSquare(), length(math.Hypot(0.08, 0.04)), 1e-7)
	if got := m.Axis.Toward().In(units.Degree); math.Abs(got-(360-math.Atan2(1, 2)*180/math.Pi)) > 1e-3 {
		t.Errorf("leans towards %v°", got)
	}
	// Along the median line the generators run out by the taper, and bend as the wall does.
	p, err := w.Pair(m.Axis, degrees(120))
	near(t, "taper", must(t, p, err).Taper, length(-0.008), 1e-7)
	g, err := w.Generator(m.Axis, degrees(120))
	straight, err2 := form.StraightMinimumZone(must(t, g, err))
	near(t, "bent generator", must(t, straight, err2).STRt, length(0.009), 1e-6)
	bare, err := form.FromWallPoints(make([]form.WallPoint, 6))
	if err != nil {
		t.Fatal(err)
	}
	_, err = bare.MedianLine()
	refused(t, "median line of points", err, form.ErrPoints)
	_, err = bare.Generator(m.Axis, 0)
	refused(t, "generator of points", err, form.ErrPoints)
	_, err = w.Generator(m.Axis, units.Angle(math.NaN()))
	refused(t, "no angle", err, form.ErrAngles)
	_, err = w.Pair(form.Axis{}, 0)
	refused(t, "no axis", err, units.ErrRange)
	_, err = w.Generator(form.Square(form.Point{X: 41 * mm}), 0)
	refused(t, "axis outside", err, form.ErrAngles)
}

// Seen square to the deck the clean-up is that of the points from above; along a leaning axis it is that
// of the points turned upright, and no smaller than the circumscribed cylinder.
func TestAlong(t *testing.T) {
	r := rand.New(rand.NewPCG(7, 7))
	ps := boreWall(r, 5, 16, 36, 90, 0.02)
	w := wallOf(t, ps)
	at := form.Point{X: 200 * um, Y: -300 * um}
	tr, err := w.Along(form.Square(at))
	var x, y []float64
	largest := 0.0
	for _, p := range ps {
		x, y = append(x, p[0]), append(y, p[1])
		largest = max(largest, math.Hypot(p[0]-0.2, p[1]+0.3))
	}
	above := traceOf(t, x, y)
	a, err2 := above.MinimumCircumscribed()
	b, err3 := must(t, tr, err).MinimumCircumscribed()
	near(t, "square", must(t, b, err3).Radius, must(t, a, err2).Radius, 3e-9)
	near(t, "centre x", b.Centre.X, a.Centre.X-at.X, 3e-9)
	near(t, "centre y", b.Centre.Y, a.Centre.Y-at.Y, 3e-9)
	c, err := bore.CleanUpRadial(tr.Radial(0), 0, bore.Allowances{})
	must(t, c, err)
	near(t, "about the axis", c.Original.Min.Value, length(2*largest), 2e-6) // rounded up to a nanometre
	near(t, "centre free", c.Worn.Min.Value, 2*a.Radius, 2e-6)

	mcc, err := w.Cylindricity(form.MCCY)
	along, err2 := w.Along(must(t, mcc, err).Axis)
	free, err3 := must(t, along, err2).MinimumCircumscribed()
	near(t, "along its own axis", must(t, free, err3).Radius, mcc.Radius, 4e-9)
	if b.Radius < mcc.Radius {
		t.Errorf("square to the deck %v does, and %v with the axis free", b.Radius, mcc.Radius)
	}
	back := form.Axis{From: mcc.Axis.To, To: mcc.Axis.From}
	turned, err := w.Along(back)
	again, err2 := must(t, turned, err).MinimumCircumscribed()
	near(t, "the other way", must(t, again, err2).Radius, mcc.Radius, 4e-9)
	_, err = w.Along(form.Axis{})
	refused(t, "no axis", err, units.ErrRange)
}

func TestConesRefused(t *testing.T) {
	var level, line, few [][3]float64
	for i := range 40 {
		s, c := math.Sincos(float64(i))
		level = append(level, [3]float64{35 * c, 35 * s, 7})
		line = append(line, [3]float64{35, 0, float64(i)})
		if i < 6 {
			few = append(few, [3]float64{35 * c, 35 * s, float64(i * i)})
		}
	}
	for name, c := range map[string]struct {
		points [][3]float64
		want   error
	}{"one level": {level, form.ErrArc}, "one generator": {line, form.ErrArc}, "six points": {few, form.ErrPoints}} {
		_, err := wallOf(t, c.points).Cone()
		refused(t, name, err, c.want)
	}
}

// Straightness of two constructed lines: exact fractions.
func TestStraightnessOfTwoLines(t *testing.T) {
	for _, c := range []struct {
		depth, step                           float64
		deviation                             []float64
		slope, total, peak, valley, rms, zone float64
		zoneSlope                             float64
	}{
		{5, 10, []float64{12, 9, 7, 6, 6, 5, 3, 4, 0}, -3. / 25, 3, 82. / 45, 53. / 45, 1.0086049527, 17. / 6, -7. / 60},
		{10, 10, []float64{0, 2, 5, 4, 6, 6, 3, 1, 2, -1}, -16. / 825, 230. / 33, 544. / 165, 202. / 55, 2.24715308106, 59. / 9, -1. / 90},
	} {
		var ps []form.LinePoint
		for i, d := range c.deviation {
			ps = append(ps, form.LinePoint{Depth: length(c.depth + c.step*float64(i)), Deviation: length(d)})
		}
		l, err := form.StraightLeastSquares(ps)
		z, err2 := form.StraightMinimumZone(ps)
		if must(t, l, err); math.Abs(l.Slope-c.slope) > 1e-12 || math.Abs(must(t, z, err2).Slope-c.zoneSlope) > 1e-12 {
			t.Errorf("slopes %v, %v, want %v, %v", l.Slope, z.Slope, c.slope, c.zoneSlope)
		}
		near(t, "STRt", l.STRt, length(c.total), 1e-9)
		near(t, "STRp", l.STRp, length(c.peak), 1e-9)
		near(t, "STRv", l.STRv, length(c.valley), 1e-9)
		near(t, "STRq", l.STRq, length(c.rms), 1e-9)
		near(t, "zone", z.STRt, length(c.zone), 1e-9)
	}
}
