// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"gonum.org/v1/gonum/num/hyperdual"
)

// near fails where got and want differ by more than tol.
func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s = %.15g, want %.15g ± %g", what, got, want, tol)
	}
}

func must[T any](t *testing.T) func(v T, err error) T {
	return func(v T, err error) T {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return v
	}
}

// table reads a CSV file of testdata, whose comments start with #, without its heading.
func table(t *testing.T, name string) [][]string {
	t.Helper()
	f, err := os.Open("testdata/" + name)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatal(name, len(rows), err)
	}
	return rows[1:]
}

func parse(t *testing.T, s string) float64 {
	t.Helper()
	x, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return x
}

// gumH1 is the end-gauge calibration of JCGM 100:2008 H.1, in nanometres and degrees Celsius,
// with the comparator's deviation in its three parts.
func gumH1(ls float64) (uncertainty.Model, []uncertainty.Input) {
	inputs := []uncertainty.Input{
		{Name: "ls", Value: ls, Std: 25, DoF: 18},
		{Name: "d", Value: 215, Std: 5.8, DoF: 24},
		{Name: "d random", Std: 3.9, DoF: 5},
		{Name: "d systematic", Std: 6.7, DoF: 8},
		{Name: "δα", Std: uncertainty.Rectangular(1e-6), DoF: 50},
		{Name: "θ", Value: -0.1, Std: 0.2},
		{Name: "θ cyclic", Std: uncertainty.UShaped(0.5)},
		{Name: "αs", Value: 11.5e-6, Std: uncertainty.Rectangular(2e-6)},
		{Name: "δθ", Std: uncertainty.Rectangular(0.05), DoF: 2},
	}
	// l = ls + d − ls(δα·θ + αs·δθ)
	return func(x []hyperdual.Number) hyperdual.Number {
		d := hyperdual.Add(x[1], hyperdual.Add(x[2], x[3]))
		θ := hyperdual.Add(x[5], x[6])
		growth := hyperdual.Add(hyperdual.Mul(x[4], θ), hyperdual.Mul(x[7], x[8]))
		return hyperdual.Sub(hyperdual.Add(x[0], d), hyperdual.Mul(x[0], growth))
	}, inputs
}

// JCGM 100:2008 H.1. The guide's own figures are rounded; the digits behind them are of the
// documentation and tests of a public uncertainty library (GTC) where ls is exactly 50 mm in
// the sensitivities, otherwise computed.
func TestGUMH1(t *testing.T) {
	d := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "repeats", Std: 5.8, Sensitivity: 1, DoF: 24},
		{Name: "random", Std: 3.9, Sensitivity: 1, DoF: 5},
		{Name: "systematic", Std: 6.7, Sensitivity: 1, DoF: 8},
	}}
	std, dof, err := d.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "u(d)/nm (9.7)", std, 9.68194195397, 1e-9)
	near(t, "ν(d) (25.6)", dof, 25.4472507774, 1e-9)

	θ := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "mean", Std: 0.2, Sensitivity: 1},
		{Name: "cyclic", Std: uncertainty.UShaped(0.5), Sensitivity: 1},
	}}
	std, dof, err = θ.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "u(θ)/°C (0.41)", std, 0.406201920232, 1e-11)
	near(t, "ν(θ)", dof, 0, 0)

	for _, c := range []struct{ ls, uc, nu, tol float64 }{
		{50_000_000, 31.6637674111, 16.7521475092, 1e-9},      // GTC; the guide prints 32 nm, 16.7
		{50_000_623, 31.663879111009, 16.751855737627, 2e-12}, // computed, mpmath
	} {
		model, inputs := gumH1(c.ls)
		p := must[uncertainty.Propagation](t)(uncertainty.Propagate(model, inputs))
		std, dof, err := p.Budget.Combined()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "uc/nm", std, c.uc, c.tol)
		near(t, "ν", dof, c.nu, c.tol)
		near(t, "l/nm", p.Value, c.ls+215, 1e-6)

		// contributions: GTC documentation
		want := map[string]float64{"ls": 25, "d": 5.8, "d random": 3.9, "d systematic": 6.7, "δα": 2.88679, "θ": 0, "αs": 0, "δθ": 16.599}
		rows := must[[]uncertainty.Row](t)(p.Budget.Rows())
		for _, r := range rows {
			if w, ok := want[r.Name]; ok {
				near(t, "contribution of "+r.Name, r.Contribution, w, 0.001)
			}
		}
	}

	// expanded, 99 %: the guide cuts 16.7 to 16 degrees of freedom, t = 2.92, U = 93 nm from 32 nm
	k := must[float64](t)(uncertainty.Coverage(0.99, 16))
	near(t, "t99(16)", k, 2.92078162242509956, 1e-13) // computed, mpmath
	near(t, "U99/nm from 32", k*32, 93.465011917603, 1e-11)
	near(t, "U99/nm", k*31.663879111009, 92.483276202125, 1e-11)
	e := uncertainty.Estimate{Value: 50_000_838 * units.Nanometre, Std: 32 * units.Nanometre, DoF: 16}
	u := must[units.Length](t)(e.Expanded(0.99))
	near(t, "U99/nm of an Estimate", u.In(units.Nanometre), 93.465011917603, 0.0005)
}

