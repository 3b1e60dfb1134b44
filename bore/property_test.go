// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"fmt"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func length(t *rapid.T, label string, low, high units.Length) units.Length {
	return units.Length(rapid.Int64Range(int64(low), int64(high)).Draw(t, label))
}

// readings draws those of one bore: the same axes at each of some depths, repeats at will, worn by
// up to 0.3 mm.
func readings(t *rapid.T, axes, depths int) []bore.Reading {
	var rs []bore.Reading
	for d := range depths {
		for a := range axes {
			for range rapid.IntRange(1, 3).Draw(t, "repeats") {
				rs = append(rs, bore.Reading{
					Depth:    units.Length(10+20*d) * mm,
					Axis:     bore.Axis(degrees(180 * float64(a) / float64(axes))),
					Diameter: 67*mm + length(t, "wear", 0, 300*um),
				})
			}
		}
	}
	return rs
}

func drawReadings(t *rapid.T) []bore.Reading {
	return readings(t, rapid.IntRange(1, 6).Draw(t, "axes"), rapid.IntRange(1, 5).Draw(t, "depths"))
}

// sizes sums a geometry up without directions.
func sizes(g bore.Geometry) string {
	s := fmt.Sprint(g.Largest.Size, g.Smallest.Size, g.Mean, g.Ovality, g.OvalityAt, g.Spread, g.Taper.Size, g.Shape, g.Unseen)
	for _, p := range g.Planes {
		s += fmt.Sprint(p.Depth, p.Mean, p.Ovality)
	}
	return s
}

func TestOrderOfReadingsDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		before := slices.Clone(rs)
		g, err := bore.Analyse(rs, shopGauge())
		must(t, g, err)
		if !slices.Equal(rs, before) {
			t.Fatal("Measure changed its readings")
		}
		h, err := bore.Analyse(rapid.Permutation(rs).Draw(t, "order"), shopGauge())
		if must(t, h, err); fmt.Sprint(g) != fmt.Sprint(h) {
			t.Fatalf("%v\n%v", g, h)
		}
	})
}

func TestTurningTurnsDirectionsOnly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		turn := degrees(rapid.Float64Range(-720, 720).Draw(t, "turn"))
		turned := slices.Clone(rs)
		for i := range turned {
			turned[i].Axis += bore.Axis(turn)
		}
		g, err := bore.Analyse(rs, shopGauge())
		must(t, g, err)
		h, err := bore.Analyse(turned, shopGauge())
		must(t, h, err)
		if sizes(g) != sizes(h) {
			t.Fatalf("turned by %v:\n%s\n%s", turn, sizes(g), sizes(h))
		}
		ties := 0 // of equal places, the one named may be another
		for _, p := range g.Planes {
			for _, q := range p.Places {
				if q.Size == g.Largest.Size {
					ties++
				}
			}
		}
		if ties == 1 && axisApart(units.Angle(g.Largest.Axis+bore.Axis(turn)), units.Angle(h.Largest.Axis), 180) > 2e-6 {
			t.Fatalf("largest along %v, turned by %v along %v", g.Largest.Axis, turn, h.Largest.Axis)
		}
		for i := range g.Planes {
			a, b := g.Planes[i].TwoLobe, h.Planes[i].TwoLobe
			if (a.Amplitude.Value-b.Amplitude.Value).Abs() > 2*nm || (a == bore.Lobes{}) != (b == bore.Lobes{}) {
				t.Fatalf("turned by %v: two lobes %v, %v", turn, a, b)
			}
			if a.Amplitude.Value > um && axisApart(a.Axis+turn, b.Axis, 180) > 1e-3 {
				t.Fatalf("turned by %v: long axis %v, %v", turn, a.Axis, b.Axis)
			}
		}
	})
}

func TestHalfTurnsAreOneAxis(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		turned := slices.Clone(rs)
		for i := range turned {
			turned[i].Axis += bore.Axis(degrees(180 * float64(rapid.IntRange(-9, 9).Draw(t, "half turns"))))
		}
		if g, h := measure(t, rs), measure(t, turned); fmt.Sprint(g) != fmt.Sprint(h) {
			t.Fatalf("%v\n%v", g, h)
		}
	})
}

