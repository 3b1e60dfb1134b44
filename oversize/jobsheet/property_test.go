// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"reflect"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// tenths draws a length that is whole in inch and metric text: a multiple of 0.0001 in.
func tenths(t *rapid.T, name string, lo, hi units.Length) units.Length {
	return units.Length(rapid.IntRange(int(lo/units.Tenth), int(hi/units.Tenth)).Draw(t, name)) * units.Tenth
}

// drawJob draws a job that ReadJob takes: a worn engine of one to three cylinders, its gauge at
// 20 °C unless warm.
func drawJob(t *rapid.T, warm bool) jobsheet.Job {
	const um, mm = units.Micrometre, units.Millimetre
	nominal := tenths(t, "bore", 40*mm, 120*mm)
	n := rapid.IntRange(1, 3).Draw(t, "cylinders")
	// Read warm, a bore may look 0.15 mm smaller than it is, and none may be smaller than new.
	least := units.Length(0)
	if warm {
		least = 60 * units.Tenth
	}
	j := jobsheet.Job{
		Units: rapid.SampledFrom([]jobsheet.Shown{jobsheet.Millimetres, jobsheet.Inches, jobsheet.BothUnits}).Draw(t, "units"),
		Engine: jobsheet.Engine{
			Cylinders: n, Cycle: rapid.SampledFrom([]jobsheet.Cycle{jobsheet.TwoStroke, jobsheet.FourStroke}).Draw(t, "cycle"),
			Bore: nominal, Stroke: tenths(t, "stroke", 40*mm, 120*mm),
			Wall:             rapid.SampledFrom([]oversize.Wall{oversize.BareIron, oversize.IronSleeve, oversize.Plated, oversize.BareAlSi}).Draw(t, "wall"),
			CompressionRatio: 8,
			Limits: jobsheet.Limits{
				NewBore: units.Limits{Min: nominal, Max: nominal + 8*units.Tenth},
				Service: nominal + least + tenths(t, "service", 30*um, 300*um),
				Ovality: tenths(t, "ovality", 10*um, 100*um), Taper: tenths(t, "taper", 10*um, 150*um),
				GreatestLessLeast: tenths(t, "spread", 10*um, 200*um),
				PistonClearance:   units.Limits{Min: 10 * units.Tenth, Max: 30 * units.Tenth},
			},
			Rings:     []jobsheet.Ring{{Name: "top", Gap: units.Limits{Min: 100 * units.Tenth, Max: 200 * units.Tenth}, GapLimit: 400 * units.Tenth}},
			Oversizes: []jobsheet.Oversize{{Over: 100 * units.Tenth}, {Over: 200 * units.Tenth}},
		},
		Gauge: jobsheet.Gauge{
			// Known, and never less than the repeats scatter: with the few degrees of freedom of
			// repeats the remedies of ranges cost milliseconds each.
			Resolution: units.Tenth, Repeatability: tenths(t, "repeatability", units.Tenth, 10*um),
			Standard: jobsheet.Standard{Size: nominal, Uncertainty: units.Tenth},
		},
		Tools: jobsheet.Tools{
			Hone:   rapid.SampledFrom([]hone.Kind{hone.BallType, hone.BrushType, hone.RigidStone}).Draw(t, "hone"),
			Stroke: tenths(t, "hone stroke", 50*mm, 150*mm),
		},
	}
	temperature := func(name string) bore.Temperature {
		if !warm {
			return bore.Temperature{Value: units.ReferenceTemperature}
		}
		c, _ := units.Celsius(float64(rapid.IntRange(5, 40).Draw(t, name)))
		return bore.Temperature{Value: c, Within: units.TemperatureChange(rapid.IntRange(0, 5).Draw(t, name+" within"))}
	}
	j.Gauge.Temperatures = jobsheet.Temperatures{
		Standard: temperature("standard"), GaugeSet: temperature("set"), GaugeUsed: temperature("used"), Cylinder: temperature("cylinder"),
	}
	for i := range n {
		c := jobsheet.Cylinder{
			Name:   fmt.Sprint(i + 1),
			Piston: jobsheet.Piston{Size: nominal - tenths(t, "clearance", 20*um, 120*um)},
			Rings:  []jobsheet.RingGap{{Ring: "top", Gap: tenths(t, "gap", 100*um, 900*um), Bore: nominal}},
		}
		for d := range rapid.IntRange(1, 3).Draw(t, "depths") {
			for a := range rapid.IntRange(1, 4).Draw(t, "axes") {
				wear := least + tenths(t, "wear", 0, 350*um)
				for range rapid.IntRange(1, 2).Draw(t, "repeats") {
					c.Readings = append(c.Readings, jobsheet.Reading{
						Depth:    units.Length(d+1) * 300 * units.Thou,
						Axis:     jobsheet.Axis{Angle: units.Angle(a*45) * units.Degree},
						Diameter: nominal + wear + tenths(t, "scatter", 0, units.Tenth),
					})
				}
			}
		}
		j.Cylinders = append(j.Cylinders, c)
	}
	if rapid.Bool().Draw(t, "goes on") {
		goOn(t, &j, temperature)
	}
	return j
}

