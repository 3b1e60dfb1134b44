// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

const µm = units.Micrometre

// draw draws a length in whole steps.
func draw(t *rapid.T, name string, from, to, step units.Length) units.Length {
	return units.Length(rapid.Int64Range(int64(from/step), int64(to/step)).Draw(t, name)) * step
}

func drawBore(t *rapid.T) units.Length {
	return draw(t, "bore", 40*units.Millimetre, 200*units.Millimetre, 1)
}

func drawEstimate(t *rapid.T, name string, from, to units.Length) uncertainty.Estimate {
	e := uncertainty.Estimate{Value: draw(t, name, from, to, 1), Std: draw(t, name+" std", 0, 30*µm, 1)}
	if rapid.Bool().Draw(t, name+" few") {
		e.DoF = rapid.Float64Range(1, 60).Draw(t, name+" dof")
	}
	return e
}

func drawGap(t *rapid.T) rings.Gap {
	d := drawBore(t)
	return rings.Gap{
		Measured: uncertainty.Estimate{Value: draw(t, "gap", 100*µm, 2*units.Millimetre, 1), Std: draw(t, "gap std", 0, 30*µm, 1)},
		Bore:     uncertainty.Estimate{Value: d, Std: draw(t, "bore std", 0, 5*µm, 1)},
	}
}

func within(t *rapid.T, what string, got, want, tol units.Length) {
	t.Helper()
	if (got - want).Abs() > tol {
		t.Fatalf("%s: got %d pm, want %d ± %d", what, int64(got), int64(want), int64(tol))
	}
}

// The gap is linear in the diameter, and going through a third bore changes nothing.
func TestGapLinear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGap(t)
		step := draw(t, "step", 0, 20*µm, 1)
		in := func(d units.Length) units.Length {
			e, err := g.In(uncertainty.Estimate{Value: d})
			if err != nil {
				t.Fatal(err)
			}
			return e.Value
		}
		d := g.Bore.Value
		within(t, "same bore", in(d), g.Measured.Value, 0)
		within(t, "two steps", in(d+2*step)-in(d), 2*(in(d+step)-in(d)), 2)
		within(t, "down and up", in(d+step)+in(d-step), 2*g.Measured.Value, 2)
		via := rings.Gap{Measured: uncertainty.Estimate{Value: in(d + step)}, Bore: uncertainty.Estimate{Value: d + step}}
		e, err := via.In(uncertainty.Estimate{Value: d + 3*step})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "by way of another", e.Value, in(d+3*step), 2)

		// A drawing in other units is the same ring: everything twice as large.
		twice := rings.Gap{Measured: uncertainty.Estimate{Value: 2 * g.Measured.Value}, Bore: uncertainty.Estimate{Value: 2 * d}}
		e, err = twice.In(uncertainty.Estimate{Value: 2 * (d + step)})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "twice as large", e.Value, 2*in(d+step), 2)

		// The change of diameter comes back from the two gaps.
		change, err := rings.DiameterChange(g.Measured, uncertainty.Estimate{Value: in(d + step)})
		if err != nil {
			t.Fatal(err)
		}
		within(t, "back", change.Value, step, 1)
	})
}

// Uncertainties and degrees of freedom are those of a budget of the same three components.
func TestGapUncertainty(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := rings.Gap{Measured: drawEstimate(t, "gap", units.Millimetre, 2*units.Millimetre), Bore: drawEstimate(t, "from", 70*units.Millimetre, 71*units.Millimetre)}
		if rapid.Bool().Draw(t, "poor") {
			g.Bore.Std *= 1000
		}
		to := drawEstimate(t, "to", 70*units.Millimetre, 71*units.Millimetre)
		got, err := g.In(to)
		if err != nil {
			t.Fatal(err)
		}
		component := func(name string, by float64, e uncertainty.Estimate) uncertainty.Component {
			return uncertainty.Component{Name: name, Std: float64(e.Std), Sensitivity: by, DoF: e.DoF}
		}
		want, err := uncertainty.Budget{Components: []uncertainty.Component{
			component("gap", 1, g.Measured), component("to", math.Pi, to), component("from", -math.Pi, g.Bore),
		}}.Estimate(got.Value, units.Picometre)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "std", got.Std, want.Std, 1)
		const normal = 1e12 // beyond, as with 0, Student's distribution is the normal one
		if got, want := got.DoF, want.DoF; math.Abs(got-want) > 1e-9*want && (got > 0 && got < normal || want > 0 && want < normal) {
			t.Fatalf("dof: got %v, want %v", got, want)
		}
	})
}

