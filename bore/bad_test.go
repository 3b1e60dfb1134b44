// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

func at(depth, axis float64, diameter string) bore.Reading {
	return bore.Reading{Depth: millimetres(depth), Axis: bore.Axis(degrees(axis)), Diameter: units.MustParseLength(diameter)}
}

func TestBadReadings(t *testing.T) {
	good := at(10, 0, "67 mm")
	for _, c := range []struct {
		name string
		rs   []bore.Reading
		want error
		says string
	}{
		{"none", nil, bore.ErrNoReadings, ""},
		{"above the deck", []bore.Reading{good, at(-1, 0, "67 mm")}, bore.ErrReading, "-1 mm"},
		{"beyond all depth", []bore.Reading{good, at(10_001, 0, "67 mm")}, bore.ErrReading, "10001 mm"},
		{"no diameter", []bore.Reading{{Depth: mm}}, units.ErrNotGiven, "diameter"},
		{"negative diameter", []bore.Reading{at(1, 0, "-67 mm")}, bore.ErrReading, "-67 mm"},
		{"huge diameter", []bore.Reading{at(1, 0, "10001 mm")}, bore.ErrReading, "10001 mm"},
		{"axis not a number", []bore.Reading{{Axis: bore.Axis(units.Angle(math.NaN())), Diameter: mm}}, bore.ErrReading, "axis"},
		{"axis endless", []bore.Reading{{Axis: bore.Axis(units.Angle(math.Inf(-1))), Diameter: mm}}, bore.ErrReading, "axis"},
		{"axis wound up", []bore.Reading{{Axis: bore.Axis(degrees(360_001)), Diameter: mm}}, bore.ErrReading, "axis"},
		{"two slips at once", []bore.Reading{good, good, good, at(20, 0, "76 mm"), at(30, 45, "6.7 mm")}, bore.ErrSlippedDigit, "45°"},
		{"slip of a millimetre", []bore.Reading{good, at(20, 0, "67.1 mm"), at(30, 90, "68.05 mm")}, bore.ErrSlippedDigit, "pin"},
		{"slip downwards", []bore.Reading{good, at(20, 0, "67.1 mm"), at(30, 90, "66.05 mm")}, bore.ErrSlippedDigit, "66.05 mm"},
	} {
		_, err := bore.Analyse(c.rs, bore.Gauge{})
		if !errors.Is(err, c.want) || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%s: %v, want %v naming %q", c.name, err, c.want, c.says)
		}
	}
	_, err := bore.Analyse([]bore.Reading{at(-1, 0, "67 mm"), good, at(1, 0, "-67 mm")}, bore.Gauge{})
	if err == nil || !strings.Contains(err.Error(), "-1 mm") || !strings.Contains(err.Error(), "-67 mm") {
		t.Errorf("not all faults at once: %v", err)
	}
	slip := at(30, 90, "68.05 mm")
	slip.Confirmed = true
	g := measure(t, []bore.Reading{good, at(20, 0, "67.1 mm"), slip})
	if g.Largest.Size.Value != slip.Diameter {
		t.Errorf("confirmed: largest %v", g.Largest.Size)
	}
	// Heavy wear is no slip: 0.65 mm in one place of a bore of 67 mm.
	measure(t, []bore.Reading{good, good, at(20, 0, "67.65 mm"), at(30, 90, "67.02 mm")})
	// A hundredth of the bore from every other one, 0.67 mm, is where a slip begins.
	for size, slip := range map[string]bool{"67.669 mm": false, "67.671 mm": true} {
		_, err := bore.Analyse([]bore.Reading{good, at(20, 0, "67 mm"), at(30, 90, size)}, bore.Gauge{})
		if errors.Is(err, bore.ErrSlippedDigit) != slip {
			t.Errorf("%s beside 67 mm: %v", size, err)
		}
	}
}

