// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// pump returns an engine with bores of 67 mm and the usual metric sizes.
func pump() oversize.Engine {
	return oversize.Engine{
		Wall: oversize.BareIron, Nominal: mm("67"), Sizes: oversize.Metric(),
		NewBore: units.Limits{Min: mm("67.000"), Max: mm("67.019")}, Clearance: units.Limits{Min: mm("0.025"), Max: mm("0.045")},
		WornClearance: mm("0.120"), Honing: mm("0.050"), LeastWall: mm("2"),
	}
}

// cylinder returns a cylinder worn by so much all round, its piston 0.030 mm under the new bore.
func cylinder(name string, wear units.Length) oversize.Cylinder {
	largest := mm("67") + wear
	all := bore.Interval{Min: exact(largest), Max: exact(largest)}
	return oversize.Cylinder{
		Name: name, Largest: exact(largest), Smallest: exact(mm("67")), CleanUp: bore.CleanUp{Original: all, Worn: all},
		Findings: []bore.Finding{{Finding: uncertainty.Finding{Subject: "ovality", Measured: exact(mm("0.02")), Limits: units.Limits{Max: mm("0.05")}, Verdict: uncertainty.Within}}},
		Piston:   piston("66.970"), ThinnestWall: exact(mm("3")),
	}
}

