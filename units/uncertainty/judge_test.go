// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"errors"
	"math"
	"slices"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func mm(s string) units.Length { return units.MustParseLength(s + " mm") }

func window(s string) units.Limits {
	var w units.Limits
	if err := w.UnmarshalText([]byte(s)); err != nil {
		panic(err)
	}
	return w
}

// Probabilities of conformity, normal (JCGM 106:2012 7.3, 7.4; computed), and process
// capability figures read as such: a process with mean and spread is judged like a value with
// its uncertainty.
func TestConformPublished(t *testing.T) {
	for _, c := range []struct {
		y, u, limits string
		want         float64
	}{
		{"87.512", "0.003", "max 87.515 mm", 0.841344746068543},
		{"87.500", "0.004", "87.490 to 87.510 mm", 0.987580669348448},
		{"87.508", "0.002", "87.490 to 87.510 mm", 0.841344746068543},
		{"87.510", "0.002", "87.490 to 87.510 mm", 0.5},
		{"87.5085", "0.0025", "87.490 to 87.510 mm", 0.725746882249858},
		// a public risk calculator's tests (suncal): mean 10, s 0.4, limits 9 and 11
		{"10", "0.4", "9 to 11 mm", 1 - 0.0124193306516},
		// NIST/SEMATECH e-Handbook pmc16, mean 16, s 2, limits 8 and 20: Cpk 2/3, so the near
		// limit is 2 s away and the far one 4 s (computed)
		{"16", "2", "8 to 20 mm", 0.977218196804}, // Φ(2) − Φ(−4)
	} {
		e := uncertainty.Estimate{Value: mm(c.y), Std: mm(c.u)}
		f := must[uncertainty.Finding](t)(uncertainty.Judge(e, window(c.limits), uncertainty.Risk{}))
		near(t, c.y+" against "+c.limits, f.Conform, c.want, 0.5000001e-9)
	}
	w := window("9 to 11 mm")
	width, _ := w.Width()
	near(t, "Cp", width.In(6*mm("0.4")), 0.833333, 1e-6)
}

// ISO 14253-1, "U inside, U outside" with U = 0.004 mm (from memory, logic alone).
func TestJudgeExpanded(t *testing.T) {
	w := window("87.490 to 87.510 mm")
	for _, c := range []struct {
		y    string
		want uncertainty.Verdict
		edge uncertainty.Edge
	}{
		{"87.495", uncertainty.Within, 0},
		{"87.494", uncertainty.Within, 0}, // on the edge of the zone
		{"87.493999999", uncertainty.Undecided, uncertainty.Lower},
		{"87.492", uncertainty.Undecided, uncertainty.Lower},
		{"87.488", uncertainty.Undecided, uncertainty.Lower},
		{"87.486", uncertainty.Undecided, uncertainty.Lower}, // on the edge: not proven
		{"87.485999999", uncertainty.Beyond, uncertainty.Lower},
		{"87.4855", uncertainty.Beyond, uncertainty.Lower},
		{"87.506", uncertainty.Within, 0},
		{"87.507", uncertainty.Undecided, uncertainty.Upper},
		{"87.514", uncertainty.Undecided, uncertainty.Upper},
		{"87.5145", uncertainty.Beyond, uncertainty.Upper},
	} {
		e := uncertainty.Estimate{Value: mm(c.y), Std: mm("0.002")}
		f := must[uncertainty.Finding](t)(uncertainty.JudgeExpanded(e, w, 2))
		if f.Verdict != c.want || f.Edge != c.edge {
			t.Errorf("%s: %v, %v, want %v, %v", c.y, f.Verdict, f.Edge, c.want, c.edge)
		}
		near(t, "risk of k = 2", f.Risk.Accept, 0.022750131948, 1e-9) // computed
		near(t, "risk of k = 2", f.Risk.Reject, 0.022750131948, 1e-9)

		f = must[uncertainty.Finding](t)(uncertainty.JudgeExpanded(e, w, 0))
		if want := map[bool]uncertainty.Verdict{true: uncertainty.Within, false: uncertainty.Beyond}[w.Contains(e.Value)]; f.Verdict != want {
			t.Errorf("simply, %s: %v", c.y, f.Verdict)
		}
		near(t, "risk of simple acceptance", f.Risk.Accept, 0.5, 0)
		near(t, "risk of simple acceptance", f.Risk.Reject, 0.5, 1e-6)
	}
	// a window of one Std: simple acceptance rejects a good part at its edge in 1/2 + Φ(−1) of all cases
	f := must[uncertainty.Finding](t)(uncertainty.JudgeExpanded(uncertainty.Estimate{Value: mm("10"), Std: mm("0.002")}, window("9.999 to 10.001 mm"), 0))
	near(t, "risk in a narrow window", f.Risk.Reject, 0.5+0.158655253931, 1e-9)
	f = must[uncertainty.Finding](t)(uncertainty.JudgeExpanded(uncertainty.Estimate{Value: mm("10")}, window("max 10 mm"), 2))
	if f.Verdict != uncertainty.Within || f.Risk != (uncertainty.Risk{}) {
		t.Errorf("exact: %v", f)
	}
}

