// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"cmp"
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// drawBore draws the points of a bore off its axis: lobes, wear and scatter, at even or uneven
// angles, in or out of order.
func drawBore(t *rapid.T, least, most int) []form.Point {
	n := rapid.IntRange(least, most).Draw(t, "n")
	radius := rapid.Float64Range(5, 200).Draw(t, "radius")
	depth := rapid.SampledFrom([]float64{1e-6, 1e-4, 0.01, 0.3}).Draw(t, "form")
	order := rapid.IntRange(2, 9).Draw(t, "lobes")
	jitter := rapid.Float64Range(0, 0.8).Draw(t, "jitter")
	ex, ey := rapid.Float64Range(-1, 1).Draw(t, "ex"), rapid.Float64Range(-1, 1).Draw(t, "ey")
	scatter := rapid.SliceOfN(rapid.Float64Range(-1, 1), n, n).Draw(t, "scatter")
	ps := make([]form.Point, n)
	for i := range ps {
		a := 2 * math.Pi * (float64(i) + jitter*scatter[n-1-i]/2) / float64(n)
		r := radius + depth*(math.Cos(float64(order)*a)+0.3*scatter[i])
		ps[i] = form.Point{X: length(ex + r*math.Cos(a)), Y: length(ey + r*math.Sin(a))}
	}
	if rapid.Bool().Draw(t, "shuffled") {
		ps = rapid.Permutation(ps).Draw(t, "order")
	}
	return ps
}

// drawWild draws points of no form at all, on a coarse grid so that many are equal, in line or on
// one circle.
func drawWild(t *rapid.T, least, most int) []form.Point {
	step := rapid.SampledFrom([]int{1, 1000}).Draw(t, "step")
	return rapid.SliceOfN(rapid.Custom(func(t *rapid.T) form.Point {
		x, y := rapid.IntRange(-5*step, 5*step).Draw(t, "x"), rapid.IntRange(-5*step, 5*step).Draw(t, "y")
		return form.Point{X: units.Length(x) * mm / units.Length(step), Y: units.Length(y) * mm / units.Length(step)}
	}), least, most).Draw(t, "points")
}

func trace(t failer, ps []form.Point) form.Trace {
	t.Helper()
	tr, err := form.FromPoints(ps)
	return must(t, tr, err)
}

func all(t failer, ps []form.Point) (ls, zone, around, in form.Circle) {
	t.Helper()
	tr := trace(t, ps)
	var err error
	if ls, err = tr.LeastSquares(); err != nil {
		t.Fatal(err)
	}
	if zone, err = tr.MinimumZone(); err != nil {
		t.Fatal(err)
	}
	if around, err = tr.MinimumCircumscribed(); err != nil {
		t.Fatal(err)
	}
	if in, err = tr.MaximumInscribed(); err != nil {
		t.Fatal(err)
	}
	return ls, zone, around, in
}

// The circles of a closed trace stand in order, each proves itself, and none of the others is a
// narrower zone.
func TestOrderOfCircles(t *testing.T) { rapid.Check(t, checkOrder) }

func checkOrder(t *rapid.T) {
	ps := drawBore(t, 8, 500)
	ls, zone, around, in := all(t, ps)
	if !closed(trace(t, ps), zone) {
		t.Fatal("a bore that is not closed")
	}
	if zone.Inner > in.Radius+2 || in.Radius > around.Radius || around.Radius > zone.Outer+2 {
		t.Fatalf("zone %v to %v, inscribed %v, circumscribed %v", zone.Inner, zone.Outer, in.Radius, around.Radius)
	}
	for _, c := range []form.Circle{ls, around, in} {
		if c.RONt < zone.RONt-2 {
			t.Fatalf("%v of %v is narrower than the zone of %v", c.Reference, c.RONt, zone.RONt)
		}
	}
	for _, c := range []form.Circle{zone, around, in} {
		if err := faults(c, trace(t, ps)); err != nil {
			t.Fatal(err)
		}
		if c.Certificate.Bound != 0 {
			t.Fatalf("%v: %+v", c.Reference, c.Certificate)
		}
	}
}

