// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"pgregory.net/rapid"
)

// anySetting draws settings of a workshop: bores of 20 to 500 mm, lines between 2° and 176°.
func anySetting(t *rapid.T) hone.Setting {
	f := units.Frequency(rapid.Float64Range(0.1, 10).Draw(t, "hertz"))
	k := hone.Cycles(f)
	if rapid.Bool().Draw(t, "one way") {
		k = hone.Strokes(2 * f)
	}
	return hone.Setting{
		Bore:     units.Length(rapid.Int64Range(int64(20*mm), int64(500*mm)).Draw(t, "bore")),
		Stroke:   units.Length(rapid.Int64Range(int64(20*mm), int64(900*mm)).Draw(t, "stroke")),
		Spindle:  units.Frequency(rapid.Float64Range(10, 1500).Draw(t, "rev/min")) * units.PerMinute,
		Stroking: k,
	}
}

// Each inverse gives back the field that it solves for, whatever stands in it.
func checkInverses(t *rapid.T) {
	s := anySetting(t)
	c, err := s.Crosshatch()
	if err != nil {
		t.Fatal(err)
	}
	// What half a grain of the angle, and the roundings of an angle of about 1, do to the ratio:
	// d(tan a)/tan a = 2·da/sin 2a. And the roundings of the arithmetic.
	a := float64(c.FromSquare())
	tol := (0.5e-12*math.Pi/180+4*0x1p-53)*2/math.Sin(2*a) + 16*0x1p-53

	blind := s
	blind.Spindle = units.Frequency(math.NaN())
	n, err := blind.SpindleSpeedFor(c)
	if err != nil || math.Abs(float64(n/s.Spindle)-1) > tol {
		t.Fatalf("spindle %v, %v; want %v", n, err, s.Spindle)
	}
	blind = s
	blind.Stroking = hone.Cycles(-1)
	k, err := blind.StrokingRateFor(c)
	if err != nil || math.Abs(float64(k.Cycles()/s.Stroking.Cycles())-1) > tol {
		t.Fatalf("stroking %v, %v; want %v", k, err, s.Stroking)
	}
	blind = s
	blind.Stroke = -1
	l, err := blind.StrokeLengthFor(c)
	if err != nil || math.Abs(float64(l-s.Stroke)) > tol*float64(s.Stroke)+0.5 {
		t.Fatalf("stroke %v, %v; want %v", l, err, s.Stroke)
	}
}

func TestInverses(t *testing.T) { rapid.Check(t, checkInverses) }

// An angle depends on ratios alone, and the four speeds agree with one another.
func checkRatios(t *rapid.T) {
	s := anySetting(t)
	c, err := s.Crosshatch()
	if err != nil {
		t.Fatal(err)
	}
	by := rapid.Int64Range(2, 11).Draw(t, "by")
	faster, larger := s, s
	faster.Spindle *= units.Frequency(by)
	faster.Stroking = hone.Cycles(s.Stroking.Cycles() * units.Frequency(by))
	larger.Bore, larger.Stroke = s.Bore*units.Length(by), s.Stroke*units.Length(by)
	for name, other := range map[string]hone.Setting{"faster": faster, "larger": larger} {
		got, err := other.Crosshatch()
		if err != nil || math.Abs(included(got)-included(c)) > 2.1e-12 { // a grain, where rounding falls the other way
			t.Fatalf("%s: %v, %v; want %v", name, got, err, c)
		}
	}
	round, err1 := s.Peripheral()
	along, err2 := s.Axial()
	if err := errors.Join(err1, err2); err != nil {
		t.Fatal(err)
	}
	if tan := math.Tan(float64(c.FromSquare())); math.Abs(float64(along/round)/tan-1) > 1e-9 {
		t.Fatalf("speeds %v and %v do not make %v", along, round, c)
	}
	// A turn advances the tool by π·D·tan a.
	advance, err := s.Advance()
	if want := math.Pi * s.Bore.In(mm) * math.Tan(float64(c.FromSquare())); want > 10_000 {
		if !errors.Is(err, hone.ErrUnreachable) {
			t.Fatalf("advance %v, %v", advance, err)
		}
	} else if math.Abs(advance.In(mm)-want) > 1e-9*(1+want) && want < 9_999 {
		t.Fatalf("advance %v, want %v mm", advance, want)
	}
	// Steeper with a longer or quicker stroke, flatter with a faster spindle or larger bore.
	for name, more := range map[string]struct {
		s       hone.Setting
		steeper bool
	}{
		"spindle":  {hone.Setting{Bore: s.Bore, Stroke: s.Stroke, Spindle: s.Spindle * 1.01, Stroking: s.Stroking}, false},
		"bore":     {hone.Setting{Bore: s.Bore + s.Bore/100, Stroke: s.Stroke, Spindle: s.Spindle, Stroking: s.Stroking}, false},
		"stroke":   {hone.Setting{Bore: s.Bore, Stroke: s.Stroke + s.Stroke/100, Spindle: s.Spindle, Stroking: s.Stroking}, true},
		"stroking": {hone.Setting{Bore: s.Bore, Stroke: s.Stroke, Spindle: s.Spindle, Stroking: hone.Cycles(s.Stroking.Cycles() * 1.01)}, true},
	} {
		got, err := more.s.Crosshatch()
		if err != nil || got.Included() > c.Included() != more.steeper || got == c {
			t.Fatalf("more %s: %v, %v from %v", name, got, err, c)
		}
	}
}

