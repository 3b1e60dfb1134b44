// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func TestCompare(t *testing.T) {
	before := measure(t, sixReadings())
	after := sixReadings()
	for i := range after { // honed to a true cylinder of 67.120 mm, all but one place
		after[i].Diameter = 67*mm + 120*um
	}
	after[3].Diameter += 2 * um  // at 45 mm, pin
	after[5].Diameter -= 20 * um // at 90 mm, pin
	after = append(after, at(120, 0, "67.05 mm"))
	c, err := bore.Compare(before, measure(t, after))
	must(t, c, err)
	if len(c.Places) != 6 {
		t.Fatalf("places %v", c.Places)
	}
	within(t, "least stock", c.Least.Stock.Value, 15*um, 0)
	within(t, "most stock", c.Most.Stock.Value, 100*um, 0)
	within(t, "spread of stock", c.Spread.Value, 85*um, 0)
	within(t, "mean stock", c.Stock.Value, units.Length(15+50+60+82+100+88)*um/6, 1)
	within(t, "ovality gained", c.OvalityGained.Value, 15*um, 0)
	within(t, "taper gained", c.TaperGained.Value, 85*um-70*um, 0) // from +85 µm to +70 µm, at the new depth
	within(t, "spread gained", c.SpreadGained.Value, 93*um-72*um, 0)
	if c.Least.Depth != 10*mm || c.Least.Axis != bore.ThrustAxis || c.Most.Depth != 90*mm || c.Most.Axis != bore.ThrustAxis {
		t.Errorf("least %v, most %v", c.Least, c.Most)
	}
	if _, err := bore.Compare(before, measure(t, []bore.Reading{at(11, 0, "67 mm")})); !errors.Is(err, bore.ErrNoReadings) {
		t.Errorf("nothing in common: %v", err)
	}
	// From one axis nothing is said of ovality; of one place there is no spread.
	one := measure(t, []bore.Reading{at(10, 0, "67 mm")})
	c, err = bore.Compare(one, before)
	if must(t, c, err); c.Spread != (uncertainty.Estimate{}) || c.OvalityGained != (uncertainty.Estimate{}) || c.TaperGained != (uncertainty.Estimate{}) {
		t.Errorf("%+v", c)
	}
	c, err = bore.Compare(before, one)
	if must(t, c, err); c.OvalityGained != (uncertainty.Estimate{}) || c.TaperGained != (uncertainty.Estimate{}) {
		t.Errorf("%+v", c)
	}
}

func TestCompareProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		stock := length(t, "stock", 0, mm)
		bored := slices.Clone(rs)
		for i := range bored {
			bored[i].Diameter += stock
		}
		a, b := measure(t, rs), measure(t, bored)
		c, err := bore.Compare(a, b)
		must(t, c, err)
		if c.Stock.Value != stock || c.Least.Stock.Value != stock || c.Most.Stock.Value != stock || c.Spread.Value != 0 ||
			c.OvalityGained.Value != 0 || c.TaperGained.Value != 0 || c.SpreadGained.Value != 0 {
			t.Fatalf("stock %v everywhere: %+v", stock, c)
		}
		back, err := bore.Compare(b, a)
		must(t, back, err)
		if back.Most.Stock.Value != -stock || back.Least.Stock.Value != -stock {
			t.Fatalf("back: most %v, least %v", back.Most, back.Least)
		}
		for i := range c.Places {
			if back.Places[i].Stock.Value != -c.Places[i].Stock.Value || back.Places[i].Stock.Std != c.Places[i].Stock.Std {
				t.Fatalf("there %v, back %v", c.Places[i], back.Places[i])
			}
		}
	})
}

