// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
)

// edited returns a text with each pair of old and new replaced once.
func edited(t *testing.T, text string, pairs ...string) string {
	t.Helper()
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(text, pairs[i]) {
			t.Fatalf("no %q in the job", pairs[i])
		}
		text = strings.Replace(text, pairs[i], pairs[i+1], 1)
	}
	return text
}

func reasons(c oversize.CylinderChoice) []oversize.Reason {
	var rs []oversize.Reason
	for _, r := range c.Refused {
		rs = append(rs, r.Reason)
	}
	return rs
}

func asText(t *testing.T, s jobsheet.Sheet) string {
	t.Helper()
	var b bytes.Buffer
	if err := s.WriteText(&b); err != nil {
		t.Fatal(err)
	}
	return b.String()
}

// kept is the small job, its bore little worn and read at 20 °C: it is kept.
func kept(t *testing.T) string {
	return edited(t, small, "67.051 mm", "67.012 mm", `"10 to 25 °C"`, `"20 °C"`,
		`"resolution": "0.001 mm"`, `"resolution": "0.001 mm", "repeatability": "0.0005 mm"`)
}

// TestFieldsTakePart: each field of a job that decides anything reaches the room that decides.
func TestFieldsTakePart(t *testing.T) {
	base := kept(t)
	if s := read(t, base); s.Choice.Route != oversize.HoneAndKeep {
		t.Fatalf("the base is not kept: %v", s.Choice.Cylinders[0].Refused)
	}
	has := func(r oversize.Reason) func(*testing.T, jobsheet.Sheet) bool {
		return func(t *testing.T, s jobsheet.Sheet) bool { return slices.Contains(reasons(s.Choice.Cylinders[0]), r) }
	}
	for _, c := range []struct {
		name  string
		pairs []string
		holds func(*testing.T, jobsheet.Sheet) bool
	}{
		{"a pit is no case for deglazing", []string{`"name": "1",`, `"name": "1", "pit": "0.05 mm",`}, has(oversize.ScoreLeft)},
		{"a pit goes into the clean-up", []string{`"name": "1",`, `"name": "1", "pit": "0.05 mm",`}, func(t *testing.T, s jobsheet.Sheet) bool {
			plain := read(t, base).Cylinders[0].CleanUp.Original.Greatest.Value
			return s.Cylinders[0].CleanUp.Original.Greatest.Value-plain == 100*units.Micrometre
		}},
		{"a piston is for the size its cylinder stands at", []string{`"name": "1",`, `"name": "1", "over": "0.25 mm",`,
			"66.972 mm", "67.222 mm", "67.012 mm", "67.262 mm", "67.010 mm", "67.260 mm"}, func(t *testing.T, s jobsheet.Sheet) bool {
			return s.Choice.Route == oversize.HoneAndKeep && s.Choice.Over == units.Millimetre/4 && len(s.Cylinders[0].Clearances) == 2
		}},
		{"rigid stones correct what a ball-type hone cannot", []string{`"service": "67.1 mm",`, `"service": "67.1 mm", "taper": "0.005 mm",`,
			`"axis": "pin", "diameter": "67.010 mm"`, `"axis": "thrust", "diameter": "67.000 mm"`,
			`"piston_clearance": "0.025 to 0.045 mm"`, `"piston_clearance": "0.025 to 0.075 mm"`}, has(oversize.NoRigidHone)},
		{"and they do", []string{`"service": "67.1 mm",`, `"service": "67.1 mm", "taper": "0.005 mm", "ovality": "0.05 mm",`,
			`"axis": "pin", "diameter": "67.010 mm"`, `"axis": "thrust", "diameter": "67.000 mm"`, "ball-type hone", "rigid-stone hone",
			`"piston_clearance": "0.025 to 0.045 mm"`, `"piston_clearance": "0.025 to 0.075 mm"`}, func(t *testing.T, s jobsheet.Sheet) bool {
			return !has(oversize.NoRigidHone)(t, s)
		}},
		{"a worn clearance keeps what a fresh one would not", []string{"66.972 mm", "66.960 mm",
			`"piston_clearance"`, `"worn_clearance": "0.12 mm", "piston_clearance"`}, func(t *testing.T, s jobsheet.Sheet) bool {
			without := read(t, edited(t, base, "66.972 mm", "66.960 mm"))
			return s.Choice.Route == oversize.HoneAndKeep && without.Choice.Route != oversize.HoneAndKeep
		}},
		{"a gasket's hole bars a larger bore", []string{`"wall": "bare iron",`, `"wall": "bare iron", "gasket_hole": "67.2 mm",`,
			`"67.1 mm"`, `"67.0195 mm"`, "67.012 mm", "67.035 mm"}, has(oversize.GasketHole)},
		{"peeling plating is said", []string{"bare iron", "plated", `"name": "1",`, `"name": "1", "peeling": true,`}, has(oversize.Peeling)},
		{"the standard has a temperature of its own", []string{`"standard": "21 °C"`, `"standard": "31 °C"`}, func(t *testing.T, s jobsheet.Sheet) bool {
			// 67.002 mm of gauge steel, 11.5e-6/K, 10 K warmer: the bore is 7.7 µm larger.
			d := s.Cylinders[0].Bore.Mean.Value - read(t, base).Cylinders[0].Bore.Mean.Value
			return d.Format(units.Micrometre, 1) == "7.7 µm"
		}},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := read(t, edited(t, base, c.pairs...))
			if !c.holds(t, s) {
				t.Errorf("route %v, refused for %v", s.Choice.Route, reasons(s.Choice.Cylinders[0]))
			}
		})
	}
}

