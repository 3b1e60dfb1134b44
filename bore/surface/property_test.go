// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// drawHeights draws a rough wall in µm: scatter, waves, grooves, flats, and rounding to a coarse digit.
func drawHeights(t *rapid.T, least, most int) []float64 {
	n := rapid.IntRange(least, most).Draw(t, "n")
	seed := rapid.Uint64().Draw(t, "seed")
	scatter := rapid.SampledFrom([]float64{0, 0.01, 0.3, 2}).Draw(t, "scatter")
	wave := rapid.SampledFrom([]float64{0, 1, 20}).Draw(t, "wave")
	grooves := rapid.SampledFrom([]float64{0, 1, 8}).Draw(t, "grooves")
	digit := rapid.SampledFrom([]float64{1e-6, 0.01, 0.5}).Draw(t, "digit")
	r := rand.New(rand.NewPCG(seed, 1))
	z := make([]float64, n)
	for i := range z {
		x := float64(i) / float64(n)
		z[i] = scatter*r.NormFloat64() + wave*math.Sin(7*x)
		if i%29 < 3 {
			z[i] -= grooves * r.Float64()
		}
		z[i] = math.Round(z[i]/digit) * digit
	}
	return z
}

// The mean line is the best straight line by the weights, at every place, by the definition: all heights,
// weighed one by one, and the normal equations of two unknowns.
func TestMeanLineByDefinition(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := drawHeights(t, 10, 150)
		cutOff := rapid.Float64Range(2, 400).Draw(t, "cutoff")
		sigma := surface.Deviation(cutOff)
		got := surface.MeanLine(z, sigma)
		for i := range z {
			var s0, s1, s2, t0, t1 float64
			for j, h := range z {
				u := float64(j - i)
				w := math.Exp(-math.Pi * math.Pow(u/(math.Sqrt(math.Ln2/math.Pi)*cutOff), 2))
				s0, s1, s2, t0, t1 = s0+w, s1+w*u, s2+w*u*u, t0+w*h, t1+w*u*h
			}
			want := (s2*t0 - s1*t1) / (s0*s2 - s1*s1)
			// Weights and nodes are good to 2e-8 of the heights, the slope at an end to ten times that, and the
			// line there to three times that.
			if !(math.Abs(got[i]-want) <= 6e-7*(slices.Max(z)-slices.Min(z)+1e-3)) {
				t.Fatalf("at %d of %d, λc %.3g steps: %.9f, want %.9f", i, len(z), cutOff, got[i], want)
			}
		}
	})
}

// A filter passes every wave by exp(−2π²·σ²·f²), as many a step as it may be: those too that every other point, or
// every fourth, would show as another. Weights left out are 2e-8 of their sum, by which the rest are too large as well;
// what the halvings leave is half of that. Deviations lie on either side of where a halving more begins.
func TestEveryWavePasses(t *testing.T) {
	for _, sigma := range []float64{5, 8.1, 12.1, 15.99, 16.01, 24, 31.99, 32.1, 64.1} {
		n := int(14*sigma) | 1
		z := make([]float64, n)
		for k := range 101 {
			f := float64(k) / 200 // a wave in two steps and longer ones
			want := math.Exp(-2 * math.Pi * math.Pi * sigma * sigma * f * f)
			for i := range z {
				z[i] = math.Cos(2*math.Pi*f*float64(i) + 1)
			}
			for i, m := range surface.MeanLine(z, sigma)[n/2-2 : n/2+3] {
				if at := z[n/2-2+i]; !(math.Abs(m-want*at) <= 5e-8) {
					t.Fatalf("σ %g steps, %g waves a step: %.10f of %.10f, want the %.10f-th", sigma, f, m, at, want)
				}
			}
		}
	}
}

func TestSortDown(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		most := rapid.SampledFrom([]int64{1, 3000, 1 << 22, 1<<51 - 1}).Draw(t, "most")
		keys := rapid.SliceOf(rapid.Int64Range(-most, most)).Draw(t, "keys")
		want := slices.Clone(keys)
		slices.SortFunc(want, func(a, b int64) int {
			return map[bool]int{true: -1, false: 1}[a > b] * map[bool]int{true: 0, false: 1}[a == b]
		})
		got := make([]float64, len(keys))
		for i, k := range keys {
			got[i] = float64(k)
		}
		surface.SortDown(got, make([]float64, len(keys)))
		for i, k := range want {
			if got[i] != float64(k) {
				t.Fatalf("%v, want %v", got, want)
			}
		}
	})
}

