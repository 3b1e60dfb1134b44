// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"encoding/json"
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
)

// refused checks an error: its sentinel, and that it begins with the package.
func refused(t *testing.T, what string, err, want error) {
	t.Helper()
	if !errors.Is(err, want) || !strings.HasPrefix(err.Error(), "form: ") {
		t.Errorf("%s: %v, want %v", what, err, want)
	}
}

// arc returns points over so many degrees of a circle of 50 mm, with scatter of so much.
func arc(t *testing.T, n int, deg, scatter float64) form.Trace {
	t.Helper()
	var x, y []float64
	for i := range n {
		a := (float64(i)/float64(n-1) - 0.5) * deg * math.Pi / 180
		r := 50 + scatter*math.Sin(float64(7*i*i))
		x, y = append(x, r*math.Cos(a)), append(y, r*math.Sin(a))
	}
	return traceOf(t, x, y)
}

func TestRefusedTraces(t *testing.T) {
	_, err := form.FromRadii(nil)
	refused(t, "no radii", err, form.ErrPoints)
	_, err = form.FromRadii([]units.Length{mm, mm})
	refused(t, "two radii", err, form.ErrPoints)
	for _, r := range []units.Length{0, -mm, 5001 * mm, math.MinInt64, math.MaxInt64} {
		want := units.ErrRange
		if r == 0 {
			want = units.ErrNotGiven
		}
		_, err = form.FromRadii([]units.Length{mm, mm, r})
		refused(t, r.String(), err, want)
		_, err = form.FromPolar([]bore.Point{{Angle: 1, Radius: mm}, {Angle: 2, Radius: mm}, {Angle: 3, Radius: r}})
		refused(t, r.String(), err, want)
	}
	for _, r := range []units.Length{5001 * mm, -5001 * mm, math.MinInt64, math.MaxInt64} {
		_, err = form.FromPoints([]form.Point{{X: r}, {Y: mm}, {}})
		refused(t, r.String(), err, units.ErrRange)
		_, err = form.FromPoints([]form.Point{{Y: r}, {Y: mm}, {}})
		refused(t, r.String(), err, units.ErrRange)
	}
	for _, last := range []units.Angle{2, 1.5, 1, 1 + 2*math.Pi, units.Angle(math.NaN()), units.Angle(math.Inf(1)), 1e9} {
		_, err = form.FromPolar([]bore.Point{{Angle: 1, Radius: mm}, {Angle: 2, Radius: mm}, {Angle: last, Radius: mm}})
		refused(t, last.String(), err, form.ErrAngles)
	}
	_, err = form.FromPolar([]bore.Point{{Angle: units.Angle(math.NaN()), Radius: mm}, {Angle: 2, Radius: mm}, {Angle: 3, Radius: mm}})
	refused(t, "first angle NaN", err, form.ErrAngles)
	clockwise := turned().Radial(0)
	slices.Reverse(clockwise)
	_, err = form.FromPolar(clockwise)
	if refused(t, "clockwise", err, form.ErrAngles); err != nil && !strings.Contains(err.Error(), "reverse") {
		t.Errorf("clockwise: %v", err)
	}
	for kind, solve := range solvers {
		_, err := solve(form.Trace{})
		refused(t, kind.String()+" of the zero trace", err, form.ErrPoints)
	}
	_, err = form.Trace{}.LeastSquares()
	refused(t, "zero trace", err, form.ErrPoints)
}

