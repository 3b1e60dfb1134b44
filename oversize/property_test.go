// SPDX-License-Identifier: BSD-3-Clause

package oversize_test

import (
	"encoding/json"
	"math"
	"reflect"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/bore/fit"
	"borewright.example/oversize"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func drawLength(t *rapid.T, name string, from, to units.Length) units.Length {
	return units.Length(rapid.Int64Range(int64(from/units.Micrometre), int64(to/units.Micrometre)).Draw(t, name)) * units.Micrometre
}

// drawEngine returns an iron engine of 67 mm with a random series and random limits.
func drawEngine(t *rapid.T) oversize.Engine {
	e := oversize.Engine{
		Wall: oversize.BareIron, Nominal: mm("67"), NewBore: units.Limits{Min: mm("67"), Max: mm("67.019")},
		Clearance: units.Limits{Min: mm("0.025"), Max: mm("0.045")},
		Honing:    drawLength(t, "honing", 0, mm("0.13")),
		RigidHone: rapid.Bool().Draw(t, "rigid hone"),
		Aim:       fit.Aim(rapid.IntRange(0, 1).Draw(t, "aim")),
	}
	over := units.Length(0)
	for range rapid.IntRange(0, 8).Draw(t, "sizes") {
		over += drawLength(t, "step", mm("0.1"), mm("0.3"))
		e.Sizes = append(e.Sizes, oversize.Size{Over: over})
		if rapid.Bool().Draw(t, "piston on hand") {
			e.Sizes[len(e.Sizes)-1].Piston = fit.Piston{Size: exact(mm("66.97") + over + drawLength(t, "grade", 0, mm("0.02")))}
		}
	}
	maybe := func(name string, to *units.Length, least, greatest units.Length) {
		if rapid.Bool().Draw(t, name+" given") {
			*to = drawLength(t, name, least, greatest)
		}
	}
	maybe("worn clearance", &e.WornClearance, mm("0.045"), mm("0.15"))
	maybe("service limit", &e.Service, mm("67.05"), mm("67.15"))
	maybe("greatest overbore", &e.MostOver, mm("0.2"), mm("2"))
	maybe("gasket hole", &e.GasketHole, mm("67.2"), mm("69"))
	maybe("least wall", &e.LeastWall, mm("1"), mm("3"))
	maybe("allowed shift", &e.MayShift, 0, mm("0.1"))
	return e
}

// drawCylinder returns a worn cylinder, with doubt where it is wanted.
func drawCylinder(t *rapid.T, name string, doubt bool) oversize.Cylinder {
	wear := drawLength(t, "wear", 0, mm("0.6"))
	c := oversize.Cylinder{
		Name: name, Largest: exact(mm("67.005") + wear), Smallest: exact(mm("67.005") + drawLength(t, "least wear", 0, wear)),
		Places: rapid.IntRange(0, 20).Draw(t, "places"),
	}
	if rapid.Bool().Draw(t, "piston measured") {
		c.Piston = fit.Piston{Size: exact(mm("66.97"))}
	}
	if rapid.Bool().Draw(t, "wall measured") {
		c.ThinnestWall = exact(drawLength(t, "wall", mm("1"), mm("4")))
	}
	allowance := drawLength(t, "allowance", 0, mm("0.05"))
	from := func(least units.Length) bore.Interval {
		return bore.Interval{Min: exact(least), Max: exact(least + drawLength(t, "unseen", 0, wear))}
	}
	c.CleanUp = bore.CleanUp{Original: from(c.Largest.Value + allowance), Worn: from(c.Largest.Value + allowance), Shift: drawLength(t, "shift", 0, wear/2)}
	for range rapid.IntRange(0, 3).Draw(t, "findings") {
		v := uncertainty.Verdict(rapid.IntRange(0, 2).Draw(t, "verdict"))
		c.Findings = append(c.Findings, bore.Finding{Finding: uncertainty.Finding{Subject: "ovality", Measured: exact(mm("0.05")), Limits: units.Limits{Max: mm("0.05")}, Verdict: v}})
	}
	if doubt {
		std := drawLength(t, "doubt", 0, 5*units.Micrometre)
		for _, x := range []*uncertainty.Estimate{&c.Largest, &c.Smallest, &c.CleanUp.Original.Min, &c.CleanUp.Original.Max, &c.CleanUp.Worn.Min, &c.CleanUp.Worn.Max} {
			x.Std, x.DoF = std, 12
		}
	}
	return c
}

func drawCylinders(t *rapid.T, most int, doubt bool) []oversize.Cylinder {
	var cs []oversize.Cylinder
	for i := range rapid.IntRange(1, most).Draw(t, "cylinders") {
		cs = append(cs, drawCylinder(t, string(rune('A'+i)), doubt))
	}
	return cs
}

func choose(t *rapid.T, e oversize.Engine, cs []oversize.Cylinder) oversize.Choice {
	c, err := oversize.Choose(e, cs, uncertainty.Risk{})
	if err != nil {
		t.Fatalf("%v\n%+v\n%+v", err, e, cs)
	}
	return c
}

// serves says, for exact data and in its own words, whether a cylinder can be bored to a size.
func serves(e oversize.Engine, c oversize.Cylinder, s oversize.Size) bool {
	least, greatest := e.NewBore.Min+s.Over, e.NewBore.Max+s.Over
	if !s.Piston.IsZero() {
		least, greatest = s.Piston.Size.Value+e.Clearance.Min, s.Piston.Size.Value+e.Clearance.Max
	}
	bored, shift := least-e.Honing, units.Length(0)
	if c.CleanUp.Original.Max.Value > bored {
		if e.MayShift == 0 || c.CleanUp.Shift > e.MayShift || c.CleanUp.Worn.Max.Value > bored {
			return false
		}
		shift = c.CleanUp.Shift
	}
	if e.MostOver > 0 && s.Over > e.MostOver || e.GasketHole > 0 && greatest > e.GasketHole {
		return false
	}
	wall := c.ThinnestWall.Value
	if wall == 0 {
		return e.LeastWall == 0
	}
	return 2*(wall-shift-max(e.LeastWall, 1)) >= greatest-c.Smallest.Value
}

// TestSmallestSize: of exact data the size chosen is the smallest in the list at which every
// cylinder can be bored, where they cannot be kept and such a size exists.
func TestSmallestSize(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 4, false)
		got := choose(t, e, cs)
		want := slices.IndexFunc(e.Sizes, func(s oversize.Size) bool {
			return !slices.ContainsFunc(cs, func(c oversize.Cylinder) bool { return !serves(e, c, s) })
		})
		switch got.Route {
		case oversize.BoreOversize:
			if want < 0 || got.Over != e.Sizes[want].Over {
				t.Fatalf("bored %v over; want number %d of %v", got.Over, want, e.Sizes)
			}
			for i, c := range got.Cylinders {
				if c.Route != oversize.BoreOversize || c.Over != got.Over || c.Bored < c.Finish.Min-e.Honing || !c.Finish.Contains(c.Aim) ||
					c.Stock.Max != c.Aim-cs[i].Smallest.Value || c.Stock.Min != c.Aim-cs[i].Largest.Value {
					t.Fatalf("%+v", c)
				}
				if len(c.Refused) == 0 || c.Refused[0].Route != oversize.HoneAndKeep {
					t.Fatalf("no reason why it is not kept: %v", c.Refused)
				}
				for k := range want {
					if !slices.ContainsFunc(c.Refused, func(r oversize.Refusal) bool { return r.Route == oversize.BoreOversize && r.Over == e.Sizes[k].Over }) {
						t.Fatalf("%v over is not refused: %v", e.Sizes[k].Over, c.Refused)
					}
				}
			}
		case oversize.Sleeve:
			if want >= 0 {
				t.Fatalf("sleeved, where %v over serves", e.Sizes[want].Over)
			}
		case oversize.Undecided:
			// Keeping is open, or boring is, and never both settled in favour.
			if !slices.ContainsFunc(got.Cylinders, func(c oversize.CylinderChoice) bool {
				return c.Route == oversize.Undecided && slices.ContainsFunc(c.Refused, func(r oversize.Refusal) bool { return r.Reason.Open() })
			}) {
				t.Fatalf("undecided for no open reason: %+v", got)
			}
			if want >= 0 && (got.Otherwise != oversize.BoreOversize || got.OtherwiseOver != e.Sizes[want].Over) {
				t.Fatalf("otherwise %v, %v over; want %v", got.Otherwise, got.OtherwiseOver, e.Sizes[want].Over)
			}
		case oversize.HoneAndKeep:
			for i, c := range got.Cylinders {
				checkKept(t, e, cs[i], c)
			}
		default:
			t.Fatalf("route %v", got.Route)
		}
	})
}