// closed reports whether the points surround the centre of the zone, none as far from the next as
// the inner circle is wide.
func closed(tr form.Trace, zone form.Circle) bool {
	x, y := tr.XY()
	origin := form.OriginOf(tr)
	cx, cy := (zone.Centre.X - origin.X).In(mm), (zone.Centre.Y - origin.Y).In(mm)
	order := make([]int, len(x))
	angle := func(i int) float64 { return math.Atan2(y[i]-cy, x[i]-cx) }
	for i := range order {
		order[i] = i
	}
	slices.SortFunc(order, func(a, b int) int { return cmp.Compare(angle(a), angle(b)) })
	for k, i := range order {
		j := order[(k+1)%len(order)]
		turn := math.Mod(angle(j)-angle(i)+2*math.Pi, 2*math.Pi)
		if turn >= math.Pi || math.Hypot(x[j]-x[i], y[j]-y[i]) >= 2*zone.Inner.In(mm) {
			return false
		}
	}
	return true
}

// gapped returns angles with no gap between neighbours wider than that given.
func gapped(r *rand.Rand, n int, widest float64) []float64 {
	as := make([]float64, n)
	for {
		for i := range as {
			as[i] = 2 * math.Pi * r.Float64()
		}
		slices.Sort(as)
		gap := as[0] + 2*math.Pi - as[n-1]
		for i := range n - 1 {
			gap = max(gap, as[i+1]-as[i])
		}
		if gap <= widest {
			return as
		}
	}
}

// Of wild traces, with points at most 85° apart about the origin, the closed ones have their circles
// in order; of the others there are some whose inner circle slips out, and is larger than MICI.
func TestOrderOfWildCircles(t *testing.T) {
	r := rand.New(rand.NewPCG(11, 3))
	var inOrder, slipped int
	for trial := range 2000 {
		n := 8 + r.IntN(5)
		x, y := make([]float64, n), make([]float64, n)
		for i, at := range gapped(r, n, 85*math.Pi/180) {
			s, c := math.Sincos(at)
			d := 40 * math.Exp([2]float64{0.3, 0.8}[trial%2]*r.NormFloat64())
			x[i], y[i] = d*c, d*s
		}
		tr := traceOf(t, x, y)
		zone, err := tr.MinimumZone()
		if err != nil {
			continue
		}
		in, err := tr.MaximumInscribed()
		if err != nil {
			continue
		}
		around, err := tr.MinimumCircumscribed()
		must(t, around, err)
		if in.Radius > around.Radius || around.Radius > zone.Outer+2 {
			t.Fatalf("zone %v to %v, inscribed %v, circumscribed %v", zone.Inner, zone.Outer, in.Radius, around.Radius)
		}
		switch isClosed := closed(tr, zone); {
		case isClosed && zone.Inner > in.Radius+2:
			t.Fatalf("closed: zone %v to %v, inscribed %v; %v %v", zone.Inner, zone.Outer, in.Radius, x, y)
		case isClosed:
			inOrder++
		case zone.Inner > in.Radius+2:
			slipped++
		}
	}
	if inOrder < 100 || slipped < 10 {
		t.Errorf("%d closed, %d slipped: not wild enough", inOrder, slipped)
	}
}

// A trace with a part missing proves itself as far as its points go round, and by search beyond.
func TestGaps(t *testing.T) { rapid.Check(t, checkGaps) }

func checkGaps(t *rapid.T) {
	ps := drawBore(t, 40, 120)
	gap := rapid.Float64Range(30, 175).Draw(t, "gap") * math.Pi / 180
	from := rapid.Float64Range(0, 2*math.Pi).Draw(t, "from")
	whole := trace(t, ps)
	c, err := whole.LeastSquares()
	must(t, c, err)
	ps = slices.DeleteFunc(ps, func(p form.Point) bool {
		a := math.Mod(math.Atan2(float64(p.Y-c.Centre.Y), float64(p.X-c.Centre.X))-from+4*math.Pi, 2*math.Pi)
		return a < gap
	})
	tr := trace(t, ps)
	for kind, solve := range solvers {
		c, err := solve(tr)
		if err != nil {
			if kind != form.MICI || gap < 2.2 { // through a wide gap a circle may slip out
				t.Fatalf("%v: %v", kind, err)
			}
			continue
		}
		if err := faults(c, tr); err != nil || c.Certificate.Bound != 0 {
			t.Fatalf("%v: bound %v, %v", kind, c.Certificate.Bound, err)
		}
	}
}

