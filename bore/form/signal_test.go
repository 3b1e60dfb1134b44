// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mat"
	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
)

// radii reads the radii of a trace back.
func radii(tr form.Trace) []units.Length {
	var rs []units.Length
	for _, p := range tr.Radial(0) {
		rs = append(rs, p.Radius)
	}
	return rs
}

func drawRadii(t *rapid.T, least, most int) []units.Length {
	rs := rapid.SliceOfN(rapid.Int64Range(-50_000_000, 50_000_000), least, most).Draw(t, "off")
	out := make([]units.Length, len(rs))
	for i, r := range rs {
		out[i] = 33_500*um + units.Length(r)
	}
	return out
}

// Radii come back as they went in, at their angles, and the caller's slices are left alone.
func TestTracesKeepTheirPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawRadii(t, 3, 50)
		before := slices.Clone(rs)
		tr, err := form.FromRadii(rs)
		must(t, tr, err)
		ps := tr.Radial(7 * mm)
		rs[0] = 1
		for i, p := range ps {
			want := 2 * math.Pi * float64(i) / float64(len(ps))
			if d := math.Remainder(float64(p.Angle)-want, 2*math.Pi); p.Radius != before[i] || p.Depth != 7*mm || math.Abs(d) > 1e-12 {
				t.Fatalf("point %d: %v", i, p)
			}
		}
		back, err := form.FromPolar(ps)
		must(t, back, err)
		for i, p := range back.Radial(7 * mm) {
			if p.Radius != ps[i].Radius || math.Abs(float64(p.Angle-ps[i].Angle)) > 1e-15*2*math.Pi {
				t.Fatalf("there and back: %v, %v", p, ps[i])
			}
		}
		again, err := form.FromPoints(nil)
		if err == nil || again.Len() != 0 {
			t.Fatal(again, err)
		}
		for i := range ps { // from a quarter turn before, so that they increase
			ps[i].Angle = units.Angle(2*math.Pi*float64(i)/float64(len(ps)) - 1)
		}
		kept := slices.Clone(ps)
		polar, err := form.FromPolar(ps)
		must(t, polar, err)
		if !slices.Equal(ps, kept) || polar.Len() != len(ps) {
			t.Fatal("changed")
		}
		a, err := tr.LeastSquares()
		must(t, a, err)
		b, err := polar.LeastSquares()
		must(t, b, err)
		if (a.Radius-b.Radius).Abs() > 1 || (a.RONt-b.RONt).Abs() > 3 {
			t.Fatalf("turned: %v and %v", a, b)
		}
	})
}

// The filter passes each order with exp(−ln 2·(k/kc)²), whatever else there is, keeps the mean and
// is linear.
func TestFilterPassesOrders(t *testing.T) {
	for _, n := range []int{16, 17, 100, 361, 720} {
		for _, cutoff := range []int{1, 5, 15, 50} {
			if 2*cutoff >= n {
				continue
			}
			for _, order := range []int{0, 1, 2, 3, cutoff, 2 * cutoff, n/2 - 1, n / 2} {
				if order > n/2 {
					continue
				}
				wave := func(a float64) float64 { return 0.010 * math.Cos(float64(order)*a) }
				tr := round(t, n, func(a float64) float64 { return 33.5 + wave(a) })
				f, err := tr.Filter(cutoff)
				must(t, f, err)
				q := float64(order) / float64(cutoff)
				for i, r := range radii(f) {
					want := 33.5 + math.Exp(-math.Ln2*q*q)*wave(2*math.Pi*float64(i)/float64(n))
					near(t, fmt.Sprintf("%d points, cut-off %d, order %d, point %d", n, cutoff, order, i), r, length(want), 1e-9)
				}
			}
		}
	}
}

// Where a trace begins does not matter to the filter.
func TestFilterOfPolarPoints(t *testing.T) {
	ps := turned().Radial(0)
	for i := range ps {
		ps[i].Angle = degrees(10*float64(i) + 77)
	}
	a, err := form.FromPolar(ps)
	must(t, a, err)
	fa, err := a.Filter(5)
	must(t, fa, err)
	fb, err := turned().Filter(5)
	must(t, fb, err)
	for i, r := range radii(fb) { // point i is at 10·i + 77 degrees in a, where it begins at 7 degrees with point 29
		near(t, fmt.Sprint(i), radii(fa)[(i+7)%36], r, 0)
	}
	for i := 1; i < 36; i++ {
		if as := a.Radial(0); as[0].Angle > degrees(7.001) || as[i].Angle <= as[i-1].Angle {
			t.Errorf("angles %v and %v", as[i-1].Angle, as[i].Angle)
		}
	}
	ps[7].Angle += 1e-6
	a, err = form.FromPolar(ps)
	must(t, a, err)
	_, err = a.Filter(5)
	refused(t, "uneven angles", err, form.ErrAngles)
}

