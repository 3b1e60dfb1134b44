// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"gonum.org/v1/gonum/mathext"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// sixReadings are an invented bore measured as US Army TM 9-6115-670-14&P, 6.30 has it: at 10, 45
// and 90 mm, along the thrust and the pin axis.
func sixReadings() []bore.Reading {
	var rs []bore.Reading
	for _, r := range []struct{ depth, thrust, pin string }{
		{"10 mm", "67.105 mm", "67.070 mm"},
		{"45 mm", "67.060 mm", "67.040 mm"},
		{"90 mm", "67.020 mm", "67.012 mm"},
	} {
		depth := units.MustParseLength(r.depth)
		rs = append(rs, bore.Reading{Depth: depth, Axis: bore.ThrustAxis, Diameter: units.MustParseLength(r.thrust)},
			bore.Reading{Depth: depth, Axis: bore.PinAxis, Diameter: units.MustParseLength(r.pin)})
	}
	return rs
}

// Definitions of TM 9-6115-670-14&P, 6.30 (wear is the greatest less the least of the six, at most
// 0.15 mm for a bore of 67.000 to 67.019 mm when new); numbers computed from them.
func TestWearOfSixReadings(t *testing.T) {
	g := measure(t, sixReadings())
	for i, want := range []units.Length{35 * um, 20 * um, 8 * um} {
		within(t, "ovality", g.Planes[i].Ovality.Value, want, 0)
	}
	within(t, "taper, thrust", g.Tapers[0].Size.Value, 85*um, 0)
	within(t, "taper, pin", g.Tapers[1].Size.Value, 58*um, 0)
	within(t, "taper", g.Taper.Size.Value, 85*um, 0)
	within(t, "greatest less least", g.Spread.Value, 93*um, 0)
	within(t, "largest over nominal", g.Largest.Over(67*mm).Value, 105*um, 0)
	if g.Largest.Depth != 10*mm || g.Largest.Axis != bore.ThrustAxis {
		t.Errorf("largest at %v, %v", g.Largest.Depth, g.Largest.Axis)
	}
	limits := bore.Limits{New: units.Limits{Min: 67 * mm, Max: 67*mm + 19*um}, Spread: 150 * um}
	fs, err := g.Judge(limits, noRisk)
	must(t, fs, err)
	if len(fs) != 2 || fs[0].Verdict != uncertainty.Beyond || fs[1].Verdict != uncertainty.Within {
		t.Errorf("findings %v: want worn beyond a new bore, and serviceable", fs)
	}
	// The printed inches: 10, 45 and 90 mm are 0.394, 1.771 and 3.740 in (the middle one cut, not
	// rounded), 0.15 mm is 0.0059 in.
	if s := (150 * um).Format(units.Inch, 4); s != "0.0059 in" {
		t.Errorf("wear limit %s", s)
	}
}

// Limits on taper and out-of-round of small engines, each as printed; the manuals differ.
func TestPrintedLimits(t *testing.T) {
	thou := units.Thou
	for _, c := range []struct {
		source         string
		ovality, taper units.Length
	}{
		{"TM 10-4320-351-14, 6.4.5", 2 * thou, 2 * thou},
		{"TM 5-3895-346-14, used liner", 3 * thou, 2 * thou},
		{"TM 9-2815-202-34 p. 4-147, used liner", 5 * thou / 2, 2 * thou},
	} {
		at := func(depth, thrust, pin units.Length) []bore.Reading {
			return []bore.Reading{
				{Depth: depth, Axis: bore.ThrustAxis, Diameter: thrust},
				{Depth: depth, Axis: bore.PinAxis, Diameter: pin},
			}
		}
		l := bore.Limits{Ovality: c.ovality, Taper: c.taper}
		for _, over := range []units.Length{0, 1} {
			want := uncertainty.Within
			if over > 0 {
				want = uncertainty.Beyond
			}
			base := 67 * mm
			oval := measure(t, at(10*mm, base+c.ovality+over, base))
			if fs, err := oval.Judge(bore.Limits{Ovality: l.Ovality}, noRisk); err != nil || fs[0].Verdict != want {
				t.Errorf("%s: ovality %v over the limit: %v, %v", c.source, over, fs, err)
			}
			tapered := append(at(10*mm, base+c.taper+over, base), at(90*mm, base, base)...)
			if f := judge1(t, spanning(tapered), bore.Gauge{}, bore.Limits{Taper: l.Taper}, tapered...); f.Verdict != want {
				t.Errorf("%s: taper %v over the limit: %v", c.source, over, f)
			}
		}
	}
}

