// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"strings"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func length(x float64) units.Length { return units.Length(math.Round(x * float64(um))) }

// rpk are readings of Rpk in µm, by place, and of an Mr2.
func rpk(mr2 float64, places ...[]float64) (rs []surface.Reading) {
	for i, p := range places {
		for _, x := range p {
			rs = append(rs, surface.Reading{Place: string(rune('a' + i)), Texture: surface.Texture{Plateau: surface.Plateau{Rpk: length(x), Mr2: mr2 + 0.01*float64(i)}}})
		}
	}
	return rs
}

// By hand: places of mean 0.30, 0.36, 0.27; their mean 0.31, deviation √0.0021 = 0.045826, of the mean 0.026458
// with two degrees of freedom. Repeats pooled: √((2·0.02² + 1·0.0002)/3). An instrument of 2 % adds 0.0062, a
// last digit of 0.01 adds 0.002887.
func TestMeasureByHand(t *testing.T) {
	rs := rpk(0.80, []float64{0.28, 0.30, 0.32}, []float64{0.35, 0.37}, []float64{0.27})
	w, err := surface.Analyse(rs, surface.Instrument{Relative: 0.02, Resolution: um / 100, DigitOfShare: 0.001})
	must(t, w, err)
	if w.Places != 3 || len(w.Values) != 2 {
		t.Fatalf("%+v", w)
	}
	v := w.Values[0]
	if v.Parameter != "Rpk" {
		t.Fatal(v.Parameter)
	}
	scatter, relative, digit := 0.045825757/math.Sqrt(3), 0.02*0.31, 0.01/math.Sqrt(12)
	u := math.Sqrt(scatter*scatter + relative*relative + digit*digit)
	nearUm(t, "mean", v.Length.Value, 0.31, 1e-6)
	nearUm(t, "std", v.Length.Std, u, 1e-6)
	near(t, "dof", v.Length.DoF, 2*math.Pow(u/scatter, 4), 1e-3)
	near(t, "places", v.Places.Std, 0.045825757, 1e-8)
	near(t, "repeats", v.Repeats.Std, math.Sqrt((2*0.02*0.02+1*0.0002)/3), 1e-9)
	near(t, "repeats' degrees", v.Repeats.DoF, 3, 0)
	m := w.Values[1]
	scatter, relative, digit = 0.01/math.Sqrt(3), 0.02*0.81, 0.001/math.Sqrt(12)
	if m.Parameter != "Mr2" {
		t.Fatal(m.Parameter)
	}
	near(t, "Mr2", m.Share.Value, 0.81, 1e-12)
	near(t, "its doubt", m.Share.Std, math.Sqrt(scatter*scatter+relative*relative+digit*digit), 1e-12)
	for got, want := range map[string]string{
		v.String(): "Rpk 0.31 ± 0.10 µm", m.String(): "Mr2 81.0 ± 3.4 %", surface.Share{Value: 0.5}.String(): "50.0 %", surface.Share{Value: 0.5, Std: 0.04}.String(): "50.0 ± 7.8 %",
		surface.Shares{Min: 0.6}.String(): "min 60.0 %", surface.Shares{Max: 0.6}.String(): "max 60.0 %", surface.Shares{Min: 0.6, Max: 0.8}.String(): "60.0 to 80.0 %",
	} {
		if got != want {
			t.Errorf("%q, want %q", got, want)
		}
	}
}

func judged(t *testing.T, rs []surface.Reading, i surface.Instrument, l surface.Limits) []surface.Finding {
	t.Helper()
	w, err := surface.Analyse(rs, i)
	must(t, w, err)
	fs, err := w.Judge(l, uncertainty.Risk{})
	return must(t, fs, err)
}

