// SPDX-License-Identifier: BSD-3-Clause

package rings_test

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/rings"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

// TestExpectHoldsForEveryBore: whatever size of its window the bore is finished to, filing there is what was expected.
func TestExpectHoldsForEveryBore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawGap(t)
		d := g.Bore.Value
		least := draw(t, "finish", d-units.Millimetre, d+units.Millimetre, 1)
		finish := units.Limits{Min: least, Max: draw(t, "finish to", least, least+60*µm, 1)}
		from := draw(t, "window", 100*µm, units.Millimetre, 1)
		window := units.Limits{Min: from, Max: draw(t, "window to", from, from+400*µm, 1)}
		e, err := rings.Expect(g, finish, window, uncertainty.Risk{})
		if errors.Is(err, rings.ErrDoubt) {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		bore := uncertainty.Estimate{Value: draw(t, "bore", finish.Min, finish.Max, 1)}
		there, err := g.In(bore)
		if err != nil {
			t.Fatal(err)
		}
		if there.Value < e.Min.Value-1 || there.Value > e.Max.Value+1 || there.Std != e.Min.Std || e.Max.Std != e.Min.Std {
			t.Fatalf("gap %v in %v, expected %v to %v", there, bore, e.Min, e.Max)
		}
		f, err := rings.FileTo(there, window, uncertainty.Risk{})
		if err != nil {
			return // too narrow a window for the doubt, in this bore
		}
		switch e.Action {
		case rings.AsIs, rings.TooWide:
			if f.Action != e.Action {
				t.Fatalf("%v expected, %v in %v", e.Action, f.Action, bore)
			}
		case rings.FileEnds:
			if f.Action != rings.FileEnds && f.Action != rings.AsIs || f.TakeOff < e.TakeOff.Min-2 && f.Action == rings.FileEnds || f.TakeOff > e.TakeOff.Max+2 {
				t.Fatalf("file %v expected, %v %v in %v", e.TakeOff, f.Action, f.TakeOff, bore)
			}
		default:
			if e.TakeOff != (units.Limits{}) {
				t.Fatalf("%v, yet %v comes off", e.Action, e.TakeOff)
			}
		}
	})
}

// TestExpect: a ring that is under its window in the smallest bore of a finish window and inside it in the largest is expected to
// be filed, by at most what the smallest wants. All computed: the gap changes by π times the bore.
func TestExpect(t *testing.T) {
	window, finish := printed(t, "0.25 to 0.45 mm"), printed(t, "78.490 to 78.515 mm")
	in := func(gap string) rings.Gap { return rings.Gap{Measured: exact(gap), Bore: exact("78.500 mm")} }
	for _, tt := range []struct {
		gap            string
		action         rings.Action
		least, most    string
		takeAt, takeTo string
	}{
		{"0.100 mm", rings.FileEnds, "0.0686 mm", "0.1471 mm", "0.1029 mm", "0.1814 mm"},
		{"0.210 mm", rings.FileEnds, "0.1786 mm", "0.2571 mm", "0 mm", "0.0714 mm"},
		{"0.282 mm", rings.AsIs, "0.2506 mm", "0.3291 mm", "0 mm", "0 mm"},
		{"0.420 mm", rings.Undecided, "0.3886 mm", "0.4671 mm", "0 mm", "0 mm"},
		{"0.500 mm", rings.TooWide, "0.4686 mm", "0.5471 mm", "0 mm", "0 mm"},
	} {
		e := must(rings.Expect(in(tt.gap), finish, window, uncertainty.Risk{}))
		if e.Action != tt.action {
			t.Errorf("%s: %v, want %v", tt.gap, e.Action, tt.action)
		}
		near(t, tt.gap+" least", e.Min.Value, tt.least, "0.0001 mm")
		near(t, tt.gap+" greatest", e.Max.Value, tt.most, "0.0001 mm")
		near(t, tt.gap+" comes off from", e.TakeOff.Min, tt.takeAt, "0.0001 mm")
		near(t, tt.gap+" comes off to", e.TakeOff.Max, tt.takeTo, "0.0001 mm")
	}
	// Too small for the smallest bore and too wide for the largest: nothing can be said.
	if e := must(rings.Expect(in("0.26 mm"), printed(t, "78.45 to 78.55 mm"), printed(t, "0.25 to 0.30 mm"), uncertainty.Risk{})); e.Action != rings.Undecided {
		t.Errorf("%+v", e)
	}
	for _, tt := range []struct {
		finish units.Limits
		want   error
	}{
		{units.Limits{}, units.ErrNotGiven}, {units.Limits{Min: 78 * units.Millimetre}, units.ErrNotGiven}, {units.Limits{Max: 78 * units.Millimetre}, units.ErrNotGiven},
		{units.Limits{Min: -1, Max: 78 * units.Millimetre}, units.ErrRange}, {units.Limits{Min: 78 * units.Millimetre, Max: units.MaxLength + 1}, units.ErrRange},
		{units.Limits{Min: 79 * units.Millimetre, Max: 78 * units.Millimetre}, units.ErrCrossed},
	} {
		if _, err := rings.Expect(in("0.3 mm"), tt.finish, window, uncertainty.Risk{}); !errors.Is(err, tt.want) {
			t.Errorf("%v: %v", tt.finish, err)
		}
	}
	if _, err := rings.Expect(rings.Gap{}, finish, window, uncertainty.Risk{}); err == nil {
		t.Error("no gap")
	}
	if _, err := rings.Expect(in("0.3 mm"), finish, units.Limits{}, uncertainty.Risk{}); !errors.Is(err, uncertainty.ErrLimits) {
		t.Errorf("no window: %v", err)
	}
}

// A ring was measured in a gauge of 78.500 mm, and its bore will be finished somewhere in a window.
func ExampleExpect() {
	gap := rings.Gap{Measured: uncertainty.Estimate{Value: units.MustParseLength("0.21 mm"), Std: units.MustParseLength("0.01 mm")}, Bore: atDiameter("78.500 mm")}
	finish, window := must1(units.ParseLimits("78.490 to 78.515 mm")), must1(units.ParseLimits("0.25 to 0.45 mm"))
	e := must1(rings.Expect(gap, finish, window, uncertainty.Risk{}))
	fmt.Println("a gap of", e.Min.Value.Format(units.Millimetre, 2), "to", e.Max.Value.Format(units.Millimetre, 2))
	fmt.Println(e.Action, e.TakeOff.Min.Format(units.Millimetre, 2), "to", e.TakeOff.Max.Format(units.Millimetre, 2), "is to be expected")
	// Output:
	// a gap of 0.18 mm to 0.26 mm
	// file 0.01 mm to 0.09 mm is to be expected
}
