// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"

	"borewright.example/bore"
	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

// length reads "67 mm"; a bad text panics.
func length(s string) units.Length { return units.MustParseLength(s) }

// exact is a length without doubt.
func exact(s string) uncertainty.Estimate { return uncertainty.Estimate{Value: length(s)} }

// near checks a length against a printed one.
func near(t *testing.T, what string, got units.Length, want, tol string) {
	t.Helper()
	if d := got - length(want); d.Abs() > length(tol) {
		t.Errorf("%s: got %v, want %s ± %s", what, got, want, tol)
	}
}

// agree checks a number against a printed one, to a relative tolerance.
func agree(t *testing.T, what string, got, want, rel float64) {
	t.Helper()
	if !(math.Abs(got-want) <= rel*math.Abs(want)) {
		t.Errorf("%s: got %.6g, want %.6g to %g", what, got, want, rel)
	}
}

func must[T any](v T, err error) T {
	if err != nil {
		panic(err)
	}
	return v
}

func TestPublishedGaps(t *testing.T) {
	for _, c := range []struct {
		source                  string
		gap, in, bore, want, by string
	}{
		// A ring larger than the bore by 0.010 in, or 0.25 mm: its ends overlap. Computed.
		{"oversize ring, in", "0.010 in", "3.010 in", "3.000 in", "-0.0214 in", "0.0001 in"},
		{"oversize ring, mm", "0.300 mm", "67.25 mm", "67.00 mm", "-0.4854 mm", "0.0001 mm"},
		// … and the reverse, a standard ring in the next bore. Computed.
		{"standard ring in an oversize bore", "0.300 mm", "67.00 mm", "67.25 mm", "1.0854 mm", "0.0001 mm"},
		// US Army TM 5-3825-229-14&P, 6-11, prints 0.0031 in (0.08 mm) less for 0.0012 in (0.03 mm) less
		// bore; that is the change for 0.001 in. What is right was computed.
		{"TM 5-3825-229-14&P, its inches", "0.0200 in", "4.0000 in", "3.9988 in", "0.01623 in", "0.00001 in"},
		{"TM 5-3825-229-14&P, its millimetres", "0.5000 mm", "100.00 mm", "99.97 mm", "0.4058 mm", "0.0001 mm"},
		{"TM 5-3825-229-14&P, what it computed", "0.0200 in", "4.0000 in", "3.9990 in", "0.0169 in", "0.00005 in"},
	} {
		got, err := rings.Gap{Measured: exact(c.gap), Bore: exact(c.in)}.In(exact(c.bore))
		if err != nil {
			t.Errorf("%s: %v", c.source, err)
			continue
		}
		near(t, c.source, got.Value, c.want, c.by)
	}
}

// Taper from two gaps; geometry, computed.
func TestPublishedTaper(t *testing.T) {
	near(t, "0.85 and 0.40 mm", must(rings.DiameterChange(exact("0.40 mm"), exact("0.85 mm"))).Value, "0.1432 mm", "0.0001 mm")
	near(t, "0.024 and 0.014 in", must(rings.DiameterChange(exact("0.014 in"), exact("0.024 in"))).Value, "0.00318 in", "0.00001 in")
	// A choked barrel is narrower at the head: the sign is kept.
	near(t, "choke", must(rings.DiameterChange(exact("0.85 mm"), exact("0.40 mm"))).Value, "-0.1432 mm", "0.0001 mm")
}

func TestPublishedPlace(t *testing.T) {
	worn := []bore.Plane{{Depth: length("10 mm"), Mean: exact("67.09 mm")}, {Depth: length("45 mm"), Mean: exact("67.05 mm")}, {Depth: length("75 mm"), Mean: exact("67.02 mm")}, {Depth: length("95 mm"), Mean: exact("67.00 mm")}}
	choked := []bore.Plane{{Depth: length("10 mm"), Mean: exact("104.70 mm")}, {Depth: length("60 mm"), Mean: exact("104.75 mm")}, {Depth: length("120 mm"), Mean: exact("104.78 mm")}}
	for _, c := range []struct {
		source string
		levels []bore.Plane
		travel bore.RingTravel
		want   string
	}{
		// US Army TM 10-3930-653-14&P: where the bore is smallest, at the bottom of the travel. The
		// plane below it is smaller yet, but no ring comes there.
		{"worn at the top", worn, bore.RingTravel{Top: length("8 mm"), Bottom: length("80 mm")}, "75 mm"},
		// FAA powerplant handbook, choke; US Army TM 9-2815-200-35, p. 6-55.
		{"choked", choked, bore.RingTravel{Top: length("10 mm"), Bottom: length("120 mm")}, "10 mm"},
	} {
		got, err := rings.Narrowest(c.levels, c.travel)
		if err != nil || got.Depth != length(c.want) {
			t.Errorf("%s: at %v, %v; want %s", c.source, got.Depth, err, c.want)
		}
	}
}

