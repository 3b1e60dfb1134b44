// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"encoding"
	"encoding/json"
	"errors"
	"reflect"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestCautions: every one says what.
func TestCautions(t *testing.T) {
	all := sleeve.Cautions(1<<(sleeve.CanComeLoose+1) - 1<<sleeve.EvenHeat)
	texts := all.Texts()
	if len(texts) != int(sleeve.CanComeLoose) || sleeve.Cautions(0).Texts() != nil {
		t.Errorf("%q", texts)
	}
	seen := map[string]bool{}
	for _, text := range texts {
		if len(text) < 40 || seen[text] {
			t.Errorf("caution %q", text)
		}
		seen[text] = true
	}
	if !seen[sleeve.CautionEvenHeat] || !seen[sleeve.CautionHotParts] {
		t.Error("what a call asks for is none of them")
	}
}

// TestCautionSets: a set goes to text and back, lists what it has, and refuses what is none.
func TestCautionSets(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := sleeve.Cautions(rapid.Uint32Range(0, 1<<sleeve.CanComeLoose-1).Draw(t, "set")) << 1
		text, err := s.MarshalText()
		if err != nil {
			t.Fatal(err)
		}
		back := sleeve.Cautions(2)
		if err := back.UnmarshalText(text); err != nil || back != s {
			t.Fatalf("%s goes back to %v, %v", text, back, err)
		}
		if n := len(s.Texts()); s != 0 && n != strings.Count(string(text), ";")+1 || s == 0 && n != 0 {
			t.Fatalf("%d in %q", n, text)
		}
	})
	for _, s := range []sleeve.Cautions{1, 1 << (sleeve.CanComeLoose + 1), 1 << 31} {
		if _, err := s.MarshalText(); !errors.Is(err, units.ErrUnknownName) {
			t.Errorf("%b: %v", s, err)
		}
	}
	for _, text := range []string{"; ", "even heat; ", "even heat;hot parts", "even heat, hot parts", "; even heat", "heat"} {
		s := sleeve.Cautions(2)
		if err := s.UnmarshalText([]byte(text)); !errors.Is(err, units.ErrUnknownName) || s != 2 {
			t.Errorf("%q: %v, %v", text, s, err)
		}
	}
}

// TestCautionsOnResults: what is hot, cold, pressed or loose says so, and what is not does not.
func TestCautionsOnResults(t *testing.T) {
	j := demoJoint()
	j.Sleeve.From, j.Sleeve.To, j.Barrel.From, j.Barrel.To = 293.15, 473.15, 293.15, 473.15
	hot := must(j.HeatTo(sleeve.Assembling{Slip: 50 * um, Sleeve: room}))
	chilled := must(j.ChillTo(sleeve.Assembling{Slip: 50 * um, Barrel: room}))
	dry := must(j.HeatTo(sleeve.Assembling{Slip: 50 * um, Sleeve: 233.15}))
	loose := must(j.Stresses(sleeve.Warm{Sleeve: 393.15, Barrel: 393.15}))
	for _, tt := range []struct {
		name string
		got  sleeve.Cautions
		want string
	}{
		{"heated", hot.Cautions, "even heat; nothing trapped; hot parts; no flame; temper lost; stops half way"},
		{"chilled", chilled.Cautions, "cold parts; ventilate; stops half way; coefficient range"},
		{"both", dry.Cautions, "even heat; nothing trapped; hot parts; no flame; temper lost; cold parts; ventilate; stops half way; coefficient range"},
		{"a hot sleeve", must(j.Slips(sleeve.Assembling{Sleeve: 323.15, Barrel: room})).Cautions, "even heat; nothing trapped; hot parts; no flame; stops half way"},
		{"a cold barrel", must(j.Slips(sleeve.Assembling{Barrel: 263.15, Sleeve: room})).Cautions, "cold parts; ventilate; stops half way; coefficient range"},
		{"neither", must(j.Slips(sleeve.Assembling{Sleeve: 283.15, Barrel: 313.15})).Cautions, "stops half way"},
		{"a sleeve beyond its coefficient", must(j.Slips(sleeve.Assembling{Sleeve: 483.15, Stands: 500, Barrel: room})).Cautions, "even heat; nothing trapped; hot parts; no flame; stops half way; coefficient range"},
		{"fitted", must(j.Fit()).Cautions, "judged as brittle"},
		{"loose", loose.Cautions, "judged as brittle; can come loose"},
		{"loosening, asked about in the cold", must(deepCold().LooseAt(sleeve.Warm{Barrel: 213.15, Sleeve: room})).Cautions, "coefficient range"},
		{"loosening, asked about a little warmer", must(deepCold().LooseAt(sleeve.Warm{Barrel: 233.15, Sleeve: room})).Cautions, ""},
		{"loosening in range", must(j.LooseAt(sleeve.Warm{Sleeve: room, Barrel: room})).Cautions, ""},
	} {
		if text, err := tt.got.MarshalText(); err != nil || string(text) != tt.want {
			t.Errorf("%s: %q, %v, want %q", tt.name, text, err, tt.want)
		}
	}
}

