// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// pressing is what a call of Press is given.
type pressing struct {
	Length   units.Length
	Friction sleeve.Range[float64]
}

func (p pressing) of() (units.Length, sleeve.Range[float64]) { return p.Length, p.Friction }

// every calls each function that takes a joint.
func every(j sleeve.Joint, c sleeve.Warm, a sleeve.Assembling, p pressing, l units.Length) map[string]func() (any, error) {
	wrap := func(v any, err error) (any, error) { return v, err }
	return map[string]func() (any, error){
		"Fit":     func() (any, error) { v, err := j.Fit(); return wrap(v, err) },
		"State":   func() (any, error) { v, err := j.Stresses(c); return wrap(v, err) },
		"LooseAt": func() (any, error) { v, err := j.LooseAt(c); return wrap(v, err) },
		"Growth":  func() (any, error) { v, err := j.Growth(c.Barrel); return wrap(v, err) },
		"HeatTo":  func() (any, error) { v, err := j.HeatTo(a); return wrap(v, err) },
		"ChillTo": func() (any, error) { v, err := j.ChillTo(a); return wrap(v, err) },
		"TakeOut": func() (any, error) { v, err := j.TakeOut(a); return wrap(v, err) },
		"Slips":   func() (any, error) { v, err := j.Slips(a); return wrap(v, err) },
		"Press":   func() (any, error) { v, err := j.Press(p.Length, p.Friction); return wrap(v, err) },
		"Hone":    func() (any, error) { v, err := j.Hone(l); return wrap(v, err) },
	}
}

var (
	demoFriction = sleeve.Range[float64]{Min: 0.1, Max: 0.2}
	demoPress    = pressing{Length: 90 * mm, Friction: demoFriction}
	demoSize     = 67050 * um
)

