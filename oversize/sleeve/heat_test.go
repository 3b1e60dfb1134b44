// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// slipped checks that an answer gives the slip to its worst pair of parts and to no less.
func slipped(t *rapid.T, j sleeve.Joint, slip units.Length, a sleeve.Assembly) {
	t.Helper()
	near(t, "least clearance, pm", float64(a.Clearance.Min), float64(slip), 3)
	if a.Slips != uncertainty.Within {
		t.Fatalf("slips: %v at %+v", a.Slips, a)
	}
	// Any joint of the ranges slips at these temperatures.
	s := must(inside(t, j).Slips(sleeve.Assembling{Sleeve: a.Sleeve, Barrel: a.Barrel, Stands: 1200}))
	holds(t, "clearance", a.Clearance, s.Clearance, 2)
}

// TestHeatingGivesTheSlip: heated, chilled or both, the worst pair has the slip asked for, which
// is checked by the forward question; cooled again, the joint is as it was.
func TestHeatingGivesTheSlip(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		a := sleeve.Assembling{Slip: lengthBetween(t, "slip", 0, j.Seat/1000), Stands: 1200, Sleeve: room, Barrel: room}
		before := must(j.Fit())
		a.Sleeve = celsius(t, "Ts", -80, 60)
		hot, err := j.HeatTo(a)
		switch {
		case err == nil && hot.Barrel > units.ReferenceTemperature:
			slipped(t, j, a.Slip, hot)
			if hot.Sleeve != must(units.Celsius(math.Round(a.Sleeve.Celsius()*1e9)/1e9)) {
				near(t, "sleeve", float64(hot.Sleeve), float64(a.Sleeve), 1e-9)
			}
		case err == nil:
			if hot.Clearance.Min < a.Slip {
				t.Fatalf("no heat, yet only %v of %v", hot.Clearance.Min, a.Slip)
			}
		case !errors.Is(err, sleeve.ErrUnreachable) && !errors.Is(err, sleeve.ErrTooHot):
			t.Fatal(err)
		}
		a.Sleeve, a.Barrel = 0, celsius(t, "Tb", 20, 300)
		cold, err := j.ChillTo(a)
		switch {
		case err == nil && cold.Sleeve < units.ReferenceTemperature:
			slipped(t, j, a.Slip, cold)
		case err == nil:
			if cold.Clearance.Min < a.Slip {
				t.Fatalf("no cold, yet only %v of %v", cold.Clearance.Min, a.Slip)
			}
		case !errors.Is(err, sleeve.ErrUnreachable):
			t.Fatal(err)
		}
		both, err := j.TakeOut(a)
		switch {
		case err == nil:
			slipped(t, j, a.Slip, both)
			if both.Sleeve != both.Barrel || (both.Barrel > units.ReferenceTemperature) != (j.Barrel.Expansion > j.Sleeve.Expansion) {
				t.Fatalf("together: %+v", both)
			}
		case !errors.Is(err, sleeve.ErrUnreachable) && !errors.Is(err, sleeve.ErrTooHot):
			t.Fatal(err)
		}
		if after := must(j.Stresses(sleeve.Warm{Sleeve: room, Barrel: room})); after != before {
			t.Fatalf("after cooling %+v, before %+v", after, before)
		}
	})
}

// TestMoreSlipMoreHeat: more slip, a warmer sleeve and more interference each ask for no less
// heat.
func TestMoreSlipMoreHeat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		a := sleeve.Assembling{Slip: lengthBetween(t, "slip", 0, j.Seat/1000), Sleeve: celsius(t, "Ts", -80, 60), Stands: 1270, Barrel: room}
		more := a
		more.Slip += lengthBetween(t, "more slip", 0, j.Seat/1000)
		more.Sleeve += units.Temperature(rapid.Float64Range(0, 50).Draw(t, "warmer"))
		tighter := j
		tighter.Interference.Max += lengthBetween(t, "tighter", 0, j.Seat/1000)
		one, err := j.HeatTo(a)
		two, err2 := tighter.HeatTo(more)
		if err != nil && err2 == nil || err == nil && err2 == nil && two.Barrel < one.Barrel-1e-9 {
			t.Fatalf("%+v, %v; more: %+v, %v", one, err, two, err2)
		}
	})
}