// Where the verdicts change, from quantiles printed in tables or computed.
func TestJudgeBoundaries(t *testing.T) {
	const u = units.Micrometre
	at := func(w units.Limits, y units.Length, dof float64, r uncertainty.Risk) uncertainty.Verdict {
		return must[uncertainty.Finding](t)(uncertainty.Judge(uncertainty.Estimate{Value: y, Std: u, DoF: dof}, w, r)).Verdict
	}
	upper, lower := window("max 72 mm"), window("min 72 mm")
	for _, c := range []struct {
		dof  float64
		risk float64
		k    float64 // one-sided quantile: computed, mpmath
	}{
		{0, 0, 1.644853626951}, {0, 0.01, 2.326347874041}, {1, 0.05, 6.313751514675}, {4, 0.05, 2.131846786327}, {16, 0.005, 2.920781622425},
	} {
		guard := units.Length(math.Round(c.k * float64(u)))
		r := uncertainty.Risk{Accept: c.risk, Reject: c.risk}
		const step = 100 // pm: 1e-4 of u moves the probability by 1e-6 at most
		for _, x := range []struct {
			w    units.Limits
			y    units.Length
			want uncertainty.Verdict
		}{
			{upper, upper.Max - guard - step, uncertainty.Within}, {upper, upper.Max - guard + step, uncertainty.Undecided},
			{upper, upper.Max + guard - step, uncertainty.Undecided}, {upper, upper.Max + guard + step, uncertainty.Beyond},
			{lower, lower.Min + guard + step, uncertainty.Within}, {lower, lower.Min + guard - step, uncertainty.Undecided},
			{lower, lower.Min - guard + step, uncertainty.Undecided}, {lower, lower.Min - guard - step, uncertainty.Beyond},
		} {
			if got := at(x.w, x.y, c.dof, r); got != x.want {
				t.Errorf("dof %v risk %v: %v against %v: %v, want %v", c.dof, c.risk, x.y, x.w, got, x.want)
			}
		}
	}
	// a window of no width is a point: beyond is the two-sided test of it, and nothing is within
	point := units.Limits{Min: 72 * units.Millimetre, Max: 72 * units.Millimetre}
	for d, want := range map[units.Length]uncertainty.Verdict{0: uncertainty.Undecided, 1_959_000: uncertainty.Undecided, 1_961_000: uncertainty.Beyond, -1_961_000: uncertainty.Beyond} {
		if got := at(point, point.Min+d, 0, uncertainty.Risk{}); got != want {
			t.Errorf("%v off a point: %v, want %v", d, got, want)
		}
	}
	// where the probability of conformity is small whatever the truth is, it proves nothing
	f := must[uncertainty.Finding](t)(uncertainty.Judge(uncertainty.Estimate{Value: mm("10"), Std: mm("0.1")}, window("9.999 to 10.001 mm"), uncertainty.Risk{}))
	if f.Verdict != uncertainty.Undecided || f.Conform > 0.01 || f.Edge != 0 {
		t.Errorf("narrow window: %v", f)
	}
}

