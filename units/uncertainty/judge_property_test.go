// SPDX-License-Identifier: BSD-3-Clause

package uncertainty_test

import (
	"encoding/json"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"pgregory.net/rapid"
)

func estimates(t *rapid.T) uncertainty.Estimate {
	return uncertainty.Estimate{
		Value: units.Length(rapid.Int64Range(-50_000_000, 50_000_000).Draw(t, "value")),
		Std:   units.Length(rapid.OneOf(rapid.Just(int64(0)), rapid.Int64Range(1, 30_000_000)).Draw(t, "std")),
		DoF:   rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1, 60)).Draw(t, "dof"),
	}
}

func windows(t *rapid.T) units.Limits {
	lo := units.Length(rapid.Int64Range(-40_000_000, 40_000_000).Draw(t, "min"))
	hi := lo + units.Length(rapid.Int64Range(0, 40_000_000).Draw(t, "width"))
	if lo == 0 {
		lo = 1
	}
	if hi = max(lo, hi); hi == 0 {
		hi = 1
	}
	switch rapid.IntRange(0, 2).Draw(t, "ends") {
	case 0:
		return units.Limits{Min: lo}
	case 1:
		return units.Limits{Max: hi}
	}
	return units.Limits{Min: lo, Max: hi}
}

func risks(t *rapid.T) uncertainty.Risk {
	r := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1e-6, 0.5))
	return uncertainty.Risk{Accept: r.Draw(t, "accept"), Reject: r.Draw(t, "reject")}
}

func finding(t *rapid.T) func(f uncertainty.Finding, err error) uncertainty.Finding {
	return func(f uncertainty.Finding, err error) uncertainty.Finding {
		t.Helper()
		if err != nil {
			t.Fatal(err)
		}
		return f
	}
}

func mirror(e uncertainty.Edge) uncertainty.Edge {
	switch e {
	case uncertainty.Lower:
		return uncertainty.Upper
	case uncertainty.Upper:
		return uncertainty.Lower
	}
	return e
}

func TestJudgeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e, w, r := estimates(t), windows(t), risks(t)
		get := finding(t)
		f := get(uncertainty.Judge(e, w, r))

		if f.Conform < 0 || f.Conform > 1 || f.Measured != e || f.Limits != w || f.Risk != r.OrDefault() || f.Per == "" {
			t.Fatalf("%v", f)
		}
		switch {
		case e.Std == 0 && (f.Verdict == uncertainty.Undecided || (f.Verdict == uncertainty.Within) != w.Contains(e.Value)):
			t.Fatalf("exact: %v", f)
		case f.Verdict == uncertainty.Within && !w.Contains(e.Value), f.Verdict == uncertainty.Beyond && w.Contains(e.Value):
			t.Fatalf("against the reading: %v", f)
		case f.Verdict == uncertainty.Within && f.Edge != 0, f.Verdict == uncertainty.Beyond && f.Edge == 0:
			t.Fatalf("edge: %v", f)
		}

		// turned about zero
		m := get(uncertainty.Judge(uncertainty.Estimate{Value: -e.Value, Std: e.Std, DoF: e.DoF}, units.Limits{Min: -w.Max, Max: -w.Min}, r))
		if m.Verdict != f.Verdict || m.Conform != f.Conform || m.Edge != mirror(f.Edge) {
			t.Fatalf("%v, mirrored %v", f, m)
		}
		// in another unit
		m = get(uncertainty.Judge(uncertainty.Estimate{Value: 7 * e.Value, Std: 7 * e.Std, DoF: e.DoF}, units.Limits{Min: 7 * w.Min, Max: 7 * w.Max}, r))
		if m.Verdict != f.Verdict || m.Conform != f.Conform || m.Edge != f.Edge {
			t.Fatalf("%v, scaled %v", f, m)
		}
		// the probability grows with the limit
		if wider := w; w.HasMax() && w.Max != -1 {
			wider.Max += units.Length(rapid.Int64Range(1, 1_000_000).Draw(t, "wider"))
			if wider.Max != 0 {
				if m = get(uncertainty.Judge(e, wider, r)); m.Conform < f.Conform {
					t.Fatalf("%v, wider %v", f, m)
				}
				if f.Verdict == uncertainty.Within && m.Verdict != uncertainty.Within {
					t.Fatalf("%v, wider %v", f, m)
				}
				// a narrow window is tested on two sides and a wide one on one, so up to
				// twice the risk stands between them
				twice := f.Risk
				if w.HasMin() {
					twice.Reject = 2*twice.Reject + 2e-9
				}
				if twice.Reject <= 0.5 && m.Verdict == uncertainty.Beyond && get(uncertainty.Judge(e, w, twice)).Verdict != uncertainty.Beyond {
					t.Fatalf("%v, wider %v", f, m)
				}
			}
		}
		// more risk decides no less
		more := f.Risk
		more.Accept, more.Reject = min(0.5, 2*more.Accept), min(0.5, 2*more.Reject)
		if m = get(uncertainty.Judge(e, w, more)); f.Verdict != uncertainty.Undecided && m.Verdict != f.Verdict {
			t.Fatalf("%v, at more risk %v", f, m)
		}
		// with one limit the rule U inside, U outside with the risk's factor is the same rule
		if !w.HasMin() && e.Std > 1000 && f.Risk.Accept == f.Risk.Reject {
			k, err := uncertainty.Coverage(1-2*f.Risk.Accept, e.DoF)
			if f.Risk.Accept < 0.4999 && (err != nil || math.Abs(math.Abs((e.Value-w.Max).In(e.Std))-k) > 2e-3) {
				if m = get(uncertainty.JudgeExpanded(e, w, k)); m.Verdict != f.Verdict || math.Abs(m.Risk.Accept-f.Risk.Accept) > 1e-9 {
					t.Fatalf("%v, by k = %v %v", f, k, m)
				}
			}
		}
		// JSON
		b, err := json.Marshal(f)
		if err != nil {
			t.Fatal(err)
		}
		var back uncertainty.Finding
		if err := json.Unmarshal(b, &back); err != nil || back != f {
			t.Fatalf("%v, %v back from %s: %v", f, back, b, err)
		}
	})
}

func TestJudgeRangeProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		get := finding(t)
		limit := units.Limits{Max: units.Length(rapid.Int64Range(1, 20_000_000).Draw(t, "limit"))}
		std := units.Length(rapid.Int64Range(1000, 10_000_000).Draw(t, "std"))
		dof := rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(2, 60)).Draw(t, "dof")
		r := risks(t)
		values := rapid.SliceOfN(rapid.Custom(func(t *rapid.T) units.Length {
			return units.Length(rapid.Int64Range(0, 60_000_000).Draw(t, "value"))
		}), 2, 7).Draw(t, "values")
		f := get(uncertainty.JudgeRange(values, std, dof, limit, r))

		// order and place do not matter
		moved := rapid.Permutation(values).Draw(t, "order")
		for i := range moved {
			moved[i] = 90*units.Millimetre - moved[i]
		}
		if m := get(uncertainty.JudgeRange(moved, std, dof, limit, r)); m != f {
			t.Fatalf("%v, moved %v", f, m)
		}
		// the difference of the extremes, were it known beforehand which they are
		e := f.Measured
		d := get(uncertainty.JudgeDifference(e, limit, r))
		if d.Conform != f.Conform || (d.Verdict == uncertainty.Within) != (f.Verdict == uncertainty.Within) ||
			f.Verdict == uncertainty.Beyond && d.Verdict != uncertainty.Beyond {
			t.Fatalf("%v, as a difference %v", f, d)
		}
		if len(values) == 2 && d.Verdict != f.Verdict {
			t.Fatalf("two: %v, as a difference %v", f, d)
		}
		// a reading between the extremes can only take a "beyond" away
		more := append(slices.Clone(values), values[0])
		if m := get(uncertainty.JudgeRange(more, std, dof, limit, r)); m.Conform != f.Conform || m.Verdict == uncertainty.Beyond && f.Verdict != uncertainty.Beyond {
			t.Fatalf("%v, with one more %v", f, m)
		}
		// a difference has no sign
		e.Value = -e.Value
		if m := get(uncertainty.JudgeDifference(e, limit, r)); m.Verdict != d.Verdict || m.Conform != d.Conform || m.Edge != d.Edge {
			t.Fatalf("%v, other sign %v", d, m)
		}
		// a difference is a value in a window about zero
		v := get(uncertainty.Judge(e, units.Limits{Min: -limit.Max, Max: limit.Max}, r))
		if v.Verdict != d.Verdict || math.Abs(v.Conform-d.Conform) > 1.5e-9 {
			t.Fatalf("%v, in a window %v", d, v)
		}
	})
}

func TestSettleProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		get := finding(t)
		e, w, r := estimates(t), windows(t), risks(t)
		var f uncertainty.Finding
		judge := func(e uncertainty.Estimate) uncertainty.Finding { return get(uncertainty.Judge(e, w, r)) }
		if rapid.Bool().Draw(t, "difference") {
			w = units.Limits{Max: units.Length(rapid.Int64Range(1, 20_000_000).Draw(t, "limit"))}
			judge = func(e uncertainty.Estimate) uncertainty.Finding { return get(uncertainty.JudgeDifference(e, w, r)) }
		}
		f = judge(e)
		random := units.Length(rapid.Int64Range(0, int64(e.Std)).Draw(t, "random"))
		remedy, err := f.Settle(random)
		if err != nil {
			t.Fatal(err)
		}
		onLimit := f.Risk.Accept < 0.5 && (w.HasMin() && e.Value == w.Min || w.HasMax() && (e.Value == w.Max || f.Kind == uncertainty.OneDifference && e.Value.Abs() == w.Max))
		switch {
		case f.Verdict != uncertainty.Undecided:
			if remedy != (uncertainty.Remedy{Toward: f.Verdict, Std: e.Std, Repeats: 1}) {
				t.Fatalf("%v: %v", f, remedy)
			}
			return
		case onLimit:
			if remedy != (uncertainty.Remedy{}) {
				t.Fatalf("%v: %v", f, remedy)
			}
			return
		case remedy.Toward == uncertainty.Undecided:
			// less than some picometres off the limit
			e.Std = 1
			if judge(e).Verdict != uncertainty.Undecided {
				t.Fatalf("%v: %v", f, remedy)
			}
			return
		}
		if e.Std = remedy.Std; judge(e).Verdict != remedy.Toward {
			t.Fatalf("%v: %v does not settle it", f, remedy)
		}
		if e.Std += remedy.Std/900 + 1; e.Std < f.Measured.Std && judge(e).Verdict != uncertainty.Undecided {
			t.Fatalf("%v: %v is not the greatest", f, remedy)
		}
		at := func(n int) units.Length {
			whole, part := f.Measured.Std.In(units.Picometre), random.In(units.Picometre)
			return units.Length(math.Sqrt(whole*whole - part*part + part*part/float64(n)))
		}
		if n := remedy.Repeats; n != 0 && (at(n) > remedy.Std || at(n-1) < remedy.Std-1) {
			t.Fatalf("%v, random %v: %v: %v at %d", f, random, remedy, at(n), n)
		} else if n == 0 && at(1000) < remedy.Std-1 {
			t.Fatalf("%v, random %v: %v: 1000 would do", f, random, remedy)
		}
	})
}

func TestEstimateTextProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := uncertainty.Estimate{
			Value: units.Length(rapid.Int64Range(-1e12, 1e12).Draw(t, "value")),
			Std:   units.Length(math.Exp(rapid.Float64Range(0, 27).Draw(t, "std"))),
			DoF:   rapid.OneOf(rapid.Just(0.0), rapid.Float64Range(1, 60)).Draw(t, "dof"),
		}
		unit := rapid.SampledFrom([]units.Length{units.Millimetre, units.Micrometre, units.Inch, units.Thou, units.Metre}).Draw(t, "unit")
		value, rest, ok := strings.Cut(e.Format(unit), " ± ")
		u, _, _ := strings.Cut(rest, " ")
		if !ok || strings.Contains(value, ".") != strings.Contains(u, ".") ||
			strings.Contains(u, ".") && len(value)-strings.Index(value, ".") != len(u)-strings.Index(u, ".") {
			t.Fatalf("%q: places differ", e.Format(unit))
		}
		k, err := uncertainty.Coverage(0.95, e.DoF)
		if err != nil {
			t.Fatal(err)
		}
		want := math.Round(k*e.Std.In(units.Picometre)) / unit.In(units.Picometre)
		got, err := strconv.ParseFloat(u, 64)
		if err != nil {
			t.Fatal(err)
		}
		two, _ := strconv.ParseFloat(strconv.FormatFloat(want, 'g', 2, 64), 64)
		place := math.Pow(10, math.Floor(math.Log10(want))-1)
		if math.Abs(got-want) > place*0.500001 {
			t.Fatalf("%q: U is %v, so %v", e.Format(unit), want, two)
		}
		if digits := strings.TrimLeft(strings.ReplaceAll(u, ".", ""), "0"); strings.Contains(u, ".") && len(digits) != 2 {
			t.Fatalf("%q: not two digits", e.Format(unit))
		}
		v, err := strconv.ParseFloat(value, 64)
		if err != nil || math.Abs(v-e.Value.In(unit)) > place*5.1 {
			t.Fatalf("%q of %v", e.Format(unit), e.Value.In(unit))
		}
	})
}