// deepCold is a joint whose coefficients hold from -50 to 200 °C.
func deepCold() sleeve.Joint {
	j := demoJoint()
	j.Sleeve.From, j.Sleeve.To, j.Barrel.From, j.Barrel.To = 223.15, 473.15, 223.15, 473.15
	return j
}

// TestCoefficientRange: where the range of a coefficient is known, it counts; where it is not, 0 to
// 100 °C; a coefficient from 20 °C up serves a cool morning.
func TestCoefficientRange(t *testing.T) {
	for _, tt := range []struct {
		name     string
		from, to units.Temperature
		at       float64 // °C
		want     bool
	}{
		{"not known, 100 °C", 0, 0, 100, false},
		{"not known, 101 °C", 0, 0, 101, true},
		{"not known, 0 °C", 0, 0, 0, false},
		{"not known, -1 °C", 0, 0, -1, true},
		{"20 to 200, 200 °C", 293.15, 473.15, 200, false},
		{"20 to 200, 201 °C", 293.15, 473.15, 201, true},
		{"20 to 200, 5 °C", 293.15, 473.15, 5, false},
		{"20 to 93, 95 °C", 293.15, 366.15, 95, true},
		{"-50 to 100, -40 °C", 223.15, 373.15, -40, false},
		{"-50 to 100, -60 °C", 223.15, 373.15, -60, true},
	} {
		for name, j := range map[string]sleeve.Joint{"sleeve": demoJoint(), "barrel": demoJoint()} {
			m, other := &j.Sleeve, &j.Barrel
			if name == "barrel" {
				m, other = other, m
			}
			m.From, m.To = tt.from, tt.to
			other.From, other.To = 1, 1273
			at := must(units.Celsius(tt.at))
			if got := must(j.Stresses(sleeve.Warm{Sleeve: at, Barrel: at})).Cautions.Has(sleeve.CoefficientRange); got != tt.want {
				t.Errorf("%s of the %s: %v", tt.name, name, got)
			}
			alone, elsewhere := sleeve.Warm{Sleeve: at, Barrel: room}, sleeve.Warm{Barrel: at, Sleeve: room}
			if name == "barrel" {
				alone, elsewhere = elsewhere, alone
			}
			if got := must(j.Stresses(alone)).Cautions.Has(sleeve.CoefficientRange); got != tt.want {
				t.Errorf("%s of the %s, which alone is at that: %v", tt.name, name, got)
			}
			if must(j.Stresses(elsewhere)).Cautions.Has(sleeve.CoefficientRange) {
				t.Errorf("%s of the %s, which is at 20 °C: cautioned", tt.name, name)
			}
			if got := must(j.LooseAt(alone)).Cautions.Has(sleeve.CoefficientRange); tt.want && !got {
				t.Errorf("%s of the %s: Loosens is silent", tt.name, name)
			}
		}
	}
}

// TestJudgedAsBrittle: the caution is there where either part has a tensile strength alone.
func TestJudgedAsBrittle(t *testing.T) {
	const yield, tensile = 165 * units.Megapascal, 207 * units.Megapascal
	for _, tt := range []struct {
		sleeve, barrel units.Pressure // yield strengths
		want           bool
	}{{yield, yield, false}, {0, yield, true}, {yield, 0, true}, {0, 0, true}} {
		j := demoJoint()
		j.Sleeve.Tensile, j.Barrel.Tensile = tensile, tensile
		j.Sleeve.Yield, j.Barrel.Yield = tt.sleeve, tt.barrel
		if got := must(j.Fit()).Cautions.Has(sleeve.JudgedAsBrittle); got != tt.want {
			t.Errorf("yield %v and %v: %v", tt.sleeve, tt.barrel, got)
		}
	}
}

