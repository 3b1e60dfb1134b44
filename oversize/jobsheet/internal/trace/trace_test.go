// SPDX-License-Identifier: BSD-3-Clause

package trace

import (
	"math"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/bore/form"
	"borewright.example/units"
	"borewright.example/units/material"
)

const mm, um = units.Millimetre, units.Micrometre

// round is a trace of n radii at a depth: a circle of 40 mm, its centre off by so much towards thrust, with lobes of an
// order and a radial amplitude.
func round(n int, depth, off units.Length, order int, lobes units.Length) Trace {
	t := Trace{Depth: &depth, Step: units.Angle(360/float64(n)) * units.Degree}
	for i := range n {
		a := 2 * math.Pi * float64(i) / float64(n)
		r := off.In(um)*math.Cos(a) + lobes.In(um)*math.Cos(float64(order)*a)
		t.Radii = append(t.Radii, 40*mm+units.Length(math.Round(r*1e6)))
	}
	return t
}

// asDeviations is the same trace by an indicator set to zero at 39.9 mm.
func asDeviations(t Trace) Trace {
	for _, r := range t.Radii {
		t.Deviations = append(t.Deviations, r-39_900*um)
	}
	t.Radii = nil
	return t
}

const zero = 39_900 * um

// TestFaults: a trace that is whole has none; one of which a radius is lost or of another unit has one, at its place.
func TestFaults(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*Trace)
		at     string
		says   string
	}{
		"whole":         {func(t *Trace) {}, "", ""},
		"deviations":    {func(t *Trace) { *t = asDeviations(*t) }, "", ""},
		"as many":       {func(t *Trace) { *t = round(3600, 20*mm, 0, 2, 10*um) }, "", ""},
		"as few":        {func(t *Trace) { *t = round(12, 20*mm, 0, 2, 10*um) }, "", ""},
		"too many":      {func(t *Trace) { *t = round(3602, 20*mm, 0, 2, 10*um) }, "radii", "from 12 to 3600"},
		"both":          {func(t *Trace) { t.Deviations = asDeviations(*t).Deviations }, "deviations", "not both"},
		"one lost":      {func(t *Trace) { t.Radii = t.Radii[2:] }, "step", "70 of them want 5.14286°: is one lost?"},
		"an odd number": {func(t *Trace) { t.Radii = t.Radii[1:] }, "radii", "an even number"},
		"few":           {func(t *Trace) { t.Radii = t.Radii[:10] }, "radii", "from 12 to 3600"},
		"no step":       {func(t *Trace) { t.Step = units.Angle(math.NaN()) }, "step", "want 5°"},
		"another unit":  {func(t *Trace) { t.Radii[7] = 40 * um }, "radii[7]", "from the nominal bore"},
		"of the other":  {func(t *Trace) { *t = asDeviations(*t); t.Deviations[71] = 5 * mm }, "deviations[71]", "from the nominal bore"},
	} {
		trace := round(72, 20*mm, 0, 2, 10*um)
		c.change(&trace)
		list := trace.Faults(zero, 80*mm)
		if c.at == "" {
			if list != nil {
				t.Errorf("%s: %v", name, list)
			}
		} else if len(list) == 0 || list[0].At != c.at || !strings.Contains(list[0].Want.Error(), c.says) {
			t.Errorf("%s: %v", name, list)
		}
	}
}

// TestWritten: which of the two lists stands in a job, and what they were when the trace was taken.
func TestWritten(t *testing.T) {
	trace := round(72, 20*mm, 0, 2, 10*um)
	list, field := trace.Written()
	if field != "radii" || !slices.Equal(list, trace.Radii) || !slices.Equal(trace.Shown(zero), trace.Radii) || trace.Points() != 72 {
		t.Error(field, list)
	}
	by := asDeviations(trace)
	list, field = by.Written()
	if field != "deviations" || !slices.Equal(list, by.Deviations) || !slices.Equal(by.Shown(zero), trace.Radii) || by.Points() != 72 {
		t.Error(field, list)
	}
	trace.Radii[7] = 30 * mm
	if list := trace.Faults(zero, 80*mm); len(list) != 1 || list[0].Value != 60*mm {
		t.Errorf("the diameter of that radius: %v", list)
	}
	if OddLobes != 21 { // seven points to a lobe (ISO 12181-2)
		t.Error(OddLobes)
	}
}

