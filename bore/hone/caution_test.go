// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"encoding"
	"errors"
	"slices"
	"strings"
	"testing"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// checkEnum goes through the values 0 to count−1 of an enumeration, to text and back.
func checkEnum[E interface {
	~int8
	String() string
	encoding.TextMarshaler
}, P interface {
	*E
	encoding.TextUnmarshaler
}](t *testing.T, count E, zero string) {
	t.Helper()
	if E(0).String() != zero {
		t.Errorf("zero is %q, want %q", E(0), zero)
	}
	seen := map[string]bool{}
	for e := E(0); e < count; e++ {
		text := must[[]byte](t)(e.MarshalText())
		var back E
		if err := P(&back).UnmarshalText(text); err != nil || back != e || seen[string(text)] || len(text) == 0 {
			t.Errorf("%T %d: %q came back as %d, %v", e, e, text, back, err)
		}
		seen[string(text)] = true
	}
	for _, bad := range []E{-1, count, 127} {
		if text, err := bad.MarshalText(); !errors.Is(err, units.ErrUnknownName) || text != nil || bad.String() == "" {
			t.Errorf("%T %d: %q, %v", bad, bad, text, err)
		}
	}
	e := count - 1
	if err := P(&e).UnmarshalText([]byte("no such")); !errors.Is(err, units.ErrUnknownName) || e != count-1 {
		t.Errorf("%T: %v, %v", e, e, err)
	}
	if err := P(&e).UnmarshalText(nil); !errors.Is(err, units.ErrUnknownName) || e != count-1 {
		t.Errorf("%T of empty text: %v, %v", e, e, err)
	}
}

func TestEnumerations(t *testing.T) {
	checkEnum[hone.Caution](t, hone.StrokeIsSet+1, "none")
	checkEnum[hone.Kind](t, hone.RigidStone+1, "not given")
	checkEnum[hone.Drive](t, hone.ByMachine+1, "not given")
	checkEnum[hone.Lever](t, hone.StrokeLever+1, "none")
	checkEnum[hone.Fate](t, hone.Replaced+1, "assumed to stay")
	checkEnum[hone.Tracking](t, hone.Clear+1, "not controllable")
	checkEnum[hone.Pressing](t, hone.ConstantForce+1, "not given")
	checkEnum[hone.Decision](t, hone.PastSize+1, "measure again")
	checkEnum[hone.Trend](t, hone.Rises+1, "none seen")
}

// Every caution has a text of its own and says where it comes from.
func TestCautionTexts(t *testing.T) {
	seen := map[string]bool{}
	for c := hone.NoCaution + 1; c <= hone.StrokeIsSet; c++ {
		if c.Text() == "" || c.Source() == "" || seen[c.Text()] || !strings.HasSuffix(c.Text(), ".") {
			t.Errorf("%v: %q, %q", c, c.Text(), c.Source())
		}
		seen[c.Text()] = true
	}
	for _, c := range []hone.Caution{hone.NoCaution, -1, 127} {
		if c.Text() != "" || c.Source() != "" {
			t.Errorf("%d: %q, %q", c, c.Text(), c.Source())
		}
	}
}

// No kind of tool is handed the rule of the other family, and one that is not known is handed
// neither.
func TestKindCautions(t *testing.T) {
	for kind, want := range map[hone.Kind][2]bool{
		hone.KindUnknown: {}, hone.BallType: {false, true}, hone.BrushType: {false, true}, hone.RigidStone: {true, false}, 99: {},
	} {
		cs := kind.Cautions()
		got := [2]bool{slices.Contains(cs, hone.RigidInside), slices.Contains(cs, hone.BallTurning)}
		if got != want {
			t.Errorf("%v: rigid, turning %v, want %v", kind, got, want)
		}
		if unknown := slices.Contains(cs, hone.KindNotGiven); unknown != (want == [2]bool{}) {
			t.Errorf("%v: asks for the kind: %v", kind, unknown)
		}
		for _, c := range []hone.Caution{hone.NothingLoose, hone.StopToMeasure, hone.WashAndOil} {
			if !slices.Contains(cs, c) {
				t.Errorf("%v: %v is missing", kind, c)
			}
		}
	}
}

// The edges of the bands belong to them.
func TestSettingCautions(t *testing.T) {
	at := func(v units.Speed, f units.Frequency) hone.Setting {
		n := units.Frequency(v.In(units.MetrePerSecond) / (3.141592653589793 * 0.067))
		return hone.Setting{Bore: 67 * mm, Stroke: 80 * mm, Spindle: n, Stroking: hone.Strokes(2 * f)}
	}
	rows := []struct {
		speed units.Speed
		f     units.Frequency
		drive hone.Drive
		want  []hone.Caution
	}{
		{60 * units.MetrePerMinute, 1, hone.ByHand, nil},
		{15 * units.MetrePerMinute, 1, hone.ByHand, nil},
		{110 * units.MetrePerMinute, 2, hone.ByHand, nil},
		{14.99 * units.MetrePerMinute, 1, hone.ByHand, []hone.Caution{hone.SurfaceSlow}},
		{110.01 * units.MetrePerMinute, 1, hone.ByHand, []hone.Caution{hone.SurfaceFast}},
		{60 * units.MetrePerMinute, 2.001, hone.ByHand, []hone.Caution{hone.HandTooFast}},
		{60 * units.MetrePerMinute, 2.001, hone.DriveUnknown, []hone.Caution{hone.HandTooFast}},
		{60 * units.MetrePerMinute, 6, hone.ByMachine, nil},
		{137 * units.MetrePerMinute, 6, hone.ByHand, []hone.Caution{hone.SurfaceFast, hone.HandTooFast}},
	}
	for _, row := range rows {
		got := must[[]hone.Caution](t)(at(row.speed, row.f).Cautions(row.drive))
		if !slices.Equal(got, row.want) {
			t.Errorf("%v, %v, %v: %v, want %v", row.speed, row.f, row.drive, got, row.want)
		}
	}
}
