// SPDX-License-Identifier: BSD-3-Clause

package sleeve_test

import (
	"errors"
	"fmt"
	"testing"

	"pgregory.net/rapid"

	"borewright.example/oversize/sleeve"
	"borewright.example/units"
	"borewright.example/units/uncertainty"
)

func inch(s string) units.Length { return units.MustParseLength(s + " in") }

// TestSeatFor: US Army TM 5-3895-359-14&P, table 2: slip-fit liners, each paired to its own seat, 0.0005 to 0.0015 in larger.
func TestSeatFor(t *testing.T) {
	slip := sleeve.Diametral{Min: -inch("0.0015"), Max: -inch("0.0005")}
	for _, tt := range [][3]string{{"4.6300", "4.6305", "4.6315"}, {"4.6315", "4.6320", "4.6330"}, {"4.6265", "4.6270", "4.6280"}} {
		if w := must(sleeve.SeatFor(inch(tt[0]), slip)); w.Min != inch(tt[1]) || w.Max != inch(tt[2]) {
			t.Errorf("liner of %s in: seat %v, want %s to %s in", tt[0], w, tt[1], tt[2])
		}
	}
	// No seat serves every liner of the class.
	small, large := must(sleeve.SeatFor(inch("4.6300"), slip)), must(sleeve.SeatFor(inch("4.6315"), slip))
	if large.Min <= small.Max {
		t.Errorf("one seat for all of them: %v, %v", small, large)
	}
}

// TestSeatHasTheInterference: any seat inside the window gives an interference inside the one wanted, and the ends its ends.
func TestSeatHasTheInterference(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		outside := lengthBetween(t, "outside", 30*mm, 300*mm)
		least := lengthBetween(t, "least", -100*um, 100*um)
		wanted := sleeve.Diametral{Min: least, Max: lengthBetween(t, "greatest", least, 200*um)}
		w := must(sleeve.SeatFor(outside, wanted))
		seat := lengthBetween(t, "seat", w.Min, w.Max)
		d := must(sleeve.DiametralFromMeasured(uncertainty.Estimate{Value: outside}, uncertainty.Estimate{Value: seat}))
		if d.Min < wanted.Min || d.Max > wanted.Max || w.Max-w.Min != wanted.Max-wanted.Min {
			t.Fatalf("seat %v of %v: interference %v, wanted %v", seat, w, d, wanted)
		}
	})
	for _, tt := range []struct {
		outside units.Length
		wanted  sleeve.Diametral
		want    error
	}{
		{0, exactly(um), units.ErrNotGiven}, {-1, exactly(um), units.ErrRange}, {units.MaxLength + 1, exactly(um), units.ErrRange},
		{73 * mm, sleeve.Diametral{Min: 2, Max: 1}, units.ErrCrossed}, {73 * mm, exactly(731 * um), units.ErrRange},
		{73 * mm, exactly(-731 * um), units.ErrRange},
	} {
		if _, err := sleeve.SeatFor(tt.outside, tt.wanted); !errors.Is(err, tt.want) {
			t.Errorf("%v with %v: %v", tt.outside, tt.wanted, err)
		}
	}
}

// within is a size and its tolerance, in inches.
func within(size, tolerance string) units.Limits {
	return units.Limits{Min: inch(size) - inch(tolerance), Max: inch(size) + inch(tolerance)}
}

// TestProud: how far a liner stands above the block, by US Army manuals.
func TestProud(t *testing.T) {
	// TM 5-3805-263-14&P-2: a flange of 0.4048 ± 0.0008 less a plate of 0.3925 ± 0.0010 and a gasket of 0.0082 ± 0.0010 in is printed as
	// 0.0013 to 0.0069 in.
	r := must(sleeve.Proud([]units.Limits{within("0.4048", "0.0008")}, []units.Limits{within("0.3925", "0.0010"), within("0.0082", "0.0010")}))
	if r.Min != inch("0.0013") || r.Max != inch("0.0069") {
		t.Errorf("%+v", r)
	}
	// TM 5-4310-379-14: 0.002 to 0.005 in wanted, shims of 0.0015 and 0.003 in; a liner that stands 0.0005 in above.
	wanted := units.Limits{Min: inch("0.002"), Max: inch("0.005")}
	for _, tt := range []struct {
		shims []string
		proud string
		in    bool
	}{
		{[]string{"0.003"}, "0.0035", true}, {[]string{"0.0015"}, "0.0020", true}, {[]string{"0.003", "0.003"}, "0.0065", false},
	} {
		stack := []units.Limits{within("0.3105", "0")}
		for _, s := range tt.shims {
			stack = append(stack, within(s, "0"))
		}
		r := must(sleeve.Proud(stack, []units.Limits{within("0.310", "0")}))
		if r.Min != inch(tt.proud) || r.Max != r.Min || wanted.Contains(r.Min) != tt.in {
			t.Errorf("shims %v: %+v", tt.shims, r)
		}
	}
	// A sleeve that stands below the deck.
	if r := must(sleeve.Proud([]units.Limits{within("3.00", "0.01")}, []units.Limits{within("3.02", "0.005")})); r.Min != -inch("0.035") || r.Max != -inch("0.005") {
		t.Errorf("%+v", r)
	}
	for _, tt := range []struct {
		w    units.Limits
		want error
	}{{units.Limits{}, units.ErrNotGiven}, {units.Limits{Min: mm}, units.ErrNotGiven}, {units.Limits{Max: mm}, units.ErrNotGiven}, {units.Limits{Min: -1, Max: 1}, units.ErrRange},
		{units.Limits{Min: 1, Max: units.MaxLength + 1}, units.ErrRange}, {units.Limits{Min: 2, Max: 1}, units.ErrCrossed}} {
		for _, down := range []bool{false, true} {
			up, below := []units.Limits{plain(mm)}, []units.Limits{plain(mm)}
			if down {
				below = append(below, tt.w)
			} else {
				up = append(up, tt.w)
			}
			if _, err := sleeve.Proud(up, below); !errors.Is(err, tt.want) {
				t.Errorf("%v: %v", tt.w, err)
			}
		}
	}
}

