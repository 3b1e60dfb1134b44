// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"math"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// profile reads a bore along the thrust axis: sizes over 67 mm in µm, at depths in mm.
func profile(depths, over []float64) []bore.Reading {
	var rs []bore.Reading
	for i, d := range depths {
		rs = append(rs, bore.Reading{Depth: millimetres(d), Diameter: millimetres(67 + over[i]/1000)})
	}
	return rs
}

// Of exact sizes each word is what it says, and depths count, not the number of the plane.
func TestShapesOfExactSizes(t *testing.T) {
	for _, c := range []struct {
		depths, over []float64
		want         string
	}{
		{[]float64{10, 90}, []float64{9, 0}, ""},
		{[]float64{10, 50, 90}, []float64{0, 0, 0}, bore.Straight},
		{[]float64{10, 50, 90}, []float64{2, 1, 0}, bore.Tapered},
		{[]float64{10, 20, 90}, []float64{80, 70, 0}, bore.Tapered}, // even, on uneven depths
		{[]float64{10, 80, 90}, []float64{80, 10, 0}, bore.Tapered},
		{[]float64{10, 20, 80, 90}, []float64{80, 70, 10, 0}, bore.Tapered},
		{[]float64{10, 20, 90}, []float64{80, 69, 0}, bore.BellMouthed},
		{[]float64{10, 20, 90}, []float64{80, 71, 0}, bore.Tapered}, // bulging, but not a barrel
		{[]float64{10, 20, 90}, []float64{0, 1, 0}, bore.Barrelled},
		{[]float64{10, 20, 90}, []float64{1, 0, 1}, bore.Waisted},
		{[]float64{10, 20, 30, 90}, []float64{5, 9, 1, 5}, bore.Irregular},
		{[]float64{10, 20, 30, 90}, []float64{5, 1, 9, 5}, bore.Irregular},
	} {
		if got := measure(t, profile(c.depths, c.over)).Shape; got != c.want {
			t.Errorf("%v at %v: %v, want %v", c.over, c.depths, got, c.want)
		}
	}
}

// Where a difference begins to count: a chance of 5 % over 3(n − 1) looks, one-sided.
func TestShapeThresholds(t *testing.T) {
	gauge := bore.Gauge{Repeatability: um}
	even := map[int][]float64{3: {10, 50, 90}, 5: {10, 30, 50, 70, 90}}
	for n, depths := range even {
		k, err := uncertainty.Coverage(1-2*0.05/float64(3*(n-1)), 0)
		must(t, k, err)
		for _, c := range []struct {
			name  string
			over  func(x float64) []float64 // of a departure of x
			doubt float64                   // of it
			from  string
			to    string
		}{
			{"taper", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = x * float64(n-1-i) / float64(n-1)
				}
				return over
			}, math.Sqrt2, bore.Straight, bore.Tapered},
			{"choke", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = x * float64(i) / float64(n-1)
				}
				return over
			}, math.Sqrt2, bore.Straight, bore.Tapered},
			{"barrel", func(x float64) []float64 { over := make([]float64, n); over[1] = x; return over }, math.Sqrt2, bore.Straight, bore.Barrelled},
			{"waist", func(x float64) []float64 { over := make([]float64, n); over[n-2] = -x; return over }, math.Sqrt2, bore.Straight, bore.Waisted},
			// Larger than one end by far, and than the other just so.
			{"barrel below the deck", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = 100 * float64(n-1-i) / float64(n-1)
				}
				over[1] = 100 + x
				return over
			}, math.Sqrt2, bore.Tapered, bore.Barrelled},
			{"barrel above the skirt", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = 100 * float64(i) / float64(n-1)
				}
				over[n-2] = 100 + x
				return over
			}, math.Sqrt2, bore.Tapered, bore.Barrelled},
			{"waist below the deck", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = 100 * float64(i) / float64(n-1)
				}
				over[1] = -x
				return over
			}, math.Sqrt2, bore.BellMouthed, bore.Waisted},
			{"waist above the skirt", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = 100 * float64(n-1-i) / float64(n-1)
				}
				over[n-2] = -x
				return over
			}, math.Sqrt2, bore.BellMouthed, bore.Waisted},
			{"bell-mouth", func(x float64) []float64 {
				over := make([]float64, n)
				for i := range over {
					over[i] = 100 * float64(n-1-i) / float64(n-1)
				}
				over[n/2] -= x
				return over
			}, math.Sqrt(1.5), bore.Tapered, bore.BellMouthed}, // 1 + ¼ + ¼, from the chord
		} {
			at := k * c.doubt
			for x, want := range map[float64]string{at * 0.998: c.from, at * 1.002: c.to} {
				g, err := bore.Analyse(profile(depths, c.over(x)), gauge)
				if must(t, g, err); g.Shape != want {
					t.Errorf("%d planes, %s of %.3f µm: %v, want %v", n, c.name, x, g.Shape, want)
				}
			}
		}
	}
}

