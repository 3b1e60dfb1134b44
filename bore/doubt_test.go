// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"fmt"
	"math"
	"testing"

	"gonum.org/v1/gonum/stat/distuv"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// A gauge that is too coarse is answered, with a caution.
func TestCoarseGauge(t *testing.T) {
	g, err := bore.Analyse(sixReadings(), bore.Gauge{Resolution: 10 * um})
	must(t, g, err)
	l := bore.Limits{
		New: units.Limits{Min: 67 * mm, Max: 67*mm + 19*um}, Service: units.Limits{Max: 67*mm + 150*um},
		Ovality: 8 * um, Taper: 30 * um, Spread: 150 * um,
	}
	cs, err := g.Coarse(l)
	must(t, cs, err)
	// One reading is good to 1.96·10/√12 = 5.66 µm, a difference to 8.00 µm.
	want := []string{
		"new bore: ±0.0057 mm against 0.0095 mm",
		"ovality: ±0.0080 mm against 0.008 mm",
		"taper: ±0.0080 mm against 0.03 mm",
	}
	if len(cs) != len(want) {
		t.Fatal(cs)
	}
	for i := range want {
		if got := fmt.Sprintf("%v: ±%s against %v", cs[i].Limit, cs[i].Expanded.Format(mm, 4), cs[i].Allowed); got != want[i] {
			t.Errorf("%s, want %s", got, want[i])
		}
	}
	if fs, err := g.Judge(l, noRisk); err != nil || len(fs) != 5 {
		t.Errorf("findings %v, %v", fs, err)
	}
	// 8.00 µm goes 4.1 times into 33 µm, and 3.9 times into 31 µm.
	for limit, want := range map[units.Length]int{31 * um: 1, 33 * um: 0} {
		if cs, err := g.Coarse(bore.Limits{Spread: limit}); err != nil || len(cs) != want {
			t.Errorf("limit %v: %v, %v", limit, cs, err)
		}
	}
	// The most doubtful place counts, wherever it stands: one that was read once among others.
	for odd := range 3 {
		var rs []bore.Reading
		for i := range 3 {
			for range 1 + 3*min(1, (i-odd)*(i-odd)) {
				rs = append(rs, bore.Reading{Depth: units.Length(i) * mm, Diameter: 67 * mm})
			}
		}
		g, err := bore.Analyse(rs, bore.Gauge{Repeatability: 2 * um})
		must(t, g, err)
		cs, err := g.Coarse(bore.Limits{New: units.Limits{Min: 67 * mm, Max: 67*mm + 10*um}, Spread: 10 * um})
		if must(t, cs, err); len(cs) != 2 {
			t.Fatal(cs)
		}
		within(t, "size", cs[0].Expanded, millimetres(1.959964*2/1000), 2*nm)
		within(t, "difference", cs[1].Expanded, millimetres(1.959964*2*math.Sqrt2/1000), 4*nm)
	}
}

// A repeatability from ten readings of a ring is itself in doubt; that reaches every size and difference, and repeats
// contradict it less readily: 8 µm between two of them where 2 µm is the rule has a chance of 0.0047 by
// chi-squared, and of 0.047 by F for four degrees of freedom (computed).
func TestRepeatabilityOfStudy(t *testing.T) {
	g, err := bore.Analyse([]bore.Reading{at(10, 0, "67 mm"), at(10, 90, "67.01 mm")}, bore.Gauge{Repeatability: 2 * um, RepeatabilityDoF: 9})
	must(t, g, err)
	if e := g.Largest.Size; e.Std != 2*um || e.DoF != 9 {
		t.Errorf("size %+v", e)
	}
	if e := g.Ovality; e.DoF != 9 {
		t.Errorf("ovality %+v", e)
	}
	twice := []bore.Reading{at(10, 0, "67 mm"), at(10, 0, "67.008 mm")}
	for dof, want := range map[float64]float64{0: 1, 4: 4} {
		g, err := bore.Analyse(twice, bore.Gauge{Repeatability: 2 * um, RepeatabilityDoF: dof})
		must(t, g, err)
		if got := g.Largest.Size.DoF; got != want {
			t.Errorf("known with %v degrees of freedom: %v of the size, want %v", dof, got, want)
		}
	}
}

