// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"encoding/json"
	"math"
	"reflect"
	"regexp"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/bore"
	"borewright.example/units/material"
	"borewright.example/units/uncertainty"
)

var snakeCase = regexp.MustCompile(`^[a-z][a-z0-9_]*$`)

// checkKeys fails on a key that is not snake case, in what this package writes.
func checkKeys(t *rapid.T, v any) {
	switch v := v.(type) {
	case map[string]any:
		for k, e := range v {
			if !snakeCase.MatchString(k) {
				t.Fatalf("key %q", k)
			}
			checkKeys(t, e)
		}
	case []any:
		for _, e := range v {
			checkKeys(t, e)
		}
	}
}

// roundTrip writes v and reads it back.
func roundTrip[T any](t *rapid.T, v T) {
	b, err := json.Marshal(v)
	must(t, b, err)
	var tree any
	if err := json.Unmarshal(b, &tree); err != nil {
		t.Fatal(err)
	}
	checkKeys(t, tree)
	var got T
	if err := json.Unmarshal(b, &got); err != nil {
		t.Fatalf("%s: %v", b, err)
	}
	if !reflect.DeepEqual(got, v) {
		t.Fatalf("wrote %+v\nread  %+v\n%s", v, got, b)
	}
}

func TestJSONRoundTrips(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		rs := drawReadings(t)
		l := bore.Layout{Length: 200 * mm, RingTop: length(t, "top", mm, 40*mm), RingBottom: length(t, "bottom", 50*mm, 90*mm)}
		l.Ports = []bore.Port{{Name: "exhaust", From: 60 * mm, To: 75 * mm, At: degrees(7), Width: degrees(1)}}
		gauge := shopGauge()
		g, err := l.Analyse(rs, gauge)
		must(t, g, err)
		roundTrip(t, g)
		roundTrip(t, l)
		roundTrip(t, gauge)
		roundTrip(t, rs)
		roundTrip(t, everyLimit)
		fs, err := g.Judge(everyLimit, noRisk)
		must(t, fs, err)
		roundTrip(t, fs)
		cs, err := g.Coarse(everyLimit)
		must(t, cs, err)
		roundTrip(t, cs)
		w := bore.Wear{Unworn: uncertainty.Estimate{Value: 66 * mm, Std: um}, Share: 0.75, Allowances: bore.Allowances{Surface: um, Locating: um, OutOfSquare: um}}
		roundTrip(t, w)
		c, err := g.CleanUp(w)
		must(t, c, err)
		roundTrip(t, c)
		roundTrip(t, bore.Point{Depth: mm, Angle: degrees(33), Radius: 33 * mm})
		change, err := bore.Compare(g, g)
		must(t, change, err)
		roundTrip(t, change)
		surveys := []bore.Survey{{At: 100, Size: g.Largest.Size}, {At: 200.5, Size: uncertainty.Estimate{Value: 68 * mm, Std: um}}}
		roundTrip(t, surveys)
		for _, p := range g.Planes {
			roundTrip(t, p.Harmonics())
		}
	})
}

// TestGaugeByHand: a gauge as a person writes it down, metals by name.
func TestGaugeByHand(t *testing.T) {
	var g bore.Gauge
	if err := json.Unmarshal([]byte(`{"kind": "two-point", "dial": "plus is smaller", "resolution": "0.002 mm",
		"standard": {"size": "78 mm", "std": "0.001 mm", "material": "gauge steel", "at": "20 ± 1 °C"},
		"material": "plain steel", "set_at": "20 ± 1 °C", "used_at": "24 ± 1 °C", "part": "grey iron", "part_at": "27 ± 1 °C"}`), &g); err != nil {
		t.Fatal(err)
	}
	if g.Part != material.GreyIron() || g.Material != material.PlainSteel() || g.Standard.Material != material.GaugeSteel() || g.Dial != bore.PlusIsSmaller {
		t.Errorf("%+v", g)
	}
	shows, err := g.DialReading(78*mm + 50*um)
	if must(t, shows, err); shows >= 0 {
		t.Errorf("%v", shows)
	}
}

// Every enumeration goes to text and back, each value to a text of its own; a value that is none
// and a text that is none are errors, and leave the receiver alone.
func TestEnumerations(t *testing.T) {
	for name, e := range map[string]struct {
		values int
		text   func(i int) ([]byte, error)
		back   func(text []byte) (int, error)
		says   func(i int) string
	}{
		"kind": {3, func(i int) ([]byte, error) { return bore.Kind(i).MarshalText() }, func(b []byte) (int, error) {
			v := bore.Kind(77)
			err := v.UnmarshalText(b)
			return int(v), err
		}, func(i int) string { return bore.Kind(i).String() }},
		"dial": {3, func(i int) ([]byte, error) { return bore.Dial(i).MarshalText() }, func(b []byte) (int, error) {
			v := bore.Dial(77)
			err := v.UnmarshalText(b)
			return int(v), err
		}, func(i int) string { return bore.Dial(i).String() }},
		"limit": {7, func(i int) ([]byte, error) { return bore.Limit(i).MarshalText() }, func(b []byte) (int, error) {
			v := bore.Limit(77)
			err := v.UnmarshalText(b)
			return int(v), err
		}, func(i int) string { return bore.Limit(i).String() }},
		"unseen": {18, func(i int) ([]byte, error) { return bore.Unseen(i).MarshalText() }, func(b []byte) (int, error) {
			v := bore.Unseen(77)
			err := v.UnmarshalText(b)
			return int(v), err
		}, func(i int) string { return bore.Unseen(i).String() }},
	} {
		seen := map[string]bool{}
		for i := range e.values {
			b, err := e.text(i)
			must(t, b, err)
			if v, err := e.back(b); err != nil || v != i {
				t.Errorf("%s %d: %s is read as %d, %v", name, i, b, v, err)
			}
			if seen[string(b)] || seen["says "+e.says(i)] || e.says(i) == "" {
				t.Errorf("%s %d: %s, %s twice", name, i, b, e.says(i))
			}
			seen[string(b)], seen["says "+e.says(i)] = true, true
		}
		for _, i := range []int{-1, e.values, math.MaxInt8} {
			if b, err := e.text(i); err == nil {
				t.Errorf("%s %d: %s", name, i, b)
			}
			if s := e.says(i); s == "" || seen["says "+s] {
				t.Errorf("%s %d says %q", name, i, s)
			}
		}
		if v, err := e.back([]byte("nonsense")); err == nil || v != 77 {
			t.Errorf("%s nonsense: %d, %v", name, v, err)
		}
	}
}
