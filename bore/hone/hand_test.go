// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
	"pgregory.net/rapid"
)

func anyOnHand(t *rapid.T) hone.OnHand {
	n := rapid.Float64Range(20, 900).Draw(t, "slowest rev/min")
	f := rapid.Float64Range(10, 110).Draw(t, "slowest cycles/min")
	k := hone.Cycles(units.Frequency(f) * units.PerMinute)
	if rapid.Bool().Draw(t, "one way") {
		k = hone.Strokes(units.Frequency(2*f) * units.PerMinute)
	}
	most := f * rapid.Float64Range(1, 3).Draw(t, "times cycles")
	return hone.OnHand{
		Bore:   units.Length(rapid.Int64Range(int64(30*mm), int64(150*mm)).Draw(t, "bore")),
		Stroke: units.Length(rapid.Int64Range(int64(30*mm), int64(250*mm)).Draw(t, "stroke")),
		Spindle: hone.SpindleRange{
			Min: units.Frequency(n) * units.PerMinute,
			Max: units.Frequency(n*rapid.Float64Range(1, 6).Draw(t, "times rev/min")) * units.PerMinute,
		},
		Stroking: hone.StrokingRange{Min: k, Max: hone.Cycles(units.Frequency(most) * units.PerMinute)},
		Drive:    rapid.SampledFrom([]hone.Drive{0, hone.ByHand, hone.ByMachine}).Draw(t, "drive"),
	}
}

func anyWant(t *rapid.T) hone.Want {
	a := rapid.Float64Range(5, 150).Draw(t, "included")
	return hone.Want{
		Crosshatch: must[hone.Crosshatch](t)(hone.Included(units.Angle(a) * degree)),
		Tolerance:  units.Angle(rapid.Float64Range(0.01, 4.5).Draw(t, "tolerance")) * degree,
	}
}

// steps returns a grid over a range of rates, ends included.
func steps(lo, hi units.Frequency) []units.Frequency {
	const n = 12
	var fs []units.Frequency
	for i := range n {
		fs = append(fs, lo+(hi-lo)*units.Frequency(i)/(n-1))
	}
	return fs
}