func TestOneAxisLeavesOvalityOpen(t *testing.T) {
	g := measure(t, []bore.Reading{at(10, 0, "67.1 mm"), at(90, 0, "67 mm")})
	fs, err := g.Judge(bore.Limits{
		Service: units.Limits{Max: 67*mm + 50*um}, Ovality: 50 * um, Taper: 50 * um, Spread: 150 * um, TrueOvality: 50 * um,
	}, noRisk)
	must(t, fs, err)
	want := []struct {
		subject string
		verdict uncertainty.Verdict
	}{
		{"service limit", uncertainty.Beyond},
		{"ovality, not measured", uncertainty.Undecided},
		{"taper, thrust axis", uncertainty.Beyond},
		{"greatest minus least", uncertainty.Within},
		{"true ovality, not measured", uncertainty.Undecided},
	}
	if len(fs) != len(want) {
		t.Fatal(fs)
	}
	for i, w := range want {
		if fs[i].Subject != w.subject || fs[i].Verdict != w.verdict || fs[i].NotMeasured != strings.HasSuffix(w.subject, ", not measured") {
			t.Errorf("%v, want %v: %v", fs[i], w.subject, w.verdict)
		}
	}
	if fs[1].Measured != (uncertainty.Estimate{}) || fs[1].Conform != 0 || fs[1].Limits.Max != 50*um {
		t.Errorf("not measured: %+v", fs[1])
	}
	// One reading alone: nothing but size.
	fs, err = measure(t, []bore.Reading{at(10, 0, "67 mm")}).Judge(bore.Limits{Taper: um, Spread: um}, noRisk)
	must(t, fs, err)
	for _, f := range fs {
		if f.Verdict != uncertainty.Undecided || !f.NotMeasured {
			t.Errorf("%v", f)
		}
	}
	// A bad risk is no answer, measured or not.
	if _, err := g.Judge(bore.Limits{Ovality: um}, uncertainty.Risk{Accept: 2}); !errors.Is(err, units.ErrRange) {
		t.Error(err)
	}
}

func TestThreePointGaugeGivesSizeOnly(t *testing.T) {
	rs := []bore.Reading{at(10, 0, "67.1 mm"), at(10, 60, "67.05 mm"), at(10, 120, "67.02 mm"), at(90, 0, "67 mm")}
	g, err := bore.Analyse(rs, bore.Gauge{Kind: bore.ThreePoint})
	must(t, g, err)
	if g.HasOvality || g.Planes[0].HasOvality || g.Planes[0].TwoLobe != (bore.Lobes{}) || g.Unseen[0] != bore.UnseenOvality {
		t.Errorf("three-point gauge: %v", g)
	}
	if hs := g.Planes[0].Harmonics(); hs != nil {
		t.Errorf("harmonics %v", hs)
	}
}

func TestAxesTooCloseTogether(t *testing.T) {
	g := measure(t, []bore.Reading{at(10, 0, "67 mm"), at(10, 1e-5, "67 mm"), at(10, 90, "67.1 mm")})
	if p := g.Planes[0]; p.TwoLobe != (bore.Lobes{}) || !p.HasOvality || g.Unseen[0] != bore.UnseenBetweenAxes {
		t.Errorf("%v, unseen %v", p, g.Unseen)
	}
	fs, err := g.Judge(bore.Limits{TrueOvality: mm}, noRisk)
	if must(t, fs, err)[0].Verdict != uncertainty.Undecided {
		t.Errorf("%v", fs)
	}
	// Five axes, of which two are nearly one, carry two lobes and not four.
	p := measure(t, []bore.Reading{at(10, 0, "67 mm"), at(10, 1e-5, "67 mm"), at(10, 45, "67 mm"), at(10, 90, "67.1 mm"), at(10, 135, "67 mm")}).Planes[0]
	if p.TwoLobe == (bore.Lobes{}) || p.FourLobe != (bore.Lobes{}) {
		t.Errorf("%v", p)
	}
}