func drawWindow(t *rapid.T) units.Limits {
	var w units.Limits
	kind := rapid.SampledFrom([]string{"both", "both", "both", "min", "max"}).Draw(t, "window")
	if kind != "max" {
		w.Min = draw(t, "min", 100*µm, 600*µm, 1)
	}
	if kind != "min" {
		w.Max = w.Min + draw(t, "width", 1, 400*µm, 1)
	}
	return w
}

// Whatever the true gap within U of the measured one: if it is filed as planned it ends inside the
// window. The filed gap would be judged within. No step can spoil the ring.
func TestFilingEndsInside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, gap := drawWindow(t), drawEstimate(t, "gap", -500*µm, 1200*µm)
		risk := uncertainty.Risk{Accept: rapid.SampledFrom([]float64{0, 0.01, 0.05, 0.3}).Draw(t, "accept")}
		f, err := rings.FileTo(gap, w, risk)
		if gap == (uncertainty.Estimate{}) { // that of nobody
			if !errors.Is(err, units.ErrNotGiven) {
				t.Fatal(err)
			}
			return
		}
		accept := f.Now.Risk.Accept
		if err != nil {
			if !errors.Is(err, rings.ErrDoubt) {
				t.Fatal(err)
			}
			accept = risk.Share(1).Accept
		}
		u, uerr := gap.Expanded(1 - accept)
		if uerr != nil {
			t.Fatal(uerr)
		}
		if u > 0 {
			u++ // to the picometre above
		}
		width, both := w.Width()
		if err != nil {
			filed := gap
			filed.Value = w.Min + u
			proof, jerr := uncertainty.Judge(filed, w, risk)
			if !both || width >= 2*u && (jerr != nil || proof.Verdict == uncertainty.Within) {
				t.Fatalf("refused with U %v in %v", u, w)
			}
			return
		}
		if got, err := rings.FileTo(f.After(), w, risk); err != nil || f.Action == rings.FileEnds && got.Action != rings.AsIs {
			t.Fatalf("filed to %v: %v, %v", f.After(), got.Action, err)
		}
		switch f.Action {
		case rings.FileEnds:
			if both && width < 2*u {
				t.Fatalf("not refused with U %v in %v", u, w)
			}
			for _, off := range []units.Length{-u, -u / 3, 0, u / 2, u} {
				if end := gap.Value + off + f.TakeOff; !w.Contains(end) {
					t.Fatalf("true gap %v ends at %v, outside %v", gap.Value+off, end, w)
				}
			}
			if f.Target != gap.Value+f.TakeOff || f.TakeOff <= 0 || f.Target != f.Stop.Min || f.Steps[len(f.Steps)-1] != f.Target {
				t.Fatalf("%+v", f)
			}
			at := gap.Value
			for _, s := range f.Steps {
				if s <= at || f.Stop.HasMax() && at+2*(s-at) > f.Stop.Max && s-at > 10*µm {
					t.Fatalf("step from %v to %v, stop %v", at, s, f.Stop)
				}
				at = s
			}
			if len(f.Steps) > 12 {
				t.Fatalf("%d steps", len(f.Steps))
			}
		case rings.AsIs:
			if f.Now.Conform < 1-accept-1e-9 {
				t.Fatalf("as is with %v", f.Now.Conform)
			}
		case rings.TooWide:
			if gap.Value <= w.Max {
				t.Fatalf("too wide: %v in %v", gap, w)
			}
		case rings.Undecided: // only where filing could spoil the ring
			if !w.HasMax() || gap.Value+u <= w.Max {
				t.Fatalf("undecided: %v in %v", gap, w)
			}
		}
		if f.Action != rings.FileEnds && (f.Steps != nil || f.TakeOff != 0 || !f.Stop.IsZero() || f.After() != gap) {
			t.Fatalf("%v with a plan: %+v", f.Action, f)
		}
	})
}