// goOn draws what a job holds further on in the work: layout, cuts, tools, honing passes, proof.
func goOn(t *rapid.T, j *jobsheet.Job, temperature func(string) bore.Temperature) {
	const um, mm = units.Micrometre, units.Millimetre
	moment := func(text string) (m jobsheet.Moment) {
		if err := m.UnmarshalText([]byte(text)); err != nil {
			t.Fatal(err)
		}
		return m
	}
	e := &j.Engine
	e.Layout = bore.Layout{Length: 4000 * units.Thou, RingTop: 100 * units.Thou, RingBottom: tenths(t, "ring bottom", 500*units.Thou, 3500*units.Thou)}
	e.Running = jobsheet.Running{Ring: temperature("ring running"), Bore: temperature("bore running"), Piston: temperature("piston running")}
	e.HoningAllowance = tenths(t, "allowance", 20*um, 100*um)
	e.Oversizes[0].Piston = jobsheet.Piston{Size: e.Bore + e.Oversizes[0].Over - 20*units.Tenth}
	e.Oversizes[1].Piston = jobsheet.Piston{Size: e.Bore + e.Oversizes[1].Over - 20*units.Tenth}
	j.Survey = jobsheet.Survey{On: moment("2026-03-14"), By: "somebody", Clamping: jobsheet.Free}
	j.Proof = jobsheet.Proof{On: moment("2026-03-15 09:30"), Temperatures: j.Gauge.Temperatures}
	if e.Wall == oversize.BareIron || e.Wall == oversize.IronSleeve {
		j.Cuts = jobsheet.Cuts{MostDepth: 60 * units.Tenth, FinishBore: 20 * units.Tenth, Locating: tenths(t, "locating", 0, 20*um), Warm: units.MustParseTemperature("35 °C")}
	}
	j.Tools.ToolLength, j.Tools.Stroke = 2000*units.Thou, 0
	j.Tools.RoomTop, j.Tools.RoomBottom = 1000*units.Thou, 1000*units.Thou
	j.Tools.Crosshatch = hone.MustParseCrosshatch("45° included")
	var err error
	if j.Tools.Spindle, err = hone.ParseSpindleRange("60 to 400 rev/min"); err != nil {
		t.Fatal(err)
	}
	if j.Tools.Stroking, err = hone.ParseStrokingRange("30 to 60 cycles/min"); err != nil {
		t.Fatal(err)
	}
	j.Tools.Pressing, j.Tools.Lines, j.Tools.LineWidth = hone.ConstantForce, 4, 100*units.Thou
	for i := range j.Cylinders {
		c := &j.Cylinders[i]
		c.WearShare = rapid.SampledFrom([]float64{0, 0.5, 0.75, 1}).Draw(t, "share")
		c.ThinnestWall = tenths(t, "wall", 2*mm, 8*mm)
		switch rapid.IntRange(0, 2).Draw(t, "how far") {
		case 1:
			size := e.Bore + tenths(t, "start", 150*um, 400*um)
			c.Honing.Start = jobsheet.HonedSize{Diameter: size, At: units.ReferenceTemperature}
			for range rapid.IntRange(0, 3).Draw(t, "passes") {
				size += tenths(t, "pass", 3*um, 20*um)
				c.Honing.Passes = append(c.Honing.Passes, jobsheet.Pass{
					Lasts: jobsheet.Duration{Duration: 20 * time.Second}, After: jobsheet.HonedSize{Diameter: size, At: units.ReferenceTemperature},
				})
			}
		case 2:
			size := e.Bore + tenths(t, "finished", 250*um, 550*um)
			for _, r := range c.Readings {
				r.Diameter = size + tenths(t, "form", 0, 10*um)
				c.Proof = append(c.Proof, r)
			}
			c.Crosshatch = hone.MustParseCrosshatch("40° included")
			c.Rings[0].Finished = tenths(t, "finished gap", 200*um, 700*um)
		}
	}
}

