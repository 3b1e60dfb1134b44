// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"math"
	"strings"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// levels are heights that stay the same for so many points each.
func levels(parts ...[2]float64) (z []float64) {
	for _, p := range parts {
		for range int(p[0]) {
			z = append(z, p[1])
		}
	}
	return z
}

// An element begins at each rise through the mean line, on a point or between two; the first rise counts wherever it is; and
// an element narrower than a hundredth of a section is none. Of 1024 points that is 10.24.
func TestSpacingByCounting(t *testing.T) {
	repeated := func(n int, z []float64) (all []float64) {
		for range n {
			all = append(all, z...)
		}
		return all
	}
	wave := levels([2]float64{64, -1}, [2]float64{64, 1})
	// After the rise at 64, a pit one point wide, and a rise again so many steps after the first.
	pitted := func(steps int) []float64 {
		z := repeated(8, wave)
		z[64+steps-1] = -1
		return z
	}
	for _, row := range []struct {
		name     string
		z        []float64
		sections int
		want     float64 // steps
	}{
		{"rises on a point", repeated(64, levels([2]float64{7, -1}, [2]float64{1, 0}, [2]float64{7, 1}, [2]float64{1, 0})), 1, 16},
		{"rises on two points", repeated(64, levels([2]float64{6, -1}, [2]float64{2, 0}, [2]float64{6, 1}, [2]float64{2, 0})), 1, 16},
		// Rises from 1 to 2, 21 to 22 and 81 to 82: a mean width of 40.
		{"rises at once", levels([2]float64{1, 1}, [2]float64{1, -1}, [2]float64{10, 1}, [2]float64{10, -1}, [2]float64{30, 1}, [2]float64{30, -1}, [2]float64{10, 1}, [2]float64{932, -10. / 932}), 1, 40},
		{"a narrow element", pitted(9), 1, 128},
		{"a wider one", pitted(11), 1, 7 * 128. / 8},
		{"narrow of a shorter section", pitted(9), 4, 7 * 128. / 8},
	} {
		got := must2(t)(profile(t, 0.001, row.z).Texture(surface.Filter{Sections: row.sections}))
		near(t, row.name+", RSm in steps", got.RSm.In(um), row.want, 1e-6)
	}
}

// The i-th of n heights stands at the share (i − ½)/n, the last too.
func TestHeightOfEach(t *testing.T) {
	for n := 1; n <= 40; n++ {
		z := make([]float64, n)
		for i := range z {
			z[i] = -float64(i * i)
		}
		c := surface.CurveOf(z)
		for i, want := range z {
			nearUm(t, "height", c.Height((float64(i)+0.5)/float64(n)), want, 1e-9)
		}
	}
}

// A single height is a flat core at that height.
func TestPlateauOfOneHeight(t *testing.T) {
	if p := surface.CurveOf([]float64{3}).Plateau(); p.Core != "flat core" || p.Rk != 0 || p.Rpk != 0 || p.Rvk != 0 || p.Top != 3*um || p.Bottom != 3*um {
		t.Errorf("%+v", p)
	}
}

// A core is missing where the curve falls more over its middle 40 % than over the 40 % at either end.
func TestNoCoreOfSteps(t *testing.T) {
	for _, row := range []struct {
		name string
		drop func(share float64) float64
		want string
	}{
		{"in the middle and right of it", func(p float64) float64 { return step(p, 0.5) + 2*step(p, 0.65) }, "no core"},
		{"in the middle and left of it", func(p float64) float64 { return step(p, 0.5) + 2*step(p, 0.35) }, "no core"},
		{"right of the middle", func(p float64) float64 { return 2 * step(p, 0.75) }, ""},
		{"left of the middle", func(p float64) float64 { return 2 * step(p, 0.25) }, ""},
		{"more at the end", func(p float64) float64 { return step(p, 0.5) + 2*step(p, 0.65) + 2*step(p, 0.8) }, ""},
	} {
		z := sampled(1000, 1, func(p float64) float64 { return -0.1*p - row.drop(p) })
		if p := surface.CurveOf(z).Plateau(); p.Core != row.want {
			t.Errorf("%s: %v", row.name, p)
		}
	}
}

// step is 1 from a place on.
func step(x, from float64) float64 {
	if x < from {
		return 0
	}
	return 1
}

// A speck a thousand times as high as the wall is rough: all of the wall lies in the last 256th of the height, and the cut
// that leaves no peaks is found there.
func TestReachBelowASpeck(t *testing.T) {
	z := append([]float64{1000}, sampled(2000, 1, func(p float64) float64 { return 1 - p*p*p })...)
	c := surface.CurveOf(z)
	for _, want := range []units.Length{0, 20 * units.Nanometre} {
		k, err := c.Reach(want)
		must(t, k, err)
		if k.Plateau.Rpk > want || k.Stock < 998*um {
			t.Errorf("wanted %v: %v after a cut of %v", want, k.Plateau.Rpk, k.Stock)
		}
	}
}

// The longest trace that is taken is a quarter of the diameter.
func TestUnrollAQuarter(t *testing.T) {
	arc := func(n int) []float64 {
		return sampled(n, 0.5*float64(n), func(x float64) float64 {
			x -= 0.25 * float64(n)
			return 1000 * (16 - math.Sqrt(16*16-x*x))
		})
	}
	p, err := profile(t, 0.5, arc(17)).Unroll(32 * mm)
	must(t, p, err)
	for _, z := range p.Z() {
		near(t, "of an arc is left", z, 0, 1e-5)
	}
	_, err = profile(t, 0.5, arc(18)).Unroll(32 * mm)
	refused(t, "more than a quarter", err, surface.ErrPoints)
	if !strings.Contains(err.Error(), "a trace of 8.5 mm") {
		t.Error(err)
	}
}

// A share of 1 is one that a surface may have; one of more is told by the number of its reading.
func TestShareOfAll(t *testing.T) {
	rs := []surface.Reading{{Place: "a", Texture: surface.Texture{Plateau: surface.Plateau{Mr2: 0.9}}}, {Place: "b", Texture: surface.Texture{Plateau: surface.Plateau{Mr2: 1}}}}
	w, err := surface.Analyse(rs, surface.Instrument{})
	must(t, w, err)
	near(t, "mean", w.Values[0].Share.Value, 0.95, 1e-12)
	if _, err = surface.Analyse(rs, surface.Instrument{Relative: 1, DigitOfShare: 1}); err != nil {
		t.Errorf("a doubt as large as the value: %v", err)
	}
	rs[1].Texture.Mr2 = 1.01
	if _, err = surface.Analyse(rs, surface.Instrument{}); err == nil || !strings.Contains(err.Error(), `reading 2 at "b": Mr2 is 1.01`) {
		t.Error(err)
	}
}