// A wider gap never asks for more filing, and never goes back from too wide.
func TestFilingMonotone(t *testing.T) {
	rank := map[rings.Action]int{rings.FileEnds: 0, rings.AsIs: 1, rings.Undecided: 2, rings.TooWide: 3}
	rapid.Check(t, func(t *rapid.T) {
		w, small := drawWindow(t), drawEstimate(t, "gap", 100*µm, 1200*µm)
		large := small
		large.Value += draw(t, "more", 0, 500*µm, 1)
		f, err := rings.FileTo(small, w, uncertainty.Risk{})
		g, gerr := rings.FileTo(large, w, uncertainty.Risk{})
		if err != nil || gerr != nil {
			t.Skip("refused")
		}
		if rank[f.Action] > rank[g.Action] || f.TakeOff < g.TakeOff {
			t.Fatalf("%v: %v; %v: %v", small, f.Action, large, g.Action)
		}
	})
}

func drawWarm(t *rapid.T) rings.Warm {
	part := func(name string) (float64, units.Temperature) {
		return rapid.Float64Range(5e-6, 25e-6).Draw(t, name), kelvins(rapid.Float64Range(-40, 300).Draw(t, name+" K"))
	}
	ring, ringAt := part("ring")
	wall, boreAt := part("bore")
	h := rings.Warm{Ring: plain(ring), Bore: plain(wall), RingAt: ringAt, BoreAt: boreAt}
	h.Ring.Within = units.Expansion(rapid.Float64Range(0, 1e-6).Draw(t, "ring within"))
	h.BoreWithin = units.TemperatureChange(rapid.Float64Range(0, 30).Draw(t, "bore within"))
	return h
}

// The hot gap is the cold one and its change; the least gap leaves its margin; what one temperature does is linear.
func TestWarm(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		h, d := drawWarm(t), uncertainty.Estimate{Value: drawBore(t)}
		cold := uncertainty.Estimate{Value: draw(t, "cold", 100*µm, 2*units.Millimetre, 1)}
		change, err := h.Change(d.Value)
		if err != nil {
			t.Fatal(err)
		}
		hot, err := h.HotGap(cold, d)
		if (hot.Value <= 0) != errors.Is(err, rings.ErrButts) || err != nil && hot.Value > 0 {
			t.Fatalf("%v: %v", hot, err)
		}
		within(t, "hot", hot.Value, cold.Value+change.Value, 1)
		within(t, "doubt", hot.Std, change.Std, 1)
		margin := draw(t, "margin", 0, 100*µm, 1)
		least, err := h.Least(d.Value, margin)
		if err != nil {
			t.Fatal(err)
		}
		within(t, "margin", min(least.Value, least.Value+change.Value), margin, 1)
		// In the same bore the uncertainty is that of the first derivatives, each rectangular.
		dT, dTr := float64(h.BoreWithin), float64(h.RingAt.AboveReference())
		want := math.Pi * float64(d.Value) * math.Hypot(float64(h.Bore.Expansion)*dT, float64(h.Ring.Within)*dTr) / math.Sqrt(3)
		within(t, "uncertainty", change.Std, units.Length(want), 1)
		// With one material and one temperature for both there is no change.
		same := rings.Warm{Ring: h.Ring, Bore: h.Ring, RingAt: h.RingAt, BoreAt: h.RingAt}
		if c, err := same.Change(d.Value); err != nil || c.Value != 0 {
			t.Fatalf("ring and bore alike: %v, %v", c, err)
		}
	})
}

