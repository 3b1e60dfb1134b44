// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/bits"
	"math/rand/v2"
	"reflect"
	"slices"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
)

const um = units.Micrometre

// ring is a ring of 67 mm read ten times, invented: thousandths above it.
func ring() []units.Length {
	var all []units.Length
	for _, d := range []units.Length{1, 3, 2, 0, 2, 4, 1, 2, 3, 1} {
		all = append(all, 67*units.Millimetre+d*um)
	}
	return all
}

func ofRing(readings []units.Length) []study.Trial {
	var all []study.Trial
	for _, r := range readings {
		all = append(all, study.Trial{Reading: r})
	}
	return all
}

// One ring, one person: the standard deviation of the readings, and all else unseen.
func TestRing(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(ofRing(ring())))
	var xs []float64
	for _, r := range ring() {
		xs = append(xs, r.In(um))
	}
	want := must[uncertainty.Sample](t)(uncertainty.Describe(xs...))
	near(t, "std", s.Repeatability.Std.In(um), want.Std, 1e-6)
	near(t, "dof", s.Repeatability.DoF, 9, 0)
	if s.Gauge.Std != s.Repeatability.Std || s.Part.Std != 0 || s.Categories() != 0 || s.Reproducibility.Terms != nil {
		t.Errorf("%+v", s)
	}
	if !slices.Equal(s.Unseen, []string{"interaction", "person", "part"}) {
		t.Error(s.Unseen)
	}
	// a doubt with nine degrees of freedom: t₀.₉₇₅(9) = 2.2621571627 (computed)
	one := must[uncertainty.Estimate](t)(s.Doubt(study.Sizes, 1))
	near(t, "U", must[units.Length](t)(one.Expanded(0.95)).In(um), 2.2621571627*want.Std, 1e-5)
	between := must[uncertainty.Estimate](t)(s.Doubt(study.Differences, 4))
	near(t, "u of a difference of means of four", between.Std.In(um), want.Std*math.Sqrt(2.0/4), 1e-6)
	for _, c := range []struct {
		use  study.Use
		most units.Length
		want int
	}{
		{study.Sizes, 3 * um, 1}, {study.Sizes, 1 * um, 8}, {study.Differences, 1 * um, 15}, {study.Sizes, 100 * units.Nanometre, 0},
	} {
		n := must[int](t)(s.Repeats(c.use, c.most))
		// the least n with k·s·√(1 or 2)/√n ≤ most
		k := 2.2621571627 * want.Std / c.most.In(um)
		if c.use == study.Differences {
			k *= math.Sqrt2
		}
		exact := int(math.Ceil(k * k))
		if exact > 100 {
			exact = 0
		}
		if n != c.want || n != exact {
			t.Errorf("%v to %v: %d readings, want %d, by the formula %d", c.use, c.most, n, c.want, exact)
		}
	}
}

// Persons do not average out over repeats, and leave a difference.
func TestDoubt(t *testing.T) {
	if e, err := (study.Study{}).Doubt(study.Sizes, 1); !errors.Is(err, study.ErrTrials) {
		t.Errorf("no study at all: %v, %v", e, err)
	}
	s := study.Study{
		Repeatability: study.Component{Std: 2 * um, DoF: 20}, Interaction: study.Component{Std: um, DoF: 10}, Person: study.Component{Std: 3 * um, DoF: 2},
	}
	for _, c := range []struct {
		use  study.Use
		n    int
		want float64
	}{
		{study.Sizes, 1, 4 + 1 + 9}, {study.Sizes, 4, 1 + 1 + 9}, {study.Sizes, 0, 4 + 1 + 9},
		{study.Differences, 1, 8 + 2}, {study.Differences, 4, 2 + 2},
	} {
		e := must[uncertainty.Estimate](t)(s.Doubt(c.use, c.n))
		near(t, "variance", e.Std.In(um)*e.Std.In(um), c.want, 1e-5)
	}
	if n := must[int](t)(s.Repeats(study.Sizes, 6*um)); n != 0 {
		t.Errorf("%d readings of persons who differ", n)
	}
	if _, err := s.Doubt(study.Use(7), 1); !errors.Is(err, units.ErrUnknownName) {
		t.Error(err)
	}
}

