// SPDX-License-Identifier: BSD-3-Clause

package jobsheet_test

import (
	"bytes"
	"os"
	"strings"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/oversize"
	"borewright.example/oversize/jobsheet"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func read(t *testing.T, text string) jobsheet.Sheet {
	t.Helper()
	j, err := jobsheet.ReadJob(strings.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return plan(t, j)
}

// TestHoningOnTheSheet: the passes made so far give the next one, corrected for temperature:
// aluminium at 45 °C is 0.036 mm larger than at 20 °C in a bore of 67 mm (21.5e-6/K, Callister,
// table B.6), here grey iron by 0.019 mm.
func TestHoningOnTheSheet(t *testing.T) {
	s := read(t, string(demo(t)))
	n := s.Cylinders[0].Pass
	if n.Decision != hone.GoOn || n.Lasts <= 0 || n.Then.Value > 78515*units.Micrometre {
		t.Errorf("%+v", n)
	}
	// 78.456 mm shown by a gauge set at 22 °C on a ring of 78.003 mm that is 1.79 µm larger then, the gauge
	// itself growing by 0.90 µm to 23 °C, both 11.5e-6/K: the wall at 27 °C is 78.4587 mm; iron at 11.2e-6/K is
	// 6.15 µm smaller at 20 °C.
	if got := n.Size.Value.Format(units.Millimetre, 4); got != "78.4525 mm" {
		t.Errorf("size at 20 °C %s", got)
	}
	if s.Cylinders[1].Pass.Size.Value != 0 {
		t.Error("a next pass where no honing has begun")
	}
	r := s.Honing.Removal
	if r.Top != r.Bottom || r.Middle <= r.Top || r.Straightness <= 0 {
		t.Errorf("%+v", r)
	}
}

// TestHoningReadsAsTheSurveyDoes: what the gauge shows in a hot shop comes to the same size, whether the
// survey or the honing wrote it down.
func TestHoningReadsAsTheSurveyDoes(t *testing.T) {
	hot := string(demo(t))
	for _, at := range []string{"22 ± 1 °C", "23 ± 1 °C", "24 ± 1 °C"} {
		hot = strings.ReplaceAll(hot, `"`+at+`"`, `"35 °C"`)
	}
	passes := strings.Index(hot, `"start"`)
	hot = hot[:passes] + `"start": {"diameter": "78.166 mm", "at": "35 °C"}}` + hot[passes+strings.Index(hot[passes:], `,
      "thinnest_wall"`):]
	s := read(t, hot)
	if survey, now := s.Cylinders[0].Bore.Largest.Size.Value, s.Cylinders[0].Pass.Size.Value; survey != now {
		t.Errorf("78.166 mm as shown is %v by the survey and %v by the honing", survey, now)
	}
}

// TestHotGap: the demo's rings at 180 °C in a bore at 120 °C, both 11.2e-6/K, lose
// π·78.5025 mm·11.2e-6/K·60 K = 0.1657 mm (the formula of package rings, by hand).
func TestHotGap(t *testing.T) {
	s := read(t, string(demo(t)))
	for _, r := range s.Cylinders[0].Rings {
		cold := r.Filing.After()
		if got := (cold.Value - r.Hot.Value).Format(units.Millimetre, 3); got != "0.166 mm" {
			t.Errorf("%s: the gap closes by %s", r.Ring, got)
		}
	}
	butts := read(t, strings.Replace(string(demo(t)), `"ring": "180 ± 20 °C"`, `"ring": "300 °C"`, 1))
	var text bytes.Buffer
	if err := butts.WriteText(&text); err != nil {
		t.Fatal(err)
	}
	if butts.Cylinders[0].Rings[0].Hot.Value >= 0 || !strings.Contains(text.String(), "THE ENDS BUTT") {
		t.Error("ends that butt are not said to")
	}
}

func sleeveJob(t *testing.T) string {
	t.Helper()
	b, err := os.ReadFile("../../examples/refresh/jobs/sleeve-loose.json")
	if err != nil {
		t.Fatal(err)
	}
	return string(b)
}

// TestSleeveOnTheSheet: H7 with s6 at 73 mm is 0.029 to 0.078 mm of interference (ISO 286 as printed
// in machine-drawing tables), and a joint asked for without its parts is left out by name.
func TestSleeveOnTheSheet(t *testing.T) {
	b := sleeveJob(t)
	v := read(t, b).Sleeve
	if v == nil {
		t.Fatal("no sleeve")
	}
	if i := v.Joint.Interference; i.Least != 29*units.Micrometre || i.Greatest != 78*units.Micrometre {
		t.Errorf("interference %v", i)
	}
	// 0.078 + 0.05 mm over 73 mm at 21.5e-6/K is 82 K; the block's coefficient and its spread may take 75 to 95.
	if c := v.Heat.Barrel.Celsius(); c < 95 || c > 115 || v.Heat.Slips != uncertainty.Within {
		t.Errorf("heated to %.0f °C: %v", c, v.Heat.Slips)
	}
	if v.Running.Pressure.Least != 0 || v.Loosens.Hot.Least.IsZero() {
		t.Errorf("an iron sleeve in hot aluminium can come loose: %+v", v.Loosens)
	}
	without := strings.Replace(b, `"hole": "H7",
      "shaft": "s6",`, `"interference": "0.050 to 0.060 mm",`, 1)
	if got := read(t, without).Sleeve.Joint.Interference.Least; got != 50*units.Micrometre {
		t.Errorf("interference given as such: %v", got)
	}
	i, k := strings.Index(b, `"sleeve": {`), strings.Index(b, `"finish": "67.010 mm"`)
	none := b[:i] + `"own_sizes": false` + strings.TrimPrefix(b[k:], "\"finish\": \"67.010 mm\"\n    }")
	s := read(t, none)
	if s.Sleeve != nil || len(s.Omitted) == 0 || !strings.Contains(s.Omitted[len(s.Omitted)-1].Why+s.Omitted[0].Why, "engine.sleeve") {
		t.Errorf("%+v", s.Omitted)
	}
}

// TestFollows: a ring follows a deglazed bore or not by its section; a bored one is not asked.
func TestFollows(t *testing.T) {
	job := with(t, `"gap_limit": "1 mm"`, `"gap_limit": "1 mm", "thickness": "2.7 mm", "height": "1.5 mm", "free_gap": "8.3 mm"`)
	job = strings.Replace(job, `"readings": [
      {"depth": "10 mm", "axis": "thrust", "diameter": "67.051 mm"},
      {"depth": "90 mm", "axis": "pin", "diameter": "67.010 mm"}`, `"readings": [
      {"depth": "10 mm", "axis": "thrust", "diameter": "67.010 mm"}, {"depth": "10 mm", "axis": "60°", "diameter": "67.006 mm"},
      {"depth": "10 mm", "axis": "120°", "diameter": "67.006 mm"}`, 1)
	job = strings.Replace(job, `"10 to 25 °C"`, `"20 °C"`, 1)
	job = strings.Replace(job, `"resolution": "0.001 mm"`, `"resolution": "0.001 mm", "repeatability": "0.001 mm"`, 1)
	s := read(t, job)
	if s.Choice.Route != oversize.HoneAndKeep {
		t.Fatalf("route %v: %v", s.Choice.Route, s.Choice.Cylinders[0].Refused)
	}
	f := s.Cylinders[0].Rings[0].Follows
	if f == nil || f.Verdict != uncertainty.Within || f.Derived.Used <= 0 || f.Derived.Used >= 1 {
		t.Fatalf("%+v; left out: %v", f, s.Omitted)
	}
	for _, r := range read(t, string(demo(t))).Cylinders[0].Rings {
		if r.Follows != nil {
			t.Error("asked of a bore that is going to be cut")
		}
	}
}
