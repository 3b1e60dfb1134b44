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
	levels := []rings.Level{{Depth: length("10 mm"), Diameter: d}}
	travel := rings.Travel{Top: length("5 mm"), Bottom: length("80 mm")}
	heat := rings.Heat{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	with := func(change func(h *rings.Heat)) error {
		h := heat
		change(&h)
		return second(h.Hot(good, d))
	}
	cut := func(change func(s *rings.Section)) error {
		s := section()
		change(&s)
		return second(s.FromClosing(length("8 mm")))
	}
	tension := must(section().FromClosing(length("8 mm")))
	follow := func(form ...bore.Harmonic) error { return second(tension.Follow(form)) }
	k := func(parameter float64) error {
		r := tension
		r.Parameter = parameter
		return errors.Join(second(r.Reach(2)), second(r.Follow(nil)))
	}
	ends := rings.Ends{Peg: 0, Gap: length("0.3 mm"), Play: length("1 mm"), Bore: length("50 mm")}
	port := bore.Port{At: 1.5, Width: 1, From: length("20 mm"), To: length("30 mm")}
	clear := func(change func(e *rings.Ends, p *bore.Port)) error {
		e, p := ends, port
		change(&e, &p)
		return second(e.Clear([]bore.Port{p}, travel))
	}
	groove := rings.Groove{Height: exact("1.55 mm"), Root: exact("61 mm")}
	ring := rings.Profile{Height: exact("1.5 mm"), Thickness: exact("2.7 mm")}
	side := func(g rings.Groove, r rings.Profile) error { return second(g.SideClearance(r)) }
	back := func(g rings.Groove, r rings.Profile, in uncertainty.Estimate) error {
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
		{"overlap", second(gap(exact("-0.2 mm"), d).In(d)), rings.ErrOverlap, "-0.2 mm"},
		{"no gap", second(gap(exact("0 mm"), d).In(d)), rings.ErrOverlap, "more than 0"},
		{"gap in inches", second(gap(exact("0.35 in"), d).In(d)), rings.ErrGap, "a tenth of the bore"},
		{"gap std", second(gap(noStd, d).In(d)), uncertainty.ErrStd, "end gap"},
		{"gap dof", second(gap(noDoF, d).In(d)), uncertainty.ErrDoF, "end gap"},
		{"no bore", second(gap(good, exact("0 mm")).In(d)), rings.ErrSize, "bore"},
		{"no new bore", second(gap(good, d).In(exact("-67 mm"))), rings.ErrSize, "-67 mm"},
		{"bore std", second(gap(good, noStd).In(d)), uncertainty.ErrStd, "bore"},
		{"bore of metres", second(gap(good, d).In(tooBig)), units.ErrRange, "bore"},
		{"gap out of range", second(gap(good, d).In(exact("10 m"))), units.ErrRange, "length"},
		{"change from overlap", second(rings.DiameterChange(exact("-1 mm"), good)), rings.ErrOverlap, "-1 mm"},
		{"change to overlap", second(rings.DiameterChange(good, exact("0 mm"))), rings.ErrOverlap, "0 mm"},
		{"change std", second(rings.DiameterChange(good, noStd)), uncertainty.ErrStd, "end gap"},
		{"feeler", second(rings.Feeler(length("0.3 mm"), length("0.3 mm"))), rings.ErrSize, "0.3 mm"},
		{"feeler of nothing", second(rings.Feeler(0, length("0.3 mm"))), rings.ErrSize, "feeler"},
		{"feeler of metres", second(rings.Feeler(1, units.MaxLength+1)), rings.ErrSize, "feeler"},

		{"oval", second(rings.Oval{Greatest: 1, Least: 2}.Perimeter()), rings.ErrSize, "greatest first"},
		{"flat oval", second(rings.Oval{Greatest: 1}.Round()), rings.ErrSize, "more than 0"},
		{"vast oval", second(rings.Oval{Greatest: units.MaxLength + 1, Least: 1}.Round()), units.ErrRange, "10000 mm"},
		{"perimeter beyond range", second(rings.Oval{Greatest: units.MaxLength, Least: units.MaxLength}.Perimeter()), units.ErrRange, "oval"},
		{"level", second(rings.Narrowest([]rings.Level{{Depth: length("10 mm")}}, travel)), rings.ErrSize, "at a depth of 10 mm"},
		{"no level in travel", second(rings.Narrowest(levels, rings.Travel{Top: length("20 mm"), Bottom: length("80 mm")})), rings.ErrCount, "0 of 1"},
		{"no levels", second(rings.Narrowest(nil, travel)), rings.ErrCount, "0 of 0"},
		{"no travel", second(rings.Narrowest(levels, rings.Travel{})), rings.ErrSize, "deeper"},
		{"travel out of range", second(rings.Narrowest(levels, rings.Travel{Bottom: math.MaxInt64})), units.ErrRange, "travel"},

		{"no window", second(rings.File(good, units.Limits{}, uncertainty.Risk{})), uncertainty.ErrLimits, "end gap"},
		{"crossed window", second(rings.File(good, units.Limits{Min: 2, Max: 1}, uncertainty.Risk{})), units.ErrCrossed, "end gap"},
		{"window below zero", second(rings.File(good, units.Limits{Min: -1, Max: 1}, uncertainty.Risk{})), units.ErrRange, "window"},
		{"vast window", second(rings.File(good, units.Limits{Min: math.MaxInt64}, uncertainty.Risk{})), units.ErrRange, "window"},
		{"narrow window", second(rings.File(uncertainty.Estimate{Value: length("0.3 mm"), Std: length("0.05 mm")}, window, uncertainty.Risk{})), rings.ErrDoubt, "0.25 mm to 0.4 mm"},
		{"risk", second(rings.File(good, window, uncertainty.Risk{Accept: 2})), uncertainty.ErrProbability, "end gap"},
		{"filing std", second(rings.File(noStd, window, uncertainty.Risk{})), uncertainty.ErrStd, "end gap"},
		{"none larger", second(rings.Larger(exact("1 mm"), window, nil, uncertainty.Risk{})), rings.ErrTooWide, "0 oversizes"},
		{"none large enough", second(rings.Larger(exact("2 mm"), window, []units.Length{length("0.25 mm")}, uncertainty.Risk{})), rings.ErrTooWide, "1 oversizes"},
		{"oversize of nothing", second(rings.Larger(exact("1 mm"), window, []units.Length{0}, uncertainty.Risk{})), rings.ErrSize, "oversize 0 mm"},
		{"vast oversize", second(rings.Larger(exact("1 mm"), window, []units.Length{math.MaxInt64}, uncertainty.Risk{})), units.ErrRange, "oversize"},
		{"oversize that is out of range", second(rings.Larger(exact("1 mm"), window, []units.Length{units.MaxLength}, uncertainty.Risk{})), units.ErrRange, "oversize"},
		{"larger, no window", second(rings.Larger(exact("1 mm"), units.Limits{}, []units.Length{1}, uncertainty.Risk{})), uncertainty.ErrLimits, "end gap"},
		{"rule for no bore", ruleError(0), rings.ErrSize, "0 mm"},
		{"rule for a vast bore", ruleError(math.MaxInt64), units.ErrRange, "bore"},

		// a butting hot gap
		{"butts", with(func(h *rings.Heat) { h.RingAt = kelvins(300); h.BoreAt = kelvins(20) }), rings.ErrButts, "the gap would be -"},
		{"no ring temperature", with(func(h *rings.Heat) { h.RingAt = 0 }), units.ErrNotGiven, "temperature of the ring"},
		{"no bore temperature", with(func(h *rings.Heat) { h.BoreAt = 0 }), units.ErrNotGiven, "temperature of the bore"},
		{"no coefficient", with(func(h *rings.Heat) { h.Bore = material.Material{Name: "slag"} }), units.ErrNotGiven, "slag"},
		{"temperature", with(func(h *rings.Heat) { h.RingAt = units.Temperature(nan) }), units.ErrNotFinite, "ring"},
		{"below absolute zero", with(func(h *rings.Heat) { h.BoreAt = -1 }), units.ErrRange, "bore"},
		{"coefficient", with(func(h *rings.Heat) { h.Ring.Expansion = units.Expansion(nan) }), units.ErrRange, "ring"},
		{"endless coefficient", with(func(h *rings.Heat) { h.Ring.Expansion = units.Expansion(inf) }), units.ErrRange, "ring"},
		{"growth by a fifth", with(func(h *rings.Heat) { h.Ring.Expansion = 1.1e-3 }), units.ErrRange, "ring"},
		{"temperature within 1001 K", with(func(h *rings.Heat) { h.RingWithin = 1001 }), units.ErrRange, "ring"},
		{"coefficient in parts per million", with(func(h *rings.Heat) { h.Ring.Expansion = 11 }), units.ErrRange, "ring"},
		{"spread of the coefficient", with(func(h *rings.Heat) { h.Ring.Within = units.Expansion(nan) }), units.ErrRange, "ring"},
		{"endless spread", with(func(h *rings.Heat) { h.Ring.Within = units.Expansion(inf) }), units.ErrRange, "ring"},
		{"negative spread", with(func(h *rings.Heat) { h.Bore.Within = -1e-6 }), units.ErrRange, "bore"},
		{"temperature within", with(func(h *rings.Heat) { h.BoreWithin = units.TemperatureChange(nan) }), units.ErrRange, "bore"},
		{"temperature within minus", with(func(h *rings.Heat) { h.RingWithin = -1 }), units.ErrRange, "ring"},
		{"temperature within anything", with(func(h *rings.Heat) { h.RingWithin = units.TemperatureChange(math.MaxFloat64) }), units.ErrRange, "ring"},
		{"temperature within infinity", with(func(h *rings.Heat) { h.RingWithin = units.TemperatureChange(inf) }), units.ErrRange, "ring"},
		{"cold overlap", second(heat.Hot(exact("-0.1 mm"), d)), rings.ErrOverlap, "-0.1 mm"},
		{"overlap in the shop", second(heat.At20(exact("-0.1 mm"), d)), rings.ErrOverlap, "-0.1 mm"},
		{"shop without bore", second(rings.Heat{}.At20(good, d)), units.ErrNotGiven, "bore"},
		{"change in no bore", second(heat.Change(0)), rings.ErrSize, "bore 0 mm"},
		{"margin", second(heat.Least(d.Value, -1)), rings.ErrGap, "margin"},
		{"vast margin", second(heat.Least(d.Value, math.MaxInt64)), rings.ErrGap, "margin"},
		{"least in no bore", second(heat.Least(0, 0)), rings.ErrSize, "bore"},

		// a ring wider than its groove, or too thick
		{"wide ring", side(groove, rings.Profile{Height: exact("1.6 mm")}), rings.ErrSize, "1.6 mm in a groove of 1.55 mm"},
		{"no groove", side(rings.Groove{}, ring), rings.ErrSize, "height 0 mm"},
		{"no ring", side(groove, rings.Profile{}), rings.ErrSize, "height 0 mm"},
		{"groove std", side(rings.Groove{Height: noStd}, ring), uncertainty.ErrStd, "height"},
		{"proud ring", back(groove, rings.Profile{Thickness: exact("3.1 mm")}, d), rings.ErrSize, "stands 0.1 mm proud"},
		{"thick ring", back(groove, rings.Profile{Thickness: exact("34 mm")}, d), rings.ErrSize, "34 mm"},
		{"no root", back(rings.Groove{}, ring, d), rings.ErrSize, "root diameter"},
		{"no thickness", back(groove, rings.Profile{}, d), rings.ErrSize, "thickness"},
		{"no bore round it", back(groove, ring, uncertainty.Estimate{}), rings.ErrSize, "bore"},
		{"judge side", second(rings.Groove{}.Judge(ring, d, rings.GrooveLimits{Side: window}, uncertainty.Risk{})), rings.ErrSize, "height"},
		{"judge back", second(rings.Groove{}.Judge(ring, d, rings.GrooveLimits{Back: window}, uncertainty.Risk{})), rings.ErrSize, "root"},
		{"judge side limits", second(groove.Judge(ring, d, rings.GrooveLimits{Side: units.Limits{Min: 2, Max: 1}}, uncertainty.Risk{})), units.ErrCrossed, "side clearance"},
		{"judge back limits", second(groove.Judge(ring, d, rings.GrooveLimits{Back: units.Limits{Min: 2, Max: 1}}, uncertainty.Risk{})), units.ErrCrossed, "back clearance"},

		{"no bores", second(rings.Assign([]rings.Gap{gap(good, d)}, nil, window, uncertainty.Risk{})), rings.ErrCount, "0 bores"},
		{"too few rings", second(rings.Assign([]rings.Gap{gap(good, d)}, []uncertainty.Estimate{d, d}, window, uncertainty.Risk{})), rings.ErrCount, "1 rings for 2 bores"},
		{"too many rings", second(rings.Assign(make([]rings.Gap, 17), []uncertainty.Estimate{d}, window, uncertainty.Risk{})), rings.ErrCount, "17 rings"},
		{"bad ring of a set", second(rings.Assign([]rings.Gap{gap(good, d), {}}, []uncertainty.Estimate{d}, window, uncertainty.Risk{})), rings.ErrOverlap, "ring 1 and bore 0"},
		{"bad window of a set", second(rings.Assign([]rings.Gap{gap(good, d)}, []uncertainty.Estimate{d}, units.Limits{}, uncertainty.Risk{})), uncertainty.ErrLimits, "ring 0 and bore 0"},

		{"peg", clear(func(e *rings.Ends, _ *bore.Port) { e.Peg = units.Angle(nan) }), units.ErrNotFinite, "angle"},
		{"peg before all", clear(func(e *rings.Ends, _ *bore.Port) { e.Peg = units.Angle(-inf) }), units.ErrNotFinite, "angle"},
		{"port nowhere", clear(func(_ *rings.Ends, p *bore.Port) { p.At = units.Angle(inf) }), bore.ErrLayout, "port 0"},
		{"port of what width", clear(func(_ *rings.Ends, p *bore.Port) { p.Width = units.Angle(nan) }), bore.ErrLayout, "port 0"},
		{"port of no width", clear(func(_ *rings.Ends, p *bore.Port) { p.Width = 0 }), bore.ErrLayout, "port 0"},
		{"port of no height", clear(func(_ *rings.Ends, p *bore.Port) { p.To = p.From }), bore.ErrLayout, "port 0"},
		{"play", clear(func(e *rings.Ends, _ *bore.Port) { e.Play = -1 }), rings.ErrSize, "play"},
		{"vast play", clear(func(e *rings.Ends, _ *bore.Port) { e.Play = math.MaxInt64 }), rings.ErrSize, "play"},
		{"ends overlap", clear(func(e *rings.Ends, _ *bore.Port) { e.Gap = 0 }), rings.ErrOverlap, "end gap"},
		{"ends apart", clear(func(e *rings.Ends, _ *bore.Port) { e.Gap = length("6 mm") }), rings.ErrGap, "tenth"},
		{"ends in no bore", clear(func(e *rings.Ends, _ *bore.Port) { e.Bore = 0 }), rings.ErrSize, "bore"},
		{"ends in a vast bore", clear(func(e *rings.Ends, _ *bore.Port) { e.Bore = math.MaxInt64 }), units.ErrRange, "bore"},
		{"hot window of one end", second(rings.Heat{Ring: material.GreyIron(), Bore: material.GreyIron(), RingAt: units.ReferenceTemperature, BoreAt: units.ReferenceTemperature}.Window(units.Limits{Min: 1}, length("50 mm"), 0)), rings.ErrGap, "window"},
		{"no ring travel", second(ends.Clear([]bore.Port{port}, rings.Travel{})), rings.ErrSize, "travel"},
		{"no rings", second(rings.Stagger(0)), rings.ErrCount, "of 0"},
		{"eight rings", second(rings.Stagger(8)), rings.ErrCount, "of 8"},

		{"thickness beyond half the bore", cut(func(s *rings.Section) { s.Thickness = s.Bore / 2 }), rings.ErrSize, "less than half the bore"},
		{"section without height", cut(func(s *rings.Section) { s.Height = 0 }), rings.ErrSize, "each more than 0"},
		{"section without bore", cut(func(s *rings.Section) { s.Bore = 0 }), rings.ErrSize, "each more than 0"},
		{"section without thickness", cut(func(s *rings.Section) { s.Thickness = -1 }), rings.ErrSize, "each more than 0"},
		{"vast height", cut(func(s *rings.Section) { s.Height = math.MaxInt64 }), units.ErrRange, "up to 10000 mm"},
		{"no modulus", cut(func(s *rings.Section) { s.Young = 0 }), rings.ErrForce, "modulus"},
		{"modulus NaN", cut(func(s *rings.Section) { s.Young = units.Pressure(nan) }), rings.ErrForce, "modulus"},
		{"modulus without end", cut(func(s *rings.Section) { s.Young = units.Pressure(inf) }), rings.ErrForce, "modulus"},
		{"no closing", second(section().FromClosing(0)), rings.ErrGap, "closing 0 mm"},
		{"vast closing", second(section().FromClosing(length("34 mm"))), rings.ErrGap, "half the bore"},
		{"no force", second(section().FromTangential(0)), rings.ErrForce, "force 0 N"},
		{"force NaN", second(section().FromDiametral(units.Force(nan))), rings.ErrForce, "force"},
		{"force without end", second(section().FromTangential(units.Force(inf))), rings.ErrForce, "force"},
		{"force of tons", second(section().FromTangential(10000)), rings.ErrGap, "10000 N"},
		{"force of nothing", second(section().FromTangential(1e-300)), rings.ErrGap, "1e-300 N"},
		{"force on no ring", second(rings.Section{}.FromTangential(10)), rings.ErrSize, "ring"},

		{"order 1", second(tension.Reach(1)), rings.ErrOrder, "order 1"},
		{"order 1001", second(tension.Reach(1001)), rings.ErrOrder, "order 1001"},
		{"tension of nothing", second(rings.Tension{}.Reach(2)), rings.ErrSize, "ring"},
		{"follow with nothing", second(rings.Tension{}.Follow(nil)), rings.ErrSize, "ring"},
		{"k NaN", k(nan), rings.ErrTension, "parameter"},
		{"k without end", k(inf), rings.ErrTension, "parameter"},
		{"k negative", k(-1), rings.ErrTension, "parameter"},
		{"k of nothing", k(1e-300), rings.ErrTension, "parameter"},
		{"negative order", follow(bore.Harmonic{Order: -1}), rings.ErrOrder, "order -1"},
		{"order twice", follow(bore.Harmonic{Order: 2}, bore.Harmonic{Order: 2}), rings.ErrOrder, "each once"},
		{"orders descending", follow(bore.Harmonic{Order: 3}, bore.Harmonic{Order: 2}), rings.ErrOrder, "ascending"},
		{"order beyond all", follow(bore.Harmonic{Order: 1001}), rings.ErrOrder, "1001"},
		{"amplitude below zero", follow(bore.Harmonic{Order: 2, Amplitude: -1}), rings.ErrSize, "amplitude"},
		{"vast amplitude", follow(bore.Harmonic{Order: 2, Amplitude: math.MaxInt64}), rings.ErrSize, "amplitude"},
		{"ovality below zero", second(rings.Ovality(-1, 0)), rings.ErrSize, "ovality"},
		{"vast ovality", second(rings.Ovality(math.MaxInt64, 0)), rings.ErrSize, "ovality"},
		{"axis", second(rings.Ovality(1, units.Angle(nan))), units.ErrNotFinite, "angle"},

		{"action", second(rings.Action(9).MarshalText()), units.ErrUnknownName, "9"},
		{"caution", second(rings.Caution(-1).MarshalText()), units.ErrUnknownName, "-1"},
		{"action text", new(rings.Action).UnmarshalText([]byte("grind")), units.ErrUnknownName, "grind"},
		{"caution text", new(rings.Caution).UnmarshalText([]byte("run")), units.ErrUnknownName, "run"},
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
	h := rings.Heat{Ring: plain(11.4e-6), Bore: plain(11.4e-6), RingAt: kelvins(230), BoreAt: kelvins(130)}
	got, err := h.Hot(exact("0.2 mm"), exact("67 mm"))
	if !errors.Is(err, rings.ErrButts) {
		t.Fatal(err)
	}
	near(t, "overlap", got.Value, "-0.0400 mm", "0.0001 mm")
	h.RingAt = h.BoreAt
	if got, err := h.Hot(exact("0.2 mm"), exact("67 mm")); err != nil || got != exact("0.2 mm") {
		t.Errorf("ring as hot as the bore: %v, %v", got, err)
	}
}

// What a sheet keeps comes back from its text.
func TestJSON(t *testing.T) {
	gap := uncertainty.Estimate{Value: length("0.2 mm"), Std: length("0.01 mm"), DoF: 7}
	for _, v := range []any{
		must(rings.File(gap, window, uncertainty.Risk{})),
		must(rings.Assign([]rings.Gap{{Measured: gap, Bore: exact("67 mm")}}, []uncertainty.Estimate{exact("67.02 mm")}, window, uncertainty.Risk{})),
		must(must(section().FromClosing(length("8 mm"))).Follow([]bore.Harmonic{{Order: 2, Amplitude: 100 * µm}})),
		must(section().FromClosing(length("8 mm"))),
		[]rings.Action{rings.Undecided, rings.AsIs, rings.FileEnds, rings.TooWide},
		[]rings.Caution{rings.MakerFirst, rings.FileSquare, rings.FileInward, rings.MeasureSquare, rings.MarkUp, rings.FacingForWall, rings.PegsStay, rings.GrooveClean, rings.FinishedBore, rings.SharpEdges, rings.ExpanderButts},
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
	if got := rings.Action(7).String() + rings.Caution(99).String(); !strings.Contains(got, "7") || !strings.Contains(got, "99") {
		t.Errorf("names of nothing: %q", got)
	}
}

func TestNoAllocations(t *testing.T) {
	g, d := gap(exact("0.3 mm"), exact("67 mm")), exact("67.02 mm")
	s := section()
	r := must(s.FromClosing(length("8 mm")))
	h := rings.Heat{Ring: plain(11e-6), Bore: plain(11e-6), RingAt: kelvins(180), BoreAt: kelvins(100)}
	form := make([]bore.Harmonic, 50)
	for i := range form {
		form[i].Order = i + 2
	}
	for what, f := range map[string]func() error{
		"In":             func() error { return second(g.In(d)) },
		"DiameterChange": func() error { return second(rings.DiameterChange(g.Measured, d)) },
		"Hot":            func() error { return second(h.Hot(g.Measured, d)) },
		"FromClosing":    func() error { return second(s.FromClosing(length("8 mm"))) },
		"Reach":          func() error { return second(r.Reach(4)) },
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