func TestLayoutRefusals(t *testing.T) {
	port := bore.Port{Name: "exhaust", From: 55 * mm, To: 75 * mm, At: degrees(90), Width: degrees(40)}
	l := bore.Layout{Length: 100 * mm, Ports: []bore.Port{port}}
	for _, c := range []struct {
		r    bore.Reading
		kind bore.Kind
		want error
	}{
		{at(100, 0, "67 mm"), bore.TwoPoint, nil},
		{at(100.001, 0, "67 mm"), bore.TwoPoint, bore.ErrReading},
		{at(60, 0, "67 mm"), bore.TwoPoint, nil},
		{at(60, 90, "67 mm"), bore.TwoPoint, bore.ErrReading},
		{at(60, 270, "67 mm"), bore.TwoPoint, bore.ErrReading}, // the other anvil
		{at(60, 110, "67 mm"), bore.TwoPoint, bore.ErrReading}, // its edge belongs to it
		{at(60, 110.001, "67 mm"), bore.TwoPoint, nil},
		{at(60, -70, "67 mm"), bore.TwoPoint, bore.ErrReading},
		{at(60, 75, "67 mm"), bore.TwoPoint, bore.ErrReading}, // short of its middle
		{at(60, 69.999, "67 mm"), bore.TwoPoint, nil},
		{at(54.999, 90, "67 mm"), bore.TwoPoint, nil},
		{at(55, 90, "67 mm"), bore.TwoPoint, bore.ErrReading},
		{at(75, 90, "67 mm"), bore.TwoPoint, bore.ErrReading},
		{at(75.001, 90, "67 mm"), bore.TwoPoint, nil},
		{at(60, 270, "67 mm"), bore.ThreePoint, nil},              // anvils at 270°, 30° and 150°
		{at(60, 210, "67 mm"), bore.ThreePoint, bore.ErrReading},  // and at 90°
		{at(60, 90, "67 mm"), bore.Telescoping, bore.ErrReading},  // two ends, as two anvils
		{at(60, 100, "67 mm"), bore.Telescoping, bore.ErrReading}, //
	} {
		_, err := l.Analyse([]bore.Reading{c.r}, bore.Gauge{Kind: c.kind})
		if !errors.Is(err, c.want) {
			t.Errorf("%v, %v: %v, want %v", c.r, c.kind, err, c.want)
		}
		if c.want == bore.ErrReading && c.r.Depth < 100*mm && !strings.Contains(err.Error(), `"exhaust"`) {
			t.Errorf("%v does not name the port", err)
		}
	}
	for name, l := range map[string]bore.Layout{
		"length":           {Length: -1},
		"length too large": {Length: units.MaxLength + 1},
		"travel crossed":   {RingTop: 80 * mm, RingBottom: 10 * mm},
		"travel above":     {RingTop: -1, RingBottom: 10 * mm},
		"travel too deep":  {Length: 50 * mm, RingTop: 0, RingBottom: 51 * mm},
		"port above":       {Ports: []bore.Port{{From: -1, To: 1, Width: 1}}},
		"port crossed":     {Ports: []bore.Port{{From: 2, To: 1, Width: 1}}},
		"port too deep":    {Length: 50 * mm, Ports: []bore.Port{{From: 2, To: 51 * mm, Width: 1}}},
		"port of no width": {Ports: []bore.Port{{From: 2, To: 3}}},
		"port too wide":    {Ports: []bore.Port{{From: 2, To: 3, Width: 7}}},
		"port nowhere":     {Ports: []bore.Port{{From: 2, To: 3, Width: 1, At: units.Angle(math.NaN())}}},
	} {
		if _, err := l.Analyse([]bore.Reading{at(1, 0, "67 mm")}, bore.Gauge{}); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := l.ToRead(2, bore.TwoPoint); !errors.Is(err, units.ErrRange) {
			t.Errorf("%s: plan: %v", name, err)
		}
	}
	open := bore.Layout{Length: 50 * mm, Ports: []bore.Port{{To: 50 * mm, Width: 360 * units.Degree}}} // all of the wall
	if err := open.Validate(); err != nil {
		t.Error(err)
	}
	if _, err := open.Analyse([]bore.Reading{at(1, 0, "67 mm")}, bore.Gauge{}); !errors.Is(err, bore.ErrReading) {
		t.Errorf("a reading in a port: %v", err)
	}
	known := bore.Layout{RingBottom: 50 * mm}
	for _, axes := range []int{-1, 0, 37} {
		if _, err := known.ToRead(axes, bore.TwoPoint); !errors.Is(err, units.ErrRange) {
			t.Errorf("%d axes: %v", axes, err)
		}
	}
	if _, err := (bore.Layout{}).ToRead(2, bore.TwoPoint); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("plan without ring travel: %v", err)
	}
}

