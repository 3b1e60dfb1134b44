// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/surface"
	"borewright.example/units"
)

// A normal distribution of heights of deviation 1, cut at c: of the wall Φ(−c) bears, and the metal is
// φ(c) − c·Φ(−c) (closed forms).
func TestTruncatedNormal(t *testing.T) {
	const n = 100_000
	c := surface.CurveOf(normal(n))
	top := c.Height(0).In(um)
	for _, level := range []float64{3, 2, 1, 0.3, 0, -1} {
		bears := math.Erfc(level/math.Sqrt2) / 2
		metal := math.Exp(-level*level/2)/math.Sqrt(2*math.Pi) - level*bears
		k, err := c.Truncate(units.Length(math.Round((top - level) * float64(um))))
		must(t, k, err)
		near(t, "ratio", k.Ratio, bears, 2.0/n)
		// What stands beyond the highest quantile, 4.4 deviations up, is missing from the metal.
		nearUm(t, "metal", k.Metal, metal, 5e-6)
		nearUm(t, "level", k.Level, level, 2e-6)
		back, err := c.Remove(k.Metal)
		must(t, back, err)
		// A picometre of metal is 1/bears of stock.
		nearUm(t, "stock of that metal", back.Stock, k.Stock.In(um), 2e-6/bears+1e-6)
		if core := k.Plateau.Core; (core == "flat core") != (bears > 0.4) {
			t.Errorf("at %v, %.3f of the wall bears: %q", level, bears, core)
		}
	}
}

// Two levels, the upper of 30 %: a stock of half their distance takes 15 % of it as metal.
func TestTruncatedTwoLevels(t *testing.T) {
	c := surface.CurveOf(sampled(1000, 1, func(share float64) float64 { return map[bool]float64{true: 4, false: -2}[share < 0.3] }))
	k, err := c.Truncate(3 * um)
	must(t, k, err)
	if k.Stock != 3*um || k.Metal != 9*um/10 || k.Level != um || math.Abs(k.Ratio-0.3) > 1e-3 {
		t.Errorf("%+v", k)
	}
}

// When the equivalent line moves on to the plateau, Rvk grows although no valley does: of normally distributed
// heights of deviation 1, cut at their mean, it is twice the area of the lower half over its half of the
// curve, 4·φ(0), where it was 0.945.
func TestRvkRises(t *testing.T) {
	c := surface.CurveOf(normal(100_000))
	k, err := c.Truncate(c.Height(0))
	after := must(t, k, err).Plateau
	nearUm(t, "Rvk before", c.Plateau().Rvk, 0.945030726, 1e-4)
	nearUm(t, "Rvk after", after.Rvk, 4/math.Sqrt(2*math.Pi), 1e-4)
	nearUm(t, "Rk after", after.Rk, 0, 0)
	near(t, "Mr2 after", after.Mr2, 0.5, 1e-4)
}

func drawCurve(t *rapid.T) surface.Curve {
	r, err := profile(t, 0.001, drawHeights(t, 10, 300)).TwoStep(surface.Filter{Sections: 1})
	return must(t, r, err).Curve()
}

// What is cut is gone, and nothing else; more stock is more metal and more plateau, at most its own
// thickness.
func TestCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCurve(t)
		whole := c.Height(0) - c.Height(1)
		a := units.Length(rapid.Int64Range(0, int64(whole)).Draw(t, "stock"))
		b := units.Length(rapid.Int64Range(int64(a), int64(whole)).Draw(t, "more"))
		ka, err := c.Truncate(a)
		must(t, ka, err)
		kb, err := c.Truncate(b)
		must(t, kb, err)
		if kb.Metal < ka.Metal || kb.Ratio < ka.Ratio || kb.Metal-ka.Metal > b-a+1 || ka.Metal > ka.Stock || ka.Stock != a {
			t.Fatalf("%+v, %+v", ka, kb)
		}
		if ka.Plateau != ka.Curve().Plateau() {
			t.Fatalf("%v, but of its curve %v", ka.Plateau, ka.Curve().Plateau())
		}
		sum := 0.0
		for i, z := range ka.Curve().Z() {
			if was := c.Z()[i]; z != was && !(z < was && math.Abs(z-ka.Level.In(um)) < 2e-6) {
				t.Fatalf("%v has become %v at a level of %v", was, z, ka.Level)
			}
			sum += c.Z()[i] - z
		}
		if math.Abs(sum/float64(len(c.Z()))-ka.Metal.In(um)) > 1e-6 {
			t.Fatalf("metal %v, want %v", ka.Metal, sum)
		}
		// Two cuts are the deeper one.
		twice, err := ka.Curve().Truncate(b - a)
		if must(t, twice, err).Plateau != kb.Plateau {
			t.Fatalf("in two cuts %v, at once %v", twice.Plateau, kb.Plateau)
		}
	})
}