func TestFilterIsLinear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(8, 60).Draw(t, "n")
		cutoff := rapid.IntRange(1, (n-1)/2).Draw(t, "cutoff")
		a, b := drawRadii(t, n, n), drawRadii(t, n, n)
		sum := make([]units.Length, n)
		for i := range sum {
			sum[i] = a[i] + b[i]
		}
		filter := func(rs []units.Length) []units.Length {
			tr, err := form.FromRadii(rs)
			must(t, tr, err)
			f, err := tr.Filter(cutoff)
			return radii(must(t, f, err))
		}
		fa, fb, fs := filter(a), filter(b), filter(sum)
		var before, after units.Length
		for i := range fs {
			if (fs[i] - fa[i] - fb[i]).Abs() > 3 {
				t.Fatalf("point %d: %v + %v gives %v", i, fa[i], fb[i], fs[i])
			}
			before, after = before+sum[i], after+fs[i]
		}
		if (before - after).Abs() > units.Length(n) {
			t.Fatalf("mean moved by %v", (after-before)/units.Length(n))
		}
	})
}

// What the filter does to a true circle off the spindle: the centre comes nearer, and the circle
// bends. Numbers of the documentation, computed from the circle's own centre.
func TestFilterBendsAnOffCentreCircle(t *testing.T) {
	off := func(e float64, cutoff int) form.Circle {
		tr := round(t, 720, func(a float64) float64 {
			return e*math.Cos(a) + math.Sqrt(1600-e*e*math.Sin(a)*math.Sin(a))
		})
		f, err := tr.Filter(cutoff)
		must(t, f, err)
		c, err := f.LeastSquares()
		return must(t, c, err)
	}
	c := off(2, 15)
	near(t, "centre, 15 UPR", 2*mm-c.Centre.X, 6200*nm, 50e-6)
	near(t, "radius, 15 UPR", 40*mm-c.Radius, 150*nm, 5e-6)
	near(t, "RONt, 15 UPR", c.RONt, 310*nm, 5e-6)
	near(t, "RONt, 0.1 mm off", off(0.1, 15).RONt, 800*pm, 50e-9)
	near(t, "centre, 1 UPR", off(2, 1).Centre.X, mm, 1e-3)
}

// Set-ups that stand off the centre of a true circle, 1 mm in 40 mm: two anvils read up to e²/r too
// little, three e²/(2r), and a vee moves by Factor(2)·e²/(2r).
func TestSetupsOffCentre(t *testing.T) {
	tr := round(t, 3600, func(float64) float64 { return 40 })
	var axes []units.Angle
	for i := range 72 {
		axes = append(axes, degrees(5*float64(i)))
	}
	read := func(s form.Setup, err error) (least, most units.Length) {
		ds, readErr := must(t, s, err).Read(tr, form.Point{X: mm}, axes)
		return slices.Min(must(t, ds, readErr)), slices.Max(ds)
	}
	const tolerance = 0.1e-3 // terms of higher order, e⁴/r³, and the chords between points
	least, most := read(form.TwoPoint(), nil)
	near(t, "two anvils, least", 80*mm-least, 25*um, tolerance)
	near(t, "two anvils, most", 80*mm-most, 0, tolerance)
	least, most = read(form.ThreePoint(), nil)
	near(t, "three anvils, least", 80*mm-least, length(0.0125), tolerance)
	near(t, "three anvils, most", 80*mm-most, length(0.0125), tolerance)
	for _, deg := range []float64{60, 90, 120} {
		vee, err := form.Vee(degrees(deg))
		least, most = read(vee, err)
		near(t, fmt.Sprint("vee ", deg), most-least, length(vee.Factor(2)/80), tolerance)
	}
}

// What goes in as harmonics comes out as harmonics, at uneven angles too.
func TestHarmonicsComeBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.IntRange(1, 9).Draw(t, "most")
		n := rapid.IntRange(2*most+1, 60).Draw(t, "n")
		amplitude := rapid.SliceOfN(rapid.Float64Range(0.0005, 0.02), most, most).Draw(t, "amplitude")
		phase := rapid.SliceOfN(rapid.Float64Range(0.01, 0.99), most, most).Draw(t, "phase")
		ps := make([]bore.Point, n)
		for i := range ps {
			a := 2 * math.Pi * (float64(i) + rapid.Float64Range(0, 0.4).Draw(t, "jitter")) / float64(n)
			r := 43.75
			for k, x := range amplitude {
				r += x * math.Cos(float64(k+1)*a-2*math.Pi*phase[k])
			}
			ps[i] = bore.Point{Angle: units.Angle(a), Radius: length(r)}
		}
		tr, err := form.FromPolar(ps)
		must(t, tr, err)
		mean, hs, err := tr.Harmonics(form.Point{}, most)
		must(t, hs, err)
		tolerance := units.Length(200) // picometres in, over how well so few angles carry so many orders
		if (mean - length(43.75)).Abs() > tolerance {
			t.Fatalf("mean %v", mean)
		}
		for k, h := range hs {
			turn := float64(h.Phase) * float64(k+1) / (2 * math.Pi)
			if h.Order != k+1 || (h.Amplitude-length(amplitude[k])).Abs() > tolerance || math.Abs(turn-phase[k]) > 1e-5 {
				t.Fatalf("order %d: %v of %v, %v of %v turns", k+1, h.Amplitude, amplitude[k], turn, phase[k])
			}
		}
	})
}