// JCGM 100:2008 H.1.7: the terms of second order; printed 34 nm. The digits are of the manual
// of a public propagation package (R, propagate 1.1-0), which combines the same inputs.
func TestGUMH17(t *testing.T) {
	model, inputs := gumH1(50_000_623)
	// one θ, as in the guide
	θ := math.Hypot(0.2, uncertainty.UShaped(0.5))
	inputs[5].Std, inputs[6].Std = θ, 0
	second := must[moments](t)(secondOrder(model, inputs))
	near(t, "uc/nm", second.Std, 33.8065454295, 1e-8)
	// its terms: δα with θ 11.7261855060 nm, αs with δθ 1.6666874333 nm
	first, _, err := must[uncertainty.Propagation](t)(uncertainty.Propagate(model, inputs)).Budget.Combined()
	near(t, "second order alone/nm", math.Sqrt(second.Std*second.Std-first*first), math.Hypot(11.7261855060, 1.6666874333), 1e-7)
	if err != nil {
		t.Error(err)
	}
}

// JCGM 101:2008 9.3, calibration of a mass standard: first order 0.0539 mg, second 0.0750 mg
// (Table 6, from memory); inputs as in the manual of R's propagate, digits computed.
func TestMassCalibration(t *testing.T) {
	inputs := []uncertainty.Input{
		{Name: "mR", Value: 100000, Std: 0.050}, {Name: "δmR", Value: 1.234, Std: 0.020},
		{Name: "ρa", Value: 1.20, Std: uncertainty.Rectangular(0.10)},
		{Name: "ρW", Value: 8000, Std: uncertainty.Rectangular(1000)},
		{Name: "ρR", Value: 8000, Std: uncertainty.Rectangular(50)},
	}
	model := func(x []hyperdual.Number) hyperdual.Number {
		one := hyperdual.Number{Real: 1}
		buoyancy := hyperdual.Mul(hyperdual.Sub(x[2], hyperdual.Number{Real: 1.2}), hyperdual.Sub(hyperdual.Inv(x[3]), hyperdual.Inv(x[4])))
		return hyperdual.Sub(hyperdual.Mul(hyperdual.Add(x[0], x[1]), hyperdual.Add(one, buoyancy)), hyperdual.Number{Real: 100000})
	}
	p := must[uncertainty.Propagation](t)(uncertainty.Propagate(model, inputs))
	std, _, err := p.Budget.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "value/mg", p.Value, 1.234, 1e-9)
	near(t, "first order/mg", std, 0.0538516481, 1e-10)
	second := must[moments](t)(secondOrder(model, inputs))
	near(t, "second order/mg", second.Std, 0.0749634739, 1e-6)
	near(t, "shift/mg", second.Shift, 0, 1e-9) // the exact mean is 1.234 too (computed)
}

// correlate returns the correlation coefficient of quantities read together (JCGM 100:2008 5.2.3, C.3.6).
func correlate(xs, ys []float64) float64 {
	mean := func(x []float64) (m float64) {
		for _, v := range x {
			m += v / float64(len(x))
		}
		return m
	}
	mx, my := mean(xs), mean(ys)
	var xx, xy, yy float64
	for k, x := range xs {
		xx, xy, yy = xx+(x-mx)*(x-mx), xy+(x-mx)*(ys[k]-my), yy+(ys[k]-my)*(ys[k]-my)
	}
	return xy / math.Sqrt(xx*yy)
}