func TestRoutes(t *testing.T) {
	verdict := func(v uncertainty.Verdict) func(*oversize.Engine, []oversize.Cylinder) {
		return func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].Findings[0].Verdict = v }
	}
	all := func(fs ...func(*oversize.Engine, []oversize.Cylinder)) func(*oversize.Engine, []oversize.Cylinder) {
		return func(e *oversize.Engine, cs []oversize.Cylinder) {
			for _, f := range fs {
				f(e, cs)
			}
		}
	}
	beyond, open := verdict(uncertainty.Beyond), verdict(uncertainty.Undecided)
	rigid := func(e *oversize.Engine, _ []oversize.Cylinder) { e.RigidHone = true }
	wear := func(l string) func(*oversize.Engine, []oversize.Cylinder) {
		return func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0] = cylinder("1", mm(l)) }
	}
	const keep, bored, undecided, sleeve = oversize.HoneAndKeep, oversize.BoreOversize, oversize.Undecided, oversize.Sleeve
	for _, test := range []struct {
		name    string
		change  func(*oversize.Engine, []oversize.Cylinder)
		routes  [2]oversize.Route
		over    string
		reasons []oversize.Reason // of the first cylinder
	}{
		{"little worn", wear("0.02"), [2]oversize.Route{keep, keep}, "0", nil},
		{"ovality beyond", beyond, [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.BeyondLimit, oversize.NoRigidHone}},
		{"ovality beyond, rigid stones", all(beyond, rigid), [2]oversize.Route{keep, keep}, "0", []oversize.Reason{oversize.BeyondLimit}},
		{"ovality open", open, [2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.LimitUndecided, oversize.NoRigidHone}},
		{"ovality open, rigid stones", all(open, rigid), [2]oversize.Route{keep, keep}, "0", []oversize.Reason{oversize.LimitUndecided}},
		{"ovality open, the other beyond", all(open, func(_ *oversize.Engine, cs []oversize.Cylinder) {
			cs[1].Findings = []bore.Finding{{Finding: uncertainty.Finding{Verdict: uncertainty.Beyond}}}
		}), [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.LimitUndecided, oversize.NoRigidHone}},
		{"the other beyond", func(_ *oversize.Engine, cs []oversize.Cylinder) {
			cs[1].Findings = []bore.Finding{{Finding: uncertainty.Finding{Verdict: uncertainty.Beyond}}}
		}, [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.SharedSize}},
		{"the other beyond, own sizes", func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.OwnSizes = true
			cs[1].Findings = []bore.Finding{{Finding: uncertainty.Finding{Verdict: uncertainty.Beyond}}}
		}, [2]oversize.Route{keep, bored}, "0.25", nil},
		{"no limits and no clearance", func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.Clearance, e.WornClearance = units.Limits{}, 0
			cs[0].Findings = nil
		}, [2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.NothingJudged}},
		{"piston not measured", func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].Piston = fit.Piston{} },
			[2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.PistonNotMeasured}},
		{"piston of the series", func(e *oversize.Engine, cs []oversize.Cylinder) {
			cs[0].Piston = fit.Piston{}
			e.Sizes = append(oversize.Series{{Piston: piston("66.970")}}, e.Sizes...)
		}, [2]oversize.Route{keep, keep}, "0", nil},
		{"worn loose", wear("0.0901"), [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp}},
		{"worn to the last", wear("0.09"), [2]oversize.Route{keep, keep}, "0", nil},
		{"worn to the last, deglazing takes more", all(wear("0.09"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.Deglaze = 1 }),
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoRigidHone}},
		{"loose in doubt", all(wear("0.09"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].Largest.Std = units.Micrometre }),
			[2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.ClearanceUndecided, oversize.NoRigidHone}},
		{"piston tight", func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].Piston = piston("66.9751") },
			[2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.PistonTight, oversize.NoRigidHone}},
		{"piston tight, rigid stones", all(rigid, func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].Piston = piston("66.9751") }),
			[2]oversize.Route{keep, keep}, "0", []oversize.Reason{oversize.PistonTight}},
		{"beyond the service limit for stones", all(beyond, rigid, func(e *oversize.Engine, _ []oversize.Cylinder) { e.Service = mm("67.019") }),
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.BeyondLimit, oversize.NoCleanUp}},
		{"stones in doubt", all(beyond, rigid, func(_ *oversize.Engine, cs []oversize.Cylinder) {
			cs[0].CleanUp.Worn.Max = uncertainty.Estimate{Value: mm("67.09"), Std: units.Micrometre}
		}), [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.BeyondLimit, oversize.CleanUpNotProven}},
		{"a score in a sound bore", func(_ *oversize.Engine, cs []oversize.Cylinder) { pit(&cs[0], "0.05", true) },
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ScoreLeft, oversize.NoRigidHone}},
		{"a score no deeper than deglazing takes", func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.Deglaze = mm("0.004")
			pit(&cs[0], "0.002", true)
		}, [2]oversize.Route{keep, keep}, "0", nil},
		{"a score that deglazing may take", func(_ *oversize.Engine, cs []oversize.Cylinder) { pit(&cs[0], "0.00635", true) },
			[2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.ScoreNotJudged, oversize.NoRigidHone}},
		{"a score that no deglazing takes", func(_ *oversize.Engine, cs []oversize.Cylinder) { pit(&cs[0], "0.00636", true) },
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ScoreLeft, oversize.NoRigidHone}},
		{"a score deeper than deglazing takes", func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.Deglaze = mm("0.004")
			pit(&cs[0], "0.00201", true)
		}, [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ScoreLeft, oversize.NoRigidHone}},
		{"a deep score that no ring passes over", func(_ *oversize.Engine, cs []oversize.Cylinder) { pit(&cs[0], "0.5", false) },
			[2]oversize.Route{keep, keep}, "0", nil},
		{"a scratch, worn past none, nothing larger on offer", func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.Sizes = nil
			pit(&cs[0], "0.002", true)
		}, [2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.ScoreNotJudged, oversize.NoRigidHone}},
		{"stones in doubt for want of the unseen", all(beyond, rigid, func(_ *oversize.Engine, cs []oversize.Cylinder) {
			cs[0].CleanUp.Worn.Max = exact(mm("67.15"))
		}), [2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.BeyondLimit, oversize.CleanUpNotProven}},
		{"wear of a quarter", wear("0.25"), [2]oversize.Route{bored, bored}, "0.5",
			[]oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp, oversize.NoCleanUp}},
		{"wear of a quarter, unseen", all(wear("0.18"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].CleanUp.Original.Max = exact(mm("67.3")) }),
			[2]oversize.Route{bored, bored}, "0.5", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp, oversize.CleanUpNotProven}},
		{"worn past all sizes", wear("0.96"), [2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp,
			oversize.NoCleanUp, oversize.NoCleanUp, oversize.NoCleanUp, oversize.NoCleanUp}},
		{"worn, and nothing larger on offer", all(wear("0.2"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.Sizes = nil }),
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp, oversize.NothingLarger}},
		{"one past all sizes, the other worn", all(wear("0.96"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[1] = cylinder("2", mm("0.3")) }),
			[2]oversize.Route{sleeve, bored}, "0.5", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp,
				oversize.NoCleanUp, oversize.NoCleanUp, oversize.NoCleanUp, oversize.NoCleanUp}},
		{"greatest overbore", all(wear("0.2"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.MostOver = mm("0.4") }),
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp}},
		{"greatest overbore below all", all(wear("0.2"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.MostOver = mm("0.2") }),
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp,
				oversize.BeyondGreatest, oversize.BeyondGreatest, oversize.BeyondGreatest, oversize.BeyondGreatest}},
		{"gasket hole", all(wear("0.2"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.GasketHole = mm("67.268") }),
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp,
				oversize.GasketHole, oversize.GasketHole, oversize.GasketHole, oversize.GasketHole}},
		{"gasket hole just as large", all(wear("0.2"), func(e *oversize.Engine, _ []oversize.Cylinder) { e.GasketHole = mm("67.269") }),
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp}},
		{"wall not measured", all(wear("0.2"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].ThinnestWall = exact(0) }),
			[2]oversize.Route{undecided, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp, oversize.WallNotMeasured}},
		{"wall thin", all(wear("0.2"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].ThinnestWall = exact(mm("2.1344")) }),
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp,
				oversize.WallThin, oversize.WallThin, oversize.WallThin, oversize.WallThin}},
		{"wall just enough", all(wear("0.2"), func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].ThinnestWall = exact(mm("2.1345")) }),
			[2]oversize.Route{bored, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp}},
		{"wall in doubt", all(wear("0.2"), func(e *oversize.Engine, cs []oversize.Cylinder) {
			e.MostOver = mm("0.25")
			cs[0].ThinnestWall = uncertainty.Estimate{Value: mm("2.1345"), Std: mm("0.05")}
		}), [2]oversize.Route{undecided, bored}, "0.25", []oversize.Reason{oversize.ClearanceBeyond, oversize.NoCleanUp, oversize.WallNotProven}},
		{"kept on too thin a wall", func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].ThinnestWall = exact(mm("1.9")) },
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.WallThin,
				oversize.WallThin, oversize.WallThin, oversize.WallThin, oversize.WallThin}},
		{"too thin a wall for stones, too", all(beyond, rigid, func(_ *oversize.Engine, cs []oversize.Cylinder) { cs[0].ThinnestWall = exact(mm("1.9")) }),
			[2]oversize.Route{sleeve, keep}, "0", []oversize.Reason{oversize.BeyondLimit, oversize.WallThin,
				oversize.WallThin, oversize.WallThin, oversize.WallThin, oversize.WallThin}},
		{"kept on a doubtful wall", func(_ *oversize.Engine, cs []oversize.Cylinder) {
			cs[0].ThinnestWall = uncertainty.Estimate{Value: mm("2"), Std: mm("0.05")}
		}, [2]oversize.Route{undecided, keep}, "0", []oversize.Reason{oversize.WallNotProven}},
	} {
		e, cs := pump(), []oversize.Cylinder{cylinder("1", mm("0.02")), cylinder("2", mm("0.02"))}
		test.change(&e, cs)
		got, err := oversize.Choose(e, cs, uncertainty.Risk{})
		if err != nil {
			t.Errorf("%s: %v", test.name, err)
			continue
		}
		var reasons []oversize.Reason
		for _, r := range got.Cylinders[0].Refused {
			reasons = append(reasons, r.Reason)
		}
		routes := [2]oversize.Route{got.Cylinders[0].Route, got.Cylinders[1].Route}
		if routes != test.routes || got.Over != mm(test.over) || !slices.Equal(reasons, test.reasons) {
			t.Errorf("%s: %v at %v over for %v; want %v at %s mm for %v", test.name, routes, got.Over, reasons, test.routes, test.over, test.reasons)
		}
	}
}

