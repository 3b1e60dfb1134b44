// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"math"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// millimetres compares a length of a sheet with a sum done here by hand.
func millimetres(t *testing.T, what string, got units.Length, want, within float64) {
	t.Helper()
	if x := got.In(units.Millimetre); math.Abs(x-want) > within {
		t.Errorf("%s: %.5f mm, by hand %.5f mm", what, x, want)
	}
}

// Mean expansions, a kelvin: grey iron G3000 (Callister, Materials Science and Engineering, table B.6), plain and
// gauge steel (Swyt, J. Res. NIST 99 (1994) 31), the eutectic alloy of pistons (from memory, 19 to 20).
const (
	grownIron, grownSteel, grownPiston = 11.2e-6, 11.5e-6, 19.5e-6
)

// TestHotGapByHand: rings at 180 °C in a bore at 120 °C, both of grey iron: the ring grows by 60 K more than the bore
// round its circumference, and the gap closes by that, 0.1657 mm in 78.5 mm. The bore is the mean of the narrowest
// plane, the one at 102 mm.
func TestHotGapByHand(t *testing.T) {
	for i, c := range plan(t, job(t, "pump-finished")).Cylinders {
		for _, r := range c.Rings {
			d := r.Bore.Value.In(units.Millimetre)
			millimetres(t, r.Ring+", the bore", r.Bore.Value, []float64{78.504, 78.500}[i], 0.0005)
			millimetres(t, r.Ring+", closed by", r.Gap.Value-r.Hot.Measured.Value, math.Pi*d*grownIron*(180-120), 1e-5)
		}
	}
}

// TestSleeveByHand: H7 with s6 at 73 mm is +0 to +30 µm with +59 to +78 µm (ISO 286-2, as machine-drawing tables print
// it): 0.029 to 0.078 mm of interference. A barrel of the casting alloy 356.0, 21.5e-6/K (Callister, table B.6), has to be
// warmed until 73 mm has grown by that and by the 0.05 mm to slip in with; its coefficient may be 1e-6/K less.
func TestSleeveByHand(t *testing.T) {
	v := plan(t, job(t, "sleeve-loose")).Sleeve
	if v == nil {
		t.Fatal("no sleeve")
	}
	millimetres(t, "least interference", v.Joint.Interference.Min, 0.029, 1e-9)
	millimetres(t, "greatest interference", v.Joint.Interference.Max, 0.078, 1e-9)
	const grows = (0.078 + 0.05) / 73
	if at := v.Heat.Barrel.Celsius(); at < 20+grows/22.5e-6 || at > 20+1.2*grows/20.5e-6 {
		t.Errorf("heated to %.1f °C, by hand some %.1f °C", at, 20+grows/21.5e-6)
	}
	if v.Heat.Slips != uncertainty.Within {
		t.Errorf("at that heat it slips home: %v", v.Heat.Slips)
	}
	// At 140 °C in work aluminium has outgrown iron by 73 mm · 10.3e-6/K · 120 K = 0.090 mm, more than the
	// greatest interference.
	if v.Running.Grips == uncertainty.Within {
		t.Error("it is said to grip in work")
	}
}