// A gauge reads of one lobe its factor times the lobe, wherever it stands: the factors and the
// readings are two ways to one number. Three anvils and vees look at symmetric places, so nothing
// is shifted.
func TestReadingsFollowFactors(t *testing.T) {
	vee, err := form.Vee(90 * units.Degree)
	must(t, vee, err)
	for name, setup := range map[string]form.Setup{"two": form.TwoPoint(), "three": form.ThreePoint(), "vee": vee} {
		for order := 2; order <= 9; order++ {
			tr := round(t, 720, func(a float64) float64 { return 40 + 0.01*math.Cos(float64(order)*a) })
			axes := []units.Angle{0, 45 * units.Degree, 100 * units.Degree, -30 * units.Degree, 725 * units.Degree}
			got, err := setup.Read(tr, form.Point{}, axes)
			must(t, got, err)
			plain, err := setup.Read(round(t, 720, func(float64) float64 { return 40 }), form.Point{}, axes)
			must(t, plain, err)
			for i, a := range axes {
				want := 0.01 * setup.Factor(order) * math.Cos(float64(order)*float64(a))
				near(t, fmt.Sprint(name, " order ", order, " at ", a), got[i]-plain[i], length(want), 2e-9)
			}
		}
	}
	if form.TwoPoint().Factor(0) != 0 || form.TwoPoint().Factor(-2) != 0 {
		t.Error("orders below 1")
	}
}

// Between points the radius runs evenly with the angle.
func TestReadingsBetweenPoints(t *testing.T) {
	tr := round(t, 8, func(a float64) float64 { return 40 + math.Round(a/(math.Pi/4))*0.008 })
	ds, err := form.TwoPoint().Read(tr, form.Point{}, []units.Angle{degrees(22.5), degrees(11.25), degrees(-22.5)})
	must(t, ds, err)
	for i, want := range []float64{80 + 0.004 + 0.036, 80 + 0.002 + 0.034, 80 + (0.056+0)/2 + 0.028} {
		near(t, fmt.Sprint(i), ds[i], length(want), 0)
	}
}

// What bore makes of the readings of a trace is what the trace's own harmonics say.
func TestBoreMeasuresTheTrace(t *testing.T) {
	tr := round(t, 720, lobed) // a point on every axis read
	var axes []units.Angle
	for i := range 8 {
		axes = append(axes, degrees(22.5*float64(i)))
	}
	rs, err := tr.Readings(10*mm, form.Point{}, axes)
	must(t, rs, err)
	g, err := bore.Analyse(rs, bore.Gauge{})
	must(t, g, err)
	_, hs, err := tr.Harmonics(form.Point{}, 5)
	must(t, hs, err)
	got := g.Planes[0].Harmonics()
	for k, order := range []int{2, 4} {
		want := hs[order-1]
		if got[k].Order != order || (got[k].Amplitude-want.Amplitude).Abs() > nm || math.Abs(float64(got[k].Phase-want.Phase)) > 1e-5 {
			t.Errorf("%v, want %v", got[k], want)
		}
	}
}

// The clean-up that bore makes of the points is the circumscribed circle, and twice the largest
// radius.
func TestCleanUpOfTheTrace(t *testing.T) {
	tr := turned()
	around, err := tr.MinimumCircumscribed()
	must(t, around, err)
	c, err := bore.CleanUpRadial(tr.Radial(0), 0, bore.Allowances{})
	must(t, c, err)
	if got, want := c.Worn.Min.Value, (2 * around.Radius).Ceil(nm); got != want {
		t.Errorf("worn centre %v, want %v", got, want)
	}
	var largest units.Length
	for _, r := range radii(tr) {
		largest = max(largest, r)
	}
	if c.Original.Min.Value != 2*largest {
		t.Errorf("original centre %v, want %v", c.Original.Min.Value, 2*largest)
	}
}