// The perimeter against its integral; between the circles; the round bore is the mean and a little more.
func TestOval(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawBore(t)
		o := rings.Oval{Max: g, Min: draw(t, "least", g/2, g, 1)}
		p, err := o.Perimeter()
		if err != nil {
			t.Fatal(err)
		}
		a, b := float64(o.Max)/2, float64(o.Min)/2
		integral := quad.Fixed(func(x float64) float64 { return math.Hypot(a*math.Sin(x), b*math.Cos(x)) }, 0, math.Pi/2, 60, quad.Legendre{}, 0)
		within(t, "perimeter", p, units.Length(math.Round(4*integral)), 2)
		round, err := o.Round()
		if err != nil {
			t.Fatal(err)
		}
		within(t, "round", round, units.Length(float64(p)/math.Pi), 1)
		mean := (a + b)
		if round < units.Length(mean)-1 || round > o.Max {
			t.Fatalf("%v by %v: round %v", o.Max, o.Min, round)
		}
		// The excess over the mean, (D − d)²/(16·mean), to the next order of the ovality.
		excess := (a - b) * (a - b) * 4 / (16 * mean)
		if got := float64(round) - mean; math.Abs(got-excess) > excess*math.Pow((a-b)/(a+b), 2)+2 {
			t.Fatalf("%v by %v: excess %v, want %v", o.Max, o.Min, got, excess)
		}
	})
}

// Clearances are what is left over: put the ring and its clearances together and the groove and the bore come back.
func TestGroove(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		height, thickness := drawEstimate(t, "height", units.Millimetre, 3*units.Millimetre), drawEstimate(t, "thickness", 2*units.Millimetre, 4*units.Millimetre)
		g := rings.Groove{Height: drawEstimate(t, "groove", units.Millimetre, 3*units.Millimetre), Root: drawEstimate(t, "root", 60*units.Millimetre, 70*units.Millimetre)}
		d := drawEstimate(t, "bore", 70*units.Millimetre, 75*units.Millimetre)
		side, err := g.SideClearance(height)
		if (g.Height.Value < height.Value) != errors.Is(err, units.ErrRange) {
			t.Fatalf("%v in %v: %v", height.Value, g.Height.Value, err)
		}
		if err == nil {
			within(t, "groove", height.Value+side.Value, g.Height.Value, 0)
			within(t, "doubt", side.Std, units.Length(math.Hypot(float64(height.Std), float64(g.Height.Std))), 1)
		}
		back, err := g.BackClearance(thickness, d)
		if (g.Root.Value+2*thickness.Value > d.Value+1) && !errors.Is(err, units.ErrRange) {
			t.Fatalf("%v on %v in %v: %v", thickness.Value, g.Root.Value, d.Value, err)
		}
		if err == nil {
			within(t, "bore", g.Root.Value+2*(thickness.Value+back.Value), d.Value, 1)
			within(t, "doubt", back.Std, units.Length(math.Hypot(float64(thickness.Std), math.Hypot(float64(d.Std), float64(g.Root.Std))/2)), 1)
		}
	})
}

