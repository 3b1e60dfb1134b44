// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

var (
	noStd  = uncertainty.Estimate{Value: length("0.3 mm"), Std: -1}
	noDoF  = uncertainty.Estimate{Value: length("0.3 mm"), Std: 1, DoF: math.NaN()}
	tooBig = uncertainty.Estimate{Value: units.MaxLength + 1}
	window = units.Limits{Min: length("0.25 mm"), Max: length("0.40 mm")}
)

// second drops the first result.
func second[T any](_ T, err error) error { return err }

func gap(measured, in uncertainty.Estimate) rings.Gap { return rings.Gap{Measured: measured, Bore: in} }

func TestRefused(t *testing.T) {
	good, d := exact("0.3 mm"), exact("67 mm")
	levels := []bore.Plane{{Depth: length("10 mm"), Mean: d}}
	travel := bore.RingTravel{Top: length("5 mm"), Bottom: length("80 mm")}
	heat := rings.Warm{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	with := func(change func(h *rings.Warm)) error {
		h := heat
		change(&h)
		return second(h.HotGap(good, d))
	}
	cut := func(change func(s *rings.Section)) error {
		s := section()
		change(&s)
		return second(s.Tension(length("8 mm"), 0))
	}
	tension := must(section().Tension(length("8 mm"), 0))
	follow := func(form ...bore.Harmonic) error { return second(tension.Follow(form)) }
	k := func(parameter float64) error {
		r := tension
		r.Parameter = parameter
		return errors.Join(second(r.Bound(2)), second(r.Follow(nil)))
	}
	ends := rings.Ends{Peg: 0, Gap: length("0.3 mm"), Play: length("1 mm"), Bore: length("50 mm")}
	port := bore.Port{At: 1.5, Width: 1, From: length("20 mm"), To: length("30 mm")}
	clear := func(change func(e *rings.Ends, p *bore.Port)) error {
		e, p := ends, port
		change(&e, &p)
		return second(e.Clear([]bore.Port{p}, travel))
	}
	groove := rings.Groove{Height: exact("1.55 mm"), Root: exact("61 mm")}
	side := func(g rings.Groove, r uncertainty.Estimate) error { return second(g.SideClearance(r)) }
	back := func(g rings.Groove, r uncertainty.Estimate, in uncertainty.Estimate) error {
		return second(g.BackClearance(r, in))
	}
	nan, inf := math.NaN(), math.Inf(1)

	for _, c := range []struct {
		what string
		err  error
		is   error
		says string // part of the text
	}{
		// an overlap given as a gap, and gaps no ring can have
		{"overlap", second(gap(exact("-0.2 mm"), d).In(d)), units.ErrRange, "-0.2 mm"},
		{"no gap", second(gap(exact("0 mm"), d).In(d)), units.ErrNotGiven, "more than 0"},
		{"gap in inches", second(gap(exact("0.35 in"), d).In(d)), units.ErrRange, "a tenth of the bore"},
		{"gap std", second(gap(noStd, d).In(d)), uncertainty.ErrStd, "end gap"},
		{"gap dof", second(gap(noDoF, d).In(d)), uncertainty.ErrStd, "end gap"},
		{"no bore", second(gap(good, exact("0 mm")).In(d)), units.ErrNotGiven, "bore"},
		{"no new bore", second(gap(good, d).In(exact("-67 mm"))), units.ErrRange, "-67 mm"},
		{"bore std", second(gap(good, noStd).In(d)), uncertainty.ErrStd, "bore"},
		{"bore of metres", second(gap(good, d).In(tooBig)), units.ErrRange, "bore"},
		{"gap out of range", second(gap(good, d).In(exact("10 m"))), units.ErrRange, "length"},
		{"change from overlap", second(rings.DiameterChange(exact("-1 mm"), good)), units.ErrRange, "-1 mm"},
		{"change to overlap", second(rings.DiameterChange(good, exact("0 mm"))), units.ErrNotGiven, "0 mm"},
		{"change std", second(rings.DiameterChange(good, noStd)), uncertainty.ErrStd, "end gap"},
		{"feeler", second(rings.Feeler(length("0.3 mm"), length("0.3 mm"))), units.ErrRange, "0.3 mm"},
		{"feeler of nothing", second(rings.Feeler(0, length("0.3 mm"))), units.ErrNotGiven, "feeler"},
		{"feeler of metres", second(rings.Feeler(1, units.MaxLength+1)), units.ErrRange, "feeler"},

		{"oval", second(rings.Oval{Max: 1, Min: 2}.Perimeter()), units.ErrRange, "greatest first"},
		{"flat oval", second(rings.Oval{Max: 1}.Round()), units.ErrNotGiven, "more than 0"},
		{"oval without its greater diameter", second(rings.Oval{Min: 1}.Round()), units.ErrNotGiven, "greatest first"},
		{"vast oval", second(rings.Oval{Max: units.MaxLength + 1, Min: 1}.Round()), units.ErrRange, "10000 mm"},
		{"perimeter beyond range", second(rings.Oval{Max: units.MaxLength, Min: units.MaxLength}.Perimeter()), units.ErrRange, "oval"},
		{"plane", second(rings.Narrowest([]bore.Plane{{Depth: length("10 mm")}}, travel)), units.ErrNotGiven, "at a depth of 10 mm"},
		{"no plane in travel", second(rings.Narrowest(levels, bore.RingTravel{Top: length("20 mm"), Bottom: length("80 mm")})), units.ErrRange, "0 of 1"},
		{"no planes", second(rings.Narrowest(nil, travel)), units.ErrRange, "0 of 0"},
		{"no travel", second(rings.Narrowest(levels, bore.RingTravel{})), units.ErrNotGiven, "deeper"},
		{"travel out of range", second(rings.Narrowest(levels, bore.RingTravel{Bottom: math.MaxInt64})), units.ErrRange, "travel"},

		{"no window", second(rings.FileTo(good, units.Limits{}, uncertainty.Risk{})), uncertainty.ErrLimits, "end gap"},
		{"crossed window", second(rings.FileTo(good, units.Limits{Min: 2, Max: 1}, uncertainty.Risk{})), units.ErrCrossed, "end gap"},
		{"window below zero", second(rings.FileTo(good, units.Limits{Min: -1, Max: 1}, uncertainty.Risk{})), units.ErrRange, "window"},
		{"vast window", second(rings.FileTo(good, units.Limits{Min: math.MaxInt64}, uncertainty.Risk{})), units.ErrRange, "window"},
		{"narrow window", second(rings.FileTo(uncertainty.Estimate{Value: length("0.3 mm"), Std: length("0.05 mm")}, window, uncertainty.Risk{})), rings.ErrDoubt, "0.25 mm to 0.4 mm"},
		{"risk", second(rings.FileTo(good, window, uncertainty.Risk{Accept: 2})), units.ErrRange, "end gap"},
		{"filing std", second(rings.FileTo(noStd, window, uncertainty.Risk{})), uncertainty.ErrStd, "end gap"},
		{"rule for no bore", ruleError(0), units.ErrNotGiven, "0 mm"},
		{"rule for a vast bore", ruleError(math.MaxInt64), units.ErrRange, "bore"},

		// a butting hot gap
		{"butts", with(func(h *rings.Warm) { h.RingAt = kelvins(300); h.BoreAt = kelvins(20) }), rings.ErrButts, "the gap would be -"},
		{"no ring temperature", with(func(h *rings.Warm) { h.RingAt = 0 }), units.ErrNotGiven, "temperature of the ring"},
		{"no bore temperature", with(func(h *rings.Warm) { h.BoreAt = 0 }), units.ErrNotGiven, "temperature of the bore"},
		{"no coefficient", with(func(h *rings.Warm) { h.Bore = material.Material{Name: "slag"} }), units.ErrNotGiven, "slag"},
		{"temperature", with(func(h *rings.Warm) { h.RingAt = units.Temperature(nan) }), units.ErrNotFinite, "ring"},
		{"below absolute zero", with(func(h *rings.Warm) { h.BoreAt = -1 }), units.ErrRange, "bore"},
		{"coefficient", with(func(h *rings.Warm) { h.Ring.Expansion = units.Expansion(nan) }), units.ErrRange, "ring"},
		{"endless coefficient", with(func(h *rings.Warm) { h.Ring.Expansion = units.Expansion(inf) }), units.ErrRange, "ring"},
		{"growth by a fifth", with(func(h *rings.Warm) { h.Ring.Expansion = 1.1e-3 }), units.ErrRange, "ring"},
		{"temperature within 1001 K", with(func(h *rings.Warm) { h.RingWithin = 1001 }), units.ErrRange, "ring"},
		{"coefficient in parts per million", with(func(h *rings.Warm) { h.Ring.Expansion = 11 }), units.ErrRange, "ring"},
		{"spread of the coefficient", with(func(h *rings.Warm) { h.Ring.Within = units.Expansion(nan) }), units.ErrRange, "ring"},
		{"endless spread", with(func(h *rings.Warm) { h.Ring.Within = units.Expansion(inf) }), units.ErrRange, "ring"},
		{"negative spread", with(func(h *rings.Warm) { h.Bore.Within = -1e-6 }), units.ErrRange, "bore"},
		{"temperature within", with(func(h *rings.Warm) { h.BoreWithin = units.TemperatureChange(nan) }), units.ErrRange, "bore"},
		{"temperature within minus", with(func(h *rings.Warm) { h.RingWithin = -1 }), units.ErrRange, "ring"},
		{"temperature within anything", with(func(h *rings.Warm) { h.RingWithin = units.TemperatureChange(math.MaxFloat64) }), units.ErrRange, "ring"},
		{"temperature within infinity", with(func(h *rings.Warm) { h.RingWithin = units.TemperatureChange(inf) }), units.ErrRange, "ring"},
		{"cold overlap", second(heat.HotGap(exact("-0.1 mm"), d)), units.ErrRange, "-0.1 mm"},
		{"change in no bore", second(heat.Change(0)), units.ErrNotGiven, "bore 0 mm"},
		{"margin", second(heat.Least(d.Value, -1)), units.ErrRange, "margin"},
		{"vast margin", second(heat.Least(d.Value, math.MaxInt64)), units.ErrRange, "margin"},
		{"least in no bore", second(heat.Least(0, 0)), units.ErrNotGiven, "bore"},

		// a ring wider than its groove, or too thick
		{"wide ring", side(groove, exact("1.6 mm")), units.ErrRange, "1.6 mm in a groove of 1.55 mm"},
		{"no groove", side(rings.Groove{}, exact("1.5 mm")), units.ErrNotGiven, "height 0 mm"},
		{"no ring", side(groove, uncertainty.Estimate{}), units.ErrNotGiven, "height 0 mm"},
		{"groove std", side(rings.Groove{Height: noStd}, exact("1.5 mm")), uncertainty.ErrStd, "height"},
		{"proud ring", back(groove, exact("3.1 mm"), d), units.ErrRange, "stands 0.1 mm proud"},
		{"thick ring", back(groove, exact("34 mm"), d), units.ErrRange, "34 mm"},
		{"no root", back(rings.Groove{}, exact("2.7 mm"), d), units.ErrNotGiven, "root diameter"},
		{"no thickness", back(groove, uncertainty.Estimate{}, d), units.ErrNotGiven, "thickness"},
		{"no bore round it", back(groove, exact("2.7 mm"), uncertainty.Estimate{}), units.ErrNotGiven, "bore"},

		{"peg", clear(func(e *rings.Ends, _ *bore.Port) { e.Peg = units.Angle(nan) }), units.ErrNotFinite, "angle"},
		{"peg before all", clear(func(e *rings.Ends, _ *bore.Port) { e.Peg = units.Angle(-inf) }), units.ErrNotFinite, "angle"},
		{"port nowhere", clear(func(_ *rings.Ends, p *bore.Port) { p.At = units.Angle(inf) }), units.ErrRange, "port 0"},
		{"port of what width", clear(func(_ *rings.Ends, p *bore.Port) { p.Width = units.Angle(nan) }), units.ErrRange, "port 0"},
		{"port of no width", clear(func(_ *rings.Ends, p *bore.Port) { p.Width = 0 }), units.ErrRange, "port 0"},
		{"port of no height", clear(func(_ *rings.Ends, p *bore.Port) { p.To = p.From }), units.ErrRange, "port 0"},
		{"play", clear(func(e *rings.Ends, _ *bore.Port) { e.Play = -1 }), units.ErrRange, "play"},
		{"vast play", clear(func(e *rings.Ends, _ *bore.Port) { e.Play = math.MaxInt64 }), units.ErrRange, "play"},
		{"ends overlap", clear(func(e *rings.Ends, _ *bore.Port) { e.Gap = 0 }), units.ErrNotGiven, "end gap"},
		{"ends apart", clear(func(e *rings.Ends, _ *bore.Port) { e.Gap = length("6 mm") }), units.ErrRange, "tenth"},
		{"ends in no bore", clear(func(e *rings.Ends, _ *bore.Port) { e.Bore = 0 }), units.ErrNotGiven, "bore"},
		{"ends in a vast bore", clear(func(e *rings.Ends, _ *bore.Port) { e.Bore = math.MaxInt64 }), units.ErrRange, "bore"},
		{"hot window of one end", second(rings.Warm{Ring: material.GreyIron(), Bore: material.GreyIron(), RingAt: units.ReferenceTemperature, BoreAt: units.ReferenceTemperature}.Window(units.Limits{Min: 1}, length("50 mm"), 0)), units.ErrRange, "window"},
		{"no ring travel", second(ends.Clear([]bore.Port{port}, bore.RingTravel{})), units.ErrNotGiven, "travel"},
		{"no rings", second(rings.Stagger(0)), units.ErrRange, "of 0"},
		{"eight rings", second(rings.Stagger(8)), units.ErrRange, "of 8"},

		{"thickness beyond half the bore", cut(func(s *rings.Section) { s.Thickness = s.Bore / 2 }), units.ErrRange, "less than half the bore"},
		{"section without height", cut(func(s *rings.Section) { s.Height = 0 }), units.ErrNotGiven, "each more than 0"},
		{"section without bore", cut(func(s *rings.Section) { s.Bore = 0 }), units.ErrNotGiven, "each more than 0"},
		{"section without thickness", cut(func(s *rings.Section) { s.Thickness = -1 }), units.ErrRange, "each more than 0"},
		{"vast height", cut(func(s *rings.Section) { s.Height = math.MaxInt64 }), units.ErrRange, "up to 10000 mm"},
		{"no modulus", cut(func(s *rings.Section) { s.Young = 0 }), units.ErrRange, "modulus"},
		{"modulus NaN", cut(func(s *rings.Section) { s.Young = units.Pressure(nan) }), units.ErrRange, "modulus"},
		{"modulus without end", cut(func(s *rings.Section) { s.Young = units.Pressure(inf) }), units.ErrRange, "modulus"},
		{"no closing", second(section().Tension(0, 0)), units.ErrRange, "closing 0 mm"},
		{"vast closing", second(section().Tension(length("34 mm"), 0)), units.ErrRange, "half the bore"},
		{"no force", second(section().TensionUnder(0)), units.ErrRange, "force 0 N"},
		{"force without end", second(section().TensionUnder(units.Force(inf))), units.ErrRange, "force"},
		{"force of tons", second(section().TensionUnder(10000)), units.ErrRange, "10000 N"},
		{"force of nothing", second(section().TensionUnder(1e-300)), units.ErrRange, "1e-300 N"},
		{"force on no ring", second(rings.Section{}.TensionUnder(10)), units.ErrNotGiven, "ring"},

		{"order 1", second(tension.Bound(1)), units.ErrRange, "order 1"},
		{"order 1001", second(tension.Bound(1001)), units.ErrRange, "order 1001"},
		{"tension of nothing", second(rings.Tension{}.Bound(2)), units.ErrNotGiven, "ring"},
		{"follow with nothing", second(rings.Tension{}.Follow(nil)), units.ErrNotGiven, "ring"},
		{"k NaN", k(nan), units.ErrRange, "parameter"},
		{"k without end", k(inf), units.ErrRange, "parameter"},
		{"k negative", k(-1), units.ErrRange, "parameter"},
		{"k of nothing", k(1e-300), units.ErrRange, "parameter"},
		{"negative order", follow(bore.Harmonic{Order: -1}), units.ErrRange, "order -1"},
		{"order twice", follow(bore.Harmonic{Order: 2}, bore.Harmonic{Order: 2}), units.ErrRange, "each once"},
		{"orders descending", follow(bore.Harmonic{Order: 3}, bore.Harmonic{Order: 2}), units.ErrRange, "ascending"},
		{"order beyond all", follow(bore.Harmonic{Order: 1001}), units.ErrRange, "1001"},
		{"amplitude below zero", follow(bore.Harmonic{Order: 2, Amplitude: -1}), units.ErrRange, "amplitude"},
		{"vast amplitude", follow(bore.Harmonic{Order: 2, Amplitude: math.MaxInt64}), units.ErrRange, "amplitude"},
		{"ovality below zero", second(rings.Oval{Max: 1, Min: 2}.Harmonic(0)), units.ErrRange, "oval bore"},
		{"axis", second(rings.Oval{Max: 2, Min: 1}.Harmonic(units.Angle(nan))), units.ErrNotFinite, "angle"},

		{"action", second(rings.Action(9).MarshalText()), units.ErrUnknownName, "9"},
		{"action text", new(rings.Action).UnmarshalText([]byte("grind")), units.ErrUnknownName, "grind"},
	} {
		if !errors.Is(c.err, c.is) || !strings.Contains(c.err.Error(), c.says) {
			t.Errorf("%s: got %v; want %v with %q", c.what, c.err, c.is, c.says)
		}
		if c.err != nil && strings.Count(c.err.Error(), "rings: ") != strings.Count(c.err.Error(), "\n")+1 && !errors.Is(c.err, units.ErrRange) {
			t.Errorf("%s: %v does not name the package once", c.what, c.err)
		}
	}
}

func ruleError(bore units.Length) error {
	_, _, err := rings.Rules(bore)
	return err
}

// A ring that butts comes with how much it overlaps.
func TestButtingComesWithTheOverlap(t *testing.T) {
	h := rings.Warm{Ring: plain(11.4e-6), Bore: plain(11.4e-6), RingAt: kelvins(230), BoreAt: kelvins(130)}
	got, err := h.HotGap(exact("0.2 mm"), exact("67 mm"))
	if !errors.Is(err, rings.ErrButts) {
		t.Fatal(err)
	}
	near(t, "overlap", got.Value, "-0.0400 mm", "0.0001 mm")
	h.RingAt = h.BoreAt
	if got, err := h.HotGap(exact("0.2 mm"), exact("67 mm")); err != nil || got != exact("0.2 mm") {
		t.Errorf("ring as hot as the bore: %v, %v", got, err)
	}
}

// What a sheet keeps comes back from its text.
func TestJSON(t *testing.T) {
	gap := uncertainty.Estimate{Value: length("0.2 mm"), Std: length("0.01 mm"), DoF: 7}
	for _, v := range []any{
		must(rings.FileTo(gap, window, uncertainty.Risk{})),
		must(must(section().Tension(length("8 mm"), 0)).Follow([]bore.Harmonic{{Order: 2, Amplitude: 100 * µm}})),
		must(section().Tension(length("8 mm"), 0)),
		[]rings.Action{rings.Undecided, rings.AsIs, rings.FileEnds, rings.TooWide},
	} {
		text, err := json.Marshal(v)
		if err != nil {
			t.Fatal(err)
		}
		back := reflect.New(reflect.TypeOf(v))
		if err := json.Unmarshal(text, back.Interface()); err != nil {
			t.Fatalf("%s: %v", text, err)
		}
		again, err := json.Marshal(back.Elem().Interface())
		if err != nil || string(again) != string(text) {
			t.Errorf("%s\ncame back as\n%s, %v", text, again, err)
		}
	}
	a := rings.TooWide
	if err := a.UnmarshalText([]byte("")); err == nil || a != rings.TooWide {
		t.Errorf("on a bad text: %v, %v", a, err)
	}
	if got := rings.Action(7).String(); !strings.Contains(got, "7") {
		t.Errorf("names of nothing: %q", got)
	}
}

func TestNoAllocations(t *testing.T) {
	g, d := gap(exact("0.3 mm"), exact("67 mm")), exact("67.02 mm")
	s := section()
	r := must(s.Tension(length("8 mm"), 0))
	h := rings.Warm{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	form := make([]bore.Harmonic, 50)
	for i := range form {
		form[i].Order = i + 2
	}
	for what, f := range map[string]func() error{
		"In":             func() error { return second(g.In(d)) },
		"DiameterChange": func() error { return second(rings.DiameterChange(g.Measured, d)) },
		"Hot":            func() error { return second(h.HotGap(g.Measured, d)) },
		"Tension":        func() error { return second(s.Tension(length("8 mm"), 0)) },
		"Bound":          func() error { return second(r.Bound(4)) },
		"Follow":         func() error { return second(r.Follow(form)) },
	} {
		if n := testing.AllocsPerRun(100, func() {
			if err := f(); err != nil {
				t.Fatal(err)
			}
		}); n != 0 {
			t.Errorf("%s: %v allocations", what, n)
		}
	}
}
