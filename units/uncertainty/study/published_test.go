// SPDX-License-Identifier: BSD-3-Clause

package study_test

import (
	"encoding/csv"
	"math"
	"os"
	"strconv"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"borewright.example/units/uncertainty/study"
	"gonum.org/v1/gonum/mathext"
)

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

// table reads a CSV file of a testdata folder, whose comments start with #, without its heading.
func table(t *testing.T, path string) [][]string {
	t.Helper()
	f, err := os.Open(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	r := csv.NewReader(f)
	r.Comment = '#'
	rows, err := r.ReadAll()
	if err != nil || len(rows) < 2 {
		t.Fatal(path, len(rows), err)
	}
	return rows[1:]
}

// unit is what a number of a published set is read in, whatever its own unit was: so large that
// picometres do not show in nine digits.
const unit = 6 * units.Millimetre

// shown is how far half a picometre shows, in units.
const shown = 0.5 / 6e9

func length(t *testing.T, s string) units.Length {
	t.Helper()
	x := must[float64](t)(strconv.ParseFloat(s, 64))
	return must[units.Length](t)(units.Of(x, unit))
}

// trials reads columns of a file: part, person and reading; −1 for a part or person there is none of.
func trials(t *testing.T, name string, part, person, reading int) []study.Trial {
	t.Helper()
	column := func(row []string, i int) string {
		if i < 0 {
			return ""
		}
		return row[i]
	}
	var all []study.Trial
	for _, row := range table(t, "testdata/"+name) {
		all = append(all, study.Trial{Part: column(row, part), Person: column(row, person), Reading: length(t, row[reading])})
	}
	return all
}

// mm2 returns a component's variance in square units.
func variance(c study.Component) float64 {
	s := c.Std.In(unit)
	return s * s
}

// interval returns the ends as variances.
func interval(t *testing.T, c study.Component) (low, high float64) {
	t.Helper()
	i := must[units.Limits](t)(c.Interval())
	a, b := i.Min.In(unit), i.Max.In(unit)
	return a * a, b * b
}

// satterthwaite returns, as variances, the ends of the interval that many sheets print: the sum taken for one
// chi-squared variable of the component's degrees of freedom.
func satterthwaite(c study.Component, unit units.Length) (low, high float64) {
	sum := c.DoF * c.Std.In(unit) * c.Std.In(unit)
	chiSquared := func(p float64) float64 { return 2 * mathext.GammaIncRegInv(c.DoF/2, p) }
	return sum / chiSquared(0.975), sum / chiSquared(0.025)
}

func row(t *testing.T, s study.Study, of string) study.Row {
	t.Helper()
	for _, r := range s.Table {
		if r.Source == of {
			return r
		}
	}
	t.Fatalf("no row of %v", of)
	return study.Row{}
}

func meanSquare(r study.Row) float64 {
	x := r.Root.In(unit)
	return x * x
}

// The crossed study of thermal impedance, published in 1988; sums of squares printed in textbooks as
// 3935.96, 39.27, 48.51 and 30.67; digits computed by exact fractions, intervals with scipy.
func TestCrossedStudy(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(trials(t, "grr_thermal_impedance_10x3x3.csv", 1, 0, 3)))
	if s.Trials != 90 || !s.Balanced || len(s.Unseen) != 0 || s.Mean != length(t, "35.8") {
		t.Errorf("%+v", s)
	}
	for _, c := range []struct {
		of             string
		dof, ms, f, p  float64
		printedSquares float64
	}{
		{"part", 9, 437.3283950617, 162.2702702703, 0, 3935.96},
		{"person", 2, 19.6333333333, 7.284928996793, 0.004809608880, 39.27},
		{"interaction", 18, 2.6950617284, 5.272946859903, 5.060090059e-7, 48.51},
		{"repeatability", 60, 0.5111111111, 0, 0, 30.67},
	} {
		r := row(t, s, c.of)
		near(t, c.of+" degrees of freedom", r.DoF, c.dof, 0)
		near(t, c.of+" mean square", meanSquare(r), c.ms, 1e-9+2*shown*math.Sqrt(c.ms))
		near(t, c.of+" sum of squares", meanSquare(r)*r.DoF, c.printedSquares, 0.005)
		near(t, c.of+" F", r.F, c.f, 1e-8)
		near(t, c.of+" P", r.P, c.p, 0.5000001e-9)
	}
	near(t, "repeatability", variance(s.Repeatability), 0.5111111111111, 1e-9)
	near(t, "interaction", variance(s.Interaction), 0.7279835390947, 1e-9)
	near(t, "person", variance(s.Person), 0.5646090534979, 1e-9)
	near(t, "part", variance(s.Part), 48.29259259259, 1e-9)
	near(t, "gauge", s.Gauge.Std.In(unit), 1.343020366079, 1e-9)
	near(t, "total", variance(s.Total), 50.0962962963, 1e-9)
	near(t, "share of the study", 100*s.Gauge.Std.In(s.Total.Std), 18.9749128135, 1e-8)
	near(t, "categories", float64(s.Categories()), 7, 0)

	low, high := interval(t, s.Repeatability)
	near(t, "repeatability, low", low, 0.3681575351519, 1e-9)
	near(t, "repeatability, high", high, 0.757543044688, 1e-9)
	low2, high2 := satterthwaite(s.Repeatability, unit)
	near(t, "exact by either method", math.Abs(low-low2)+math.Abs(high-high2), 0, 1e-8)

	// Three persons: one upper end is 27.0 and the other 4.7.
	low, high = interval(t, s.Gauge)
	near(t, "gauge, low", low, 1.206225574043, 1e-8)
	near(t, "gauge, high", high, 27.01723883719, 1e-8)
	near(t, "gauge, degrees of freedom", s.Gauge.DoF, 12.88961567343, 1e-8)
	low, high = satterthwaite(s.Gauge, unit)
	near(t, "gauge by Satterthwaite, low", low, 0.9457758904687, 1e-8)
	near(t, "gauge by Satterthwaite, high", high, 4.705138641096, 1e-8)

	low, high = interval(t, s.Part)
	near(t, "part, low", low, 22.69451908002, 1e-8)
	near(t, "part, high", high, 161.6391841517, 1e-8)

	// University notes on gauge studies by analysis of variance give this formula.
	near(t, "reproducibility", variance(s.Reproducibility), 1.29259259259, 1e-9)
	near(t, "reproducibility, degrees of freedom", s.Reproducibility.DoF, 6.65790048276, 1e-8)
	low, high = satterthwaite(s.Reproducibility, unit)
	near(t, "reproducibility, low", math.Sqrt(low), 0.745539048127, 1e-8)
	near(t, "reproducibility, high", math.Sqrt(high), 2.37130599568, 1e-8)

	r := must[study.Ranges](t)(study.ByRanges(trials(t, "grr_thermal_impedance_10x3x3.csv", 1, 0, 3)))
	for _, c := range []struct {
		what string
		got  units.Length
		want float64
	}{
		{"repeatability by ranges", r.Repeatability, 0.630205813657}, {"reproducibility by ranges", r.Reproducibility, 0.811466702425},
		{"gauge by ranges", r.Gauge, 1.02744224982}, {"parts by ranges", r.Part, 5.59217486756}, {"total by ranges", r.Total, 5.68577675661},
	} {
		near(t, c.what, c.got.In(unit), c.want, 1e-8)
	}
	near(t, "bias of three persons", r.PersonBias, 1.69256875064/math.Hypot(1.69256875064, 0.8883680040)-1, 1e-9)
	near(t, "bias of ten parts", r.PartBias, 3.07750546167/math.Hypot(3.07750546167, 0.7970506735)-1, 1e-9)
}

