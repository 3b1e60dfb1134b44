// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
	"borewright.example/units"
)

// No axis within Reach at both ends gives a cylinder better by more than Bound: a hundred thousand axes, of
// all sizes of move, many of them along the directions in which the last one was nearly as good.
func TestNothingBetterWithinReach(t *testing.T) {
	r := rand.New(rand.NewPCG(23, 5))
	tried, proved := 0, 0
	reached := 0 // of walls that do not close up, on which only what is near is excluded
	for n := range 80 {
		ps, _ := someWall(r)
		if n >= 60 {
			ps = openWall(r)
		}
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylindricity(kind)
			if err != nil && n >= 60 {
				continue // not every arc has one
			}
			if err != nil {
				t.Fatal(err)
			}
			if c.Check(w) == nil {
				proved++
			}
			is := costAbout(ps, kind, endsOf(c.Axis))
			reach, open := c.Certificate.Reach.In(mm), c.Certificate.Bound.In(mm)
			if c.Certificate.Bound == units.MaxLength || kind == form.MZCY && c.Certificate.Bound == c.CYLt {
				if open = 0; reach > 1e-4 {
					reached++
				}
			}
			good := [4]float64{}
			for range 500 {
				size := reach * math.Pow(10, -6*r.Float64())
				var m [4]float64
				for k := range m {
					m[k] = r.NormFloat64()
				}
				if r.IntN(2) == 0 {
					for k := range m {
						m[k] = good[k] + 0.1*m[k]
					}
				}
				most := max(math.Hypot(m[0], m[1]), math.Hypot(m[2], m[3]))
				e := endsOf(c.Axis)
				for k := range m {
					m[k] *= size / most
				}
				e[0], e[1], e[3], e[4] = e[0]+m[0], e[1]+m[1], e[3]+m[2], e[4]+m[3]
				tried++
				v := costAbout(ps, kind, e)
				if v < is-open-6e-9 {
					t.Fatalf("%v: better by %.3g mm than %v at %v, of a bound of %v", kind, is-v, c.CYLt, m, c.Certificate.Bound)
				}
				if v < is+0.05*size {
					for k := range m {
						good[k] = m[k] / size
					}
				}
			}
		}
	}
	if t.Logf("%d axes, %d cylinders proved, %d of open walls", tried, proved, reached); proved < 60 || reached < 10 {
		t.Errorf("%d cylinders proved, %d of open walls", proved, reached)
	}
}

// openWall is one that somebody saw from 125° to 170° of.
func openWall(r *rand.Rand) (ps [][3]float64) {
	radius, deep, arc := 20+20*r.Float64(), 20+80*r.Float64(), math.Pi*(0.7+0.25*r.Float64())
	for level := range 5 {
		for i := range 20 {
			s, c := math.Sincos(arc * (float64(i) + r.Float64()) / 20)
			d := radius + 0.01*r.NormFloat64()
			ps = append(ps, [3]float64{d * c, d * s, deep * float64(level) / 4})
		}
	}
	return ps
}

// endsOf are the two points of an axis, in mm.
func endsOf(a form.Axis) [6]float64 {
	return [6]float64{a.From.X.In(mm), a.From.Y.In(mm), a.From.Depth.In(mm), a.To.X.In(mm), a.To.Y.In(mm), a.To.Depth.In(mm)}
}

// costAbout is what a minimax cylinder makes least, about an axis through two points.
func costAbout(ps [][3]float64, kind form.Reference, e [6]float64) float64 {
	w := vectorOf(e[3]-e[0], e[4]-e[1], e[5]-e[2])
	in, out := math.Inf(1), 0.0
	for _, p := range ps {
		x, y, z := p[0]-e[0], p[1]-e[1], p[2]-e[2]
		cx, cy, cz := y*w[2]-z*w[1], z*w[0]-x*w[2], x*w[1]-y*w[0]
		d := math.Sqrt(cx*cx + cy*cy + cz*cz)
		in, out = min(in, d), max(out, d)
	}
	return map[form.Reference]float64{form.MZCY: out - in, form.MCCY: out, form.MICY: -in}[kind]
}

