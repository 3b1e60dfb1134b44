// SPDX-License-Identifier: BSD-3-Clause

package simulate_test

import (
	"math"
	"testing"

	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/simulate"
	"gonum.org/v1/gonum/num/hyperdual"
)

const trials = 1_000_000

func propagate(t *testing.T, s simulate.Simulation) uncertainty.Propagation {
	t.Helper()
	var plain []uncertainty.Input
	for _, in := range s.Inputs {
		plain = append(plain, in.Input)
	}
	return must[uncertainty.Propagation](t)(uncertainty.Propagate(s.Model, plain, s.Correlations...))
}

// JCGM 101:2008 9.2: sums of four. Of normal inputs ±3.92, of rectangular ones ±3.88 (exact 3.87940674135,
// computed), and with one rectangle ten times as wide (9.2.4) nearly that rectangle alone.
func TestFour(t *testing.T) {
	four := func(shape simulate.Shape, last float64) simulate.Simulation {
		s := simulate.Simulation{Model: total, Seed: 92}
		for _, name := range []string{"1", "2", "3"} {
			s.Inputs = append(s.Inputs, input(name, 0, 1, shape))
		}
		s.Inputs = append(s.Inputs, input("4", 0, last, shape))
		return s
	}
	for _, c := range []struct {
		s        simulate.Simulation
		u, end   float64
		kurtosis float64
		sound    bool
	}{
		{four(simulate.Normal, 1), 2, 3.91992796908, 3, true},
		{four(simulate.Rectangular, 1), 2, 3.87940674135, 3 - 1.2/4, true},
	} {
		r := must[simulate.Result](t)(c.s.Run(trials))
		near(t, "mean", r.Mean, 0, 4*c.u/1000)
		near(t, "u", r.Std, c.u, 4*c.u*math.Sqrt((c.kurtosis-1)/4/trials))
		// the density at the end is 0.03 or more, so its standard error at most √(0.025·0.975/n)/0.029
		for _, end := range []float64{-r.Symmetric.Min, r.Symmetric.Max} {
			near(t, "end", end, c.end, 4*math.Sqrt(0.025*0.975/trials)/0.029)
		}
		near(t, "shortest", r.Shortest.Max-r.Shortest.Min, 2*c.end, 0.03)
		v := must[simulate.Validation](t)(r.Validate(propagate(t, c.s), 1))
		if v.Sound != c.sound || v.Tolerance != 0.5 {
			t.Errorf("%+v", v)
		}
	}
	r := must[simulate.Result](t)(four(simulate.Rectangular, 10).Run(trials))
	near(t, "u", r.Std, math.Sqrt(103), 0.02) // printed 10.1
	if v := must[simulate.Validation](t)(r.Validate(propagate(t, four(simulate.Rectangular, 10)), 2)); v.Sound {
		t.Errorf("a normal interval for what is nearly a rectangle: %+v", v) // printed ±19.8 against ±17.0
	}
	near(t, "end", r.Symmetric.Max, 17.0, 0.1)
}

