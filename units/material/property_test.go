// SPDX-License-Identifier: BSD-3-Clause

package material_test

import (
	"encoding/json"
	"errors"
	"math"
	"math/big"
	"reflect"
	"testing"

	"borewright.example/units"
	"borewright.example/units/material"
	"gonum.org/v1/gonum/num/dual"
	"pgregory.net/rapid"
)

func anyLength() *rapid.Generator[units.Length] {
	return rapid.Map(rapid.Int64Range(-9e12, 9e12), func(x int64) units.Length { return units.Length(x) })
}

func anyTemperature() *rapid.Generator[units.Temperature] {
	return rapid.Custom(func(t *rapid.T) units.Temperature {
		if rapid.IntRange(0, 9).Draw(t, "reference") == 0 {
			return units.ReferenceTemperature
		}
		return units.Temperature(rapid.Float64Range(80, 700).Draw(t, "K"))
	})
}

func anyExpansion() *rapid.Generator[units.Expansion] {
	return rapid.Map(rapid.Float64Range(-2e-6, 30e-6), func(x float64) units.Expansion { return units.Expansion(x) })
}

func anyComparison() *rapid.Generator[material.Comparison] {
	return rapid.Custom(func(t *rapid.T) material.Comparison {
		return material.Comparison{
			Standard:   units.Length(rapid.Int64Range(1e9, 9e11).Draw(t, "standard")),
			Deviation:  units.Length(rapid.Int64Range(-2e9, 2e9).Draw(t, "deviation")),
			StandardAt: anyTemperature().Draw(t, "standard at"), GaugeSetAt: anyTemperature().Draw(t, "set at"),
			GaugeUseAt: anyTemperature().Draw(t, "use at"), PartAt: anyTemperature().Draw(t, "part at"),
			StandardExpansion: anyExpansion().Draw(t, "αs"), GaugeExpansion: anyExpansion().Draw(t, "αg"), PartExpansion: anyExpansion().Draw(t, "αp"),
		}
	})
}

// kelvins returns t − 20 °C as the package takes it, exactly.
func kelvins(t units.Temperature) *big.Rat {
	return new(big.Rat).SetFloat64(float64(t.AboveReference()))
}

func rat[T units.Length | units.Expansion](x T) *big.Rat { return new(big.Rat).SetFloat64(float64(x)) }

// grown returns 1 + a·d.
func grown(a units.Expansion, d *big.Rat) *big.Rat {
	r := new(big.Rat).Mul(rat(a), d)
	return r.Add(r, big.NewRat(1, 1))
}

// apart reports by how many picometres l misses the exact value.
func apart(l units.Length, exact *big.Rat) float64 {
	d, _ := new(big.Rat).Sub(rat(l), exact).Float64()
	return math.Abs(d)
}

// The kernels run in float64 and round once. At 9 m the float64 error is below 9e12 pm × 4 × 2⁻⁵³ = 0.004 pm.
const once = 0.5 + 0.005

func TestSizesAgainstRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := material.Material{Expansion: anyExpansion().Draw(t, "α")}
		l, at := anyLength().Draw(t, "l"), anyTemperature().Draw(t, "t")
		if m.Expansion == 0 && kelvins(at).Sign() != 0 {
			if _, err := m.SizeAt(l, at); !errors.Is(err, units.ErrNotGiven) {
				t.Fatalf("no expansion at %v: %v", at, err)
			}
			return
		}
		factor := grown(m.Expansion, kelvins(at))
		warm, err := m.SizeAt(l, at)
		if err != nil || apart(warm, new(big.Rat).Mul(rat(l), factor)) > once {
			t.Fatalf("%v at %v with %v: %v, %v", l, at, m.Expansion, warm, err)
		}
		cold, err := m.SizeAt20(l, at)
		if err != nil || apart(cold, new(big.Rat).Quo(rat(l), factor)) > once {
			t.Fatalf("%v from %v with %v: %v, %v", l, at, m.Expansion, cold, err)
		}
		// There and back: each way rounds once, and the way back scales the first rounding by at most 1.1.
		back, err := m.SizeAt20(warm, at)
		if err != nil || (back-l).Abs() > 1 {
			t.Fatalf("%v at %v is %v and comes back as %v, %v", l, at, warm, back, err)
		}
		// Monotone in temperature, plus coefficient and plus size.
		hotter := units.Temperature(700)
		if more, err := m.SizeAt(l, hotter); m.Expansion > 0 && l > 0 && err == nil && more < warm {
			t.Fatalf("%v at %v is %v, at %v %v", l, at, warm, hotter, more)
		}
		if same, err := m.SizeAt(l, units.ReferenceTemperature); same != l || err != nil {
			t.Fatalf("%v at 20 °C is %v, %v", l, same, err)
		}
		_, err = m.SizeAt(l, 0)
		_, err2 := m.SizeAt20(l, 0)
		if !errors.Is(err, units.ErrNotGiven) || !errors.Is(err2, units.ErrNotGiven) {
			t.Fatalf("no temperature: %v, %v", err, err2)
		}
	})
}