// checkKept: nothing is kept on a finding that is not within, unless rigid stones correct it
// inside the window, nor with nothing to hold it against.
func checkKept(t *rapid.T, e oversize.Engine, in oversize.Cylinder, c oversize.CylinderChoice) {
	greatest := in.Piston.Size.Value + max(e.WornClearance, e.Clearance.Max)
	if e.Service != 0 {
		greatest = min(greatest, max(e.Service, in.Piston.Size.Value+e.Clearance.Min))
	}
	switch c.Work {
	case oversize.Deglaze:
		for _, f := range in.Findings {
			if f.Verdict != uncertainty.Within {
				t.Fatalf("kept with %v %v", f.Subject, f.Verdict)
			}
		}
		if in.Piston.IsZero() || in.Largest.Value > in.Piston.Size.Value+max(e.WornClearance, e.Clearance.Max) {
			t.Fatalf("kept at %v with a piston of %v", in.Largest, in.Piston)
		}
	case oversize.CorrectForm:
		if !e.RigidHone || in.Piston.IsZero() && e.Service == 0 || !in.Piston.IsZero() && c.Aim > greatest || c.Aim < in.CleanUp.Worn.Max.Value {
			t.Fatalf("corrected to %v: %+v", c.Aim, in)
		}
	default:
		t.Fatalf("kept with %v", c.Work)
	}
}