// sameForm compares two circles of traces that should have one form; a centre may move with the
// doubt that rounding to picometres leaves it, so it is not compared.
func sameForm(t *rapid.T, what string, a, b form.Circle, scale units.Length) {
	t.Helper()
	if d := (scale*a.Radius - b.Radius).Abs(); d > 3*scale+3 {
		t.Fatalf("%s, %v: radius %v and %v", what, a.Reference, a.Radius, b.Radius)
	}
	if d := (scale*a.RONt - b.RONt).Abs(); d > 4*scale+4 && a.Reference != form.MCCI && a.Reference != form.MICI {
		t.Fatalf("%s, %v: RONt %v and %v", what, a.Reference, a.RONt, b.RONt)
	}
}

// Moving, turning, mirroring, reversing and enlarging a trace do not change its form; duplicates
// change no minimax circle.
func TestInvariance(t *testing.T) { rapid.Check(t, checkInvariance) }

func checkInvariance(t *rapid.T) {
	ps := drawBore(t, 6, 60)
	dx := units.Length(rapid.Int64Range(-1e12, 1e12).Draw(t, "dx"))
	images := map[string]func(form.Point) form.Point{
		"moved":    func(p form.Point) form.Point { return form.Point{X: p.X + dx, Y: p.Y - dx/3} },
		"turned":   func(p form.Point) form.Point { return form.Point{X: -p.Y, Y: p.X} },
		"mirrored": func(p form.Point) form.Point { return form.Point{X: p.X, Y: -p.Y} },
		"enlarged": func(p form.Point) form.Point { return form.Point{X: 3 * p.X, Y: 3 * p.Y} },
	}
	l0, z0, m0, i0 := all(t, ps)
	compare := func(what string, qs []form.Point, scale units.Length, ls bool) {
		l1, z1, m1, i1 := all(t, qs)
		if ls {
			sameForm(t, what, l0, l1, scale)
		}
		sameForm(t, what, z0, z1, scale)
		sameForm(t, what, m0, m1, scale)
		sameForm(t, what, i0, i1, scale)
	}
	for what, image := range images {
		qs := make([]form.Point, len(ps))
		for i, p := range ps {
			qs[i] = image(p)
		}
		scale := units.Length(1)
		if what == "enlarged" {
			scale = 3
		}
		compare(what, qs, scale, true)
	}
	back := slices.Clone(ps)
	slices.Reverse(back)
	compare("reversed", back, 1, true)
	compare("doubled", append(slices.Clone(ps), ps...), 1, true)
	compare("one twice", append(slices.Clone(ps), ps[0]), 1, false)
	// One point more never narrows the zone, makes the circle around smaller or the one inside
	// larger.
	i := rapid.IntRange(0, len(ps)-1).Draw(t, "near")
	extra := form.Point{X: ps[i].X + units.Length(rapid.Int64Range(-1e8, 1e8).Draw(t, "off")), Y: ps[i].Y}
	_, z1, m1, i1 := all(t, append(slices.Clone(ps), extra))
	if z1.RONt < z0.RONt-2 || m1.Radius < m0.Radius-2 || i1.Radius > i0.Radius+2 {
		t.Fatalf("with a point more: zone %v → %v, around %v → %v, inside %v → %v", z0.RONt, z1.RONt, m0.Radius, m1.Radius, i0.Radius, i1.Radius)
	}
}

// brute tries every centre that contacts can give: of all circles on two and three points, and of
// all pairs of bisectors. Of inscribed circles it keeps those on acute triangles (inLeast) apart
// from those on right ones too, two opposite points and others: those may slip out.
type brute struct{ zone, around, in, inLeast float64 }