// TestOwnSizes: cylinders share a size unless the job says otherwise.
func TestOwnSizes(t *testing.T) {
	shared := string(demo(t))
	// The second cylinder worn little enough for the first step.
	for _, d := range []string{"78.118", "78.110", "78.084", "78.072", "78.066", "78.050"} {
		shared = edited(t, shared, d, "78.060")
	}
	a := read(t, shared).Choice
	b := read(t, edited(t, shared, `"honing_allowance"`, `"own_sizes": true, "honing_allowance"`)).Choice
	if a.Cylinders[0].Over != a.Cylinders[1].Over || b.Cylinders[0].Over == b.Cylinders[1].Over {
		t.Errorf("shared %v and %v, own %v and %v", a.Cylinders[0].Over, a.Cylinders[1].Over, b.Cylinders[0].Over, b.Cylinders[1].Over)
	}
}

// TestNoCutsWhileASharedSizeIsOpen: while one cylinder is undecided no other is told what to cut.
func TestNoCutsWhileASharedSizeIsOpen(t *testing.T) {
	demoOpen := read(t, edited(t, string(demo(t)), `"thinnest_wall": "5.4 mm",
      "wall_uncertainty": "0.2 mm"`, `"pit": "0.01 mm"`))
	// The second cylinder of the small job stands on its service limit, the first well inside it.
	second := read(t, edited(t, kept(t), `"cylinders": 1`, `"cylinders": 2`, `"cylinders": [{`, `"cylinders": [{
    "name": "2", "piston": {"size": "67.060 mm"},
    "readings": [{"depth": "10 mm", "axis": "thrust", "diameter": "67.100 mm"}, {"depth": "10 mm", "axis": "pin", "diameter": "67.098 mm"}]
  }, {`))
	for _, s := range []jobsheet.Sheet{demoOpen, second} {
		if s.Choice.Route != oversize.Undecided || !s.Undecided() {
			t.Fatalf("route %v", s.Choice.Route)
		}
		text := asText(t, s)
		for _, c := range s.Cylinders {
			if len(c.Stock) > 0 {
				t.Errorf("%s: cuts are told: %v", c.Name, c.Stock)
			}
		}
		if strings.Contains(text, "FINISH SIZES") || !strings.Contains(text, "do not reassemble on this") {
			t.Errorf("finish sizes are told, or it does not say that it is undecided:\n%s", text)
		}
	}
	if text := asText(t, second); !strings.Contains(text, "Cylinder 1: waits for the others") {
		t.Errorf("the sound cylinder does not wait:\n%s", text)
	}
}

// TestRiskOfHoning: the risk of the job is the risk of running past the stop size.
func TestRiskOfHoning(t *testing.T) {
	n := read(t, string(demo(t))).Cylinders[0].Pass
	m := read(t, edited(t, string(demo(t)), `"tools": {`, `"risk": {"accept": 0.2}, "tools": {`)).Cylinders[0].Pass
	if m.Risk <= n.Risk {
		t.Errorf("risk %v at 0.05, %v at 0.2", n.Risk, m.Risk)
	}
}

// TestSlip: more slip wants more heat.
func TestSlip(t *testing.T) {
	job := sleeveJob(t)
	tight, wide := read(t, job).Sleeve.Heat, read(t, edited(t, job, `"slip": "0.05 mm"`, `"slip": "0.10 mm"`)).Sleeve.Heat
	if wide.Barrel.Celsius() < tight.Barrel.Celsius()+20 {
		t.Errorf("%v for 0.05 mm, %v for 0.10 mm", tight.Barrel, wide.Barrel)
	}
}

// TestWhichRatio: a ratio over the full stroke of a two-stroke is said to be one, where there is a ratio.
func TestWhichRatio(t *testing.T) {
	const note = "over the full stroke, not from where the exhaust port closes"
	base := edited(t, kept(t), "four-stroke", "two-stroke")
	if !strings.Contains(asText(t, read(t, base)), note) {
		t.Error("not said")
	}
	if strings.Contains(asText(t, read(t, edited(t, base, `"compression_ratio": 9.0`, `"gasket_hole": "70 mm"`))), note) {
		t.Error("said of no ratio")
	}
}

// TestLimitsArePrintedInward: what is printed never allows more than the maker does: 0.0508 mm is
// printed as max 0.050 mm, 2.0011 thou as less than 0.00201 in.
func TestLimitsArePrintedInward(t *testing.T) {
	base := edited(t, kept(t), `"service": "67.1 mm",`, `"service": "67.1 mm", "greatest_less_least": "2 thou",`)
	metric := asText(t, read(t, edited(t, base, `"engine": {`, `"units": "mm", "engine": {`)))
	if !strings.Contains(metric, "max 0.050 mm") || strings.Contains(metric, "max 0.051 mm") {
		t.Errorf("not inward:\n%s", metric)
	}
	inch := asText(t, read(t, edited(t, base, `"engine": {`, `"units": "in", "engine": {`, `"2 thou"`, `"0.0510 mm"`)))
	if !strings.Contains(inch, "max 0.00200 in") { // 0.0510 mm is 0.002008 in
		t.Errorf("not inward:\n%s", inch)
	}
}