func TestExact(t *testing.T) {
	w := window("72 to 72.02 mm")
	for y, want := range map[string]uncertainty.Verdict{
		"72": uncertainty.Within, "72.02": uncertainty.Within, "72.01": uncertainty.Within,
		"71.999999999": uncertainty.Beyond, "72.020000001": uncertainty.Beyond,
	} {
		e := uncertainty.Estimate{Value: mm(y)}
		for _, judge := range []func() (uncertainty.Finding, error){
			func() (uncertainty.Finding, error) { return uncertainty.Judge(e, w, uncertainty.Risk{}) },
			func() (uncertainty.Finding, error) { return uncertainty.JudgeExpanded(e, w, 0) },
		} {
			f := must[uncertainty.Finding](t)(judge())
			if f.Verdict != want || f.Conform != map[uncertainty.Verdict]float64{uncertainty.Within: 1, uncertainty.Beyond: 0}[want] {
				t.Errorf("%s: %v", y, f)
			}
		}
	}
	for r, want := range map[string]uncertainty.Verdict{"0.02": uncertainty.Within, "0.020000001": uncertainty.Beyond} {
		f := must[uncertainty.Finding](t)(uncertainty.JudgeRange([]units.Length{mm("72"), mm("72") + mm(r)}, 0, 0, window("max 0.02 mm"), uncertainty.Risk{}))
		if f.Verdict != want {
			t.Errorf("range of %s: %v", r, f)
		}
	}
}

// Against a limit of next to nothing the range is judged by the studentised range: its upper
// 5 % and 1 % points, to two decimals as printed in tables (from memory for ν = 10, 20 and
// infinitely many), all computed with scipy 1.10.1.
func TestStudentisedRange(t *testing.T) {
	const s = units.Millimetre
	dofs := []float64{2, 5, 10, 20, 60, 0}
	for _, c := range []struct {
		risk float64
		n    int
		q    [6]float64
	}{
		{0.05, 2, [6]float64{6.084870, 3.635352, 3.151064, 2.949998, 2.828848, 2.771808}},
		{0.05, 3, [6]float64{8.330783, 4.601726, 3.876777, 3.577935, 3.398661, 3.314493}},
		{0.05, 6, [6]float64{11.734297, 6.032903, 4.912016, 4.445237, 4.163161, 4.030092}},
		{0.05, 20, [6]float64{16.768788, 8.208038, 6.466985, 5.713625, 5.241200, 5.011689}},
		{0.01, 6, [6]float64{26.629041, 8.913107, 6.427536, 5.509542, 4.991324, 4.757047}},
	} {
		for i, dof := range dofs {
			for _, x := range []struct {
				factor float64
				want   uncertainty.Verdict
			}{{1 - 1e-5, uncertainty.Undecided}, {1 + 1e-5, uncertainty.Beyond}} {
				values := make([]units.Length, c.n)
				values[c.n/2] = units.Length(c.q[i] * x.factor * float64(s))
				f := must[uncertainty.Finding](t)(uncertainty.JudgeRange(values, s, dof, units.Limits{Max: 1}, uncertainty.Risk{Reject: c.risk}))
				if f.Verdict != x.want {
					t.Errorf("range of %d, ν %v, risk %v, at %v·q: %v", c.n, dof, c.risk, x.factor, f.Verdict)
				}
			}
		}
	}
}

// The constants d₂ and d₃ of control charts (d₂ computed with mpmath, d₃ with scipy; tables
// print 1/d₂ as .8862 .5908 and 1/√(d₂²+d₃²) as .7071 .5231 .3146).
func TestMeanRange(t *testing.T) {
	d2 := []float64{1.1283791671, 1.69256875064, 2.05875074601, 2.32592894728, 2.53441272122, 2.70435675121, 2.84720061209, 2.97002632442, 3.07750546167}
	d3 := map[int]float64{2: 0.8525024664, 3: 0.8883680040, 10: 0.7970506735}
	star := map[int]float64{2: 0.7071067812, 3: 0.5231383035, 10: 0.3145598363}
	for i, want := range d2 {
		n := i + 2
		mean, std, err := uncertainty.MeanRange(n)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "d2", mean, want, 1e-9)
		if w, ok := d3[n]; ok {
			near(t, "d3", std, w, 1e-8)
			near(t, "1/√(d2²+d3²)", 1/math.Hypot(mean, std), star[n], 1e-8)
		}
	}
	mean, std, err := uncertainty.MeanRange(2)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "d2 of two", mean, 2/math.Sqrt(math.Pi), 1e-12)
	near(t, "d3 of two", std, math.Sqrt(2-4/math.Pi), 1e-12)
	if _, _, err := uncertainty.MeanRange(1); !errors.Is(err, uncertainty.ErrNoData) {
		t.Error(err)
	}
}