// What averages out and what does not: shared 3 µm, the place's own 10/√12 µm, repeatability 2 µm
// over four places read once.
func TestMeanDoubt(t *testing.T) {
	rs := []bore.Reading{at(10, 0, "67 mm"), at(10, 45, "67 mm"), at(10, 90, "67 mm"), at(10, 135, "67 mm")}
	g, err := bore.Analyse(rs, bore.Gauge{Standard: bore.Standard{Size: 67 * mm, Std: 3 * um}, Resolution: 10 * um, Repeatability: 2 * um})
	must(t, g, err)
	p := g.Planes[0]
	within(t, "size", p.Places[0].Size.Std, millimetres(math.Sqrt(9+100./12+4)/1000), nm)
	within(t, "own", p.Places[0].Own.Std, millimetres(math.Sqrt(100./12+4)/1000), nm)
	within(t, "mean", p.Mean.Std, millimetres(math.Sqrt(9+100./12+1)/1000), nm)
	within(t, "mean of the lobes", p.TwoLobe.Mean.Std, millimetres(math.Sqrt(9+100./12+1)/1000), nm)
	within(t, "mean of all", g.Mean.Std, millimetres(math.Sqrt(9+100./12+1)/1000), nm)
	within(t, "ovality", p.Ovality.Std, millimetres(math.Sqrt(2*(100./12+4))/1000), 2*nm)
	within(t, "amplitude", p.TwoLobe.Amplitude.Std, millimetres(math.Sqrt((100./12+4)/2)/1000), nm)
}

// Of equal places the most doubtful is named, wherever it stands, and its doubt with it; of equal
// planes and tapers likewise, and of tapers that differ in nothing else that which is larger at
// the deck.
func TestTies(t *testing.T) {
	read := func(depth, axis float64, diameter string, times int) []bore.Reading {
		var rs []bore.Reading
		for range times {
			rs = append(rs, at(depth, axis, diameter))
		}
		return rs
	}
	gauge := bore.Gauge{Repeatability: 2 * um}
	for doubtful := range 3 {
		times := []int{4, 4, 4}
		times[doubtful] = 1
		var flat, oval, tapered []bore.Reading
		for i, n := range times {
			flat = append(flat, read(float64(i), 0, "67 mm", n)...)
			oval = append(oval, append(read(float64(i), 0, "67.02 mm", n), read(float64(i), 90, "67 mm", n)...)...)
			tapered = append(tapered, append(read(0, 60*float64(i), "67.02 mm", n), read(50, 60*float64(i), "67 mm", n)...)...)
		}
		g, err := bore.Analyse(flat, gauge)
		must(t, g, err)
		if want := units.Length(doubtful) * mm; g.Largest.Depth != want || g.Smallest.Depth != want || g.Largest.Size.Std != 2*um {
			t.Errorf("place %d: largest %v, smallest %v", doubtful, g.Largest, g.Smallest)
		}
		if std, _, err := g.Budget.Combined(); err != nil || math.Abs(std-2) > 1e-9 {
			t.Errorf("place %d: budget of %v µm, %v", doubtful, std, err)
		}
		g, err = bore.Analyse(oval, gauge)
		if must(t, g, err); g.OvalityAt != units.Length(doubtful)*mm {
			t.Errorf("plane %d: ovality at %v", doubtful, g.OvalityAt)
		}
		g, err = bore.Analyse(tapered, gauge)
		if must(t, g, err); axisApart(units.Angle(g.Taper.Axis), degrees(60*float64(doubtful)), 180) > 1e-9 {
			t.Errorf("axis %d: taper %v", doubtful, g.Taper)
		}
	}
	for _, turned := range []float64{0, 90} {
		rs := append(read(0, turned, "67.02 mm", 1), read(50, turned, "67 mm", 1)...)
		rs = append(rs, append(read(0, 90-turned, "67 mm", 1), read(50, 90-turned, "67.02 mm", 1)...)...)
		if g := measure(t, rs); g.Taper.Size.Value != 20*um {
			t.Errorf("turned by %v°: taper %v", turned, g.Taper)
		}
	}
}