// TestTouching: parts that touch without overlap grip nothing.
func TestTouching(t *testing.T) {
	j := demoJoint()
	j.Interference.Min = 0
	if s := must(j.Fit()); s.Grips != uncertainty.Undecided || s.Pressure.Min != 0 {
		t.Errorf("down to none: %v, %+v", s.Grips, s.Pressure)
	}
	// A sleeve of 100.1 mm cooled until it is 100 mm, as the seat: 1 - 0.1/100.1 of its size.
	j.Bore, j.Seat, j.Outer, j.Interference = 90*mm, 100*mm, plain(120*mm), exactly(100*um)
	j.Sleeve.Expansion = 1e-5
	s := must(j.Stresses(sleeve.Warm{Sleeve: units.ReferenceTemperature - 0.1/100.1/1e-5, Barrel: room}))
	if s.Interference != (sleeve.Diametral{}) || s.Grips != uncertainty.Beyond {
		t.Errorf("none left: %v, %+v", s.Grips, s.Interference)
	}
}

// TestStrengths: which strength judges, tension and compression, and the three verdicts.
func TestStrengths(t *testing.T) {
	const mpa = units.Megapascal
	for _, tt := range []struct {
		name           string
		yield, tensile units.Pressure // of both parts
		barrel, sleeve string
	}{
		// The joint has 22.53 MPa of hoop stress and 4.649 MPa of pressure at the barrel's bore,
		// -58.99 MPa at the sleeve's.
		{"nothing known", 0, 0, "not known undecided", "not known undecided"},
		{"ductile, strong", 165 * mpa, 0, "yield within 6.07", "yield within 2.80"},
		{"ductile goes before brittle", 165 * mpa, 1 * mpa, "yield within 6.07", "yield within 2.80"},
		{"ductile, near", 80 * mpa, 0, "yield within 2.94", "yield undecided 1.36"},
		{"ductile, weak", 40 * mpa, 0, "yield undecided 1.47", "yield beyond 0.68"},
		{"brittle, strong", 0, 207 * mpa, "tensile within 9.19", "tensile within 3.51"},
		{"brittle, near: 3 in tension, 1.5 in compression", 0, 67 * mpa, "tensile undecided 2.97", "tensile undecided 1.14"},
		{"brittle, as much in compression as is wanted", 0, 89 * mpa, "tensile within 3.95", "tensile within 1.51"},
		{"brittle, weak", 0, 22 * mpa, "tensile beyond 0.98", "tensile beyond 0.37"},
	} {
		j := demoJoint()
		j.Sleeve.Yield, j.Sleeve.Tensile, j.Barrel.Yield, j.Barrel.Tensile = tt.yield, tt.tensile, tt.yield, tt.tensile
		s := must(j.Fit())
		for _, p := range []struct {
			part, want string
			got        sleeve.Strength
			wanted     float64
			tension    bool
		}{
			{"barrel", tt.barrel, s.Barrel, 3, true},
			{"sleeve", tt.sleeve, s.Sleeve, 1.5, false},
		} {
			got := p.got.Basis + " " + p.got.Verdict.String()
			if p.got.Basis != "not known" {
				got += " " + fixed(p.got.Margin.Min)
			}
			if got != p.want {
				t.Errorf("%s: %s: %s, want %s", tt.name, p.part, got, p.want)
			}
			if p.got.Basis == "tensile" && (p.got.Wanted != p.wanted || p.got.Tension != p.tension) {
				t.Errorf("%s: %s: %+v", tt.name, p.part, p.got)
			}
			if p.got.Basis == "yield" && (p.got.Wanted != 1.5 || !p.got.Tension) {
				t.Errorf("%s: %s: %+v", tt.name, p.part, p.got)
			}
		}
	}
	// Exactly as strong as is wanted is strong enough; exactly as strong as it must be has not failed.
	j := demoJoint()
	worst := must(j.Fit()).Barrel.Stress.Max
	j.Barrel.Yield = 3 * worst / 2
	if s := must(j.Fit()).Barrel; s.Margin.Min != 1.5 || s.Verdict != uncertainty.Within {
		t.Errorf("as strong as is wanted: %+v", s)
	}
	j.Barrel.Yield = worst
	if s := must(j.Fit()).Barrel; s.Margin.Max != 1 || s.Verdict != uncertainty.Undecided {
		t.Errorf("as strong as it must be: %+v", s)
	}
	// Gas turns a sleeve from compression to tension; with a margin of 3 wanted instead of 1.5 it
	// fails sooner.
	j = demoJoint()
	s := must(j.Stresses(sleeve.Warm{Gas: 30 * mpa, Sleeve: room, Barrel: room}))
	if !s.Sleeve.Tension || s.Sleeve.Wanted != 3 || s.SleeveHoop.Min <= 0 {
		t.Errorf("with gas: %+v", s.Sleeve)
	}
	// From 20 MPa of tension to 26 MPa of compression: the tension asks for more, being worth twice as
	// much.
	j.Interference = sleeve.Diametral{Min: 1 * um, Max: 48 * um}
	s = must(j.Stresses(sleeve.Warm{Gas: 45 * mpa / 10, Sleeve: room, Barrel: room}))
	if -s.SleeveHoop.Min <= s.SleeveHoop.Max || !s.Sleeve.Tension || s.Sleeve.Wanted != 3 || s.Sleeve.Stress.Max != s.SleeveHoop.Max {
		t.Errorf("tension and compression: %v, %+v", s.SleeveHoop, s.Sleeve)
	}
	// A range that has the limit inside it decides nothing, even where the margin at one end is
	// below 1.
	j.Interference = sleeve.Diametral{Min: 20 * um, Max: 300 * um}
	s = must(j.Fit())
	if s.Sleeve.Margin.Min >= 1 || s.Sleeve.Margin.Max <= 1 || s.Sleeve.Verdict != uncertainty.Undecided {
		t.Errorf("range: %+v", s.Sleeve)
	}
}