// TestPresentOversize: a cylinder that already stands at an oversize is kept there, and the
// other is bored to join it.
func TestPresentOversize(t *testing.T) {
	e := pump()
	bored := cylinder("2", 0)
	quarter := mm("0.25")
	for _, x := range []*uncertainty.Estimate{&bored.Largest, &bored.Smallest, &bored.CleanUp.Original.Min, &bored.CleanUp.Original.Max,
		&bored.CleanUp.Worn.Min, &bored.CleanUp.Worn.Max, &bored.Piston.Size} {
		x.Value += quarter
	}
	bored.Over, bored.PistonFor = quarter, quarter
	got, err := oversize.Choose(e, []oversize.Cylinder{cylinder("1", mm("0.01")), bored}, uncertainty.Risk{})
	if err != nil || got.Route != oversize.BoreOversize || got.Over != quarter || got.Cylinders[0].Route != oversize.BoreOversize || got.Cylinders[1].Route != oversize.HoneAndKeep {
		t.Errorf("%+v, %v", got, err)
	}
}

// TestWindowAndAim: the real piston decides the finish window, the bored size leaves the honing
// allowance, and the axis moves only where it may.
func TestWindowAndAim(t *testing.T) {
	e := pump()
	e.Sizes = oversize.Series{{Over: mm("0.25"), Piston: piston("67.215")}}
	e.Aim = fit.Tight
	c := cylinder("1", mm("0.15"))
	c.Largest.Std, c.Smallest.Std = units.Micrometre, units.Micrometre
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	want := oversize.CylinderChoice{
		Name: "1", Route: oversize.BoreOversize, Over: mm("0.25"),
		Finish: units.Limits{Min: mm("67.240"), Max: mm("67.260")},
		Aim:    mm("67.24196"), Bored: mm("67.19196"), Stock: units.Limits{Min: mm("0.09196"), Max: mm("0.24196")},
		WallLeft: uncertainty.Estimate{Value: mm("2.87"), Std: units.Micrometre / 2},
	}
	if err != nil {
		t.Fatal(err)
	}
	cc := got.Cylinders[0]
	if cc.Refused == nil || cc.Cautions != nil {
		t.Errorf("%+v", cc)
	}
	cc.Refused = nil
	for _, l := range []*units.Length{&cc.Aim, &cc.Bored, &cc.Stock.Min, &cc.Stock.Max} {
		*l = l.Round(10 * units.Nanometre) // 1.95996 standard uncertainties off the tight end
	}
	if cc.Name != want.Name || cc.Finish != want.Finish || cc.Aim != want.Aim || cc.Bored != want.Bored || cc.Stock != want.Stock || cc.WallLeft != want.WallLeft {
		t.Errorf("%+v; want %+v", cc, want)
	}
}