// Straightness against every line through two points, and against normal equations by QR.
func TestStraightness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 10).Draw(t, "n")
		step := rapid.SampledFrom([]int64{1, 1e6, 1e9}).Draw(t, "grid")
		ps := make([]form.LinePoint, n)
		for i := range ps {
			ps[i] = form.LinePoint{Depth: units.Length(rapid.Int64Range(0, 100).Draw(t, "depth")) * mm, Deviation: units.Length(rapid.Int64Range(-20, 20).Draw(t, "d") * step)}
		}
		z, err := form.StraightMinimumZone(ps)
		flat := true
		for _, p := range ps {
			flat = flat && p.Depth == ps[0].Depth
		}
		if flat {
			if err == nil {
				t.Fatal("one depth")
			}
			return
		}
		must(t, z, err)
		best := math.Inf(1)
		for _, p := range ps {
			for _, q := range ps {
				if p.Depth == q.Depth {
					continue
				}
				slope := float64(p.Deviation-q.Deviation) / float64(p.Depth-q.Depth)
				least, most := math.Inf(1), math.Inf(-1)
				for _, r := range ps {
					d := float64(r.Deviation) - slope*float64(r.Depth)
					least, most = min(least, d), max(most, d)
				}
				best = min(best, most-least)
			}
		}
		if math.Abs(float64(z.STRt)-best) > 1+1e-6*best {
			t.Fatalf("zone %v, want %v pm", z.STRt, best)
		}
		// All points lie within half the zone of its middle line.
		for _, p := range ps {
			off := float64(p.Deviation-z.At.Deviation) - z.Slope*float64(p.Depth-z.At.Depth)
			if math.Abs(off) > float64(z.STRt)/2+2 {
				t.Fatalf("%v lies %v pm off the middle of a zone of %v", p, off, z.STRt)
			}
		}
		if err := z.Check(ps); err != nil {
			t.Fatal(err)
		}
		for what, spoil := range map[string]func(*form.Line){
			"narrower": func(l *form.Line) { l.STRt -= 5 },
			"moved":    func(l *form.Line) { l.At.Deviation += 5 },
			"weights":  func(l *form.Line) { l.Contacts[0].Weight -= 0.01; l.Contacts[1].Weight += 0.01 },
			"sides":    func(l *form.Line) { l.Contacts[2].Outer = !l.Contacts[2].Outer },
			"none":     func(l *form.Line) { l.Contacts = nil },
			"all one":  func(l *form.Line) { l.Contacts = make([]form.Contact, 3) },
			"STRq":     func(l *form.Line) { l.STRq = 1 },
		} {
			bad := z
			bad.Contacts = slices.Clone(z.Contacts)
			spoil(&bad)
			if err := bad.Check(ps); !errors.Is(err, form.ErrCertificate) {
				t.Fatalf("%s: %v", what, err)
			}
		}
		far := z
		far.Contacts = slices.Clone(z.Contacts)
		far.Contacts[1].Index = n
		if err := far.Check(ps); !errors.Is(err, form.ErrPoints) {
			t.Fatal(err)
		}
		l, err := form.StraightLeastSquares(ps)
		must(t, l, err)
		if l.Contacts != nil || !errors.Is(l.Check(ps), form.ErrCertificate) {
			t.Fatalf("least squares carried by %v, proved: %v", l.Contacts, l.Check(ps))
		}
		design, rhs := mat.NewDense(n, 2, nil), mat.NewVecDense(n, nil)
		for i, p := range ps {
			design.SetRow(i, []float64{1, (p.Depth - ps[0].Depth).In(mm)})
			rhs.SetVec(i, p.Deviation.In(mm))
		}
		var x mat.VecDense
		if err := x.SolveVec(design, rhs); err != nil {
			t.Fatal(err)
		}
		if math.Abs(l.Slope-x.AtVec(1)) > 1e-12 || math.Abs(l.At.Deviation.In(mm)-x.AtVec(0)) > 2e-9 || l.STRt < z.STRt-2 || l.STRt != l.STRp+l.STRv {
			t.Fatalf("%v, QR %v %v", l, x.AtVec(0), x.AtVec(1))
		}
	})
}

// A zone whose two sides both lie along an edge: four points of a parallelogram.
func TestStraightnessOfParallelogram(t *testing.T) {
	ps := []form.LinePoint{{Depth: 0, Deviation: -14}, {Depth: mm, Deviation: 1}, {Depth: 3 * mm, Deviation: 1}, {Depth: 2 * mm, Deviation: -14}}
	for range ps {
		z, err := form.StraightMinimumZone(ps)
		if err != nil || z.STRt != 15 || z.Slope != 0 {
			t.Errorf("%v: %+v, %v", ps, z, err)
		}
		ps = append(ps[1:], ps[0])
	}
}