func TestRiskShare(t *testing.T) {
	for _, c := range []struct {
		r    uncertainty.Risk
		n    int
		want uncertainty.Risk
	}{
		{uncertainty.Risk{}, 0, uncertainty.Risk{Accept: 0.05, Reject: 0.05}},
		{uncertainty.Risk{}, 1, uncertainty.Risk{Accept: 0.05, Reject: 0.05}},
		{uncertainty.Risk{}, 5, uncertainty.Risk{Accept: 0.01, Reject: 0.01}},
		{uncertainty.Risk{Accept: 0.01}, 10, uncertainty.Risk{Accept: 0.001, Reject: 0.005}},
		{uncertainty.Risk{Reject: 0.5}, -3, uncertainty.Risk{Accept: 0.05, Reject: 0.5}},
	} {
		if got := c.r.Share(c.n); math.Abs(got.Accept-c.want.Accept) > 1e-15 || math.Abs(got.Reject-c.want.Reject) > 1e-15 {
			t.Errorf("%v shared by %d: %v, want %v", c.r, c.n, got, c.want)
		}
	}
}

func TestNames(t *testing.T) {
	check := func(texts []string, read func(string) (string, error), odd string, write func() ([]byte, error)) {
		t.Helper()
		for _, s := range texts {
			if got, err := read(s); err != nil || got != s {
				t.Errorf("%q: %q, %v", s, got, err)
			}
		}
		for _, s := range []string{"", "Within ", "3", "-1", "ja"} {
			if got, err := read(s); !errors.Is(err, units.ErrUnknownName) || got != texts[1] {
				t.Errorf("%q: %q, %v", s, got, err)
			}
		}
		if _, err := write(); !errors.Is(err, units.ErrUnknownName) {
			t.Errorf("%s: %v", odd, err)
		}
	}
	check([]string{"undecided", "within", "beyond"}, func(s string) (string, error) {
		v := uncertainty.Within
		err := v.UnmarshalText([]byte(s))
		b, _ := v.MarshalText()
		return string(b), err
	}, uncertainty.Verdict(3).String(), uncertainty.Verdict(3).MarshalText)
	check([]string{"none", "lower", "upper"}, func(s string) (string, error) {
		v := uncertainty.Lower
		err := v.UnmarshalText([]byte(s))
		b, _ := v.MarshalText()
		return string(b), err
	}, uncertainty.Edge(-1).String(), uncertainty.Edge(-1).MarshalText)
	check([]string{"value", "difference", "greatest", "range"}, func(s string) (string, error) {
		v := uncertainty.OneDifference
		err := v.UnmarshalText([]byte(s))
		b, _ := v.MarshalText()
		return string(b), err
	}, uncertainty.Kind(4).String(), uncertainty.Kind(4).MarshalText)
	for got, want := range map[string]string{
		uncertainty.Verdict(3).String(): "uncertainty.Verdict(3)", uncertainty.Edge(-1).String(): "uncertainty.Edge(-1)", uncertainty.Kind(9).String(): "uncertainty.Kind(9)",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func TestFindingText(t *testing.T) {
	e := uncertainty.Estimate{Value: mm("72.031"), Std: mm("0.0021")}
	f := must[uncertainty.Finding](t)(uncertainty.Judge(e, window("max 72.034 mm"), uncertainty.Risk{Accept: 0.01}))
	f.Subject = "bore 2"
	if got, want := f.String(), "bore 2: 72.0310 ± 0.0041 mm, max 72.034 mm: undecided (conformity 92.3 %), upper limit in doubt; risk 1 %, 5 % per value"; got != want {
		t.Errorf("\n%s\n%s", got, want)
	}
	f = must[uncertainty.Finding](t)(uncertainty.JudgeRange([]units.Length{0, mm("0.04"), mm("0.01")}, mm("0.002"), 8, window("max 0.02 mm"), uncertainty.Risk{}))
	if got, want := f.String(), "0.0400 ± 0.0065 mm, max 0.02 mm: beyond (conformity 0.0 %), upper limit overstepped; risk 5 %, 5 % per range of 3 readings"; got != want {
		t.Errorf("\n%s\n%s", got, want)
	}
	b, err := json.Marshal(f)
	if want := `{"kind":"range","n":3,"measured":{"value":"0.04 mm","std":"0.002828427 mm","dof":8},"limits":"max 0.02 mm","verdict":"beyond","conform":0.000052464,"edge":"upper","risk":{"accept":0.05,"reject":0.05},"per":"range of 3 readings"}`; err != nil || string(b) != want {
		t.Errorf("%s, %v", b, err)
	}
	var back uncertainty.Finding
	if err := json.Unmarshal(b, &back); err != nil || back != f {
		t.Errorf("%v\n%v, %v", f, back, err)
	}
}

func TestEstimateText(t *testing.T) {
	for _, c := range []struct {
		value, std string
		dof        float64
		unit       units.Length
		want       string
	}{
		{"72.031", "0.0021428", 0, units.Millimetre, "72.0310 ± 0.0042 mm"},
		{"72.031", "0", 0, units.Millimetre, "72.031 mm"},
		{"72.031", "0", 5, units.Micrometre, "72031 µm"},
		{"25.4", "0", 0, units.Inch, "1 in"},
		{"72.031", "0", 0, units.Inch, "2.83586614 in"},
		{"72.031", "0", 0, units.Picometre, "72031000000 pm"},
		{"72.031", "0.0021428", 0, units.Micrometre, "72031.0 ± 4.2 µm"},
		{"72.031", "0.0021428", 0, units.Inch, "2.83587 ± 0.00017 in"},
		{"72.031", "0.0021428", 0, units.Thou, "2835.87 ± 0.17 thou"},
		{"72.031", "0.0021428", 0, units.Metre, "0.0720310 ± 0.0000042 m"},
		{"72.031", "0.05", 0, units.Micrometre, "72031 ± 98 µm"},
		{"72.031", "0.0508", 0, units.Micrometre, "72030 ± 100 µm"}, // U = 99.6: 100, to the tens
		{"72.031", "0.508", 0, units.Micrometre, "72000 ± 1000 µm"}, // U = 995.7: 1000, to the hundreds
		{"72.031", "0.5", 0, units.Micrometre, "72030 ± 980 µm"},
		{"-0.0031", "0.0021428", 0, units.Millimetre, "-0.0031 ± 0.0042 mm"},
		{"72.031", "0.002", 1, units.Millimetre, "72.031 ± 0.025 mm"},
		{"0.0000001", "0.000000001", 0, units.Millimetre, "0.0000001000 ± 0.0000000020 mm"},
		{"1", "9999", 1, units.Millimetre, "0 ± 130000 mm"},
		{"72.031", "0.0021428", 0, 0, "72.0310 ± 0.0042 mm"},
		{"72.031", "0.0021428", 0, 2 * units.Inch, "1.417933 ± 0.000083 × 50.8 mm"},
	} {
		e := uncertainty.Estimate{Value: mm(c.value), Std: mm(c.std), DoF: c.dof}
		if got := e.Format(c.unit); got != c.want {
			t.Errorf("%s, %s, %v: %q, want %q", c.value, c.std, c.dof, got, c.want)
		}
	}
	if got := (uncertainty.Estimate{Std: -1}).String(); got != "invalid estimate" {
		t.Error(got)
	}
}

// No function changes what it is handed.
func TestInputsKept(t *testing.T) {
	values := []units.Length{3, 1, 2}
	values2 := slices.Clone(values)
	must[uncertainty.Finding](t)(uncertainty.JudgeRange(values, 1, 0, window("max 3 mm"), uncertainty.Risk{}))
	must[uncertainty.Estimate](t)(uncertainty.FromRepeats(values...))
	if !slices.Equal(values, values2) {
		t.Error("inputs changed")
	}
}
