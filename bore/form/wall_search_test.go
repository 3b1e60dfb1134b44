// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"borewright.example/bore/form"
)

// What faces leave of a cube is the hull of the corners: no face leaves one outside, and no move that all of them leave
// lies farther out, in any direction, than a corner; and in some directions it comes near one.
func TestRegionIsWhatItsFacesLeave(t *testing.T) {
	r := rand.New(rand.NewPCG(51, 1))
	near := 0
	for range 200 {
		region := form.Cube(1)
		var faces [][4]float64
		var ats []float64
		for range 1 + r.IntN(10) {
			var f [4]float64
			for k := range f {
				f[k] = r.NormFloat64()
			}
			at := r.Float64() // nothing is cut from the middle
			if r.IntN(4) == 0 {
				at = 0 // but that it lies on the face
			}
			if !region.Cut(f, at) {
				t.Fatal("no room")
			}
			faces, ats = append(faces, f), append(ats, at)
		}
		corners := region.Corners()
		for _, c := range corners {
			for i, f := range faces {
				if times(c, f) > ats[i]+1e-9 {
					t.Fatalf("a corner is %v beyond a face", times(c, f)-ats[i])
				}
			}
			if m := max(math.Abs(c[0]), math.Abs(c[1]), math.Abs(c[2]), math.Abs(c[3])); m > 1+1e-9 {
				t.Fatalf("a corner is at %v", c)
			}
		}
		for range 30 {
			var e [4]float64
			for k := range e {
				e[k] = r.NormFloat64()
			}
			most := math.Inf(-1)
			for _, c := range corners {
				most = max(most, times(c, e))
			}
			// As far as faces let go along e, and then along the faces met.
			far := math.Inf(-1)
			for range 40 {
				var m [4]float64
				for k := range m {
					m[k] = 2*r.Float64() - 1
				}
				for i, f := range faces {
					if over := times(m, f) - ats[i]; over > 0 {
						for k := range m {
							m[k] -= 1.0000001 * over * f[k] / times(f, f)
						}
					}
				}
				inside := max(math.Abs(m[0]), math.Abs(m[1]), math.Abs(m[2]), math.Abs(m[3])) <= 1
				for i, f := range faces {
					inside = inside && times(m, f) <= ats[i]
				}
				if inside {
					far = max(far, times(m, e))
				}
			}
			if far > most+1e-9 {
				t.Fatalf("a move reaches %v, no corner %v", far, most)
			}
			if far > 0.7*most {
				near++
			}
		}
	}
	if t.Logf("%d near", near); near < 500 {
		t.Errorf("%d moves came near the corners", near)
	}
}

// Where there is no room for more corners, or more faces, nothing is left out.
func TestRegionWithoutRoomStays(t *testing.T) {
	r := rand.New(rand.NewPCG(52, 1))
	touching := func() (f [4]float64, at float64) { // the corner of a cube alone
		for k := range f {
			f[k] = 0.1 + r.Float64()
			at += f[k]
		}
		return f, at
	}
	tangent := func() (f [4]float64, at float64) { // to a ball
		for k := range f {
			f[k] = r.NormFloat64()
		}
		return f, 0.9 * math.Sqrt(times(f, f))
	}
	for name, face := range map[string]func() ([4]float64, float64){"faces": touching, "corners": tangent} {
		region := form.Cube(1)
		f, at := face()
		for n := 0; region.Cut(f, at); n++ {
			if f, at = face(); n > 200 {
				t.Fatalf("%s: %d cuts", name, n)
			}
		}
		was := region.Corners()
		if name == "faces" { // one that would leave out half of them
			f, at = [4]float64{1}, 0
		} else {
			for range 100 {
				e, least := tangent()
				if !slices.ContainsFunc(was, func(c [4]float64) bool { return times(c, e) >= least }) {
					t.Fatal("of the ball a part is left out")
				}
			}
		}
		if region.Cut(f, at) {
			t.Fatalf("%s: there was no room, and is", name)
		}
		for _, c := range was {
			if !slices.Contains(region.Corners(), c) {
				t.Fatalf("%s: corner %v is left out", name, c)
			}
		}
	}
}