// TestSleeveCutsByHand: the seat is cut from the smallest reading, 78.200 mm, to 83 mm, 0.15 mm deep at most, that is 16
// rough cuts, and not honed; the sleeve, once in, from where it stands smallest to the 0.06 mm that the hone has.
func TestSleeveCutsByHand(t *testing.T) {
	j := job(t, "sleeve")
	s := plan(t, j)
	c := s.Cylinders[0]
	for _, v := range []struct {
		what             string
		list             []oversize.Operation
		from, bored, to  float64
		operations, cuts int
	}{{"seat", c.Seat, 78.200, 83, 83, 3, 16}, {"sleeve", c.Stock, s.Sleeve.Hone.Fitted.Min.In(units.Millimetre), 78.44, 78.5035, 5, 1}} {
		if len(v.list) != v.operations || v.list[0].Passes != v.cuts {
			t.Fatalf("%s: %v", v.what, v.list)
		}
		at := v.list[0].Before
		millimetres(t, v.what+" from", at, v.from, 6e-4) // 78.2 mm of steel grows by no more in the 0.6 K between setting and use
		for _, o := range v.list {
			if o.Before != at || o.After-o.Before != o.Stock {
				t.Errorf("%s, %s: %v to %v, stock %v, after %v", v.what, o.Kind, o.Before, o.After, o.Stock, at)
			}
			at = o.After
			if o.Kind == oversize.FinishBore {
				millimetres(t, v.what+" bored", at, v.bored, 1e-9)
			}
		}
		millimetres(t, v.what+" to", at, v.to, 1e-9)
	}
	j.Cylinders[0].SleeveFitted = jobsheet.SleeveFitted{
		Seat: jobsheet.Measured{Value: 83 * units.Millimetre, Expanded: 4 * units.Micrometre}, Outside: jobsheet.Measured{Value: 83050 * units.Micrometre, Expanded: 4 * units.Micrometre},
	}
	if in := plan(t, j).Cylinders[0]; in.Seat != nil || len(in.Stock) != 5 {
		t.Errorf("the sleeve is in: seat %v, sleeve %v", in.Seat, in.Stock)
	}
	j.Cuts.MostDepth = 0
	if in := plan(t, j).Cylinders[0]; in.Seat != nil || in.Stock != nil {
		t.Error("cut without a depth of cut")
	}
}

// TestBoringStopCleansUp: where a hundredth less would fall below what was shown to clean up, the least finished bore less
// the allowance, it is bored to what the allowance leaves.
func TestBoringStopCleansUp(t *testing.T) {
	j := job(t, "pump")
	j.Engine.Limits.PistonClearance = units.Limits{Min: 56 * units.Micrometre, Max: 59 * units.Micrometre}
	for _, c := range plan(t, j).Choice.Cylinders {
		least := c.Finish.Min - j.Engine.HoningAllowance
		if c.Bored < least || c.Bored != c.Aim-j.Engine.HoningAllowance || c.Bored.Floor(10*units.Micrometre) >= least {
			t.Errorf("bored to %v of %v at the least, %v in all", c.Bored, least, c.Finish)
		}
	}
}

// TestGritByHand: of the seven lines on the last honing two name silicon carbide for one facing and none other, three no
// facing; the maker who names a band has 180 to 220 (the table in package hone has the sources).
func TestGritByHand(t *testing.T) {
	for _, v := range []struct {
		facing string
		grit   int
		says   string
	}{
		{"", 180, "for any facing of the top ring sources name 180 to 220, 220, 280, 320, 320 to 400; yours, 180, is named by 1 of 7."},
		{"plain iron", 220, "for a top ring of plain iron sources name 180 to 220, 220, 320; yours, 220, is named by 3 of 4."},
		{"molybdenum", 300, "for a top ring of molybdenum sources name 180 to 220, 220, 280, 320, 320 to 400; yours, 300, is named by 0 of 5."},
		{"chromium", 0, "for a top ring of chromium sources name 180 to 220, 220, 320. They disagree"},
	} {
		j := job(t, "pump")
		j.Engine.Rings[0].Facing, j.Tools.Grit = v.facing, v.grit
		text := unbroken(asPrinted(t, plan(t, j)))
		if !strings.Contains(text, "Grit of the last honing: "+v.says) || !strings.Contains(text, "print Ra 0.38 to 4.00 µm") {
			t.Errorf("%q, %d: not %q", v.facing, v.grit, v.says)
		}
	}
}

// TestPressByHand: friction · pressure · π · 83 mm · 118 mm, friction 0.05 to 0.3.
func TestPressByHand(t *testing.T) {
	j := job(t, "sleeve")
	v := plan(t, j).Sleeve
	area := math.Pi * 83 * 118
	for _, f := range []struct{ got, want float64 }{
		{v.Press.Min.In(units.Newton), 0.05 * area * v.Fit.Pressure.Min.In(units.Megapascal)},
		{v.Press.Max.In(units.Newton), 0.3 * area * v.Fit.Pressure.Max.In(units.Megapascal)},
	} {
		if math.Abs(f.got/f.want-1) > 1e-9 {
			t.Errorf("pressed home with %.1f N, by hand %.1f N", f.got, f.want)
		}
	}
	j.Engine.Layout.Length = 0
	if v := plan(t, j).Sleeve; v.Press.Max != 0 {
		t.Errorf("pressed over no length with %v", v.Press)
	}
}

