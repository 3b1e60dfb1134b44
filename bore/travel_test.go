// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// spanning is the layout of rings that run from the uppermost to the lowest reading.
func spanning(rs []bore.Reading) bore.Layout {
	l := bore.Layout{RingTop: rs[0].Depth, RingBottom: rs[0].Depth}
	for _, r := range rs {
		l.RingTop, l.RingBottom = min(l.RingTop, r.Depth), max(l.RingBottom, r.Depth)
	}
	if l.RingTop == l.RingBottom {
		l.RingBottom++
	}
	return l
}

// judge1 measures and judges one limit.
func judge1(t failer, l bore.Layout, g bore.Gauge, limits bore.Limits, rs ...bore.Reading) bore.Finding {
	t.Helper()
	geo, err := l.Analyse(rs, g)
	must(t, geo, err)
	fs, err := geo.Judge(limits, noRisk)
	return must(t, fs, err)[0]
}

// A taper and a shape hold between the depths read. Two planes that lie 4 mm apart, or end before ring
// travel does, or between ends that nobody gave, say nothing of the rest.
func TestTaperWantsBothEndsOfTravel(t *testing.T) {
	gauge := bore.Gauge{Repeatability: um}
	limit := bore.Limits{Taper: 30 * um}
	travel := bore.Layout{RingTop: 8 * mm, RingBottom: 106 * mm}
	stroke := bore.Layout{Stroke: 40 * mm} // and half of it for the rings: from 10 to 70 mm
	for _, c := range []struct {
		name        string
		l           bore.Layout
		top, bottom float64
		measured    bool
	}{
		{"4 mm apart", travel, 12, 16, false},
		{"from end to end", travel, 12, 90, true},
		{"upper end of travel", travel, 8, 106, true},
		{"a tenth of travel below", travel, 17.8, 90, true},
		{"more than a tenth", travel, 17.801, 90, false},
		{"the upper fifth will not do", travel, 27, 90, false},
		{"above ring travel", travel, 7.9, 90, false},
		{"the lower fifth", travel, 12, 86.4, true},
		{"above the lower fifth", travel, 12, 86.399, false},
		{"below ring travel", travel, 12, 107, false},
		{"10 mm of a long travel", bore.Layout{RingTop: 20 * mm, RingBottom: 320 * mm}, 30, 300, true},
		{"more than 10 mm of it", bore.Layout{RingTop: 20 * mm, RingBottom: 320 * mm}, 30.001, 300, false},
		{"one and a half strokes from 10 mm", stroke, 16, 58, true},
		{"above it", stroke, 9.9, 70, false},
		{"too far below its top", stroke, 16.001, 70, false},
		{"too far above its bottom", stroke, 10, 57.999, false},
		{"below an assumed bottom", stroke, 10, 95, true},
		{"nothing known of travel", bore.Layout{}, 10, 90, false},
	} {
		for _, larger := range []float64{0, 10, 200} { // µm at the upper plane
			rs := profile([]float64{c.top, c.bottom}, []float64{larger, 0})
			f := judge1(t, c.l, gauge, limit, rs...)
			want := uncertainty.Within
			switch {
			case larger == 200 && (c.l.RingBottom == 0 || c.l.RingTop <= rs[0].Depth && rs[1].Depth <= c.l.RingBottom):
				want = uncertainty.Beyond // of whatever part of the wall
			case !c.measured:
				want = uncertainty.Undecided
			}
			if f.Verdict != want || f.NotMeasured != (want == uncertainty.Undecided) {
				t.Errorf("%s, %v µm: %v, want %v", c.name, larger, f, want)
			}
			if f.NotMeasured && f.Subject != "taper, not measured" || f.NotMeasured && f.Measured != (uncertainty.Estimate{}) {
				t.Errorf("%s: %+v", c.name, f)
			}
		}
	}
}

