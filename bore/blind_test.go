// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"math"
	"slices"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// How much of an ovality the axes show, over all ways that the long axis may lie: the numbers of
// the package comment.
func TestHowMuchAxesShow(t *testing.T) {
	for _, c := range []struct {
		axes        []float64
		least, most float64
	}{
		{[]float64{0, 90}, 0, 1},
		{[]float64{0, 60, 120}, 0.75, 0.866},
		{[]float64{0, 45, 90}, 0.5, 1},
		{[]float64{0, 45, 90, 135}, 0.707, 1},
		{[]float64{0, 30, 60, 90, 120, 150}, 0.866, 1},
	} {
		least, most, sum, under := math.Inf(1), 0.0, 0.0, 0
		const turns = 720
		for i := range turns {
			long := math.Pi * (float64(i) + 0.5) / turns
			if i == 0 {
				long = 0 // where two axes see all or nothing
			} else if i == turns/4 {
				long = math.Pi / 4
			}
			w := wall(func(d float64) float64 { return 33.5 + 0.025*math.Cos(2*(d-long)) })
			g := measure(t, w.read(mm, c.axes...))
			shown := g.Ovality.Value.In(100 * um) // of an ovality of 0.1 mm
			least, most, sum = min(least, shown), max(most, shown), sum+shown
			if shown < 0.5 {
				under++
			}
			if len(c.axes) > 2 {
				within(t, "the fit", 2*g.Planes[0].TwoLobe.Amplitude.Value, 100*um, 2*nm)
			}
		}
		if math.Abs(least-c.least) > 0.004 || math.Abs(most-c.most) > 0.004 {
			t.Errorf("axes %v: %.3f to %.3f, want %v to %v", c.axes, least, most, c.least, c.most)
		}
		if len(c.axes) == 2 && (math.Abs(sum/turns-2/math.Pi) > 0.003 || math.Abs(float64(under)/turns-1./3) > 0.005) {
			t.Errorf("two axes: %.3f on average, less than half in %.3f of bores", sum/turns, float64(under)/turns)
		}
	}
}

// The range of n readings of one size, in standard deviations of one: the numbers of the package
// comment and of [bore.Plane].
func TestRangeOfNothing(t *testing.T) {
	for n, want := range map[int]float64{2: 1.13, 3: 1.69, 4: 2.06, 6: 2.53, 20: 3.73} {
		mean, _, err := uncertainty.MeanRange(n)
		if must(t, mean, err); math.Abs(mean-want) > 0.006 {
			t.Errorf("%d readings: %.3f, want %v", n, mean, want)
		}
	}
}

