// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"errors"
	"fmt"
	"math"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// Reference values of this file were computed apart from this package, with 20 to 30 digits (mpmath 1.2.1)
// or by fast Fourier transform (scipy 1.10.1), from definitions that each test names. No published profile
// with certified parameters of a plateau could be had.

// Ten heights by hand: Ra 3, Rq √11, Rt 10, Rsk 0, Rku 1.618…, exactly.
func TestTenHeights(t *testing.T) {
	p := profile(t, 0.001, []float64{1, -2, 3, -4, 5, -5, 4, -3, 2, -1})
	got := must2(t)(p.Texture(surface.Filter{Sections: 1}))
	nearUm(t, "Ra", got.Ra, 3, 1e-6)
	nearUm(t, "Rq", got.Rq, 3.31662479036, 1e-6)
	nearUm(t, "Rt", got.Rt, 10, 0)
	nearUm(t, "Rz", got.Rz, 10, 0)
	nearUm(t, "Rp", got.Rp, 5, 0)
	nearUm(t, "Rv", got.Rv, 5, 0)
	near(t, "Rsk", got.Rsk, 0, 1e-12)
	near(t, "Rku", got.Rku, 1.61818181818, 1e-11)
	five := must2(t)(p.Texture(surface.Filter{Sections: 5}))
	nearUm(t, "Rz of five", five.Rz, (3.0+7+10+7+3)/5, 0)
	nearUm(t, "Rp of five", five.Rp, (1.0+3+5+4+2)/5, 0)
	nearUm(t, "Rv of five", five.Rv, (2.0+4+5+3+1)/5, 0)
	nearUm(t, "Ra of five", five.Ra, 3, 1e-6)
}

func must2(t failer) func(surface.Texture, error) surface.Texture {
	return func(v surface.Texture, err error) surface.Texture { return must(t, v, err) }
}

// Sine, triangle and a wave of two levels, closed forms: Ra/A 2/π, 1/2, 1; Rq/A 1/√2, 1/√3, 1; Rku 3/2, 9/5,
// 1; the slope of the waves; the wave length as RSm.
func TestWaves(t *testing.T) {
	const n, length, waves = 10_000, 4.0, 20
	for _, row := range []struct {
		name                 string
		f                    func(turns float64) float64
		ra, rq, rku, rdq     float64 // for an amplitude of 1, Rdq in amplitudes a wave
		tolerance, slopeNear float64
	}{
		{"sine", func(x float64) float64 { return math.Sin(2 * math.Pi * x) }, 0.636619772367581, 0.707106781186547, 1.5, 2 * math.Pi / math.Sqrt2, 1e-4, 6e-4},
		// The formula of seven points leaves out three at each end, six of ten thousand, and rounds corners off: of
		// 500 points two times seven feel it.
		{"triangle", func(x float64) float64 { _, f := math.Modf(x + 0.25); return 1 - math.Abs(4*f-2) }, 0.5, 0.577350269189626, 1.8, 4, 1e-4, 0.04},
		{"two levels", func(x float64) float64 { _, f := math.Modf(x); return math.Copysign(1, 0.5-f) }, 1, 1, 1, 0, 1e-12, math.Inf(1)},
	} {
		const amplitude = 2.5
		p := profile(t, length/n, sampled(n, length, func(x float64) float64 { return 7 + amplitude*row.f(x*waves/length) }))
		got := must2(t)(p.Texture(surface.Filter{}))
		nearUm(t, row.name+" Ra", got.Ra, amplitude*row.ra, amplitude*row.tolerance)
		nearUm(t, row.name+" Rq", got.Rq, amplitude*row.rq, amplitude*row.tolerance)
		// The peak of a triangle stands up to half a step, a thousandth of a wave, beside a point.
		nearUm(t, row.name+" Rt", got.Rt, 2*amplitude, 2*4*amplitude/1000+1e-9)
		nearUm(t, row.name+" Rz", got.Rz, 2*amplitude, 2*4*amplitude/1000+1e-9)
		near(t, row.name+" Rku", got.Rku, row.rku, 1e-3)
		near(t, row.name+" Rsk", got.Rsk, 0, 1e-6)
		near(t, row.name+" RSm/mm", got.RSm.In(mm), length/waves, 1e-6)
		near(t, row.name+" Rdq", got.Rdq, amplitude*1e-3*row.rdq*waves/length, row.slopeNear*got.Rdq)
	}
}