// movedEnds are two points of the axis of a cylinder after a move of its ends, which lie as far out as the points may.
func movedEnds(c form.Cylinder, w form.Wall) func(m [4]float64) [6]float64 {
	e := endsOf(c.Axis)
	dir := vectorOf(e[3]-e[0], e[4]-e[1], e[5]-e[2])
	length := math.Hypot(math.Hypot(e[3]-e[0], e[4]-e[1]), e[5]-e[2])
	over := c.Outer.In(mm)*math.Hypot(dir[0], dir[1])/math.Abs(dir[2]) + 2e-9
	right, up := form.Sight(c, w)
	return func(m [4]float64) (q [6]float64) {
		for k := range 3 {
			q[k] = e[k] - over*dir[k] + m[0]*right[k] + m[1]*up[k]
			q[3+k] = e[k] + (length+over)*dir[k] + m[2]*right[k] + m[3]*up[k]
		}
		return q
	}
}

// wideMove is a move of the ends of an axis and half of how far about it one may look: on a wall shorter than its radius
// of up to 40° of tilt, where the second order of outer points is more than that of inner ones.
func wideMove(r *rand.Rand, radius, long float64) (m [4]float64, half float64) {
	most := 0.3 * min(long, radius)
	for k := range m {
		m[k] = most * math.Pow(10, -2*r.Float64()) * (2*r.Float64() - 1)
	}
	return m, most * math.Pow(10, -0.3-2.5*r.Float64())
}

// From an axis that has moved, distances change by the pulls, and bend the wrong way by no more than is said.
func TestSearchSeesDistancesBend(t *testing.T) {
	r := rand.New(rand.NewPCG(53, 1))
	var tight [2]float64 // of inner and of outer contacts
	for range 60 {
		radius, long := 20+30*r.Float64(), math.Pow(10, -1+1.5*r.Float64())
		ps := boreWall(r, 2+r.IntN(4), 6+r.IntN(12), radius, radius*long, radius*math.Pow(10, -2-3*r.Float64()))
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylindricity(kind)
			if err != nil {
				continue
			}
			ends := movedEnds(c, w)
			m, half := wideMove(r, radius, radius*long)
			distance := func(i int, m [4]float64) float64 { return -costAbout(ps[i:i+1], form.MICY, ends(m)) }
			look := form.LookFrom(c, w, m, half, c.Inner.In(mm), c.Outer.In(mm))
			for j, p := range c.Certificate.Contacts() {
				d, pull, bends := look.Contact(j)
				if want := distance(p.Index, m); math.Abs(d-want) > 1e-8 {
					t.Fatalf("%v: distance %v, want %v", kind, d, want)
				}
				for k := range 4 {
					step := 1e-6 * radius * long
					a, b := m, m
					a[k], b[k] = m[k]+step, m[k]-step
					if want := (distance(p.Index, b) - distance(p.Index, a)) / (2 * step); math.Abs(pull[k]-want) > 1e-7 {
						t.Fatalf("%v: pull %v, want %v", kind, pull, want)
					}
				}
				side := 0
				if p.Outer {
					side = 1
				}
				for corner := range 16 {
					var d4, to [4]float64
					for k := range d4 {
						d4[k] = half * float64(2*(corner>>k&1)-1)
						to[k] = m[k] + d4[k]
					}
					wrong := distance(p.Index, to) - (d - times(pull, d4))
					if p.Outer {
						wrong = -wrong
					}
					if wrong > bends+1e-9 {
						t.Fatalf("%v, contact %v: bends by %v, not %v", kind, p, wrong, bends)
					}
					if bends > 1e-5 {
						tight[side] = max(tight[side], wrong/bends)
					}
				}
			}
		}
	}
	t.Logf("%.3f of the bounds", tight)
	if tight[0] < 0.9 || tight[1] < 0.9 {
		t.Errorf("the bounds are %v times what they need be", tight)
	}
}