// The shape likewise, and both say between which depths they hold.
func TestShapeWantsBothEndsOfTravel(t *testing.T) {
	travel := bore.Layout{RingTop: 8 * mm, RingBottom: 106 * mm}
	over := []float64{0, 100, 0}
	for _, c := range []struct {
		depths []float64
		want   string
		part   string
	}{
		{[]float64{12, 50, 90}, bore.Barrelled, "12 mm to 90 mm, of a ring travel from 8 mm to 106 mm"},
		{[]float64{27, 50, 90}, "", "27 mm to 90 mm, of a ring travel from 8 mm to 106 mm"},
		{[]float64{12, 50, 80}, "", "12 mm to 80 mm, of a ring travel from 8 mm to 106 mm"},
	} {
		g, err := travel.Analyse(profile(c.depths, over), bore.Gauge{})
		must(t, g, err)
		if g.Shape != c.want || g.Travel.String() != c.part || g.Taper.Whole != (c.want != "") {
			t.Errorf("%v: %v over %v", c.depths, g.Shape, g.Travel)
		}
		if unseen := slices.Contains(g.Unseen, bore.UnseenShape) && slices.Contains(g.Unseen, bore.UnseenTaper); unseen != (c.want == "") {
			t.Errorf("%v: unseen %v", c.depths, g.Unseen)
		}
	}
	g, err := bore.Layout{Stroke: 40 * mm}.Analyse(profile([]float64{5, 12, 40, 65}, []float64{0, 0, 9, 0}), bore.Gauge{})
	must(t, g, err)
	// Nothing is outside a travel that is only assumed.
	if g.Shape != bore.Barrelled || g.Taper.From != 5*mm || !g.Taper.Whole ||
		g.Travel.String() != "5 mm to 65 mm, of a ring travel from 10 mm to 70 mm, taken as one and a half strokes from 10 mm below the deck" {
		t.Errorf("%v, %v over %v", g.Shape, g.Taper, g.Travel)
	}
	if g := measure(t, profile([]float64{10, 50, 90}, over)); g.Shape != bore.Barrelled || g.Travel.String() != "10 mm to 90 mm, of a ring travel not known" {
		t.Errorf("%v over %v", g.Shape, g.Travel)
	}
	if _, err := (bore.Layout{Stroke: -1}).Analyse(profile([]float64{5}, []float64{0}), bore.Gauge{}); !errors.Is(err, units.ErrRange) {
		t.Errorf("stroke below zero: %v", err)
	}
}

// A belly hides behind ends that are alike: 57.022, 57.110, 57.020 mm along one axis have a taper of
// 0.002 mm. Where no limit on greatest less least covers it, it is held against that on taper.
func TestBellyIsHeldAgainstTaper(t *testing.T) {
	rs := []bore.Reading{at(10, 0, "57.022 mm"), at(40, 0, "57.110 mm"), at(70, 0, "57.020 mm"), at(10, 90, "57.02 mm"), at(70, 90, "57.02 mm")}
	limit := bore.Limits{Taper: 30 * um}
	f := judge1(t, spanning(rs), bore.Gauge{}, limit, rs...)
	if f.Verdict != uncertainty.Beyond || !f.Between || f.From != 40*mm || f.To != 70*mm ||
		f.Subject != "taper, as a difference from 40 mm to 70 mm, thrust axis" || f.Measured.Value != 90*um {
		t.Errorf("belly: %+v", f)
	}
	limit.Spread = 100 * um // covers it
	if f := judge1(t, spanning(rs), bore.Gauge{}, limit, rs...); f.Verdict != uncertainty.Within || f.Between || f.Subject != "taper, thrust axis" || f.Measured.Value != 2*um {
		t.Errorf("covered: %+v", f)
	}
	rs[1].Diameter = units.MustParseLength("56.95 mm") // a waist
	if f := judge1(t, spanning(rs), bore.Gauge{}, bore.Limits{Taper: 30 * um}, rs...); f.Verdict != uncertainty.Beyond || f.From != 10*mm || f.To != 40*mm {
		t.Errorf("waist: %+v", f)
	}
}

// No reading between the ends makes the finding on taper better, and one that is far enough off makes it
// beyond, whatever the ends say.
func TestNoBellyPassesAsTaper(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		limit := length(t, "limit", 5*um, 100*um)
		ends := length(t, "ends", -100*um, 100*um)
		belly := length(t, "belly", -300*um, 300*um)
		rs := []bore.Reading{at(10, 0, "67 mm"), at(90, 0, "67 mm")}
		rs[0].Diameter += ends
		between := bore.Reading{Depth: length(t, "depth", 11*mm, 89*mm), Diameter: 67*mm + belly}
		if rapid.Bool().Draw(t, "port") {
			between.Depth = 50 * mm
		}
		l := spanning(rs)
		l.Ports = []bore.Port{{From: 45 * mm, To: 55 * mm, At: degrees(90), Width: degrees(40)}}
		without := judge1(t, l, bore.Gauge{Repeatability: um}, bore.Limits{Taper: limit}, rs...)
		with := judge1(t, l, bore.Gauge{Repeatability: um}, bore.Limits{Taper: limit}, append(rs, between)...)
		// Beyond shares its risk over more differences, so that the ends alone may lose it to undecided.
		if without.Verdict != uncertainty.Beyond && goodness(with.Finding) > goodness(without.Finding) || with.Verdict == uncertainty.Within && without.Verdict != uncertainty.Within {
			t.Fatalf("without %v\nwith %v", without, with)
		}
		most := max(belly.Abs(), (belly - ends).Abs(), ends.Abs())
		if most > limit && with.Verdict == uncertainty.Within {
			t.Fatalf("difference of %v: %v", most, with)
		}
		if most > limit+10*um && with.Verdict != uncertainty.Beyond {
			t.Fatalf("difference of %v: %v", most, with)
		}
	})
}