func TestRatios(t *testing.T) { rapid.Check(t, checkRatios) }

// What a text says comes back from it; a rate of up to 12 digits exactly.
func checkStrokingText(t *rapid.T) {
	n := units.Frequency(rapid.IntRange(1, 1_000_000).Draw(t, "hundredths a minute")) / 100 * units.PerMinute
	k := hone.Cycles(n)
	if rapid.Bool().Draw(t, "one way") {
		k = hone.Strokes(n)
	}
	back, err := hone.ParseStroking(k.String())
	if err != nil || back.String() != k.String() || math.Abs(float64(back.Cycles()/k.Cycles())-1) > 1e-12 {
		t.Fatalf("%v came back as %v, %v", k, back, err)
	}
	if k.Strokes() != 2*k.Cycles() {
		t.Fatalf("%v: %v strokes, %v cycles", k, k.Strokes(), k.Cycles())
	}
}

func TestStrokingText(t *testing.T) { rapid.Check(t, checkStrokingText) }

func TestParseStroking(t *testing.T) {
	good := map[string]hone.Stroking{
		"60 cycles/min": hone.Cycles(1), "120 strokes/min": hone.Strokes(2), "1 cycle/s": hone.Cycles(1), "2 strokes/s": hone.Strokes(2),
		"60 cycle/min": hone.Cycles(1), "1 stroke/min": hone.Strokes(1 * units.PerMinute), "60cycles/min": hone.Cycles(1), "1 stroke/s": hone.Strokes(1),
		"2 cycles/s": hone.Cycles(2),
	}
	for text, want := range good {
		if k, err := hone.ParseStroking(text); err != nil || k != want {
			t.Errorf("%q: %v, %v; want %v", text, k, err, want)
		}
	}
	if hone.Strokes(0) != (hone.Stroking{}) || hone.Cycles(0) != (hone.Stroking{}) {
		t.Error("no strokes are not the zero Stroking")
	}
	bad := map[string]error{
		"60": hone.ErrConvention, "60/min": hone.ErrConvention, "60 rev/min": hone.ErrConvention, "60 rpm": hone.ErrConvention, "": hone.ErrConvention,
		"cycles/min": units.ErrSyntax, "x strokes/min": units.ErrSyntax, "0 cycles/min": units.ErrNotGiven, "-1 cycles/min": units.ErrRange,
		"1000001 cycles/min": units.ErrRange, "1e3e cycles/min": units.ErrSyntax,
	}
	for text, want := range bad {
		if k, err := hone.ParseStroking(text); !errors.Is(err, want) || !strings.HasPrefix(err.Error(), "hone: ") {
			t.Errorf("%q: %v, %v; want %v", text, k, err, want)
		}
		k := hone.Cycles(1)
		if err := k.UnmarshalText([]byte(text)); text != "" && (err == nil || k != hone.Cycles(1)) {
			t.Errorf("%q: unmarshalled to %v, %v", text, k, err)
		}
	}
}