// JCGM 101:2008 9.3, calibration of a mass: the inputs as the manual of R's propagate has them; exact
// moments computed; ends by 4·10⁷ draws (published 1.0834 to 1.3825 and 0.0754, from memory).
func TestMass(t *testing.T) {
	s := simulate.Simulation{
		Model: func(x []hyperdual.Number) hyperdual.Number {
			buoyancy := hyperdual.Mul(hyperdual.Sub(x[2], hyperdual.Number{Real: 1.2}), hyperdual.Sub(hyperdual.Inv(x[3]), hyperdual.Inv(x[4])))
			return hyperdual.Sub(hyperdual.Mul(hyperdual.Add(x[0], x[1]), hyperdual.Add(hyperdual.Number{Real: 1}, buoyancy)), hyperdual.Number{Real: 100000})
		},
		Inputs: []simulate.Input{
			input("mR", 100000, 0.050, simulate.Normal), input("δmR", 1.234, 0.020, simulate.Normal), input("ρa", 1.20, uncertainty.Rectangular(0.10), simulate.Rectangular),
			input("ρW", 8000, uncertainty.Rectangular(1000), simulate.Rectangular), input("ρR", 8000, uncertainty.Rectangular(50), simulate.Rectangular),
		},
		Seed: 93,
	}
	r := must[simulate.Result](t)(s.Run(trials))
	near(t, "mean", r.Mean, 1.234, 4*0.0755/1000)
	near(t, "u", r.Std, 0.0754797399554233, 4*0.0755/1000)
	near(t, "low", r.Symmetric.Min, 1.0844, 0.0012)
	near(t, "high", r.Symmetric.Max, 1.3836, 0.0012)
	v := must[simulate.Validation](t)(r.Validate(propagate(t, s), 1))
	if v.Sound {
		t.Errorf("%+v", v)
	}
	near(t, "tolerance", v.Tolerance, 0.005, 1e-15)
	near(t, "first, low", v.First.Min, 1.1284527, 1e-6)
	near(t, "first, high", v.First.Max, 1.3395473, 1e-6)
	near(t, "off, low", v.Low, 0.044, 0.0013)
	near(t, "off, high", v.High, 0.044, 0.0013)
}

// JCGM 101:2008 9.4, the square of a length from two noisy parts: the set-ups as a public repository's data file
// has them, exact answers by the chi-squared law and moments of normals (computed).
func TestSquares(t *testing.T) {
	for _, c := range []struct {
		x1, r, mean, std, low, high, shortLow, shortHigh float64
	}{
		{0, 0, 5.0e-5, 5.0e-5, 1.26589040e-6, 1.84443973e-4, 0, 1.4978661368e-4},
		{0.010, 0, 1.5e-4, 1.11803398875e-4, 8.5468449e-6, 4.27123282e-4, 0, 3.66005290e-4},
		{0.050, 0, 2.55e-3, 5.02493781056e-4, 1.63847707e-3, 3.60335805e-3, 1.5935697e-3, 3.5485698e-3},
		{0, 0.9, 5.0e-5, 6.72681202354e-5, 5.6097772e-7, 2.41217187e-4, 0, 0},
		{0.010, 0.9, 1.5e-4, 1.20519707932e-4, 2.9081467e-5, 4.78310679e-4, 0, 0},
		{0.050, 0.9, 2.55e-3, 5.04504707609e-4, 1.69685798e-3, 3.65979638e-3, 0, 0},
	} {
		s := simulate.Simulation{
			Model: func(x []hyperdual.Number) hyperdual.Number {
				return hyperdual.Add(hyperdual.Mul(x[0], x[0]), hyperdual.Mul(x[1], x[1]))
			},
			Inputs:       []simulate.Input{input("x1", c.x1, 0.005, simulate.Normal), input("x2", 0, 0.005, simulate.Normal)},
			Correlations: []uncertainty.Correlation{{A: "x1", B: "x2", R: c.r}},
			Seed:         94,
		}
		r := must[simulate.Result](t)(s.Run(trials))
		near(t, "mean", r.Mean, c.mean, 4*c.std/1000)
		near(t, "std", r.Std, c.std, 4*c.std/1000*1.5) // kurtosis of at most 9: exponential
		near(t, "low", r.Symmetric.Min, c.low, 0.006*c.std)
		near(t, "high", r.Symmetric.Max, c.high, 0.025*c.std)
		if c.shortHigh > 0 {
			near(t, "shortest, low", r.Shortest.Min, c.shortLow, 0.06*c.std)
			near(t, "shortest, high", r.Shortest.Max, c.shortHigh, 0.06*c.std)
		}
		v := must[simulate.Validation](t)(r.Validate(propagate(t, s), 1))
		if v.Sound {
			t.Errorf("x1 = %v: %+v", c.x1, v)
		}
	}
}

