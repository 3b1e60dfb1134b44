// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"testing"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// The last value that is taken, and the first that is not.
func TestEdges(t *testing.T) {
	value := func(l units.Length) uncertainty.Estimate { return uncertainty.Estimate{Value: l} }
	d := exact("67 mm")
	heat := rings.Warm{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	with := func(change func(h *rings.Warm)) error {
		h := heat
		change(&h)
		return second(h.Change(d.Value))
	}
	travel := bore.RingTravel{Top: length("5 mm"), Bottom: length("80 mm")}
	tension := must(section().Tension(length("8 mm"), 0))
	stiff := func(young units.Pressure) error {
		s := section()
		s.Young = young
		return second(s.Tension(1, 0))
	}
	ends := func(gap, play units.Length) error {
		return second(rings.Ends{Gap: gap, Play: play, Bore: length("50 mm")}.Clear(nil, travel))
	}
	passes := func(top, bottom units.Length) error {
		return second(rings.Ends{Gap: 1, Bore: length("50 mm")}.Clear(nil, bore.RingTravel{Top: top, Bottom: bottom}))
	}
	force := func(newtons units.Force) error { return second(section().TensionUnder(newtons)) }
	beyond := func(k float64) error { // 33.5 mm of closing are 0.11056 for this section
		r := tension
		r.Parameter = k
		return second(r.Bound(2))
	}
	follow := func(order int, amplitude units.Length) error {
		return second(tension.Follow([]bore.Harmonic{{Order: order, Amplitude: amplitude}}))
	}
	for _, c := range []struct {
		what     string
		good     error
		bad      error
		sentinel error
	}{
		{"gap of a tenth of the bore", second(gap(exact("6.7 mm"), d).In(d)), second(gap(value(length("6.7 mm")+1), d).In(d)), units.ErrRange},
		{"gap above nothing", second(gap(value(1), d).In(d)), second(gap(value(0), d).In(d)), units.ErrNotGiven},
		{"bore above nothing", second(heat.Change(1)), second(heat.Change(0)), units.ErrNotGiven},
		{"leaves apart", second(rings.Feeler(1, 2)), second(rings.Feeler(1, 1)), units.ErrRange},
		{"one leaf alone", second(rings.Feeler(1, 0)), second(rings.Feeler(units.MaxLength, 0)), units.ErrRange},
		{"thickest leaf", second(rings.Feeler(1, units.MaxLength)), second(rings.Feeler(1, units.MaxLength+1)), units.ErrRange},
		{"ring as high as its groove", second(rings.Groove{Height: value(1)}.SideClearance(value(1))), second(rings.Groove{Height: value(1)}.SideClearance(value(2))), units.ErrRange},
		{"ring on its root", second(rings.Groove{Root: value(4)}.BackClearance(value(3), value(10))), second(rings.Groove{Root: value(4)}.BackClearance(value(4), value(10))), units.ErrRange},
		{"force that closes half the bore", force(28.94), force(28.96), units.ErrRange}, // 6.913 N close 8 mm, and so 33.5 mm need 28.95
		{"closing of half the bore", second(section().Tension(length("33.5 mm"), 0)), second(section().Tension(length("33.5 mm")+1, 0)), units.ErrRange},
		{"bore of the greatest length", second(rings.Ends{Gap: length("1 mm"), Bore: units.MaxLength}.Clear(nil, travel)),
			second(rings.Ends{Gap: length("1 mm"), Bore: units.MaxLength + 1}.Clear(nil, travel)), units.ErrRange},
		{"unknown temperature", with(func(h *rings.Warm) { h.RingWithin = 1000 }), with(func(h *rings.Warm) { h.RingWithin = 1000.001 }), units.ErrRange},
		{"unknown coefficient", with(func(h *rings.Warm) { h.Ring.Within = 11e-6 }), with(func(h *rings.Warm) { h.Ring.Within = 11.001e-6 }), units.ErrRange},
		{"margin", second(heat.Least(d.Value, length("6.7 mm"))), second(heat.Least(d.Value, length("6.7 mm")+1)), units.ErrRange},
		{"widest window", second(rings.FileTo(exact("1 mm"), units.Limits{Max: units.MaxLength}, uncertainty.Risk{})), second(rings.FileTo(exact("1 mm"), units.Limits{Max: units.MaxLength + 1}, uncertainty.Risk{})), units.ErrRange},
		{"highest travel", passes(-units.MaxLength, 0), passes(-units.MaxLength-1, 0), units.ErrRange},
		{"lowest travel", passes(0, units.MaxLength), passes(0, units.MaxLength+1), units.ErrRange},
		{"largest bore", second(rings.Oval{Max: units.MaxLength, Min: 1}.Round()), second(rings.Oval{Max: units.MaxLength + 1, Min: 1}.Round()), units.ErrRange},
		{"bore for rules", ruleError(units.MaxLength), ruleError(units.MaxLength + 1), units.ErrRange},
		{"smallest bore for rules", ruleError(1), ruleError(0), units.ErrNotGiven},
		{"gap at a peg", ends(length("5 mm"), 0), ends(length("5 mm")+1, 0), units.ErrRange},
		{"least gap at a peg", ends(1, 0), ends(0, 0), units.ErrNotGiven},
		{"play", ends(1, length("50 mm")), ends(1, length("50 mm")+1), units.ErrRange},
		{"stiffest", stiff(10_000 * units.Gigapascal), stiff(10_000.001 * units.Gigapascal), units.ErrRange},
		{"thickest", second(rings.Section{Bore: 100, Thickness: 49, Height: 1, Young: 1e11}.Tension(1, 0)), second(rings.Section{Bore: 100, Thickness: 50, Height: 1, Young: 1e11}.Tension(1, 0)), units.ErrRange},
		{"widest free gap", second(section().Tension(length("33.5 mm"), 0)), second(section().Tension(length("33.5 mm")+1, 0)), units.ErrRange},
		{"parameter", second(must(section().Tension(length("33.5 mm"), 0)).Bound(2)), beyond(0.1106), units.ErrRange},
		{"highest order reached", second(tension.Bound(1000)), second(tension.Bound(1001)), units.ErrRange},
		{"highest order followed", follow(1000, 0), follow(1001, 0), units.ErrRange},
		{"greatest amplitude", follow(2, units.MaxLength), follow(2, units.MaxLength+1), units.ErrRange},
		{"least ovality", second(rings.Oval{Max: 2, Min: 2}.Harmonic(0)), second(rings.Oval{Max: 1, Min: 2}.Harmonic(0)), units.ErrRange},
	} {
		if c.good != nil {
			t.Errorf("%s: %v", c.what, c.good)
		}
		if !errors.Is(c.bad, c.sentinel) {
			t.Errorf("%s: beyond it %v; want %v", c.what, c.bad, c.sentinel)
		}
	}
}

// An uncertainty too small for the type stays one; degrees of freedom of 1 do not fall below it.
func TestLeastUncertainty(t *testing.T) {
	from := uncertainty.Estimate{Value: length("0.3 mm"), Std: 1, DoF: 1}
	got := must(rings.DiameterChange(from, exact("0.4 mm")))
	if got.Std != 1 || got.DoF != 1 {
		t.Errorf("got %d pm with %v degrees of freedom", int64(got.Std), got.DoF)
	}
	from.Std = 0
	if got := must(rings.DiameterChange(from, exact("0.4 mm"))); got.Std != 0 || got.DoF != 0 {
		t.Errorf("exact: got %d pm with %v degrees of freedom", int64(got.Std), got.DoF)
	}
	for std := range units.Length(1000) { // every one rounds in its own way
		from.Std = std + 1
		if got := must(rings.DiameterChange(from, exact("0.4 mm"))); got.Validate() != nil {
			t.Fatalf("std %v: %+v", from.Std, got)
		}
	}
}

// A window of just twice U, on either side of which a picometre is kept for rounding.
func TestNarrowestWindow(t *testing.T) {
	gap := uncertainty.Estimate{Value: length("0.2 mm"), Std: length("0.01 mm")}
	u := must(gap.Expanded(0.95))
	w := units.Limits{Min: length("0.25 mm"), Max: length("0.25 mm") + 2*(u+1)}
	f, err := rings.FileTo(gap, w, uncertainty.Risk{})
	if err != nil || f.Stop.Min != f.Stop.Max || f.TakeOff != w.Min+u+1-gap.Value {
		t.Errorf("window of twice %v: %+v, %v", u, f, err)
	}
	w.Max--
	if _, err := rings.FileTo(gap, w, uncertainty.Risk{}); !errors.Is(err, rings.ErrDoubt) {
		t.Errorf("window of less than twice %v: %v", u, err)
	}
}

// Nothing left is a butting ring; a picometre is a gap.
func TestButtsAtZero(t *testing.T) {
	heat := rings.Warm{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	d := exact("67 mm")
	cold := -must(heat.Change(d.Value)).Value
	for left, want := range map[units.Length]bool{-1: true, 0: true, 1: false} {
		hot, err := heat.HotGap(uncertainty.Estimate{Value: cold + left}, d)
		if errors.Is(err, rings.ErrButts) != want || hot.Value != left {
			t.Errorf("%v left: %v, %v", left, hot.Value, err)
		}
	}
	// Where the bore grows more, the margin is needed when cold, to the picometre.
	heat.BoreAt = kelvins(300)
	if got := must(heat.Least(d.Value, 7)); got.Value != 7 {
		t.Errorf("least cold gap %v", got)
	}
}

func TestPortEdges(t *testing.T) {
	ends := rings.Ends{Gap: length("0.4 mm"), Play: length("0.3 mm"), Bore: length("50 mm")}
	travel := bore.RingTravel{Top: length("5 mm"), Bottom: length("40 mm")}
	half := units.Angle(length("0.5 mm")) / units.Angle(length("25 mm"))
	at := func(edge units.Angle) bore.Port {
		return bore.Port{At: edge + 0.5, Width: 1, From: length("20 mm"), To: length("30 mm")}
	}
	for _, c := range []struct {
		what string
		peg  units.Angle
		port bore.Port
		want units.Length
	}{
		{"touching", 0, at(half), 0},
		{"clear by 1 pm", 0, at(half + 4e-11), 1},
		{"peg at the edge", 0, at(0), -length("0.5 mm")},
		{"peg past the edge by less than a float can tell", 1e-20, at(0), -length("0.5 mm")},
	} {
		ends.Peg = c.peg
		rooms, err := ends.Clear([]bore.Port{c.port}, travel)
		if err != nil || len(rooms) != 1 || rooms[0].Room != c.want {
			t.Errorf("%s: %+v, %v; want %v", c.what, rooms, err, c.want)
		}
	}
	// A port that the ring only just reaches counts; one a picometre further does not.
	for _, c := range []struct {
		top, bottom units.Length
		passed      int
	}{
		{length("40 mm"), length("50 mm"), 1},
		{length("40 mm") + 1, length("50 mm"), 0},
		{0, length("5 mm"), 1},
		{0, length("5 mm") - 1, 0},
	} {
		p := at(1)
		p.From, p.To = c.top, c.bottom
		if rooms, err := ends.Clear([]bore.Port{p}, travel); err != nil || len(rooms) != c.passed {
			t.Errorf("port from %v to %v: %v, %v", c.top, c.bottom, rooms, err)
		}
	}
}

func TestNarrowestEdges(t *testing.T) {
	levels := []bore.Plane{
		{Depth: length("5 mm"), Mean: exact("67.02 mm")},
		{Depth: length("40 mm"), Mean: exact("67.01 mm")},
		{Depth: length("80 mm"), Mean: exact("67.01 mm")},
		{Depth: length("81 mm"), Mean: exact("67.00 mm")},
	}
	for _, c := range []struct{ top, bottom, want string }{
		{"5 mm", "80 mm", "40 mm"}, // of equals the first
		{"5 mm", "81 mm", "81 mm"}, // the end of the travel belongs to it
		{"1 mm", "5 mm", "5 mm"},   // so does this one
		{"80 mm", "80.5 mm", "80 mm"},
	} {
		got, err := rings.Narrowest(levels, bore.RingTravel{Top: length(c.top), Bottom: length(c.bottom)})
		if err != nil || got.Depth != length(c.want) {
			t.Errorf("travel %s to %s: %v, %v; want %s", c.top, c.bottom, got.Depth, err, c.want)
		}
	}
}

// All of it used is still followed; nothing to follow is no order's doing.
func TestFollowEdges(t *testing.T) {
	// In a ring of metres a bound's rounding to 1 pm does not show in nine digits.
	s := rings.Section{Bore: length("9 m"), Thickness: length("0.4 m"), Height: length("0.2 m"), Young: 100 * units.Gigapascal}
	ring := must(s.Tension(length("1 m"), 0))
	for _, order := range []int{2, 5} { // the empirical rule is the stricter at 2, the derived one at 5
		reach := must(ring.Bound(order))
		c, err := ring.Follow([]bore.Harmonic{{Order: order, Amplitude: min(reach.Derived, reach.Empirical)}})
		if err != nil || max(c.Derived.Used, c.Empirical.Used) != 1 || c.Verdict != uncertainty.Within {
			t.Errorf("at the stricter bound: %+v, %v", c, err)
		}
		c, err = ring.Follow([]bore.Harmonic{{Order: order, Amplitude: max(reach.Derived, reach.Empirical)}})
		if err != nil || min(c.Derived.ByMost, c.Empirical.ByMost) != 1 || c.Verdict != uncertainty.Undecided {
			t.Errorf("at the wider bound: %+v, %v", c, err)
		}
	}
	c, err := ring.Follow([]bore.Harmonic{{Order: 2}, {Order: 3}})
	if err != nil || c.Derived != (rings.Demand{}) || c.Verdict != uncertainty.Within {
		t.Errorf("a round bore: %+v, %v", c, err)
	}
}