func TestBadGauges(t *testing.T) {
	warm := bore.Temperature{Value: 300}
	nan := units.Expansion(math.NaN())
	iron := material.GreyIron()
	for name, g := range map[string]bore.Gauge{
		"kind":                        {Kind: 9},
		"resolution below zero":       {Resolution: -1},
		"resolution absurd":           {Resolution: mm + 1},
		"repeatability":               {Repeatability: -1},
		"degrees of freedom":          {Repeatability: um, RepeatabilityDoF: 0.5},
		"degrees not a number":        {Repeatability: um, RepeatabilityDoF: math.NaN()},
		"degrees without end":         {Repeatability: um, RepeatabilityDoF: math.Inf(1)},
		"degrees of none":             {RepeatabilityDoF: 9},
		"standard's size":             {Standard: bore.Standard{Size: -1}},
		"standard too large":          {Standard: bore.Standard{Size: units.MaxLength + 1}},
		"standard's uncertainty":      {Standard: bore.Standard{Std: -1}},
		"dial error":                  {DialError: -1},
		"drift":                       {Drift: 2 * mm},
		"place spread":                {PlaceSpread: -1},
		"place spread not a number":   {PlaceSpread: units.TemperatureChange(math.NaN())},
		"place spread, no expansion":  {PlaceSpread: 1},
		"warm cylinder, no expansion": {PartAt: warm},
		"warm standard, no expansion": {Standard: bore.Standard{Size: mm, At: warm}},
		"warm gauge, no expansion":    {UsedAt: warm},
		"gauge warm when set":         {SetAt: warm},
		"expansion not a number":      {Part: material.Material{Expansion: nan}},
		"expansion's spread":          {Part: material.Material{Expansion: 1e-5, Within: -1}},
		"expansion absurd":            {Part: material.Material{Expansion: 0.01}},
		"temperature not a number":    {PartAt: bore.Temperature{Value: units.Temperature(math.NaN())}, Part: iron},
		"temperature endless":         {PartAt: bore.Temperature{Value: units.Temperature(math.Inf(1))}, Part: iron},
		"temperature of the sun":      {PartAt: bore.Temperature{Value: 5800}, Part: iron},
		"half-width not a number":     {PartAt: bore.Temperature{Within: units.TemperatureChange(math.NaN())}, Part: iron},
		"half-width below zero":       {PartAt: bore.Temperature{Within: -1}, Part: iron},
		"half-width endless":          {PartAt: bore.Temperature{Within: units.TemperatureChange(math.Inf(1))}, Part: iron},
		"temperature in plain °C":     {PartAt: bore.Temperature{Value: 30}, Part: iron},
	} {
		want := units.ErrRange
		switch {
		case name == "kind":
			want = units.ErrUnknownName
		case strings.Contains(name, "no expansion"), strings.HasPrefix(name, "half-width"), name == "gauge warm when set":
			want = units.ErrNotGiven
		}
		if _, err := bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, g); !errors.Is(err, want) {
			t.Errorf("%s: %v", name, err)
		}
	}
	for name, g := range map[string]bore.Gauge{
		"coarsest":           {Resolution: mm, Repeatability: mm, DialError: mm, Drift: mm},
		"fewest degrees":     {Repeatability: um, RepeatabilityDoF: 1},
		"widest spread":      {PlaceSpread: 1000, Part: iron},
		"largest of setting": {Standard: bore.Standard{Size: units.MaxLength, Std: mm}},
	} {
		if _, err := bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, g); err != nil && !errors.Is(err, units.ErrNotGiven) {
			t.Errorf("%s: %v", name, err)
		}
	}
	// 68 °F is 20 °C, whatever the last bit says.
	f, err := bore.ParseTemperature("68 °F")
	must(t, f, err)
	if _, err := bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, bore.Gauge{PartAt: f, UsedAt: f}); err != nil {
		t.Errorf("68 °F: %v", err)
	}
}