func plan(t interface{ Fatal(...any) }, j jobsheet.Job) jobsheet.Sheet {
	s, err := jobsheet.Plan(j)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

func asJSON(t interface{ Fatal(...any) }, v any) string {
	b, err := json.Marshal(v)
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestJobSurvivesJSON: a job written and read again is the same, and so is its sheet.
func TestJobSurvivesJSON(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		var b bytes.Buffer
		if err := j.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		back, err := jobsheet.ReadJob(&b)
		if err != nil {
			t.Fatal(err)
		}
		if asJSON(t, back) != asJSON(t, j) {
			t.Fatalf("job changed:\n%s\n%s", asJSON(t, j), asJSON(t, back))
		}
		s := plan(t, back)
		if err := s.WriteJSON(&b); err != nil {
			t.Fatal(err)
		}
		again, err := jobsheet.ReadSheet(&b)
		if err != nil {
			t.Fatal(err)
		}
		if asJSON(t, again) != asJSON(t, s) {
			t.Fatalf("sheet changed:\n%s\n%s", asJSON(t, s), asJSON(t, again))
		}
		var one, two bytes.Buffer
		if err := s.WriteText(&one); err != nil {
			t.Fatal(err)
		}
		if err := again.WriteText(&two); err != nil {
			t.Fatal(err)
		}
		if one.String() != two.String() {
			t.Fatalf("text changed:\n%s\n%s", one.String(), two.String())
		}
	})
}

// TestOtherUnitSameSheet: the job restated in inches gives the same sheet.
func TestOtherUnitSameSheet(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		var tree any
		if err := json.Unmarshal([]byte(asJSON(t, j)), &tree); err != nil {
			t.Fatal(err)
		}
		text := asJSON(t, inInches(tree))
		if strings.Contains(text, " mm") {
			t.Fatalf("still metric: %s", text)
		}
		back, err := jobsheet.ReadJob(strings.NewReader(text))
		if err != nil {
			t.Fatal(err)
		}
		if got, want := asJSON(t, plan(t, back)), asJSON(t, plan(t, j)); got != want {
			t.Fatalf("in inches\n%s\nin millimetres\n%s", got, want)
		}
	})
}

// inInches rewrites every length in a JSON tree in inches.
func inInches(v any) any {
	switch v := v.(type) {
	case map[string]any:
		for k := range v {
			v[k] = inInches(v[k])
		}
	case []any:
		for i := range v {
			v[i] = inInches(v[i])
		}
	case string:
		if l, err := units.ParseLength(v); err == nil {
			return l.Decimal(units.Inch).String() + " in"
		}
		if w, err := units.ParseLimits(v); err == nil {
			return w.Min.Decimal(units.Inch).String() + " in to " + w.Max.Decimal(units.Inch).String() + " in"
		}
	}
	return v
}

// TestOrderOfReadings: the order in which places were read changes nothing.
func TestOrderOfReadings(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		want := plan(t, j)
		for i := range j.Cylinders {
			j.Cylinders[i].Readings = rapid.Permutation(j.Cylinders[i].Readings).Draw(t, "order")
		}
		got := plan(t, j)
		got.Job = want.Job
		if asJSON(t, got) != asJSON(t, want) {
			t.Fatalf("order changed the sheet:\n%s\n%s", asJSON(t, got), asJSON(t, want))
		}
	})
}

// TestTurningTheAxes: turning all axes by one angle turns directions and nothing else.
func TestTurningTheAxes(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		want := plan(t, j)
		turn := units.Angle(rapid.IntRange(-360, 360).Draw(t, "turn")) * units.Degree
		for i := range j.Cylinders {
			rs := append([]jobsheet.Reading(nil), j.Cylinders[i].Readings...)
			for k := range rs {
				rs[k].Axis.Angle += turn
			}
			j.Cylinders[i].Readings = rs
		}
		got := plan(t, j)
		if a, b := decisions(got), decisions(want); a != b {
			t.Fatalf("turned by %v:\n%q\n%q", turn, a, b)
		}
	})
}