func TestRefusedCircles(t *testing.T) {
	equal := traceOf(t, []float64{3, 3, 3, 3, 3}, []float64{1, 1, 1, 1, 1})
	line := traceOf(t, []float64{0, 1, 2, 3, 7}, []float64{0, 1, 2, 3, 7})
	short := arc(t, 50, 3, 0.001)
	for _, c := range []struct {
		what  string
		trace form.Trace
	}{{"points on a line", line}, {"arc of 3°", short}} {
		_, err := c.trace.LeastSquares()
		refused(t, c.what+": LSCI", err, form.ErrArc)
		_, err = c.trace.MaximumInscribed()
		refused(t, c.what+": MICI", err, form.ErrArc)
	}
	// A right triangle's circle touches two points opposite each other and slips away from the
	// third; a fourth point on the other side holds it.
	_, err := traceOf(t, []float64{0, 4, 0}, []float64{0, 0, 3}).MaximumInscribed()
	refused(t, "right triangle: MICI", err, form.ErrArc)
	held, err := traceOf(t, []float64{0, 4, 0, 4}, []float64{0, 0, 3, 3}).MaximumInscribed()
	near(t, "rectangle: MICI", must(t, held, err).Radius, length(2.5), 0)
	_, err = line.MinimumZone()
	refused(t, "points on a line: MZCI", err, form.ErrArc)
	for kind, solve := range solvers {
		_, err := solve(equal)
		refused(t, "equal points: "+kind.String(), err, form.ErrPoints)
	}
	_, err = equal.LeastSquares()
	refused(t, "equal points: LSCI", err, form.ErrPoints)
	_, err = traceOf(t, []float64{0, 1, 2}, []float64{0, 1, 0}).MinimumZone()
	refused(t, "three points: MZCI", err, form.ErrPoints)
	c, err := line.MinimumCircumscribed()
	if err != nil || c.Check(line) != nil {
		t.Errorf("circle around a line: %v, %v", err, c.Check(line))
	}
	near(t, "circle around a line", c.Radius, length(3.5*math.Sqrt2), 0)
}

// The shortest arcs that least squares takes: φ⁴/720 of n is a millionth of it at 9.39°; of three
// points it is so at 7.5°.
func TestShortestArcs(t *testing.T) {
	for _, c := range []struct {
		n       int
		deg     float64
		refused bool
	}{{1000, 8, true}, {1000, 9.3, true}, {1000, 9.5, false}, {3, 7.4, true}, {3, 7.6, false}} {
		_, err := arc(t, c.n, c.deg, 0).LeastSquares()
		if (err != nil) != c.refused || err != nil && !errors.Is(err, form.ErrArc) {
			t.Errorf("%d points on %v°: %v", c.n, c.deg, err)
		}
	}
}

// Points strewn all over a square have circles between them that hold none and are locked, but they
// are gaps, not bores.
func TestStrewnPoints(t *testing.T) {
	for seed := range uint64(20) {
		n := []int{1000, 10_000}[seed%2]
		r := rand.New(rand.NewPCG(seed, 5))
		x, y := make([]float64, n), make([]float64, n)
		for i := range x {
			x[i], y[i] = 80*r.Float64(), 80*r.Float64()
		}
		_, err := traceOf(t, x, y).MaximumInscribed()
		refused(t, fmt.Sprint(n, " strewn points"), err, form.ErrArc)
	}
}

// Where the search ended long before it had excluded a larger circle, it gives none.
func TestVagueSearch(t *testing.T) {
	const n = 150_000
	r := rand.New(rand.NewPCG(n, 5))
	x, y := make([]float64, n), make([]float64, n)
	for i := range x { // in most of a ring of 9 to 40 mm
		s, c := math.Sincos(300 * math.Pi / 180 * r.Float64())
		d := 9 + 31*r.Float64()
		x[i], y[i] = d*c, d*s
	}
	_, err := traceOf(t, x, y).MaximumInscribed()
	refused(t, "a ring with a gap", err, form.ErrUnproved)
}

// Arcs long enough are answered, the zone with its proof by search.
func TestArcs(t *testing.T) {
	for _, deg := range []float64{30, 90, 180, 270} {
		tr := arc(t, 60, deg, 0.0005)
		ls, err := tr.LeastSquares()
		must(t, ls, err)
		z, err := tr.MinimumZone()
		if err != nil {
			t.Errorf("%v°: %v", deg, err)
			continue
		}
		if z.RONt > ls.RONt || z.RONt > um+2 || z.Certificate.Bound != 0 || faults(z, tr) != nil {
			t.Errorf("%v°: zone %v of %v, %+v, %v", deg, z.RONt, ls.RONt, z.Certificate, z.Check(tr))
		}
		if _, err := tr.MaximumInscribed(); deg <= 180 {
			refused(t, "open arc", err, form.ErrArc)
		}
	}
}

