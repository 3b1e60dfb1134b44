// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"encoding"
	"errors"
	"math"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

func TestFormulasRefuse(t *testing.T) {
	const ccm = units.CubicCentimetre
	nan, inf := math.NaN(), math.Inf(1)
	bore, stroke := mm("67"), mm("50")
	swept := func(b, s units.Length) error { _, err := oversize.Swept(b, s); return err }
	displacement := func(b units.Length, n int) error { _, err := oversize.Displacement(b, stroke, n); return err }
	ratio := func(v, c units.Volume) error { _, err := oversize.Ratio(v, c); return err }
	clearance := func(v units.Volume, r float64) error { _, err := oversize.ClearanceVolume(v, r); return err }
	compression := func(c oversize.Chamber) error { _, err := c.Compression(bore, stroke); return err }
	head := func(c oversize.Chamber, r float64) error { _, err := c.HeadFor(bore, stroke, r); return err }
	travel := func(s, r units.Length, a units.Angle) error { _, err := oversize.Travel(s, r, a); return err }
	wall := func(w, now uncertainty.Estimate, to, shift units.Length) error {
		_, err := oversize.WallLeft(w, now, to, shift)
		return err
	}
	hoop := func(d units.Length, p, s units.Pressure) error { _, err := oversize.HoopWall(d, p, s); return err }
	allowance := func(d units.Length) error { _, err := oversize.ReboringAllowance(d); return err }
	plan := func(s oversize.Shop, from, bored, to units.Length) error {
		_, err := s.Plan(from, bored, to)
		return err
	}
	minutes := func(l, f units.Length, n units.Frequency, passes int) error {
		_, err := oversize.BoringTime(l, f, n, passes)
		return err
	}
	shows := func(l units.Length, c material.Comparison) error { _, err := oversize.Shows(l, c); return err }
	sixteen := oversize.Chamber{Head: 16 * ccm}
	with := func(f func(*oversize.Chamber)) oversize.Chamber { c := sixteen; f(&c); return c }
	deep := oversize.Shop{MostDepth: mm("0.1")}
	timed := oversize.Shop{MostDepth: mm("0.1"), Length: mm("90"), Feed: mm("0.1"), Spindle: units.Frequency(nan)}
	for _, test := range []struct {
		name string
		err  error
		want error
	}{
		{"bore of nothing", swept(0, stroke), units.ErrRange},
		{"negative stroke", swept(bore, -1), units.ErrRange},
		{"bore of 11 m", swept(11*units.Metre, stroke), units.ErrRange},
		{"displacement of nothing", displacement(0, 4), units.ErrRange},
		{"no cylinders", displacement(bore, 0), units.ErrRange},
		{"65 cylinders", displacement(bore, 65), units.ErrRange},
		{"ratio of no swept volume", ratio(0, ccm), units.ErrRange},
		{"ratio of NaN", ratio(units.Volume(nan), ccm), units.ErrRange},
		{"ratio of infinity", ratio(units.Volume(inf), ccm), units.ErrRange},
		{"ratio over nothing", ratio(ccm, 0), oversize.ErrNoSpace},
		{"ratio over NaN", ratio(ccm, units.Volume(nan)), oversize.ErrNoSpace},
		{"ratio over infinity", ratio(ccm, units.Volume(inf)), units.ErrRange},
		{"ratio over next to nothing", ratio(ccm, 5e-324), units.ErrRange},
		{"clearance for a ratio of one", clearance(ccm, 1), units.ErrRange},
		{"clearance for NaN", clearance(ccm, nan), units.ErrRange},
		{"clearance for 1001", clearance(ccm, 1001), units.ErrRange},
		{"clearance of NaN", clearance(units.Volume(nan), 9), units.ErrRange},
		{"head NaN", compression(oversize.Chamber{Head: units.Volume(nan)}), units.ErrRange},
		{"head negative", compression(oversize.Chamber{Head: -ccm, Deck: mm("5")}), units.ErrRange},
		{"crown infinite", compression(with(func(c *oversize.Chamber) { c.Crown = units.Volume(inf) })), units.ErrRange},
		{"crown fills the head", compression(with(func(c *oversize.Chamber) { c.Crown = c.Head })), oversize.ErrNoSpace},
		{"deck of 2 m", compression(with(func(c *oversize.Chamber) { c.Deck = 2 * units.Metre })), units.ErrRange},
		{"gasket negative", compression(with(func(c *oversize.Chamber) { c.Gasket = -1 })), units.ErrRange},
		{"hole smaller than the bore", compression(with(func(c *oversize.Chamber) { c.Gasket = 1; c.GasketHole = bore - 1 })), units.ErrRange},
		{"port above the piston", compression(with(func(c *oversize.Chamber) { c.Deck = mm("5"); c.PortTop = mm("5") })), units.ErrRange},
		{"port below the stroke", compression(with(func(c *oversize.Chamber) { c.PortTop = stroke + 1 })), units.ErrRange},
		{"port that leaves nothing", compression(with(func(c *oversize.Chamber) { c.PortTop = -1 })), units.ErrRange},
		{"head for a ratio of one", head(sixteen, 1), units.ErrRange},
		{"head for too high a ratio", head(oversize.Chamber{Deck: mm("10")}, 20), oversize.ErrNoSpace},
		{"head over a wide gasket", head(oversize.Chamber{Gasket: 1, GasketHole: 1}, 9), units.ErrRange},
		{"head from a port out of reach", head(oversize.Chamber{PortTop: mm("60")}, 9), units.ErrRange},
		{"travel of no stroke", travel(0, mm("100"), 1), units.ErrRange},
		{"travel on no rod", travel(stroke, 0, 1), units.ErrRange},
		{"rod of half the stroke", travel(stroke, stroke/2, 1), units.ErrRange},
		{"crank NaN", travel(stroke, mm("100"), units.Angle(nan)), units.ErrNotFinite},
		{"crank infinite", travel(stroke, mm("100"), units.Angle(inf)), units.ErrNotFinite},
		{"wall negative", wall(exact(-1), exact(bore), bore, 0), units.ErrRange},
		{"wall's doubt negative", wall(uncertainty.Estimate{Value: mm("3"), Std: -1}, exact(bore), bore, 0), uncertainty.ErrStd},
		{"wall of no bore", wall(exact(mm("3")), exact(0), bore, 0), units.ErrRange},
		{"wall after no bore", wall(exact(mm("3")), exact(bore), 0, 0), units.ErrRange},
		{"shift negative", wall(exact(mm("3")), exact(bore), bore, -1), units.ErrRange},
		{"hoop of no bore", hoop(0, units.Bar, units.Megapascal), units.ErrRange},
		{"hoop of no pressure", hoop(bore, 0, units.Megapascal), units.ErrRange},
		{"hoop of no stress", hoop(bore, units.Bar, 0), units.ErrRange},
		{"hoop of infinite stress", hoop(bore, units.Bar, units.Pressure(inf)), units.ErrRange},
		{"hoop of NaN", hoop(bore, units.Pressure(nan), units.Megapascal), units.ErrRange},
		{"hoop thicker than the bore", hoop(bore, 3*units.Megapascal, units.Megapascal), units.ErrRange},
		{"allowance below the table", allowance(mm("75") - 1), units.ErrRange},
		{"allowance above the table", allowance(mm("300") + 1), units.ErrRange},
		{"plan from nothing", plan(deep, 0, bore, bore), units.ErrRange},
		{"plan to nothing", plan(deep, bore, 0, 0), units.ErrRange},
		{"plan bored below the present size", plan(deep, bore, bore-1, bore), units.ErrRange},
		{"plan finished below the bored size", plan(deep, bore, bore+2, bore+1), units.ErrRange},
		{"plan finished below the present size", plan(deep, bore, 0, bore-1), units.ErrRange},
		{"plan with no depth of cut", plan(oversize.Shop{}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan of a million cuts", plan(oversize.Shop{MostDepth: units.Nanometre}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan with a negative finish", plan(oversize.Shop{MostDepth: 1, FinishBore: -1}, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan that hones more than is left", plan(oversize.Shop{FinishHone: mm("0.03")}, bore, 0, mm("67.02")), units.ErrRange},
		{"plan at no speed, rough", plan(timed, bore, mm("68"), mm("68")), units.ErrRange},
		{"plan at no speed, finish", plan(oversize.Shop{FinishBore: mm("1"), Length: 1, Feed: 2, Spindle: 1}, bore, mm("68"), mm("68")), units.ErrRange},
		{"time for no length", minutes(0, 1, 1, 1), units.ErrRange},
		{"time at no feed", minutes(mm("90"), 0, 5, 1), units.ErrRange},
		{"time at a feed above the length", minutes(1, 2, 5, 1), units.ErrRange},
		{"time at no speed", minutes(mm("90"), mm("0.1"), 0, 1), units.ErrRange},
		{"time at infinite speed", minutes(mm("90"), mm("0.1"), units.Frequency(inf), 1), units.ErrRange},
		{"time for no passes", minutes(mm("90"), mm("0.1"), 5, 0), units.ErrRange},
		{"years", minutes(units.Metre, 1, 1e-9, 1), units.ErrRange},
		{"shows nothing", shows(0, material.Comparison{Standard: bore}), units.ErrRange},
		{"shows below absolute zero", shows(bore, material.Comparison{Standard: bore, PartAt: -1}), units.ErrRange},
		{"shows NaN", shows(bore, material.Comparison{Standard: bore, PartAt: 300, PartExpansion: units.Expansion(nan)}), units.ErrNotFinite},
	} {
		if !errors.Is(test.err, test.want) {
			t.Errorf("%s: %v; want %v", test.name, test.err, test.want)
		}
	}
}

// TestNames takes every value of every enumeration to text and back, and refuses all others.
func TestNames(t *testing.T) {
	type text interface {
		encoding.TextMarshaler
		String() string
	}
	check := func(kind string, n int, value func(int8) text, read func([]byte) (text, error)) {
		t.Helper()
		seen := map[string]bool{}
		for i := range n {
			v := value(int8(i))
			b, err := v.MarshalText()
			back, rerr := read(b)
			if err != nil || rerr != nil || back != v || len(b) == 0 || v.String() == "" || seen[string(b)] {
				t.Errorf("%s %d: %q, %v, %v, %v", kind, i, b, err, back, rerr)
			}
			seen[string(b)] = true
		}
		for _, i := range []int8{-1, int8(n), 127} {
			if b, err := value(i).MarshalText(); !errors.Is(err, oversize.ErrUnknownName) {
				t.Errorf("%s %d: %q, %v", kind, i, b, err)
			}
			if value(i).String() == "" {
				t.Errorf("%s %d has no text", kind, i)
			}
		}
		if v, err := read([]byte("no such name")); !errors.Is(err, oversize.ErrUnknownName) || v != value(0) {
			t.Errorf("%s: %v, %v", kind, v, err)
		}
	}
	check("wall", 5, func(i int8) text { return oversize.Wall(i) }, func(b []byte) (text, error) { var v oversize.Wall; err := v.UnmarshalText(b); return v, err })
	check("route", 5, func(i int8) text { return oversize.Route(i) }, func(b []byte) (text, error) { var v oversize.Route; err := v.UnmarshalText(b); return v, err })
	check("centre", 2, func(i int8) text { return oversize.Centre(i) }, func(b []byte) (text, error) { var v oversize.Centre; err := v.UnmarshalText(b); return v, err })
	check("hone work", 3, func(i int8) text { return oversize.HoneWork(i) }, func(b []byte) (text, error) { var v oversize.HoneWork; err := v.UnmarshalText(b); return v, err })
	check("reason", int(oversize.Peeling)+1, func(i int8) text { return oversize.Reason(i) }, func(b []byte) (text, error) { var v oversize.Reason; err := v.UnmarshalText(b); return v, err })
	check("caution", int(oversize.AxisMoves)+1, func(i int8) text { return oversize.Caution(i) }, func(b []byte) (text, error) { var v oversize.Caution; err := v.UnmarshalText(b); return v, err })
	check("operation", int(oversize.PlateauHone)+1, func(i int8) text { return oversize.OperationKind(i) }, func(b []byte) (text, error) {
		var v oversize.OperationKind
		err := v.UnmarshalText(b)
		return v, err
	})
}

// TestPlatedNeedsNoCleanUp: where nothing is bored, nothing is asked of a clean-up.
func TestPlatedNeedsNoCleanUp(t *testing.T) {
	e, c := pump(), cylinder("1", mm("0.1"))
	e.Wall, c.CleanUp = oversize.Plated, bore.CleanUp{}
	c.Findings[0].Verdict = uncertainty.Beyond
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil || got.Route != oversize.MakersProcess || got.Cylinders[0].Refused[0].Reason != oversize.BeyondLimit {
		t.Errorf("%+v, %v", got, err)
	}
}

// TestServiceLimitAlone: without a piston's clearance the service limit bounds what stones may take.
func TestServiceLimitAlone(t *testing.T) {
	e, c := pump(), cylinder("1", mm("0.05"))
	e.Clearance, e.WornClearance, e.RigidHone, e.Service = units.Limits{}, 0, true, mm("67.06")
	c.Findings[0].Verdict = uncertainty.Beyond
	c.Piston = fit.Piston{}
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	cc := got.Cylinders[0]
	if err != nil || cc.Work != oversize.Correct || cc.Aim != mm("67.05") || cc.Finish.Max != mm("67.06") {
		t.Errorf("%+v, %v; want corrected to 67.05 mm", cc, err)
	}
	c.Largest.Std = mm("0.006") // 95 % is wider than the 0.010 mm between clean-up and limit
	if got, err = oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{}); err != nil || len(got.Cautions) != 1 || got.Cautions[0] != oversize.GaugeTooCoarse || got.Cylinders[0].Aim != mm("67.055") {
		t.Errorf("%+v, %v; want the middle, and a caution", got, err)
	}
}

// TestEndsOfTheRanges: every limit of an engine has an end, beyond which it is a slip of a digit.
func TestEndsOfTheRanges(t *testing.T) {
	for name, change := range map[string]func(*oversize.Engine, *oversize.Cylinder){
		"service limit":     func(e *oversize.Engine, _ *oversize.Cylinder) { e.Service = mm("73.7") + 1 },
		"worn clearance":    func(e *oversize.Engine, _ *oversize.Cylinder) { e.WornClearance = mm("6.7") + 1 },
		"greatest overbore": func(e *oversize.Engine, _ *oversize.Cylinder) { e.MostOver = mm("67") + 1 },
		"least wall":        func(e *oversize.Engine, _ *oversize.Cylinder) { e.LeastWall = mm("67") + 1 },
		"gasket hole":       func(e *oversize.Engine, _ *oversize.Cylinder) { e.GasketHole = units.Metre + 1 },
		"allowed shift":     func(e *oversize.Engine, _ *oversize.Cylinder) { e.MayShift = mm("6.7") + 1 },
		"honing":            func(e *oversize.Engine, _ *oversize.Cylinder) { e.Honing = mm("6.7") + 1 },
		"deglazing":         func(e *oversize.Engine, _ *oversize.Cylinder) { e.Deglaze = mm("6.7") + 1 },
		"new bore, least":   func(e *oversize.Engine, _ *oversize.Cylinder) { e.NewBore.Min = mm("60.3") - 1 },
		"new bore, most":    func(e *oversize.Engine, _ *oversize.Cylinder) { e.NewBore.Max = mm("73.7") + 1 },
		"smallest reading":  func(_ *oversize.Engine, c *oversize.Cylinder) { c.Smallest.Value = mm("60.3") - 1 },
		"largest reading":   func(_ *oversize.Engine, c *oversize.Cylinder) { *c = cylinder("1", mm("6.7")+1) },
		"present size":      func(_ *oversize.Engine, c *oversize.Cylinder) { c.Over = mm("67") + 1 },
		"shift":             func(_ *oversize.Engine, c *oversize.Cylinder) { c.CleanUp.Shift = mm("6.7") + 1 },
	} {
		e, c := pump(), cylinder("1", mm("0.15"))
		change(&e, &c)
		if _, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{}); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	e, c := pump(), cylinder("1", mm("6.7"))
	c.Smallest.Value = mm("60.3")
	if got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{}); err != nil || got.Route != oversize.Sleeve {
		t.Errorf("a bore worn from 60.3 to 73.7 mm: %+v, %v; want a sleeve", got, err)
	}
}

// TestPistonOfItsSize: a piston may stand nearer to another size than to its own where the
// clearance window is wider than a step, as long as it suits a fresh bore of its own.
func TestPistonOfItsSize(t *testing.T) {
	e := pump()
	e.NewBore = units.Limits{Min: mm("67.000"), Max: mm("67.002")}
	e.Clearance = units.Limits{Min: mm("0.025"), Max: mm("0.075")}
	e.Sizes = oversize.Series{{Over: mm("0.02")}, {Over: mm("0.04")}}
	for size, want := range map[string]error{
		"66.9450": nil, "66.9449": oversize.ErrPiston, // greatest clearance in 67.020 mm
		"66.983":  nil,
		"66.9970": nil, "66.9971": oversize.ErrPiston, // least clearance in 67.022 mm
	} {
		e.Sizes[0].Piston = piston(size)
		if _, err := oversize.Choose(e, []oversize.Cylinder{cylinder("1", 0)}, uncertainty.Risk{}); !errors.Is(err, want) {
			t.Errorf("piston of %s mm for 0.02 mm over: %v; want %v", size, err, want)
		}
	}
	// Where only the standard size is on offer, a piston too large for it is tight, not foreign.
	e.Sizes = oversize.Series{{Piston: piston("67.010")}}
	c := cylinder("1", 0)
	c.Piston = fit.Piston{}
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil || got.Route != oversize.Undecided || got.Cylinders[0].Refused[0].Reason != oversize.PistonTight {
		t.Errorf("%+v, %v", got, err)
	}
}