// One reading by each person of each part: the interaction is in the repeatability, and is said to be unseen.
func TestWithoutRepeats(t *testing.T) {
	plan := [][]int{{1, 1}, {1, 1}, {1, 1}}
	x := [][]units.Length{{10, 14}, {20, 22}, {33, 31}}
	s := must[study.Study](t)(study.Analyse(readings(plan, func(i, j, _ int) units.Length { return x[i][j] * um })))
	// by hand: differences within parts −4, −2, 2; their scatter about −4/3 is 2·SS(error): SS = (16+4+4 − 3·16/9)/2
	near(t, "MS", s.Repeatability.Std.In(um)*s.Repeatability.Std.In(um), (24-16.0/3)/2/2, 1e-5)
	if !slices.Equal(s.Unseen, []string{"interaction"}) || s.Repeatability.DoF != 2 || !s.Balanced {
		t.Errorf("%+v", s)
	}
}

// What came out below zero is zero, says so, and still has an upper end.
func TestNegative(t *testing.T) {
	plan := [][]int{{2, 2}, {2, 2}, {2, 2}}
	turn := [][]int{{1, -1}, {-1, 1}, {0, 0}} // persons alike on the whole, and a little less so on each part
	s := must[study.Study](t)(study.Analyse(readings(plan, func(i, j, k int) units.Length { return units.Length(100*i+10*k+turn[i][j]) * um })))
	for _, c := range []study.Component{s.Interaction, s.Reproducibility} {
		if !c.Negative || c.Std != 0 || c.DoF < 1 {
			t.Errorf("%+v", c)
		}
		i := must[units.Limits](t)(c.Interval())
		if i.Min != 0 || i.Max < 0 {
			t.Error(i)
		}
	}
	if s.Gauge.Std != s.Repeatability.Std || s.Gauge.Negative {
		t.Errorf("%+v", s.Gauge)
	}
}

func TestStudyJSON(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(trials(t, "grr_thermal_impedance_10x3x3.csv", 1, 0, 3)))
	b := must[[]byte](t)(json.Marshal(s))
	var back study.Study
	if err := json.Unmarshal(b, &back); err != nil || !reflect.DeepEqual(s, back) {
		t.Errorf("%v\n%+v\n%+v", err, s, back)
	}
}