func TestDialDeviations(t *testing.T) {
	set := bore.Standard{Size: 67 * mm}
	for _, c := range []struct {
		g    bore.Gauge
		d    units.Length
		want units.Length
		err  error
	}{
		{bore.Gauge{Standard: set, Dial: bore.PlusIsLarger}, 30 * um, 67*mm + 30*um, nil},
		{bore.Gauge{Standard: set, Dial: bore.PlusIsSmaller}, 30 * um, 67*mm - 30*um, nil},
		{bore.Gauge{Standard: bore.Standard{Size: units.MaxLength}, Dial: bore.PlusIsLarger}, -um, units.MaxLength - um, nil},
		{bore.Gauge{Standard: set, Dial: bore.PlusIsLarger}, units.MaxLength - set.Size, units.MaxLength, nil},
		{bore.Gauge{Standard: set}, 30 * um, 0, units.ErrNotGiven},
		{bore.Gauge{Standard: set, Dial: 7}, 30 * um, 0, units.ErrNotGiven},
		{bore.Gauge{Dial: bore.PlusIsLarger}, 30 * um, 0, units.ErrNotGiven},
		{bore.Gauge{Standard: set, Dial: bore.PlusIsLarger}, -67 * mm, 0, bore.ErrReading},
		{bore.Gauge{Standard: set, Dial: bore.PlusIsSmaller}, math.MinInt64, 0, bore.ErrReading},
		{bore.Gauge{Standard: set, Dial: bore.PlusIsLarger}, math.MaxInt64, 0, bore.ErrReading},
		{bore.Gauge{Standard: bore.Standard{Size: math.MaxInt64}, Dial: bore.PlusIsLarger}, 1, 0, units.ErrRange},
	} {
		got, err := c.g.Diameter(c.d)
		if got != c.want || !errors.Is(err, c.err) {
			t.Errorf("%v from %v, %v: %v, %v", c.d, c.g.Standard.Size, c.g.Dial, got, err)
		}
	}
}

func TestBadLimits(t *testing.T) {
	g := measure(t, sixReadings())
	for name, l := range map[string]bore.Limits{
		"window crossed":  {New: units.Limits{Min: 67 * mm, Max: 66 * mm}},
		"service crossed": {Service: units.Limits{Min: 67 * mm, Max: 66 * mm}},
		"window below":    {Service: units.Limits{Max: -1}},
		"window too far":  {Service: units.Limits{Max: units.MaxLength + 1}},
		"ovality":         {Ovality: -1},
		"taper":           {Taper: -1},
		"spread":          {Spread: units.MaxLength + 1},
		"true ovality":    {TrueOvality: -1},
	} {
		want := units.ErrRange
		if strings.HasSuffix(name, "crossed") {
			want = units.ErrCrossed
		}
		if _, err := g.Judge(l, noRisk); !errors.Is(err, want) {
			t.Errorf("%s: %v", name, err)
		}
		if _, err := g.Coarse(l); !errors.Is(err, want) {
			t.Errorf("%s: cautions: %v", name, err)
		}
	}
	if _, err := g.Judge(bore.Limits{New: units.Limits{Min: 67 * mm, Max: 66 * mm}}, noRisk); !errors.Is(err, units.ErrCrossed) {
		t.Errorf("crossed: %v", err)
	}
	if _, err := (bore.Geometry{}).Judge(bore.Limits{}, noRisk); !errors.Is(err, bore.ErrNoReadings) {
		t.Errorf("nothing measured: %v", err)
	}
	if _, err := (bore.Geometry{}).Coarse(bore.Limits{}); !errors.Is(err, bore.ErrNoReadings) {
		t.Errorf("nothing measured: %v", err)
	}
	if fs, err := g.Judge(bore.Limits{}, noRisk); err != nil || len(fs) != 0 {
		t.Errorf("no limits: %v, %v", fs, err)
	}
}