func fixed(x float64) string {
	text, _ := json.Marshal(float64(int64(x*100+0.5)) / 100)
	whole, frac, _ := strings.Cut(string(text), ".")
	return whole + "." + (frac + "00")[:2]
}

// roundTrip writes v as JSON, reads it back and writes that: the two texts are the same, and hold
// the names in snake case.
func roundTrip[T any](t *testing.T, v T) {
	t.Helper()
	text, err := json.Marshal(v)
	if err != nil {
		t.Fatalf("%T: %v", v, err)
	}
	var back T
	if err := json.Unmarshal(text, &back); err != nil {
		t.Fatalf("%T: %v in %s", v, err, text)
	}
	again, err := json.Marshal(back)
	if err != nil || string(again) != string(text) {
		t.Errorf("%T: %s, then %s, %v", v, text, again, err)
	}
	var names func(reflect.Type)
	names = func(r reflect.Type) {
		if r.Kind() != reflect.Struct || r.PkgPath() != reflect.TypeFor[sleeve.Joint]().PkgPath() {
			return
		}
		if reflect.PointerTo(r).Implements(reflect.TypeFor[encoding.TextUnmarshaler]()) {
			return
		}
		for i := range r.NumField() {
			f := r.Field(i)
			tag, _, _ := strings.Cut(f.Tag.Get("json"), ",")
			if tag == "" || tag != strings.ToLower(tag) || strings.Contains(tag, " ") {
				t.Errorf("%v.%s has the JSON name %q", r, f.Name, tag)
			}
			names(f.Type)
		}
	}
	names(reflect.TypeFor[T]())
}

func TestJSON(t *testing.T) {
	j := demoJoint()
	roundTrip(t, must(j.Fit()))
	roundTrip(t, must(j.Stresses(sleeve.Warm{Sleeve: 393.15, Barrel: 393.15, Gas: 5e6})))
	roundTrip(t, must(j.HeatTo(sleeve.Assembling{Slip: 50 * um, Sleeve: room})))
	roundTrip(t, must(j.LooseAt(sleeve.Warm{Sleeve: room, Barrel: room})))
	roundTrip(t, must(j.Growth(353.15)))
	roundTrip(t, must(j.Hone(demoSize)))
	roundTrip(t, sleeve.TradeInterference())
	roundTrip(t, must(sleeve.DiametralFromClasses(73*mm, must(sleeve.ParseClass("H7")), must(sleeve.ParseClass("s6")))))
	roundTrip(t, sleeve.Warm{Gas: 1e6, Sleeve: room, Barrel: room})
	roundTrip(t, sleeve.Assembling{Slip: 50 * um, Sleeve: 200, Barrel: room})
	roundTrip(t, j)
	roundTrip(t, map[sleeve.Class]int{sleeve.MustParseClass("H7"): 7, sleeve.MustParseClass("js6"): 6})
}