// A wave of 0.2 mm with a finer one on it, 16 waves to one: where the finer one has a tenth of Rz or more, it has
// elements of its own; below that it has none, however often it crosses the mean line.
func TestSpacing(t *testing.T) {
	const step = 0.0005
	for _, row := range []struct{ fine, want float64 }{{0, 0.2}, {0.03, 0.2}, {0.12, 0.2}, {3, 0.2 / 16}} {
		p := profile(t, step, sampled(8000, 4, func(x float64) float64 {
			return math.Sin(2*math.Pi*x/0.2) + row.fine*math.Sin(2*math.Pi*x*16/0.2)
		}))
		got := must2(t)(p.Texture(surface.Filter{}))
		near(t, "RSm/mm", got.RSm.In(mm), row.want, 1e-3)
	}
	// An offset makes elements of unlike halves: peaks of a quarter of the height are still peaks.
	p := profile(t, step, sampled(8000, 4, func(x float64) float64 { return math.Exp(4*math.Cos(2*math.Pi*x/0.2)) / 10 }))
	near(t, "RSm/mm", must2(t)(p.Texture(surface.Filter{})).RSm.In(mm), 0.2, 1e-4)
	// An element begins where the profile comes up through the mean line, not where it is high enough to count: a
	// shelf of 60 points lies before the second peak.
	var z []float64
	for _, part := range []struct {
		n int
		z float64
	}{{100, -5}, {100, 5}, {100, -5}, {60, 0.2}, {43, 5}} {
		for range part.n {
			z = append(z, part.z)
		}
	}
	shelf := must2(t)(profile(t, step, z).Texture(surface.Filter{Sections: 1}))
	mean := (5*143 - 5*200 + 0.2*60) / 403.0
	want := 200 + (5+mean)/5.2 - (5+mean)/10
	near(t, "RSm of shelves/mm", shelf.RSm.In(mm), want*step, 1e-6)
	if none := must2(t)(profile(t, step, sampled(8000, 4, func(x float64) float64 { return x })).Texture(surface.Filter{})); none.RSm != 0 {
		t.Errorf("a ramp has elements %v wide", none.RSm)
	}
}

// normal returns n quantiles of a normal distribution of deviation 1, the highest first, by bisection of
// its distribution.
func normal(n int) []float64 {
	z := make([]float64, n)
	for i := range z {
		z[i] = quantile((float64(i) + 0.5) / float64(n))
	}
	return z
}

func quantile(above float64) float64 { return math.Sqrt2 * math.Erfinv(1-2*above) }

// Normally distributed heights of deviation 1, by quantiles: the least-squares line over the flattest 40 %
// (30 to 70 %). The chord of it would give an Rk of 2.62200. The highest of 200,000 quantiles stands at a
// share of 2.5e-6: what lies beyond belongs to Rpk, 3e-6 of 0.94.
func TestNormalHeights(t *testing.T) {
	p := surface.CurveOf(normal(200_000)).Plateau()
	nearUm(t, "Rk", p.Rk, 2.57395610795, 2e-5)
	nearUm(t, "Rpk", p.Rpk, 0.945030726422, 1e-4)
	nearUm(t, "Rvk", p.Rvk, 0.945030726422, 1e-4)
	near(t, "Mr1", p.Mr1, 0.0990509687581, 1e-5)
	near(t, "Mr2", p.Mr2, 0.900949031242, 1e-5)
	near(t, "From", p.From, 0.3, 1e-5)
	nearUm(t, "oil", p.Oil, 0.945030726422*(1-0.900949031242)/2, 1e-5)
	if p.Core != "" {
		t.Error(p.Core)
	}
	if _, err := surface.CurveOf(normal(20_000)).TwoProcess(); !errors.Is(err, surface.ErrOneProcess) {
		t.Errorf("one process: %v", err)
	}
}