// TestJointsThatCannotBe: every function refuses them, with a sentinel and with the value.
func TestJointsThatCannotBe(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(*sleeve.Joint)
		want  error
		says  string
	}{
		{"no bore", func(j *sleeve.Joint) { j.Bore = 0 }, units.ErrNotGiven, "bore"},
		{"negative bore", func(j *sleeve.Joint) { j.Bore = -mm }, units.ErrRange, "-1 mm"},
		{"no seat", func(j *sleeve.Joint) { j.Seat = 0 }, units.ErrNotGiven, "seat"},
		{"huge seat", func(j *sleeve.Joint) { j.Seat = math.MaxInt64 }, units.ErrRange, "seat"},
		{"no outside", func(j *sleeve.Joint) { j.Outer = units.Limits{} }, units.ErrNotGiven, "outside"},
		{"one end of the outside", func(j *sleeve.Joint) { j.Outer.Max = 0 }, units.ErrNotGiven, "larger end"},
		{"outside crossed", func(j *sleeve.Joint) { j.Outer.Min = 95 * mm }, units.ErrCrossed, "95 mm"},
		{"sleeve without a wall", func(j *sleeve.Joint) { j.Bore = j.Seat }, units.ErrRange, "73 mm"},
		{"sleeve with less than no wall", func(j *sleeve.Joint) { j.Bore = j.Seat + mm }, units.ErrRange, "74 mm"},
		{"barrel without a wall", func(j *sleeve.Joint) { j.Outer.Min = j.Seat }, units.ErrRange, "73 mm"},
		{"barrel with less than no wall", func(j *sleeve.Joint) { j.Outer = plain(72 * mm) }, units.ErrRange, "72 mm"},
		{"no interference", func(j *sleeve.Joint) { j.Interference = sleeve.Diametral{} }, units.ErrNotGiven, "DIAMETRAL"},
		{"negative interference", func(j *sleeve.Joint) { j.Interference = exactly(-um) }, units.ErrRange, "-0.001 mm"},
		{"clearance up to nothing", func(j *sleeve.Joint) { j.Interference = sleeve.Diametral{Min: -um} }, units.ErrRange, "-0.001 mm"},
		{"interference crossed", func(j *sleeve.Joint) { j.Interference = sleeve.Diametral{Min: 2 * um, Max: um} }, units.ErrCrossed, "lesser end first"},
		{"interference of millimetres", func(j *sleeve.Joint) { j.Interference = exactly(j.Seat/100 + 1) }, units.ErrRange, "0.73 mm"},
		{"interference up to millimetres", func(j *sleeve.Joint) { j.Interference.Max = j.Seat/100 + 1 }, units.ErrRange, "0.73 mm"},
		{"clearance of millimetres", func(j *sleeve.Joint) { j.Interference.Min = -j.Seat/100 - 1 }, units.ErrRange, "0.73 mm"},
		{"no modulus", func(j *sleeve.Joint) { j.Sleeve.Young = 0 }, units.ErrNotGiven, "sleeve"},
		{"modulus in MPa", func(j *sleeve.Joint) { j.Barrel.Young = 71e3 }, units.ErrRange, "barrel"},
		{"modulus beyond diamond", func(j *sleeve.Joint) { j.Barrel.Young = 1001e9 }, units.ErrRange, "1001000 MPa"},
		{"negative modulus", func(j *sleeve.Joint) { j.Barrel.Young = -71e9 }, units.ErrRange, "-71000 MPa"},
		{"modulus NaN", func(j *sleeve.Joint) { j.Barrel.Young = units.Pressure(math.NaN()) }, units.ErrRange, "barrel"},
		{"modulus infinite", func(j *sleeve.Joint) { j.Barrel.Young = units.Pressure(math.Inf(1)) }, units.ErrRange, "barrel"},
		{"ratio above a half", func(j *sleeve.Joint) { j.Sleeve.Poisson = 0.51 }, units.ErrRange, "0.51"},
		{"ratio negative", func(j *sleeve.Joint) { j.Sleeve.Poisson = -0.01 }, units.ErrRange, "-0.01"},
		{"ratio NaN", func(j *sleeve.Joint) { j.Barrel.Poisson = math.NaN() }, units.ErrRange, "barrel"},
		{"yield negative", func(j *sleeve.Joint) { j.Barrel.Yield = -1 }, units.ErrRange, "yield"},
		{"yield NaN", func(j *sleeve.Joint) { j.Barrel.Yield = units.Pressure(math.NaN()) }, units.ErrRange, "yield"},
		{"yield in Pa for MPa", func(j *sleeve.Joint) { j.Barrel.Yield = 165e12 }, units.ErrRange, "yield"},
		{"tensile negative", func(j *sleeve.Joint) { j.Sleeve.Tensile = -1 }, units.ErrRange, "tensile"},
		{"tensile NaN", func(j *sleeve.Joint) { j.Sleeve.Tensile = units.Pressure(math.NaN()) }, units.ErrRange, "tensile"},
		{"tensile infinite", func(j *sleeve.Joint) { j.Sleeve.Tensile = units.Pressure(math.Inf(1)) }, units.ErrRange, "tensile"},
	} {
		j := demoJoint()
		tt.spoil(&j)
		if err := j.Validate(); !errors.Is(err, tt.want) || !strings.Contains(errText(err), tt.says) || !strings.HasPrefix(errText(err), "sleeve: ") {
			t.Errorf("%s: Validate: %v; want %v naming %q", tt.name, err, tt.want, tt.says)
		}
		sound := every(demoJoint(), sleeve.Warm{Sleeve: room, Barrel: room}, sleeve.Assembling{Sleeve: room, Barrel: room}, demoPress, demoSize)
		for name, call := range every(j, sleeve.Warm{Sleeve: room, Barrel: room}, sleeve.Assembling{Sleeve: room, Barrel: room}, demoPress, demoSize) {
			if slices.Contains(heat, name) && slices.Contains(notHeat, tt.name) {
				want, err := sound[name]()
				if v, err2 := call(); err != nil || err2 != nil || !reflect.DeepEqual(v, want) {
					t.Errorf("%s: %s: %v, %+v; want %v, %+v", tt.name, name, err2, v, err, want)
				}
				continue
			}
			if v, err := call(); !errors.Is(err, tt.want) || !reflect.ValueOf(v).IsZero() {
				t.Errorf("%s: %s: %v, %+v; want %v and nothing", tt.name, name, err, v, tt.want)
			}
		}
	}
}

// heat are the functions that ask of heat alone, and notHeat what they do not need.
var (
	heat    = []string{"LooseAt", "HeatTo", "ChillTo", "TakeOut", "Slips"}
	notHeat = []string{"no bore", "no outside", "no modulus"}
)

// thermal are the functions that take temperatures.
var thermal = []string{"State", "LooseAt", "Growth", "HeatTo", "ChillTo", "TakeOut", "Slips"}