// The equivalent line by brute force: every 40 % of the curve, then the least-squares line by the closed
// form of two sums; and the triangles by adding up ten thousand slices of the curve.
func TestPlateauByBruteForce(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := drawHeights(t, 10, 400)
		r, err := profile(t, 0.001, z).TwoStep(surface.Filter{Sections: 1})
		c := must(t, r, err).Curve()
		p := c.Plateau()
		down := c.Z()
		n := len(down)
		wide := int(math.Round(0.4 * float64(n)))
		best, from := math.Inf(1), 0
		for i := 0; i+wide < n; i++ {
			if d := down[i] - down[i+wide]; d < best {
				best, from = d, i
			}
		}
		if got := p.From*float64(n) - 0.5; math.Abs(got-float64(from)) > 1e-6 {
			t.Fatalf("from %v, want %v", got, from)
		}
		var sx, sy, sxx, sxy, m float64
		for i := from; i <= from+wide; i++ {
			x := (float64(i) + 0.5) / float64(n)
			sx, sy, sxx, sxy, m = sx+x, sy+down[i], sxx+x*x, sxy+x*down[i], m+1
		}
		slope := (m*sxy - sx*sy) / (m*sxx - sx*sx)
		top := (sy - slope*sx) / m
		bottom := top + slope
		if math.Abs(p.Rk.In(um)+slope) > 1e-5 || math.Abs(p.Top.In(um)-top) > 1e-5 || math.Abs(p.Bottom.In(um)-bottom) > 1e-5 {
			t.Fatalf("Rk %v of %v to %v, want %.7f of %.7f to %.7f", p.Rk, p.Top, p.Bottom, -slope, top, bottom)
		}
		if p.Oil != units.Length(math.Round(float64(p.Rvk)*(1-p.Mr2)/2)) && (p.Oil-units.Length(float64(p.Rvk)*(1-p.Mr2)/2)).Abs() > 1 {
			t.Fatalf("oil %v of %v", p.Oil, p)
		}
		const slices = 20_000
		var over, under float64
		for i := range slices {
			h := c.Height((float64(i) + 0.5) / slices).In(um)
			over += max(0, h-p.Top.In(um)) / slices
			under += max(0, p.Bottom.In(um)-h) / slices
		}
		total := down[0] - down[n-1]
		if a := p.Rpk.In(um) * p.Mr1 / 2; math.Abs(a-over) > 2e-4*total+1e-6 {
			t.Fatalf("peaks of %.7f, want %.7f: %v", a, over, p)
		}
		if a := p.Rvk.In(um) * (1 - p.Mr2) / 2; math.Abs(a-under) > 2e-4*total+1e-6 {
			t.Fatalf("valleys of %.7f, want %.7f: %v", a, under, p)
		}
	})
}

// Height and Ratio are inverse to each other where the curve falls, and neither rises.
func TestCurveInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := drawHeights(t, 10, 300)
		r, err := profile(t, 0.001, z).TwoStep(surface.Filter{Sections: 1})
		c := must(t, r, err).Curve()
		share := rapid.Float64Range(0, 1).Draw(t, "share")
		h := c.Height(share)
		if again := c.Height(c.Ratio(h)); (again - h).Abs() > 2 {
			t.Fatalf("at %v the height %v, at its ratio %v the height %v", share, h, c.Ratio(h), again)
		}
		if lower := c.Height(min(1, share+0.01)); lower > h {
			t.Fatalf("the curve rises after %v", share)
		}
		count := 0
		for _, v := range c.Z() {
			if v >= h.In(um) {
				count++
			}
		}
		if got := c.Ratio(h); math.Abs(got-float64(count)/float64(len(z))) > 1/float64(len(z)) {
			t.Fatalf("Ratio(%v) = %v, but %d of %d heights", h, got, count, len(z))
		}
	})
}

// alike holds all parameters of two textures against each other, with heights of the second by a factor.
func alike(t *rapid.T, what string, a, b surface.Texture, factor, tolerance float64) {
	t.Helper()
	for _, p := range []string{"Ra", "Rq", "Rz", "Rt", "Rpk", "Rk", "Rvk", "oil"} {
		x, y := value(a, p)*factor, value(b, p)
		if math.Abs(x-y) > tolerance*(1+value(a, "Rt")*factor) {
			t.Fatalf("%s: %v is %.9f and %.9f", what, p, x, y)
		}
	}
}

func value(t surface.Texture, p string) float64 {
	return map[string]units.Length{"Ra": t.Ra, "Rq": t.Rq, "Rz": t.Rz, "Rt": t.Rt,
		"Rpk": t.Rpk, "Rk": t.Rk, "Rvk": t.Rvk, "oil": t.Oil}[p].In(um)
}

// sameCore takes the plateaus out of two textures whose flattest 40 % are in different places, where the first of the curve
// falls as much over the one as over the other to the tolerance: either is then right.
func sameCore(t *rapid.T, c surface.Curve, a, b *surface.Texture, tolerance float64) {
	t.Helper()
	if a.From == b.From {
		return
	}
	fall := func(from float64) float64 { return (c.Height(from) - c.Height(from+0.4)).In(um) }
	if math.Abs(fall(a.From)-fall(b.From)) > tolerance*(1+a.Rt.In(um)) {
		t.Fatalf("the core begins at %v, where the curve falls by %v, and at %v, by %v", a.From, fall(a.From), b.From, fall(b.From))
	}
	a.Plateau, b.Plateau = surface.Plateau{}, surface.Plateau{}
}