func TestSizeChangeMovesSizesAndNoForm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		delta := length(t, "delta", -2*mm, 2*mm)
		moved := slices.Clone(rs)
		for i := range moved {
			moved[i].Diameter += delta
		}
		g, h := measure(t, rs), measure(t, moved)
		for _, c := range []struct{ a, b units.Length }{
			{g.Largest.Size.Value, h.Largest.Size.Value}, {g.Smallest.Size.Value, h.Smallest.Size.Value}, {g.Mean.Value, h.Mean.Value},
		} {
			if c.b-c.a != delta {
				t.Fatalf("moved by %v: %v to %v", delta, c.a, c.b)
			}
		}
		if g.Ovality != h.Ovality || g.Spread != h.Spread || g.Taper != h.Taper || g.Shape != h.Shape {
			t.Fatalf("moved by %v: form changed: %v, %v", delta, g, h)
		}
		for i := range g.Planes {
			if g.Planes[i].TwoLobe.Amplitude != h.Planes[i].TwoLobe.Amplitude || g.Planes[i].TwoLobe.Axis != h.Planes[i].TwoLobe.Axis {
				t.Fatalf("moved by %v: two lobes changed", delta)
			}
		}
	})
}

// distinctAxes draws axes in degrees, each at least apart from the next, and from the first again.
func distinctAxes(t *rapid.T, n int, apart float64) []float64 {
	at := make([]float64, n)
	sum := 0.0
	for i := range at {
		sum += apart + rapid.Float64Range(0, 20).Draw(t, "gap")
		at[i] = sum
	}
	stretch := (180 - float64(n)*apart) / max(sum-float64(n)*apart, 1e-9)
	x := rapid.Float64Range(0, 180).Draw(t, "first")
	last := 0.0
	for i, s := range at {
		x += apart + (s-last-apart)*min(stretch, 1)
		last = s
		at[i] = x
	}
	return at
}

func TestTwoLobesComeBackExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		amplitude := float64(rapid.IntRange(1, 300).Draw(t, "amplitude")) / 1000
		phase := rapid.Float64Range(0, 180).Draw(t, "phase")
		w := wall(func(d float64) float64 { return 33.5 + amplitude/2*math.Cos(2*(d-phase*math.Pi/180)) })
		p := measure(t, w.read(mm, distinctAxes(t, rapid.IntRange(3, 8).Draw(t, "axes"), 10)...)).Planes[0]
		if d := (p.TwoLobe.Amplitude.Value - millimetres(amplitude)).Abs(); d > nm {
			t.Fatalf("amplitude %v, want %v mm", p.TwoLobe.Amplitude, amplitude)
		}
		if d := (p.TwoLobe.Mean.Value - 67*mm).Abs(); d > nm {
			t.Fatalf("mean %v", p.TwoLobe.Mean)
		}
		if p.TwoLobe.Amplitude.Std == 0 && p.TwoLobe.AxisStd != 0 {
			t.Fatalf("an exact amplitude at an axis known to %v", p.TwoLobe.AxisStd)
		}
		// A nanometre across the amplitude turns it by so many degrees.
		if axisApart(p.TwoLobe.Axis, degrees(phase), 180) > 1e-6/(2*amplitude)*180/math.Pi {
			t.Fatalf("axis %v, want %v°", p.TwoLobe.Axis, phase)
		}
	})
}

func TestFourLobesComeBackExactly(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		two, four := rapid.Float64Range(0.001, 0.05).Draw(t, "two"), rapid.Float64Range(0.001, 0.05).Draw(t, "four")
		p2, p4 := rapid.Float64Range(0, 180).Draw(t, "at"), rapid.Float64Range(0, 90).Draw(t, "at four")
		w := wall(func(d float64) float64 {
			return 40 + two/2*math.Cos(2*(d-p2*math.Pi/180)) + four/2*math.Cos(4*(d-p4*math.Pi/180))
		})
		p := measure(t, w.read(mm, distinctAxes(t, rapid.IntRange(5, 9).Draw(t, "axes"), 18)...)).Planes[0]
		if (p.TwoLobe.Amplitude.Value-millimetres(two)).Abs() > nm || (p.FourLobe.Amplitude.Value-millimetres(four)).Abs() > nm {
			t.Fatalf("two %v, four %v; want %v, %v mm", p.TwoLobe.Amplitude, p.FourLobe.Amplitude, two, four)
		}
		if axisApart(p.TwoLobe.Axis, degrees(p2), 180) > 0.02 || axisApart(p.FourLobe.Axis, degrees(p4), 90) > 0.02 {
			t.Fatalf("two at %v, four at %v; want %v°, %v°", p.TwoLobe.Axis, p.FourLobe.Axis, p2, p4)
		}
		hs := p.Harmonics()
		if len(hs) != 2 || hs[0].Order != 2 || hs[1].Order != 4 || (hs[1].Amplitude-millimetres(four/2)).Abs() > nm {
			t.Fatalf("harmonics %v", hs)
		}
	})
}

func TestSubsetNeverShowsMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		var one []bore.Reading // one reading a place: repeats of one place do not have a range
		for _, r := range rs {
			if !slices.ContainsFunc(one, func(o bore.Reading) bool { return o.Depth == r.Depth && o.Axis == r.Axis }) {
				one = append(one, r)
			}
		}
		keep := rapid.SliceOfN(rapid.Bool(), len(one), len(one)).Draw(t, "keep")
		var some []bore.Reading
		for i, r := range one {
			if keep[i] {
				some = append(some, r)
			}
		}
		if some == nil {
			some = one[:1]
		}
		all, part := measure(t, one), measure(t, some)
		if part.Spread.Value > all.Spread.Value || part.Ovality.Value > all.Ovality.Value {
			t.Fatalf("part %v, %v; all %v, %v", part.Spread, part.Ovality, all.Spread, all.Ovality)
		}
	})
}

// Each verdict, from bad to good.
func goodness(f uncertainty.Finding) int {
	return map[uncertainty.Verdict]int{uncertainty.Beyond: 0, uncertainty.Undecided: 1, uncertainty.Within: 2}[f.Verdict]
}

func TestRaisingALimitNeverMakesAFindingWorse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		g, err := spanning(rs).Analyse(rs, shopGauge())
		must(t, g, err)
		l := bore.Limits{
			New:     units.Limits{Max: 67*mm + length(t, "new", 1, 400*um)},
			Service: units.Limits{Max: 67*mm + length(t, "service", 1, 400*um)},
			Ovality: length(t, "ovality", um, 400*um), Taper: length(t, "taper", um, 400*um),
			Spread: length(t, "spread", um, 400*um), TrueOvality: length(t, "true ovality", um, 800*um),
		}
		more := l
		for _, p := range []*units.Length{&more.New.Max, &more.Service.Max, &more.Ovality, &more.Taper, &more.Spread, &more.TrueOvality} {
			*p += length(t, "more", 0, 50*um)
		}
		a, err := g.Judge(l, noRisk)
		must(t, a, err)
		b, err := g.Judge(more, noRisk)
		must(t, b, err)
		for i := range a {
			// Of the wall's own ovality beyond rests on the readings, anything better on the lobes as well: two
			// probabilities of which the second is the smaller.
			other := a[i].Limit == bore.LimitTrueOvality && a[i].Verdict == uncertainty.Beyond && b[i].Verdict != uncertainty.Beyond
			if goodness(b[i].Finding) < goodness(a[i].Finding) || b[i].Conform < a[i].Conform && !other {
				t.Fatalf("%v\nand with more allowed\n%v", a[i], b[i])
			}
		}
	})
}

// The finding on sizes, one by one: within where every place is, at the full risk of accepting, and beyond where some
// place is at its share of the risk of rejecting.
func TestSizesAreJudgedAsTheGreatest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, err := bore.Analyse(drawReadings(t), shopGauge())
		must(t, g, err)
		w := units.Limits{Min: 67*mm + length(t, "min", 0, 200*um), Max: 67*mm + length(t, "max", 200*um, 400*um)}
		switch rapid.IntRange(0, 2).Draw(t, "ends") {
		case 0:
			w.Min = 0
		case 1:
			w.Max = 0
		}
		var es []uncertainty.Estimate
		for _, p := range g.Planes {
			for _, q := range p.Places {
				es = append(es, q.Size)
			}
		}
		all, some, least := true, false, 1.0
		shared := uncertainty.Risk{Reject: noRisk.Share(len(es)).Reject}
		for _, e := range es {
			own, err := uncertainty.Judge(e, w, noRisk)
			must(t, own, err)
			part, err := uncertainty.Judge(e, w, shared)
			must(t, part, err)
			all, some = all && own.Verdict == uncertainty.Within, some || part.Verdict == uncertainty.Beyond
			least = min(least, own.Conform)
		}
		fs, err := g.Judge(bore.Limits{Service: w}, noRisk)
		got := must(t, fs, err)[0]
		if (got.Verdict == uncertainty.Within) != all || (got.Verdict == uncertainty.Beyond) != some || !some && got.Conform != least {
			t.Fatalf("%+v: all within %v, some beyond %v, least conformity %v", got, all, some, least)
		}
		if got.Kind != uncertainty.GreatestOf || got.N != len(es) || got.Risk != noRisk.OrDefault() || got.Per != fmt.Sprintf("%d places", len(es)) {
			t.Fatalf("%+v", got)
		}
	})
}

