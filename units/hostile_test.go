// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"errors"
	"math"
	"reflect"
	"strings"
	"testing"

	"borewright.example/units"
)

// hostile are the floats that break formulas.
var hostile = []float64{
	math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, -math.SmallestNonzeroFloat64,
	math.Copysign(0, -1), 0, 1e15, 1.0000001e15, -1e16, 1e300, 1e-300, 0x1p63, -0x1p63,
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// checkMade holds a constructor to its word: a finite quantity without error, or zero with a sentinel.
func checkMade(t *testing.T, what string, x, got float64, err error) {
	t.Helper()
	switch {
	case err == nil:
		if !finite(got) || !finite(x) {
			t.Errorf("%s of %v is %v", what, x, got)
		}
	case got != 0:
		t.Errorf("%s of %v is %v with %v", what, x, got, err)
	case finite(x) != errors.Is(err, units.ErrRange) || finite(x) == errors.Is(err, units.ErrNotFinite):
		t.Errorf("%s of %v: %v", what, x, err)
	}
}

func TestHostileFloats(t *testing.T) {
	for _, x := range hostile {
		for _, unit := range append(named, units.MaxLength, math.MaxInt64) {
			l, err := units.Of(x, unit)
			checkMade(t, "length", x, float64(l), err)
			if l.Abs() > units.MaxLength {
				t.Errorf("%v × %v is %v", x, unit, l)
			}
		}
		for _, q := range plains {
			// By conversion anything goes in: its text is refused where it is not finite, and else reads back or is refused.
			text, err := q.text(x)
			if err != nil {
				if math.Abs(x) <= 1e15 && q.name != "temperature" {
					t.Errorf("%s: text of %v: %v", q.name, x, err)
				}
				continue
			}
			if !finite(x) {
				t.Errorf("%s: text of %v is %q", q.name, x, text)
			}
			if back, err := q.parse(text); err == nil && !finite(back) || err != nil && !errors.Is(err, units.ErrRange) && text != "" {
				t.Errorf("%s: %q reads back as %v, %v", q.name, text, back, err)
			}
		}
		for _, of := range []func(float64) (units.Temperature, error){units.Celsius, units.Fahrenheit} {
			got, err := of(x)
			checkMade(t, "temperature", x, float64(got), err)
			if err == nil && got <= 0 {
				t.Errorf("temperature of %v is %v K", x, float64(got))
			}
		}
		for _, d := range []units.Length{0, -1, 1, units.Millimetre, units.MaxLength, units.MaxLength + 1, math.MaxInt64, math.MinInt64} {
			f, err := units.FrequencyFor(d, units.Speed(x))
			checkProduct(t, "frequency", d, x, float64(f), err)
		}
	}
	for _, unit := range []units.Length{0, -units.Millimetre} {
		if l, err := units.Of(1, unit); l != 0 || !errors.Is(err, units.ErrRange) {
			t.Errorf("1 × %v: %v, %v", unit, l, err)
		}
	}
}

func checkProduct(t *testing.T, what string, d units.Length, x, got float64, err error) {
	t.Helper()
	bad := d <= 0 || d > units.MaxLength
	if err == nil && (bad || !finite(got) || !finite(x)) || err != nil && got != 0 ||
		err != nil && !errors.Is(err, units.ErrRange) && !errors.Is(err, units.ErrNotFinite) && (d != 0 || !errors.Is(err, units.ErrNotGiven)) {
		t.Errorf("%s of %v with %v: %v, %v", what, d, x, got, err)
	}
}

// TestZeroValues calls every method of every zero value with zero arguments: none panics, and none gives a float that is
// not finite.
func TestZeroValues(t *testing.T) {
	for _, zero := range []any{
		new(units.Length), new(units.Limits), new(units.Temperature), new(units.TemperatureChange), new(units.Angle), new(units.Speed),
		new(units.Frequency), new(units.Volume), new(units.Pressure), new(units.Force), new(units.Expansion), &units.ParseError{Err: units.ErrSyntax},
	} {
		v := reflect.ValueOf(zero)
		for i := range v.NumMethod() {
			m := v.Method(i)
			args := make([]reflect.Value, m.Type().NumIn())
			for j := range args {
				args[j] = reflect.Zero(m.Type().In(j))
			}
			for _, r := range m.Call(args) {
				if r.Kind() == reflect.Float64 && !finite(r.Float()) {
					t.Errorf("%T.%s gives %v", zero, v.Type().Method(i).Name, r.Float())
				}
			}
		}
		if v.Elem().Kind() != reflect.Struct && v.Elem().IsZero() == false {
			t.Errorf("%T changed to %v", zero, v.Elem())
		}
	}
}

// The bounds themselves are allowed.
func TestBounds(t *testing.T) {
	if v, err := readText[units.Speed]("1e15 m/s"); v != 1e15 || err != nil {
		t.Errorf("1e15 m/s: %v, %v", float64(v), err)
	}
	if c, err := units.Celsius(1e15 - 274); c <= 0 || err != nil {
		t.Errorf("just under 1e15 K: %v, %v", c, err)
	}
	if l, err := units.Of(10, units.Metre); l != units.MaxLength || err != nil {
		t.Errorf("10 m: %v, %v", l, err)
	}
	if w, err := units.ParseLimits("1 to 10 m"); w.Max != units.MaxLength || err != nil {
		t.Errorf("1 to 10 m: %v, %v", w, err)
	}
	if v, err := readText[units.Force](strings.Repeat("0", 99) + "1 N"); v != 1 || err != nil {
		t.Errorf("a number of 100 bytes: %v, %v", v, err)
	}
	for _, size := range []int{80, 81} {
		_, err := units.ParseLength(strings.Repeat("1", size))
		input := strings.Repeat("1", 80) + strings.Repeat("…", size-80)
		if err == nil || !strings.HasPrefix(err.Error(), `units: length "`+input+`": `) {
			t.Errorf("%d bytes: %v", size, err)
		}
	}
}

// A unit of zero counts nothing.
func TestUnitOfZero(t *testing.T) {
	if x := units.Inch.In(0); x != 0 {
		t.Errorf("%v", x)
	}
	if d := units.Inch.Decimal(0); !d.IsZero() {
		t.Errorf("%v", d)
	}
	if x := units.MetrePerSecond.In(0); x != 0 {
		t.Errorf("%v", x)
	}
}

func TestNotFiniteText(t *testing.T) {
	for _, x := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if b, err := units.Speed(x).MarshalText(); !errors.Is(err, units.ErrNotFinite) {
			t.Errorf("%v: %q, %v", x, b, err)
		}
		if b, err := units.Temperature(x).MarshalText(); !errors.Is(err, units.ErrNotFinite) || len(b) != 0 {
			t.Errorf("%v: %q, %v", x, b, err)
		}
	}
	for _, s := range []string{
		units.Speed(math.NaN()).String(), units.Angle(math.Inf(1)).String(), units.Expansion(math.Inf(-1)).String(),
	} {
		if !strings.Contains("NaN m/min +Inf° -Inf/K 5.72957795131e+13°", s) {
			t.Errorf("%q", s)
		}
	}
	if err := units.Temperature(-1).Validate(); !errors.Is(err, units.ErrRange) {
		t.Errorf("-1 K: %v", err)
	}
	if s := units.Temperature(-1).String(); s != "not given" {
		t.Errorf("-1 K prints %q", s)
	}
}

