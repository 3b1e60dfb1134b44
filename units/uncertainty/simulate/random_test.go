// SPDX-License-Identifier: BSD-3-Clause

package simulate

import (
	"math"
	"slices"
	"testing"
)

// The first outputs of SplitMix64 for the seed 1234567, as collections of reference code print them (from memory;
// they are what the algorithm gives).
func TestStream(t *testing.T) {
	s := stream(1234567)
	for i, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		if got := s.next(); got != want {
			t.Errorf("output %d: %d, want %d", i, got, want)
		}
	}
	// chunks do not overlap within 2⁴⁰ draws, and other seeds are elsewhere
	if start(7, 1)-start(7, 0) != gamma<<40&math.MaxUint64 || start(7, 0) == start(8, 0) {
		t.Error("streams of chunks")
	}
}

// Layers of one area under exp(−x²/2), the lowest with the tail.
func TestZiggurat(t *testing.T) {
	f := func(x float64) float64 { return math.Exp(-x * x / 2) }
	area := widths[0] * heights[1]
	tail := math.Sqrt(math.Pi/2) * math.Erfc(widths[1]/math.Sqrt2)
	if math.Abs(widths[1]*heights[1]+tail-area) > 1e-16 {
		t.Errorf("lowest layer %v, want %v", widths[1]*heights[1]+tail, area)
	}
	for i := 1; i < 256; i++ {
		if math.Abs(heights[i]-f(widths[i])) > 3e-16 || math.Abs(widths[i]*(heights[i+1]-heights[i])-area) > 1e-15 || widths[i+1] >= widths[i] {
			t.Errorf("layer %d: %v, %v", i, widths[i], heights[i])
		}
	}
	if widths[256] != 0 || heights[256] != 1 {
		t.Error("tip", widths[256], heights[256])
	}
	if kept := math.Sqrt(math.Pi/2) / (256 * area); math.Abs(kept-0.9933) > 1e-4 {
		t.Errorf("%v of the draws are under the curve", kept)
	}
}

// Draws beyond the last layer are those of the normal curve there, by Kolmogorov's distance at a chance of 1e-4, on the side
// that they began on.
func TestBeyondTheLastLayer(t *testing.T) {
	const n = 100_000
	s := stream(3)
	beyond := func(x float64) float64 { return math.Erfc(x/math.Sqrt2) / math.Erfc(widths[1]/math.Sqrt2) }
	xs := make([]float64, n)
	for i := range xs {
		side := float64(1 - 2*(i%2))
		if xs[i] = side * s.rest(0, side); !(xs[i] > widths[1]) {
			t.Fatalf("%v, from the side of %v", xs[i], side)
		}
	}
	slices.Sort(xs)
	distance := 0.0
	for i, x := range xs {
		p := 1 - beyond(x)
		distance = max(distance, p-float64(i)/n, float64(i+1)/n-p)
	}
	if distance > 2.23/math.Sqrt(n) {
		t.Errorf("distance %v", distance)
	}
}

// Blocks are steady where twice the standard deviation of their average is no more than the tolerance, in all six
// numbers: of 11, 12, 13 and 14 it is 2·√(5/3)/√4 = 1.290994.
func TestSteady(t *testing.T) {
	for k := range 6 {
		blocks := make([][6]float64, 4)
		for i := range blocks {
			blocks[i][k] = float64(11 + i)
		}
		if steady(blocks, 1.29099) || !steady(blocks, 1.29100) {
			t.Errorf("number %d", k)
		}
	}
}

// The same functions as the standard library's, to their digits.
func TestFunctions(t *testing.T) {
	for x := -4.0; x <= 4; x += 0.01 {
		if want := math.Exp(-x * x / 2); math.Abs(bell(x)-want) > 1e-13*want {
			t.Errorf("bell(%v) = %v, want %v", x, bell(x), want)
		}
	}
	for x := 1e-17; x < 1e3; x *= 1.1 {
		if want := math.Log(x); math.Abs(logarithm(x)-want) > 1e-15*max(1, math.Abs(want)) {
			t.Errorf("log %v = %v, want %v", x, logarithm(x), want)
		}
	}
}

// JCGM 101:2008 7.9.2 (from memory; logic alone).
func TestTolerance(t *testing.T) {
	for _, c := range []struct {
		std    float64
		digits int
		want   float64
	}{
		{0.00035, 2, 0.000005}, {0.00035, 1, 0.00005}, {2, 1, 0.5}, {0.0996, 2, 0.005}, {0.0994, 2, 0.0005}, {99.6, 1, 50},
		{0, 1, 0}, {-1, 1, 0}, {math.NaN(), 1, 0}, {math.Inf(1), 1, 0},
	} {
		if got := tolerance(c.std, c.digits); !(math.Abs(got-c.want) <= 1e-12*c.want) {
			t.Errorf("%v, %d digits: %v, want %v", c.std, c.digits, got, c.want)
		}
	}
}

// JCGM 101:2008 7.9.4 (from memory): blocks of 10,000, or of 100/(1 − p) where that is more, here in whole chunks:
// 37,038 for three sigmas.
func TestBlockSize(t *testing.T) {
	for p, want := range map[float64]int{0.90: 10_000, 0.95: 10_000, 0.99: 10_000, 0.9973: 40_000, 0.9999: 1_000_000} {
		if got := blockSize(p); got != want {
			t.Errorf("%v: %d, want %d", p, got, want)
		}
	}
}