// A curve of three straight pieces, (0 %, 10) (10 %, 6) (80 %, 4) (100 %, 0) µm: exact fractions. Of n
// samples each end loses the last half step of a slope, 40 µm in all: 40/8n².
func TestThreePieces(t *testing.T) {
	const n = 20_000
	z := sampled(n, 1, func(share float64) float64 {
		switch {
		case share < 0.1:
			return 10 - 40*share
		case share < 0.8:
			return 6 - 2*(share-0.1)/0.7
		}
		return 4 - 20*(share-0.8)
	})
	p := surface.CurveOf(z).Plateau()
	nearUm(t, "Rk", p.Rk, 2.85714285714, 1e-6)
	nearUm(t, "Rpk", p.Rpk, 3.71428571429, 3e-6)
	nearUm(t, "Rvk", p.Rvk, 3.42857142857, 3e-6)
	near(t, "Mr1", p.Mr1, 0.0928571428571, 1e-7)
	near(t, "Mr2", p.Mr2, 0.828571428571, 1e-7)
	nearUm(t, "oil", p.Oil, 0.29387755102, 1e-6)
}

// Two processes, the quantile 0.25·q down to 82 %, then of slope 1.6: by the normal scale exactly 0.25, 1.6
// and 82 %; by the equivalent line as printed (of the chord Rk were 0.65550, Rvk 1.69507).
func TestTwoProcesses(t *testing.T) {
	for _, row := range [][3]float64{{0.1, 0.5, 0.6}, {0.25, 1.6, 0.82}, {2, 3, 0.3}} {
		knee := quantile(row[2])
		z := normal(50_000)
		for i, q := range z {
			if z[i] = row[0] * q; q < knee {
				z[i] = row[0]*knee + row[1]*(q-knee)
			}
		}
		got, err := surface.CurveOf(z).TwoProcess()
		must(t, got, err)
		nearUm(t, "Rpq", got.Rpq, row[0], 2e-3)
		nearUm(t, "Rvq", got.Rvq, row[1], 2e-3)
		near(t, "Rmq", got.Rmq, row[2], 2e-3)
	}
	const n = 200_000
	knee := quantile(0.82)
	z := make([]float64, n)
	for i, q := range normal(n) {
		if z[i] = 0.25 * q; q < knee {
			z[i] = 0.25*knee + 1.6*(q-knee)
		}
	}
	c := surface.CurveOf(z)
	got, err := c.TwoProcess()
	must(t, got, err)
	nearUm(t, "Rpq", got.Rpq, 0.25, 1e-3)
	nearUm(t, "Rvq", got.Rvq, 1.6, 1e-3)
	near(t, "Rmq", got.Rmq, 0.82, 1e-3)
	p := c.Plateau()
	nearUm(t, "Rk", p.Rk, 0.64348902699, 1e-5)
	nearUm(t, "Rpk", p.Rpk, 0.23625768161, 1e-4)
	nearUm(t, "Rvk", p.Rvk, 1.6974940878, 1e-4)
	near(t, "Mr1", p.Mr1, 0.099050968758, 1e-5)
	near(t, "Mr2", p.Mr2, 0.83483008667, 1e-5)
	nearUm(t, "oil", p.Oil, 0.14018747568, 1e-4)
}