// TestCorrectedAsLittleAsNeeded: honing to correct form aims at the least size that is sure to
// be clean and clear of the piston.
func TestCorrectedAsLittleAsNeeded(t *testing.T) {
	e := pump()
	e.RigidHone = true
	c := cylinder("1", mm("0.04"))
	c.Findings[0].Verdict = uncertainty.Beyond
	c.CleanUp.Worn.Max.Std = units.Micrometre
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{Accept: 0.1})
	if err != nil {
		t.Fatal(err)
	}
	cc := got.Cylinders[0]
	// 0.1 shared over two decisions is 0.05 on one side: 1.644854 standard uncertainties.
	if cc.Work != oversize.CorrectForm || cc.Aim.Round(units.Nanometre) != mm("67.041645") || cc.Finish.Max != mm("67.09") {
		t.Errorf("%+v; want 67.041645 mm", cc)
	}
}

func TestCautions(t *testing.T) {
	for _, test := range []struct {
		name   string
		change func(*oversize.Engine, *oversize.Cylinder)
		want   []string
	}{
		{"none", func(*oversize.Engine, *oversize.Cylinder) {}, nil},
		{"window wider than a step", func(e *oversize.Engine, _ *oversize.Cylinder) {
			e.Sizes[0].Over = mm("0.23")
			e.Clearance.Max = mm("0.05")
			e.Sizes[1].Over = mm("0.25")
		},
			[]string{oversize.WindowSpansSizes}},
		{"window as wide as a step", func(e *oversize.Engine, _ *oversize.Cylinder) {
			e.Sizes[0].Over = mm("0.23")
			e.Sizes[1].Over = mm("0.25")
		}, nil},
		{"least honing", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Honing = oversize.UsualHoning().Min }, nil},
		{"no honing allowance", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Honing = 0 }, []string{oversize.NoHoningStock}},
		{"no window and no piston", func(e *oversize.Engine, _ *oversize.Cylinder) { e.NewBore = units.Limits{} }, []string{oversize.PistonToCome}},
		{"no least wall", func(e *oversize.Engine, _ *oversize.Cylinder) { e.LeastWall = 0 }, []string{oversize.WallUnknown}},
		{"no wall at all", func(e *oversize.Engine, c *oversize.Cylinder) { e.LeastWall = 0; c.ThinnestWall = exact(0) }, []string{oversize.WallUnknown}},
		{"little honing", func(e *oversize.Engine, _ *oversize.Cylinder) { e.Honing = oversize.UsualHoning().Min - 1 }, []string{oversize.HoningUnusual}},
		{"much honing", func(e *oversize.Engine, c *oversize.Cylinder) {
			e.Honing = oversize.UsualHoning().Max + 1
			*c = cylinder("1", mm("0.1"))
		}, []string{oversize.HoningUnusual}},
		{"usual honing", func(e *oversize.Engine, c *oversize.Cylinder) {
			e.Honing = oversize.UsualHoning().Max
			*c = cylinder("1", mm("0.1"))
		}, nil},
		{"coarse gauge", func(_ *oversize.Engine, c *oversize.Cylinder) { c.Largest.Std = mm("0.012") }, []string{oversize.GaugeTooCoarse}},
		{"ovality unseen", func(_ *oversize.Engine, c *oversize.Cylinder) { c.CleanUp.Unseen = []bore.Unseen{bore.UnseenOvality} },
			[]string{oversize.OvalityUnseen}},
		{"axis moves", func(e *oversize.Engine, c *oversize.Cylinder) {
			e.MayShift = mm("0.1")
			c.CleanUp.Shift, c.CleanUp.Original.Max = mm("0.1"), exact(mm("67.3"))
		}, []string{oversize.AxisMoves}},
	} {
		e, c := pump(), cylinder("1", mm("0.15"))
		test.change(&e, &c)
		got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		if err != nil || got.Route != oversize.BoreOversize || !slices.Equal(got.Cautions, test.want) {
			t.Errorf("%s: %v, %v, %v; want %v", test.name, got.Route, got.Cautions, err, test.want)
		}
	}
}