// While the cut stays above the core, and the core stays where it is, metal comes off the peaks alone: Rpk
// falls by 2/Mr1 of it, and the other four numbers stay. From height to height the curve is straight: where it
// comes down to the core a height has to be left.
func TestPeaksAlone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		z := smooth(t)
		r, err := profile(t, 0.001, z).TwoStep(surface.Filter{Sections: 1})
		c := must(t, r, err).Curve()
		before := c.Plateau()
		k, err := c.Truncate(units.Length(rapid.Float64Range(0, 0.9).Draw(t, "part") * float64(c.Height(0)-before.Top)))
		after := must(t, k, err).Plateau
		peaks := c.Z()[:int(before.Mr1*float64(len(z))+0.5)]
		if after.From != before.From || peaks[len(peaks)-1] > k.Level.In(um) {
			return
		}
		want := before.Rpk.In(um) - 2*k.Metal.In(um)/before.Mr1
		if math.Abs(after.Rpk.In(um)-want) > 1e-5/before.Mr1 || after.Rk != before.Rk || after.Rvk != before.Rvk || after.Mr1 != before.Mr1 || after.Mr2 != before.Mr2 {
			t.Fatalf("%v less %v is %v, want Rpk %.7f", before, k.Metal, after, want)
		}
	})
}

// The cut that reaches a wanted Rpk reaches it, and none of a thousand shallower ones that stand before the
// last step looked at does.
func TestReach(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := drawCurve(t)
		now := c.Plateau().Rpk
		want := units.Length(rapid.Float64Range(0, 1.1).Draw(t, "of it") * float64(now))
		k, err := c.Reach(want)
		must(t, k, err)
		if k.Plateau.Rpk > want {
			t.Fatalf("Rpk %v, want %v", k.Plateau.Rpk, want)
		}
		if want >= now && k.Stock != 0 {
			t.Fatalf("Rpk is %v, but %v came off for %v", now, k.Stock, want)
		}
		whole := c.Height(0) - c.Height(1)
		for i := units.Length(0); i < 256; i++ {
			stock := whole * i / 256
			if stock >= k.Stock {
				break
			}
			if less, err := c.Truncate(stock); must(t, less, err).Plateau.Rpk <= want {
				t.Fatalf("%v would do, and %v came off", stock, k.Stock)
			}
		}
	})
}

func TestCutRefusals(t *testing.T) {
	c := surface.CurveOf(sampled(100, 1, func(share float64) float64 { return -5 * share * share }))
	whole := c.Height(0) - c.Height(1)
	for _, l := range []units.Length{-1, whole + 1, units.MaxLength} {
		_, err := c.Truncate(l)
		refused(t, "stock "+l.String(), err, units.ErrRange)
		_, err = c.Remove(l)
		refused(t, "metal "+l.String(), err, units.ErrRange)
	}
	_, err := c.Remove(whole)
	refused(t, "metal of the whole height", err, units.ErrRange)
	_, err = c.Reach(-1)
	refused(t, "Rpk below 0", err, units.ErrRange)
	_, err = c.Reach(units.MaxLength + 1)
	refused(t, "Rpk far out", err, units.ErrRange)
	k, err := c.Remove(0)
	if must(t, k, err).Stock != 0 || k.Plateau != c.Plateau() {
		t.Errorf("%+v", k)
	}
}
