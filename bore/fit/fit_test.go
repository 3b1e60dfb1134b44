// SPDX-License-Identifier: BSD-3-Clause

package fit_test

import (
	"encoding/json"
	"errors"
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/fit"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

var window = units.Limits{Min: 25 * units.Micrometre, Max: 45 * units.Micrometre}

func TestRefused(t *testing.T) {
	good := fit.Piston{Size: exact(mm("66.97"))}
	size := func(e uncertainty.Estimate) fit.Piston { return fit.Piston{Size: e} }
	finish := func(p fit.Piston, w units.Limits) error { _, err := fit.FinishWindow(p, w); return err }
	aim := func(w units.Limits, guard units.Length) error { _, err := fit.AimIn(w, guard, fit.Centre); return err }
	feeler := func(r fit.FeelerRule, strip units.Length, pull units.Force) error {
		_, err := r.Clearance(strip, pull)
		return err
	}
	match := func(bores, pistons []units.Length, w units.Limits) error {
		_, err := fit.Match(bores, pistons, w)
		return err
	}
	usual := func(d fit.Duty, l units.Length) error { _, err := fit.Usual(d, l); return err }
	warm := func(w fit.Warm) error { _, err := w.HotClearance(exact(mm("67")), good); return err }
	clear := func(b uncertainty.Estimate) error { _, err := fit.Clearance(b, good); return err }
	rule := fit.FeelerRule{Pull: 26, Adds: inch("0.001")}
	two := []units.Length{mm("67"), mm("67.01")}
	for _, test := range []struct {
		name string
		err  error
		want error
	}{
		{"no piston", finish(fit.Piston{}, window), units.ErrNotGiven},
		{"negative piston", finish(size(exact(-1)), window), units.ErrRange},
		{"piston of 11 m", finish(size(exact(11*units.Metre)), window), units.ErrRange},
		{"negative uncertainty", finish(size(uncertainty.Estimate{Value: mm("67"), Std: -1}), window), uncertainty.ErrStd},
		{"uncertainty above the size", finish(size(uncertainty.Estimate{Value: mm("67"), Std: mm("68")}), window), units.ErrRange},
		{"degrees of freedom NaN", finish(size(uncertainty.Estimate{Value: mm("67"), DoF: math.NaN()}), window), uncertainty.ErrStd},
		{"negative coating", finish(fit.Piston{Size: good.Size, Coating: -1}, window), units.ErrRange},
		{"all coating", finish(fit.Piston{Size: good.Size, Coating: mm("33.485")}, window), units.ErrRange},
		{"negative height", finish(fit.Piston{Size: good.Size, Height: -1}, window), units.ErrRange},
		{"no window", finish(good, units.Limits{}), units.ErrNotGiven},
		{"upper end alone", finish(good, units.Limits{Max: mm("0.05")}), units.ErrNotGiven},
		{"lower end alone", finish(good, units.Limits{Min: mm("0.05")}), units.ErrNotGiven},
		{"crossed window", finish(good, units.Limits{Min: mm("0.05"), Max: mm("0.03")}), units.ErrCrossed},
		{"negative clearance", finish(good, units.Limits{Min: -1, Max: mm("0.03")}), units.ErrRange},
		{"aim without window", aim(units.Limits{Max: mm("67")}, 0), units.ErrNotGiven},
		{"aim in a crossed window", aim(units.Limits{Min: mm("67"), Max: mm("66")}, 0), units.ErrCrossed},
		{"negative guard", aim(units.Limits{Min: mm("66"), Max: mm("67")}, -1), units.ErrRange},
		{"guard beyond the window", aim(units.Limits{Min: mm("66"), Max: mm("67")}, mm("1")+1), fit.ErrNarrow},
		{"bore of nothing", clear(exact(0)), units.ErrNotGiven},
		{"bore of 11 m", clear(exact(11 * units.Metre)), units.ErrRange},
		{"bore's uncertainty", clear(uncertainty.Estimate{Value: mm("67"), Std: -1}), uncertainty.ErrStd},
		{"strip of nothing", feeler(rule, 0, 26), units.ErrNotGiven},
		{"strip of 11 mm", feeler(rule, mm("11"), 26), units.ErrRange},
		{"pull of nothing", feeler(rule, mm("0.1"), 0), units.ErrRange},
		{"pull NaN", feeler(rule, mm("0.1"), units.Force(math.NaN())), units.ErrRange},
		{"pull infinite", feeler(rule, mm("0.1"), units.Force(math.Inf(1))), units.ErrRange},
		{"rule without pull", feeler(fit.FeelerRule{}, mm("0.1"), 26), units.ErrRange},
		{"rule that takes off", feeler(fit.FeelerRule{Pull: 26, Adds: -1}, mm("0.1"), 26), units.ErrRange},
		{"duty not said", usual(0, mm("67")), units.ErrNotGiven},
		{"duty unknown", usual(100, mm("67")), units.ErrRange},
		{"negative duty", usual(-1, mm("67")), units.ErrRange},
		{"usual in no bore", usual(fit.CastAir, 0), units.ErrNotGiven},
		{"bore below absolute zero", warm(fit.Warm{BoreAt: -1, PistonAt: kelvins(10)}), units.ErrRange},
		// A piston at 200 °C in a bore whose temperature was forgotten is no clearance of −0.2 mm.
		{"bore's temperature not given", warm(fit.Warm{PistonAt: kelvins(180), Bore: grows(11), Piston: grows(21)}), units.ErrNotGiven},
		{"piston's temperature not given", warm(fit.Warm{BoreAt: kelvins(60), Bore: grows(11), Piston: grows(21)}), units.ErrNotGiven},
		{"piston's expansion NaN", warm(fit.Warm{BoreAt: kelvins(0), PistonAt: kelvins(10), Piston: grows(math.NaN())}), units.ErrNotFinite},
		{"spread infinite", warm(infiniteSpread()), uncertainty.ErrStd},
		{"no bores", match(nil, two, window), units.ErrRange},
		{"a piston short", match(two, two[:1], window), units.ErrRange},
		{"a bore of nothing", match([]units.Length{0}, two, window), units.ErrNotGiven},
		{"a negative piston", match(two, []units.Length{1, -1}, window), units.ErrRange},
		{"matching without window", match(two, two, units.Limits{}), units.ErrNotGiven},
	} {
		if !errors.Is(test.err, test.want) {
			t.Errorf("%s: %v; want %v", test.name, test.err, test.want)
		}
	}
}

func infiniteSpread() fit.Warm {
	w := fit.Warm{BoreAt: kelvins(10), PistonAt: kelvins(0), Bore: grows(11)}
	w.Bore.Within = units.Expansion(math.Inf(1))
	return w
}

func TestCoatingIsNotCounted(t *testing.T) {
	p := fit.Piston{Size: uncertainty.Estimate{Value: mm("66.990"), Std: units.Micrometre, DoF: 4}, Coating: mm("0.010")}
	skirt, err := p.Skirt()
	if want := (uncertainty.Estimate{Value: mm("66.970"), Std: units.Micrometre, DoF: 4}); err != nil || skirt != want {
		t.Errorf("skirt %v, %v; want %v", skirt, err, want)
	}
	w, err := fit.FinishWindow(p, window)
	if want := (units.Limits{Min: mm("66.995"), Max: mm("67.015")}); err != nil || w != want {
		t.Errorf("window %v, %v; want %v", w, err, want)
	}
}

func TestPistonCautions(t *testing.T) {
	for _, test := range []struct {
		p    fit.Piston
		want []string // what each begins with
	}{
		{fit.Piston{}, nil},
		{fit.Piston{Size: exact(mm("67"))}, []string{"Measure the skirt square", "Measure the skirt at"}},
		{fit.Piston{Size: exact(mm("67")), Axis: fit.AcrossPin, Height: mm("10"), MakerHeight: mm("10")}, nil},
		{fit.Piston{Size: exact(mm("67")), Axis: fit.AcrossPin, Height: mm("10"), MakerHeight: mm("12"), Coating: mm("0.01")},
			[]string{"The skirt was measured at another", "The clearance is counted from under"}},
	} {
		if got := test.p.Cautions(); !slices.EqualFunc(got, test.want, strings.HasPrefix) {
			t.Errorf("%+v: %q; want %q", test.p, got, test.want)
		}
	}
}

// TestJSON takes everything that stands on a sheet to text and back.
func TestJSON(t *testing.T) {
	type sheet struct {
		Piston  fit.Piston
		Aim     fit.Aim
		Duty    fit.Duty
		Matched fit.Matched
	}
	m, err := fit.Match([]units.Length{mm("67.02"), mm("67")}, []units.Length{mm("66.97"), mm("66.99")}, window)
	if err != nil {
		t.Fatal(err)
	}
	for d := fit.Duty(0); d <= fit.TwoStrokeAir; d++ {
		for a := fit.SkirtAxis(0); a <= fit.AlongPin; a++ {
			in := sheet{fit.Piston{exact(mm("67")), a, mm("10"), mm("11"), mm("0.01")}, fit.Aim(d % 2), d, m}
			b, err := json.Marshal(in)
			if err != nil {
				t.Fatal(err)
			}
			var out sheet
			if err := json.Unmarshal(b, &out); err != nil || !reflect.DeepEqual(in, out) {
				t.Errorf("%s: %v: %+v", b, err, out)
			}
		}
	}
	if _, err := json.Marshal(fit.Aim(7)); !errors.Is(err, units.ErrUnknownName) {
		t.Errorf("an aim of 7: %v", err)
	}
	a := fit.Tight
	if err := a.UnmarshalText([]byte("loose")); !errors.Is(err, units.ErrUnknownName) || a != fit.Tight {
		t.Errorf("loose: %v, %v", a, err)
	}
	if s := fit.Duty(-3).String(); s != "fit.Duty(-3)" {
		t.Errorf("duty −3: %q", s)
	}
}
