// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"errors"
	"math"
	"math/rand/v2"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func drawLength(t *rapid.T, name string, from, to units.Length) units.Length {
	return units.Length(rapid.Int64Range(int64(from), int64(to)).Draw(t, name))
}

func drawWindow(t *rapid.T) units.Limits {
	least := drawLength(t, "least clearance", 1, mm("0.1"))
	return units.Limits{Min: least, Max: drawLength(t, "greatest clearance", least, mm("0.2"))}
}

// TestFinishedInsideIsClear: exactly the bores inside the finish window have a clearance inside
// the clearance window.
func TestFinishedInsideIsClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := fit.Piston{Size: exact(drawLength(t, "piston", mm("20"), mm("200"))), Coating: drawLength(t, "coating", 0, mm("0.1"))}
		clearance := drawWindow(t)
		w, err := fit.FinishWindow(p, clearance)
		if err != nil {
			t.Fatal(err)
		}
		bore := drawLength(t, "bore", w.Min-mm("0.1"), w.Max+mm("0.1"))
		c, err := fit.Clearance(exact(bore), p)
		if err != nil || c.Std != 0 || clearance.Contains(c.Value) != w.Contains(bore) {
			t.Fatalf("bore %v in %v: clearance %v in %v, %v", bore, w, c, clearance, err)
		}
	})
}

// TestAimKeepsItsGuard: no aim leaves the window or comes nearer to its tight end than the guard;
// the tight aim is the least of those.
func TestAimKeepsItsGuard(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, err := drawWindow(t).Shift(mm("67"))
		if err != nil {
			t.Fatal(err)
		}
		guard := drawLength(t, "guard", 0, mm("0.2"))
		centre, cerr := fit.AimIn(w, guard, fit.Centre)
		tight, terr := fit.AimIn(w, guard, fit.Tight)
		if narrow := guard > w.Max-w.Min; narrow {
			if !errors.Is(cerr, fit.ErrNarrow) || !errors.Is(terr, fit.ErrNarrow) {
				t.Fatalf("guard %v in %v: %v, %v", guard, w, cerr, terr)
			}
			return
		}
		middle, _ := w.Middle()
		switch {
		case cerr != nil || terr != nil:
			t.Fatal(cerr, terr)
		case tight != w.Min+guard || centre < tight || centre > w.Max || centre < middle:
			t.Fatalf("guard %v in %v: centre %v, tight %v", guard, w, centre, tight)
		case centre > middle && centre != tight:
			t.Fatalf("centre %v beyond the middle of %v without need", centre, w)
		}
	})
}

// TestClearanceDoubt: the doubts of bore and piston add in squares, and the clearance is as
// sure as the surer combination of their degrees of freedom allows.
func TestClearanceDoubt(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		estimate := func(name string) uncertainty.Estimate {
			return uncertainty.Estimate{
				Value: drawLength(t, name, mm("60"), mm("70")), Std: drawLength(t, name+"'s doubt", 1, mm("0.01")),
				DoF: rapid.Float64Range(1, 50).Draw(t, name+"'s degrees of freedom"),
			}
		}
		b, p := estimate("bore"), estimate("piston")
		c, err := fit.Clearance(b, fit.Piston{Size: p})
		if err != nil {
			t.Fatal(err)
		}
		if want := math.Hypot(float64(b.Std), float64(p.Std)); math.Abs(float64(c.Std)-want) > 1 {
			t.Fatalf("std %v; want %v pm", c.Std, want)
		}
		if c.DoF < min(b.DoF, p.DoF)*(1-1e-9) || c.DoF > (b.DoF+p.DoF)*(1+1e-9) {
			t.Fatalf("degrees of freedom %v of %v and %v", c.DoF, b.DoF, p.DoF)
		}
	})
}