// TestCoefficientsThatCannotBe: refused; one that is not given is, where heat takes part.
func TestCoefficientsThatCannotBe(t *testing.T) {
	for _, tt := range []struct {
		name  string
		spoil func(*sleeve.Joint)
		want  error
	}{
		{"not given", func(j *sleeve.Joint) { j.Sleeve.Expansion = 0 }, units.ErrNotGiven},
		{"the barrel's not given", func(j *sleeve.Joint) { j.Barrel.Expansion = 0 }, units.ErrNotGiven},
		{"negative", func(j *sleeve.Joint) { j.Barrel.Expansion = -1e-6 }, units.ErrRange},
		{"NaN", func(j *sleeve.Joint) { j.Barrel.Expansion = units.Expansion(math.NaN()) }, units.ErrRange},
		{"of a gas", func(j *sleeve.Joint) { j.Barrel.Expansion = 1.1e-4 }, units.ErrRange},
		{"spread negative", func(j *sleeve.Joint) { j.Sleeve.Within = -1e-9 }, units.ErrRange},
		{"spread NaN", func(j *sleeve.Joint) { j.Sleeve.Within = units.Expansion(math.NaN()) }, units.ErrRange},
		{"range NaN", func(j *sleeve.Joint) { j.Barrel.To = units.Temperature(math.NaN()) }, units.ErrNotFinite},
		{"range below absolute zero", func(j *sleeve.Joint) { j.Sleeve.From = -1 }, units.ErrRange},
		{"spread as large as itself", func(j *sleeve.Joint) { j.Sleeve.Within = j.Sleeve.Expansion }, units.ErrRange},
	} {
		j := demoJoint()
		tt.spoil(&j)
		calls := every(j, sleeve.Warm{Sleeve: room, Barrel: room}, sleeve.Assembling{Sleeve: room, Barrel: room}, demoPress, demoSize)
		for _, name := range thermal {
			if v, err := calls[name](); !errors.Is(err, tt.want) || !reflect.ValueOf(v).IsZero() {
				t.Errorf("%s: %s: %v, %+v; want %v", tt.name, name, err, v, tt.want)
			}
			delete(calls, name)
		}
		for name, call := range calls {
			if _, err := call(); errors.Is(tt.want, units.ErrNotGiven) && err != nil || !errors.Is(tt.want, units.ErrNotGiven) && !errors.Is(err, tt.want) {
				t.Errorf("%s: %s: %v", tt.name, name, err)
			}
		}
	}
}

// TestTemperaturesThatCannotBe: each temperature is looked at by each function that reads it.
func TestTemperaturesThatCannotBe(t *testing.T) {
	for _, tt := range []struct {
		t    units.Temperature
		want error
	}{
		{units.Temperature(math.NaN()), units.ErrNotFinite},
		{units.Temperature(math.Inf(1)), units.ErrNotFinite},
		{units.Temperature(math.Inf(-1)), units.ErrNotFinite},
		{-1, units.ErrRange},
		{1273.16, units.ErrRange},
		{math.MaxFloat64, units.ErrRange},
	} {
		for _, f := range []struct {
			name string
			err  error
		}{
			{"At sleeve", second(demoJoint().Stresses(sleeve.Warm{Sleeve: tt.t, Barrel: room}))},
			{"At barrel", second(demoJoint().Stresses(sleeve.Warm{Barrel: tt.t, Sleeve: room}))},
			{"Loosens sleeve", second(demoJoint().LooseAt(sleeve.Warm{Sleeve: tt.t, Barrel: room}))},
			{"Loosens barrel", second(demoJoint().LooseAt(sleeve.Warm{Barrel: tt.t, Sleeve: room}))},
			{"Growth", second(demoJoint().Growth(tt.t))},
			{"HeatTo sleeve", second(demoJoint().HeatTo(sleeve.Assembling{Sleeve: tt.t}))},
			{"HeatTo stands", second(demoJoint().HeatTo(sleeve.Assembling{Stands: tt.t, Sleeve: room}))},
			{"ChillTo barrel", second(demoJoint().ChillTo(sleeve.Assembling{Barrel: tt.t}))},
			{"Slips sleeve", second(demoJoint().Slips(sleeve.Assembling{Sleeve: tt.t, Barrel: room}))},
			{"Slips barrel", second(demoJoint().Slips(sleeve.Assembling{Barrel: tt.t, Sleeve: room}))},
		} {
			if !errors.Is(f.err, tt.want) {
				t.Errorf("%s %v K: %v; want %v", f.name, float64(tt.t), f.err, tt.want)
			}
		}
	}
	if _, err := demoJoint().TakeOut(sleeve.Assembling{Sleeve: -1, Barrel: -1}); err != nil {
		t.Errorf("Together reads temperatures that it solves for: %v", err)
	}
}