func TestRefusals(t *testing.T) {
	trial := func(part, person string, r units.Length) study.Trial {
		return study.Trial{Part: part, Person: person, Reading: r}
	}
	second := func(_ any, err error) error { return err }
	mm := units.Millimetre
	check := func(size, std, reading units.Length) study.Check {
		return study.Check{Standard: size, Std: std, Reading: reading}
	}
	p := study.Process{Mean: 67 * mm, Std: 5 * um}
	w := units.Limits{Min: 66 * mm, Max: 68 * mm}
	for name, c := range map[string]struct{ got, want error }{
		"none":             {second(study.Analyse(nil)), study.ErrTrials},
		"one":              {second(study.Analyse([]study.Trial{trial("a", "x", 1)})), study.ErrTrials},
		"too many":         {second(study.Analyse(make([]study.Trial, 1001))), study.ErrTrials},
		"no repeat":        {second(study.Analyse([]study.Trial{trial("a", "x", 1), trial("b", "x", 2)})), study.ErrTrials},
		"no common part":   {second(study.Analyse([]study.Trial{trial("a", "x", 1), trial("a", "x", 2), trial("b", "y", 1), trial("b", "y", 2)})), study.ErrTrials},
		"largest":          {second(study.Analyse([]study.Trial{trial("", "", units.MaxLength), trial("", "", units.MaxLength)})), nil},
		"mean square":      {second(study.Analyse(append(slices.Repeat([]study.Trial{trial("a", "", -5000*mm)}, 10), slices.Repeat([]study.Trial{trial("b", "", 5000*mm)}, 10)...))), units.ErrRange},
		"too long":         {second(study.Analyse([]study.Trial{trial("", "", 1), trial("", "", math.MaxInt64)})), units.ErrRange},
		"too short":        {second(study.Analyse([]study.Trial{trial("", "", math.MinInt64), trial("", "", 1)})), units.ErrRange},
		"ranges of one":    {second(study.ByRanges([]study.Trial{trial("a", "x", 1), trial("a", "x", 2)})), study.ErrTrials},
		"ranges, unequal":  {second(study.ByRanges(trials(t, "grr_thermal_impedance_unbalanced84.csv", 1, 0, 3))), study.ErrTrials},
		"drift of two":     {second(study.DriftOf(1, 2)), study.ErrTrials},
		"drift too long":   {second(study.DriftOf(1, 2, math.MaxInt64)), units.ErrRange},
		"two rings":        {second(study.Linear(check(mm, 0, mm), check(2*mm, 0, mm), check(mm, 0, mm))), study.ErrTrials},
		"ring of two":      {second(study.Linear(check(mm, 0, mm), check(mm, 1, mm), check(2*mm, 0, mm), check(3*mm, 0, mm))), study.ErrTrials},
		"ring of none":     {second(study.Linear(check(0, 0, mm), check(1, 0, mm), check(2*mm, 0, mm), check(3*mm, 0, mm))), units.ErrRange},
		"ring, std":        {second(study.Linear(check(mm, -1, mm), check(2*mm, 0, mm), check(3*mm, 0, mm))), uncertainty.ErrStd},
		"some rings exact": {second(study.Linear(check(mm, 1, mm), check(2*mm, 0, mm), check(3*mm, 1, mm))), uncertainty.ErrStd},
		"process, spread":  {second(study.Process{Mean: 67 * mm}.Risks(um, w, w)), units.ErrRange},
		"gamma":            {second(study.Process{Mean: um, Std: 2 * um, Gamma: true}.Risks(um, w, w)), units.ErrRange},
		"past 1000 of std": {second(study.Process{Mean: mm + 1, Std: um, Gamma: true}.Risks(um, w, w)), units.ErrRange},
		"1000 of std":      {second(study.Process{Mean: mm, Std: um, Gamma: true}.Risks(um, w, w)), nil},
		"narrow gamma":     {second(study.Process{Mean: mm, Std: um - 1, Gamma: true}.Risks(um, w, w)), units.ErrRange},
		"risks, largest":   {second(p.Risks(units.MaxLength, w, w)), nil},
		"risks, too large": {second(p.Risks(units.MaxLength+1, w, w)), uncertainty.ErrStd},
		"risks, std":       {second(p.Risks(-1, w, w)), uncertainty.ErrStd},
		"no tolerance":     {second(p.Risks(um, units.Limits{}, w)), uncertainty.ErrLimits},
		"crossed":          {second(p.Risks(um, w, units.Limits{Min: 68 * mm, Max: 66 * mm})), units.ErrCrossed},
		"guard, risk":      {second(p.GuardBand(um, w, 0)), units.ErrRange},
		"guard, NaN":       {second(p.GuardBand(um, w, math.NaN())), units.ErrRange},
		"given, gamma":     {second(study.Process{Mean: mm, Std: um, Gamma: true}.Given(uncertainty.Estimate{Value: mm, Std: um})), units.ErrRange},
		"given, dof":       {second(p.Given(uncertainty.Estimate{Value: mm, Std: um, DoF: 0.5})), uncertainty.ErrStd},
		"interval, dof":    {second(study.Component{Terms: []study.Term{{Coefficient: 1}}}.Interval()), uncertainty.ErrStd},
		"interval of none": {second(study.Component{}.Interval()), study.ErrTrials},
	} {
		if !errors.Is(c.got, c.want) {
			t.Errorf("%s: %v, want %v", name, c.got, c.want)
		}
	}
}

// Up to a hundred readings of each place are asked for, and no more; readings that are all alike have a variance of zero, not
// one below.
func TestRepeatsUpToAHundred(t *testing.T) {
	s := study.Study{Trials: 30, Repeatability: study.Component{Std: 10 * um, DoF: 1000}}
	expanded := func(n int) units.Length {
		return must[units.Length](t)(must[uncertainty.Estimate](t)(s.Doubt(study.Sizes, n)).Expanded(0.95))
	}
	for most, want := range map[units.Length]int{expanded(1): 1, expanded(7): 7, expanded(7) - 1: 8, expanded(100): 100, expanded(100) - 1: 0} {
		if n := must[int](t)(s.Repeats(study.Sizes, most)); n != want {
			t.Errorf("%d readings for %v, want %d", n, most, want)
		}
	}
	alike := must[study.Study](t)(study.Analyse(ofRing([]units.Length{um, um, um})))
	if c := alike.Repeatability; c.Std != 0 || c.Negative || c.DoF != 2 {
		t.Errorf("%+v", c)
	}
}