// Each axis is compared with itself, at the depths where it was read; what stands out along one is
// the shape of the bore.
func TestShapeOfEachAxis(t *testing.T) {
	rs := []bore.Reading{ // along thrust straight
		at(10, 0, "67 mm"), at(10, 90, "67.09 mm"),
		at(30, 0, "67 mm"), at(30, 45, "67.2 mm"),
		at(50, 0, "67 mm"), at(50, 90, "67.05 mm"), at(50, 45, "67.3 mm"),
		at(90, 0, "67 mm"), at(90, 90, "67.01 mm"),
	}
	shape := func(l bore.Layout) string {
		t.Helper()
		g, err := l.Analyse(rs, bore.Gauge{})
		return must(t, g, err).Shape
	}
	if got := shape(bore.Layout{}); got != bore.Tapered { // along pin, evenly
		t.Errorf("tapered along pin: %v", got)
	}
	rs[5].Diameter = units.MustParseLength("66.9 mm")
	if got := shape(bore.Layout{}); got != bore.Waisted {
		t.Errorf("waisted along pin: %v", got)
	}
	rs = append(rs, at(70, 0, "67.001 mm"))
	if got := shape(bore.Layout{}); got != bore.Irregular {
		t.Errorf("waisted along pin, barrelled along thrust: %v", got)
	}
	// Along 45° from 30 to 50 mm alone: nothing, were it read once more below.
	rs = append(rs, at(60, 45, "67.2 mm"))
	rs[9].Diameter, rs[5].Diameter = 67*mm, units.MustParseLength("67.05 mm")
	if got := shape(bore.Layout{}); got != bore.Barrelled {
		t.Errorf("barrelled along 45°: %v", got)
	}
	if got := shape(bore.Layout{RingTop: 10 * mm, RingBottom: 90 * mm}); got != bore.Tapered {
		t.Errorf("an axis that does not reach the ends: %v", got)
	}
}

// The ridge is taken along the axes that the planes on both sides of it have.
func TestRidgeOfCommonAxes(t *testing.T) {
	// 0.05 mm along thrust, the one axis that both planes have.
	l := bore.Layout{RingTop: 5 * mm, RingBottom: 80 * mm}
	g, err := l.Analyse([]bore.Reading{at(2, 0, "67 mm"), at(2, 45, "67.2 mm"), at(10, 0, "67.05 mm"), at(10, 90, "67.01 mm")}, bore.Gauge{})
	must(t, g, err)
	within(t, "ridge", g.Ridge.Value, 50*um, 0)
	if !g.HasRidge {
		t.Error("an exact ridge does not stand out")
	}
}

// A ridge counts at 1.645 standard uncertainties: a chance of 5 % on one side.
func TestRidgeThreshold(t *testing.T) {
	l := bore.Layout{RingTop: 5 * mm, RingBottom: 80 * mm}
	for x, want := range map[float64]bool{1.640 * math.Sqrt2: false, 1.650 * math.Sqrt2: true} {
		g, err := l.Analyse(profile([]float64{2, 10}, []float64{0, x}), bore.Gauge{Repeatability: um})
		if must(t, g, err); g.HasRidge != want {
			t.Errorf("ridge of %.3f µm: %v", x, g.HasRidge)
		}
	}
}

// What no axis shows by itself the mean of them all may: its scatter is less, and it has most of the risk of a wrong word.
func TestShapeOfTheMean(t *testing.T) {
	read := func(axes int, bulge units.Length) bore.Geometry {
		var rs []bore.Reading
		for i, over := range []units.Length{0, bulge, bulge, 0} {
			for _, a := range even(axes) {
				rs = append(rs, bore.Reading{Depth: units.Length(10+25*i) * mm, Axis: bore.Axis(degrees(a)), Diameter: 67*mm + over})
			}
		}
		g, err := bore.Analyse(rs, bore.Gauge{Repeatability: 2 * um})
		return must(t, g, err)
	}
	for _, c := range []struct {
		axes  int
		bulge units.Length
		want  string
	}{
		{1, 4 * um, bore.Straight}, {2, 4 * um, bore.Straight}, {8, 4 * um, bore.Barrelled}, // twice the scatter of a reading
		{8, 2 * um, bore.Straight}, {1, 9 * um, bore.Barrelled},
	} {
		if got := read(c.axes, c.bulge).Shape; got != c.want {
			t.Errorf("%d axes, wider by %v: %v, want %v", c.axes, c.bulge, got, c.want)
		}
	}
}