// proven returns the size that an engine comes to where nothing is left open, and whether some
// cylinder is sleeved.
func proven(c oversize.Choice) (over units.Length, sleeved bool) {
	if c.Route == oversize.Undecided {
		return c.OtherwiseOver, c.Otherwise == oversize.Sleeve
	}
	return c.Over, c.Route == oversize.Sleeve
}

// TestMoreWearNeverLowersTheStep: raising all readings of a bore, with its outside where it
// was, or its worn readings alone, or the honing allowance, never lowers the step.
func TestMoreWearNeverLowersTheStep(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 3, true)
		for i := range cs {
			cs[i].ThinnestWall = uncertainty.Estimate{}
			cs[i].Piston = fit.Piston{Size: exact(mm("66.9"))} // never tight
		}
		e.LeastWall = 0
		for i := range e.Sizes {
			e.Sizes[i].Piston = fit.Piston{}
		}
		e.Clearance = units.Limits{Min: mm("0.025"), Max: mm("0.120")}
		e.WornClearance = 0
		before := choose(t, e, cs)
		worse := slices.Clone(cs)
		d := drawLength(t, "δ", 1, mm("0.2"))
		i := rapid.IntRange(0, len(cs)-1).Draw(t, "which")
		c := &worse[i]
		raised := []*uncertainty.Estimate{&c.Largest, &c.CleanUp.Original.Min, &c.CleanUp.Original.Max, &c.CleanUp.Worn.Min, &c.CleanUp.Worn.Max}
		switch rapid.SampledFrom([]string{"all readings", "worn readings", "honing"}).Draw(t, "what") {
		case "all readings":
			c.Smallest.Value += d
			fallthrough
		case "worn readings":
			for _, x := range raised {
				x.Value += d
			}
		default:
			e.Honing += d
		}
		after := choose(t, e, worse)
		from, sleeved := proven(before)
		to, sleeves := proven(after)
		if sleeved && !sleeves || !sleeved && !sleeves && to < from || after.Route == oversize.HoneAndKeep && before.Route != oversize.HoneAndKeep {
			t.Fatalf("from %+v\nto %+v", before, after)
		}
	})
}

// TestMakersProcess: plated and bare aluminium-silicon walls are never bored, honed or sleeved,
// whatever was measured.
func TestMakersProcess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 4, true)
		e.Wall = rapid.SampledFrom([]oversize.Wall{oversize.Plated, oversize.BareAlSi}).Draw(t, "wall")
		e.OwnSizes = rapid.Bool().Draw(t, "own sizes")
		cs[0].Peeling = rapid.Bool().Draw(t, "peeling")
		got := choose(t, e, cs)
		if got.Route != oversize.MakersProcess {
			t.Fatalf("%+v", got)
		}
		for i, c := range got.Cylinders {
			if c.Route != oversize.MakersProcess || c.Work != "" || c.Aim != 0 || c.Bored != 0 || c.Stock.Max != 0 {
				t.Fatalf("%+v", c)
			}
			peels := slices.ContainsFunc(c.Refused, func(r oversize.Refusal) bool { return r.Reason == oversize.Peeling })
			if peels != cs[i].Peeling {
				t.Fatalf("peeling %v: %v", cs[i].Peeling, c.Refused)
			}
		}
	})
}