// JCGM 100:2008 H.2, simultaneous resistance and reactance: Tables H.2 and H.4, with the data of
// R's package errors; digits computed.
func TestGUMH2(t *testing.T) {
	v := []float64{5.007, 4.994, 5.005, 4.990, 4.999}
	i := []float64{19.663e-3, 19.639e-3, 19.640e-3, 19.685e-3, 19.678e-3}
	φ := []float64{1.0456, 1.0438, 1.0468, 1.0428, 1.0433}
	input := func(name string, xs []float64, mean, u float64) uncertainty.Input {
		s := must[uncertainty.Sample](t)(uncertainty.Describe(xs...))
		near(t, name, s.Mean, mean, 1e-12)
		near(t, "u("+name+")", s.OfMean().Std, u, u*1e-8)
		return uncertainty.Input{Name: name, Value: s.Mean, Std: s.OfMean().Std, DoF: s.OfMean().DoF}
	}
	inputs := []uncertainty.Input{
		input("V", v, 4.9990, 3.20936131e-3), input("I", i, 0.019661, 9.47100839e-6), input("φ", φ, 1.04446, 7.52063827e-4),
	}
	rs := []uncertainty.Correlation{
		{A: "V", B: "I", R: correlate(v, i)},
		{A: "V", B: "φ", R: correlate(v, φ)},
		{A: "I", B: "φ", R: correlate(i, φ)},
	}
	for k, want := range []float64{-0.3553112198, 0.8576242108, -0.6451112177} {
		near(t, "r", rs[k].R, want, 1e-9)
	}
	z := func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(x[0], hyperdual.Inv(x[1])) }
	r := func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(z(x), hyperdual.Cos(x[2])) }
	x := func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Mul(z(x), hyperdual.Sin(x[2])) }
	combine := func(m uncertainty.Model) (value, std float64) {
		p := must[uncertainty.Propagation](t)(uncertainty.Propagate(m, inputs, rs...))
		std, dof, err := p.Budget.Combined()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "ν of five sets read together (H.2.4)", dof, 4, 1e-12)
		return p.Value, std
	}
	us := map[string]float64{}
	for _, c := range []struct {
		name     string
		m        uncertainty.Model
		value, u float64
	}{
		{"R", r, 127.732169928, 0.07107141},
		{"X", x, 219.846511913, 0.29558168},
		{"Z", z, 254.259701948, 0.23633613},
	} {
		value, u := combine(c.m)
		near(t, c.name+"/Ω", value, c.value, 1e-7)
		near(t, "u("+c.name+")/Ω", u, c.u, 1e-7)
		us[c.name] = u
	}
	// the correlation of two results, from the uncertainty of their sum
	for _, c := range []struct {
		a, b   string
		ma, mb uncertainty.Model
		want   float64
	}{
		{"R", "X", r, x, -0.588429784}, {"R", "Z", r, z, -0.485259224}, {"X", "Z", x, z, 0.992511649},
	} {
		_, u := combine(func(x []hyperdual.Number) hyperdual.Number { return hyperdual.Add(c.ma(x), c.mb(x)) })
		got := (u*u - us[c.a]*us[c.a] - us[c.b]*us[c.b]) / (2 * us[c.a] * us[c.b])
		near(t, "r("+c.a+","+c.b+")", got, c.want, 1e-7)
	}
}

