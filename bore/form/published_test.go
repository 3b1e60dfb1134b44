// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// sets are the NIST circle sets, in the plane in which each lies.
func sets(t *testing.T) (rows []map[string]string, traces map[string]form.Trace) {
	t.Helper()
	rows, traces = table(t, "nist_circle_expected.csv"), map[string]form.Trace{}
	points := table(t, "nist_circle_points.csv")
	for _, row := range rows {
		var x, y []float64
		for _, p := range points {
			if p["set"] == row["set"] {
				u, v := plane(row)
				x, y = append(x, number(t, p[u])), append(y, number(t, p[v]))
			}
		}
		traces[row["set"]] = traceOf(t, x, y)
	}
	return rows, traces
}

// plane names the two coordinates that vary.
func plane(row map[string]string) (u, v string) {
	uv := strings.ReplaceAll("xyz", row["normal_axis"], "")
	return uv[:1], uv[1:]
}

// Certified least-squares circles of the NIST algorithm testing service, 3 to 111 points on full
// circles and arcs, to the digits given; roundness about them computed from the points.
func TestCertifiedLeastSquares(t *testing.T) {
	rows, traces := sets(t)
	if len(rows) != 17 {
		t.Fatalf("%d sets", len(rows))
	}
	for _, row := range rows {
		c, err := traces[row["set"]].LeastSquares()
		if err != nil {
			t.Errorf("%s: %v", row["set"], err)
			continue
		}
		u, v := plane(row)
		want := func(key string) units.Length { return length(number(t, row[key])) }
		near(t, row["set"]+" x", c.Centre.X, want("lsc_"+u), 1e-8)
		near(t, row["set"]+" y", c.Centre.Y, want("lsc_"+v), 1e-8)
		near(t, row["set"]+" diameter", 2*c.Radius, want("lsc_diameter"), 1e-8)
		near(t, row["set"]+" RONt", c.RONt, want("RONt_ls"), 1e-8)
		near(t, row["set"]+" RONv", c.RONv, want("RONp_ls"), 1e-8) // of a shaft in the file
		near(t, row["set"]+" RONp", c.RONp, want("RONv_ls"), 1e-8)
		near(t, row["set"]+" RONq", c.RONq, want("RONq_ls"), 1e-8)
		if c.RONp+c.RONv != c.RONt || c.Outer-c.Inner != c.RONt {
			t.Errorf("%s: RONt %v of %v and %v", row["set"], c.RONt, c.RONp, c.RONv)
		}
	}
}

// Minimax circles of the same sets: exhaustive search, contact equations in 40 digits. Set cir2d19
// has two maxima of the inscribed circle, 1.04 nm apart; cir2d11 has a form of 5 nm.
func TestMinimaxOfCertifiedSets(t *testing.T) {
	rows, traces := sets(t)
	checked := 0
	for _, row := range rows {
		if row["mz_zone"] == "" {
			continue
		}
		checked++
		check := func(kind form.Reference, prefix string, radius func(form.Circle) units.Length, want, width string) {
			c, err := solvers[kind](traces[row["set"]])
			what := row["set"] + " " + kind.String()
			if err != nil {
				t.Errorf("%s: %v", what, err)
				return
			}
			near(t, what+" radius", radius(c), length(number(t, row[want])), 1e-9)
			near(t, what+" x", c.Centre.X, length(number(t, row[prefix+"_u"])), 2e-9)
			near(t, what+" y", c.Centre.Y, length(number(t, row[prefix+"_v"])), 2e-9)
			near(t, what+" RONt", c.RONt, length(number(t, row[width])), 1e-9)
			var got []int
			for _, p := range c.Certificate.Contacts() {
				got = append(got, p.Index+1)
			}
			var wanted []int
			for _, f := range strings.Fields(row[prefix+"_pts"]) {
				wanted = append(wanted, int(number(t, f)))
			}
			slices.Sort(got)
			slices.Sort(wanted)
			if !slices.Equal(got, wanted) {
				t.Errorf("%s: contacts %v, want %v", what, got, wanted)
			}
			if c.Certificate.Bound != 0 {
				t.Errorf("%s: another might be better by %v", what, c.Certificate.Bound)
			}
			if err := faults(c, traces[row["set"]]); err != nil {
				t.Errorf("%s: %v", what, err)
			}
		}
		check(form.MZCI, "mz", func(c form.Circle) units.Length { return c.Outer }, "mz_rout", "mz_zone")
		check(form.MZCI, "mz", func(c form.Circle) units.Length { return c.Inner }, "mz_rin", "mz_zone")
		check(form.MCCI, "mc", func(c form.Circle) units.Length { return c.Radius }, "mc_r", "mc_width")
		check(form.MICI, "mi", func(c form.Circle) units.Length { return c.Radius }, "mi_r", "mi_width")
	}
	if checked != 10 {
		t.Errorf("%d sets checked", checked)
	}
}