func TestShiftTakesWall(t *testing.T) {
	e, c := pump(), cylinder("1", mm("0.15"))
	e.MayShift = mm("0.1")
	c.CleanUp.Shift, c.CleanUp.Original.Max = mm("0.1"), exact(mm("67.3"))
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil || got.Cylinders[0].Shift == 0 || got.Cylinders[0].WallLeft.Value != mm("2.7655") {
		t.Errorf("%+v, %v; want 3 − 0.269/2 − 0.1 = 2.7655 mm left", got, err)
	}
	e.MayShift--
	if got, err = oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{}); err != nil || got.Over != mm("0.5") || got.Cylinders[0].Shift != 0 {
		t.Errorf("%+v, %v; want 0.5 mm over on the original centre", got, err)
	}
}

// TestCentreKeepsItsGuard: the aim is off either end by the doubt at 95 % on both sides, or in the middle, and the choice
// says that nothing can be proven.
func TestCentreKeepsItsGuard(t *testing.T) {
	coarse := []string{oversize.GaugeTooCoarse}
	for _, test := range []struct {
		aim       fit.Aim
		std, want string
		cautions  []string
	}{
		{fit.Centre, "0.0048", "67.2595", nil}, // 1.95996 × 4.8 µm is less than half of 19 µm
		{fit.Centre, "0.0052", "67.2595", coarse},
		{fit.Centre, "0.0098", "67.2595", coarse}, // 19.208 µm is more than all of it
		{fit.Tight, "0.0048", "67.259408", nil},
		{fit.Tight, "0.0052", "67.2595", coarse},
		{fit.Tight, "0.0098", "67.2595", coarse},
	} {
		e, c := pump(), cylinder("1", mm("0.15"))
		e.Aim, c.Largest.Std = test.aim, mm(test.std)
		got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		if err != nil || got.Cylinders[0].Aim.Round(units.Nanometre) != mm(test.want) || !slices.Equal(got.Cautions, test.cautions) {
			t.Errorf("%v, std %s mm: %+v, %v; want %s mm, %v", test.aim, test.std, got.Cylinders[0], err, test.want, test.cautions)
		}
	}
}