// TestWarmSizeByHand: what the dial shows of 78.44 mm, 0.06 mm and what a boring tool is not set to below the middle of the finish window, in iron at
// 35 °C: the gauge was set at 22.5 °C on a ring of 78.003 mm at 22 °C, and its rod is at 23 °C.
func TestWarmSizeByHand(t *testing.T) {
	s := plan(t, job(t, "pump"))
	ring := 78.003 * (1 + grownSteel*(22-20))
	rod := ring * grownSteel * (23 - 22.5)
	warm := func(size, at float64) float64 { return size*(1+grownIron*(at-20)) - ring - rod }
	seen := 0
	for _, w := range s.Cylinders[1].Warm { // cylinder 1 is bored
		if w.Operation == oversize.FinishBore {
			seen++
			// The window is 78.446 mm, the middle piston of three, with 0.045 to 0.070 mm.
			millimetres(t, "size to bore to", w.Size, math.Floor(100*(78.446+0.0575-0.06))/100, 1e-9)
			millimetres(t, "shows", w.Shows, warm(78.44, 35), 2e-5)
		}
	}
	for _, d := range s.Cylinders[1].Dial {
		if d.Operation == oversize.FinishBore {
			seen++
			millimetres(t, "on the dial", d.Shows, 78.44-78.003, 2e-5)
		}
	}
	if seen != 2 {
		t.Errorf("%d sizes", seen)
	}
}

// TestDialTurnsRound: on a gauge whose plus is a smaller bore, every size to stop at shows with the other sign, cold and warm.
func TestDialTurnsRound(t *testing.T) {
	j := job(t, "pump")
	usual := plan(t, j)
	j.Gauge.Dial = bore.PlusIsSmaller
	turned := plan(t, j)
	seen := 0
	for i, c := range usual.Cylinders {
		for _, pair := range [][2][]jobsheet.GaugeSize{{c.Warm, turned.Cylinders[i].Warm}, {c.Dial, turned.Cylinders[i].Dial}} {
			for k, u := range pair[0] {
				seen++
				if v := pair[1][k]; u.Shows == 0 || v.Shows != -u.Shows || v.Size != u.Size {
					t.Errorf("cylinder %d, %s: %v and %v", i+1, u.Operation, u, v)
				}
			}
		}
	}
	if seen != 12 { // 3 and 5 warm, 2 and 2 cold
		t.Errorf("%d sizes", seen)
	}
}

// TestRunningClearanceByHand: 60.5035 mm of iron at 135 °C, the least that its 150 ± 15 °C may be, and 60.431 mm of piston
// at 188 °C, the most: 0.0725 mm of clearance becomes −0.0475 mm.
func TestRunningClearanceByHand(t *testing.T) {
	c := plan(t, job(t, "two-stroke")).Cylinders[0]
	for _, k := range c.Clearances {
		if k.At != "at the size to work to" {
			continue
		}
		millimetres(t, "cold", k.Size.Value, 60.5035-60.431, 1e-9)
		millimetres(t, "running", k.Hot.Value, 60.5035*(1+grownIron*(135-20))-60.431*(1+grownPiston*(188-20)), 1e-5)
		return
	}
	t.Errorf("no clearance at the size to work to: %+v", c.Clearances)
}

// TestRatioByHand: 58 mm of stroke in 67 mm over a chamber of 28 cm³, of which a crown takes 1.5, with 0.2 mm of deck and
// 1.1 mm of gasket over its hole of 69 mm.
func TestRatioByHand(t *testing.T) {
	const quarter = math.Pi / 4
	swept, space := quarter*6.7*6.7*5.8, 28-1.5+quarter*(6.7*6.7*0.02+6.9*6.9*0.11)
	if got, want := plan(t, job(t, "keep")).Cylinders[0].Before.Ratio, (swept+space)/space; math.Abs(got-want) > 1e-9 {
		t.Errorf("ratio %v, by hand %v", got, want)
	}
}