// Along each axis every place counts that has wall under both anvils, at the ports too.
func TestPortBelt(t *testing.T) {
	l := bore.Layout{RingTop: 8 * mm, RingBottom: 72 * mm, Ports: []bore.Port{
		{Name: "exhaust", From: 45 * mm, To: 60 * mm, At: degrees(90), Width: degrees(60)},
	}}
	read := func(ports string) []bore.Reading {
		rs := []bore.Reading{at(9, 0, "60.040 mm"), at(30, 0, "60.040 mm"), at(52, 0, ports), at(70, 0, "60.030 mm")}
		return append(rs, at(9, 90, "60.040 mm"), at(30, 90, "60.038 mm"), at(70, 90, "60.030 mm"))
	}
	g, err := l.Analyse(read("60.110 mm"), bore.Gauge{Repeatability: um})
	must(t, g, err)
	if g.Shape != bore.PortBelly || len(g.Bridges) != 1 || len(g.Tapers) != 2 {
		t.Errorf("port belt: %v, bridges %v, tapers %v", g.Shape, g.Bridges, g.Tapers)
	}
	fs, err := g.Judge(bore.Limits{Taper: 50 * um}, noRisk)
	if f := must(t, fs, err)[0]; f.Verdict != uncertainty.Beyond || f.From != 52*mm || f.To != 70*mm || f.Measured.Value != 80*um {
		t.Errorf("port belt: %+v", f)
	}
	if g, err = l.Analyse(read("60.033 mm"), bore.Gauge{Repeatability: um}); must(t, g, err).Shape != bore.Tapered {
		t.Errorf("no belly: %v", g.Shape)
	}
	// A belly at the ports and off them is a barrel.
	rs := read("60.110 mm")
	rs[1].Diameter = units.MustParseLength("60.100 mm")
	if g, err = l.Analyse(rs, bore.Gauge{Repeatability: um}); must(t, g, err).Shape != bore.Barrelled {
		t.Errorf("belly everywhere: %v", g.Shape)
	}
	// An axis that a port cuts is read above it: the 16 µm it changes by are seen.
	rs = append(read("60.033 mm"), at(8, 45, "60.040 mm"), at(38, 45, "60.024 mm"))
	g, err = l.Analyse(rs, bore.Gauge{})
	if must(t, g, err); g.Taper.Axis != bore.Axis(degrees(45)) || g.Taper.Size.Value != 16*um || g.Taper.Whole {
		t.Errorf("45° axis: %+v", g.Taper)
	}
}