// The chance of so few runs, against all orders of a few readings.
func TestRuns(t *testing.T) {
	xs := []units.Length{1, 2, 3, 4, 5, 6, 7, 8}
	count := map[int]float64{}
	runs := map[int]float64{}
	all := 0.0
	var permute func(k int)
	permute = func(k int) {
		if k == len(xs) {
			r := 1
			for i := 1; i < k; i++ {
				if (xs[i] > 4) != (xs[i-1] > 4) {
					r++
				}
			}
			count[r]++
			all++
			return
		}
		for i := k; i < len(xs); i++ {
			xs[k], xs[i] = xs[i], xs[k]
			permute(k + 1)
			xs[k], xs[i] = xs[i], xs[k]
		}
	}
	permute(0)
	for _, order := range [][]units.Length{{1, 2, 3, 4, 5, 6, 7, 8}, {1, 2, 5, 6, 3, 4, 7, 8}, {1, 5, 2, 6, 3, 7, 4, 8}, {1, 2, 3, 5, 6, 7, 8, 4}, {5, 1, 6, 7, 2, 3, 8, 4}} {
		d := must[study.Drift](t)(study.DriftOf(order...))
		want := 0.0
		for r, n := range count {
			if r <= d.Runs {
				want += n / all
			}
		}
		near(t, "P", d.RunsP, want, 0.5000001e-9)
		runs[d.Runs]++
	}
	if len(runs) < 4 {
		t.Error(runs)
	}
}

// Readings at the median are left out, so that there may be more above than below: against every order of them.
func TestRunsAgainstEveryOrder(t *testing.T) {
	for _, sides := range [][2]int{{0, 2}, {2, 0}, {1, 3}, {3, 1}, {2, 5}, {5, 2}, {4, 3}} {
		n := sides[0] + sides[1]
		var orders []int // a bit for each reading above
		of := func(order int) (runs int) {
			for i := range n {
				if i == 0 || order>>i&1 != order>>(i-1)&1 {
					runs++
				}
			}
			return runs
		}
		for order := range 1 << n {
			if bits.OnesCount(uint(order)) == sides[1] {
				orders = append(orders, order)
			}
		}
		for _, order := range orders {
			readings := []units.Length{0}
			for i := range n {
				readings = append(readings, units.Length(-1+2*(order>>i&1)), 0)
			}
			want := 0.0
			for _, o := range orders {
				if of(o) <= of(order) {
					want += 1 / float64(len(orders))
				}
			}
			d := must[study.Drift](t)(study.DriftOf(readings...))
			if d.Runs != of(order) {
				t.Fatalf("%v: %d runs", readings, d.Runs)
			}
			near(t, "P", d.RunsP, want, 0.5000001e-9)
		}
	}
}

// The largest length there is is a reading like any other; one beyond it is none.
func TestDriftOfTheLargest(t *testing.T) {
	const most = units.MaxLength
	if _, err := study.DriftOf(most, most-1, most, most-2); err != nil {
		t.Error(err)
	}
	if _, err := study.DriftOf(most, most-1, most+1); !errors.Is(err, units.ErrRange) {
		t.Error(err)
	}
}

// A dial that creeps is seen, one that does not is mostly not.
func TestDrift(t *testing.T) {
	rng := rand.New(rand.NewPCG(3, 1))
	const n, times = 10, 2000
	for _, c := range []struct {
		name      string
		creep     float64
		low, high float64
	}{{"steady", 0, 0, 0.05 + 4*math.Sqrt(0.05*0.95/times)}, {"creeping", 1, 0.95, 1}} {
		seen := 0.0
		for range times {
			var xs []units.Length
			for i := range n {
				xs = append(xs, units.Length(1e6*(rng.NormFloat64()+c.creep*float64(i))))
			}
			if must[study.Drift](t)(study.DriftOf(xs...)).Creeps(0.05) {
				seen += 1.0 / times
			}
		}
		if seen < c.low || seen > c.high {
			t.Errorf("%s: seen in %v, want %v to %v", c.name, seen, c.low, c.high)
		}
	}
	d := must[study.Drift](t)(study.DriftOf(0, 2*um, 4*um, 6*um))
	if d.Creep.Value != 2*um || d.Creep.Std != 0 || d.CreepP != 0 || !d.Creeps(0.05) || !d.Creeps(0) {
		t.Errorf("%+v", d)
	}
	// half of the risk is for the line, half for the runs
	for p, want := range map[float64]bool{0.0249: true, 0.0251: false} {
		if (study.Drift{CreepP: p, RunsP: 1}).Creeps(0.05) != want || (study.Drift{CreepP: 1, RunsP: p}).Creeps(0.05) != want {
			t.Errorf("creeps at %v of 0.05", p)
		}
	}
	if d := must[study.Drift](t)(study.DriftOf(um, um, um, um)); d.Lag1 != 0 || d.Creeps(0.5) || d.RunsP != 1 || d.CreepP != 1 {
		t.Errorf("all alike: %+v", d)
	}
}

