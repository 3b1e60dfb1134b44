// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"errors"
	"strings"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
)

// A temperature that was forgotten is asked for where others are given, and nothing is taken to have been
// at 20 °C; one that cannot matter is not.
func TestForgottenTemperatures(t *testing.T) {
	for name, spoil := range map[string]func(*bore.Gauge){
		"":                 func(*bore.Gauge) {},
		"setting standard": func(g *bore.Gauge) { g.Standard.At = bore.Temperature{} },
		"gauge when set":   func(g *bore.Gauge) { g.SetAt = bore.Temperature{} },
		"gauge in use":     func(g *bore.Gauge) { g.UsedAt = bore.Temperature{} },
		"cylinder":         func(g *bore.Gauge) { g.PartAt = bore.Temperature{} },
	} {
		g := shopGauge()
		spoil(&g)
		_, err := bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, g)
		if name == "" && err != nil || name != "" && (!errors.Is(err, units.ErrNotGiven) || !strings.Contains(err.Error(), "temperature of the "+name)) {
			t.Errorf("%s: %v", name, err)
		}
		g.Standard.Size = 0 // the readings stand for themselves
		_, err = bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, g)
		if wanted := name == "gauge in use" || name == "cylinder"; wanted != errors.Is(err, units.ErrNotGiven) || !wanted && err != nil {
			t.Errorf("%s, no standard: %v", name, err)
		}
	}
	if _, err := bore.Analyse([]bore.Reading{at(1, 0, "67 mm")}, bore.Gauge{PartAt: bore.Temperature{Within: 2}}); !errors.Is(err, units.ErrNotGiven) {
		t.Errorf("a half-width alone: %v", err)
	}
}

func TestBadTemperatures(t *testing.T) {
	for _, s := range []string{"", "31", "31 ± °C", "±", "25 to 15 °C", "20 ± -1 °C", " to ", "a to b", "31 °C to", "31 ± 1 kg", "20 °C ± 1"} {
		if got, err := bore.ParseTemperature(s); err == nil {
			t.Errorf("%q: %v", s, got)
		}
	}
	kept := bore.Temperature{Value: 300}
	if err := kept.UnmarshalText([]byte("warm")); err == nil || kept.Value != 300 {
		t.Errorf("%v, %v", kept, err)
	}
	for s, want := range map[string]string{
		"31 °C": "31 °C", "31 ± 1 °C": "31 ± 1 °C", "31 +/- 1 °C": "31 ± 1 °C", "15 to 25 °C": "20 ± 5 °C", "15 to 15 °C": "15 °C",
		"59 to 77 °F": "20 ± 5 °C", "-5 to 5 °C": "0 ± 5 °C", "31 °C ± 2 K": "31 ± 2 °C",
	} {
		got, err := bore.ParseTemperature(s)
		if must(t, got, err); got.String() != want {
			t.Errorf("%q: %v, want %s", s, got, want)
		}
	}
}

// The coldest air that was ever measured, −89.2 °C at Vostok station (from memory), is a workshop's; 180 K is the least. A
// plain number of degrees, even of Fahrenheit in a hot shop, and anything beyond 5000 K is not.
func TestTemperaturesOfNoWorkshop(t *testing.T) {
	for _, v := range []units.Temperature{183.95, 180, 293.15, 5000} {
		if _, err := (bore.Temperature{Value: v}).MarshalText(); err != nil {
			t.Errorf("%v K: %v", float64(v), err)
		}
	}
	for _, v := range []units.Temperature{30, 104, 179.999999, 5000.000001} {
		if _, err := (bore.Temperature{Value: v}).MarshalText(); !errors.Is(err, units.ErrRange) {
			t.Errorf("%v K: %v", float64(v), err)
		}
	}
}
