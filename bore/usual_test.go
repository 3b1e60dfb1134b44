// SPDX-License-Identifier: BSD-3-Clause

package bore_test

import (
	"fmt"
	"testing"

	"borewright.example/bore"
	"borewright.example/units"
)

// checkUsual wants a printed figure inside its band, and outside of it with the point moved by a place
// or one unit taken for the other.
func checkUsual(t *testing.T, what string, band units.Limits, printed units.Length) {
	t.Helper()
	if band.Validate() != nil || !band.HasMin() || !band.HasMax() || !band.Contains(printed) {
		t.Errorf("%s: %v outside %v", what, printed, band)
	}
	for _, slip := range []units.Length{printed * 10, printed / 10, printed * 254 / 10, printed * 10 / 254} {
		if band.Contains(slip) {
			t.Errorf("%s: %v for %v inside %v", what, slip, printed, band)
		}
	}
}

// TestUsual holds each band to figures that manuals print. The last of each kind are the usual ones of
// engines of other sizes, from memory.
func TestUsual(t *testing.T) {
	const mm, in = units.Millimetre, units.Inch
	for _, tt := range []struct {
		bore    units.Length
		printed []string
		source  string
		band    func(units.Length) units.Limits
	}{
		{67 * mm, []string{"67 mm", "67.019 mm"}, "new, TM 9-6115-670-14&P, 6.30", bore.UsualNew},
		{3875 * in / 1000, []string{"3.8752 in", "3.8767 in"}, "new, TM 5-3895-346-14", bore.UsualNew},
		{30 * mm, []string{"30 mm", "30.013 mm"}, "new, H6 of ISO 286", bore.UsualNew},
		{250 * mm, []string{"250 mm", "250.072 mm"}, "new, H8 of ISO 286", bore.UsualNew},

		{67 * mm, []string{"67.15 mm"}, "service, TM 9-6115-670-14&P, 6.30", bore.UsualService},
		{67 * mm, []string{"67.067 mm"}, "service, TM 10-3930-647-14&P, 0.001 in an inch", bore.UsualService},
		{35 * in / 10, []string{"3.5035 in"}, "service, TM 10-3930-647-14&P", bore.UsualService},
		{30 * mm, []string{"30.03 mm", "30.1 mm"}, "service, common practice", bore.UsualService},
		{250 * mm, []string{"250.25 mm", "250.9 mm"}, "service, common practice", bore.UsualService},

		{67 * mm, []string{"0.15 mm"}, "greatest less least, TM 9-6115-670-14&P, 6.30", bore.UsualForm},
		{67 * mm, []string{"0.02475 mm"}, "taper, TM 10-3930-647-14&P", bore.UsualForm},
		{35 * in / 10, []string{"0.002 in"}, "taper, TM 10-3930-647-14&P", bore.UsualForm},
		{75 * mm, []string{"0.002 in"}, "both, TM 10-4320-351-14, 6.4.5 (bore not printed)", bore.UsualForm},
		{3875 * in / 1000, []string{"0.002 in", "0.003 in"}, "worn liner, TM 5-3895-346-14", bore.UsualForm},
		{425 * in / 100, []string{"0.002 in", "0.0025 in"}, "worn liner, TM 9-2815-202-34", bore.UsualForm},
		{30 * mm, []string{"0.02 mm", "0.1 mm"}, "common practice", bore.UsualForm},
		{250 * mm, []string{"0.05 mm", "0.3 mm"}, "common practice", bore.UsualForm},

		{100 * mm, []string{"0.01 mm", "0.012 mm", "0.02 mm"}, "honed liner, TM 5-3895-382-24", bore.UsualFinishForm},
		{3875 * in / 1000, []string{"0.001 in", "0.002 in"}, "new liner, TM 5-3895-346-14", bore.UsualFinishForm},
		{30 * mm, []string{"0.005 mm", "0.02 mm"}, "common practice", bore.UsualFinishForm},
		{250 * mm, []string{"0.01 mm", "0.05 mm"}, "common practice", bore.UsualFinishForm},

		{67 * mm, []string{"67 mm", "66.5 mm", "68 mm"}, "standard, common practice", bore.UsualStandard},
		{30 * mm, []string{"30 mm", "29.5 mm", "31 mm"}, "standard, common practice", bore.UsualStandard},
		{250 * mm, []string{"250 mm", "251.5 mm"}, "standard, common practice", bore.UsualStandard},
	} {
		for _, p := range tt.printed {
			checkUsual(t, fmt.Sprintf("%s, bore %v", tt.source, tt.bore), tt.band(tt.bore), units.MustParseLength(p))
		}
	}
	// Grades IT6 to IT8 of ISO 286 at 30, 67 and 250 mm, and two printed windows.
	for _, p := range []string{"0.013 mm", "0.033 mm", "0.019 mm", "0.046 mm", "0.029 mm", "0.072 mm", "0.0015 in", "0.001 in"} {
		checkUsual(t, "window", bore.UsualWindow(), units.MustParseLength(p))
	}
}