// The answer against a walk over settings on hand: what meets the want is in the set, what does
// not is outside; nothing comes nearer than the best; a change leaves just what is wanted.
func checkFind(t *rapid.T) {
	h, want := anyOnHand(t), anyWant(t)
	r, err := h.SettingFor(want)
	if err != nil {
		t.Fatal(err)
	}
	top := h.Stroking.Max.Cycles()
	if h.Drive != hone.ByMachine {
		top = min(top, hone.HandLimit)
	}
	miss := func(s hone.Setting) float64 {
		c, err := s.Crosshatch()
		if err != nil {
			t.Fatal(err)
		}
		return math.Abs(included(c) - included(want.Crosshatch))
	}
	best, tol := miss(r.Best), want.Tolerance.In(degree)
	if !hone.HasSpindle(h.Spindle, r.Best.Spindle) || !hone.HasStroking(h.Stroking, r.Best.Stroking) || r.Best.Stroking.Cycles() > top*(1+1e-9) {
		t.Fatalf("best %+v is not on hand", r.Best)
	}
	if r.Met != (best <= tol+1e-9) && math.Abs(best-tol) > 1e-9 {
		t.Fatalf("met %v, yet the best misses by %v of %v", r.Met, best, tol)
	}
	const edge = 1e-6 // degrees: nearer to the edge than this either answer will do
	met := 0
	for _, n := range steps(h.Spindle.Min, h.Spindle.Max) {
		for _, f := range steps(h.Stroking.Min.Cycles(), top) {
			s := hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Spindle: n, Stroking: hone.Cycles(f)}
			m := miss(s)
			if m < best-1e-9 {
				t.Fatalf("%+v misses by %v, the best by %v", s, m, best)
			}
			w, okW := r.SpindlesAt(s.Stroking)
			k, okK := r.StrokingsAt(n)
			if okK && k.Max.Cycles() > top*(1+1e-9) {
				t.Fatalf("%v at %v: beyond %v", k, n, top)
			}
			in := [2]bool{okW && hone.HasSpindle(w, n), okK && hone.HasStroking(k, s.Stroking)}
			if want := m <= tol; math.Abs(m-tol) > edge && in != [2]bool{want, want} {
				t.Fatalf("%+v misses by %v of %v, found %v", s, m, tol, in)
			}
			if in[1] {
				met++
			}
		}
	}
	if met > 0 && !r.Met {
		t.Fatalf("%d of the grid will do, yet it is not met", met)
	}
	if r.Met != (len(r.Changes) == 0) {
		t.Fatalf("met %v with changes %v", r.Met, r.Changes)
	}
	for _, c := range r.Changes {
		// A stroke is rounded to a picometre, 1e-9 of the shortest of them.
		stroke := c.Setting.Stroke != r.Best.Stroke
		if m := miss(c.Setting); m > 1e-9 && (!stroke || m > 1e-7) {
			t.Fatalf("%v misses by %v", c, m)
		}
		moved := 0
		for _, is := range []bool{stroke, c.Setting.Stroking != r.Best.Stroking, c.Setting.Spindle != r.Best.Spindle} {
			if is {
				moved++
			}
		}
		if moved != 1 || c.Setting.Bore != h.Bore {
			t.Fatalf("%+v differs from %+v in %d things", c.Setting, r.Best, moved)
		}
		byHand := h.Drive != hone.ByMachine
		if c.Setting.Stroking != r.Best.Stroking && byHand && c.Setting.Stroking.Cycles() > 2.0001 && !saying([]hone.Caution{c.Against}, handTooFast) {
			t.Fatalf("%v is advised to a hand", c)
		}
		if stroke != saying([]hone.Caution{c.Against}, strokeIsSet) {
			t.Fatalf("%v is advised", c)
		}
	}
	if r.Met && best < 1e-9 {
		// The stated rule: no setting that meets it exactly strokes nearer the middle.
		middle := (h.Stroking.Min.Cycles() + top) / 2
		for _, f := range steps(h.Stroking.Min.Cycles(), top) {
			n, err := hone.Setting{Bore: h.Bore, Stroke: h.Stroke, Stroking: hone.Cycles(f)}.SpindleSpeedFor(want.Crosshatch)
			if err == nil && n >= h.Spindle.Min && n <= h.Spindle.Max &&
				math.Abs(float64(f-middle)) < math.Abs(float64(r.Best.Stroking.Cycles()-middle))-1e-9 {
				t.Fatalf("%v is nearer the middle than %v", f, r.Best.Stroking)
			}
		}
	}
}

func TestFind(t *testing.T) { rapid.Check(t, checkFind) }

func TestFindStates(t *testing.T) {
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * degree}
	drill := hone.OnHand{Bore: 67 * mm, Stroke: 80 * mm, Drive: hone.ByHand}
	rows := []struct {
		name, spindle, stroking string
		drive                   hone.Drive
		met                     bool
		best, leaves            string
		cautions                []string
	}{
		{"fast drill", "600 to 700 rev/min", "40 to 90 cycles/min", hone.ByHand, false, "90 cycles/min", "13.0° included", []string{surfaceFast}},
		{"geared drill", "60 to 700 rev/min", "40 to 80 cycles/min", hone.ByHand, true, "60 cycles/min", "45.0° included", nil},
		{"as single strokes", "60 to 700 rev/min", "80 to 160 strokes/min", hone.ByHand, true, "120 strokes/min", "45.0° included", nil},
		{"hasty hand", "60 to 700 rev/min", "80 to 360 cycles/min", hone.ByHand, true, "100 cycles/min", "45.0° included", []string{handTooFast}},
		{"hasty and not given", "60 to 700 rev/min", "80 to 360 cycles/min", 0, true, "100 cycles/min", "45.0° included", []string{handTooFast}},
		{"machine", "60 to 700 rev/min", "80 to 360 cycles/min", hone.ByMachine, true, "220 cycles/min", "45.0° included", nil},
		{"one speed", "100 rev/min", "60 cycles/min", hone.ByMachine, true, "60 cycles/min", "49.0° included", nil},
		{"too slow", "20 to 30 rev/min", "60 to 90 cycles/min", hone.ByHand, false, "60 cycles/min", "113.3° included", []string{surfaceSlow}},
	}
	for _, row := range rows {
		h := drill
		h.Drive = row.drive
		h.Spindle = must[hone.SpindleRange](t)(hone.ParseSpindleRange(row.spindle))
		h.Stroking = must[hone.StrokingRange](t)(hone.ParseStrokingRange(row.stroking))
		r := must[hone.Found](t)(h.SettingFor(want))
		if r.Met != row.met || r.Leaves.Format(1) != row.leaves || !alike(r.Cautions, row.cautions) || r.Hand != h {
			t.Errorf("%s: %v, cautions %v", row.name, r, r.Cautions)
		}
		if k := must[hone.Stroking](t)(hone.ParseStroking(row.best)); math.Abs(float64(r.Best.Stroking.Strokes()-k.Strokes())) > 1e-9 ||
			r.Best.Stroking.String()[len(r.Best.Stroking.String())-10:] != row.best[len(row.best)-10:] {
			t.Errorf("%s: best %v, want %v", row.name, r.Best.Stroking, k)
		}
	}
}