// TestStandardSizeInTheSeries: a series may begin with the standard size, for its piston; the
// present size is still tried once.
func TestStandardSizeInTheSeries(t *testing.T) {
	e, c := pump(), cylinder("1", mm("0.15"))
	e.Sizes = append(oversize.Series{{}}, e.Sizes...)
	with, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil {
		t.Fatal(err)
	}
	e.Sizes = e.Sizes[1:]
	without, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil || !reflect.DeepEqual(with, without) || len(without.Cylinders[0].Refused) != 2 {
		t.Errorf("%+v\n%+v, %v", with, without, err)
	}
	kept, err := oversize.Choose(e, []oversize.Cylinder{cylinder("1", mm("0.02"))}, uncertainty.Risk{})
	if err != nil || kept.Cylinders[0].Refused != nil {
		t.Errorf("%+v, %v; want nothing refused", kept, err)
	}
}

func TestRefusalText(t *testing.T) {
	e, c := pump(), cylinder("1", mm("0.31"))
	got, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
	if err != nil {
		t.Fatal(err)
	}
	var lines []string
	for _, r := range got.Cylinders[0].Refused {
		lines = append(lines, r.String())
	}
	want := `hone and keep, deglaze: clearance beyond its limit (greatest clearance 0.34 mm, max 0.12 mm)
hone and keep, restore the form: worn wall would be left (clean-up on the worn centre 67.31 mm, max 67.09 mm)
rebore to +0.25 mm: worn wall would be left (clean-up on the original centre 67.31 mm, max 67.2 mm)`
	if s := strings.Join(lines, "\n"); s != want {
		t.Errorf("%s\nwant\n%s", s, want)
	}
	for _, r := range []oversize.Reason{oversize.WallForbids, oversize.NothingLarger} { // of no one size
		if s, want := (oversize.Refusal{Route: oversize.BoreOversize, Reason: r}).String(), "rebore: "+r.String(); s != want {
			t.Errorf("%q, want %q", s, want)
		}
	}
}