func TestComparisonAgainstRat(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyComparison().Draw(t, "c")
		got, err := c.SizeAt20()
		exact := new(big.Rat).Mul(rat(c.Standard), grown(c.StandardExpansion, kelvins(c.StandardAt)))
		exact.Mul(exact, grown(c.GaugeExpansion, new(big.Rat).Sub(kelvins(c.GaugeUseAt), kelvins(c.GaugeSetAt))))
		exact.Add(exact, rat(c.Deviation))
		exact.Quo(exact, grown(c.PartExpansion, kelvins(c.PartAt)))
		if err != nil || apart(got, exact) > once {
			t.Fatalf("%+v: %v, %v", c, got, err)
		}
	})
}

// TestDialReadingIsTheInverse: a dial that shows it means the size wanted; with everything at 20 °C it shows the difference of
// the sizes, to the last picometre.
func TestDialReadingIsTheInverse(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyComparison().Draw(t, "comparison")
		wanted := c.Standard + units.Length(rapid.Int64Range(-5e8, 5e8).Draw(t, "larger"))
		d, err := c.DialReading(wanted)
		if err != nil {
			t.Fatal(err)
		}
		c.Deviation = d
		if got, err := c.SizeAt20(); err != nil || (got-wanted).Abs() > 2 {
			t.Fatalf("%v, %v; want %v", got, err, wanted)
		}
		if d, err := atRest(c.Standard).DialReading(wanted); err != nil || d != wanted-c.Standard {
			t.Fatalf("at rest %v, %v", d, err)
		}
	})
	for _, l := range []units.Length{0, -1, units.MaxLength + 1} {
		want := units.ErrRange
		if l == 0 {
			want = units.ErrNotGiven
		}
		if _, err := atRest(units.Millimetre).DialReading(l); !errors.Is(err, want) {
			t.Errorf("%v: %v", l, err)
		}
		if _, err := atRest(l).DialReading(units.Millimetre); !errors.Is(err, want) {
			t.Errorf("standard of %v: %v", l, err)
		}
	}
}

func TestComparisonInvariances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyComparison().Draw(t, "c")
		// All at 20 °C the part is what the dial says; what is not said is asked for.
		still := material.Comparison{Standard: c.Standard, Deviation: c.Deviation, StandardExpansion: c.StandardExpansion, GaugeExpansion: c.GaugeExpansion, PartExpansion: c.PartExpansion}
		if got, err := still.SizeAt20(); got != 0 || !errors.Is(err, units.ErrNotGiven) {
			t.Fatalf("%+v: %v, %v", still, got, err)
		}
		still.StandardAt, still.GaugeSetAt, still.GaugeUseAt, still.PartAt = units.ReferenceTemperature, units.ReferenceTemperature, units.ReferenceTemperature, units.ReferenceTemperature
		if got, err := still.SizeAt20(); got != c.Standard+c.Deviation || err != nil {
			t.Fatalf("%+v: %v, %v", still, got, err)
		}
		// One metal at one temperature: the standard itself reads as the standard, whatever that is.
		c.PartExpansion, c.PartAt, c.GaugeUseAt, c.Deviation = c.StandardExpansion, c.StandardAt, c.GaugeSetAt, 0
		if got, err := c.SizeAt20(); got != c.Standard || err != nil {
			t.Fatalf("%+v: %v, %v", c, got, err)
		}
	})
}