// TestWarm: at 20 °C nothing changes; with one expansion and one temperature the clearance
// grows as any length does; a warmer piston only closes it and a warmer bore only opens it.
func TestWarm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bore := uncertainty.Estimate{Value: drawLength(t, "bore", mm("40"), mm("120")), Std: drawLength(t, "doubt", 0, mm("0.01"))}
		p := fit.Piston{Size: exact(bore.Value - drawLength(t, "clearance", 0, mm("0.2")))}
		a := rapid.Float64Range(5, 25).Draw(t, "expansion")
		at := kelvins(units.TemperatureChange(rapid.Float64Range(-60, 200).Draw(t, "above 20 °C")))
		cold, err := fit.Clearance(bore, p)
		if err != nil {
			t.Fatal(err)
		}
		w := fit.Warm{BoreAt: units.ReferenceTemperature, PistonAt: units.ReferenceTemperature, Bore: grows(a), Piston: grows(a)}
		if c, err := w.HotClearance(bore, p); err != nil || c.Value != cold.Value || !near(c.Std, cold.Std, 1) {
			t.Fatalf("at 20 °C: %v, %v; want %v", c, err, cold)
		}
		w.BoreAt, w.PistonAt = at, at
		same, err := w.HotClearance(bore, p)
		grown, gerr := w.Bore.SizeAt(cold.Value, at)
		if err != nil || gerr != nil || !near(same.Value, grown, 2) {
			t.Fatalf("all at %v: %v, %v; want %v", at, same.Value, err, grown)
		}
		w.PistonAt = at.Add(10)
		warmer, err := w.HotClearance(bore, p)
		if err != nil || warmer.Value >= same.Value {
			t.Fatalf("piston warmer: %v, %v; was %v", warmer.Value, err, same.Value)
		}
		w.Bore.Within, w.BoreAt = 1e-6, kelvins(80)
		doubtful, err := w.HotClearance(bore, p)
		if err != nil || doubtful.Std <= cold.Std {
			t.Fatalf("spread of expansion: %v, %v; cold %v", doubtful, err, cold)
		}
	})
}

// TestMatchIsBest compares the matching with all others, for up to 7 bores, and spare pistons.
func TestMatchIsBest(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		bores, pistons, window := drawSizes(t, 7)
		got, err := fit.Match(bores, pistons, window)
		if err != nil {
			t.Fatal(err)
		}
		best, inside := bruteForce(bores, pistons, window)
		sum, allInside := 0.0, true
		used := map[int]bool{}
		middle, _ := window.Middle()
		for i, f := range got.Pairs {
			if f.Bore != i || used[f.Piston] || f.Clearance != bores[i]-pistons[f.Piston] || f.Inside != window.Contains(f.Clearance) {
				t.Fatalf("pair %d of %+v", i, got)
			}
			if n := got.ByNumber[i]; n.Bore != i || n.Piston != i || n.Clearance != bores[i]-pistons[i] {
				t.Fatalf("by number %d of %+v", i, got)
			}
			used[f.Piston] = true
			allInside = allInside && f.Inside
			d := (f.Clearance - middle).In(units.Micrometre)
			sum += d * d
		}
		want := best
		if !math.IsInf(inside, 1) {
			if !allInside {
				t.Fatalf("%+v leaves the window, and need not", got)
			}
			want = inside
		}
		if sum > want*(1+1e-9)+1e-9 {
			t.Fatalf("sum of squares %v, best %v: %+v", sum, want, got)
		}
		rms := math.Sqrt(sum / float64(len(bores)))
		if math.Abs(rms-got.Off.In(units.Micrometre)) > 1e-4 {
			t.Fatalf("off by %v; want %v µm", got.Off, rms)
		}
		if got.Off > got.OffByNumber && len(pistons) == len(bores) {
			t.Fatalf("matching by number is better: %+v", got)
		}
	})
}

func drawSizes(t *rapid.T, most int) (bores, pistons []units.Length, window units.Limits) {
	n := rapid.IntRange(1, most).Draw(t, "bores")
	for range n {
		bores = append(bores, mm("67")+units.Length(rapid.IntRange(0, 40).Draw(t, "bore"))*units.Micrometre)
	}
	for range n + rapid.IntRange(0, 2).Draw(t, "spare pistons") {
		pistons = append(pistons, mm("66.96")+units.Length(rapid.IntRange(0, 40).Draw(t, "piston"))*units.Micrometre)
	}
	return bores, pistons, units.Limits{Min: 20 * units.Micrometre, Max: 60 * units.Micrometre}
}