func TestPublishedEllipses(t *testing.T) {
	for _, c := range []struct {
		source          string
		greatest, least string
		perimeter       string
	}{
		// 4·a·E(e²), semi-axes a and b: computed in multiple precision from DLMF 19.9.9.
		{"a 1, b 0.5", "2 m", "1 m", "4.844224110274 m"},
		{"a 10, b 5", "20 mm", "10 mm", "48.442241103 mm"},
		{"a 43.775, b 43.725", "87.55 mm", "87.45 mm", "274.889379629 mm"},
		{"a circle", "100 mm", "100 mm", "314.159265359 mm"},
		// E(m), Abramowitz & Stegun table 17.1, from memory; the least axis is √(1 − m) m, to 1 pm.
		{"E(0.1) = 1.530757636898", "1 m", "0.948683298051 m", "3.061515273796 m"},
		{"E(0.5) = 1.350643881048", "1 m", "0.707106781187 m", "2.701287762095 m"},
		{"E(0.9) = 1.104774732704", "1 m", "0.316227766017 m", "2.209549465408 m"},
	} {
		got, err := rings.Oval{Max: length(c.greatest), Min: length(c.least)}.Perimeter()
		if err != nil {
			t.Errorf("%s: %v", c.source, err)
			continue
		}
		near(t, c.source, got, c.perimeter, "0.000000002 mm")
	}
	// The mean width over all directions is the perimeter divided by π (Cauchy): 87.5000071428572886, computed.
	near(t, "Cauchy", must(rings.Oval{Max: length("87.55 mm"), Min: length("87.45 mm")}.Round()), "87.500007143 mm", "0.000000001 mm")
}

func TestPublishedRules(t *testing.T) {
	at := func(bore string, rule int) units.Limits {
		all, _, err := rings.Rules(length(bore))
		if err != nil {
			t.Fatal(err)
		}
		return all[rule].Gap
	}
	// Per unit of bore, as voices of the trade give them; the last from the textbook.
	for i, want := range [][2]string{{"0.2 mm", "0.3 mm"}, {"0.3 mm", "0.4 mm"}, {"0.3 mm", "0.5 mm"}, {"0.4 mm", "0.4 mm"}, {"0.45 mm", "0.5 mm"}, {"0.6 mm", "0.6 mm"}, {"0.2 mm", "0.4 mm"}} {
		if got, want := at("100 mm", i), (units.Limits{Min: length(want[0]), Max: length(want[1])}); got != want {
			t.Errorf("rule %d: got %v, want %v", i, got, want)
		}
	}
	// 0.004 per unit, common practice.
	for bore, in := range map[string]string{"37 mm": "0.0058 in", "38 mm": "0.0060 in", "40 mm": "0.0063 in"} {
		near(t, bore, at(bore, 3).Min, in, "0.00005 in")
	}
	// 0.0045 to 0.0050 per unit of 4.030 in, a trade magazine: printed 0.018 and 0.020 in.
	near(t, "0.0045", at("4.030 in", 4).Min, "0.0181 in", "0.00005 in")
	near(t, "0.0050", at("4.030 in", 4).Max, "0.0202 in", "0.00005 in")
	// 0.002 to 0.004 D, A Textbook of Machine Design, ch. 32, which prints 0.2 to 0.4 mm for 100 mm.
	near(t, "textbook, 67 mm", at("67 mm", 6).Min, "0.134 mm", "0.0000001 mm")
	near(t, "textbook, 67 mm", at("67 mm", 6).Max, "0.268 mm", "0.0000001 mm")
	if _, spread, _ := rings.Rules(length("100 mm")); spread != (units.Limits{Min: length("0.2 mm"), Max: length("0.6 mm")}) {
		t.Errorf("spread: %v", spread)
	}
}