func second[T any](_ T, err error) error { return err }

// TestOtherInputs: gas, slip, friction, lengths, sizes, limits of heat and cold.
func TestOtherInputs(t *testing.T) {
	j := demoJoint()
	nan := math.NaN()
	cooler := j // a sleeve that grows as its barrel does: no common temperature parts them
	cooler.Sleeve.Expansion = cooler.Barrel.Expansion
	wide := j
	wide.Sleeve.Within, wide.Barrel.Within = 6e-6, 7e-6
	slow := j // parts in the cold, but not above absolute zero
	slow.Sleeve.Expansion = 22e-6
	cold := j // parts below liquid nitrogen, but above absolute zero
	cold.Sleeve.Expansion = 25e-6
	for _, tt := range []struct {
		name string
		err  error
		want error
		says string
	}{
		{"gas negative", second(j.Stresses(sleeve.Warm{Gas: -1, Sleeve: room, Barrel: room})), units.ErrRange, "gas"},
		{"gas NaN", second(j.Stresses(sleeve.Warm{Gas: units.Pressure(nan), Sleeve: room, Barrel: room})), units.ErrRange, "gas"},
		{"gas of a gun", second(j.Stresses(sleeve.Warm{Gas: 101e6, Sleeve: room, Barrel: room})), units.ErrRange, "101 MPa"},
		{"slip negative", second(j.HeatTo(sleeve.Assembling{Slip: -1, Sleeve: room})), units.ErrRange, "DIAMETRAL"},
		{"slip of millimetres", second(j.ChillTo(sleeve.Assembling{Slip: mm, Barrel: room})), units.ErrRange, "1 mm"},
		{"friction missing", second(j.Press(pressing{Length: mm}.of())), units.ErrNotGiven, "friction"},
		{"friction negative", second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Min: -0.1, Max: 0.1}}.of())), units.ErrRange, "-0.1"},
		{"friction down to none", second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Max: 0.1}}.of())), units.ErrRange, "0 to 0.1"},
		{"friction crossed", second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Min: 0.2, Max: 0.1}}.of())), units.ErrRange, "0.2"},
		{"friction above 1", second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Min: 0.2, Max: 1.1}}.of())), units.ErrRange, "1.1"},
		{"friction NaN", second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Min: nan, Max: nan}}.of())), units.ErrRange, "NaN"},
		{"length missing", second(j.Press(pressing{Friction: demoPress.Friction}.of())), units.ErrNotGiven, "length"},
		{"length negative", second(j.Press(pressing{Length: -1, Friction: demoPress.Friction}.of())), units.ErrRange, "length"},
		{"finish missing", second(j.Hone(0)), units.ErrNotGiven, "finish"},
		{"finish negative", second(j.Hone(-67 * mm)), units.ErrRange, "finish"},
		{"finish too small", second(j.Hone(66964 * um)), units.ErrRange, "66.964072065 mm"},
		{"finish at the seat but for the interference", second(j.Hone(73*mm - 50*um)), units.ErrRange, "73 mm"},
		{"finish at the seat", second(j.Hone(73 * mm)), units.ErrRange, "73 mm"},
		{"too hot", second(j.HeatTo(sleeve.Assembling{Slip: 400 * um, Sleeve: room})), sleeve.ErrTooHot, "200 °C"},
		{"hotter than the maker allows", second(j.HeatTo(sleeve.Assembling{Slip: 50 * um, Stands: 353.15, Sleeve: room})), sleeve.ErrTooHot, "80 °C"},
		{"oven hotter than that", second(j.Slips(sleeve.Assembling{Barrel: 500, Sleeve: room})), sleeve.ErrTooHot, "barrel"},
		{"sleeve hotter than that", second(j.Slips(sleeve.Assembling{Sleeve: 500, Barrel: room})), sleeve.ErrTooHot, "sleeve"},
		{"chilled below absolute zero", second(j.ChillTo(sleeve.Assembling{Slip: 500 * um, Barrel: room})), sleeve.ErrUnreachable, "672.4 K colder than 20 °C, below absolute zero"},
		{"chilled below liquid nitrogen", second(j.ChillTo(sleeve.Assembling{Slip: 130 * um, Barrel: room})), sleeve.ErrUnreachable, "liquid nitrogen"},
		{"coefficients alike", second(cooler.TakeOut(sleeve.Assembling{})), sleeve.ErrUnreachable, "absolute zero"},
		{"spreads overlap", second(wide.TakeOut(sleeve.Assembling{})), sleeve.ErrUnreachable, "11.4e-6/K ± 6e-6/K in 21.5e-6/K ± 7e-6/K: cannot be reached: the coefficients are too close"},
		{"together below absolute zero", second(slow.TakeOut(sleeve.Assembling{})), sleeve.ErrUnreachable, "absolute zero"},
		{"together below liquid nitrogen", second(cold.TakeOut(sleeve.Assembling{})), sleeve.ErrUnreachable, "liquid nitrogen"},
		{"measured without a sleeve", second(sleeve.DiametralFromMeasured(uncertainty.Estimate{}, uncertainty.Estimate{Value: mm})), units.ErrNotGiven, "outside"},
		{"measured without a seat", second(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: mm}, uncertainty.Estimate{})), units.ErrNotGiven, "seat"},
		{"measured negative", second(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: -mm}, uncertainty.Estimate{Value: mm})), units.ErrRange, "outside"},
		{"measured with a negative doubt", second(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: mm, Std: -1}, uncertainty.Estimate{Value: mm})), uncertainty.ErrStd, "sleeve"},
		{"measured with half a degree of freedom", second(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: mm, Std: 1, DoF: 0.5}, uncertainty.Estimate{Value: mm})), uncertainty.ErrStd, "sleeve"},
	} {
		if !errors.Is(tt.err, tt.want) || !strings.Contains(errText(tt.err), tt.says) || !strings.HasPrefix(errText(tt.err), "sleeve: ") {
			t.Errorf("%s: %v; want %v naming %q", tt.name, tt.err, tt.want, tt.says)
		}
	}
}