func TestThreeAnswers(t *testing.T) {
	good := surface.Instrument{Relative: 0.02}
	near4 := [][]float64{{0.30}, {0.31}, {0.29}, {0.30}}
	one := func(max float64) surface.Limits { return surface.Limits{Rpk: units.Limits{Max: length(max)}} }
	for _, row := range []struct {
		name    string
		rs      []surface.Reading
		i       surface.Instrument
		l       surface.Limits
		verdict uncertainty.Verdict
		lack    string
		outside int
	}{
		{"far below", rpk(0.8, near4...), good, one(0.5), uncertainty.Within, "", 0},
		{"far above", rpk(0.8, near4...), good, one(0.2), uncertainty.Beyond, "", 4},
		{"about there", rpk(0.8, near4...), good, one(0.305), uncertainty.Undecided, "", 1},
		{"one place", rpk(0.8, []float64{0.3, 0.31, 0.29}), good, one(0.5), uncertainty.Undecided, "read at one place", 0},
		{"all alike, nothing known", rpk(0.8, []float64{0.3}, []float64{0.3}, []float64{0.3}), surface.Instrument{}, one(0.5), uncertainty.Undecided, "doubt not known", 0},
		{"all alike, a digit known", rpk(0.8, []float64{0.3}, []float64{0.3}, []float64{0.3}), surface.Instrument{Resolution: um / 100}, one(0.5), uncertainty.Within, "", 0},
		{"one place of many outside", rpk(0.8, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.3}, []float64{0.36}),
			good, one(0.35), uncertainty.Undecided, "", 1},
		{"not read", rpk(0.8, near4...), good, surface.Limits{Rvk: units.Limits{Max: um}}, uncertainty.Undecided, "not read", 0},
		{"a share", rpk(0.8, near4...), good, surface.Limits{Mr2: surface.Shares{Min: 0.7}}, uncertainty.Within, "", 0},
		{"a share too small", rpk(0.5, near4...), good, surface.Limits{Mr2: surface.Shares{Min: 0.7}}, uncertainty.Beyond, "", 4},
		{"a share in a window", rpk(0.8, near4...), good, surface.Limits{Mr2: surface.Shares{Min: 0.7, Max: 0.82}}, uncertainty.Undecided, "", 2},
	} {
		f := judged(t, row.rs, row.i, row.l)[0]
		if f.Verdict != row.verdict || f.Lack != row.lack || f.Outside != row.outside {
			t.Errorf("%s: %v (%v, %q, %d outside)", row.name, f, f.Verdict, f.Lack, f.Outside)
		}
		if (f.Conform == 0) != (row.lack != "") && row.verdict != uncertainty.Beyond {
			t.Errorf("%s: conformity %v", row.name, f.Conform)
		}
	}
	for _, f := range judged(t, rpk(0.8, near4...), good, surface.Limits{Rpk: units.Limits{Max: um / 2}, Rvk: units.Limits{Min: um}, Mr2: surface.Shares{Min: 0.8, Max: 0.85}}) {
		want := map[string]string{
			"Rpk": "Rpk 0.300 ± 0.015 µm, max 0.5 µm: within", "Rvk": "Rvk, min 1 µm: undecided, not read",
			"Mr2": "Mr2 81.5 ± 3.5 %, 80.0 to 85.0 %: undecided",
		}[f.Value.Parameter]
		if f.String() != want {
			t.Errorf("%q, want %q", f, want)
		}
	}
}

// Each window is held against its own parameter.
func TestOwnWindow(t *testing.T) {
	tex := surface.Texture{
		Heights: surface.Heights{Ra: length(1), Rq: length(2), Rz: length(3), Rt: length(4)},
		Plateau: surface.Plateau{Rpk: length(5), Rk: length(6), Rvk: length(7), Oil: length(8), Mr1: 0.09, Mr2: 0.10},
	}
	rs := []surface.Reading{{"a", tex}, {"b", tex}}
	w := func(x float64) units.Limits { return units.Limits{Min: length(x - 0.5), Max: length(x + 0.5)} }
	fs := judged(t, rs, surface.Instrument{Relative: 0.001}, surface.Limits{Ra: w(1), Rq: w(2), Rz: w(3), Rt: w(4), Rpk: w(5), Rk: w(6), Rvk: w(7), Oil: w(8),
		Mr1: surface.Shares{Min: 0.085, Max: 0.095}, Mr2: surface.Shares{Min: 0.095, Max: 0.105}})
	if len(fs) != 10 {
		t.Fatal(len(fs))
	}
	for i, f := range fs {
		if f.Verdict != uncertainty.Within || f.Value.Parameter != [...]string{"Ra", "Rq", "Rz", "Rt", "Rpk", "Rk", "Rvk", "oil", "Mr1", "Mr2"}[i] {
			t.Errorf("%v", f)
		}
	}
}