func TestRefusedQuestions(t *testing.T) {
	tr := turned()
	for _, most := range []int{-1, 0, 18, 501, math.MaxInt} {
		_, _, err := tr.Harmonics(form.Point{}, most)
		refused(t, "harmonics", err, units.ErrRange)
	}
	_, _, err := traceOf(t, []float64{0, 5, 0, -5}, []float64{0, 1, 5, 0}).Harmonics(form.Point{}, 1)
	refused(t, "a point at the centre", err, units.ErrRange)
	_, _, err = traceOf(t, []float64{1, 2, 3, -4, -5}, []float64{1, 2, 3, 4, 5}).Harmonics(form.Point{}, 2)
	refused(t, "two directions", err, units.ErrRange)
	for _, cutoff := range []int{0, -3, 18, 500, math.MaxInt, math.MinInt} {
		_, err := tr.Filter(cutoff)
		refused(t, "filter", err, units.ErrRange)
	}
	_, err = form.Trace{}.Filter(15)
	refused(t, "filter of nothing", err, form.ErrAngles)
	_, err = arc(t, 100, 90, 0).Filter(15)
	refused(t, "filter of points", err, form.ErrAngles)
	for _, a := range []units.Angle{0, -1, math.Pi, 4, units.Angle(math.NaN()), units.Angle(math.Inf(1))} {
		_, err := form.Vee(a)
		refused(t, "vee", err, units.ErrRange)
	}
	_, err = form.Setup{}.Read(tr, form.Point{}, []units.Angle{0})
	refused(t, "zero set-up", err, units.ErrRange)
	_, err = form.TwoPoint().Read(tr, form.Point{}, []units.Angle{units.Angle(math.NaN())})
	refused(t, "axis NaN", err, form.ErrAngles)
	_, err = form.TwoPoint().Read(arc(t, 100, 200, 0), form.Point{}, []units.Angle{0})
	refused(t, "open trace", err, form.ErrAngles)
	_, err = form.TwoPoint().Read(form.Trace{}, form.Point{}, []units.Angle{0})
	refused(t, "no trace", err, form.ErrAngles)
	for _, ps := range [][]form.LinePoint{nil, {{}}, {{Depth: 1}, {Depth: 1}}, {{Depth: 1}, {Depth: 1, Deviation: 5}, {Depth: 1, Deviation: 3}}} {
		_, err := form.StraightLeastSquares(ps)
		refused(t, "straightness", err, form.ErrPoints)
		_, err = form.StraightMinimumZone(ps)
		refused(t, "straightness", err, form.ErrPoints)
	}
	for _, p := range []form.LinePoint{{Depth: 6000 * mm}, {Deviation: math.MinInt64}} {
		_, err := form.StraightLeastSquares([]form.LinePoint{{}, p})
		refused(t, "straightness", err, units.ErrRange)
		_, err = form.StraightMinimumZone([]form.LinePoint{{}, p})
		refused(t, "straightness", err, units.ErrRange)
	}
}

// Nothing that can be written down makes a panic: zero values, and places at the ends of what a
// Length holds.
func TestHostile(t *testing.T) {
	far := []form.Point{{X: math.MinInt64, Y: math.MaxInt64}, {X: math.MaxInt64}, {Y: math.MinInt64}}
	for _, tr := range []form.Trace{{}, turned(), arc(t, 30, 100, 0.001)} {
		for _, p := range far {
			if _, hs, err := tr.Harmonics(p, 2); err == nil {
				t.Errorf("about %v: %v", p, hs)
			}
			if ds, err := form.ThreePoint().Read(tr, p, []units.Angle{1}); err == nil {
				t.Errorf("about %v: %v", p, ds)
			}
			for r := form.Reference(-1); r < 6; r++ {
				if err := (form.Circle{Reference: r, Centre: p, Inner: math.MinInt64, Outer: math.MaxInt64, RONt: -1}).Check(tr); err == nil {
					t.Errorf("%v about %v proved", r, p)
				}
			}
		}
		for _, p := range tr.Radial(math.MinInt64) {
			if !(p.Angle >= 0 && p.Angle < 2*math.Pi) {
				t.Errorf("%v", p)
			}
		}
	}
	if (form.Line{}).Check(nil) == nil || (form.Setup{}).Factor(2) != 0 || (form.Trace{}).Len() != 0 || len(form.Certificate{}.Contacts()) != 0 {
		t.Error("zero values")
	}
}