// Two settings of a gauge that is good to u each: the difference is good to √2·u.
func TestCompareDoubt(t *testing.T) {
	g := bore.Gauge{Standard: bore.Standard{Size: 67 * mm, Std: 3 * um}, Repeatability: 4 * um}
	a, err := bore.Analyse(sixReadings(), g)
	must(t, a, err)
	c, err := bore.Compare(a, a)
	must(t, c, err)
	within(t, "stock at a place", c.Places[0].Stock.Std, millimetres(5*math.Sqrt2/1000), nm)
	within(t, "mean stock", c.Stock.Std, millimetres(5*math.Sqrt2/1000), nm)
	within(t, "ovality gained", c.OvalityGained.Std, 8*um, 2*nm)
	c, err = bore.Compare(a, measure(t, []bore.Reading{at(10, 0, "67.2 mm"), at(90, 0, "67.2 mm")}))
	must(t, c, err)
	within(t, "spread of stock", c.Spread.Std, millimetres(4*math.Sqrt2/1000), 2*nm)
	honed, err := bore.Analyse([]bore.Reading{at(10, 0, "67.2 mm"), at(90, 0, "67.2 mm")}, g)
	must(t, honed, err)
	c, err = bore.Compare(a, honed)
	must(t, c, err)
	within(t, "spread of stock, both doubtful", c.Spread.Std, 8*um, 2*nm)
}

func survey(at float64, size units.Length, std units.Length) bore.Survey {
	return bore.Survey{At: at, Size: uncertainty.Estimate{Value: size, Std: std}}
}

func TestWearRate(t *testing.T) {
	ss := []bore.Survey{survey(500, 67*mm+20*um, 3*um), survey(1500, 67*mm+60*um, 4*um)}
	r, err := bore.WearRate(ss, 1000)
	must(t, r, err)
	within(t, "rate", r.Value, 40*um, 1)
	within(t, "its doubt", r.Std, 5*um, nm)
	expected, _, err := bore.WornOutAt(ss, 67*mm+100*um, 0.05)
	must(t, expected, err)
	if math.Abs(expected-2500) > 1e-6 {
		t.Errorf("expected at %v", expected)
	}
	// There the line stands at k·u: 1.644854·√(1/Σw + (x·u)²) short of the limit, x from the weighted middle.
	const w1, w2 = 1. / 9, 1. / 16
	const middle, size = (500*w1 + 1500*w2) / (w1 + w2), 67_000 + (20*w1+60*w2)/(w1+w2)
	for _, risk := range []float64{0.5, 0.2, 0.05, 0.001} {
		expected, earliest, err := bore.WornOutAt(ss, 67*mm+100*um, risk)
		must(t, expected, err)
		k, err := uncertainty.Coverage(1-2*min(risk, 0.4999999), 0)
		must(t, k, err)
		x := (earliest - middle) / 1000
		top := size + x*40 + k*math.Hypot(1/math.Sqrt(w1+w2), x*5)
		if math.Abs(top-67_100) > 2e-3 || earliest > expected || earliest < 1500 {
			t.Errorf("risk %v: earliest %v, where the upper bound stands at %.4f µm", risk, earliest, top)
		}
	}
	// A limit already reached is reached at the last survey.
	expected, earliest, err := bore.WornOutAt(ss, 67*mm+10*um, 0.05)
	if must(t, expected, err); expected != 1500 || earliest != 1500 {
		t.Errorf("reached: %v, %v", expected, earliest)
	}
	// One that the doubt of the size alone may have reached is not to be trusted from now on.
	expected, earliest, err = bore.WornOutAt(ss, 67*mm+61*um, 0.05)
	if must(t, expected, err); math.Abs(expected-1525) > 1e-6 || earliest != 1500 {
		t.Errorf("nearly reached: %v, %v", expected, earliest)
	}
	// Growth that does not stand out of its doubt may reach any limit soon, though it is not expected to.
	ss = []bore.Survey{survey(0, 67*mm, 5*um), survey(1000, 67*mm+2*um, 5*um)}
	expected, earliest, err = bore.WornOutAt(ss, 67*mm+50*um, 0.05)
	if must(t, expected, err); math.Abs(expected-25_000) > 1e-6 || earliest < 1000 || earliest > 5000 {
		t.Errorf("slow: %v, %v", expected, earliest)
	}
}