// TestLimitsOfInputs: the last value that is taken, beside the first that is not.
func TestLimitsOfInputs(t *testing.T) {
	j := demoJoint()
	for name, err := range map[string]error{
		"a hundredth of the seat":  func() error { k := j; k.Interference = exactly(j.Seat / 100); return k.Validate() }(),
		"clearance of a hundredth": func() error { k := j; k.Interference.Min = -j.Seat / 100; return k.Validate() }(),
		"a wall of a picometre":    func() error { k := j; k.Bore = j.Seat - 1; k.Outer = plain(j.Seat + 1); return second(k.Fit()) }(),
		"rubber's ratio":           func() error { k := j; k.Sleeve.Poisson = 0.5; return k.Validate() }(),
		"cork's ratio":             func() error { k := j; k.Sleeve.Poisson = 0; return k.Validate() }(),
		"1 GPa":                    func() error { k := j; k.Sleeve.Young = 1e9; return k.Validate() }(),
		"1000 GPa":                 func() error { k := j; k.Sleeve.Young = 1e12; return k.Validate() }(),
		"10 GPa of strength":       func() error { k := j; k.Sleeve.Yield, k.Sleeve.Tensile = 1e10, 1e10; return k.Validate() }(),
		"1e-4/K": func() error {
			k := j
			k.Barrel.Expansion = 1e-4
			return second(k.Stresses(sleeve.Warm{Sleeve: room, Barrel: room}))
		}(),
		"1000 °C":             second(j.Stresses(sleeve.Warm{Sleeve: 1273.15, Barrel: 1273.15})),
		"100 MPa of gas":      second(j.Stresses(sleeve.Warm{Gas: 100e6, Sleeve: room, Barrel: room})),
		"friction 1":          second(j.Press(pressing{Length: mm, Friction: sleeve.Range[float64]{Min: 1, Max: 1}}.of())),
		"slip of a hundredth": second(j.HeatTo(sleeve.Assembling{Slip: j.Seat / 100, Stands: 900, Sleeve: room})),
		"a wall of 0.05 mm":   second(j.Hone(j.Seat - 100*um)),
	} {
		if err != nil {
			t.Errorf("%s: %v", name, err)
		}
	}
	if a := must(j.HeatTo(sleeve.Assembling{Sleeve: room})); a.Barrel > 473.15 {
		t.Errorf("barrel at %v", a.Barrel)
	} else if _, err := j.HeatTo(sleeve.Assembling{Stands: a.Barrel, Sleeve: room}); err != nil {
		t.Errorf("exactly as hot as it stands: %v", err)
	}
}