// Plateaus with V grooves and no filter, f the grooves' share of the length: Ra = d·f·(1−f) + d·f³/4, Rq² =
// f·d²/3 − f²·d²/4; Rk 0 by geometry, Rvk = d, Mr2 = 1 − f, Rmr(y) = 1 − f + f·y/d.
func TestFlatPlateaus(t *testing.T) {
	for _, row := range []struct{ d, f, ra, rq, rsk, rku, rp, rv float64 }{
		{5, 0.1, 0.45125, 0.8779711460711, -3.740195561641, 16.28414901388, 0.25, 4.75},
		{4, 0.2, 0.648, 0.952190457139, -2.372239201177, 7.38062283737, 0.4, 3.6},
	} {
		t.Run(fmt.Sprint(row.d), func(t *testing.T) {
			const n = 20_000
			p := profile(t, 0.0001, sampled(n, 2, grooved{2, 2 * row.f, row.d, 0, 0}.at))
			f := surface.Filter{Sections: 1}
			got := must2(t)(p.Texture(f))
			nearUm(t, "Ra", got.Ra, row.ra, 1e-5)
			nearUm(t, "Rq", got.Rq, row.rq, 1e-5)
			near(t, "Rsk", got.Rsk, row.rsk, 1e-4)
			near(t, "Rku", got.Rku, row.rku, 1e-3)
			// The lowest sample stands half a step beside the ground.
			half := row.d / (row.f * n)
			nearUm(t, "Rp", got.Rp, row.rp, 1e-5)
			nearUm(t, "Rv", got.Rv, row.rv, half+1e-5)
			nearUm(t, "Rk", got.Rk, 0, 0)
			nearUm(t, "Rpk", got.Rpk, 0, 0)
			nearUm(t, "Rvk", got.Rvk, row.d, 2*half)
			near(t, "Mr1", got.Mr1, 0, 0)
			near(t, "Mr2", got.Mr2, 1-row.f, 1.0/n)
			if got.Core != "flat core" {
				t.Error(got.Core)
			}
			r, err := p.TwoStep(f)
			c := must(t, r, err).Curve()
			for _, y := range []float64{0.1, 1, 3} {
				level := c.Height(0) - units.Length(y*float64(um))
				near(t, "Rmr", c.Ratio(level), 1-row.f+row.f*y/row.d, 1.0/n)
			}
		})
	}
}

// Rippled plateaus with V grooves and no filter: m = 1 − f + f·c/d, Rk = c/m, Rpk = 0, Rvk = d − Rk, Mr2 = m +
// (Rk − c)·f/d; exact.
func TestRippledPlateaus(t *testing.T) {
	for _, row := range []struct {
		g            grooved
		rk, rvk, mr2 float64
	}{
		{grooved{2, 0.2, 5, 0.5, 0.02}, 0.5494505494505, 4.450549450549, 0.910989010989},
		{grooved{1, 0.1, 4, 0.6, 0.01}, 0.655737704918, 3.344262295082, 0.916393442623},
		{grooved{0.1, 0.02, 4, 0.5, 0.001}, 0.6060606060606, 3.393939393939, 0.830303030303},
	} {
		const n = 40_000
		z := sampled(n, row.g.period, row.g.at)
		p := profile(t, row.g.period/n, z)
		got := must2(t)(p.Texture(surface.Filter{Sections: 1}))
		nearUm(t, "Rk", got.Rk, row.rk, 2e-3)
		nearUm(t, "Rvk", got.Rvk, row.rvk, 4e-3)
		near(t, "Mr1", got.Mr1, 0, 2e-3)
		near(t, "Mr2", got.Mr2, row.mr2, 1e-3)
	}
}