// Three surveys or more that scatter more than their doubt show it: numbers by hand. Sizes 0, 10,
// 5 and 15 µm at 0, 1, 2 and 3 thousand hours: growth 4 µm, residuals −1.5, 4.5, −4.5, 1.5 µm
// with square sum 45, s = √(45/2), u = s/√5.
func TestWearRateScatter(t *testing.T) {
	var ss []bore.Survey
	for i, over := range []units.Length{0, 10, 5, 15} {
		ss = append(ss, survey(float64(1000*i), 67*mm+over*um, um))
	}
	r, err := bore.WearRate(ss, 1000)
	must(t, r, err)
	within(t, "rate", r.Value, 4*um, 1)
	within(t, "its doubt", r.Std, millimetres(math.Sqrt(45./2/5)/1000), nm)
	if r.DoF != 2 {
		t.Errorf("%+v", r)
	}
	// Size 7.5 µm at 1500 hours, so 27.5 µm at 6500.
	if expected, _, err := bore.WornOutAt(ss, 67*mm+27_500*nm, 0.05); err != nil || math.Abs(expected-6500) > 1e-3 {
		t.Errorf("27.5 µm expected at %v, %v", expected, err)
	}
	for i := range ss {
		ss[i].Size.Std = 20 * um // more than they scatter: the doubts stand
	}
	r, err = bore.WearRate(ss, 1000)
	must(t, r, err)
	within(t, "its doubt", r.Std, millimetres(20/math.Sqrt(5)/1000), nm)
}

// Surveys of unequal doubt, against the normal equations of weighted least squares.
func TestWearRateWeighs(t *testing.T) {
	at, over, std := []float64{100, 400, 1100, 2000}, []float64{3, 17, 46, 80}, []float64{4, 2, 5, 3}
	var ss []bore.Survey
	var w, wt, wd, wtt, wtd float64
	for i := range at {
		ss = append(ss, survey(float64(at[i]), millimetres(67+over[i]/1000), millimetres(std[i]/1000)))
		k := 1 / (std[i] * std[i])
		w, wt, wd, wtt, wtd = w+k, wt+k*at[i], wd+k*over[i], wtt+k*at[i]*at[i], wtd+k*at[i]*over[i]
	}
	det := w*wtt - wt*wt
	r, err := bore.WearRate(ss, 1000)
	must(t, r, err)
	slope, u := (w*wtd-wt*wd)/det, math.Sqrt(w/det) // µm an hour is mm in 1000 hours
	within(t, "rate", r.Value, millimetres(slope), 1)
	within(t, "its doubt", r.Std, millimetres(u), nm)
	if r.DoF != 0 {
		t.Errorf("%+v", r)
	}
	expected, earliest, err := bore.WornOutAt(ss, 67*mm+120*um, 0.05)
	must(t, expected, err)
	if want := wt/w + (120-wd/w)/slope; math.Abs(expected-want) > 1e-2 {
		t.Errorf("120 µm expected at %v, want %v", expected, want)
	}
	x := earliest - wt/w
	if top := wd/w + x*slope + 1.644854*math.Hypot(1/math.Sqrt(w), x*u); math.Abs(top-120) > 2e-3 {
		t.Errorf("earliest %v, where the upper bound stands at %.4f µm", earliest, top)
	}
}