// A barrel made smaller at the deck on purpose is not worn; one that is larger there is (US Army
// TM 9-2815-200-35 p. 6-55).
func TestChokeHasItsOwnWindow(t *testing.T) {
	rs := func(deck, skirt string) []bore.Reading {
		return []bore.Reading{at(10, 0, deck), at(90, 0, skirt), at(10, 90, deck), at(90, 90, skirt)}
	}
	l := spanning(rs("95 mm", "95 mm"))
	window := units.Limits{Min: 50 * um, Max: 100 * um}
	for _, c := range []struct {
		deck    string // the skirt has 95 mm
		limits  bore.Limits
		want    uncertainty.Verdict
		subject string
		value   units.Length
	}{
		{"94.92 mm", bore.Limits{Taper: 30 * um}, uncertainty.Beyond, "taper, thrust axis", -80 * um},
		{"94.92 mm", bore.Limits{Taper: 30 * um, TaperAtDeck: true}, uncertainty.Within, "taper larger at the deck, thrust axis", -80 * um},
		{"95.04 mm", bore.Limits{Taper: 30 * um, TaperAtDeck: true}, uncertainty.Beyond, "taper larger at the deck, thrust axis", 40 * um},
		{"94.92 mm", bore.Limits{Choke: window}, uncertainty.Within, "choke, thrust axis", 80 * um},
		{"94.96 mm", bore.Limits{Choke: window}, uncertainty.Beyond, "choke, thrust axis", 40 * um},
		{"94.89 mm", bore.Limits{Choke: window}, uncertainty.Beyond, "choke, thrust axis", 110 * um},
		{"95.001 mm", bore.Limits{Choke: units.Limits{Max: 100 * um}}, uncertainty.Beyond, "choke, thrust axis", -um},
		{"95 mm", bore.Limits{Choke: units.Limits{Max: 100 * um}}, uncertainty.Within, "choke, thrust axis", 0},
		{"94.5 mm", bore.Limits{Choke: units.Limits{Min: 50 * um}}, uncertainty.Within, "choke, thrust axis", 500 * um},
	} {
		f := judge1(t, l, bore.Gauge{}, c.limits, rs(c.deck, "95 mm")...)
		if f.Verdict != c.want || f.Subject != c.subject || f.Measured.Value != c.value || f.AtDeck != c.limits.TaperAtDeck {
			t.Errorf("%s, %+v: %+v", c.deck, c.limits, f)
		}
		if !c.limits.Choke.IsZero() && f.Limits != c.limits.Choke {
			t.Errorf("choke against %v", f.Limits)
		}
	}
	// Of one axis that goes the wrong way the others say nothing.
	mixed := rs("94.92 mm", "95 mm")
	mixed[2].Diameter = units.MustParseLength("95.01 mm")
	if f := judge1(t, l, bore.Gauge{}, bore.Limits{Choke: window}, mixed...); f.Verdict != uncertainty.Beyond || f.Axis != bore.PinAxis {
		t.Errorf("%+v", f)
	}
	if f := judge1(t, bore.Layout{}, bore.Gauge{}, bore.Limits{Choke: window}, rs("94.92 mm", "95 mm")...); !f.NotMeasured || f.Subject != "choke, not measured" {
		t.Errorf("travel not known: %+v", f)
	}
	// A belly between choked ends: the drop from it to the skirt is larger at its upper end.
	belly := append(rs("94.92 mm", "95 mm"), at(50, 0, "95.04 mm"))
	if f := judge1(t, l, bore.Gauge{}, bore.Limits{Taper: 30 * um, TaperAtDeck: true}, belly...); f.Verdict != uncertainty.Beyond || f.From != 50*mm {
		t.Errorf("%+v", f)
	}
	for name, bad := range map[string]bore.Limits{
		"wanted and forbidden": {Taper: 30 * um, Choke: window}, "below zero": {Choke: units.Limits{Min: -um}},
	} {
		if _, err := measure(t, rs("95 mm", "95 mm")).Judge(bad, noRisk); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
}

// A plan keeps anvils clear of the edges of ports, of the ridge and of the ends of the bore: an axis 0.5° from
// a port is not asked for, nor a depth 1 mm above one.
func TestPlanKeepsClearOfEdges(t *testing.T) {
	l := bore.Layout{Length: 100 * mm, RingTop: 8 * mm, RingBottom: 92 * mm}
	planned := func(p bore.Port, kind bore.Kind, axes int) map[float64]int { // how many axes at a depth
		t.Helper()
		l.Ports = []bore.Port{p}
		plan, err := l.ToRead(axes, kind)
		must(t, plan, err)
		n := map[float64]int{}
		for _, r := range plan {
			n[r.Depth.In(mm)]++
		}
		return n
	}
	// The middle of the travel is at 50 mm. Of 0, 45, 90 and 135° the port covers 45° and, by 0.5°, not 90°.
	for _, c := range []struct {
		name     string
		from, to units.Length
		at, wide float64
		left     int
	}{
		{"0.5° from an axis", 40 * mm, 60 * mm, 45, 89, 1}, // 0.5 to 89.5°: 0, 45 and 90° are out
		{"4.9° from an axis", 40 * mm, 60 * mm, 45, 80.2, 1},
		{"5.1° from two", 40 * mm, 60 * mm, 45, 79.8, 3},
		{"just below", 51 * mm, 60 * mm, 45, 10, 3},
		{"2 mm below", 52 * mm, 60 * mm, 45, 10, 3},
		{"more than 2 mm below", 52*mm + um, 60 * mm, 45, 10, 4},
		{"just above", 40 * mm, 49 * mm, 45, 10, 3},
		{"more than 2 mm above", 40 * mm, 48*mm - um, 45, 10, 4},
	} {
		if got := planned(bore.Port{From: c.from, To: c.to, At: degrees(c.at), Width: degrees(c.wide)}, bore.TwoPoint, 4)[50]; got != c.left {
			t.Errorf("%s: %d axes left, want %d", c.name, got, c.left)
		}
	}
	rapid.Check(t, func(t *rapid.T) {
		l := bore.Layout{RingTop: length(t, "top", 0, 20*mm), RingBottom: length(t, "bottom", 45*mm, 90*mm)}
		l.Length = l.RingBottom + length(t, "below", 0, 30*mm)
		if rapid.Bool().Draw(t, "assumed") {
			l.Stroke, l.RingTop, l.RingBottom = l.RingBottom-l.RingTop, 0, 0
		}
		plan, err := l.ToRead(1, bore.TwoPoint)
		for _, r := range must(t, plan, err) {
			if l.Length-r.Depth < 2*mm || r.Depth < 2*mm || l.RingBottom > 0 && (r.Depth-l.RingTop).Abs() < 2*mm {
				t.Fatalf("at %v of %+v", r.Depth, l)
			}
		}
		for i := range plan {
			plan[i].Diameter = 67 * mm
		}
		g, err := l.Analyse(plan, bore.Gauge{})
		if must(t, g, err); !g.Taper.Whole {
			t.Fatalf("%v of %+v", g.Travel, l)
		}
	})
}

// Repeats that scatter more than the gauge is said to are named with their place.
func TestRepeatsThatContradictTheGauge(t *testing.T) {
	gauge := bore.Gauge{Repeatability: um}
	read := func(slip units.Length) []bore.Reading {
		var rs []bore.Reading
		for _, depth := range []float64{10, 50, 90} {
			for i := range 3 {
				r := at(depth, 90, "67 mm")
				r.Diameter += units.Length(i) * um / 2
				rs = append(rs, r)
			}
		}
		rs[4].Diameter += slip // the middle one at 50 mm
		return rs
	}
	g, err := bore.Analyse(read(0), gauge)
	if must(t, g, err); g.Contradictions != nil || g.Largest.Own.Std > 600*nm {
		t.Errorf("sound: %v, %v", g.Contradictions, g.Largest.Own)
	}
	g, err = bore.Analyse(read(20*um), gauge)
	must(t, g, err)
	// 67, 67.0205 and 67.001 mm: a standard deviation of 11.548 µm.
	if len(g.Contradictions) != 1 || g.Contradictions[0].String() != "50 mm, pin: 3 repeats scatter by 0.0116 mm, the gauge is said to repeat within 0.001 mm" {
		t.Errorf("a slip of 20 µm: %v", g.Contradictions)
	}
	if g.Largest.Own.Std < 3*um { // and then all doubts are as wide as the repeats say
		t.Errorf("doubt %v", g.Largest.Own)
	}
	// Where none alone does and all together do, the worst is named.
	var rs []bore.Reading
	for i := range 12 {
		for _, d := range []units.Length{-1600 * nm, 1600 * nm} {
			r := at(float64(5+5*i), 0, "67 mm")
			r.Diameter += d
			if i == 7 {
				r.Diameter += d / 10
			}
			rs = append(rs, r)
		}
	}
	g, err = bore.Analyse(rs, gauge)
	if must(t, g, err); len(g.Contradictions) != 1 || g.Contradictions[0].Depth != 40*mm {
		t.Errorf("all together: %v", g.Contradictions)
	}
	if g, err = bore.Analyse(read(20*um), bore.Gauge{}); must(t, g, err).Contradictions != nil {
		t.Errorf("nothing is stated: %v", g.Contradictions)
	}
}

// Not to know how far the rings run must not ask for less reading than to know it: whatever depth shows the bottom of an
// assumed travel shows that of a known one, from a top ring that turns 5 to 10 mm below the deck, with rings up to half a
// stroke high.
func TestUnknownTravelAsksForNoLess(t *testing.T) {
	shows := func(l bore.Layout, depth units.Length) bool {
		g, err := l.Analyse(profile([]float64{10, depth.In(mm)}, []float64{0, 0}), bore.Gauge{})
		must(t, g, err)
		return !slices.Contains(g.Unseen, bore.UnseenBottom)
	}
	for _, stroke := range []units.Length{30 * mm, 58 * mm, 72 * mm, 140 * mm} {
		for _, top := range []units.Length{5 * mm, 8 * mm, 10 * mm} {
			for _, rings := range []units.Length{6 * mm, stroke / 4, stroke / 2} {
				known := bore.Layout{RingTop: top, RingBottom: top + stroke + rings}
				for depth := stroke / 2; depth <= known.RingBottom; depth += mm {
					if shows(bore.Layout{Stroke: stroke}, depth) && !shows(known, depth) {
						t.Errorf("stroke %v, rings from %v to %v: %v will do for the bottom of a travel that is not known", stroke, top, known.RingBottom, depth)
					}
				}
			}
		}
	}
}