// TestDiameters: whatever the centre, an oval of ±10 µm reads 20 µm above and below the mean along its axes; and an
// indicator's deviations are the radii once more.
func TestDiameters(t *testing.T) {
	trace := round(72, 20*mm, 30*um, 2, 10*um)
	rs, err := trace.Diameters(zero)
	again, errs := asDeviations(trace).Diameters(zero)
	if err != nil || errs != nil || len(rs) != 36 || !slices.Equal(rs, again) {
		t.Fatal(len(rs), err, errs)
	}
	for _, c := range []struct {
		axis units.Angle
		want units.Length
	}{{0, 80_020 * um}, {45 * units.Degree, 80_000 * um}, {90 * units.Degree, 79_980 * um}} {
		i := slices.IndexFunc(rs, func(r bore.Reading) bool { return math.Abs(float64(units.Angle(r.Axis)-c.axis)) < 1e-9 })
		if i < 0 || rs[i].Depth != 20*mm || (rs[i].Diameter-c.want).Abs() > um/10 {
			t.Errorf("along %v: %v, want %v", c.axis, rs, c.want)
		}
	}
}

// iron is a bore of grey iron at 30 °C, compared at 25 °C with a steel ring of 79.8 mm that was set at 20 °C.
func iron(standard units.Length) bore.Gauge {
	at := func(kelvin units.Temperature) bore.Temperature {
		return bore.Temperature{Value: units.ReferenceTemperature + kelvin, Within: 1}
	}
	return bore.Gauge{
		Resolution: um, Material: material.Material{Expansion: 11.5e-6}, SetAt: at(0), UsedAt: at(5),
		Part: material.Material{Expansion: 11e-6}, PartAt: at(10), Standard: bore.Standard{Size: standard, Material: material.Material{Expansion: 12e-6}, At: at(0)},
	}
}

// TestAt20 by hand: the gauge has grown by 5 K · 11.5e-6 of 39.9 mm, 2.294 µm, the iron by 10 K · 11e-6 of 40 mm, 4.400 µm, so
// that 40 mm shown are 39.997895 mm at 20 °C. Set on nothing the gauge has grown by that of 40 mm, 2.3 µm.
func TestAt20(t *testing.T) {
	for standard, want := range map[units.Length]units.Length{79_800 * um: 39_997_894_750, 0: 39_997_900_231} {
		f, _, err := Spindle{}.Section(round(72, 20*mm, 0, 2, 0), zero, iron(standard))
		if err != nil || (f.Radii[0]-want).Abs() > units.Nanometre || f.Mean != 2*f.Radii[0] || f.Depth != 20*mm {
			t.Errorf("by %v: %v, want %v; %v", standard, f.Radii[0], want, err)
		}
	}
}