// A ring end crosses a port if and only if a place of the wall that the ends can reach lies in it.
func TestClear(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		degrees := func(name string, from, to float64) units.Angle {
			return units.Angle(rapid.Float64Range(from, to).Draw(t, name)) * units.Degree
		}
		e := rings.Ends{Peg: degrees("peg", -720, 720), Gap: draw(t, "gap", 100*µm, units.Millimetre, 1), Play: draw(t, "play", 0, 2*units.Millimetre, 1), Bore: 50 * units.Millimetre}
		width := degrees("width", 1, 350)
		from := degrees("from", -360, 360)
		p := bore.Port{At: from + width/2, Width: width, From: 20 * units.Millimetre, To: 30 * units.Millimetre}
		rooms, err := e.Clear([]bore.Port{p}, bore.RingTravel{Top: 5 * units.Millimetre, Bottom: 40 * units.Millimetre})
		if err != nil || len(rooms) != 1 {
			t.Fatal(rooms, err)
		}
		radius := float64(e.Bore) / 2
		half := (float64(e.Gap)/2 + float64(e.Play)) / radius
		reach := math.Inf(1) // the nearest of the places reached is this far from the port, or inside by as much
		const n = 400
		for i := 0; i <= n; i++ {
			x := float64(e.Peg) + half*(2*float64(i)/n-1)
			after := math.Mod(math.Mod(x-float64(from), 2*math.Pi)+2*math.Pi, 2*math.Pi)
			if w := float64(width); after <= w {
				reach = min(reach, 0)
			} else {
				reach = min(reach, min(after-w, 2*math.Pi-after)*radius)
			}
		}
		r := rooms[0]
		tol := 2 * half * radius / n // between two places looked at
		if r.Room > 0 && math.Abs(float64(r.Room)-reach) > tol || float64(r.Room) < -tol && reach > 0 {
			t.Fatalf("room %v, found %v mm", r.Room, reach/1e9)
		}
	})
}

// The pattern is even, and no other start of it stays further from both axes.
func TestStagger(t *testing.T) {
	for n := 1; n <= 7; n++ {
		angles, err := rings.Stagger(n)
		if err != nil || len(angles) != n {
			t.Fatal(angles, err)
		}
		clear := func(start float64) float64 {
			least := 90.0
			for i := range n {
				x := math.Mod(start+360*float64(i)/float64(n), 90)
				least = min(least, x, 90-x)
			}
			return least
		}
		first := angles[0].In(units.Degree)
		for i, a := range angles {
			if d := a.In(units.Degree) - first - 360*float64(i)/float64(n); math.Abs(d) > 1e-9 {
				t.Errorf("%d rings: %v", n, angles)
			}
		}
		for start := 0.0; start < 90; start += 0.25 {
			if clear(start) > clear(first)+1e-9 {
				t.Errorf("%d rings: %v keeps %v°, a start of %v° %v°", n, angles, clear(first), start, clear(start))
			}
		}
	}
}

func drawSection(t *rapid.T) rings.Section {
	d := drawBore(t)
	return rings.Section{
		Bore: d, Thickness: draw(t, "thickness", d/40, d/20, 1), Height: draw(t, "height", units.Millimetre, 5*units.Millimetre, 1),
		Young: units.Pressure(rapid.Float64Range(70, 210).Draw(t, "GPa")) * units.Gigapascal,
	}
}

func drawTension(t *rapid.T) rings.Tension {
	s := drawSection(t)
	r, err := s.Tension(draw(t, "closing", s.Bore/50, s.Bore/5, 1), 0)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func alike(t *rapid.T, what string, got, want float64) {
	t.Helper()
	if math.Abs(got-want) > 1e-9*math.Abs(want) {
		t.Fatalf("%s: got %v, want %v", what, got, want)
	}
}

// From the closing or from either force it is one tension; k does not depend on the modulus or the height, forces do.
func TestTension(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawTension(t)
		back := map[string]rings.Tension{
			"tangential": must(r.Section.TensionUnder(r.Tangential)),
			"diametral":  must(r.Section.TensionUnder(r.Diametral * units.Force((2+math.Pi/2)/(3*math.Pi)))),
		}
		for what, b := range back {
			within(t, what, b.Closing, r.Closing, 2)
			alike(t, what, float64(b.Tangential), float64(r.Tangential))
			alike(t, what, float64(b.Diametral), float64(r.Diametral))
			alike(t, what, float64(b.Wall), float64(r.Wall))
			alike(t, what, float64(b.Stress), float64(r.Stress))
			alike(t, what, b.Parameter, r.Parameter)
		}
		other := r.Section
		other.Young *= 2
		other.Height *= 3
		o := must(other.Tension(r.Closing, 0))
		alike(t, "k", o.Parameter, r.Parameter)
		alike(t, "force", float64(o.Tangential), 6*float64(r.Tangential))
		alike(t, "pressure", float64(o.Wall), 2*float64(r.Wall))
		alike(t, "stress", float64(o.Stress), 2*float64(r.Stress))
		twice := r.Section
		twice.Bore, twice.Thickness, twice.Height = 2*twice.Bore, 2*twice.Thickness, 2*twice.Height
		w := must(twice.Tension(2*r.Closing, 0))
		alike(t, "k of a larger ring of the same shape", w.Parameter, r.Parameter)
		alike(t, "pressure of a larger ring of the same shape", float64(w.Wall), float64(r.Wall))
		// p·d·h = 2·Ft, and M = 2·Ft·r at the back.
		d, a, h := r.Section.Bore.In(units.Metre), r.Section.Thickness.In(units.Metre), r.Section.Height.In(units.Metre)
		alike(t, "balance", float64(r.Wall)*d*h, 2*float64(r.Tangential))
		alike(t, "moment", float64(r.Stress)*h*a*a/6, float64(r.Tangential)*(d-a))
	})
}