// Two data sets published with a minimum-zone roundness paper, one of them wild: points that fill
// an annulus, with 64 local maxima of the inscribed circle. Answers computed by exhaustive search.
func TestPublishedTraces(t *testing.T) {
	for _, want := range []struct {
		file                 string
		lsX, lsY, lsR        float64
		zone, mccR, miciR    float64
		zoneX, zoneY         float64
		mccX, mccY           float64
		outer, inner, around []int // contacts from 0: of the zone, and of the circumscribed circle
	}{
		{file: "roundness_24.csv", lsX: 82.9897488997866, lsY: 97.0091154166779, lsR: 30.0268204727079,
			zone: 0.0382309439815694, zoneX: 82.9909410494445, zoneY: 97.0083872670614, outer: []int{7, 19}, inner: []int{0, 15},
			mccR: 30.048841857882, mccX: 82.9907, mccY: 97.0081, around: []int{7, 19}, miciR: 30.0116951721019},
		{file: "roundness_100_annulus.csv", lsX: 0.0290947198902, lsY: -0.0063282016707, lsR: 1.41265112820,
			zone: 0.957419945646387, zoneX: 0.00534670730880, zoneY: 0.00790905914993, mccR: 1.96410943841679, miciR: 1.01428878115936},
	} {
		x, y := points(t, want.file)
		tr := traceOf(t, x, y)
		c, err := tr.LeastSquares()
		must(t, c, err)
		near(t, want.file+" LSCI x", c.Centre.X, length(want.lsX), 1e-9)
		near(t, want.file+" LSCI y", c.Centre.Y, length(want.lsY), 1e-9)
		near(t, want.file+" LSCI", c.Radius, length(want.lsR), 1e-9)
		z, err := tr.MinimumZone()
		must(t, z, err)
		near(t, want.file+" MZCI", z.RONt, length(want.zone), 1e-9)
		near(t, want.file+" MZCI x", z.Centre.X, length(want.zoneX), 1e-9)
		near(t, want.file+" MZCI y", z.Centre.Y, length(want.zoneY), 1e-9)
		around, err := tr.MinimumCircumscribed()
		must(t, around, err)
		near(t, want.file+" MCCI", around.Radius, length(want.mccR), 1e-9)
		in, err := tr.MaximumInscribed()
		must(t, in, err)
		near(t, want.file+" MICI", in.Radius, length(want.miciR), 1e-9)
		for _, c := range []form.Circle{z, around, in} {
			if err := faults(c, tr); err != nil || c.Certificate.Bound != 0 {
				t.Errorf("%s %v: bound %v, %v", want.file, c.Reference, c.Certificate.Bound, err)
			}
		}
		if want.outer == nil {
			continue
		}
		for _, w := range []struct {
			got   []form.Contact
			outer bool
			want  []int
		}{{z.Certificate.Contacts(), true, want.outer}, {z.Certificate.Contacts(), false, want.inner}, {around.Certificate.Contacts(), true, want.around}} {
			var got []int
			for _, p := range w.got {
				if p.Outer == w.outer {
					got = append(got, p.Index)
				}
			}
			slices.Sort(got)
			if !slices.Equal(got, w.want) {
				t.Errorf("%s: contacts %v, want %v", want.file, got, w.want)
			}
		}
		near(t, "two-point circle x", around.Centre.X, length(want.mccX), 0)
		near(t, "two-point circle y", around.Centre.Y, length(want.mccY), 0)
		near(t, "two-point circle RONt", around.RONt, length(0.0385556366544), 1e-9)
	}
}

// Six points far from any circle: the geometric fit of Gander, Golub and Strebel, BIT 34 (1994)
// 558-578 (printed 4.7398, 2.9835, 4.7142; further digits computed with 40). Their circumscribed
// circle is exact.
func TestGeometricFit(t *testing.T) {
	tr := traceOf(t, []float64{1, 2, 5, 7, 9, 3}, []float64{7, 6, 8, 7, 5, 7})
	c, err := tr.LeastSquares()
	must(t, c, err)
	near(t, "x", c.Centre.X, length(4.739782410906074), 1e-9)
	near(t, "y", c.Centre.Y, length(2.983532699292475), 1e-9)
	near(t, "radius", c.Radius, length(4.714226037792110), 1e-9)
	around, err := tr.MinimumCircumscribed()
	must(t, around, err)
	near(t, "circumscribed", around.Radius, length(math.Sqrt(17)), 0)
	if around.Centre != (form.Point{X: 5 * mm, Y: 6 * mm}) {
		t.Errorf("circumscribed about %v", around.Centre)
	}
	var got []int
	for _, p := range around.Certificate.Contacts() {
		got = append(got, p.Index)
	}
	if slices.Sort(got); !slices.Equal(got, []int{0, 4}) {
		t.Errorf("contacts %v", got)
	}
}