// TestAllowed: stock of 0.05 to 0.08 mm against allowances on every side of it.
func TestAllowed(t *testing.T) {
	const w, b, u = uncertainty.Within, uncertainty.Beyond, uncertainty.Undecided
	h := sleeve.Honing{Stock: sleeve.Range[units.Length]{Min: 50 * um, Max: 80 * um}}
	for _, tt := range []struct {
		allowance          units.Limits
		enough, notTooMuch uncertainty.Verdict
	}{
		{units.Limits{Min: 50 * um, Max: 80 * um}, w, w},
		{units.Limits{Min: 20 * um, Max: 130 * um}, w, w},
		{units.Limits{Min: 60 * um, Max: 70 * um}, u, u},
		{units.Limits{Min: 80 * um, Max: 130 * um}, u, w},
		{units.Limits{Min: 81 * um, Max: 130 * um}, b, w},
		{units.Limits{Min: 20 * um, Max: 50 * um}, w, u},
		{units.Limits{Min: 20 * um, Max: 49 * um}, w, b},
		{units.Limits{Min: 20 * um}, w, u},
		{units.Limits{Max: 130 * um}, u, w},
		{units.Limits{}, u, u},
		{units.Limits{Min: 20 * um, Max: 10 * um}, u, u},
	} {
		if enough, most := h.Allowed(tt.allowance); enough != tt.enough || most != tt.notTooMuch {
			t.Errorf("%v: %v, %v; want %v, %v", tt.allowance, enough, most, tt.enough, tt.notTooMuch)
		}
	}
	// A negative stock, a bore already too large, is never enough.
	if enough, _ := (sleeve.Honing{Stock: sleeve.Range[units.Length]{Min: -2, Max: -1}}).Allowed(units.Limits{Min: 1, Max: um}); enough != b {
		t.Errorf("no stock: %v", enough)
	}
}

// The sleeve came with 83.048 mm: to what is its seat bored, for 0.040 to 0.060 mm of interference?
func ExampleSeatFor() {
	seat, err := sleeve.SeatFor(units.MustParseLength("83.048 mm"), sleeve.Diametral{Min: units.MustParseLength("0.040 mm"), Max: units.MustParseLength("0.060 mm")})
	fmt.Println(seat, err)
	// Output:
	// 82.988 mm to 83.008 mm <nil>
}

// A sleeve 122.4 to 122.6 mm long in a seat 121.9 to 122.1 mm deep: how much is to be faced off to the deck?
func ExampleProud() {
	limits := func(s string) units.Limits {
		w, err := units.ParseLimits(s)
		if err != nil {
			panic(err)
		}
		return w
	}
	r, err := sleeve.Proud([]units.Limits{limits("122.4 to 122.6 mm")}, []units.Limits{limits("121.9 to 122.1 mm")})
	fmt.Println(r.Min, "to", r.Max, err)
	// Output:
	// 0.3 mm to 0.7 mm <nil>
}

// What is left to hone, held against an allowance of 0.02 to 0.13 mm.
func ExampleHoning_Allowed() {
	j := sleeve.Joint{
		Bore: units.MustParseLength("66.95 mm"), Seat: units.MustParseLength("73 mm"), Outer: units.Limits{Min: 90 * units.Millimetre, Max: 90 * units.Millimetre},
		Interference: sleeve.Diametral{Min: units.MustParseLength("0.04 mm"), Max: units.MustParseLength("0.06 mm")}, Sleeve: demoIron(), Barrel: demoAluminium(),
	}
	h, err := j.Hone(units.MustParseLength("67.05 mm"))
	if err != nil {
		fmt.Println(err)
		return
	}
	enough, notTooMuch := h.Allowed(units.Limits{Min: units.MustParseLength("0.02 mm"), Max: units.MustParseLength("0.13 mm")})
	fmt.Println(h.Stock.Min.Format(units.Millimetre, 3), "to", h.Stock.Max.Format(units.Millimetre, 3), enough, notTooMuch)
	// Output:
	// 0.124 mm to 0.136 mm within undecided
}