// From an axis that has moved, no face excludes a move after which the cylinder is better, be it by ever so little; and by
// the balance the contacts are as near as they come.
func TestSearchExcludesNothingBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(67, 1))
	var faces, gains int // that it would do to be so much smaller
	for range 80 {
		radius, long := 20+30*r.Float64(), math.Pow(10, -1+1.5*r.Float64())
		ps := boreWall(r, 2+r.IntN(2), 5+r.IntN(5), radius, radius*long, radius*math.Pow(10, -2-3*r.Float64()))
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylindricity(kind)
			if err != nil {
				continue
			}
			ends := movedEnds(c, w)
			for range 12 {
				m, half := wideMove(r, radius, radius*long)
				var d, to [4]float64
				share := min(1, 2*r.Float64())
				for k := range d {
					d[k] = share * half * float64(2*r.IntN(2)-1)
					to[k] = m[k] + d[k]
				}
				e := ends(to)
				in, out := -costAbout(ps, form.MICY, e)-1e-8, costAbout(ps, form.MCCY, e)+1e-8
				look := form.LookFrom(c, w, m, half, in, out)
				face, at := look.Face(d)
				if times(face, d) > at {
					t.Fatalf("%v: a face at %v excludes something better that measures %v", kind, at, times(face, d))
				}
				if times(face, d) > 0.9*at {
					faces++
				}
				better := 0.0
				for _, p := range c.Certificate.Contacts() {
					is := -costAbout(ps[p.Index:p.Index+1], form.MICY, e)
					if p.Outer {
						better += p.Weight * (out - is)
					} else {
						better += p.Weight * (is - in)
					}
				}
				gain := look.Gain()
				if better > gain {
					t.Fatalf("%v: contacts nearer by %v, and by no more than %v is said", kind, better, gain)
				}
				if better > 0.9*gain {
					gains++
				}
			}
		}
	}
	if t.Logf("%d faces and %d gains hardly wider", faces, gains); faces < 100 || gains < 100 {
		t.Errorf("%d faces and %d gains hardly wider", faces, gains)
	}
}

// Where a point may reach the axis, nothing is said.
func TestSearchSaysNothingOfPointsOnTheAxis(t *testing.T) {
	ps := boreWall(rand.New(rand.NewPCG(71, 1)), 4, 12, 30, 90, 0.01)
	w := wallOf(t, ps)
	for _, kind := range minimax {
		c, err := w.Cylindricity(kind)
		must(t, c, err)
		right, up := form.Sight(c, w)
		e := endsOf(c.Axis)
		for _, p := range c.Certificate.Contacts() {
			for _, half := range []float64{1e-6, 1, 10} { // once it lies on the axis, to rounding
				var u, v float64
				for k, x := range ps[p.Index] {
					u, v = u+(x-e[k])*right[k], v+(x-e[k])*up[k]
				}
				u, v = u-half/9, v+half/7
				look := form.LookFrom(c, w, [4]float64{u, v, u, v}, half, c.Inner.In(mm), c.Outer.In(mm))
				if gain := look.Gain(); !math.IsInf(gain, 1) {
					t.Fatalf("%v: better by no more than %v", kind, gain)
				}
			}
		}
	}
}