// The derivatives once more, by dual numbers, one input at a time.
func TestSensitivitiesAgainstDual(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyComparison().Draw(t, "c")
		got, err := c.Sensitivities()
		if err != nil {
			t.Fatal(err)
		}
		in := [9]float64{
			float64(c.Standard), float64(c.Deviation), float64(c.StandardAt.AboveReference()), float64(c.GaugeSetAt.AboveReference()),
			float64(c.GaugeUseAt.AboveReference()), float64(c.PartAt.AboveReference()),
			float64(c.StandardExpansion), float64(c.GaugeExpansion), float64(c.PartExpansion),
		}
		derivative := func(i int) float64 {
			var d [9]dual.Number
			for j, x := range in {
				d[j].Real = x
			}
			d[i].Emag = 1
			one := dual.Number{Real: 1}
			standard := dual.Mul(d[0], dual.Add(one, dual.Mul(d[6], d[2])))
			gauge := dual.Add(one, dual.Mul(d[7], dual.Sub(d[4], d[3])))
			part := dual.Add(one, dual.Mul(d[8], d[5]))
			return dual.Mul(dual.Add(dual.Mul(standard, gauge), d[1]), dual.Inv(part)).Emag
		}
		for i, x := range []float64{got.Standard, got.Deviation} {
			if want := derivative(i); math.Abs(x-want) > 1e-14 {
				t.Fatalf("%+v: derivative %d is %v, want %v", c, i, x, want)
			}
		}
		for i, x := range []units.Length{got.StandardAt, got.GaugeSetAt, got.GaugeUseAt, got.PartAt} {
			if want := derivative(i + 2); math.Abs(float64(x)-want) > 0.501 {
				t.Fatalf("%+v: derivative %d is %v pm, want %v", c, i+2, int64(x), want)
			}
		}
		for i, x := range []units.Length{got.StandardExpansion, got.GaugeExpansion, got.PartExpansion} {
			if want := derivative(i+6) * 1e-6; math.Abs(float64(x)-want) > 0.501 {
				t.Fatalf("%+v: derivative %d is %v pm, want %v", c, i+6, int64(x), want)
			}
		}
	})
}

// And by what they are for: a small change of one input moves the size by sensitivity × change.
func TestSensitivitiesPredict(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := anyComparison().Draw(t, "c")
		for _, at := range []*units.Temperature{&c.StandardAt, &c.GaugeSetAt, &c.GaugeUseAt, &c.PartAt} {
			if at.IsZero() {
				*at = units.ReferenceTemperature // a change of what is not given means nothing
			}
		}
		before, err := c.SizeAt20()
		s, err2 := c.Sensitivities()
		if err != nil || err2 != nil {
			t.Fatal(err, err2)
		}
		moved := c
		var want float64
		switch rapid.IntRange(0, 8).Draw(t, "input") {
		case 0:
			moved.Standard += 1000
			want = 1000 * s.Standard
		case 1:
			moved.Deviation += 1000
			want = 1000 * s.Deviation
		case 2:
			moved.StandardAt, want = moved.StandardAt.Add(units.Kelvin), float64(s.StandardAt)
		case 3:
			moved.GaugeSetAt, want = moved.GaugeSetAt.Add(units.Kelvin), float64(s.GaugeSetAt)
		case 4:
			moved.GaugeUseAt, want = moved.GaugeUseAt.Add(units.Kelvin), float64(s.GaugeUseAt)
		case 5:
			moved.PartAt, want = moved.PartAt.Add(units.Kelvin), float64(s.PartAt)
		case 6:
			moved.StandardExpansion, want = moved.StandardExpansion+ppm, float64(s.StandardExpansion)
		case 7:
			moved.GaugeExpansion, want = moved.GaugeExpansion+ppm, float64(s.GaugeExpansion)
		case 8:
			moved.PartExpansion, want = moved.PartExpansion+ppm, float64(s.PartExpansion)
		}
		after, err := moved.SizeAt20()
		// The second order of (1 + αp·ΔTp)⁻¹ is at most (ΔT/1e6)²·L or α²·L = (5e-4)²·L, L being standard and deviation.
		if within := 2 + 2.5e-7*float64(c.Standard+c.Deviation.Abs()); err != nil || math.Abs(float64(after-before)-want) > within {
			t.Fatalf("%+v: moved by %v, %v, want %.0f pm", c, after-before, err, want)
		}
	})
}