func TestFindBadInput(t *testing.T) {
	good := hone.OnHand{
		Bore: 67 * mm, Stroke: 80 * mm,
		Spindle:  hone.SpindleRange{Min: 1, Max: 10},
		Stroking: hone.StrokingRange{Min: hone.Cycles(0.5), Max: hone.Cycles(1.5)},
	}
	want := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * degree}
	nan := units.Frequency(math.NaN())
	for name, row := range map[string]struct {
		change func(*hone.OnHand, *hone.Want)
		err    error
	}{
		"no bore":            {func(h *hone.OnHand, _ *hone.Want) { h.Bore = 0 }, units.ErrNotGiven},
		"negative bore":      {func(h *hone.OnHand, _ *hone.Want) { h.Bore = -1 }, units.ErrRange},
		"no stroke":          {func(h *hone.OnHand, _ *hone.Want) { h.Stroke = 0 }, units.ErrNotGiven},
		"no spindle":         {func(h *hone.OnHand, _ *hone.Want) { h.Spindle = hone.SpindleRange{} }, units.ErrNotGiven},
		"no fastest":         {func(h *hone.OnHand, _ *hone.Want) { h.Spindle.Max = 0 }, units.ErrNotGiven},
		"spindle NaN":        {func(h *hone.OnHand, _ *hone.Want) { h.Spindle.Max = nan }, units.ErrRange},
		"spindle crossed":    {func(h *hone.OnHand, _ *hone.Want) { h.Spindle.Min = 11 }, units.ErrCrossed},
		"no stroking":        {func(h *hone.OnHand, _ *hone.Want) { h.Stroking = hone.StrokingRange{} }, units.ErrNotGiven},
		"stroking NaN":       {func(h *hone.OnHand, _ *hone.Want) { h.Stroking.Min = hone.Strokes(nan) }, units.ErrRange},
		"stroking crossed":   {func(h *hone.OnHand, _ *hone.Want) { h.Stroking.Min = hone.Cycles(1.6) }, units.ErrCrossed},
		"only beyond a hand": {func(h *hone.OnHand, _ *hone.Want) { h.Stroking = hone.StrokingRange{hone.Cycles(3), hone.Cycles(6)} }, units.ErrRange},
		"no crosshatch":      {func(_ *hone.OnHand, w *hone.Want) { w.Crosshatch = hone.Crosshatch{} }, units.ErrNotGiven},
		"no tolerance":       {func(_ *hone.OnHand, w *hone.Want) { w.Tolerance = 0 }, units.ErrNotGiven},
		"negative tolerance": {func(_ *hone.OnHand, w *hone.Want) { w.Tolerance = -1 }, units.ErrRange},
		"tolerance NaN":      {func(_ *hone.OnHand, w *hone.Want) { w.Tolerance = units.Angle(math.NaN()) }, units.ErrRange},
		"tolerance below 0°": {func(_ *hone.OnHand, w *hone.Want) { w.Tolerance = 45 * degree }, units.ErrRange},
		"tolerance too wide": {func(_ *hone.OnHand, w *hone.Want) { w.Tolerance = math.Pi }, units.ErrRange},
	} {
		h, w := good, want
		row.change(&h, &w)
		r, err := h.SettingFor(w)
		if !errors.Is(err, row.err) || r.Best != (hone.Setting{}) {
			t.Errorf("%s: %v, %v; want %v", name, r, err, row.err)
		}
	}
	// Where nothing was found there are no settings.
	var none hone.Found
	if _, ok := none.SpindlesAt(hone.Cycles(1)); ok {
		t.Error("the zero Found has spindles")
	}
	if _, ok := none.StrokingsAt(1); ok {
		t.Error("the zero Found has strokings")
	}
}