// A true ovality is never within from fewer than five axes, and never beyond where the axes read are not.
func TestTrueOvality(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		axes := rapid.IntRange(2, 6).Draw(t, "axes")
		g, err := bore.Analyse(readings(t, axes, 2), shopGauge())
		must(t, g, err)
		limit := length(t, "limit", 10*um, 900*um)
		fs, err := g.Judge(bore.Limits{Ovality: limit, TrueOvality: limit}, noRisk)
		must(t, fs, err)
		read, wall := fs[0], fs[1]
		if axes < 5 && wall.Verdict == uncertainty.Within {
			t.Fatalf("within from %d axes: %v", axes, wall)
		}
		if goodness(wall.Finding) > goodness(read.Finding) || (wall.Verdict == uncertainty.Beyond) != (read.Verdict == uncertainty.Beyond) {
			t.Fatalf("wall %v, but read %v", wall, read)
		}
	})
}

func TestPlanIsMeasurable(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := bore.Layout{RingTop: length(t, "top", 0, 20*mm), RingBottom: length(t, "bottom", 50*mm, 90*mm)}
		if rapid.Bool().Draw(t, "length known") {
			l.Length = l.RingBottom + length(t, "below", 0, 30*mm)
		}
		for i := range rapid.IntRange(0, 3).Draw(t, "ports") {
			from := length(t, "from", 25*mm, 35*mm)
			l.Ports = append(l.Ports, bore.Port{
				Name: fmt.Sprint(i), From: from, To: from + length(t, "height", um, 10*mm),
				At: degrees(rapid.Float64Range(-400, 400).Draw(t, "at")), Width: degrees(rapid.Float64Range(1, 90).Draw(t, "width")),
			})
			if l.Length == 0 {
				l.Length = 200 * mm
			}
		}
		kind := rapid.SampledFrom([]bore.Kind{bore.TwoPoint, bore.ThreePoint}).Draw(t, "kind")
		plan, err := l.ToRead(rapid.IntRange(1, 8).Draw(t, "axes"), kind)
		must(t, plan, err)
		for i := range plan {
			plan[i].Diameter = 67 * mm
		}
		g, err := l.Analyse(plan, bore.Gauge{Kind: kind})
		must(t, g, err)
		if slices.Contains(g.Unseen, bore.UnseenTop) || slices.Contains(g.Unseen, bore.UnseenBottom) {
			t.Fatalf("the plan misses an end of ring travel: %v", g.Unseen)
		}
		middle := l.RingTop + (l.RingBottom-l.RingTop)/2 // its places may all be in ports
		planned := slices.ContainsFunc(plan, func(r bore.Reading) bool { return r.Depth == middle })
		if slices.Contains(g.Unseen, bore.UnseenMiddle) == planned {
			t.Fatalf("middle planned: %v, unseen %v", planned, g.Unseen)
		}
	})
}

// Splitting a bore into layouts changes what form is taken from, never a size.
func TestLayoutChangesNoSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		l := bore.Layout{RingTop: length(t, "top", mm, 40*mm), RingBottom: length(t, "bottom", 50*mm, 90*mm)}
		a, err := bore.Analyse(rs, shopGauge())
		must(t, a, err)
		b, err := l.Analyse(rs, shopGauge())
		must(t, b, err)
		if a.Largest != b.Largest || a.Smallest != b.Smallest || a.Mean != b.Mean || a.Ovality != b.Ovality || a.Spread != b.Spread {
			t.Fatalf("%v\n%v", a, b)
		}
	})
}