// TestDoubts by hand: scatter s and a greatest error e of each of two radii are √(2s² + 2e²/3); of a diameter at either end twice
// that; of a radius about a centre, the size's half beside it.
func TestDoubts(t *testing.T) {
	const s, e = 2., 3.
	spindle := Spindle{OnStandard: true, Repeatability: 2 * um, Error: 3 * um}
	difference := math.Sqrt(2*s*s + 2*e*e/3)
	near := func(what string, got units.Length, want float64) {
		t.Helper()
		if math.Abs(got.In(um)-want) > 3e-3 { // the radii are brought to 20 °C, by a 20,000th
			t.Errorf("%s: %v, want %.4f µm", what, got, want)
		}
	}
	d := spindle.Difference(7 * um)
	near("of two radii", d.Std, difference)
	if d.Value != 7*um {
		t.Error(d)
	}
	radial, err := spindle.Radial(4 * um)
	near("about a centre", radial, math.Sqrt(difference*difference+2*2))
	g := spindle.Gauge(iron(79_800 * um))
	near("as a gauge", g.Repeatability, s*math.Sqrt2)
	if err != nil || g.Kind != bore.TwoPoint || g.DialError != 6*um || g.Resolution != 0 || g.RepeatabilityDoF != 0 || g.Standard.Size == 0 || (Spindle{}).Gauge(iron(mm)).Standard != (bore.Standard{}) {
		t.Errorf("%+v, %v", g, err)
	}
	var sections []form.Section
	for i, depth := range []units.Length{10 * mm, 50 * mm, 90 * mm} {
		one := round(72, depth, 0, 3, 8*um)
		for k := range one.Radii {
			one.Radii[k] += units.Length(2-i) * 10 * um // larger at the deck by 0.04 mm on the diameter
		}
		if i == 1 { // and its middle off to one side
			for k, r := range round(72, depth, 12*um, 2, 0).Radii {
				one.Radii[k] += r - 40*mm
			}
		}
		f, section, err := spindle.Section(one, zero, iron(0))
		if err != nil {
			t.Fatal(err)
		}
		near("roundness", f.Roundness.Value, 16)
		near("its doubt", f.Roundness.Std, difference)
		if len(f.Lobes) != 9 || f.Lobes[0].Order != 2 || f.Lobes[1].Order != 3 || (f.Lobes[1].Amplitude-8*um).Abs() > um/100 || f.Lobes[0].Amplitude > um/10 {
			t.Errorf("lobes %v", f.Lobes)
		}
		sections = append(sections, section)
	}
	w, err := spindle.Together(sections)
	if err != nil {
		t.Fatal(err)
	}
	near("taper", w.Taper.Value, 40)
	near("its doubt", w.Taper.Std, 2*difference)
	near("the doubt of cylindricity", w.Cylindricity.Std, difference)
	near("the doubt of bend", w.Bend.Std, difference)
	if w.Bend.Value != w.Median.Bend || w.Cylindricity.Value != w.Cylinder.CYLt || math.Abs(w.Bend.Value.In(um)-12) > 4.1 || w.Median.BendAt != 50*mm || w.Cylindricity.Value < 16*um {
		t.Errorf("bend %v, cylindricity %v", w.Bend, w.Cylindricity)
	}
}

// TestLobes: a seventh of the radii, and 15 at most.
func TestLobes(t *testing.T) {
	for n, most := range map[int]int{12: 0, 14: 2, 20: 2, 104: 14, 105: 15, 360: 15} {
		f, _, err := Spindle{}.Section(round(n, 20*mm, 0, 2, 10*um), zero, iron(0))
		if err != nil || len(f.Lobes) != max(0, most-1) || most > 0 && f.Lobes[len(f.Lobes)-1].Order != most {
			t.Errorf("%d radii: %d lobes, to order %d: %v", n, len(f.Lobes), most, err)
		}
	}
}

// TestRefused: what is no trace is an error, never a form.
func TestRefused(t *testing.T) {
	for name, bad := range map[string]Trace{"nothing": {}, "radii of nothing": {Radii: make([]units.Length, 24)}} {
		if _, err := bad.Diameters(zero); err == nil {
			t.Errorf("%s: diameters", name)
		}
		if _, _, err := (Spindle{}).Section(bad, zero, iron(0)); err == nil {
			t.Errorf("%s: a form", name)
		}
	}
	if _, err := (Spindle{}).Together(nil); err == nil {
		t.Error("no trace at all")
	}
	if d := (Spindle{Error: -um}).Difference(um); d.Std < units.Metre {
		t.Error("of no spindle something is known", d)
	}
}