func TestLinear(t *testing.T) {
	mm := units.Millimetre
	c := func(size, over, std units.Length) study.Check {
		return study.Check{Standard: size * mm, Std: std, Reading: size*mm + over}
	}
	// exact rings, one reading each: 0, 1 and 2 µm off a line of 1 µm a millimetre by 0, 0 and 0
	l := must[study.Linearity](t)(study.Linear(c(68, 3*um, 0), c(66, um, 0), c(67, 2*um, 0)))
	e := must[uncertainty.Estimate](t)(l.At(66*mm + mm/2))
	if e.Value != 1500*units.Nanometre || e.Std != 0 || l.Rings != (units.Limits{Min: 66 * mm, Max: 68 * mm}) {
		t.Errorf("%v, %+v", e, l)
	}
	for _, size := range []units.Length{66*mm - 1, 68*mm + 1} {
		if _, err := l.At(size); !errors.Is(err, units.ErrRange) {
			t.Error(size, err)
		}
	}
	// two readings of each ring, 2 µm apart: s = √2 µm, pooled with 3 degrees of freedom; a ring's own doubt
	// of 1 µm does not average out
	l = must[study.Linearity](t)(study.Linear(c(66, -um, um), c(66, um, um), c(67, 0, um), c(67, 2*um, um), c(68, um, um), c(68, 3*um, um)))
	near(t, "s", l.One.Std, math.Sqrt2, 1e-12)
	near(t, "dof", l.One.DoF, 3, 0)
	e = must[uncertainty.Estimate](t)(l.At(67 * mm))
	near(t, "u in the middle", e.Std.In(um), math.Sqrt((1+1.0)/3), 1e-6)
	e = must[uncertainty.Estimate](t)(l.At(68 * mm))
	near(t, "error at an end", e.Value.In(um), 2, 1e-6)
	near(t, "u at an end", e.Std.In(um), math.Sqrt(2.0/3+2.0/2), 1e-6)
	near(t, "greatest", must[units.Length](t)(l.Greatest()).In(um), 2+must[units.Length](t)(e.Expanded(0.95)).In(um), 1e-6)
	// a ring read once has no mean to make it better: weights 1, 1 and ½
	l = must[study.Linearity](t)(study.Linear(c(66, -um, 0), c(66, um, 0), c(67, 0, 0), c(67, 2*um, 0), c(68, 2*um, 0)))
	near(t, "u of the level", l.Line.Level.Std, 1/math.Sqrt(2.5), 1e-12)
	near(t, "middle", l.Line.Middle, (66+67+34)/2.5, 1e-12)
	// one ring read twice says what one reading scatters, however the others lie
	l = must[study.Linearity](t)(study.Linear(c(66, -um, 0), c(66, um, 0), c(67, 5*um, 0), c(68, 0, 0)))
	near(t, "s of one ring", l.One.Std, math.Sqrt2, 1e-12)
	near(t, "dof of one ring", l.One.DoF, 1, 0)
	// without repeats, one reading scatters as the rings do about the line
	l = must[study.Linearity](t)(study.Linear(c(66, 0, 0), c(67, 3*um, 0), c(68, 0, 0)))
	near(t, "one", l.One.Std, math.Sqrt(6), 1e-9)
}

