// SPDX-License-Identifier: BSD-3-Clause

package form_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"borewright.example/bore/form"
)

// pullsOf are, for each contact, the four numbers by which it comes nearer for the moves of the axis's ends,
// that of an inner contact turned round, and its distance, its direction and its height. They are taken by
// differences of the distances, in the frame of the wall.
func pullsOf(ps [][3]float64, c form.Cylinder) (pulls [][4]float64, outer []bool, second func(m [4]float64) float64) {
	e := endsOf(c.Axis)
	dir := vectorOf(e[3]-e[0], e[4]-e[1], e[5]-e[2])
	// The points lie between these heights, those of the ends of the axis and what a lean adds.
	over := c.Outer.In(mm) * math.Hypot(dir[0], dir[1]) / dir[2]
	low, high := -over, math.Hypot(math.Hypot(e[3]-e[0], e[4]-e[1]), e[5]-e[2])+over
	// Two directions square to the axis.
	right := vectorOf(dir[2], 0, -dir[0])
	up := [3]float64{dir[1]*right[2] - dir[2]*right[1], dir[2]*right[0] - dir[0]*right[2], dir[0]*right[1] - dir[1]*right[0]}
	distance := func(i int, m [4]float64) float64 {
		var q [6]float64
		for k := range 3 {
			q[k] = e[k] + low*dir[k] + m[0]*right[k] + m[1]*up[k]
			q[3+k] = e[k] + high*dir[k] + m[2]*right[k] + m[3]*up[k]
		}
		return -costAbout(ps[i:i+1], form.MICY, q)
	}
	const step = 1e-3
	for _, p := range c.Certificate.Contacts() {
		var pull [4]float64
		for k := range pull {
			var m [4]float64
			m[k] = step
			ahead := distance(p.Index, m)
			m[k] = -step
			pull[k] = (distance(p.Index, m) - ahead) / (2 * step)
			if !p.Outer {
				pull[k] = -pull[k]
			}
		}
		pulls, outer = append(pulls, pull), append(outer, p.Outer)
	}
	second = func(m [4]float64) (sum float64) {
		const step = 0.05
		ahead, behind := m, m
		for k := range m {
			ahead[k], behind[k] = step*m[k], -step*m[k]
		}
		for _, p := range c.Certificate.Contacts() {
			d := (distance(p.Index, ahead) + distance(p.Index, behind) - 2*distance(p.Index, [4]float64{})) / (2 * step * step)
			if !p.Outer {
				d = -d
			}
			sum += p.Weight * d
		}
		return sum
	}
	return pulls, outer, second
}

func times(a, b [4]float64) float64 { return a[0]*b[0] + a[1]*b[1] + a[2]*b[2] + a[3]*b[3] }

// squareTo returns vectors of length 1 that span what is square to all of these, by Gram and Schmidt.
func squareTo(vs [][4]float64) (span, rest [][4]float64) {
	take := func(v [4]float64, to [][4]float64) ([4]float64, float64) {
		for range 2 {
			for _, b := range to {
				d := times(v, b)
				for k := range v {
					v[k] -= d * b[k]
				}
			}
		}
		return v, math.Sqrt(times(v, v))
	}
	for _, v := range vs {
		if u, l := take(v, span); l > 1e-7 {
			for k := range u {
				u[k] /= l
			}
			span = append(span, u)
		}
	}
	all := span
	for len(all) < 4 {
		var best [4]float64
		most := 0.0
		for k := range 4 {
			var e [4]float64
			e[k] = 1
			if u, l := take(e, all); l > most {
				best, most = u, l
			}
		}
		for k := range best {
			best[k] /= most
		}
		all, rest = append(all[:len(all):len(all)], best), append(rest, best)
	}
	return span, rest
}