// The bounds fall with the order and grow with the ring's tension.
func TestBoundMonotone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawTension(t)
		order := rapid.IntRange(2, 20).Draw(t, "order") // beyond, two bounds can round to one picometre
		here, next := must(r.Bound(order)), must(r.Bound(order+1))
		if next.Derived >= here.Derived || next.Empirical >= here.Empirical {
			t.Fatalf("%+v, then %+v", here, next)
		}
		tighter := must(must(r.Section.Tension(r.Closing+100*µm, 0)).Bound(order))
		if tighter.Derived < here.Derived || tighter.Empirical <= here.Empirical {
			t.Fatalf("%+v, tighter %+v", here, tighter)
		}
		// r·k is m/(3π), whatever the section.
		within(t, "derived", here.Derived, units.Length(math.Round(float64(r.Closing)/(3*math.Pi)/math.Pow(float64(order*order-1), 2))), 1)
	})
}

// At a bound, the ring follows; a picometre and some beyond it, it does not. The parts of the orders add up,
// and nothing seen is named unseen.
func TestFollow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := drawTension(t)
		var form []bore.Harmonic
		var derived, empirical float64
		tol := 1e-9 // of rounding the sum, and then of rounding each bound to a picometre
		seen := map[int]bool{}
		for order := range 9 {
			if !rapid.Bool().Draw(t, "seen") {
				continue
			}
			h := bore.Harmonic{Order: order, Amplitude: draw(t, "amplitude", 0, 50*µm, 1)}
			form = append(form, h)
			seen[order] = true
			if order >= 2 {
				reach := must(r.Bound(order))
				derived += float64(h.Amplitude) / float64(reach.Derived)
				empirical += float64(h.Amplitude) / float64(reach.Empirical)
				tol += float64(h.Amplitude) / math.Pow(float64(min(reach.Derived, reach.Empirical)), 2)
			}
		}
		given := slices.Clone(form)
		c, err := r.Follow(form)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.Equal(form, given) {
			t.Fatal("the caller's slice was changed")
		}
		for _, d := range []struct{ got, want float64 }{{c.Derived.Used, derived}, {c.Empirical.Used, empirical}} {
			if math.Abs(d.got-d.want) > tol {
				t.Fatalf("used %v, want %v", d.got, d.want)
			}
		}
		want := uncertainty.Undecided
		if a, b := c.Derived.Used <= 1, c.Empirical.Used <= 1; a && b {
			want = uncertainty.Within
		} else if c.Derived.ByMost > 1 && c.Empirical.ByMost > 1 {
			want = uncertainty.Beyond
		}
		if c.Derived.ByMost > c.Derived.Used+1e-9 || c.Empirical.ByMost > c.Empirical.Used+1e-9 {
			t.Fatalf("more by one order than by all: %+v", c)
		}
		if c.Verdict != want {
			t.Fatalf("%v with %v and %v", c.Verdict, c.Derived.Used, c.Empirical.Used)
		}
		for order := 2; order < 9; order++ {
			most := 6
			for o := range seen {
				most = max(most, o)
			}
			if slices.Contains(c.Unseen, order) == (seen[order] || order > most) {
				t.Fatalf("unseen %v of %v", c.Unseen, form)
			}
		}
		// More of any order is more to follow.
		if len(form) > 0 {
			more := slices.Clone(form)
			more[len(more)-1].Amplitude += µm
			m, err := r.Follow(more)
			if err != nil || m.Derived.Used < c.Derived.Used || m.Empirical.Used < c.Empirical.Used {
				t.Fatal(m, err)
			}
		}
	})
}

