// SPDX-License-Identifier: BSD-3-Clause

package surface_test

import (
	"encoding/json"
	"errors"
	"math"
	"strings"
	"testing"

	"borewright.example/bore/surface"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func refused(t *testing.T, what string, err error, want error) {
	t.Helper()
	if !errors.Is(err, want) {
		t.Errorf("%s: %v, want %v", what, err, want)
	}
}

func TestRefusals(t *testing.T) {
	flat := make([]units.Length, 2000)
	_, err := surface.FromHeights(um, flat[:9])
	refused(t, "nine heights", err, surface.ErrPoints)
	_, err = surface.FromHeights(um, make([]units.Length, 1_000_001))
	refused(t, "a million and one", err, surface.ErrPoints)
	_, err = surface.FromHeights(0, flat)
	refused(t, "no spacing", err, units.ErrNotGiven)
	for _, step := range []units.Length{-um, units.Metre} {
		_, err = surface.FromHeights(step, flat)
		refused(t, "spacing "+step.String(), err, units.ErrRange)
	}
	for _, h := range []units.Length{units.MaxLength + 1, -units.MaxLength - 1, math.MinInt64} {
		_, err = surface.FromHeights(um, append([]units.Length{h}, flat...))
		refused(t, "height "+h.String(), err, units.ErrRange)
	}
	points := make([]surface.Point, 12)
	for i := range points {
		points[i].X = units.Length(i) * um
	}
	points[7].X = points[6].X
	_, err = surface.FromPoints(points)
	refused(t, "a place twice", err, surface.ErrPoints)
	points[7].X = units.MaxLength + 1
	_, err = surface.FromPoints(points)
	refused(t, "a place far out", err, units.ErrRange)
	_, err = surface.FromPoints(points[:3])
	refused(t, "three points", err, surface.ErrPoints)

	p, err := surface.FromHeights(um, flat)
	must(t, p, err)
	for _, f := range []surface.Filter{
		{Sections: -1}, {Sections: 1001}, {CutOff: -1}, {CutOff: 9 * um}, {Short: -1}, {Short: um}, {Short: 3 * mm},
		{CutOff: 100 * um, Short: 100 * um}, {CutOff: 100 * um, Short: 200 * um},
	} {
		_, err = p.Texture(f)
		refused(t, "filter", err, units.ErrRange)
		_, err = p.Gaussian(f)
		refused(t, "filter", err, units.ErrRange)
		_, err = p.TwoStep(f)
		refused(t, "filter", err, units.ErrRange)
	}
	for _, f := range []surface.Filter{{Short: 2 * um}, {Short: 2 * mm, Sections: 1}, {CutOff: 10 * um}, {Sections: 1000}} {
		if _, err = p.Texture(f); err != nil {
			t.Errorf("%+v: %v", f, err)
		}
	}
	_, err = p.Texture(surface.Filter{CutOff: 1})
	refused(t, "a cut-off of a picometre", err, units.ErrRange)
	if _, err = surface.FromHeights(units.MaxLength/2000, flat); err != nil {
		t.Errorf("2000 heights over 10 m: %v", err)
	}
	_, err = p.Texture(surface.Filter{CutOff: 800 * um})
	refused(t, "five sections of 0.8 mm in 2 mm", err, surface.ErrPoints)
	_, err = p.Texture(surface.Filter{CutOff: 10 * um, Sections: 201})
	refused(t, "201 sections", err, surface.ErrPoints)
	if _, err = p.Texture(surface.Filter{CutOff: 400 * um}); err != nil {
		t.Errorf("five sections of 0.4 mm in 2 mm: %v", err)
	}
	tiny, err := surface.FromHeights(um, flat[:12])
	must(t, tiny, err)
	_, err = tiny.Texture(surface.Filter{Sections: 7})
	refused(t, "12 points for 7 sections", err, surface.ErrPoints)

	_, err = p.Unroll(0)
	refused(t, "no circle", err, units.ErrNotGiven)
	for _, d := range []units.Length{-mm, units.MaxLength + 1} {
		_, err = p.Unroll(d)
		refused(t, "circle of "+d.String(), err, units.ErrRange)
	}
	_, err = p.Unroll(7 * mm)
	refused(t, "2 mm on 7 mm", err, surface.ErrPoints)
	steep := make([]units.Length, 2000)
	for i := range steep {
		steep[i] = units.Length(i) * um
	}
	q, err := surface.FromHeights(um, steep)
	must(t, q, err)
	_, err = q.Unroll(67 * mm)
	refused(t, "45 degrees", err, surface.ErrPoints)

	var none surface.Profile
	_, err = none.Texture(surface.Filter{})
	refused(t, "no points", err, surface.ErrPoints)
	_, err = none.Level()
	refused(t, "no points", err, surface.ErrPoints)
	_, err = none.Unroll(67 * mm)
	refused(t, "no points", err, surface.ErrPoints)
	var empty surface.Curve
	if empty.Plateau().Core != "flat core" || empty.Height(0.5) != 0 || empty.Ratio(0) != 0 {
		t.Errorf("empty curve: %v, %v, %v", empty.Plateau(), empty.Height(0.5), empty.Ratio(0))
	}
	_, err = empty.TwoProcess()
	refused(t, "empty curve", err, surface.ErrOneProcess)
	for _, cut := range []func(units.Length) (surface.Cut, error){empty.Truncate, empty.Remove, empty.Reach} {
		_, err = cut(0)
		refused(t, "cut of nothing", err, surface.ErrPoints)
	}
}

// A flat wall has zeros and says that it has no core.
func TestFlat(t *testing.T) {
	p := profile(t, 0.001, make([]float64, 500))
	got := must2(t)(p.Texture(surface.Filter{CutOff: 100 * um}))
	if want := (surface.Texture{Plateau: surface.Plateau{Mr2: 1, From: got.From, Core: "flat core"}}); got != want {
		t.Errorf("%+v, want %+v", got, want)
	}
}

func TestRead(t *testing.T) {
	rows := func(head string, row func(i int) string) string {
		lines := []string{head}
		for i := range 12 {
			lines = append(lines, row(i))
		}
		return strings.Join(lines, "\n") + "\n"
	}
	digits := "0123456789"
	even := func(i int) string { return "0.00" + digits[i/2:i/2+1] + "," + digits[i%10:i%10+1] + ".5" }
	for _, text := range []string{
		rows("x mm,z µm", func(i int) string {
			return "0.0" + string([]byte{byte('0' + i/10), byte('0' + i%10)}) + "," + digits[i%10:i%10+1]
		}),
		rows("\ufeffX [mm], Z (um)", func(i int) string {
			return "0.0" + string([]byte{byte('0' + i/10), byte('0' + i%10)}) + ", " + digits[i%10:i%10+1] + ".00000000001"
		}),
	} {
		p, err := surface.Read(strings.NewReader(text))
		must(t, p, err)
		r, err := p.Gaussian(surface.Filter{Sections: 1})
		pts := must(t, r, err).Points()
		if len(pts) != 12 || pts[11].X != 110*um/10*10/10*1 && pts[11].X != 11*10*um/10*1 && pts[11].X != 11*um && pts[11].X != 110*um {
			t.Errorf("%v", pts)
		}
		if d := pts[7].Z - pts[3].Z; d != 4*um {
			t.Errorf("from the third to the seventh %v", d)
		}
	}
	for name, text := range map[string]string{
		"nothing": "", "no unit": rows("x,z", even), "other columns": rows("y mm,z µm", even), "bad unit": rows("x mm,z bar", even),
		"three columns": rows("x mm,z µm,q", even), "a word": rows("x mm,z µm", func(i int) string { return "a,b" }),
		"a ragged row": rows("x mm,z µm", func(i int) string { return "1" }), "a quote": "x mm,z µm\n\"1,2\n",
	} {
		_, err := surface.Read(strings.NewReader(text))
		refused(t, name, err, surface.ErrTable)
	}
	_, err := surface.Read(strings.NewReader(rows("x mm,z µm", even)))
	refused(t, "places twice", err, surface.ErrPoints)
	if _, err = surface.Read(strings.NewReader("x mm,z µm\n0,0\n0.001,b\n")); err == nil || !strings.Contains(err.Error(), "line 3") {
		t.Errorf("no line: %v", err)
	}
}

// A texture and a finding read back from their JSON.
func TestJSON(t *testing.T) {
	z := sampled(4000, 4, grooved{1, 0.1, 4, 0.6, 0.03}.at)
	tex := must2(t)(profile(t, 0.001, z).Texture(surface.Filter{CutOff: 800 * um}))
	b, err := json.Marshal(tex)
	var back surface.Texture
	if must(t, b, err); json.Unmarshal(b, &back) != nil || back != tex {
		t.Errorf("%s", b)
	}
	w, err := surface.Analyse([]surface.Reading{{"a", tex}, {"b", tex}}, surface.Instrument{Relative: 0.03})
	fs, err2 := must(t, w, err).Judge(surface.Limits{Rvk: units.Limits{Max: 9 * um}, Mr2: surface.Shares{Min: 0.5}}, uncertainty.Risk{})
	must(t, fs, err2)
	b, err = json.Marshal(fs)
	var again []surface.Finding
	if must(t, b, err); json.Unmarshal(b, &again) != nil || len(again) != 2 || again[0].Verdict != fs[0].Verdict || again[0].Value.Length != fs[0].Value.Length || again[1].Value.Share != fs[1].Value.Share || again[1].Shares != fs[1].Shares {
		t.Errorf("%s", b)
	}
}