// The same with six readings struck out: sums of squares by R's aov, part adjusted for inspector and
// the other way round. REML (lme4) gives 48.846, 0.518, 0.704 and 0.498: another estimator, which must
// be near and need not agree.
func TestUnbalancedStudy(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(trials(t, "grr_thermal_impedance_unbalanced84.csv", 1, 0, 3)))
	if s.Balanced || s.Trials != 84 {
		t.Errorf("%+v", s)
	}
	for _, c := range []struct {
		of       string
		sum, dof float64
	}{{"part", 3643.54557055, 9}, {"person", 32.44027499, 2}, {"interaction", 45.43472501, 18}, {"repeatability", 27, 54}} {
		r := row(t, s, c.of)
		near(t, c.of, meanSquare(r)*r.DoF, c.sum, 1e-7)
		near(t, c.of, r.DoF, c.dof, 0)
	}
	near(t, "repeatability", variance(s.Repeatability), 0.5, 2*shown)
	for _, c := range []struct {
		got  study.Component
		reml float64
	}{{s.Part, 48.84565}, {s.Person, 0.517859}, {s.Interaction, 0.703786}} {
		// within a tenth of the standard error that the estimate's degrees of freedom give it
		near(t, "against REML", variance(c.got), c.reml, 0.1*c.reml*math.Sqrt(2/c.got.DoF))
	}
}