// bruteForce returns the least sum of squares in µm² over all matchings, and over those that
// stay inside the window; infinite where there is none.
func bruteForce(bores, pistons []units.Length, window units.Limits) (best, inside float64) {
	best, inside = math.Inf(1), math.Inf(1)
	middle, _ := window.Middle()
	used := make([]bool, len(pistons))
	var try func(bore int, sum float64, in bool)
	try = func(bore int, sum float64, in bool) {
		if bore == len(bores) {
			best = min(best, sum)
			if in {
				inside = min(inside, sum)
			}
			return
		}
		for p := range pistons {
			if used[p] {
				continue
			}
			used[p] = true
			c := bores[bore] - pistons[p]
			d := (c - middle).In(units.Micrometre)
			try(bore+1, sum+d*d, in && window.Contains(c))
			used[p] = false
		}
	}
	try(0, 0, true)
	return best, inside
}

// TestMatchLarge: solving the assignment agrees with sorting, which is best where no piston is spare; spare
// ones that are of no use change nothing.
func TestMatchLarge(t *testing.T) {
	rng := rand.New(rand.NewPCG(1, 2))
	var bores, pistons []units.Length
	for range 60 {
		bores = append(bores, mm("67")+units.Length(rng.IntN(40_000))*units.Nanometre)
		pistons = append(pistons, mm("66.965")+units.Length(rng.IntN(40_000))*units.Nanometre)
	}
	before := slices.Clone(bores)
	sorted, err := fit.Match(bores, pistons, window)
	if err != nil {
		t.Fatal(err)
	}
	for i := range 20 {
		pistons = slices.Insert(pistons, 3*i, mm("60")+units.Length(i))
	}
	solved, err := fit.Match(bores, pistons, window)
	if err != nil || solved.Off != sorted.Off {
		t.Errorf("off by %v, sorted %v, %v", solved.Off, sorted.Off, err)
	}
	if !slices.Equal(before, bores) {
		t.Error("the caller's bores were moved")
	}
}

// Whatever piston the window of a bore allows has a clearance inside at the smallest and the largest
// place, one step more of it does not; a bore of one size turns FinishWindow about.
func TestPistonWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		um := func(name string, lo, hi int) units.Length {
			return units.Length(rapid.IntRange(lo, hi).Draw(t, name)) * units.Micrometre
		}
		clearance := units.Limits{Min: um("least", 1, 60)}
		clearance.Max = clearance.Min + um("width", 0, 60)
		bore := units.Limits{Min: um("bore", 30_000, 200_000)}
		bore.Max = bore.Min + um("form", 0, 80)
		w, err := fit.PistonWindow(bore, clearance)
		if bore.Max-bore.Min > clearance.Max-clearance.Min {
			if !errors.Is(err, fit.ErrNarrow) {
				t.Fatal(w, err)
			}
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		for _, skirt := range []units.Length{w.Min, w.Max} {
			if bore.Min-skirt < clearance.Min || bore.Max-skirt > clearance.Max {
				t.Fatalf("a skirt of %v in %v", skirt, bore)
			}
		}
		if bore.Max-(w.Min-1) <= clearance.Max || bore.Min-(w.Max+1) >= clearance.Min {
			t.Fatalf("window %v is too narrow", w)
		}
		if bore.Min == bore.Max {
			back, err := fit.FinishWindow(fit.Piston{Size: uncertainty.Estimate{Value: w.Max}}, clearance)
			if err != nil || back.Min != bore.Min {
				t.Fatal(back, err)
			}
		}
	})
}

func TestPistonWindowRefuses(t *testing.T) {
	mm := units.Millimetre
	window := units.Limits{Min: 40 * units.Micrometre, Max: 70 * units.Micrometre}
	for _, c := range []struct {
		bore, window units.Limits
		want         error
	}{
		{units.Limits{Min: 67 * mm, Max: 67 * mm}, units.Limits{Max: 70 * units.Micrometre}, units.ErrNotGiven},
		{units.Limits{Min: 67 * mm, Max: 66 * mm}, window, units.ErrCrossed},
		{units.Limits{Max: 67 * mm}, window, units.ErrNotGiven},
		{units.Limits{Min: 67 * mm, Max: units.MaxLength + 1}, window, units.ErrRange},
		{units.Limits{Min: 50 * units.Micrometre, Max: mm}, window, units.ErrRange},
	} {
		if w, err := fit.PistonWindow(c.bore, c.window); !errors.Is(err, c.want) {
			t.Errorf("%v, %v: %v, %v", c.bore, c.window, w, err)
		}
	}
}