// TestLoosensWhereTheGripGoes: at the temperature that Loosens gives, the interference that At
// gives is just gone, whatever difference of temperature the parts start with; a little short of
// it the joint grips.
func TestLoosensWhereTheGripGoes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := exactJoint(t)
		c := sleeve.Warm{Sleeve: celsius(t, "Ts", 0, 250), Barrel: celsius(t, "Tb", 0, 250)}
		l := must(j.LooseAt(c))
		if l.Hot.Min != l.Hot.Max || l.Cold.Min != l.Cold.Max {
			t.Fatalf("an exact joint has a range: %+v", l)
		}
		if must(j.Stresses(c)).Grips == uncertainty.Beyond {
			near(t, "already loose, hot", float64(l.Hot.Min), float64(c.Barrel), 1e-9)
			near(t, "already loose, cold", float64(l.Cold.Min), float64(c.Barrel), 1e-9)
			return
		}
		for _, at := range []units.Temperature{l.Hot.Min, l.Cold.Min} {
			rise := at.Sub(c.Barrel)
			if at.IsZero() || c.Sleeve.Add(rise) <= 1 || c.Sleeve.Add(rise) > 1273 {
				continue
			}
			// The temperature is rounded to 1e-9 K, of which a length of 200 mm grows 5e-6 nm.
			s := must(j.Stresses(sleeve.Warm{Sleeve: c.Sleeve.Add(rise), Barrel: at}))
			near(t, "interference, pm", float64(s.Interference.Min), 0, 3)
			back := units.TemperatureChange(0.01) // K
			if rise < 0 {
				back = -back
			}
			s = must(j.Stresses(sleeve.Warm{Sleeve: c.Sleeve.Add(rise - back), Barrel: at.Add(-back)}))
			if math.Abs(float64(rise)) > 0.02 && math.Abs(float64(j.Barrel.Expansion-j.Sleeve.Expansion)) > 1e-7 && s.Grips != uncertainty.Within {
				t.Fatalf("loose before %v: %+v", at, s.Interference)
			}
		}
	})
}

// TestLooseningHoldsEveryJoint: a joint inside the ranges goes loose no sooner than the range can
// and no later than it surely has.
func TestLooseningHoldsEveryJoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		c := sleeve.Warm{Sleeve: celsius(t, "Ts", 0, 250), Barrel: celsius(t, "Tb", 0, 250)}
		r, l := must(j.LooseAt(c)), must(inside(t, j).LooseAt(c))
		const tol = 1e-6 // K
		if can, at := r.Hot.Min, l.Hot.Min; !at.IsZero() && (can.IsZero() || at < can-tol) {
			t.Fatalf("hot: %v before %v", at, can)
		}
		if surely, at := r.Hot.Max, l.Hot.Max; !surely.IsZero() && (at.IsZero() || at > surely+tol) {
			t.Fatalf("hot: %v after %v", at, surely)
		}
		if can, at := r.Cold.Max, l.Cold.Max; !at.IsZero() && (can.IsZero() || at > can+tol) {
			t.Fatalf("cold: %v before %v", at, can)
		}
		if surely, at := r.Cold.Min, l.Cold.Min; !surely.IsZero() && (at.IsZero() || at < surely-tol) {
			t.Fatalf("cold: %v after %v", at, surely)
		}
	})
}

// TestLoosensEitherWay: a spread of coefficients that reaches both sides lets the joint go hot or
// cold, and in neither direction surely. The caution looks at the first temperature of both.
func TestLoosensEitherWay(t *testing.T) {
	j := demoJoint()
	j.Interference = exactly(10 * um)
	j.Sleeve.Expansion, j.Sleeve.Within = 12e-6, 1.5e-6
	j.Barrel.Expansion, j.Barrel.Within = 11.5e-6, 1e-6
	l := must(j.LooseAt(sleeve.Warm{Sleeve: room, Barrel: room}))
	// 10 µm over 73 mm and 2e-6/K hot, 3e-6/K cold: +68.5 K, -45.7 K (computed).
	close64(t, "hot, °C", l.Hot.Min.Celsius(), 88.5, 0.1)
	close64(t, "cold, °C", l.Cold.Max.Celsius(), -25.7, 0.1)
	if !l.Hot.Max.IsZero() || !l.Cold.Min.IsZero() {
		t.Errorf("surely: %+v", l)
	}
	if !l.Cautions.Has(sleeve.CoefficientRange) {
		t.Errorf("no caution at %v", l.Cold.Max)
	}
	j.Sleeve.From, j.Barrel.From = 223.15, 223.15 // -50 °C
	if l := must(j.LooseAt(sleeve.Warm{Sleeve: room, Barrel: room})); l.Cautions != 0 {
		t.Errorf("cautions %v", l.Cautions)
	}
}