// What each set of readings admits to.
func TestUnseen(t *testing.T) {
	at := func(depths []float64, axes ...float64) []bore.Reading {
		var rs []bore.Reading
		for _, d := range depths {
			for _, a := range axes {
				rs = append(rs, bore.Reading{Depth: millimetres(d), Axis: bore.Axis(degrees(a)), Diameter: 67 * mm})
			}
		}
		return rs
	}
	three, two, one := []float64{12, 50, 90}, []float64{12, 90}, []float64{12}
	travel := bore.Layout{RingTop: 10 * mm, RingBottom: 92 * mm}
	for name, c := range map[string]struct {
		l    bore.Layout
		rs   []bore.Reading
		g    bore.Gauge
		want string
	}{
		"one axis":      {bore.Layout{}, at(three, 0), bore.Gauge{}, "ovality; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"two axes":      {bore.Layout{}, at(three, 0, 90), bore.Gauge{}, "ovality between the axes; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"three axes":    {bore.Layout{}, at(three, 0, 60, 120), bore.Gauge{}, "four lobes taken for two; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"four axes":     {bore.Layout{}, at(three, 0, 45, 90, 135), bore.Gauge{}, "four lobes; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"five axes":     {bore.Layout{}, at(three, even(5)...), bore.Gauge{}, "six lobes and more; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"fewest decide": {bore.Layout{}, append(at(two, 0, 45, 90, 135), at([]float64{50}, 0, 90)...), bore.Gauge{}, "ovality between the axes; odd lobes; ring travel; centre; scores; scatter; elsewhere"},
		"two depths":    {bore.Layout{}, at(two, 0, 90), bore.Gauge{}, "ovality between the axes; odd lobes; shape; ring travel; centre; scores; scatter; elsewhere"},
		"one depth":     {bore.Layout{}, at(one, 0, 90), bore.Gauge{}, "ovality between the axes; odd lobes; taper; ring travel; centre; scores; scatter; elsewhere"},
		"three-point":   {bore.Layout{}, at(three, 0, 90), bore.Gauge{Kind: bore.ThreePoint}, "ovality; lobes in the size; ring travel; centre; scores; scatter; elsewhere"},
		"repeats":       {bore.Layout{}, append(at(three, 0), at(one, 0)...), bore.Gauge{}, "ovality; odd lobes; ring travel; centre; scores; elsewhere"},
		"repeatability": {bore.Layout{}, at(three, 0), bore.Gauge{Repeatability: um}, "ovality; odd lobes; ring travel; centre; scores; elsewhere"},
		"no axis twice": {bore.Layout{}, append(at(one, 0, 90), at([]float64{90}, 45, 135)...), bore.Gauge{}, "ovality between the axes; odd lobes; taper; ring travel; centre; scores; scatter; elsewhere"},
		"whole travel":  {travel, at([]float64{12, 50, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; centre; scores; scatter; elsewhere"},
		"no unworn":     {travel, at(three, 0), bore.Gauge{}, "ovality; odd lobes; unworn size; centre; scores; scatter; elsewhere"},
		"no top":        {travel, at([]float64{40, 50, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; taper; shape; top; centre; scores; scatter; elsewhere"},
		"no middle":     {travel, at([]float64{12, 20, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; middle; centre; scores; scatter; elsewhere"},
		"middle's top":  {travel, at([]float64{12, 34.6, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; centre; scores; scatter; elsewhere"},
		"middle's end":  {travel, at([]float64{12, 67.4, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; centre; scores; scatter; elsewhere"},
		"above it":      {travel, at([]float64{12, 34.5, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; middle; centre; scores; scatter; elsewhere"},
		"below it":      {travel, at([]float64{12, 67.5, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; middle; centre; scores; scatter; elsewhere"},
		"upper fifth":   {travel, at([]float64{20, 50, 90, 95}, 0), bore.Gauge{}, "ovality; odd lobes; taper; shape; top; centre; scores; scatter; elsewhere"},
		"ends apart":    {travel, append(at([]float64{12, 50, 95}, 0), at([]float64{50, 90}, 90)...), bore.Gauge{}, "ovality; odd lobes; taper; shape; centre; scores; scatter; elsewhere"},
		"assumed":       {bore.Layout{Stroke: 54 * mm}, at([]float64{5, 12, 50, 90}, 0), bore.Gauge{}, "ovality; odd lobes; unworn size; centre; scores; scatter; elsewhere"},
		"no bottom":     {travel, at([]float64{5, 12, 50, 60}, 0), bore.Gauge{}, "ovality; odd lobes; taper; shape; bottom; centre; scores; scatter; elsewhere"},
	} {
		g, err := c.l.Analyse(c.rs, c.g)
		must(t, g, err)
		got := ""
		for i, u := range g.Unseen {
			b, err := u.MarshalText()
			must(t, b, err)
			if i > 0 {
				got += "; "
			}
			got += string(b)
		}
		if got != c.want {
			t.Errorf("%s:\ngot  %s\nwant %s", name, got, c.want)
		}
	}
}

// With ring travel known, taper and shape are of the planes that rings reach, and the step to the
// plane above is the ridge.
func TestRingTravel(t *testing.T) {
	var rs []bore.Reading
	for _, r := range []struct {
		depth float64
		over  float64 // µm
	}{{4, 0}, {10, 120}, {50, 60}, {88, 20}, {98, 1}} {
		for _, axis := range []float64{0, 90} {
			rs = append(rs, bore.Reading{Depth: millimetres(r.depth), Axis: bore.Axis(degrees(axis)), Diameter: millimetres(67 + (r.over+axis/10)/1000)})
		}
	}
	blind := measure(t, rs)
	if blind.Shape != bore.Barrelled || blind.Taper.Size.Value != -um || blind.HasRidge {
		t.Errorf("travel not known: %v, taper %v, ridge %v", blind.Shape, blind.Taper, blind.Ridge)
	}
	l := bore.Layout{Length: 100 * mm, RingTop: 8 * mm, RingBottom: 92 * mm}
	g, err := l.Analyse(rs, bore.Gauge{Repeatability: 2 * um})
	must(t, g, err)
	if g.Shape != bore.BellMouthed { // 60 µm where an even taper would have 69
		t.Errorf("shape %v", g.Shape)
	}
	within(t, "taper", g.Taper.Size.Value, 100*um, 0)
	if g.Taper.From != 10*mm || g.Taper.To != 88*mm {
		t.Errorf("taper from %v to %v", g.Taper.From, g.Taper.To)
	}
	within(t, "ridge", g.Ridge.Value, 120*um, 0)
	// The means of two readings each: 2/√2 µm, and √2 for the difference.
	within(t, "doubt of the ridge", g.Ridge.Std, 2*um, 2*nm)
	if !g.HasRidge {
		t.Errorf("ridge of %v does not stand out", g.Ridge)
	}
	// Read four times, each size of the upper plane within it is twice as sure: √(2²/2 + 1²/2) µm.
	many := slices.Clone(rs)
	for range 3 {
		many = append(many, rs[2:4]...)
	}
	more, err := l.Analyse(many, bore.Gauge{Repeatability: 2 * um})
	must(t, more, err)
	within(t, "doubt of the ridge", more.Ridge.Std, millimetres(math.Sqrt(2.5)/1000), 2*nm)
	// Read along one axis above and another within, there is nothing to compare.
	g1, err := l.Analyse([]bore.Reading{rs[0], rs[3], rs[5], rs[7]}, bore.Gauge{})
	if must(t, g1, err); g1.HasRidge || g1.Ridge != (uncertainty.Estimate{}) {
		t.Errorf("of different axes: ridge %v", g1.Ridge)
	}
	if _, ok := g.At(98 * mm); !ok {
		t.Error("no plane at 98 mm")
	}
	// The ends of ring travel belong to it.
	exact := bore.Layout{RingTop: 10 * mm, RingBottom: 88 * mm}
	g, err = exact.Analyse(rs, bore.Gauge{})
	if must(t, g, err); g.Taper.From != 10*mm || g.Taper.To != 88*mm {
		t.Errorf("taper from %v to %v", g.Taper.From, g.Taper.To)
	}
	// The same with no plane above ring travel, and with one that is not smaller.
	g, err = l.Analyse(rs[2:], bore.Gauge{})
	if must(t, g, err); g.HasRidge || g.Ridge.Value != 0 {
		t.Errorf("no plane above: ridge %v", g.Ridge)
	}
	for i := range 2 {
		rs[i].Diameter += 130 * um
	}
	g, err = l.Analyse(rs, bore.Gauge{})
	if must(t, g, err); g.HasRidge || g.Ridge.Value != -10*um {
		t.Errorf("larger above: ridge %v", g.Ridge)
	}
}

// Bridges are read apart: their sizes count, and along the axes read so do taper and shape; their
// ovality and mean do not.
func TestBridges(t *testing.T) {
	port := bore.Port{Name: "transfer", From: 55 * mm, To: 70 * mm, At: degrees(45), Width: degrees(50)}
	l := bore.Layout{Ports: []bore.Port{port}}
	rs := []bore.Reading{
		at(10, 0, "52.05 mm"), at(10, 90, "52.04 mm"),
		at(60, 0, "52.09 mm"), at(60, 90, "52.00 mm"),
		at(90, 0, "52.02 mm"), at(90, 90, "52.01 mm"),
	}
	g, err := l.Analyse(rs, bore.Gauge{})
	must(t, g, err)
	if len(g.Planes) != 2 || len(g.Bridges) != 1 || g.Bridges[0].Depth != 60*mm {
		t.Fatalf("planes %v, bridges %v", g.Planes, g.Bridges)
	}
	within(t, "largest", g.Largest.Size.Value, 52*mm+90*um, 0)
	within(t, "smallest", g.Smallest.Size.Value, 52*mm, 0)
	within(t, "spread", g.Spread.Value, 90*um, 0)
	within(t, "ovality", g.Ovality.Value, 10*um, 0)
	within(t, "ovality of the bridges", g.Bridges[0].Ovality.Value, 90*um, 0)
	within(t, "mean", g.Mean.Value, 52*mm+30*um, 0)
	if g.Shape != bore.Irregular { // wider there along one axis, narrower along the other
		t.Errorf("shape %v", g.Shape)
	}
	// A bore read on bridges alone still has sizes.
	g, err = l.Analyse(rs[2:4], bore.Gauge{})
	must(t, g, err)
	within(t, "mean of the bridges", g.Mean.Value, 52*mm+45*um, 0)
	if fs, err := g.Judge(bore.Limits{Spread: 50 * um, Ovality: um}, noRisk); err != nil || len(fs) != 2 || fs[0].Subject != "ovality, not measured" || fs[1].Verdict.String() != "beyond" {
		t.Errorf("%v, %v", fs, err)
	}
}

// What three and four axes cannot see may carry a wall beyond its limit: of two lobes of 0.015 mm at 45°
// and four of 0.006 mm at 22.5° (amplitudes of the diameter), 0.0364 mm in all, the form through three
// axes has 0.018 mm and that through four 0.030 mm.
func TestTrueOvalityFromFewAxesIsOpen(t *testing.T) {
	w := wall(func(d float64) float64 { return 33.5 + 0.0075*math.Sin(2*d) + 0.003*math.Cos(4*(d-math.Pi/8)) })
	for _, c := range []struct {
		axes  int
		limit units.Length
		want  uncertainty.Verdict
	}{
		{2, 20 * um, uncertainty.Undecided}, {3, 20 * um, uncertainty.Undecided}, {4, 31 * um, uncertainty.Undecided},
		{5, 45 * um, uncertainty.Within}, {7, 20 * um, uncertainty.Beyond},
	} {
		rs := w.read(mm, even(c.axes)...)
		if f := judge1(t, bore.Layout{}, bore.Gauge{Repeatability: um / 10}, bore.Limits{TrueOvality: c.limit}, rs...); f.Verdict != c.want {
			t.Errorf("%d axes against %v: %v, want %v", c.axes, c.limit, f, c.want)
		}
		if lobes := measure(t, rs).Planes[0].TwoLobe.Amplitude.Value; c.axes == 3 {
			within(t, "the form through three axes", 2*lobes, 18*um, nm)
		}
	}
}

// Of a wall of two and four lobes the most that they can come to is twice both amplitudes; a
// reading that departs from them adds twice its departure.
func TestTrueOvalityOfLobes(t *testing.T) {
	w := wall(func(d float64) float64 { return 33.5 + 0.010*math.Cos(2*(d-0.3)) + 0.004*math.Cos(4*(d-0.7)) })
	rs := w.read(mm, even(7)...)
	judge := func(limit bore.Limits, rs []bore.Reading) uncertainty.Finding {
		t.Helper()
		fs, err := measure(t, rs).Judge(limit, noRisk)
		return must(t, fs, err)[0].Finding
	}
	f := judge(bore.Limits{TrueOvality: 57 * um}, rs)
	if within(t, "two and four lobes", f.Measured.Value, 56*um, 10*nm); f.Verdict != uncertainty.Within {
		t.Errorf("%v", f)
	}
	if f := judge(bore.Limits{TrueOvality: 55 * um}, rs); f.Verdict != uncertainty.Undecided {
		t.Errorf("%v", f)
	}
	// Six lobes of 2 µm are in neither fit; along seven axes they show as a departure of most of that.
	w = wall(func(d float64) float64 {
		return 33.5 + 0.010*math.Cos(2*(d-0.3)) + 0.004*math.Cos(4*(d-0.7)) + 0.001*math.Cos(6*d)
	})
	f = judge(bore.Limits{TrueOvality: mm}, w.read(mm, even(7)...))
	within(t, "six lobes too", f.Measured.Value, 56*um+4*um, 100*nm)
}