// Six batches of five, a textbook of 1972; digits computed with exact fractions and scipy.
func TestOneWay(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(trials(t, "oneway_dyestuff_6x5.csv", 0, -1, 1)))
	near(t, "between", meanSquare(row(t, s, "part")), 11271.5, 1e-7)
	near(t, "within", meanSquare(row(t, s, "repeatability")), 2451.25, 1e-7)
	near(t, "F", row(t, s, "part").F, 4.598266190719, 1e-9)
	near(t, "P", row(t, s, "part").P, 0.004397531268, 0.5000001e-9)
	near(t, "batch", s.Part.Std.In(unit), 42.000595, 1e-6)
	near(t, "within", s.Repeatability.Std.In(unit), 49.51009998, 1e-8)
	check := func(what string, low, high, wantLow, wantHigh float64) {
		t.Helper()
		near(t, what+", low", low, wantLow, 1e-8*wantLow)
		near(t, what+", high", high, wantHigh, 1e-8*wantHigh)
	}
	low, high := interval(t, s.Repeatability)
	check("within", low, high, 1494.509828345, 4743.914795681)
	low, high = interval(t, s.Part)
	check("batch", low, high, 306.4191868466, 13045.97841091)
	near(t, "batch, degrees of freedom", s.Part.DoF, 3.031867260021, 1e-8)
	near(t, "total", variance(s.Total), 4215.3, 1e-7)
	near(t, "total, degrees of freedom", s.Total.DoF, 15.10173178188, 1e-8)
	low, high = interval(t, s.Total)
	check("total", low, high, 2640.800678535, 15669.13128738)
	if len(s.Unseen) != 2 || s.Unseen[0] != "interaction" || s.Unseen[1] != "person" || s.Gauge.Std != s.Repeatability.Std {
		t.Errorf("unseen: %v", s.Unseen)
	}
	// the same with the batches in the persons' place
	p := must[study.Study](t)(study.Analyse(trials(t, "oneway_dyestuff_6x5.csv", -1, 0, 1)))
	if p.Person.Std != s.Part.Std || p.Reproducibility.Std != s.Part.Std || p.Gauge.Std != s.Total.Std || p.Part.Std != 0 {
		t.Errorf("%+v", p)
	}
}

// Certified sets of NIST StRD: SiRstv; and SmLs01, SmLs03 and SmLs04, which follow a rule: groups about
// 1.4, then 1.3 and 1.5 by turns, in each the base once, and then 0.1 less and more by turns.
func TestCertified(t *testing.T) {
	s := must[study.Study](t)(study.Analyse(trials(t, "strd_sirstv.csv", 0, -1, 1)))
	near(t, "SiRstv between", meanSquare(row(t, s, "part")), 1.27865654e-2, 1e-10)
	near(t, "SiRstv within", meanSquare(row(t, s, "repeatability")), 1.0831828e-2, 1e-9)
	near(t, "SiRstv F", row(t, s, "part").F, 1.18046237440255, 1e-9)
	near(t, "SiRstv residual", s.Repeatability.Std.In(unit), 0.104076068334656, shown)
	near(t, "SiRstv component (computed)", variance(s.Part), 3.9094748e-4, 1e-10)
	if low, _ := interval(t, s.Part); low != 0 {
		t.Errorf("low end %v, want 0: the groups may be alike", low)
	}
	// SmLs04 adds 999 999 to every value, which a length takes as it takes a whole number.
	// (SmLs07's 999 999 999 999 would not fit.)
	small := func(tenth, offset units.Length, n int) study.Study {
		var all []study.Trial
		for g := range 9 {
			base := (offset + 14) * tenth
			if g > 0 {
				base += tenth * units.Length(1-2*(g%2))
			}
			for i := range n {
				x := base
				if i > 0 {
					x += tenth * units.Length(1-2*(i%2))
				}
				all = append(all, study.Trial{Part: strconv.Itoa(g), Reading: x})
			}
		}
		return must[study.Study](t)(study.Analyse(all))
	}
	for _, c := range []struct{ tenth, offset units.Length }{{units.Metre / 10, 0}, {units.Micrometre / 2, 9999990}} {
		s := small(c.tenth, c.offset, 21)
		near(t, "SmLs01 F", row(t, s, "part").F, 21, 1e-9)
		in := func(l units.Length) float64 { return l.In(10 * c.tenth) }
		tol := 1e-9
		if c.offset != 0 {
			tol = 1e-6 // picometres show
		}
		near(t, "SmLs01 residual", in(s.Repeatability.Std), 0.1, tol)
		near(t, "SmLs01 between", 8*in(row(t, s, "part").Root)*in(row(t, s, "part").Root), 1.68, 20*tol)
		near(t, "SmLs01 component (computed)", in(s.Part.Std)*in(s.Part.Std), 1.0/105, tol)
	}
}

