// SPDX-License-Identifier: BSD-3-Clause

package units_test

import (
	"errors"
	"math/big"
	"regexp"
	"strings"
	"testing"

	"borewright.example/units"
)

// lengthGrammar is the grammar of [units.ParseLength] once more, as a regular expression.
var lengthGrammar = regexp.MustCompile(`^([+-]?)(?:(\d+\.?\d*|\.\d+)|(?:(\d+)[- ])?(\d+)/(\d+))(?: ?(mm|um|µm|μm|m|nm|pm|in|"|″|thou|uin|µin|μin))?$`)

// readByRat reads a length with math/big: the exact number of picometres, and whether the text is a length at all.
func readByRat(s string) (*big.Rat, bool) {
	m := lengthGrammar.FindStringSubmatch(s)
	if m == nil {
		return nil, false
	}
	rat := func(s string) *big.Rat {
		r, ok := new(big.Rat).SetString(s)
		if !ok {
			panic(s)
		}
		return r
	}
	v := new(big.Rat)
	if m[2] != "" {
		v = rat(strings.TrimSuffix(m[2], "."))
	} else {
		if strings.Trim(m[5], "0") == "" {
			return nil, false
		}
		v.Quo(rat(m[4]), rat(m[5]))
		if m[3] != "" {
			if v.Cmp(big.NewRat(1, 1)) >= 0 {
				return nil, false
			}
			v.Add(v, rat(m[3]))
		}
	}
	if m[1] == "-" {
		v.Neg(v)
	}
	unit := map[string]units.Length{
		"mm": units.Millimetre, "um": units.Micrometre, "µm": units.Micrometre, "μm": units.Micrometre, "m": units.Metre, "nm": units.Nanometre,
		"pm": units.Picometre, "in": units.Inch, `"`: units.Inch, "″": units.Inch, "thou": units.Thou, "uin": units.Microinch, "µin": units.Microinch, "μin": units.Microinch,
	}[m[6]]
	if unit == 0 {
		return v, v.Sign() == 0
	}
	return v.Mul(v, new(big.Rat).SetInt64(int64(unit))), true
}

func FuzzParseLength(f *testing.F) {
	for _, s := range []string{
		"67.02 mm", "2-41/64 in", "0", "-.5 thou", // the grammar
		"1/3 in", "67.10499999999999999 mm", "0.5 pm", // inexact, and a half
		"9223372036854775807 pm", "-9223372036854775808 pm", "9223372036854775808 pm", // the ends, and one past
		"0.0000000000000000005 m", "0.99999999999999999999 m", // beyond the eighteenth place
		"18446744073709551616/18446744073709551617 mm", // beyond 64 bits
		"2-65/64 in", "2-41 in", "1e3 mm", "67,02 mm", "2 mil", "5 mm ", "−5 mm", "5\u00a0mm", "", // refused
	} {
		f.Add(s)
	}
	for _, r := range lengthRefusals {
		f.Add(r.text)
	}
	f.Fuzz(func(t *testing.T, s string) {
		if len(s) > 2000 {
			return
		}
		got, err := units.ParseLength(s)
		want, ok := readByRat(s)
		if !ok {
			checkParseError(t, s, err)
			if got != 0 {
				t.Fatalf("%q gives %v with %v", s, got, err)
			}
			return
		}
		switch near := halfAway(want); {
		case errors.Is(err, units.ErrRange):
			// Digits that do not fit in 63 bits are out of range even in a fraction that would.
			if near.IsInt64() && !strings.Contains(s, "/") {
				t.Fatalf("%q: %v, but it is %v pm", s, err, near)
			}
		case !near.IsInt64():
			t.Fatalf("%q is %v, %v, want ErrRange", s, got, err)
		case want.IsInt():
			if err != nil || int64(got) != near.Int64() {
				t.Fatalf("%q is %v, %v, want %v pm", s, int64(got), err, near)
			}
			if back, err := units.ParseLength(got.String()); back != got || err != nil {
				t.Fatalf("%v reads back as %v, %v", got, back, err)
			}
		default:
			// To the nearest; digits behind the eighteenth place may miss it by a millionth of a picometre.
			miss := new(big.Rat).Sub(want, new(big.Rat).SetInt64(int64(got)))
			if !errors.Is(err, units.ErrInexact) || miss.Abs(miss).Cmp(big.NewRat(500_001, 1_000_000)) > 0 {
				t.Fatalf("%q is %v, %v, want ErrInexact and %v pm", s, int64(got), err, near)
			}
		}
	})
}

