// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"encoding/json"
	"errors"
	"math"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
	"pgregory.net/rapid"
)

// anyCrosshatch draws from all crosshatches, the ends favoured by rapid.
func anyCrosshatch(t *rapid.T) hone.Crosshatch {
	p := rapid.Int64Range(1, 90e12-1).Draw(t, "picodegrees")
	c, err := hone.FromSquare(units.Angle(float64(p)/1e12) * units.Degree)
	if err != nil {
		t.Fatal(err)
	}
	return c
}

// Round the ring of conventions, and through text, nothing is lost.
func checkConventions(t *rapid.T) {
	c := anyCrosshatch(t)
	for name, round := range map[string]func() (hone.Crosshatch, error){
		"included":    func() (hone.Crosshatch, error) { return hone.Included(c.Included()) },
		"from square": func() (hone.Crosshatch, error) { return hone.FromSquare(c.FromSquare()) },
		"from axis":   func() (hone.Crosshatch, error) { return hone.FromAxis(90*units.Degree - c.FromSquare()) },
		"across axis": func() (hone.Crosshatch, error) { return hone.AcrossAxis(c.AcrossAxis()) },
		"text":        func() (hone.Crosshatch, error) { return hone.ParseCrosshatch(c.String()) },
		"twelve":      func() (hone.Crosshatch, error) { return hone.ParseCrosshatch(c.Format(12)) },
		"the ring": func() (hone.Crosshatch, error) {
			a, err1 := hone.FromSquare(c.Included() / 2)
			b, err2 := hone.FromAxis(90*units.Degree - a.FromSquare())
			d, err3 := hone.AcrossAxis(180*units.Degree - b.Included())
			return d, errors.Join(err1, err2, err3)
		},
	} {
		got, err := round()
		if err != nil || got != c {
			t.Fatalf("%s: %v came back as %v, %v", name, c, got, err)
		}
	}
}

func TestConventions(t *testing.T) { rapid.Check(t, checkConventions) }

func TestCrosshatchEnds(t *testing.T) {
	least := 1e-12 * units.Degree
	rows := []struct {
		name  string
		build func(units.Angle) (hone.Crosshatch, error)
		end   units.Angle
		grain units.Angle
	}{
		{"included", hone.Included, 180 * units.Degree, 2 * least},
		{"from square", hone.FromSquare, 90 * units.Degree, least},
		{"from axis", hone.FromAxis, 90 * units.Degree, least},
		{"across axis", hone.AcrossAxis, 180 * units.Degree, 2 * least},
	}
	for _, row := range rows {
		for _, bad := range []units.Angle{0, -1, row.end, row.end + 1, units.Angle(math.NaN()), units.Angle(math.Inf(1)), units.Angle(math.Inf(-1)), 1e300} {
			if c, err := row.build(bad); !errors.Is(err, units.ErrRange) || !c.IsZero() {
				t.Errorf("%v %s: %v, %v; want ErrRange", bad, row.name, c, err)
			}
		}
		for _, good := range []units.Angle{row.grain, row.end - 1.1*row.grain} {
			if c, err := row.build(good); err != nil || c.IsZero() {
				t.Errorf("%v %s: %v, %v", good, row.name, c, err)
			}
		}
	}
}

func TestParseCrosshatch(t *testing.T) {
	good := map[string]string{
		"45° included": "45° included", "22.5° from square": "45° included", "67.5° from axis": "45° included",
		"135° across axis": "45° included", "45 deg included": "45° included", "45° from square": "90° included",
		"0.5 rad from square": "57.295779513082° included", "0.000000000002° included": "0.000000000002° included",
	}
	for text, want := range good {
		if c, err := hone.ParseCrosshatch(text); err != nil || c.String() != want {
			t.Errorf("%q: %v, %v; want %v", text, c, err, want)
		}
	}
	bad := map[string]error{
		"": units.ErrSyntax, "45": units.ErrSyntax, "45 included": units.ErrSyntax, "45°": hone.ErrConvention, "45 deg": hone.ErrConvention,
		"45° to the horizontal": units.ErrSyntax, "45°  included": units.ErrSyntax, "45° INCLUDED": units.ErrSyntax, "x° included": units.ErrSyntax,
		"180° included": units.ErrRange, "0° included": units.ErrRange, "-45° included": units.ErrRange, "90° from axis": units.ErrRange,
	}
	for text, want := range bad {
		if c, err := hone.ParseCrosshatch(text); !errors.Is(err, want) || !c.IsZero() {
			t.Errorf("%q: %v, %v; want %v", text, c, err, want)
		}
		c := crosshatch("60° included")
		if err := c.UnmarshalText([]byte(text)); text != "" && (err == nil || c != crosshatch("60° included")) {
			t.Errorf("%q: unmarshalled to %v, %v", text, c, err)
		}
	}
}

func TestCrosshatchFormat(t *testing.T) {
	c := crosshatch("8.027394523980° included")
	for places, want := range map[int]string{
		-1: "8° included", 0: "8° included", 1: "8.0° included", 2: "8.03° included", 4: "8.0274° included", 12: "8.027394523980° included", 20: "8.027394523980° included",
	} {
		if got := c.Format(places); got != want {
			t.Errorf("Format(%d) = %q, want %q", places, got, want)
		}
	}
	if got := crosshatch("179.96° included").Format(1); got != "180.0° included" {
		t.Errorf("rounds to %q", got)
	}
	if got := (hone.Crosshatch{}).Format(1) + (hone.Crosshatch{}).String(); got != "" {
		t.Errorf("not given prints %q", got)
	}
}

// A value of each type goes through JSON unchanged; what is not given leaves no trace.
func TestJSON(t *testing.T) {
	in := hone.OnHand{
		Bore: 67 * mm, Stroke: 80 * mm, Drive: hone.ByHand,
		Spindle:  hone.SpindleRange{Min: 1 * units.Hertz, Max: 12 * units.Hertz},
		Stroking: hone.StrokingRange{Min: hone.Cycles(0.5), Max: hone.Strokes(3)},
	}
	text := must[[]byte](t)(json.Marshal(in))
	const want = `{"bore":"67 mm","stroke":"80 mm","spindle":"60 rev/min to 720 rev/min","stroking":"30 cycles/min to 180 strokes/min","drive":"by hand"}`
	if string(text) != want {
		t.Errorf("got  %s\nwant %s", text, want)
	}
	var out hone.OnHand
	if err := json.Unmarshal(text, &out); err != nil || out != in {
		t.Errorf("came back as %+v, %v", out, err)
	}
	for _, v := range []any{hone.OnHand{}, hone.Setting{}, hone.Want{}, hone.Change{}, hone.Trace{}, hone.Rig{}} {
		if text := must[[]byte](t)(json.Marshal(v)); string(text) != "{}" {
			t.Errorf("zero %T is %s", v, text)
		}
	}
	for _, v := range []interface{ MarshalText() ([]byte, error) }{hone.Crosshatch{}, hone.Stroking{}, hone.SpindleRange{}, hone.StrokingRange{}} {
		if text := must[[]byte](t)(v.MarshalText()); len(text) != 0 {
			t.Errorf("zero %T is %q", v, text)
		}
	}
}