// JCGM 100:2008 H.5: a voltage standard read five times a day for ten days. The guide prints means and
// deviations by day; five readings that have them stand for the real ones.
func TestGUMH5(t *testing.T) {
	means := []float64{172, 116, 13, 144, 106, 31, 60, 125, 163, 41} // µV above 10 V
	stds := []float64{60, 77, 111, 101, 67, 93, 80, 73, 88, 86}
	var all []study.Trial
	for day, m := range means {
		for _, z := range []float64{-1, 1, 0, 1, -1} { // mean 0, deviation 1
			all = append(all, study.Trial{Person: strconv.Itoa(day), Reading: units.Length(m+z*stds[day]) * units.Micrometre})
		}
	}
	s := must[study.Study](t)(study.Analyse(all))
	near(t, "mean", s.Mean.In(units.Micrometre), 97.1, 1e-9)
	near(t, "between days", row(t, s, "person").Root.In(units.Micrometre)/math.Sqrt(5), 57.08950, 1e-5)
	near(t, "pooled", s.Repeatability.Std.In(units.Micrometre), 84.88698, 1e-5)
	near(t, "F", row(t, s, "person").F, 2.26151927, 1e-6)
	near(t, "degrees of freedom", s.Repeatability.DoF, 40, 0)
}

// Six groups of twenty by their means and deviations, as documentation of an R package prints them:
// within 9.166782, between 8.585948.
func TestGroups(t *testing.T) {
	means := []float64{56.1, 51.2, 60.3, 68.2, 48.9, 70.5}
	stds := []float64{9.45, 8.79, 9.71, 8.90, 8.31, 9.75}
	var all []study.Trial
	for g, m := range means {
		for i := range 20 {
			x := m + stds[g]*math.Sqrt(19.0/20)*float64(1-2*(i%2))
			all = append(all, study.Trial{Part: strconv.Itoa(g), Reading: must[units.Length](t)(units.Of(x, unit))})
		}
	}
	s := must[study.Study](t)(study.Analyse(all))
	near(t, "mean", s.Mean.In(unit), 59.2, 1e-9)
	near(t, "within", s.Repeatability.Std.In(unit), 9.166782, 1e-6)
	near(t, "between", s.Part.Std.In(unit), 8.585948, 1e-6)
	low, high := interval(t, s.Repeatability)
	near(t, "low (computed)", math.Sqrt(low), 8.115689, 1e-6)
	near(t, "high (computed)", math.Sqrt(high), 10.533120, 1e-6)
}