// One order alone is followed up to its bound.
func TestFollowAtTheBound(t *testing.T) {
	r := must(section().Tension(length("8 mm"), 0))
	for order := 2; order <= 6; order++ {
		reach := must(r.Bound(order))
		stricter, wider := min(reach.Derived, reach.Empirical), max(reach.Derived, reach.Empirical)
		for amplitude, want := range map[units.Length]uncertainty.Verdict{
			stricter - 1: uncertainty.Within, stricter + 1: uncertainty.Undecided,
			wider - 1: uncertainty.Undecided, wider + 1: uncertainty.Beyond,
		} {
			c, err := r.Follow([]bore.Harmonic{{Order: order, Amplitude: amplitude}})
			if err != nil || c.Verdict != want || c.Derived.Most != order || c.Empirical.Most != order || c.Derived.ByMost != c.Derived.Used {
				t.Errorf("order %d, amplitude %v: %+v, %v; want %v", order, amplitude, c, err, want)
			}
		}
	}
	// Each order inside its bound, and yet too much: half of each of five bounds.
	var form []bore.Harmonic
	for order := 2; order <= 6; order++ {
		reach := must(r.Bound(order))
		form = append(form, bore.Harmonic{Order: order, Amplitude: min(reach.Derived, reach.Empirical) / 2})
	}
	if c, err := r.Follow(form); err != nil || c.Verdict != uncertainty.Undecided || c.Derived.ByMost > 0.51 || c.Unseen != nil {
		t.Errorf("composite: %+v, %v", c, err)
	}
}

// Of any window, what is left of it leaves the margin even where the least gap is at its greatest; the
// upper end stays, the lower one is never lowered; and where nothing is left, it says so.
func TestWarmWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		celsius := func(name string) units.Temperature {
			c, err := units.Celsius(float64(rapid.IntRange(20, 250).Draw(t, name)))
			if err != nil {
				t.Fatal(err)
			}
			return c
		}
		h := rings.Warm{Ring: material.GreyIron(), Bore: material.GreyIron(), RingAt: celsius("ring"), BoreAt: celsius("bore"), RingWithin: 10}
		diameter, margin := draw(t, "bore", 40*units.Millimetre, 150*units.Millimetre, 1), draw(t, "margin", 0, 100*µm, 1)
		w := units.Limits{Min: draw(t, "least", 1, 400*µm, 1)}
		w.Max = w.Min + draw(t, "width", 0, 400*µm, 1)
		least, err := h.Least(diameter, margin)
		if err != nil {
			t.Fatal(err)
		}
		u, err := least.Expanded(0.95)
		if err != nil {
			t.Fatal(err)
		}
		got, err := h.Window(w, diameter, margin)
		if least.Value+u > w.Max {
			if !errors.Is(err, rings.ErrButts) {
				t.Fatal(got, err)
			}
			return
		}
		if err != nil || got.Max != w.Max || got.Min != max(w.Min, least.Value+u) {
			t.Fatalf("%v of %v, least %v ± %v: %v", got, w, least.Value, u, err)
		}
		one := units.Limits{Min: 1, Max: least.Value + u} // a window of one size
		if got, err := h.Window(one, diameter, margin); err != nil || got.Min != one.Max || got.Max != one.Max {
			t.Fatalf("%v of %v, least %v ± %v: %v", got, one, least.Value, u, err)
		}
	})
}