// A certificate that has been tampered with does not hold.
func TestBrokenCertificates(t *testing.T) {
	tr := turned()
	for kind, solve := range solvers {
		good, err := solve(tr)
		must(t, good, err)
		if err := good.Check(tr); err != nil {
			t.Errorf("%v: %v", kind, err)
		}
		for what, spoil := range map[string]func(*form.Circle){
			"moved":            func(c *form.Circle) { c.Centre.X += 100 * nm; c.Inner -= 200 * nm; c.Outer += 200 * nm },
			"moved, same size": func(c *form.Circle) { c.Centre.Y += 10 * nm },
			"smaller":          func(c *form.Circle) { c.Outer -= nm },
			"larger inside":    func(c *form.Circle) { c.Inner += nm },
			"other kind":       func(c *form.Circle) { c.Reference = (c.Reference + 1) % 4 },
			"reach":            func(c *form.Circle) { c.Certificate.Reach *= 2 },
			"reach below zero": func(c *form.Circle) { c.Certificate.Reach = -1 },
			"larger radius":    func(c *form.Circle) { c.Radius += 3 },
			"smaller radius":   func(c *form.Circle) { c.Radius -= 3 },
			"radius of 1 mm":   func(c *form.Circle) { c.Radius, c.RONt = mm, 3*mm },
			"wider":            func(c *form.Circle) { c.Outer += 10; c.RONt += 10 },
			"Outer of 4 m":     func(c *form.Circle) { c.Outer = 4000 * mm; c.RONt = c.Outer - c.Inner },
			"Inner of zero":    func(c *form.Circle) { c.Inner, c.RONt = 0, c.Outer },
			"RONt":             func(c *form.Circle) { c.RONt++ },
			"bound":            func(c *form.Circle) { c.Certificate.Bound = 30 * mm },
			"small bound":      func(c *form.Circle) { c.Certificate.Bound = 100 * pm },
			"searched, bound":  func(c *form.Circle) { c.Certificate.Searched = true; c.Certificate.Bound = c.RONt + nm },
			"bound below zero": func(c *form.Circle) { c.Certificate.Bound = -1 },
			"RONp":             func(c *form.Circle) { c.RONp = nm },
			"RONv":             func(c *form.Circle) { c.RONv = nm },
			"RONq":             func(c *form.Circle) { c.RONq = nm },
			"all the plane": func(c *form.Circle) {
				*c = form.Circle{Reference: c.Reference, Outer: 5000 * mm, Certificate: form.Certificate{Searched: true}}
			},
			"all the plane, by numbers that agree": func(c *form.Circle) {
				*c = form.Circle{Reference: c.Reference, Radius: 2500 * mm, Outer: 5000 * mm, RONt: 5000 * mm, Certificate: form.Certificate{Searched: true}}
			},
			"out of balance":  func(c *form.Circle) { c.Certificate.Tilt(0.001) },
			"negative weight": func(c *form.Circle) { c.Certificate.Tilt(-1) },
			"no contacts":     func(c *form.Circle) { c.Certificate = form.Certificate{} },
		} {
			c := good
			spoil(&c)
			if err := c.Check(tr); !errors.Is(err, form.ErrCertificate) {
				t.Errorf("%v, %s: %v", kind, what, err)
			}
		}
		refused(t, "another trace", good.Check(arc(t, 3, 300, 0)), form.ErrCertificate)
	}
	open := arc(t, 60, 90, 0.0005)
	z, err := open.MinimumZone()
	if must(t, z, err); !z.Certificate.Searched {
		t.Errorf("%+v", z.Certificate)
	}
	z.Certificate.Searched = false
	refused(t, "an arc without a search", z.Check(open), form.ErrCertificate)
	ls, err := tr.LeastSquares()
	must(t, ls, err)
	refused(t, "least squares", ls.Check(tr), form.ErrUnproved)
	for what, spoil := range map[string]func(*form.Circle){
		"RONp":        func(c *form.Circle) { c.RONp++ },
		"RONv":        func(c *form.Circle) { c.RONv-- },
		"RONq":        func(c *form.Circle) { c.RONq += 5 },
		"radius":      func(c *form.Circle) { c.Radius += 10; c.RONp += 10; c.RONv -= 10 },
		"certificate": func(c *form.Circle) { c.Certificate.Searched = true },
		"zone":        func(c *form.Circle) { c.Reference = form.MZCI },
		"none":        func(c *form.Circle) { c.Reference = 4 },
	} {
		c := ls
		spoil(&c)
		refused(t, "least squares, "+what, c.Check(tr), form.ErrCertificate)
	}
	// About another centre, all its numbers those of the points.
	zone, err := tr.MinimumZone()
	must(t, zone, err)
	zone.Reference, zone.Certificate = form.LSCI, form.Certificate{}
	zone.RONp, zone.RONv, zone.RONq = zone.Radius-zone.Inner, zone.Outer-zone.Radius, ls.RONq
	refused(t, "least squares about another centre", zone.Check(tr), form.ErrCertificate)
}