// Windows as US Army manuals print them, in both units: a window in millimetres is the printed one
// in inches, and a gap in its middle may stay, one below it is filed and one beyond it is not.
func TestPublishedWindows(t *testing.T) {
	for _, c := range []struct {
		source string
		window string
		inches [2]string
	}{
		{"TM 5-3825-229-14&P, top", "0.35 to 0.60 mm", [2]string{"0.014 in", "0.024 in"}},
		{"TM 5-3825-229-14&P, second", "0.25 to 0.60 mm", [2]string{"0.010 in", "0.024 in"}},
		{"TM 5-3825-229-14&P, oil", "0.25 to 0.50 mm", [2]string{"0.010 in", "0.020 in"}},
		{"TM 10-3930-653-14&P, top", "0.25 to 0.40 mm", [2]string{"0.0098 in", "0.0157 in"}},
		{"TM 10-3930-653-14&P, second and oil", "0.15 to 0.30 mm", [2]string{"0.0059 in", "0.0118 in"}},
	} {
		w := must(units.ParseLimits(c.window))
		near(t, c.source, w.Min, c.inches[0], "0.0005 in")
		near(t, c.source, w.Max, c.inches[1], "0.0005 in")
		middle, _ := w.Middle()
		for gap, want := range map[units.Length]rings.Action{
			middle: rings.AsIs, w.Min: rings.AsIs, w.Max: rings.AsIs,
			w.Min - 1: rings.FileEnds, w.Max + 1: rings.TooWide,
		} {
			f, err := rings.FileTo(uncertainty.Estimate{Value: gap}, w, uncertainty.Risk{})
			if err != nil || f.Action != want {
				t.Errorf("%s: a gap of %v: %v, %v; want %v", c.source, gap, f.Action, err, want)
			}
		}
	}
}

func TestPublishedClearances(t *testing.T) {
	for _, c := range []struct {
		source      string
		new         string
		inches      [2]string
		limit       string
		groove      string // for a ring 1.5 mm high; invented
		within, had uncertainty.Verdict
	}{
		{"TM 10-3930-653-14&P, top", "0.040 to 0.073 mm", [2]string{"0.0016 in", "0.0029 in"}, "max 0.1 mm", "1.59 mm", uncertainty.Beyond, uncertainty.Within},
		{"TM 10-3930-653-14&P, second", "0.030 to 0.063 mm", [2]string{"0.0012 in", "0.0025 in"}, "max 0.1 mm", "1.55 mm", uncertainty.Within, uncertainty.Within},
		{"TM 10-3930-653-14&P, oil", "0.030 to 0.080 mm", [2]string{"0.0012 in", "0.0031 in"}, "max 0.2 mm", "1.71 mm", uncertainty.Beyond, uncertainty.Beyond},
		{"TM 5-4320-305-24, second", "0.10 to 0.132 mm", [2]string{"0.0039 in", "0.0052 in"}, "max 0.30 mm", "1.63 mm", uncertainty.Within, uncertainty.Within},
		{"TM 5-4320-305-24, oil", "0.041 to 0.071 mm", [2]string{"0.0016 in", "0.0028 in"}, "max 0.15 mm", "1.54 mm", uncertainty.Beyond, uncertainty.Within},
	} {
		w := must(units.ParseLimits(c.new))
		near(t, c.source, w.Min, c.inches[0], "0.00005 in")
		near(t, c.source, w.Max, c.inches[1], "0.00005 in")
		for limits, want := range map[units.Limits]uncertainty.Verdict{w: c.within, must(units.ParseLimits(c.limit)): c.had} {
			g := rings.Groove{Height: exact(c.groove)}
			got, err := uncertainty.Judge(must(g.SideClearance(exact("1.5 mm"))), limits, uncertainty.Risk{})
			if err != nil || got.Verdict != want {
				t.Errorf("%s: groove of %s, limits %v: %v, %v; want %v", c.source, c.groove, limits, got, err, want)
			}
		}
	}
	// A Textbook of Machine Design, ch. 32, example: a ring 3.4 mm thick in a groove 3.8 mm deep, bore 100 mm.
	back := must(rings.Groove{Root: exact("92.4 mm")}.BackClearance(exact("3.4 mm"), exact("100 mm")))
	near(t, "back clearance", back.Value, "0.4 mm", "0.000000001 mm")
}

// plain is a material of nothing but an expansion, as the sums below were made.
func plain(perKelvin float64) material.Material {
	return material.Material{Name: "plain", Expansion: units.Expansion(perKelvin)}
}

func kelvins(k float64) units.Temperature {
	return units.ReferenceTemperature.Add(units.TemperatureChange(k))
}

