// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"math"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

const (
	um = units.Micrometre
	mm = units.Millimetre
)

type failer interface {
	Helper()
	Fatal(...any)
}

// must returns v and fails on an error.
func must[T any](t failer, v T, err error) T {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func near(t *testing.T, what string, got, want, tolerance float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tolerance) {
		t.Errorf("%s: %.10g, want %.10g to %.1g", what, got, want, tolerance)
	}
}

func nearUm(t *testing.T, what string, got units.Length, want, tolerance float64) {
	t.Helper()
	near(t, what, got.In(um), want, tolerance)
}

// heights rounds µm to lengths.
func heights(z ...float64) []units.Length {
	out := make([]units.Length, len(z))
	for i, v := range z {
		out[i] = units.Length(math.Round(v * float64(um)))
	}
	return out
}

// profile is one of heights in µm, step mm apart.
func profile(t failer, step float64, z []float64) surface.Profile {
	t.Helper()
	p, err := surface.FromHeights(units.Length(math.Round(step*float64(mm))), heights(z...))
	return must(t, p, err)
}

// sampled is f at n places of the middles of n steps from 0 to length.
func sampled(n int, length float64, f func(x float64) float64) []float64 {
	z := make([]float64, n)
	for i := range z {
		z[i] = f((float64(i) + 0.5) * length / float64(n))
	}
	return z
}

// A grooved wall has plateaus at 0 with ripples of pitch q down to −c, and a V groove in every period: w
// wide and d deep. Lengths in mm, heights in µm.
type grooved struct{ period, w, d, c, q float64 }

func (g grooved) at(x float64) float64 {
	a := math.Abs(x - g.period*math.Round(x/g.period))
	if a < g.w/2 {
		return -g.d * (1 - 2*a/g.w)
	}
	if g.c == 0 {
		return 0
	}
	_, t := math.Modf((math.Mod(x, g.period) - g.w/2) / g.q)
	return -g.c * (1 - math.Abs(2*t-1))
}