func TestFindingSurvivesJSON(t *testing.T) {
	w, err := surface.Analyse(rpk(0.80, []float64{0.28, 0.30}, []float64{0.35}, []float64{0.27}), surface.Instrument{})
	must(t, w, err)
	was, err := w.Judge(surface.Limits{Rpk: units.Limits{Max: um / 10}}, uncertainty.Risk{})
	must(t, was, err)
	data, err := json.Marshal(was)
	must(t, was, err)
	var is []surface.Finding
	if err := json.Unmarshal(data, &is); err != nil || is[0].String() != was[0].String() || !strings.HasSuffix(is[0].String(), "3 of 3 places outside") {
		t.Errorf("%v, was %v: %v", is, was, err)
	}
}

func TestJudgeRefusals(t *testing.T) {
	ok := rpk(0.8, []float64{0.3}, []float64{0.4})
	for name, rs := range map[string][]surface.Reading{
		"none": nil, "nothing given": {{}}, "too many": make([]surface.Reading, 10_001),
		"negative": {{Texture: surface.Texture{Heights: surface.Heights{Ra: -1}}}}, "huge": {{Texture: surface.Texture{Heights: surface.Heights{Ra: units.MaxLength + 1}}}},
		"a share above 1": {{Texture: surface.Texture{Plateau: surface.Plateau{Mr1: 1.1}}}}, "no number": {{Texture: surface.Texture{Plateau: surface.Plateau{Mr1: math.NaN()}}}},
	} {
		_, err := surface.Analyse(rs, surface.Instrument{})
		refused(t, name, err, surface.ErrReadings)
	}
	for _, i := range []surface.Instrument{{Relative: -0.1}, {Relative: 1.1}, {Relative: math.NaN()}, {Resolution: -1}, {Resolution: units.MaxLength + 1}, {DigitOfShare: -1}, {DigitOfShare: math.Inf(1)}} {
		_, err := surface.Analyse(ok, i)
		refused(t, "instrument", err, uncertainty.ErrStd)
	}
	w, err := surface.Analyse(ok, surface.Instrument{})
	must(t, w, err)
	_, err = w.Judge(surface.Limits{Rpk: units.Limits{Min: um, Max: um / 2}}, uncertainty.Risk{})
	refused(t, "crossed", err, units.ErrCrossed)
	_, err = w.Judge(surface.Limits{Mr2: surface.Shares{Min: 0.8, Max: 0.7}}, uncertainty.Risk{})
	refused(t, "crossed shares", err, units.ErrCrossed)
	for _, s := range []surface.Shares{{Min: -0.1}, {Max: 1.1}, {Min: math.NaN()}} {
		_, err = w.Judge(surface.Limits{Mr2: s}, uncertainty.Risk{})
		refused(t, "shares", err, uncertainty.ErrLimits)
	}
	_, err = w.Judge(surface.Limits{Rpk: units.Limits{Max: um}}, uncertainty.Risk{Accept: 2})
	refused(t, "risk", err, units.ErrRange)
	_, err = surface.Wall{}.Judge(surface.Limits{}, uncertainty.Risk{})
	refused(t, "no values", err, surface.ErrReadings)
}

// The promise, by simulation: a wall whose mean is at the limit, places that scatter about it by a fifth,
// repeats by a twentieth, is called within or beyond in no more than 5 % of cases each.
func TestPromise(t *testing.T) {
	const walls = 4000
	r := rand.New(rand.NewPCG(5, 5))
	count := map[uncertainty.Verdict]int{}
	for range walls {
		var places [][]float64
		for range 5 {
			at := 1 + 0.2*r.NormFloat64()
			places = append(places, []float64{at * (1 + 0.05*r.NormFloat64()), at * (1 + 0.05*r.NormFloat64())})
		}
		w, err := surface.Analyse(rpk(0.8, places...), surface.Instrument{})
		must(t, w, err)
		fs, err := w.Judge(surface.Limits{Rpk: units.Limits{Max: um}}, uncertainty.Risk{})
		count[must(t, fs, err)[0].Verdict]++
	}
	// Four standard deviations of a count of 5 % of 4000.
	most := int(walls*0.05 + 4*math.Sqrt(walls*0.05*0.95))
	if count[uncertainty.Within] > most || count[uncertainty.Beyond] > most || count[uncertainty.Beyond] < walls/40 {
		t.Errorf("%v of %d, want %d at most", count, walls, most)
	}
}
