// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// few is how much rounding may change a length, in all that is compared here.
const few = 6 * pm

// The cylinders of a closed wall stand in order, each passes its check, and none of the others is a
// narrower zone, but for what the certificates leave open.
func TestOrderOfCylinders(t *testing.T) { rapid.Check(t, checkCylinderOrder) }

func checkCylinderOrder(t *rapid.T) {
	w := wallOf(t, drawWall(t, 6, 40))
	cs := cylinders(t, w)
	zone, around, in := cs[form.MZCY], cs[form.MCCY], cs[form.MICY]
	for _, c := range []form.Cylinder{zone, around, in} {
		if c.Certificate.Bound > c.CYLt {
			t.Skip("not closed enough for a bound")
		}
	}
	if zone.Inner > in.Radius+in.Certificate.Bound+few || in.Radius > around.Radius+few || around.Radius-around.Certificate.Bound > zone.Outer+few {
		t.Fatalf("zone %v to %v, inscribed %v, circumscribed %v", zone.Inner, zone.Outer, in.Radius, around.Radius)
	}
	for _, c := range cs {
		if c.CYLt < zone.CYLt-zone.Certificate.Bound-few {
			t.Fatalf("%v of %v is narrower than the zone of %v", c.Reference, c.CYLt, zone.CYLt)
		}
	}
}

// A wall whose levels go all round has an inscribed cylinder, no smaller than the inner one of its zone. Of the first two
// three points carry it with a fourth that weighs half a thousandth, and only the bending of the distances holds its lean;
// of the third two nearly opposite ones with a third of six thousandths, and each bends in its own way.
func TestInscribedIsFound(t *testing.T) {
	for _, radius := range []float64{56.75, 56.9375} {
		checkFound(t, boreWall(rand.New(rand.NewPCG(0x4a0fa, 5)), 6, 9, radius, radius*2.5625, radius*1e-4))
	}
	checkFound(t, boreWall(rand.New(rand.NewPCG(96801, 5)), 2, 6, 160, 150, 0.8))
	findInscribed(t, rand.New(rand.NewPCG(19, 1)), 300)
}

// findInscribed draws walls from a fifth of their radius to ten times it long.
func findInscribed(t *testing.T, r *rand.Rand, walls int) {
	for range walls {
		radius, long := 5+195*r.Float64(), 0.2*math.Pow(50, r.Float64())
		checkFound(t, boreWall(r, 2+r.IntN(5), 4+r.IntN(37), radius, radius*long, radius*[]float64{1e-6, 1e-4, 1e-3, 5e-3}[r.IntN(4)]))
	}
}

func checkFound(t *testing.T, ps [][3]float64) {
	w := wallOf(t, ps)
	c, err := w.Cylindricity(form.MICY)
	if err != nil {
		t.Errorf("%v, the first %v", err, ps[0])
		return
	}
	if err := c.Check(w); err != nil && !errors.Is(err, form.ErrUnproved) {
		t.Error(err)
	}
	zone, err := w.Cylindricity(form.MZCY)
	if must(t, zone, err); c.Radius+c.Certificate.Bound < zone.Inner-few {
		t.Errorf("a cylinder of %v is inscribed, of %v found", zone.Inner, c.Radius)
	}
}

// Turned, mirrored, moved, upside down, in another order: the same cylinders; twice as large: twice.
func TestCylindersDoNotDependOnTheFrame(t *testing.T) { rapid.Check(t, checkCylinderInvariance) }

func checkCylinderInvariance(t *rapid.T) {
	ps := drawWall(t, 6, 24)
	was := cylinders(t, wallOf(t, ps))
	how := rapid.SampledFrom([]string{"order", "shift", "mirror", "upside down", "turn", "twice"}).Draw(t, "how")
	moved, scale := slices.Clone(ps), units.Length(1)
	s, c := math.Sincos(rapid.Float64Range(0, 6).Draw(t, "angle"))
	for i, p := range moved {
		switch how {
		case "order":
			moved[i], moved[(i*7)%len(ps)] = moved[(i*7)%len(ps)], moved[i]
		case "shift":
			moved[i] = [3]float64{p[0] + 17.25, p[1] - 300.5, p[2] + 4.125}
		case "mirror":
			moved[i] = [3]float64{p[0], -p[1], p[2]}
		case "upside down":
			moved[i] = [3]float64{p[0], p[1], -p[2]}
		case "turn":
			moved[i] = [3]float64{c*p[0] - s*p[1], s*p[0] + c*p[1], p[2]}
		case "twice":
			moved[i], scale = [3]float64{2 * p[0], 2 * p[1], 2 * p[2]}, 2
		}
	}
	is := cylinders(t, wallOf(t, moved))
	for kind, a := range was {
		b := is[kind]
		open := few + max(scale*a.Certificate.Bound, b.Certificate.Bound)
		if a.Certificate.Bound > a.CYLt {
			open = few
		}
		value := func(c form.Cylinder) units.Length {
			if kind == form.MZCY {
				return c.CYLt
			}
			return c.Radius
		}
		if d := value(b) - scale*value(a); d.Abs() > scale*open {
			t.Fatalf("%s: %v was %v, is %v", how, kind, value(a), value(b))
		}
		if kind == form.LSCY && (b.CYLq-scale*a.CYLq).Abs() > scale*few {
			t.Fatalf("%s: CYLq was %v, is %v", how, a.CYLq, b.CYLq)
		}
	}
}