// The levels of Navy training manual 14076, 3-5: just below the highest point of the top ring, in
// the middle, just above the lowest point of travel.
func TestPlanLevels(t *testing.T) {
	l := bore.Layout{Length: 100 * mm, RingTop: 8 * mm, RingBottom: 88 * mm}
	plan, err := l.ToRead(2, bore.TwoPoint)
	must(t, plan, err)
	var depths []units.Length
	for _, r := range plan {
		if !slices.Contains(depths, r.Depth) {
			depths = append(depths, r.Depth)
		}
	}
	want := []units.Length{12 * mm, 48 * mm, 84 * mm, 94 * mm}
	if !slices.Equal(depths, want) || len(plan) != 8 {
		t.Errorf("plan at %v with %d readings, want %v with 8", depths, len(plan), want)
	}
}

// A slip in print: TM 5-4320-304-14 has 2.8774 in beside 73.01 mm, which is 2.87441 in. Read as
// printed, the inches are a bore of 73.086 mm.
func TestPrintedUnitSlip(t *testing.T) {
	if s := units.MustParseLength("73.01 mm").Format(units.Inch, 5); s != "2.87441 in" {
		t.Error(s)
	}
	if s := units.MustParseLength("2.8774 in").Format(units.Millimetre, 3); s != "73.086 mm" {
		t.Error(s)
	}
}

// Curves of constant width (geometry: Barbier): no two opposed anvils see an odd lobe.
func TestOddLobesUnseen(t *testing.T) {
	for _, n := range []int{3, 5, 7} {
		w := wall(func(d float64) float64 { return 33.5 + 0.05*math.Cos(float64(n)*d) })
		g := measure(t, w.read(10*mm, even(6)...))
		if g.Ovality.Value != 0 || g.Planes[0].TwoLobe.Amplitude.Value != 0 || g.Largest.Size.Value != 67*mm {
			t.Errorf("%d lobes: ovality %v, largest %v", n, g.Ovality, g.Largest.Size)
		}
		if !slices.Contains(g.Unseen, bore.UnseenOddLobes) {
			t.Errorf("%d lobes: unseen %v", n, g.Unseen)
		}
	}
}

// r = R + 0.02·cos 2t: greatest less least diameter 0.08 (computed, geometry).
func TestOvalBore(t *testing.T) {
	w := wall(func(d float64) float64 { return 33.5 + 0.02*math.Cos(2*d) })
	g := measure(t, w.read(10*mm, 0, 45, 90, 135))
	within(t, "ovality", g.Ovality.Value, 80*um, 1)
	h := g.Planes[0].Harmonics()[0]
	if h.Order != 2 {
		t.Errorf("order %d", h.Order)
	}
	within(t, "radial amplitude", h.Amplitude, 20*um, 0)
}

// Two opposed points see an even order twice and an odd one not at all (the idea of ISO 4292;
// computed): the diameters range over 2·(2c) for a radial amplitude c.
func TestTwoPointFactors(t *testing.T) {
	for n := 2; n <= 10; n++ {
		w := wall(func(d float64) float64 { return 43.75 + 0.01*math.Cos(float64(n)*d) })
		want := units.Length(0)
		if n%2 == 0 {
			want = 40 * um
		}
		within(t, "range of diameters", measure(t, w.read(mm, even(360)...)).Spread.Value, want, 2)
	}
}

// A wall of two, three, four and five lobes; expected values computed.
func TestFourAxesOfAMixedForm(t *testing.T) {
	cos := func(n, d, phase float64) float64 { return math.Cos(n * (d - phase*math.Pi/180)) }
	w := wall(func(d float64) float64 {
		return 43.75 + 0.010*cos(2, d, 20) + 0.006*cos(3, d, 0) + 0.003*cos(4, d, 10) + 0.002*cos(5, d, 0)
	})
	for i, want := range []float64{87.5199171555, 87.5082594855, 87.4892753778, 87.4825479811} {
		within(t, "diameter", w.diameter(degrees(even(4)[i])), millimetres(want), units.Length(100))
	}
	for _, c := range []struct {
		axes   int
		range_ float64
	}{{2, 0.0306417777}, {4, 0.0373691744}, {6, 0.0376691189}, {12, 0.0430862741}} {
		g := measure(t, w.read(mm, even(c.axes)...))
		within(t, "greatest less least", g.Ovality.Value, millimetres(c.range_), units.Length(200))
		if c.axes < 4 {
			continue
		}
		two := g.Planes[0].TwoLobe
		within(t, "two lobes", two.Amplitude.Value, 20*um, 0)
		if axisApart(two.Axis, degrees(20), 180) > 1e-5 {
			t.Errorf("%d axes: long axis at %v, want 20°", c.axes, two.Axis)
		}
		four := g.Planes[0].FourLobe
		if c.axes < 5 {
			if four != (bore.Lobes{}) {
				t.Errorf("four lobes from %d axes", c.axes)
			}
			continue
		}
		within(t, "four lobes", four.Amplitude.Value, 6*um, 0)
		if axisApart(four.Axis, degrees(10), 90) > 1e-5 {
			t.Errorf("%d axes: four lobes at %v, want 10°", c.axes, four.Axis)
		}
	}
	// Three axes cannot tell two lobes from four, and say so.
	g := measure(t, w.read(mm, even(3)...))
	if a := g.Planes[0].TwoLobe.Amplitude.Value; (a - 20*um).Abs() < um {
		t.Errorf("three axes: two lobes of %v, as if the four lobes were not folded in", a)
	}
	if !slices.Contains(g.Unseen, bore.UnseenFolded) {
		t.Errorf("three axes: unseen %v", g.Unseen)
	}
}