// JCGM 100:2008 H.5, Table H.9 and equation H.27, with the data of a public uncertainty
// calculator's tests (suncal); digits computed.
func TestGUMH5(t *testing.T) {
	days := []float64{10.000172, 10.000116, 10.000013, 10.000144, 10.000106, 10.000031, 10.000060, 10.000125, 10.000163, 10.000041}
	s := must[uncertainty.Sample](t)(uncertainty.Describe(days...))
	near(t, "mean/V", s.Mean, 10.0000971, 1e-11)
	near(t, "s of day means/µV", s.Std*1e6, 57.08950, 57e-6)
	var groups []uncertainty.Spread
	for _, daily := range []float64{60, 77, 111, 101, 67, 93, 80, 73, 88, 86} {
		groups = append(groups, uncertainty.Spread{Std: daily, DoF: 4})
	}
	p := must[uncertainty.Spread](t)(uncertainty.Pool(groups...))
	near(t, "pooled/µV", p.Std, 84.88698, 85e-6)
	near(t, "pooled ν", p.DoF, 40, 0)
	f := 5 * math.Pow(s.Std*1e6/p.Std, 2)
	near(t, "F", f, 2.26151927, 2.3e-6)
}

// JCGM 100:2008 4.4.3, Table 1: twenty temperatures; the guide prints 100.14, 1.49 and 0.33.
func TestGUM443(t *testing.T) {
	s := must[uncertainty.Sample](t)(uncertainty.Describe(
		96.90, 98.18, 98.25, 98.61, 99.03, 99.49, 99.56, 99.74, 99.89, 100.07,
		100.33, 100.42, 100.68, 100.95, 101.11, 101.20, 101.57, 101.84, 102.36, 102.72))
	near(t, "mean", s.Mean, 100.145, 1e-9)
	near(t, "s", s.Std, 1.4888444831, 1e-9)
	near(t, "s of mean", s.OfMean().Std, 0.3329157472, 1e-9)
	near(t, "ν", s.OfMean().DoF, 19, 0)
}

// JCGM 100:2008 G.4.1, example (from memory; digits computed).
func TestGUMG41(t *testing.T) {
	b := uncertainty.Budget{Components: []uncertainty.Component{
		{Name: "x1", Std: 0.25, Sensitivity: 1, DoF: 9}, {Name: "x2", Std: 0.57, Sensitivity: 1, DoF: 4}, {Name: "x3", Std: 0.82, Sensitivity: 1, DoF: 14},
	}}
	std, dof, err := b.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "uc/%", std, 1.02946588, 1e-7)
	near(t, "ν", dof, 18.9987423, 1e-7)
	k := must[float64](t)(uncertainty.Coverage(0.95, 19))
	near(t, "t95(19)", k, 2.0930240544, 1e-9)
	near(t, "U95/%", k*std, 2.15, 0.005)
}

// Type B and combinations whose answers are closed forms.
func TestTypeB(t *testing.T) {
	near(t, "resolution (JCGM 100 F.2.2.1)", uncertainty.Resolution(1), 0.288675134595, 1e-12)
	near(t, "rectangular", uncertainty.Rectangular(1), 0.577350269189626, 1e-15)
	near(t, "triangular", uncertainty.Triangular(1), 0.408248290463863, 1e-15)
	near(t, "U-shaped", uncertainty.UShaped(1), 0.707106781186548, 1e-15)
	near(t, "certificate", uncertainty.FromCertificate(0.5, 2), 0.25, 0)

	// JCGM 101 9.2.2: the sum of four standard normal quantities has u = 2 and U95 = 3.92
	var b uncertainty.Budget
	for _, name := range []string{"1", "2", "3", "4"} {
		b.Components = append(b.Components, uncertainty.Component{Name: name, Std: 1, Sensitivity: 1})
	}
	std, dof, err := b.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "u", std, 2, 1e-15)
	near(t, "U95", std*must[float64](t)(uncertainty.Coverage(0.95, dof)), 3.91992796908, 1e-10)

	// NIST/SEMATECH e-Handbook, error budget of data file MPC64
	b.Components = nil
	for _, c := range [][2]float64{{0.83333, 0.0362}, {1, 0.0197}, {0.1, 0.0167}, {900.9, 0.0000308}, {22.222, 0.000227}, {159.2, 0.00000868}, {100, 0.000441}} {
		b.Components = append(b.Components, uncertainty.Component{Sensitivity: c[0], Std: c[1]})
	}
	std, _, err = b.Combined()
	if err != nil {
		t.Fatal(err)
	}
	near(t, "MPC64", std, 0.0635845956156, 1e-11)
}