// Degrees of freedom are those of Welch and Satterthwaite, cut to whole numbers; a difference has
// the fewer of its two (the exact ones lie between).
func TestDegreesOfFreedom(t *testing.T) {
	rs := []bore.Reading{at(10, 0, "67 mm")}
	for i := range 9 { // deviations −4 to 4 µm: s² = 60/8 µm², 8 degrees of freedom
		r := at(90, 0, "67 mm")
		r.Diameter += units.Length(i-4) * um
		rs = append(rs, r)
	}
	g, err := bore.Analyse(rs, bore.Gauge{Resolution: 10 * um})
	must(t, g, err)
	a, b := g.Planes[0].Places[0], g.Planes[1].Places[0]
	const s2, fixed = 60. / 8, 100. / 12
	wantA, wantB := 8*math.Pow((s2+fixed)/s2, 2), 8*math.Pow((s2/9+fixed)/(s2/9), 2)
	if a.Own.DoF != math.Floor(wantA) || b.Own.DoF != math.Floor(wantB) {
		t.Errorf("degrees of freedom %v and %v, want %.2f and %.2f", a.Own.DoF, b.Own.DoF, wantA, wantB)
	}
	exact := 8 * math.Pow((s2+s2/9+2*fixed)/(s2+s2/9), 2)
	for _, d := range []float64{a.Minus(b).DoF, b.Minus(a).DoF} {
		if d != a.Own.DoF || d > exact {
			t.Errorf("difference: %v, exactly %.2f", d, exact)
		}
	}
	within(t, "difference", a.Minus(b).Std, millimetres(math.Sqrt(s2+s2/9+2*fixed)/1000), 2*nm)
	// An exact place leaves the other's degrees of freedom.
	if d := a.Minus(bore.Place{}); d.DoF != a.Own.DoF {
		t.Errorf("against an exact place: %v", d)
	}
	if d := (bore.Place{}).Minus(a); d.DoF != a.Own.DoF {
		t.Errorf("of an exact place: %v", d)
	}
}

// Of several places, planes and axes the finding names the one that decides.
func TestTheWorstIsNamed(t *testing.T) {
	judge := func(l bore.Limits, g bore.Gauge, rs ...bore.Reading) uncertainty.Finding {
		t.Helper()
		return judge1(t, spanning(rs), g, l, rs...).Finding
	}
	oval := func(a, b string) []bore.Reading {
		return []bore.Reading{at(10, 0, a), at(10, 90, "67 mm"), at(20, 0, b), at(20, 90, "67 mm")}
	}
	for _, c := range []struct{ a, b, where string }{
		{"67.06 mm", "67.09 mm", "ovality at 20 mm"}, {"67.09 mm", "67.06 mm", "ovality at 10 mm"}, // both beyond
		{"67.01 mm", "67.04 mm", "ovality at 20 mm"}, {"67.04 mm", "67.01 mm", "ovality at 10 mm"}, // both within
		{"67.01 mm", "67.06 mm", "ovality at 20 mm"}, {"67.06 mm", "67.01 mm", "ovality at 10 mm"},
	} {
		if f := judge(bore.Limits{Ovality: 50 * um}, bore.Gauge{}, oval(c.a, c.b)...); f.Subject != c.where {
			t.Errorf("%s and %s: %v", c.a, c.b, f)
		}
		f := judge(bore.Limits{TrueOvality: 50 * um}, bore.Gauge{}, oval(c.a, c.b)...)
		if f.Subject != "true "+c.where {
			t.Errorf("%s and %s: %v", c.a, c.b, f)
		}
	}
	tapered := func(thrust, pin string) []bore.Reading {
		return []bore.Reading{at(10, 0, thrust), at(90, 0, "67 mm"), at(10, 90, pin), at(90, 90, "67 mm")}
	}
	for _, c := range []struct{ thrust, pin, where string }{
		{"66.94 mm", "67.05 mm", "taper, thrust axis"}, {"67.05 mm", "66.94 mm", "taper, pin axis"},
		{"67.03 mm", "66.96 mm", "taper, pin axis"}, {"66.96 mm", "67.03 mm", "taper, thrust axis"},
	} {
		if f := judge(bore.Limits{Taper: 50 * um}, bore.Gauge{}, tapered(c.thrust, c.pin)...); f.Subject != c.where {
			t.Errorf("%s and %s: %v", c.thrust, c.pin, f)
		}
	}
	window := units.Limits{Min: 67 * mm, Max: 67*mm + 20*um}
	for _, c := range []struct{ a, b, named string }{
		{"66.98 mm", "67.05 mm", "67.05 mm"}, {"66.96 mm", "67.05 mm", "66.96 mm"}, // by 20 and 30 µm, by 40 and 30 µm
		{"67.002 mm", "67.015 mm", "67.002 mm"}, {"67.008 mm", "67.015 mm", "67.015 mm"},
		{"67.01 mm", "66.999 mm", "66.999 mm"}, {"67.01 mm", "67.021 mm", "67.021 mm"},
	} {
		if f := judge(bore.Limits{New: window}, bore.Gauge{}, at(10, 0, c.a), at(20, 0, c.b)); f.Measured.Value != units.MustParseLength(c.named) {
			t.Errorf("%s and %s: %v", c.a, c.b, f)
		}
	}
	// A smaller size that is less well known may be the likelier to overstep.
	rs := []bore.Reading{at(20, 0, "67.099 mm")}
	for range 9 {
		rs = append(rs, at(10, 0, "67.1 mm"))
	}
	f := judge(bore.Limits{Service: units.Limits{Max: 67*mm + 103*um}}, bore.Gauge{Repeatability: 3 * um}, rs...)
	if f.Measured.Value != 67*mm+99*um || f.Verdict != uncertainty.Undecided {
		t.Errorf("%v", f)
	}
}