func TestWant(t *testing.T) {
	w := hone.Want{Crosshatch: crosshatch("45° included"), Tolerance: 5 * degree}
	for text, want := range map[string]bool{
		"40° included": true, "50° included": true, "39.999999999998° included": false, "50.000000000002° included": false, "45° from square": false,
	} {
		if (w.Judge(crosshatch(text), 0) == uncertainty.Within) != want {
			t.Errorf("%v accepts %v: %v", w, text, !want)
		}
	}
	if w.Judge(hone.Crosshatch{}, 0) != uncertainty.Undecided || (hone.Want{}).Judge(crosshatch("45° included"), 0) != uncertainty.Undecided {
		t.Error("nothing given, yet judged")
	}
}

func TestParseRanges(t *testing.T) {
	for text, want := range map[string]string{
		"60 to 700 rev/min": "60 rev/min to 700 rev/min", "60 rev/min to 700 rev/min": "60 rev/min to 700 rev/min", "650 rev/min": "650 rev/min",
		"1 Hz to 700 rpm": "60 rev/min to 700 rev/min", "1 to 2 Hz": "60 rev/min to 120 rev/min",
	} {
		r, err := hone.ParseSpindleRange(text)
		if err != nil || r.String() != want {
			t.Errorf("%q: %v, %v; want %v", text, r, err, want)
		}
		if again, err := hone.ParseSpindleRange(r.String()); err != nil || again != r {
			t.Errorf("%v came back as %v, %v", r, again, err)
		}
	}
	r := hone.SpindleRange{Min: 1, Max: 10}
	for f, want := range map[units.Frequency]bool{1: true, 1 - 5e-10: true, 1 - 1e-8: false, 10: true, 10 + 5e-9: true, 10 + 1e-7: false} {
		if hone.HasSpindle(r, f) != want {
			t.Errorf("%v contains %v Hz: %v", r, float64(f), !want)
		}
	}
	for text, want := range map[string]string{
		"40 to 90 cycles/min": "40 cycles/min to 90 cycles/min", "60 strokes/min to 90 cycles/min": "60 strokes/min to 90 cycles/min", "60 cycles/min": "60 cycles/min",
	} {
		r, err := hone.ParseStrokingRange(text)
		if err != nil || r.String() != want {
			t.Errorf("%q: %v, %v; want %v", text, r, err, want)
		}
		if again, err := hone.ParseStrokingRange(r.String()); err != nil || again != r {
			t.Errorf("%v came back as %v, %v", r, again, err)
		}
	}
	for text, want := range map[string]error{
		"": units.ErrSyntax, "60 to 700": units.ErrSyntax, "60 rev/min to 700": units.ErrSyntax, "700 to 60 rev/min": units.ErrCrossed, "0 to 60 rev/min": units.ErrNotGiven,
		"60 to 70 cycles/min": units.ErrSyntax, "60 to  70 rev/min": units.ErrSyntax, " to 60 rev/min": units.ErrSyntax, ". to 60 rev/min": units.ErrSyntax,
	} {
		if r, err := hone.ParseSpindleRange(text); !errors.Is(err, want) {
			t.Errorf("%q: %v, %v; want %v", text, r, err, want)
		}
	}
	for text, want := range map[string]error{
		"": hone.ErrConvention, "60 to 90/min": hone.ErrConvention, "60 to 90 rev/min": hone.ErrConvention, "90 to 60 cycles/min": units.ErrCrossed,
		"60 cycles/min to 90 strokes/min": units.ErrCrossed, "0 to 60 cycles/min": units.ErrNotGiven, "x to 60 cycles/min": hone.ErrConvention,
	} {
		if r, err := hone.ParseStrokingRange(text); !errors.Is(err, want) {
			t.Errorf("%q: %v, %v; want %v", text, r, err, want)
		}
	}
}
