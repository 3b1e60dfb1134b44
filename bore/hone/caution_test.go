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
	checkEnum[hone.Kind](t, hone.RigidStone+1, "not given")
	checkEnum[hone.Drive](t, hone.ByMachine+1, "not given")
	checkEnum[hone.Pressing](t, hone.ConstantForce+1, "not given")
	checkEnum[hone.Decision](t, hone.PastSize+1, "measure again")
}

// What the warnings below begin with.
const (
	rigidInside  = "A rigid-stone hone is put in"
	ballTurning  = "A ball-type or brush hone turns slowly"
	kindNotGiven = "Say which kind of hone it is"
	nothingLoose = "No gloves"
	stopped      = "Stop the drive"
	washed       = "Solvent only moves the grit about"
	handTooFast  = "More than two full cycles a second"
	surfaceFast  = "The abrasive goes round faster"
	surfaceSlow  = "The abrasive goes round slower"
	strokeIsSet  = "The stroke follows from the bore"
)

// saying reports whether one of the cautions begins so.
func saying(cs []hone.Caution, begin string) bool {
	return slices.ContainsFunc(cs, func(c hone.Caution) bool { return strings.HasPrefix(c.Text, begin) })
}

// alike reports whether the cautions begin so, one by one.
func alike(cs []hone.Caution, begins []string) bool {
	return slices.EqualFunc(cs, begins, func(c hone.Caution, begin string) bool { return strings.HasPrefix(c.Text, begin) })
}

// Every caution has a text of its own and says where it comes from.
func TestCautionTexts(t *testing.T) {
	seen := map[string]hone.Caution{}
	for k := hone.Kind(0); k <= hone.RigidStone; k++ {
		for _, c := range k.Cautions() {
			if was, ok := seen[c.Text]; c.Source == "" || !strings.HasSuffix(c.Text, ".") || ok && was != c {
				t.Errorf("%v: %+v", k, c)
			}
			seen[c.Text] = c
		}
	}
	if len(seen) != 9 {
		t.Errorf("%d cautions of the kinds", len(seen))
	}
}

// No kind of tool is handed the rule of the other family, and one that is not known is handed
// neither.
func TestKindCautions(t *testing.T) {
	for kind, want := range map[hone.Kind][2]bool{
		0: {}, hone.BallType: {false, true}, hone.BrushType: {false, true}, hone.RigidStone: {true, false}, 99: {},
	} {
		cs := kind.Cautions()
		got := [2]bool{saying(cs, rigidInside), saying(cs, ballTurning)}
		if got != want {
			t.Errorf("%v: rigid, turning %v, want %v", kind, got, want)
		}
		if unknown := saying(cs, kindNotGiven); unknown != (want == [2]bool{}) {
			t.Errorf("%v: asks for the kind: %v", kind, unknown)
		}
		for _, begin := range []string{nothingLoose, stopped, washed} {
			if !saying(cs, begin) {
				t.Errorf("%v: %q is missing", kind, begin)
			}
		}
		for _, c := range cs { // what goes for any work goes for every kind
			if general := saying([]hone.Caution{c}, nothingLoose) || saying([]hone.Caution{c}, stopped) || saying([]hone.Caution{c}, washed); c.AnyWork != general {
				t.Errorf("%v: %q for any work: %v", kind, c.Text, c.AnyWork)
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
		want  []string
	}{
		{60 * units.MetrePerMinute, 1, hone.ByHand, nil},
		{15 * units.MetrePerMinute, 1, hone.ByHand, nil},
		{110 * units.MetrePerMinute, 2, hone.ByHand, nil},
		{14.99 * units.MetrePerMinute, 1, hone.ByHand, []string{surfaceSlow}},
		{110.01 * units.MetrePerMinute, 1, hone.ByHand, []string{surfaceFast}},
		{60 * units.MetrePerMinute, 2.001, hone.ByHand, []string{handTooFast}},
		{60 * units.MetrePerMinute, 2.001, 0, []string{handTooFast}},
		{60 * units.MetrePerMinute, 6, hone.ByMachine, nil},
		{137 * units.MetrePerMinute, 6, hone.ByHand, []string{surfaceFast, handTooFast}},
	}
	for _, row := range rows {
		got := must[[]hone.Caution](t)(at(row.speed, row.f).Cautions(row.drive))
		if !alike(got, row.want) {
			t.Errorf("%v, %v, %v: %v, want %v", row.speed, row.f, row.drive, got, row.want)
		}
	}
}