// What is said of a gauge holds until repeats contradict it at a chance of 1 in 100: for five
// readings of one place, with four degrees of freedom, a sum of squares of 13.28 (the 99 % point of
// chi-squared) times its square.
func TestRepeatsContradictTheGauge(t *testing.T) {
	most := distuv.ChiSquared{K: 4}.Quantile(0.99)
	for square, want := range map[float64]uncertainty.Estimate{
		0.99 * most: {Value: 67 * mm, Std: millimetres(10 / math.Sqrt(5) / 1000).Ceil(nm)},
		1.01 * most: {Value: 67 * mm, Std: millimetres(10 * math.Sqrt(1.01*most/4) / math.Sqrt(5) / 1000).Ceil(nm), DoF: 4},
	} {
		d := millimetres(10 * math.Sqrt(square/4) / 1000) // two readings above, two below, one between
		rs := []bore.Reading{at(10, 0, "67 mm")}
		for _, off := range []units.Length{d, d, -d, -d} {
			rs = append(rs, bore.Reading{Depth: 10 * mm, Diameter: 67*mm + off})
		}
		g, err := bore.Analyse(rs, bore.Gauge{Repeatability: 10 * um})
		if must(t, g, err); g.Largest.Size != want {
			t.Errorf("sum of squares of %.2f: %+v, want %+v", square, g.Largest.Size, want)
		}
	}
}

// A repeatability with degrees of freedom of its own is contradicted at the 99 % point of F: 13.27 for 2 and 5, 7.56 for 2 and
// 10 (tables of F, from memory; (0.01^(−2/ν) − 1)·ν/2 for two in the numerator), 98.5 for 1 and 2 and 4052 for 1 and 1.
func TestRepeatsContradictByF(t *testing.T) {
	for _, c := range []struct {
		repeats   int
		dof, most float64
	}{{3, 5, 13.274}, {3, 10, 7.559}, {2, 2, 98.50}, {2, 1, 4052}} {
		for _, times := range []float64{0.98, 1.02} {
			d := millimetres(10 * math.Sqrt(times*c.most) / 1000) // the standard deviation of −d, 0, d
			offs := []units.Length{-d, 0, d}
			if c.repeats == 2 {
				offs = []units.Length{0, millimetres(10 * math.Sqrt(2*times*c.most) / 1000)}
			}
			var rs []bore.Reading
			for _, off := range offs {
				rs = append(rs, bore.Reading{Depth: 10 * mm, Diameter: 67*mm + off, Confirmed: true})
			}
			g, err := bore.Analyse(rs, bore.Gauge{Repeatability: 10 * um, RepeatabilityDoF: c.dof})
			must(t, g, err)
			if got := len(g.Contradictions) > 0; got != (times > 1) {
				t.Errorf("%d repeats against %v degrees of freedom, %v of the point of F: contradicted %t", c.repeats, c.dof, times, got)
			}
		}
	}
}