// JCGM 106:2012 9.5, resistors about 1500 Ω (inputs from memory, digits computed; the guide quotes
// 1 % and 7 % for the second); a public risk calculator's tests (suncal), 0.008 and 0.015; ball
// bearings, 9.5.4, by their title and limit, the process made up.
func TestGlobalRisk(t *testing.T) {
	mm := func(s string) units.Length { return length(t, s) }
	for _, c := range []struct {
		p                  study.Process
		u                  string
		tolerance, accept  units.Limits
		consumer, producer float64
	}{
		{study.Process{Std: mm("0.12")}, "0.04", units.Limits{Min: mm("-0.2"), Max: mm("0.2")}, units.Limits{Min: mm("-0.2"), Max: mm("0.2")}, 0.018942206717, 0.0372078001781},
		{study.Process{Std: mm("0.12")}, "0.04", units.Limits{Min: mm("-0.2"), Max: mm("0.2")}, units.Limits{Min: mm("-0.18"), Max: mm("0.18")}, 0.00987829152177, 0.0690265104615},
		{study.Process{Std: mm("4")}, "1", units.Limits{Min: mm("-8"), Max: mm("8")}, units.Limits{Min: mm("-8"), Max: mm("8")}, 0.00800608483445, 0.0148508842113},
		{study.Process{Mean: mm("1"), Std: mm("0.5"), Gamma: true}, "0.25", units.Limits{Max: mm("2")}, units.Limits{Max: mm("2")}, 0.00801911188429, 0.0174445692298},
		{study.Process{Mean: mm("1"), Std: mm("0.5"), Gamma: true}, "0.25", units.Limits{Max: mm("2")}, units.Limits{Max: mm("1.8")}, 0.0026118857387, 0.0460772110553},
	} {
		r := must[study.Risks](t)(c.p.Risks(mm(c.u), c.tolerance, c.accept))
		near(t, "consumer", r.Consumer, c.consumer, 0.5000001e-9)
		near(t, "producer", r.Producer, c.producer, 0.5000001e-9)
		near(t, "balance", r.Accepted-r.Consumer, 1-r.Outside-r.Producer, 2.1e-9)
		if c.p.Gamma {
			near(t, "outside", r.Outside, 0.0423801119917, 0.5000001e-9) // P(Poisson(8) ≤ 3)
		}
	}
	// a table of false acceptance in a draft of a recommended practice, as the same calculator's tests have
	// it: tolerance ±1, a process of which a share is in tolerance, readings a quarter of its spread
	for _, c := range []struct{ z, consumer, delivered float64 }{
		{0.8416212335729143, 0.04838603208, 0.0826008191}, {1.2815515655446004, 0.02855830621, 0.03632271784},
		{1.6448536269514722, 0.0159995353, 0.01798804771}, {1.959963984540054, 0.008710101881, 0.009238976306},
	} {
		s := must[units.Length](t)(units.Of(1000/c.z, units.Millimetre)) // ±1000 mm: the rounding is then below 1e-15
		w := units.Limits{Min: -units.Metre, Max: units.Metre}
		r := must[study.Risks](t)(study.Process{Std: s}.Risks(s/4, w, w))
		near(t, "false acceptance", r.Consumer, c.consumer, 0.6e-9)
		near(t, "of those accepted", r.Delivered(), c.delivered, 1e-8)
	}
}

// JCGM 106:2012 clause 6 and Annex A: a reading and what is known of the process (digits computed).
func TestGiven(t *testing.T) {
	mm := func(s string) units.Length { return length(t, s) }
	for _, c := range []struct {
		p             study.Process
		y, u          string
		w             units.Limits
		value, std    float64
		conform, none float64
	}{
		{study.Process{Std: mm("0.12")}, "0.19", "0.04", units.Limits{Min: mm("-0.2"), Max: mm("0.2")}, 0.171, 0.037947331922, 0.777631061426, 0.598706325683},
		{study.Process{Mean: mm("87.5"), Std: mm("0.006")}, "87.512", "0.003", units.Limits{Max: mm("87.515")}, 87.5096, 0.002683281573, 0.977914327545, 0.841344746069},
	} {
		e := uncertainty.Estimate{Value: mm(c.y), Std: mm(c.u)}
		g := must[uncertainty.Estimate](t)(c.p.Given(e))
		near(t, "value", g.Value.In(unit), c.value, 1e-9)
		near(t, "std", g.Std.In(unit), c.std, 1e-9)
		near(t, "conform", must[uncertainty.Finding](t)(uncertainty.Judge(g, c.w, uncertainty.Risk{})).Conform, c.conform, 1e-8)
		near(t, "conform, no process", must[uncertainty.Finding](t)(uncertainty.Judge(e, c.w, uncertainty.Risk{})).Conform, c.none, 0.5000001e-9)
	}
}

// Lag-1 autocorrelation certified by NIST StRD: NumAcc1, NumAcc2; Michelso and Lew as in their
// certificates.
func TestLagCertified(t *testing.T) {
	lag := func(xs ...units.Length) float64 { return must[study.Drift](t)(study.DriftOf(xs...)).Lag1 }
	near(t, "NumAcc1", lag(10000001, 10000003, 10000002), -0.5, 0)
	numAcc2 := []units.Length{12}
	for range 499 {
		numAcc2 = append(numAcc2, 11, 13)
	}
	near(t, "NumAcc2, of 999 values (computed)", lag(numAcc2...), -997.0/998, 1e-12) // 1001 are certified, −0.999
	for name, want := range map[string]float64{"strd_michelso.csv": 0.535199668621283, "strd_lew.csv": -0.307304800605679} {
		var xs []units.Length
		for _, row := range table(t, "../testdata/"+name) {
			xs = append(xs, length(t, row[0]))
		}
		near(t, name, lag(xs...), want, 1e-11)
	}
}