func checkParseError(t *testing.T, s string, err error) {
	t.Helper()
	var e *units.ParseError
	if !errors.As(err, &e) || e.Pos < 0 || e.Pos > len(s) || e.Err == nil || len(e.Error()) > 1000 {
		t.Fatalf("%q: %#v", s, err)
	}
}

func FuzzParseLimits(f *testing.F) {
	for _, s := range []string{
		"72.000 to 72.020 mm", "72.000 - 72.020 mm", "72.010 ± 0.010 mm", "72 +0.020/-0 mm", "72 +0.020 -0.000 mm", "max 0.05 mm", "min 1.2 mm",
		"2.8346 to 2.8354 in", "2-41/64 +1/64/-1/64 in", "-1 - -2 mm", "max 0", "± 1 mm", "1 +/- 1 mm", " to ", "+/-", " +/-", "1 +-",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		w, err := units.ParseLimits(s)
		if err != nil {
			checkParseError(t, s, err)
			if !w.IsZero() {
				t.Fatalf("%q gives %v with %v", s, w, err)
			}
			return
		}
		if w.IsZero() || w.Validate() != nil || w.Min.Abs() > 2*units.MaxLength || w.Max.Abs() > 2*units.MaxLength {
			t.Fatalf("%q is %v", s, w)
		}
		if w.Min.Abs() > units.MaxLength || w.Max.Abs() > units.MaxLength {
			return // of ±: reads back out of range
		}
		if back, err := units.ParseLimits(w.String()); back != w || err != nil {
			t.Fatalf("%q is %v, which reads back as %v, %v", s, w, back, err)
		}
	})
}

// FuzzParseQuantities holds every parser to the same: an error that says where, or a finite quantity whose text reads back.
func FuzzParseQuantities(f *testing.F) {
	for kind, rs := range plainRefusals {
		for _, r := range rs {
			f.Add(r.text)
		}
		f.Add("1.5 " + kind)
	}
	for _, s := range []string{
		"60 m/min", "31.5 °C", "88 °F", "304.15 K", "11.4e-6/K", `44°30'15.5"`, "1° 25′ 35″", "-30'", "0.5 rad", "16 cm³", "0.2 MPa", "26.7 N", "1e-300 N", "1e15 Hz",
	} {
		f.Add(s)
	}
	f.Fuzz(func(t *testing.T, s string) {
		for _, p := range parsers[2:] {
			q, err := p.parse(s)
			if err != nil {
				checkParseError(t, s, err)
				if asFloat(q) != 0 {
					t.Fatalf("%s %q gives %v with %v", p.kind, s, q, err)
				}
				continue
			}
			x := asFloat(q)
			if !finite(x) || x > 1e15 || x < -1e15 {
				t.Fatalf("%s %q is %v", p.kind, s, x)
			}
			text := q.(interface{ String() string }).String()
			back, err := p.parse(text)
			if err != nil {
				if x < 0.9999e15 && x > -0.9999e15 && !(p.kind == "temperature" && x < 1e-9) {
					t.Fatalf("%s %q is %s, which does not read back: %v", p.kind, s, text, err)
				}
				continue
			}
			if again := back.(interface{ String() string }).String(); again != text && !(x < 1e-290 && x > -1e-290) {
				t.Fatalf("%s %q is %s, and then %s", p.kind, s, text, again)
			}
		}
	})
}