// A point more never narrows the zone, nor widens it if it lies inside.
func TestAPointMoreNeverNarrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		ps := drawWall(t, 6, 20)
		k := rapid.IntRange(0, len(ps)-1).Draw(t, "k")
		less, all := wallOf(t, slices.Delete(slices.Clone(ps), k, k+1)), wallOf(t, ps)
		for _, kind := range minimax {
			a, err := less.Cylindricity(kind)
			b, err2 := all.Cylindricity(kind)
			if errors.Join(err, err2) != nil {
				continue
			}
			open := few + max(a.Certificate.Bound, b.Certificate.Bound)
			value := map[form.Reference]units.Length{form.MZCY: b.CYLt - a.CYLt, form.MCCY: b.Radius - a.Radius, form.MICY: a.Radius - b.Radius}[kind]
			if value < -open {
				t.Fatalf("%v: better by %v with a point more", kind, -value)
			}
			off := length(costAbout(ps[k:k+1], form.MCCY, endsOf(a.Axis)))
			inside := (kind == form.MICY || off <= a.Outer) && (kind == form.MCCY || off >= a.Inner)
			if inside && value > open {
				t.Fatalf("%v: worse by %v for a point that lies inside", kind, value)
			}
		}
	})
}

// No cylinder through any contacts is better than the one found: all sets of contacts of walls of nine
// points, in two or three sections. So much the certificate promises where it is proved, and it
// promises how much at most where it is not.
func TestCylindersAgainstAllContacts(t *testing.T) {
	r := rand.New(rand.NewPCG(17, 1))
	for range 6 {
		checkAllContacts(t, r, 9)
	}
}

func checkAllContacts(t *testing.T, r *rand.Rand, points int) {
	size := []float64{1e-3, 0.02, 0.2}[r.IntN(3)]
	levels := 2 + r.IntN(2)
	ps := boreWall(r, levels, points/levels, 30, 60, size)
	w := wallOf(t, ps)
	for _, kind := range minimax {
		c, err := w.Cylindricity(kind)
		if err != nil {
			continue // three points a section may not surround a plug
		}
		if err := c.Check(w); err != nil && !errors.Is(err, form.ErrUnproved) {
			t.Fatal(err)
		}
		got := map[form.Reference]units.Length{form.MZCY: c.CYLt, form.MCCY: c.Radius, form.MICY: -c.Radius}[kind].In(mm)
		best := bestOfAllContacts(ps, kind)
		open := c.Certificate.Bound.In(mm)
		if c.Certificate.Bound > c.CYLt || c.Certificate.Searched && open >= c.CYLt.In(mm) {
			open = 1e-9 // nothing is promised, and yet nothing better should be there
		}
		if best < got-open-5e-9 {
			t.Errorf("%v of %d points, form %v: %.9f mm, %.9f mm through other contacts; %v", kind, len(ps), size, got, best, c.Certificate)
		}
	}
}