// JCGM 100:2008 H.1 as in JCGM 101:2008 9.5, an end gauge: repeats as t, ends that are not well known as
// such, a swinging temperature as an arcsine; in nm and °C. The standard deviation is exact by moments:
// all factors of the products are independent, and two of them zero on average.
func TestEndGauge(t *testing.T) {
	repeats := func(name string, value, std, dof float64) simulate.Input {
		return simulate.Input{Input: uncertainty.Input{Name: name, Value: value, Std: std, DoF: dof}}
	}
	ends := func(name string, half, d float64) simulate.Input {
		in := input(name, 0, inexactEnds(half, d), simulate.Inexact)
		in.Ends = d
		return in
	}
	s := simulate.Simulation{
		Model: func(x []hyperdual.Number) hyperdual.Number { // ls + d − ls(δα·θ + αs·δθ)
			d := hyperdual.Add(hyperdual.Add(x[1], x[2]), x[3])
			warmth := hyperdual.Add(hyperdual.Mul(x[7], hyperdual.Add(x[5], x[6])), hyperdual.Mul(x[4], x[8]))
			return hyperdual.Sub(hyperdual.Add(x[0], d), hyperdual.Mul(x[0], warmth))
		},
		Inputs: []simulate.Input{
			repeats("ls", 50_000_623, 25, 18), repeats("d", 215, 5.8, 24), repeats("d random", 0, 3.9, 5), repeats("d systematic", 0, 6.7, 8),
			input("αs", 11.5e-6, uncertainty.Rectangular(2e-6), simulate.Rectangular), input("θ", -0.1, 0.2, simulate.Normal),
			input("θ cyclic", 0, uncertainty.UShaped(0.5), simulate.Arcsine), ends("δα", 1e-6, 0.1e-6), ends("δθ", 0.05, 0.025),
		},
		Seed: 95, Coverage: 0.99,
	}
	t2 := func(u, nu float64) float64 { return u * u * nu / (nu - 2) }
	ls2 := 50_000_623.0*50_000_623.0 + t2(25, 18)
	δα, δθ := inexactEnds(1e-6, 0.1e-6), inexactEnds(0.05, 0.025)
	θ2 := 0.1*0.1 + 0.2*0.2 + 0.5*0.5/2
	αs2 := 11.5e-6*11.5e-6 + 2e-6*2e-6/3
	want := math.Sqrt(t2(25, 18) + t2(5.8, 24) + t2(3.9, 5) + t2(6.7, 8) + ls2*(δα*δα*θ2+αs2*δθ*δθ))
	near(t, "δθ (computed)", δθ, 0.0300462606288666, 1e-15)
	r := must[simulate.Result](t)(s.Run(trials))
	near(t, "mean", r.Mean, 50_000_838, 4*want/1000)
	near(t, "std", r.Std, want, 4*want/1000)
	near(t, "printed 36 nm (from memory)", r.Std, 36, 0.5)
}

// A distribution that leans: exponential, from the two squares with nothing else in them.
func TestShortest(t *testing.T) {
	// JCGM 101:2008 5.3.4: of an exponential distribution of mean 1 the shortest 95 % are 0 to 2.9957, the symmetric
	// ones 0.0253 to 3.6889 (computed)
	s := simulate.Simulation{
		Model: func(x []hyperdual.Number) hyperdual.Number {
			return hyperdual.Scale(0.5, hyperdual.Add(hyperdual.Mul(x[0], x[0]), hyperdual.Mul(x[1], x[1])))
		},
		Inputs: []simulate.Input{input("a", 0, 1, simulate.Normal), input("b", 0, 1, simulate.Normal)}, Seed: 1,
	}
	r := must[simulate.Result](t)(s.Run(trials))
	near(t, "low", r.Shortest.Min, 0, 0.001)
	near(t, "high", r.Shortest.Max, 2.99573227355399, 4*math.Sqrt(0.05*0.95/trials)/0.05)
	near(t, "symmetric, low", r.Symmetric.Min, 0.0253178079842899, 4*math.Sqrt(0.025*0.975/trials))
	near(t, "symmetric, high", r.Symmetric.Max, 3.68887945411394, 4*math.Sqrt(0.025*0.975/trials)/0.025)
}