func TestBetweenReachesBoth(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		draw := func(name string) material.Material {
			return material.Material{
				Name: name, Expansion: anyExpansion().Draw(t, "α"), Within: units.Expansion(rapid.Float64Range(0, 2e-6).Draw(t, "within")),
				From: anyTemperature().Draw(t, "from"), To: anyTemperature().Draw(t, "to"),
			}
		}
		a, b := draw("a"), draw("b")
		ab, ba := material.Between(a, b), material.Between(b, a)
		if math.Abs(float64(ab.Expansion-ba.Expansion)) > 1e-20 || ab.Within != ba.Within || ab.From != ba.From || ab.To != ba.To || ab.Name != "a in b" {
			t.Fatalf("%+v and %+v", ab, ba)
		}
		for _, m := range []material.Material{a, b} {
			const rounding = 1e-20
			if ab.Expansion-ab.Within > m.Expansion-m.Within+rounding || ab.Expansion+ab.Within < m.Expansion+m.Within-rounding {
				t.Fatalf("%v ± %v does not hold %v ± %v", ab.Expansion, ab.Within, m.Expansion, m.Within)
			}
			if !m.From.IsZero() && ab.From < m.From || !m.To.IsZero() && ab.To > m.To {
				t.Fatalf("%v to %v is wider than %v to %v", ab.From, ab.To, m.From, m.To)
			}
		}
		if one := material.Between(a, a); math.Abs(float64(one.Expansion-a.Expansion)) > 1e-20 || math.Abs(float64(one.Within-a.Within)) > 1e-20 {
			t.Fatalf("between %+v and itself: %+v", a, one)
		}
	})
}

func TestMaterialsSurviveJSON(t *testing.T) {
	for _, name := range append(material.Names(), "") {
		m, err := material.ByName(name)
		if name == "" {
			m, err = material.Material{}, nil
		}
		check(t, err)
		b, err := json.Marshal(m)
		check(t, err)
		var back material.Material
		check(t, json.Unmarshal(b, &back))
		// Text has 12 digits: what comes back prints the same.
		again, err := json.Marshal(back)
		check(t, err)
		if string(again) != string(b) || name == "" && string(b) != "{}" {
			t.Errorf("%s comes back as %s", b, again)
		}
		if math.Abs(float64(back.Expansion-m.Expansion)) > 1e-17 {
			t.Errorf("%+v, want %+v", back, m)
		}
	}
}

func TestHostileInputs(t *testing.T) {
	hostile := []float64{math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, math.SmallestNonzeroFloat64, 0, -1, 1, 11.4, 1e-300, 1e300}
	lengths := []units.Length{0, 1, -1, mm, units.MaxLength, -units.MaxLength, units.MaxLength + 1, math.MaxInt64, math.MinInt64}
	ok := func(what string, got units.Length, err error) {
		t.Helper()
		if err == nil && got.Abs() > units.MaxLength || err != nil && got != 0 || err != nil && !errors.Is(err, units.ErrRange) && !errors.Is(err, units.ErrNotFinite) && !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v, %v", what, got, err)
		}
	}
	for _, x := range hostile {
		for _, y := range hostile {
			for _, l := range lengths {
				m := material.Material{Name: "bad", Expansion: units.Expansion(x)}
				got, err := m.SizeAt(l, units.Temperature(y))
				ok("SizeAt", got, err)
				got, err = m.SizeAt20(l, units.Temperature(y))
				ok("SizeAt20", got, err)
			}
			for i := range 7 {
				c := material.Comparison{
					Standard: 87 * mm, StandardAt: 300, GaugeSetAt: 300, GaugeUseAt: 301, PartAt: 302,
					StandardExpansion: 11 * ppm, GaugeExpansion: 11 * ppm, PartExpansion: 11 * ppm,
				}
				for _, j := range []int{i, (i + 1) % 7} {
					v := reflect.ValueOf(&c).Elem().Field(2 + j)
					v.SetFloat(map[bool]float64{true: x, false: y}[j == i])
				}
				got, err := c.SizeAt20()
				ok("Comparison.SizeAt20", got, err)
				s, err2 := c.Sensitivities()
				if err2 != nil && s != (material.Sensitivities{}) || err != nil && err2 == nil || math.IsNaN(s.Standard+s.Deviation) || math.IsInf(s.Standard+s.Deviation, 0) {
					t.Errorf("%+v: %+v, %v", c, s, err2)
				}
				for k := 2; k < 9; k++ {
					if l := units.Length(reflect.ValueOf(s).Field(k).Int()); l.Abs() > units.MaxLength {
						t.Errorf("%+v: %+v", c, s)
					}
				}
			}
		}
	}
	for _, l := range lengths {
		for _, d := range lengths {
			c := atRest(l)
			c.Deviation, c.PartAt, c.PartExpansion = d, 300, 11*ppm
			got, err := c.SizeAt20()
			ok("Comparison.SizeAt20", got, err)
			if s, err2 := c.Sensitivities(); (err == nil) != (err2 == nil) {
				t.Errorf("%+v: %v, but %+v, %v", c, err, s, err2)
			}
		}
	}
	// The coefficient without its 10⁻⁶, and the temperature in kelvins for one in °C.
	for _, c := range []struct {
		m    material.Material
		at   units.Temperature
		want error
	}{
		{material.Material{Expansion: 11.4}, 303, units.ErrRange},
		{material.Material{Expansion: 11.4 * ppm}, -5, units.ErrRange},
		{material.Material{Expansion: 11.4 * ppm}, 1e5, units.ErrRange},
		{material.Material{Expansion: 11.4 * ppm}, units.Temperature(math.NaN()), units.ErrNotFinite},
		{material.Material{Expansion: units.Expansion(math.NaN())}, 303, units.ErrNotFinite},
		{material.Material{Expansion: units.Expansion(math.Inf(-1))}, 303, units.ErrNotFinite},
		{material.Material{Expansion: units.Expansion(math.Inf(1))}, 303, units.ErrNotFinite},
	} {
		if got, err := c.m.SizeAt(67*mm, c.at); got != 0 || !errors.Is(err, c.want) {
			t.Errorf("%v at %v K: %v, %v, want %v", c.m.Expansion, float64(c.at), got, err, c.want)
		}
	}
	if _, err := material.ByName("unobtainium"); !errors.Is(err, units.ErrUnknownName) {
		t.Error(err)
	}
}