// bestOfAllContacts tries every set of five or six contacts on every side, each by Newton's method from
// an upright axis on the equations of the distances, and returns the least cost of a cylinder that all
// points keep to, with its axis in the wall.
func bestOfAllContacts(ps [][3]float64, kind form.Reference) float64 {
	n, unknowns := len(ps), 5
	if kind == form.MZCY {
		unknowns = 6
	}
	// The axis passes (p0, p1) at the depth 40 and leans by (p2, p3) over 30 mm.
	distance := func(p [6]float64, q [3]float64) float64 {
		h := (q[2] - 40) / 30
		ex, ey := q[0]-p[0]-h*p[2], q[1]-p[1]-h*p[3]
		a, b := p[2]/30, p[3]/30
		along := (ex*a + ey*b) / math.Sqrt(1+a*a+b*b)
		return math.Sqrt(ex*ex + ey*ey - along*along)
	}
	best := math.Inf(1)
	var mx, my float64
	for _, q := range ps {
		mx, my = mx+q[0]/float64(n), my+q[1]/float64(n)
	}
	for set := range 1 << n {
		var of []int
		for i := range n {
			if set>>i&1 == 1 {
				of = append(of, i)
			}
		}
		if len(of) != unknowns {
			continue
		}
		sides := []int{0}
		if kind == form.MZCY {
			sides = nil
			for s := 1; s < 1<<unknowns-1; s++ {
				sides = append(sides, s)
			}
		}
		for _, side := range sides {
			p := [6]float64{mx, my, 0, 0, 30, 30}
			for range 12 {
				var a [6][7]float64
				for r, i := range of {
					at := 4
					if kind == form.MZCY && side>>r&1 == 1 {
						at = 5
					}
					d := distance(p, ps[i])
					for k := range 4 {
						q := p
						q[k] += 1e-5
						a[r][k] = (distance(q, ps[i]) - d) / 1e-5
					}
					a[r][at], a[r][unknowns] = -1, p[at]-d
				}
				s := solved(a, unknowns)
				for k := range unknowns {
					p[k] += s[k]
				}
				if !(math.Abs(p[0])+math.Abs(p[1])+math.Abs(p[2])+math.Abs(p[3]) < 20) {
					break
				}
			}
			least, most, off := math.Inf(1), 0.0, 0.0
			for _, q := range ps {
				d := distance(p, q)
				least, most = min(least, d), max(most, d)
			}
			for r, i := range of {
				at := 4
				if kind == form.MZCY && side>>r&1 == 1 {
					at = 5
				}
				off = max(off, math.Abs(distance(p, ps[i])-p[at]))
			}
			if !(off < 1e-9) || math.Hypot(p[0]-mx, p[1]-my)+math.Hypot(p[2], p[3]) > 15 {
				continue
			}
			switch kind {
			case form.MZCY:
				if max(p[4], p[5]) > most-1e-9 && min(p[4], p[5]) < least+1e-9 {
					best = min(best, most-least)
				}
			case form.MCCY:
				if p[4] > most-1e-9 {
					best = min(best, most)
				}
			case form.MICY:
				if p[4] < least+1e-9 {
					best = min(best, -least)
				}
			}
		}
	}
	return best
}

// solved solves n equations, NaN where it cannot.
func solved(a [6][7]float64, n int) (s [6]float64) {
	for k := range n {
		p := k
		for i := k; i < n; i++ {
			if math.Abs(a[i][k]) > math.Abs(a[p][k]) {
				p = i
			}
		}
		a[k], a[p] = a[p], a[k]
		for i := k + 1; i < n; i++ {
			f := a[i][k] / a[k][k]
			for j := k; j <= n; j++ {
				a[i][j] -= f * a[k][j]
			}
		}
	}
	for k := n - 1; k >= 0; k-- {
		s[k] = a[k][n]
		for j := k + 1; j < n; j++ {
			s[k] -= a[k][j] * s[j]
		}
		s[k] /= a[k][k]
	}
	return s
}

// A cylinder that was tampered with never passes.
func TestForgedCylinders(t *testing.T) {
	forgeCylinders(t, rand.New(rand.NewPCG(3, 4)), 40, 20)
}

func forgeCylinders(t *testing.T, r *rand.Rand, walls, each int) {
	tried := 0
	for range walls {
		w := wallOf(t, boreWall(r, 2+r.IntN(4), 6+r.IntN(12), 20+r.Float64()*50, 80, 0.02))
		for _, kind := range append(minimax, form.LSCY) {
			c, err := w.Cylindricity(kind)
			if err != nil {
				continue
			}
			good := c.Check(w)
			for range each {
				f := c
				by := units.Length(10+r.IntN(1_000_000)) * units.Length(1-2*r.IntN(2))
				switch r.IntN(12) {
				case 0:
					f.Inner += by
				case 1:
					f.Outer += by
				case 2:
					f.Radius += by
				case 3:
					f.CYLt += by
				case 4:
					f.CYLq += by
				case 5: // as large as the wall would let it be found out
					f.Axis.From.X, f.Axis.To.X = f.Axis.From.X+by, f.Axis.To.X+by
				case 6:
					f.Axis.To.Y += by
				case 7:
					f.Certificate.Reach = f.Certificate.Reach*11/10 + 10
				case 8:
					if f.Certificate.Bound == 0 {
						continue
					}
					f.Certificate.Bound = f.Certificate.Bound*9/10 - 10
				case 9:
					if kind == form.LSCY {
						continue
					}
					f.Certificate.Tilt(0.01)
				case 10:
					if kind == form.LSCY {
						continue
					}
					f.Certificate.Replace(r.IntN(len(f.Certificate.Contacts())), r.IntN(w.Len()))
					if f == c {
						continue
					}
				case 11:
					if kind == form.LSCY {
						continue
					}
					f.Certificate.Drop()
				}
				tried++
				if err := f.Check(w); !errors.Is(err, form.ErrCertificate) && !errors.Is(err, form.ErrPoints) {
					t.Fatalf("%v: forged %+v passes with %v; true %+v with %v", kind, f, err, c, good)
				}
			}
		}
	}
	t.Logf("%d forgeries", tried)
}