// A circle about a centre that is not the best, its numbers those of the points, is never proved:
// with the contacts of the right one it does not hold, and as one that was only searched for it has
// no proof.
func TestOtherCentresAreNotProved(t *testing.T) {
	tr := turned()
	ls, err := tr.LeastSquares()
	must(t, ls, err)
	for kind, solve := range solvers {
		good, err := solve(tr)
		must(t, good, err)
		c := ls
		c.Reference, c.RONp, c.RONv, c.RONq, c.Certificate = kind, 0, 0, 0, good.Certificate
		c.Radius = map[form.Reference]units.Length{form.MZCI: (c.Inner + c.Outer) / 2, form.MCCI: c.Outer, form.MICI: c.Inner}[kind]
		refused(t, kind.String()+" about another centre", c.Check(tr), form.ErrCertificate)
		c.Certificate = form.Certificate{Searched: true}
		want := form.ErrCertificate
		if kind == form.MZCI {
			want = form.ErrUnproved
		}
		refused(t, kind.String()+" without contacts", c.Check(tr), want)
		c.Certificate.Reach = mm
		refused(t, kind.String()+" that reaches without contacts", c.Check(tr), form.ErrCertificate)
	}
}

// What holds and what does not outlives JSON: contacts, and so the proof, too.
func TestJSON(t *testing.T) {
	tr := turned()
	for _, solve := range []func() (form.Circle, error){tr.LeastSquares, tr.MinimumZone, tr.MinimumCircumscribed, tr.MaximumInscribed, arc(t, 60, 90, 0.0005).MinimumZone} {
		c, err := solve()
		must(t, c, err)
		b, err := json.Marshal(c)
		must(t, b, err)
		var back form.Circle
		if err := json.Unmarshal(b, &back); err != nil || back != c {
			t.Errorf("%s: %+v, %v, want %+v", b, back, err, c)
		}
		for _, key := range []string{`"reference":"` + c.Reference.String(), `"centre":{"x":`, `"ront":`} {
			if !strings.Contains(string(b), key) {
				t.Errorf("no %s in %s", key, b)
			}
		}
	}
	ps := []form.LinePoint{{}, {Depth: 40 * mm, Deviation: 5 * um}, {Depth: 80 * mm}}
	for _, solve := range []func([]form.LinePoint) (form.Line, error){form.StraightLeastSquares, form.StraightMinimumZone} {
		l, err := solve(ps)
		b, jsonErr := json.Marshal(must(t, l, err))
		var back form.Line
		if err := json.Unmarshal(must(t, b, jsonErr), &back); err != nil || !reflect.DeepEqual(back, l) || !strings.Contains(string(b), `"strt":`) {
			t.Errorf("%s: %+v, %v, want %+v", b, back, err, l)
		}
	}
	z, err := tr.MinimumZone()
	kept := must(t, z, err).Certificate
	for _, text := range []string{`{"contacts":[{},{},{},{},{},{},{}]}`, `{"reach":7}`, `{"contacts":3}`} {
		c := kept
		if err := json.Unmarshal([]byte(text), &c); err == nil || c != kept {
			t.Errorf("%s: %v, %v", text, c, err)
		}
	}
	refused(t, "seven contacts", kept.UnmarshalJSON([]byte(`{"contacts":[{},{},{},{},{},{},{}]}`)), form.ErrCertificate)
}

func TestReferenceText(t *testing.T) {
	for r := form.LSCI; r <= form.MICY; r++ {
		b, err := r.MarshalText()
		var back form.Reference
		if err != nil || back.UnmarshalText(b) != nil || back != r || string(b) != r.String() {
			t.Errorf("%v: %s, %v", r, b, err)
		}
	}
	r := form.MZCI
	if err := r.UnmarshalText([]byte("MZC")); !errors.Is(err, units.ErrUnknownName) || r != form.MZCI {
		t.Error(r, err)
	}
}