// The mean width of a closed convex curve is its perimeter over π (Cauchy–Crofton): 87.50000714 mm
// for that ellipse (perimeter 4aE(e²), DLMF 19.9), and not 87.5 mm.
func TestMeanWidthIsPerimeterOverPi(t *testing.T) {
	const a, b = 43.775, 43.725
	want := 4 * a * mathext.CompleteE(1-b*b/(a*a)) / math.Pi
	if math.Abs(want-87.5000071428572886) > 1e-12 {
		t.Errorf("perimeter/π = %.15f", want)
	}
	var rs []bore.Reading
	for _, x := range even(36) {
		c, s := math.Cos(x*math.Pi/180), math.Sin(x*math.Pi/180)
		rs = append(rs, bore.Reading{Axis: bore.Axis(degrees(x)), Diameter: millimetres(2 * math.Sqrt(a*a*c*c+b*b*s*s))})
	}
	within(t, "mean width", measure(t, rs).Planes[0].Mean.Value, millimetres(want), 2)
}

// The sign of taper is kept: some air-cooled barrels are smaller at the deck when cold, by
// intent (US Army TM 9-2815-200-35 p. 6-55); one that is larger there is worn out.
func TestChokeKeepsItsSign(t *testing.T) {
	read := func(deck, skirt units.Length) bore.Taper {
		return measure(t, []bore.Reading{{Depth: 5 * mm, Diameter: deck}, {Depth: 95 * mm, Diameter: skirt}}).Taper
	}
	choked := read(95*mm-80*um, 95*mm)
	if choked.Size.Value != -80*um || bore.Choke(choked).Value != 80*um {
		t.Errorf("choked barrel: taper %v, choke %v", choked.Size, bore.Choke(choked))
	}
	if s := choked.String(); s != "thrust: 0.08 mm smaller at 5 mm than at 95 mm" {
		t.Error(s)
	}
	worn := read(95*mm+40*um, 95*mm)
	if worn.Size.Value != 40*um || bore.Choke(worn).Value != -40*um {
		t.Errorf("worn barrel: taper %v, choke %v", worn.Size, bore.Choke(worn))
	}
	if s := worn.String(); s != "thrust: 0.04 mm larger at 5 mm than at 95 mm" {
		t.Error(s)
	}
	for name, c := range map[string]struct {
		taper  bore.Taper
		length units.Length
	}{
		"a length below zero":    {bore.Taper{Size: uncertainty.Estimate{Value: um}, From: mm, To: 90 * mm}, -mm},
		"a length beyond all":    {bore.Taper{Size: uncertainty.Estimate{Value: um}, From: mm, To: 90 * mm}, units.MaxLength + 1},
		"no length of its own":   {bore.Taper{Size: uncertainty.Estimate{Value: um}, From: mm, To: mm}, mm},
		"upside down":            {bore.Taper{Size: uncertainty.Estimate{Value: um}, From: 90 * mm, To: mm}, mm},
		"steeper than all sizes": {bore.Taper{Size: uncertainty.Estimate{Value: 2 * mm}, From: mm, To: mm + um}, units.MaxLength},
	} {
		if e, err := c.taper.Per(c.length); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v, %v", name, e, err)
		}
	}
	per, err := worn.Per(45 * mm)
	if must(t, per, err).Value != 20*um {
		t.Errorf("taper per 45 mm: %v", per)
	}
}