// smooth draws a profile of plateaus and grooves.
func smooth(t *rapid.T) []float64 {
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "seed"), 2))
	z := make([]float64, 600+2*rapid.IntRange(0, 50).Draw(t, "more"))
	for i := range z {
		z[i] = r.NormFloat64() + 2*math.Sin(float64(i)/40)
		if i%47 < 4 {
			z[i] -= 5 * r.Float64()
		}
	}
	return z
}

// What must not matter: which way the stylus went, where zero is, how the set-up is tilted; and twice the
// heights have twice the parameters.
func TestInvariances(t *testing.T) {
	f := surface.Filter{CutOff: 100 * um, Short: 3 * um, Sections: 4}
	rapid.Check(t, func(t *rapid.T) {
		z := smooth(t)
		p := profile(t, 0.001, z)
		r, err := p.TwoStep(f)
		curve := must(t, r, err).Curve()
		same := func(what string, heights []float64, factor float64) (base, other surface.Texture) {
			base, other = must2(t)(p.Texture(f)), must2(t)(profile(t, 0.001, heights).Texture(f))
			sameCore(t, curve, &base, &other, 1e-4)
			alike(t, what, base, other, factor, 1e-4)
			return base, other
		}
		back := slices.Clone(z)
		slices.Reverse(back)
		same("reversed", back, 1)
		offset, tilt := rapid.Float64Range(-500, 500).Draw(t, "offset"), rapid.Float64Range(-0.3, 0.3).Draw(t, "tilt")
		moved, scaled := slices.Clone(z), slices.Clone(z)
		for i := range z {
			moved[i] += offset + tilt*float64(i)
			scaled[i] *= 3
		}
		same("moved and tilted", moved, 1)
		base, three := same("scaled", scaled, 3)
		if math.Abs(three.Rsk-base.Rsk) > 1e-4 || math.Abs(three.Rku-base.Rku) > 1e-4 || math.Abs(three.Mr2-base.Mr2) > 1e-3 {
			t.Fatalf("numbers without unit: %v and %v", base, three)
		}
		if math.Abs(three.Rdq-3*base.Rdq) > 1e-6*three.Rdq || math.Abs((three.RSm-base.RSm).In(um)) > 0.01 {
			t.Fatalf("Rdq %v and %v, RSm %v and %v", base.Rdq, three.Rdq, base.RSm, three.RSm)
		}
	})
}

// Heights within one texture keep the order of their definitions.
func TestOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := drawHeights(t, 60, 400)
		got := must2(t)(profile(t, 0.001, z).Texture(surface.Filter{CutOff: 12 * um, Sections: 5}))
		if got.Ra > got.Rq || got.Rq > got.Rt || got.Rz > got.Rt || (got.Rp+got.Rv-got.Rz).Abs() > 2 || got.Rku != 0 && got.Rku < got.Rsk*got.Rsk-1e-9 {
			t.Fatalf("%+v", got.Heights)
		}
		if got.Mr1 < 0 || got.Mr2 > 1 || got.Rk < 0 || got.Rpk < 0 || got.Rvk < 0 || got.Core == "" && got.Mr1 > got.Mr2 {
			t.Fatalf("%+v", got.Plateau)
		}
	})
}

// Twice as many points of a smooth profile, drawn straight between the old ones, change little.
func TestResampled(t *testing.T) {
	f := surface.Filter{CutOff: 400 * um, Sections: 5}
	rapid.Check(t, func(t *rapid.T) {
		phase := rapid.Float64Range(0, 6).Draw(t, "phase")
		shape := func(x float64) float64 {
			return math.Sin(x*131+phase) + 0.7*math.Sin(x*270) + 0.5*math.Sin(x*57.3) - math.Exp(3*math.Sin(89*x)-1)
		}
		coarse := must2(t)(profile(t, 0.001, sampled(3000, 3, shape)).Texture(f))
		fine := must2(t)(profile(t, 0.0005, sampled(6000, 3, shape)).Texture(f))
		// Between points of steps h a wave of ω has a peak that is higher by (ωh)²/8 of it: a hundredth of the
		// finest. The flattest 40 % of waves may be in several places: the plateau is left out.
		coarse.Plateau, fine.Plateau = surface.Plateau{}, surface.Plateau{}
		alike(t, "resampled", coarse, fine, 1, 5e-3)
	})
}