// Computed from π·d·(αb·ΔTb − αr·ΔTr).
func TestPublishedHotGaps(t *testing.T) {
	const iron, aluminium = 11.4e-6, 21.5e-6
	hot := func(bore float64, ring, wall float64) rings.Warm {
		return rings.Warm{Ring: plain(iron), Bore: plain(bore), RingAt: kelvins(ring), BoreAt: kelvins(wall)}
	}
	d := exact("67 mm")
	near(t, "iron bore", must(hot(iron, 180, 120).HotGap(exact("0.268 mm"), d)).Value, "0.1240 mm", "0.0001 mm")
	near(t, "aluminium bore", must(hot(aluminium, 180, 120).HotGap(exact("0.268 mm"), d)).Value, "0.3791 mm", "0.0001 mm")
	near(t, "gap that just closes", must(hot(iron, 230, 130).Least(d.Value, 0)).Value, "0.2400 mm", "0.0001 mm")
	// A page in common use takes the growth of the ring alone: 3 in, 6.45e-6/°F, +350 °F give 0.02128 in.
	alone := rings.Warm{
		Ring: material.Material{Expansion: 6.45e-6 * units.PerFahrenheit}, RingAt: kelvins(350 / 1.8),
		Bore: plain(iron), BoreAt: units.ReferenceTemperature,
	}
	near(t, "ring alone", must(alone.Least(length("3 in"), 0)).Value, "0.02128 in", "0.00001 in")
}

// section is a ring of 67 mm bore, 2.7 mm radially, 1.5 mm axially, 110 GPa.
func section() rings.Section {
	return rings.Section{Bore: length("67 mm"), Thickness: length("2.7 mm"), Height: length("1.5 mm"), Young: 110 * units.Gigapascal}
}

// Computed from the closed forms; the derivations are checked below.
func TestPublishedForces(t *testing.T) {
	r := must(section().Tension(length("8 mm"), 0))
	agree(t, "tangential force, N", r.Tangential.In(units.Newton), 6.913, 0.0005)
	agree(t, "wall pressure, MPa", r.Wall.In(units.Megapascal), 0.13757, 0.0005)
	agree(t, "parameter", r.Parameter, 0.026402, 0.0005)
	agree(t, "stress, MPa", r.Stress.In(units.Megapascal), 243.9, 0.0005)
	agree(t, "diametral force, N", r.Diametral.In(units.Newton), 18.25, 0.0005)
	agree(t, "Q/Ft", float64(r.Diametral/r.Tangential), 2.6394, 0.0001)

	// A Textbook of Machine Design, ch. 32: a = d·√(3p/σ) is 3.416 mm for 100 mm, 0.035 MPa and 90 MPa; it takes d for d − a.
	s := rings.Section{Bore: length("100 mm"), Thickness: length("3.416 mm"), Height: length("3 mm"), Young: 100 * units.Gigapascal}
	r = must(s.TensionUnder(0.035 * 100 * 3 / 2 * units.Newton)) // p·d·h/2
	agree(t, "textbook pressure", r.Wall.In(units.Megapascal), 0.035, 1e-12)
	agree(t, "textbook stress", r.Stress.In(units.Megapascal)/(1-0.03416), 90, 0.0003)
	// The ends of its ranges: 0.025 MPa with 110 MPa give t/D = 0.0261, 0.042 with 85 give 0.0385.
	for _, c := range []struct{ pressure, stress, ratio float64 }{{0.025, 110, 0.0261}, {0.042, 85, 0.0385}} {
		s.Thickness = must(units.Of(c.ratio, s.Bore))
		r = must(s.TensionUnder(units.Force(c.pressure * 100 * 3 / 2)))
		agree(t, "textbook range", r.Stress.In(units.Megapascal)/(1-c.ratio), c.stress, 0.005)
	}
	// Its rule for the free gap, 3.5 to 4 thicknesses, does not agree with that pressure: 5.67 mm for 3.4 mm. Computed.
	s.Thickness = length("3.4 mm")
	r = must(s.TensionUnder(0.035 * 100 * 3 / 2 * units.Newton))
	near(t, "closing", r.Closing, "5.67 mm", "0.005 mm")
	r = must(s.Tension(length("12.8 mm"), 0))
	agree(t, "pressure for 12.8 mm", r.Wall.In(units.Megapascal), 0.079, 0.005)
	agree(t, "stress for 12.8 mm", r.Stress.In(units.Megapascal), 197.9, 0.0005)
}