func TestBadCleanUps(t *testing.T) {
	g := measure(t, sixReadings())
	unworn := uncertainty.Estimate{Value: 67 * mm}
	for name, c := range map[string]struct {
		w    bore.Wear
		want error
	}{
		"no unworn size":       {bore.Wear{}, units.ErrNotGiven},
		"no such plane":        {bore.Wear{UnwornAt: 50 * mm}, bore.ErrNoReadings},
		"unworn below zero":    {bore.Wear{Unworn: uncertainty.Estimate{Value: -1}}, units.ErrRange},
		"unworn above largest": {bore.Wear{Unworn: uncertainty.Estimate{Value: 68 * mm}}, units.ErrRange},
		"unworn's doubt":       {bore.Wear{Unworn: uncertainty.Estimate{Value: 67 * mm, Std: -1}}, units.ErrRange},
		"share too small":      {bore.Wear{Unworn: unworn, Share: 0.49}, units.ErrRange},
		"share too large":      {bore.Wear{Unworn: unworn, Share: 1.01}, units.ErrRange},
		"share not a number":   {bore.Wear{Unworn: unworn, Share: math.NaN()}, units.ErrRange},
		"pit above the wall":   {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: um}, {Below: -1}}}, units.ErrRange},
		"pit of no depth":      {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Depth: 10 * mm}}}, units.ErrRange},
		"pit through the wall": {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: units.Metre}}}, units.ErrRange},
		"pit above the deck":   {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: um, Depth: -1}}}, units.ErrRange},
		"pit upwards":          {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: um, Length: -1}}}, units.ErrRange},
		"pit out of the world": {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: um, Depth: mm, Length: units.MaxLength}}}, units.ErrRange},
		"pit nowhere":          {bore.Wear{Unworn: unworn, Pits: []bore.Pit{{Below: um, At: toward(math.NaN())}}}, units.ErrRange},
		"locating absurd":      {bore.Wear{Unworn: unworn, Allowances: bore.Allowances{Locating: units.Metre}}, units.ErrRange},
	} {
		if _, err := g.CleanUp(c.w); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	if _, err := (bore.Geometry{}).CleanUp(bore.Wear{Unworn: unworn}); !errors.Is(err, bore.ErrNoReadings) {
		t.Errorf("nothing measured: %v", err)
	}
	ring := func(n int, r units.Length) []bore.Point {
		ps := make([]bore.Point, n)
		for i := range ps {
			ps[i] = bore.Point{Angle: degrees(360 * float64(i) / float64(n)), Radius: r}
		}
		return ps
	}
	if c, err := bore.CleanUpRadial(ring(4, 33*mm), 0, bore.Allowances{}); err != nil || c.Worn.Min.Value != 66*mm || c.Shift != 0 {
		t.Errorf("four points: %v, %v", c, err)
	}
	for name, c := range map[string]struct {
		ps   []bore.Point
		std  units.Length
		a    bore.Allowances
		want error
	}{
		"none":               {nil, 0, bore.Allowances{}, bore.ErrNoReadings},
		"three":              {ring(3, 33*mm), 0, bore.Allowances{}, bore.ErrReading},
		"an arc":             {ring(360, 33*mm)[:200], 0, bore.Allowances{}, bore.ErrReading},
		"no radius":          {ring(4, 0), 0, bore.Allowances{}, bore.ErrReading},
		"endless radius":     {ring(4, math.MaxInt64), 0, bore.Allowances{}, bore.ErrReading},
		"angle":              {append(ring(4, mm), bore.Point{Angle: units.Angle(math.NaN()), Radius: mm}), 0, bore.Allowances{}, bore.ErrReading},
		"depth":              {append(ring(4, mm), bore.Point{Depth: -1, Radius: mm}), 0, bore.Allowances{}, bore.ErrReading},
		"doubt below zero":   {ring(4, 33*mm), -1, bore.Allowances{}, bore.ErrReading},
		"doubt absurd":       {ring(4, 33*mm), 2 * mm, bore.Allowances{}, bore.ErrReading},
		"surface below zero": {ring(4, 33*mm), 0, bore.Allowances{Surface: -1}, units.ErrRange},
	} {
		if _, err := bore.CleanUpRadial(c.ps, c.std, c.a); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, want %v", name, err, c.want)
		}
	}
	// A bore without wear cleans up at its size.
	if c, err := measure(t, []bore.Reading{at(10, 0, "67 mm")}).CleanUp(bore.Wear{Unworn: unworn}); err != nil || c.Original.Max.Value != 67*mm || c.Shift != 0 {
		t.Errorf("no wear: %v, %v", c, err)
	}
}