// What levelling leaves has no mean and no moment about any place, and what it took is a straight line: so it is
// the line of least squares.
func TestLevel(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := profile(t, 0.01, drawHeights(t, 200, 400))
		q, err := p.Level()
		left := must(t, q, err).Z()
		var sum, moment, bend float64
		for i, v := range left {
			sum, moment = sum+v, moment+float64(i)*v
			if i > 1 {
				took := func(i int) float64 { return p.Z()[i] - left[i] }
				bend = max(bend, math.Abs(took(i)-2*took(i-1)+took(i-2)))
			}
		}
		n := float64(len(left))
		if size := slices.Max(p.Z()) - slices.Min(p.Z()) + math.Abs(p.Z()[0]); math.Abs(sum/n) > 1e-12*size || math.Abs(moment/(n*n)) > 1e-12*size || bend > 1e-12*size {
			t.Fatalf("mean %v, moment %v, bend %v of %v", sum/n, moment/(n*n), bend, size)
		}
	})
}

// A circle bent over a profile comes off again, and leaves it as it was but for its own line.
func TestUnroll(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := drawHeights(t, 200, 400)
		diameter := rapid.Float64Range(40, 200).Draw(t, "diameter")
		step, n := 0.01, len(z)
		aside := rapid.Float64Range(-1, 1).Draw(t, "aside") // of the lowest place, mm
		bent := make([]float64, n)
		for i := range z {
			x := float64(i)*step - float64(n-1)*step/2 - aside
			// Along the radius: r − |p − centre| = z, the point above x.
			bent[i] = 1000 * (diameter/2 - math.Sqrt(math.Pow(diameter/2-z[i]/1000, 2)-x*x))
		}
		p, err := profile(t, step, bent).Unroll(units.Length(math.Round(diameter * float64(mm))))
		got := must(t, p, err)
		want, err := profile(t, step, z).Level()
		for i, v := range must(t, want, err).Z() {
			// The circle can take from the profile what looks like a line, and a little bend.
			if d := got.Z()[i] - v; math.Abs(d) > 0.02*(1+slices.Max(z)-slices.Min(z)) {
				t.Fatalf("at %d of %d: %v, want %v", i, n, got.Z()[i], v)
			}
		}
	})
}

// Nothing is wrong with a circle at all: what is left is zero.
func TestUnrollCircle(t *testing.T) {
	const r, step = 33.5, 0.002
	z := make([]float64, 4000)
	for i := range z {
		x := float64(i)*step - 3.1
		z[i] = 1000 * (r - math.Sqrt(r*r-x*x))
	}
	p, err := profile(t, step, z).Unroll(67 * mm)
	for i, v := range must(t, p, err).Z() {
		if math.Abs(v) > 1e-5 {
			t.Fatalf("at %d: %v µm", i, v)
		}
	}
	if q, err := profile(t, step, z).Unroll(70 * mm); err != nil || slices.Max(q.Z()) < 1 {
		t.Errorf("a wrong circle leaves %v, %v", slices.Max(q.Z()), err)
	}
}

// Points that stand unevenly, the first of them anywhere, are read off along the straight lines between them.
func TestUnevenPoints(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(10, 60).Draw(t, "n")
		x0, z0 := rapid.Float64Range(-500, 500).Draw(t, "x0"), rapid.Float64Range(-5, 5).Draw(t, "z0")
		x, z := make([]float64, n), make([]float64, n)
		points := make([]surface.Point, n)
		for i := range points {
			if x[i] = x0; i > 0 {
				x[i] = x[i-1] + rapid.Float64Range(0.5, 9).Draw(t, "step")
			}
			z[i] = z0 + rapid.Float64Range(-9, 9).Draw(t, "z")
			points[i] = surface.Point{X: heights(x[i])[0], Z: heights(z[i])[0]}
		}
		p, err := surface.FromPoints(points)
		got := must(t, p, err).Z()
		for i, v := range got {
			at := x[0] + (x[n-1]-x[0])*float64(i)/float64(n-1)
			k := 1
			for k < n-1 && x[k] < at {
				k++
			}
			want := z[k-1] + (z[k]-z[k-1])*(at-x[k-1])/(x[k]-x[k-1]) - z[0]
			if math.Abs(v-want) > 1e-4 {
				t.Fatalf("at %d: %v, want %v", i, v, want)
			}
		}
	})
}

// Points that a file rounded to a hundredth of their steps are taken as they are.
func TestEvenPoints(t *testing.T) {
	points := make([]surface.Point, 50)
	for i := range points {
		points[i] = surface.Point{X: units.Length(i+100)*um + units.Length(i%3-1)*um/250, Z: units.Length(i*i%7) * um}
	}
	p, err := surface.FromPoints(points)
	for i, v := range must(t, p, err).Z() {
		if want := float64(i * i % 7); v != want {
			t.Fatalf("at %d: %v, want %v", i, v, want)
		}
	}
}