// One-sided wear of 0.15 mm on a bore of 67 mm, 0.02 mm more to clean up, radial: 0.34 mm over on
// the original centre, 0.19 mm over on the worn one, the axis moving by 0.075 mm (geometry,
// computed). A worn spot beyond one oversize goes to the next (FAA powerplant handbook).
func TestCleanUpCentres(t *testing.T) {
	g := measure(t, []bore.Reading{{Diameter: 67*mm + 150*um}, {Axis: bore.PinAxis, Diameter: 67 * mm}})
	w := bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * mm}, Share: 1, Allowances: bore.Allowances{Surface: 20 * um}}
	c, err := g.CleanUp(w)
	must(t, c, err)
	within(t, "original centre", c.Original.Max.Value, 67*mm+340*um, 0)
	if c.Original.Min != c.Original.Max {
		t.Errorf("original centre, share known: %v", c.Original)
	}
	within(t, "worn centre", c.Worn.Min.Value, 67*mm+190*um, 0)
	within(t, "shift", c.Shift, 75*um, 0)
	within(t, "extra", c.Extra, 40*um, 0)
	// Worn alike on both sides to 67.31 mm: 0.25 mm over does not clean up, 0.50 mm over does.
	g = measure(t, []bore.Reading{{Diameter: 67*mm + 310*um}, {Axis: bore.PinAxis, Diameter: 67 * mm}})
	c, err = g.CleanUp(bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * mm}, Share: 0.5})
	if need := must(t, c, err).Original.Max.Value; need <= 67*mm+250*um || need > 67*mm+500*um {
		t.Errorf("cleans up at %v", need)
	}
}

// The least end gap is to be found where the bore is smallest (cautions of US Army TM
// 10-3930-653-14&P and TM 9-2815-254-24 p. 3-133): at the bottom of a worn bore, at the deck of a
// choked one.
func TestSmallestPlace(t *testing.T) {
	if at := measure(t, sixReadings()).Smallest; at.Depth != 90*mm || at.Axis != bore.PinAxis {
		t.Errorf("worn bore: smallest at %v, %v", at.Depth, at.Axis)
	}
	choked := []bore.Reading{{Depth: 5 * mm, Diameter: 95*mm - 80*um}, {Depth: 95 * mm, Diameter: 95 * mm}}
	if at := measure(t, choked).Smallest; at.Depth != 5*mm {
		t.Errorf("choked barrel: smallest at %v", at.Depth)
	}
}

// How far one reading scatters, pooled over the places read more than once. NIST/SEMATECH
// e-Handbook of Statistical Methods 2.6.1, gauge study MPC61 (public domain): probe 2362, standard
// deviations of six readings; pooled over 60 of them 0.0728667253736 (computed). Read here as mm.
func TestRepeatsPool(t *testing.T) {
	stds := []float64{
		0.0480, 0.0577, 0.0516, 0.0386, 0.0256, 0.0420, 0.0818, 0.0723, 0.0756, 0.0475, 0.0517, 0.0485,
		0.1024, 0.0943, 0.0622, 0.0702, 0.0627, 0.0622, 0.0320, 0.1020, 0.0580, 0.1049, 0.0702, 0.0661,
		0.0503, 0.0919, 0.0282, 0.0513, 0.0627, 0.1010, 0.0785, 0.0430, 0.0983, 0.0773, 0.0587, 0.0776,
		0.1279, 0.1131, 0.0519, 0.0903, 0.0783, 0.0718, 0.0996, 0.0533, 0.0364, 0.0768, 0.1042, 0.0868,
		0.0585, 0.0868, 0.0855, 0.0645, 0.0638, 0.0549, 0.0813, 0.0605, 0.0882, 0.0702, 0.0591, 0.0556,
	}
	var rs []bore.Reading
	for i, s := range stds {
		d := millimetres(s * math.Sqrt(5./6)) // three readings above and three below, by this, scatter by s
		for k := range 6 {
			r := bore.Reading{Depth: units.Length(i) * mm, Diameter: 67*mm + d}
			if k%2 == 0 {
				r.Diameter -= 2 * d
			}
			rs = append(rs, r)
		}
	}
	var found bool
	for _, c := range measure(t, rs).Budget.Components {
		if c.Name != "repeatability" {
			continue
		}
		found = true
		if one := c.Std * math.Sqrt(6) / 1000; math.Abs(one-0.0728667253736) > 1e-9 {
			t.Errorf("one reading scatters by %.12f mm", one)
		}
		if c.DoF != 300 {
			t.Errorf("%v degrees of freedom, want 300", c.DoF)
		}
	}
	if !found {
		t.Error("no repeatability in the budget")
	}
}