// TestPointsAllRound: points 90° apart, of which one lies at 0°, close to 360° or beyond it, are all round.
func TestPointsAllRound(t *testing.T) {
	for _, first := range []units.Angle{0, 0.5 * units.Degree, 360 * units.Degree, 359.5 * units.Degree, -0.5 * units.Degree, 720.5 * units.Degree} {
		var points []bore.Point
		for i := range 4 {
			points = append(points, bore.Point{Depth: 10 * mm, Angle: first + units.Angle(i)*90*units.Degree, Radius: 33*mm + 500*um})
		}
		if _, err := bore.CleanUpRadial(points, um, bore.Allowances{}); err != nil {
			t.Errorf("from %v: %v", first, err)
		}
		points[1].Angle += 2 * units.Degree // 92° from the first
		if _, err := bore.CleanUpRadial(points, um, bore.Allowances{}); !errors.Is(err, bore.ErrReading) {
			t.Errorf("from %v, with a gap of 92°: %v", first, err)
		}
	}
}

// TestDialReading: what the dial shows for a size is read back as that size, whichever way it runs and whatever is
// warm; with all at 20 °C it is the difference from the setting size.
func TestDialReading(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		warm := func(name string) bore.Temperature {
			return bore.Temperature{Value: units.ReferenceTemperature.Add(units.TemperatureChange(rapid.Float64Range(-30, 60).Draw(t, name)))}
		}
		g := bore.Gauge{
			Dial:     rapid.SampledFrom([]bore.Dial{bore.PlusIsLarger, bore.PlusIsSmaller}).Draw(t, "dial"),
			Standard: bore.Standard{Size: length(t, "standard", 30*mm, 300*mm), Material: material.GaugeSteel(), At: warm("standard at")},
			Material: material.PlainSteel(), SetAt: warm("set at"), UsedAt: warm("used at"), Part: material.AluminiumBlock(), PartAt: warm("bore at"),
		}
		want := g.Standard.Size + length(t, "over", -mm, mm)
		shows, err := g.DialReading(want)
		must(t, shows, err)
		d, err := g.Diameter(shows)
		must(t, d, err)
		geometry, err := bore.Analyse([]bore.Reading{{Diameter: d}}, g)
		if got := must(t, geometry, err).Largest.Size.Value; (got - want).Abs() > 2 {
			t.Fatalf("%v is read back as %v", want, got)
		}
		g.Standard.At, g.SetAt, g.UsedAt, g.PartAt = bore.Temperature{}, bore.Temperature{}, bore.Temperature{}, bore.Temperature{}
		if shows, err = g.DialReading(want); g.Dial == bore.PlusIsSmaller {
			shows = -shows
		}
		if err != nil || shows != want-g.Standard.Size {
			t.Fatalf("cold: %v for %v on %v, %v", shows, want, g.Standard.Size, err)
		}
	})
	good := bore.Gauge{Dial: bore.PlusIsLarger, Standard: bore.Standard{Size: 67 * mm}}
	noDial, noStandard, half := good, good, good
	noDial.Dial, noStandard.Standard.Size, half.UsedAt = 0, 0, bore.Temperature{Value: units.MustParseTemperature("30 °C")}
	for name, c := range map[string]struct {
		g    bore.Gauge
		d    units.Length
		want error
	}{
		"no dial":            {noDial, 67 * mm, units.ErrNotGiven},
		"no standard":        {noStandard, 67 * mm, units.ErrNotGiven},
		"half warm":          {half, 67 * mm, units.ErrNotGiven},
		"no diameter":        {good, 0, units.ErrNotGiven},
		"diameter below":     {good, -mm, units.ErrRange},
		"diameter too large": {good, units.MaxLength + 1, units.ErrRange},
	} {
		if shows, err := c.g.DialReading(c.d); !errors.Is(err, c.want) {
			t.Errorf("%s: %v, %v", name, shows, err)
		}
	}
}
