// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"math"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

const (
	nm = units.Nanometre
	um = units.Micrometre
	mm = units.Millimetre
)

var noRisk uncertainty.Risk // 5 % each way

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

func degrees(x float64) units.Angle { return units.Angle(x * float64(units.Degree)) }

// millimetres rounds to a picometre.
func millimetres(x float64) units.Length { return units.Length(math.Round(x * units.PerMillimetre)) }

// A wall is the radius in mm by direction, once round.
type wall func(direction float64) float64

// diameter is what two opposed anvils read.
func (w wall) diameter(axis units.Angle) units.Length {
	return millimetres(w(float64(axis)) + w(float64(axis)+math.Pi))
}

// read returns readings at one depth along axes in degrees.
func (w wall) read(depth units.Length, axes ...float64) []bore.Reading {
	var rs []bore.Reading
	for _, a := range axes {
		rs = append(rs, bore.Reading{Depth: depth, Axis: bore.Axis(degrees(a)), Diameter: w.diameter(degrees(a))})
	}
	return rs
}

// even returns n evenly spaced axes in degrees.
func even(n int) []float64 {
	axes := make([]float64, n)
	for i := range axes {
		axes[i] = 180 * float64(i) / float64(n)
	}
	return axes
}

// measure is Analyse with an ideal gauge.
func measure(t failer, rs []bore.Reading) bore.Geometry {
	t.Helper()
	g, err := bore.Analyse(rs, bore.Gauge{})
	return must(t, g, err)
}

func within(t *testing.T, what string, got, want, tolerance units.Length) {
	t.Helper()
	if (got - want).Abs() > tolerance {
		t.Errorf("%s: got %v, want %v ± %v", what, got, want, tolerance)
	}
}

// axisApart is the angle between two axes in degrees, of a period in degrees.
func axisApart(a, b units.Angle, period float64) float64 {
	d := math.Abs(math.Mod((a - b).In(units.Degree), period))
	return min(d, period-d)
}