func TestPublishedBounds(t *testing.T) {
	r := must(section().Tension(length("8 mm"), 0))
	derived := map[int]float64{2: 94.31, 3: 13.26, 4: 3.773, 5: 1.474}   // computed
	empirical := map[int]float64{2: 14.15, 3: 5.305, 4: 2.829, 5: 1.768} // computed from the rule of SAE 960356
	for order := 2; order <= 5; order++ {
		got := must(r.Bound(order))
		agree(t, "derived", got.Derived.In(units.Micrometre), derived[order], 0.001)
		agree(t, "empirical", got.Empirical.In(units.Micrometre), empirical[order], 0.001)
		// The stricter of the first two changes between 4 and 5, at i² − 1 = 20.
		if (got.Empirical < got.Derived) != (order <= 4) {
			t.Errorf("order %d: derived %v, empirical %v", order, got.Derived, got.Empirical)
		}
		// 4.56·Q·r³/(E·h·t³·(i² − 1)²), Q diametral, as MTH 844 (Michigan State
		// University, 2004) has it, read in a summary. The derivation gives 12/2.6394 = 4.546.
		load := r.Diametral.In(units.Newton) * math.Pow(32.15, 3) / (110e3 * 1.5 * math.Pow(2.7, 3)) * 1000
		n := float64(order*order - 1)
		agree(t, "in loads, quadratic", got.Derived.In(units.Micrometre), 4.56*load/(n*n), 0.004)
	}
}

// The closed forms against the integrals that they come from.
func TestDerivationOfForces(t *testing.T) {
	integral := func(f func(float64) float64, a, b float64) float64 {
		return quad.Fixed(f, a, b, 40, quad.Legendre{}, 0)
	}
	for _, m := range []string{"1 mm", "8 mm", "15 mm"} {
		s := section()
		ring := must(s.Tension(length(m), 0))
		d, a, h := s.Bore.In(units.Metre), s.Thickness.In(units.Metre), s.Height.In(units.Metre)
		e, r, i := float64(s.Young), (d-a)/2, h*a*a*a/12
		ft, p, q := float64(ring.Tangential), float64(ring.Wall), float64(ring.Diametral)

		// The pressure over half the circumference is held by two tangential forces.
		agree(t, "balance", integral(func(x float64) float64 { return p * h * d / 2 * math.Sin(x) }, 0, math.Pi), 2*ft, 1e-9)

		// Load Ft/r along the middle line: the moment at x is that of all the load between the gap and x.
		moment := func(x float64) float64 {
			return integral(func(y float64) float64 { return ft / r * r * r * math.Sin(x-y) }, 0, x)
		}
		// A unit pair of forces along the ends has the moment r(1 − cos x): virtual work gives the closing.
		unit := func(x float64) float64 { return r * (1 - math.Cos(x)) }
		closing := func(moment func(float64) float64, from float64) float64 {
			return 2 * integral(func(x float64) float64 { return moment(x) * unit(x) * r / (e * i) }, from, math.Pi)
		}
		agree(t, "closing under pressure", closing(moment, 0), ring.Closing.In(units.Metre), 1e-9)
		agree(t, "closing under the tangential force", closing(func(x float64) float64 { return ft * unit(x) }, 0), ring.Closing.In(units.Metre), 1e-9)
		// The diametral load acts at 90° to the gap and bends what lies beyond.
		agree(t, "closing under the diametral force", closing(func(x float64) float64 { return q * r * -math.Cos(x) }, math.Pi/2), ring.Closing.In(units.Metre), 1e-9)
		agree(t, "stress", moment(math.Pi)/(h*a*a/6), float64(ring.Stress), 1e-9)
	}
}

// The derived bound by energy: the work of a load of the ring's own size, as cos(i·x), against the bending of
// a curve r + A·cos(i·x), from the exact curvature of such a curve. A is small, and the bound its limit.
func TestDerivationOfTheBound(t *testing.T) {
	ring := must(section().Tension(length("8 mm"), 0))
	s := ring.Section
	a, h := s.Thickness.In(units.Metre), s.Height.In(units.Metre)
	r := (s.Bore - s.Thickness).In(units.Metre) / 2
	ei := float64(s.Young) * h * a * a * a / 12
	for order := 2; order <= 12; order++ {
		i := float64(order)
		const small = 1e-6
		amp := small * r
		energy := quad.Fixed(func(x float64) float64 {
			rho := r + amp*math.Cos(i*x)
			d1, d2 := -amp*i*math.Sin(i*x), -amp*i*i*math.Cos(i*x)
			kappa := (rho*rho + 2*d1*d1 - rho*d2) / math.Pow(rho*rho+d1*d1, 1.5)
			bend := kappa - 1/r
			return ei * bend * bend / 2 * r
		}, 0, 2*math.Pi, 400, quad.Legendre{}, 0)
		load := float64(ring.Tangential) / r
		// ½·load·A·π·r = energy·(A/amp)²
		bound := load * math.Pi * r / 2 / energy * amp * amp
		// The neglected terms are of the order of A·i²/r.
		agree(t, "bound", must(ring.Bound(order)).Derived.In(units.Metre), bound, 4*small*i*i+1e-9)
	}
}