// About an axis that is not the best, a search round it leaves open at least what the best is better by.
func TestSearchMissesNothingBetter(t *testing.T) {
	r := rand.New(rand.NewPCG(57, 1))
	tried, small := 0, 0
	for range 120 {
		ps, radius := someWall(r)
		w := wallOf(t, ps)
		for _, kind := range minimax {
			best, err := w.Cylindricity(kind)
			if err != nil {
				continue
			}
			c := best
			size := radius * math.Pow(10, -5-4*r.Float64())
			for _, l := range []*form.WallPoint{&c.Axis.From, &c.Axis.To} {
				l.X, l.Y = l.X+length(size*r.NormFloat64()), l.Y+length(size*r.NormFloat64())
			}
			e := endsOf(c.Axis)
			c.Inner, c.Outer = length(-costAbout(ps, form.MICY, e)), length(costAbout(ps, form.MCCY, e))
			c.CYLt = c.Outer - c.Inner
			gain := costAbout(ps, kind, e) - costAbout(ps, kind, endsOf(best.Axis))
			if gain < 3e-9 {
				continue
			}
			bound := form.Searched(c, w, 8*size)
			tried++
			if gain < 1e-6 {
				small++
			}
			if bound < gain-3e-9 {
				t.Fatalf("%v: better by %.4g mm %v away, and by no more than %.4g is said", kind, gain, size, bound)
			}
		}
	}
	if t.Logf("%d tried, %d by less than a nanometre", tried, small); tried < 200 || small < 20 {
		t.Errorf("%d tried, %d by less than a nanometre", tried, small)
	}
}

// From no axis round about, as far away as points exclude the rest, is a better cylinder found than one that is proved:
// of oval bores with scatter, which have many local optima.
func TestProvedIsTheBestFromAllAxes(t *testing.T) {
	r := rand.New(rand.NewPCG(59, 1))
	others, proved := 0, 0
	for range 60 {
		levels, around, long := 3+r.IntN(6), 8+r.IntN(12), []float64{15, 80}[r.IntN(2)]
		two, three := 2*math.Pi*r.Float64(), 2*math.Pi*r.Float64()
		var ps [][3]float64
		for l := range levels {
			z := float64(l) / float64(levels-1)
			turn := r.Float64()
			for k := range around {
				a := 2 * math.Pi * (float64(k) + turn) / float64(around)
				s, c := math.Sincos(a)
				d := 33.5 + 0.0015*math.Cos(2*a+two) + 0.0006*math.Cos(3*a+three) + 0.004*z - 0.01*z*z + 0.0003*r.NormFloat64()
				ps = append(ps, [3]float64{d*c + 0.04*z, d * s, long * z})
			}
		}
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylindricity(kind)
			if err != nil {
				t.Fatal(err)
			}
			if c.Check(w) != nil {
				continue
			}
			proved++
			is := costAbout(ps, kind, endsOf(c.Axis))
			for range 8 {
				var m [4]float64
				for k := range m {
					m[k] = c.CYLt.In(mm) * (4*r.Float64() - 2)
				}
				d, err := form.From(c, w, m)
				if err != nil {
					continue
				}
				v := costAbout(ps, kind, endsOf(d.Axis))
				if v < is-4e-9 {
					t.Fatalf("%v: proved, and %.4g mm better from %v", kind, is-v, m)
				}
				if v > is+4e-9 {
					others++
				}
			}
		}
	}
	if t.Logf("%d proved, %d other optima", proved, others); proved < 175 || others < 15 {
		t.Errorf("%d proved, %d other optima", proved, others)
	}
}

// A cylinder of a wall much shorter than its radius may lie across, its points far beyond the ends of its axis, where the
// rounding of these is larger; it holds its own check.
func TestShortWallsHoldTheirCheck(t *testing.T) {
	r := rand.New(rand.NewPCG(61, 1))
	found := 0
	for range 300 {
		radius := 20 + 30*r.Float64()
		w := wallOf(t, boreWall(r, 2+r.IntN(5), 6+r.IntN(10), radius, radius*(0.1+0.1*r.Float64()), radius*math.Pow(10, -2-r.Float64())))
		c, err := w.Cylindricity(form.MCCY)
		if err != nil {
			continue
		}
		found++
		if err := c.Check(w); errors.Is(err, form.ErrCertificate) {
			t.Fatal(err)
		}
	}
	if found < 250 {
		t.Errorf("%d found", found)
	}
}