// TestHotterSleeveHelps: a sleeve hotter than its barrel leaves more margin.
func TestHotterSleeveHelps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		c := sleeve.Warm{Sleeve: celsius(t, "Ts", 20, 200), Barrel: celsius(t, "Tb", 20, 200)}
		hotter := c
		hotter.Sleeve += units.Temperature(rapid.Float64Range(0.001, 50).Draw(t, "hotter"))
		a, b := must(j.LooseAt(c)), must(j.LooseAt(hotter))
		if !b.Hot.Min.IsZero() && (a.Hot.Min.IsZero() || b.Hot.Min < a.Hot.Min-1e-9) {
			t.Fatalf("sleeve at %v: loose at %v; at %v: %v", c.Sleeve, a.Hot.Min, hotter.Sleeve, b.Hot.Min)
		}
	})
}

// TestGrowthIsTheBore: the size of the bore from its composite coefficient is that of the sleeve
// grown by itself less what At says it closes in, gripped or loose.
func TestGrowthIsTheBore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := exactJoint(t)
		at := celsius(t, "T", -100, 400)
		dT := float64(at.AboveReference())
		g, s, cold := must(j.Growth(at)), must(j.Stresses(sleeve.Warm{Sleeve: at, Barrel: at})), must(j.Fit())
		d20 := float64(j.Bore - cold.BoreCloses.Min)
		want := float64(j.Bore)*(1+float64(j.Sleeve.Expansion)*dT) - float64(s.BoreCloses.Min)
		near(t, "bore, pm", d20*(1+float64(g.Expansion)*dT), want, 3)
		if g.Within != 0 {
			t.Fatalf("%+v", g)
		}
		warm := must(g.SizeAt(units.Length(math.Round(d20)), at))
		near(t, "warm size, pm", float64(warm), want, 3)
	})
}

// TestGrowthBetween: while the joint grips, its bore grows between the two coefficients exactly
// where (Ei/Eo)·(Ko + νo) is above 1 + νi; the far side is a soft sleeve in a stiff barrel.
func TestGrowthBetween(t *testing.T) {
	between, beyond := 0, 0
	growsBetween := func(t *rapid.T, softInStiff bool) {
		j := exactJoint(t)
		if softInStiff { // in a thick barrel it is on the far side
			j.Sleeve.Young, j.Barrel.Young = 60e9, 220e9
			j.Outer = plain(2 * j.Seat)
		}
		b, c := j.Outer.Min.In(mm), j.Seat.In(mm)
		ko := (b*b + c*c) / (b*b - c*c)
		lhs := float64(j.Sleeve.Young/j.Barrel.Young) * (ko + j.Barrel.Poisson)
		g := must(j.Growth(room))
		lo, hi := j.Sleeve.Expansion, j.Barrel.Expansion
		if lo > hi {
			lo, hi = hi, lo
		}
		if hi-lo < 1e-6 || math.Abs(float64(g.Expansion-j.Barrel.Expansion)) < 0.003*float64(hi-lo) {
			return // too near to call: the interference itself is 0.2 % of the seat
		}
		is := g.Expansion >= lo && g.Expansion <= hi
		if is != (lhs > 1+j.Sleeve.Poisson) {
			t.Fatalf("%v with %v and %v, (Ei/Eo)(Ko+νo) = %v, 1+νi = %v", g.Expansion, lo, hi, lhs, 1+j.Sleeve.Poisson)
		}
		if is {
			between++
		} else {
			beyond++
		}
	}
	for _, soft := range []bool{false, true} {
		rapid.Check(t, func(t *rapid.T) { growsBetween(t, soft) })
	}
	if between == 0 || beyond == 0 {
		t.Errorf("%d between, %d beyond: one side was never tried", between, beyond)
	}
}