// A perfect gauge takes no risk; a wider guard band takes less of the consumer's and more of the producer's;
// the least band that keeps a risk keeps it.
func TestGuardBand(t *testing.T) {
	mm := units.Millimetre
	p := study.Process{Mean: 67*mm + 4*um, Std: 6 * um}
	w := units.Limits{Min: 67*mm - 10*um, Max: 67*mm + 10*um}
	r := must[study.Risks](t)(p.Risks(0, w, w))
	if r.Consumer != 0 || r.Producer != 0 {
		t.Errorf("%+v", r)
	}
	near(t, "outside", r.Outside, 0.5*math.Erfc(1/math.Sqrt2)+0.5*math.Erfc(14.0/6/math.Sqrt2), 0.6e-9)
	last := study.Risks{Consumer: 1}
	for _, g := range []units.Length{0, um, 2 * um, 4 * um, 8 * um} {
		r := must[study.Risks](t)(p.Risks(2*um, w, units.Limits{Min: w.Min + g, Max: w.Max - g}))
		if r.Consumer >= last.Consumer || r.Producer <= last.Producer || r.Outside != 0.168467 && math.Abs(r.Outside-last.Outside) > 1e-9 && g > 0 {
			t.Errorf("guard band %v: %+v after %+v", g, r, last)
		}
		last = r
	}
	for _, w := range []units.Limits{w, {Max: w.Max}, {Min: w.Min}} {
		for _, risk := range []float64{0.02, 0.001, 1e-6} {
			g := must[units.Length](t)(p.GuardBand(2*um, w, risk))
			with := func(g units.Length) float64 {
				a := w
				if w.HasMin() {
					a.Min += g
				}
				if w.HasMax() {
					a.Max -= g
				}
				return must[study.Risks](t)(p.Risks(2*um, w, a)).Consumer
			}
			if with(g) > risk || g > 0 && with(g-units.Nanometre) <= risk || g%units.Nanometre != 0 {
				t.Errorf("%v: guard band %v for %v: %v, one less %v", w, g, risk, with(g), with(g-units.Nanometre))
			}
		}
	}
	if s := must[units.Length](t)(study.Process{Mean: 67 * mm, Std: um}.GuardBand(um, w, 0.05)); s != 0 {
		t.Error(s)
	}
	if n := (study.Study{Part: study.Component{Std: um}}).Categories(); n != 0 {
		t.Errorf("a gauge whose deviation came out as zero tells %d groups apart", n)
	}
	if r := (study.Risks{Consumer: 0.1}); r.Delivered() != 0 {
		t.Error(r.Delivered())
	}
	if e := must[uncertainty.Estimate](t)(p.Given(uncertainty.Estimate{Value: 67 * mm})); e != (uncertainty.Estimate{Value: 67 * mm}) {
		t.Error("an exact reading needs no process:", e)
	}
}

// What is accepted is a sum of two normal errors within its limits, however sharp or blunt the gauge; and a part is accepted or
// not, and good or not.
func TestRisksAddUp(t *testing.T) {
	mm := units.Millimetre
	p := study.Process{Mean: 67*mm + 4*um, Std: 6 * um}
	w, a := units.Limits{Min: 67*mm - 10*um, Max: 67*mm + 10*um}, units.Limits{Min: 67*mm - 9*um, Max: 67*mm + 8*um}
	below := func(z float64) float64 { return 0.5 * math.Erfc(-z/math.Sqrt2) }
	for _, u := range []units.Length{0, units.Nanometre, 3 * units.Nanometre, 10 * units.Nanometre, 40 * units.Nanometre, 200 * units.Nanometre, um, 6 * um, 50 * um} {
		r := must[study.Risks](t)(p.Risks(u, w, a))
		both := math.Hypot(6, u.In(um))
		near(t, "accepted", r.Accepted, below((8-4)/both)-below((-9-4)/both), 1e-9)
		near(t, "all", r.Accepted-r.Consumer+r.Producer+r.Outside, 1, 2e-9)
	}
}

// The risks against parts made and read one by one.
func TestRisksSimulated(t *testing.T) {
	rng := rand.New(rand.NewPCG(5, 1))
	mm := units.Millimetre
	p := study.Process{Mean: 67*mm + 4*um, Std: 6 * um}
	w, a := units.Limits{Min: 67*mm - 10*um, Max: 67*mm + 10*um}, units.Limits{Min: 67*mm - 9*um, Max: 67*mm + 8*um}
	const n = 200_000
	var got study.Risks
	for range n {
		x := p.Mean + units.Length(rng.NormFloat64()*float64(p.Std))
		y := x + units.Length(rng.NormFloat64()*float64(3*um))
		if !w.Contains(x) {
			got.Outside += 1.0 / n
		}
		if a.Contains(y) {
			got.Accepted += 1.0 / n
			if !w.Contains(x) {
				got.Consumer += 1.0 / n
			}
		} else if w.Contains(x) {
			got.Producer += 1.0 / n
		}
	}
	want := must[study.Risks](t)(p.Risks(3*um, w, a))
	for _, c := range [][2]float64{{got.Outside, want.Outside}, {got.Accepted, want.Accepted}, {got.Consumer, want.Consumer}, {got.Producer, want.Producer}} {
		near(t, "share", c[0], c[1], 4*math.Sqrt(c[1]/n))
	}
}