// Every way to hand a setting nothing, too little or nonsense is refused by every method that
// looks at it, and none of them returns a number that is not finite.
func TestSettingBadInput(t *testing.T) {
	c := crosshatch("45° included")
	good := small(110, 80*mm, hone.Cycles(1))
	nan, inf := units.Frequency(math.NaN()), units.Frequency(math.Inf(1))
	type call struct {
		name                            string
		bore, stroke, spindle, stroking bool // what it looks at
		run                             func(hone.Setting) (float64, error)
	}
	calls := []call{
		{"Peripheral", true, false, true, false, func(s hone.Setting) (float64, error) { v, err := s.Peripheral(); return float64(v), err }},
		{"Axial", false, true, false, true, func(s hone.Setting) (float64, error) { v, err := s.Axial(); return float64(v), err }},
		{"Crosshatch", true, true, true, true, func(s hone.Setting) (float64, error) { v, err := s.Crosshatch(); return float64(v.Included()), err }},
		{"Advance", true, true, true, true, func(s hone.Setting) (float64, error) { v, err := s.Advance(); return float64(v), err }},
		{"SpindleSpeedFor", true, true, false, true, func(s hone.Setting) (float64, error) { v, err := s.SpindleSpeedFor(c); return float64(v), err }},
		{"StrokingRateFor", true, true, true, false, func(s hone.Setting) (float64, error) { v, err := s.StrokingRateFor(c); return float64(v.Cycles()), err }},
		{"StrokeLengthFor", true, false, true, true, func(s hone.Setting) (float64, error) { v, err := s.StrokeLengthFor(c); return float64(v), err }},
		{"peakAxial", false, true, false, true, func(s hone.Setting) (float64, error) {
			v, err := hone.PeakAxial(s, hone.Crank())
			return float64(v), err
		}},
		{"Steepest", true, true, true, true, func(s hone.Setting) (float64, error) {
			v, err := s.Steepest(hone.Crank())
			return float64(v.Included()), err
		}},
		{"Cautions", true, true, true, true, func(s hone.Setting) (float64, error) { v, err := s.Cautions(hone.ByHand); return float64(len(v)), err }},
	}
	for _, call := range calls {
		if v, err := call.run(good); err != nil || math.IsNaN(v) {
			t.Fatalf("%s: %v, %v", call.name, v, err)
		}
		try := func(looks bool, s hone.Setting, want error) {
			t.Helper()
			v, err := call.run(s)
			if looks != (err != nil) || looks && (!errors.Is(err, want) || v != 0 || !strings.HasPrefix(err.Error(), "hone: ")) {
				t.Errorf("%s(%+v): %v, %v; want %v (%v)", call.name, s, v, err, want, looks)
			}
		}
		for l, want := range map[units.Length]error{0: units.ErrNotGiven, -mm: units.ErrRange, units.MaxLength + 1: units.ErrRange} {
			s := good
			s.Bore = l
			try(call.bore, s, want)
			s = good
			s.Stroke = l
			try(call.stroke, s, want)
		}
		for _, bad := range []struct {
			f    units.Frequency
			want error
		}{{0, units.ErrNotGiven}, {-1, units.ErrRange}, {nan, units.ErrRange}, {inf, units.ErrRange}, {1e6, units.ErrRange}} {
			s := good
			s.Spindle = bad.f
			try(call.spindle, s, bad.want)
			s = good
			s.Stroking = hone.Cycles(bad.f)
			try(call.stroking, s, bad.want)
			s.Stroking = hone.Strokes(bad.f)
			try(call.stroking, s, bad.want)
		}
	}
	// The greatest length and the greatest rate are still taken.
	most := hone.Setting{Bore: units.MaxLength, Stroke: units.MaxLength, Spindle: 1e6 * units.PerMinute, Stroking: hone.Strokes(1e6 * units.PerMinute)}
	if c, err := most.Crosshatch(); err != nil {
		t.Errorf("greatest setting: %v, %v", c, err)
	}
	for name, run := range map[string]func() error{
		"SpindleSpeedFor": func() error { _, err := good.SpindleSpeedFor(hone.Crosshatch{}); return err },
		"StrokingRateFor": func() error { _, err := good.StrokingRateFor(hone.Crosshatch{}); return err },
		"StrokeLengthFor": func() error { _, err := good.StrokeLengthFor(hone.Crosshatch{}); return err },
	} {
		if err := run(); !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s of no crosshatch: %v", name, err)
		}
	}
}