// atRest is a comparison with a standard, all at 20 °C.
func atRest(standard units.Length) material.Comparison {
	return material.Comparison{
		Standard: standard, StandardAt: units.ReferenceTemperature, PartAt: units.ReferenceTemperature,
		GaugeSetAt: units.ReferenceTemperature, GaugeUseAt: units.ReferenceTemperature,
	}
}

// A part of nothing known has its size at 20 °C, and away from it none.
func TestZeroValues(t *testing.T) {
	for _, at := range []units.Temperature{units.ReferenceTemperature, 300} {
		var want units.Length
		if at.AboveReference() == 0 {
			want = 67 * mm
		}
		l, err := material.Material{}.SizeAt(67*mm, at)
		back, err2 := material.Material{}.SizeAt20(67*mm, at)
		if l != want || back != want || errors.Is(err, units.ErrNotGiven) != (want == 0) || errors.Is(err2, units.ErrNotGiven) != (want == 0) {
			t.Errorf("at %v: %v, %v, %v, %v", at, l, back, err, err2)
		}
	}
	if l, err := atRest(0).SizeAt20(); l != 0 || err != nil {
		t.Errorf("%v, %v", l, err)
	}
	if s, err := atRest(0).Sensitivities(); s != (material.Sensitivities{Standard: 1, Deviation: 1}) || err != nil {
		t.Errorf("%+v, %v", s, err)
	}
	if m := material.Between(material.Material{}, material.Material{}); m.Expansion != 0 || m.Within != 0 {
		t.Errorf("%+v", m)
	}
}

func TestNoAllocs(t *testing.T) {
	m, c := material.GreyIron(), atRest(87*mm)
	c.PartAt, c.PartExpansion = 300, 11*ppm
	if n := testing.AllocsPerRun(100, func() {
		_, err := m.SizeAt20(67*mm, 300)
		_, err2 := c.SizeAt20()
		_, err3 := c.Sensitivities()
		if err != nil || err2 != nil || err3 != nil {
			t.Fatal(err, err2, err3)
		}
	}); n != 0 {
		t.Errorf("%v allocations", n)
	}
}

// TestMaterialByName: every metal of the table reads from its name, a wrong one changes nothing, and figures that are not
// given stay as they were.
func TestMaterialByName(t *testing.T) {
	for _, name := range material.Names() {
		text, err := json.Marshal(name)
		check(t, err)
		var m material.Material
		check(t, json.Unmarshal(text, &m))
		if want, err := material.ByName(name); err != nil || m != want {
			t.Errorf("%s: %+v, %v", name, m, err)
		}
	}
	for _, text := range []string{`"unobtainium"`, `""`, `7`, `{"young": "stiff"}`, `[]`} {
		m := material.GreyIron()
		if err := json.Unmarshal([]byte(text), &m); err == nil || m != material.GreyIron() {
			t.Errorf("%s: %+v, %v", text, m, err)
		}
	}
	m := material.GreyIron()
	check(t, json.Unmarshal([]byte(`{"poisson": 0.3}`), &m))
	if m.Poisson != 0.3 || m.Expansion != material.GreyIron().Expansion {
		t.Errorf("%+v", m)
	}
	check(t, json.Unmarshal([]byte(`null`), &m))
}