// TestOrderDoesNotMatter: cylinders in another order get the same, each its own; the caller's
// data stay as they were; the choice goes to JSON and back.
func TestOrderDoesNotMatter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 4, true)
		e.OwnSizes = rapid.Bool().Draw(t, "own sizes")
		before, err := json.Marshal(struct {
			E oversize.Engine
			C []oversize.Cylinder
		}{e, cs})
		if err != nil {
			t.Fatal(err)
		}
		got := choose(t, e, cs)
		turned := slices.Clone(cs)
		slices.Reverse(turned)
		again := choose(t, e, turned)
		slices.Reverse(again.Cylinders)
		if !reflect.DeepEqual(got.Cylinders, again.Cylinders) || got.Route != again.Route || got.Over != again.Over || got.Otherwise != again.Otherwise {
			t.Fatalf("%+v\n%+v", got, again)
		}
		after, err := json.Marshal(struct {
			E oversize.Engine
			C []oversize.Cylinder
		}{e, cs})
		if err != nil || string(before) != string(after) {
			t.Fatalf("the caller's data changed: %s\n%s", before, after)
		}
		b, err := json.Marshal(got)
		if err != nil {
			t.Fatal(err)
		}
		var back oversize.Choice
		if err := json.Unmarshal(b, &back); err != nil || !reflect.DeepEqual(got, back) {
			t.Fatalf("%s: %v\n%+v\n%+v", b, err, got, back)
		}
	})
}

// TestOwnSizes: cylinders that need not share a size get what each would get alone, at its part
// of the risk.
func TestOwnSizes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 4, true)
		e.OwnSizes = true
		got := choose(t, e, cs)
		for i := range cs {
			alone, err := oversize.Choose(e, cs[i:i+1], uncertainty.Risk{}.Share(len(cs)))
			if err != nil || !reflect.DeepEqual(alone.Cylinders[0], got.Cylinders[i]) {
				t.Fatalf("cylinder %s alone: %+v, %v\ntogether: %+v", cs[i].Name, alone.Cylinders[0], err, got.Cylinders[i])
			}
			if got.Route != oversize.Undecided && (got.Otherwise != oversize.Undecided || got.OtherwiseOver != 0) {
				t.Fatalf("decided for %v, and otherwise %v, %v over", got.Route, got.Otherwise, got.OtherwiseOver)
			}
			if got.Route != oversize.Undecided && got.Cylinders[i].Route > got.Route || got.Cylinders[i].Over > got.Over {
				t.Fatalf("engine %v, %v over, holds %+v", got.Route, got.Over, got.Cylinders[i])
			}
		}
	})
}

// TestAnythingGivesAChoiceOrAnError: whatever stands in the fields, nothing panics, and an
// answer holds no size beyond those of a workshop.
func TestAnythingGivesAChoiceOrAnError(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, cs := drawEngine(t), drawCylinders(t, 2, true)
		odd := rapid.SampledFrom([]units.Length{math.MinInt64, -units.MaxLength, -1, 0, 1, mm("0.03"), mm("67"), units.Metre, units.MaxLength, math.MaxInt64})
		c := &cs[0]
		fields := []*units.Length{
			&e.Nominal, &e.NewBore.Min, &e.NewBore.Max, &e.Service, &e.Clearance.Min, &e.Clearance.Max, &e.WornClearance, &e.MostOver,
			&e.LeastWall, &e.GasketHole, &e.MayShift, &e.Honing, &e.Deglaze, &c.Over, &c.PistonFor, &c.CleanUp.Shift, &c.Piston.Coating,
			&c.Piston.Size.Value, &c.Piston.Size.Std, &c.Largest.Value, &c.Largest.Std, &c.Smallest.Value, &c.Smallest.Std,
			&c.CleanUp.Original.Min.Value, &c.CleanUp.Original.Max.Value, &c.CleanUp.Original.Max.Std, &c.CleanUp.Worn.Max.Value,
			&c.ThinnestWall.Value, &c.ThinnestWall.Std,
		}
		if len(e.Sizes) > 0 {
			fields = append(fields, &e.Sizes[0].Over, &e.Sizes[0].Piston.Size.Value)
		}
		for range rapid.IntRange(1, 3).Draw(t, "odd fields") {
			*rapid.SampledFrom(fields).Draw(t, "field") = odd.Draw(t, "odd")
		}
		e.Wall = oversize.Wall(rapid.Int8Range(-1, 5).Draw(t, "wall"))
		c.Places = rapid.SampledFrom([]int{math.MinInt, -1, 0, math.MaxInt}).Draw(t, "places")
		got, err := oversize.Choose(e, cs, uncertainty.Risk{})
		if err != nil {
			return
		}
		for _, c := range got.Cylinders {
			for _, l := range []units.Length{c.Over, c.Shift, c.Finish.Min, c.Finish.Max, c.Aim, c.Bored, c.Stock.Min, c.Stock.Max, c.WallLeft.Value} {
				if l.Abs() > units.MaxLength {
					t.Fatalf("%+v", c)
				}
			}
		}
	})
}