// An angle that no workshop reaches has a name.
func TestUnreachable(t *testing.T) {
	flat, steep := crosshatch("0.000000001° included"), crosshatch("179.9999999° included")
	s := small(650, 80*mm, hone.Cycles(1))
	if n, err := s.SpindleSpeedFor(flat); !errors.Is(err, hone.ErrUnreachable) {
		t.Errorf("spindle %v, %v", n, err)
	}
	if k, err := s.StrokingRateFor(steep); !errors.Is(err, hone.ErrUnreachable) || k != (hone.Stroking{}) {
		t.Errorf("stroking %v, %v", k, err)
	}
	if l, err := s.StrokeLengthFor(steep); !errors.Is(err, hone.ErrUnreachable) {
		t.Errorf("stroke %v, %v", l, err)
	}
	s.Spindle, s.Stroking = 1e-6, hone.Cycles(1e4)
	if l, err := s.StrokeLengthFor(flat); !errors.Is(err, hone.ErrUnreachable) {
		t.Errorf("stroke of less than a picometre %v, %v", l, err)
	}
	s.Spindle, s.Stroking = 1e-12, hone.Cycles(1e4)
	if c, err := s.Crosshatch(); !errors.Is(err, units.ErrRange) {
		t.Errorf("crosshatch %v, %v", c, err)
	}
}

// The answers of the bench cost no memory.
func TestNoAllocs(t *testing.T) {
	s, c := small(650, 80*mm, hone.Cycles(1*units.Hertz)), crosshatch("45° included")
	for name, run := range map[string]func() error{
		"Crosshatch":      func() error { _, err := s.Crosshatch(); return err },
		"SpindleSpeedFor": func() error { _, err := s.SpindleSpeedFor(c); return err },
		"StrokingRateFor": func() error { _, err := s.StrokingRateFor(c); return err },
		"StrokeLengthFor": func() error { _, err := s.StrokeLengthFor(c); return err },
	} {
		if n := testing.AllocsPerRun(100, func() {
			if err := run(); err != nil {
				t.Fatal(err)
			}
		}); n != 0 {
			t.Errorf("%s allocates %v times", name, n)
		}
	}
}

// Rates so slow that quotients are lost in floating point are no rates: a spindle at 1e-200 Hz left lines of
// no angle.
func TestRatesThatStandStill(t *testing.T) {
	for _, f := range []units.Frequency{1e-200, 5e-324, 1e-15} {
		s := hone.Setting{Bore: 67 * mm, Spindle: f, Stroking: hone.Cycles(1)}
		if p, err := s.Profile(hone.Crank(), halfOut, want45, 3); !errors.Is(err, units.ErrRange) || p.Points != nil {
			t.Errorf("spindle at %v Hz: %v, %v", float64(f), p, err)
		}
		if _, err := hone.Cycles(f).MarshalText(); !errors.Is(err, units.ErrRange) {
			t.Errorf("stroking at %v Hz: %v", float64(f), err)
		}
	}
	s := hone.Setting{Bore: 67 * mm, Spindle: 1e-13, Stroking: hone.Cycles(1)}
	if p, err := s.Profile(hone.Crank(), halfOut, want45, 3); err != nil || math.IsNaN(p.Within) || math.IsNaN(float64(p.Mean)) {
		t.Errorf("%v, %v", p, err)
	}
}