// Straightness of nine invented points: exact fractions.
func TestStraightnessFractions(t *testing.T) {
	var ps []form.LinePoint
	for i, d := range []int{0, 3, 5, 4, 7, 2, 1, -2, -1} {
		ps = append(ps, form.LinePoint{Depth: units.Length(25*i) * mm, Deviation: units.Length(d) * mm})
	}
	l, err := form.StraightLeastSquares(ps)
	must(t, l, err)
	if math.Abs(l.Slope+29./1500) > 1e-15 {
		t.Errorf("slope %v", l.Slope)
	}
	near(t, "STRt", l.STRt, length(8.9333333333), 1e-10)
	near(t, "STRp", l.STRp, length(4.8888888889), 1e-10)
	near(t, "STRv", l.STRv, length(4.0444444444), 1e-10)
	near(t, "STRq", l.STRq, length(2.4691929006), 1e-10)
	z, err := form.StraightMinimumZone(ps)
	must(t, z, err)
	near(t, "minimum zone", z.STRt, length(57./7), 0)
	if math.Abs(z.Slope+2./175) > 1e-15 {
		t.Errorf("slope %v", z.Slope)
	}
	if c := z.Contacts; c[0].Index+c[1].Index != 7 || c[0].Outer || c[1].Outer || c[2].Index != 4 || !c[2].Outer {
		t.Errorf("contacts %v", c)
	}
}

// Vee-blocks magnify lobes by 1 + cos(n·(90° + a/2))/sin(a/2) (J. Japan Soc. Precision Eng. 43-514
// (1977) 1167, abstract; values computed), two anvils by 1 + cos 180°n (idea of ISO 4292).
func TestMagnification(t *testing.T) {
	vee := func(deg float64) form.Setup {
		s, err := form.Vee(degrees(deg))
		return must(t, s, err)
	}
	for _, c := range []struct {
		name  string
		setup form.Setup
		want  [9]float64 // orders 2 to 10
	}{
		{"vee 60°", vee(60), [9]float64{0, 3, 0, 0, 3, 0, 0, 3, 0}},
		{"vee 90°", vee(90), [9]float64{1, 2, -0.4142135624, 2, 1, 0, 2.4142135624, 0, 1}},
		{"vee 120°", vee(120), [9]float64{1.5773502692, 1, 0.4226497308, 2, -0.1547005384, 2, 0.4226497308, 1, 1.5773502692}},
		{"two points", form.TwoPoint(), [9]float64{2, 0, 2, 0, 2, 0, 2, 0, 2}},
		{"three points", form.ThreePoint(), [9]float64{0, 2, 0, 0, 2, 0, 0, 2, 0}},
	} {
		for k, want := range c.want {
			if got := c.setup.Factor(k + 2); math.Abs(got-want) > 6e-11 {
				t.Errorf("%s, order %d: %v, want %v", c.name, k+2, got, want)
			}
		}
	}
	for order := 1; order <= 30; order++ { // three anvils: every third order, of the even ones every sixth
		want := 0.
		if order%3 == 0 {
			want = 2
		}
		if got := form.ThreePoint().Factor(order); math.Abs(got-want) > 1e-12 {
			t.Errorf("three points, order %d: %v, want %v", order, got, want)
		}
	}
}

// lobed is r = 43.75 + 0.010 cos 2(t − 20°) + 0.006 cos 3t + 0.003 cos 4(t − 10°) + 0.002 cos 5t mm.
func lobed(t float64) float64 {
	return 43.75 + 0.010*math.Cos(2*(t-20*math.Pi/180)) + 0.006*math.Cos(3*t) + 0.003*math.Cos(4*(t-10*math.Pi/180)) + 0.002*math.Cos(5*t)
}

func round(t failer, n int, r func(float64) float64) form.Trace {
	t.Helper()
	rs := make([]units.Length, n)
	for i := range rs {
		rs[i] = length(r(2 * math.Pi * float64(i) / float64(n)))
	}
	tr, err := form.FromRadii(rs)
	return must(t, tr, err)
}