func TestNoAllocs(t *testing.T) {
	var (
		l, o = units.MustParseLength("67.071875 mm"), units.MustParseLength("2-41/64 in")
		in   = []byte("67.071875 mm")
		w    = units.Limits{Min: l, Max: o}
		ls   = []units.Length{l, o, l}
	)
	for name, run := range map[string]func() error{
		"ParseLength, decimal":  func() error { _, err := units.ParseLength("67.071875 mm"); return err },
		"ParseLength, fraction": func() error { _, err := units.ParseLength("2-41/64 in"); return err },
		"Length.UnmarshalText":  func() error { return o.UnmarshalText(in) },
		"Of":                    func() error { _, err := units.Of(67.02, units.Millimetre); return err },
		"MulDiv":                func() error { _, err := l.MulDiv(41, 64); return err },
		"Mean":                  func() error { _, err := units.Mean(ls...); return err },
		"Round": func() error {
			l = l.Round(units.Thou).Floor(units.Tenth).Ceil(units.Microinch)
			return nil
		},
		"Inward":                       func() error { _, err := w.Inward(units.Micrometre); return err },
		"ParseFrequency":               func() error { _, err := units.ParseFrequency("60 rev/min"); return err },
		"ParseTemperature":             func() error { _, err := units.ParseTemperature("31.5 °C"); return err },
		"ParseAngle":                   func() error { _, err := units.ParseAngle("44°30'15\""); return err },
		"FrequencyFor":                 func() error { _, err := units.FrequencyFor(o, 10); return err },
		"Limits.Contains and Validate": func() error { w.Contains(l); return w.Validate() },
	} {
		w = units.Limits{Min: l - units.Millimetre, Max: l}
		if n := testing.AllocsPerRun(100, func() {
			if err := run(); err != nil {
				t.Fatal(name, err)
			}
		}); n != 0 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
	for name, text := range map[string]func(){
		"String":      func() { _ = l.String() },
		"Format":      func() { _ = l.Format(units.Inch, 4) },
		"MarshalText": func() { _, _ = l.MarshalText() },
	} {
		if n := testing.AllocsPerRun(100, text); n > 1 {
			t.Errorf("%s: %v allocations", name, n)
		}
	}
}