// Growth is by how much the contacts make a cylinder worse for each length that its axis moves, in the directions
// that they hold: no move falls short of it, and the direction that is square to all pulls of a side but one comes
// down to it. Stiff is the least curvature of the weighed distances in the other directions.
func TestContactsHoldTheAxis(t *testing.T) {
	r := rand.New(rand.NewPCG(31, 7))
	tried, bent := 0, 0
	for range 150 {
		ps, radius := someWall(r)
		if r.IntN(2) == 0 { // an oval one, which few contacts carry
			for i, p := range ps {
				d := radius / 500 * math.Cos(2*math.Atan2(p[1], p[0]))
				ps[i][0], ps[i][1] = p[0]*(1+d/radius), p[1]*(1+d/radius)
			}
		}
		w := wallOf(t, ps)
		for _, kind := range minimax {
			c, err := w.Cylindricity(kind)
			if err != nil {
				t.Fatal(err)
			}
			growth, stiff := form.Growth(c, w)
			if growth == 0 {
				continue
			}
			tried++
			pulls, outer, second := pullsOf(ps, c)
			worse := func(m [4]float64) float64 { // by how much, of first order
				most := [2]float64{math.Inf(-1), math.Inf(-1)}
				for i, p := range pulls {
					side := 0
					if outer[i] {
						side = 1
					}
					most[side] = max(most[side], -times(p, m))
				}
				sum := 0.0
				for _, x := range most {
					if !math.IsInf(x, -1) {
						sum += x
					}
				}
				return sum
			}
			differences := func(without int) (ds [][4]float64) {
				for _, side := range [...]bool{false, true} {
					first := -1
					for i, p := range pulls {
						if i == without || outer[i] != side {
							continue
						}
						if first < 0 {
							first = i
							continue
						}
						for k := range p {
							p[k] -= pulls[first][k]
						}
						ds = append(ds, p)
					}
				}
				return ds
			}
			span, rest := squareTo(differences(-1))
			least := math.Inf(1)
			for j := range pulls {
				// The direction in the span that no other difference tells apart.
				held, _ := squareTo(append(differences(j), rest...))
				if len(held) != 3 {
					continue // alone on its side
				}
				_, only := squareTo(held)
				least = min(least, max(0, worse(only[0])), max(0, worse([4]float64{-only[0][0], -only[0][1], -only[0][2], -only[0][3]})))
			}
			if math.Abs(least-growth) > 1e-5*(1+growth) {
				t.Fatalf("%v, %d contacts: growth %v, want %v", kind, len(pulls), growth, least)
			}
			for range 50 {
				var m [4]float64
				for _, b := range span {
					x := r.NormFloat64()
					for k := range m {
						m[k] += x * b[k]
					}
				}
				if l := math.Sqrt(times(m, m)); worse(m) < (growth-1e-5)*l {
					t.Fatalf("%v: a move of %v makes it worse by %v, growth %v", kind, l, worse(m), growth)
				}
			}
			if len(rest) == 0 {
				if stiff != -1 {
					t.Fatalf("%v: stiff %v in no direction", kind, stiff)
				}
				continue
			}
			bent++
			softest := math.Inf(1)
			for k := range 2000 { // half a turn of directions
				s, c := math.Sincos(math.Pi * float64(k) / 2000)
				if len(rest) == 1 {
					s, c = 0, 1
				}
				var m [4]float64
				for i := range m {
					m[i] = c * rest[0][i]
					if len(rest) > 1 {
						m[i] += s * rest[1][i]
					}
				}
				softest = min(softest, second(m))
				if len(rest) == 1 {
					break
				}
			}
			if math.Abs(softest-stiff) > 1e-5/c.Inner.In(mm)+1e-3*math.Abs(stiff) {
				t.Fatalf("%v: stiff %v, want %v in %d directions", kind, stiff, softest, len(rest))
			}
		}
	}
	t.Logf("%d cylinders, %d bent", tried, bent)
	if tried < 300 || bent < 5 {
		t.Errorf("%d cylinders, %d of them held by their bending too", tried, bent)
	}
}

