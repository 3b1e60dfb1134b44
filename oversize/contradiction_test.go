// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"encoding"
	"errors"
	"math"
	"slices"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func TestBadInput(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*oversize.Engine, *oversize.Cylinder)
		want   error
	}{
		{"no wall", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Wall = 0 }, units.ErrNotGiven},
		{"unknown wall", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Wall = 99 }, units.ErrNotGiven},
		{"no bore", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Nominal = 0 }, units.ErrNotGiven},
		{"bore of 2 m", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Nominal = 2 * units.Metre }, units.ErrRange},
		{"negative service limit", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Service = -1 }, units.ErrRange},
		{"negative honing", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Honing = -1 }, units.ErrRange},
		{"negative least wall", func(e *oversize.Engine, _ *oversize.Cylinder) { e.LeastWall = -1 }, units.ErrRange},
		{"negative shift", func(e *oversize.Engine, _ *oversize.Cylinder) { e.MayShift = -1 }, units.ErrRange},
		{"clearance crossed", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Clearance = units.Limits{Min: 2, Max: 1} }, units.ErrCrossed},
		{"clearance one-sided", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Clearance = units.Limits{Max: 1} }, units.ErrRange},
		{"clearance of a tenth", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Clearance = units.Limits{Min: 1, Max: mm("7")} }, units.ErrRange},
		{"worn clearance below the fresh one", func(e *oversize.Engine, _ *oversize.Cylinder) { e.WornClearance = mm("0.04") }, units.ErrCrossed},
		{"new bore crossed", func(e *oversize.Engine, _ *oversize.Cylinder) {
			e.NewBore = units.Limits{Min: mm("67.02"), Max: mm("67.01")}
		}, units.ErrCrossed},
		{"new bore of another engine", func(e *oversize.Engine, _ *oversize.Cylinder) {
			e.NewBore = units.Limits{Min: mm("80"), Max: mm("80.02")}
		}, units.ErrRange},
		{"sizes out of order", func(e *oversize.Engine, _ *oversize.Cylinder) { slices.Reverse(e.Sizes) }, units.ErrRange},
		{"size doubled", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Sizes[1] = e.Sizes[0] }, units.ErrRange},
		{"negative size", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Sizes[0].Over = -1 }, units.ErrRange},
		{"size above the bore", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Sizes[3].Over = mm("68") }, units.ErrRange},
		{"piston of the next size", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Sizes[0].Piston = piston("67.47") }, oversize.ErrPiston},
		{"piston of no size", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Sizes[3].Piston = piston("68.3") }, oversize.ErrPiston},
		{"piston in hand larger than all", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Piston, c.PistonFor = piston("68.3"), mm("1") }, oversize.ErrPiston},
		{"piston along its pin", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Piston.Axis = fit.AlongPin }, units.ErrRange},
		{"readings crossed", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Smallest, c.Largest = c.Largest, c.Smallest }, units.ErrCrossed},
		{"reading of another engine", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Smallest.Value = mm("50") }, units.ErrRange},
		{"clean-up below the largest", func(_ *oversize.Engine, c *oversize.Cylinder) { c.CleanUp.Original.Min.Value = mm("67.1") }, units.ErrCrossed},
		{"no clean-up", func(_ *oversize.Engine, c *oversize.Cylinder) { c.CleanUp = bore.CleanUp{} }, units.ErrCrossed},
		{"negative wall", func(_ *oversize.Engine, c *oversize.Cylinder) { c.ThinnestWall.Value = -1 }, units.ErrRange},
		{"negative doubt", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Largest.Std = -1 }, uncertainty.ErrStd},
		{"doubt of 20 mm", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Largest.Std = mm("20") }, units.ErrRange},
		{"degrees of freedom infinite", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Largest.DoF = math.Inf(1) }, uncertainty.ErrStd},
		{"negative oversize now", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Over = -1 }, units.ErrRange},
		{"negative shift of a cylinder", func(_ *oversize.Engine, c *oversize.Cylinder) { c.CleanUp.Shift = -1 }, units.ErrRange},
	} {
		e, c := pump(), cylinder("left", mm("0.15"))
		test.change(&e, &c)
		if got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{}); !errors.Is(err, test.want) || got.Cylinders != nil {
			t.Errorf("%s: %v; want %v", test.name, err, test.want)
		}
	}
	for name, f := range map[string]func() error{
		"no cylinders": func() error { _, err := oversize.Choose(pump(), nil, uncertainty.Risk{}); return err },
		"65 cylinders": func() error {
			_, err := oversize.Choose(pump(), make([]oversize.Cylinder, 65), uncertainty.Risk{})
			return err
		},
	} {
		if err := f(); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for _, r := range []uncertainty.Risk{{Accept: -1}, {Accept: math.NaN()}, {Reject: 2}, {Accept: math.Inf(1)}} {
		if _, err := oversize.Choose(pump(), []oversize.Cylinder{cylinder("1", mm("0.15"))}, r); !errors.Is(err, units.ErrRange) {
			t.Errorf("risk %v: %v", r, err)
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
			if b, err := value(i).MarshalText(); !errors.Is(err, units.ErrUnknownName) {
				t.Errorf("%s %d: %q, %v", kind, i, b, err)
			}
			if value(i).String() == "" {
				t.Errorf("%s %d has no text", kind, i)
			}
		}
		if v, err := read([]byte("no such name")); !errors.Is(err, units.ErrUnknownName) || v != value(0) {
			t.Errorf("%s: %v, %v", kind, v, err)
		}
	}
	check("wall", 5, func(i int8) text { return oversize.Wall(i) }, func(b []byte) (text, error) { var v oversize.Wall; err := v.UnmarshalText(b); return v, err })
	check("route", 5, func(i int8) text { return oversize.Route(i) }, func(b []byte) (text, error) { var v oversize.Route; err := v.UnmarshalText(b); return v, err })
	check("reason", int(oversize.NothingLarger)+1, func(i int8) text { return oversize.Reason(i) }, func(b []byte) (text, error) { var v oversize.Reason; err := v.UnmarshalText(b); return v, err })
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
	if err != nil || cc.Work != oversize.CorrectForm || cc.Aim != mm("67.05") || cc.Finish.Max != mm("67.06") {
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