// The same grooves through the whole chain: the plain Gaussian mean line dips into them and loses a third of
// Rvk, the second step nearly nothing. Computed over the period by fast Fourier transform; here the middle of
// a longer profile is evaluated, in which the ends do not show.
func TestGroovesThroughFilters(t *testing.T) {
	type five struct{ rk, rpk, rvk, mr1, mr2 float64 }
	for _, row := range []struct {
		name        string
		g           grooved
		cutOff      units.Length
		sections    int // a whole number of periods
		n           int // to a period
		plain, two  five
		tolerance   float64
		rvkOfTheTwo float64 // its tolerance
	}{
		{"2.5 mm", grooved{2, 0.2, 5, 0.5, 0.02}, 2500 * um, 4, 20_000,
			five{0.5495, 0.1207, 2.957, 0.0811, 0.8752}, five{0.5494, 0.0216, 4.419, 0.0147, 0.9116}, 0.005, 0.005},
		{"0.8 mm", grooved{1, 0.1, 4, 0.6, 0.01}, 800 * um, 5, 50_000,
			five{0.6644, 0.2008, 1.9625, 0.0922, 0.8809}, five{0.6557, 0.0642, 3.248, 0.0325, 0.9186}, 0.005, 0.005},
		{"wide", grooved{2, 0.2, 5, 0.5, 0.02}, 800 * um, 5, 40_000,
			five{0.6438, 0.599, 3.298, 0.1518, 0.9312}, five{0.571, 0.247, 3.557, 0.0839, 0.9100}, 0.01, 0.03},
		{"fine", grooved{0.1, 0.02, 4, 0.5, 0.001}, 800 * um, 1, 10_000,
			five{0.60606, 0, 3.39394, 0, 0.8303}, five{0.60606, 0, 3.39394, 0, 0.8303}, 0.005, 0.005},
	} {
		t.Run(row.name, func(t *testing.T) {
			length := float64(row.sections+2) * row.cutOff.In(mm)
			n := int(math.Round(length / row.g.period * float64(row.n)))
			p := profile(t, row.g.period/float64(row.n), sampled(n, length, row.g.at))
			f := surface.Filter{CutOff: row.cutOff, Sections: row.sections}
			plain, err := p.Gaussian(f)
			must(t, plain, err)
			two, err := p.TwoStep(f)
			must(t, two, err)
			for _, c := range []struct {
				name string
				got  surface.Plateau
				want five
				rvk  float64
			}{{"plain", plain.Curve().Plateau(), row.plain, row.tolerance}, {"two steps", two.Curve().Plateau(), row.two, row.rvkOfTheTwo}} {
				t.Log(c.name, c.got)
				nearUm(t, c.name+" Rk", c.got.Rk, c.want.rk, row.tolerance)
				nearUm(t, c.name+" Rpk", c.got.Rpk, c.want.rpk, row.tolerance)
				nearUm(t, c.name+" Rvk", c.got.Rvk, c.want.rvk, c.rvk)
				near(t, c.name+" Mr1", c.got.Mr1, c.want.mr1, 0.001)
				near(t, c.name+" Mr2", c.got.Mr2, c.want.mr2, 0.001)
			}
		})
	}
}

// Ra, Rq, Rsk and Rku of the wide grooves: unfiltered, about the plain mean line.
func TestHeightsThroughFilters(t *testing.T) {
	g := grooved{2, 0.2, 5, 0.5, 0.02}
	const perPeriod = 20_000
	p := profile(t, 2.0/perPeriod, sampled(perPeriod*28/10, 5.6, g.at))
	got := must2(t)(p.Texture(surface.Filter{CutOff: 800 * um, Sections: 5}))
	nearUm(t, "Ra", got.Ra, 0.341951, 1e-4)
	nearUm(t, "Rq", got.Rq, 0.641578, 1e-4)
	near(t, "Rsk", got.Rsk, -2.9479, 1e-3)
	near(t, "Rku", got.Rku, 14.572, 1e-2)
	q := profile(t, 2.0/perPeriod, sampled(perPeriod, 2, g.at))
	raw := must2(t)(q.Texture(surface.Filter{}))
	nearUm(t, "Ra unfiltered", raw.Ra, 0.410637, 1e-4)
	nearUm(t, "Rq unfiltered", raw.Rq, 0.826262, 1e-4)
	near(t, "Rsk unfiltered", raw.Rsk, -3.6751, 1e-3)
	near(t, "Rku unfiltered", raw.Rku, 16.300, 1e-2)
}