// TestGrowthHoldsEveryJoint: a joint inside the ranges grows within the range of its coefficient.
func TestGrowthHoldsEveryJoint(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := rangedJoint(t)
		if rapid.Bool().Draw(t, "soft in stiff") { // where the size has its kink
			j.Sleeve.Young, j.Barrel.Young = 60e9, 220e9
			j.Interference.Max = lengthBetween(t, "little", 1, 20*um)
			j.Interference.Min = min(j.Interference.Min, j.Interference.Max)
		}
		at := celsius(t, "T", -100, 400)
		r, g := must(j.Growth(at)), must(inside(t, j).Growth(at))
		// What the interference does to the coefficients is of the second order and left out of the range.
		window := float64(j.Interference.Max-min(0, j.Interference.Min)) / float64(j.Seat)
		apart := math.Abs(float64(j.Barrel.Expansion-j.Sleeve.Expansion)) + float64(j.Barrel.Within+j.Sleeve.Within)
		tol := 3e-15 + window*apart
		near(t, "mean", float64(g.Expansion), float64(r.Expansion), float64(r.Within)+tol)
	})
}

// TestGrowthIsContinuous: where the grip goes, the mean coefficient goes on without a jump.
func TestGrowthIsContinuous(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := exactJoint(t)
		at := must(j.LooseAt(sleeve.Warm{Sleeve: room, Barrel: room})).Hot.Min
		if at.IsZero() || at < 295 || at > 1200 {
			return
		}
		short, past := must(j.Growth(at-1e-4)), must(j.Growth(at+1e-4))
		near(t, "mean", float64(short.Expansion), float64(past.Expansion), 2e-4*30e-6)
	})
}

// TestSlipsVerdicts: the three answers to whether an oven of one temperature does.
func TestSlipsVerdicts(t *testing.T) {
	j := demoJoint()
	j.Interference.Min = 40 * um
	for _, tt := range []struct {
		slip units.Length
		want uncertainty.Verdict
	}{
		// At 90 °C the seat has grown by 0.10987 mm (73 mm, 21.5e-6/K, 70 K): a clearance of 0.04987
		// to 0.06987 mm.
		{0, uncertainty.Within},
		{49 * um, uncertainty.Within},
		{50 * um, uncertainty.Undecided},
		{69 * um, uncertainty.Undecided},
		{70 * um, uncertainty.Beyond},
	} {
		a := must(j.Slips(sleeve.Assembling{Slip: tt.slip, Barrel: must(units.Celsius(90)), Sleeve: room}))
		if a.Slips != tt.want || a.Clearance.Min.Round(units.Nanometre*10) != 49870*units.Nanometre || a.Clearance.Max.Round(units.Nanometre*10) != 69870*units.Nanometre {
			t.Errorf("slip %v: %v, clearance %v; want %v", tt.slip, a.Slips, a.Clearance, tt.want)
		}
	}
	if a := must(j.Slips(sleeve.Assembling{Sleeve: room, Barrel: room})); a.Slips != uncertainty.Beyond || a.Clearance.Min != -60*um || a.Clearance.Max != -40*um {
		t.Errorf("cold: %+v", a)
	}
}

// TestTemperIsAluminium: only a part of aluminium loses its temper in an oven, whichever part it is.
func TestTemperIsAluminium(t *testing.T) {
	hot, cold := must(units.Celsius(150)), must(units.Celsius(20))
	for _, tt := range []struct {
		sleeve, barrel     material.Material
		sleeveAt, barrelAt units.Temperature
		want               bool
	}{
		{demoIron(), demoAluminium(), cold, hot, true},
		{demoIron(), demoIron(), cold, hot, false},
		{demoAluminium(), demoIron(), cold, hot, false},
		{demoAluminium(), demoIron(), hot, cold, true},
		{demoIron(), demoAluminium(), hot, cold, false},
	} {
		j := demoJoint()
		j.Sleeve, j.Barrel = tt.sleeve, tt.barrel
		a := must(j.Slips(sleeve.Assembling{Sleeve: tt.sleeveAt, Barrel: tt.barrelAt}))
		if got := a.Cautions.Has(sleeve.TemperLost); got != tt.want || !a.Cautions.Has(sleeve.HotParts) {
			t.Errorf("%s in %s: %v", tt.sleeve.Name, tt.barrel.Name, a.Cautions)
		}
	}
	// Every metal of the library is on its side of the line.
	for _, name := range material.Names() {
		m := must(material.ByName(name))
		j := demoJoint()
		j.Barrel = m
		a := must(j.Slips(sleeve.Assembling{Barrel: hot, Sleeve: room}))
		if light := strings.Contains(name, "aluminium"); a.Cautions.Has(sleeve.TemperLost) != light {
			t.Errorf("%s: %v", name, a.Cautions)
		}
	}
}