// NIST Statistical Reference Datasets, univariate: certified values, of Lew and Michelso from
// memory and recomputed with 50 digits.
func TestStRD(t *testing.T) {
	alternate := func(first, a, b float64) []float64 {
		xs := []float64{first}
		for range 500 {
			xs = append(xs, a, b)
		}
		return xs
	}
	file := func(name string) (xs []float64) {
		for _, row := range table(t, name) {
			xs = append(xs, parse(t, row[0]))
		}
		return xs
	}
	for _, c := range []struct {
		name           string
		xs             []float64
		mean, std, tol float64
	}{
		{"NumAcc1", []float64{10000001, 10000003, 10000002}, 10000002, 1, 1e-9},
		{"NumAcc2", alternate(1.2, 1.1, 1.3), 1.2, 0.1, 1e-13},
		{"NumAcc4", alternate(10000000.2, 10000000.1, 10000000.3), 10000000.2, 0.1, 1e-8},
		{"Michelso", file("strd_michelso.csv"), 299.8524, 0.0790105478190518, 1e-12},
		{"Lew", file("strd_lew.csv"), -177.435, 277.332168044316, 1e-11},
	} {
		s := must[uncertainty.Sample](t)(uncertainty.Describe(c.xs...))
		near(t, c.name+" mean", s.Mean, c.mean, c.tol)
		near(t, c.name+" s", s.Std, c.std, c.tol)
	}
}

// NIST/SEMATECH e-Handbook mpc444: repeatability pooled from five sums of squares of 60 degrees
// of freedom each, printed 0.10290.
func TestPooledRepeatability(t *testing.T) {
	var groups []uncertainty.Spread
	for _, squares := range []float64{0.48115, 0.69209, 0.48483, 1.21752, 0.30076} {
		groups = append(groups, uncertainty.Spread{Std: math.Sqrt(squares / 60), DoF: 60})
	}
	p := must[uncertainty.Spread](t)(uncertainty.Pool(groups...))
	near(t, "s", p.Std, 0.10290, 0.000005)
	near(t, "ν", p.DoF, 300, 0)
}

// NIST/SEMATECH e-Handbook 2.6.1 and 2.6.3: a gauge study in three levels. The rows are
// standard deviations of six readings on a day (level 1); the day averages scatter within a run
// and wafer (level 2); the averages of the two runs scatter for each wafer (level 3).
func TestGaugeStudy(t *testing.T) {
	type cell struct{ run, wafer string }
	averages := map[string]map[cell][]float64{}
	within := map[string][]uncertainty.Spread{}
	for _, r := range table(t, "nist_gauge_study.csv") {
		probe := r[2]
		if averages[probe] == nil {
			averages[probe] = map[cell][]float64{}
		}
		c := cell{r[0], r[1]}
		averages[probe][c] = append(averages[probe][c], parse(t, r[7]))
		within[probe] = append(within[probe], uncertainty.Spread{Std: parse(t, r[8]), DoF: 5})
	}
	pool := must[uncertainty.Spread](t)
	for probe, want := range map[string][3]float64{
		"1":    {0.0921010640547, 0.0473286498857, 0.0281998556931},
		"281":  {0.110748401794, 0.0442848194456, 0.0323466763706},
		"2362": {0.0728667253736, 0.0361682406724, 0.0196452362051},
	} {
		var days, runs []uncertainty.Spread
		means := map[string][]float64{}
		for c, xs := range averages[probe] {
			s := must[uncertainty.Sample](t)(uncertainty.Describe(xs...))
			days = append(days, s.Spread())
			means[c.wafer] = append(means[c.wafer], s.Mean)
		}
		for _, xs := range means {
			runs = append(runs, must[uncertainty.Sample](t)(uncertainty.Describe(xs...)).Spread())
		}
		level2, level3 := pool(uncertainty.Pool(days...)), pool(uncertainty.Pool(runs...))
		near(t, "level 1 of probe "+probe, pool(uncertainty.Pool(within[probe]...)).Std, want[0], 1e-10)
		near(t, "level 2 of probe "+probe, level2.Std, want[1], 1e-10)
		near(t, "level 3 of probe "+probe, level3.Std, want[2], 1e-10)
		near(t, "ν of level 2", level2.DoF, 50, 0)
		near(t, "ν of level 3", level3.DoF, 5, 0)
	}
}