func bruteForce(ps []form.Point) brute {
	n := len(ps)
	x, y := make([]float64, n), make([]float64, n)
	for i, p := range ps {
		x[i], y[i] = p.X.In(units.Millimetre), p.Y.In(units.Millimetre)
	}
	best := brute{zone: math.Inf(1), around: math.Inf(1)}
	try := func(cx, cy float64, surrounded, strictly bool) {
		if math.Hypot(cx, cy) > 1e5 { // rounding makes all distances from there one
			return
		}
		least, most := math.Inf(1), 0.0
		for i := range x {
			d := math.Hypot(x[i]-cx, y[i]-cy)
			least, most = math.Min(least, d), math.Max(most, d)
		}
		best.zone, best.around = math.Min(best.zone, most-least), math.Min(best.around, most)
		if surrounded {
			best.in = math.Max(best.in, least)
		}
		if surrounded && strictly {
			best.inLeast = math.Max(best.inLeast, least)
		}
	}
	type line struct{ a, b, c float64 } // of the points equally far from two
	var bisectors []line
	for i := range n {
		for j := range i {
			try((x[i]+x[j])/2, (y[i]+y[j])/2, false, false)
			a, b := x[j]-x[i], y[j]-y[i]
			bisectors = append(bisectors, line{a, b, a*(x[i]+x[j])/2 + b*(y[i]+y[j])/2})
		}
	}
	for i, p := range bisectors {
		for _, q := range bisectors[:i] {
			if det := p.a*q.b - p.b*q.a; det != 0 {
				try((p.c*q.b-q.c*p.b)/det, (p.a*q.c-q.a*p.c)/det, false, false)
			}
		}
	}
	for i := range n {
		for j := range i {
			for k := range j {
				ax, ay, bx, by := x[j]-x[i], y[j]-y[i], x[k]-x[i], y[k]-y[i]
				det := 2 * (ax*by - ay*bx)
				if det == 0 {
					continue
				}
				aa, bb, ee := ax*ax+ay*ay, bx*bx+by*by, (ax-bx)*(ax-bx)+(ay-by)*(ay-by)
				acute := (aa+bb+ee)/2 - math.Max(aa, math.Max(bb, ee)) // zero at a right angle
				cx, cy := x[i]+(by*aa-ay*bb)/det, y[i]+(ax*bb-bx*aa)/det
				empty := true
				r := math.Hypot(x[i]-cx, y[i]-cy)
				for l := range n {
					empty = empty && math.Hypot(x[l]-cx, y[l]-cy) > r-1e-9
				}
				try(cx, cy, acute > -1e-6 && empty, acute > 1e-9)
			}
		}
	}
	return best
}

func extent(ps []form.Point) float64 {
	var most units.Length
	for _, p := range ps {
		for _, q := range ps {
			most = max(most, p.X-q.X, p.Y-q.Y)
		}
	}
	return most.In(units.Millimetre)
}

func TestAgainstAllContacts(t *testing.T) { rapid.Check(t, checkContacts) }

func checkContacts(t *rapid.T) {
	var ps []form.Point
	if rapid.Bool().Draw(t, "wild") {
		ps = drawWild(t, 4, 12)
	} else {
		ps = drawBore(t, 4, 12)
	}
	want := bruteForce(ps)
	tr := trace(t, ps)
	if c, err := tr.MinimumCircumscribed(); err != nil && want.around > 0 || err == nil && math.Abs(c.Radius.In(units.Millimetre)-want.around) > 2e-9 {
		t.Fatalf("MCCI %v, %v, want %v", c.Radius, err, want.around)
	} else if err == nil {
		if err := faults(c, tr); err != nil {
			t.Fatal(err)
		}
	}
	switch c, err := tr.MinimumZone(); {
	case err != nil:
		x, y := tr.XY()
		// Of points in a needle the search may find no zone.
		if strip := form.StripWidth(x, y); !errors.Is(err, form.ErrArc) || strip/2 > want.zone+1e-9 && strip > extent(ps)/50 {
			t.Fatalf("MZCI %v, want %v or a strip of %v", err, want.zone, strip)
		}
	case math.Abs(c.RONt.In(units.Millimetre)-want.zone) > 3e-9 && c.Certificate.Bound == 0:
		t.Fatalf("MZCI %v, want %.12f", c.RONt, want.zone)
	case c.RONt.In(units.Millimetre) > want.zone+c.Certificate.Bound.In(units.Millimetre)+3e-9:
		t.Fatalf("MZCI %v is further than %v from %.12f", c.RONt, c.Certificate.Bound, want.zone)
	default:
		if err := faults(c, tr); err != nil {
			t.Fatal(err)
		}
	}
	switch c, err := tr.MaximumInscribed(); {
	case errors.Is(err, form.ErrUnproved): // clusters of a micrometre, each of which looks like one place
	case err != nil:
		if !errors.Is(err, form.ErrArc) || want.inLeast > extent(ps)/10 {
			t.Fatalf("MICI %v, want %v", err, want.in)
		}
	case c.Radius.In(units.Millimetre) > want.in+2e-9 || c.Radius.In(units.Millimetre) < want.inLeast-2e-9:
		t.Fatalf("MICI %v, want %.12f", c.Radius, want.in)
	default:
		if err := faults(c, tr); err != nil {
			t.Fatal(err)
		}
	}
}