// The expansion that the certificate rests on: a distance after a move is that before, less the move along
// the direction, plus s²/2d − d·a²/2, but for what is of third order; and that has the bounds given.
func TestDistancesAfterAMove(t *testing.T) {
	r := rand.New(rand.NewPCG(5, 23))
	tight := 0.0
	for range 20_000 {
		in := 10 + 40*r.Float64()
		out := in * (1 + 0.05*r.Float64())
		length := in * (0.1 + 4*r.Float64())
		d, h, at := in+(out-in)*r.Float64(), r.Float64(), 2*math.Pi*r.Float64()
		size := in / 2 * math.Pow(10, -4*r.Float64())
		var m [4]float64 // of the two ends
		var norm float64
		for k := range m {
			m[k] = r.NormFloat64()
			norm += m[k] * m[k]
		}
		for k := range m {
			m[k] *= size / math.Sqrt(norm)
		}
		s, c := math.Sincos(at)
		u, v := (1-h)*m[0]+h*m[2], (1-h)*m[1]+h*m[3]
		along, across := c*u+s*v, c*v-s*u
		tilt := (c*(m[2]-m[0]) + s*(m[3]-m[1])) / length
		second := across*across/(2*d) - d*tilt*tilt/2
		point := [3]float64{d * c, d * s, h * length}
		is := -costAbout([][3]float64{point}, form.MICY, [6]float64{m[0], m[1], 0, m[2], m[3], length})
		third := is - (d - along + second)
		bound, bent, total := form.Margins(form.MCCY, in, out, length, size)
		inner, _, _ := form.Margins(form.MICY, in, out, length, size)
		if third < -bound-1e-12 || third > inner+1e-12 {
			t.Fatalf("d %v, length %v, move %v: third order %v, bounds %v and %v", d, length, m, third, -bound, inner)
		}
		if second < -bent*size*size-1e-15 || math.Abs(second) > total*size*size+1e-15 {
			t.Fatalf("second order %v, bounds %v and %v", second, bent*size*size, total*size*size)
		}
		_, bent, either := form.Margins(form.MICY, in, out, length, size)
		if _, _, both := form.Margins(form.MZCY, in, out, length, size); either != total || both != 2*total { // the weights of each side add up to one
			t.Fatalf("either way %v outside, %v inside, %v of both", total, either, both)
		}
		if second > bent*size*size+1e-15 {
			t.Fatalf("second order %v, bound %v", second, bent*size*size)
		}
		if size < in/50 {
			tight = max(tight, math.Abs(third)/bound)
		}
	}
	if tight < 0.1 {
		t.Errorf("the bound is %v times what it need be", 1/tight)
	}
}

// The closure is that of the widest gap at either end, and of nothing between them.
func TestClosure(t *testing.T) {
	for _, gap := range []float64{20, 40, 90, 150} {
		var ps [][3]float64
		for _, z := range []float64{0, 50, 100} {
			for deg := 0.0; deg <= 360-gap; deg += 5 {
				if z == 50 && deg > 100 {
					continue
				}
				s, c := math.Sincos(deg * math.Pi / 180)
				ps = append(ps, [3]float64{30 * c, 30 * s, z})
			}
		}
		axis := form.Axis{To: form.WallPoint{Depth: 100 * mm}}
		got := form.Closure(form.Cylinder{Axis: axis}, wallOf(t, ps))
		want := math.Cos(gap/2*math.Pi/180) - 2./128
		if got > want+1e-9 || got < want-0.03 { // a gap seen through sectors is wider, by 3° at most
			t.Errorf("gap of %v°: %v, want %v", gap, got, want)
		}
	}
	// On a screw line a share of the length has to hold a turn.
	var ps [][3]float64
	for i := range 400 {
		s, c := math.Sincos(2 * math.Pi * float64(i) / 40)
		ps = append(ps, [3]float64{30 * c, 30 * s, float64(i) / 4})
	}
	got := form.Closure(form.Cylinder{Axis: form.Axis{To: form.WallPoint{Depth: 100 * mm}}}, wallOf(t, ps))
	if want := math.Cos(4.5*math.Pi/180) - 2./8; got > want+1e-9 || got < want-0.01 {
		t.Errorf("screw line: %v, want %v", got, want)
	}
}