// A worn bore need not be a new one where the maker says how far it may wear.
func TestDeciding(t *testing.T) {
	fresh, service := bore.Finding{Limit: bore.LimitNew}, bore.Finding{Limit: bore.LimitService}
	for _, c := range []struct{ in, want []bore.Finding }{
		{nil, nil},
		{[]bore.Finding{fresh}, []bore.Finding{fresh}},
		{[]bore.Finding{fresh, service}, []bore.Finding{service}},
		{[]bore.Finding{service}, []bore.Finding{service}},
	} {
		before := slices.Clone(c.in)
		if got := oversize.Deciding(c.in); !slices.Equal(got, c.want) || !slices.Equal(c.in, before) {
			t.Errorf("%v: %v", c.in, got)
		}
	}
}

// A limit that nobody measured is no reason to cut: the same bore, its ovality merely in doubt, is
// corrected with rigid stones; with no axis read across it waits.
func TestUnmeasuredIsNotCorrected(t *testing.T) {
	e := pump()
	e.RigidHone, e.Service = true, mm("67.1")
	route := func(notMeasured bool) oversize.Route {
		c := cylinder("1", mm("0.02"))
		c.Findings[0].Verdict, c.Findings[0].NotMeasured = uncertainty.Undecided, notMeasured
		choice, err := oversize.Choose(e, []oversize.Cylinder{c}, uncertainty.Risk{})
		if err != nil {
			t.Fatal(err)
		}
		return choice.Route
	}
	if got := route(false); got != oversize.HoneAndKeep {
		t.Errorf("in doubt: %v", got)
	}
	if got := route(true); got != oversize.Undecided {
		t.Errorf("not measured: %v", got)
	}
}

// pit puts a pit into a cylinder, so deep in millimetres.
func pit(c *oversize.Cylinder, below string, inTravel bool) {
	c.CleanUp.Pits = append(c.CleanUp.Pits, bore.WornPit{Pit: bore.Pit{Below: mm(below)}, InTravel: inTravel})
}

// A cylinder from its geometry has the extremes of all places that were read, those at ports too.
func TestNewCylinder(t *testing.T) {
	l := bore.Layout{RingBottom: mm("90"), Ports: []bore.Port{{Name: "exhaust", From: mm("40"), To: mm("60"), At: units.Angle(bore.PinAxis), Width: units.Angle(bore.PinAxis)}}}
	g, err := l.Analyse([]bore.Reading{
		{Depth: mm("5"), Diameter: mm("67.05")}, {Depth: mm("50"), Diameter: mm("67.09")}, {Depth: mm("85"), Diameter: mm("67.01")},
		{Depth: mm("5"), Axis: bore.PinAxis, Diameter: mm("67.02")}, {Depth: mm("85"), Axis: bore.PinAxis, Diameter: mm("67")},
		{Depth: mm("85"), Axis: bore.PinAxis, Diameter: mm("67")},
	}, bore.Gauge{Repeatability: units.Micrometre})
	if err != nil {
		t.Fatal(err)
	}
	clean, err := g.CleanUp(bore.Wear{Unworn: exact(mm("67")), Pits: []bore.Pit{{Below: mm("0.02"), Depth: mm("50")}}})
	if err != nil {
		t.Fatal(err)
	}
	found, err := g.Judge(bore.Limits{Taper: mm("0.05")}, uncertainty.Risk{})
	if err != nil {
		t.Fatal(err)
	}
	c := oversize.NewCylinder("1", g, clean, found)
	if c.Name != "1" || c.Places != 5 || c.Largest != g.Largest.Size || c.Largest.Value != mm("67.09") || c.Smallest != g.Smallest.Size ||
		len(c.Findings) != 1 || len(c.CleanUp.Pits) != 1 || c.Over != 0 {
		t.Errorf("%+v", c)
	}
}