func TestWearRateRefusals(t *testing.T) {
	a, b := survey(0, 67*mm, um), survey(1000, 67*mm+10*um, um)
	for name, c := range map[string]struct {
		ss   []bore.Survey
		per  float64
		want error
	}{
		"none":               {nil, 1, units.ErrRange},
		"one":                {[]bore.Survey{a}, 1, units.ErrRange},
		"one time":           {[]bore.Survey{a, a}, 1, units.ErrRange},
		"exact and not":      {[]bore.Survey{a, survey(1000, 67*mm, 0)}, 1, units.ErrNotGiven},
		"time not a number":  {[]bore.Survey{a, survey(math.NaN(), 67*mm, um)}, 1, units.ErrRange},
		"time endless":       {[]bore.Survey{a, survey(math.Inf(1), 67*mm, um)}, 1, units.ErrRange},
		"doubt below zero":   {[]bore.Survey{a, survey(1000, 67*mm, -1)}, 1, uncertainty.ErrStd},
		"no size":            {[]bore.Survey{a, survey(1000, 0, um)}, 1, units.ErrNotGiven},
		"size below zero":    {[]bore.Survey{a, survey(1000, -67*mm, um)}, 1, units.ErrRange},
		"size beyond all":    {[]bore.Survey{a, survey(1000, math.MaxInt64, 1)}, 1, units.ErrRange},
		"stretch of nothing": {[]bore.Survey{a, b}, 0, units.ErrNotGiven},
		"stretch backwards":  {[]bore.Survey{a, b}, -1, units.ErrRange},
		"stretch no number":  {[]bore.Survey{a, b}, math.NaN(), units.ErrRange},
		"stretch endless":    {[]bore.Survey{a, b}, math.Inf(1), units.ErrRange},
	} {
		if _, err := bore.WearRate(c.ss, c.per); !errors.Is(err, c.want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	most := []bore.Survey{survey(-1e9, 67*mm, um), survey(1e9, 68*mm, um)}
	if _, err := bore.WearRate(most, 1e9); err != nil {
		t.Errorf("as much as a log counts: %v", err)
	}
	most[1].At += 1
	if _, err := bore.WearRate(most, 1e9); !errors.Is(err, units.ErrRange) {
		t.Errorf("more than a log counts: %v", err)
	}
	// Times so close that the growth over the stretch is beyond all sizes.
	if _, err := bore.WearRate([]bore.Survey{a, survey(1e-9, 68*mm, um)}, 1e9); !errors.Is(err, units.ErrRange) {
		t.Errorf("too steep: %v", err)
	}
	good := []bore.Survey{a, b}
	for name, c := range map[string]struct {
		ss   []bore.Survey
		risk float64
	}{
		"no risk":        {good, 0},
		"risk too great": {good, 0.51},
		"no number":      {good, math.NaN()},
		"one survey":     {good[:1], 0.05},
		"shrinking":      {[]bore.Survey{a, survey(1000, 67*mm-um, um)}, 0.05},
		"too slow":       {[]bore.Survey{a, survey(1e6, 67*mm+um, um)}, 0.05},
	} {
		if expected, earliest, err := bore.WornOutAt(c.ss, 69*mm, c.risk); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v, %v, %v", name, expected, earliest, err)
		}
	}
	for limit, want := range map[units.Length]error{math.MaxInt64: units.ErrRange, -1: units.ErrRange, 0: units.ErrNotGiven} {
		if _, _, err := bore.WornOutAt(good, limit, 0.05); !errors.Is(err, want) {
			t.Errorf("a limit of %v: %v", limit, err)
		}
	}
}

// Exact surveys of a straight line give it back, in any order, over any stretch.
func TestWearRateOfALine(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		perHour := length(t, "growth", nm, um)
		var ss []bore.Survey
		hour := 0
		for range rapid.IntRange(2, 6).Draw(t, "surveys") {
			hour += rapid.IntRange(1, 500).Draw(t, "hours")
			ss = append(ss, survey(float64(hour), 67*mm+units.Length(hour)*perHour, 0))
		}
		per := rapid.IntRange(1, 1000).Draw(t, "per")
		ss = rapid.Permutation(ss).Draw(t, "order")
		r, err := bore.WearRate(ss, float64(per))
		must(t, r, err)
		if d := (r.Value - units.Length(per)*perHour).Abs(); d > 2+units.Length(per)/100 || r.Std > nm {
			t.Fatalf("%v over %d hours, want %v an hour", r, per, perHour)
		}
		later := hour + rapid.IntRange(0, 5000).Draw(t, "later")
		expected, _, err := bore.WornOutAt(ss, 67*mm+units.Length(later)*perHour, 0.05)
		must(t, expected, err)
		if math.Abs(expected-float64(later)) > 0.2 {
			t.Fatalf("reached at %v, want %d", expected, later)
		}
	})
}