// What the mean line passes of a wave, 2^−(λc/λ)² (ISO 16610-21, 4.2).
func TestTransmission(t *testing.T) {
	type row struct{ waves, want float64 } // waves: λ/λc
	rows := []row{{1.0 / 3, 0.001953125}, {0.5, 0.0625}, {1, 0.5}, {2, 0.840896415253715}, {5, 0.972654947412286}}
	for order := range 40 {
		waves := 10 / (1 + float64(order)) // down to a quarter of the cut-off
		rows = append(rows, row{waves, math.Exp2(-1 / (waves * waves))})
	}
	for _, row := range rows {
		for _, cutOff := range []float64{20, 85, 86, 200, 1600} { // in steps
			n := int(14 * cutOff)
			z := make([]float64, n)
			wave := func(i int) float64 { return math.Cos(2 * math.Pi * float64(i-n/2) / (row.waves * cutOff)) }
			for i := range z {
				z[i] = wave(i)
			}
			mean := surface.MeanLine(z, surface.Deviation(cutOff))
			for i := 3 * n / 7; i < 4*n/7; i++ {
				if math.Abs(mean[i]-row.want*wave(i)) > 1e-7 {
					t.Errorf("λ %.3g λc, λc %g steps, at %d: %.10f of %.10f, want the %.10f-th", row.waves, cutOff, i-n/2, mean[i], wave(i), row.want)
					break
				}
			}
		}
	}
}

// The mean line under a lone V groove 5 deep and 0.2 mm wide, λc 0.8 mm: under its centre and at its edge, by
// integrals.
func TestGrooveDrags(t *testing.T) {
	const step = 0.0001
	n := 40_001
	z := make([]float64, n)
	for i := range z {
		a := math.Abs(float64(i-n/2)) * step
		z[i] = -5 * max(0, 1-2*a/0.2)
	}
	mean := surface.MeanLine(z, surface.Deviation(0.8/step))
	near(t, "centre", mean[n/2], -1.28335643794, 1e-6)
	near(t, "edge", mean[n/2+1000], -1.04356802119, 1e-6)
}

// An end: half the weights are outside. A straight line passes whole up to its ends, where weights left to
// themselves would be out by αλc/π, 0.1495 λc, of it.
func TestEndsOfALine(t *testing.T) {
	for _, n := range []int{30, 500, 3000} {
		for _, cutOff := range []float64{12, 100, 400} {
			z := make([]float64, n)
			for i := range z {
				z[i] = 1000 + 0.5*float64(i)
			}
			for i, m := range surface.MeanLine(z, surface.Deviation(cutOff)) {
				if math.Abs(m-z[i]) > 1e-6*cutOff {
					t.Fatalf("%d points, λc %g steps, at %d: %.9f, want %.9f", n, cutOff, i, m, z[i])
				}
			}
		}
	}
}

// A sine has no core: its curve is flattest at its two ends.
func TestSineHasNoCore(t *testing.T) {
	p := surface.CurveOf(sampled(10_000, 1, func(share float64) float64 { return math.Cos(math.Pi * share) })).Plateau()
	if p.Core != "no core" || p.From > 0.001 {
		t.Errorf("%v from %v", p, p.From)
	}
	// It takes both ends: a curve that falls ever faster, or ever slower, has its core at one of them.
	for name, f := range map[string]func(share float64) float64{
		"straight": func(p float64) float64 { return -p }, "ever faster": func(p float64) float64 { return -p * p }, "ever slower": func(p float64) float64 { return (1 - p) * (1 - p) },
	} {
		if q := surface.CurveOf(sampled(10_000, 1, f)).Plateau(); q.Core != "" {
			t.Errorf("%s: %v", name, q)
		}
	}
}