// Diameters of an invented form of four lobes: computed. Two axes at right angles understate what
// more axes show, and odd lobes vanish.
func TestDiametersOfALobedForm(t *testing.T) {
	tr := round(t, 360, lobed)
	for _, c := range []struct {
		axes   int
		spread float64
		ds     []float64
	}{
		{2, 0.0306417777, nil},
		{4, 0.0373691744, []float64{87.5199171555, 87.5082594855, 87.4892753778, 87.4825479811}},
		{6, 0.0376691189, nil},
		{12, 0.0430862741, nil},
	} {
		var axes []units.Angle
		for i := range c.axes {
			axes = append(axes, degrees(180*float64(i)/float64(c.axes)))
		}
		rs, err := tr.Readings(10*mm, form.Point{}, axes)
		must(t, rs, err)
		least, most := units.MaxLength, units.Length(0)
		for i, r := range rs {
			least, most = min(least, r.Diameter), max(most, r.Diameter)
			if c.ds != nil {
				near(t, fmt.Sprint("axis ", i), r.Diameter, length(c.ds[i]), 1e-9)
			}
			if r.Depth != 10*mm || units.Angle(r.Axis) != axes[i] {
				t.Errorf("reading %v", r)
			}
		}
		near(t, fmt.Sprint(c.axes, " axes"), most-least, length(c.spread), 2e-9)
	}
}

// The chord of an ellipse of semi-axes 43.775 and 43.725 mm through its centre: closed form, computed.
func TestChordsOfAnEllipse(t *testing.T) {
	const a, b = 43.775, 43.725
	tr := round(t, 720, func(at float64) float64 {
		s, c := math.Sincos(at)
		return a * b / math.Sqrt(b*b*c*c+a*a*s*s)
	})
	want := map[float64]float64{0: 87.55, 15: 87.5432905470609, 30: 87.5249678418352, 45: 87.4999571428653, 60: 87.4749678724474, 90: 87.45}
	for at, d := range want {
		ds, err := form.TwoPoint().Read(tr, form.Point{}, []units.Angle{degrees(at)})
		near(t, fmt.Sprint(at, "°"), must(t, ds, err)[0], length(d), 1e-9)
	}
}

// The lobes of the same form, from 36 equal angles.
func TestHarmonicsOfALobedForm(t *testing.T) {
	mean, hs, err := round(t, 36, lobed).Harmonics(form.Point{}, 6)
	must(t, hs, err)
	near(t, "mean", mean, length(43.75), 0)
	for k, want := range []struct{ amplitude, phase float64 }{{}, {0.010, 20}, {0.006, 0}, {0.003, 10}, {0.002, 0}, {}} {
		near(t, fmt.Sprint("order ", k+1), hs[k].Amplitude, length(want.amplitude), 0)
		period := 360 / float64(k+1)
		if d := math.Remainder(hs[k].Phase.In(units.Degree)-want.phase, period); want.amplitude > 0 && math.Abs(d) > 2e-5 {
			t.Errorf("order %d: at %v", k+1, hs[k].Phase)
		}
	}
}

// The Reuleaux triangle of width 1 m (Barbier's theorem): every diameter is one, and still it is
// out of round by 0.1547 m.
func TestReuleaux(t *testing.T) {
	var x, y []float64
	for corner := range 3 {
		a := 2 * math.Pi * float64(corner) / 3
		cx, cy := 1000/math.Sqrt(3)*math.Cos(a), 1000/math.Sqrt(3)*math.Sin(a)
		for i := range 120 { // the arc about this corner, opposite it
			b := a + math.Pi + (float64(i)/120-0.5)*math.Pi/3
			x, y = append(x, cx+1000*math.Cos(b)), append(y, cy+1000*math.Sin(b))
		}
	}
	tr := traceOf(t, x, y)
	z, err := tr.MinimumZone()
	must(t, z, err)
	near(t, "out of roundness", z.RONt, length(154.700538379252), 1e-9)
	in, err := tr.MaximumInscribed()
	must(t, in, err)
	near(t, "inscribed", in.Radius, length(422.649730810374), 1e-9)
	around, err := tr.MinimumCircumscribed()
	must(t, around, err)
	near(t, "circumscribed", around.Radius, length(577.350269189626), 1e-9)
}

// A true circle of 43.75 mm set up 0.05 mm off the spindle, 36 equal angles: computed. The mean of
// the radii is not the radius, and order 1 leaves e²/(2R) behind.
func TestLimacon(t *testing.T) {
	const e, radius = 0.05, 43.75
	tr := round(t, 36, func(a float64) float64 {
		return e*math.Cos(a) + math.Sqrt(radius*radius-e*e*math.Sin(a)*math.Sin(a))
	})
	mean, hs, err := tr.Harmonics(form.Point{}, 2)
	must(t, hs, err)
	near(t, "mean radius", mean, length(43.7499857142822), 1e-9)
	near(t, "eccentricity", hs[0].Amplitude, 50*um, 0)
	if hs[0].Phase != 0 {
		t.Errorf("towards %v", hs[0].Phase)
	}
	near(t, "two lobes", 2*hs[1].Amplitude, length(2.85714379e-5), 1e-9)
	c, err := tr.LeastSquares()
	must(t, c, err)
	near(t, "centre", c.Centre.X, 50*um, 1e-9)
	near(t, "radius", c.Radius, length(radius), 1e-9)
	near(t, "RONt about the circle itself", c.RONt, 0, 2e-9)
}