// decisions lists what a sheet decides, without directions.
func decisions(s jobsheet.Sheet) string {
	var b strings.Builder
	for i, c := range s.Cylinders {
		g := c.Bore
		fmt.Fprintln(&b, g.Largest.Size, g.Smallest.Size, g.Ovality, g.Taper.Size.Value.Abs(), g.Spread, g.Shape)
		for _, f := range c.Findings {
			subject, _, _ := strings.Cut(f.Subject, ",")
			fmt.Fprintln(&b, subject, f.Measured.Value.Abs(), f.Verdict, f.Conform)
		}
		fmt.Fprintln(&b, s.Choice.Cylinders[i].Route, s.Choice.Cylinders[i].Over, s.Choice.Cylinders[i].Finish, c.Rings)
	}
	return b.String()
}

// TestLargerByDelta: at 20 °C, δ on every reading moves the sizes by δ and no form.
func TestLargerByDelta(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, false)
		before := plan(t, j)
		delta := tenths(t, "delta", 0, 200*units.Micrometre)
		for i := range j.Cylinders {
			rs := append([]jobsheet.Reading(nil), j.Cylinders[i].Readings...)
			for k := range rs {
				rs[k].Diameter += delta
			}
			j.Cylinders[i].Readings = rs
		}
		after := plan(t, j)
		for i := range before.Cylinders {
			a, b := after.Cylinders[i].Bore, before.Cylinders[i].Bore
			for _, d := range []units.Length{a.Largest.Size.Value - b.Largest.Size.Value, a.Smallest.Size.Value - b.Smallest.Size.Value, a.Mean.Value - b.Mean.Value} {
				if d != delta {
					t.Fatalf("a size moved by %v, want %v", d, delta)
				}
			}
			if a.Ovality != b.Ovality || !reflect.DeepEqual(a.Tapers, b.Tapers) || a.Spread != b.Spread || a.Shape != b.Shape {
				t.Fatalf("the form changed: %+v, %+v", a, b)
			}
		}
	})
}

// TestRaisingALimit: a higher upper limit never makes a finding worse.
func TestRaisingALimit(t *testing.T) {
	rank := map[uncertainty.Verdict]int{uncertainty.Within: 0, uncertainty.Undecided: 1, uncertainty.Beyond: 2}
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		before := plan(t, j)
		more := tenths(t, "more", 0, 300*units.Micrometre)
		l := &j.Engine.Limits
		for _, m := range []*units.Length{&l.Service, &l.Ovality, &l.Taper, &l.GreatestLessLeast} {
			if rapid.Bool().Draw(t, "raise") {
				*m += more
			}
		}
		after := plan(t, j)
		for i := range before.Cylinders {
			for k, f := range before.Cylinders[i].Findings {
				if g := after.Cylinders[i].Findings[k]; rank[g.Verdict] > rank[f.Verdict] {
					t.Fatalf("%s: %v against %v became %v against %v", f.Subject, f.Verdict, f.Limits, g.Verdict, g.Limits)
				}
			}
		}
	})
}

// TestPlatedIsNeverCut: plated and bare aluminium-silicon walls go to the maker's process alone.
func TestPlatedIsNeverCut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		s := plan(t, j)
		forbids := j.Engine.Wall == oversize.Plated || j.Engine.Wall == oversize.BareAlSi
		for _, c := range s.Choice.Cylinders {
			if forbids != (c.Route == oversize.MakersProcess) {
				t.Fatalf("wall %v, route %v", j.Engine.Wall, c.Route)
			}
		}
		if forbids && s.Honing.Stroke != 0 {
			t.Fatal("a hone is set up for a wall that is never honed")
		}
	})
}

// TestUndecidedSaysSo: where anything is undecided the text says not to reassemble on it, and
// keeping never rests on an undecided finding.
func TestUndecidedSaysSo(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		j := drawJob(t, true)
		s := plan(t, j)
		undecided := s.Choice.Route == oversize.Undecided
		for i, c := range s.Cylinders {
			for _, f := range c.Findings {
				if f.Verdict != uncertainty.Undecided {
					continue
				}
				undecided = true
				if cc := s.Choice.Cylinders[i]; cc.Route == oversize.HoneAndKeep && cc.Work != oversize.Correct && f.Limit != bore.LimitNew {
					t.Fatalf("kept on an undecided finding: %+v", f)
				}
			}
		}
		var b bytes.Buffer
		if err := s.WriteText(&b); err != nil {
			t.Fatal(err)
		}
		if undecided && !strings.Contains(b.String(), "do not reassemble on this") {
			t.Fatalf("undecided, and the sheet does not say so:\n%s", b.String())
		}
	})
}