// TestUsualGrows: the bands grow with the bore, and no bore, however wrong, gets one that allows all.
func TestUsualGrows(t *testing.T) {
	for name, band := range map[string]func(units.Length) units.Limits{
		"new": bore.UsualNew, "service": bore.UsualService, "form": bore.UsualForm, "finish": bore.UsualFinishForm, "standard": bore.UsualStandard,
	} {
		var last units.Limits
		for _, d := range []units.Length{-1, 0, 1, units.Millimetre, 30 * units.Millimetre, 250 * units.Millimetre, units.MaxLength, 1 << 62} {
			w := band(d)
			if !w.HasMin() || !w.HasMax() || w.Min >= w.Max || w.Min < last.Min || w.Max < last.Max || w.Min < 0 {
				t.Errorf("%s: %v of bore %v, after %v", name, w, d, last)
			}
			last = w
		}
	}
}

// A limit of 0.5 mm for ovality: was the point moved?
func ExampleUsualForm() {
	limit := units.MustParseLength("0.5 mm")
	if band := bore.UsualForm(units.MustParseLength("67 mm")); !band.Contains(limit) {
		fmt.Println("limit", limit, "is unusual: look again, manuals have", band)
	}
	// Output:
	// limit 0.5 mm is unusual: look again, manuals have 0.0167 mm to 0.1804 mm
}

// TestUsualIsAsSaid pins the ends that the comments name, for a bore of 100 mm.
func TestUsualIsAsSaid(t *testing.T) {
	const mm, um = units.Millimetre, units.Micrometre
	for _, tt := range []struct {
		name            string
		got             units.Limits
		least, greatest units.Length
	}{
		{"new", bore.UsualNew(100 * mm), 99600 * um, 100400 * um},
		{"window", bore.UsualWindow(), 8 * um, 95 * um},
		{"service", bore.UsualService(100 * mm), 100040 * um, 100500 * um},
		{"form", bore.UsualForm(100 * mm), 20 * um, 220 * um},
		{"finish form", bore.UsualFinishForm(100 * mm), 5500 * units.Nanometre, 55 * um},
		{"standard", bore.UsualStandard(100 * mm), 99 * mm, 102 * mm},
		{"standard of a very small bore", bore.UsualStandard(5 * mm), 4500 * um, 7 * mm},
	} {
		if want := (units.Limits{Min: tt.least, Max: tt.greatest}); tt.got != want {
			t.Errorf("%s: %v, want %v", tt.name, tt.got, want)
		}
	}
}

// The bands of a bore of 78 mm.
func ExampleUsualNew() {
	d := units.MustParseLength("78 mm")
	fmt.Println("new bore        ", bore.UsualNew(d))
	fmt.Println("width of window ", bore.UsualWindow())
	fmt.Println("service limit   ", bore.UsualService(d))
	fmt.Println("form, finished  ", bore.UsualFinishForm(d))
	fmt.Println("setting standard", bore.UsualStandard(d))
	// Output:
	// new bore         77.688 mm to 78.312 mm
	// width of window  0.008 mm to 0.095 mm
	// service limit    78.0312 mm to 78.39 mm
	// form, finished   0.00495 mm to 0.0495 mm
	// setting standard 77 mm to 80 mm
}

func ExampleUsualWindow() {
	fmt.Println(bore.UsualWindow().Contains(units.MustParseLength("0.19 mm")), bore.UsualWindow().Contains(units.MustParseLength("0.019 mm")))
	// Output:
	// false true
}

// A service limit with two digits swapped, 78.510 mm for 78.150 mm, is asked about.
func ExampleUsualService() {
	fmt.Println(bore.UsualService(units.MustParseLength("78 mm")).Contains(units.MustParseLength("78.510 mm")))
	// Output:
	// false
}

func ExampleUsualFinishForm() {
	fmt.Println(bore.UsualFinishForm(units.MustParseLength("78 mm")).Contains(units.MustParseLength("0.12 mm")))
	// Output:
	// false
}

func ExampleUsualStandard() {
	fmt.Println(bore.UsualStandard(units.MustParseLength("78 mm")).Contains(units.MustParseLength("78.003 mm")))
	// Output:
	// true
}