// finite walks a value and reports the path of a number that is not finite.
func finite(v reflect.Value, path string) string {
	switch v.Kind() {
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return path
		}
	case reflect.Struct:
		for i := range v.NumField() {
			if p := finite(v.Field(i), path+"."+v.Type().Field(i).Name); p != "" {
				return p
			}
		}
	case reflect.Interface:
		return finite(v.Elem(), path)
	}
	return ""
}

// TestHostile: whatever goes in, an error with nothing comes out, or finite numbers.
func TestHostile(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		length := func(name string, fair units.Length) units.Length {
			return units.Length(rapid.OneOf(rapid.Just(int64(fair)), rapid.Just(int64(fair)), rapid.Int64(), rapid.SampledFrom([]int64{0, 1, -1, math.MaxInt64, math.MinInt64})).Draw(t, name))
		}
		number := func(name string, fair float64) float64 {
			return rapid.OneOf(rapid.Just(fair), rapid.Just(fair), rapid.Just(fair), rapid.Float64(),
				rapid.SampledFrom([]float64{0, math.NaN(), math.Inf(1), math.Inf(-1), math.MaxFloat64, -math.MaxFloat64, 5e-324, 1})).Draw(t, name)
		}
		j := demoJoint()
		j.Bore, j.Seat = length("bore", j.Bore), length("seat", j.Seat)
		j.Outer.Min, j.Outer.Max = length("outer min", j.Outer.Min), length("outer max", j.Outer.Max)
		j.Interference.Min, j.Interference.Max = length("least", j.Interference.Min), length("greatest", j.Interference.Max)
		j.Sleeve.Young, j.Sleeve.Poisson = units.Pressure(number("Ei", 110e9)), number("νi", 0.26)
		j.Sleeve.Expansion, j.Sleeve.Within = units.Expansion(number("αi", 11e-6)), units.Expansion(number("±αi", 1e-6))
		j.Barrel.Yield, j.Barrel.Tensile = units.Pressure(number("Rp", 1e8)), units.Pressure(number("Rm", 2e8))
		j.Sleeve.From, j.Sleeve.To = units.Temperature(number("from", 293)), units.Temperature(number("to", 373))
		c := sleeve.Warm{Sleeve: units.Temperature(number("Ts", 400)), Barrel: units.Temperature(number("Tb", 400)), Gas: units.Pressure(number("gas", 5e6))}
		a := sleeve.Assembling{Slip: length("slip", 50*um), Sleeve: units.Temperature(number("As", 200)), Barrel: units.Temperature(number("Ab", 400)), Stands: units.Temperature(number("stands", 473))}
		p := pressing{Length: length("length", 90*mm), Friction: sleeve.Range[float64]{Min: number("µ", 0.1), Max: number("µ", 0.2)}}
		for name, call := range every(j, c, a, p, length("size", demoSize)) {
			v, err := call()
			if err != nil && !reflect.ValueOf(v).IsZero() {
				t.Fatalf("%s: %v together with %+v", name, err, v)
			}
			if path := finite(reflect.ValueOf(v), name); path != "" {
				t.Fatalf("%s is not finite: %+v", path, v)
			}
		}
		e := uncertainty.Estimate{Value: length("value", 73*mm), Std: length("std", um), DoF: number("DoF", 5)}
		if _, err := sleeve.DiametralFromMeasured(e, uncertainty.Estimate{Value: length("other", 73*mm)}); err != nil && !strings.HasPrefix(errText(err), "sleeve: ") {
			t.Fatalf("%v", err)
		}
	})
}

// TestZeroValues: no method of a zero value panics.
func TestZeroValues(t *testing.T) {
	for name, call := range every(sleeve.Joint{}, sleeve.Warm{Sleeve: room, Barrel: room}, sleeve.Assembling{Sleeve: room, Barrel: room}, pressing{}, 0) {
		if _, err := call(); !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s of a zero joint: %v", name, err)
		}
	}
}