// A move m is a share x of itself in the directions that the contacts hold, and the rest across. It makes the
// cylinder worse by growth·x·m at least, less what the distances bend the wrong way; or, by the balance of the
// contacts, by their curvature: stiff across, total between and along. Holds wherever one of the two is enough,
// for every x, and nowhere else.
func TestHoldsByOneOrTheOther(t *testing.T) {
	r := rand.New(rand.NewPCG(37, 3))
	both, yes := 0, 0
	for range 3000 {
		m := form.Margin{In: 20 + 30*r.Float64(), Kind: minimax[r.IntN(3)]}
		m.Out, m.Length = m.In*(1+0.01*r.Float64()), m.In*(0.3+4*r.Float64())
		m.Growth = math.Pow(10, -3*r.Float64())
		_, bent, total := form.Margins(m.Kind, m.In, m.Out, m.Length, 1)
		m.Stiff = -1
		if r.IntN(4) > 0 {
			m.Stiff = total * math.Pow(10, -2*r.Float64())
		}
		size := m.In / 2 * math.Pow(10, -5*r.Float64())
		third, _, _ := form.Margins(m.Kind, m.In, m.Out, m.Length, size)
		// Nearest to failing, over x, of what the better of the two leaves.
		left := func(growth, stiff float64) float64 {
			least := math.Inf(1)
			even := (bent*size*size + third) / (growth * size) // where the first is nothing
			for k := range 402 {
				x := float64(k) / 400
				if k == 401 {
					x = even * (1 - 1e-9)
				}
				if x > 1 {
					continue
				}
				a := growth*x*size - bent*size*size - third
				b := math.Inf(-1)
				if m.Stiff >= 0 {
					b = (stiff*(1-x*x)-2*total*x-total*x*x)*size*size - third
				} else if x < 1 {
					continue // nothing is across
				}
				least = min(least, max(a, b))
			}
			return least
		}
		got := m.Holds(size)
		switch sure, never := left(m.Growth*0.99, m.Stiff*0.99) > 0, left(m.Growth*1.01, m.Stiff*1.01) < 0; {
		case sure && !got:
			t.Fatalf("%+v, move %v: does not hold", m, size)
		case never && got:
			t.Fatalf("%+v, move %v: holds", m, size)
		case got:
			yes++
		}
		if m.Stiff >= 0 {
			both++
		}
		// Reach is the greatest such move, by halving.
		if reach := m.Reach(); reach > 0 && (!m.Holds(reach) || reach < m.In/2 && m.Holds(reach*1.001)) {
			t.Fatalf("%+v: reach %v", m, reach)
		}
		if got && m.Reach() < size*0.999999 {
			t.Fatalf("%+v: reach %v, and %v holds", m, m.Reach(), size)
		}
	}
	if yes < 400 || both < 1000 {
		t.Errorf("%d hold, %d with directions across", yes, both)
	}
}

// The widest gap of directions is seen through sectors: never narrower than it is, and by two sectors wider at most.
func TestWidestGap(t *testing.T) {
	r := rand.New(rand.NewPCG(41, 1))
	const sector = 2. / 64 // a 64th of a side of the diamond, at its middle, which is 1/√2 from the centre
	for range 2000 {
		n := 1 + r.IntN(12)
		angles := make([]float64, n)
		for i := range angles {
			angles[i] = 2 * math.Pi * r.Float64()
		}
		gap := 0.0
		for _, a := range angles {
			next := 2 * math.Pi
			for _, b := range angles {
				if d := math.Mod(b-a+2*math.Pi, 2*math.Pi); d > 0 {
					next = min(next, d)
				}
			}
			gap = max(gap, next)
		}
		got := form.Widest(angles)
		if got < min(gap, 2*math.Pi)-1e-12 || got > gap+2*sector {
			t.Fatalf("%v: widest %v, want %v", angles, got, gap)
		}
	}
	if got := form.Widest(nil); got != 2*math.Pi {
		t.Errorf("no direction: %v", got)
	}
}
