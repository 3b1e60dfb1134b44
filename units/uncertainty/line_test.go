// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"errors"
	"math"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"pgregory.net/rapid"
)

// NIST StRD Norris with its certified values; at 500, 0 and 1000 computed (scipy, mpmath).
func TestLinePublished(t *testing.T) {
	var points []uncertainty.Observation
	for _, row := range table(t, "strd_norris.csv") {
		points = append(points, uncertainty.Observation{Y: parse(t, row[0]), X: parse(t, row[1])})
	}
	l := must[uncertainty.Line](t)(uncertainty.FitLine(points...))
	b0, s0 := l.At(0)
	near(t, "B0", b0, -0.262323073774029, 1e-12)
	near(t, "u(B0)", s0.Std, 0.232818234301152, 1e-13)
	near(t, "B1", l.Slope, 1.00211681802045, 1e-14)
	near(t, "u(B1)", l.Tilt.Std, 0.000429796848199937, 1e-16)
	near(t, "residual sd", l.Scatter.Std, 0.884796396144373, 1e-13)
	for _, c := range []struct{ x, line, next float64 }{
		{500, 0.15150217580019, 0.89767342163075}, {0, 0.23281823430115, 0.91491474622129}, {1000, 0.28993818941729, 0.93109012255133},
	} {
		_, s := l.At(c.x)
		near(t, "u(line)", s.Std, c.line, 1e-9)
		near(t, "u(next reading)", math.Hypot(s.Std, l.Scatter.Std), c.next, 1e-9)
	}
	y, s := l.At(500)
	near(t, "y", y, 500.79608593645, 1e-8)
	if s.DoF != 34 {
		t.Error(s)
	}
	k := must[float64](t)(uncertainty.Coverage(0.95, s.DoF))
	near(t, "low", y-k*s.Std, 500.48819647, 1e-8)
	near(t, "high", y+k*s.Std, 501.10397540, 1e-8)
	near(t, "next high", y+k*math.Hypot(s.Std, l.Scatter.Std), 502.62037782, 1e-8)
}

// Of points with doubts, the line minimises the weighted squares, and its doubts are those of
// propagation through it: level and slope are sums of the y, each with its weight.
func TestLineProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "n")
		points := make([]uncertainty.Observation, n)
		for i := range points {
			points[i] = uncertainty.Observation{
				X: 20 + 3*float64(i) + rapid.Float64Range(0, 2).Draw(t, "x"), Std: rapid.Float64Range(0.5, 3).Draw(t, "u"), DoF: 5 + float64(i),
			}
			points[i].Y = 7 - 0.5*points[i].X + points[i].Std*rapid.Float64Range(-0.5, 0.5).Draw(t, "error")
		}
		l, err := uncertainty.FitLine(points...)
		if err != nil {
			t.Fatal(err)
		}
		x := rapid.Float64Range(0, 60).Draw(t, "at")
		y, s := l.At(x)
		square, chi := 0.0, 0.0
		for i := range points {
			moved := append([]uncertainty.Observation(nil), points...)
			moved[i].Y++
			m, err := uncertainty.FitLine(moved...)
			if err != nil {
				t.Fatal(err)
			}
			up, _ := m.At(x)
			d := (up - y) * points[i].Std
			square += d * d
			at, _ := l.At(points[i].X)
			chi += (points[i].Y - at) * (points[i].Y - at) / (points[i].Std * points[i].Std)
		}
		factor, dof := 1.0, 5.0
		if n > 2 && chi > float64(n-2) {
			factor, dof = math.Sqrt(chi/float64(n-2)), float64(n-2)
		}
		same(t, "u", s.Std, factor*math.Sqrt(square))
		if s.DoF != dof {
			t.Fatalf("dof %v, want %v", s.DoF, dof)
		}
		for _, d := range []float64{-1e-3, 1e-3} {
			worse := 0.0
			for _, p := range points {
				at, _ := l.At(p.X)
				r := (p.Y - at - d - d*(p.X-30)) / p.Std
				worse += r * r
			}
			if worse < chi {
				t.Fatalf("a better line: %v < %v", worse, chi)
			}
		}
	})
}

func TestLineRefusals(t *testing.T) {
	p := func(x, y, u float64) uncertainty.Observation { return uncertainty.Observation{X: x, Y: y, Std: u} }
	for name, c := range map[string]struct {
		points []uncertainty.Observation
		want   error
	}{
		"one":          {[]uncertainty.Observation{p(1, 2, 0)}, uncertainty.ErrNoData},
		"one place":    {[]uncertainty.Observation{p(1, 2, 0), p(1, 3, 0)}, uncertainty.ErrNoData},
		"half exact":   {[]uncertainty.Observation{p(1, 2, 0), p(2, 3, 1)}, uncertainty.ErrStd},
		"negative":     {[]uncertainty.Observation{p(1, 2, -1), p(2, 3, 1)}, uncertainty.ErrStd},
		"dof":          {[]uncertainty.Observation{p(1, 2, 1), {X: 2, Std: 1, DoF: 0.5}}, uncertainty.ErrStd},
		"NaN":          {[]uncertainty.Observation{p(1, math.NaN(), 1), p(2, 3, 1)}, units.ErrNotFinite},
		"infinite":     {[]uncertainty.Observation{p(1, 2, 1), p(math.Inf(1), 3, 1)}, units.ErrNotFinite},
		"squares":      {[]uncertainty.Observation{p(0, 2, 1), p(1e200, 3, 1)}, units.ErrNotFinite},
		"steeply down": {[]uncertainty.Observation{p(0, 1e308, 1), p(1e-5, 0, 1)}, units.ErrNotFinite},
		"steeply up":   {[]uncertainty.Observation{p(0, 0, 1), p(1e-5, 1e308, 1)}, units.ErrNotFinite},
		"a tiny span":  {[]uncertainty.Observation{p(0, 2, 1), p(1e-200, 3, 1)}, uncertainty.ErrNoData},
	} {
		if l, err := uncertainty.FitLine(c.points...); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, %v", name, l, err)
		}
	}
	// two exact points fix an exact line
	l := must[uncertainty.Line](t)(uncertainty.FitLine(p(1, 2, 0), p(3, 8, 0)))
	if y, s := l.At(5); y != 14 || s != (uncertainty.Spread{}) {
		t.Error(y, s)
	}
}

// JCGM 100:2008 H.3, calibration of a thermometer, Table H.6 from memory: a line through corrections at
// t − 20 °C; printed intercept −0.1712 (0.0029), slope 0.002 18 (0.000 67), s 0.0035, and at 30 °C
// −0.1494 (0.0041) with 9 degrees of freedom.
func TestGUMH3(t *testing.T) {
	ts := []float64{21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511}
	bs := []float64{-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160}
	var points []uncertainty.Observation
	for i := range ts {
		points = append(points, uncertainty.Observation{X: ts[i] - 20, Y: bs[i]})
	}
	l := must[uncertainty.Line](t)(uncertainty.FitLine(points...))
	y, s := l.At(0)
	near(t, "intercept", y, -0.1712, 0.00005)
	near(t, "u(intercept)", s.Std, 0.0029, 0.00005)
	near(t, "slope", l.Slope, 0.00218, 0.000005)
	near(t, "u(slope)", l.Tilt.Std, 0.00067, 0.000005)
	near(t, "s", l.Scatter.Std, 0.0035, 0.00005)
	y, s = l.At(10)
	near(t, "b(30 °C)", y, -0.1494, 0.00005)
	near(t, "u(b(30 °C))", s.Std, 0.0041, 0.00005)
	near(t, "degrees of freedom", s.DoF, 9, 0)
}
