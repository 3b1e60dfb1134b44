// SPDX-License-Identifier: BSD-3-Clause

package hone_test

import (
	"errors"
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"borewright.example/bore/hone"
	"borewright.example/units"
)

// Three times the speed for half the time is one and a half times the stock: turning and stroking three times
// as fast make the resultant speed three times as great.
func TestTrialByHand(t *testing.T) {
	slow := small(100, 80*mm, hone.Cycles(1*units.Hertz))
	trial := hone.Trial{Setting: slow, Lasts: 40 * time.Second, Took: 6 * um}
	fast := small(300, 80*mm, hone.Cycles(3*units.Hertz))
	if got := must[units.Length](t)(trial.Stock(fast, 20*time.Second)); got != 9*um {
		t.Errorf("%v, want 0.009 mm", got)
	}
	// The same drill at twice the stroking: √((π·67·100/60)² + 320²)/√((π·67·100/60)² + 160²).
	v := math.Pi * 67 * 100 / 60
	want := 6 * math.Hypot(v, 320) / math.Hypot(v, 160)
	quick := small(100, 80*mm, hone.Cycles(2*units.Hertz))
	near(t, "stock", must[units.Length](t)(trial.Stock(quick, 40*time.Second)).In(um), want, 1e-6)
}

// Stock goes with time, a trial repeated takes what it took, and two trials are each other's inverse.
func TestTrialProperties(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := anySetting(t), anySetting(t)
		lasted := time.Duration(rapid.Int64Range(1e6, 3600e9).Draw(t, "trial"))
		lasts := time.Duration(rapid.Int64Range(1e6, 3600e9).Draw(t, "phase"))
		trial := hone.Trial{Setting: a, Lasts: lasted, Took: units.Length(rapid.Int64Range(1, int64(mm)).Draw(t, "took"))}
		if same, err := trial.Stock(a, lasted); err != nil || same != trial.Took {
			t.Fatalf("%v, %v, want %v", same, err, trial.Took)
		}
		one, err := trial.Stock(b, lasts)
		if err != nil || one < 1000 {
			return // beyond 10 m, or too little to turn round
		}
		if two, err := trial.Stock(b, 2*lasts); err == nil && (two-2*one).Abs() > 2 {
			t.Fatalf("%v in twice the time of %v", two, one)
		}
		back, err := hone.Trial{Setting: b, Lasts: lasts, Took: one}.Stock(a, lasted)
		near(t, "back", back.In(um), trial.Took.In(um), 1e-3*trial.Took.In(um)+1e-6)
		if err != nil {
			t.Fatal(err)
		}
	})
}

func TestTrialRefusals(t *testing.T) {
	s := small(100, 80*mm, hone.Cycles(1*units.Hertz))
	good := hone.Trial{Setting: s, Lasts: time.Minute, Took: 6 * um}
	for name, row := range map[string]struct {
		t     hone.Trial
		s     hone.Setting
		lasts time.Duration
		err   error
	}{
		"no trial":     {hone.Trial{}, s, time.Minute, units.ErrNotGiven},
		"no stock":     {hone.Trial{Setting: s, Lasts: time.Minute}, s, time.Minute, units.ErrNotGiven},
		"no time":      {hone.Trial{Setting: s, Took: um}, s, time.Minute, units.ErrNotGiven},
		"no setting":   {good, hone.Setting{}, time.Minute, units.ErrNotGiven},
		"no time then": {good, s, 0, units.ErrNotGiven},
		"two days":     {good, s, 48 * time.Hour, units.ErrRange},
		"negative":     {hone.Trial{Setting: s, Lasts: time.Minute, Took: -um}, s, time.Minute, units.ErrRange},
		"too much":     {hone.Trial{Setting: s, Lasts: 1, Took: 10 * 1000 * mm}, s, time.Minute, units.ErrRange},
	} {
		if _, err := row.t.Stock(row.s, row.lasts); !errors.Is(err, row.err) {
			t.Errorf("%s: %v, want %v", name, err, row.err)
		}
	}
}
